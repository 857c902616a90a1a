package org.brewchem.quantity;

import org.brewchem.internal.NumberText;

/** The rule that two titrated values combine or compare only when they share their end point. */
final class EndPoints {

  private EndPoints() {}

  static PH shared(String name, PH one, PH other) {
    if (!one.equals(other)) {
      throw new IllegalArgumentException(
          name
              + ": an end point of pH "
              + NumberText.exact(one.value())
              + " does not go with an end point of pH "
              + NumberText.exact(other.value())
              + "; both values need the same end point");
    }
    return one;
  }

  static String text(PH endPoint) {
    return ", to " + endPoint;
  }
}
