package org.brewchem.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.brewchem.figure.Step;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.Provenance;

/**
 * What an explanation shows of a charge balance at a pH: conditions, constants with their sources,
 * every species with its activity coefficient and charge, and the sum that closes it.
 */
final class BalanceDetail {

  /** How far the listed charges may be from the balance, Eq/kg. */
  private static final double TOLERANCE = 1e-10;

  private BalanceDetail() {}

  /** Shows that the charges at a pH sum to what was found, 0 at the liquid's own pH. */
  static Step.Detail charges(Contents contents, double pH, double foundPerKilogram) {
    Equilibrium state = contents.equilibria().equilibriumAt(pH);
    List<String> lines = new ArrayList<>();
    lines.add(
        format(
            "at %s, %s, ionic strength %.5g mol/kg",
            contents.temperature(),
            contents.chemistry(),
            state.ionicStrength().inMolesPerKilogram()));
    constants(contents, lines);
    double sum = 0;
    for (Species species : state.species()) {
      double molality = species.molality().inMolesPerKilogram();
      if (molality == 0) {
        continue;
      }
      double charge = species.charge() * molality;
      sum += charge;
      lines.add(
          format(
              "%s: %.6g mmol/kg, activity coefficient %.4f, charge %+.6g mEq/kg",
              species.name(), molality * 1000, species.activity() / molality, charge * 1000));
    }
    double inert = contents.inertCharge().orElseThrow().value();
    if (inert != 0) {
      lines.add(format("inert ions: charge %+.6g mEq/kg", inert * 1000));
      sum += inert;
    }
    lines.add(format("sum of charges at pH %.4f: %+.6g mEq/kg", pH, sum * 1000));
    return new Step.Detail(lines, sum - foundPerKilogram, TOLERANCE);
  }

  /** Shows the charge that one component carries at the liquid's own pH. */
  static Step.Detail chargeOf(Component component, Contents contents, double foundPerKilogram) {
    Equilibria equilibria = contents.equilibria();
    double pH = equilibria.pH();
    List<String> lines = new ArrayList<>();
    double sum = 0;
    for (Species species : equilibria.equilibriumAt(pH).species()) {
      if (!species.component().equals(Optional.of(component))) {
        continue;
      }
      int metal =
          species.metal().equals(species.component())
              ? 0
              : species.metal().map(Component::chargeWithoutProtons).orElse(0);
      double charge = (species.charge() - metal) * species.molality().inMolesPerKilogram();
      sum += charge;
      lines.add(
          format(
              "%s: %.6g mmol/kg, charge of its %s %+.6g mEq/kg",
              species.name(),
              species.molality().inMolesPerKilogram() * 1000,
              component.name(),
              charge * 1000));
    }
    lines.add(format("sum at pH %.4f: %+.6g mEq/kg", pH, sum * 1000));
    return new Step.Detail(lines, sum - foundPerKilogram, TOLERANCE);
  }

  private static void constants(Contents contents, List<String> lines) {
    Chemistry chemistry = contents.chemistry();
    double kelvin = contents.temperature().inKelvin();
    lines.add(format("pKw %.4f", -chemistry.log10IonProduct(kelvin)));
    List<Component> components = contents.equilibria().components();
    for (Component component : components) {
      if (component.protons() == 0) {
        continue;
      }
      List<String> steps = new ArrayList<>();
      for (EquilibriumConstant step : chemistry.constants().of(component)) {
        steps.add(format("%.4f%s", -step.log10(kelvin), source(step)));
      }
      lines.add("pKa of " + component.name() + ": " + String.join(", ", steps));
    }
    if (chemistry.level() != Level.PAIRS) {
      return;
    }
    for (IonPair pair : chemistry.pairs().pairs()) {
      boolean metal = pair.metal().map(components::contains).orElse(true);
      boolean ligand = pair.ligand().map(components::contains).orElse(true);
      if (metal && ligand) {
        lines.add(
            format(
                "log K of %s: %.4f%s",
                pair.product(), pair.constant().log10(kelvin), source(pair.constant())));
      }
    }
  }

  private static String source(EquilibriumConstant constant) {
    return constant.provenance().map(Provenance::sourceKey).map(key -> " [" + key + "]").orElse("");
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
