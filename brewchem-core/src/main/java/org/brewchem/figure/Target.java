package org.brewchem.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.brewchem.internal.Checks;
import org.jspecify.annotations.Nullable;

/** What a liquid should be: a name and constraints on its figures. Immutable. */
public final class Target {

  private final String name;
  private final List<Constraint> constraints;

  private Target(String name, List<Constraint> constraints) {
    this.name = Checks.notBlank("name of the target", name);
    this.constraints = List.copyOf(constraints);
  }

  /**
   * Starts a target.
   *
   * @param name its name
   * @return a target without constraints
   * @throws IllegalArgumentException if the name is blank
   */
  public static Target named(String name) {
    return new Target(name, List.of());
  }

  /**
   * Adds a constraint.
   *
   * @param constraint the constraint
   * @return the target with it
   * @throws IllegalArgumentException if the target already has one of the same figure
   */
  public Target with(Constraint constraint) {
    Objects.requireNonNull(constraint, "constraint");
    if (constraints.stream().anyMatch(c -> c.figure().equals(constraint.figure()))) {
      throw new IllegalArgumentException(
          "constraint: " + constraint.figure() + " is constrained already; state it once");
    }
    List<Constraint> more = new ArrayList<>(constraints);
    more.add(constraint);
    return new Target(name, more);
  }

  /**
   * Returns the name.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * Returns the constraints.
   *
   * @return an unmodifiable list, in the order in which they were added
   */
  public List<Constraint> constraints() {
    return constraints;
  }

  /**
   * Compares the target with a liquid or anything else that answers its figures.
   *
   * @param from what is asked
   * @return the comparison
   */
  public Comparison compare(Answering from) {
    Objects.requireNonNull(from, "from");
    return new Comparison(
        name, constraints.stream().map(c -> Comparison.Judgement.of(c, from)).toList());
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Target other
        && name.equals(other.name)
        && constraints.equals(other.constraints);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, constraints);
  }

  @Override
  public String toString() {
    return constraints.stream()
        .map(Constraint::toString)
        .collect(Collectors.joining("\n", name + "\n", ""));
  }
}
