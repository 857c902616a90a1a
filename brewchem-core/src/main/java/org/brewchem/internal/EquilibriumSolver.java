package org.brewchem.internal;

import java.util.Arrays;

/**
 * Solves the proton balance of an {@link EquilibriumSystem} for stated totals, without allocating.
 *
 * <p>The unknowns are the H+ activity, the activity of each free metal and the ionic strength;
 * ligands are eliminated in closed form. All are found together by Newton's method on the charge
 * balance, the metals' mass balances and the definition of ionic strength. If that does not settle,
 * pH is bracketed and bisected, with the other unknowns solved inside.
 *
 * <p>At a given pH the solution is in general not neutral: the missing charge is carried by an
 * inert univalent ion that counts in the ionic strength.
 *
 * <p>A solver is a work space: it is mutable and belongs to one thread. Amounts are mol per kg of
 * water, charges are equivalents per kg.
 */
public final class EquilibriumSolver {

  /** Lowest pH at which a root is looked for. */
  public static final double LOWEST_PH = -3;

  /** Highest pH at which a root is looked for. */
  public static final double HIGHEST_PH = 17;

  /** Iterations after which Newton's method gives way to the bracketed search. */
  static final int NEWTON_CAP = 60;

  /** Bisections after which a bracketed search gives up. */
  static final int BISECTION_CAP = 200;

  /** Relative step below which an iteration, being quadratic, has settled to rounding. */
  static final double STEP_TOLERANCE = 1e-7;

  /** The same where the iteration is not quadratic. */
  private static final double LINEAR_STEP_TOLERANCE = 1e-14;

  /**
   * The least that the excess of ionic strength over its definition is taken to grow with it:
   * Newton's slope can turn where Debye and Hueckel's square root is steep or charges are many.
   */
  static final double LEAST_IONIC_SLOPE = 0.5;

  /** Charge over ionic strength below which a solution is neutral but for rounding. */
  private static final double NEUTRAL = 1e-11;

  private static final double MAX_LOGARITHMIC_STEP = 2.5;
  private static final double MOST_IONIC = 100;

  /** The share of a metal that a solve starts with as free. */
  private static final double FREE_AT_START = 0.8;

  static final double LN10 = Math.log(10);
  private static final double LOWEST_PROTON = Math.pow(10, -HIGHEST_PH);
  private static final double HIGHEST_PROTON = Math.pow(10, -LOWEST_PH);

  /** Sums kept for each metal of a ligand's pairs: themselves, and by Z, Q and D. */
  private static final int PER_METAL = 4;

  final EquilibriumSystem system;
  final double[] totals;
  private final double[] heldLogActivity;
  final int[] heldSpecies;
  private boolean anyHeld;
  private double inertCharge;

  final ActivityCoefficients coefficients;
  double proton;
  double ionic;
  final double[] metalActivity;
  private boolean warm;
  private boolean carrying;

  private final CurveExtrapolation curve;

  final int size;
  private boolean anyMetal;
  private double strongCharge;
  private double strongSquares;

  final double[] protonPower;
  final double[] freeLigand;
  private final double[] perMetal;
  final double[] matrix;
  final double[] residual;
  private final double[] direction;
  private final double[] origin;
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
    coefficients = new ActivityCoefficients(system);
    protonPower = new double[system.protonSpan];
    metalActivity = new double[metals + 1];
    metalActivity[0] = 1;
    freeLigand = new double[ligands + 1];
    freeLigand[ligands] = 1;
    perMetal = new double[(metals + 1) * PER_METAL];
    size = metals + 2;
    matrix = new double[size * size];
    residual = new double[size];
    curve = new CurveExtrapolation(totals.length, size);
    direction = new double[size];
    origin = new double[size];
  }

  /** The totals by component index, mol/kg, for the caller to fill; each must be 0 or more. */
  public double[] totals() {
    return totals;
  }

  /** Sets the charge of inert univalent ions besides the components, Eq/kg, of either sign. */
  public void setInertCharge(double equivalentsPerKg) {
    inertCharge = equivalentsPerKg;
  }

  /** Charge of inert univalent ions besides the components, Eq/kg. */
  public double inertCharge() {
    return inertCharge;
  }

  /**
   * Holds the activity of a species of a ligand, so that the ligand's total follows instead of
   * being given: a solution open to a gas.
   *
   * @param handle the species' handle from the builder
   * @param log10Activity the activity it is held at
   * @throws IllegalArgumentException if the species has a charge or a metal in it
   */
  public void holdActivity(int handle, double log10Activity) {
    int position = system.position(handle);
    int i = position * EquilibriumSystem.INDICES;
    if (system.indices[i + EquilibriumSystem.METAL] > 0
        || system.numbers[position * EquilibriumSystem.NUMBERS + EquilibriumSystem.HALF_SQUARE]
            != 0) {
      throw new IllegalArgumentException(
          "the activity of a charged species or an ion pair cannot be held; a neutral acid is needed");
    }
    int k = system.indices[i + EquilibriumSystem.LIGAND];
    heldSpecies[k] = position;
    heldLogActivity[k] = log10Activity * LN10;
    anyHeld = true;
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
    prepare();
    iterations = 0;
    bracketLow = LOWEST_PH;
    bracketHigh = HIGHEST_PH;
    if (warm) {
      extrapolate();
    } else {
      curve.forget();
    }
    boolean found = warm && findNeutral();
    if (!found) {
      start();
      found = findNeutral() || bisect();
    }
    warm = found;
    return found;
  }

  /**
   * Finds the state at a given pH, neutral or not; {@link #charge} is then what is missing.
   *
   * @return whether it settled
   */
  public boolean solveAt(double ph) {
    prepare();
    iterations = 0;
    curve.forget();
    warm = settleAt(ph);
    return warm;
  }

  /** Brings the species in line with the solution found; needed before reading concentrations. */
  public void refresh() {
    evaluateAll(carrying);
  }

  /** -log10 of the H+ activity. */
  public double ph() {
    return -Math.log10(proton);
  }

  /** Ionic strength, mol/kg. */
  public double ionicStrength() {
    return ionic;
  }

  /** Net charge of all components at the last pH, Eq/kg: falls as pH rises. */
  public double charge() {
    return charge;
  }

  /** Concentration of the species with this handle, mol/kg; call {@link #refresh} before. */
  public double concentration(int handle) {
    return concentrationAt(system.position(handle));
  }

  /** Activity of the species with this handle; call {@link #refresh} before. */
  public double activity(int handle) {
    return activityAt(system.position(handle));
  }

  double concentrationAt(int position) {
    return activityAt(position) * coefficients.inverse[groupOf(position)];
  }

  private double activityAt(int position) {
    int i = position * EquilibriumSystem.INDICES;
    int k = system.indices[i + EquilibriumSystem.LIGAND];
    double free = freeLigand[k];
    return system.numbers[position * EquilibriumSystem.NUMBERS]
        * protonPower[system.indices[i]]
        * metalActivity[system.indices[i + EquilibriumSystem.METAL]]
        * (position >= system.twofoldStart[k] ? free * free : free);
  }

  /** Concentration of a species over the activities of its free metal and free ligands. */
  double perLigandAndMetal(int position) {
    return system.numbers[position * EquilibriumSystem.NUMBERS]
        * protonPower[system.indices[position * EquilibriumSystem.INDICES]]
        * coefficients.inverse[groupOf(position)];
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
    return coefficients.inverse[activityGroup];
  }

  /** Activity of a free metal, mol/kg, by component index. */
  public double metalActivity(int component) {
    for (int j = 0; j < system.metal.length; j++) {
      if (system.metal[j] == component) {
        return metalActivity[j + 1];
      }
    }
    throw new IllegalArgumentException("component " + component + " is not a metal");
  }

  /** Concentration of a free metal, mol/kg, by component index; call {@link #refresh} before. */
  public double freeMetal(int component) {
    for (int j = 0; j < system.metal.length; j++) {
      if (system.metal[j] == component) {
        return metalActivity[j + 1] * coefficients.inverse[system.metalGroup[j]];
      }
    }
    throw new IllegalArgumentException("component " + component + " is not a metal");
  }

  /**
   * Buffer capacity -dE/dpH at the last solution, Eq/kg per pH, metals and ionic strength
   * following.
   */
  public double bufferCapacity() {
    evaluate(carrying);
    Arrays.fill(residual, 0, size, 0);
    residual[0] = 1;
    LinearSolver.solveBordered(0, matrix, residual, size);
    return LN10 / residual[0];
  }

  /** Iterations of the last solve. */
  public int iterations() {
    return iterations;
  }

  /** Charge that was left over when the last solve ended, Eq/kg. */
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

  private void prepare() {
    double q = inertCharge;
    double squares = Math.abs(inertCharge);
    for (int i = 0; i < system.strong.length; i++) {
      double z = system.strongCharge[i];
      double c = z * totals[system.strong[i]];
      q += c;
      squares += z * c;
    }
    anyMetal = false;
    for (int j = 0; j < system.metal.length; j++) {
      double total = totals[system.metal[j]];
      q += system.metalCharge[j] * total;
      anyMetal |= total > 0;
      if (total == 0) {
        metalActivity[j + 1] = 0;
      } else if (metalActivity[j + 1] == 0) {
        metalActivity[j + 1] = total;
      }
    }
    strongCharge = q;
    strongSquares = squares;
    if (warm) {
      coefficients.forget();
    }
  }

  /** Starts between the two points of the coarse grid where the charge changes its sign. */
  private void start() {
    int low = 0;
    int high = EquilibriumSystem.START_COUNT - 1;
    double above = 1;
    double below = -1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      double q = startCharge(middle);
      if (q > 0) {
        low = middle;
        above = q;
      } else {
        high = middle;
        below = q;
      }
    }
    double share = above / (above - below);
    startAt(EquilibriumSystem.START_PH + EquilibriumSystem.START_STEP * (low + share), low);
  }

  private void startAt(double ph, int point) {
    coefficients.forget();
    proton = Math.exp(-LN10 * ph);
    int at = point * (1 + 2 * system.ligand.length) + 2;
    double sum = 0.5 * strongSquares;
    for (int k = 0; k < system.ligand.length; k++) {
      sum += totals[system.ligand[k]] * system.startTable[at + 2 * k];
    }
    for (int r = 1; r < size - 1; r++) {
      double z = system.metalCharge[r - 1];
      sum += 0.5 * z * z * totals[system.metal[r - 1]];
    }
    ionic = Math.max(sum, 1e-7);
    coefficients.at(ionic);
    for (int r = 1; r < size - 1; r++) {
      metalActivity[r] =
          FREE_AT_START
              * totals[system.metal[r - 1]]
              / coefficients.inverse[system.metalGroup[r - 1]];
    }
  }

  private void extrapolate() {
    curve.follow(totals, inertCharge);
    proton = curve.onward(0, proton);
    for (int r = 1; r < size - 1; r++) {
      metalActivity[r] = curve.onward(r, metalActivity[r]);
    }
    ionic = curve.onward(size - 1, ionic);
  }

  private double startCharge(int point) {
    double[] table = system.startTable;
    int[] ligand = system.ligand;
    int at = point * (1 + 2 * ligand.length);
    double q = strongCharge + table[at];
    for (int k = 0; k < ligand.length; k++) {
      q += totals[ligand[k]] * table[at + 1 + 2 * k];
    }
    return q;
  }

  private boolean findNeutral() {
    return newton(true) && proton > LOWEST_PROTON && proton < HIGHEST_PROTON;
  }

  private boolean newton(boolean findPh) {
    carrying = !findPh;
    int first = findPh ? 0 : 1;
    int last = size - 1;
    int corner = size * size - 1;
    for (int it = 0; it < NEWTON_CAP; it++) {
      iterations++;
      evaluate(!findPh);
      lastResidual = residual[0];
      double tolerance = STEP_TOLERANCE;
      double least = -LEAST_IONIC_SLOPE * ionic;
      if (matrix[corner] > least) {
        matrix[corner] = least;
        tolerance = LINEAR_STEP_TOLERANCE;
      }
      LinearSolver.solveBordered(first, matrix, residual, size);
      double largest = 0;
      if (findPh) {
        largest = Math.abs(residual[0]);
        proton *= logarithmic(residual[0]);
      }
      for (int r = 1; r < last; r++) {
        largest = Math.max(largest, Math.abs(residual[r]));
        metalActivity[r] *= linear(residual[r]);
      }
      largest = Math.max(largest, Math.abs(residual[last]));
      ionic *= linear(residual[last]);
      if (largest < tolerance) {
        return true;
      }
      if (!(largest < Double.POSITIVE_INFINITY)) {
        return false;
      }
    }
    return false;
  }

  /**
   * The factor e^-step, bounded; by a series where small, since it only places the next iterate.
   */
  private static double logarithmic(double step) {
    if (step < 0.3 && step > -0.3) {
      return 1 - step * (1 - step * (0.5 - step * (1.0 / 6)));
    }
    return Math.exp(-Math.max(-MAX_LOGARITHMIC_STEP, Math.min(MAX_LOGARITHMIC_STEP, step)));
  }

  /**
   * The same for what follows its total nearly in proportion, so that a straight step goes home.
   */
  private static double linear(double step) {
    return step < 0.5 && step > -1 ? 1 - step : logarithmic(step);
  }

  /** Finds the other unknowns at a pH, and the charge. */
  private boolean settleAt(double ph) {
    if (!warm) {
      startNear(ph);
    }
    proton = Math.exp(-LN10 * ph);
    boolean settled = newton(false);
    if (!settled) {
      startNear(ph);
      settled = newton(false) || bisectIonicStrength(ph);
    }
    if (settled) {
      evaluate(true);
      lastResidual = charge;
    }
    return settled;
  }

  private void startNear(double ph) {
    long nearest = Math.round((ph - EquilibriumSystem.START_PH) / EquilibriumSystem.START_STEP);
    startAt(ph, (int) Math.max(0, Math.min(EquilibriumSystem.START_COUNT - 1, nearest)));
  }

  /** The slow and sure way to the root: bisects pH. */
  boolean bisect() {
    double low = LOWEST_PH;
    double high = HIGHEST_PH;
    warm = false;
    for (int i = 0; i < BISECTION_CAP && high - low > 1e-14; i++) {
      double middle = 0.5 * (low + high);
      if (!settleAt(middle)) {
        bracketLow = low;
        bracketHigh = high;
        return false;
      }
      warm = true;
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

  /** The slow and sure way at a pH: bisects ionic strength, the free metals solved inside. */
  boolean bisectIonicStrength(double ph) {
    startNear(ph);
    double low = 1e-12;
    double high = MOST_IONIC;
    for (int i = 0; i < BISECTION_CAP && high - low > 1e-15 * high; i++) {
      ionic = i < 40 ? Math.sqrt(low * high) : 0.5 * (low + high);
      if (!settleMetals()) {
        return false;
      }
      if (residual[size - 1] > 0) {
        low = ionic;
      } else {
        high = ionic;
      }
    }
    return low > 1e-12 && high < MOST_IONIC;
  }

  /**
   * Finds the free metals at the pH and ionic strength of the moment. Their mass balances are the
   * gradient of a convex function of the logarithms, so that Newton's direction leads down: the
   * step is halved until it does not pass the lowest point on its way by much.
   */
  private boolean settleMetals() {
    int n = size;
    int last = n - 1;
    for (int it = 0; it < NEWTON_CAP; it++) {
      iterations++;
      evaluate(true);
      System.arraycopy(residual, 0, direction, 0, n);
      // Without its column the last row tells the metals nothing, whatever stands in it.
      for (int r = 1; r < last; r++) {
        matrix[r * n + last] = 0;
      }
      matrix[n * n - 1] = 1;
      LinearSolver.solveBordered(1, matrix, residual, n);
      double largest = 0;
      double descent = 0;
      for (int r = 1; r < last; r++) {
        descent += direction[r] * residual[r];
        direction[r] = residual[r];
        origin[r] = metalActivity[r];
        largest = Math.max(largest, Math.abs(direction[r]));
      }
      double share = Math.min(1, MAX_LOGARITHMIC_STEP / largest);
      double slope;
      do {
        slope = 0;
        for (int r = 1; r < last; r++) {
          metalActivity[r] = origin[r] * Math.exp(-share * direction[r]);
        }
        evaluate(true);
        for (int r = 1; r < last; r++) {
          slope += residual[r] * direction[r];
        }
        share *= 0.5;
      } while (slope < -0.1 * descent && share > 1e-9);
      if (largest < STEP_TOLERANCE) {
        return true;
      }
    }
    return false;
  }

  /**
   * Residuals and their Jacobian at the current unknowns: by ladders where no metal and no ion size
   * asks for more.
   *
   * @param carried whether a charge that is left over counts in the ionic strength
   */
  void evaluate(boolean carried) {
    if (!anyMetal && !anyHeld && system.byCharge && system.laddersWithoutMetals) {
      evaluateLadders(carried);
    } else {
      evaluateAll(carried);
    }
  }

  /**
   * Where activity coefficients follow from charge alone, a species' dependence on pH and on ionic
   * strength is z and z squared, so that a ligand is told by the moments of its charge.
   */
  private void evaluateLadders(boolean carried) {
    coefficients.at(ionic);
    system.protonPowers(proton, protonPower);
    final EquilibriumSystem sys = system;
    final double[] numbers = sys.numbers;
    final int[] indices = sys.indices;
    final double[] powers = protonPower;
    final double[] gammas = coefficients.inverse;
    double h = proton * gammas[sys.protonGroup];
    double oh = sys.ionProduct * powers[-sys.minProtons - 1] * gammas[sys.hydroxideGroup];
    double e = strongCharge + (h - oh);
    double second = h + oh;
    double third = h - oh;
    double fourth = h + oh;
    double squares = strongSquares + second;
    for (int k = 0; k < sys.ligand.length; k++) {
      double total = totals[sys.ligand[k]];
      if (total == 0) {
        continue;
      }
      double sum = 0;
      double sum1 = 0;
      double sum2 = 0;
      double sum3 = 0;
      double sum4 = 0;
      int end = sys.pairStart[k];
      for (int s = sys.speciesStart[k]; s < end; s++) {
        int d = s * EquilibriumSystem.NUMBERS;
        int i = s * EquilibriumSystem.INDICES;
        double z = numbers[d + EquilibriumSystem.CHARGE];
        double w = numbers[d] * powers[indices[i]] * gammas[indices[i + EquilibriumSystem.GROUP]];
        double wz = w * z;
        double z2 = z * z;
        double wz2 = w * z2;
        sum += w;
        sum1 += wz;
        sum2 += wz2;
        sum3 += wz * z2;
        sum4 += wz2 * z2;
      }
      double scale = 1 / sum;
      double mean = sum1 * scale;
      double meanSquare = sum2 * scale;
      e += total * mean;
      squares += total * meanSquare;
      second += total * (meanSquare - mean * mean);
      third += total * (sum3 * scale - mean * meanSquare);
      fourth += total * (sum4 * scale - meanSquare * meanSquare);
    }
    double slope = coefficients.daviesSlope;
    final int n = size;
    final int last = n - 1;
    for (int r = 1; r < last; r++) {
      for (int c = 0; c < n; c++) {
        matrix[r * n + c] = 0;
      }
      matrix[r] = 0;
      matrix[r * n + r] = 1;
      matrix[last * n + r] = 0;
      residual[r] = 0;
    }
    matrix[0] = second;
    matrix[last] = slope * third;
    matrix[last * n] = 0.5 * third;
    matrix[last * n + last] = 0.5 * slope * fourth - ionic;
    residual[0] = e;
    residual[last] = 0.5 * squares - ionic;
    charge = e;
    if (carried) {
      carry();
    }
  }

  /**
   * Counts the charge left over, carried by an inert univalent ion, in the ionic strength. At the
   * neutral point the ion changes its sign and the slopes have a kink; there, within rounding, the
   * mean of both sides is taken.
   */
  private void carry() {
    int n = size;
    double left = residual[0];
    double half = halfSign(left);
    if (half == 0) {
      return;
    }
    residual[n - 1] += half * left;
    for (int c = 0; c < n; c++) {
      matrix[(n - 1) * n + c] += half * matrix[c];
    }
  }

  /** Slope of the ionic strength against the charge of inert univalent ions; 0 at the kink. */
  private double halfSign(double inert) {
    return Math.abs(inert) < NEUTRAL * ionic ? 0 : inert > 0 ? 0.5 : -0.5;
  }

  /** What the inert ions besides the components add to ionic strength per charge. */
  double inertSlope() {
    return halfSign(inertCharge);
  }

  /** What the charge left over adds to ionic strength per charge. */
  double carriedSlope() {
    return carrying ? halfSign(charge) : 0;
  }

  /** Whether the unknowns are those of a solution. */
  boolean settled() {
    return warm;
  }

  /**
   * Every species in each balance, of any activity rule. A ligand's part of the Jacobian is the
   * covariances over its species, weighted by their amount, of what a species does in an equation
   * with what moves it: its protons, half its squared charge, its metal, and the slope of its
   * activity coefficient. In the charge balance protons stand for charges: those of metals are
   * counted by their totals, and a ligand's own drops out, as what all its species have in common.
   * Where a neutral species is held its total is no balance, and protons with the ligand's own
   * charge count, of which the held species has none.
   */
  private void evaluateAll(boolean carried) {
    coefficients.at(ionic);
    system.protonPowers(proton, protonPower);
    final EquilibriumSystem sys = system;
    final double[] numbers = sys.numbers;
    final int[] indices = sys.indices;
    final double[] powers = protonPower;
    final double[] gammas = coefficients.inverse;
    final double[] slopes = coefficients.slope;
    final double[] m = matrix;
    final double[] f = residual;
    final double[] pairs = perMetal;
    final int n = size;
    final int last = n - 1;
    final int border = last * n;

    double h = proton * gammas[sys.protonGroup];
    double oh = sys.ionProduct / proton * gammas[sys.hydroxideGroup];
    protonConcentration = h;
    hydroxideConcentration = oh;
    double hSlope = h * slopes[sys.protonGroup];
    double ohSlope = oh * slopes[sys.hydroxideGroup];
    double e = strongCharge + (h - oh);
    double squares = strongSquares + (h + oh);
    double byProton = h + oh;
    double byIonic = hSlope - ohSlope;
    double squaresByProton = h - oh;
    double squaresByIonic = hSlope + ohSlope;
    for (int r = 1; r < last; r++) {
      m[r] = 0;
      for (int c = r; c < last; c++) {
        m[r * n + c] = 0;
      }
      double total = totals[sys.metal[r - 1]];
      if (total == 0) {
        m[r * n + r] = 1;
        m[r * n + last] = 0;
        m[border + r] = 0;
        f[r] = 0;
        continue;
      }
      int g = sys.metalGroup[r - 1];
      double z = sys.metalCharge[r - 1];
      double c = metalActivity[r] * gammas[g];
      double cz2 = c * z * z;
      f[r] = c - total;
      m[r * n + r] = c;
      m[r * n + last] = c * slopes[g];
      m[border + r] = cz2;
      squares += cz2;
      squaresByIonic += cz2 * slopes[g];
    }

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
      int first = sys.speciesStart[k];
      double ligandCharge = k < ligands ? ligandCharge(first) : 0;
      double shift = held >= 0 ? ligandCharge : 0;
      // Sums over the species with one ligand, relative to its free form: by protons (P), squared
      // charge (Q) and the slope of the activity coefficient (D), and by two of these.
      double sum = 0;
      double sumP = 0;
      double sumQ = 0;
      double sumD = 0;
      double sumPp = 0;
      double sumPd = 0;
      double sumQp = 0;
      double sumQd = 0;
      int end = sys.pairStart[k];
      for (int s = first; s < end; s++) {
        int d = s * EquilibriumSystem.NUMBERS;
        int i = s * EquilibriumSystem.INDICES;
        int g = indices[i + EquilibriumSystem.GROUP];
        double w = numbers[d] * powers[indices[i]] * gammas[g];
        double p = numbers[d + EquilibriumSystem.PROTONS] + shift;
        double slope = slopes[g];
        double wp = w * p;
        double wq = w * (2 * numbers[d + EquilibriumSystem.HALF_SQUARE]);
        sum += w;
        sumP += wp;
        sumQ += wq;
        sumD += w * slope;
        sumPp += wp * p;
        sumPd += wp * slope;
        sumQp += wq * p;
        sumQd += wq * slope;
      }
      int metalStart = sys.metalStart[k];
      int metalEnd = sys.metalEnd[k];
      int block = k * (last + 1);
      for (int r = metalStart; r < metalEnd; r++) {
        double metal = metalActivity[r];
        double one = 0;
        double oneP = 0;
        double oneQ = 0;
        double oneD = 0;
        int to = sys.blockStart[block + r + 1];
        for (int s = sys.blockStart[block + r]; s < to; s++) {
          int d = s * EquilibriumSystem.NUMBERS;
          int i = s * EquilibriumSystem.INDICES;
          int g = indices[i + EquilibriumSystem.GROUP];
          double w = metal * numbers[d] * powers[indices[i]] * gammas[g];
          double p = numbers[d + EquilibriumSystem.PROTONS] + shift;
          double slope = slopes[g];
          double wp = w * p;
          double wq = w * (2 * numbers[d + EquilibriumSystem.HALF_SQUARE]);
          one += w;
          oneP += wp;
          oneQ += wq;
          oneD += w * slope;
          sumPp += wp * p;
          sumPd += wp * slope;
          sumQp += wq * p;
          sumQd += wq * slope;
        }
        int q = r * PER_METAL;
        pairs[q] = one;
        pairs[q + 1] = oneP;
        pairs[q + 2] = oneQ;
        pairs[q + 3] = oneD;
        sum += one;
        sumP += oneP;
        sumQ += oneQ;
        sumD += oneD;
      }
      // The ligand's balance weights a species by its ligands. There is none where a
      // species is held or no ligand stands in a species: second moments count whole.
      double free = 1;
      double inverse = 0;
      double weightedP = sumP;
      double weightedQ = sumQ;
      double weightedD = sumD;
      if (k < ligands) {
        int from = sys.twofoldStart[k];
        int to = sys.speciesStart[k + 1];
        if (from == to && held < 0) {
          inverse = 1 / sum;
          free = total * inverse;
        } else {
          double twofold = 0;
          for (int s = from; s < to; s++) {
            twofold += perFreeSquared(s);
          }
          free =
              held >= 0
                  ? heldFree(k, held)
                  : 2 * total / (sum + Math.sqrt(sum * sum + 8 * twofold * total));
          double weighted = sum;
          for (int s = from; s < to; s++) {
            // Counted twice for the ligand and, taken off again here, once for the metal.
            double w = perFreeSquared(s) * free;
            int d = s * EquilibriumSystem.NUMBERS;
            int i = s * EquilibriumSystem.INDICES;
            double p = numbers[d + EquilibriumSystem.PROTONS] + 2 * shift;
            double slope = slopes[indices[i + EquilibriumSystem.GROUP]];
            double wp = w * p;
            double wq = w * (2 * numbers[d + EquilibriumSystem.HALF_SQUARE]);
            weighted += 4 * w;
            weightedP += 2 * wp;
            weightedQ += 2 * wq;
            weightedD += 2 * w * slope;
            sumP += wp;
            sumQ += wq;
            sumPp += wp * p;
            sumPd += wp * slope;
            sumQp += wq * p;
            sumQd += wq * slope;
            int r = indices[i + EquilibriumSystem.METAL];
            if (r > 0) {
              int q = r * PER_METAL;
              pairs[q] += 2 * w;
              pairs[q + 1] += wp;
              pairs[q + 2] += wq;
              pairs[q + 3] += w * slope;
              f[r] -= w * free;
              m[r * n + r] -= w * free;
            }
          }
          inverse = held >= 0 ? 0 : 1 / weighted;
        }
        freeLigand[k] = free;
      }
      double meanP = weightedP * inverse;
      double meanQ = weightedQ * inverse;
      double meanD = weightedD * inverse;
      e += (ligandCharge - shift) * total + sumP * free;
      squares += sumQ * free;
      byProton += (sumPp - weightedP * meanP) * free;
      byIonic += (sumPd - weightedP * meanD) * free;
      squaresByProton += (sumQp - weightedQ * meanP) * free;
      squaresByIonic += (sumQd - weightedQ * meanD) * free;
      for (int r = metalStart; r < metalEnd; r++) {
        int q = r * PER_METAL;
        int row = r * n;
        double one = pairs[q];
        double c = one * free;
        double share = c * inverse;
        f[r] += c;
        m[r] += (pairs[q + 1] - one * meanP) * free;
        m[border + r] += (pairs[q + 2] - one * meanQ) * free;
        m[row + last] += (pairs[q + 3] - one * meanD) * free;
        m[row + r] += c;
        for (int other = r; other < metalEnd; other++) {
          m[row + other] -= share * pairs[other * PER_METAL];
        }
      }
    }
    for (int r = 1; r < last; r++) {
      m[border + r] *= 0.5;
    }
    m[0] = byProton;
    m[last] = byIonic;
    m[border] = 0.5 * squaresByProton;
    m[border + last] = 0.5 * squaresByIonic - ionic;
    charge = e;
    f[0] = e;
    f[last] = 0.5 * squares - ionic;
    if (carried) {
      carry();
    }
  }

  /** Charge of a ligand without protons, which is its first species. */
  private double ligandCharge(int s) {
    return system.numbers[s * EquilibriumSystem.NUMBERS + EquilibriumSystem.CHARGE];
  }

  /** Activity of a species with two ligands over the free one's squared, times its 1/gamma. */
  private double perFreeSquared(int s) {
    int i = s * EquilibriumSystem.INDICES;
    return system.numbers[s * EquilibriumSystem.NUMBERS]
        * protonPower[system.indices[i]]
        * coefficients.inverse[system.indices[i + EquilibriumSystem.GROUP]]
        * metalActivity[system.indices[i + EquilibriumSystem.METAL]];
  }

  /** Protons per ligand in the species of a ligand that is held. */
  double protonsHeld(int k) {
    int held = heldSpecies[k];
    return system.numbers[held * EquilibriumSystem.NUMBERS + EquilibriumSystem.PROTONS]
        / (held >= system.twofoldStart[k] ? 2 : 1);
  }

  /** The free ligand that gives the held species its activity. */
  private double heldFree(int k, int held) {
    int i = held * EquilibriumSystem.INDICES;
    double withFreeOne =
        system.numbers[held * EquilibriumSystem.NUMBERS] * protonPower[system.indices[i]];
    double ratio = Math.exp(heldLogActivity[k]) / withFreeOne;
    return held >= system.twofoldStart[k] ? Math.sqrt(ratio) : ratio;
  }
}
