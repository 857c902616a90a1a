package org.brewchem.checks.simulator;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.brewchem.checks.Comparison;
import org.brewchem.checks.CsvTable;

/**
 * The study of the stand-in on unlike beers of which only pH and titrated acidity are known:
 * coverage and size of the uncertainty of a change of pH by lactic acid, and beers refused.
 *
 * <p>The spreads of the typical beer were settled on the seeds of one half and are judged on the
 * other. Run by hand; the build runs a tenth of the half that judges.
 */
public final class StandInStudy {

  static final int BEERS = 2000;
  static final int TENTH = BEERS / 10;

  /** Required share of 95 % intervals that hold the true change. */
  static final double LOWEST = 0.92;

  /** Largest share of beers that may be refused. */
  static final double MOST_REFUSED = 0.02;

  private static final String TABLE = "study/stand-in-study.csv";
  private static final String SETTLING = "settling";
  private static final String JUDGING = "judging";

  private StandInStudy() {}

  /** What the beers of one kind came to. */
  static final class Tally {
    private final List<StandInTrial> found = new ArrayList<>();
    private final int beers;

    private Tally(BeerKind kind, long seed, int beers) {
      this.beers = beers;
      for (int i = 0; i < beers; i++) {
        StandInTrial trial = new StandInTrial(kind, new Random(seed + 7919L * i));
        if (!trial.refused) {
          found.add(trial);
        }
      }
    }

    double refused() {
      return 1 - (double) found.size() / beers;
    }

    /** Share of 95 % intervals that hold the true change by a dose. */
    double coverage(int dose) {
      return (double)
              found.stream()
                  .filter(
                      each ->
                          Math.abs(each.change[dose] - each.truth[dose])
                              <= BufferTrial.COVERAGE_FACTOR * each.uncertainty[dose])
                  .count()
          / found.size();
    }

    /** Root mean square of the error over the true change. */
    double relativeError(int dose) {
      return Math.sqrt(
          found.stream()
              .mapToDouble(each -> each.change[dose] / each.truth[dose] - 1)
              .map(error -> error * error)
              .average()
              .orElse(Double.NaN));
    }

    /** Median of the standard uncertainty over the predicted change. */
    double relativeUncertainty(int dose) {
      List<Double> sorted =
          new ArrayList<>(
              found.stream()
                  .map(each -> each.uncertainty[dose] / Math.abs(each.change[dose]))
                  .toList());
      Collections.sort(sorted);
      return sorted.get(sorted.size() / 2);
    }
  }

  /** Runs beers of the half that judges; fewer are the first ones of more. */
  static Tally judge(BeerKind kind, int beers) {
    return new Tally(kind, seed(kind, JUDGING), beers);
  }

  private static long seed(BeerKind kind, String half) {
    return (half.equals(JUDGING) ? 20261127 : 90261127) + 1_000_003L * kind.ordinal();
  }

  /**
   * Runs the study and writes what it came to.
   *
   * @param args the folder of the report, and optionally the number of beers of a kind
   * @throws IOException if the file cannot be written
   */
  public static void main(String[] args) throws IOException {
    if (args.length < 1 || args.length > 2) {
      throw new IllegalArgumentException(
          "one or two arguments are needed: folder, beers of a kind");
    }
    int beers = args.length > 1 ? Integer.parseInt(args[1]) : BEERS;
    List<String> lines =
        new ArrayList<>(
            List.of(
                "# Study of the stand-in on unlike beers, written by StandInStudy: 0.4 and 0.8 g/L"
                    + " of lactic acid; relative: over the change of pH.",
                "kind,half,beers,refused,coverage_04,coverage_08,relative_error_04,"
                    + "relative_error_08,relative_u_04,relative_u_08"));
    for (String half : List.of(SETTLING, JUDGING)) {
      for (BeerKind kind : BeerKind.values()) {
        Tally tally = new Tally(kind, seed(kind, half), beers);
        lines.add(
            String.format(
                Locale.ROOT,
                "%s,%s,%d,%.4f,%.3f,%.3f,%.3f,%.3f,%.3f,%.3f",
                kind.name(),
                half,
                beers,
                tally.refused(),
                tally.coverage(0),
                tally.coverage(1),
                tally.relativeError(0),
                tally.relativeError(1),
                tally.relativeUncertainty(0),
                tally.relativeUncertainty(1)));
      }
    }
    Files.writeString(
        Path.of(args[0]).resolve("stand-in-study.csv"),
        String.join("\n", lines) + "\n",
        StandardCharsets.UTF_8);
  }

  static CsvTable.Line line(BeerKind kind) {
    return CsvTable.read(TABLE, 2 * BeerKind.values().length).where("half", JUDGING).stream()
        .filter(line -> line.text("kind").equals(kind.name()))
        .findFirst()
        .orElseThrow();
  }

  /** Returns the table of the validation page. */
  public static Comparison comparison() {
    List<List<String>> rows = new ArrayList<>();
    for (BeerKind kind : BeerKind.values()) {
      CsvTable.Line line = line(kind);
      boolean holds =
          line.number("coverage_04") >= LOWEST
              && line.number("coverage_08") >= LOWEST
              && line.number("refused") <= MOST_REFUSED;
      rows.add(
          List.of(
              kind.title(),
              line.text("coverage_04"),
              line.text("coverage_08"),
              line.text("relative_error_04") + " / " + line.text("relative_error_08"),
              line.text("relative_u_04") + " / " + line.text("relative_u_08"),
              line.text("refused"),
              holds ? "holds" : "**missed**"));
    }
    return new Comparison(
        "The stand-in on unlike beers",
        String.format(
            Locale.ROOT,
            "%.0f beers of each kind, of which only pH (to 0.01) and acidity (to 1 %%) are"
                + " known: the share of 95 %% intervals that hold the change of pH by 0.4 and 0.8"
                + " g/L of lactic acid, the rms error and the median standard uncertainty relative"
                + " to the change, and the share of beers refused. The spreads of the typical beer"
                + " were settled on other seeds. They have to cover beers whose groups lie"
                + " anywhere, and so are wide for an ordinary one. Required: at least %.2f in every"
                + " kind, at most %.2f refused. The build runs a tenth.",
            line(BeerKind.ORDINARY).number("beers"),
            LOWEST,
            MOST_REFUSED),
        List.of(
            "beers",
            "0.4 g/L",
            "0.8 g/L",
            "relative error, 0.4 / 0.8 g/L",
            "relative u, 0.4 / 0.8 g/L",
            "refused",
            "required"),
        rows);
  }
}
