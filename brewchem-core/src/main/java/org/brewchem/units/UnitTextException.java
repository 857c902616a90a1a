package org.brewchem.units;

import org.brewchem.internal.Excerpt;

/**
 * Thrown when a text is not a number, a value or a unit. It names the text, the place in it, and
 * what would be allowed there.
 */
public final class UnitTextException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;
  private static final int LONGEST_PROBLEM = 120;
  private static final int LONGEST_ALLOWED = 240;

  /** The whole text. */
  private final String text;

  /** The index into the text where reading failed. */
  private final int position;

  /** What would be allowed there. */
  private final String allowed;

  UnitTextException(String text, int position, String problem, String allowed) {
    super(
        "\""
            + Excerpt.of(text)
            + "\", character "
            + (position + 1)
            + ": "
            + Excerpt.of(problem, LONGEST_PROBLEM)
            + "; "
            + Excerpt.of(allowed, LONGEST_ALLOWED));
    this.text = text;
    this.position = position;
    this.allowed = allowed;
  }

  /**
   * Returns the text that was to be read.
   *
   * @return the whole text
   */
  public String text() {
    return text;
  }

  /**
   * Returns where reading failed.
   *
   * @return the index into {@link #text()}, 0 for the first character and the length for its end
   */
  public int position() {
    return position;
  }

  /**
   * Returns what would be allowed at that place.
   *
   * @return a sentence without its full stop
   */
  public String allowed() {
    return allowed;
  }
}
