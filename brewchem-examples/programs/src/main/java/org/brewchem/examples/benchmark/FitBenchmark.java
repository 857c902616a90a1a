package org.brewchem.examples.benchmark;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;

import java.util.concurrent.TimeUnit;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.titration.CurveFit;
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
 * Sixty readings of an invented beer fitted: as a measured buffer of two legs, and as a composition
 * of which two totals and the strong ions are unknown.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(1)
public class FitBenchmark {

  private static final int READINGS = 60;

  private final BufferReadings up = InventedBeer.upwards(READINGS / 2);
  private final BufferReadings down = InventedBeer.downwards(READINGS / 2);
  private final CurveFit.Problem problem =
      CurveFit.of(
              Solution.at(celsius(20))
                  .with(Ion.CALCIUM, mmolPerL(1.5))
                  .with(Ion.MAGNESIUM, mmolPerL(3))
                  .with(Acid.CITRIC, mmolPerL(1))
                  .with(Acid.ACETIC, mmolPerL(2))
                  .with(Acid.SUCCINIC, mmolPerL(1)),
              InventedBeer.lye())
          .unknownTotal(Component.PHOSPHATE)
          .unknownTotal(Component.LACTATE)
          .unknownInertCharge();
  private final double[] titrantPerSample = new double[READINGS];
  private final double[] pH = new double[READINGS];
  private int turn;

  /** Simulates the readings. */
  public FitBenchmark() {
    Volume sample = mL(50);
    SimulatedTitration titration =
        SimulatedTitration.of(InventedBeer.composition(), InventedBeer.lye(), sample);
    for (int i = 0; i < READINGS; i++) {
      Volume alkali = mL(7.0 * i / (READINGS - 1));
      PH read = titration.pHAfter(alkali);
      titrantPerSample[i] = alkali.inLitres() / sample.inLitres();
      // An electrode rounds; without it the residuals would be nothing but rounding.
      pH[i] = Math.round(read.value() * 1000) / 1000.0;
    }
  }

  /**
   * Fits the buffer of the two legs.
   *
   * @return the buffer
   */
  @Benchmark
  public MeasuredBuffer measuredBuffer() {
    return MeasuredBuffer.from(up, down);
  }

  /**
   * Fits phosphate, lactate and the strong ions to the leg upwards; one reading differs from call
   * to call.
   *
   * @return the fit
   */
  @Benchmark
  public CurveFit composition() {
    turn = (turn + 1) % READINGS;
    double[] readings = pH.clone();
    readings[turn] += 0.001;
    return problem.to(titrantPerSample, readings);
  }
}
