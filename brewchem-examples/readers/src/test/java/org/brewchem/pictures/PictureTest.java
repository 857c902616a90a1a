package org.brewchem.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
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
  void aPictureOfPixelsHasItsGroundInTheCornersAndInkWithin() throws IOException {
    Path path = folder.resolve("picture.png");
    Picture.Saved saved = FULL.on(Ground.DARK).save(path);
    BufferedImage image = ImageIO.read(path.toFile());
    assertEquals(0xFF14181D, image.getRGB(0, 0));
    assertEquals(0xFF14181D, image.getRGB(image.getWidth() - 1, image.getHeight() - 1));
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
