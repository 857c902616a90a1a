package org.brewchem.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.brewchem.pictures.DrawnPicture;
import org.brewchem.pictures.Ground;
import org.brewchem.pictures.Picture;
import org.brewchem.readers.FileFaultException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class BrewDayTest {

  private static final Path INVENTED = Path.of("").toAbsolutePath().getParent().resolve("brewday");

  @TempDir private Path folder;

  @BeforeEach
  void copy() throws IOException {
    try (Stream<Path> files = Files.list(INVENTED)) {
      for (Path file : files.filter(path -> path.toString().endsWith(".csv")).toList()) {
        Files.copy(file, folder.resolve(file.getFileName()));
      }
    }
  }

  private void change(String file, String from, String to) throws IOException {
    Path path = folder.resolve(file);
    String text = Files.readString(path);
    assertTrue(text.contains(from), file);
    Files.writeString(path, text.replace(from, to));
  }

  @Test
  void saysWhatToWeighAndWhatTheMashWillBe() {
    String page = BrewDay.of(folder).page();
    for (String line :
        new String[] {
          "- sparge: 270.0 L of well\n",
          "- strike: 190.0 g of calcium chloride dihydrate, 97 % by mass\n",
          "- strike: 535.00 mL of lactic acid, 80 % by mass\n",
          "- pH of the cooled mash 5.40, U 0.08 (k = 2)\n",
          "- 95 % interval, capacities and Kolbach's factor drawn: 5.285 to 5.457 (95 %)\n",
          "- This plan is a proposal; local codes and a trained person decide.\n",
          "rests on an assumed malt: nobody measured this lot of caramel malt"
        }) {
      assertTrue(page.contains(line), line + " is not in\n" + page);
    }
  }

  /** The curve of the picture passes through the mash of the page. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "lactic acid,80,; lactic acid,80,",
        "lactic acid,80,; lactic acid,88,",
        "lactic acid,80,; phosphoric acid,75,"
      })
  void theMashOfThePictureIsThatOfThePlan(String from, String to) throws IOException {
    change("shelf.csv", from, to);
    // So little calcium is wanted that soft water is blended into the strike water.
    change("target.csv", "strike,calcium [mg/L],60,120", "strike,calcium [mg/L],,70");
    BrewDay day = BrewDay.of(folder);
    assertTrue(day.page().matches("(?s).*- strike: [\\d.]+ L of soft.*"), day.page());
    BrewDay.Strike strike = day.strike().orElseThrow();
    double planned =
        Double.parseDouble(
            day.page().replaceAll("(?s).*- pH of the cooled mash (\\d\\.\\d+).*", "$1"));
    assertEquals(planned, strike.with(strike.planned()).pH().number(), 0.005);
  }

  @ParameterizedTest
  @EnumSource(Ground.class)
  void itsPicturesCanBeRead(Ground ground) throws IOException {
    var pictures = BrewDay.of(folder).pictures();
    assertEquals(2, pictures.size());
    for (Picture picture : pictures.values()) {
      Path path = folder.resolve("picture.svg");
      picture.on(ground).save(path);
      assertEquals(List.of(), DrawnPicture.read(path).problems());
    }
  }

  @Test
  void saysWhatStandsAgainstEachOtherWhereThereIsNoPlan() throws IOException {
    change("target.csv", "strike,sodium [mg/L],,20", "strike,sodium [mg/L],,2");
    BrewDay day = BrewDay.of(folder);
    assertTrue(day.page().contains("## No plan"), day.page());
    assertTrue(day.page().contains("sodium of strike: at most 2.0 mg/L"), day.page());
    assertTrue(day.pictures().isEmpty());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "waters.csv; soft,8,; soft,-8,; waters.csv, line 3, column \"calcium [mg/L]\"",
        "waters.csv; sulfate [mg/L]; sulfate; waters.csv, line 1, column \"sulfate\"",
        "shelf.csv; gypsum,99; gypsum,; shelf.csv, line 2, column \"mass percent\"",
        "grist.csv; caramel; oats; grist.csv, line 3, column \"malt\"",
        "portions.csv; strike; boiler; there is no portion \"strike\"",
        "target.csv; sodium [mg/L]; salt; target.csv, line 4, column \"figure\""
      })
  void namesWhereAFileIsWrong(String file, String from, String to, String said) throws IOException {
    change(file, from, to);
    FileFaultException fault = assertThrows(FileFaultException.class, () -> BrewDay.of(folder));
    assertTrue(String.valueOf(fault.getMessage()).contains(said), fault.getMessage());
  }
}
