package org.brewchem.checks.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.checks.CsvTable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A tenth of the study of the stand-in, held against what is required and what is reported. */
class StandInStudyTest {

  @ParameterizedTest
  @EnumSource(BeerKind.class)
  void everyKindOfBeerIsCovered(BeerKind kind) {
    StandInStudy.Tally tenth = StandInStudy.judge(kind, StandInStudy.TENTH);
    CsvTable.Line line = StandInStudy.line(kind);
    for (int dose = 0; dose < 2; dose++) {
      String column = dose == 0 ? "04" : "08";
      assertTrue(tenth.coverage(dose) >= StandInStudy.LOWEST, kind + ": " + tenth.coverage(dose));
      assertTrue(line.number("coverage_" + column) >= StandInStudy.LOWEST, kind::toString);
      assertEquals(
          line.number("relative_u_" + column), tenth.relativeUncertainty(dose), 0.05, kind::name);
      assertEquals(
          line.number("relative_error_" + column), tenth.relativeError(dose), 0.05, kind::name);
    }
    assertTrue(tenth.refused() <= StandInStudy.MOST_REFUSED, kind::toString);
    assertTrue(line.number("refused") <= StandInStudy.MOST_REFUSED, kind::toString);
  }
}
