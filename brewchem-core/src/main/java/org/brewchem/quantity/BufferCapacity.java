package org.brewchem.quantity;

/**
 * A buffer capacity: equivalents of strong base per litre that raise the pH by 1, as the slope at
 * one pH, held in mEq/L per pH; 0 or more.
 */
public final class BufferCapacity extends ScalarValue<BufferCapacity> {

  private static final String NAME = "buffer capacity";

  private BufferCapacity(double milliequivalentsPerLitrePerPH, double stated, String statedUnit) {
    super(nonNegative(NAME, stated, statedUnit, milliequivalentsPerLitrePerPH));
  }

  /**
   * Returns a buffer capacity stated in milliequivalents per litre and unit of pH.
   *
   * @param milliequivalentsPerLitrePerPH the buffer capacity in mEq/L per pH, 0 or more
   * @return the buffer capacity
   * @throws IllegalArgumentException if the number is negative, infinite or NaN
   */
  public static BufferCapacity ofMilliequivalentsPerLitrePerPH(
      double milliequivalentsPerLitrePerPH) {
    return new BufferCapacity(
        milliequivalentsPerLitrePerPH, milliequivalentsPerLitrePerPH, "mEq/L per pH");
  }

  /**
   * Returns the buffer capacity in milliequivalents per litre and unit of pH.
   *
   * @return the buffer capacity in mEq/L per pH
   */
  public double inMilliequivalentsPerLitrePerPH() {
    return value;
  }

  /**
   * Adds a buffer capacity.
   *
   * @param other the buffer capacity to add
   * @return the sum
   * @throws IllegalArgumentException if the sum is too large to be held
   */
  public BufferCapacity plus(BufferCapacity other) {
    return fromBase(value + other.value);
  }

  /**
   * Subtracts a buffer capacity.
   *
   * @param other the buffer capacity to take away
   * @return the difference
   * @throws IllegalArgumentException if the difference is below 0
   */
  public BufferCapacity minus(BufferCapacity other) {
    return fromBase(value - other.value);
  }

  /**
   * Multiplies by a plain number.
   *
   * @param factor the number, 0 or more
   * @return the product
   * @throws IllegalArgumentException if the product is negative, infinite or NaN
   */
  public BufferCapacity times(double factor) {
    return fromBase(value * factor);
  }

  @Override
  public String toString() {
    return text(value, "mEq/L per pH");
  }

  private static BufferCapacity fromBase(double milliequivalentsPerLitrePerPH) {
    return new BufferCapacity(
        milliequivalentsPerLitrePerPH, milliequivalentsPerLitrePerPH, "mEq/L per pH");
  }
}
