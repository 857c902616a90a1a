package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.brewchem.buffer.Buffer;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Contents;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.Titrant;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BeerTest {

  private static Set<BeerFinding.Kind> kinds(List<BeerFinding> findings) {
    return findings.stream().map(BeerFinding::kind).collect(Collectors.toSet());
  }

  @Test
  void theKeyFiguresSayWhereTheyComeFrom() {
    KeyFigures figures =
        Beer.of(pH(4.35), asLactic(1.8))
            .with(Ion.CALCIUM, mgPerL(60), mgPerL(2), Origin.MEASURED_IN_BEER)
            .with(Ion.SULFATE, mgPerL(90), mgPerL(3), Origin.TAKEN_FROM_WATER)
            .with(Ion.CHLORIDE, mgPerL(60), mgPerL(4), Origin.TAKEN_FROM_WATER)
            .keyFigures();
    assertEquals(Origin.MEASURED_IN_BEER, figures.pH().orElseThrow().origin());
    assertEquals(Origin.MEASURED_IN_BEER, figures.calcium().orElseThrow().origin());
    Figure<Double> ratio = figures.sulfateToChloride().orElseThrow();
    assertEquals(1.5, ratio.value(), 1e-12);
    assertEquals(Origin.TAKEN_FROM_WATER, ratio.origin());
    assertEquals(
        Math.hypot(3.0 / 60, 1.5 * 4 / 60), ratio.standardUncertainty().orElseThrow(), 1e-12);
    assertTrue(figures.pH().orElseThrow().standardUncertainty().isEmpty());
    assertEquals(
        "pH 4.35 (measured in beer)\n"
            + "titratable acidity 1.80 g/L as lactic acid, to pH 8.2 (measured in beer)\n"
            + "sulfate to chloride 1.50, U 0.22 (k = 2) (taken from water)\n"
            + "calcium 60.0 mg/L, U 4.0 (k = 2) (measured in beer)",
        figures.toString());
  }

  @Test
  void whatIsNotKnownIsMissing() {
    Beer beer = Beer.of(pH(4.35), asLactic(1.8));
    assertTrue(beer.keyFigures().calcium().isEmpty());
    assertTrue(beer.keyFigures().sulfateToChloride().isEmpty());
    assertTrue(
        beer.with(Ion.SULFATE, mgPerL(90), Origin.TAKEN_FROM_WATER)
            .with(Ion.CHLORIDE, mgPerL(0), Origin.TAKEN_FROM_WATER)
            .keyFigures()
            .sulfateToChloride()
            .isEmpty());
    assertEquals("no key figures", KeyFigures.none().toString());
  }

  @Test
  void onlyWhatWasMeasuredInTheBeerIsInItsSolution() {
    Beer beer =
        Beer.of(pH(4.35), asLactic(1.8))
            .with(Ion.CALCIUM, mgPerL(40.078), Origin.MEASURED_IN_BEER)
            .with(Ion.MAGNESIUM, mgPerL(80), Origin.TAKEN_FROM_WATER);
    assertEquals(1, beer.solution().total(Component.CALCIUM).inMillimolesPerLitre(), 1e-9);
    assertEquals(0, beer.solution().total(Component.MAGNESIUM).inMillimolesPerLitre());
    assertTrue(kinds(beer.findings()).contains(BeerFinding.Kind.KNOWN_FROM_WATER_ONLY));
  }

  @Test
  void aPredictionIsNoMeasurement() {
    IllegalArgumentException thrown =
        assertThrows(
            IllegalArgumentException.class,
            () -> Beers.lager().with(Ion.CALCIUM, mgPerL(60), Origin.PREDICTED));
    assertTrue(thrown.getMessage().startsWith("calcium: predicted"), thrown.getMessage());
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
    Set<BeerFinding.Kind> kinds = kinds(Beer.of(pH(pH), asLactic(gramsPerLitre)).findings());
    assertEquals(unusual, kinds.contains(BeerFinding.Kind.ACIDITY_UNUSUAL));
    assertEquals(carbonated, kinds.contains(BeerFinding.Kind.ACIDITY_OF_CARBONATED_SAMPLE));
  }

  @Test
  void theStandInIsRemarkedOnAndSoAreItsLimits() {
    assertEquals(Set.of(BeerFinding.Kind.RESTS_ON_STAND_IN), kinds(Beers.lager().findings()));
    assertTrue(kinds(Beers.sour().findings()).contains(BeerFinding.Kind.STAND_IN_STRETCHED));
    assertTrue(
        kinds(Beer.of(pH(4.4), asLactic(0.5)).findings())
            .contains(BeerFinding.Kind.ACIDITY_BELOW_STAND_IN));
  }

  @Test
  void anotherBufferingReplacesTheStandIn() {
    Beer beer = Beer.of(pH(4.0), asLactic(2.0)).buffered(new LactateOnly());
    assertEquals(4.0, beer.solution().pH().value(), 1e-10);
    assertEquals(Set.of(BeerFinding.Kind.BUFFERING_DISAGREES), kinds(beer.findings()));
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
    Figure<?> acidity = Beer.of(pH(4.35), titrated).keyFigures().acidity().orElseThrow();
    assertEquals(20, acidity.number(), 0.01);
    assertEquals(
        titrated.budget().traced().standardUncertainty().orElseThrow(),
        acidity.standardUncertainty().orElseThrow(),
        1e-12);
  }

  @Test
  void theWaterFillsInWhatWasNotMeasured() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(90))
            .sulfate(mgPerL(45))
            .chloride(mgPerL(30))
            .build()
            .water();
    Beer beer =
        Beer.of(pH(4.35), asLactic(1.8))
            .with(Ion.CALCIUM, mgPerL(60), Origin.MEASURED_IN_BEER)
            .brewedWith(water);
    assertEquals(60, beer.keyFigures().calcium().orElseThrow().number());
    Figure<Double> ratio = beer.keyFigures().sulfateToChloride().orElseThrow();
    assertEquals(1.5, ratio.value(), 1e-12);
    assertEquals(Origin.TAKEN_FROM_WATER, ratio.origin());
    assertEquals(0, beer.solution().total(Component.SULFATE).inMillimolesPerLitre());
  }

  @Test
  void impossibleBeersAreRefused() {
    IllegalArgumentException above =
        assertThrows(IllegalArgumentException.class, () -> Beer.of(pH(8.5), asLactic(1.8)));
    assertEquals(
        "pH of the beer: 8.5 is not possible; less than the end point, pH 8.2, is allowed",
        above.getMessage());
    assertThrows(IllegalArgumentException.class, () -> Beer.of(pH(4.3), asLactic(-1)));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            Beer.of(pH(4.3), asLactic(1.8))
                .withStandardUncertainties(0.01, acidity(gPerL(0.01), LACTIC, pH(7))));
    assertThrows(
        IllegalArgumentException.class,
        () -> Beers.lager().withStandardUncertainties(-0.01, asLactic(0.01)));
    assertThrows(IllegalArgumentException.class, () -> Beers.lager().measuredAt(celsius(120)));
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
}
