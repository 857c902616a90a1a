package org.brewchem.examples.benchmark;

import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.CarbonateClosure;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
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
 * The time from a held water, two salts of changing amounts added to it, to its pH with its
 * uncertainty; beside it a cold solve of the same composition. The water is invented.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(1)
public class HeldWaterBenchmark {

  private final Contents water =
      CarbonateClosure.of(
              Contents.pure(Temperature.ofCelsius(20), Chemistry.standard())
                  .withTotal(Component.CALCIUM, read("calcium", 2.3e-3, 0.05e-3))
                  .withTotal(Component.MAGNESIUM, read("magnesium", 0.45e-3, 0.02e-3))
                  .withTotal(Component.SODIUM, read("sodium", 0.6e-3, 0.02e-3))
                  .withTotal(Component.POTASSIUM, read("potassium", 0.05e-3, 0.01e-3))
                  .withTotal(Component.SULFATE, read("sulfate", 0.47e-3, 0.01e-3))
                  .withTotal(Component.CHLORIDE, read("chloride", 0.87e-3, 0.02e-3))
                  .withTotal(Component.NITRATE, read("nitrate", 0.1e-3, 0.01e-3)),
              List.of())
          .byPH(read("alkalinity", 4.3e-3, 0.1e-3), read("pH", 7.6, 0.05));

  private final Equilibria kernel = water.equilibria();
  private final int calcium = kernel.indexOf(Component.CALCIUM);
  private final int sulfate = kernel.indexOf(Component.SULFATE);
  private final int chloride = kernel.indexOf(Component.CHLORIDE);
  private final double ownCalcium = water.least(Component.CALCIUM).value();
  private final double ownSulfate = water.least(Component.SULFATE).value();
  private final double ownChloride = water.least(Component.CHLORIDE).value();
  private int count;

  private static Traced read(String name, double value, double u) {
    return Traced.of(Source.of(name, value, u, ""));
  }

  /** A liquid of given contents. */
  private record Held(Contents contents) implements Liquid {
    @Override
    public Liquid after(Treatment... steps) {
      Contents after = contents;
      for (Treatment step : steps) {
        after = step.on(after);
      }
      return new Held(after);
    }

    @Override
    public Step step(Figure<?> figure) {
      return figure.rule().find(figure, this);
    }

    @Override
    public String kind() {
      return "water";
    }

    @Override
    public List<Notice> notices() {
      return contents.notices();
    }

    @Override
    public List<Caution> cautions() {
      return List.of();
    }
  }

  /** Amounts that differ from call to call, mol per kg. */
  private double next() {
    count = (count + 1) % 1000;
    return 1e-6 * count;
  }

  /**
   * Solves the kernel from a cold start, for the composition of the other benchmarks.
   *
   * @return the pH
   */
  @Benchmark
  public double cold() {
    double gypsum = next();
    double calciumChloride = 1e-3 - gypsum;
    kernel.setTotal(calcium, ownCalcium + gypsum + calciumChloride);
    kernel.setTotal(sulfate, ownSulfate + gypsum);
    kernel.setTotal(chloride, ownChloride + 2 * calciumChloride);
    kernel.forget();
    return kernel.pH();
  }

  private Contents salted() {
    double gypsum = next();
    double calciumChloride = 1e-3 - gypsum;
    return water
        .plus(
            Map.of(
                Component.CALCIUM, Traced.exact(gypsum), Component.SULFATE, Traced.exact(gypsum)))
        .plus(
            Map.of(
                Component.CALCIUM,
                Traced.exact(calciumChloride),
                Component.CHLORIDE,
                Traced.exact(2 * calciumChloride)));
  }

  /**
   * Adds two salts to the held water and finds the pH with its standard uncertainty.
   *
   * @return the standard uncertainty
   */
  @Benchmark
  public double twoSaltsToPH() {
    return salted().pH().standardUncertainty().orElseThrow();
  }

  /**
   * The same as an answer: with its steps, which explain it, and its notices.
   *
   * @return the standard uncertainty
   */
  @Benchmark
  public double twoSaltsToAnswer() {
    return new Held(salted()).answer(Figures.PH_VALUE).standardUncertainty().orElseThrow();
  }
}
