package org.brewchem.examples;

import java.io.IOException;
import java.nio.file.Path;
import org.brewchem.pictures.Ground;
import org.brewchem.pictures.Picture;

/** Draws the picture of the front page again: the titration of an invented beer. */
public final class FrontPagePicture {

  private static final Path LABORATORY = Path.of("brewchem-examples", "laboratory");
  private static final Path PICTURES = Path.of("docs", "pictures");

  private FrontPagePicture() {}

  /**
   * Writes the picture on light and on dark ground.
   *
   * @param arguments none are used
   * @throws IOException if a file cannot be written
   */
  public static void main(String[] arguments) throws IOException {
    System.setProperty("java.awt.headless", "true");
    Picture picture = LaboratoryDay.curve(LABORATORY);
    System.out.println(picture.save(PICTURES.resolve("titration-light.svg")));
    System.out.println(picture.on(Ground.DARK).save(PICTURES.resolve("titration-dark.svg")));
  }
}
