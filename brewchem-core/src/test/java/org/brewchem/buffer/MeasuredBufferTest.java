package org.brewchem.buffer;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.OutOfRangeException;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Solute;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class MeasuredBufferTest {

  private static final AmountConcentration DECIMOLAR = molPerL(0.1);

  /** An invented beer, sourer and harder than the typical one. */
  private static final Solution BEER =
      TypicalBeer.namedAcids(celsius(20))
          .plus(TypicalBeer.lumpedGroups(celsius(20), 1.3))
          .with(Acid.LACTIC, mmolPerL(4))
          .with(Ion.CALCIUM, mmolPerL(2))
          .with(Ion.MAGNESIUM, mmolPerL(3))
          .with(Ion.POTASSIUM, mmolPerL(12))
          .closedTo(pH(4.1));

  private static double[] volumes(Solute titrant, double last) {
    Solution solution = Solution.at(celsius(20)).with(titrant, DECIMOLAR);
    double end = SimulatedTitration.of(BEER, solution, mL(50)).volumeTo(pH(last)).inMillilitres();
    double[] volumes = new double[25];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = end * i / (volumes.length - 1);
    }
    return volumes;
  }

  private static double[] readings(Solute titrant, double[] volumes) {
    return SimulatedTitration.of(BEER, Solution.at(celsius(20)).with(titrant, DECIMOLAR), mL(50))
        .pHAfter(volumes);
  }

  private static BufferReadings up() {
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    return BufferReadings.withAlkali(
        mL(50), DECIMOLAR, mL(0.02), volumes, readings(Base.SODIUM_HYDROXIDE, volumes));
  }

  private static boolean extrapolated(Answer<?> answer) {
    return answer.notices().stream().anyMatch(n -> n.code() == BufferCode.EXTRAPOLATED);
  }

  private static double u(Answer<?> answer) {
    return answer.standardUncertainty().orElseThrow();
  }

  private static BufferReadings down() {
    double[] volumes = volumes(Acid.HYDROCHLORIC, 2.6);
    return BufferReadings.withAcid(
        mL(50), DECIMOLAR, volumes, readings(Acid.HYDROCHLORIC, volumes));
  }

  private static MeasuredBuffer twoLegs() {
    return MeasuredBuffer.fit().with(up()).with(down()).buffer();
  }

  @Test
  void bothLegsPredictADoseOnEitherSide() {
    MeasuredBuffer buffer = twoLegs();
    assertPredicted(buffer, Acid.LACTIC, mmolPerL(11));
    assertPredicted(buffer, Acid.PHOSPHORIC, mmolPerL(3));
    assertPredicted(buffer, Base.SODIUM_BICARBONATE, mmolPerL(5));
  }

  private static void assertPredicted(
      MeasuredBuffer buffer, Solute solute, AmountConcentration dose) {
    double truth = BEER.with(solute, dose).pH().minus(BEER.pH());
    Answer<Double> predicted = buffer.changeOfPHBy(solute, dose);
    assertFalse(extrapolated(predicted), solute.name());
    assertEquals(truth, predicted.number(), 0.01, solute.name());
    assertEquals(truth, predicted.number(), 2 * u(predicted), solute.name());
  }

  @Test
  void theOwnPhAndTheAcidityAreThoseOfTheBeer() {
    MeasuredBuffer buffer = twoLegs();
    assertEquals(4.1, buffer.pH().number(), 0.005);
    Answer<TitratableAcidity> acidity = buffer.acidityTo(pH(8.2)).in(Scales.acidity(pH(8.2)));
    assertFalse(extrapolated(acidity));
    assertEquals(
        BEER.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre(), acidity.number(), 0.06);
    assertEquals(
        BEER.bufferCapacity(pH(5)).inMilliequivalentsPerLitrePerPH(),
        buffer.bufferCapacity(pH(5)).number(),
        2 * u(buffer.bufferCapacity(pH(5))));
  }

  @Test
  void belowAOneSidedLogTheAnswerIsWiderAndSaysExtrapolated() {
    MeasuredBuffer oneLeg = MeasuredBuffer.fit().with(up()).buffer();
    Answer<Double> beyond = oneLeg.changeOfPHBy(Acid.LACTIC, mmolPerL(11));
    assertTrue(extrapolated(beyond));
    assertTrue(u(beyond) > 1.5 * u(twoLegs().changeOfPHBy(Acid.LACTIC, mmolPerL(11))));
    double truth = BEER.with(Acid.LACTIC, mmolPerL(11)).pH().minus(BEER.pH());
    assertEquals(truth, beyond.number(), 2 * u(beyond));
  }

  @Test
  void aSpoiledReadingStandsOut() {
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    double[] pH = readings(Base.SODIUM_HYDROXIDE, volumes);
    pH[10] += 0.1;
    double[] off =
        MeasuredBuffer.fit()
            .with(BufferReadings.withAlkali(mL(50), DECIMOLAR, volumes, pH))
            .buffer()
            .residuals();
    for (int i = 0; i < off.length; i++) {
      if (i != 10) {
        assertTrue(Math.abs(off[i]) < Math.abs(off[10]) / 2, "reading " + i);
      }
    }
    assertEquals(0.1, off[10], 0.04);
  }

  @Test
  void calciumAndMagnesiumThatAreKnownTakeDoubtAway() {
    MeasuredBuffer assumed = twoLegs();
    MeasuredBuffer known =
        MeasuredBuffer.fit().with(up()).with(down()).metals(mmolPerL(2), mmolPerL(3), 0).buffer();
    assertTrue(
        u(known.changeOfPHBy(Acid.LACTIC, mmolPerL(30)))
            < u(assumed.changeOfPHBy(Acid.LACTIC, mmolPerL(30))));
  }

  @Test
  void theRangeOfTheReadingsIsKept() {
    MeasuredBuffer buffer = twoLegs();
    assertEquals(2.6, buffer.lowestReading().value(), 1e-9);
    assertEquals(9, buffer.highestReading().value(), 1e-9);
    assertTrue(extrapolated(buffer.acidityTo(pH(9.5))));
  }

  /** Against differences: each part of the fit moved by itself, and the pH found again. */
  @Test
  void theSlopesOfThePhAreThoseOfTheBalanceItself() {
    Contents contents = twoLegs().contents();
    Traced pH = contents.pH();
    for (Source source : pH.sources()) {
      double step = 1e-3;
      Map<Component, Traced> moved = new HashMap<>();
      contents
          .totals()
          .forEach(
              (component, total) ->
                  moved.put(
                      component,
                      Traced.exact(Math.max(0, total.value() + step * total.sensitivity(source)))));
      Traced inert = contents.inertCharge().orElseThrow();
      double there =
          Contents.pure(celsius(20), Chemistry.standard())
              .plus(moved)
              .withInertCharge(Traced.exact(inert.value() + step * inert.sensitivity(source)))
              .pH()
              .value();
      boolean atZero =
          contents.totals().values().stream()
              .anyMatch(total -> total.value() == 0 && total.sensitivity(source) != 0);
      if (!atZero) {
        assertEquals((there - pH.value()) / step, pH.sensitivity(source), 2e-5, source.name());
      }
    }
  }

  @Test
  void thePhOfTheLiquidComesBackWithItsUncertaintyWhateverIsKnown() {
    MeasuredBuffer buffer = twoLegs();
    Traced stated = Traced.of(Source.of("pH", 4.12, 0.03, ""));
    Contents known = Solution.at(celsius(20)).with(Ion.CALCIUM, mmolPerL(1)).contents();
    Contents closed = buffer.contents(known, stated);
    assertEquals(4.12, closed.pH().value(), 1e-10);
    assertEquals(0.03, closed.pH().standardUncertainty().orElseThrow(), 1e-8);
    assertEquals(
        1 / 1000.0 / closed.kilogramsPerLitre(),
        closed.total(Component.CALCIUM).orElseThrow().value(),
        1e-15);
  }

  /** Room and buffer are one: closed to the pH of the buffer itself, a dose has the same u. */
  @Test
  void closedToItsOwnPhItIsTheLiquidThatWasTitrated() {
    MeasuredBuffer buffer = twoLegs();
    Contents own = buffer.contents();
    Contents closed = buffer.contents(Contents.pure(celsius(20), Chemistry.standard()), own.pH());
    Map<Component, Traced> dose = Map.of(Component.LACTATE, Traced.exact(0.006));
    Traced before = own.plus(dose).pH();
    Traced after = closed.plus(dose).pH();
    assertEquals(before.value(), after.value(), 1e-10);
    assertEquals(
        before.standardUncertainty().orElseThrow(),
        after.standardUncertainty().orElseThrow(),
        1e-9);
  }

  @Test
  void anErrorCommonToAllReadingsCountsOnTop() {
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    Source titrant = Source.of("titrant", 0.1, 0.001, "mol/L");
    double[] column = new double[volumes.length];
    for (int i = 0; i < column.length; i++) {
      column[i] = volumes[i] / 50 / BEER.kilogramsPerLitre();
    }
    MeasuredBuffer buffer = MeasuredBuffer.from(up().with(titrant, column));
    Traced acidity = buffer.acidityTo(pH(8.2)).in(Scales.acidity(pH(8.2))).traced();
    // An acidity is proportional to the concentration of the titrant; the prior holds little of it.
    assertEquals(acidity.value() / 0.1, acidity.sensitivity(titrant), 0.05 * acidity.value() / 0.1);
    double[] stronger = readings(Base.SODIUM_HYDROXIDE, volumes);
    double moved =
        MeasuredBuffer.from(BufferReadings.withAlkali(mL(50), molPerL(0.1001), volumes, stronger))
                .acidityTo(pH(8.2))
                .in(Scales.acidity(pH(8.2)))
                .number()
            - acidity.value();
    assertEquals(moved / 0.0001, acidity.sensitivity(titrant), 0.02 * moved / 0.0001);
  }

  @Test
  void everyAnswerExplainsItselfAndSaysWhatItRestsOn() {
    MeasuredBuffer buffer = twoLegs();
    for (Answer<?> answer :
        List.of(
            buffer.pH(),
            buffer.pHAfter(Acid.LACTIC, mmolPerL(5)),
            buffer.changeOfPHBy(Acid.LACTIC, mmolPerL(5)),
            buffer.acidityTo(pH(8.2)),
            buffer.bufferCapacity(pH(5)))) {
      assertTrue(answer.explain().holds(), answer.explain().toString());
      assertTrue(answer.explain().steps().stream().anyMatch(step -> step.kind() == Step.Kind.FIT));
      assertTrue(
          answer.notices().stream().anyMatch(n -> n.code() == BufferCode.RESTS_ON_MEASURED_BUFFER));
      assertTrue(answer.notices().stream().anyMatch(n -> n.code() == BufferCode.METALS_ASSUMED));
    }
  }

  @Test
  void metalsWithoutUncertaintyLeaveAPredictionWithoutOne() {
    Answer<Double> change =
        MeasuredBuffer.fit()
            .with(up())
            .metals(mmolPerL(2), mmolPerL(3))
            .buffer()
            .changeOfPHBy(Acid.LACTIC, mmolPerL(5));
    assertTrue(change.standardUncertainty().isEmpty());
    assertEquals(2, change.uncertaintiesMissing().size());
  }

  @Test
  void readingsAtDifferentTemperaturesAreRefused() {
    String message =
        assertThrows(
                IllegalArgumentException.class,
                () -> MeasuredBuffer.from(up(), down().at(celsius(25))))
            .getMessage();
    assertTrue(message.startsWith("temperature: 25 °C is not possible; 20 °C"), message);
  }

  @Test
  void tooFewOrUnevenReadingsAreRefused() {
    IllegalArgumentException few =
        assertThrows(IllegalArgumentException.class, () -> MeasuredBuffer.fit().buffer());
    assertEquals("readings: 0 is not possible; 3 or more is allowed", few.getMessage());
    IllegalArgumentException uneven =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                BufferReadings.withAlkali(
                    mL(50), DECIMOLAR, new double[] {0, 1}, new double[] {4.2}));
    assertTrue(uneven.getMessage().contains("2 volumes and 1 pH value "), uneven.getMessage());
  }

  /** Read as a meter shows it: to 1e-5 pH no grid of acids follows a beer. */
  @Test
  void theUncertaintiesAtTheirLimitsStillGiveABuffer() {
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    double[] shown =
        Arrays.stream(readings(Base.SODIUM_HYDROXIDE, volumes))
            .map(read -> Math.round(1000 * read) / 1000.0)
            .toArray();
    for (double reading : new double[] {1e-5, 1}) {
      for (double zero : new double[] {1e-5, 1}) {
        for (double slope : new double[] {1e-5, 1}) {
          for (double volume : new double[] {0, 1}) {
            MeasuredBuffer buffer =
                MeasuredBuffer.fit()
                    .withReadingUncertainty(reading)
                    .withZeroUncertainty(zero)
                    .withSlopeUncertainty(slope)
                    .with(BufferReadings.withAlkali(mL(50), DECIMOLAR, mL(volume), volumes, shown))
                    .buffer();
            assertEquals(
                4.1,
                buffer.pH().number(),
                Math.max(0.05, 2 * buffer.pH().standardUncertainty().orElseThrow()));
            assertTrue(buffer.pH().standardUncertainty().orElseThrow() > 0);
          }
        }
      }
    }
  }

  @Test
  void anUncertaintyBeyondItsLimitsIsNamed() {
    MeasuredBuffer.Fit fit = MeasuredBuffer.fit();
    for (double value : new double[] {1e-12, 0, -1, 2, Double.NaN}) {
      assertRefused("uncertainty of a reading", value, () -> fit.withReadingUncertainty(value));
      assertRefused("uncertainty of the zero", value, () -> fit.withZeroUncertainty(value));
      assertRefused("uncertainty of the slope", value, () -> fit.withSlopeUncertainty(value));
    }
  }

  private static void assertRefused(String argument, double value, Executable call) {
    OutOfRangeException refusal = assertThrows(OutOfRangeException.class, call);
    assertEquals(argument, refusal.argument());
    assertEquals(value, refusal.value());
  }
}
