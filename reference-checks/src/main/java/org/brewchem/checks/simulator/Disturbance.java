package org.brewchem.checks.simulator;

/**
 * What a laboratory's small errors and its beers' unknowns are drawn from, one enlarged at a time.
 * Undisturbed, the electrode is calibrated: its zero is good to 0.005 pH and its slope to 0.3 %
 * (standard deviations); titrants are as told, the sample holds no carbon dioxide and has 20 °C.
 */
enum Disturbance {
  /** Noise of the readings only. */
  NONE("noise only"),
  /** Zero of the electrode. */
  OFFSET("zero, standard deviation 0.02 pH"),
  /** Slope of the electrode. */
  SLOPE("slope, standard deviation 1 %"),
  /** Concentrations of both titrants, each its own. */
  TITRANT("titrants, standard deviation 0.3 % each"),
  /** Carbon dioxide left in the sample. */
  CARBON_DIOXIDE("carbon dioxide, 0 to 0.15 g/L"),
  /** Univalent salt besides all else. */
  SALT("background salt, 0 to 40 mmol/kg"),
  /** Calcium and magnesium. */
  METALS("calcium 0.2 to 6, magnesium 0.5 to 10 mmol/L"),
  /** Temperature of the readings. */
  TEMPERATURE("temperature, 15 to 28 °C"),
  /** All of them. */
  ALL("all together");

  private final String title;

  Disturbance(String title) {
    this.title = title;
  }

  String title() {
    return title;
  }

  /** Returns whether another disturbance is part of this one. */
  boolean includes(Disturbance other) {
    return this == other || this == ALL;
  }
}
