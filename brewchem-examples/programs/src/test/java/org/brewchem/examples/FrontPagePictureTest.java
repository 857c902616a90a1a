package org.brewchem.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.brewchem.pictures.DrawnPicture;
import org.brewchem.pictures.Ground;
import org.brewchem.pictures.Picture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a newcomer sees first is what the library draws today. */
class FrontPagePictureTest {

  private static final Path ROOT = Path.of("").toAbsolutePath().getParent().getParent();
  private static final Path LABORATORY = ROOT.resolve("brewchem-examples/laboratory");

  @TempDir private Path folder;

  @ParameterizedTest
  @EnumSource(names = {"LIGHT", "DARK"})
  void thePictureOfTheFrontPageIsDrawnByTheLibrary(Ground ground) throws IOException {
    String name = "titration-" + ground.name().toLowerCase(Locale.ROOT) + ".svg";
    DrawnPicture shown = DrawnPicture.read(ROOT.resolve("docs/pictures").resolve(name));
    Path path = folder.resolve(name);
    LaboratoryDay.curve(LABORATORY).on(ground).save(path);
    DrawnPicture drawn = DrawnPicture.read(path);
    assertEquals(drawn.texts(), shown.texts());
    assertEquals(drawn.paths(), shown.paths());
    assertEquals(List.of(), shown.problems());
    assertTrue(Files.readString(ROOT.resolve("README.md")).contains("docs/pictures/" + name));
  }

  @ParameterizedTest
  @EnumSource(Ground.class)
  void thePicturesOfTheLaboratoryDayCanBeRead(Ground ground) throws IOException {
    Path path = folder.resolve("capacity.svg");
    Picture capacity = LaboratoryDay.capacity(LABORATORY);
    capacity.on(ground).save(path);
    DrawnPicture drawn = DrawnPicture.read(path);
    assertEquals(List.of(), drawn.problems());
    Path curve = folder.resolve("curve.svg");
    LaboratoryDay.curve(LABORATORY).on(ground).save(curve);
    assertEquals(List.of(), DrawnPicture.read(curve).problems());
    assertTrue(drawn.texts().contains("0"), "the axis does not start at zero");
    assertTrue(drawn.texts().contains("interval, k = 2"), drawn.texts().toString());
  }

  @Test
  void eachRunAndTheEndPointAreNamedInTheTitration() throws IOException {
    Path path = folder.resolve("curve.svg");
    LaboratoryDay.curve(LABORATORY).save(path);
    assertTrue(
        DrawnPicture.read(path)
            .texts()
            .containsAll(
                List.of(
                    "alkali 1",
                    "alkali 2",
                    "acid 1",
                    "acid 2",
                    "fitted buffer",
                    "end point, pH 8.2")));
  }
}
