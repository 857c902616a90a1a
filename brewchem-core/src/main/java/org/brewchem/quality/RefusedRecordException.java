package org.brewchem.quality;

import java.util.List;

/** A record that a book does not take, with everything that is wrong with it. */
public final class RefusedRecordException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /** What is wrong. */
  private final List<String> faults;

  RefusedRecordException(List<String> faults) {
    super(String.join("; ", faults) + "; nothing was stored");
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
