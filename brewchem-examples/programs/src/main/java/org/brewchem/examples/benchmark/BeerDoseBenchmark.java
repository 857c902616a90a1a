package org.brewchem.examples.benchmark;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.util.concurrent.TimeUnit;
import org.brewchem.beer.Beer;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Dose;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A dose of lactic acid into a beer to an acidity, with the pH and the acidity afterwards, each
 * with its uncertainty: by the stand-in and by a buffer measured with thirty readings. The target
 * changes from call to call. The beer is invented, its readings simulated.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(1)
public class BeerDoseBenchmark {

  private static final int READINGS_OF_A_LEG = 15;

  private final Reagent lactic =
      Reagent.of(Acid.LACTIC, massPercent(88)).withAssayUncertainty(0.01);
  private final Beer standIn = beer();
  private final Beer measured = beer().buffered(buffer());
  private int count;

  private static Solution composition() {
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

  private static Beer beer() {
    Solution composition = composition();
    TitratableAcidity acidity = composition.titratableAcidity(pH(8.2));
    return Beer.of(pH(4.35), acidity)
        .withStandardUncertaintyOfPH(0.02)
        .withStandardUncertaintyOfAcidity(acidity(gPerL(0.01), Acid.LACTIC, pH(8.2)));
  }

  private static MeasuredBuffer buffer() {
    Volume sample = mL(50);
    Solution beer = composition();
    Solution lye = Solution.at(celsius(20)).with(Base.SODIUM_HYDROXIDE, molPerL(0.1));
    Solution acid = Solution.at(celsius(20)).with(Acid.HYDROCHLORIC, molPerL(0.1));
    BufferReadings.Log up = BufferReadings.logWithAlkali(sample, molPerL(0.1));
    BufferReadings.Log down = BufferReadings.logWithAcid(sample, molPerL(0.1));
    for (int i = 0; i < READINGS_OF_A_LEG; i++) {
      Volume alkali = mL(0.5 * i);
      up = up.read(alkali, SimulatedTitration.of(beer, lye, sample).pHAfter(alkali));
      Volume more = mL(0.2 * i);
      PH read = SimulatedTitration.of(beer, acid, sample).pHAfter(more);
      down = down.read(more, read);
    }
    return MeasuredBuffer.from(up.readings(), down.readings());
  }

  private double dosed(Beer beer) {
    count = (count + 1) % 1000;
    double more = 0.2 + 0.0005 * count;
    TitratableAcidity target =
        acidity(
            gPerL(beer.titratableAcidity().value().inGramsPerLitreAs(Acid.LACTIC) + more),
            Acid.LACTIC,
            pH(8.2));
    Dose<Beer> dose = Dose.of(beer, lactic).to(target);
    Beer after = dose.after();
    return dose.answer(Dose.MASS).standardUncertainty().orElseThrow()
        + after.pH().standardUncertainty().orElseThrow()
        + after.titratableAcidity().standardUncertainty().orElseThrow();
  }

  /**
   * Doses the beer that nobody titrated beyond its acidity.
   *
   * @return the three uncertainties
   */
  @Benchmark
  public double byStandIn() {
    return dosed(standIn);
  }

  /**
   * Doses the beer whose buffer was measured.
   *
   * @return the three uncertainties
   */
  @Benchmark
  public double byMeasuredBuffer() {
    return dosed(measured);
  }
}
