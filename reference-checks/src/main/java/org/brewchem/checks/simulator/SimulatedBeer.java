package org.brewchem.checks.simulator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A beer as lists of totals, and its balance of charge: a second algorithm beside the library's
 * kernel, with constants, activity coefficients and a root search of its own.
 *
 * <p>Unknown is the charge of the strong univalent ions that a pH wants; what it is more or less
 * than the beer's own came with the titrant and counts in the ionic strength beside it. At a given
 * pH the free metals and the ionic strength are found by repeated substitution; the pH for a given
 * charge by regula falsi in the form called Illinois. Activity coefficients are Davies', those of
 * uncharged species 1; the ion product of water and the slope of Debye and Hückel are drawn from
 * values at 20 and 25 °C in 1/T. Amounts in mol per kg of water.
 */
final class SimulatedBeer {

  /** kg of water per litre, of a liquid counted as water at 20 °C (IAPWS R6-95: 0.998207). */
  static final double KILOGRAMS_PER_LITRE = 0.998207;

  private static final double ZERO_CELSIUS = 273.15;
  private static final double GAS_CONSTANT_LN10 = 8.314462618e-3 * Math.log(10);

  /** pKw at 20 and 25 °C (IAPWS R11-07). */
  private static final double PKW_20 = 14.1646;

  private static final double PKW_25 = 13.9945;

  /** Relative permittivity at 20 and 25 °C (IAPWS R8-97). */
  private static final double PERMITTIVITY_20 = 80.2226;

  private static final double PERMITTIVITY_25 = 78.4085;

  private static final double DAVIES = 0.3;
  private static final int HIGHEST_CHARGE = 4;
  private static final int PASSES = 500;
  private static final double SETTLED = 1e-12;
  private static final int STEPS = 200;
  private static final double HIGHEST_PH = 15;

  /** Half the first bracket around the last pH that was found. */
  private static final double NEAR = 0.1;

  private final double celsius;
  private final List<Ligand> ligands;
  private final double[] totals;
  private final double calcium;
  private final double magnesium;
  private final double salt;
  private final double strong;

  /** Constants at the temperature: cumulative protonation and pairs, by ligand and protons. */
  private final double[][] protonation;

  private final double[][] calciumPairs;
  private final double[][] magnesiumPairs;
  private final double slope;
  private final double ionProduct;

  /** Where the last substitution ended, from which the next one starts. */
  private double ionic = 0.03;

  private double lastPH = 4.3;

  private double freeCalcium;
  private double freeMagnesium;
  private double calciumShare = 1;
  private double magnesiumShare = 1;

  private SimulatedBeer(
      double celsius,
      List<Ligand> ligands,
      double[] totals,
      double calcium,
      double magnesium,
      double salt,
      double strong) {
    this.celsius = celsius;
    this.ligands = List.copyOf(ligands);
    this.totals = totals.clone();
    this.calcium = calcium;
    this.magnesium = magnesium;
    this.salt = salt;
    this.strong = strong;
    double kelvin = celsius + ZERO_CELSIUS;
    double place = (1 / kelvin - 1 / (20 + ZERO_CELSIUS)) / (1 / 298.15 - 1 / (20 + ZERO_CELSIUS));
    ionProduct = Math.pow(10, -(PKW_20 + place * (PKW_25 - PKW_20)));
    double permittivity = PERMITTIVITY_20 + place * (PERMITTIVITY_25 - PERMITTIVITY_20);
    slope = 1.8248e6 * Math.sqrt(KILOGRAMS_PER_LITRE) / Math.pow(permittivity * kelvin, 1.5);
    protonation = new double[totals.length][];
    calciumPairs = new double[totals.length][];
    magnesiumPairs = new double[totals.length][];
    for (int j = 0; j < totals.length; j++) {
      Ligand ligand = ligands.get(j);
      int steps = ligand.pKa().length;
      protonation[j] = new double[steps + 1];
      protonation[j][0] = 1;
      for (int n = 1; n <= steps; n++) {
        double atTemperature =
            ligand.pKa()[steps - n]
                + ligand.enthalpy()[steps - n] / GAS_CONSTANT_LN10 * (1 / kelvin - 1 / 298.15);
        protonation[j][n] = protonation[j][n - 1] * Math.pow(10, atTemperature);
      }
      calciumPairs[j] = constants(ligand.calcium());
      magnesiumPairs[j] = constants(ligand.magnesium());
    }
  }

  private static double[] constants(double[] logarithms) {
    double[] constants = new double[logarithms.length];
    for (int n = 0; n < constants.length; n++) {
      constants[n] = Double.isNaN(logarithms[n]) ? 0 : Math.pow(10, logarithms[n]);
    }
    return constants;
  }

  /** Returns water at a temperature. */
  static SimulatedBeer water(double celsius) {
    return new SimulatedBeer(celsius, List.of(), new double[0], 0, 0, 0, 0);
  }

  /** Returns this beer with more of an acid or group, mol/kg. */
  SimulatedBeer with(Ligand ligand, double more) {
    int known = ligands.indexOf(ligand);
    if (known >= 0) {
      double[] sums = totals.clone();
      sums[known] += more;
      return new SimulatedBeer(celsius, ligands, sums, calcium, magnesium, salt, strong);
    }
    List<Ligand> all = new ArrayList<>(ligands);
    all.add(ligand);
    double[] sums = Arrays.copyOf(totals, totals.length + 1);
    sums[totals.length] = more;
    return new SimulatedBeer(celsius, all, sums, calcium, magnesium, salt, strong);
  }

  /** Returns this beer with other metals, mol/kg. */
  SimulatedBeer withMetals(double otherCalcium, double otherMagnesium) {
    return new SimulatedBeer(celsius, ligands, totals, otherCalcium, otherMagnesium, salt, strong);
  }

  /** Returns this beer with another amount of univalent salt besides all else, mol/kg. */
  SimulatedBeer withSalt(double other) {
    return new SimulatedBeer(celsius, ligands, totals, calcium, magnesium, other, strong);
  }

  /** Returns this beer with more charge of strong univalent ions, Eq/kg; negative by an acid. */
  SimulatedBeer withStrong(double more) {
    return new SimulatedBeer(celsius, ligands, totals, calcium, magnesium, salt, strong + more);
  }

  /** Returns this beer at another temperature, its contents as they are. */
  SimulatedBeer at(double otherCelsius) {
    return new SimulatedBeer(otherCelsius, ligands, totals, calcium, magnesium, salt, strong);
  }

  /** Returns this beer with the strong ions that give it a pH. */
  SimulatedBeer closedTo(double pH) {
    return withStrong(strongAt(pH, 1) - strong);
  }

  /** Returns this beer with metals that hold nothing. */
  SimulatedBeer withoutPairs() {
    return new SimulatedBeer(
        celsius,
        ligands.stream().map(Ligand::withoutPairs).toList(),
        totals,
        calcium,
        magnesium,
        salt,
        strong);
  }

  List<Ligand> ligands() {
    return ligands;
  }

  double total(int ligand) {
    return totals[ligand];
  }

  double calcium() {
    return calcium;
  }

  double magnesium() {
    return magnesium;
  }

  double salt() {
    return salt;
  }

  /** Returns the charge of the strong univalent ions, Eq/kg. */
  double strong() {
    return strong;
  }

  double pH() {
    return pH(0, 1);
  }

  /** Returns the base, Eq/kg, that brings this beer to a pH without diluting it. */
  double baseTo(double pH) {
    return strongAt(pH, 1) - strong;
  }

  /** Returns the base per kg of the undiluted beer that brings it to a pH at a share of beer. */
  double baseTo(double pH, double share) {
    return strongAt(pH, share) / share - strong;
  }

  /**
   * Returns the pH after a base was added.
   *
   * @param base Eq per kg of the undiluted beer
   * @param share of the beer in the diluted mixture
   */
  double pH(double base, double share) {
    double wanted = share * (strong + base);
    double low = lastPH - NEAR;
    double below = strongAt(low, share) - wanted;
    for (double wide = NEAR; below >= 0; wide = wider(wide)) {
      low = lower(low, wide, wanted);
      below = strongAt(low, share) - wanted;
    }
    double high = lastPH + NEAR;
    double above = strongAt(high, share) - wanted;
    for (double wide = NEAR; above <= 0; wide = wider(wide)) {
      high = -lower(-high, wide, wanted);
      above = strongAt(high, share) - wanted;
    }
    for (int step = 0; step < STEPS && high - low > 1e-11; step++) {
      double middle =
          step % 3 == 2 ? (low + high) / 2 : low - below * (high - low) / (above - below);
      double there = strongAt(middle, share) - wanted;
      if (Math.abs(there) < 1e-14) {
        lastPH = middle;
        return middle;
      }
      if (there < 0) {
        low = middle;
        below = there;
        above = step % 3 == 2 ? above : above / 2;
      } else {
        high = middle;
        above = there;
        below = step % 3 == 2 ? below : below / 2;
      }
    }
    lastPH = (low + high) / 2;
    return lastPH;
  }

  /** Up to a whole pH a step, so that the bracket stays where activity coefficients make sense. */
  private static double wider(double wide) {
    return Math.min(2 * wide, 1);
  }

  private static double lower(double end, double by, double wanted) {
    if (Math.abs(end) > HIGHEST_PH) {
      throw new IllegalStateException("no pH for " + wanted + " Eq/kg");
    }
    return end - by;
  }

  /** Returns the charge of the strong univalent ions that the mixture has at a pH, Eq/kg. */
  private double strongAt(double pH, double share) {
    double hydrogen = Math.pow(10, -pH);
    double[] gamma = new double[HIGHEST_CHARGE + 1];
    for (int pass = 0; pass < PASSES; pass++) {
      double root = Math.sqrt(ionic);
      double term = -slope * (root / (1 + root) - DAVIES * ionic);
      gamma[0] = 1;
      gamma[1] = Math.exp(Math.log(10) * term);
      gamma[2] = gamma[1] * gamma[1] * gamma[1] * gamma[1];
      gamma[3] = gamma[2] * gamma[2] * gamma[1];
      gamma[4] = gamma[2] * gamma[2] * gamma[2] * gamma[2];
      freeCalcium = share * calcium * calciumShare;
      freeMagnesium = share * magnesium * magnesiumShare;
      double freeHydrogen = hydrogen / gamma[1];
      double freeHydroxide = ionProduct / hydrogen / gamma[1];
      double charge = freeHydrogen - freeHydroxide + 2 * (freeCalcium + freeMagnesium);
      double squares = freeHydrogen + freeHydroxide + 4 * (freeCalcium + freeMagnesium);
      double boundCalcium = 0;
      double boundMagnesium = 0;
      for (int j = 0; j < totals.length; j++) {
        int z0 = ligands.get(j).charge();
        double sum = 0;
        double sumCharge = 0;
        double sumSquares = 0;
        double sumCalcium = 0;
        double sumMagnesium = 0;
        double power = 1;
        for (int n = 0; n < protonation[j].length; n++) {
          int z = z0 + n;
          double activity = protonation[j][n] * power;
          power *= hydrogen;
          double form = activity / gamma[Math.abs(z)];
          double perPair = activity / gamma[Math.abs(z + 2)] * gamma[2];
          double withCalcium = calciumPairs[j][n] * perPair * freeCalcium;
          double withMagnesium = magnesiumPairs[j][n] * perPair * freeMagnesium;
          double pairs = withCalcium + withMagnesium;
          sum += form + pairs;
          sumCharge += z * form + (z + 2) * pairs;
          sumSquares += z * z * form + (z + 2) * (z + 2) * pairs;
          sumCalcium += withCalcium;
          sumMagnesium += withMagnesium;
        }
        double free = share * totals[j] / sum;
        charge += free * sumCharge;
        squares += free * sumSquares;
        boundCalcium += free * sumCalcium;
        boundMagnesium += free * sumMagnesium;
      }
      double nextCalcium = freeCalcium == 0 ? 1 : freeCalcium / (freeCalcium + boundCalcium);
      double nextMagnesium =
          freeMagnesium == 0 ? 1 : freeMagnesium / (freeMagnesium + boundMagnesium);
      double added = -charge - share * strong;
      double nextIonic = (squares + share * Math.abs(strong) + Math.abs(added)) / 2 + share * salt;
      double moved =
          Math.abs(nextIonic - ionic)
              + Math.abs(nextCalcium - calciumShare)
              + Math.abs(nextMagnesium - magnesiumShare);
      ionic = nextIonic;
      calciumShare = nextCalcium;
      magnesiumShare = nextMagnesium;
      if (moved < SETTLED) {
        return -charge;
      }
    }
    throw new IllegalStateException("the free metals have not settled at pH " + pH);
  }
}
