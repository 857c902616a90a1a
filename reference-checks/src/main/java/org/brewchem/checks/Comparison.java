package org.brewchem.checks;

import java.util.List;

/**
 * A table of differences that are no errors, for the validation page: two ways to compute the same
 * thing, each with its reasons.
 *
 * @param title what is compared
 * @param text what the differences come from
 * @param header column headings
 * @param rows the cells, row by row
 */
public record Comparison(String title, String text, List<String> header, List<List<String>> rows) {

  /** Copies the lists. */
  public Comparison {
    header = List.copyOf(header);
    rows = List.copyOf(rows);
  }
}
