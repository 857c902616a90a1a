package org.brewchem.examples.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class ResidualAlkalinityLessonTest {

  private static final Path PAGE =
      Path.of("").toAbsolutePath().getParent().getParent().resolve("docs/residual-alkalinity.md");

  @Test
  void thePageShowsWhatTheProgramPrints() throws IOException {
    String page = Files.readString(PAGE);
    List<String> missing =
        ResidualAlkalinityLesson.report().lines().filter(line -> !page.contains(line)).toList();
    assertEquals(List.of(), missing);
  }
}
