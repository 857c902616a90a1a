package org.brewchem.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.jspecify.annotations.Nullable;

/**
 * A number that remembers by which {@link Source sources}, and how strongly, it moves: first-order
 * propagation of uncertainty with its signs kept, so that what two numbers share correlates and
 * cancels (JCGM 100:2008, 5.1 and F.1.2.3, from memory).
 *
 * <p>A source without a stated uncertainty is carried with its sensitivity. As long as the number
 * moves with it, the number has no standard uncertainty, and {@link #missing()} names the source.
 * Immutable.
 */
public final class Traced {

  private static final Source[] NO_SOURCES = {};
  private static final double[] NO_SLOPES = {};

  private final double value;
  private final Source[] sources;
  private final double[] slopes;

  private Traced(double value, Source[] sources, double[] slopes) {
    this.value = Checks.finite("value", value, "");
    this.sources = sources;
    this.slopes = slopes;
  }

  /**
   * Returns a number that moves with nothing, such as a definition or a count.
   *
   * @param value the number
   * @return the number without sources
   * @throws IllegalArgumentException if the number is not finite
   */
  public static Traced exact(double value) {
    return new Traced(value, NO_SOURCES, NO_SLOPES);
  }

  /**
   * Returns the estimate of a source, in the source's unit.
   *
   * @param source the source
   * @return a number that moves with it one to one
   */
  public static Traced of(Source source) {
    return new Traced(source.estimate(), new Source[] {source}, new double[] {1});
  }

  /**
   * Returns a number of which nothing but its own standard uncertainty is known.
   *
   * @param name what it is, as a budget prints it
   * @param value the number, in {@code unit}
   * @param standardUncertainty u, in {@code unit}; empty when it is not stated
   * @param unit the unit; empty when there is none
   * @return the number with one source of its own
   * @throws IllegalArgumentException if the name is blank, a number is not finite or u is negative
   */
  public static Traced stated(
      String name, double value, OptionalDouble standardUncertainty, String unit) {
    return of(
        standardUncertainty.isPresent()
            ? Source.of(name, value, standardUncertainty.getAsDouble(), unit)
            : Source.withoutUncertainty(name, value, unit));
  }

  /**
   * Returns a number that was computed from others, to first order.
   *
   * @param value the computed number
   * @param inputs what it was computed from
   * @param slopes its derivative with respect to each input, as many as inputs
   * @return the number with the sources of all inputs
   * @throws IllegalArgumentException if the lengths differ or a number is not finite
   */
  public static Traced linear(double value, Traced[] inputs, double[] slopes) {
    if (inputs.length != slopes.length) {
      throw new IllegalArgumentException(
          "slopes: "
              + NumberText.count(slopes.length, "is", "are")
              + " not possible; one to each of "
              + inputs.length);
    }
    int most = 0;
    for (int i = 0; i < inputs.length; i++) {
      if (!Double.isFinite(slopes[i])) {
        throw new IllegalArgumentException(
            "slope " + (i + 1) + ": " + slopes[i] + " is not possible; a finite number is needed");
      }
      if (slopes[i] != 0) {
        most += inputs[i].sources.length;
      }
    }
    if (most == 0) {
      return exact(value);
    }
    Source[] sources = new Source[most];
    double[] sums = new double[most];
    int count = 0;
    for (int i = 0; i < inputs.length; i++) {
      if (slopes[i] != 0) {
        count = add(inputs[i], slopes[i], sources, sums, count);
      }
    }
    return count == most
        ? new Traced(value, sources, sums)
        : new Traced(value, Arrays.copyOf(sources, count), Arrays.copyOf(sums, count));
  }

  /** Adds the sources of an input to those collected; returns how many there are then. */
  private static int add(Traced input, double slope, Source[] sources, double[] sums, int before) {
    int count = before;
    // Inputs mostly list what they share in the same order: look first behind the last one found.
    int next = 0;
    for (int k = 0; k < input.sources.length; k++) {
      Source source = input.sources[k];
      double part = slope * input.slopes[k];
      int at = next < before && sources[next] == source ? next : indexOf(source, sources, before);
      if (at < 0) {
        sources[count] = source;
        sums[count++] = part;
      } else {
        sums[at] += part;
        next = at + 1;
      }
    }
    return count;
  }

  private static int indexOf(Source source, Source[] sources, int count) {
    for (int i = 0; i < count; i++) {
      if (sources[i] == source) {
        return i;
      }
    }
    return -1;
  }

  /**
   * Returns this number plus another.
   *
   * @param other what is added, in the same unit
   * @return the sum
   * @throws IllegalArgumentException if the sum is not finite
   */
  public Traced plus(Traced other) {
    return linear(value + other.value, new Traced[] {this, other}, new double[] {1, 1});
  }

  /**
   * Returns this number less another.
   *
   * @param other what is subtracted, in the same unit
   * @return the difference
   * @throws IllegalArgumentException if the difference is not finite
   */
  public Traced minus(Traced other) {
    return linear(value - other.value, new Traced[] {this, other}, new double[] {1, -1});
  }

  /**
   * Returns this number times an exact factor.
   *
   * @param factor the factor
   * @return the product
   */
  public Traced times(double factor) {
    double[] scaled = slopes.clone();
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] *= factor;
    }
    return new Traced(value * factor, sources, scaled);
  }

  /**
   * Returns this number times another.
   *
   * @param other the factor, in a unit of its own
   * @return the product
   * @throws IllegalArgumentException if the product is not finite
   */
  public Traced times(Traced other) {
    return linear(
        value * other.value, new Traced[] {this, other}, new double[] {other.value, value});
  }

  /**
   * Returns this number divided by another.
   *
   * @param other the divisor, not 0
   * @return the ratio
   * @throws IllegalArgumentException if the divisor is 0
   */
  public Traced dividedBy(Traced other) {
    if (other.value == 0) {
      throw new IllegalArgumentException("divisor: 0 is not possible; another number is needed");
    }
    double ratio = value / other.value;
    return linear(
        ratio, new Traced[] {this, other}, new double[] {1 / other.value, -ratio / other.value});
  }

  /**
   * Returns the same sources and sensitivities around another value.
   *
   * @param other the value, in the unit of this number
   * @return the number
   */
  public Traced withValue(double other) {
    return new Traced(other, sources, slopes);
  }

  /**
   * Returns the number.
   *
   * @return the value
   */
  public double value() {
    return value;
  }

  /**
   * Returns the sources.
   *
   * @return an unmodifiable list, in the order in which they came in
   */
  public List<Source> sources() {
    return List.of(sources);
  }

  /**
   * Returns how strongly this number moves with a source.
   *
   * @param source the source
   * @return the derivative, in this number's unit over the source's; 0 when it does not move
   */
  public double sensitivity(Source source) {
    Objects.requireNonNull(source, "source");
    for (int i = 0; i < sources.length; i++) {
      if (sources[i] == source) {
        return slopes[i];
      }
    }
    return 0;
  }

  /**
   * Returns what each source with a stated uncertainty adds: its standard uncertainty times the
   * sensitivity, signed.
   *
   * @return an unmodifiable map from source to its part of u, in this number's unit
   */
  public Map<Source, Double> parts() {
    Map<Source, Double> parts = new LinkedHashMap<>();
    for (int i = 0; i < sources.length; i++) {
      OptionalDouble u = sources[i].standardUncertainty();
      if (u.isPresent()) {
        parts.put(sources[i], slopes[i] * u.getAsDouble());
      }
    }
    return Collections.unmodifiableMap(parts);
  }

  /**
   * Returns the sources without a stated uncertainty with which this number moves.
   *
   * @return an unmodifiable list, empty when the uncertainty of this number is known
   */
  public List<Source> missing() {
    List<Source> missing = new ArrayList<>();
    for (int i = 0; i < sources.length; i++) {
      if (isOpen(i)) {
        missing.add(sources[i]);
      }
    }
    return List.copyOf(missing);
  }

  private boolean isOpen(int i) {
    return slopes[i] != 0 && sources[i].standardUncertainty().isEmpty();
  }

  /**
   * Returns the standard uncertainty.
   *
   * @return u, 0 or more; empty when a source that matters has none
   */
  public OptionalDouble standardUncertainty() {
    for (int i = 0; i < sources.length; i++) {
      if (isOpen(i)) {
        return OptionalDouble.empty();
      }
    }
    return OptionalDouble.of(knownPart());
  }

  /**
   * Returns what the sources with a stated uncertainty add together, whether or not others are
   * missing.
   *
   * @return the root of the sum of their squared parts, 0 or more: the least that u can be
   */
  public double knownPart() {
    if (sources.length == 1) {
      return Math.abs(slopes[0] * sources[0].standardUncertainty().orElse(0));
    }
    double sum = 0;
    for (int i = 0; i < sources.length; i++) {
      double part = slopes[i] * sources[i].standardUncertainty().orElse(0);
      sum += part * part;
    }
    return Math.sqrt(sum);
  }

  /**
   * Returns the covariance with another number, by the sources they share.
   *
   * @param other the other number
   * @return the covariance; sources without a stated uncertainty do not count in it
   */
  public double covariance(Traced other) {
    Objects.requireNonNull(other, "other");
    double sum = 0;
    for (int i = 0; i < sources.length; i++) {
      double u = sources[i].standardUncertainty().orElse(0);
      sum += slopes[i] * u * u * other.sensitivity(sources[i]);
    }
    return sum;
  }

  /**
   * Returns the effective degrees of freedom after Welch and Satterthwaite (JCGM 100:2008, G.4.1,
   * from memory), the sources taken as independent; sources of one scatter count as one ({@link
   * Source#ofOneScatter}).
   *
   * @return 1 or more; infinite when every u that matters is taken as given
   */
  public double degreesOfFreedom() {
    double variance = 0;
    boolean anyFinite = false;
    for (int i = 0; i < sources.length; i++) {
      variance += square(i);
      anyFinite |= square(i) > 0 && !Double.isInfinite(sources[i].degreesOfFreedom());
    }
    if (!anyFinite) {
      return Double.POSITIVE_INFINITY;
    }
    Map<Object, double[]> scatters = new LinkedHashMap<>();
    for (int i = 0; i < sources.length; i++) {
      double[] sum = scatters.computeIfAbsent(sources[i].scatter(), key -> new double[2]);
      sum[0] += square(i) / variance;
      sum[1] = sources[i].degreesOfFreedom();
    }
    double inverse = 0;
    for (double[] sum : scatters.values()) {
      inverse += sum[0] * sum[0] / sum[1];
    }
    // No less than the least of the sources, which rounding may miss by a last bit.
    return Math.max(Quantiles.LEAST_DEGREES_OF_FREEDOM, 1 / inverse);
  }

  private double square(int i) {
    double part = slopes[i] * sources[i].standardUncertainty().orElse(0);
    return part * part;
  }

  /**
   * Returns value, standard uncertainty and degrees of freedom without their sources.
   *
   * @param unit the unit of this number
   * @return the value with its u; empty when u is not known
   */
  public Optional<UncertainValue> uncertain(String unit) {
    OptionalDouble u = standardUncertainty();
    return u.isEmpty()
        ? Optional.empty()
        : Optional.of(
            UncertainValue.of(value, u.getAsDouble(), unit)
                .withDegreesOfFreedom(degreesOfFreedom()));
  }

  @Override
  public String toString() {
    return uncertain("")
        .map(UncertainValue::toString)
        .orElseGet(
            () ->
                Digits.significant(value, 6)
                    + ", u of "
                    + String.join(", ", missing().stream().map(Source::name).toList())
                    + " not stated");
  }

  /** Equal numbers with the same sensitivities to the same sources. */
  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Traced other
        && Double.compare(value, other.value) == 0
        && Arrays.equals(sources, other.sources)
        && Arrays.equals(slopes, other.slopes);
  }

  @Override
  public int hashCode() {
    return 31 * Double.hashCode(value) + Arrays.hashCode(slopes);
  }
}
