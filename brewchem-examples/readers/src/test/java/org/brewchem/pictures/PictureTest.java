package org.brewchem.pictures;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PictureTest {

  private static final double[] X = {3, 4, 5, 6, 7};
  private static final double[] Y = {8, 6.5, 3, 4, 3.5};

  private static final Picture FULL =
      Picture.of("Invented", "pH", "buffer capacity [mEq/L per pH]")
          .across(3, 7)
          .upFromZero()
          .bandAcross("target", 5, 6)
          .band("interval, k = 2", X, minus(0.4), minus(-0.4))
          .line("fitted", X, Y)
          .points("first run", X, Y)
          .points("second run", X, minus(0.05))
          .limitAcross("limit", 7)
          .limitUp("end point", 6.2);

  @TempDir private Path folder;

  private static double[] minus(double less) {
    return Arrays.stream(Y).map(y -> y - less).toArray();
  }

  @ParameterizedTest
  @EnumSource(Ground.class)
  void theTextsLieInsideThePictureNoneOverAnotherAndCanBeReadOnItsGround(Ground ground)
      throws IOException {
    Path path = folder.resolve("picture.svg");
    FULL.on(ground).save(path);
    DrawnPicture drawn = DrawnPicture.read(path);
    assertEquals(List.of(), drawn.problems());
    assertTrue(
        drawn
            .texts()
            .containsAll(
                List.of(
                    "Invented",
                    "pH",
                    "buffer capacity [mEq/L per pH]",
                    "target",
                    "interval, k = 2",
                    "fitted",
                    "first run",
                    "second run",
                    "limit",
                    "end point",
                    "0")),
        drawn.texts().toString());
  }

  /** The check above finds what it is there for. */
  @Test
  void textsThatCannotBeReadAreFound() throws IOException {
    Path path = folder.resolve("spoilt.svg");
    FULL.save(path);
    String text = Files.readString(path);
    assertEquals(List.of(), DrawnPicture.read(path).problems());
    Files.writeString(path, text.replace("fill:rgb(11,79,138)", "fill:rgb(150,170,190)"));
    assertEquals(
        List.of("\"fitted\" has a contrast of 2.4 to its ground"),
        DrawnPicture.read(path).problems());
    Files.writeString(path, text.replace("stroke:rgb(160,58,0)", "stroke:rgb(240,200,190)"));
    assertEquals(
        List.of("a line has a contrast of 1.5 to its ground"), DrawnPicture.read(path).problems());
    Files.writeString(path, text.replace(">pH</text>", ">a text that is too long here</text>"));
    assertEquals(
        List.of("\"a text that is too long here\" is not within the sheet"),
        DrawnPicture.read(path).problems());
    Files.writeString(path, text.replace("y=\"26\"", "y=\"50\""));
    assertEquals(
        List.of("\"buffer capacity [mEq/L per pH]\" lies over \"Invented\""),
        DrawnPicture.read(path).problems());
  }

  @Test
  void aTextOnAnAreaIsHeldAgainstItsColour() throws IOException {
    Path path = folder.resolve("area.svg");
    FULL.bandAcross("all", -1, 12).save(path);
    assertEquals(List.of(), DrawnPicture.read(path).problems());
    String text = Files.readString(path);
    Files.writeString(path, text.replace("rgb(220,230,242)", "rgb(110,120,130)"));
    assertTrue(
        DrawnPicture.read(path)
            .problems()
            .contains("\"fitted\" has a contrast of 1.9 to an area under it"),
        DrawnPicture.read(path).problems().toString());
  }

  @ParameterizedTest
  @EnumSource(Ground.class)
  void aLengthAndAnAreaAreReadFromZero(Ground ground) throws IOException {
    Picture area = Picture.of("Invented", "pH", "capacity").across(3, 7).area("all", X, Y);
    Path path = folder.resolve("area.svg");
    area.on(ground).save(path);
    assertEquals(List.of(), DrawnPicture.read(path).problems());
    assertTrue(DrawnPicture.read(path).texts().contains("0"));
    assertThrows(IllegalArgumentException.class, () -> area.up(2, 9));
    assertThrows(
        IllegalArgumentException.class,
        () -> Picture.of("Invented", "pH", "capacity").up(2, 9).area("all", X, Y));

    Picture bars = Picture.ofBars("Invented", "u [mL]").bar("a", 40).bar("b", 38.5);
    bars.on(ground).save(path);
    DrawnPicture drawn = DrawnPicture.read(path);
    assertEquals(List.of(), drawn.problems());
    assertFalse(drawn.texts().contains(""));
    assertTrue(drawn.texts().containsAll(List.of("Invented", "u [mL]", "0", "a", "b")));
    assertThrows(IllegalArgumentException.class, () -> bars.across(1, 50));
    assertThrows(IllegalArgumentException.class, () -> bars.line("a", X, Y));
    assertThrows(IllegalArgumentException.class, () -> FULL.bar("a", 1));
    Picture most = bars.bar("to the left", -3);
    for (int i = 3; i < 12; i++) {
      most = most.bar("another bar " + i, i);
    }
    Picture full = most;
    full.on(ground).save(path);
    assertEquals(List.of(), DrawnPicture.read(path).problems());
    assertThrows(IllegalArgumentException.class, () -> full.bar("one more", 1));
  }

  /** Printed in greys, colours are gone: dashes and marks still tell the lines apart. */
  @Test
  void greyHoldsNoColour() throws IOException {
    Path path = folder.resolve("grey.svg");
    Picture lines = FULL;
    for (String name : List.of("one", "two", "three")) {
      lines = lines.line(name, X, minus(name.length()));
    }
    lines.on(Ground.GREY).save(path);
    for (Color color : DrawnPicture.read(path).colors()) {
      assertEquals(color.getRed(), color.getGreen(), color.toString());
      assertEquals(color.getRed(), color.getBlue(), color.toString());
    }
    long dashes =
        Pattern.compile("stroke-dasharray:[0-9., ]+")
            .matcher(Files.readString(path))
            .results()
            .map(MatchResult::group)
            .distinct()
            .count();
    assertTrue(dashes >= 3, dashes + " kinds of dashes");
  }

  /** Dashes that begin again at each of many points would run together into a whole line. */
  @Test
  void aLineOfManyPointsIsDrawnInOne() throws IOException {
    double[] x = IntStream.range(0, 500).mapToDouble(i -> i / 100.0).toArray();
    double[] y = Arrays.stream(x).map(Math::sin).toArray();
    Path path = folder.resolve("dense.svg");
    Picture.of("Invented", "x", "y").line("first", X, Y).line("second", x, y).save(path);
    List<String> drawn =
        Files.readString(path)
            .lines()
            .filter(line -> line.contains("stroke:rgb(160,58,0)"))
            .toList();
    assertEquals(1, drawn.size());
    assertTrue(drawn.get(0).contains("stroke-dasharray"), "it has no dashes");
  }

  /** Two lines that run together at the right are named at the left, where they part. */
  @Test
  void aNameStandsWhereItCannotBeTakenForThatOfAnotherLine() throws IOException {
    double[] x = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
    double[] one = {1, 2, 3, 4, 5, 6, 6, 6, 6, 6, 6};
    double[] other = {6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6};
    Path path = folder.resolve("names.svg");
    Picture.of("Invented", "x", "y").line("rising", x, one).line("level", x, other).save(path);
    for (String name : List.of("rising", "level")) {
      Matcher at =
          Pattern.compile("<text[^>]* x=\"([0-9.]+)\"[^>]*>" + name + "</text>")
              .matcher(Files.readString(path));
      assertTrue(at.find(), name);
      assertTrue(Double.parseDouble(at.group(1)) < 430, name + " stands at " + at.group(1));
    }
  }

  @Test
  void aPictureOfPixelsHasItsGroundInTheCornersAndInkWithin() throws IOException {
    Path path = folder.resolve("picture.png");
    Picture.Saved saved = FULL.on(Ground.DARK).save(path);
    BufferedImage image = ImageIO.read(path.toFile());
    assertEquals(0xFF14181D, image.getRGB(0, 0));
    assertEquals(0xFF14181D, image.getRGB(image.getWidth() - 1, image.getHeight() - 1));
    assertArrayEquals(Files.readAllBytes(path), FULL.on(Ground.DARK).png());
    assertTrue(saved.toString().contains("picture.png: Invented; target, interval, k = 2, fitted"));
  }

  @Test
  void whatCannotBeDrawnIsNamed() {
    Picture empty = Picture.of("Invented", "pH", "pH");
    assertThrows(IllegalArgumentException.class, () -> empty.save(folder.resolve("a.svg")));
    assertThrows(IllegalArgumentException.class, () -> FULL.save(folder.resolve("a.gif")));
    assertThrows(IllegalArgumentException.class, () -> empty.line("a", X, new double[] {1}));
    assertThrows(
        IllegalArgumentException.class,
        () -> empty.line("a", new double[] {1}, new double[] {Double.NaN}));
    assertThrows(IllegalArgumentException.class, () -> empty.across(3, 3));
    assertThrows(IllegalStateException.class, () -> empty.bandAcross("target", 1, 2));
  }
}
