package org.brewchem.quantity;

/** The rule that two titrated values combine or compare only when they share their end point. */
final class EndPoints {

  private EndPoints() {}

  static PH shared(String name, PH one, PH other) {
    if (!one.equals(other)) {
      throw new IllegalArgumentException(
          name
              + ": an end point of "
              + one
              + " does not go with an end point of "
              + other
              + "; both values need the same end point");
    }
    return one;
  }

  static String text(PH endPoint) {
    return ", to " + endPoint;
  }
}
