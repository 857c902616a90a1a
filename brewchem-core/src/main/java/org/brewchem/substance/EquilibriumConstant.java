package org.brewchem.substance;

import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.Checks;
import org.brewchem.internal.PhysicalConstants;
import org.jspecify.annotations.Nullable;

/**
 * The base-10 logarithm of an equilibrium constant at zero ionic strength, as a function of
 * temperature.
 *
 * <p>Either from its value, enthalpy and heat capacity of reaction at 25 °C, with a heat capacity
 * that does not change with temperature, so that
 *
 * <pre>ln K(T) = ln K(T0) - dH/R (1/T - 1/T0) + dCp/R (T0/T - 1 + ln(T/T0)),  T0 = 298.15 K,</pre>
 *
 * or from the expression
 *
 * <pre>log10 K = a + b T + c/T + d log10 T + e/T²,  T in kelvin,</pre>
 *
 * or a sum of such constants. R is 8.314462618 J/(mol K), exact since the SI of 2019.
 *
 * <p>Two constants are equal when they give the same values at every temperature, by the same
 * coefficients; range, uncertainty and provenance do not count.
 */
public final class EquilibriumConstant {

  private static final double LEAST_KELVIN = 1;
  private static final double GREATEST_KELVIN = 10_000;

  private static final UsualRange KA = UsualRange.named("dissociation constant Ka");
  private static final UsualRange PKA = UsualRange.named("pKa");
  private static final double REFERENCE_K = 298.15;
  private static final double LN_10 = Math.log(10.0);
  private static final double CELSIUS_ZERO_K = 273.15;

  /** A range is stated in °C; its conversion to kelvin is rounded. */
  private static final double RANGE_ROUNDING_K = 1e-9;

  private final double log10At25;
  private final double enthalpyKilojoulesPerMole;
  private final double heatCapacityJoulesPerMoleKelvin;
  private final double a;
  private final double b;
  private final double c;
  private final double d;
  private final double e;

  private final @Nullable Double minimumKelvin;
  private final @Nullable Double maximumKelvin;
  private final boolean isRangeComplete;
  private final @Nullable Double uncertainty;
  private final @Nullable Provenance provenance;

  private EquilibriumConstant(
      double log10At25,
      double enthalpyKilojoulesPerMole,
      double heatCapacityJoulesPerMoleKelvin,
      double[] abcde,
      @Nullable Double minimumKelvin,
      @Nullable Double maximumKelvin,
      boolean isRangeComplete,
      @Nullable Double uncertainty,
      @Nullable Provenance provenance) {
    this.log10At25 = Checks.finite("log10 K at 25 °C", log10At25, "");
    this.enthalpyKilojoulesPerMole =
        Checks.finite("enthalpy of reaction", enthalpyKilojoulesPerMole, "kJ/mol");
    this.heatCapacityJoulesPerMoleKelvin =
        Checks.finite("heat capacity of reaction", heatCapacityJoulesPerMoleKelvin, "J/(mol K)");
    this.a = Checks.finite("coefficient a", abcde[0], "");
    this.b = Checks.finite("coefficient b", abcde[1], "1/K");
    this.c = Checks.finite("coefficient c", abcde[2], "K");
    this.d = Checks.finite("coefficient d", abcde[3], "");
    this.e = Checks.finite("coefficient e", abcde[4], "K²");
    this.minimumKelvin = minimumKelvin;
    this.maximumKelvin = maximumKelvin;
    this.isRangeComplete = isRangeComplete;
    this.uncertainty = uncertainty;
    this.provenance = provenance;
  }

  /**
   * Returns a constant that does not change with temperature.
   *
   * @param log10K the base-10 logarithm of the constant
   * @return the constant
   * @throws IllegalArgumentException if the value is not finite
   */
  public static EquilibriumConstant ofLog10(double log10K) {
    return ofLog10(log10K, 0.0, 0.0);
  }

  /** Returns log10 Ka for stepwise pKa values that hold at every temperature. */
  static EquilibriumConstant[] ofPKa(String name, double... pKa) {
    return Arrays.stream(pKa)
        .mapToObj(
            value ->
                ofLog10(
                    -notTheOther(
                        PKA, "pKa of " + name, Checks.finite("pKa of " + name, value, ""), "Ka")))
        .toArray(EquilibriumConstant[]::new);
  }

  /** Returns log10 Ka for stepwise Ka values that hold at every temperature. */
  static EquilibriumConstant[] ofKa(String name, double... ka) {
    return Arrays.stream(ka)
        .mapToObj(
            value ->
                ofLog10(
                    Math.log10(
                        notTheOther(
                            KA,
                            "Ka of " + name,
                            Checks.positive("Ka of " + name, value, ""),
                            "pKa"))))
        .toArray(EquilibriumConstant[]::new);
  }

  /** Ka and pKa look alike: what reads better as the other goes in as the other. */
  private static double notTheOther(UsualRange range, String argument, double value, String other) {
    Optional<String> slip = range.slip(value);
    if (slip.isPresent()) {
      throw Checks.outOfRange(
          argument,
          value,
          range.unit(),
          range.text()
              + " ("
              + slip.get()
              + "; an acid that has it all the same goes in by its "
              + other
              + ")");
    }
    return value;
  }

  /**
   * Returns a constant from its value, enthalpy and heat capacity of reaction at 25 °C.
   *
   * @param log10KAt25 the base-10 logarithm of the constant at 25 °C
   * @param enthalpyKilojoulesPerMole the standard enthalpy of the reaction at 25 °C, in kJ/mol
   * @param heatCapacityJoulesPerMoleKelvin the standard heat capacity of the reaction, in J/(mol K)
   * @return the constant
   * @throws IllegalArgumentException if a value is not finite
   */
  public static EquilibriumConstant ofLog10(
      double log10KAt25, double enthalpyKilojoulesPerMole, double heatCapacityJoulesPerMoleKelvin) {
    return new EquilibriumConstant(
        log10KAt25,
        enthalpyKilojoulesPerMole,
        heatCapacityJoulesPerMoleKelvin,
        new double[5],
        null,
        null,
        false,
        null,
        null);
  }

  /**
   * Returns the constant log10 K = a + b T + c/T + d log10 T + e/T², T in kelvin.
   *
   * @param a the constant term, a number
   * @param b the coefficient of T, in 1/K
   * @param c the coefficient of 1/T, in K
   * @param d the coefficient of log10 T
   * @param e the coefficient of 1/T², in K²
   * @return the constant
   * @throws IllegalArgumentException if a coefficient is not finite
   */
  public static EquilibriumConstant analytic(double a, double b, double c, double d, double e) {
    return new EquilibriumConstant(
        0.0, 0.0, 0.0, new double[] {a, b, c, d, e}, null, null, false, null, null);
  }

  /**
   * Returns the same constant with the range of temperature that its measurements or its fit cover.
   *
   * @param minimumCelsius the least temperature, in °C
   * @param maximumCelsius the greatest temperature, in °C
   * @return the constant with its range
   * @throws IllegalArgumentException if a value is below absolute zero or the range is reversed
   */
  public EquilibriumConstant withRangeCelsius(double minimumCelsius, double maximumCelsius) {
    Checks.inRange("least temperature", minimumCelsius, "°C", -CELSIUS_ZERO_K, maximumCelsius);
    Checks.finite("greatest temperature", maximumCelsius, "°C");
    return new EquilibriumConstant(
        log10At25,
        enthalpyKilojoulesPerMole,
        heatCapacityJoulesPerMoleKelvin,
        coefficients(),
        minimumCelsius + CELSIUS_ZERO_K,
        maximumCelsius + CELSIUS_ZERO_K,
        true,
        uncertainty,
        provenance);
  }

  /**
   * Returns the same constant with an uncertainty of its log10 K, as its source prints it.
   *
   * @param uncertaintyOfLog10 the uncertainty of log10 K at 25 °C, more than 0
   * @return the constant with its uncertainty
   * @throws IllegalArgumentException if the value is not more than 0
   */
  public EquilibriumConstant withUncertainty(double uncertaintyOfLog10) {
    return new EquilibriumConstant(
        log10At25,
        enthalpyKilojoulesPerMole,
        heatCapacityJoulesPerMoleKelvin,
        coefficients(),
        minimumKelvin,
        maximumKelvin,
        isRangeComplete,
        Checks.positive("uncertainty of log10 K", uncertaintyOfLog10, ""),
        provenance);
  }

  /**
   * Returns the same constant with a statement of where it comes from.
   *
   * @param source where the constant comes from
   * @return the constant with its provenance
   */
  public EquilibriumConstant from(Provenance source) {
    Objects.requireNonNull(source, "source");
    return new EquilibriumConstant(
        log10At25,
        enthalpyKilojoulesPerMole,
        heatCapacityJoulesPerMoleKelvin,
        coefficients(),
        minimumKelvin,
        maximumKelvin,
        isRangeComplete,
        uncertainty,
        source);
  }

  /**
   * Returns log10 K at a temperature. Nothing is refused outside the range of the constant: ask
   * {@link #covers(double)}.
   *
   * @param kelvin the temperature, in K, 1 to 10,000
   * @return log10 K
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public double log10(double kelvin) {
    double t = Checks.inRange("temperature", kelvin, "K", LEAST_KELVIN, GREATEST_KELVIN);
    double lnShift =
        -enthalpyKilojoulesPerMole
                * 1000.0
                / PhysicalConstants.GAS_CONSTANT
                * (1.0 / t - 1.0 / REFERENCE_K)
            + heatCapacityJoulesPerMoleKelvin
                / PhysicalConstants.GAS_CONSTANT
                * (REFERENCE_K / t - 1.0 + Math.log(t / REFERENCE_K));
    return log10At25 + lnShift / LN_10 + a + b * t + c / t + d * Math.log10(t) + e / (t * t);
  }

  /**
   * Returns whether a temperature lies inside the range that the source states for this constant. A
   * constant without a stated range covers no temperature, and a sum covers what all its parts
   * cover. Not covered is not the same as {@link #isBeyondRange(double)}.
   *
   * @param kelvin the temperature, in K
   * @return whether the temperature is covered
   * @throws IllegalArgumentException if the temperature is not more than 0 K
   */
  public boolean covers(double kelvin) {
    return !isBeyondRange(kelvin) && isRangeComplete;
  }

  /**
   * Returns whether a temperature lies outside the range that the source states for this constant,
   * or for one of the parts of a sum. Where no range is stated nothing is beyond it.
   *
   * @param kelvin the temperature, in K
   * @return whether the constant is extrapolated beyond a stated range
   * @throws IllegalArgumentException if the temperature is not more than 0 K
   */
  public boolean isBeyondRange(double kelvin) {
    Checks.positive("temperature", kelvin, "K");
    return (minimumKelvin != null && kelvin < minimumKelvin - RANGE_ROUNDING_K)
        || (maximumKelvin != null && kelvin > maximumKelvin + RANGE_ROUNDING_K);
  }

  /**
   * Returns the constant of the sum of two reactions: K is the product. The range is what the
   * stated ranges have in common; a part without one leaves the sum uncovered within it too.
   * Uncertainty and provenance, which belong to the single values, are dropped.
   *
   * @param other the constant of the other reaction
   * @return the constant of the sum
   */
  public EquilibriumConstant plus(EquilibriumConstant other) {
    return new EquilibriumConstant(
        log10At25 + other.log10At25,
        enthalpyKilojoulesPerMole + other.enthalpyKilojoulesPerMole,
        heatCapacityJoulesPerMoleKelvin + other.heatCapacityJoulesPerMoleKelvin,
        new double[] {a + other.a, b + other.b, c + other.c, d + other.d, e + other.e},
        bound(minimumKelvin, other.minimumKelvin, true),
        bound(maximumKelvin, other.maximumKelvin, false),
        isRangeComplete && other.isRangeComplete,
        null,
        null);
  }

  /**
   * Returns the constant of the reverse reaction, with the same range, uncertainty and provenance.
   *
   * @return the constant of the reverse reaction
   */
  public EquilibriumConstant negate() {
    return new EquilibriumConstant(
        -log10At25,
        -enthalpyKilojoulesPerMole,
        -heatCapacityJoulesPerMoleKelvin,
        new double[] {-a, -b, -c, -d, -e},
        minimumKelvin,
        maximumKelvin,
        isRangeComplete,
        uncertainty,
        provenance);
  }

  /**
   * Returns the least temperature of the stated range.
   *
   * @return the temperature in K; empty when no range is stated
   */
  public OptionalDouble minimumKelvin() {
    return optional(minimumKelvin);
  }

  /**
   * Returns the greatest temperature of the stated range.
   *
   * @return the temperature in K; empty when no range is stated
   */
  public OptionalDouble maximumKelvin() {
    return optional(maximumKelvin);
  }

  /**
   * Returns the uncertainty of log10 K as the source prints it.
   *
   * @return the uncertainty; empty when it is not known
   */
  public OptionalDouble uncertainty() {
    return optional(uncertainty);
  }

  /**
   * Returns where the constant comes from.
   *
   * @return the provenance; empty for a typed or a computed constant
   */
  public Optional<Provenance> provenance() {
    return Optional.ofNullable(provenance);
  }

  /** A text that differs between any two constants that are not equal. */
  String definition() {
    StringBuilder text = new StringBuilder("log10 K " + log10At25);
    if (enthalpyKilojoulesPerMole != 0.0 || heatCapacityJoulesPerMoleKelvin != 0.0) {
      text.append(", dH ").append(enthalpyKilojoulesPerMole);
      text.append(", dCp ").append(heatCapacityJoulesPerMoleKelvin);
    }
    if (!Arrays.equals(coefficients(), new double[5])) {
      text.append(", ").append(Arrays.toString(coefficients()));
    }
    return text.toString();
  }

  private double[] coefficients() {
    return new double[] {a, b, c, d, e};
  }

  private static @Nullable Double bound(
      @Nullable Double one, @Nullable Double other, boolean greater) {
    if (one == null || other == null) {
      return one == null ? other : one;
    }
    return greater ? Math.max(one, other) : Math.min(one, other);
  }

  private static OptionalDouble optional(@Nullable Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof EquilibriumConstant other
        && Double.compare(log10At25, other.log10At25) == 0
        && Double.compare(enthalpyKilojoulesPerMole, other.enthalpyKilojoulesPerMole) == 0
        && Double.compare(heatCapacityJoulesPerMoleKelvin, other.heatCapacityJoulesPerMoleKelvin)
            == 0
        && Arrays.equals(coefficients(), other.coefficients());
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        log10At25, enthalpyKilojoulesPerMole, heatCapacityJoulesPerMoleKelvin, a, b, c, d, e);
  }

  /** Returns log10 K at 25 °C, such as "log10 K = -4.756 at 25 °C". */
  @Override
  public String toString() {
    return String.format(Locale.ROOT, "log10 K = %.4f at 25 °C", log10(REFERENCE_K));
  }
}
