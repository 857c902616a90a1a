package org.brewchem.figure;

/** What can be asked for figures: a liquid, a row of a table, a titration. */
public interface Answering {

  /**
   * Finds a figure, together with the way there.
   *
   * @param figure the figure
   * @return the step that found its value, in the figure's own scale, or why it is unknown; a
   *     figure that does not apply is unknown
   */
  Step step(Figure<?> figure);

  /**
   * Returns what this is.
   *
   * @return a word for messages, such as "water"
   */
  String kind();
}
