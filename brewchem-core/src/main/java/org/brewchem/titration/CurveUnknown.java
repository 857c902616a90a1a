package org.brewchem.titration;

import org.brewchem.figure.Figure;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Solution;
import org.brewchem.solution.TitratedMixture;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;

/** A number of a solution that a {@link CurveFit} finds. */
interface CurveUnknown {

  /** What it is. */
  Figure<?> figure();

  /** What it is, with the name of its component. */
  default String name() {
    return figure().title();
  }

  /** Where the search starts. */
  double start();

  /** Size of a change that matters. */
  double scale();

  /**
   * Whether the charge at a stated pH is nearly linear in it, so that a start can be solved for.
   */
  boolean isLinear();

  /** Whether it may not fall below zero. */
  boolean isNonNegative();

  /** The solution with this number in it. */
  Solution applied(Solution solution, double value);

  /**
   * Puts the number into the sample of a mixture, where it is no constant.
   *
   * @param mixture the mixture
   * @param value the number
   * @param knownInertCharge what is known of the inert charge of the sample, Eq/kg
   */
  void put(TitratedMixture mixture, double value, double knownInertCharge);

  /**
   * The slope of the net charge of a mixture by this number of the sample.
   *
   * @param mixture the mixture as it was solved
   * @param share the share of the sample in it
   * @param perTotal the slopes of its charge by totals and inert charge
   */
  double chargeSlope(Equilibria mixture, double share, double[] perTotal);

  /** The total of a component, mol/kg. */
  record Total(Component component) implements CurveUnknown {
    @Override
    public Figure<?> figure() {
      return TitrationFigures.fittedTotal(component);
    }

    @Override
    public double start() {
      return 0;
    }

    @Override
    public double scale() {
      return 1e-3;
    }

    @Override
    public boolean isLinear() {
      return true;
    }

    @Override
    public boolean isNonNegative() {
      return true;
    }

    @Override
    public Solution applied(Solution solution, double value) {
      return solution.withTotal(component, Molality.ofMolesPerKilogram(value));
    }

    @Override
    public void put(TitratedMixture mixture, double value, double knownInertCharge) {
      mixture.setSample(component, value);
    }

    @Override
    public double chargeSlope(Equilibria mixture, double share, double[] perTotal) {
      return share * perTotal[mixture.indexOf(component)];
    }
  }

  /** The strong-ion difference that no component brings, Eq/kg, besides what is known. */
  record InertCharge() implements CurveUnknown {
    @Override
    public Figure<?> figure() {
      return TitrationFigures.FITTED_INERT_CHARGE;
    }

    @Override
    public double start() {
      return 0;
    }

    @Override
    public double scale() {
      return 1e-3;
    }

    @Override
    public boolean isLinear() {
      return true;
    }

    @Override
    public boolean isNonNegative() {
      return false;
    }

    @Override
    public Solution applied(Solution solution, double value) {
      return solution.withInertCharge(
          ChargeConcentration.ofEquivalentsPerLitre(value * solution.kilogramsPerLitre()));
    }

    @Override
    public void put(TitratedMixture mixture, double value, double knownInertCharge) {
      mixture.setSampleInertCharge(knownInertCharge + value);
    }

    @Override
    public double chargeSlope(Equilibria mixture, double share, double[] perTotal) {
      return share * perTotal[perTotal.length - 1];
    }
  }

  /** The pKa of a component of one step. */
  record DissociationConstant(Component component, double start) implements CurveUnknown {
    @Override
    public Figure<?> figure() {
      return TitrationFigures.fittedPKa(component);
    }

    @Override
    public double scale() {
      return 1;
    }

    @Override
    public boolean isLinear() {
      return false;
    }

    @Override
    public boolean isNonNegative() {
      return false;
    }

    @Override
    public Solution applied(Solution solution, double value) {
      Chemistry chemistry = solution.chemistry();
      return solution.under(
          chemistry.withConstants(
              chemistry.constants().with(component, EquilibriumConstant.ofLog10(-value))));
    }

    @Override
    public void put(TitratedMixture mixture, double value, double knownInertCharge) {
      // A constant is compiled into the mixture.
    }

    @Override
    public double chargeSlope(Equilibria mixture, double share, double[] perTotal) {
      return mixture.components().contains(component)
          ? mixture.chargeSlopeByPKa(mixture.indexOf(component), 0)
          : 0;
    }
  }
}
