package org.brewchem.beer;

import java.util.List;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Buffering;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.HowKnown;
import org.brewchem.substance.Provenance;

/**
 * A stand-in for the buffering of a beer that nobody has measured: the acids of an average beer in
 * fixed amounts, and lumped groups of its proteins scaled until the whole has the measured
 * titratable acidity.
 *
 * <p>The acids are the means of Montanari, Perretti, Natella, Guidi and Fantozzi (LWT 32 (1999)
 * 535, seen), rounded to 0.1 mmol/L, and phosphate at 6 mmol/L (from memory); {@link #acids()}
 * lists them with their sources. An acid of which the beer's own total is known keeps that total.
 * The lumped groups are carboxyl (pKa 4.3), imidazole (6.1), terminal amino (7.5) and amino (9) in
 * the proportion 4 : 1 : 1 : 1, which is our own choice, after ranges from memory; their pKa do not
 * change with temperature. They are the only part that is scaled.
 *
 * <p>A pH change predicted with a stand-in carries a relative standard uncertainty of 30 % at
 * least: beers differ that much, and the proportion of the groups alone moves the slope by a good
 * part of it. A measured buffer is always better, and for a sour beer, whose acid is mostly lactic,
 * the stand-in is a poor guess. Immutable.
 */
public final class StandInBuffer implements Buffering {

  /** The relative standard uncertainty of a predicted change of pH. */
  public static final double RELATIVE_STANDARD_UNCERTAINTY_OF_CHANGE = 0.30;

  private static final List<Part> ACIDS =
      List.of(
          mean(Acid.LACTIC, 1.4, "mean 128 mg/L"),
          mean(Acid.CITRIC, 0.6, "mean 116 mg/L"),
          mean(Acid.ACETIC, 1.8, "mean 108 mg/L"),
          mean(Acid.SUCCINIC, 0.6, "mean 68 mg/L"),
          mean(Acid.MALIC, 0.5, "mean 63 mg/L"),
          mean(Acid.PYRUVIC, 0.5, "mean 44 mg/L, pyruvic and fumaric acid together"),
          new Part(
              Acid.PHOSPHORIC,
              AmountConcentration.ofMillimolesPerLitre(6),
              new Provenance(
                  "briggs-2004",
                  "not recorded",
                  HowKnown.FROM_MEMORY,
                  "our choice amid 300 to 1000 mg/L as phosphate")));

  private static final Component CARBOXYL = Component.group("carboxyl groups", -1, 4.3);
  private static final Component IMIDAZOLE = Component.group("imidazole groups", 0, 6.1);
  private static final Component TERMINAL_AMINO = Component.group("terminal amino groups", 0, 7.5);
  private static final Component AMINO = Component.group("amino groups", 0, 9);
  private static final double CARBOXYL_PER_IMIDAZOLE = 4;

  private static final double MOST_MILLIMOLES_OF_IMIDAZOLE = 1000;
  private static final int EVALUATIONS = 100;

  private final TitratableAcidity acidity;

  private StandInBuffer(TitratableAcidity acidity) {
    this.acidity = acidity;
  }

  /**
   * An acid of the stand-in, in its fixed amount.
   *
   * @param acid the acid
   * @param concentration its total, all its forms together
   * @param provenance where the amount comes from
   */
  public record Part(Acid acid, AmountConcentration concentration, Provenance provenance) {}

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

  private static Part mean(Acid acid, double millimolesPerLitre, String printed) {
    return new Part(
        acid,
        AmountConcentration.ofMillimolesPerLitre(millimolesPerLitre),
        new Provenance(
            "montanari-1999", "organic acids of beers", HowKnown.SEEN, printed + ", rounded"));
  }

  /**
   * Returns the acids in their fixed amounts.
   *
   * @return an unmodifiable list
   */
  public static List<Part> acids() {
    return ACIDS;
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
    double imidazole =
        new BrentSolver(1e-14, 1e-14, 1e-13)
            .solve(
                EVALUATIONS,
                scale ->
                    withGroups(acids, scale, measured)
                        .titratableAcidity(acidity.endPoint())
                        .minus(acidity)
                        .inMilliequivalentsPerLitre(),
                0,
                upperScale(acids, measured));
    return withGroups(acids, imidazole, measured);
  }

  private double upperScale(Solution acids, PH measured) {
    double scale = acidity.inMilliequivalentsPerLitre();
    while (withGroups(acids, scale, measured)
            .titratableAcidity(acidity.endPoint())
            .compareTo(acidity)
        < 0) {
      if (scale > MOST_MILLIMOLES_OF_IMIDAZOLE) {
        throw new IllegalArgumentException(
            "titratable acidity: "
                + acidity
                + " at "
                + measured
                + " is not possible; no amount of the stand-in's groups has it");
      }
      scale *= 2;
    }
    return scale;
  }

  private static Solution withAcids(Solution known) {
    Solution sum = known;
    for (Part part : ACIDS) {
      if (known.total(part.acid().component()).inMolesPerLitre() == 0) {
        sum = sum.with(part.acid(), part.concentration());
      }
    }
    return sum;
  }

  private static Solution withGroups(Solution acids, double imidazoleMillimoles, PH measured) {
    AmountConcentration each = AmountConcentration.ofMillimolesPerLitre(imidazoleMillimoles);
    return acids
        .with(CARBOXYL, each.times(CARBOXYL_PER_IMIDAZOLE))
        .with(IMIDAZOLE, each)
        .with(TERMINAL_AMINO, each)
        .with(AMINO, each)
        .closedTo(measured);
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
