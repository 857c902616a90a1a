package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;

/**
 * The arithmetic of a result, line by line: each line names a quantity, how it was computed, what
 * it is, and where a constant in it comes from. The lines print the intermediate values that the
 * result was computed with. Immutable.
 */
public final class Explanation {

  private final List<String> lines;

  private Explanation(List<String> lines) {
    this.lines = List.copyOf(lines);
  }

  /**
   * Returns the lines.
   *
   * @return an unmodifiable list
   */
  public List<String> lines() {
    return lines;
  }

  /** Prints the lines, one below the other. */
  @Override
  public String toString() {
    return String.join("\n", lines);
  }

  /** Lines in the making. */
  static final class Lines {

    private final List<String> lines = new ArrayList<>();

    Lines add(String quantity, String computed) {
      lines.add(quantity + " = " + computed);
      return this;
    }

    Lines add(String quantity, String computed, String source) {
      lines.add(quantity + " = " + computed + "  [" + source + "]");
      return this;
    }

    Lines note(String text) {
      lines.add(text);
      return this;
    }

    Explanation done() {
      return new Explanation(lines);
    }
  }
}
