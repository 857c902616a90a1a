package org.brewchem.titration;

/** How the end point of a titration is found. */
public enum TitrationMethod {
  /** With a pH meter, to a stated pH; for beer AOAC 950.07, 50 mL degassed, to pH 8.2. */
  POTENTIOMETRIC("with a pH meter", "AOAC 950.07 for beer"),
  /**
   * With phenolphthalein, in beer diluted ten times with boiled water so that the colour shows; the
   * indicator variant of AOAC 950.07, 25 mL into 250 mL. The first lasting pink is taken as pH 8.2,
   * read with a standard uncertainty of 0.15 (common practice, no source).
   */
  PHENOLPHTHALEIN("with phenolphthalein, diluted with boiled water", "AOAC 950.07, indicator");

  private final String text;
  private final String source;

  TitrationMethod(String text, String source) {
    this.text = text;
    this.source = source;
  }

  /**
   * Returns where the method is described.
   *
   * @return the source
   */
  public String source() {
    return source;
  }

  /** Returns how the end point is found, in words. */
  @Override
  public String toString() {
    return text;
  }
}
