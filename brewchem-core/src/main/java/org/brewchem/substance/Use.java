package org.brewchem.substance;

import java.util.Locale;
import java.util.Objects;
import org.brewchem.internal.Excerpt;

/** A liquid that people drink, or brew from, and that a reagent may be dosed into. */
public enum Use {
  /** Water for mashing, sparging, diluting or blending. */
  BREWING_WATER,
  /** Malt and water in the mash tun. */
  MASH,
  /** Wort, from the lauter tun to the pitching of the yeast. */
  WORT,
  /** Beer, fermenting or finished. */
  BEER;

  /**
   * Returns the liquid that a data table writes as {@code text}.
   *
   * @param text one of "brewing water", "mash", "wort", "beer"
   * @return the use
   * @throws IllegalArgumentException if the text is none of these
   */
  public static Use of(String text) {
    Objects.requireNonNull(text, "text");
    for (Use use : values()) {
      if (use.toString().equals(text)) {
        return use;
      }
    }
    throw new IllegalArgumentException(
        "use: \"" + Excerpt.of(text) + "\" is not one of brewing water, mash, wort, beer");
  }

  /** Returns the name of the liquid, such as "brewing water". */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
