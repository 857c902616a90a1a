package org.brewchem.internal;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Solves the proton balances of many rows of one {@link EquilibriumSystem} side by side: each step
 * of {@link EquilibriumSolver}'s iteration is a small loop over all rows, which a processor does
 * for several at once.
 *
 * <p>It serves systems without metals in which charge alone settles every activity coefficient. The
 * constants and the coarse grid of starts are those of the system; the residuals, their slopes and
 * the tolerance are those of the solver of single rows. A row that has settled is frozen, so that
 * its bits depend on no other row. One that does not settle in a few steps, or at an ionic strength
 * above {@link #MOST_IONIC}, is left to the other solver.
 *
 * <p>A solver is a work space: it is mutable and belongs to one thread. Nothing is allocated per
 * solve. Amounts are mol per kg of water, charges are equivalents per kg.
 */
public final class LockstepSolver {

  /** Rows that are solved side by side, a power of 2. */
  public static final int LANES = 256;

  /** The highest ionic strength of a row that is solved here, mol/kg. */
  static final double MOST_IONIC = 1;

  private static final int MOST_STEPS = 7;
  private static final int MOST_CHARGE = 4;

  /** The points of the grid of starts that are used, pH 2 to 12, and that of ionic strength. */
  private static final int FIRST_POINT = 4;

  private static final int LAST_POINT = 24;
  private static final int MIDDLE_POINT = 14;

  private final EquilibriumSystem system;
  private final double[][] totals;
  private final double[] inertCharge = new double[LANES];
  private final double[] strongCharge = new double[LANES];
  private final double[] strongSquares = new double[LANES];
  private final double[] proton = new double[LANES];
  private final double[] ionic = new double[LANES];

  /** By protons: powers of the proton activity. */
  private final double[][] power;

  /** By charge without its sign: inverse activity coefficients. */
  private final double[][] inverse;

  private final double[] slope = new double[LANES];
  private final double[] charge = new double[LANES];
  private final double[] squares = new double[LANES];
  private final double[] second = new double[LANES];
  private final double[] third = new double[LANES];
  private final double[] fourth = new double[LANES];
  private final double[] sum = new double[LANES];
  private final double[] sum1 = new double[LANES];
  private final double[] sum2 = new double[LANES];
  private final double[] sum3 = new double[LANES];
  private final double[] sum4 = new double[LANES];
  private final double[][] sums = {sum, sum1, sum2, sum3, sum4};
  private final double[] crossed = new double[LANES];
  private final double[] protonStep = crossed;
  private final double[] ionicStep = new double[LANES];
  private final double[] excess = new double[LANES];

  /** 1 for a row that moves, 0 for one that has settled. */
  private final double[] moving = new double[LANES];

  /**
   * Makes a work space for this system, with all totals zero.
   *
   * @throws IllegalArgumentException if the system is none that it {@link #serves}
   */
  public LockstepSolver(EquilibriumSystem system) {
    if (!serves(system)) {
      throw new IllegalArgumentException("system: has metals, ion sizes or charges above 4");
    }
    this.system = system;
    totals = new double[system.componentCount][LANES];
    power = new double[system.protonSpan + system.minProtons][];
    for (int p = 0; p < power.length; p++) {
      power[p] = p == 1 ? proton : new double[LANES];
    }
    Arrays.fill(power[0], 1);
    inverse = new double[mostCharge(system) > 2 ? MOST_CHARGE + 1 : 3][LANES];
    for (double[] each : inverse) {
      Arrays.fill(each, 1);
    }
  }

  /** Whether rows of this system can be solved side by side. */
  public static boolean serves(EquilibriumSystem system) {
    return system.byCharge
        && system.laddersWithoutMetals
        && system.metal.length == 0
        && mostCharge(system) <= MOST_CHARGE;
  }

  private static int mostCharge(EquilibriumSystem system) {
    return IntStream.range(0, system.speciesCount).map(s -> chargeOf(system, s)).max().orElse(1);
  }

  private static int chargeOf(EquilibriumSystem system, int species) {
    return (int)
        Math.abs(system.numbers[species * EquilibriumSystem.NUMBERS + EquilibriumSystem.CHARGE]);
  }

  /** The totals of a component by row, mol/kg, for the caller to fill; each must be 0 or more. */
  public double[] totals(int component) {
    return totals[component];
  }

  /** The charge of inert univalent ions by row, Eq/kg, for the caller to fill. */
  public double[] inertCharge() {
    return inertCharge;
  }

  /**
   * Finds the pH at which each row is neutral, from its totals alone.
   *
   * @param rows how many of the rows are wanted, from the first
   * @return whether all of them have settled; {@link #isSettled} tells which
   */
  public boolean solve(int rows) {
    strongIons();
    start();
    Arrays.fill(moving, 1);
    int left = rows;
    for (int step = 0; step < MOST_STEPS && left > 0; step++) {
      activities();
      powers();
      ownIons(system.ionProduct, inverse[1]);
      for (int k = 0; k < system.ligand.length; k++) {
        addLigand(k);
      }
      steps();
      move();
      left = freeze(rows);
    }
    return left == 0;
  }

  /** Whether the last solve found this row. */
  public boolean isSettled(int row) {
    return moving[row] == 0;
  }

  /** -log10 of the H+ activity of a row that has settled. */
  public double ph(int row) {
    return -Math.log10(proton[row]);
  }

  /** Ionic strength of a row that has settled, mol/kg. */
  public double ionicStrength(int row) {
    return ionic[row];
  }

  /**
   * Finds the charge that a ligand carries in the rows that have settled.
   *
   * @param component its component index
   * @param charges receives Eq/kg by row
   */
  public void chargesOf(int component, double[] charges) {
    activities();
    powers();
    for (int k = 0; k < system.ligand.length; k++) {
      if (system.ligand[k] == component) {
        moments(k);
        double[] total = totals[component];
        for (int l = 0; l < LANES; l++) {
          charges[l] = total[l] / sum[l] * sum1[l];
        }
        return;
      }
    }
    throw new IllegalArgumentException("component " + component + " is not a ligand");
  }

  private void strongIons() {
    for (int l = 0; l < LANES; l++) {
      strongCharge[l] = inertCharge[l];
      strongSquares[l] = Math.abs(inertCharge[l]);
    }
    for (int i = 0; i < system.strong.length; i++) {
      double z = system.strongCharge[i];
      addScaled(strongCharge, z, totals[system.strong[i]]);
      addScaled(strongSquares, z * z, totals[system.strong[i]]);
    }
  }

  /** Starts where straight lines between the points of the grid cross zero. */
  private void start() {
    int width = 1 + 2 * system.ligand.length;
    double[] above = sum;
    double[] below = sum1;
    Arrays.fill(crossed, 0);
    for (int point = FIRST_POINT; point <= LAST_POINT; point++) {
      Arrays.fill(below, system.startTable[point * width]);
      addScaled(below, 1, strongCharge);
      addLigands(below, point * width + 1);
      if (point > FIRST_POINT) {
        addCrossing(above, below);
      }
      double[] other = above;
      above = below;
      below = other;
    }
    protonsAtCrossing();
    Arrays.fill(ionic, 1e-7);
    addScaled(ionic, 0.5, strongSquares);
    addLigands(ionic, MIDDLE_POINT * width + 2);
  }

  /** Adds up what the grid of starts holds for each ligand. */
  private void addLigands(double[] into, int at) {
    for (int k = 0; k < system.ligand.length; k++) {
      addScaled(into, system.startTable[at + 2 * k], totals[system.ligand[k]]);
    }
  }

  private void activities() {
    if (system.ideal) {
      return;
    }
    ActivityCoefficients.davies(system.debyeHueckelA, ionic, slope, inverse[1]);
    products(inverse[1], inverse[1], inverse[2]);
    products(inverse[2], inverse[2], inverse[2]);
    if (inverse.length > 3) {
      products(inverse[2], inverse[2], inverse[4]);
      products(inverse[4], inverse[1], inverse[3]);
      products(inverse[4], inverse[4], inverse[4]);
    }
  }

  private void powers() {
    for (int p = 2; p < power.length; p++) {
      products(power[p - 1], proton, power[p]);
    }
  }

  private void addLigand(int k) {
    int first = system.speciesStart[k];
    if (system.speciesStart[k + 1] == first + 2) {
      addMonoprotic(
          system.numbers[first * EquilibriumSystem.NUMBERS + EquilibriumSystem.CHARGE],
          system.numbers[(first + 1) * EquilibriumSystem.NUMBERS],
          inverse[chargeOf(system, first)],
          inverse[chargeOf(system, first + 1)],
          totals[system.ligand[k]]);
    } else {
      moments(k);
      addMoments(totals[system.ligand[k]]);
    }
  }

  /** The moments of a ligand's charge, relative to its free form. */
  private void moments(int k) {
    for (double[] each : sums) {
      Arrays.fill(each, 0);
    }
    for (int s = system.speciesStart[k]; s < system.speciesStart[k + 1]; s++) {
      int d = s * EquilibriumSystem.NUMBERS;
      addSpecies(
          system.numbers[d],
          system.numbers[d + EquilibriumSystem.CHARGE],
          power[(int) system.numbers[d + EquilibriumSystem.PROTONS]],
          inverse[chargeOf(system, s)]);
    }
  }

  private int freeze(int rows) {
    int left = 0;
    for (int l = 0; l < rows; l++) {
      if (moving[l] != 0) {
        if (Math.abs(protonStep[l]) < EquilibriumSolver.STEP_TOLERANCE
            && Math.abs(ionicStep[l]) < EquilibriumSolver.STEP_TOLERANCE
            && excess[l] <= 0
            && ionic[l] <= MOST_IONIC) {
          moving[l] = 0;
        } else {
          left++;
        }
      }
    }
    return left;
  }

  private static void products(double[] a, double[] b, double[] into) {
    for (int l = 0; l < LANES; l++) {
      into[l] = a[l] * b[l];
    }
  }

  private static void addScaled(double[] into, double factor, double[] a) {
    for (int l = 0; l < LANES; l++) {
      into[l] += factor * a[l];
    }
  }

  /** Twice the share of a step of the grid that lies before the root: 0, 2 or between. */
  private void addCrossing(double[] above, double[] below) {
    for (int l = 0; l < LANES; l++) {
      double share = above[l] / (above[l] - below[l]);
      crossed[l] += Math.abs(share) - Math.abs(share - 1) + 1;
    }
  }

  /** 10^-pH, about, as the 64th power of a series. */
  private void protonsAtCrossing() {
    double first = EquilibriumSystem.START_PH + EquilibriumSystem.START_STEP * FIRST_POINT;
    for (int l = 0; l < LANES; l++) {
      double ph = first + 0.5 * EquilibriumSystem.START_STEP * crossed[l];
      double x = (-EquilibriumSolver.LN10 / 64) * ph;
      double x2 = x * x;
      double e = (1 + x) + x2 * (1.0 / 2 + x * (1.0 / 6) + x2 * (1.0 / 24 + x * (1.0 / 120)));
      double e4 = (e * e) * (e * e);
      double e16 = (e4 * e4) * (e4 * e4);
      proton[l] = (e16 * e16) * (e16 * e16);
    }
  }

  private void ownIons(double ionProduct, double[] inverse) {
    for (int l = 0; l < LANES; l++) {
      double h = proton[l] * inverse[l];
      double oh = ionProduct / proton[l] * inverse[l];
      charge[l] = strongCharge[l] + (h - oh);
      squares[l] = strongSquares[l] + (h + oh);
      second[l] = h + oh;
      third[l] = h - oh;
      fourth[l] = h + oh;
    }
  }

  private void addSpecies(double beta, double z, double[] power, double[] inverse) {
    double z2 = z * z;
    for (int l = 0; l < LANES; l++) {
      double w = beta * power[l] * inverse[l];
      sum[l] += w;
      sum1[l] += w * z;
      sum2[l] += w * z2;
      sum3[l] += w * (z * z2);
      sum4[l] += w * (z2 * z2);
    }
  }

  private void addMoments(double[] total) {
    for (int l = 0; l < LANES; l++) {
      double scale = 1 / sum[l];
      double mean = sum1[l] * scale;
      double meanSquare = sum2[l] * scale;
      charge[l] += total[l] * mean;
      squares[l] += total[l] * meanSquare;
      second[l] += total[l] * (meanSquare - mean * mean);
      third[l] += total[l] * (sum3[l] * scale - mean * meanSquare);
      fourth[l] += total[l] * (sum4[l] * scale - meanSquare * meanSquare);
    }
  }

  /** The moments of an acid of one proton, whose charge is z or z + 1. */
  private void addMonoprotic(double z, double beta, double[] free, double[] bound, double[] total) {
    double odd = 2 * z + 1;
    for (int l = 0; l < LANES; l++) {
      double w = beta * proton[l] * bound[l];
      double share = w / (free[l] + w);
      double spread = total[l] * (share - share * share);
      charge[l] += total[l] * (z + share);
      squares[l] += total[l] * (z * z + odd * share);
      second[l] += spread;
      third[l] += spread * odd;
      fourth[l] += spread * (odd * odd);
    }
  }

  /** Newton's steps of ln H+ and ln I; excess is above 0 where the slope of I is not to be used. */
  private void steps() {
    for (int l = 0; l < LANES; l++) {
      double corner = 0.5 * slope[l] * fourth[l] - ionic[l];
      double side = slope[l] * third[l];
      double wanted = 0.5 * squares[l] - ionic[l];
      double scale = moving[l] / (second[l] * corner - 0.5 * third[l] * side);
      protonStep[l] = (charge[l] * corner - side * wanted) * scale;
      ionicStep[l] = (second[l] * wanted - 0.5 * third[l] * charge[l]) * scale;
      excess[l] = corner + EquilibriumSolver.LEAST_IONIC_SLOPE * ionic[l];
    }
  }

  /** H+ by a bounded quotient that starts as e^-step, I on a straight line. */
  private void move() {
    for (int l = 0; l < LANES; l++) {
      double s = protonStep[l];
      double even = 12 + s * s;
      proton[l] *= (even - 6 * s) / (even + 6 * s);
      ionic[l] *= 1 - ionicStep[l];
    }
  }
}
