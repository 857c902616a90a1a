package org.brewchem.figure;

import java.util.List;

/** Thrown when an unknown answer is asked for its value. It says what is missing. */
public final class UnknownFigureException extends IllegalStateException {

  private static final long serialVersionUID = 1;

  /** What was asked. */
  private final String figure;

  /** Why it is unknown; not part of the serialised form. */
  private final transient List<String> missing;

  /**
   * Makes the exception.
   *
   * @param figure what was asked
   * @param missing why it is unknown
   */
  public UnknownFigureException(String figure, List<String> missing) {
    super(figure + ": unknown; " + String.join("; ", missing));
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
