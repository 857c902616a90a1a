package org.brewchem.water;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Element;
import org.brewchem.substance.Ion;

/** Looks through a report for what is odd about it. */
final class Plausibility {

  /** Above this pH a titration finds carbonate: the end point of phenolphthalein (SM 2320 B). */
  private static final PH CARBONATE_END_POINT = PH.of(8.3);

  private static final Element SULFUR = Element.of("S");
  private static final Element NITROGEN = Element.of("N");

  /** Equivalents of a mass of carbonate over those of the same mass of bicarbonate. */
  private static final double CARBONATE_OVER_BICARBONATE =
      Ion.CARBONATE.milliequivalentsPerMilligram() / Ion.BICARBONATE.milliequivalentsPerMilligram();

  /** Equivalents of a mass of calcium carbonate over those of the same mass of bicarbonate. */
  private static final double CACO3_OVER_BICARBONATE =
      1 / CarbonateAlkalinity.ofMilligramsPerLitreAsBicarbonate(1).inMilligramsPerLitreAsCaCO3();

  private final Water water;
  private final Set<StatedAs> stated;
  private final Optional<PH> reportedPH;
  private final Temperature temperature;
  private final ReportedBalance balance;
  private final List<Notice> found = new ArrayList<>();

  private Plausibility(
      Water water, Set<StatedAs> stated, Optional<PH> pH, Temperature temperature) {
    this.water = water;
    this.stated = stated;
    this.reportedPH = pH;
    this.temperature = temperature;
    this.balance = balanceOf(water);
  }

  static List<Notice> of(
      Water water, Set<StatedAs> stated, Optional<PH> pH, Temperature temperature) {
    Plausibility plausibility = new Plausibility(water, stated, pH, temperature);
    plausibility.balance();
    plausibility.readings();
    plausibility.carbonate();
    plausibility.missing();
    return List.copyOf(plausibility.found);
  }

  /** The ions that an untreated water does not know; bicarbonate stands for the alkalinity. */
  static List<Ion> missing(Water water) {
    return balanceOf(water).missing();
  }

  private static ReportedBalance balanceOf(Water water) {
    Map<Ion, Answer<MassConcentration>> ions = new LinkedHashMap<>();
    ions.put(Ion.CALCIUM, water.calcium());
    ions.put(Ion.MAGNESIUM, water.magnesium());
    ions.put(Ion.SODIUM, water.sodium());
    ions.put(Ion.POTASSIUM, water.potassium());
    Map<Ion, Double> equivalents = new LinkedHashMap<>();
    List<Ion> missing = new ArrayList<>();
    ions.forEach((ion, answer) -> count(ion, answer, equivalents, missing));
    water
        .alkalinity()
        .optional()
        .ifPresentOrElse(
            a -> equivalents.put(Ion.BICARBONATE, a.inMilliequivalentsPerLitre()),
            () -> missing.add(Ion.BICARBONATE));
    count(Ion.SULFATE, water.sulfate(), equivalents, missing);
    count(Ion.CHLORIDE, water.chloride(), equivalents, missing);
    count(Ion.NITRATE, water.nitrate(), equivalents, missing);
    return new ReportedBalance(equivalents, missing);
  }

  private static void count(
      Ion ion, Answer<MassConcentration> answer, Map<Ion, Double> equivalents, List<Ion> missing) {
    answer
        .optional()
        .ifPresentOrElse(
            c -> equivalents.put(ion, ion.equivalents(c).inMilliequivalentsPerLitre()),
            () -> missing.add(ion));
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

  /** Which single column, read on another basis, would put the balance right. */
  private void readings() {
    if (balance.verdict() != ReportedBalance.Verdict.NOT_ACCEPTABLE) {
      return;
    }
    for (StatedAs column : stated) {
      switch (column) {
        case BICARBONATE -> {
          reading(
              Ion.BICARBONATE,
              CARBONATE_OVER_BICARBONATE,
              WaterCode.BICARBONATE_PERHAPS_CARBONATE,
              "what is headed bicarbonate were carbonate");
          reading(
              Ion.BICARBONATE,
              CACO3_OVER_BICARBONATE,
              WaterCode.ALKALINITY_BASIS_DOUBTFUL,
              "what is stated as bicarbonate were stated as CaCO3");
        }
        case ALKALINITY_AS_CACO3 ->
            reading(
                Ion.BICARBONATE,
                1 / CACO3_OVER_BICARBONATE,
                WaterCode.ALKALINITY_BASIS_DOUBTFUL,
                "what is stated as CaCO3 were bicarbonate");
        case SULFATE ->
            reading(
                Ion.SULFATE,
                Ion.SULFATE.massPerMassOf(SULFUR),
                WaterCode.SULFATE_PERHAPS_SULFUR,
                "the sulfate were stated as sulfur");
        case SULFATE_AS_SULFUR ->
            reading(
                Ion.SULFATE,
                1 / Ion.SULFATE.massPerMassOf(SULFUR),
                WaterCode.SULFUR_PERHAPS_SULFATE,
                "what is stated as sulfur were sulfate");
        case NITRATE ->
            reading(
                Ion.NITRATE,
                Ion.NITRATE.massPerMassOf(NITROGEN),
                WaterCode.NITRATE_PERHAPS_NITROGEN,
                "the nitrate were stated as nitrogen");
        case NITRATE_AS_NITROGEN ->
            reading(
                Ion.NITRATE,
                1 / Ion.NITRATE.massPerMassOf(NITROGEN),
                WaterCode.NITROGEN_PERHAPS_NITRATE,
                "what is stated as nitrogen were nitrate");
      }
    }
  }

  private void reading(Ion ion, double factor, WaterCode code, String condition) {
    ReportedBalance read = balance.times(ion, factor);
    if (read.verdict() == ReportedBalance.Verdict.ACCEPTABLE) {
      add(code, ReportedBalance.names(List.of(ion)), "if " + condition + ": " + read);
    }
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
              + alkalinity
              + " is titrated from the pH of the water down to "
              + TitrationAlkalinity.USUAL_END_POINT
              + ", below which it cannot lie; "
              + pH
              + " is reported");
      return;
    }
    double hydroxide = hydroxideAt(pH);
    if (hydroxide >= alkalinity.inMilliequivalentsPerLitre()) {
      contradiction(
          pH
              + " alone means "
              + NumberText.significant(hydroxide, 2)
              + " mEq/L of hydroxide, more than the alkalinity of "
              + alkalinity);
      return;
    }
    Answer<Pressure> pressure = water.answer(Figures.CARBON_DIOXIDE_PRESSURE);
    if (!pressure.isStated()) {
      contradiction(String.join("; ", pressure.whyUnknown()));
      return;
    }
    double atmospheres = pressure.value().inAtmospheres();
    if (atmospheres > 1) {
      contradiction(
          pH
              + " with an alkalinity of "
              + alkalinity
              + " means carbon dioxide of "
              + NumberText.significant(atmospheres, 2)
              + " atm, more than a still water holds");
    } else if (pH.compareTo(CARBONATE_END_POINT) > 0) {
      add(
          WaterCode.CARBONATE_PRESENT,
          "carbonate alkalinity",
          pH
              + " is above 8.3: the alkalinity of "
              + NumberText.significant(alkalinity.inMilliequivalentsPerLitre(), 3)
              + " mEq/L is in part carbonate (total carbon dioxide "
              + NumberText.significant(water.totalCarbonDioxide().value().inMillimolesPerLitre(), 3)
              + " mmol/L)");
    }
  }

  private void contradiction(String text) {
    add(WaterCode.PH_CONTRADICTS_ALKALINITY, "pH", text);
  }

  /** Hydroxide of pure water brought to a pH, mEq/L. */
  private double hydroxideAt(PH reported) {
    return Solution.at(temperature).equilibriumAt(reported).species().stream()
        .filter(species -> species.name().equals("OH-"))
        .mapToDouble(species -> species.molality().inMillimolesPerKilogram())
        .sum();
  }

  private void missing() {
    if (!balance.missing().isEmpty()) {
      add(
          WaterCode.IONS_MISSING,
          balance.missing().stream()
              .map(ion -> ReportedBalance.names(List.of(ion)))
              .collect(Collectors.joining(", ")),
          "missing: " + ReportedBalance.names(balance.missing()));
    }
    if (reportedPH.isEmpty()) {
      add(
          WaterCode.PH_MISSING,
          "pH",
          "no pH is reported: the water is taken to hold as much carbon dioxide as alkalinity,"
              + " bicarbonate alone");
    }
  }
}
