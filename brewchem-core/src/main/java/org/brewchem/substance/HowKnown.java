package org.brewchem.substance;

import java.util.Locale;
import java.util.Objects;
import org.brewchem.internal.Excerpt;

/** How a value of the data tables came to be known. */
public enum HowKnown {
  /** The printed value was seen in the source or in a faithful copy of it. */
  SEEN,
  /** A part of the row was seen, a part recalled. */
  MIXED,
  /** Recalled; the page was not seen. */
  FROM_MEMORY,
  /** Follows from the cited definition by arithmetic. */
  COMPUTED;

  /**
   * Returns the value that a data table writes as {@code text}.
   *
   * @param text one of "seen", "mixed", "from memory", "computed"
   * @return the value
   * @throws IllegalArgumentException if the text is none of these
   */
  public static HowKnown of(String text) {
    Objects.requireNonNull(text, "text");
    for (HowKnown known : values()) {
      if (known.toString().equals(text)) {
        return known;
      }
    }
    throw new IllegalArgumentException(
        "how known: \"" + Excerpt.of(text) + "\" is not one of seen, mixed, from memory, computed");
  }

  /** Returns the text that the data tables use, such as "from memory". */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
