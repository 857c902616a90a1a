package org.brewchem.mash;

import java.util.List;
import java.util.Objects;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Acid;
import org.brewchem.uncertainty.Interval;

/**
 * What may become of a mash on its way to the beer, in ranges and never points: the pH of the wort,
 * at knock-out and of the beer, the acid that takes the wort to a pH, and the chloride and sulfate
 * that the beer may hold. Kettle, hops and yeast decide this, and no balance tells it. Measure, and
 * use the ranges to see whether a measurement is odd. Immutable.
 */
public final class WortToBeer {

  private final SourcedRange mash;
  private final Liquid liquor;
  private final double degrees;

  private WortToBeer(SourcedRange mash, Liquid liquor, double degrees) {
    this.mash = mash;
    this.liquor = liquor;
    this.degrees = degrees;
  }

  /**
   * Starts with a mash.
   *
   * @param mash the mash, whose {@link Mash#interval()} counts
   * @param extract of the wort at knock-out, by mass (°P), above 0 and at most 35 %
   * @return the way
   * @throws IllegalArgumentException if the extract is out of range
   * @throws org.brewchem.figure.UnknownFigureException if the pH of the mash is unknown
   */
  public static WortToBeer of(Mash mash, MassFraction extract) {
    double degrees = WortBuffer.degrees(extract);
    Interval interval = mash.interval();
    return new WortToBeer(
        new SourcedRange(
            "pH of the mash",
            interval.lower(),
            interval.upper(),
            "pH",
            List.of("pH of the mash: 95 % interval of the cooled sample")),
        mash.liquor(),
        degrees);
  }

  /**
   * Returns the pH of the mash.
   *
   * @return the 95 % interval of the cooled sample
   */
  public SourcedRange mashPH() {
    return mash;
  }

  /**
   * Returns the pH of the wort before the boil, cooled.
   *
   * @return that of the mash and by how much worts lie above it
   */
  public SourcedRange wortPH() {
    return mash.plus(WortRanges.RISE_OF_PH_FROM_MASH_TO_WORT, "pH of the wort");
  }

  /**
   * Returns the pH at knock-out, cooled, if nothing is added to the kettle.
   *
   * @return that of the wort less the fall on boiling
   */
  public SourcedRange knockOutPH() {
    return wortPH().minus(WortRanges.FALL_OF_PH_ON_BOILING, "pH at knock-out");
  }

  /**
   * Returns the pH of the beer, if nothing is added after the mash.
   *
   * @return that at knock-out less the fall in fermentation
   */
  public SourcedRange beerPH() {
    return knockOutPH().minus(WortRanges.FALL_OF_PH_IN_FERMENTATION, "pH of the beer");
  }

  /**
   * Returns the strong acid that takes the wort from a measured pH to another at knock-out.
   *
   * @param measured the pH of the cooled wort
   * @param target the pH wanted, below it
   * @param buffer the capacity of the wort
   * @return mEq per litre of wort: what the wort takes up and the free protons of the lower pH
   * @throws IllegalArgumentException if the target is not below the measured pH
   */
  public SourcedRange acid(PH measured, PH target, WortBuffer buffer) {
    Objects.requireNonNull(buffer, "buffer");
    return buffer.acid(MassFraction.ofMassPercent(degrees), measured, target);
  }

  /**
   * Returns the pure acid that takes the wort from a measured pH to another at knock-out, by what a
   * mole of it gives off at the target.
   *
   * @param acid the acid
   * @param measured the pH of the cooled wort
   * @param target the pH wanted, below it
   * @param buffer the capacity of the wort
   * @return g per hectolitre of wort; divide by the assay of what you have. Mind the {@link
   *     #cautions()}
   * @throws IllegalArgumentException if the target is not below the measured pH
   * @throws IllegalStateException if the acid has no molar mass
   */
  public SourcedRange acid(Acid acid, PH measured, PH target, WortBuffer buffer) {
    Objects.requireNonNull(buffer, "buffer");
    return buffer.acid(acid, MassFraction.ofMassPercent(degrees), measured, target);
  }

  /**
   * Returns the chloride that the beer may hold: all of the water's and what malt brings. Losses,
   * and what evaporates or is sparged, are not counted.
   *
   * @return mg per litre of beer
   * @throws org.brewchem.figure.UnknownFigureException if the chloride of the water is unknown
   */
  public SourcedRange chlorideOfTheBeer() {
    return carried(liquor.answer(Figures.CHLORIDE), "malt chloride", "chloride of the beer");
  }

  /**
   * Returns the sulfate that the beer may hold: all of the water's and what malt may bring, of
   * which no number was seen. Losses, and what evaporates or is sparged, are not counted.
   *
   * @return mg per litre of beer
   * @throws org.brewchem.figure.UnknownFigureException if the sulfate of the water is unknown
   */
  public SourcedRange sulfateOfTheBeer() {
    return carried(liquor.answer(Figures.SULFATE), "malt sulfate", "sulfate of the beer");
  }

  private SourcedRange carried(Answer<MassConcentration> ofWater, String malt, String quantity) {
    double own = ofWater.value().inMilligramsPerLitre();
    SourcedRange water =
        new SourcedRange(
            quantity,
            own,
            own,
            "mg/L",
            List.of(ofWater.figure().title() + " of the water: as the water states it"));
    return water.plus(WortRanges.named(malt).times(degrees, quantity, "mg/L"), quantity);
  }

  /**
   * Returns sulfate to chloride of the water.
   *
   * @return the ratio by mass; the beer's is another figure
   */
  public Answer<Double> sulfateToChlorideOfTheWater() {
    return liquor.answer(Figures.SULFATE_TO_CHLORIDE);
  }

  /**
   * Returns sulfate to chloride of the beer, which malt moves far from that of the water.
   *
   * @return the ratio by mass
   * @throws org.brewchem.figure.UnknownFigureException if sulfate or chloride of the water is
   *     unknown
   * @throws IllegalArgumentException if the chloride of the beer may be 0
   */
  public SourcedRange sulfateToChlorideOfTheBeer() {
    SourcedRange sulfate = sulfateOfTheBeer();
    SourcedRange chloride = chlorideOfTheBeer();
    Checks.positive("chloride of the beer", chloride.lower(), "mg/L");
    return new SourcedRange(
        "sulfate to chloride of the beer",
        sulfate.lower() / chloride.upper(),
        sulfate.upper() / chloride.lower(),
        "by mass",
        SourcedRange.both(sulfate.basis(), chloride.basis()));
  }

  /**
   * Returns the usual cautions for acid into wort (common practice, no source). Local law, the
   * supplier's safety data sheet and a trained person outrank them.
   *
   * @return the cautions
   */
  public List<Caution> cautions() {
    return Caution.of(List.of(Hazard.ACID, Hazard.DOSING_FOOD));
  }
}
