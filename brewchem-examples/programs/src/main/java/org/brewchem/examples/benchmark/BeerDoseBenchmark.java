package org.brewchem.examples.benchmark;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;

import java.util.concurrent.TimeUnit;
import org.brewchem.beer.Beer;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
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

  private static Beer beer() {
    Solution composition = InventedBeer.composition();
    TitratableAcidity acidity = composition.titratableAcidity(pH(8.2));
    return Beer.of(pH(4.35), acidity)
        .withStandardUncertaintyOfPH(0.02)
        .withStandardUncertaintyOfAcidity(acidity(gPerL(0.01), Acid.LACTIC, pH(8.2)));
  }

  private static MeasuredBuffer buffer() {
    return MeasuredBuffer.from(
        InventedBeer.upwards(READINGS_OF_A_LEG), InventedBeer.downwards(READINGS_OF_A_LEG));
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
