package org.brewchem.internal;

import java.util.Arrays;

/**
 * Solves the proton balance of an {@link EquilibriumSystem} for stated totals, without allocating.
 *
 * <p>The unknowns are the H+ activity, the activity of each free metal present and the ionic
 * strength, each on a logarithmic scale; ligands are eliminated in closed form. All are found
 * together by Newton's method on the charge balance, the metals' mass balances and the definition
 * of ionic strength. If that does not settle, pH is bracketed and bisected, with the other unknowns
 * solved inside.
 *
 * <p>At a given pH the solution is in general not neutral: the missing charge is carried by an
 * inert univalent ion that counts in the ionic strength.
 *
 * <p>A solver is a work space: it is mutable and belongs to one thread. Amounts are mol per kg of
 * water, charges are equivalents per kg.
 */
public final class EquilibriumSolver {

  /** Iterations after which Newton's method gives way to the bracketed search. */
  static final int NEWTON_CAP = 60;

  /** Bisections after which the bracketed search gives up. */
  static final int BISECTION_CAP = 200;

  /** Relative step below which an iteration, being quadratic, has settled to rounding. */
  private static final double STEP_TOLERANCE = 1e-8;

  private static final int RUN_SUMS = 9;
  private static final double LN10 = Math.log(10);
  private static final double MAX_PROTON_STEP = 2.5;
  private static final double MAX_METAL_STEP = 3;
  private static final double MAX_IONIC_STEP = 1.5;

  /** Lowest and highest pH in which a root is looked for. */
  public static final double LOWEST_PH = -3;

  /** See {@link #LOWEST_PH}. */
  public static final double HIGHEST_PH = 17;

  private final EquilibriumSystem system;
  private final double[] totals;
  private final double[] heldLogActivity;
  private final int[] heldSpecies;
  private double inertCharge;

  private double proton;
  private double ionic;
  private double ionicOfGamma;
  private double daviesFactor;
  private double daviesExponent;
  private boolean warm;
  private boolean carrying;

  private final double[] groupExponent;
  private final double[] inverseGamma;
  private final double[] gammaSlope;
  private final double[] protonPower;
  private final double[] metalActivity;
  private final double[] freeLigand;
  private final double[] runSums;
  private final int[] activeMetal;
  private final int[] rowOfMetal;
  private final double[] ligandMetalSum;
  private final double[] matrix;
  private final double[] residual;
  private int active;
  private int size;
  private double strongCharge;
  private double strongIonic;
  private double charge;
  private double protonConcentration;
  private double hydroxideConcentration;

  private int iterations;
  private double lastResidual;
  private double bracketLow;
  private double bracketHigh;

  /** Makes a work space for this system, with all totals zero. */
  public EquilibriumSolver(EquilibriumSystem system) {
    this.system = system;
    totals = new double[system.componentCount];
    int ligands = system.ligand.length;
    int metals = system.metal.length;
    heldLogActivity = new double[ligands];
    heldSpecies = new int[ligands];
    Arrays.fill(heldSpecies, -1);
    groupExponent = new double[system.groupChargeSquared.length];
    inverseGamma = new double[system.groupChargeSquared.length];
    gammaSlope = new double[inverseGamma.length];
    Arrays.fill(inverseGamma, 1);
    protonPower = new double[system.protonSpan];
    metalActivity = new double[metals + 1];
    metalActivity[metals] = 1;
    freeLigand = new double[ligands + 1];
    freeLigand[ligands] = 1;
    runSums = new double[system.runMetal.length * RUN_SUMS];
    activeMetal = new int[metals];
    rowOfMetal = new int[metals + 1];
    ligandMetalSum = new double[metals + 2];
    matrix = new double[(metals + 2) * (metals + 2)];
    residual = new double[metals + 2];
  }

  /** The totals by component index, mol/kg, for the caller to fill; each must be 0 or more. */
  public double[] totals() {
    return totals;
  }

  /** Sets the charge of inert univalent ions besides the components, eq/kg, of either sign. */
  public void setInertCharge(double equivalentsPerKg) {
    inertCharge = equivalentsPerKg;
  }

  /** Charge of inert univalent ions besides the components, eq/kg. */
  public double inertCharge() {
    return inertCharge;
  }

  /**
   * Holds the activity of a species of a ligand, so that the ligand's total follows instead of
   * being given: a solution open to a gas.
   *
   * @param handle the species' handle from the builder
   * @param log10Activity the activity it is held at
   */
  public void holdActivity(int handle, double log10Activity) {
    int position = system.position(handle);
    int k = system.runLigand[runOf(position)];
    heldSpecies[k] = position;
    heldLogActivity[k] = log10Activity * LN10;
  }

  /** Forgets the last solution as a starting point. */
  public void coolDown() {
    warm = false;
  }

  /**
   * Finds the pH at which the solution is neutral. Starts from the last solution if there is one.
   *
   * @return whether a root was found; if not, {@link #iterations}, {@link #lastResidual} and the
   *     bracket tell how far it got
   */
  public boolean solve() {
    return solve(6.0);
  }

  /** As {@link #solve()}, with the pH to start from when there is no last solution. */
  public boolean solve(double startPh) {
    prepare();
    if (!warm) {
      proton = Math.exp(-LN10 * startPh);
      startMetals();
    }
    iterations = 0;
    bracketLow = LOWEST_PH;
    bracketHigh = HIGHEST_PH;
    if (newton(true)) {
      double ph = ph();
      if (ph > LOWEST_PH && ph < HIGHEST_PH) {
        warm = true;
        return true;
      }
    }
    warm = bisect();
    return warm;
  }

  /**
   * Finds the state at a given pH, neutral or not; {@link #charge} is then what is missing.
   *
   * @return whether it settled
   */
  public boolean solveAt(double ph) {
    prepare();
    if (!warm) {
      startMetals();
    }
    iterations = 0;
    boolean settled = settleAt(ph);
    if (!settled && warm) {
      startMetals();
      settled = settleAt(ph);
    }
    warm = settled;
    return settled;
  }

  /** Brings the species in line with the solution found; needed before reading concentrations. */
  public void refresh() {
    evaluate(carrying);
  }

  /** -log10 of the H+ activity. */
  public double ph() {
    return -Math.log10(proton);
  }

  /** Ionic strength, mol/kg. */
  public double ionicStrength() {
    return ionic;
  }

  /** Net charge of all components at the last pH, eq/kg: falls as pH rises. */
  public double charge() {
    return charge;
  }

  /** Concentration of the species with this handle, mol/kg; call {@link #refresh} before. */
  public double concentration(int handle) {
    return activity(handle) * inverseGamma[groupOf(system.position(handle))];
  }

  /** Activity of the species with this handle; call {@link #refresh} before. */
  public double activity(int handle) {
    int position = system.position(handle);
    int run = runOf(position);
    double free = freeLigand[system.runLigand[run]];
    return system.numbers[position * EquilibriumSystem.NUMBERS]
        * protonPower[system.indices[position * EquilibriumSystem.INDICES]]
        * metalActivity[system.runMetal[run]]
        * (system.runLigandNumber[run] == 2 ? free * free : free);
  }

  /** Concentration of H+, mol/kg; call {@link #refresh} before. */
  public double protonConcentration() {
    return protonConcentration;
  }

  /** Concentration of OH-, mol/kg; call {@link #refresh} before. */
  public double hydroxideConcentration() {
    return hydroxideConcentration;
  }

  /** 1/gamma of an activity group; call {@link #refresh} before. */
  public double inverseGamma(int activityGroup) {
    return inverseGamma[activityGroup];
  }

  /** Activity of a free metal, mol/kg, by component index. */
  public double metalActivity(int component) {
    for (int j = 0; j < system.metal.length; j++) {
      if (system.metal[j] == component) {
        return metalActivity[j];
      }
    }
    throw new IllegalArgumentException("component " + component + " is not a metal");
  }

  /** Concentration of a free metal, mol/kg, by component index; call {@link #refresh} before. */
  public double freeMetal(int component) {
    for (int j = 0; j < system.metal.length; j++) {
      if (system.metal[j] == component) {
        return metalActivity[j] * inverseGamma[system.metalGroup[j]];
      }
    }
    throw new IllegalArgumentException("component " + component + " is not a metal");
  }

  /**
   * Buffer capacity -dE/dpH at the last solution, eq/kg per pH, metals and ionic strength
   * following.
   */
  public double bufferCapacity() {
    evaluate(carrying);
    int n = size;
    // Row 0 is the charge; the column of lnProton is moved to the right-hand side of the others.
    double own = matrix[0];
    if (n > 1) {
      int m = n - 1;
      double[] reduced = new double[m * m];
      double[] right = new double[m];
      for (int r = 0; r < m; r++) {
        right[r] = matrix[(r + 1) * n];
        for (int c = 0; c < m; c++) {
          reduced[r * m + c] = matrix[(r + 1) * n + c + 1];
        }
      }
      LinearSolver.solve(reduced, right, m);
      for (int c = 0; c < m; c++) {
        own -= matrix[c + 1] * right[c];
      }
    }
    return own * LN10;
  }

  /** Iterations of the last solve. */
  public int iterations() {
    return iterations;
  }

  /** Charge that was left over when the last solve ended, eq/kg. */
  public double lastResidual() {
    return lastResidual;
  }

  /** Lower end of the last bracket of pH. */
  public double bracketLow() {
    return bracketLow;
  }

  /** Upper end of the last bracket of pH. */
  public double bracketHigh() {
    return bracketHigh;
  }

  private int groupOf(int position) {
    return system.indices[position * EquilibriumSystem.INDICES + EquilibriumSystem.GROUP];
  }

  private int runOf(int position) {
    int run = 0;
    while (system.runFirst[run + 1] <= position) {
      run++;
    }
    return run;
  }

  private void prepare() {
    double q = inertCharge;
    double ionic = Math.abs(inertCharge);
    for (int i = 0; i < system.strong.length; i++) {
      double z = system.strongCharge[i];
      double c = z * totals[system.strong[i]];
      q += c;
      ionic += z * c;
    }
    active = 0;
    for (int j = 0; j < system.metal.length; j++) {
      double total = totals[system.metal[j]];
      q += system.metalCharge[j] * total;
      if (total > 0) {
        rowOfMetal[j] = active + 1;
        activeMetal[active++] = j;
        if (metalActivity[j] == 0) {
          metalActivity[j] = total;
        }
      } else {
        rowOfMetal[j] = -1;
        metalActivity[j] = 0;
      }
    }
    strongCharge = q;
    strongIonic = ionic;
    size = active + 2;
    forgetActivityCoefficients();
  }

  private void startMetals() {
    double twice = strongIonic + Math.abs(strongCharge);
    for (int i = 0; i < active; i++) {
      int j = activeMetal[i];
      double z = system.metalCharge[j];
      double total = totals[system.metal[j]];
      twice += z * z * total;
      metalActivity[j] = 0.6 * total;
    }
    ionic = Math.max(0.5 * twice, 1e-7);
  }

  private boolean newton(boolean findPh) {
    carrying = !findPh;
    int first = findPh ? 0 : 1;
    for (int it = 0; it < NEWTON_CAP; it++) {
      iterations++;
      evaluate(!findPh);
      if (!step(first)) {
        return false;
      }
      boolean settled = true;
      if (findPh) {
        double d = residual[0];
        settled = Math.abs(d) < STEP_TOLERANCE;
        proton *= exponential(-clamp(d, MAX_PROTON_STEP));
      }
      for (int i = 0; i < active; i++) {
        double d = residual[i + 1];
        settled &= Math.abs(d) < STEP_TOLERANCE;
        metalActivity[activeMetal[i]] *= exponential(-clamp(d, MAX_METAL_STEP));
      }
      double d = residual[active + 1];
      settled &= Math.abs(d) < STEP_TOLERANCE;
      ionic *= exponential(-clamp(d, MAX_IONIC_STEP));
      if (settled) {
        return true;
      }
    }
    return false;
  }

  private static double clamp(double step, double limit) {
    return step > limit ? limit : step < -limit ? -limit : step;
  }

  /** Solves for the Newton step in place of the residual; false if it is not finite. */
  private boolean step(int first) {
    int n = size;
    lastResidual = residual[0];
    if (n == 2) {
      if (first == 1) {
        residual[1] /= matrix[3];
      } else {
        double det = matrix[0] * matrix[3] - matrix[1] * matrix[2];
        double du = (residual[0] * matrix[3] - matrix[1] * residual[1]) / det;
        residual[1] = (matrix[0] * residual[1] - matrix[2] * residual[0]) / det;
        residual[0] = du;
      }
    } else {
      LinearSolver.solveFrom(first, matrix, residual, n);
    }
    double sum = 0;
    for (int i = first; i < n; i++) {
      sum += residual[i];
    }
    return Double.isFinite(sum);
  }

  private boolean settleAt(double ph) {
    proton = Math.exp(-LN10 * ph);
    if (newton(false)) {
      evaluate(true);
      lastResidual = charge;
      return true;
    }
    return false;
  }

  private boolean bisect() {
    double low = LOWEST_PH;
    double high = HIGHEST_PH;
    startMetals();
    for (int i = 0; i < BISECTION_CAP && high - low > 1e-13; i++) {
      double middle = 0.5 * (low + high);
      if (!settleAt(middle)) {
        startMetals();
        if (!settleAt(middle)) {
          bracketLow = low;
          bracketHigh = high;
          return false;
        }
      }
      if (charge > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    bracketLow = low;
    bracketHigh = high;
    return low > LOWEST_PH && high < HIGHEST_PH;
  }

  /**
   * Updates the activity coefficients to the ionic strength. From one iteration to the next the
   * exponents change little, so that the factors are carried on instead of computed anew.
   */
  private void activityCoefficients() {
    if (system.ideal || ionic == ionicOfGamma) {
      return;
    }
    ionicOfGamma = ionic;
    double root = Math.sqrt(ionic);
    double a = LN10 * system.debyeHueckelA;
    double[] z2 = system.groupChargeSquared;
    double oneMore = 1 / (1 + root);
    double davies = a * (root * oneMore - 0.3 * ionic);
    double daviesSlope = a * (0.5 * root * oneMore * oneMore - 0.3 * ionic);
    daviesFactor *= exponential(davies - daviesExponent);
    daviesExponent = davies;
    double one = daviesFactor;
    double two = one * one;
    double four = two * two;
    for (int g = 0; g < z2.length; g++) {
      double z = z2[g];
      if (system.daviesGroup[g]) {
        gammaSlope[g] = z * daviesSlope;
        inverseGamma[g] =
            z == 1
                ? one
                : z == 4 ? four : z == 0 ? 1 : z == 9 ? four * four * one : Math.exp(davies * z);
      } else {
        double inverse = 1 / (1 + system.debyeHueckelB * system.groupIonSize[g] * root);
        double linear = LN10 * system.groupLinear[g] * ionic;
        double slope = a * z * root * inverse;
        double exponent = slope - linear;
        inverseGamma[g] *= exponential(exponent - groupExponent[g]);
        groupExponent[g] = exponent;
        gammaSlope[g] = 0.5 * slope * inverse - linear;
      }
    }
  }

  private void forgetActivityCoefficients() {
    ionicOfGamma = 0;
    daviesFactor = 1;
    daviesExponent = 0;
    Arrays.fill(groupExponent, 0);
    Arrays.fill(inverseGamma, 1);
  }

  /** e^x, by its series where x is small enough for eight terms to reach full precision. */
  private static double exponential(double x) {
    if (x > 0.03 || x < -0.03) {
      return Math.exp(x);
    }
    return 1
        + x
            * (1
                + x
                    * (1.0 / 2
                        + x
                            * (1.0 / 6
                                + x * (1.0 / 24 + x * (1.0 / 120 + x * (1.0 / 720 + x / 5040))))));
  }

  /**
   * Residuals and their Jacobian at the current unknowns.
   *
   * @param carried whether a charge that is left over counts in the ionic strength
   */
  private void evaluate(boolean carried) {
    activityCoefficients();
    final EquilibriumSystem sys = system;
    final int n = size;
    final int last = active + 1;
    final double[] m = matrix;
    final double[] f = residual;
    Arrays.fill(m, 0, n * n, 0);
    Arrays.fill(f, 0, n, 0);

    double a = proton;
    double inverse = 1 / a;
    int zero = -sys.minProtons;
    protonPower[zero] = 1;
    for (int i = zero + 1; i < protonPower.length; i++) {
      protonPower[i] = protonPower[i - 1] * a;
    }
    for (int i = zero - 1; i >= 0; i--) {
      protonPower[i] = protonPower[i + 1] * inverse;
    }

    double h = a * inverseGamma[sys.protonGroup];
    double oh = sys.ionProduct * inverse * inverseGamma[sys.hydroxideGroup];
    protonConcentration = h;
    hydroxideConcentration = oh;
    double hSlope = gammaSlope[sys.protonGroup];
    double ohSlope = gammaSlope[sys.hydroxideGroup];
    double e = strongCharge + h - oh;
    double twice = strongIonic + h + oh;
    double j00 = h + oh;
    double j0n = h * hSlope - oh * ohSlope;
    double jn0 = 0.5 * (h - oh);
    double jnn = 0.5 * (h * hSlope + oh * ohSlope);

    for (int i = 0; i < active; i++) {
      int j = activeMetal[i];
      double act = metalActivity[j];
      int g = sys.metalGroup[j];
      double c = act * inverseGamma[g];
      double slope = gammaSlope[g];
      double half = 0.5 * sys.metalCharge[j] * sys.metalCharge[j] * c;
      int r = i + 1;
      f[r] = c - totals[sys.metal[j]];
      m[r * n + r] = c;
      m[r * n + last] = c * slope;
      m[last * n + r] = half;
      jnn += half * slope;
      twice += 2 * half;
    }

    final double[] numbers = sys.numbers;
    final int[] indices = sys.indices;
    final double[] powers = protonPower;
    final double[] gammas = inverseGamma;
    final double[] slopes = gammaSlope;
    final double[] sums = runSums;
    final double[] perMetal = ligandMetalSum;
    final int ligands = sys.ligand.length;
    for (int k = 0; k <= ligands; k++) {
      double total = 0;
      int held = -1;
      if (k < ligands) {
        total = totals[sys.ligand[k]];
        held = heldSpecies[k];
        if (total == 0 && held < 0) {
          freeLigand[k] = 0;
          continue;
        }
      }

      // Sums over each run, relative to its free metal and ligand.
      double single = 0;
      double twofold = 0;
      for (int run = sys.runStart[k]; run < sys.runStart[k + 1]; run++) {
        double metalNow = metalActivity[sys.runMetal[run]];
        if (metalNow == 0) {
          continue;
        }
        double sum = 0;
        double sumP = 0;
        double sumD = 0;
        double sumZ = 0;
        double sumI = 0;
        double sumZp = 0;
        double sumZd = 0;
        double sumIp = 0;
        double sumId = 0;
        for (int s = sys.runFirst[run]; s < sys.runFirst[run + 1]; s++) {
          int d = s * EquilibriumSystem.NUMBERS;
          int i = s * EquilibriumSystem.INDICES;
          int g = indices[i + EquilibriumSystem.GROUP];
          double w = numbers[d] * powers[indices[i]] * gammas[g];
          double p = numbers[d + EquilibriumSystem.PROTONS];
          double slope = slopes[g];
          double z = w * numbers[d + EquilibriumSystem.CHARGE_WITHOUT_METAL];
          double half = w * numbers[d + EquilibriumSystem.HALF_CHARGE_SQUARED];
          sum += w;
          sumP += w * p;
          sumD += w * slope;
          sumZ += z;
          sumI += half;
          sumZp += z * p;
          sumZd += z * slope;
          sumIp += half * p;
          sumId += half * slope;
        }
        int q = run * RUN_SUMS;
        sums[q] = sum;
        sums[q + 1] = sumP;
        sums[q + 2] = sumD;
        sums[q + 3] = sumZ;
        sums[q + 4] = sumI;
        sums[q + 5] = sumZp;
        sums[q + 6] = sumZd;
        sums[q + 7] = sumIp;
        sums[q + 8] = sumId;
        if (sys.runLigandNumber[run] == 2) {
          twofold += sum * metalNow;
        } else {
          single += sum * metalNow;
        }
      }

      double free = 1;
      if (k < ligands) {
        if (held >= 0) {
          free = heldFree(k, held);
        } else if (twofold == 0) {
          free = total / single;
        } else {
          free = 2 * total / (single + Math.sqrt(single * single + 8 * twofold * total));
        }
        freeLigand[k] = free;
      }

      // Weighted by the number of ligands: what the ligand's own balance needs.
      double weighted = 0;
      double weightedP = 0;
      double weightedD = 0;
      double weightedZ = 0;
      double weightedI = 0;
      boolean metals = false;
      for (int run = sys.runStart[k]; run < sys.runStart[k + 1]; run++) {
        int j = sys.runMetal[run];
        double scale = metalActivity[j];
        if (scale == 0) {
          continue;
        }
        int q = run * RUN_SUMS;
        int number = sys.runLigandNumber[run];
        scale *= number == 2 ? free * free : free;
        double c = sums[q] * scale;
        double cp = sums[q + 1] * scale;
        double cd = sums[q + 2] * scale;
        double cz = sums[q + 3] * scale;
        double ci = sums[q + 4] * scale;
        double czp = sums[q + 5] * scale;
        double czd = sums[q + 6] * scale;
        double cip = sums[q + 7] * scale;
        double cid = sums[q + 8] * scale;
        e += cz;
        twice += 2 * ci;
        j00 += czp;
        j0n += czd;
        jn0 += cip;
        jnn += cid;
        weighted += number * number * c;
        weightedP += number * cp;
        weightedD += number * cd;
        weightedZ += number * cz;
        weightedI += number * ci;
        int r = rowOfMetal[j];
        if (r > 0) {
          if (!metals) {
            metals = true;
            Arrays.fill(perMetal, 1, last, 0);
          }
          perMetal[r] += number * c;
          f[r] += c;
          int row = r * n;
          m[r] += cz;
          m[row] += cp;
          m[row + r] += c;
          m[row + last] += cd;
          m[last * n + r] += ci;
        }
      }
      if (k == ligands) {
        continue;
      }
      if (held >= 0) {
        heldCorrection(held, weightedZ, weightedI, metals);
        continue;
      }
      // The ligand's own balance: raising any unknown lowers its free form.
      double inverseWeight = 1 / weighted;
      double byProton = weightedP * inverseWeight;
      double bySlope = weightedD * inverseWeight;
      j00 -= weightedZ * byProton;
      j0n -= weightedZ * bySlope;
      jn0 -= weightedI * byProton;
      jnn -= weightedI * bySlope;
      if (metals) {
        for (int r = 1; r < last; r++) {
          double v = perMetal[r];
          if (v == 0) {
            continue;
          }
          double byMetal = v * inverseWeight;
          int row = r * n;
          m[r] -= weightedZ * byMetal;
          m[last * n + r] -= weightedI * byMetal;
          m[row] -= v * byProton;
          m[row + last] -= v * bySlope;
          for (int c = 1; c < last; c++) {
            m[row + c] -= byMetal * perMetal[c];
          }
        }
      }
    }

    m[0] += j00;
    m[last] += j0n;
    m[last * n] += jn0;
    m[last * n + last] += jnn;
    charge = e;
    f[0] = e;
    double computed = 0.5 * twice;
    if (carried) {
      double half = e > 0 ? 0.5 : -0.5;
      computed += half * e;
      for (int c = 0; c < n; c++) {
        m[last * n + c] += half * m[c];
      }
    }
    // 1 - I / I(computed) instead of their difference: with that, a start far below the root would
    // be led further down wherever the species gain more by I than I itself is.
    double ratio = ionic / computed;
    f[last] = 1 - ratio;
    double scale = ratio / computed;
    for (int c = 0; c < n; c++) {
      m[last * n + c] *= scale;
    }
    m[last * n + last] -= ratio;
  }

  /** The free ligand that gives the held species its activity. */
  private double heldFree(int k, int held) {
    double withFreeOne =
        system.numbers[held * EquilibriumSystem.NUMBERS]
            * protonPower[system.indices[held * EquilibriumSystem.INDICES]]
            * metalActivity[system.runMetal[runOf(held)]];
    double ratio = Math.exp(heldLogActivity[k]) / withFreeOne;
    return system.runLigandNumber[runOf(held)] == 2 ? Math.sqrt(ratio) : ratio;
  }

  /** With the activity of one species held, its ligand follows the unknowns that species holds. */
  private void heldCorrection(int held, double weightedZ, double weightedI, boolean metals) {
    int n = size;
    int last = active + 1;
    int run = runOf(held);
    double number = system.runLigandNumber[run];
    double byProton =
        system.numbers[held * EquilibriumSystem.NUMBERS + EquilibriumSystem.PROTONS] / number;
    matrix[0] -= weightedZ * byProton;
    matrix[last * n] -= weightedI * byProton;
    int heldRow = rowOfMetal[system.runMetal[run]];
    if (heldRow > 0) {
      matrix[heldRow] -= weightedZ / number;
      matrix[last * n + heldRow] -= weightedI / number;
    }
    if (metals) {
      for (int r = 1; r < last; r++) {
        double v = ligandMetalSum[r];
        matrix[r * n] -= v * byProton;
        if (heldRow > 0) {
          matrix[r * n + heldRow] -= v / number;
        }
      }
    }
  }
}
