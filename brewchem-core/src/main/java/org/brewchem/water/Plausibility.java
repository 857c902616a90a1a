package org.brewchem.water;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Ion;

/** Looks through a report for what is odd about it. */
final class Plausibility {

  /** Above this pH a titration finds carbonate: the end point of phenolphthalein (SM 2320 B). */
  private static final PH CARBONATE_END_POINT = PH.of(8.3);

  /** The share of an alkalinity from which hydroxide in it is named; our choice. */
  private static final double MUCH_HYDROXIDE = 0.05;

  private final Readings readings;
  private final Water water;
  private final Optional<PH> reportedPH;
  private final ReportedBalance balance;
  private final List<Notice> found = new ArrayList<>();

  private Plausibility(Readings readings, Water water) {
    this.readings = readings;
    this.water = water;
    this.reportedPH = readings.reportedPH();
    this.balance = balanceOf(readings, water);
  }

  static List<Notice> of(Readings readings, Water water) {
    Plausibility plausibility = new Plausibility(readings, water);
    plausibility.balance();
    plausibility.missing();
    plausibility.suspicion();
    plausibility.unusual();
    plausibility.pH();
    plausibility.carbonate();
    plausibility.found.addAll(
        CrossChecks.of(
            readings,
            water,
            ReportedBalance.MAIN.stream().noneMatch(plausibility.balance.missing()::contains),
            titratedHydroxide(readings, water) == 0));
    plausibility.assumed();
    return List.copyOf(plausibility.found);
  }

  /** The ions that a report does not state; bicarbonate stands for the alkalinity. */
  static List<Ion> missing(Readings readings, Water water) {
    List<Ion> missing = new ArrayList<>();
    for (Ion ion : order()) {
      boolean stated =
          ion.equals(Ion.BICARBONATE)
              ? water.alkalinity().isStated()
              : readings.concentration(ion.name()).isPresent();
      if (!stated) {
        missing.add(ion);
      }
    }
    return missing;
  }

  private static List<Ion> order() {
    List<Ion> order = new ArrayList<>(ReportedContents.IONS.keySet());
    order.add(4, Ion.BICARBONATE);
    return order;
  }

  /** What every reading that may be stated on another basis would make of the balance. */
  static List<BasisReading> bases(Readings readings, Water water) {
    ReportedBalance balance = balanceOf(readings, water);
    if (balance.verdict() == ReportedBalance.Verdict.NOT_JUDGED) {
      return List.of();
    }
    return Alternatives.bases(readings).stream()
        .filter(other -> balance.equivalents().getOrDefault(other.ion(), 0.0) > 0)
        .map(
            other ->
                new BasisReading(
                    other.code(),
                    other.ion(),
                    other.condition(),
                    other.factor(),
                    balance.percentage(),
                    balance.times(other.ion(), other.factor()).percentage()))
        .toList();
  }

  static ReportedBalance balanceOf(Readings readings, Water water) {
    Map<Ion, Double> equivalents = new LinkedHashMap<>();
    Map<Ion, Double> limits = new LinkedHashMap<>();
    List<Ion> missing = new ArrayList<>();
    for (Ion ion : order()) {
      if (ion.equals(Ion.BICARBONATE)) {
        water
            .alkalinity()
            .optional()
            .ifPresentOrElse(
                a ->
                    equivalents.put(
                        ion, a.inMilliequivalentsPerLitre() + titratedHydroxide(readings, water)),
                () -> missing.add(ion));
      } else if (!count(readings, ion, ion.milliequivalentsPerMilligram(), equivalents, limits)) {
        missing.add(ion);
      }
    }
    for (Constituent minor : readings.constituents()) {
      minor
          .ion()
          .filter(ReportedContents.MINOR_IONS::containsKey)
          .ifPresent(
              ion ->
                  count(readings, ion, minor.milliequivalentsPerMilligram(), equivalents, limits));
    }
    hardness(readings, equivalents, missing);
    return new ReportedBalance(equivalents, limits, missing);
  }

  /**
   * The hydroxide that a titration counted, mEq/L, where it is much of the alkalinity; 0 elsewhere.
   * It is an anion of the balance; the carbonate alkalinity is without it.
   */
  private static double titratedHydroxide(Readings readings, Water water) {
    if (!readings.isTitrated()) {
      return 0;
    }
    double hydroxide = water.pH().optional().map(pH -> hydroxideAt(readings, pH)).orElse(0.0);
    double carbonates =
        water
            .alkalinity()
            .optional()
            .map(CarbonateAlkalinity::inMilliequivalentsPerLitre)
            .orElse(0.0);
    return hydroxide > MUCH_HYDROXIDE * carbonates ? hydroxide : 0;
  }

  /** A total hardness counts for what is not stated of calcium and magnesium. */
  private static void hardness(Readings readings, Map<Ion, Double> equivalents, List<Ion> missing) {
    Optional<Double> total = readings.side().number(SideReadings.Kind.TOTAL_HARDNESS);
    if (total.isPresent() && missing.removeAll(List.of(Ion.CALCIUM, Ion.MAGNESIUM))) {
      double all = Hardness.ofMilligramsPerLitreAsCaCO3(total.get()).inMilliequivalentsPerLitre();
      boolean calcium = equivalents.containsKey(Ion.CALCIUM);
      double known = equivalents.getOrDefault(calcium ? Ion.CALCIUM : Ion.MAGNESIUM, 0.0);
      equivalents.put(calcium ? Ion.MAGNESIUM : Ion.CALCIUM, Math.max(0, all - known));
    }
  }

  private static boolean count(
      Readings readings,
      Ion ion,
      double milliequivalents,
      Map<Ion, Double> equivalents,
      Map<Ion, Double> limits) {
    Optional<Reading> reading = readings.concentration(ion.name());
    reading
        .map(Reading::number)
        .filter(OptionalDouble::isPresent)
        .ifPresent(number -> equivalents.put(ion, milliequivalents * number.getAsDouble()));
    reading
        .filter(Reading::isLimit)
        .map(Reading::extremes)
        .ifPresent(limit -> limits.put(ion, milliequivalents * limit.highest()));
    return reading.isPresent();
  }

  private void add(WaterCode code, String subject, String text) {
    found.add(Notice.of(code, subject, text));
  }

  private void balance() {
    add(
        switch (balance.verdict()) {
          case ACCEPTABLE -> WaterCode.ION_BALANCE_ACCEPTABLE;
          case NOT_ACCEPTABLE -> WaterCode.ION_BALANCE_OFF;
          case NOT_JUDGED -> WaterCode.ION_BALANCE_NOT_JUDGED;
        },
        "ion balance",
        balance.toString());
  }

  /** What most likely put the balance off, if one cause stands alone. */
  private void suspicion() {
    if (balance.missing().stream().filter(ReportedBalance.MAIN::contains).count() > 1) {
      return;
    }
    Suspicions.alone(balance, Alternatives.of(readings, balance))
        .ifPresent(
            cause ->
                add(
                    cause.code(),
                    ReportedBalance.name(cause.ion()),
                    cause.text() + " (" + Suspicions.shareText(cause.share()) + ")"));
  }

  private void assumed() {
    if (readings.isAssumed()) {
      add(WaterCode.UNCERTAINTIES_ASSUMED, "uncertainty", AssumedUncertainties.TEXT);
    }
  }

  /** Slips of typing. */
  private void unusual() {
    readings.contents().steps().values().forEach(step -> found.addAll(step.notices()));
  }

  private void pH() {
    reportedPH
        .filter(pH -> pH.value() > Suspicions.rule("ph_high"))
        .filter(pH -> UsualWater.judge(Figures.PH_VALUE, pH.value()).isEmpty())
        .ifPresent(
            pH ->
                add(
                    WaterCode.PH_UNUSUAL,
                    "pH",
                    NumberText.plain(pH.value(), 2)
                        + " is a pH that hardly any water of a tap or well has"));
  }

  private void carbonate() {
    Optional<CarbonateAlkalinity> stated = water.alkalinity().optional();
    if (reportedPH.isEmpty()
        || stated.isEmpty()
        || stated.get().inMilliequivalentsPerLitre() == 0) {
      return;
    }
    PH pH = reportedPH.get();
    CarbonateAlkalinity alkalinity = stated.get();
    if (pH.compareTo(TitrationAlkalinity.USUAL_END_POINT) <= 0) {
      contradiction(
          "an alkalinity of "
              + text(alkalinity)
              + " is titrated from the pH of the water down to "
              + TitrationAlkalinity.USUAL_END_POINT
              + ", below which it cannot lie; "
              + pH
              + " is reported");
      return;
    }
    double hydroxide = hydroxideAt(readings, pH);
    if (!readings.isTitrated() && hydroxide >= alkalinity.inMilliequivalentsPerLitre()) {
      contradiction(
          pH
              + " alone means "
              + NumberText.significant(hydroxide, 2)
              + " mEq/L of hydroxide, more than the alkalinity of "
              + text(alkalinity));
      return;
    }
    Contents contents = water.contents();
    if (!contents.whyOpen().isEmpty()) {
      contradiction(String.join("; ", contents.whyOpen()));
      return;
    }
    double atmospheres = UsualWater.carbonDioxidePressure(contents).inAtmospheres();
    if (atmospheres > 1) {
      contradiction(
          pH
              + " with an alkalinity of "
              + text(alkalinity)
              + " means carbon dioxide of "
              + NumberText.significant(atmospheres, 2)
              + " atm, more than a still water holds");
    } else if (atmospheres > Suspicions.rule("carbon_dioxide_high")) {
      add(
          WaterCode.CARBON_DIOXIDE_HIGH,
          "pH",
          pH
              + " with an alkalinity of "
              + text(alkalinity)
              + " means carbon dioxide of "
              + NumberText.significant(atmospheres, 2)
              + " atm, more than a water usually holds that stood open");
    } else if (pH.compareTo(CARBONATE_END_POINT) > 0) {
      add(
          WaterCode.CARBONATE_PRESENT,
          "carbonate alkalinity",
          pH
              + " is above 8.3: the alkalinity of "
              + NumberText.significant(alkalinity.inMilliequivalentsPerLitre(), 3)
              + " mEq/L is in part carbonate (total carbon dioxide "
              + NumberText.significant(water.totalCarbonDioxide().value().inMillimolesPerLitre(), 3)
              + " mmol/L)"
              + besides(hydroxide, alkalinity));
    }
  }

  /** What a titration counts, in an alkalinity that is taken as carbonate or beside it. */
  private String besides(double hydroxide, CarbonateAlkalinity alkalinity) {
    if (hydroxide <= MUCH_HYDROXIDE * alkalinity.inMilliequivalentsPerLitre()) {
      return "";
    }
    String counted =
        "; a titration counts "
            + NumberText.significant(hydroxide, 2)
            + " mEq/L of hydroxide in it besides";
    return readings.isTitrated()
        ? counted
            + ", as this one did; the ion balance counts it, and the conductivity is not judged"
        : counted + ": an alkalinity that was titrated is to be stated with its end point";
  }

  private void contradiction(String text) {
    add(WaterCode.PH_CONTRADICTS_ALKALINITY, "pH", text);
  }

  /** Hydroxide of pure water brought to a pH, mEq/L. */
  private static double hydroxideAt(Readings readings, PH reported) {
    return Solution.at(readings.temperature()).equilibriumAt(reported).species().stream()
        .filter(species -> species.name().equals("OH-"))
        .mapToDouble(species -> species.molality().inMillimolesPerKilogram())
        .sum();
  }

  private static String text(CarbonateAlkalinity alkalinity) {
    return Scales.ALKALINITY_AS_CACO3.text(alkalinity.inMilligramsPerLitreAsCaCO3());
  }

  /** What is missing, and how much of each ion would close a balance that is off. */
  private void missing() {
    List<Ion> missing = missing(readings, water);
    if (!missing.isEmpty()) {
      boolean one = balance.missing().stream().filter(ReportedBalance.MAIN::contains).count() <= 1;
      String closing =
          balance.withinLimit() || !one
              ? ""
              : balance.missing().stream()
                  .filter(ion -> balance.closing(ion) > 0)
                  .map(ion -> Suspicions.amount(ion, balance.closing(ion)) + " of " + name(ion))
                  .collect(Collectors.joining(" or "));
      add(
          WaterCode.IONS_MISSING,
          missing.stream().map(ReportedBalance::name).collect(Collectors.joining(", ")),
          "missing: "
              + ReportedBalance.names(missing)
              + (missing.size() == balance.missing().size()
                  ? ""
                  : "; the balance counts the total hardness for what is missing of calcium and magnesium")
              + (closing.isEmpty() ? "" : "; " + closing + " would close the balance"));
    }
    if (reportedPH.isEmpty() && !readings.statesCarbonDioxide()) {
      add(
          WaterCode.PH_MISSING,
          "pH",
          "no pH is reported: the water is taken to hold as much carbon dioxide as alkalinity,"
              + " bicarbonate alone");
    }
  }

  private static String name(Ion ion) {
    return ReportedBalance.name(ion);
  }
}
