package org.brewchem.checks.study;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.brewchem.water.Constituent;
import org.brewchem.water.WaterCode;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;

/**
 * Computed over measured conductivity of the real waters that state one, and what the check of a
 * report makes of slips in it.
 */
final class ConductivityOfRealWaters {

  /** Of the untouched waters of all sets, the share that may be told to be off. */
  static final double FALSE = 0.05;

  /** From this share of the conductivity on a tenfold ion has to be found. */
  static final double MAIN_SHARE = 0.1;

  private ConductivityOfRealWaters() {}

  /**
   * What was found for one set.
   *
   * @param set its name
   * @param ratios computed over measured, ascending
   * @param falseAlarms how many untouched waters are told to be off
   * @param slips how many conductivities ten times too large or small were not found
   * @param ions of ions made ten times too large that carry a tenth of the conductivity or more,
   *     how many there are, how many the conductivity did not find, and how many neither it nor the
   *     ion balance did
   */
  record Found(String set, double[] ratios, int falseAlarms, int slips, int[] ions) {

    double quantile(double share) {
      return ratios[(int) Math.round(share * (ratios.length - 1))];
    }

    /** 1.4826 times the median of the absolute deviations. */
    double spread() {
      double[] deviations =
          Arrays.stream(ratios).map(r -> Math.abs(r - quantile(0.5))).sorted().toArray();
      return 1.4826 * deviations[deviations.length / 2];
    }
  }

  private static boolean isOff(WaterReport report) {
    return RealWater.has(report, WaterCode.CONDUCTIVITY_OFF);
  }

  private static double computed(WaterReport report) {
    return WaterFigures.CONDUCTIVITY
        .rule()
        .find(WaterFigures.CONDUCTIVITY, report.water())
        .found()
        .orElseThrow()
        .value();
  }

  static List<Found> all() {
    return RealWater.SETS.stream()
        .map(ConductivityOfRealWaters::of)
        .filter(found -> found.ratios().length > 0)
        .toList();
  }

  private static Found of(String set) {
    List<RealWater> waters =
        RealWater.read(set).stream()
            .filter(water -> water.isJudged() && water.conductivity().isPresent())
            .toList();
    int falseAlarms = 0;
    int slips = 0;
    int[] ions = new int[3];
    for (RealWater water : waters) {
      WaterReport untouched = water.conducting(1);
      falseAlarms += isOff(untouched) ? 1 : 0;
      // A slip in a conductivity that was wrong before may put it right.
      if (!isOff(untouched)) {
        slips += isOff(water.conducting(10)) ? 0 : 1;
        slips += isOff(water.conducting(0.1)) ? 0 : 1;
        for (Constituent ion : water.ions().keySet()) {
          WaterReport slipped = water.with(ion, 10).conducting(1);
          if (computed(slipped) >= (1 + 9 * MAIN_SHARE) * computed(untouched)) {
            ions[0]++;
            if (!isOff(slipped)) {
              ions[1]++;
              ions[2] += RealWater.has(slipped, WaterCode.ION_BALANCE_OFF) ? 0 : 1;
            }
          }
        }
      }
    }
    double[] ratios =
        waters.stream()
            .mapToDouble(
                water -> computed(water.conducting(1)) / water.conductivity().orElseThrow())
            .sorted()
            .toArray();
    return new Found(set, ratios, falseAlarms, slips, ions);
  }

  static String section() {
    StringBuilder page = new StringBuilder(HEAD);
    for (Found found : all()) {
      page.append(
          String.format(
              Locale.ROOT,
              "| %s | %d | %.3f | %.3f | %.2f to %.2f | %d (%.1f %%) | %d of %d | %d of %d | %d |\n",
              found.set(),
              found.ratios().length,
              found.quantile(0.5),
              found.spread(),
              found.quantile(0.025),
              found.quantile(0.975),
              found.falseAlarms(),
              100.0 * found.falseAlarms() / found.ratios().length,
              found.slips(),
              2 * (found.ratios().length - found.falseAlarms()),
              found.ions()[1],
              found.ions()[0],
              found.ions()[2]));
    }
    return page.toString();
  }

  private static final String HEAD =
      """

      ## Conductivity

      Conductivity computed from the ions over that measured, for all waters that state a conductivity
      and have a balance, including those whose balance is off. Both sets leave the reference temperature
      unstated; it was taken as 25 °C, and at 20 °C the ratios would be 0.896 times as large. Iron,
      ammonium and manganese count where the set has them. The bounds were set before the run: a
      conductivity ten times too large or too small is always found, and so is an ion, by the conductivity
      or the balance; at most 5 % of all untouched waters are reported to be off. A water is reported so
      outside 0.70 to 1.43. An ion made ten times too large counts here if it carried a tenth of the
      conductivity or more.

      | waters | reports | median | spread | 95 % of them | false alarms | tenfold conductivity not found | tenfold ion not found | nor by the balance |
      |---|---|---|---|---|---|---|---|---|
      """;
}
