package org.brewchem.solution;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.substance.Gas;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.Mineral;

/**
 * A solved solution: its pH, ionic strength and every species. Immutable.
 *
 * <p>A result from beyond the range of the activity rule says so in {@link #beyondActivityRange()}.
 */
public final class Equilibrium {
  private final double pH;
  private final double ionicStrength;
  private final List<Species> species;
  private final boolean beyondActivityRange;
  private final double kelvin;

  Equilibrium(
      double pH,
      double ionicStrength,
      List<Species> species,
      Level level,
      Temperature temperature) {
    this.pH = pH;
    this.ionicStrength = ionicStrength;
    this.species = species;
    this.kelvin = temperature.inKelvin();
    this.beyondActivityRange =
        level != Level.IDEAL && ionicStrength > ActivityRule.RANGE_MOLES_PER_KILOGRAM;
  }

  /**
   * Returns the pH.
   *
   * @return the pH
   */
  public PH pH() {
    return PH.of(pH);
  }

  /**
   * Returns the ionic strength.
   *
   * @return half the sum of molality times squared charge over all ions
   */
  public Molality ionicStrength() {
    return Molality.ofMolesPerKilogram(ionicStrength);
  }

  /**
   * Tells whether the ionic strength lies beyond {@link ActivityRule#RANGE_MOLES_PER_KILOGRAM}, so
   * that the activity coefficients, and with them the pH, are not to be trusted.
   *
   * @return false at level ideal, which has no activity rule
   */
  public boolean beyondActivityRange() {
    return beyondActivityRange;
  }

  /**
   * Returns every species.
   *
   * @return an unmodifiable list: H+, OH-, then ions, forms and pairs
   */
  public List<Species> species() {
    return species;
  }

  /**
   * Returns one species by its name.
   *
   * @param name the name, such as "Ca2+" or "CaHPO4(aq)"
   * @return the species; empty when there is none of that name
   */
  public Optional<Species> species(String name) {
    return species.stream().filter(s -> s.name().equals(name)).findFirst();
  }

  /**
   * Returns the total of a component: all its forms and pairs. In a solution open to a gas that of
   * the gas is what has dissolved.
   *
   * @param component the component
   * @return the sum over the species that hold it, 0 when the solution has none of it
   */
  public Molality total(Component component) {
    double sum = 0;
    for (Species s : species) {
      sum += held(s, component);
    }
    return Molality.ofMolesPerKilogram(sum);
  }

  /**
   * Returns how a component is distributed over its forms and pairs.
   *
   * @param component a component of the solution
   * @return an unmodifiable map from the name of the species to its share of the component's total,
   *     summing to 1; a pair with two ligands counts for two
   * @throws IllegalArgumentException if the solution has none of the component
   */
  public Map<String, Double> fractions(Component component) {
    double total =
        Checks.positive(component.name(), total(component).inMolesPerKilogram(), "mol/kg");
    Map<String, Double> fractions = new LinkedHashMap<>();
    for (Species s : species) {
      if (isOf(s.component(), component) || isOf(s.metal(), component)) {
        fractions.put(s.name(), held(s, component) / total);
      }
    }
    return Collections.unmodifiableMap(fractions);
  }

  private static double held(Species s, Component component) {
    double molality = s.molality().inMolesPerKilogram();
    if (isOf(s.component(), component)) {
      return s.count() * molality;
    }
    return isOf(s.metal(), component) ? molality : 0;
  }

  private static boolean isOf(Optional<Component> part, Component component) {
    return part.isPresent() && part.get().equals(component);
  }

  /**
   * Returns the unpaired form of a component that holds some of the protons.
   *
   * @param component the component
   * @param protons how many protons it holds, from 0 to {@link Component#protons()}
   * @return the species; empty when the solution has none of the component
   * @throws IllegalArgumentException if there is no such form
   */
  public Optional<Species> species(Component component, int protons) {
    String form = component.form(protons);
    return species.stream()
        .filter(s -> s.component().equals(Optional.of(component)) && s.name().equals(form))
        .findFirst();
  }

  /**
   * Returns the species of an ion pair.
   *
   * @param pair the ion pair, such as one of {@link org.brewchem.substance.PairSet#pairs()}
   * @return the species; empty when the solution was not solved with that pair
   */
  public Optional<Species> species(IonPair pair) {
    return species(pair.product());
  }

  /**
   * Returns the free part of a component: what is in none of the ion pairs.
   *
   * @param component the component
   * @return the sum over its unpaired forms, 0 when the solution has none of it
   */
  public Molality free(Component component) {
    return sum(component, false);
  }

  /**
   * Returns the paired part of a component, as metal or as ligand; a pair with two ligands counts
   * once.
   *
   * @param component the component
   * @return the sum over the pairs that hold it, 0 when there are none
   */
  public Molality bound(Component component) {
    return sum(component, true);
  }

  private Molality sum(Component component, boolean paired) {
    double sum = 0;
    for (Species s : species) {
      boolean isMetal = s.metal().equals(Optional.of(component));
      boolean isLigand = s.component().equals(Optional.of(component));
      boolean isPair = s.metal().isPresent() && !s.metal().equals(s.component());
      if ((isMetal || isLigand) && isPair == paired) {
        sum += s.molality().inMolesPerKilogram();
      }
    }
    return Molality.ofMolesPerKilogram(sum);
  }

  /**
   * Returns the saturation index of a mineral: the base-10 logarithm of the product of the
   * activities that it dissolves into, less that of its constant; the activity of water counts as
   * 1. Above 0 the liquid is supersaturated, which says nothing of how fast the mineral forms.
   *
   * @param mineral the mineral; {@link org.brewchem.substance.EquilibriumConstant#covers} of its
   *     constant tells whether the temperature lies in the range of its source
   * @return the index; empty when the solution holds none of one of the mineral's components
   */
  public OptionalDouble saturationIndex(Mineral mineral) {
    double log10 = -mineral.constant().log10(kelvin) - mineral.hydrogenIons() * pH;
    for (Map.Entry<Component, Double> part : mineral.components().entrySet()) {
      double activity = activity(part.getKey(), 0);
      if (activity == 0) {
        return OptionalDouble.empty();
      }
      log10 += part.getValue() * Math.log10(activity);
    }
    return OptionalDouble.of(log10);
  }

  /**
   * Returns the partial pressure of a gas with which the solution is in equilibrium, fugacity taken
   * as pressure.
   *
   * @param gas the gas
   * @return the pressure, 0 when the solution holds none of the gas
   */
  public Pressure partialPressure(Gas gas) {
    return Pressure.ofAtmospheres(
        activity(gas.component(), gas.component().protons())
            / Math.pow(10, gas.solubility().log10(kelvin)));
  }

  /** Activity of an unpaired form, mol/kg; 0 when there is none. */
  private double activity(Component component, int protons) {
    return species(component, protons).map(Species::activity).orElse(0.0);
  }

  @Override
  public String toString() {
    StringBuilder text =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "pH %.4f, ionic strength %.5g mol/kg%s",
                pH,
                ionicStrength,
                beyondActivityRange ? " (beyond the range of the activity rule)" : ""));
    for (Species s : species) {
      text.append(
          String.format(
              Locale.ROOT, "%n  %-16s %.6g mol/kg", s.name(), s.molality().inMolesPerKilogram()));
    }
    return text.toString();
  }
}
