package org.brewchem.checks.causes;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
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

  /** What may be named first, in the order of the columns; the last is no name. */
  static final List<String> NAMES =
      List.of(
          "alkalinity of the water up",
          "less acid in the mash",
          "less acid in the mash or other malt",
          "other malt",
          "incomplete degassing or old titrant",
          "offset of the electrode",
          "nothing");

  private static final String REPORT = "study/cause-study.csv";
  private static final long SEED = 20261127;
  private static final Set<SimulatedCause> READ_TOO_HIGH =
      Set.of(SimulatedCause.GAS, SimulatedCause.TITRANT);
  private static final Set<SimulatedCause> SOURNESS =
      Set.of(SimulatedCause.LESS_ACID, SimulatedCause.MALT);

  private CauseStudy() {}

  /** Hits among first and first two, counted. */
  private static final class Hits {
    int first;
    int firstTwo;

    void count(int place) {
      first += place == 0 ? 1 : 0;
      firstTwo += place == 0 || place == 1 ? 1 : 0;
    }
  }

  /** What the pairs of one cause and size came to. */
  static final class Found {
    final SimulatedCause cause;
    final double size;
    final int pairs;
    final Map<String, Integer> named = new LinkedHashMap<>();
    private final Hits rules = new Hits();
    private final Hits ideal = new Hits();
    private final Hits neverSilent = new Hits();
    private final Hits toldTheSize = new Hits();
    int likely;
    int likelyRight;

    Found(SimulatedCause cause, double size, int pairs, Readers readers) {
      this.cause = cause;
      this.size = size;
      this.pairs = pairs;
      NAMES.forEach(name -> named.put(name, 0));
      SplittableRandom random =
          new SplittableRandom(SEED + 1_000_003L * cause.ordinal() + 7919L * Math.round(size));
      for (int i = 0; i < pairs; i++) {
        count(CausePair.draw(cause, size, random), readers);
      }
    }

    private void count(CausePair pair, Readers readers) {
      double[] z = pair.scores();
      List<LikelyCauses.Suspect> suspects = LikelyCauses.of(pair.differences()).suspects();
      named.merge(suspects.isEmpty() ? "nothing" : name(suspects.get(0), z), 1, Integer::sum);
      rules.count(place(suspects.stream().map(LikelyCauses.Suspect::causes).toList()));
      if (!suspects.isEmpty() && suspects.get(0).strength() == LikelyCauses.Strength.LIKELY) {
        likely++;
        likelyRight += suspects.get(0).causes().contains(cause.title) ? 1 : 0;
      }
      if (cause == SimulatedCause.NONE) {
        return;
      }
      int place = place(ranked(readers.ofAll, z));
      neverSilent.count(place);
      ideal.count(readers.ofAll.speaks(z) ? place : -1);
      CauseReader told = java.util.Objects.requireNonNull(readers.ofOne.get(size));
      toldTheSize.count(told.speaks(z) ? place(ranked(told, z)) : -1);
    }

    private static String name(LikelyCauses.Suspect first, double[] z) {
      String name = first.causes().stream().sorted().collect(Collectors.joining(" or "));
      boolean known =
          groups(z).stream()
              .anyMatch(group -> titles(group).equals(first.causes().stream().sorted().toList()));
      if (!known || !NAMES.contains(name)) {
        throw new IllegalStateException(name + ": not a group of the study");
      }
      return name;
    }

    private int place(List<List<String>> ranked) {
      for (int i = 0; i < ranked.size(); i++) {
        if (ranked.get(i).contains(cause.title)) {
          return i;
        }
      }
      return -1;
    }

    /** A row of the report. */
    String line() {
      return String.format(
              Locale.ROOT,
              "%s,%.0f,%d,%d,%d,%d,%d,%d,%d,%d,%d,%d,%d",
              cause.title,
              size,
              pairs,
              rules.first,
              rules.firstTwo,
              ideal.first,
              ideal.firstTwo,
              neverSilent.first,
              neverSilent.firstTwo,
              toldTheSize.first,
              toldTheSize.firstTwo,
              likely,
              likelyRight)
          + named.values().stream().map(count -> "," + count).collect(Collectors.joining());
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
              .mapToDouble(cause -> Optional.ofNullable(probabilities.get(cause)).orElseThrow())
              .sum());
    }
    return byGroup.entrySet().stream()
        .sorted(Map.Entry.<Set<SimulatedCause>, Double>comparingByValue().reversed())
        .map(entry -> titles(entry.getKey()))
        .toList();
  }

  /** Runs all cells, each with a part of its pairs; the last is the one without a cause. */
  static List<Found> run(int part) {
    Readers readers = new Readers();
    List<Found> all = new ArrayList<>();
    for (double size : CausePair.SIZES) {
      for (SimulatedCause cause : SimulatedCause.CAUSES) {
        all.add(new Found(cause, size, PAIRS / part, readers));
      }
    }
    all.add(new Found(SimulatedCause.NONE, 0, QUIET_PAIRS / part, readers));
    return all;
  }

  /** The report of what was found. */
  static String report(List<Found> all) {
    List<String> lines =
        new ArrayList<>(
            List.of(
                "# Study of likely causes, written by CauseStudy: pairs, and in how many the cause was named first and",
                "# among the first two by the rules, the ideal reader, the same never silent and the same told the size;",
                "# how many first names were likely and right; how often each was named first.",
                "cause,size,pairs,first,first_two,ideal_first,ideal_first_two,open_first,open_first_two,told_first,told_first_two,likely,likely_right,"
                    + String.join(",", NAMES)));
    all.forEach(found -> lines.add(found.line()));
    return String.join("\n", lines) + "\n";
  }

  /** The whole study as it was reported. */
  static List<CsvTable.Line> reported() {
    return CsvTable.read(REPORT, CausePair.SIZES.size() * SimulatedCause.CAUSES.size() + 1).lines();
  }

  /**
   * Runs the study and writes what it came to.
   *
   * @param args the folder of the reports
   * @throws IOException if a file cannot be written
   */
  public static void main(String[] args) throws IOException {
    Files.writeString(
        Path.of(args[0]).resolve("cause-study.csv"), report(run(1)), StandardCharsets.UTF_8);
  }
}
