package org.brewchem;

import java.util.List;

/**
 * The refusal of an answer that needs values nobody stated: it carries what is missing. A missing
 * value never counts as 0.
 */
public final class MissingValueException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /** The names of what is missing. */
  private final List<String> missing;

  /**
   * Makes the refusal of an answer.
   *
   * @param message the message, which says what was asked for and what is missing
   * @param missing the names of the values that are missing, one or more
   */
  public MissingValueException(String message, List<String> missing) {
    super(message);
    this.missing = List.copyOf(missing);
  }

  /**
   * Returns what is missing.
   *
   * @return the names in words, such as {@code calcium}; unmodifiable
   */
  public List<String> missing() {
    return missing;
  }
}
