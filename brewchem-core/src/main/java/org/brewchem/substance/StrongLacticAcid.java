package org.brewchem.substance;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.MassFraction;

/**
 * Strong lactic acid as a bottle holds it at equilibrium: lactic acid, its oligomers and water.
 *
 * <p>Lactic acid is an alcohol too and forms esters with itself. Only the one acid group at the end
 * of each chain can be titrated at once; the others follow when the esters have hydrolysed, in the
 * diluted liquid. The model is that of Vu, Kolah, Asthana, Peereboom, Lira and Miller, Fluid Phase
 * Equilib. 236 (2005) 125: every step of the esterification has one constant, K = 0.2023. With
 * <i>L</i> moles of acid in all, <i>W</i> moles of water as after hydrolysis, and <i>p</i> the part
 * of the acid groups that are bound, {@code K L (1 - p)^2 = p (W + L p)}; a chain of <i>j</i> units
 * has {@code L (1 - p)^2 p^(j - 1)} moles.
 *
 * <p>Strengths are of <em>total</em> acid, which the label counts: assays boil the acid with lye
 * first. Immutable.
 */
public final class StrongLacticAcid {

  private static final Map<String, ResourceTable.Row> ROWS = read();
  private static final double CONSTANT = number("equilibrium constant");
  private static final double LEAST = number("least strength");
  private static final double GREATEST = number("greatest strength");

  private final double molesOfAcid;
  private final double molesOfWater;
  private final double bound;

  private StrongLacticAcid(double massPercent) {
    molesOfAcid = massPercent / Acid.LACTIC.molarMass().inGramsPerMole();
    molesOfWater = (100 - massPercent) / water();
    double linear = 2 * CONSTANT * molesOfAcid + molesOfWater;
    double square = molesOfAcid * (CONSTANT - 1);
    double constant = CONSTANT * molesOfAcid;
    // The root between 0 and 1, without cancellation.
    bound = 2 * constant / (linear + Math.sqrt(linear * linear - 4 * square * constant));
  }

  private static Map<String, ResourceTable.Row> read() {
    Map<String, ResourceTable.Row> rows = new HashMap<>();
    ResourceTable.read("lactic-acid.csv").forEach(row -> rows.put(row.text("item"), row));
    return rows;
  }

  private static ResourceTable.Row row(String item) {
    ResourceTable.Row row = ROWS.get(item);
    if (row == null) {
      throw new IllegalStateException("lactic-acid.csv: there is no row \"" + item + "\"");
    }
    return row;
  }

  private static double number(String item) {
    return row(item).number("value");
  }

  private static double water() {
    return Formula.parse("H2O").molarMass().inGramsPerMole();
  }

  /**
   * Returns the acid of a strength, at equilibrium.
   *
   * @param totalAcid total acid as lactic acid in the mass of the liquid, 30 to 92 % by mass
   * @return the acid
   * @throws org.brewchem.OutOfRangeException if the strength is out of range: below 30 % the
   *     oligomers hydrolyse completely
   */
  public static StrongLacticAcid ofTotalAcid(MassFraction totalAcid) {
    return new StrongLacticAcid(
        Checks.inRange("total acid", totalAcid.inMassPercent(), "% by mass", LEAST, GREATEST));
  }

  /**
   * Returns the part of all acid that is bound in esters and acts only after hydrolysis.
   *
   * @return the part, counted as the acid it becomes
   */
  public MassFraction boundInEsters() {
    return MassFraction.of(bound);
  }

  /**
   * Returns the acid that can be titrated at once, counted as lactic acid.
   *
   * @return its mass in the mass of the liquid
   */
  public MassFraction titratableAtOnce() {
    return percent(molesOfAcid * (1 - bound) * Acid.LACTIC.molarMass().inGramsPerMole());
  }

  /**
   * Returns a chain of units: 1 is lactic acid itself, 2 lactoyllactic acid.
   *
   * @param units the number of units, 1 or more
   * @return its mass in the mass of the liquid
   * @throws IllegalArgumentException if the number is less than 1
   */
  public MassFraction chainOf(int units) {
    Checks.positive("units", units, "");
    double moles = molesOfAcid * (1 - bound) * (1 - bound) * Math.pow(bound, units - 1.0);
    double grams = units * Acid.LACTIC.molarMass().inGramsPerMole() - (units - 1) * water();
    return percent(moles * grams);
  }

  /**
   * Returns the free water: that of the diluted acid, and what the esters have set free.
   *
   * @return its mass in the mass of the liquid
   */
  public MassFraction freeWater() {
    return percent((molesOfWater + molesOfAcid * bound) * water());
  }

  private static MassFraction percent(double massPercent) {
    return MassFraction.ofMassPercent(massPercent);
  }

  /**
   * Whether oligomers are counted in a compound of a strength, whether or not the model covers it.
   */
  static boolean holdsOligomers(Compound compound, MassFraction assay) {
    return compound.equals(Acid.LACTIC) && assay.inMassPercent() >= LEAST;
  }

  /** The acid of a reagent; empty where the model does not cover it. */
  static Optional<StrongLacticAcid> of(Compound compound, MassFraction assay) {
    return holdsOligomers(compound, assay) && assay.inMassPercent() <= GREATEST
        ? Optional.of(ofTotalAcid(assay))
        : Optional.empty();
  }

  /** The relative standard uncertainty of a label: its tolerance as a rectangular distribution. */
  static OptionalDouble relativeUncertaintyOfLabel(Compound compound, MassFraction assay) {
    double percent = assay.inMassPercent();
    return compound.equals(Acid.LACTIC)
            && percent >= number("least strength of the tolerance")
            && percent <= number("greatest strength of the tolerance")
        ? OptionalDouble.of(number("relative tolerance of a label") / Math.sqrt(3))
        : OptionalDouble.empty();
  }

  /** The relative standard uncertainty of the bound part. */
  static double relativeUncertaintyOfBoundPart() {
    return number("relative uncertainty of the bound part");
  }

  /** Returns the strength and what acts at once. */
  @Override
  public String toString() {
    return "lactic acid, "
        + titratableAtOnce()
        + " titratable at once, "
        + boundInEsters()
        + " of the whole bound in esters";
  }
}
