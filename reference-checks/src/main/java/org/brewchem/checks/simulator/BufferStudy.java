package org.brewchem.checks.simulator;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The study of measured buffers on unlike beers: coverage and width of what is predicted, by kind
 * of beer and by disturbance, stated to the library and not, and what is noticed of faults.
 *
 * <p>Run by hand, DEVELOPERS.md says how; its report is a table of the checks' data, from which the
 * validation page shows it. The build runs a tenth of it.
 */
public final class BufferStudy {

  static final int BEERS = 2000;
  static final int TENTH = BEERS / 10;

  /** Beers that the ideal reader reads, and a tenth of them. */
  static final int IDEAL_BEERS = 600;

  static final int IDEAL_TENTH = IDEAL_BEERS / 10;

  /** A cell of the study. */
  record Cell(BeerKind kind, Disturbance disturbance, boolean told) {

    String key() {
      return kind.name() + "," + disturbance.name() + "," + (told ? "stated" : "unstated");
    }
  }

  private BufferStudy() {}

  /** Returns all cells: each kind undisturbed and wholly disturbed, each disturbance by itself. */
  static List<Cell> cells() {
    List<Cell> cells = new ArrayList<>();
    for (boolean told : new boolean[] {true, false}) {
      for (BeerKind kind : BeerKind.notSoured()) {
        cells.add(new Cell(kind, Disturbance.NONE, told));
      }
      for (Disturbance disturbance : Disturbance.values()) {
        if (disturbance != Disturbance.NONE && disturbance != Disturbance.ALL) {
          cells.add(new Cell(BeerKind.ORDINARY, disturbance, told));
        }
      }
      for (BeerKind kind : BeerKind.notSoured()) {
        cells.add(new Cell(kind, Disturbance.ALL, told));
      }
    }
    return cells;
  }

  /**
   * Runs the study, or part of it, and writes what it came to.
   *
   * @param args the folder of the report; optionally the number of beers a cell, and a text that
   *     the cells to run contain, such as {@code ",ALL,stated"}; the others stay as they are
   * @throws IOException if a file cannot be read or written
   */
  public static void main(String[] args) throws IOException {
    if (args.length < 1 || args.length > 3) {
      throw new IllegalArgumentException(
          "one to three arguments are needed: folder, beers a cell, part of a cell's name");
    }
    Path folder = Path.of(args[0]);
    int beers = args.length > 1 ? Integer.parseInt(args[1]) : BEERS;
    String part = args.length > 2 ? args[2] : "";
    Map<String, String> cells = read(folder.resolve("measured-buffer-study.csv"));
    for (Cell cell : cells()) {
      String key = cell.key() + ",";
      if (key.contains(part)) {
        cells.put(key, key + line(BufferTally.of(cell.kind, cell.disturbance, cell.told, beers)));
      }
    }
    write(
        folder.resolve("measured-buffer-study.csv"),
        "# Study of measured buffers on unlike beers, written by BufferStudy: shares of 95 %"
            + " intervals that hold the truth, rms error and median U in pH and mEq/L.",
        "kind,disturbance,told,beers,changes_inside,coverage_inside,rms_inside,changes_outside,"
            + "coverage_outside,rms_outside,coverage,median_U,coverage_acidity,median_U_acidity,"
            + "noticed,refused,tenth,tenth_acidity",
        cells().stream().map(cell -> cells.get(cell.key() + ",")).toList());
    Map<String, String> faults = read(folder.resolve("measured-buffer-faults.csv"));
    List<String> keys = new ArrayList<>();
    for (boolean told : new boolean[] {true, false}) {
      for (Fault fault : Fault.values()) {
        String key = fault.name() + ",fault," + (told ? "stated" : "unstated") + ",";
        keys.add(key);
        if (key.contains(part)) {
          faults.put(key, key + faultLine(BufferTally.of(fault, told, beers)));
        }
      }
    }
    write(
        folder.resolve("measured-buffer-faults.csv"),
        "# Faults that leave a trace, written by BufferStudy: changes of pH in error by more than U,"
            + " those of them whose beer was noticed, and the share of beers noticed at all.",
        "fault,of,told,beers,changes,beyond_U,beyond_U_and_noticed,noticed,refused",
        keys.stream().map(faults::get).toList());
    if ("ideal,".contains(part)) {
      writeIdeal(folder.resolve("measured-buffer-ideal.csv"));
    }
  }

  private static void writeIdeal(Path file) throws IOException {
    double[] all = BufferTally.ideal(IDEAL_BEERS);
    double[] tenth = BufferTally.ideal(IDEAL_TENTH);
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < all.length; i++) {
      Fault fault = i == 0 ? Fault.STRAY_READING : Fault.TITRANT;
      lines.add(
          String.format(
              Locale.ROOT, "%s,%d,%.3f,%.3f", fault.name(), IDEAL_BEERS, all[i], tenth[i]));
    }
    write(
        file,
        "# How often a reader who knows how beers, electrode and burette are drawn would notice a"
            + " fault, written by BufferStudy.",
        "fault,beers,noticed,tenth",
        lines);
  }

  private static String line(BufferTally tally) {
    List<BufferTally.Predicted> inside = tally.changes(false);
    List<BufferTally.Predicted> outside = tally.changes(true);
    List<BufferTally.Predicted> all = tally.changes();
    List<BufferTally.Predicted> acidities = tally.acidities();
    return String.format(
        Locale.ROOT,
        "%d,%d,%.3f,%.4f,%d,%.3f,%.4f,%.3f,%.4f,%.3f,%.3f,%.3f,%.3f,%.3f,%.3f",
        tally.beers(),
        inside.size(),
        BufferTally.Predicted.coverage(inside),
        BufferTally.Predicted.rms(inside),
        outside.size(),
        BufferTally.Predicted.coverage(outside),
        BufferTally.Predicted.rms(outside),
        tally.coverage(),
        BufferTally.Predicted.medianU(all),
        tally.coverageOfAcidity(),
        BufferTally.Predicted.medianU(acidities),
        tally.noticed(),
        tally.refused(),
        tally.first(TENTH).coverage(),
        tally.first(TENTH).coverageOfAcidity());
  }

  private static String faultLine(BufferTally tally) {
    return String.format(
        Locale.ROOT,
        "%d,%d,%d,%d,%.3f,%.3f",
        tally.beers(),
        tally.changes().size(),
        tally.beyond(),
        tally.beyondAndNoticed(),
        tally.noticed(),
        tally.refused());
  }

  /** Lines by their first three columns. */
  private static Map<String, String> read(Path file) throws IOException {
    Map<String, String> lines = new LinkedHashMap<>();
    if (Files.exists(file)) {
      for (String line : Files.readAllLines(file)) {
        String[] fields = line.split(",", 4);
        if (fields.length == 4) {
          lines.put(fields[0] + "," + fields[1] + "," + fields[2] + ",", line);
        }
      }
    }
    return lines;
  }

  private static void write(Path file, String comment, String header, List<String> lines)
      throws IOException {
    List<String> all = new ArrayList<>(List.of(comment, header));
    lines.stream().filter(line -> line != null).forEach(all::add);
    Files.writeString(file, String.join("\n", all) + "\n", StandardCharsets.UTF_8);
  }
}
