package org.brewchem.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
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
    assertEquals("2.636 g/L, U 0.001 (k = 2)", GRAMS.text(read(2.6361, 0.00025)));
    assertEquals("2.636 g/L, U 0.00048 (k = 2)", GRAMS.text(read(2.6361, 0.00024)));
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
  void aScalePrintsWhatStandsBesideItsNumbers() {
    assertEquals("g/L", GRAMS.toString());
    assertEquals("pH", Scales.PH_SCALE.toString());
    assertEquals("", Scale.number("", 2).toString());
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

  /** d(10^-pH)/dpH = -ln 10 · 10^-pH, by hand. */
  @Test
  void aBentScaleIsFollowedByItsSlope() {
    Scale<Double> negativeLogarithm = Scale.number("", 2);
    Scale<Double> activity = Scale.of("", x -> Math.pow(10, -x), a -> -Math.log10(a), 6);
    Source source = Source.of("pH", 4, 0.02, "");
    Traced converted = negativeLogarithm.convert(Traced.of(source), activity);
    assertEquals(1e-4, converted.value(), 1e-16);
    assertEquals(-2.303e-4, converted.sensitivity(source), 0.01 * 2.303e-4);
  }

  /** An invented acid of 80 g per equivalent; a litre of the liquid weighs 1250 g. */
  @Test
  void anAcidityIsStatedAsGramsOfAnAcid() {
    PH endPoint = PH.of(8.2);
    AcidBasis acid = new InventedAcid();
    TitratableAcidity acidity = TitratableAcidity.ofMilliequivalentsPerLitre(25, endPoint);
    Scale<TitratableAcidity> perLitre = Scales.acidityAs(acid, endPoint);
    Scale<TitratableAcidity> perVolume = Scales.acidityPer100MillilitresAs(acid, endPoint);
    Scale<TitratableAcidity> perMass =
        Scales.acidityPer100GramsAs(acid, Density.ofKilogramsPerCubicMetre(1250), endPoint);
    assertEquals("2.000 g/L as invented acid, to pH 8.2", perLitre.text(perLitre.in(acidity)));
    assertEquals(
        "0.2000 g/100 mL as invented acid, to pH 8.2", perVolume.text(perVolume.in(acidity)));
    assertEquals("0.1600 g/100 g as invented acid, to pH 8.2", perMass.text(perMass.in(acidity)));
    for (Scale<TitratableAcidity> scale : List.of(perLitre, perVolume, perMass)) {
      assertEquals(25, scale.of(scale.in(acidity)).inMilliequivalentsPerLitre(), 1e-12);
    }
  }

  /** To pH 7 a beer takes less alkali than to 8.2: neither number may be shown as the other. */
  @Test
  void aValueToAnotherEndPointIsRefused() {
    PH endPoint = PH.of(8.2);
    AcidBasis acid = new InventedAcid();
    TitratableAcidity toSeven = TitratableAcidity.ofMilliequivalentsPerLitre(20, PH.of(7));
    for (Scale<TitratableAcidity> scale :
        List.of(
            Scales.acidity(endPoint),
            Scales.acidityAs(acid, endPoint),
            Scales.acidityPer100MillilitresAs(acid, endPoint))) {
      String refusal =
          assertThrows(IllegalArgumentException.class, () -> scale.in(toSeven)).getMessage();
      assertTrue(refusal.contains("end point of pH 7 "), refusal);
      assertTrue(refusal.contains("end point of pH 8.2"), refusal);
    }
    TitrationAlkalinity toMethylOrange =
        TitrationAlkalinity.ofMilliequivalentsPerLitre(2, PH.of(4.5));
    for (Scale<TitrationAlkalinity> scale :
        List.of(
            Scales.titrationAlkalinity(endPoint), Scales.titrationAlkalinityAsCaCO3(endPoint))) {
      assertThrows(IllegalArgumentException.class, () -> scale.in(toMethylOrange));
    }
    assertEquals(2, Scales.titrationAlkalinity(PH.of(4.5)).in(toMethylOrange));
  }

  private record InventedAcid() implements AcidBasis {
    @Override
    public String name() {
      return "invented acid";
    }

    @Override
    public double gramsPerEquivalent() {
      return 80;
    }
  }

  @Test
  void wrongDecimalsAndBlankNamesAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> Scale.number("", 13));
    assertThrows(IllegalArgumentException.class, () -> Scale.number("", -1));
    assertThrows(
        IllegalArgumentException.class, () -> Scale.beforeTheNumber(" ", PH::value, PH::of, 2));
  }

  /** Below 1, and where a larger number is forbidden, a slope is taken all the same. */
  @Test
  void aSlopeIsTakenOnTheScaleOfTheNumberAndToTheSideThatIsAllowed() {
    Scale<Double> activity = Scale.number("mol/L", 6);
    Scale<Double> pH = Scale.of("", a -> -Math.log10(a), x -> Math.pow(10, -x), 3);
    Source source = Source.of("activity", 1e-4, 1e-6, "mol/L");
    assertEquals(
        -1 / (Math.log(10) * 1e-4),
        activity.convert(Traced.of(source), pH).sensitivity(source),
        1e-3 / 1e-4);
    Scale<Double> share =
        Scale.of(
            "%",
            x -> x,
            x -> {
              if (x > 100) {
                throw new IllegalArgumentException(x + " %");
              }
              return x;
            },
            2);
    Scale<Double> ratio = Scale.of("g/g", x -> x / 100, x -> 100 * x, 4);
    Scale<Double> amount =
        Scale.of(
            "g",
            x -> x,
            x -> {
              if (x < 0) {
                throw new IllegalArgumentException(x + " g");
              }
              return x;
            },
            2);
    Scale<Double> milli = Scale.of("mg", x -> 1000 * x + 5, x -> (x - 5) / 1000, 2);
    Source none = Source.of("amount", 0, 0.1, "g");
    assertEquals(1000, amount.convert(Traced.of(none), milli).sensitivity(none), 1e-6);
    Source assay = Source.of("assay", 99.95, 0.1, "%");
    assertEquals(0.01, share.convert(Traced.of(assay), ratio).sensitivity(assay), 1e-9);
  }

  /** A trace is not printed as 0, and not coarser than its uncertainty. */
  @Test
  void aSmallNumberShowsTwoDigits() {
    Scale<Double> mg = Scale.number("mg/L", 1);
    assertEquals("0.040 mg/L", mg.text(0.04));
    assertEquals("-0.040 mg/L", mg.text(-0.04));
    assertEquals("0.1 mg/L", mg.text(0.12));
    assertEquals("0.1 mg/L", mg.text(0.1));
    assertEquals("0.0050 mg/L", mg.text(0.005));
    assertEquals("0.00020 mg/L", mg.text(0.0002));
    assertEquals("0.0 mg/L", mg.text(0.00009));
    assertEquals("0.0 mg/L", mg.text(0));
    assertEquals(
        "0.050 mg/L, U 0.010 (k = 2)", mg.text(Traced.of(Source.of("iron", 0.05, 0.005, "mg/L"))));
    assertEquals(
        "0.23 mg/L, U 0.0040 (k = 2)", mg.text(Traced.of(Source.of("iron", 0.231, 0.002, "mg/L"))));
    // No more than its own uncertainty: the decimals of a reader.
    assertEquals(
        "0.1 mg/L, U 0.1 (k = 2)", mg.text(Traced.of(Source.of("iron", 0.05, 0.025, "mg/L"))));
    assertEquals(
        "0.0 mg/L, U 0.1 (k = 2)", mg.text(Traced.of(Source.of("iron", 0.04, 0.05, "mg/L"))));
    assertEquals(
        "92.1 mg/L, U 0.4 (k = 2)", mg.text(Traced.of(Source.of("calcium", 92.07, 0.2, "mg/L"))));
  }
}
