package org.brewchem.checks.causes;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SplittableRandom;
import org.brewchem.checks.CsvTable;
import org.brewchem.quality.LikelyCauses;

/**
 * The study of likely causes: how often the rules name the cause of a simulated pair first or among
 * the first two, beside an ideal reader who knows how pairs are drawn. What is required stood
 * before the first run. Run by hand; the build runs a tenth.
 *
 * <p>Causes that no figure tells apart count as one for both: gas left in the sample and an old
 * titrant always; less acid in the mash and another malt where pH rose and acidity fell. The ideal
 * reader is judged twice: silent in as many quiet pairs as the rules state for themselves, which is
 * fair to both, and never silent. A third one is told the size besides.
 */
public final class CauseStudy {

  /** Pairs of each cause and size. */
  static final int PAIRS = 1_000;

  static final int QUIET_PAIRS = 10_000;
  static final int TENTH = 10;

  /** Most by which the rules may hit less often than the ideal reader, all causes of a size. */
  static final double MOST_BELOW = 0.10;

  static final double LEAST_RIGHT_OF_LIKELY = 0.80;
  static final double MOST_NAMED_WITHOUT_CAUSE = 0.05;

  private static final String REPORT = "study/cause-study.csv";
  private static final long SEED = 20261127;
  private static final Set<SimulatedCause> READ_TOO_HIGH =
      Set.of(SimulatedCause.GAS, SimulatedCause.TITRANT);
  private static final Set<SimulatedCause> SOURNESS =
      Set.of(SimulatedCause.LESS_ACID, SimulatedCause.MALT);

  private CauseStudy() {}

  /** Tallies what the pairs of one cause and size came to. */
  private static final class Tally {
    private final SimulatedCause cause;
    private final double size;
    private final Readers readers;
    private final Map<String, Integer> counts = new LinkedHashMap<>();

    Tally(SimulatedCause cause, double size, Readers readers) {
      this.cause = cause;
      this.size = size;
      this.readers = readers;
      CauseCell.COUNTS.forEach(column -> counts.put(column, 0));
    }

    CauseCell of(int pairs) {
      SplittableRandom random =
          new SplittableRandom(SEED + 1_000_003L * cause.ordinal() + 7919L * Math.round(size));
      for (int i = 0; i < pairs; i++) {
        CausePair pair = CausePair.draw(cause, size, random);
        rules(pair.scores(), LikelyCauses.of(pair.differences()).suspects());
        if (cause != SimulatedCause.NONE) {
          ideal(pair.scores());
        }
      }
      return new CauseCell(cause.title, size, pairs, counts);
    }

    private void count(String column) {
      counts.merge(column, 1, Integer::sum);
    }

    private void count(String reader, List<List<String>> ranked) {
      for (int i = 0; i < Math.min(2, ranked.size()); i++) {
        if (ranked.get(i).contains(cause.title)) {
          count(reader + "first_two");
          if (i == 0) {
            count(reader + "first");
          }
        }
      }
    }

    private void rules(double[] z, List<LikelyCauses.Suspect> suspects) {
      count("", suspects.stream().map(LikelyCauses.Suspect::causes).toList());
      if (suspects.isEmpty()) {
        count(CauseCell.NOTHING);
        return;
      }
      LikelyCauses.Suspect first = suspects.get(0);
      List<String> causes = first.causes().stream().sorted().toList();
      if (groups(z).stream().noneMatch(group -> titles(group).equals(causes))) {
        throw new IllegalStateException(first + ": not a group of the study");
      }
      count(String.join(" or ", causes));
      if (first.strength() == LikelyCauses.Strength.LIKELY) {
        count("likely");
        if (causes.contains(cause.title)) {
          count("likely_right");
        }
      }
    }

    private void ideal(double[] z) {
      List<List<String>> ranked = ranked(readers.ofAll, z);
      count("open_", ranked);
      if (readers.ofAll.speaks(z)) {
        count("ideal_", ranked);
      }
      CauseReader told = Objects.requireNonNull(readers.ofOne.get(size));
      if (told.speaks(z)) {
        count("told_", ranked(told, z));
      }
    }
  }

  /** The ideal readers, made once. */
  static final class Readers {
    final CauseReader ofAll = new CauseReader(CausePair.SIZES);
    final Map<Double, CauseReader> ofOne = new HashMap<>();

    Readers() {
      CausePair.SIZES.forEach(size -> ofOne.put(size, new CauseReader(List.of(size))));
    }
  }

  private static List<Set<SimulatedCause>> groups(double[] z) {
    List<Set<SimulatedCause>> groups = new ArrayList<>();
    boolean lessSour =
        z[SimulatedFigure.PH.ordinal()] >= 0 && z[SimulatedFigure.ACIDITY.ordinal()] < 0;
    groups.add(READ_TOO_HIGH);
    if (lessSour) {
      groups.add(SOURNESS);
    }
    for (SimulatedCause cause : SimulatedCause.CAUSES) {
      if (groups.stream().noneMatch(group -> group.contains(cause))) {
        groups.add(Set.of(cause));
      }
    }
    return groups;
  }

  private static List<String> titles(Set<SimulatedCause> group) {
    return group.stream().map(cause -> cause.title).sorted().toList();
  }

  private static List<List<String>> ranked(CauseReader reader, double[] z) {
    Map<SimulatedCause, Double> probabilities = reader.probabilities(z);
    Map<Set<SimulatedCause>, Double> byGroup = new HashMap<>();
    for (Set<SimulatedCause> group : groups(z)) {
      byGroup.put(
          group,
          group.stream()
              .mapToDouble(cause -> Objects.requireNonNull(probabilities.get(cause)))
              .sum());
    }
    return byGroup.entrySet().stream()
        .sorted(Map.Entry.<Set<SimulatedCause>, Double>comparingByValue().reversed())
        .map(entry -> titles(entry.getKey()))
        .toList();
  }

  /** Runs all cells, each with a part of its pairs; the last is the one without a cause. */
  static List<CauseCell> run(int part) {
    Readers readers = new Readers();
    List<CauseCell> all = new ArrayList<>();
    for (double size : CausePair.SIZES) {
      for (SimulatedCause cause : SimulatedCause.CAUSES) {
        all.add(new Tally(cause, size, readers).of(PAIRS / part));
      }
    }
    all.add(new Tally(SimulatedCause.NONE, 0, readers).of(QUIET_PAIRS / part));
    return all;
  }

  /** The whole study as it was reported. */
  static List<CauseCell> reported() {
    return CsvTable.read(REPORT, CausePair.SIZES.size() * SimulatedCause.CAUSES.size() + 1)
        .lines()
        .stream()
        .map(CauseCell::of)
        .toList();
  }

  /**
   * Runs the study, writes what it came to, and its tables into the page.
   *
   * @param args the folder of the reports, and the page
   * @throws IOException if a file cannot be written
   */
  public static void main(String[] args) throws IOException {
    List<CauseCell> all = run(1);
    Files.writeString(
        Path.of(args[0]).resolve("cause-study.csv"), CauseCell.report(all), StandardCharsets.UTF_8);
    Path page = Path.of(args[1]);
    Files.writeString(page, CauseTables.into(Files.readString(page, StandardCharsets.UTF_8), all));
  }
}
