package org.brewchem.quality;

import java.util.List;
import org.brewchem.internal.Excerpt;

/** Thrown when a book refuses a record; it names everything that is wrong with it. */
public final class RefusedRecordException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /** The message is cut; {@link #faults} holds all. */
  private static final int LONGEST = 450;

  /** What is wrong. */
  private final List<String> faults;

  RefusedRecordException(List<String> faults) {
    super(Excerpt.of(String.join("; ", faults), LONGEST) + "; nothing was stored");
    this.faults = List.copyOf(faults);
  }

  /**
   * Returns what is wrong.
   *
   * @return a sentence to each fault, which names the record and what is at fault
   */
  public List<String> faults() {
    return faults;
  }
}
