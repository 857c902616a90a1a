package org.brewchem.beer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.jspecify.annotations.Nullable;

/**
 * The key figures of a beer, as far as they are known: pH, titratable acidity, sulfate to chloride
 * by mass, and calcium. A figure that is not known is missing; it is neither zero nor guessed.
 *
 * <p>Each figure can carry its standard uncertainty, in its own unit. Immutable.
 */
public final class KeyFigures {

  private static final KeyFigures NONE = new KeyFigures(null, null, null, null);

  private final @Nullable Figure<PH> pH;
  private final @Nullable Figure<TitratableAcidity> acidity;
  private final @Nullable Figure<Double> sulfateToChloride;
  private final @Nullable Figure<MassConcentration> calcium;

  private KeyFigures(
      @Nullable Figure<PH> pH,
      @Nullable Figure<TitratableAcidity> acidity,
      @Nullable Figure<Double> sulfateToChloride,
      @Nullable Figure<MassConcentration> calcium) {
    this.pH = pH;
    this.acidity = acidity;
    this.sulfateToChloride = sulfateToChloride;
    this.calcium = calcium;
  }

  /**
   * Starts with nothing known.
   *
   * @return key figures that are all missing
   */
  public static KeyFigures none() {
    return NONE;
  }

  /**
   * Adds the pH measured in the beer.
   *
   * @param value the pH
   * @return key figures with it
   */
  public KeyFigures withPH(PH value) {
    return with(Figure.of(value, null, Origin.MEASURED_IN_BEER));
  }

  /**
   * Adds the pH measured in the beer with its uncertainty.
   *
   * @param value the pH
   * @param standardUncertainty u, 0 or more
   * @return key figures with it
   * @throws IllegalArgumentException if the uncertainty is negative or not finite
   */
  public KeyFigures withPH(PH value, double standardUncertainty) {
    return with(Figure.of(value, standardUncertainty, Origin.MEASURED_IN_BEER));
  }

  /**
   * Adds the titratable acidity measured in the beer.
   *
   * @param value the acidity
   * @return key figures with it
   */
  public KeyFigures withAcidity(TitratableAcidity value) {
    return withAcidity(Figure.of(value, null, Origin.MEASURED_IN_BEER));
  }

  /**
   * Adds the titratable acidity measured in the beer with its uncertainty.
   *
   * @param value the acidity
   * @param standardUncertainty u, 0 or more, to the same end point
   * @return key figures with it
   * @throws IllegalArgumentException if the uncertainty is negative or has another end point
   */
  public KeyFigures withAcidity(TitratableAcidity value, TitratableAcidity standardUncertainty) {
    return withAcidity(Figure.of(value, standardUncertainty, Origin.MEASURED_IN_BEER));
  }

  /**
   * Adds sulfate to chloride.
   *
   * @param ratioByMass mg/L of sulfate over mg/L of chloride, 0 or more
   * @param origin where it comes from
   * @return key figures with it
   * @throws IllegalArgumentException if the ratio is negative or not finite
   */
  public KeyFigures withSulfateToChloride(double ratioByMass, Origin origin) {
    return withRatio(Figure.ofRatio(ratioByMass, null, origin));
  }

  /**
   * Adds sulfate to chloride with its uncertainty.
   *
   * @param ratioByMass mg/L of sulfate over mg/L of chloride, 0 or more
   * @param standardUncertainty u, 0 or more
   * @param origin where it comes from
   * @return key figures with it
   * @throws IllegalArgumentException if a number is negative or not finite
   */
  public KeyFigures withSulfateToChloride(
      double ratioByMass, double standardUncertainty, Origin origin) {
    return withRatio(Figure.ofRatio(ratioByMass, standardUncertainty, origin));
  }

  /**
   * Adds calcium.
   *
   * @param value the concentration
   * @param origin where it comes from
   * @return key figures with it
   */
  public KeyFigures withCalcium(MassConcentration value, Origin origin) {
    return withCalcium(Figure.ofCalcium(value, null, origin));
  }

  /**
   * Adds calcium with its uncertainty.
   *
   * @param value the concentration
   * @param standardUncertainty u
   * @param origin where it comes from
   * @return key figures with it
   */
  public KeyFigures withCalcium(
      MassConcentration value, MassConcentration standardUncertainty, Origin origin) {
    return withCalcium(Figure.ofCalcium(value, standardUncertainty, origin));
  }

  KeyFigures with(Figure<PH> figure) {
    return new KeyFigures(figure, acidity, sulfateToChloride, calcium);
  }

  KeyFigures withAcidity(Figure<TitratableAcidity> figure) {
    return new KeyFigures(pH, figure, sulfateToChloride, calcium);
  }

  KeyFigures withRatio(Figure<Double> figure) {
    return new KeyFigures(pH, acidity, figure, calcium);
  }

  KeyFigures withCalcium(Figure<MassConcentration> figure) {
    return new KeyFigures(pH, acidity, sulfateToChloride, figure);
  }

  /**
   * Returns the pH.
   *
   * @return the pH; empty when it is missing
   */
  public Optional<Figure<PH>> pH() {
    return Optional.ofNullable(pH);
  }

  /**
   * Returns the titratable acidity.
   *
   * @return the acidity; empty when it is missing
   */
  public Optional<Figure<TitratableAcidity>> acidity() {
    return Optional.ofNullable(acidity);
  }

  /**
   * Returns sulfate to chloride by mass.
   *
   * @return the ratio; empty when it is missing
   */
  public Optional<Figure<Double>> sulfateToChloride() {
    return Optional.ofNullable(sulfateToChloride);
  }

  /**
   * Returns calcium.
   *
   * @return the concentration; empty when it is missing
   */
  public Optional<Figure<MassConcentration>> calcium() {
    return Optional.ofNullable(calcium);
  }

  /** Returns the known figures, one a line. */
  @Override
  public String toString() {
    List<Figure<?>> known = new ArrayList<>();
    pH().ifPresent(known::add);
    acidity().ifPresent(known::add);
    sulfateToChloride().ifPresent(known::add);
    calcium().ifPresent(known::add);
    return known.isEmpty()
        ? "no key figures"
        : known.stream().map(Figure::toString).collect(Collectors.joining("\n"));
  }
}
