package org.brewchem.beer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.jspecify.annotations.Nullable;

/**
 * What a beer shall be: a band for each key figure that matters. A figure without a band is not
 * judged. Immutable.
 */
public final class Target {

  private final String name;
  private final @Nullable Band<PH> pH;
  private final @Nullable Band<TitratableAcidity> acidity;
  private final @Nullable Band<Double> sulfateToChloride;
  private final @Nullable Band<MassConcentration> calcium;

  private Target(
      String name,
      @Nullable Band<PH> pH,
      @Nullable Band<TitratableAcidity> acidity,
      @Nullable Band<Double> sulfateToChloride,
      @Nullable Band<MassConcentration> calcium) {
    this.name = Checks.notBlank("name of the target", name);
    this.pH = pH;
    this.acidity = acidity;
    this.sulfateToChloride = sulfateToChloride;
    this.calcium = calcium;
  }

  /**
   * Starts a target without bands.
   *
   * @param name the name, such as that of the beer
   * @return the target
   * @throws IllegalArgumentException if the name is blank
   */
  public static Target named(String name) {
    return new Target(name, null, null, null, null);
  }

  /**
   * Sets the band of the pH.
   *
   * @param band the band
   * @return the target with it
   */
  public Target withPH(Band<PH> band) {
    return new Target(name, band, acidity, sulfateToChloride, calcium);
  }

  /**
   * Sets the band of the titratable acidity.
   *
   * @param band the band, with the end point to which the beer is titrated
   * @return the target with it
   */
  public Target withAcidity(Band<TitratableAcidity> band) {
    return new Target(name, pH, band, sulfateToChloride, calcium);
  }

  /**
   * Sets the band of sulfate to chloride.
   *
   * @param byMass the band of mg/L of sulfate over mg/L of chloride
   * @return the target with it
   * @throws IllegalArgumentException if a limit is negative or not finite
   */
  public Target withSulfateToChloride(Band<Double> byMass) {
    byMass.lower().ifPresent(limit -> Checks.nonNegative("sulfate to chloride", limit, ""));
    byMass.upper().ifPresent(limit -> Checks.nonNegative("sulfate to chloride", limit, ""));
    return new Target(name, pH, acidity, byMass, calcium);
  }

  /**
   * Sets the band of calcium.
   *
   * @param band the band
   * @return the target with it
   */
  public Target withCalcium(Band<MassConcentration> band) {
    return new Target(name, pH, acidity, sulfateToChloride, band);
  }

  /**
   * Returns the name.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * Returns the band of the pH.
   *
   * @return the band; empty when the pH is not judged
   */
  public Optional<Band<PH>> pH() {
    return Optional.ofNullable(pH);
  }

  /**
   * Returns the band of the titratable acidity.
   *
   * @return the band; empty when it is not judged
   */
  public Optional<Band<TitratableAcidity>> acidity() {
    return Optional.ofNullable(acidity);
  }

  /**
   * Returns the band of sulfate to chloride.
   *
   * @return the band; empty when it is not judged
   */
  public Optional<Band<Double>> sulfateToChloride() {
    return Optional.ofNullable(sulfateToChloride);
  }

  /**
   * Returns the band of calcium.
   *
   * @return the band; empty when it is not judged
   */
  public Optional<Band<MassConcentration>> calcium() {
    return Optional.ofNullable(calcium);
  }

  /**
   * Compares the figures of a beer with the bands.
   *
   * @param figures the figures, measured or predicted
   * @return one row for each band
   * @throws IllegalArgumentException if the beer was titrated to another end point than the target
   */
  public Comparison compare(KeyFigures figures) {
    List<Comparison.Row> rows = new ArrayList<>();
    pH().ifPresent(band -> rows.add(row(KeyFigure.PH, band, figures.pH(), PH::value)));
    acidity()
        .ifPresent(
            band ->
                rows.add(
                    row(
                        KeyFigure.TITRATABLE_ACIDITY,
                        band,
                        figures.acidity(),
                        TitratableAcidity::inMilliequivalentsPerLitre)));
    sulfateToChloride()
        .ifPresent(
            band ->
                rows.add(
                    row(
                        KeyFigure.SULFATE_TO_CHLORIDE,
                        band,
                        figures.sulfateToChloride(),
                        ratio -> ratio)));
    calcium()
        .ifPresent(
            band ->
                rows.add(
                    row(
                        KeyFigure.CALCIUM,
                        band,
                        figures.calcium(),
                        MassConcentration::inMilligramsPerLitre)));
    return new Comparison(name, List.copyOf(rows));
  }

  private static <V extends Comparable<V>> Comparison.Row row(
      KeyFigure kind, Band<V> band, Optional<Figure<V>> figure, ToDoubleFunction<V> inUnit) {
    // values that do not compare, such as acidities to different end points, throw here
    figure.ifPresent(
        known -> band.lower().or(band::upper).ifPresent(limit -> known.value().compareTo(limit)));
    return new Comparison.Row(
        kind,
        figure.orElse(null),
        band.lower().map(inUnit::applyAsDouble).orElse(Double.NEGATIVE_INFINITY),
        band.upper().map(inUnit::applyAsDouble).orElse(Double.POSITIVE_INFINITY),
        band.aim().map(inUnit::applyAsDouble).orElse(null));
  }

  /** Returns the name and the bands. */
  @Override
  public String toString() {
    return compare(KeyFigures.none()).rows().stream()
        .map(row -> row.kind() + " " + row.band())
        .collect(Collectors.joining("\n", name + "\n", ""));
  }
}
