package org.brewchem.examples.benchmark;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;

import org.brewchem.buffer.BufferReadings;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;

/** An invented beer of pH 4.35, and what an electrode would read while it is titrated. */
final class InventedBeer {

  private static final Volume SAMPLE = mL(50);

  private InventedBeer() {}

  /** The beer; its potassium closes the balance at pH 4.35. */
  static Solution composition() {
    Solution acids =
        Solution.at(celsius(20))
            .with(Ion.CALCIUM, mmolPerL(1.5))
            .with(Ion.MAGNESIUM, mmolPerL(3))
            .with(Ion.CHLORIDE, mmolPerL(6))
            .with(Acid.PHOSPHORIC, mmolPerL(7))
            .with(Acid.LACTIC, mmolPerL(2))
            .with(Acid.CITRIC, mmolPerL(1))
            .with(Acid.ACETIC, mmolPerL(2))
            .with(Acid.SUCCINIC, mmolPerL(1));
    return acids.with(Ion.POTASSIUM, acids.doseOf(Base.POTASSIUM_HYDROXIDE, pH(4.35)));
  }

  /** Lye of 0.1 mol/L. */
  static Solution lye() {
    return Solution.at(celsius(20)).with(Base.SODIUM_HYDROXIDE, molPerL(0.1));
  }

  /** Readings upwards to 7 mL in even steps. */
  static BufferReadings upwards(int readings) {
    SimulatedTitration titration = SimulatedTitration.of(composition(), lye(), SAMPLE);
    BufferReadings.Log log = BufferReadings.logWithAlkali(SAMPLE, molPerL(0.1));
    for (int i = 0; i < readings; i++) {
      Volume alkali = mL(7.0 * i / (readings - 1));
      log = log.read(alkali, titration.pHAfter(alkali));
    }
    return log.readings();
  }

  /** Readings downwards to 2.8 mL in even steps. */
  static BufferReadings downwards(int readings) {
    Solution acid = Solution.at(celsius(20)).with(Acid.HYDROCHLORIC, molPerL(0.1));
    SimulatedTitration titration = SimulatedTitration.of(composition(), acid, SAMPLE);
    BufferReadings.Log log = BufferReadings.logWithAcid(SAMPLE, molPerL(0.1));
    for (int i = 0; i < readings; i++) {
      Volume more = mL(2.8 * i / (readings - 1));
      log = log.read(more, titration.pHAfter(more));
    }
    return log.readings();
  }
}
