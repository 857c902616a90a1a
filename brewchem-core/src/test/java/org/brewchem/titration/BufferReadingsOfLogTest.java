package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.buffer.TypicalBeer;
import org.brewchem.figure.Scales;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Solute;
import org.junit.jupiter.api.Test;

/** How a log hands its readings to a measured buffer. */
class BufferReadingsOfLogTest {

  private static final AmountConcentration DECIMOLAR = molPerL(0.1);

  /** An invented beer. */
  private static final Solution BEER =
      TypicalBeer.namedAcids(celsius(20))
          .plus(TypicalBeer.lumpedGroups(celsius(20), 1.3))
          .with(Ion.CALCIUM, mmolPerL(2))
          .with(Ion.MAGNESIUM, mmolPerL(3))
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

  private static double acidity(MeasuredBuffer buffer) {
    return buffer.acidityTo(pH(8.2)).in(Scales.acidity(pH(8.2))).number();
  }

  @Test
  void aLogGivesTheSameBufferAsItsArrays() {
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    double[] pH = readings(Base.SODIUM_HYDROXIDE, volumes);
    TitrationLog log = Titrant.sodiumHydroxide().of(DECIMOLAR).titrate(mL(50)).log(volumes, pH);
    assertEquals(
        acidity(MeasuredBuffer.from(BufferReadings.withAlkali(mL(50), DECIMOLAR, volumes, pH))),
        acidity(MeasuredBuffer.from(log.bufferReadings())),
        1e-12);
    TitrationLog sulfuric =
        Titrant.sulfuricAcid().of(molPerL(0.05)).titrate(mL(50)).log(volumes, pH);
    assertThrows(IllegalArgumentException.class, sulfuric::bufferReadings);
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
            Titrant.sodiumHydroxide()
                .of(DECIMOLAR)
                .titrate(mL(50))
                .into(mL(100))
                .log(volumes, pH)
                .bufferReadings());
    assertEquals(
        BEER.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre(), acidity(buffer), 0.3);
  }
}
