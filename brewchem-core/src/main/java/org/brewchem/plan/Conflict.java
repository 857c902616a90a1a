package org.brewchem.plan;

import java.util.List;
import java.util.Objects;
import org.brewchem.figure.Constraint;

/**
 * Bounds that cannot be kept together, none of which can be left out: limits of constraints, limits
 * of the shelf, and that doses and volumes are 0 or more.
 *
 * @param members the bounds in words, in a fixed order
 * @param constraints the hard constraints among them, in their order
 * @param isProved whether multipliers add the bounds up to a contradiction in exact arithmetic and
 *     every bound is linear as it stands: then no plan exists. Else, such as where a pH takes part,
 *     the bounds contradict each other as they are near the best point found, and none was found
 * @param proof the multipliers and what they add up to, line by line; empty where there are none
 * @param ways for each bound doses that keep all the others, where such doses of 0 or more exist
 */
public record Conflict(
    List<String> members,
    List<Constraint> constraints,
    boolean isProved,
    List<String> proof,
    List<Way> ways) {

  /**
   * Doses that keep every bound of a conflict but one, as the kernel evaluates them.
   *
   * @param without the bound that they do not keep
   * @param amounts waters and doses, without those of 0
   * @param figures what the liquids then have of the constrained figures of the other bounds, in
   *     words
   */
  public record Way(String without, List<PlannedAmount> amounts, List<String> figures) {

    /**
     * Makes a way.
     *
     * @param without the bound that they do not keep
     * @param amounts waters and doses, without those of 0
     * @param figures what the liquids then have of the constrained figures of the other bounds, in
     *     words
     */
    public Way {
      Objects.requireNonNull(without, "without");
      Objects.requireNonNull(amounts, "amounts");
      Objects.requireNonNull(figures, "figures");

      amounts = List.copyOf(amounts);
      figures = List.copyOf(figures);
    }

    /** Prints the bound and the doses. */
    @Override
    public String toString() {
      return "without \"" + without + "\": " + amounts + " " + figures;
    }
  }

  /**
   * Makes a conflict.
   *
   * @param members the bounds in words, in a fixed order
   * @param constraints the hard constraints among them, in their order
   * @param isProved whether it is proved that no plan exists
   * @param proof the multipliers and what they add up to, line by line; empty where there are none
   * @param ways for each bound doses that keep all the others, where such doses of 0 or more exist
   */
  public Conflict {
    Objects.requireNonNull(members, "members");
    Objects.requireNonNull(constraints, "constraints");
    Objects.requireNonNull(proof, "proof");
    Objects.requireNonNull(ways, "ways");

    members = List.copyOf(members);
    constraints = List.copyOf(constraints);
    proof = List.copyOf(proof);
    ways = List.copyOf(ways);
  }

  /**
   * Returns the bounds that are not shown to be needed for the conflict. A proved conflict has
   * none: its bounds are linear, and without any one of them the rest can be kept. In a conflict
   * that is not proved, a bound is needed if a way was found that keeps all the others; for the
   * bounds returned only the slopes near the best point say that they are needed.
   *
   * @return the bounds in words, in the order of the members
   */
  public List<String> undecided() {
    List<String> shown = ways.stream().map(Way::without).toList();
    return isProved ? List.of() : members.stream().filter(m -> !shown.contains(m)).toList();
  }

  /** Prints the bounds and whether it is proved. */
  @Override
  public String toString() {
    return (isProved ? "cannot be kept together: " : "no plan was found that keeps together: ")
        + String.join("; ", members);
  }
}
