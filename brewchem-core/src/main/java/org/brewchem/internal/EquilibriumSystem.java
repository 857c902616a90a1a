package org.brewchem.internal;

import java.util.ArrayList;
import java.util.List;

/**
 * The constants of one mixture at one temperature, laid out for the solver: which components there
 * are, which species they form and how their activity coefficients depend on ionic strength.
 *
 * <p>Three kinds of component exist. A <em>strong ion</em> carries its charge whatever the pH. A
 * <em>ligand</em> is a proton family counted in its fully deprotonated form (PO4-3, lactate-, NH3).
 * A <em>metal</em> is a cation that forms pairs with ligands. Every species holds at most one metal
 * and one or two of one ligand, so that for given pH, free metals and ionic strength each ligand
 * follows in closed form. Amounts are mol per kg of water; a formation constant is the
 * thermodynamic one from free metal, H+ and the deprotonated ligand, as its decimal logarithm.
 */
public final class EquilibriumSystem {

  /** Index that stands for "no metal" or "no ligand" in {@link Builder#species}. */
  public static final int NONE = -1;

  final int componentCount;
  final int[] strong;
  final double[] strongCharge;
  final int[] metal;
  final double[] metalCharge;
  final int[] metalGroup;
  final int[] ligand;

  /**
   * Species stand in runs that share a ligand, a metal and the number of ligands. The runs of
   * ligand k are {@code runStart[k] .. runStart[k + 1] - 1}; behind the last ligand come the
   * species without one.
   */
  final int[] runStart;

  /** First species of each run, and behind the last run the number of species. */
  final int[] runFirst;

  final int[] runMetal;
  final int[] runLigandNumber;
  final int[] runLigand;

  /**
   * Four numbers a species: formation constant, protons, charge without that of its metal (which is
   * counted by its total), and half its squared charge.
   */
  final double[] numbers;

  /** Two indices a species: power of the proton activity, and activity group. */
  final int[] indices;

  static final int PROTONS = 1;
  static final int CHARGE_WITHOUT_METAL = 2;
  static final int HALF_CHARGE_SQUARED = 3;
  static final int NUMBERS = 4;
  static final int GROUP = 1;
  static final int INDICES = 2;
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
  final double[] groupChargeSquared;
  final double[] groupIonSize;
  final double[] groupLinear;

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
    int[] metalOf = new int[componentCount];
    for (int i = 0; i < metal.length; i++) {
      metalCharge[i] = b.charges.get(metal[i]);
      metalGroup[i] = b.componentGroups.get(metal[i]);
      metalOf[metal[i]] = i;
    }

    int n = b.species.size();
    speciesCount = n;
    numbers = new double[n * NUMBERS];
    indices = new int[n * INDICES];
    sortedPosition = new int[n];
    runStart = new int[ligand.length + 2];

    int lowest = -1;
    int highest = 1;
    for (SpeciesRow row : b.species) {
      lowest = Math.min(lowest, row.protons);
      highest = Math.max(highest, row.protons);
    }
    minProtons = lowest;
    protonSpan = highest - lowest + 1;

    int position = 0;
    List<int[]> runs = new ArrayList<>();
    for (int k = 0; k <= ligand.length; k++) {
      runStart[k] = runs.size();
      int wanted = k < ligand.length ? ligand[k] : NONE;
      for (int number = 0; number <= 2; number++) {
        for (int j = -1; j < metal.length; j++) {
          int first = position;
          for (int s = 0; s < n; s++) {
            SpeciesRow row = b.species.get(s);
            int rowMetal = row.metal == NONE ? -1 : metalOf[row.metal];
            if (row.ligand == wanted && row.ligandNumber == number && rowMetal == j) {
              double withoutMetal =
                  row.protons + (wanted == NONE ? 0 : number * b.charges.get(wanted));
              double charge = withoutMetal + (j < 0 ? 0 : metalCharge[j]);
              int d = position * NUMBERS;
              numbers[d] = Math.pow(10, row.log10Beta);
              numbers[d + PROTONS] = row.protons;
              numbers[d + CHARGE_WITHOUT_METAL] = withoutMetal;
              numbers[d + HALF_CHARGE_SQUARED] = 0.5 * charge * charge;
              indices[position * INDICES] = row.protons - minProtons;
              indices[position * INDICES + GROUP] = row.group;
              sortedPosition[s] = position;
              position++;
            }
          }
          if (position > first) {
            runs.add(new int[] {first, j < 0 ? metal.length : j, number, k});
          }
        }
      }
    }
    runStart[ligand.length + 1] = runs.size();
    runFirst = new int[runs.size() + 1];
    runMetal = new int[runs.size()];
    runLigandNumber = new int[runs.size()];
    runLigand = new int[runs.size()];
    for (int r = 0; r < runs.size(); r++) {
      runFirst[r] = runs.get(r)[0];
      runMetal[r] = runs.get(r)[1];
      runLigandNumber[r] = runs.get(r)[2];
      runLigand[r] = runs.get(r)[3];
    }
    runFirst[runs.size()] = position;

    ionProduct = Math.pow(10, b.log10IonProduct);
    protonGroup = b.protonGroup;
    hydroxideGroup = b.hydroxideGroup;
    ideal = b.debyeHueckelA == 0;
    debyeHueckelA = b.debyeHueckelA;
    debyeHueckelB = b.debyeHueckelB;
    groupChargeSquared = toArray(b.groupChargeSquared);
    groupIonSize = toArray(b.groupIonSize);
    groupLinear = toArray(b.groupLinear);
    daviesGroup = new boolean[groupIonSize.length];
    for (int g = 0; g < groupIonSize.length; g++) {
      daviesGroup[g] = Double.isNaN(groupIonSize[g]);
    }
  }

  /** Number of components, the length of the array of totals. */
  public int componentCount() {
    return componentCount;
  }

  /** Number of species besides H+, OH-, the strong ions and the free metals. */
  public int speciesCount() {
    return speciesCount;
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
