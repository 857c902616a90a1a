package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class CarbonateSystemTest {

  /** pK1 and pK2 at 25 °C, Goldberg et al. 2002. */
  private static final double K1 = Math.pow(10, -6.351);

  private static final double K2 = Math.pow(10, -10.329);

  private static Solution hard() {
    return Solution.at(celsius(15))
        .with(Ion.CALCIUM, mmolPerL(2.3))
        .with(Ion.MAGNESIUM, mmolPerL(0.5))
        .with(Ion.SULFATE, mmolPerL(0.4));
  }

  /** The closed form of any textbook: fractions of a diprotic acid. */
  @ParameterizedTest
  @ValueSource(doubles = {5, 6.351, 7.2, 8.3, 9.5, 11})
  void atLevelIdealTheTextbooksClosedFormHolds(double value) {
    double h = Math.pow(10, -value);
    double closed = 4 * (1 + h / K1 + K2 / h) / (1 + 2 * K2 / h);
    assertEquals(
        closed,
        CarbonateSystem.totalCarbonDioxide(
                Solution.textbook(),
                CarbonateAlkalinity.ofMilliequivalentsPerLitre(4),
                PH.of(value))
            .inMillimolesPerLitre(),
        1e-9 * closed);
    double titrated = closed * (share(value) - share(4.5)) + 1000 * (1e-14 / h - h);
    titrated += 1000 * (Math.pow(10, -4.5) - 1e-14 / Math.pow(10, -4.5));
    assertEquals(
        closed,
        CarbonateSystem.totalCarbonDioxide(
                Solution.textbook(),
                TitrationAlkalinity.ofMilliequivalentsPerLitre(titrated, pH(4.5)),
                PH.of(value))
            .inMillimolesPerLitre(),
        1e-7 * closed);
  }

  private static double share(double value) {
    double h = Math.pow(10, -value);
    return (1 + 2 * K2 / h) / (1 + h / K1 + K2 / h);
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void totalAlkalinityAndPhAreFoundFromEachOther(Level level) {
    Solution others = hard().under(level);
    CarbonateAlkalinity alkalinity = CarbonateAlkalinity.ofMilliequivalentsPerLitre(4.1);
    Solution water =
        others.with(
            Component.CARBONATE, CarbonateSystem.totalCarbonDioxide(others, alkalinity, pH(7.7)));
    assertEquals(
        4.1,
        CarbonateSystem.carbonateAlkalinity(water, pH(7.7)).inMilliequivalentsPerLitre(),
        1e-9);
    assertEquals(7.7, CarbonateSystem.pH(water, alkalinity).value(), 1e-8);
    Solution closed = water.closedTo(pH(7.7));
    TitrationAlkalinity titration = CarbonateSystem.titrationAlkalinity(closed, pH(4.3));
    assertEquals(
        water.total(Component.CARBONATE).inMillimolesPerLitre(),
        CarbonateSystem.totalCarbonDioxide(others, titration, pH(7.7)).inMillimolesPerLitre(),
        1e-3);
  }

  @Test
  void calciumInPairsCountsAsAlkalinity() {
    Solution water = hard().with(Component.CARBONATE, mmolPerL(4));
    double paired = CarbonateSystem.carbonateAlkalinity(water, pH(8)).inMilliequivalentsPerLitre();
    assertTrue(
        paired
            > CarbonateSystem.carbonateAlkalinity(water.under(Level.ACTIVITY), pH(8))
                .inMilliequivalentsPerLitre());
  }

  @Test
  void noAlkalinityIsNoCarbonDioxide() {
    assertEquals(
        mmolPerL(0),
        CarbonateSystem.totalCarbonDioxide(
            hard(), CarbonateAlkalinity.ofMilliequivalentsPerLitre(0), pH(7)));
  }

  @Test
  void whatCannotBeIsRefused() {
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                CarbonateSystem.totalCarbonDioxide(
                    hard(), CarbonateAlkalinity.ofMilliequivalentsPerLitre(4), pH(2)));
    assertTrue(error.getMessage().startsWith("pH: pH 2 is not possible"), error.getMessage());
    assertThrows(
        IllegalArgumentException.class,
        () ->
            CarbonateSystem.totalCarbonDioxide(
                hard(), TitrationAlkalinity.ofMilliequivalentsPerLitre(4, pH(4.5)), pH(4.5)));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            CarbonateSystem.totalCarbonDioxide(
                hard(), TitrationAlkalinity.ofMilliequivalentsPerLitre(0.001, pH(4.5)), pH(7)));
    Solution water = hard().with(Component.CARBONATE, mmolPerL(2));
    assertThrows(
        IllegalArgumentException.class,
        () -> CarbonateSystem.pH(water, CarbonateAlkalinity.ofMilliequivalentsPerLitre(4.1)));
  }

  private static String refused(TitrationAlkalinity alkalinity, double pH) {
    return String.valueOf(
        assertThrows(
                IllegalArgumentException.class,
                () -> CarbonateSystem.totalCarbonDioxide(Solution.textbook(), alkalinity, pH(pH)))
            .getMessage());
  }

  /** From pH 7 to 4.5 pure water takes up 10^-4.5 - 10^-9.5 mol/L of acid, x 50.043 g. */
  @Test
  void aTitrationThatWaterAloneExceedsIsRefusedWithWhatItTakes() {
    assertEquals(
        "alkalinity: 0.50043 mg/L as CaCO3, to pH 4.5 is not possible at pH 7; without any carbon"
            + " dioxide the water takes up 1.58248 mg/L as CaCO3, to pH 4.5",
        refused(TitrationAlkalinity.ofMilliequivalentsPerLitre(0.01, pH(4.5)), 7));
    assertEquals(
        "pH: pH 4.5 is not possible; a water with an alkalinity of 200.172 mg/L as CaCO3, to pH 4.5 lies above"
            + " its end point",
        refused(TitrationAlkalinity.ofMilliequivalentsPerLitre(4, pH(4.5)), 4.5));
  }
}
