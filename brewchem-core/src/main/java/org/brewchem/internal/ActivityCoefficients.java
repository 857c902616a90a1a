package org.brewchem.internal;

import java.util.Arrays;

/**
 * The activity coefficients of the groups of an {@link EquilibriumSystem} at an ionic strength.
 *
 * <p>In the course of a solve the exponents change less and less, so that the factors are carried
 * on by a short series instead of being computed again.
 */
final class ActivityCoefficients {

  /** Coefficient of ionic strength in the Davies equation, kg/mol. */
  private static final double DAVIES = 0.3;

  private static final double LN10 = Math.log(10);

  /** 1/gamma of each group. */
  final double[] inverse;

  /** Slope of ln(1/gamma) of each group against the logarithm of ionic strength. */
  final double[] slope;

  /** The part of the slope by the Davies equation that multiplies the squared charge. */
  double daviesSlope;

  private final EquilibriumSystem system;
  private final double[] exponent;
  private double ionic;
  private double daviesFactor = 1;
  private double daviesExponent;

  ActivityCoefficients(EquilibriumSystem system) {
    this.system = system;
    int groups = system.groupChargeSquared.length;
    inverse = new double[groups];
    Arrays.fill(inverse, 1);
    slope = new double[groups];
    exponent = new double[groups];
  }

  /** Starts the factors again, so that a solve does not depend on the one before. */
  void forget() {
    ionic = 0;
    daviesFactor = 1;
    daviesExponent = 0;
    if (!system.byCharge) {
      Arrays.fill(exponent, 0);
      Arrays.fill(inverse, 1);
    }
  }

  /** Moves to an ionic strength, mol/kg. */
  void at(double ionicStrength) {
    if (system.ideal || ionicStrength == ionic) {
      return;
    }
    ionic = ionicStrength;
    double root = Math.sqrt(ionicStrength);
    double a = LN10 * system.debyeHueckelA;
    double rational = 1 / (1 + root);
    double davies = a * daviesShape(root, rational, ionicStrength);
    daviesSlope = a * daviesSlope(root, rational, ionicStrength);
    daviesFactor *= exponential(davies - daviesExponent);
    daviesExponent = davies;
    double one = daviesFactor;
    double two = one * one;
    double four = two * two;
    double[] squares = system.groupChargeSquared;
    for (int g = 0; g < squares.length; g++) {
      double z2 = squares[g];
      if (system.daviesGroup[g]) {
        slope[g] = z2 * daviesSlope;
        inverse[g] =
            z2 == 1
                ? one
                : z2 == 4
                    ? four
                    : z2 == 0 ? 1 : z2 == 9 ? four * four * one : Math.exp(davies * z2);
      } else {
        double fraction = 1 / (1 + system.debyeHueckelB * system.groupIonSize[g] * root);
        double linear = LN10 * system.groupLinear[g] * ionicStrength;
        double limiting = a * z2 * root * fraction;
        double now = limiting - linear;
        inverse[g] *= exponential(now - exponent[g]);
        exponent[g] = now;
        slope[g] = 0.5 * limiting * fraction - linear;
      }
    }
  }

  /**
   * The part of -log10 gamma that multiplies A and the squared charge in the Davies equation.
   *
   * @param root square root of the ionic strength
   * @param rational 1/(1 + root)
   */
  private static double daviesShape(double root, double rational, double ionicStrength) {
    return root * rational - DAVIES * ionicStrength;
  }

  /** The slope of the shape against the logarithm of ionic strength. */
  private static double daviesSlope(double root, double rational, double ionicStrength) {
    return 0.5 * root * rational * rational - DAVIES * ionicStrength;
  }

  /**
   * 1/gamma of a univalent ion by the Davies equation, and the slope of its logarithm against that
   * of ionic strength, for many ionic strengths up to 1 mol/kg.
   */
  static void davies(double debyeHueckelA, double[] ionic, double[] slope, double[] inverse) {
    double a = LN10 * debyeHueckelA;
    for (int l = 0; l < ionic.length; l++) {
      double root = Math.sqrt(ionic[l]);
      double rational = 1 / (1 + root);
      slope[l] = a * daviesSlope(root, rational, ionic[l]);
      inverse[l] = a * daviesShape(root, rational, ionic[l]);
    }
    for (int l = 0; l < ionic.length; l++) {
      // e^x as the fourth power of a series in x/4, which is below 0.1
      double x = 0.25 * inverse[l];
      double x2 = x * x;
      double x4 = x2 * x2;
      double low = (1 + x) + x2 * (1.0 / 2 + x * (1.0 / 6));
      double high = (1.0 / 24 + x * (1.0 / 120)) + x2 * (1.0 / 720 + x * (1.0 / 5040));
      double e = low + x4 * (high + x4 * (1.0 / 40320 + x * (1.0 / 362880)));
      double e2 = e * e;
      inverse[l] = e2 * e2;
    }
  }

  /** log10 gamma of a univalent ion by the Davies equation. */
  static double davies(double debyeHueckelA, double ionicStrength) {
    double root = Math.sqrt(ionicStrength);
    return -debyeHueckelA * daviesShape(root, 1 / (1 + root), ionicStrength);
  }

  /** e^x, by its series where x is small enough for eight terms to reach full precision. */
  private static double exponential(double x) {
    if (x > 0.03 || x < -0.03) {
      return Math.exp(x);
    }
    double x2 = x * x;
    double x4 = x2 * x2;
    return (1 + x)
        + x2 * (1.0 / 2 + x * (1.0 / 6))
        + x4 * ((1.0 / 24 + x * (1.0 / 120)) + x2 * (1.0 / 720 + x * (1.0 / 5040)));
  }
}
