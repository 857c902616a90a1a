package org.brewchem.beer;

import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.brewchem.solution.Figures.titratableAcidity;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.brewchem.buffer.Buffer;
import org.brewchem.buffer.BufferCode;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Code;
import org.brewchem.figure.Comparison;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Target;
import org.brewchem.figure.Verdict;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.TitrationCode;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BeerTest {

  private static TitratableAcidity asLactic(double gramsPerLitre) {
    return Beers.asLactic(gramsPerLitre);
  }

  private static boolean says(Liquid liquid, Code code) {
    return liquid.notices().stream().anyMatch(notice -> notice.code() == code);
  }

  @Test
  void aBeerComesBackWithTheUncertaintyItWasReadWith() {
    Beer beer =
        Beer.of(pH(4.40), asLactic(1.8))
            .withStandardUncertaintyOfPH(0.02)
            .withStandardUncertaintyOfAcidity(asLactic(0.02));
    assertEquals("pH 4.40, U 0.04 (k = 2)", beer.pH().toString());
    // From the balance too, which knows the pH by which it was closed.
    Traced pH = beer.contents().pH();
    assertEquals(4.40, pH.value(), 1e-9);
    assertEquals(0.02, pH.standardUncertainty().orElseThrow(), 1e-6);
    Beer untouched = beer.after();
    assertEquals(0.02, untouched.pH().standardUncertainty().orElseThrow(), 1e-6);
    Answer<TitratableAcidity> acidity = untouched.titratableAcidity();
    assertEquals(1.8, acidity.number(), 1e-9);
    assertEquals(0.02, acidity.standardUncertainty().orElseThrow(), 1e-6);
  }

  @Test
  void theKeyFiguresSayWhereTheyComeFrom() {
    Water water =
        WaterReport.reported()
            .sulfate(mgPerL(90), mgPerL(3))
            .chloride(mgPerL(60), mgPerL(4))
            .build()
            .water();
    Beer beer =
        Beer.of(pH(4.35), asLactic(1.8)).with(Ion.CALCIUM, mgPerL(60), mgPerL(2)).brewedWith(water);
    assertEquals(Origin.MEASURED, beer.pH().origin());
    assertEquals(Origin.MEASURED, beer.calcium().origin());
    assertEquals("60.0 mg/L, U 4.0 (k = 2)", beer.calcium().toString());
    Answer<Double> ratio = beer.sulfateToChloride();
    assertEquals(1.5, ratio.value(), 1e-12);
    assertEquals(
        Math.hypot(3.0 / 60, 1.5 * 4 / 60), ratio.standardUncertainty().orElseThrow(), 1e-6);
    assertTrue(ratio.notices().stream().anyMatch(n -> n.code() == BeerCode.KNOWN_FROM_WATER_ONLY));
    assertEquals(Origin.CARRIED_OVER, beer.step(SULFATE).origin());
    assertTrue(beer.pH().standardUncertainty().isEmpty());
    assertEquals(1, beer.pH().uncertaintiesMissing().size());
  }

  @Test
  void whatIsNotKnownIsUnknown() {
    Beer beer = Beer.of(pH(4.35), asLactic(1.8));
    assertEquals("unknown: calcium is not reported", beer.calcium().toString());
    assertFalse(beer.sulfateToChloride().isStated());
  }

  @Test
  void onlyWhatWasMeasuredInTheBeerIsInItsSolution() {
    Water water = WaterReport.reported().calcium(mgPerL(90)).magnesium(mgPerL(80)).build().water();
    Beer beer =
        Beer.of(pH(4.35), asLactic(1.8)).with(Ion.CALCIUM, mgPerL(40.078)).brewedWith(water);
    assertEquals(1, beer.solution().total(Component.CALCIUM).inMillimolesPerLitre(), 1e-9);
    assertEquals(0, beer.solution().total(Component.MAGNESIUM).inMillimolesPerLitre());
    assertTrue(says(beer, BeerCode.KNOWN_FROM_WATER_ONLY));
    assertEquals(40.078, beer.calcium().number(), 1e-9);
  }

  /** Common practice, no source; the upper limit is tested with {@link AcidityResult}. */
  @ParameterizedTest
  @CsvSource({
    "1.8, 4.3, false, false",
    "5.9, 3.5, false, false",
    "10.1, 3.2, true, false",
    "16.8, 3.0, true, false",
    "17.1, 3.0, false, true",
    "30.0, 3.0, false, true"
  })
  void anAcidityThatIsHighIsRemarkedOn(
      double gramsPerLitre, double pH, boolean unusual, boolean carbonated) {
    Beer beer = Beer.of(pH(pH), asLactic(gramsPerLitre));
    assertEquals(unusual, says(beer, TitrationCode.ACIDITY_UNUSUAL));
    assertEquals(carbonated, says(beer, TitrationCode.SAMPLE_CARBONATED));
  }

  @Test
  void theStandInIsRemarkedOnAndSoAreItsLimits() {
    assertTrue(says(Beers.lager(), BufferCode.RESTS_ON_STAND_IN));
    assertFalse(says(Beers.lager(), BufferCode.STAND_IN_STRETCHED));
    assertTrue(says(Beers.sour(), BufferCode.STAND_IN_STRETCHED));
    assertFalse(says(Beer.of(pH(4.4), asLactic(0.8)), BufferCode.STAND_IN_STRETCHED));
    assertTrue(says(Beer.of(pH(4.4), asLactic(0.4)), BufferCode.STAND_IN_STRETCHED));
    Beer below = Beer.of(pH(3), asLactic(0.08));
    assertTrue(says(below, BeerCode.ACIDITY_BELOW_STAND_IN));
    assertEquals(3.0, below.pH().number());
    assertFalse(below.titratableAcidity(pH(7)).isStated());
  }

  @Test
  void anotherBufferReplacesTheStandIn() {
    Beer beer = Beer.of(pH(4.0), asLactic(2.0)).buffered(new LactateOnly());
    assertEquals(4.0, beer.solution().pH().value(), 1e-10);
    assertTrue(says(beer, BeerCode.BUFFER_DISAGREES));
    assertFalse(says(beer, BufferCode.RESTS_ON_STAND_IN));
    // What was titrated comes back all the same.
    assertEquals(2.0, beer.after().titratableAcidity().number(), 1e-9);
  }

  @Test
  void aTitrationBringsItsUncertainty() {
    AcidityResult titrated =
        Titrant.sodiumHydroxide()
            .of(molPerL(0.1), molPerL(0.0002))
            .titrate(mL(50))
            .to(pH(8.2))
            .took(mL(10.02), mL(9.98))
            .acidity();
    Answer<TitratableAcidity> acidity = Beer.of(pH(4.35), titrated).titratableAcidity();
    assertEquals(titrated.as(LACTIC).toString(), acidity.toString());
    assertEquals(
        titrated.as(LACTIC).standardUncertainty().orElseThrow(),
        acidity.standardUncertainty().orElseThrow(),
        1e-12);
  }

  @Test
  void impossibleBeersAreRefused() {
    IllegalArgumentException above =
        assertThrows(IllegalArgumentException.class, () -> Beer.of(pH(8.5), asLactic(1.8)));
    assertEquals(
        "pH of the beer: 8.5 is not possible; less than the end point, pH 8.2, is allowed",
        above.getMessage());
    assertThrows(IllegalArgumentException.class, () -> Beer.of(pH(8.2), asLactic(1.8)));
    assertThrows(IllegalArgumentException.class, () -> Beer.of(pH(4.3), asLactic(-1)));
    Beer beer = Beer.of(pH(4.3), asLactic(1.8));
    TitratableAcidity toSeven = acidity(gPerL(0.01), LACTIC, pH(7));
    assertThrows(
        IllegalArgumentException.class, () -> beer.withStandardUncertaintyOfAcidity(toSeven));
    assertThrows(IllegalArgumentException.class, () -> beer.withStandardUncertaintyOfPH(-0.01));
    assertThrows(IllegalArgumentException.class, () -> beer.measuredAt(celsius(120)));
    assertThrows(IllegalStateException.class, () -> beer.after().withStandardUncertaintyOfPH(0.01));
  }

  @Test
  void everyAnswerIsExplained() {
    for (Beer beer : new Beer[] {Beers.lager(), Beers.lager().after()}) {
      for (Figure<?> figure :
          Figure.list(
              PH_VALUE,
              CALCIUM,
              SULFATE_TO_CHLORIDE,
              titratableAcidity(pH(8.2)),
              titratableAcidity(pH(7.0)))) {
        Answer<?> answer = beer.answer(figure);
        assertTrue(answer.explain().holds(), () -> figure + "\n" + answer.explain());
        assertFalse(answer.explain().lines().isEmpty());
      }
    }
  }

  @Test
  void aBeerWithoutAnyUncertaintyIsJudgedByTheValueAlone() {
    Target target =
        Target.named("invented")
            .with(atLeast(titratableAcidity(pH(8.2)), asLactic(1.801)))
            .with(between(PH_VALUE, pH(4.1), pH(4.4)))
            .with(atLeast(CALCIUM, mgPerL(50)));
    Comparison comparison = target.compare(Beer.of(pH(4.35), asLactic(1.8)));
    Comparison.Judgement acidity = comparison.of(titratableAcidity(pH(8.2))).orElseThrow();
    assertEquals(Verdict.BELOW, acidity.verdict());
    assertTrue(acidity.byTheValueAlone());
    assertTrue(acidity.toString().contains("below by 0.001"), acidity.toString());
    assertEquals(Verdict.UNKNOWN, comparison.of(CALCIUM).orElseThrow().verdict());
    assertFalse(comparison.allWithin());
    Comparison measured = target.compare(Beers.lager());
    assertFalse(measured.of(PH_VALUE).orElseThrow().byTheValueAlone());
    assertEquals(
        Verdict.UNDECIDED, measured.of(titratableAcidity(pH(8.2))).orElseThrow().verdict());
  }

  /** Invented: 40 mmol/L of lactate and nothing else, known to 10 %. */
  static final class LactateOnly implements Buffer {

    private final Traced lactate = Traced.of(Source.of("lactate", 40, 4, "mmol/L")).times(0.001);

    @Override
    public Contents contents(Contents known, Traced pH) {
      return known
          .plus(Map.of(Component.LACTATE, lactate.times(1 / known.kilogramsPerLitre())))
          .closedTo(pH);
    }

    @Override
    public Optional<Notice> extrapolatedAt(PH pH) {
      return Optional.empty();
    }
  }

  /** The limits themselves: a tenth of a per cent to either side. */
  @Test
  void theLimitOfAnUnusualAcidityIsTenGramsPerLitre() {
    assertFalse(says(Beer.of(pH(3.2), asLactic(9.99)), TitrationCode.ACIDITY_UNUSUAL));
    assertTrue(says(Beer.of(pH(3.2), asLactic(10.01)), TitrationCode.ACIDITY_UNUSUAL));
  }

  /** Counted of the measured one: 1 / 0.95 and 1 / 1.05 of the buffer's. */
  @ParameterizedTest
  @CsvSource({"1.0525, false", "1.053, true", "0.953, false", "0.952, true"})
  void anAcidityFivePerCentOffItsBufferDisagrees(double ofTheBuffer, boolean disagrees) {
    LactateOnly buffer = new LactateOnly();
    double own =
        Beer.of(pH(4.0), asLactic(2.0))
            .buffered(buffer)
            .solution()
            .titratableAcidity(pH(8.2))
            .inGramsPerLitreAs(LACTIC);
    Beer beer = Beer.of(pH(4.0), asLactic(own * ofTheBuffer)).buffered(buffer);
    assertEquals(disagrees, says(beer, BeerCode.BUFFER_DISAGREES));
    Beer off = Beer.of(pH(4.0), asLactic(1.1 * own)).buffered(buffer);
    // A tenth of the buffer's own is 1 / 11 of what was measured.
    assertTrue(
        off.notices().stream()
            .anyMatch(
                notice ->
                    notice
                        .text()
                        .equals("the measured acidity lies +9.1 % from that of the buffer")));
  }
}
