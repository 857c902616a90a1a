package org.brewchem.quality;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
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

  /** The figures that the rules know, by name, in the order of the table. */
  static final Set<String> FIGURES =
      CAUSES.values().stream()
          .flatMap(rules -> rules.keySet().stream())
          .collect(
              Collectors.collectingAndThen(
                  Collectors.toCollection(LinkedHashSet::new), Collections::unmodifiableSet));

  private static final Map<String, DataTable.Row> TESTS =
      DataTable.read(CauseRules.class, "likely-cause-tests.csv").stream()
          .collect(Collectors.toMap(row -> row.text("cause"), row -> row));

  private CauseRules() {}

  /** Which way a cause moves a figure. */
  enum Direction {
    UP(1),
    DOWN(-1),
    SLIGHTLY_UP(1),
    SLIGHTLY_DOWN(-1),
    SAME(0),
    EITHER(0);

    private final int sign;

    Direction(int sign) {
      this.sign = sign;
    }

    int sign() {
      return sign;
    }

    Direction times(int factor) {
      if (factor > 0) {
        return this;
      }
      return switch (this) {
        case UP -> DOWN;
        case DOWN -> UP;
        case SLIGHTLY_UP -> SLIGHTLY_DOWN;
        case SLIGHTLY_DOWN -> SLIGHTLY_UP;
        case SAME, EITHER -> this;
      };
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
    return Objects.requireNonNull(TESTS.get(cause), cause).text("measurement");
  }

  /** Whether the cause may as well move all its figures the opposite way, together. */
  static boolean reverses(String cause) {
    return Objects.requireNonNull(TESTS.get(cause), cause).text("reverses").equals("yes");
  }

  private static Map<String, Map<String, Rule>> causes() {
    Map<String, Map<String, Rule>> causes = new LinkedHashMap<>();
    for (DataTable.Row row : DataTable.read(CauseRules.class, "likely-causes.csv")) {
      causes
          .computeIfAbsent(row.text("cause"), cause -> new LinkedHashMap<>())
          .put(
              row.text("figure"),
              new Rule(
                  Direction.valueOf(
                      row.text("direction").toUpperCase(Locale.ROOT).replace(' ', '_')),
                  row.text("why")));
    }
    return causes;
  }

  static Map<String, Double> values() {
    return DataTable.read(CauseRules.class, "likely-cause-values.csv").stream()
        .collect(Collectors.toMap(row -> row.text("name"), row -> row.number("value")));
  }
}
