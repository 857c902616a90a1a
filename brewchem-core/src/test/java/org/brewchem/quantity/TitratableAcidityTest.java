package org.brewchem.quantity;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class TitratableAcidityTest {

  private record Basis(String name, double gramsPerEquivalent) implements AcidBasis {}

  private static final AcidBasis LACTIC = new Basis("lactic acid", 90.078);
  private static final AcidBasis TARTARIC = new Basis("tartaric acid", 75.0435);

  /** 1 mL of 0.1 mol/L alkali is 0.1 mmol of protons; on 100 mL of sample that is 1 mEq/L. */
  @Test
  void millilitresOfDecimolarAlkaliPer100MillilitresAreMilliequivalentsPerLitre() {
    TitratableAcidity acidity =
        TitratableAcidity.ofMillilitresOfDecimolarAlkaliPer100Millilitres(30, pH(8.2));
    assertEquals(30, acidity.inMilliequivalentsPerLitre());
    assertEquals(2.70234, acidity.inGramsPerLitreAs(LACTIC), 1e-14);
    assertEquals(0.270234, acidity.inGramsPer100MillilitresAs(LACTIC), 1e-15);
    assertEquals(0.270234 / 1.012, acidity.inGramsPer100GramsAs(LACTIC, gPerML(1.012)), 1e-15);
  }

  @Test
  void theBasisIsAWayOfWritingAndNotPartOfTheValue() {
    TitratableAcidity acidity = acidity(gPerL(2.80), LACTIC, pH(8.2));
    assertEquals(2.80, acidity.inGramsPerLitreAs(LACTIC), 1e-15);
    assertEquals(2.80 * 75.0435 / 90.078, acidity.inGramsPerLitreAs(TARTARIC), 1e-15);
    assertEquals(
        acidity.inGramsPerLitreAs(TARTARIC),
        acidity.asMassConcentration(TARTARIC).inGramsPerLitre(),
        1e-15);
    assertEquals(pH(8.2), acidity.endPoint());
  }

  @Test
  void aciditiesCombineAtOneEndPointOnly() {
    TitratableAcidity one = acidity(gPerL(2), LACTIC, pH(8.2));
    TitratableAcidity other = acidity(gPerL(0.5), LACTIC, pH(8.2));
    assertEquals(2.5, one.plus(other).inGramsPerLitreAs(LACTIC), 1e-15);
    assertEquals(-1.5, other.minus(one).inGramsPerLitreAs(LACTIC), 1e-15);
    assertEquals(6, one.times(3).inGramsPerLitreAs(LACTIC), 1e-14);
    TitratableAcidity elsewhere = acidity(gPerL(2), LACTIC, pH(7));
    assertNotEquals(one, elsewhere);
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> one.plus(elsewhere));
    assertEquals(
        "titratable acidity: an end point of pH 8.2 does not go with an end point of pH 7; "
            + "both values need the same end point",
        error.getMessage());
    assertThrows(IllegalArgumentException.class, () -> one.minus(elsewhere));
    assertThrows(IllegalArgumentException.class, () -> one.compareTo(elsewhere));
  }

  @Test
  void aBasisWithoutAnEquivalentIsRefused() {
    AcidBasis nothing = new Basis("nothing", 0);
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> acidity(gPerL(2.80), nothing, pH(8.2)));
    assertEquals(
        "equivalent of nothing: 0 g/Eq is not possible; more than 0 is allowed",
        error.getMessage());
  }

  @Test
  void anAlkalineSampleHasNoAcidConcentration() {
    TitratableAcidity negative = TitratableAcidity.ofMilliequivalentsPerLitre(-1, pH(8.2));
    assertEquals(-0.090078, negative.inGramsPerLitreAs(LACTIC), 1e-16);
    assertThrows(IllegalArgumentException.class, () -> negative.asMassConcentration(LACTIC));
  }

  @Property
  void gramsPer100GramsTimesDensityAreGramsPer100Millilitres(
      @ForAll @DoubleRange(min = 0.001, max = 30) @Scale(9) double gramsPerLitre,
      @ForAll @DoubleRange(min = 0.9, max = 1.2) @Scale(9) double density) {
    TitratableAcidity acidity = TitratableAcidity.ofGramsPerLitreAs(gramsPerLitre, LACTIC, pH(8.2));
    assertEquals(
        acidity.inGramsPer100MillilitresAs(LACTIC),
        acidity.inGramsPer100GramsAs(LACTIC, gPerML(density)) * density,
        1e-14);
  }
}
