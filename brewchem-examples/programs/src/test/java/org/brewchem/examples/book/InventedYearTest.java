package org.brewchem.examples.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.brewchem.pictures.DrawnPicture;
import org.brewchem.pictures.Ground;
import org.brewchem.pictures.Picture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InventedYearTest {

  @TempDir private Path folder;

  @Test
  void theChartFindsTheLyeAndThePicturesCanBeRead() throws IOException {
    InventedYear year = InventedYear.in(folder);
    String page = year.page();
    assertTrue(page.contains("batches: 40, records of titrants: 2, versions of targets: 1"), page);
    assertTrue(page.contains("- batch L-31, titratable acidity"), page);
    assertTrue(page.contains("false alarms: 3."), page);
    assertTrue(!page.contains("batch L-2"), "no signal before the second bottle");
    assertEquals(41, Files.readAllLines(folder.resolve("batch_records.csv")).size());
    assertEquals(List.of("acidity", "ladder", "target"), List.copyOf(year.pictures().keySet()));
    for (Picture picture : year.pictures().values()) {
      for (Ground ground : Ground.values()) {
        Path path = folder.resolve("picture.svg");
        picture.on(ground).save(path);
        assertEquals(List.of(), DrawnPicture.read(path).problems(), ground + ", " + picture);
      }
    }
    assertTrue(
        String.valueOf(assertThrows(IOException.class, () -> InventedYear.in(folder)).getMessage())
            .endsWith("there is a book already"));
  }
}
