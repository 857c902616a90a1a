package org.brewchem.checks.causes;

import java.util.List;
import java.util.Locale;

/** The tables of the study for the documentation: hits by size and cause, and the confusions. */
final class CauseTables {

  private static final String BEGIN = "<!-- written by CauseStudy, do not edit -->\n";
  private static final String END = "<!-- end -->\n";

  private CauseTables() {}

  /** Puts the tables between the two marks of a page. */
  static String into(String page, List<CauseCell> all) {
    int begin = page.indexOf(BEGIN);
    int end = page.indexOf(END);
    if (begin < 0 || end < begin) {
      throw new IllegalStateException("the page has no marks for the tables");
    }
    return page.substring(0, begin + BEGIN.length()) + text(all) + page.substring(end);
  }

  private static String text(List<CauseCell> all) {
    StringBuilder text = new StringBuilder();
    text.append(
        """

        Hits of 100, first name and one of the first two; all are as likely in the last row of a size:

        | size | true cause | rules | ideal reader | the same, never silent | the same, told the size |
        |---|---|---|---|---|---|
        """);
    for (double size : CausePair.SIZES) {
      List<CauseCell> cells = all.stream().filter(cell -> cell.size() == size).toList();
      cells.forEach(cell -> hits(text, size, cell.cause(), List.of(cell)));
      hits(text, size, "**all**", cells);
    }
    for (double size : CausePair.SIZES) {
      text.append(
          String.format(
              Locale.ROOT, "\nNamed first by the rules, of 100, effects of %.0f u:\n\n", size));
      confusion(text, all.stream().filter(cell -> cell.size() == size).toList());
    }
    text.append("\nNamed first by the rules, of 100, without a cause:\n\n");
    confusion(text, all.stream().filter(cell -> cell.size() == 0).toList());
    return text.append('\n').toString();
  }

  private static void hits(StringBuilder text, double size, String cause, List<CauseCell> cells) {
    text.append(String.format(Locale.ROOT, "| %.0f u | %s", size, cause));
    for (String reader : new String[] {"", "ideal_", "open_", "told_"}) {
      text.append(
          String.format(
              Locale.ROOT,
              " | %.1f, %.1f",
              100 * CauseCell.share(cells, reader + "first"),
              100 * CauseCell.share(cells, reader + "first_two")));
    }
    text.append(" |\n");
  }

  private static void confusion(StringBuilder text, List<CauseCell> cells) {
    text.append("| true cause | ").append(String.join(" | ", CauseCell.NAMES)).append(" |\n|---|");
    text.append("---|".repeat(CauseCell.NAMES.size())).append('\n');
    for (CauseCell cell : cells) {
      text.append("| ").append(cell.cause());
      for (String name : CauseCell.NAMES) {
        text.append(
            String.format(Locale.ROOT, " | %.1f", 100 * CauseCell.share(List.of(cell), name)));
      }
      text.append(" |\n");
    }
  }
}
