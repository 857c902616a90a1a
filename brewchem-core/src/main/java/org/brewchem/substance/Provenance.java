package org.brewchem.substance;

import java.util.Objects;
import org.brewchem.internal.Checks;

/**
 * Where a value comes from: the key of its source, the place in it, and how the value came to be
 * known.
 *
 * @param sourceKey the key of the source, an entry of docs/sources.md
 * @param locator the table, page or block of the source; "not recorded" when it is not known
 * @param howKnown how the value came to be known
 * @param note what a reader of the value should know besides; empty when there is nothing
 */
public record Provenance(String sourceKey, String locator, HowKnown howKnown, String note) {

  /**
   * Makes a provenance.
   *
   * @param sourceKey the key of the source, not blank
   * @param locator the place in the source, not blank
   * @param howKnown how the value came to be known
   * @param note a note, may be empty
   * @throws IllegalArgumentException if the key or the locator is blank
   */
  public Provenance {
    Checks.notBlank("source key", sourceKey);
    Checks.notBlank("locator", locator);
    Objects.requireNonNull(howKnown, "howKnown");
    Objects.requireNonNull(note, "note");
  }
}
