package org.brewchem.figure;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.brewchem.internal.Checks;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * A named quantity that is computed from something: its name in the terms of the field, its
 * parameters, the scale in which it is shown, and the rule that finds it.
 *
 * <p>Two figures are equal if name and parameters are, whatever unit they are shown in. A figure
 * with parameters comes from a method, such as {@code titratableAcidity(pH(8.2))}. Anyone can make
 * one, most simply as a closed form of others. Immutable.
 *
 * @param <Q> the meaning of its value
 */
public final class Figure<Q> {

  /** How a figure is found from what is asked. */
  public interface Rule {

    /**
     * Finds the figure.
     *
     * @param figure the figure, whose {@link Figure#scale} is the rule's own
     * @param from what is asked
     * @return the step, with a value in the figure's own scale or with why it is unknown
     */
    Step find(Figure<?> figure, Answering from);

    /**
     * Returns the rule in words or as a formula.
     *
     * @return the text
     */
    String text();
  }

  private final String name;
  private final Map<String, String> parameters;
  private final Scale<Q> own;
  private final Scale<Q> shown;
  private final Rule rule;

  private Figure(
      String name, Map<String, String> parameters, Scale<Q> own, Scale<Q> shown, Rule rule) {
    this.name = Checks.notBlank("name", name);
    this.parameters = Collections.unmodifiableMap(new LinkedHashMap<>(parameters));
    this.own = Objects.requireNonNull(own, "scale");
    this.shown = Objects.requireNonNull(shown, "scale");
    this.rule = Objects.requireNonNull(rule, "rule");
  }

  /**
   * Makes a figure.
   *
   * @param name its name in the terms of the field
   * @param parameters what sets it apart from its kin, such as an end point; empty when nothing
   *     does
   * @param scale the scale in which the rule counts
   * @param rule how it is found
   * @param <Q> the meaning of its value
   * @return the figure
   * @throws IllegalArgumentException if the name is blank
   */
  public static <Q> Figure<Q> of(
      String name, Map<String, String> parameters, Scale<Q> scale, Rule rule) {
    Objects.requireNonNull(parameters, "parameters");
    return new Figure<>(name, parameters, scale, scale, rule);
  }

  /**
   * Returns the same figure shown in another unit.
   *
   * @param other a scale of the same meaning
   * @return the figure, equal to this one
   */
  public Figure<Q> shownIn(Scale<Q> other) {
    Objects.requireNonNull(other, "other scale");
    return new Figure<>(name, parameters, own, other, rule);
  }

  /**
   * Returns figures of different meanings as one list, which {@code List.of} does not infer.
   *
   * @param figures the figures
   * @return an unmodifiable list
   */
  public static List<Figure<?>> list(Figure<?>... figures) {
    Objects.requireNonNull(figures, "figures");
    return List.copyOf(Arrays.asList(figures));
  }

  /**
   * Returns the name.
   *
   * @return the name in the terms of the field, without parameters
   */
  public String name() {
    return name;
  }

  /**
   * Returns the parameters.
   *
   * @return an unmodifiable map; empty when the name says all
   */
  public Map<String, String> parameters() {
    return parameters;
  }

  /**
   * Returns name and parameters.
   *
   * @return for example "titratable acidity to pH 8.2"
   */
  public String title() {
    return parameters.isEmpty()
        ? name
        : name
            + parameters.entrySet().stream()
                .map(entry -> " " + entry.getKey() + " " + entry.getValue())
                .collect(Collectors.joining(","));
  }

  /**
   * Returns the scale in which the rule counts.
   *
   * @return the figure's own scale
   */
  public Scale<Q> scale() {
    return own;
  }

  /**
   * Returns the scale in which the figure is shown.
   *
   * @return its own, or that of {@link #shownIn}
   */
  public Scale<Q> shown() {
    return shown;
  }

  /**
   * Returns the rule.
   *
   * @return how the figure is found
   */
  public Rule rule() {
    return rule;
  }

  /**
   * Converts a number of the own scale to the one shown.
   *
   * @param number a number in {@link #scale()}
   * @return the number in {@link #shown()}
   */
  public Traced inShown(Traced number) {
    Objects.requireNonNull(number, "number");
    return own.convert(number, shown);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Figure<?> other
        && name.equals(other.name)
        && parameters.equals(other.parameters);
  }

  @Override
  public int hashCode() {
    return 31 * name.hashCode() + parameters.hashCode();
  }

  @Override
  public String toString() {
    return title();
  }
}
