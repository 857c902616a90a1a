package org.brewchem.checks.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.TreeMap;
import org.brewchem.checks.study.ReportsOnRealWaters.Part;
import org.brewchem.checks.study.ReportsOnRealWaters.Tally;
import org.junit.jupiter.api.Test;

/**
 * A tenth of the study, and all of the small sets; docs/reports-on-real-waters.md has the whole.
 */
class ReportsOnRealWatersTest {

  private static final int TENTH = 10;

  @Test
  void suspicionsThatStandAloneAreMostlyRight() {
    for (Part part : ReportsOnRealWaters.parts(TENTH)) {
      Map<String, Tally> byName = new TreeMap<>();
      Tally all = ReportsOnRealWaters.sum(ReportsOnRealWaters.singly(part, byName).values());
      assertTrue(all.right >= 50, part.name() + ": right " + all.right);
      assertTrue(all.share() >= ReportsOnRealWaters.RIGHT, part.name() + ": share " + all.share());
      byName.forEach(
          (name, tally) -> {
            if (tally.right + tally.wrong >= 10) {
              assertTrue(
                  tally.share() >= ReportsOnRealWaters.RIGHT,
                  part.name() + ", " + name + ": share " + tally.share());
            }
          });
    }
  }

  @Test
  void untouchedReportsAreSeldomSuspected() {
    int reports = 0;
    int suspected = 0;
    for (Part part : ReportsOnRealWaters.parts(TENTH)) {
      Tally tally = ReportsOnRealWaters.untouched(part, new TreeMap<>());
      reports += tally.waters;
      suspected += tally.wrong;
    }
    assertEquals(85, reports);
    assertTrue(suspected <= ReportsOnRealWaters.FALSE * reports, "suspected: " + suspected);
  }

  @Test
  void tablesOnAWrongBasisAreNamedAndOthersAreNot() {
    for (Part part : ReportsOnRealWaters.parts(1)) {
      Map<String, Tally> byKind = ReportsOnRealWaters.tables(part, 200 / TENTH);
      for (String kind :
          new String[] {"sulfate as S", "bicarbonate as CaCO3", "bicarbonate as carbonate"}) {
        Tally tally = byKind.get(kind);
        assertTrue(
            !part.counts() || tally.right >= ReportsOnRealWaters.NAMED * tally.waters,
            part.name() + ", " + kind + ": " + tally.right + " of " + tally.waters);
      }
      Tally untouched = byKind.get("untouched");
      assertTrue(untouched.wrong <= ReportsOnRealWaters.FALSE * untouched.waters, part.name());
    }
  }

  @Test
  void conductivitiesGoWithTheIonsAndSlipsAreFound() {
    int reports = 0;
    int falseAlarms = 0;
    for (ConductivityOfRealWaters.Found found : ConductivityOfRealWaters.all()) {
      reports += found.ratios().length;
      falseAlarms += found.falseAlarms();
      assertEquals(0, found.slips(), found.set());
      assertEquals(0, found.ions()[2], found.set());
      assertTrue(found.ions()[1] <= 1, found.set() + ": " + found.ions()[1]);
      assertEquals(0.96, found.quantile(0.5), 0.03, found.set());
    }
    assertEquals(376, reports);
    assertTrue(falseAlarms <= ConductivityOfRealWaters.FALSE * reports, "false: " + falseAlarms);
  }
}
