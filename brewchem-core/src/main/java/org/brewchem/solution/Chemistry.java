package org.brewchem.solution;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.brewchem.internal.Checks;
import org.brewchem.internal.WaterProperties;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.PairSet;
import org.jspecify.annotations.Nullable;

/**
 * The choices behind a calculation: the level, the dissociation constants, the activity rule, the
 * ion pairs and the ion product of water.
 *
 * <p>Immutable, and equal by its choices; an ion product of your own is equal only to itself.
 * {@link #standard()} is the default everywhere: level pairs, {@link ConstantSet#standard()},
 * {@link PairSet#standard()}, the Davies equation, and the ion product of IAPWS R11-07. Without
 * calcium and magnesium, and without phosphate beside sodium or potassium, level pairs is level
 * activity.
 */
public final class Chemistry {

  private static final Chemistry STANDARD =
      new Chemistry(
          Level.PAIRS,
          ConstantSet.standard(),
          ActivityRule.davies(),
          null,
          "IAPWS R11-07",
          Chemistry::log10IonProductByIapws);

  private static final double LEAST_KELVIN = 250;
  private static final double GREATEST_KELVIN = 400;

  private final Level level;
  private final ConstantSet constants;
  private final ActivityRule activityRule;
  private final @Nullable PairSet statedPairs;
  private final String ionProductName;
  private final DoubleUnaryOperator log10IonProduct;

  private static double log10IonProductByIapws(double kelvin) {
    return -WaterProperties.ionProductExponent(
        kelvin, WaterProperties.densityKgPerCubicMetre(kelvin));
  }

  private Chemistry(
      Level level,
      ConstantSet constants,
      ActivityRule activityRule,
      @Nullable PairSet statedPairs,
      String ionProductName,
      DoubleUnaryOperator log10IonProduct) {
    this.level = level;
    this.constants = constants;
    this.activityRule = activityRule;
    this.statedPairs = statedPairs;
    this.ionProductName = ionProductName;
    this.log10IonProduct = log10IonProduct;
  }

  /**
   * Returns the default choices, at level pairs.
   *
   * @return the chemistry
   */
  public static Chemistry standard() {
    return STANDARD;
  }

  /**
   * Returns the default choices at a level.
   *
   * @param level the level
   * @return the chemistry
   */
  public static Chemistry of(Level level) {
    Objects.requireNonNull(level, "level");
    return STANDARD.at(level);
  }

  /**
   * Returns the arithmetic of a textbook: level ideal and pKw as the exercise prints it, at every
   * temperature.
   *
   * @param pKw the ion product's exponent, 10 to 16
   * @return the chemistry
   * @throws IllegalArgumentException if pKw is out of range
   */
  public static Chemistry textbook(double pKw) {
    double checked = Checks.inRange("pKw", pKw, "", 10, 16);
    return of(Level.IDEAL)
        .withIonProduct(String.format(Locale.ROOT, "pKw %.4g", pKw), new Always(-checked));
  }

  /**
   * Returns the same choices at another level.
   *
   * @param other the level
   * @return the chemistry
   */
  public Chemistry at(Level other) {
    Objects.requireNonNull(other, "level");
    return other == level
        ? this
        : new Chemistry(
            other, constants, activityRule, statedPairs, ionProductName, log10IonProduct);
  }

  /**
   * Returns the same choices with other dissociation constants.
   *
   * @param other the constants
   * @return the chemistry
   */
  public Chemistry withConstants(ConstantSet other) {
    Objects.requireNonNull(other, "other");
    return new Chemistry(level, other, activityRule, statedPairs, ionProductName, log10IonProduct);
  }

  /**
   * Returns the same choices with another activity rule, and with the ion pairs that belong with it
   * unless others were stated.
   *
   * @param other the rule
   * @return the chemistry
   */
  public Chemistry withActivityRule(ActivityRule other) {
    Objects.requireNonNull(other, "other");
    return new Chemistry(level, constants, other, statedPairs, ionProductName, log10IonProduct);
  }

  /**
   * Returns the same choices with other ion pairs, which count at level pairs only.
   *
   * @param other the pairs
   * @return the chemistry
   */
  public Chemistry withPairs(PairSet other) {
    Objects.requireNonNull(other, "other");
    return new Chemistry(level, constants, activityRule, other, ionProductName, log10IonProduct);
  }

  /**
   * Returns the same choices with another ion product of water.
   *
   * @param name what the ion product is called or taken from
   * @param log10OfKelvin log10 of the ion product on molal activities as a function of the
   *     temperature in kelvin
   * @return the chemistry
   */
  public Chemistry withIonProduct(String name, DoubleUnaryOperator log10OfKelvin) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(log10OfKelvin, "log10Of kelvin");
    return new Chemistry(level, constants, activityRule, statedPairs, name, log10OfKelvin);
  }

  /**
   * Returns the level.
   *
   * @return the level
   */
  public Level level() {
    return level;
  }

  /**
   * Returns the dissociation constants.
   *
   * @return the set
   */
  public ConstantSet constants() {
    return constants;
  }

  /**
   * Returns the activity rule.
   *
   * @return the rule
   */
  public ActivityRule activityRule() {
    return activityRule;
  }

  /**
   * Returns the ion pairs: those stated, else those that belong with the activity rule.
   *
   * @return the set
   */
  public PairSet pairs() {
    return statedPairs == null ? activityRule.pairs() : statedPairs;
  }

  /**
   * Returns the ion product of water.
   *
   * @param kelvin temperature in kelvin, 250 to 400; sources cover 273.15 to 373.15
   * @return log10 of the ion product on molal activities
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public double log10IonProduct(double kelvin) {
    return log10IonProduct.applyAsDouble(
        Checks.inRange("temperature", kelvin, "K", LEAST_KELVIN, GREATEST_KELVIN));
  }

  /**
   * Returns which of the constants that these choices use for a mixture do not cover a temperature:
   * those whose stated range it leaves, and those of unstated range. The dissociation steps come
   * first, in the order of the components, then, at level pairs, the ion pairs that the components
   * can form. The ion product of water, a function of temperature without a range, is not among
   * them.
   *
   * @param components what the mixture holds
   * @param temperature the temperature
   * @return an unmodifiable list, empty when every constant covers the temperature
   * @throws IllegalArgumentException if the constants of a component are missing
   */
  public List<UncoveredConstant> uncoveredConstants(
      Collection<Component> components, Temperature temperature) {
    List<UncoveredConstant> uncovered = new ArrayList<>();
    for (Component component : components) {
      int step = 0;
      for (EquilibriumConstant constant : constants.of(component)) {
        step++;
        UncoveredConstant.ofStep(component, step, constant, temperature).ifPresent(uncovered::add);
      }
    }
    for (IonPair pair : pairsAmong(components)) {
      UncoveredConstant.ofPair(pair, temperature).ifPresent(uncovered::add);
    }
    return List.copyOf(uncovered);
  }

  /** Returns what the ion product is called or taken from. */
  String ionProductName() {
    return ionProductName;
  }

  /** Returns the ion pairs that count at this level and that the components can form. */
  List<IonPair> pairsAmong(Collection<Component> components) {
    if (level != Level.PAIRS) {
      return List.of();
    }
    Set<Component> present = new HashSet<>(components);
    return pairs().pairs().stream()
        .filter(pair -> pair.metal().map(present::contains).orElse(true))
        .filter(pair -> pair.ligand().map(present::contains).orElse(true))
        .toList();
  }

  private List<Object> choices() {
    return List.of(level, constants, activityRule, pairs(), ionProductName, log10IonProduct);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Chemistry other && choices().equals(other.choices());
  }

  @Override
  public int hashCode() {
    return choices().hashCode();
  }

  @Override
  public String toString() {
    return "level "
        + level.name().toLowerCase(Locale.ROOT)
        + ", constants "
        + constants.name()
        + (level == Level.IDEAL ? "" : ", activity by " + activityRule)
        + (level == Level.PAIRS ? ", pairs " + pairs().name() : "")
        + ", ion product "
        + ionProductName;
  }

  /** The same at every temperature; unlike a lambda equal to another of the same number. */
  private record Always(double log10) implements DoubleUnaryOperator {
    @Override
    public double applyAsDouble(double kelvin) {
      return log10;
    }
  }
}
