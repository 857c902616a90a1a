package org.brewchem.examples.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.brewchem.pictures.DrawnPicture;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the page shows can be read; its numbers are those of one machine and not tested. */
class RowCostTest {

  private static final Path DOCS = Path.of("").toAbsolutePath().resolve("../../docs").normalize();

  @ParameterizedTest
  @ValueSource(strings = {"row-cost-light.svg", "row-cost-dark.svg"})
  void thePictureOfThePageCanBeRead(String name) throws IOException {
    DrawnPicture shown = DrawnPicture.read(DOCS.resolve("pictures").resolve(name));
    assertEquals(List.of(), shown.problems());
    assertTrue(shown.texts().containsAll(List.of("0", "shortest", "three runs")));
    assertTrue(Files.readString(DOCS.resolve("performance.md")).contains("pictures/" + name));
  }
}
