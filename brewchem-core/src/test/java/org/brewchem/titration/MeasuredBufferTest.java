package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.OutOfRangeException;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Solute;
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

  private static BufferLeg up() {
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    return BufferLeg.withAlkali(
        mL(50), DECIMOLAR, volumes, readings(Base.SODIUM_HYDROXIDE, volumes));
  }

  private static BufferLeg down() {
    double[] volumes = volumes(Acid.HYDROCHLORIC, 2.6);
    return BufferLeg.withAcid(mL(50), DECIMOLAR, volumes, readings(Acid.HYDROCHLORIC, volumes));
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
    BufferPrediction predicted = buffer.changeOfPHBy(solute, dose);
    assertFalse(predicted.extrapolated(), solute.name());
    assertEquals(truth, predicted.value().value(), 0.01, solute.name());
    assertEquals(
        truth,
        predicted.value().value(),
        2 * predicted.value().standardUncertainty(),
        solute.name());
  }

  @Test
  void theOwnPhAndTheAcidityAreThoseOfTheBeer() {
    MeasuredBuffer buffer = twoLegs();
    assertEquals(4.1, buffer.pH().value(), 0.005);
    BufferPrediction acidity = buffer.acidityTo(pH(8.2));
    assertFalse(acidity.extrapolated());
    assertEquals(
        BEER.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre(),
        acidity.value().value(),
        0.06);
    assertEquals(
        BEER.bufferCapacity(pH(5)).inMilliequivalentsPerLitrePerPH(),
        buffer.bufferCapacity(pH(5)).value().value(),
        2 * buffer.bufferCapacity(pH(5)).value().standardUncertainty());
  }

  @Test
  void belowAOneSidedLogTheAnswerIsWiderAndSaysExtrapolated() {
    MeasuredBuffer oneLeg = MeasuredBuffer.fit().with(up()).buffer();
    BufferPrediction beyond = oneLeg.changeOfPHBy(Acid.LACTIC, mmolPerL(11));
    assertTrue(beyond.extrapolated());
    assertTrue(beyond.toString().endsWith(", extrapolated"), beyond.toString());
    assertTrue(
        beyond.value().standardUncertainty()
            > 1.5
                * twoLegs().changeOfPHBy(Acid.LACTIC, mmolPerL(11)).value().standardUncertainty());
    double truth = BEER.with(Acid.LACTIC, mmolPerL(11)).pH().minus(BEER.pH());
    assertEquals(truth, beyond.value().value(), 2 * beyond.value().standardUncertainty());
  }

  @Test
  void aSpoiledReadingStandsOut() {
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    double[] pH = readings(Base.SODIUM_HYDROXIDE, volumes);
    pH[10] += 0.1;
    double[] off =
        MeasuredBuffer.fit()
            .with(BufferLeg.withAlkali(mL(50), DECIMOLAR, volumes, pH))
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
        MeasuredBuffer.fit().with(up()).with(down()).metals(mmolPerL(2), mmolPerL(3)).buffer();
    assertTrue(
        known.changeOfPHBy(Acid.LACTIC, mmolPerL(30)).value().standardUncertainty()
            < assumed.changeOfPHBy(Acid.LACTIC, mmolPerL(30)).value().standardUncertainty());
  }

  @Test
  void theRangeOfTheReadingsIsKept() {
    MeasuredBuffer buffer = twoLegs();
    assertEquals(2.6, buffer.lowestReading().value(), 1e-9);
    assertEquals(9, buffer.highestReading().value(), 1e-9);
    assertTrue(buffer.acidityTo(pH(9.5)).extrapolated());
  }

  @Test
  void aLogGivesTheSameBufferAsItsArrays() {
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    double[] pH = readings(Base.SODIUM_HYDROXIDE, volumes);
    TitrationLog log = Titrant.sodiumHydroxide().of(DECIMOLAR).titrate(mL(50)).log(volumes, pH);
    assertEquals(
        MeasuredBuffer.fit().with(up()).buffer().acidityTo(pH(8.2)),
        MeasuredBuffer.from(log).acidityTo(pH(8.2)));
    TitrationLog sulfuric =
        Titrant.sulfuricAcid().of(molPerL(0.05)).titrate(mL(50)).log(volumes, pH);
    assertThrows(IllegalArgumentException.class, () -> MeasuredBuffer.from(sulfuric));
  }

  @Test
  void aSampleDilutedBeforehandIsCountedAsTheBeer() {
    Solution diluted = BEER.diluted(3);
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    double[] pH =
        SimulatedTitration.of(
                diluted, Solution.at(celsius(20)).with(Base.SODIUM_HYDROXIDE, DECIMOLAR), mL(150))
            .pHAfter(volumes);
    MeasuredBuffer buffer =
        MeasuredBuffer.from(
            Titrant.sodiumHydroxide().of(DECIMOLAR).titrate(mL(50)).into(mL(100)).log(volumes, pH));
    assertEquals(
        BEER.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre(),
        buffer.acidityTo(pH(8.2)).value().value(),
        0.3);
  }

  @Test
  void tooFewOrUnevenReadingsAreRefused() {
    IllegalArgumentException few =
        assertThrows(IllegalArgumentException.class, () -> MeasuredBuffer.fit().buffer());
    assertEquals("readings: 0 is not possible; 3 or more is allowed", few.getMessage());
    IllegalArgumentException uneven =
        assertThrows(
            IllegalArgumentException.class,
            () -> BufferLeg.withAlkali(mL(50), DECIMOLAR, new double[] {0, 1}, new double[] {4.2}));
    assertTrue(uneven.getMessage().contains("2 volumes and 1 pH values"), uneven.getMessage());
  }

  @Test
  void theUncertaintiesAtTheirLimitsStillGiveABuffer() {
    for (double reading : new double[] {1e-5, 1}) {
      for (double zero : new double[] {1e-5, 1}) {
        for (double slope : new double[] {1e-5, 1}) {
          for (double volume : new double[] {0, 1}) {
            MeasuredBuffer buffer =
                MeasuredBuffer.fit()
                    .withReadingUncertainty(reading)
                    .withZeroUncertainty(zero)
                    .withSlopeUncertainty(slope)
                    .withVolumeUncertainty(mL(volume))
                    .with(up())
                    .buffer();
            assertEquals(
                4.1, buffer.pH().value(), Math.max(0.05, 2 * buffer.pH().standardUncertainty()));
            assertTrue(buffer.pH().standardUncertainty() > 0);
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
