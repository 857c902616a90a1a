package org.brewchem.internal;

import java.util.Arrays;

/**
 * The exact slopes of a solution's charge and ionic strength against the totals and pH, with free
 * metals, pairs and ionic strength following.
 *
 * <p>The equations that the {@link EquilibriumSolver} settled at its pH are solved once more,
 * transposed: the result says what a mole more in each metal's balance, or in the ionic strength,
 * is worth to the quantity asked for (the adjoint method). With these prices the slope against
 * every total follows in one pass over the species. Nothing is allocated.
 *
 * <p>All slopes are at fixed pH, but for the one against pH, which is at fixed totals. Charge that
 * is missing at that pH is carried by an inert univalent ion that counts in the ionic strength, as
 * in {@link EquilibriumSolver#solveAt}; where an inert charge is 0, its share in ionic strength has
 * a kink and the mean of both sides is taken. So from a neutral solution dpH/dT = -(dE/dT)/(dE/dpH)
 * is exact. Where a total is 0 the slope is the one upwards.
 *
 * <p>The total of a ligand with an activity that is held is not given but follows; its slope is 0.
 */
public final class EquilibriumSlopes {

  private static final double LN10 = Math.log(10);

  /** Stands in place of a ligand for the charge of everything. */
  private static final int ALL = -1;

  /** Stands in place of a ligand for no charge at all. */
  private static final int NO_CHARGE = -2;

  private final EquilibriumSolver solver;
  private final EquilibriumSystem system;
  private final int last;

  /** The quantity's slopes by the logarithms of the unknowns, then the prices. */
  private final double[] price;

  private final double[] ligandPrice;
  private final double[] amountPerMetal;
  private final double[] worthPerMetal;

  /** Price of charge, and of ionic strength, in the last slopes of the net charge. */
  private double chargePrice;

  private double ionicStrengthPrice;

  /** Makes a work space for the solutions of this solver, to be used by the same thread. */
  public EquilibriumSlopes(EquilibriumSolver solver) {
    this.solver = solver;
    system = solver.system;
    last = solver.size - 1;
    price = new double[solver.size];
    ligandPrice = new double[system.ligand.length + 1];
    amountPerMetal = new double[solver.size];
    worthPerMetal = new double[solver.size];
  }

  /**
   * Slopes of the net charge E, {@link EquilibriumSolver#charge}.
   *
   * @param perTotal receives dE/dT by component index, Eq/mol, and behind them dE/dZ against the
   *     inert charge
   * @return dE/dpH, Eq/kg per pH: the buffer capacity with its sign turned
   * @throws IllegalArgumentException if the length is not that of the totals and one more
   * @throws IllegalStateException if the solver has no solution
   */
  public double ofCharge(double[] perTotal) {
    begin(perTotal);
    System.arraycopy(solver.matrix, 0, price, 0, price.length);
    double byPh = finish(ALL, perTotal);
    chargePrice = 1 - price[last] * solver.carriedSlope();
    ionicStrengthPrice = price[last];
    return byPh;
  }

  /**
   * Slope of the net charge against the constant by which a species is formed, right after {@link
   * #ofCharge}: a mole more of the species, in each balance that it stands in, at its price.
   *
   * @param handle the species
   * @return dE/d(log10 of the constant) at fixed totals and pH, Eq/kg
   * @throws IllegalStateException if an activity of its ligand is held
   */
  public double ofChargeByFormation(int handle) {
    int s = system.position(handle);
    int k = index(s, EquilibriumSystem.LIGAND);
    if (k < system.ligand.length && solver.heldSpecies[k] >= 0) {
      throw new IllegalStateException("slope by a constant: an activity of the ligand is held");
    }
    return LN10
        * solver.concentrationAt(s)
        * (worth(s, chargePrice, ionicStrengthPrice)
            - ligandsIn(s, k) * ligandPrice[k]
            - price[index(s, EquilibriumSystem.METAL)]);
  }

  /**
   * Slopes of the charge that one component carries, of a pair only its own part.
   *
   * @param component its index
   * @param perTotal receives the slopes by component index, Eq/mol, and behind them the one against
   *     the inert charge
   * @return the slope against pH, Eq/kg per pH
   * @throws IllegalArgumentException if the length is not that of the totals and one more
   * @throws IllegalStateException if the solver has no solution
   */
  public double ofChargeOf(int component, double[] perTotal) {
    begin(perTotal);
    for (int k = 0; k < system.ligand.length; k++) {
      if (system.ligand[k] == component) {
        slopesByUnknown(k);
        return finish(k, perTotal);
      }
    }
    Arrays.fill(perTotal, 0);
    perTotal[component] = chargeWithoutProtons(component);
    return 0;
  }

  /**
   * Slopes of the ionic strength.
   *
   * @param perTotal receives dI/dT by component index and behind them the slope against the inert
   *     charge
   * @return dI/dpH, mol/kg per pH
   * @throws IllegalArgumentException if the length is not that of the totals and one more
   * @throws IllegalStateException if the solver has no solution
   */
  public double ofIonicStrength(double[] perTotal) {
    begin(perTotal);
    Arrays.fill(price, 0);
    price[last] = solver.ionic;
    return finish(NO_CHARGE, perTotal);
  }

  /** Charge of a strong ion or a metal. */
  private double chargeWithoutProtons(int component) {
    for (int i = 0; i < system.strong.length; i++) {
      if (system.strong[i] == component) {
        return system.strongCharge[i];
      }
    }
    for (int j = 0; j < system.metal.length; j++) {
      if (system.metal[j] == component) {
        return system.metalCharge[j];
      }
    }
    throw new IllegalArgumentException(
        "component " + component + " is none of the " + system.componentCount + " components");
  }

  private void begin(double[] perTotal) {
    if (perTotal.length != system.componentCount + 1) {
      throw new IllegalArgumentException(
          "slopes: length "
              + perTotal.length
              + "; it must be "
              + (system.componentCount + 1)
              + ", one for each component and one for the inert charge");
    }
    if (!solver.settled()) {
      throw new IllegalStateException("slopes need a solution; the mixture is not solved");
    }
    solver.refresh();
  }

  /** Slopes of the charge of one ligand against the logarithms of the unknowns. */
  private void slopesByUnknown(int k) {
    Arrays.fill(price, 0);
    boolean held = solver.heldSpecies[k] >= 0;
    if (solver.freeLigand[k] == 0) {
      return;
    }
    int start = system.speciesStart[k];
    int end = system.speciesStart[k + 1];
    double weight = 0;
    double weightedCharge = 0;
    for (int s = start; s < end; s++) {
      double n = ligandsIn(s, k);
      double c = n * solver.concentrationAt(s);
      weight += n * c;
      weightedCharge += c * number(s, EquilibriumSystem.CHARGE);
    }
    double mean = held ? 0 : weightedCharge / weight;
    for (int s = start; s < end; s++) {
      double moved =
          solver.concentrationAt(s)
              * (number(s, EquilibriumSystem.CHARGE) - ligandsIn(s, k) * mean);
      price[0] += moved * number(s, EquilibriumSystem.PROTONS);
      price[last] += moved * solver.coefficients.slope[index(s, EquilibriumSystem.GROUP)];
      int r = index(s, EquilibriumSystem.METAL);
      if (r > 0) {
        price[r] += moved;
      }
    }
    if (held) {
      price[0] -= weightedCharge * solver.protonsHeld(k);
    }
  }

  /** Turns the slopes by unknowns into prices and these into the slopes by totals and pH. */
  private double finish(int counted, double[] perTotal) {
    double[] matrix = solver.matrix;
    int n = last + 1;
    // Its block of metals being symmetric, to transpose is to swap the border.
    for (int r = 1; r < last; r++) {
      double column = matrix[r * n + last];
      matrix[r * n + last] = matrix[last * n + r];
      matrix[last * n + r] = column;
    }
    LinearSolver.solveBordered(1, matrix, price, n);
    double ionicPrice = price[last];
    double byLogProton = price[0] - ionicPrice * matrix[last * n];
    for (int r = 1; r < last; r++) {
      byLogProton -= price[r] * matrix[r];
    }
    price[0] = 0;

    double carried = -ionicPrice * solver.carriedSlope();
    double chargeWorth = counted == ALL ? 1 + carried : carried;
    for (int i = 0; i < system.strong.length; i++) {
      double z = system.strongCharge[i];
      perTotal[system.strong[i]] = z * chargeWorth - 0.5 * z * z * ionicPrice;
    }
    perTotal[system.componentCount] = chargeWorth - ionicPrice * solver.inertSlope();
    for (int k = 0; k < system.ligand.length; k++) {
      double worth = counted == k ? 1 + carried : chargeWorth;
      ligandPrice[k] = solver.heldSpecies[k] < 0 ? ligandSlope(k, worth, ionicPrice) : 0;
      perTotal[system.ligand[k]] = ligandPrice[k];
    }
    priceAbsentMetals(counted, chargeWorth, 1 + carried, ionicPrice);
    for (int r = 1; r < last; r++) {
      perTotal[system.metal[r - 1]] = system.metalCharge[r - 1] * chargeWorth + price[r];
    }
    return -LN10 * byLogProton;
  }

  /** What a mole more of a ligand is worth: the mean over its species, weighted by its balance. */
  private double ligandSlope(int k, double chargeWorth, double ionicPrice) {
    double free = solver.freeLigand[k];
    // Of a trace of a ligand nothing stands in species with two; the amount drops out.
    boolean trace = free == 0;
    int end = trace ? system.twofoldStart[k] : system.speciesStart[k + 1];
    double weight = 0;
    double sum = 0;
    for (int s = system.speciesStart[k]; s < end; s++) {
      double n = ligandsIn(s, k);
      int r = index(s, EquilibriumSystem.METAL);
      double c =
          n
              * solver.perLigandAndMetal(s)
              * solver.metalActivity[r]
              * (trace ? 1 : n == 1 ? free : free * free);
      weight += n * c;
      sum += c * (worth(s, chargeWorth, ionicPrice) - price[r]);
    }
    return sum / weight;
  }

  /**
   * Metals of which there is nothing do not stand in the solver's equations: a first trace of one
   * spreads over its species without moving the rest.
   */
  private void priceAbsentMetals(
      int counted, double chargeWorth, double countedWorth, double ionicPrice) {
    boolean any = false;
    for (int r = 1; r < last; r++) {
      if (solver.metalActivity[r] == 0) {
        double z = system.metalCharge[r - 1];
        amountPerMetal[r] = solver.coefficients.inverse[system.metalGroup[r - 1]];
        worthPerMetal[r] = -amountPerMetal[r] * 0.5 * z * z * ionicPrice;
        any = true;
      }
    }
    if (!any) {
      return;
    }
    for (int k = 0; k <= system.ligand.length; k++) {
      double free = solver.freeLigand[k];
      double chargePrice = counted == k ? countedWorth : chargeWorth;
      for (int s = system.speciesStart[k]; s < system.speciesStart[k + 1]; s++) {
        int r = index(s, EquilibriumSystem.METAL);
        // Where no metal stands, the activity is 1.
        if (solver.metalActivity[r] == 0) {
          double n = ligandsIn(s, k);
          double c = solver.perLigandAndMetal(s) * (n == 2 ? free * free : free);
          amountPerMetal[r] += c;
          worthPerMetal[r] += c * (worth(s, chargePrice, ionicPrice) - n * ligandPrice[k]);
        }
      }
    }
    for (int r = 1; r < last; r++) {
      if (solver.metalActivity[r] == 0) {
        price[r] = worthPerMetal[r] / amountPerMetal[r];
      }
    }
  }

  private double worth(int s, double chargeWorth, double ionicPrice) {
    return number(s, EquilibriumSystem.CHARGE) * chargeWorth
        - number(s, EquilibriumSystem.HALF_SQUARE) * ionicPrice;
  }

  private double ligandsIn(int s, int k) {
    return s >= system.twofoldStart[k] ? 2 : 1;
  }

  private double number(int s, int which) {
    return system.numbers[s * EquilibriumSystem.NUMBERS + which];
  }

  private int index(int s, int which) {
    return system.indices[s * EquilibriumSystem.INDICES + which];
  }
}
