package org.brewchem.checks.simulator;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.brewchem.checks.Comparison;
import org.brewchem.checks.CsvTable;

/** The report of the study of measured buffers, and what it is required to show. */
public final class BufferReport {

  private static final int CELLS = BufferStudy.cells().size();
  private static final int FAULTS = 2 * Fault.values().length;
  private static final int IDEAL = 2;

  /** Required of the changes of pH, one disturbance stated. */
  static final double LOWEST = 0.93;

  static final double HIGHEST = 0.98;

  /** Required of the changes of pH, all disturbances stated together. */
  static final double LOWEST_OF_ALL = 0.92;

  /** Required of the acidity. */
  static final double LOWEST_OF_ACIDITY = 0.93;

  /** Required share of noticed beers among the changes in error by more than U. */
  static final double LOWEST_NOTICED = 0.9;

  /** Allowed share of noticed beers among the undisturbed. */
  static final double HIGHEST_NOTICED = 0.05;

  private BufferReport() {}

  /** Returns the tables of the validation page. */
  public static List<Comparison> comparisons() {
    return List.of(cells(), faults());
  }

  static CsvTable.Line line(BufferStudy.Cell cell) {
    return CsvTable.read("study/measured-buffer-study.csv", CELLS).lines().stream()
        .filter(
            line ->
                cell.key()
                    .equals(
                        String.join(
                            ",", line.text("kind"), line.text("disturbance"), line.text("told"))))
        .findFirst()
        .orElseThrow();
  }

  static CsvTable.Line line(Fault fault, boolean told) {
    return CsvTable.read("study/measured-buffer-faults.csv", FAULTS)
        .where("fault", fault.name())
        .stream()
        .filter(line -> line.text("told").equals(told ? "stated" : "unstated"))
        .findFirst()
        .orElseThrow();
  }

  /** What an ideal reader notices of a fault; empty where nobody computed it. */
  static Optional<CsvTable.Line> ideal(Fault fault) {
    return CsvTable.read("study/measured-buffer-ideal.csv", IDEAL)
        .where("fault", fault.name())
        .stream()
        .findFirst();
  }

  /** What a stated cell is required to cover. */
  static double lowest(BufferStudy.Cell cell) {
    return cell.disturbance() == Disturbance.ALL ? LOWEST_OF_ALL : LOWEST;
  }

  static double highest(BufferStudy.Cell cell) {
    return cell.disturbance() == Disturbance.ALL ? 1 : HIGHEST;
  }

  /** Returns what a stated cell of the report misses; empty if nothing. */
  static String missed(BufferStudy.Cell cell) {
    CsvTable.Line line = line(cell);
    List<String> missed = new ArrayList<>();
    double coverage = line.number("coverage");
    if (coverage < lowest(cell) || coverage > highest(cell)) {
      missed.add("change of pH");
    }
    if (line.number("coverage_acidity") < LOWEST_OF_ACIDITY) {
      missed.add("acidity");
    }
    return String.join(", ", missed);
  }

  /** Returns whether too few beers are noticed of a fault, or too many without one. */
  static boolean missed(Fault fault, boolean told) {
    CsvTable.Line line = line(fault, told);
    return fault == Fault.NONE
        ? line.number("noticed") > HIGHEST_NOTICED
        : line.number("beyond_U_and_noticed") < LOWEST_NOTICED * line.number("beyond_U");
  }

  private static Comparison cells() {
    List<List<String>> rows = new ArrayList<>();
    for (BufferStudy.Cell stated : BufferStudy.cells()) {
      if (stated.told()) {
        CsvTable.Line told = line(stated);
        CsvTable.Line untold =
            line(new BufferStudy.Cell(stated.kind(), stated.disturbance(), false));
        String missed = missed(stated);
        rows.add(
            List.of(
                stated.kind().title(),
                stated.disturbance().title(),
                told.text("coverage_inside") + " / " + told.text("coverage_outside"),
                told.text("rms_inside") + " / " + told.text("rms_outside"),
                told.text("coverage"),
                told.text("median_U"),
                told.text("coverage_acidity"),
                told.text("median_U_acidity"),
                missed.isEmpty() ? "holds" : "**missed**: " + missed,
                untold.text("coverage"),
                untold.text("median_U"),
                untold.text("coverage_acidity"),
                untold.text("median_U_acidity")));
      }
    }
    return new Comparison(
        "Measured buffers on unlike beers",
        String.format(
            Locale.ROOT,
            "%.0f beers in each cell, titrated by a simulator that shares nothing with the"
                + " kernel (see \"Simulator of unlike beers\" above) on two legs of 25 to 60"
                + " readings in all, with white noise of 0.01 pH and a burette good to 0.01 mL."
                + " Electrode, disturbances, and kinds of beer are `Disturbance` and `BeerKind` of"
                + " the checks. Judged are the changes of pH by 0.3, 1 and 3 g/L of lactic and 1"
                + " g/L of phosphoric acid, inside and outside the readings, and the acidity to pH"
                + " 8.2 of the beer without carbon dioxide. The columns are shares of 95 %%"
                + " intervals that hold the truth, rms errors, and the median of U in pH and in"
                + " mEq/L. Stated: the library is told what the disturbances are drawn from, and"
                + " the metals are measured to 5 %%. Unstated: `MeasuredBuffer.from` with its"
                + " defaults. Required, where all is stated: %.2f to %.2f of the changes, or at"
                + " least %.2f with all disturbances together; at least %.2f of the acidities. The"
                + " build runs a tenth.",
            line(BufferStudy.cells().get(0)).number("beers"),
            LOWEST,
            HIGHEST,
            LOWEST_OF_ALL,
            LOWEST_OF_ACIDITY),
        List.of(
            "beers",
            "disturbance",
            "stated: inside / outside",
            "rms inside / outside",
            "change of pH",
            "U",
            "acidity",
            "U",
            "required",
            "unstated: change of pH",
            "U",
            "acidity",
            "U"),
        rows);
  }

  private static Comparison faults() {
    List<List<String>> rows = new ArrayList<>();
    for (Fault fault : Fault.values()) {
      List<String> cells = new ArrayList<>(List.of(fault.title()));
      for (boolean told : new boolean[] {true, false}) {
        CsvTable.Line line = line(fault, told);
        double beyond = line.number("beyond_U");
        cells.add(String.format(Locale.ROOT, "%.0f of %s", beyond, line.text("changes")));
        cells.add(
            fault == Fault.NONE
                ? "-"
                : String.format(Locale.ROOT, "%.3f", line.number("beyond_U_and_noticed") / beyond));
        cells.add(line.text("noticed"));
        cells.add(missed(fault, told) ? "**missed**" : "holds");
      }
      cells.add(ideal(fault).map(line -> line.text("noticed")).orElse("-"));
      rows.add(cells);
    }
    return new Comparison(
        "Faults that leave a trace in a measured buffer",
        String.format(
            Locale.ROOT,
            "%.0f beers for each fault, of all kinds in turn, otherwise undisturbed: how many"
                + " predicted changes of pH are in error by more than U, in what share of these"
                + " anything is said of the readings, and in what share of all beers. A refused"
                + " input counts as noticed. Required: at least %.0f %% of the changes beyond U,"
                + " and at most %.0f %% of the beers without a fault. An ideal reader knows how"
                + " beers, electrode and burette are drawn, is right to first order, and spends all"
                + " false notices that are allowed on this one fault (`IdealReader`, %.0f beers of"
                + " all kinds). What is required for the two faults that are missed is beyond even"
                + " that reader.",
            line(Fault.NONE, true).number("beers"),
            100 * LOWEST_NOTICED,
            100 * HIGHEST_NOTICED,
            ideal(Fault.TITRANT).orElseThrow().number("beers")),
        List.of(
            "fault",
            "stated: beyond U",
            "noticed of these",
            "noticed of all",
            "required",
            "unstated: beyond U",
            "noticed of these",
            "noticed of all",
            "required",
            "ideal reader: noticed of all"),
        rows);
  }
}
