package org.brewchem.solution;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.uncertainty.Traced;

/** What is notable about a charge balance: what it leaves out, and what it stretches. */
final class BalanceNotices {

  private BalanceNotices() {}

  /** About the components whose total nobody stated. */
  static List<Notice> unknown(Map<Component, Traced> leastKnown) {
    List<Notice> notices = new ArrayList<>();
    leastKnown.forEach(
        (component, added) ->
            notices.add(
                Notice.of(
                    SolutionCode.COUNTED_AS_ABSENT,
                    component.name(),
                    (added.value() == 0
                            ? "counted as absent: "
                            : "counted with what was added only: ")
                        + component.name())));
    return List.copyOf(notices);
  }

  /**
   * About constants that do not cover a temperature: one notice to each component, one for all
   * whose range is not stated.
   */
  static List<Notice> constants(List<UncoveredConstant> uncovered, Temperature temperature) {
    Map<Component, List<String>> beyond = new LinkedHashMap<>();
    Set<String> acids = new LinkedHashSet<>();
    Set<String> pairs = new LinkedHashSet<>();
    int unstated = 0;
    for (UncoveredConstant constant : uncovered) {
      if (constant.reason() == UncoveredConstant.Reason.BEYOND_RANGE) {
        beyond.computeIfAbsent(constant.component(), c -> new ArrayList<>()).add(constant.text());
      } else {
        unstated++;
        if (constant.step().isPresent()) {
          acids.add(constant.component().name());
        } else {
          pairs.add(constant.species());
        }
      }
    }
    List<Notice> notices = new ArrayList<>();
    beyond.forEach(
        (component, texts) ->
            notices.add(
                Notice.of(
                    SolutionCode.CONSTANT_BEYOND_RANGE,
                    component.name(),
                    String.join("; ", texts))));
    if (unstated > 0) {
      List<String> which = new ArrayList<>();
      if (!acids.isEmpty()) {
        which.add("pKa of " + String.join(", ", acids));
      }
      if (!pairs.isEmpty()) {
        which.add("formation of " + String.join(", ", pairs));
      }
      notices.add(
          Notice.of(
              SolutionCode.CONSTANT_RANGE_UNSTATED,
              "constants",
              String.format(
                  Locale.ROOT,
                  "%d of the constants used at %.1f °C state no range of temperature: %s",
                  unstated,
                  temperature.inCelsius(),
                  String.join("; ", which))));
    }
    return List.copyOf(notices);
  }

  /** About a solubility that does not cover a temperature. */
  static List<Notice> solubility(String of, EquilibriumConstant constant, Temperature temperature) {
    if (constant.covers(temperature.inKelvin())) {
      return List.of();
    }
    boolean beyond = constant.isBeyondRange(temperature.inKelvin());
    return List.of(
        Notice.of(
            beyond ? SolutionCode.CONSTANT_BEYOND_RANGE : SolutionCode.CONSTANT_RANGE_UNSTATED,
            of,
            String.format(
                Locale.ROOT,
                beyond
                    ? "the solubility of %s is used at %.1f °C, beyond the range of its source"
                    : "the solubility of %s is used at %.1f °C; its source states no range",
                of,
                temperature.inCelsius())));
  }

  /** About an ionic strength, mol/kg, beyond the range of the activity rule. */
  static Optional<Notice> ionicStrength(double ionicStrength, Level level) {
    return level == Level.IDEAL || ionicStrength <= ActivityRule.RANGE_MOLES_PER_KILOGRAM
        ? Optional.empty()
        : Optional.of(
            Notice.of(
                SolutionCode.BEYOND_ACTIVITY_RANGE,
                "ionic strength",
                String.format(
                    Locale.ROOT,
                    "the ionic strength, %.2g mol/kg, lies beyond %.2g mol/kg, the range of the"
                        + " activity rule",
                    ionicStrength,
                    ActivityRule.RANGE_MOLES_PER_KILOGRAM)));
  }
}
