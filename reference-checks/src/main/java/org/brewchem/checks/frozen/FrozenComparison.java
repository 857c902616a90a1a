package org.brewchem.checks.frozen;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Compares the figures of a file with those computed now. */
public final class FrozenComparison {

  /** A value may differ by so much of itself: another order of the same arithmetic. */
  static final double OF_VALUE = 1e-10;

  /** A standard uncertainty, which rests on differences, may differ by so much of itself. */
  static final double OF_UNCERTAINTY = 1e-6;

  /** What rounds to 0 may differ by so much. */
  static final double ABOUT_ZERO = 1e-12;

  private FrozenComparison() {}

  /**
   * Returns every difference in words, none if nothing moved.
   *
   * @param frozen the figures of the file
   * @param computed the figures computed now
   */
  public static List<String> differences(List<FrozenFigure> frozen, List<FrozenFigure> computed) {
    Map<String, FrozenFigure> left = new LinkedHashMap<>();
    computed.forEach(figure -> left.put(figure.key(), figure));
    List<String> differences = new ArrayList<>();
    for (FrozenFigure was : frozen) {
      FrozenFigure is = left.remove(was.key());
      if (is == null) {
        differences.add(was.key() + ": in the file, but not computed (or twice in the file)");
      } else if (!was.unit().equals(is.unit())) {
        differences.add(was.key() + ": was in " + was.unit() + ", is in " + is.unit());
      } else {
        if (!agree(was.value(), was.number(), is.value(), is.number(), OF_VALUE)) {
          differences.add(was.key() + ": was " + was.value() + ", is " + is.value());
        }
        if (!agree(
            was.standardUncertainty(),
            was.uncertainty(),
            is.standardUncertainty(),
            is.uncertainty(),
            OF_UNCERTAINTY)) {
          differences.add(
              was.key()
                  + ": u was \""
                  + was.standardUncertainty()
                  + "\", is \""
                  + is.standardUncertainty()
                  + "\"");
        }
      }
    }
    left.keySet().forEach(key -> differences.add(key + ": computed, but not in the file"));
    return differences;
  }

  private static boolean agree(
      String wasText, OptionalDouble was, String isText, OptionalDouble is, double relative) {
    if (was.isPresent() && is.isPresent()) {
      double allowed = Math.max(relative * Math.abs(was.getAsDouble()), ABOUT_ZERO);
      return Math.abs(is.getAsDouble() - was.getAsDouble()) <= allowed;
    }
    return wasText.equals(isText);
  }
}
