package org.brewchem.checks.causes;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.brewchem.checks.CsvTable;

/**
 * What the simulated pairs of one cause and size came to, a row of the report.
 *
 * @param cause the true one
 * @param size in standard uncertainties, 0 without a cause
 * @param pairs how many
 * @param counts by column: hits of the readers, likely names, what was named first
 */
record CauseCell(String cause, double size, int pairs, Map<String, Integer> counts) {

  /** What the rules may do besides naming. */
  static final String NOTHING = "nothing";

  /** What may be named first, in the order of the columns. */
  static final List<String> NAMES =
      List.of(
          "alkalinity of the water up",
          "less acid in the mash",
          "less acid in the mash or other malt",
          "other malt",
          "incomplete degassing or old titrant",
          "offset of the electrode",
          NOTHING);

  /** The columns that count. */
  static final List<String> COUNTS =
      Stream.concat(
              Stream.of(
                  "first",
                  "first_two",
                  "ideal_first",
                  "ideal_first_two",
                  "open_first",
                  "open_first_two",
                  "told_first",
                  "told_first_two",
                  "likely",
                  "likely_right"),
              NAMES.stream())
          .toList();

  CauseCell {
    counts = new LinkedHashMap<>(counts);
  }

  static CauseCell of(CsvTable.Line line) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    COUNTS.forEach(column -> counts.put(column, (int) line.number(column)));
    return new CauseCell(
        line.text("cause"), line.number("size"), (int) line.number("pairs"), counts);
  }

  int count(String column) {
    return Objects.requireNonNull(counts.get(column), column);
  }

  static double share(List<CauseCell> cells, String column) {
    return (double) sum(cells, column) / cells.stream().mapToInt(CauseCell::pairs).sum();
  }

  static int sum(List<CauseCell> cells, String column) {
    return cells.stream().mapToInt(cell -> cell.count(column)).sum();
  }

  static String report(List<CauseCell> all) {
    List<String> lines =
        new ArrayList<>(
            List.of(
                "# Study of likely causes, written by CauseStudy: in how many pairs the cause was named",
                "# first and among the first two by the rules, by the ideal reader (ideal), by the same",
                "# never silent (open) and told the size (told); how many first names were likely, how",
                "# many of those right; how often each was named first.",
                "cause,size,pairs," + String.join(",", COUNTS)));
    for (CauseCell cell : all) {
      lines.add(
          String.format(Locale.ROOT, "%s,%.0f,%d,", cell.cause, cell.size, cell.pairs)
              + COUNTS.stream()
                  .map(column -> String.valueOf(cell.count(column)))
                  .collect(Collectors.joining(",")));
    }
    return String.join("\n", lines) + "\n";
  }
}
