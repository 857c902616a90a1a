package org.brewchem.quantity;

import static org.brewchem.quantity.Quantities.alkalinityAsCaCO3;
import static org.brewchem.quantity.Quantities.carbonateAlkalinityAsCaCO3;
import static org.brewchem.quantity.Quantities.germanDegrees;
import static org.brewchem.quantity.Quantities.hardnessAsCaCO3;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class AlkalinityAndHardnessTest {

  /** By definition, with the CIAAW 2021 weights Ca 40.078, C 12.011, O 15.999, H 1.008. */
  @Test
  void theScalesFollowTheirDefinitions() {
    double caO = 40.078 + 15.999;
    double caCO3 = 40.078 + 12.011 + 3 * 15.999;
    double bicarbonate = 1.008 + 12.011 + 3 * 15.999;
    Hardness one = Hardness.ofMilliequivalentsPerLitre(1);
    assertEquals(caCO3 / 2, one.inMilligramsPerLitreAsCaCO3(), 1e-12);
    assertEquals(0.5, one.inMillimolesPerLitre());
    assertEquals(10 / caO, germanDegrees(1).inMillimolesPerLitre(), 1e-15);
    assertEquals(10, Hardness.ofFrenchDegrees(1).inMilligramsPerLitreAsCaCO3(), 1e-13);
    assertEquals(
        64.79891 / 4.54609, Hardness.ofEnglishDegrees(1).inMilligramsPerLitreAsCaCO3(), 1e-13);
    assertEquals(
        64.79891 / 3.785411784,
        Hardness.ofUsGrainsPerGallon(1).inMilligramsPerLitreAsCaCO3(),
        1e-13);
    assertEquals(
        bicarbonate,
        CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsBicarbonate(),
        1e-12);
  }

  @Test
  void everyMeaningSharesTheScales() {
    double degrees = 8.0;
    double milliequivalents = germanDegrees(degrees).inMilliequivalentsPerLitre();
    assertEquals(
        milliequivalents,
        CarbonateAlkalinity.ofGermanDegrees(degrees).inMilliequivalentsPerLitre());
    assertEquals(
        milliequivalents, ResidualAlkalinity.ofGermanDegrees(degrees).inMilliequivalentsPerLitre());
    assertEquals(
        milliequivalents,
        TitrationAlkalinity.ofGermanDegrees(degrees, pH(4.3)).inMilliequivalentsPerLitre());
  }

  @Test
  void aReportBecomesAValueOnlyWithItsBasis() {
    assertEquals(215, hardnessAsCaCO3(mgPerL(215)).inMilligramsPerLitreAsCaCO3(), 1e-12);
    assertEquals(pH(4.5), alkalinityAsCaCO3(mgPerL(215)).endPoint());
    assertEquals(pH(4.3), alkalinityAsCaCO3(mgPerL(215), pH(4.3)).endPoint());
    assertEquals(215, carbonateAlkalinityAsCaCO3(mgPerL(215)).inMilligramsPerLitreAsCaCO3(), 1e-12);
    assertEquals(
        5, CarbonateAlkalinity.fromBicarbonate(mgPerL(305.08)).inMilliequivalentsPerLitre(), 1e-14);
    assertEquals(
        5,
        TitrationAlkalinity.fromBicarbonate(mgPerL(305.08), pH(4.3)).inMillimolesOfAcidPerLitre(),
        1e-14);
  }

  @Test
  void equalNumbersOfDifferentMeaningsDiffer() {
    Object hardness = Hardness.ofMilliequivalentsPerLitre(2);
    Object carbonate = CarbonateAlkalinity.ofMilliequivalentsPerLitre(2);
    Object titrated = TitrationAlkalinity.ofMilliequivalentsPerLitre(2, pH(4.5));
    assertNotEquals(hardness, carbonate);
    assertNotEquals(carbonate, titrated);
    assertNotEquals(titrated, carbonate);
    assertNotEquals(titrated, TitrationAlkalinity.ofMilliequivalentsPerLitre(2, pH(4.3)));
  }

  @Test
  void titrationAlkalinitiesCombineAtOneEndPointOnly() {
    TitrationAlkalinity one = TitrationAlkalinity.ofMilliequivalentsPerLitre(3, pH(4.5));
    TitrationAlkalinity other = TitrationAlkalinity.ofMilliequivalentsPerLitre(1, pH(4.5));
    assertEquals(4, one.plus(other).inMilliequivalentsPerLitre());
    assertEquals(-2, other.minus(one).inMilliequivalentsPerLitre());
    assertEquals(6, one.times(2).inMilliequivalentsPerLitre());
    TitrationAlkalinity elsewhere = TitrationAlkalinity.ofMilliequivalentsPerLitre(1, pH(4.3));
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> one.plus(elsewhere));
    assertEquals(
        "titration alkalinity: an end point of pH 4.5 does not go with an end point of pH 4.3; "
            + "both values need the same end point",
        error.getMessage());
    assertThrows(IllegalArgumentException.class, () -> one.minus(elsewhere));
    assertThrows(IllegalArgumentException.class, () -> one.compareTo(elsewhere));
  }

  @Test
  void residualAlkalinityMayBeNegativeAndHardnessNot() {
    assertEquals(
        -20,
        ResidualAlkalinity.ofMilligramsPerLitreAsCaCO3(-20).inMilligramsPerLitreAsCaCO3(),
        1e-13);
    assertThrows(IllegalArgumentException.class, () -> germanDegrees(-1));
    assertThrows(IllegalArgumentException.class, () -> CarbonateAlkalinity.ofGermanDegrees(-1));
  }
}
