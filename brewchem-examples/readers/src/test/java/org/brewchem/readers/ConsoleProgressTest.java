package org.brewchem.readers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

class ConsoleProgressTest {

  @Test
  void nothingIsDrawnWhereThereIsNoTerminal() {
    Assumptions.assumeTrue(System.console() == null);
    ByteArrayOutputStream drawn = new ByteArrayOutputStream();
    PrintStream out = System.out;
    PrintStream err = System.err;
    try (PrintStream seen = new PrintStream(drawn, true, StandardCharsets.UTF_8)) {
      System.setOut(seen);
      System.setErr(seen);
      try (ConsoleProgress progress = ConsoleProgress.of("waters")) {
        assertFalse(progress.isShown());
        progress.at(10, 0.5);
      }
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
    assertEquals("", drawn.toString(StandardCharsets.UTF_8));
  }
}
