package org.brewchem.checks.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The settings that take seconds; {@link Determinism} by hand has the others. */
class DeterminismTest {

  static List<Determinism.Setting> settings() {
    return Determinism.QUICK;
  }

  @ParameterizedTest
  @MethodSource("settings")
  void allFrozenFiguresHaveTheSameBits(Determinism.Setting setting)
      throws IOException, InterruptedException {
    Path java = Path.of(System.getProperty("java.home"));
    Determinism.Difference difference = Determinism.of(java, setting);
    assertEquals(0, difference.different(), difference::toString);
    assertEquals(Map.of(), difference.onlyOnce());
  }
}
