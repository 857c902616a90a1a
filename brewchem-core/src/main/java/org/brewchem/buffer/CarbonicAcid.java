package org.brewchem.buffer;

import java.util.List;
import org.brewchem.internal.ReferenceMolarMasses;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.uncertainty.Traced;

/** Carbon dioxide in a titrated sample: its two pK of the default chemistry. */
final class CarbonicAcid {

  private static final Temperature ROOM = Temperature.ofCelsius(20);

  static final double KILOGRAMS_PER_LITRE =
      Contents.pure(ROOM, Chemistry.standard()).kilogramsPerLitre();

  private CarbonicAcid() {}

  /** The pK of one of the two steps, 1 or 2. */
  static double pK(int step, Temperature temperature) {
    List<EquilibriumConstant> steps = Chemistry.standard().constants().of(Component.CARBONATE);
    double first = -steps.get(0).log10(temperature.inKelvin());
    double second = -steps.get(1).log10(temperature.inKelvin());
    return step == 1 ? Math.min(first, second) : Math.max(first, second);
  }

  /** An amount of it, g/L with its source, in mol per kg of water. */
  static Traced perKilogram(Traced gramsPerLitre) {
    return gramsPerLitre.times(1 / (ReferenceMolarMasses.CARBON_DIOXIDE * KILOGRAMS_PER_LITRE));
  }

  static Traced perKilogram(Usual usual) {
    return perKilogram(Traced.of(usual.source()));
  }

  /** Equivalents of base that a mole of it has taken at a pH, without activities, at 20 °C. */
  static double charge(double pH) {
    double first = 1 / (1 + Math.pow(10, pK(1, ROOM) - pH));
    return first * (1 + 1 / (1 + Math.pow(10, pK(2, ROOM) - pH)));
  }
}
