package org.brewchem.water;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.internal.DataTable;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Ion;
import org.brewchem.uncertainty.Traced;

/**
 * Holds what a report states twice against itself: conductivity and dry residue against its ions,
 * total hardness against calcium and magnesium, base capacity against pH and alkalinity. The ratios
 * that are let pass are our choice, in {@code report-checks.csv}.
 */
final class CrossChecks {

  private static final Map<String, double[]> RATIOS = ratios();

  private final Readings readings;
  private final Water water;
  private final List<Notice> found = new ArrayList<>();

  private CrossChecks(Readings readings, Water water) {
    this.readings = readings;
    this.water = water;
  }

  private static Map<String, double[]> ratios() {
    Map<String, double[]> ratios = new HashMap<>();
    for (DataTable.Row row : DataTable.read(CrossChecks.class, "report-checks.csv")) {
      ratios.put(row.text("check"), new double[] {row.number("lowest"), row.number("highest")});
    }
    return Map.copyOf(ratios);
  }

  static List<Notice> of(
      Readings readings, Water water, boolean complete, boolean conductsByItsIons) {
    CrossChecks checks = new CrossChecks(readings, water);
    if (complete) {
      if (conductsByItsIons) {
        checks.conductivity();
      }
      checks.dryResidue();
    }
    checks.totalHardness();
    checks.baseCapacity();
    return checks.found;
  }

  private void conductivity() {
    Optional<Double> stated = readings.side().number(SideReadings.Kind.CONDUCTIVITY);
    Optional<Double> computed = computed(WaterFigures.CONDUCTIVITY);
    if (stated.isPresent() && computed.isPresent()) {
      compare(
          "conductivity",
          computed.get() / stated.get(),
          WaterCode.CONDUCTIVITY_AGREES,
          WaterCode.CONDUCTIVITY_OFF,
          "the ions conduct "
              + NumberText.significant(computed.get(), 3)
              + " µS/cm at 25 °C, and "
              + NumberText.significant(stated.get(), 3)
              + " are stated");
    }
  }

  /** What a figure is by its formula, whether it is reported or not, in its own scale. */
  private Optional<Double> computed(Figure<?> figure) {
    return figure.rule().find(figure, water).found().map(Traced::value);
  }

  /** Two bicarbonates leave carbonate, carbon dioxide and water. */
  private void dryResidue() {
    Optional<Double> stated = readings.side().number(SideReadings.Kind.DRY_RESIDUE);
    if (stated.isEmpty()) {
      return;
    }
    double sum = 0;
    for (Constituent constituent : readings.constituents()) {
      sum +=
          readings
              .concentration(constituent.species())
              .map(reading -> reading.number().orElse(0))
              .orElse(0.0);
    }
    sum +=
        water
                .alkalinity()
                .optional()
                .map(CarbonateAlkalinity::inMilliequivalentsPerLitre)
                .orElse(0.0)
            / Ion.CARBONATE.milliequivalentsPerMilligram();
    compare(
        "dry_residue",
        stated.get() / sum,
        WaterCode.DRY_RESIDUE_AGREES,
        WaterCode.DRY_RESIDUE_OFF,
        "the dry residue is stated as "
            + NumberText.significant(stated.get(), 3)
            + " mg/L, and what is dissolved leaves "
            + NumberText.significant(sum, 3)
            + ", its bicarbonate as carbonate");
  }

  private void totalHardness() {
    Optional<Double> stated = readings.side().number(SideReadings.Kind.TOTAL_HARDNESS);
    Optional<Double> computed = computed(WaterFigures.TOTAL_HARDNESS);
    if (stated.isPresent() && computed.isEmpty()) {
      partOf(stated.get(), "calcium", WaterFigures.CALCIUM_HARDNESS);
      partOf(stated.get(), "magnesium", WaterFigures.MAGNESIUM_HARDNESS);
    }
    if (stated.isPresent() && computed.isPresent() && computed.get() > 0) {
      compare(
          "total_hardness",
          stated.get() / computed.get(),
          WaterCode.HARDNESS_AGREES,
          WaterCode.HARDNESS_OFF,
          "the total hardness is stated as "
              + hardness(stated.get())
              + ", and calcium and magnesium make "
              + hardness(computed.get()));
    }
  }

  /** Where one of both is known, it is at most the total. */
  private void partOf(double total, String ion, Figure<?> figure) {
    Optional<Double> part = computed(figure);
    double least = Objects.requireNonNull(RATIOS.get("total_hardness"))[0];
    if (part.isPresent() && total < least * part.get()) {
      found.add(
          Notice.of(
              WaterCode.HARDNESS_OFF,
              "total hardness",
              "the total hardness is stated as "
                  + hardness(total)
                  + ", and "
                  + ion
                  + " alone makes "
                  + hardness(part.get())));
    }
  }

  private static String hardness(double asCaCO3) {
    double degrees = Hardness.ofMilligramsPerLitreAsCaCO3(asCaCO3).inGermanDegrees();
    return NumberText.significant(asCaCO3, 3)
        + " mg/L as CaCO3 ("
        + NumberText.significant(degrees, 3)
        + " °dH)";
  }

  private void baseCapacity() {
    Optional<Double> stated = readings.side().number(SideReadings.Kind.BASE_CAPACITY);
    if (stated.isEmpty() || readings.reportedPH().isEmpty()) {
      return;
    }
    Optional<TitrationAlkalinity> toEndPoint =
        water.titrationAlkalinity(ReportedContents.PHENOLPHTHALEIN).optional();
    double computed =
        toEndPoint.map(alkalinity -> -alkalinity.inMilliequivalentsPerLitre()).orElse(0.0);
    if (computed != 0) {
      compare(
          "base_capacity",
          stated.get() / computed,
          WaterCode.BASE_CAPACITY_AGREES,
          WaterCode.BASE_CAPACITY_OFF,
          "the base capacity to pH 8.2 is stated as "
              + NumberText.significant(stated.get(), 2)
              + " mmol/L, and pH and alkalinity make "
              + NumberText.significant(computed, 2));
    }
  }

  private void compare(String check, double ratio, WaterCode agrees, WaterCode off, String text) {
    double[] allowed = RATIOS.get(check);
    if (allowed == null) {
      throw new IllegalStateException("report-checks.csv: no row " + check);
    }
    boolean within = ratio >= allowed[0] && ratio <= allowed[1];
    found.add(
        Notice.of(
            within ? agrees : off,
            check.replace('_', ' '),
            text
                + (within
                    ? String.format(Locale.ROOT, ": they agree (ratio %.2f)", ratio)
                    : String.format(
                        Locale.ROOT,
                        ": they do not go together (ratio %.2f, %.2f to %.2f is usual)",
                        ratio,
                        allowed[0],
                        allowed[1]))));
  }
}
