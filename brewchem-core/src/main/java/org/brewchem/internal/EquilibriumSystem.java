package org.brewchem.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The constants of one mixture at one temperature, laid out for the solver: which components there
 * are, which species they form and how their activity coefficients depend on ionic strength.
 *
 * <p>Three kinds of component exist. A <em>strong ion</em> carries its charge whatever the pH. A
 * <em>ligand</em> is a proton family counted in its fully deprotonated form (PO43-, lactate-, NH3).
 * A <em>metal</em> is a cation that forms pairs with ligands. Every species holds at most one metal
 * and one or two of one ligand, so that for given pH, free metals and ionic strength each ligand
 * follows in closed form. Amounts are mol per kg of water; a formation constant is the
 * thermodynamic one from free metal, H+ and the deprotonated ligand, as its decimal logarithm.
 */
public final class EquilibriumSystem {

  /** Index that stands for "no metal" or "no ligand" in {@link Builder#species}. */
  public static final int NONE = -1;

  /** Number of components, the length of the array of totals. */
  final int componentCount;

  final int[] strong;
  final double[] strongCharge;
  final int[] metal;
  final double[] metalCharge;
  final int[] metalGroup;
  final int[] ligand;

  /**
   * Species stand sorted by ligand, first those with one ligand and, from {@code twofoldStart[k]},
   * those with two; the species of ligand k are {@code speciesStart[k] .. speciesStart[k + 1] - 1}.
   * Behind the last ligand come the species without one.
   */
  final int[] speciesStart;

  final int[] twofoldStart;

  /** Where the pairs of each ligand begin; before stands its ladder of protons. */
  final int[] pairStart;

  /** First and behind the last metal of each ligand's pairs, counted from 1. */
  final int[] metalStart;

  final int[] metalEnd;

  /**
   * Where the pairs of ligand k with one metal begin: those with metal r, counted from 1, stand at
   * {@code blockStart[k * (metals + 2) + r]} and before the next entry.
   */
  final int[] blockStart;

  /**
   * Four numbers a species: formation constant, protons, charge without that of its metal (which is
   * counted by its total), and half its squared charge.
   */
  final double[] numbers;

  /** Four indices a species: power of the proton activity, activity group, metal and ligand. */
  final int[] indices;

  static final int PROTONS = 1;
  static final int CHARGE = 2;
  static final int HALF_SQUARE = 3;
  static final int NUMBERS = 4;
  static final int GROUP = 1;
  static final int METAL = 2;
  static final int LIGAND = 3;
  static final int INDICES = 4;

  /** A species holds none, one or two of a ligand. */
  private static final int LIGAND_NUMBERS = 3;

  /** Number of species besides H+, OH-, the strong ions and the free metals. */
  final int speciesCount;

  final int minProtons;
  final int protonSpan;

  final double ionProduct;
  final int protonGroup;
  final int hydroxideGroup;

  final boolean ideal;
  final boolean[] daviesGroup;
  final double debyeHueckelA;
  final double debyeHueckelB;

  /** Whether charge alone settles every activity coefficient. */
  final boolean byCharge;

  /** Whether, but for pairs with metals, every species holds one ligand. */
  final boolean laddersWithoutMetals;

  final double[] groupChargeSquared;
  final double[] groupIonSize;
  final double[] groupLinear;

  /**
   * Where a solve starts: at each pH of a coarse grid the charge of H+ and OH-, then for each
   * ligand its mean charge and half its mean squared charge without metals, at a middling ionic
   * strength.
   */
  final double[] startTable;

  static final double START_PH = 0;
  static final double START_STEP = 0.5;
  static final int START_COUNT = 29;
  private static final double START_IONIC = 0.02;

  private final int[] componentGroup;
  private final int[] sortedPosition;

  private EquilibriumSystem(Builder b) {
    componentCount = b.kinds.size();
    componentGroup = toIntArray(b.componentGroups);
    strong = b.indicesOf(Kind.STRONG);
    metal = b.indicesOf(Kind.METAL);
    ligand = b.indicesOf(Kind.LIGAND);
    strongCharge = new double[strong.length];
    for (int i = 0; i < strong.length; i++) {
      strongCharge[i] = b.charges.get(strong[i]);
    }
    metalCharge = new double[metal.length];
    metalGroup = new int[metal.length];
    for (int i = 0; i < metal.length; i++) {
      metalCharge[i] = b.charges.get(metal[i]);
      metalGroup[i] = b.componentGroups.get(metal[i]);
    }

    int n = b.species.size();
    speciesCount = n;
    numbers = new double[n * NUMBERS];
    indices = new int[n * INDICES];
    sortedPosition = new int[n];
    speciesStart = new int[ligand.length + 2];
    twofoldStart = new int[ligand.length + 1];
    pairStart = new int[ligand.length + 1];
    metalStart = new int[ligand.length + 1];
    metalEnd = new int[ligand.length + 1];
    blockStart = new int[(ligand.length + 1) * (metal.length + 2)];

    int lowest = -1;
    int highest = 1;
    for (SpeciesRow row : b.species) {
      lowest = Math.min(lowest, row.protons);
      highest = Math.max(highest, row.protons);
    }
    minProtons = lowest;
    protonSpan = highest - lowest + 1;

    // A species' place is told by its ligand, how many of it there are, and its metal: those of a
    // place are counted, then each is laid down behind the ones before.
    int metals = metal.length + 1;
    int[] metalOf = positions(metal, 1);
    int[] ligandOf = positions(ligand, 0);
    int[] placeOf = new int[n];
    int[] next = new int[(ligand.length + 1) * LIGAND_NUMBERS * metals + 1];
    boolean ladders = true;
    Arrays.fill(metalStart, metals);
    for (int s = 0; s < n; s++) {
      SpeciesRow row = b.species.get(s);
      int k = row.ligand == NONE ? ligand.length : ligandOf[row.ligand];
      int j = row.metal == NONE ? 0 : metalOf[row.metal];
      placeOf[s] = (k * LIGAND_NUMBERS + row.ligandNumber) * metals + j;
      next[placeOf[s] + 1]++;
      ladders &= j > 0 || row.ligandNumber == 1;
      if (j > 0) {
        metalStart[k] = Math.min(metalStart[k], j);
        metalEnd[k] = Math.max(metalEnd[k], j + 1);
      }
    }
    for (int place = 1; place < next.length; place++) {
      next[place] += next[place - 1];
    }
    for (int k = 0; k <= ligand.length; k++) {
      int first = k * LIGAND_NUMBERS * metals;
      int single = first + (k < ligand.length ? metals : 0);
      speciesStart[k] = next[first];
      twofoldStart[k] = next[first + 2 * metals];
      pairStart[k] = next[single + 1];
      System.arraycopy(next, single, blockStart, k * (metals + 1), metals + 1);
    }
    speciesStart[ligand.length + 1] = n;
    for (int s = 0; s < n; s++) {
      SpeciesRow row = b.species.get(s);
      int k = placeOf[s] / (LIGAND_NUMBERS * metals);
      int j = placeOf[s] % metals;
      int position = next[placeOf[s]]++;
      double withoutMetal =
          row.protons + (row.ligand == NONE ? 0 : row.ligandNumber * b.charges.get(row.ligand));
      double charge = withoutMetal + (j == 0 ? 0 : metalCharge[j - 1]);
      int d = position * NUMBERS;
      numbers[d] = Math.pow(10, row.log10Beta);
      numbers[d + PROTONS] = row.protons;
      numbers[d + CHARGE] = withoutMetal;
      numbers[d + HALF_SQUARE] = 0.5 * charge * charge;
      int i = position * INDICES;
      indices[i] = row.protons - minProtons;
      indices[i + GROUP] = row.group;
      indices[i + METAL] = j;
      indices[i + LIGAND] = k;
      sortedPosition[s] = position;
    }
    laddersWithoutMetals = ladders;

    ionProduct = Math.pow(10, b.log10IonProduct);
    protonGroup = b.protonGroup;
    hydroxideGroup = b.hydroxideGroup;
    ideal = b.debyeHueckelA == 0;
    debyeHueckelA = b.debyeHueckelA;
    debyeHueckelB = b.debyeHueckelB;
    groupChargeSquared = toArray(b.groupChargeSquared);
    groupIonSize = toArray(b.groupIonSize);
    groupLinear = toArray(b.groupLinear);
    boolean chargeOnly = true;
    daviesGroup = new boolean[groupIonSize.length];
    for (int g = 0; g < groupIonSize.length; g++) {
      daviesGroup[g] = Double.isNaN(groupIonSize[g]);
      chargeOnly &= daviesGroup[g];
    }
    byCharge = ideal || chargeOnly;
    startTable = startTable();
  }

  /** Where each component stands in a list of some, counted from the number given. */
  private int[] positions(int[] components, int from) {
    int[] positions = new int[componentCount];
    for (int i = 0; i < components.length; i++) {
      positions[components[i]] = from + i;
    }
    return positions;
  }

  /** The powers of an activity of H+ that species need, from the lowest on. */
  void protonPowers(double proton, double[] powers) {
    int zero = -minProtons;
    powers[zero] = 1;
    for (int i = zero + 1; i < powers.length; i++) {
      powers[i] = powers[i - 1] * proton;
    }
    double inverse = 1 / proton;
    for (int i = zero - 1; i >= 0; i--) {
      powers[i] = powers[i + 1] * inverse;
    }
  }

  private double[] startTable() {
    int width = 1 + 2 * ligand.length;
    double[] table = new double[START_COUNT * width];
    ActivityCoefficients coefficients = new ActivityCoefficients(this);
    coefficients.at(START_IONIC);
    double[] powers = new double[protonSpan];
    for (int i = 0; i < START_COUNT; i++) {
      double proton = Math.pow(10, -(START_PH + START_STEP * i));
      protonPowers(proton, powers);
      int row = i * width;
      table[row] =
          proton * coefficients.inverse[protonGroup]
              - ionProduct / proton * coefficients.inverse[hydroxideGroup];
      for (int k = 0; k < ligand.length; k++) {
        double sum = 0;
        double charge = 0;
        double half = 0;
        for (int s = speciesStart[k]; s < pairStart[k]; s++) {
          int d = s * NUMBERS;
          double w =
              numbers[d]
                  * powers[indices[s * INDICES]]
                  * coefficients.inverse[indices[s * INDICES + GROUP]];
          sum += w;
          charge += w * numbers[d + CHARGE];
          half += w * numbers[d + HALF_SQUARE];
        }
        table[row + 1 + 2 * k] = charge / sum;
        table[row + 2 + 2 * k] = half / sum;
      }
    }
    return table;
  }

  /** Where the species with this handle of the builder stands in the solver's arrays. */
  int position(int handle) {
    return sortedPosition[handle];
  }

  /** Activity group of a strong ion by its component index. */
  public int strongGroup(int component) {
    return componentGroup[component];
  }

  private static double[] toArray(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static int[] toIntArray(List<Integer> values) {
    return values.stream().mapToInt(Integer::intValue).toArray();
  }

  private enum Kind {
    STRONG,
    METAL,
    LIGAND
  }

  private record SpeciesRow(
      int metal, int ligand, int protons, int ligandNumber, double log10Beta, int group) {}

  /**
   * How the activity coefficient of a species is found from ionic strength I and its charge z.
   *
   * @param ionSize a in angstrom of {@code -A z^2 sqrt(I)/(1 + B a sqrt(I)) + b I}, or NaN for the
   *     Davies equation {@code -A z^2 (sqrt(I)/(1 + sqrt(I)) - 0.3 I)}
   * @param linear b in kg/mol; the whole of log10 gamma for a neutral species
   */
  public record Activity(double ionSize, double linear) {
    /** The Davies equation; 1 for a neutral species. */
    public static final Activity DAVIES = new Activity(Double.NaN, 0);
  }

  /** Collects components and species, then lays them out. */
  public static final class Builder {
    private final double log10IonProduct;
    private final double debyeHueckelA;
    private final double debyeHueckelB;
    private final int protonGroup;
    private final int hydroxideGroup;
    private final List<Kind> kinds = new ArrayList<>();
    private final List<Double> charges = new ArrayList<>();
    private final List<Integer> componentGroups = new ArrayList<>();
    private final List<SpeciesRow> species = new ArrayList<>();
    private final List<Double> groupChargeSquared = new ArrayList<>();
    private final List<Double> groupIonSize = new ArrayList<>();
    private final List<Double> groupLinear = new ArrayList<>();

    /**
     * Starts a system.
     *
     * @param log10IonProduct log10 of the ion product of water, on molal activities
     * @param debyeHueckelA A in kg^0.5 mol^-0.5 for log10; 0 makes every activity coefficient 1
     * @param debyeHueckelB B in kg^0.5 mol^-0.5 per angstrom
     * @param proton activity rule of H+
     * @param hydroxide activity rule of OH-
     */
    public Builder(
        double log10IonProduct,
        double debyeHueckelA,
        double debyeHueckelB,
        Activity proton,
        Activity hydroxide) {
      this.log10IonProduct = log10IonProduct;
      this.debyeHueckelA = debyeHueckelA;
      this.debyeHueckelB = debyeHueckelB;
      protonGroup = groupOf(1, proton);
      hydroxideGroup = groupOf(-1, hydroxide);
    }

    /** Adds an ion of this charge that takes part in no equilibrium; gives its component index. */
    public int strongIon(int charge, Activity activity) {
      return component(Kind.STRONG, charge, groupOf(charge, activity));
    }

    /** Adds a cation that may form pairs; gives its component index. */
    public int metal(int charge, Activity activity) {
      return component(Kind.METAL, charge, groupOf(charge, activity));
    }

    /**
     * Adds a proton family by its deprotonated form, which is its first species; gives its index.
     */
    public int ligand(int charge, Activity activity) {
      int index = component(Kind.LIGAND, charge, 0);
      species(NONE, index, 0, 1, 0, activity);
      return index;
    }

    /**
     * Adds a species and gives its handle.
     *
     * @param metal component index of its metal or {@link #NONE}
     * @param ligand component index of its ligand or {@link #NONE}
     * @param protons protons taken up; negative for a hydroxide complex
     * @param ligandNumber ligands in it, 0 to 2
     * @param log10Beta log10 of the formation constant
     * @param activity its activity rule
     */
    public int species(
        int metal, int ligand, int protons, int ligandNumber, double log10Beta, Activity activity) {
      int charge =
          protons
              + (metal == NONE ? 0 : (int) Math.round(charges.get(metal)))
              + (ligand == NONE ? 0 : ligandNumber * (int) Math.round(charges.get(ligand)));
      species.add(
          new SpeciesRow(
              metal, ligand, protons, ligandNumber, log10Beta, groupOf(charge, activity)));
      return species.size() - 1;
    }

    /** Handle of the next species to be added. */
    public int nextSpecies() {
      return species.size();
    }

    /** Lays out what was added. */
    public EquilibriumSystem build() {
      return new EquilibriumSystem(this);
    }

    private int component(Kind kind, int charge, int group) {
      kinds.add(kind);
      charges.add((double) charge);
      componentGroups.add(group);
      return kinds.size() - 1;
    }

    private int groupOf(int charge, Activity activity) {
      double z2 = (double) charge * charge;
      for (int g = 0; g < groupChargeSquared.size(); g++) {
        if (groupChargeSquared.get(g) == z2
            && Double.compare(groupIonSize.get(g), activity.ionSize()) == 0
            && groupLinear.get(g) == activity.linear()) {
          return g;
        }
      }
      groupChargeSquared.add(z2);
      groupIonSize.add(activity.ionSize());
      groupLinear.add(activity.linear());
      return groupChargeSquared.size() - 1;
    }

    private int[] indicesOf(Kind kind) {
      List<Integer> found = new ArrayList<>();
      for (int i = 0; i < kinds.size(); i++) {
        if (kinds.get(i) == kind) {
          found.add(i);
        }
      }
      return toIntArray(found);
    }
  }
}
