package org.brewchem.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.brewchem.figure.Step;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonPair;

/**
 * What an explanation shows of a charge balance at a pH: conditions, constants with their sources,
 * activity coefficients, every species with its charge, and the sum that closes it. Columns are
 * aligned for a fixed-width font.
 */
final class BalanceDetail {

  /** How far the listed charges may be from the balance, Eq/kg. */
  private static final double TOLERANCE = 1e-10;

  /** Coefficients nearer to each other than this are printed as one. */
  private static final double SAME = 1e-9;

  /** The step of pH of a slope that is shown; what it misses grows with its square. */
  private static final double SLOPE_STEP = 1e-3;

  /**
   * Of a slope, relative to it or to 1. Where the liquid is neutral the ion that carries what is
   * missing makes a kink in the ionic strength, 1e-4 in 10 mmol/L of acetate.
   */
  private static final double SLOPE_TOLERANCE = 2e-3;

  private BalanceDetail() {}

  /** Shows what it can; where the balance has no solution, that, which never holds. */
  static Step.Detail orFailure(Supplier<Step.Detail> shown) {
    try {
      return shown.get();
    } catch (NoSolutionException e) {
      double left = e.residual() == 0 ? 1 : e.residual();
      return new Step.Detail(List.of(String.valueOf(e.getMessage())), left, 0);
    }
  }

  /** Shows that the charges at a pH sum to what was found, 0 at the liquid's own pH. */
  static Step.Detail charges(Contents contents, double pH, double foundPerKilogram) {
    Equilibrium state = contents.equilibria().equilibriumAt(pH);
    List<Species> present =
        state.species().stream().filter(s -> s.molality().inMolesPerKilogram() > 0).toList();
    List<String> lines = new ArrayList<>();
    lines.add(format("at %s, %s", contents.temperature(), contents.chemistry()));
    lines.addAll(constants(contents));
    lines.add(
        format(
            "ionic strength %.5g mmol/kg, half the sum of molality times squared charge",
            state.ionicStrength().inMillimolesPerKilogram()));
    Optional<String> coefficients = coefficients(present);
    coefficients.ifPresent(lines::add);
    lines.add(
        format(
            "%-18s%14s%14s%s",
            format("charges at pH %.4f", pH),
            "mmol/kg",
            "mEq/kg",
            coefficients.isPresent() ? "" : "   activity coefficient"));
    double sum = 0;
    for (Species species : present) {
      double molality = species.molality().inMolesPerKilogram();
      double charge = species.charge() * molality;
      sum += charge;
      String row =
          format(
              "  %-16s%14s%14s",
              species.name(),
              number(molality * 1000),
              charge == 0 ? "0" : format("%+.6g", charge * 1000));
      lines.add(
          coefficients.isPresent() ? row : row + format("   %.4f", species.activity() / molality));
    }
    double inert = contents.inertCharge().orElseThrow().value();
    if (inert != 0) {
      lines.add(
          format(
              "  %-16s%14s%14s",
              "inert ions", number(Math.abs(inert) * 1000), format("%+.6g", inert * 1000)));
      sum += inert;
    }
    lines.add(format("%-32s%14s", "sum of the charges", total(sum)));
    return new Step.Detail(lines, sum - foundPerKilogram, TOLERANCE);
  }

  /**
   * Shows the charges at a pH and the slope of their sum there, by a step of pH up and one down.
   *
   * @param found the buffer capacity, mEq per litre and pH
   */
  static Step.Detail slope(Contents contents, double pH, double found) {
    Equilibria equilibria = contents.equilibria();
    List<String> lines = new ArrayList<>(charges(contents, pH, 0).lines());
    double below = equilibria.chargeAt(pH - SLOPE_STEP);
    double above = equilibria.chargeAt(pH + SLOPE_STEP);
    double slope = 1000 * (below - above) / (2 * SLOPE_STEP) * contents.kilogramsPerLitre();
    lines.add(
        format(
            "sum at pH %.4f less that at pH %.4f: %s - %s = %s mEq/kg",
            pH - SLOPE_STEP, pH + SLOPE_STEP, total(below), total(above), total(below - above)));
    lines.add(
        format(
            "over %s of pH, times %.5g kg/L: %s mEq/L per pH",
            number(2 * SLOPE_STEP), contents.kilogramsPerLitre(), number(slope)));
    return new Step.Detail(lines, slope - found, SLOPE_TOLERANCE * Math.max(1, found));
  }

  /** Shows the charge that one component carries at the liquid's own pH. */
  static Step.Detail chargeOf(Component component, Contents contents, double foundPerKilogram) {
    Equilibria equilibria = contents.equilibria();
    double pH = equilibria.pH();
    List<String> lines = new ArrayList<>();
    lines.add(
        format("%-32s%14s", format("charge of %s at pH %.4f", component.name(), pH), "mEq/kg"));
    double sum = 0;
    for (Species species : equilibria.equilibriumAt(pH).species()) {
      if (!species.component().equals(Optional.of(component))) {
        continue;
      }
      int metal =
          species.metal().equals(species.component())
              ? 0
              : species.metal().map(Component::chargeWithoutProtons).orElse(0);
      int own = species.charge() - metal;
      double molality = species.molality().inMolesPerKilogram();
      sum += own * molality;
      lines.add(
          format(
              "  %-16s%14s%14s",
              species.name(),
              number(molality * 1000) + " x " + (own == 0 ? "0" : format("%+d", own)),
              own == 0 ? "0" : format("%+.6g", own * molality * 1000)));
    }
    lines.add(format("%-32s%14s", "sum", total(sum)));
    return new Step.Detail(lines, sum - foundPerKilogram, TOLERANCE);
  }

  /** A sum that is nothing but rounding prints as zero. */
  private static String total(double sum) {
    return Math.abs(sum) < 1e-13 ? "0" : format("%+.6g", sum * 1000);
  }

  /** The coefficients by charge, if all species of a charge share theirs. */
  private static Optional<String> coefficients(List<Species> present) {
    Map<Integer, Double> byCharge = new TreeMap<>();
    for (Species species : present) {
      double own = species.activity() / species.molality().inMolesPerKilogram();
      Double other = byCharge.putIfAbsent(Math.abs(species.charge()), own);
      if (other != null && Math.abs(own - other) > SAME) {
        return Optional.empty();
      }
    }
    List<String> parts = new ArrayList<>();
    byCharge.forEach(
        (charge, coefficient) ->
            parts.add(
                format("%.4f for %s", coefficient, charge == 0 ? "no charge" : "±" + charge)));
    return Optional.of("activity coefficients: " + String.join(", ", parts));
  }

  private static List<String> constants(Contents contents) {
    Chemistry chemistry = contents.chemistry();
    double kelvin = contents.temperature().inKelvin();
    List<Component> components = contents.equilibria().components();
    List<String> lines = new ArrayList<>();
    lines.add(format("constants at %.1f °C (log10)", contents.temperature().inCelsius()));
    lines.add(
        format(
            "  %-24s%10.4f   %s",
            "pKw", -chemistry.log10IonProduct(kelvin), chemistry.ionProductName()));
    for (Component component : components) {
      int step = 0;
      for (EquilibriumConstant constant : chemistry.constants().of(component)) {
        lines.add(
            format(
                "  %-24s%10.4f   %s",
                "pKa " + ++step + " of " + component.name(),
                -constant.log10(kelvin),
                source(constant)));
      }
    }
    for (IonPair pair : chemistry.pairsAmong(components)) {
      lines.add(
          format(
              "  %-24s%10.4f   %s",
              "formation of " + pair.product(),
              pair.constant().log10(kelvin),
              source(pair.constant())));
    }
    return lines;
  }

  private static String source(EquilibriumConstant constant) {
    return constant
        .provenance()
        .map(provenance -> provenance.sourceKey() + ", " + provenance.locator())
        .orElse("no source");
  }

  private static String number(double value) {
    return format("%.6g", value);
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
