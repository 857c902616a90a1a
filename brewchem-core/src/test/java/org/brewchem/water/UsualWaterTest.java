package org.brewchem.water;

import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.FigureCode;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UsualRange;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.junit.jupiter.api.Test;

/** Slips of typing in a report and in a table of reports. */
class UsualWaterTest {

  private static WaterReport.Builder sound() {
    return WaterReport.reported()
        .magnesium(mgPerL(11))
        .sodium(mgPerL(19))
        .chloride(mgPerL(31))
        .sulfate(mgPerL(45))
        .alkalinityAsCaCO3(mgPerL(215));
  }

  private static List<String> unusual(List<Notice> notices) {
    return notices.stream()
        .filter(notice -> notice.code() == FigureCode.UNUSUAL_VALUE)
        .map(Notice::text)
        .toList();
  }

  @Test
  void aSoundReportHasNothingUnusual() {
    assertEquals(List.of(), unusual(sound().calcium(mgPerL(92)).pH(pH(7.6)).build().notices()));
  }

  @Test
  void milligramsTypedAsGramsAreNamedByTheReportAndByWhatRestsOnThem() {
    WaterReport report = sound().calcium(gPerL(92)).pH(pH(7.6)).build();
    List<String> expected =
        List.of(
            "calcium: 92000 mg/L is unusual; usual is 0 to 700 mg/L; perhaps mg/L typed as g/L:"
                + " 92 mg/L");
    assertEquals(expected, unusual(report.notices()));
    assertEquals(expected, unusual(report.water().residualAlkalinity().notices()));
    assertEquals(expected, unusual(report.water().totalCarbonDioxide().notices()));
  }

  @Test
  void aTitrationAlkalinityIsJudgedToo() {
    WaterReport report =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .titrationAlkalinity(TitrationAlkalinity.ofMilliequivalentsPerLitre(215, pH(4.3)))
            .pH(pH(7.6))
            .build();
    assertEquals(1, unusual(report.notices()).size());
    assertTrue(
        unusual(report.notices()).get(0).startsWith("titration alkalinity to pH 4.3: 10759.2 mg/L"),
        unusual(report.notices())::toString);
  }

  @Test
  void aHighPHIsNamedOnce() {
    List<Notice> notices = sound().calcium(mgPerL(92)).pH(pH(11)).build().notices();
    assertEquals(1, unusual(notices).size());
    assertTrue(notices.stream().noneMatch(notice -> notice.code() == WaterCode.PH_UNUSUAL));
  }

  /** Each range of a water is reached by a report: none is a row that nobody reads. */
  @Test
  void everyRangeOfAWaterIsUsed() {
    WaterReport report =
        WaterReport.reported()
            .calcium(gPerL(9))
            .magnesium(gPerL(9))
            .sodium(gPerL(9))
            .potassium(gPerL(9))
            .concentration(Constituent.AMMONIUM, gPerL(9))
            .concentration(Constituent.IRON, gPerL(9))
            .chloride(gPerL(9))
            .sulfate(gPerL(9))
            .nitrate(gPerL(9))
            .concentration(Constituent.PHOSPHATE, gPerL(9))
            .concentration(Constituent.FLUORIDE, gPerL(9))
            .concentration(Constituent.SILICA, gPerL(9))
            .bicarbonate(gPerL(9))
            .totalHardness(Hardness.ofMilligramsPerLitreAsCaCO3(90000))
            .conductivity(Conductivity.ofMicrosiemensPerCentimetreAt25(2e5))
            .pH(pH(2))
            .build();
    List<String> judged =
        unusual(report.notices()).stream()
            .map(text -> text.substring(0, text.indexOf(':')).replace("carbonate alk", "alk"))
            .toList();
    for (UsualRange range : UsualRange.all()) {
      String quantity = range.quantity();
      if (quantity.endsWith(" of a water")) {
        String of = quantity.substring(0, quantity.length() - " of a water".length());
        // Counted as alkalinity, judged at the sample, and part of the closure.
        if (!List.of("bicarbonate", "temperature", "carbon dioxide").contains(of)) {
          assertTrue(judged.contains(of), of + " in " + judged);
        }
      }
    }
  }

  @Test
  void aColumnOfATableIsJudgedLikeAReport() {
    Table table =
        Table.of(
            Column.of("calcium [mg/L]", 92, 0.092, 92000, 45000),
            Column.of("magnesium [mg/L]", 11, 11, 11, 11),
            Column.of("alkalinity [mEq/L]", 4.3, 4.3, 4.3, 215),
            Column.of("pH", 7.6, 7.6, 7.6, 7.6));
    Waters waters = Waters.from(table);
    List<Notice> notices = waters.notices();
    assertEquals(2, unusual(notices).size(), notices::toString);
    Notice calcium = notices.get(0);
    assertEquals(3, calcium.row().orElseThrow());
    assertTrue(calcium.text().endsWith("so is 1 more row"), calcium::text);
    assertEquals(1, unusual(waters.answer(WaterFigures.RESIDUAL_ALKALINITY, 2).notices()).size());
    assertEquals(List.of(), unusual(waters.answer(WaterFigures.RESIDUAL_ALKALINITY, 0).notices()));
  }
}
