package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.atm;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.kPa;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.quantity.Carbonation;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CarbonDioxidePressureTest {

  /** Source: 44.009 g/mol over 22.41396954 L/mol, the molar volume of CODATA 2018. */
  @Test
  void aVolumeIsTheGasThatFillsTheLiquidsVolume() {
    assertEquals(44.009 / 22.41396954, Carbonation.ofVolumes(1).inGramsPerLitre(), 1e-8);
    assertEquals(
        2.6, Carbonation.from(Carbonation.ofVolumes(2.6).asMassConcentration()).inVolumes(), 1e-14);
  }

  /**
   * Source: Bunsen coefficients of carbon dioxide in water as handbooks of chemistry print them
   * (from memory): volumes of gas of 0 °C and 1 atm that a volume of water takes up under 1 atm.
   * The older measurements and Plummer and Busenberg differ by up to 2 %, most at 0 °C.
   */
  @ParameterizedTest
  @CsvSource({"0, 1.713", "10, 1.194", "20, 0.878", "25, 0.759", "30, 0.665", "40, 0.530"})
  void waterTakesUpWhatTablesOfAbsorptionSay(double celsius, double volumes) {
    assertEquals(
        volumes,
        CarbonDioxidePressure.carbonationUnder(atm(1), celsius(celsius)).inVolumes(),
        0.02 * volumes);
  }

  @Test
  void pressureAndCarbonationAreInverse() {
    Carbonation carbonation = Carbonation.ofGramsPerLitre(5.2);
    assertEquals(
        5.2,
        CarbonDioxidePressure.carbonationUnder(
                CarbonDioxidePressure.over(carbonation, celsius(4)), celsius(4))
            .inGramsPerLitre(),
        1e-13);
    assertTrue(
        CarbonDioxidePressure.over(carbonation, celsius(20))
                .compareTo(CarbonDioxidePressure.over(carbonation, celsius(4)))
            > 0);
  }

  @Test
  void aSolutionOpenToThatPressureHoldsIt() {
    Solution acid = Solution.at(celsius(10)).with(Acid.HYDROCHLORIC, mmolPerL(10));
    assertEquals(
        CarbonDioxidePressure.carbonationUnder(kPa(150), celsius(10))
            .asAmountConcentration()
            .inMolesPerLitre(),
        OpenSolution.of(acid, kPa(150)).solution().total(Component.CARBONATE).inMolesPerLitre(),
        1e-4 * 0.08);
  }

  /**
   * Source: at pH 8.2, half-way between the two pKa of carbonic acid, a mole of CO2 has given off
   * one proton within a percent; 1 g/L is 1/44.009 mol/L, and 90.078 g of lactic acid an
   * equivalent.
   */
  @Test
  void aGramPerLitreLeftReadsAsTwoOfLacticAcid() {
    Solution beer =
        Solution.at(celsius(20))
            .with(Acid.PHOSPHORIC, mmolPerL(6))
            .with(Acid.LACTIC, mmolPerL(3))
            .with(Ion.POTASSIUM, mmolPerL(12))
            .with(Ion.CALCIUM, mmolPerL(1.5))
            .closedTo(pH(4.4));
    TitratableAcidity error = beer.acidityOfCarbonDioxide(gPerL(1), pH(8.2));
    assertEquals(90.078 / 44.009, error.inGramsPerLitreAs(Acid.LACTIC), 0.02);
    assertEquals(1000 / 44.009, error.inMilliequivalentsPerLitre(), 0.23);
    assertEquals(pH(8.2), error.endPoint());
    assertEquals(
        error.inMilliequivalentsPerLitre(),
        beer.with(Acid.CARBONIC, mmolPerL(40))
            .acidityOfCarbonDioxide(gPerL(1), pH(8.2))
            .inMilliequivalentsPerLitre(),
        1e-12);
    assertEquals(
        0, beer.acidityOfCarbonDioxide(gPerL(0), pH(8.2)).inMilliequivalentsPerLitre(), 1e-12);
  }

  @Test
  void itSaysWhatItIs() {
    assertEquals("5 g/L of CO2", Carbonation.ofGramsPerLitre(5).toString());
    assertEquals(Carbonation.ofVolumes(2), Carbonation.ofVolumes(2));
    assertTrue(Carbonation.ofVolumes(2).compareTo(Carbonation.ofVolumes(3)) < 0);
  }

  @Test
  void impossibleCarbonationsAndTemperaturesAreRefused() {
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> Carbonation.ofVolumes(-1));
    assertEquals(
        "carbonation: -1 volumes is not possible; 0 or more is allowed", thrown.getMessage());
    assertThrows(
        IllegalArgumentException.class,
        () -> CarbonDioxidePressure.carbonationUnder(kPa(100), celsius(95)));
  }
}
