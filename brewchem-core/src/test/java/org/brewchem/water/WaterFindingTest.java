package org.brewchem.water;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.water.WaterFinding.Kind;
import org.junit.jupiter.api.Test;

/** Invented reports, each with one thing wrong. */
class WaterFindingTest {

  private static WaterAnalysis.Builder rest() {
    return WaterAnalysis.reported()
        .calcium(mgPerL(92))
        .magnesium(mgPerL(11))
        .sodium(mgPerL(19))
        .potassium(mgPerL(2))
        .chloride(mgPerL(31))
        .nitrate(mgPerL(8));
  }

  private static List<Kind> kinds(WaterAnalysis water) {
    return water.findings().stream().map(WaterFinding::kind).toList();
  }

  @Test
  void aSoundReportBalances() {
    WaterAnalysis water = rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(262)).pH(pH(7.6)).build();
    assertEquals(List.of(Kind.ION_BALANCE_ACCEPTABLE), kinds(water));
    assertFalse(water.findings().get(0).kind().isWarning());
  }

  @Test
  void aCarbonateColumnHeadedBicarbonateIsSuspected() {
    WaterAnalysis water = rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(129)).pH(pH(7.6)).build();
    assertEquals(List.of(Kind.ION_BALANCE_OFF, Kind.BICARBONATE_PERHAPS_CARBONATE), kinds(water));
    assertTrue(
        water
            .findings()
            .get(1)
            .message()
            .startsWith("if what is headed bicarbonate were carbonate: ion balance +"),
        water.findings().get(1).message());
  }

  @Test
  void anAlkalinityOnTheOtherBasisIsSuspected() {
    assertTrue(
        kinds(rest().sulfate(mgPerL(45)).bicarbonate(mgPerL(215)).build())
            .contains(Kind.ALKALINITY_BASIS_DOUBTFUL));
    assertTrue(
        kinds(rest().sulfate(mgPerL(45)).alkalinityAsCaCO3(mgPerL(262)).build())
            .contains(Kind.ALKALINITY_BASIS_DOUBTFUL));
  }

  @Test
  void sulfurAndNitrogenAreSuspected() {
    assertTrue(
        kinds(rest().sulfate(mgPerL(15)).bicarbonate(mgPerL(262)).build())
            .contains(Kind.SULFATE_PERHAPS_SULFUR));
    assertTrue(
        kinds(rest().sulfateAsSulfur(mgPerL(45)).bicarbonate(mgPerL(262)).build())
            .contains(Kind.SULFUR_PERHAPS_SULFATE));
    WaterAnalysis.Builder nitrogen =
        WaterAnalysis.reported()
            .calcium(mgPerL(110))
            .magnesium(mgPerL(11))
            .sodium(mgPerL(19))
            .chloride(mgPerL(31))
            .sulfate(mgPerL(45))
            .bicarbonate(mgPerL(262));
    assertTrue(kinds(nitrogen.nitrate(mgPerL(14)).build()).contains(Kind.NITRATE_PERHAPS_NITROGEN));
    assertTrue(
        kinds(
                WaterAnalysis.reported()
                    .calcium(mgPerL(110))
                    .magnesium(mgPerL(11))
                    .sodium(mgPerL(19))
                    .chloride(mgPerL(31))
                    .sulfate(mgPerL(45))
                    .bicarbonate(mgPerL(262))
                    .nitrateAsNitrogen(mgPerL(62))
                    .build())
            .contains(Kind.NITROGEN_PERHAPS_NITRATE));
  }

  @Test
  void missingIonsAndPhAreSaid() {
    WaterAnalysis water =
        WaterAnalysis.reported().calcium(mgPerL(50)).bicarbonate(mgPerL(150)).build();
    assertEquals(
        List.of(Kind.ION_BALANCE_NOT_JUDGED, Kind.IONS_MISSING, Kind.PH_MISSING), kinds(water));
    assertEquals(
        "missing: magnesium, sodium, potassium, sulfate, chloride, nitrate",
        water.findings().get(1).toString());
  }

  @Test
  void phAndAlkalinityMustGoTogether() {
    for (double value : new double[] {4.4, 4.6, 11.8}) {
      assertTrue(
          kinds(rest().bicarbonate(mgPerL(262)).pH(pH(value)).build())
              .contains(Kind.PH_CONTRADICTS_ALKALINITY),
          "pH " + value);
    }
    assertTrue(
        kinds(rest().bicarbonate(mgPerL(60000)).pH(pH(4.6)).build())
            .contains(Kind.PH_CONTRADICTS_ALKALINITY));
    assertTrue(
        kinds(rest().bicarbonate(mgPerL(262)).pH(pH(8.9)).build())
            .contains(Kind.CARBONATE_PRESENT));
    assertFalse(
        kinds(rest().bicarbonate(mgPerL(0)).pH(pH(4.4)).build())
            .contains(Kind.PH_CONTRADICTS_ALKALINITY));
  }
}
