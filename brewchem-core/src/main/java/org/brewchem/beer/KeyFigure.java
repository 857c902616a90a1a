package org.brewchem.beer;

/** The figures by which the acidity and the minerals of a beer are judged. */
public enum KeyFigure {
  /** How acid the beer is now. */
  PH("pH", ""),
  /** How much base it takes to the end point, mEq/L. */
  TITRATABLE_ACIDITY("titratable acidity", "mEq/L"),
  /** Sulfate to chloride by mass. */
  SULFATE_TO_CHLORIDE("sulfate to chloride", ""),
  /** Calcium, mg/L. */
  CALCIUM("calcium", "mg/L");

  private final String title;
  private final String unit;

  KeyFigure(String title, String unit) {
    this.title = title;
    this.unit = unit;
  }

  /**
   * Returns the unit in which plain numbers of this figure count.
   *
   * @return the unit, empty when there is none
   */
  public String unit() {
    return unit;
  }

  /** Returns the name of the figure, such as "titratable acidity". */
  @Override
  public String toString() {
    return title;
  }
}
