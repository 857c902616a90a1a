package org.brewchem.solution;

import java.util.List;
import java.util.Objects;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Acid;

/**
 * The protons that a mole of an acid really delivers, which for acids not fully dissociated at the
 * end point is neither a whole number nor the number of the definition: about 1.9 for phosphoric
 * acid at pH 8.2, about 2 for citric at 5.4.
 *
 * <p>Counted at zero ionic strength, from the forms of the acid alone: the limit of what a trace of
 * the acid delivers, and the only case with a closed form. What a dose delivers in a given liquid
 * is {@code org.brewchem.treatment.Delivery}. Immutable.
 */
public final class EffectiveEquivalents {
  private final Acid acid;
  private final Temperature temperature;
  private final Chemistry chemistry;

  private EffectiveEquivalents(Acid acid, Temperature temperature, Chemistry chemistry) {
    this.acid = acid;
    this.temperature = temperature;
    this.chemistry = chemistry.at(Level.IDEAL);
  }

  /**
   * Asks about an acid at 25 °C with the standard constants.
   *
   * @param acid the acid
   * @return its effective equivalents
   */
  public static EffectiveEquivalents of(Acid acid) {
    Objects.requireNonNull(acid, "acid");
    return of(acid, Temperature.ofCelsius(25), Chemistry.standard());
  }

  /**
   * Asks about an acid.
   *
   * @param acid the acid
   * @param temperature 0 to 100 °C
   * @param chemistry the chemistry, of which the dissociation constants count
   * @return its effective equivalents
   */
  public static EffectiveEquivalents of(Acid acid, Temperature temperature, Chemistry chemistry) {
    Objects.requireNonNull(acid, "acid");
    Objects.requireNonNull(temperature, "temperature");
    return new EffectiveEquivalents(acid, temperature, chemistry);
  }

  /**
   * Returns the protons that a mole of the acid as it is added has given off at a pH.
   *
   * @param endPoint the pH
   * @return Eq/mol, between 0 and the acid's protons, rising with the pH
   */
  public double at(PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    double charge = acid.formula().map(f -> f.charge()).orElse(neutralCharge());
    return charge - meanCharge(endPoint);
  }

  /**
   * Returns the protons that a mole of the acid gives off between two pH values.
   *
   * @param from where it starts
   * @param to where it ends
   * @return Eq/mol; negative when {@code to} is the lower
   */
  public double between(PH from, PH to) {
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    return meanCharge(from) - meanCharge(to);
  }

  private int neutralCharge() {
    return acid.component().chargeWithoutProtons() + acid.component().protons();
  }

  private double meanCharge(PH pH) {
    Equilibria equilibria = Equilibria.of(List.of(acid.component()), temperature, chemistry);
    double water = equilibria.chargeAt(pH.value());
    equilibria.setTotal(0, 1);
    return equilibria.chargeAt(pH.value()) - water;
  }
}
