package org.brewchem.quality;

import java.util.OptionalDouble;
import org.brewchem.internal.Checks;

/**
 * A rule of a control chart: what it follows from point to point, and when it signals. It sees
 * points in units of the standard deviation from the mean of the process in control, so that one
 * rule serves every figure. Immutable; {@link ControlRules} has those of the library; you can also
 * write your own.
 */
public interface ControlRule {

  /**
   * Returns the name of the rule.
   *
   * @return the name, such as "beyond 3 standard deviations"
   */
  String name();

  /**
   * Starts to watch, before the first point.
   *
   * @return a watch of its own, for one thread
   */
  Watch start();

  /**
   * Returns the limits of what the rule follows, for a chart to draw.
   *
   * @return the distance of both limits from the centre, in standard deviations; empty for a rule
   *     that counts points instead
   */
  OptionalDouble limit();

  /**
   * Tells where the centre of what the rule follows lies.
   *
   * @return true if it is the mean of the process, false if it is 0, as of a range or a sum
   */
  boolean isAboutTheMean();

  /**
   * Returns how many points pass on average until the rule signals, the mean and standard deviation
   * known and the first point watched with the shift already there.
   *
   * @param shift by how much the mean has shifted, in standard deviations, of either sign
   * @return the average run length, in points; empty when no formula is known, {@link FalseAlarms}
   *     draws it then
   * @throws IllegalArgumentException if the shift is not finite
   */
  OptionalDouble averageRunLength(double shift);

  /** The side of the mean on which a rule signals. */
  enum Side {
    /** What the rule follows lies above. */
    ABOVE,
    /** What the rule follows lies below. */
    BELOW,
    /** No one side: of a range, of both sums at once, or of a rule that does not say. */
    NONE
  }

  /** What a rule remembers of the points so far. Mutable, for one thread. */
  interface Watch {

    /**
     * Takes the next point.
     *
     * @param z how far it lies from the mean, in standard deviations
     * @return true if the rule signals at this point
     */
    boolean signals(double z);

    /**
     * Returns what the rule follows, after the last point.
     *
     * @return the number in standard deviations: one that can lie above the centre and one that can
     *     lie below, the same twice where a rule follows one number
     */
    Followed followed();

    /**
     * Returns the side on which the rule signalled at the last point: where what it follows lies,
     * which need not be where the point lies.
     *
     * @return the side; none for a range, for both sides at once and for a rule that does not say
     */
    default Side side() {
      return Side.NONE;
    }
  }

  /**
   * What a rule follows after a point, in standard deviations from the centre.
   *
   * @param above the side that looks for a rise
   * @param below the side that looks for a fall
   */
  record Followed(double above, double below) {

    /**
     * Makes what a rule followed.
     *
     * @param above what is compared with the upper limit, in standard deviations
     * @param below what is compared with the lower limit, in standard deviations
     * @throws IllegalArgumentException if a number is not finite
     */
    public Followed {
      Checks.finite("above", above, "");
      Checks.finite("below", below, "");
    }
  }
}
