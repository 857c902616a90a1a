package org.brewchem.checks.causes;

import java.util.Arrays;
import java.util.List;
import org.brewchem.checks.CsvTable;

/** What moved the later batch of a simulated pair, and by how much in which figure. */
enum SimulatedCause {
  /** Nothing but the noise of both batches. */
  NONE("none"),
  ALKALINITY("alkalinity of the water up"),
  LESS_ACID("less acid in the mash"),
  MALT("other malt"),
  GAS("incomplete degassing"),
  TITRANT("old titrant"),
  ELECTRODE("offset of the electrode");

  /** The causes without {@link #NONE}, all alike likely. */
  static final List<SimulatedCause> CAUSES =
      Arrays.stream(values()).filter(cause -> cause != NONE).toList();

  /** As the rules call it. */
  final String title;

  /** Whether all effects have one sign by chance. */
  final boolean eitherSign;

  SimulatedCause(String title) {
    this.title = title;
    this.eitherSign =
        Table.LINES.stream()
            .anyMatch(line -> line.text("cause").equals(title) && line.text("sign").equals("+-"));
  }

  /** Means of the effects by measured figure, in parts of the size. */
  double[] means() {
    return column("mean");
  }

  /** Their standard deviations. */
  double[] standardDeviations() {
    return column("sd");
  }

  private double[] column(String name) {
    double[] values = new double[SimulatedFigure.MEASURED];
    for (CsvTable.Line line : Table.LINES) {
      if (line.text("cause").equals(title)) {
        values[SimulatedFigure.titled(line.text("figure")).ordinal()] = line.number(name);
      }
    }
    return values;
  }

  /** Read once. */
  private static final class Table {
    static final List<CsvTable.Line> LINES =
        CsvTable.read("causes/simulated-effects.csv", 15).lines();
  }
}
