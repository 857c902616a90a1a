package org.brewchem.solution;

import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.internal.EquilibriumSystem.Activity;
import org.brewchem.substance.IonSizeParameters;
import org.brewchem.substance.PairSet;
import org.jspecify.annotations.Nullable;

/**
 * The rule by which the activity coefficient of a species follows from ionic strength.
 *
 * <p>Immutable. With A and B of water at the temperature, I the ionic strength in mol/kg and z the
 * charge:
 *
 * <ul>
 *   <li>Davies: log10 gamma = -A z² (√I/(1 + √I) - 0.3 I); 1 for neutral species. Source: C. W.
 *       Davies, Ion Association (1962), from memory.
 *   <li>ion size: log10 gamma = -A z² √I/(1 + B a √I) + b I with a and b of the species, b I for a
 *       neutral one. Source: Truesdell and Jones, J. Res. U.S. Geol. Survey 2 (1974) 233, as
 *       carried by phreeqc.dat.
 * </ul>
 */
public final class ActivityRule {

  /** Ionic strength in mol/kg beyond which the Davies equation is not trusted (common practice). */
  public static final double RANGE_MOLES_PER_KILOGRAM = 0.5;

  private static final ActivityRule DAVIES = new ActivityRule("Davies", null, 0);

  private final String name;
  private final @Nullable IonSizeParameters parameters;
  private final double otherNeutrals;

  private ActivityRule(String name, @Nullable IonSizeParameters parameters, double otherNeutrals) {
    this.name = name;
    this.parameters = parameters;
    this.otherNeutrals = otherNeutrals;
  }

  /**
   * Returns the Davies equation for every species.
   *
   * @return the rule
   */
  public static ActivityRule davies() {
    return DAVIES;
  }

  /**
   * Returns the ion-size equation for the species that have parameters and the Davies equation for
   * the other ions.
   *
   * @param parameters the species' parameters
   * @param otherNeutrals b of the neutral species without parameters, kg/mol, any finite value
   * @return the rule
   * @throws IllegalArgumentException if {@code otherNeutrals} is not finite
   */
  public static ActivityRule ionSize(IonSizeParameters parameters, double otherNeutrals) {
    Objects.requireNonNull(parameters, "parameters");
    return new ActivityRule(
        "ion size", parameters, Checks.finite("b of other neutrals", otherNeutrals, "kg/mol"));
  }

  /**
   * Returns the name of the rule.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * Returns the ion pairs that belong with this rule: a chemistry counts them unless others are
   * stated. With the ion-size equation the pairs of sodium and potassium count too; the Davies
   * equation already includes their effect.
   *
   * @return {@link PairSet#standard()} with Davies, {@link PairSet#withAlkaliPairs()} with ion
   *     sizes
   */
  public PairSet pairs() {
    return parameters == null ? PairSet.standard() : PairSet.withAlkaliPairs();
  }

  Activity of(String species, int charge) {
    if (parameters != null) {
      Optional<IonSizeParameters.Values> values = parameters.of(species);
      if (values.isPresent()) {
        return new Activity(values.get().angstroms(), values.get().slope());
      }
      if (charge == 0) {
        return new Activity(0, otherNeutrals);
      }
    }
    return Activity.DAVIES;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof ActivityRule other
        && name.equals(other.name)
        && Objects.equals(parameters, other.parameters)
        && Double.compare(otherNeutrals, other.otherNeutrals) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, parameters, otherNeutrals);
  }

  @Override
  public String toString() {
    return name;
  }
}
