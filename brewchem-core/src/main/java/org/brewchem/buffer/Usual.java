package org.brewchem.buffer;

import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.brewchem.internal.DataTable;
import org.brewchem.uncertainty.Source;

/**
 * What a measured buffer takes for granted where nobody states it, and its limits: the rows of
 * {@code measured-buffer.csv}.
 */
enum Usual {
  READING_OF_PH("reading of pH"),
  ZERO("zero of the electrode"),
  SLOPE("slope of the electrode"),
  READING_OF_BURETTE("reading of the burette"),
  TITRANT("concentration of the titrant"),
  SAMPLE("volume of the sample"),
  SALT("background salt"),
  CARBON_DIOXIDE("carbon dioxide in the sample"),
  FREE_METALS("free calcium and magnesium"),
  MISFIT("misfit of the grid"),
  MISFIT_SHARE("width of the acids of the grid"),
  ACTIVITY_ABOVE("activity of acids above pK 6"),
  ACTIVITY_BELOW("activity of acids below pK 6"),
  LEAST_TITRANT("least titrant"),
  MOST_TITRANT("most titrant"),
  MOST_METALS("most calcium or magnesium"),
  MOST_SALT("most background salt"),
  MOST_CARBON_DIOXIDE("most carbon dioxide"),
  LOWEST_PH("lowest plausible pH"),
  HIGHEST_PH("highest plausible pH"),
  REJECTED("reading rejected"),
  STATED_NOISE("degrees of freedom of a stated noise"),
  ASSUMED_NOISE("degrees of freedom of the assumed noise"),
  NOISE("noise exceeded"),
  PATTERN("pattern of residuals"),
  LEGS("legs apart"),
  DOUBTFUL("titrant doubtful"),
  LIKELY_CARBON_DIOXIDE("carbon dioxide likely"),
  LIKELY_SHARE("share of carbon dioxide likely");

  private static final Map<String, DataTable.Row> ROWS =
      DataTable.read(Usual.class, "measured-buffer.csv").stream()
          .collect(Collectors.toMap(row -> row.text("name"), Function.identity()));

  private final String text;

  Usual(String text) {
    this.text = text;
  }

  private DataTable.Row row() {
    return Objects.requireNonNull(ROWS.get(text), text);
  }

  double value() {
    return row().number("value");
  }

  double standardUncertainty() {
    return row().number("standard_uncertainty");
  }

  String unit() {
    return row().has("unit") ? row().text("unit") : "";
  }

  /** A source of its own with the value and the uncertainty of the row. */
  Source source() {
    return Source.of(text, value(), standardUncertainty(), unit());
  }

  @Override
  public String toString() {
    return text;
  }
}
