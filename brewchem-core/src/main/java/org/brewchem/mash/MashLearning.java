package org.brewchem.mash;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * What one measured mash pH teaches: the malts' curves, the factor on Kolbach's term and what this
 * brew differs by, all by their sources of uncertainty, each by how much it could have made the
 * difference. Found by Gauss and Newton, each round about the last; then the posterior has other
 * sources, independent again, of which the same numbers move in other proportions.
 *
 * <p>In units of their standard uncertainties the sources are a vector z, prior 0 ± 1. A reading
 * that moves by v with z and has the variance r otherwise leaves z = v d / (v v + r) for a
 * difference d, with the covariance 1 - v v' / (v v + r), whose root is 1 - k v v' / (v v) with k =
 * 1 - sqrt(r / (v v + r)).
 */
final class MashLearning {

  private static final int MOST_ROUNDS = 200;
  private static final double SETTLED = 1e-8;
  private static final double ROUNDING = 1e-11;

  /** The part of what a straight mash would gain by a step that it has to gain. */
  private static final double ENOUGH = 0.5;

  private static final double SMALLEST_SHARE = 1e-9;
  private static final String LEARNED = ", as learned";

  private final MashState prior;
  private final boolean carbonDioxideLeaves;
  private final List<Source> taught;
  private final Map<Source, Integer> index = new HashMap<>();
  private MashState moved;

  MashLearning(MashState state, boolean carbonDioxideLeaves) {
    this.carbonDioxideLeaves = carbonDioxideLeaves;
    this.prior =
        state.brew().isPresent()
            ? state
            : new MashState(
                state.grist(),
                state.liquor(),
                state.litres(),
                Optional.of(Traced.of(MashValues.anotherBrew())));
    Set<Source> all = new LinkedHashSet<>();
    prior.grist().malts().forEach(malt -> all.addAll(malt.curve().sources()));
    all.addAll(prior.grist().kolbachFactor().sources());
    all.addAll(prior.brew().orElseThrow().sources());
    all.removeIf(source -> source.standardUncertainty().orElse(0) == 0);
    taught = List.copyOf(all);
    for (int i = 0; i < taught.size(); i++) {
      index.put(taught.get(i), i);
    }
    moved = prior;
  }

  /** The mash before its reading, this brew's own difference counted. */
  MashState prior() {
    return prior;
  }

  /**
   * Learns.
   *
   * @param read the pH of the cooled sample
   * @param u its standard uncertainty, above 0
   * @return the same mash as the reading leaves it
   */
  MashState after(double read, double u) {
    double[] z = new double[taught.size()];
    Traced expected = expected(moved);
    double[] v = vector(expected);
    double rest = u * u + Math.max(0, expected.knownPart() * expected.knownPart() - square(v));
    double missed = missed(z, read, expected, rest);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double gain = (read - expected.value() + dot(v, z)) / (square(v) + rest);
      double[] step = new double[z.length];
      double largest = 0;
      for (int i = 0; i < step.length; i++) {
        step[i] = gain * v[i] - z[i];
        largest = Math.max(largest, Math.abs(step[i]));
      }
      double along = dot(v, step);
      double promised = square(step) + along * along / rest;
      if (promised < SETTLED) {
        return resting(v, rest);
      }
      // At most one standard uncertainty at a time: the logarithms among the sources curve.
      double share = Math.min(1, 1 / largest);
      double[] there = along(z, step, share);
      MashState next = movedBy(there);
      Traced found = expected(next);
      // A far reading asks for more than the slopes here tell: shorter until it helps.
      while (missed(there, read, found, rest) > missed * (1 + ROUNDING) - ENOUGH * share * promised
          && share > SMALLEST_SHARE) {
        share /= 2;
        there = along(z, step, share);
        next = movedBy(there);
        found = expected(next);
      }
      z = there;
      moved = next;
      expected = found;
      missed = missed(z, read, expected, rest);
      v = vector(expected);
    }
    throw new IllegalStateException(
        String.format(
            Locale.ROOT,
            "mash pH: what a reading of %.2f teaches was not found in %d rounds; %.4f is expected"
                + " after the last",
            read,
            MOST_ROUNDS,
            expected.value()));
  }

  private static double[] along(double[] from, double[] step, double share) {
    double[] there = from.clone();
    for (int i = 0; i < there.length; i++) {
      there[i] += share * step[i];
    }
    return there;
  }

  private MashState movedBy(double[] z) {
    return moved(source -> z[place(source)] * u(source));
  }

  /** How far sources and reading lie off together, in squared standard uncertainties. */
  private static double missed(double[] z, double read, Traced expected, double rest) {
    double off = read - expected.value();
    return square(z) + off * off / rest;
  }

  /** The place of a source in the vectors; negative where nothing is taught about it. */
  private int place(Source source) {
    return index.getOrDefault(source, -1);
  }

  private Traced expected(MashState state) {
    return state.cooled(MashFigures.MASH_PH, carbonDioxideLeaves).found().orElseThrow();
  }

  private static double u(Source source) {
    return source.standardUncertainty().orElse(0);
  }

  private double[] vector(Traced number) {
    double[] vector = new double[taught.size()];
    for (int i = 0; i < vector.length; i++) {
      vector[i] = number.sensitivity(taught.get(i)) * u(taught.get(i));
    }
    return vector;
  }

  private static double dot(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += one[i] * other[i];
    }
    return sum;
  }

  private static double square(double[] vector) {
    return dot(vector, vector);
  }

  /** The prior with its sources off their estimates. */
  private MashState moved(ToDoubleFunction<Source> taughtBy) {
    ToDoubleFunction<Source> deviation =
        source -> place(source) < 0 ? 0 : taughtBy.applyAsDouble(source);
    Map<Malt, Malt> malts = new LinkedHashMap<>();
    for (Malt malt : prior.grist().malts()) {
      malts.put(malt, malt.learned(malt.curve().moved(deviation), brews()));
    }
    Traced factor = prior.grist().kolbachFactor();
    Traced brew = prior.brew().orElseThrow();
    return new MashState(
        prior
            .grist()
            .with(
                prior.grist().parts().stream().map(part -> malts.get(part.malt())).toList(),
                factor.value() == 0
                    ? factor
                    : factor.times(Math.exp(MaltCurve.shift(factor, deviation) / factor.value()))),
        prior.liquor(),
        prior.litres(),
        Optional.of(brew.withValue(brew.value() + MaltCurve.shift(brew, deviation))));
  }

  /** Every brew that taught about a malt of the grist, this one the last. */
  private List<Map<String, Double>> brews() {
    Set<Map<String, Double>> all = new LinkedHashSet<>();
    prior.grist().malts().forEach(malt -> all.addAll(malt.brews()));
    all.add(prior.grist().shares());
    return List.copyOf(all);
  }

  /** The moved mash on the sources that are left. */
  private MashState resting(double[] v, double rest) {
    double all = square(v);
    double shrink = all == 0 ? 0 : (1 - Math.sqrt(rest / (all + rest))) / all;
    List<Source> left = new ArrayList<>();
    for (Source source : taught) {
      String name = source.name();
      left.add(Source.of(name.endsWith(LEARNED) ? name : name + LEARNED, 0, 1, ""));
    }
    Traced[] inputs = left.stream().map(Traced::of).toArray(Traced[]::new);
    UnaryOperator<Traced> on =
        number -> {
          double[] own = vector(number);
          double along = shrink * dot(own, v);
          for (int i = 0; i < own.length; i++) {
            own[i] -= along * v[i];
          }
          return Traced.linear(number.value(), inputs, own);
        };
    Map<Malt, Malt> malts = new LinkedHashMap<>();
    for (Malt malt : moved.grist().malts()) {
      malts.put(malt, malt.learned(malt.curve().resting(on), brews()));
    }
    return new MashState(
        moved
            .grist()
            .with(
                moved.grist().parts().stream().map(part -> malts.get(part.malt())).toList(),
                on.apply(moved.grist().kolbachFactor())),
        moved.liquor(),
        moved.litres(),
        Optional.of(on.apply(moved.brew().orElseThrow())));
  }
}
