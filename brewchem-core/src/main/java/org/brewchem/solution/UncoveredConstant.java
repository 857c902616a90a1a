package org.brewchem.solution;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonPair;

/**
 * A constant that a calculation uses at a temperature which its source does not cover.
 *
 * <p>The calculation is done all the same: a constant is extrapolated by its enthalpy and heat
 * capacity, or stays what it is at 25 °C where its source prints none.
 *
 * @param component the component that dissociates, or the ligand of an ion pair, or the metal of a
 *     hydroxide
 * @param step the step of the dissociation, 1 for the first lost proton; empty for an ion pair
 * @param species the form that loses the proton, such as "H2PO4-", or the ion pair, such as
 *     "CaHPO4(aq)"
 * @param constant the constant
 * @param reason why the temperature is not covered
 * @param temperature the temperature that is not covered
 */
public record UncoveredConstant(
    Component component,
    OptionalInt step,
    String species,
    EquilibriumConstant constant,
    Reason reason,
    Temperature temperature) {
  /**
   * Makes a record of a constant.
   *
   * @param component the component that dissociates, or the ligand of an ion pair, or the metal of
   *     a hydroxide
   * @param step the step of the dissociation, 1 for the first lost proton; empty for an ion pair
   * @param species the form that loses the proton, such as "H2PO4-", or the ion pair, such as
   *     "CaHPO4(aq)"
   * @param constant the constant
   * @param reason why the temperature is not covered
   * @param temperature the temperature that is not covered
   */
  public UncoveredConstant {
    Objects.requireNonNull(component, "component");
    Objects.requireNonNull(step, "step");
    Objects.requireNonNull(species, "species");
    Objects.requireNonNull(constant, "constant");
    Objects.requireNonNull(reason, "reason");
    Objects.requireNonNull(temperature, "temperature");
  }

  /** Why a temperature is not covered. */
  public enum Reason {
    /** The temperature lies outside the range that the source states. */
    BEYOND_RANGE,
    /** No range is stated, or not for all the parts of a sum. */
    RANGE_UNSTATED
  }

  /** Returns the step of a component, unless its constant covers the temperature. */
  static Optional<UncoveredConstant> ofStep(
      Component component, int step, EquilibriumConstant constant, Temperature temperature) {
    return of(
        component,
        OptionalInt.of(step),
        component.form(component.protons() + 1 - step),
        constant,
        temperature);
  }

  /** Returns the constant of an ion pair, unless it covers the temperature. */
  static Optional<UncoveredConstant> ofPair(IonPair pair, Temperature temperature) {
    return of(
        pair.ligand().or(pair::metal).orElseThrow(),
        OptionalInt.empty(),
        pair.product(),
        pair.constant(),
        temperature);
  }

  private static Optional<UncoveredConstant> of(
      Component component,
      OptionalInt step,
      String species,
      EquilibriumConstant constant,
      Temperature temperature) {
    if (constant.covers(temperature.inKelvin())) {
      return Optional.empty();
    }
    boolean beyond = constant.isBeyondRange(temperature.inKelvin());
    return Optional.of(
        new UncoveredConstant(
            component,
            step,
            species,
            constant,
            beyond ? Reason.BEYOND_RANGE : Reason.RANGE_UNSTATED,
            temperature));
  }

  /**
   * Returns the same in a sentence.
   *
   * @return the constant with its source, the range that it holds for and the temperature
   */
  public String text() {
    String name =
        step.isPresent()
            ? "pKa " + step.getAsInt() + " of " + component.name()
            : "formation of " + species;
    String source =
        constant
            .provenance()
            .map(provenance -> " (" + provenance.sourceKey() + ")")
            .orElse(" (no source)");
    return reason == Reason.BEYOND_RANGE
        ? String.format(
            Locale.ROOT,
            "%s%s holds from %s to %s °C, not at %.1f °C",
            name,
            source,
            celsius(constant.minimumKelvin()),
            celsius(constant.maximumKelvin()),
            temperature.inCelsius())
        : String.format(
            Locale.ROOT,
            "%s%s is used at %.1f °C; its range of temperature is not stated",
            name,
            source,
            temperature.inCelsius());
  }

  private static String celsius(OptionalDouble kelvin) {
    return String.format(
        Locale.ROOT, "%.1f", Temperature.ofKelvin(kelvin.orElseThrow()).inCelsius());
  }
}
