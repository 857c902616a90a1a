package org.brewchem.checks.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.brewchem.checks.CsvTable;
import org.junit.jupiter.api.Test;

/** A tenth of the study of doses into a tank, and the whole as it is reported. */
class DosingStudyTest {

  /** Two binomial standard deviations of a tenth, some 400 doses of which 5 % overshoot. */
  private static final double SCATTER = 0.022;

  /** Where two stages do not come to what is required; docs/dosing.md says why. */
  private static final List<Double> MISSED = List.of(0.1, 0.2, 0.3);

  @Test
  void aTenthOvershootsAsOftenAsItShould() {
    int dosed = 0;
    int overshot = 0;
    for (BeerKind kind : BeerKind.notSoured()) {
      for (boolean acid : new boolean[] {true, false}) {
        DosingStudy.Overshoot found = DosingStudy.Overshoot.of(kind, acid, DosingStudy.TENTH);
        dosed += found.dosed();
        overshot += found.overshot();
      }
    }
    double share = (double) overshot / dosed;
    assertTrue(dosed > 360, dosed + " doses");
    assertTrue(
        share >= DosingStudy.LEAST_OVERSHOT - SCATTER
            && share <= DosingStudy.MOST_OVERSHOT + SCATTER,
        "overshot: " + share);
  }

  @Test
  void theWholeOvershootsAsOftenAsItShould() {
    for (String reagent : List.of("acid", "base")) {
      double dosed = 0;
      double overshot = 0;
      for (CsvTable.Line line : DosingStudy.overshot()) {
        if (line.text("reagent").equals(reagent)) {
          dosed += line.number("dosed");
          overshot += line.number("overshot");
          assertTrue(
              line.number("overshot") / line.number("dosed") <= DosingStudy.MOST_OVERSHOT_OF_A_KIND,
              reagent + " " + line.text("kind"));
        }
      }
      assertTrue(dosed >= 1950, dosed + " doses");
      assertTrue(
          overshot / dosed >= DosingStudy.LEAST_OVERSHOT
              && overshot / dosed <= DosingStudy.MOST_OVERSHOT,
          reagent + ": " + overshot / dosed);
    }
  }

  @Test
  void twoStagesHoldWhatIsRequiredButForTheRangesSaid() {
    List<Double> missed = new ArrayList<>();
    for (CsvTable.Line line : DosingStudy.staged()) {
      assertTrue(line.number("rms_staged") < line.number("rms_whole"), "never worse");
      if (!DosingStudy.holds(
          line.number("from"), line.number("rms_whole"), line.number("rms_staged"))) {
        missed.add(line.number("from"));
      }
    }
    assertEquals(MISSED, missed);
  }

  /** There the first stage alone misses by more, and no second one takes it back. */
  @Test
  void whatIsSaidNotToBeHadCannotBeHad() {
    for (CsvTable.Line line : DosingStudy.staged()) {
      assertTrue(line.number("rms_first_beyond") < line.number("rms_staged"));
      if (line.number("from") == 0.1 || line.number("from") == 0.2) {
        assertTrue(line.number("rms_first_beyond") > DosingStudy.MOST_OF_SMALL_CHANGES);
      }
    }
  }

  @Test
  void aTenthInTwoStagesIsBetterThanInOne() {
    List<StagedTrial> trials = DosingStudy.staged(5, DosingStudy.TENTH / 4);
    assertTrue(
        DosingStudy.rms(trials, trial -> trial.errorOfStaged)
            < DosingStudy.rms(trials, trial -> trial.errorOfWhole));
  }
}
