package org.brewchem.treatment;

import org.brewchem.figure.Scale;

/**
 * Thrown when no dose of the reagent, or no treatment of the kind asked for, reaches a target. It
 * carries the target, the nearest value that can be reached, and the reason.
 */
public final class UnreachableException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /** Why a target is out of reach. */
  public enum Reason {
    /** The liquid is there already; nothing is to be done. */
    ALREADY_THERE("the liquid is there already"),
    /** The treatment moves the figure away from the target. */
    WRONG_DIRECTION("it moves the figure the other way"),
    /** The treatment does not move the figure at all. */
    NO_EFFECT("it does not move the figure"),
    /** A reading after a first stage says that it moved the figure the other way. */
    CONTRADICTED("the reading says that the first stage moved it the other way, so read again"),
    /** The figure comes nearer and stops short, or would need more than anyone could mean. */
    TOO_WEAK("it comes no nearer, however much is added"),
    /** The liquid may lie beyond the limit before anything is added, more often than is allowed. */
    TOO_UNCERTAIN("the liquid may lie beyond it already, more often than that"),
    /** Both liquids of a blend lie on the same side of the target. */
    NOT_BETWEEN("it does not lie between the two");

    private final String text;

    Reason(String text) {
      this.text = text;
    }

    /** Returns the reason in words. */
    @Override
    public String toString() {
      return text;
    }
  }

  /** What was to be reached. */
  private final String figure;

  /** The number wanted. */
  private final double target;

  /** The nearest number. */
  private final double reach;

  /** The unit of both. */
  private final String unit;

  /** Why. */
  private final Reason reason;

  UnreachableException(
      String figure, double target, double reach, Scale<?> scale, Reason reason, String by) {
    super(
        reason == Reason.ALREADY_THERE
            ? figure
                + ": "
                + scale.text(target)
                + " needs none of "
                + by
                + "; "
                + reason
                + " or beyond it, at "
                + scale.text(reach)
            : figure
                + ": "
                + scale.text(target)
                + " is not possible by "
                + by
                + "; "
                + reason
                + ", and the nearest is "
                + scale.text(reach));
    this.figure = figure;
    this.target = target;
    this.reach = reach;
    this.unit = scale.symbol();
    this.reason = reason;
  }

  /**
   * Returns what was to be reached.
   *
   * @return the title of the figure
   */
  public String figure() {
    return figure;
  }

  /**
   * Returns what was wanted.
   *
   * @return the number, in {@link #unit()}
   */
  public double target() {
    return target;
  }

  /**
   * Returns the nearest value that can be got.
   *
   * @return the number, in {@link #unit()}; the liquid's own where nothing helps
   */
  public double reach() {
    return reach;
  }

  /**
   * Returns the unit.
   *
   * @return the symbol; empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Returns why the target is out of reach.
   *
   * @return the reason
   */
  public Reason reason() {
    return reason;
  }
}
