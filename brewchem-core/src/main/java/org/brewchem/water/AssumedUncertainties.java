package org.brewchem.water;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.brewchem.internal.DataTable;
import org.brewchem.quantity.CarbonateAlkalinity;

/**
 * The standard uncertainties that a report is taken to have where it states none and the caller
 * asks for it: the larger of a share of the reading and a least value ({@code
 * report-uncertainties.csv}). A figure that a law demands is a share of the limit value, not of the
 * reading, and is not used.
 */
final class AssumedUncertainties {

  static final String TEXT =
      "standard uncertainties that the report does not state were assumed, from what proficiency"
          + " tests accept; they are not this laboratory's own";

  private record Rule(double share, double least) {}

  private static final Map<String, Rule> RULES = rules();

  private AssumedUncertainties() {}

  private static Map<String, Rule> rules() {
    Map<String, Rule> rules = new HashMap<>();
    for (DataTable.Row row :
        DataTable.read(AssumedUncertainties.class, "report-uncertainties.csv")) {
      rules.put(row.text("figure"), new Rule(row.number("share"), row.number("least")));
    }
    return Map.copyOf(rules);
  }

  private static Rule rule(String name) {
    Rule rule = RULES.getOrDefault(name, RULES.get("other"));
    if (rule == null) {
      throw new IllegalStateException("report-uncertainties.csv: no row other");
    }
    return rule;
  }

  /** The reading with its own uncertainty, or with an assumed one; a limit stays what it is. */
  static Reading of(String name, Reading reading) {
    return with(reading, rule(name), 1);
  }

  /** The same for a titrated alkalinity, mEq/L. */
  static Reading ofTitration(Reading reading) {
    double perMilliequivalent =
        CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();
    return with(reading, rule("alkalinity"), 1 / perMilliequivalent);
  }

  private static Reading with(Reading reading, Rule rule, double unit) {
    if (reading.isLimit() || reading.standardUncertainty().isPresent()) {
      return reading;
    }
    double share = rule.share() * reading.number().orElseThrow();
    return reading.withUncertainty(
        Math.max(share, rule.least() * unit),
        String.format(
            Locale.ROOT,
            "uncertainty assumed, the larger of %.3g %% and %.3g",
            100 * rule.share(),
            rule.least() * unit));
  }
}
