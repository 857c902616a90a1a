package org.brewchem.quantity;

/** A molar mass, held in g/mol; above 0. */
public final class MolarMass extends ScalarValue<MolarMass> {

  private static final String NAME = "molar mass";

  private MolarMass(double gramsPerMole, double stated, String statedUnit) {
    super(positive(NAME, stated, statedUnit, gramsPerMole));
  }

  /**
   * Returns a molar mass stated in grams per mole.
   *
   * @param gramsPerMole the molar mass in g/mol, above 0
   * @return the molar mass
   * @throws IllegalArgumentException if the number is 0, negative, infinite or NaN
   */
  public static MolarMass ofGramsPerMole(double gramsPerMole) {
    return new MolarMass(gramsPerMole, gramsPerMole, "g/mol");
  }

  /**
   * Returns the molar mass in grams per mole.
   *
   * @return the molar mass in g/mol
   */
  public double inGramsPerMole() {
    return value;
  }

  /**
   * Adds a molar mass.
   *
   * @param other the molar mass to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public MolarMass plus(MolarMass other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a molar mass.
   *
   * @param other the molar mass to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is not above 0
   */
  public MolarMass minus(MolarMass other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, above 0
   * @return the product
   * @throws IllegalArgumentException if the product is 0, negative, infinite or NaN
   */
  public MolarMass times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    return text(value, "g/mol");
  }

  private static MolarMass fromBase(double gramsPerMole) {
    return new MolarMass(gramsPerMole, gramsPerMole, "g/mol");
  }
}
