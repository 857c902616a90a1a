package org.brewchem.buffer;

import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * Calcium and magnesium of a titrated liquid, which hold part of an acid that is added: of each the
 * share that the liquid's own acids, which the grid stands for, do not hold already.
 *
 * @param calcium mol per kg of water
 * @param magnesium mol per kg of water
 */
record Metals(Traced calcium, Traced magnesium) {

  private static final double KILOGRAMS_PER_LITRE =
      Contents.pure(Temperature.ofCelsius(20), Chemistry.standard()).kilogramsPerLitre();

  /** As in a typical beer; both move together. */
  static Metals assumed() {
    TypicalBeer.Part calcium = TypicalBeer.metals().get(0);
    TypicalBeer.Part magnesium = TypicalBeer.metals().get(1);
    Traced factor =
        Traced.of(
            Source.of("calcium and magnesium over the typical", 1, calcium.relativeSpread(), ""));
    return free(
        factor.times(calcium.millimolesPerLitre() / 1000 / KILOGRAMS_PER_LITRE),
        factor.times(magnesium.millimolesPerLitre() / 1000 / KILOGRAMS_PER_LITRE));
  }

  private static Metals free(Traced calcium, Traced magnesium) {
    Traced share = Traced.of(Usual.FREE_METALS.source());
    return new Metals(calcium.times(share), magnesium.times(share));
  }

  /** As measured, each with a relative uncertainty of its own, if any was stated. */
  static Metals stated(
      AmountConcentration calcium, AmountConcentration magnesium, OptionalDouble relative) {
    return free(stated("calcium", calcium, relative), stated("magnesium", magnesium, relative));
  }

  private static Traced stated(String name, AmountConcentration amount, OptionalDouble relative) {
    Checks.inRange(name, amount.inMolesPerLitre(), "mol/L", 0, Usual.MOST_METALS.value());
    double millimolesPerLitre = amount.inMillimolesPerLitre();
    OptionalDouble u =
        relative.isPresent()
            ? OptionalDouble.of(relative.getAsDouble() * millimolesPerLitre)
            : relative;
    return Traced.stated(name, millimolesPerLitre, u, "mmol/L")
        .times(1 / (1000 * KILOGRAMS_PER_LITRE));
  }
}
