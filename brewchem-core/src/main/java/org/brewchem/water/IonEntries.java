package org.brewchem.water;

import java.util.Objects;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.MassConcentration;

/**
 * The concentrations of a report, each stated once. Mutable, for one thread.
 *
 * @param <B> the builder that these methods return
 */
abstract class IonEntries<B extends IonEntries<B>> {

  private final Readings readings;

  IonEntries(Readings readings) {
    this.readings = readings;
  }

  abstract B self();

  static <T> T given(T standardUncertainty) {
    return Objects.requireNonNull(standardUncertainty, "standardUncertainty");
  }

  /**
   * States a concentration.
   *
   * @param constituent what is stated, and on which basis
   * @param concentration on that basis
   * @return this builder
   * @throws IllegalStateException if it is stated already, on this or another basis
   */
  public B concentration(Constituent constituent, MassConcentration concentration) {
    readings.concentration(constituent, concentration, null);
    return self();
  }

  /**
   * States a concentration with its uncertainty.
   *
   * @param constituent what is stated, and on which basis
   * @param concentration on that basis
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already, on this or another basis
   */
  public B concentration(
      Constituent constituent,
      MassConcentration concentration,
      MassConcentration standardUncertainty) {
    readings.concentration(constituent, concentration, given(standardUncertainty));
    return self();
  }

  /**
   * States a concentration in moles. A mole of it on any basis is a mole of the ion.
   *
   * @param constituent what is stated
   * @param concentration its amount
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B concentration(Constituent constituent, AmountConcentration concentration) {
    return concentration(constituent, Readings.mass(constituent, concentration));
  }

  /**
   * States a concentration in moles, with its uncertainty.
   *
   * @param constituent what is stated
   * @param concentration its amount
   * @param standardUncertainty its standard uncertainty
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B concentration(
      Constituent constituent,
      AmountConcentration concentration,
      AmountConcentration standardUncertainty) {
    return concentration(
        constituent,
        Readings.mass(constituent, concentration),
        Readings.mass(constituent, given(standardUncertainty)));
  }

  /**
   * States a concentration in equivalents of the ion as its formula is written: three in a mole of
   * phosphate.
   *
   * @param constituent what is stated; not silica
   * @param concentration its equivalents
   * @return this builder
   * @throws IllegalStateException if it is stated already
   * @throws IllegalArgumentException for silica, which has no charge
   */
  public B concentration(Constituent constituent, ChargeConcentration concentration) {
    return concentration(constituent, Readings.mass(constituent, concentration));
  }

  /**
   * States that a concentration lies below a limit, as a report that prints "&lt; 0.5" does. It
   * stays an interval from 0 to the limit: no figure takes it as a number, {@link
   * WaterReport#range} tells what it leaves open, and the ion balance counts up to the limit.
   *
   * @param constituent what is stated, and on which basis
   * @param limit above 0, on that basis
   * @return this builder
   * @throws IllegalStateException if it is stated already, on this or another basis
   * @throws IllegalArgumentException if the limit is 0
   */
  public B below(Constituent constituent, MassConcentration limit) {
    readings.below(constituent, limit);
    return self();
  }

  /**
   * States the mean of a year with its lowest and highest value. The mean is what counts; {@link
   * WaterReport#range} tells what the others leave open.
   *
   * @param constituent what is stated, and on which basis
   * @param lowest the lowest value
   * @param mean the mean
   * @param highest the highest value
   * @return this builder
   * @throws IllegalStateException if it is stated already, on this or another basis
   * @throws IllegalArgumentException if the three are not in ascending order
   */
  public B yearly(
      Constituent constituent,
      MassConcentration lowest,
      MassConcentration mean,
      MassConcentration highest) {
    readings.yearly(constituent, lowest, mean, highest);
    return self();
  }

  /**
   * States the calcium.
   *
   * @param concentration as Ca
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B calcium(MassConcentration concentration) {
    return concentration(Constituent.CALCIUM, concentration);
  }

  /**
   * States the calcium, with its uncertainty.
   *
   * @param concentration as Ca
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B calcium(MassConcentration concentration, MassConcentration standardUncertainty) {
    return concentration(Constituent.CALCIUM, concentration, standardUncertainty);
  }

  /**
   * States the magnesium.
   *
   * @param concentration as Mg
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B magnesium(MassConcentration concentration) {
    return concentration(Constituent.MAGNESIUM, concentration);
  }

  /**
   * States the magnesium, with its uncertainty.
   *
   * @param concentration as Mg
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B magnesium(MassConcentration concentration, MassConcentration standardUncertainty) {
    return concentration(Constituent.MAGNESIUM, concentration, standardUncertainty);
  }

  /**
   * States the sodium.
   *
   * @param concentration as Na
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B sodium(MassConcentration concentration) {
    return concentration(Constituent.SODIUM, concentration);
  }

  /**
   * States the sodium, with its uncertainty.
   *
   * @param concentration as Na
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B sodium(MassConcentration concentration, MassConcentration standardUncertainty) {
    return concentration(Constituent.SODIUM, concentration, standardUncertainty);
  }

  /**
   * States the potassium.
   *
   * @param concentration as K
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B potassium(MassConcentration concentration) {
    return concentration(Constituent.POTASSIUM, concentration);
  }

  /**
   * States the potassium, with its uncertainty.
   *
   * @param concentration as K
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B potassium(MassConcentration concentration, MassConcentration standardUncertainty) {
    return concentration(Constituent.POTASSIUM, concentration, standardUncertainty);
  }

  /**
   * States the sulfate.
   *
   * @param concentration as SO4
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B sulfate(MassConcentration concentration) {
    return concentration(Constituent.SULFATE, concentration);
  }

  /**
   * States the sulfate, with its uncertainty.
   *
   * @param concentration as SO4
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B sulfate(MassConcentration concentration, MassConcentration standardUncertainty) {
    return concentration(Constituent.SULFATE, concentration, standardUncertainty);
  }

  /**
   * States the sulfate as the sulfur in it.
   *
   * @param concentration as S
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B sulfateAsSulfur(MassConcentration concentration) {
    return concentration(Constituent.SULFATE_AS_SULFUR, concentration);
  }

  /**
   * States the sulfate as the sulfur in it, with its uncertainty.
   *
   * @param concentration as S
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B sulfateAsSulfur(MassConcentration concentration, MassConcentration standardUncertainty) {
    return concentration(Constituent.SULFATE_AS_SULFUR, concentration, standardUncertainty);
  }

  /**
   * States the chloride.
   *
   * @param concentration as Cl
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B chloride(MassConcentration concentration) {
    return concentration(Constituent.CHLORIDE, concentration);
  }

  /**
   * States the chloride, with its uncertainty.
   *
   * @param concentration as Cl
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B chloride(MassConcentration concentration, MassConcentration standardUncertainty) {
    return concentration(Constituent.CHLORIDE, concentration, standardUncertainty);
  }

  /**
   * States the nitrate.
   *
   * @param concentration as NO3
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B nitrate(MassConcentration concentration) {
    return concentration(Constituent.NITRATE, concentration);
  }

  /**
   * States the nitrate, with its uncertainty.
   *
   * @param concentration as NO3
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B nitrate(MassConcentration concentration, MassConcentration standardUncertainty) {
    return concentration(Constituent.NITRATE, concentration, standardUncertainty);
  }

  /**
   * States the nitrate as the nitrogen in it.
   *
   * @param concentration as N
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B nitrateAsNitrogen(MassConcentration concentration) {
    return concentration(Constituent.NITRATE_AS_NITROGEN, concentration);
  }

  /**
   * States the nitrate as the nitrogen in it, with its uncertainty.
   *
   * @param concentration as N
   * @param standardUncertainty its standard uncertainty, on the same basis
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B nitrateAsNitrogen(
      MassConcentration concentration, MassConcentration standardUncertainty) {
    return concentration(Constituent.NITRATE_AS_NITROGEN, concentration, standardUncertainty);
  }
}
