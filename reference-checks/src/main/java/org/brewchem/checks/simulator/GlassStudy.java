package org.brewchem.checks.simulator;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.brewchem.checks.CsvTable;

/**
 * The study of bench trials: how often the true figures of a tank that is dosed like the chosen
 * glass lie in the intervals stated. What is required stood before the first run. Run by hand; the
 * build runs a tenth.
 */
public final class GlassStudy {

  /** Trials of a kind of beer, half of them with a measured buffer: six kinds make some 2000. */
  static final int TRIALS = 334;

  static final int TENTH = TRIALS / 10;

  static final double LEAST_COVERED = 0.93;
  static final double MOST_COVERED = 0.98;

  private static final String REPORT = "study/glass-study.csv";
  private static final long SEED = 20261126;

  private GlassStudy() {}

  /**
   * What the trials of a kind of beer came to.
   *
   * @param byReading covered by the pH read in the glass and what differs in the tank
   * @param uByReading median U of that
   * @param predicted covered by the prediction without the glass
   * @param uPredicted median U of that
   * @param acidity covered acidities to pH 8.2
   */
  record Found(
      BeerKind kind,
      boolean measured,
      int trials,
      double byReading,
      double uByReading,
      double predicted,
      double uPredicted,
      double acidity) {

    static Found of(BeerKind kind, boolean measured, int trials) {
      List<GlassTrial> all = new ArrayList<>();
      for (int i = 0; i < trials; i++) {
        all.add(
            new GlassTrial(
                kind,
                measured,
                new Random(
                    SEED + 1_000_003L * kind.ordinal() + (measured ? 0 : 500_009L) + 7919L * i)));
      }
      return new Found(
          kind,
          measured,
          trials,
          share(all.stream().filter(trial -> trial.coveredByReading).count(), trials),
          median(all.stream().mapToDouble(trial -> trial.uByReading).toArray()),
          share(all.stream().filter(trial -> trial.coveredByPrediction).count(), trials),
          median(all.stream().mapToDouble(trial -> trial.uOfPrediction).toArray()),
          share(all.stream().filter(trial -> trial.coveredAcidity).count(), trials));
    }

    private static double share(long count, int of) {
      return (double) count / of;
    }

    private static double median(double[] values) {
      java.util.Arrays.sort(values);
      return values[values.length / 2];
    }
  }

  /**
   * Runs the study and writes what it came to.
   *
   * @param args the folder of the reports
   * @throws IOException if a file cannot be written
   */
  public static void main(String[] args) throws IOException {
    List<String> lines =
        new ArrayList<>(
            List.of(
                "# Study of bench trials, written by GlassStudy: coverage of 95 % intervals and median U.",
                "kind,buffer,trials,by_reading,u_by_reading,predicted,u_predicted,acidity"));
    for (BeerKind kind : BeerKind.notSoured()) {
      for (boolean measured : new boolean[] {true, false}) {
        Found found = Found.of(kind, measured, TRIALS / 2);
        lines.add(
            String.format(
                Locale.ROOT,
                "%s,%s,%d,%.3f,%.4f,%.3f,%.4f,%.3f",
                kind.name(),
                measured ? "measured" : "stand-in",
                found.trials,
                found.byReading,
                found.uByReading,
                found.predicted,
                found.uPredicted,
                found.acidity));
      }
    }
    Files.writeString(
        Path.of(args[0]).resolve("glass-study.csv"),
        String.join("\n", lines) + "\n",
        StandardCharsets.UTF_8);
  }

  static List<CsvTable.Line> report() {
    return CsvTable.read(REPORT, 2 * BeerKind.notSoured().size()).lines();
  }
}
