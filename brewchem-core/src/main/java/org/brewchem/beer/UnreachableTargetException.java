package org.brewchem.beer;

/** Thrown when a dose or a blend cannot reach its target; the message says what could. */
public final class UnreachableTargetException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  /** Why a target cannot be reached. */
  public enum Reason {
    /** The beer has the target already. */
    ALREADY_THERE,
    /** The target lies below the acidity of the beer, and an acid cannot lower it. */
    ACID_CANNOT_LOWER_ACIDITY,
    /** The target lies above the pH of the beer, and an acid cannot raise it. */
    ACID_CANNOT_RAISE_PH,
    /** No dose of this acid that could be meant reaches the target. */
    ACID_TOO_WEAK,
    /** The target does not lie between the two beers. */
    NOT_BETWEEN_THE_BEERS
  }

  /** Why the target cannot be reached. */
  private final Reason reason;

  UnreachableTargetException(Reason reason, String message) {
    super(message);
    this.reason = reason;
  }

  /**
   * Returns why the target cannot be reached.
   *
   * @return the reason
   */
  public Reason reason() {
    return reason;
  }
}
