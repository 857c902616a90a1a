package org.brewchem.water;

import java.util.ArrayList;
import java.util.List;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Species;
import org.brewchem.substance.Gas;
import org.brewchem.substance.Ion;
import org.brewchem.water.IonBalance.Verdict;
import org.brewchem.water.WaterAnalysis.Stated;
import org.brewchem.water.WaterFinding.Kind;

/** Looks through an analysis for what is odd about it. */
final class WaterFindings {

  /** Above this pH a titration finds carbonate: the end point of phenolphthalein (SM 2320 B). */
  private static final PH CARBONATE_END_POINT = PH.of(8.3);

  private final WaterAnalysis water;
  private final IonBalance balance;
  private final List<WaterFinding> found = new ArrayList<>();

  private WaterFindings(WaterAnalysis water) {
    this.water = water;
    this.balance = water.ionBalance();
  }

  static List<WaterFinding> of(WaterAnalysis water) {
    WaterFindings findings = new WaterFindings(water);
    findings.balance();
    findings.readings();
    findings.carbonate();
    findings.missing();
    return List.copyOf(findings.found);
  }

  private void add(Kind kind, String message) {
    found.add(new WaterFinding(kind, message));
  }

  private void balance() {
    add(
        switch (balance.verdict()) {
          case ACCEPTABLE -> Kind.ION_BALANCE_ACCEPTABLE;
          case NOT_ACCEPTABLE -> Kind.ION_BALANCE_OFF;
          case NOT_JUDGED -> Kind.ION_BALANCE_NOT_JUDGED;
        },
        balance.toString());
  }

  /** Which single column, read on another basis, would put the balance right. */
  private void readings() {
    if (balance.verdict() != Verdict.NOT_ACCEPTABLE) {
      return;
    }
    for (Stated stated : water.stated()) {
      switch (stated) {
        case BICARBONATE -> {
          reading(
              Ion.BICARBONATE,
              Bases.CARBONATE_OVER_BICARBONATE,
              Kind.BICARBONATE_PERHAPS_CARBONATE,
              "what is headed bicarbonate were carbonate");
          reading(
              Ion.BICARBONATE,
              Bases.CACO3_OVER_BICARBONATE,
              Kind.ALKALINITY_BASIS_DOUBTFUL,
              "what is stated as bicarbonate were stated as CaCO3");
        }
        case ALKALINITY_AS_CACO3 ->
            reading(
                Ion.BICARBONATE,
                1 / Bases.CACO3_OVER_BICARBONATE,
                Kind.ALKALINITY_BASIS_DOUBTFUL,
                "what is stated as CaCO3 were bicarbonate");
        case SULFATE ->
            reading(
                Ion.SULFATE,
                Bases.SULFATE_PER_SULFUR,
                Kind.SULFATE_PERHAPS_SULFUR,
                "the sulfate were stated as sulfur");
        case SULFATE_AS_SULFUR ->
            reading(
                Ion.SULFATE,
                1 / Bases.SULFATE_PER_SULFUR,
                Kind.SULFUR_PERHAPS_SULFATE,
                "what is stated as sulfur were sulfate");
        case NITRATE ->
            reading(
                Ion.NITRATE,
                Bases.NITRATE_PER_NITROGEN,
                Kind.NITRATE_PERHAPS_NITROGEN,
                "the nitrate were stated as nitrogen");
        case NITRATE_AS_NITROGEN ->
            reading(
                Ion.NITRATE,
                1 / Bases.NITRATE_PER_NITROGEN,
                Kind.NITROGEN_PERHAPS_NITRATE,
                "what is stated as nitrogen were nitrate");
      }
    }
  }

  private void reading(Ion ion, double factor, Kind kind, String condition) {
    IonBalance read = balance.times(ion, factor);
    if (read.verdict() == Verdict.ACCEPTABLE) {
      add(kind, "if " + condition + ": " + read);
    }
  }

  private void carbonate() {
    if (water.pH().isEmpty() || water.alkalinity().isEmpty()) {
      return;
    }
    PH pH = water.pH().get();
    CarbonateAlkalinity alkalinity = water.alkalinity().get();
    if (alkalinity.inMilliequivalentsPerLitre() == 0) {
      return;
    }
    if (pH.compareTo(TitrationAlkalinity.USUAL_END_POINT) <= 0) {
      add(
          Kind.PH_CONTRADICTS_ALKALINITY,
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
      add(
          Kind.PH_CONTRADICTS_ALKALINITY,
          pH
              + " alone means "
              + Lines.significant(hydroxide, 2)
              + " mEq/L of hydroxide, more than the alkalinity of "
              + alkalinity);
      return;
    }
    double pressure;
    try {
      pressure = carbonDioxidePressure();
    } catch (IllegalArgumentException noSuchWater) {
      add(Kind.PH_CONTRADICTS_ALKALINITY, String.valueOf(noSuchWater.getMessage()));
      return;
    }
    if (pressure > 1) {
      add(
          Kind.PH_CONTRADICTS_ALKALINITY,
          pH
              + " with an alkalinity of "
              + alkalinity
              + " means carbon dioxide of "
              + Lines.significant(pressure, 2)
              + " atm, more than a still water holds");
    } else if (pH.compareTo(CARBONATE_END_POINT) > 0) {
      double total = water.totalCarbonDioxide().orElseThrow().inMillimolesPerLitre();
      add(
          Kind.CARBONATE_PRESENT,
          pH
              + " is above 8.3: the alkalinity of "
              + Lines.significant(alkalinity.inMilliequivalentsPerLitre(), 3)
              + " mEq/L is in part carbonate (total carbon dioxide "
              + Lines.significant(total, 3)
              + " mmol/L)");
    }
  }

  private double carbonDioxidePressure() {
    Temperature temperature = water.temperatureOfPH();
    double activity =
        water.toSolution(temperature).equilibrium().species().stream()
            .filter(species -> species.name().equals("CO2(aq)"))
            .mapToDouble(Species::activity)
            .sum();
    return activity / Math.pow(10, Gas.CARBON_DIOXIDE.solubility().log10(temperature.inKelvin()));
  }

  /** Hydroxide of pure water brought to a pH, mEq/L. */
  private double hydroxideAt(PH pH) {
    return Solution.at(water.temperatureOfPH()).equilibriumAt(pH).species().stream()
        .filter(species -> species.name().equals("OH-"))
        .mapToDouble(species -> species.molality().inMillimolesPerKilogram())
        .sum();
  }

  private void missing() {
    if (!balance.missing().isEmpty()) {
      add(Kind.IONS_MISSING, "missing: " + IonBalance.names(balance.missing()));
    }
    if (water.pH().isEmpty() && water.totalCarbonDioxide().isEmpty()) {
      add(
          Kind.PH_MISSING,
          "no pH is reported: the water is taken to hold as much carbon dioxide as alkalinity,"
              + " bicarbonate alone");
    }
  }
}
