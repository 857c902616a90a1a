package org.brewchem.internal;

/**
 * The closed forms of the trade on plain numbers, for the values of one sample and for whole
 * columns. Their sources stand with the classes that offer them.
 */
public final class ClosedForms {

  /** Kolbach's divisor of the calcium hardness. */
  public static final double KOLBACH_CALCIUM_DIVISOR = 3.5;

  /** Kolbach's divisor of the magnesium hardness. */
  public static final double KOLBACH_MAGNESIUM_DIVISOR = 7;

  private ClosedForms() {}

  /**
   * Residual alkalinity after Kolbach; all in the same equivalents, such as mEq/L.
   *
   * @param alkalinity the alkalinity
   * @param calciumHardness the calcium hardness
   * @param magnesiumHardness the magnesium hardness
   */
  public static double residualAlkalinity(
      double alkalinity, double calciumHardness, double magnesiumHardness) {
    return alkalinity
        - calciumHardness / KOLBACH_CALCIUM_DIVISOR
        - magnesiumHardness / KOLBACH_MAGNESIUM_DIVISOR;
  }

  /**
   * Temporary hardness: as much of the total as there is alkalinity for.
   *
   * @param totalHardness the total hardness
   * @param alkalinity the alkalinity, in the same equivalents
   */
  public static double temporaryHardness(double totalHardness, double alkalinity) {
    return Math.min(totalHardness, alkalinity);
  }

  /**
   * Error of an ion balance relative to the sum of all ions, in per cent; 0 if there are none.
   *
   * @param cations the equivalents of all cations, 0 or more
   * @param anions the equivalents of all anions, 0 or more
   */
  public static double ionBalancePercentage(double cations, double anions) {
    double all = cations + anions;
    return all == 0 ? 0 : 100 * (cations - anions) / all;
  }

  /**
   * Activity coefficient of a univalent ion in water at 25 °C by the Davies equation.
   *
   * @param ionicStrength mol/kg, 0 or more
   * @return the coefficient
   */
  public static double univalentActivityCoefficient(double ionicStrength) {
    return Math.pow(
        10, ActivityCoefficients.davies(WaterProperties.debyeHueckelA(298.15), ionicStrength));
  }

  /**
   * Acidity or alkalinity found by titration, mEq/L.
   *
   * @param equivalentsPerLitre the titrant, Eq/L
   * @param netMillilitres the titre without the blank, mL
   * @param predilution final volume over own volume of the sample before it was taken, 1 or more
   * @param sampleMillilitres the sample taken, mL
   */
  public static double titratedMilliequivalentsPerLitre(
      double equivalentsPerLitre,
      double netMillilitres,
      double predilution,
      double sampleMillilitres) {
    return 1000 * equivalentsPerLitre * netMillilitres * predilution / sampleMillilitres;
  }
}
