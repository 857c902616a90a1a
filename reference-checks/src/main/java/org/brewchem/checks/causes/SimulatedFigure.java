package org.brewchem.checks.causes;

import java.util.Arrays;

/** The figures of a simulated pair, in the order of its z. */
enum SimulatedFigure {
  PH("pH"),
  ACIDITY("titratable acidity"),
  CALCIUM("calcium"),
  RATIO("sulfate to chloride"),
  ALKALINITY("titration alkalinity"),
  RESIDUAL("residual alkalinity");

  /** All but the last, which is computed from the alkalinity and the hardness of the water. */
  static final int MEASURED = 5;

  final String title;

  SimulatedFigure(String title) {
    this.title = title;
  }

  static SimulatedFigure titled(String title) {
    return Arrays.stream(values())
        .filter(figure -> figure.title.equals(title))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(title + ": no such figure"));
  }
}
