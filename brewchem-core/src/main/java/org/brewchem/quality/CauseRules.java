package org.brewchem.quality;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.brewchem.internal.DataTable;

/** The table of causes: which way each moves which figure, why, and what would tell. */
final class CauseRules {

  /** Causes in the order of the table, their rules by the name of the figure. */
  static final Map<String, Map<String, Rule>> CAUSES = causes();

  /** The figures that the rules know, by name. */
  static final Set<String> FIGURES =
      CAUSES.values().stream()
          .flatMap(rules -> rules.keySet().stream())
          .collect(Collectors.toUnmodifiableSet());

  private static final Map<String, String> MEASUREMENTS =
      DataTable.read(CauseRules.class, "likely-cause-tests.csv").stream()
          .collect(Collectors.toMap(row -> row.text("cause"), row -> row.text("measurement")));

  private CauseRules() {}

  /** Which way a cause moves a figure. */
  enum Direction {
    UP(1),
    DOWN(-1),
    SAME(0),
    EITHER(0);

    private final int sign;

    Direction(int sign) {
      this.sign = sign;
    }

    int sign() {
      return sign;
    }

    Direction seen(double z) {
      return this != EITHER ? this : z < 0 ? DOWN : UP;
    }
  }

  /** One row of the table. */
  record Rule(Direction direction, String why) {}

  static Rule rule(String cause, String figure) {
    return Objects.requireNonNull(Objects.requireNonNull(CAUSES.get(cause), cause).get(figure));
  }

  static String measurement(String cause) {
    return Objects.requireNonNull(MEASUREMENTS.get(cause), cause);
  }

  private static Map<String, Map<String, Rule>> causes() {
    Map<String, Map<String, Rule>> causes = new LinkedHashMap<>();
    for (DataTable.Row row : DataTable.read(CauseRules.class, "likely-causes.csv")) {
      causes
          .computeIfAbsent(row.text("cause"), cause -> new LinkedHashMap<>())
          .put(
              row.text("figure"),
              new Rule(
                  Direction.valueOf(row.text("direction").toUpperCase(Locale.ROOT)),
                  row.text("why")));
    }
    return causes;
  }

  static Map<String, Double> values() {
    return DataTable.read(CauseRules.class, "likely-cause-values.csv").stream()
        .collect(Collectors.toMap(row -> row.text("name"), row -> row.number("value")));
  }
}
