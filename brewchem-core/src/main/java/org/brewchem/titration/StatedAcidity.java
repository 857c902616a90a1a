package org.brewchem.titration;

import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.uncertainty.UncertainValue;

/**
 * An acidity stated as an acid, with its uncertainty and end point: what stands in a laboratory
 * report. Immutable. The equivalent of the acid is exact.
 */
public final class StatedAcidity {

  private final UncertainValue milliequivalentsPerLitre;
  private final AcidBasis basis;
  private final PH endPoint;

  StatedAcidity(UncertainValue milliequivalentsPerLitre, AcidBasis basis, PH endPoint) {
    this.milliequivalentsPerLitre = milliequivalentsPerLitre;
    this.basis = basis;
    this.endPoint = endPoint;
  }

  /**
   * Returns the acid that the acidity is stated as.
   *
   * @return the basis
   */
  public AcidBasis basis() {
    return basis;
  }

  /**
   * Returns the end point.
   *
   * @return the pH that the titration ended at
   */
  public PH endPoint() {
    return endPoint;
  }

  /**
   * Returns the acidity as a mass concentration of the acid.
   *
   * @return the concentration
   * @throws IllegalArgumentException if the acidity is negative
   */
  public MassConcentration concentration() {
    return MassConcentration.ofGramsPerLitre(gramsPerLitre().value());
  }

  /**
   * Returns the acidity per litre.
   *
   * @return the value with its uncertainty in g/L of the acid
   */
  public UncertainValue gramsPerLitre() {
    return stated(1, "g/L");
  }

  /**
   * Returns the acidity per 100 mL.
   *
   * @return the value with its uncertainty in g/100 mL of the acid
   */
  public UncertainValue gramsPer100Millilitres() {
    return stated(0.1, "g/100 mL");
  }

  /**
   * Returns the acidity per mass of sample.
   *
   * @param density the density of the sample, taken as exact
   * @return the value with its uncertainty in g/100 g of the acid
   */
  public UncertainValue gramsPer100Grams(Density density) {
    return stated(100 / density.inKilogramsPerCubicMetre(), "g/100 g");
  }

  private UncertainValue stated(double factor, String unit) {
    return milliequivalentsPerLitre.times(
        basis.gramsPerEquivalent() / 1000 * factor,
        unit + " as " + basis.name() + ", to " + endPoint);
  }

  /** Prints such as {@code 2.636 g/L as lactic acid, to pH 8.2, U 0.012 (k = 2)}. */
  @Override
  public String toString() {
    return gramsPerLitre().expanded(2).toString();
  }
}
