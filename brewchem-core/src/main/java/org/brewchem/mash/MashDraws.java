package org.brewchem.mash;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.Interval;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * The distribution of a mash pH, by draws. The logarithms of capacities and of the factor on
 * Kolbach's term are drawn and the balance solved for each draw; what the other sources do is added
 * to first order.
 */
final class MashDraws {

  private MashDraws() {}

  static Interval interval(
      MashState state, boolean carbonDioxideLeaves, Traced pH, int draws, long seed) {
    if (!pH.missing().isEmpty()) {
      throw new IllegalStateException(
          "mash pH: the uncertainty of "
              + pH.missing().get(0).name()
              + " is not stated; "
              + MashState.STATE_IT);
    }
    List<Source> sources = pH.sources();
    List<Input> inputs = new ArrayList<>();
    Map<Source, Integer> index = new HashMap<>();
    for (int i = 0; i < sources.size(); i++) {
      Source source = sources.get(i);
      index.put(source, i);
      inputs.add(
          Input.normal(
              i + 1 + ": " + source.name(), 0, source.standardUncertainty().orElseThrow(), ""));
    }
    if (inputs.isEmpty()) {
      return Interval.of(pH.value(), pH.value(), 0.95, "");
    }
    Traced rest = state.notDrawn(carbonDioxideLeaves);
    MashBalance balance = state.balance(carbonDioxideLeaves);
    Traced factor = state.grist().kolbachFactor();
    return MeasurementModel.of("mash pH", "")
        .with(inputs.toArray(Input[]::new))
        .calculatedBy(
            values -> {
              MashBalance drawn =
                  drawn(
                      state.grist(),
                      balance,
                      factor,
                      source -> deviation(values, index.get(source)));
              double linear = 0;
              for (int i = 0; i < values.length; i++) {
                linear += rest.sensitivity(sources.get(i)) * values[i];
              }
              return drawn.pH() + linear;
            })
        .monteCarlo(draws, seed)
        .interval(0.95);
  }

  /** A source that the pH does not move with stays at its estimate. */
  private static double deviation(double[] values, @Nullable Integer index) {
    return index == null ? 0 : values[index];
  }

  private static MashBalance drawn(
      Grist grist, MashBalance balance, Traced factor, ToDoubleFunction<Source> deviation) {
    Map<Malt, MaltCurve> curves = new HashMap<>();
    List<MaltCurve> moved = new ArrayList<>();
    for (Grist.Part part : grist.parts()) {
      moved.add(curves.computeIfAbsent(part.malt(), malt -> malt.curve().drawn(deviation)));
    }
    double f =
        factor.value() == 0
            ? 0
            : factor.value() * Math.exp(MaltCurve.shift(factor, deviation) / factor.value());
    return balance.with(moved, f);
  }
}
