package org.brewchem.table;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.brewchem.internal.DataTable;
import org.brewchem.water.BasisReading;

/**
 * Judges whether all reports of a source stand on one wrong basis: sign tests row by row, as stated
 * against read otherwise, and reading against reading. The rules are our choice, in {@code
 * basis-of-a-source.csv}.
 */
final class BasisOfSource {

  private static final Map<String, Double> RULES = rules();

  private BasisOfSource() {}

  private static Map<String, Double> rules() {
    Map<String, Double> rules = new HashMap<>();
    for (DataTable.Row row : DataTable.read(BasisOfSource.class, "basis-of-a-source.csv")) {
      rules.put(row.text("rule"), row.number("value"));
    }
    return Map.copyOf(rules);
  }

  private static double rule(String name) {
    Double value = RULES.get(name);
    if (value == null) {
      throw new IllegalStateException("basis-of-a-source.csv: no rule " + name);
    }
    return value;
  }

  /** Judges each reading, of which every list holds the rows that have it. */
  static List<SourceBasis> judge(String source, Collection<List<BasisReading>> readings) {
    List<List<BasisReading>> candidates =
        readings.stream().filter(BasisOfSource::wouldDoBetter).toList();
    Optional<List<BasisReading>> best =
        candidates.stream()
            .min(Comparator.comparingDouble(rows -> typical(rows, BasisReading::ifSo)));
    List<SourceBasis> judged = new ArrayList<>();
    for (List<BasisReading> rows : readings) {
      boolean suspected =
          best.isPresent()
              && candidates.contains(rows)
              && (rows == best.get() || !isClearlyWorse(rows, best.get()));
      judged.add(view(source, rows, suspected));
    }
    return judged;
  }

  private static SourceBasis view(String source, List<BasisReading> rows, boolean suspected) {
    BasisReading first = rows.get(0);
    return new SourceBasis(
        source,
        first.code(),
        first.condition(),
        rows.size(),
        median(rows, BasisReading::asStated),
        median(rows, BasisReading::ifSo),
        typical(rows, BasisReading::asStated),
        typical(rows, BasisReading::ifSo),
        (double) nearer(rows) / rows.size(),
        suspected);
  }

  private static boolean wouldDoBetter(List<BasisReading> rows) {
    int size = rows.size();
    double nearer = nearer(rows);
    double factor = rows.get(0).factor();
    boolean small = Math.max(factor, 1 / factor) < rule("small_factor");
    return size >= rule("least_rows")
        && nearer >= rule("share_nearer") * size
        && (nearer - size / 2.0) / Math.sqrt(size / 4.0) >= rule("deviations")
        && Math.abs(median(rows, BasisReading::ifSo)) <= rule("median_left")
        && typical(rows, BasisReading::ifSo)
            <= rule(small ? "typical_left_of_small_factors" : "typical_left")
                * typical(rows, BasisReading::asStated);
  }

  private static int nearer(List<BasisReading> rows) {
    return (int)
        rows.stream().filter(row -> Math.abs(row.ifSo()) < Math.abs(row.asStated())).count();
  }

  /** Whether a reading leaves more in the rows that both have, by more than chance. */
  private static boolean isClearlyWorse(List<BasisReading> other, List<BasisReading> best) {
    Map<Double, Double> byBalance = new HashMap<>();
    best.forEach(row -> byBalance.put(row.asStated(), Math.abs(row.ifSo())));
    int worse = 0;
    int better = 0;
    for (BasisReading row : other) {
      Double left = byBalance.get(row.asStated());
      if (left != null) {
        worse += Math.abs(row.ifSo()) > left ? 1 : 0;
        better += Math.abs(row.ifSo()) < left ? 1 : 0;
      }
    }
    // With no row in common this is 0 / 0, which is not clearly worse.
    return (worse - better) / Math.sqrt(worse + better) >= rule("rival_deviations");
  }

  private static double typical(List<BasisReading> rows, ToDoubleFunction<BasisReading> balance) {
    return median(rows, row -> Math.abs(balance.applyAsDouble(row)));
  }

  private static double median(List<BasisReading> rows, ToDoubleFunction<BasisReading> number) {
    double[] sorted = rows.stream().mapToDouble(number).sorted().toArray();
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}
