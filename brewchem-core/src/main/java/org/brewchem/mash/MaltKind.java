package org.brewchem.mash;

/**
 * A kind of malt of which the library assumes a pH and a buffer capacity where nobody measured the
 * lot. The defaults are wide, published nowhere and labelled in every result; the rows of {@code
 * malts.csv} say what they rest on. Colour alone tells nothing here.
 *
 * <p>All malts of one kind share the sources of uncertainty of their kind: two assumed pale malts
 * err together, so that one malt entered twice counts as one malt.
 */
public enum MaltKind {
  /** Pilsner and pale malt. */
  PALE("pale"),
  /** Munich malt and the like. */
  MUNICH("Munich"),
  /** Wheat malt. */
  WHEAT("wheat"),
  /** Caramel malt. */
  CARAMEL("caramel"),
  /** Roasted malt. */
  ROASTED("roasted");

  private final String text;

  MaltKind(String text) {
    this.text = text;
  }

  /** Returns the kind as it is written before "malt". */
  @Override
  public String toString() {
    return text;
  }
}
