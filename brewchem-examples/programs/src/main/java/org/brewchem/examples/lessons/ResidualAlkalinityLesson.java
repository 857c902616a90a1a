package org.brewchem.examples.lessons;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.util.List;
import java.util.Locale;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Equilibrium;
import org.brewchem.solution.Level;
import org.brewchem.solution.MineralEquilibrium;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.brewchem.water.WaterReport;

/**
 * Reads Kolbach's residual alkalinity from first principles: how much alkalinity the calcium and
 * magnesium of a water make up for in a liquid with the ions of a mash, as a homogeneous solution
 * and with hydroxyapatite at equilibrium. Prints the tables of docs/residual-alkalinity.md.
 */
public final class ResidualAlkalinityLesson {

  private static final PH MASH = pH(5.75);
  private static final double[] TEMPERATURES = {25, 65};
  private static final double SMALL = 0.01;

  /** Water: calcium, magnesium and alkalinity in mEq/L. */
  private record Water(String name, double calcium, double magnesium, double alkalinity) {

    static Water ofGermanDegrees(
        String name, double calcium, double magnesium, double carbonateHardness) {
      return new Water(
          name,
          Hardness.ofGermanDegrees(calcium).inMilliequivalentsPerLitre(),
          Hardness.ofGermanDegrees(magnesium).inMilliequivalentsPerLitre(),
          CarbonateAlkalinity.ofGermanDegrees(carbonateHardness).inMilliequivalentsPerLitre());
    }

    /** Residual alkalinity, mEq/L. */
    double byKolbach() {
      return WaterReport.reported()
          .calcium(mmolPerL(calcium / 2).times(Ion.CALCIUM.molarMass()))
          .magnesium(mmolPerL(magnesium / 2).times(Ion.MAGNESIUM.molarMass()))
          .alkalinity(CarbonateAlkalinity.ofMilliequivalentsPerLitre(alkalinity))
          .build()
          .water()
          .residualAlkalinity()
          .value()
          .inMilliequivalentsPerLitre();
    }

    /** Alkalinity that the hardness makes up for, mEq/L. */
    double kolbachsCredit() {
      return alkalinity - byKolbach();
    }
  }

  /** Munich and Pilsen from memory of German textbooks of brewing, the others invented. */
  private static final List<Water> WATERS =
      List.of(
          Water.ofGermanDegrees("Munich", 10.6, 4.2, 14.2),
          Water.ofGermanDegrees("Pilsen", 1.0, 0.6, 1.3),
          new Water("hard, alkaline", 5, 1.5, 5.5),
          new Water("hard, little alkalinity", 6, 1.5, 1),
          new Water("middling", 3, 1, 2),
          new Water("rich in magnesium", 1.5, 4, 3),
          new Water("calcium chloride added", 10, 1, 1));

  private ResidualAlkalinityLesson() {}

  /**
   * Prints the tables to standard output.
   *
   * @param arguments none are used
   */
  public static void main(String[] arguments) {
    System.out.print(report());
  }

  /** Returns the tables in Markdown. */
  static String report() {
    return String.join(
        "\n", perMilliequivalent(), perWater(), residual(), byPH(), bySolubility(), saturation());
  }

  /** A liquid with the ions of a mash, potassium making it have the pH. */
  private static Solution mash(double celsius, Level level, PH pH) {
    Solution acids =
        Solution.at(celsius(celsius))
            .under(level)
            .with(Ion.CALCIUM, mmolPerKg(1.0))
            .with(Ion.MAGNESIUM, mmolPerKg(3.0))
            .with(Ion.CHLORIDE, mmolPerKg(2.0))
            .with(Acid.PHOSPHORIC, mmolPerKg(8.0))
            .with(Acid.LACTIC, mmolPerKg(0.6))
            .with(Acid.ACETIC, mmolPerKg(0.2))
            .with(Acid.CITRIC, mmolPerKg(0.7))
            .with(Acid.MALIC, mmolPerKg(0.7))
            .with(Acid.SUCCINIC, mmolPerKg(0.2));
    return acids.with(Ion.POTASSIUM, acids.doseOf(Base.POTASSIUM_HYDROXIDE, pH));
  }

  private static Solution with(Water water, Solution mash) {
    return mash.with(Ion.CALCIUM, mmolPerL(water.calcium / 2))
        .with(Ion.MAGNESIUM, mmolPerL(water.magnesium / 2))
        .with(Ion.CHLORIDE, mmolPerL(water.calcium + water.magnesium));
  }

  /** Protons that the hardness sets free at a pH in a homogeneous solution, mEq/L. */
  private static double homogeneous(Water water, double celsius, Level level, PH pH) {
    Solution mash = mash(celsius, level, pH);
    return mash.charge(pH).minus(with(water, mash).charge(pH)).inMilliequivalentsPerLitre();
  }

  /** The same with hydroxyapatite that precipitates to equilibrium. */
  private static double withHydroxyapatite(Water water, double celsius, PH pH) {
    return precipitating(Mineral.HYDROXYAPATITE, water, celsius, pH);
  }

  private static double precipitating(Mineral mineral, Water water, double celsius, PH pH) {
    Solution mash = mash(celsius, Level.PAIRS, pH);
    return baseTo(pH, mineral, with(water, mash)) - baseTo(pH, mineral, mash);
  }

  /** Strong base that gives the liquid a pH after the mineral has precipitated, mEq/L. */
  private static double baseTo(PH pH, Mineral mineral, Solution liquid) {
    double low = -8;
    double high = 8;
    for (int i = 0; i < 40; i++) {
      double middle = 0.5 * (low + high);
      Solution based = liquid.withInertCharge(mEqPerL(middle));
      if (MineralEquilibrium.precipitating(based, mineral).pH().compareTo(pH) < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }

  private static String perMilliequivalent() {
    StringBuilder table =
        new StringBuilder(
            """
            | °C | of | ionic strength alone | with pairs | by Kolbach | share explained | of it, by ionic strength |
            |---|---|---|---|---|---|---|
            """);
    for (double celsius : TEMPERATURES) {
      for (Water water :
          List.of(new Water("calcium", SMALL, 0, 0), new Water("magnesium", 0, SMALL, 0))) {
        double activity = homogeneous(water, celsius, Level.ACTIVITY, MASH) / SMALL;
        double pairs = homogeneous(water, celsius, Level.PAIRS, MASH) / SMALL;
        double kolbach = water.kolbachsCredit() / SMALL;
        line(
            table,
            "| %.0f | %s | %.4f | %.4f | %.4f | %s | %.0f %% |",
            celsius,
            water.name,
            activity,
            pairs,
            kolbach,
            share(pairs, kolbach),
            100 * activity / pairs);
      }
    }
    return table.toString();
  }

  private static String perWater() {
    StringBuilder table =
        new StringBuilder(
            """
            | water | Ca | Mg | by Kolbach | homogeneous, 25 °C | homogeneous, 65 °C | hydroxyapatite, 25 °C | hydroxyapatite, 65 °C |
            |---|---|---|---|---|---|---|---|
            """);
    for (Water water : WATERS) {
      double kolbach = water.kolbachsCredit();
      line(
          table,
          "| %s | %.2f | %.2f | %.2f | %s | %s | %s | %s |",
          water.name,
          water.calcium,
          water.magnesium,
          kolbach,
          withShare(homogeneous(water, 25, Level.PAIRS, MASH), kolbach),
          withShare(homogeneous(water, 65, Level.PAIRS, MASH), kolbach),
          withShare(withHydroxyapatite(water, 25, MASH), kolbach),
          withShare(withHydroxyapatite(water, 65, MASH), kolbach));
    }
    return table.toString();
  }

  private static String residual() {
    StringBuilder table =
        new StringBuilder(
            """
            | water | alkalinity | residual, by Kolbach | homogeneous, 65 °C | hydroxyapatite, 25 °C | hydroxyapatite, 65 °C |
            |---|---|---|---|---|---|
            """);
    for (Water water : WATERS) {
      line(
          table,
          "| %s | %.2f | %.2f | %.2f | %.2f | %.2f |",
          water.name,
          water.alkalinity,
          water.byKolbach(),
          water.alkalinity - homogeneous(water, 65, Level.PAIRS, MASH),
          water.alkalinity - withHydroxyapatite(water, 25, MASH),
          water.alkalinity - withHydroxyapatite(water, 65, MASH));
    }
    return table.toString();
  }

  private static String byPH() {
    StringBuilder table =
        new StringBuilder(
            """
            | pH held | homogeneous, 25 °C | homogeneous, 65 °C | hydroxyapatite, 25 °C | hydroxyapatite, 65 °C |
            |---|---|---|---|---|
            """);
    Water munich = WATERS.get(0);
    double kolbach = munich.kolbachsCredit();
    for (double at : new double[] {5.4, 5.6, 5.75, 5.9}) {
      line(
          table,
          "| %.2f | %.2f | %.2f | %.2f | %.2f |",
          at,
          homogeneous(munich, 25, Level.PAIRS, pH(at)) / kolbach,
          homogeneous(munich, 65, Level.PAIRS, pH(at)) / kolbach,
          withHydroxyapatite(munich, 25, pH(at)) / kolbach,
          withHydroxyapatite(munich, 65, pH(at)) / kolbach);
    }
    return table.toString();
  }

  private static String bySolubility() {
    StringBuilder table =
        new StringBuilder(
            """
            | log10 K of hydroxyapatite | 25 °C | 65 °C |
            |---|---|---|
            """);
    Water munich = WATERS.get(0);
    double kolbach = munich.kolbachsCredit();
    for (int shift : new int[] {-4, -2, 0, 2}) {
      Mineral shifted =
          Mineral.HYDROXYAPATITE.with(
              Mineral.HYDROXYAPATITE.constant().plus(EquilibriumConstant.ofLog10(shift)));
      line(
          table,
          "| %s | %.2f | %.2f |",
          shift == 0 ? "as in the table of minerals" : String.format(Locale.ROOT, "%+d", shift),
          precipitating(shifted, munich, 25, MASH) / kolbach,
          precipitating(shifted, munich, 65, MASH) / kolbach);
    }
    return table.toString();
  }

  private static String saturation() {
    StringBuilder table =
        new StringBuilder(
            """
            | liquid | °C | hydroxyapatite | CaHPO4.2H2O | CaHPO4 |
            |---|---|---|---|---|
            """);
    for (double celsius : TEMPERATURES) {
      Solution mash = mash(celsius, Level.PAIRS, MASH);
      saturationLine(table, "without hardness of the water", celsius, mash);
      saturationLine(table, "with that of Munich", celsius, with(WATERS.get(0), mash));
    }
    return table.toString();
  }

  private static void saturationLine(
      StringBuilder table, String liquid, double celsius, Solution solution) {
    Equilibrium state = solution.equilibriumAt(MASH);
    line(
        table,
        "| %s | %.0f | %.2f | %.2f | %.2f |",
        liquid,
        celsius,
        state.saturationIndex(Mineral.HYDROXYAPATITE).orElseThrow(),
        state.saturationIndex(Mineral.DICALCIUM_PHOSPHATE_DIHYDRATE).orElseThrow(),
        state.saturationIndex(Mineral.DICALCIUM_PHOSPHATE_ANHYDROUS).orElseThrow());
  }

  private static String withShare(double credit, double kolbach) {
    return String.format(Locale.ROOT, "%.2f (%.2f)", credit, credit / kolbach);
  }

  private static String share(double part, double whole) {
    return String.format(Locale.ROOT, "%.2f (1/%.1f)", part / whole, whole / part);
  }

  private static void line(StringBuilder table, String format, Object... values) {
    table.append(String.format(Locale.ROOT, format, values)).append('\n');
  }
}
