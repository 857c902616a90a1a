package org.brewchem.figure;

import java.util.List;
import org.brewchem.internal.Excerpt;

/**
 * Thrown when an unknown answer is asked for its value. It carries what was asked and what is
 * missing; a missing value never counts as 0.
 */
public final class UnknownFigureException extends IllegalStateException {

  private static final long serialVersionUID = 1L;

  private static final int LONGEST_FIGURE = 120;
  private static final int LONGEST_REASONS = 320;

  /** What was asked. */
  private final String figure;

  /** Why it is unknown. */
  private final List<String> missing;

  /**
   * Makes the exception.
   *
   * @param figure what was asked
   * @param missing why it is unknown
   */
  public UnknownFigureException(String figure, List<String> missing) {
    super(
        Excerpt.of(figure, LONGEST_FIGURE)
            + ": unknown; "
            + Excerpt.of(String.join("; ", missing), LONGEST_REASONS));
    this.figure = figure;
    this.missing = List.copyOf(missing);
  }

  /**
   * Returns what was asked.
   *
   * @return the title of the figure
   */
  public String figure() {
    return figure;
  }

  /**
   * Returns why it is unknown.
   *
   * @return the reasons
   */
  public List<String> missing() {
    return missing;
  }
}
