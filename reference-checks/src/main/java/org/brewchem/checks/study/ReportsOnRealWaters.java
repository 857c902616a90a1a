package org.brewchem.checks.study;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.brewchem.figure.Notice;
import org.brewchem.table.Column;
import org.brewchem.table.SourceBasis;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.brewchem.water.Constituent;
import org.brewchem.water.WaterCode;

/**
 * How often a suspicion about a report is right: errors put on purpose into real waters that had
 * passed, singly and a whole table at a time, and the same waters left as they are.
 *
 * <p>The bounds were set before the first run. One half of the rows of the largest set served to
 * choose the rules; it is shown, and does not count.
 */
public final class ReportsOnRealWaters {

  /** Of the suspicions that stand alone, the share that is right, at least. */
  static final double RIGHT = 0.8;

  /** Of the untouched rows, the share that is suspected, at most. */
  static final double FALSE = 0.02;

  /** Of the tables on a wrong basis of sulfate or carbonate, the share that is named, at least. */
  static final double NAMED = 0.9;

  /** Rows of a table. */
  static final int TABLE_ROWS = 100;

  private static final double SULFATE_PER_SULFUR = 96.056 / 32.06;
  private static final double NITRATE_PER_NITROGEN = 62.004 / 14.007;
  private static final double BICARBONATE_PER_CACO3 = 2 * 61.016 / 100.086;
  private static final double BICARBONATE_PER_CARBONATE = 2 * 61.016 / 60.008;

  private static final Set<WaterCode> SUSPICIONS =
      Set.of(
          WaterCode.ION_PERHAPS_MISSING,
          WaterCode.TENFOLD_SLIP,
          WaterCode.BICARBONATE_PERHAPS_CARBONATE,
          WaterCode.ALKALINITY_BASIS_DOUBTFUL,
          WaterCode.SULFATE_PERHAPS_SULFUR,
          WaterCode.SULFUR_PERHAPS_SULFATE,
          WaterCode.NITRATE_PERHAPS_NITROGEN,
          WaterCode.NITROGEN_PERHAPS_NITRATE);

  /**
   * An error on purpose.
   *
   * @param kind what it is called
   * @param code the suspicion that would be right
   * @param subject what it has to be about
   * @param says what its text has to hold
   * @param error puts it into a water
   */
  private record Slip(
      String kind, WaterCode code, String subject, String says, UnaryOperator<RealWater> error) {

    boolean isNamedBy(Notice notice) {
      return notice.code() == code
          && notice.subject().equals(subject)
          && notice.text().contains(says);
    }
  }

  /** Rows of one set that are looked at together. */
  record Part(String name, List<RealWater> waters, boolean counts) {}

  /** What became of the waters into which one kind of error was put, or of untouched ones. */
  static final class Tally {
    int waters;
    int off;
    int right;
    int wrong;

    double share() {
      return right + wrong == 0 ? 1 : (double) right / (right + wrong);
    }
  }

  private ReportsOnRealWaters() {}

  /** Writes the page. */
  public static void main(String[] arguments) throws IOException {
    Files.writeString(Path.of(arguments[0]), page(), StandardCharsets.UTF_8);
  }

  /** The parts: every so-manieth water. */
  static List<Part> parts(int every) {
    List<Part> parts = new ArrayList<>();
    for (String set : RealWater.SETS) {
      List<RealWater> all = RealWater.read(set);
      if (set.equals("hupsel")) {
        parts.add(new Part("hupsel, half chosen on", half(all, 0, every), false));
        parts.add(new Part("hupsel, other half", half(all, 1, every), true));
      } else {
        parts.add(new Part(set, all, true));
      }
    }
    return parts;
  }

  private static List<RealWater> half(List<RealWater> all, int first, int every) {
    return IntStream.range(0, all.size())
        .filter(i -> i % 2 == first && i / 2 % every == 0)
        .mapToObj(all::get)
        .toList();
  }

  private static List<Slip> slips(RealWater water) {
    List<Slip> slips = new ArrayList<>();
    slips.add(
        new Slip(
            "sulfate as S",
            WaterCode.SULFATE_PERHAPS_SULFUR,
            "sulfate",
            "",
            w -> w.with(Constituent.SULFATE, 1 / SULFATE_PER_SULFUR)));
    slips.add(
        new Slip(
            "bicarbonate as CaCO3",
            WaterCode.ALKALINITY_BASIS_DOUBTFUL,
            "alkalinity",
            "",
            w -> w.withBicarbonate(1 / BICARBONATE_PER_CACO3)));
    slips.add(
        new Slip(
            "bicarbonate as carbonate",
            WaterCode.BICARBONATE_PERHAPS_CARBONATE,
            "alkalinity",
            "",
            w -> w.withBicarbonate(1 / BICARBONATE_PER_CARBONATE)));
    if (water.ions().containsKey(Constituent.NITRATE)) {
      slips.add(
          new Slip(
              "nitrate as N",
              WaterCode.NITRATE_PERHAPS_NITROGEN,
              "nitrate",
              "",
              w -> w.with(Constituent.NITRATE, 1 / NITRATE_PER_NITROGEN)));
    }
    for (Constituent ion : water.ions().keySet()) {
      String name = ion.ion().orElseThrow().name();
      other(slips, name, factor -> (w -> w.with(ion, factor)));
    }
    other(slips, "alkalinity", factor -> (w -> w.withBicarbonate(factor)));
    return slips;
  }

  private interface Change {
    UnaryOperator<RealWater> by(double factor);
  }

  private static void other(List<Slip> slips, String name, Change change) {
    slips.add(new Slip("ten times", WaterCode.TENFOLD_SLIP, name, "a tenth", change.by(10)));
    slips.add(new Slip("a tenth", WaterCode.TENFOLD_SLIP, name, "ten times", change.by(0.1)));
    slips.add(new Slip("left out", WaterCode.ION_PERHAPS_MISSING, name, "", change.by(0)));
  }

  private static List<Notice> suspicions(List<Notice> notices) {
    return notices.stream().filter(notice -> SUSPICIONS.contains(notice.code())).toList();
  }

  /** Puts every error into every water that had passed. */
  static Map<String, Tally> singly(Part part, Map<String, Tally> byName) {
    Map<String, Tally> byKind = new LinkedHashMap<>();
    for (RealWater water : part.waters()) {
      if (!water.hasPassed()) {
        continue;
      }
      for (Slip slip : slips(water)) {
        Tally tally = byKind.computeIfAbsent(slip.kind(), kind -> new Tally());
        List<Notice> notices = slip.error().apply(water).report().notices();
        List<Notice> suspicions = suspicions(notices);
        tally.waters++;
        if (notices.stream().noneMatch(n -> n.code() == WaterCode.ION_BALANCE_ACCEPTABLE)) {
          tally.off++;
        }
        if (suspicions.size() == 1) {
          Tally name = byName.computeIfAbsent(suspicions.get(0).code().name(), code -> new Tally());
          if (slip.isNamedBy(suspicions.get(0))) {
            tally.right++;
            name.right++;
          } else {
            tally.wrong++;
            name.wrong++;
          }
        }
      }
    }
    return byKind;
  }

  /** Looks at the untouched rows, those that had not passed too; wrong counts the suspected. */
  static Tally untouched(Part part, Map<String, Integer> named) {
    Tally tally = new Tally();
    for (RealWater water : part.waters()) {
      if (water.isJudged()) {
        tally.waters++;
        tally.off += water.hasPassed() ? 0 : 1;
        List<Notice> suspicions = suspicions(water.report().notices());
        tally.wrong += suspicions.isEmpty() ? 0 : 1;
        suspicions.forEach(notice -> named.merge(notice.code().name(), 1, Integer::sum));
      }
    }
    return tally;
  }

  /** Draws tables of 100 waters that had passed; right counts those named, wrong other names. */
  static Map<String, Tally> tables(Part part, int samples) {
    List<RealWater> passed = part.waters().stream().filter(RealWater::hasPassed).toList();
    Map<String, Tally> byKind = new LinkedHashMap<>();
    List<Slip> kinds = new ArrayList<>(slips(passed.get(0)).subList(0, 3));
    slips(passed.get(0)).stream()
        .filter(slip -> slip.kind().equals("nitrate as N"))
        .forEach(kinds::add);
    kinds.add(new Slip("untouched", WaterCode.ION_BALANCE_ACCEPTABLE, "", "", w -> w));
    Random random = new Random(20261126);
    for (int sample = 0; sample < samples; sample++) {
      List<RealWater> drawn =
          IntStream.range(0, TABLE_ROWS)
              .mapToObj(i -> passed.get(random.nextInt(passed.size())))
              .toList();
      for (Slip kind : kinds) {
        Tally tally = byKind.computeIfAbsent(kind.kind(), k -> new Tally());
        List<SourceBasis> suspected =
            Waters.from(table(drawn.stream().map(kind.error()).toList())).bases().stream()
                .filter(SourceBasis::suspected)
                .toList();
        tally.waters++;
        boolean named = suspected.stream().anyMatch(basis -> basis.code() == kind.code());
        tally.right += named ? 1 : 0;
        tally.off += named && suspected.size() > 1 ? 1 : 0;
        tally.wrong += !named && !suspected.isEmpty() ? 1 : 0;
      }
    }
    return byKind;
  }

  private static Table table(List<RealWater> waters) {
    List<Column> columns = new ArrayList<>();
    for (Constituent ion : Constituent.values()) {
      if (waters.stream().allMatch(water -> water.ions().containsKey(ion))) {
        columns.add(
            Column.of(
                ion.heading() + " [mg/L]",
                waters.stream().mapToDouble(water -> water.ions().get(ion)).toArray()));
      }
    }
    columns.add(
        Column.of(
            "bicarbonate [mg/L]",
            waters.stream().mapToDouble(water -> water.bicarbonate().orElseThrow()).toArray()));
    return Table.of(columns.toArray(Column[]::new));
  }

  static String page() {
    StringBuilder page = new StringBuilder(HEAD);
    List<Part> parts = parts(1);
    Map<String, Map<String, Tally>> names = new LinkedHashMap<>();
    page.append("## One report at a time\n\n");
    page.append(
        "| waters | error put in | reports | off balance | one cause named | right | wrong | right of"
            + " named |\n|---|---|---|---|---|---|---|---|\n");
    for (Part part : parts) {
      Map<String, Tally> byName = names.computeIfAbsent(part.name(), n -> new TreeMap<>());
      Map<String, Tally> byKind = singly(part, byName);
      byKind.forEach(
          (kind, t) ->
              row(
                  page,
                  part.name(),
                  kind,
                  t.waters,
                  t.off,
                  t.right + t.wrong,
                  t.right,
                  t.wrong,
                  percent(t)));
      Tally all = sum(byKind.values());
      row(
          page,
          part.name(),
          "all",
          all.waters,
          all.off,
          all.right + all.wrong,
          all.right,
          all.wrong,
          percent(all));
    }
    page.append("\nThe same by what is named:\n\n");
    page.append("| waters | named | right | wrong | right of named |\n|---|---|---|---|---|\n");
    names.forEach(
        (part, byName) ->
            byName.forEach((name, t) -> row(page, part, name, t.right, t.wrong, percent(t))));
    page.append("\n## Untouched reports\n\n");
    page.append("All reports that have a balance, including those whose balance is off.\n\n");
    page.append("| waters | reports | off balance | suspected | of all | named |\n");
    page.append("|---|---|---|---|---|---|\n");
    for (Part part : parts) {
      Map<String, Integer> named = new TreeMap<>();
      Tally t = untouched(part, named);
      row(
          page,
          part.name(),
          t.waters,
          t.off,
          t.wrong,
          String.format(Locale.ROOT, "%.1f %%", 100.0 * t.wrong / t.waters),
          named.isEmpty() ? "" : named.toString().replaceAll("[{}]", ""));
    }
    page.append(TABLES);
    for (Part part : parts) {
      tables(part, 200)
          .forEach((kind, t) -> row(page, part.name(), kind, t.waters, t.right, t.off, t.wrong));
    }
    page.append(ConductivityOfRealWaters.section());
    return page.toString();
  }

  static Tally sum(Iterable<Tally> tallies) {
    Tally all = new Tally();
    for (Tally t : tallies) {
      all.waters += t.waters;
      all.off += t.off;
      all.right += t.right;
      all.wrong += t.wrong;
    }
    return all;
  }

  private static String percent(Tally tally) {
    return tally.right + tally.wrong == 0
        ? ""
        : String.format(Locale.ROOT, "%.0f %%", 100 * tally.share());
  }

  private static void row(StringBuilder page, Object... cells) {
    for (Object cell : cells) {
      page.append("| ").append(cell).append(' ');
    }
    page.append("|\n");
  }

  private static final String HEAD =
      """
      # Reports on real waters

      Written by `mvn -q -P real-waters -pl reference-checks -am process-classes`; do not edit. How often
      are the suspicions of a [report](water.md) right? Errors were put on purpose into published analyses
      of real waters whose ion balance had passed, and the same analyses were left as they are. A tenth of
      this runs in every build. Why it is done in this way: [decision 16](decisions/16-suspicions.md).

      The bounds were set before the first run: 80 % of the suspicions that stand alone are right; at most
      2 % of the untouched reports are suspected; a table of 100 waters with sulfate or carbonate on a
      wrong basis is named in 90 % of the samples, an untouched one in at most 2 %. The rules were chosen
      on one half of the rows of the largest set, which is shown and does not count. A set in which 11 or
      19 waters passed says little.

      """;

  private static final String TABLES =
      """

      ## A table at a time

      200 tables of 100 waters each, drawn with replacement from the waters that had passed; the error is
      in every row. "Among several" counts tables in which another basis fits as well and is named beside
      the right one.

      | waters | error put in | tables | right basis named | among several | only another named |
      |---|---|---|---|---|---|
      """;
}
