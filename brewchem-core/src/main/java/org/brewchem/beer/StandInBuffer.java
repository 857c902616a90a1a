package org.brewchem.beer;

import java.util.Map;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.titration.TypicalBeer;

/**
 * A stand-in for the buffering of a beer that nobody has measured: the acids of a {@link
 * TypicalBeer} in fixed amounts, and its lumped protein groups scaled until the whole has the
 * measured titratable acidity. Nothing else is scaled.
 *
 * <p>An acid of which the beer's own total is known keeps that total. The proportion of the groups,
 * carboxyl to imidazole to amino of peptides to amino of amino acids as 4 : 1 : 1 : 1, is our own
 * choice after ranges from memory, and their pKa do not change with temperature.
 *
 * <p>A pH change predicted with a stand-in carries a relative standard uncertainty of 30 % at
 * least: beers differ that much, and the proportion of the groups alone moves the slope by a good
 * part of it. A measured buffer is always better, and for a sour beer, whose acid is mostly lactic,
 * the stand-in is a poor guess. Immutable.
 */
public final class StandInBuffer implements Buffering {

  /** The relative standard uncertainty of a predicted change of pH. */
  public static final double RELATIVE_STANDARD_UNCERTAINTY_OF_CHANGE = 0.30;

  private static final double MOST_GROUPS = 1000;

  private final TitratableAcidity acidity;

  private StandInBuffer(TitratableAcidity acidity) {
    this.acidity = acidity;
  }

  /**
   * Returns the stand-in for a beer of a titratable acidity.
   *
   * @param measured the acidity, above 0
   * @return the stand-in
   * @throws IllegalArgumentException if the acidity is not above 0
   */
  public static StandInBuffer matching(TitratableAcidity measured) {
    Checks.positive("titratable acidity", measured.inMilliequivalentsPerLitre(), "mEq/L");
    return new StandInBuffer(measured);
  }

  /**
   * Returns the titratable acidity that the stand-in matches.
   *
   * @return the acidity
   */
  public TitratableAcidity acidity() {
    return acidity;
  }

  /**
   * Returns the least titratable acidity that the stand-in can have at a pH: that of its acids
   * alone, without any groups.
   *
   * @param known the ions that are known of the beer
   * @param measured the pH of the beer
   * @return the acidity, to the end point of the one to match
   */
  public TitratableAcidity smallestAcidity(Solution known, PH measured) {
    return withGroups(withAcids(known), 0, measured).titratableAcidity(acidity.endPoint());
  }

  /**
   * Returns the solution that stands for the beer.
   *
   * @throws AcidityBelowStandInException if the acids alone have more than the acidity to match
   */
  @Override
  public Solution closed(Solution known, PH measured) {
    Solution acids = withAcids(known);
    TitratableAcidity smallest =
        withGroups(acids, 0, measured).titratableAcidity(acidity.endPoint());
    double missing = acidity.minus(smallest).inMilliequivalentsPerLitre();
    if (missing < 0) {
      throw new AcidityBelowStandInException(acidity, measured, smallest);
    }
    if (missing == 0) {
      return withGroups(acids, 0, measured);
    }
    double factor =
        Roots.rising(
                scale ->
                    withGroups(acids, scale, measured)
                        .titratableAcidity(acidity.endPoint())
                        .minus(acidity)
                        .inMilliequivalentsPerLitre(),
                0,
                1,
                MOST_GROUPS)
            .orElseThrow(
                end ->
                    new IllegalArgumentException(
                        "titratable acidity: "
                            + acidity
                            + " at "
                            + measured
                            + " is not possible; no amount of the stand-in's groups has it"));
    return withGroups(acids, factor, measured);
  }

  private static Solution withAcids(Solution known) {
    Solution sum = known;
    for (Map.Entry<Component, Molality> acid :
        TypicalBeer.namedAcids(known.temperature()).totals().entrySet()) {
      if (!known.totals().containsKey(acid.getKey())) {
        sum = sum.with(acid.getKey(), acid.getValue());
      }
    }
    return sum;
  }

  private static Solution withGroups(Solution acids, double factor, PH measured) {
    return acids.plus(TypicalBeer.lumpedGroups(acids.temperature(), factor)).closedTo(measured);
  }

  /** The share of the acidity that the scaled groups carry. */
  double shareOfGroups(Solution known, PH measured) {
    return acidity.minus(smallestAcidity(known, measured)).inMilliequivalentsPerLitre()
        / acidity.inMilliequivalentsPerLitre();
  }

  @Override
  public double standardUncertaintyOf(PH measured, PH predicted) {
    return RELATIVE_STANDARD_UNCERTAINTY_OF_CHANGE * Math.abs(predicted.minus(measured));
  }

  /** Returns false: nothing was measured, which {@link #basis()} says. */
  @Override
  public boolean extrapolatedAt(PH predicted) {
    return false;
  }

  @Override
  public String basis() {
    return "the buffering is a stand-in, the acids of an average beer with protein groups scaled to"
        + " the measured acidity, so that a change of pH is known to 30 % (standard uncertainty) at"
        + " best";
  }

  /** Returns what it is and the acidity that it matches. */
  @Override
  public String toString() {
    return "stand-in buffer matching " + acidity;
  }
}
