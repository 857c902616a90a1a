package org.brewchem.checks.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.checks.CsvTable;
import org.junit.jupiter.api.Test;

/** A tenth of the study of bench trials, and the whole as it is reported. */
class GlassStudyTest {

  /** Two binomial standard deviations of a tenth. */
  private static final double SCATTER = 0.03;

  @Test
  void theTankLiesInItsIntervalsInATenth() {
    int trials = 0;
    double covered = 0;
    for (BeerKind kind : BeerKind.notSoured()) {
      for (boolean measured : new boolean[] {true, false}) {
        GlassStudy.Found found = GlassStudy.Found.of(kind, measured, GlassStudy.TENTH / 2);
        trials += found.trials();
        covered += found.byReading() * found.trials();
      }
    }
    assertEquals(192, trials);
    double share = covered / trials;
    assertTrue(
        share >= GlassStudy.LEAST_COVERED - SCATTER && share <= GlassStudy.MOST_COVERED + SCATTER,
        "covered: " + share);
  }

  @Test
  void theWholeHoldsWhatIsRequired() {
    List<CsvTable.Line> lines = GlassStudy.report();
    double trials = lines.stream().mapToDouble(line -> line.number("trials")).sum();
    double covered =
        lines.stream().mapToDouble(line -> line.number("trials") * line.number("by_reading")).sum()
            / trials;
    assertEquals(2004, trials);
    assertTrue(
        covered >= GlassStudy.LEAST_COVERED && covered <= GlassStudy.MOST_COVERED,
        "covered: " + covered);
    for (CsvTable.Line line : lines) {
      assertTrue(line.number("u_by_reading") < line.number("u_predicted"), line.text("kind"));
    }
  }
}
