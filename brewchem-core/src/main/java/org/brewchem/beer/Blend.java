package org.brewchem.beer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Ion;
import org.jspecify.annotations.Nullable;

/**
 * A blend of two beers: the volumes, and the figures to expect.
 *
 * <p>Totals and strong-ion difference mix exactly by volume, and pH does not mix at all: the better
 * buffered beer pulls harder. Titratable acidity to a fixed end point mixes exactly by volume at
 * level ideal, to about 0.2 % at level activity, and less well where the calcium of one beer meets
 * the phosphate of the other. Volumes are taken as additive.
 *
 * <p>Immutable.
 */
public final class Blend {

  private final Beer first;
  private final Beer second;
  private final Volume volume;
  private final double share;
  private final Solution mixture;
  private final PH pH;
  private final TitratableAcidity acidity;

  Blend(
      Beer first,
      Beer second,
      Volume volume,
      double share,
      Solution mixture,
      TitratableAcidity acidity) {
    this.first = first;
    this.second = second;
    this.volume = volume;
    this.share = share;
    this.mixture = mixture;
    this.pH = mixture.pH();
    this.acidity = acidity;
  }

  /**
   * Returns the volume of the first beer.
   *
   * @return the volume
   */
  public Volume ofFirst() {
    return volume.times(share);
  }

  /**
   * Returns the volume of the second beer.
   *
   * @return the volume
   */
  public Volume ofSecond() {
    return volume.minus(ofFirst());
  }

  /**
   * Returns the share of the first beer in the volume.
   *
   * @return a fraction from 0 to 1
   */
  public double shareOfFirst() {
    return share;
  }

  /**
   * Returns the pH to expect.
   *
   * @return the pH; {@link #after()} has its uncertainty
   */
  public PH pH() {
    return pH;
  }

  /**
   * Returns the titratable acidity to expect.
   *
   * @return the acidity; {@link #after()} has its uncertainty
   */
  public TitratableAcidity acidity() {
    return acidity;
  }

  /**
   * Returns the solution that stands for the blend.
   *
   * @return the solution
   */
  public Solution solution() {
    return mixture;
  }

  /**
   * Returns the key figures to expect.
   *
   * @return pH and acidity with their uncertainties; calcium, and sulfate to chloride, where they
   *     are known of both beers
   */
  public KeyFigures after() {
    double weight = weightOfFirst();
    double uncertaintyOfPH =
        Math.hypot(weight * uncertaintyAtBlend(first), (1 - weight) * uncertaintyAtBlend(second));
    double uncertaintyOfAcidity =
        Math.hypot(
            share * first.acidityFigure().standardUncertainty().orElse(0),
            (1 - share) * second.acidityFigure().standardUncertainty().orElse(0));
    return Beer.keyFigures(
        Figure.of(pH, uncertaintyOfPH, Origin.PREDICTED),
        Figure.of(
            acidity,
            TitratableAcidity.ofMilliequivalentsPerLitre(uncertaintyOfAcidity, acidity.endPoint()),
            Origin.PREDICTED),
        ions());
  }

  /** How hard the first beer pulls at the pH of the blend: its share of the buffer capacity. */
  private double weightOfFirst() {
    double one = share * first.solution().bufferCapacity(pH).inMilliequivalentsPerLitrePerPH();
    double other =
        (1 - share) * second.solution().bufferCapacity(pH).inMilliequivalentsPerLitrePerPH();
    return one / (one + other);
  }

  private double uncertaintyAtBlend(Beer beer) {
    return Math.hypot(
        beer.pHFigure().standardUncertainty().orElse(0), beer.uncertaintyOfChangeTo(pH));
  }

  private Map<Ion, Beer.Content> ions() {
    Map<Ion, Beer.Content> both = new LinkedHashMap<>();
    first
        .ions()
        .forEach(
            (ion, one) -> {
              Beer.Content other = second.ions().get(ion);
              if (other != null) {
                both.put(ion, mixed(one, other));
              }
            });
    return both;
  }

  private Beer.Content mixed(Beer.Content one, Beer.Content other) {
    MassConcentration u = one.standardUncertainty();
    MassConcentration v = other.standardUncertainty();
    @Nullable MassConcentration both =
        u == null || v == null
            ? null
            : MassConcentration.ofMilligramsPerLitre(
                Math.hypot(
                    share * u.inMilligramsPerLitre(), (1 - share) * v.inMilligramsPerLitre()));
    boolean measured =
        one.origin() == Origin.MEASURED_IN_BEER && other.origin() == Origin.MEASURED_IN_BEER;
    return new Beer.Content(
        one.concentration().times(share).plus(other.concentration().times(1 - share)),
        both,
        measured ? Origin.PREDICTED : Origin.TAKEN_FROM_WATER);
  }

  /**
   * Returns what a brewer should know about the two beers and this prediction.
   *
   * @return the findings of both beers, each once, and those of the blend
   */
  public List<BeerFinding> findings() {
    List<BeerFinding> findings = new ArrayList<>(first.findings());
    second.findings().stream().filter(f -> !findings.contains(f)).forEach(findings::add);
    if (mixture.equilibrium().beyondActivityRange()) {
      findings.add(
          new BeerFinding(
              BeerFinding.Kind.BEYOND_ACTIVITY_RANGE,
              "the ionic strength is beyond the range of the activity rule"));
    }
    return List.copyOf(findings);
  }

  /**
   * Returns the usual cautions for blending (common practice, no source).
   *
   * @return the cautions
   */
  public List<String> cautions() {
    return List.of(
        "Blend on the bench first: measure pH and acidity, and taste.",
        "Exclude air, and purge the receiving tank with the caution that carbon dioxide asks for.",
        "A sour beer can carry living microbes into a clean one; look before the blend, not after.");
  }

  /** Returns the volumes and the figures to expect in a line. */
  @Override
  public String toString() {
    KeyFigures after = after();
    return NumberText.significant(ofFirst().inHectolitres(), 4)
        + " hL of the first and "
        + NumberText.significant(ofSecond().inHectolitres(), 4)
        + " hL of the second beer; expected "
        + after.pH().orElseThrow().text()
        + "; "
        + after.acidity().orElseThrow().text();
  }
}
