package org.brewchem.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.OptionalDouble;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.PH;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class ScaleTest {

  private static final Scale<Double> GRAMS = Scale.number("g/L", 3);

  private static Traced read(double value, double u) {
    return Traced.stated("reading", value, OptionalDouble.of(u), "g/L");
  }

  @Test
  void decimalsFollowTheExpandedUncertaintyButNeverTheHabit() {
    assertEquals("2.64 g/L, U 0.12 (k = 2)", GRAMS.text(read(2.636, 0.06)));
    assertEquals("2.636 g/L, U 0.012 (k = 2)", GRAMS.text(read(2.6361, 0.006)));
    assertEquals("2.636 g/L, U 0.001 (k = 2)", GRAMS.text(read(2.6361, 0.0006)));
    assertEquals("2.636 g/L, U 0.00012 (k = 2)", GRAMS.text(read(2.6361, 0.00006)));
    assertEquals("253 g/L, U 24 (k = 2)", GRAMS.text(read(253.4, 12)));
  }

  @Test
  void withoutUncertaintyTheHabitDecides() {
    assertEquals("2.636 g/L", GRAMS.text(Traced.exact(2.6361)));
    assertEquals(
        "2.636 g/L", GRAMS.text(Traced.stated("reading", 2.6361, OptionalDouble.empty(), "g/L")));
    assertEquals("pH 4.38", Scales.PH_SCALE.text(4.3812));
    assertEquals("pH 4.20 to 4.50", Scales.PH_SCALE.range(4.2, 4.5));
    assertEquals("0.500 to 0.900 g/L", GRAMS.range(0.5, 0.9));
  }

  @Test
  void fewObservationsWidenTheFactorByStudent() {
    // t(0.975, 3 degrees of freedom) = 3.182: Student's table, from memory.
    Traced four = Traced.of(Source.of("mean of four", 2, 0.1, 3, "g/L"));
    assertEquals("2.00 g/L, U 0.32 (k = 3.18)", GRAMS.text(four));
  }

  @Test
  void convertingKeepsTheSources() {
    Scale<CarbonateAlkalinity> milliequivalents =
        Scale.of(
            "mEq/L",
            CarbonateAlkalinity::inMilliequivalentsPerLitre,
            CarbonateAlkalinity::ofMilliequivalentsPerLitre,
            3);
    Source source = Source.of("alkalinity", 4, 0.1, "mEq/L");
    Traced asCaCO3 = milliequivalents.convert(Traced.of(source), Scales.ALKALINITY_AS_CACO3);
    assertEquals(
        CarbonateAlkalinity.ofMilliequivalentsPerLitre(4).inMilligramsPerLitreAsCaCO3(),
        asCaCO3.value(),
        1e-9);
    assertEquals(asCaCO3.value() / 4, asCaCO3.sensitivity(source), 1e-9);
    Traced back = Scales.ALKALINITY_AS_CACO3.convert(asCaCO3, milliequivalents);
    assertEquals(1, back.sensitivity(source), 1e-9);
  }

  @Test
  void wrongDecimalsAndBlankNamesAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> Scale.number("", 13));
    assertThrows(IllegalArgumentException.class, () -> Scale.number("", -1));
    assertThrows(
        IllegalArgumentException.class, () -> Scale.beforeTheNumber(" ", PH::value, PH::of, 2));
  }
}
