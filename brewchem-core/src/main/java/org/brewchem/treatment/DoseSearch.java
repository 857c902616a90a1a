package org.brewchem.treatment;

import java.util.function.DoubleUnaryOperator;
import org.brewchem.internal.Roots;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.treatment.UnreachableException.Reason;

/** The search for the moles of reagent per litre that bring a figure to a number. */
final class DoseSearch {

  /** How far a figure may be from its target, relative to it or to 1. */
  static final double TOLERANCE = 1e-9;

  /**
   * More than anybody could mean, mol per litre of liquid, and about where the Davies equation
   * ends; our choice.
   */
  private static final double MOST = 1;

  /** The first look, mol per litre: it tells the direction and is far above rounding. */
  private static final double FIRST = 1e-6;

  private static final double GROWTH = 4;

  /** A change that may be that of rounding, relative to the numbers it is a difference of. */
  private static final double ROUNDING = 1e-12;

  private final DoubleUnaryOperator figure;
  private final double target;
  private double nearest;

  DoseSearch(DoubleUnaryOperator figure, double target) {
    this.figure = figure;
    this.target = target;
  }

  /** How a search failed. */
  interface Failure {
    UnreachableException of(Reason reason, double nearest);
  }

  double find(Failure failure) {
    nearest = figure.applyAsDouble(0);
    double start = nearest - target;
    if (Math.abs(start) <= TOLERANCE * Math.max(1, Math.abs(target))) {
      throw failure.of(Reason.ALREADY_THERE, nearest);
    }
    double change = figure.applyAsDouble(FIRST) - nearest;
    if (Math.abs(change) <= ROUNDING * Math.max(1, Math.abs(nearest))) {
      throw failure.of(Reason.NO_EFFECT, nearest);
    }
    if (change > 0 == start > 0) {
      throw failure.of(Reason.WRONG_DIRECTION, nearest);
    }
    try {
      return Roots.walking(
              this::missing,
              0,
              (moles, missing) -> moles == 0 ? FIRST : Math.min(GROWTH * moles, MOST),
              0)
          .orElseThrow(end -> failure.of(Reason.TOO_WEAK, nearest));
    } catch (NoSolutionException e) {
      UnreachableException unreachable = failure.of(Reason.TOO_WEAK, nearest);
      unreachable.addSuppressed(e);
      throw unreachable;
    }
  }

  private double missing(double moles) {
    double number = figure.applyAsDouble(moles);
    if (Math.abs(number - target) < Math.abs(nearest - target)) {
      nearest = number;
    }
    return number - target;
  }
}
