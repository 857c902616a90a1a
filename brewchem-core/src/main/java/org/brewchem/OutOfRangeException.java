package org.brewchem;

/**
 * Thrown when an argument does not allow a number. It carries the argument, the value, the unit of
 * the value and what is allowed, so that a service can point at the field at fault.
 */
public final class OutOfRangeException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /** The name of the argument. */
  private final String argument;

  /** The value that was refused. */
  private final double value;

  /** The unit of the value. */
  private final String unit;

  /** What is allowed. */
  private final String allowed;

  /**
   * Makes the refusal of a number.
   *
   * @param message the message, which says all of the following in one sentence
   * @param argument the name of the argument
   * @param value the value that was refused, in {@code unit}; it may be infinite or NaN
   * @param unit the unit, empty when there is none
   * @param allowed what is allowed instead
   */
  public OutOfRangeException(
      String message, String argument, double value, String unit, String allowed) {
    super(message);
    this.argument = argument;
    this.value = value;
    this.unit = unit;
    this.allowed = allowed;
  }

  /**
   * Returns which argument was refused.
   *
   * @return the name in words, such as {@code sample volume}
   */
  public String argument() {
    return argument;
  }

  /**
   * Returns the value that was refused.
   *
   * @return the value, in {@link #unit()}; it may be infinite or NaN
   */
  public double value() {
    return value;
  }

  /**
   * Returns the unit of the value.
   *
   * @return the symbol, such as {@code mg/L}; empty when there is none
   */
  public String unit() {
    return unit;
  }

  /**
   * Returns what is allowed.
   *
   * @return such as {@code 0 or more} or {@code 0 to 100 °C}
   */
  public String allowed() {
    return allowed;
  }
}
