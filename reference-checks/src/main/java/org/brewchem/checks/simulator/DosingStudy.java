package org.brewchem.checks.simulator;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.brewchem.checks.CsvTable;

/**
 * The study of doses into a tank: how often those that are chosen for a chance of 5 % overshoot,
 * and what a reading between two stages is worth. What is required stood before the first run. Run
 * by hand; the build runs a tenth.
 */
public final class DosingStudy {

  /** Doses of a kind of beer and a reagent: six kinds make some 2000. */
  static final int DOSES = 334;

  static final int TENTH = DOSES / 10;

  static final double LEAST_OVERSHOT = 0.025;
  static final double MOST_OVERSHOT = 0.07;
  static final double MOST_OVERSHOT_OF_A_KIND = 0.10;

  /** Ends of the ranges of change, pH; from 0.3 on two stages have to halve the error. */
  static final double[] CHANGES = {0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8};

  static final double HALVED_FROM = 0.3;
  static final double MOST_OF_SMALL_CHANGES = 0.03;

  private static final String OVERSHOT = "study/dosing-study.csv";
  private static final String STAGED = "study/staged-dose-study.csv";
  private static final long SEED = 20261128;

  private DosingStudy() {}

  /** What doses with one reagent into one kind of beer came to. */
  record Overshoot(BeerKind kind, boolean acid, int dosed, int refused, int overshot) {

    static Overshoot of(BeerKind kind, boolean acid, int doses) {
      int dosed = 0;
      int overshot = 0;
      for (int i = 0; i < doses; i++) {
        DosingTrial trial = new DosingTrial(kind, acid, i % 2 == 0, random(kind, acid, i));
        dosed += trial.dosed ? 1 : 0;
        overshot += trial.overshot ? 1 : 0;
      }
      return new Overshoot(kind, acid, dosed, doses - dosed, overshot);
    }
  }

  private static Random random(BeerKind kind, boolean acid, int i) {
    return new Random(SEED + 1_000_003L * kind.ordinal() + (acid ? 0 : 500_009L) + 7919L * i);
  }

  /** Runs doses in two stages into every kind of beer, half with acid and half with a base. */
  static List<StagedTrial> staged(int range, int dosesOfAKind) {
    List<StagedTrial> trials = new ArrayList<>();
    for (BeerKind kind : BeerKind.notSoured()) {
      for (int i = 0; i < dosesOfAKind; i++) {
        Random random = random(kind, i % 2 == 0, 100_000 * (range + 1) + i);
        double wanted = DosingTrial.uniform(random, CHANGES[range], CHANGES[range + 1]);
        StagedTrial trial = new StagedTrial(kind, i % 2 == 0, wanted, random);
        if (!trial.refused) {
          trials.add(trial);
        }
      }
    }
    return trials;
  }

  static double rms(List<StagedTrial> trials, ToDoubleFunction<StagedTrial> error) {
    return Math.sqrt(
        trials.stream().mapToDouble(error).map(each -> each * each).average().orElse(Double.NaN));
  }

  /** Whether a range of changes comes to what is required of it. */
  static boolean holds(double from, double whole, double staged) {
    return from >= HALVED_FROM - 1e-9
        ? staged <= whole / 2
        : staged <= whole && staged <= MOST_OF_SMALL_CHANGES;
  }

  /**
   * Runs the study and writes what it came to.
   *
   * @param args the folder of the reports, and optionally the number of doses of a kind
   * @throws IOException if a file cannot be written
   */
  public static void main(String[] args) throws IOException {
    if (args.length < 1 || args.length > 2) {
      throw new IllegalArgumentException(
          "one or two arguments are needed: folder, doses of a kind");
    }
    int doses = args.length > 1 ? Integer.parseInt(args[1]) : DOSES;
    List<String> overshot =
        new ArrayList<>(
            List.of(
                "# Study of doses chosen to overshoot with a chance of 5 %, written by DosingStudy.",
                "reagent,kind,dosed,not_dosed,overshot"));
    for (boolean acid : new boolean[] {true, false}) {
      for (BeerKind kind : BeerKind.notSoured()) {
        Overshoot found = Overshoot.of(kind, acid, doses);
        overshot.add(
            String.format(
                Locale.ROOT,
                "%s,%s,%d,%d,%d",
                acid ? "acid" : "base",
                kind.name(),
                found.dosed,
                found.refused,
                found.overshot));
      }
    }
    write(args[0], "dosing-study.csv", overshot);
    List<String> staged =
        new ArrayList<>(
            List.of(
                "# Study of doses in two stages, written by DosingStudy: root mean square of true pH"
                    + " less aim; rms_first_beyond is what the first stage alone goes beyond the aim.",
                "from,to,doses,rms_whole,rms_staged,rms_first_beyond"));
    for (int range = 0; range < CHANGES.length - 1; range++) {
      List<StagedTrial> trials = staged(range, doses / 4);
      staged.add(
          String.format(
              Locale.ROOT,
              "%.2f,%.2f,%d,%.4f,%.4f,%.4f",
              CHANGES[range],
              CHANGES[range + 1],
              trials.size(),
              rms(trials, trial -> trial.errorOfWhole),
              rms(trials, trial -> trial.errorOfStaged),
              rms(trials, trial -> trial.errorOfFirst)));
    }
    write(args[0], "staged-dose-study.csv", staged);
  }

  private static void write(String folder, String file, List<String> lines) throws IOException {
    Files.writeString(
        Path.of(folder).resolve(file), String.join("\n", lines) + "\n", StandardCharsets.UTF_8);
  }

  static List<CsvTable.Line> overshot() {
    return CsvTable.read(OVERSHOT, 2 * BeerKind.notSoured().size()).lines();
  }

  static List<CsvTable.Line> staged() {
    return CsvTable.read(STAGED, CHANGES.length - 1).lines();
  }
}
