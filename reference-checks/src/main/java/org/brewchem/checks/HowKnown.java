package org.brewchem.checks;

/** How the expected value of a row is known. */
public enum HowKnown {
  /** The printed value was seen in the source or in a faithful copy of it. */
  SEEN("seen", true),
  /** Part of the row was seen, part is recalled. */
  MIXED("mixed", true),
  /** The value is recalled; the page was not seen. */
  FROM_MEMORY("from memory", true),
  /** The value follows from the cited definition, or was computed by the cited program. */
  COMPUTED("computed", false),
  /** A fact of the trade that everybody uses and nobody cites. */
  COMMON_PRACTICE("common practice, no source", false);

  private final String text;
  private final boolean published;

  HowKnown(String text, boolean published) {
    this.text = text;
    this.published = published;
  }

  /** Returns the wording used in the data files and on the validation page. */
  public String text() {
    return text;
  }

  /** Returns whether a row known in this way is a published value. */
  public boolean isPublished() {
    return published;
  }

  /**
   * Returns the value that a data file means.
   *
   * @param text the content of a {@code how_known} column
   * @throws IllegalArgumentException if the text is none of the known wordings
   */
  public static HowKnown parse(String text) {
    for (HowKnown value : values()) {
      if (value.text.equals(text)) {
        return value;
      }
    }
    throw new IllegalArgumentException("how_known: \"" + text + "\" is not a known wording");
  }
}
