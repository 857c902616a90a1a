package org.brewchem.checks.causes;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.util.List;
import java.util.SplittableRandom;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answer;
import org.brewchem.quality.Difference;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.substance.Ion;
import org.brewchem.uncertainty.MethodPrecision;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/**
 * A simulated pair of batches: an earlier one, and a later one that a cause has moved and that is
 * read with the noise of both. Effects are those of {@code simulated-effects.csv}. Another malt
 * moves pH and acidity in any proportion and either way: the size times the sine and cosine of an
 * angle of which each is as likely, for malts differ in acid and in buffers.
 *
 * <p>Each reading is normal and independent of the others; the residual alkalinity is computed from
 * readings of the water and shares the noise of its alkalinity.
 */
final class CausePair {

  /** Sizes, each as likely: standard uncertainties of a difference in the figure moved most. */
  static final List<Double> SIZES = List.of(2.0, 3.0, 5.0, 8.0);

  private static final double ROOT_2 = Math.sqrt(2);
  private static final double OF_PH = 0.02;
  private static final double OF_ACIDITY = 0.33;
  private static final double OF_CALCIUM = 2;
  private static final double OF_RATIO = 0.04;
  private static final double OF_ALKALINITY = 0.1;
  private static final double OF_HARDNESS = 2;
  private static final double OF_MAGNESIUM = 1;

  private static final double CHLORIDE = 120;
  private static final PH BEER_END = pH(8.2);
  private static final PH WATER_END = pH(4.3);
  private static final double CALCIUM_EQUIVALENT = 20.039;
  private static final double MAGNESIUM_EQUIVALENT = 12.1525;
  private static final double CACO3_EQUIVALENT = 50.043;

  private static final double HARDNESS_IN_RESIDUAL =
      Math.hypot(OF_HARDNESS / CALCIUM_EQUIVALENT / 3.5, OF_MAGNESIUM / MAGNESIUM_EQUIVALENT / 7);
  private static final double OF_RESIDUAL = Math.hypot(OF_ALKALINITY, HARDNESS_IN_RESIDUAL);

  /** Of the noise, and of the effect too: u of the residual over u of the alkalinity. */
  static final double CORRELATION = OF_ALKALINITY / OF_RESIDUAL;

  private static final Batch EARLIER = new Batch(new double[SimulatedFigure.MEASURED], 0, 0);

  /** The titration goes a little beyond the carbonate: its slope, and u with it. */
  private static final double TO_TITRATION = titrationPerCarbonate();

  private final Batch later;

  private CausePair(Batch later) {
    this.later = later;
  }

  /**
   * A beer and its water, read with their distances from the earlier batch.
   *
   * @param z of the measured figures
   * @param hardness of the calcium of the water
   * @param magnesium of its magnesium
   */
  private record Batch(double[] z, double hardness, double magnesium) {

    private double moved(SimulatedFigure figure, double from, double u) {
      return from + ROOT_2 * u * z[figure.ordinal()];
    }

    Beer beer() {
      return Beer.of(
              pH(moved(SimulatedFigure.PH, 4.4, OF_PH)),
              TitratableAcidity.ofMilliequivalentsPerLitre(
                  moved(SimulatedFigure.ACIDITY, 20, OF_ACIDITY), BEER_END))
          .with(Ion.CALCIUM, mgPerL(moved(SimulatedFigure.CALCIUM, 60, OF_CALCIUM)))
          .with(Ion.SULFATE, mgPerL(CHLORIDE * moved(SimulatedFigure.RATIO, 1.25, OF_RATIO)))
          .with(Ion.CHLORIDE, mgPerL(CHLORIDE));
    }

    Water water() {
      return WaterReport.reported()
          .calcium(mgPerL(60 + ROOT_2 * OF_HARDNESS * hardness))
          .magnesium(mgPerL(10 + ROOT_2 * OF_MAGNESIUM * magnesium))
          .sodium(mgPerL(10))
          .sulfate(mgPerL(50))
          .chloride(mgPerL(30))
          .alkalinity(
              CarbonateAlkalinity.ofMilliequivalentsPerLitre(
                  moved(SimulatedFigure.ALKALINITY, 3, OF_ALKALINITY)))
          .pH(pH(7.5))
          .build()
          .water();
    }
  }

  private static double titrationPerCarbonate() {
    double[] one = new double[SimulatedFigure.MEASURED];
    one[SimulatedFigure.ALKALINITY.ordinal()] = 1;
    return (new Batch(one, 0, 0).water().titrationAlkalinity(WATER_END).number()
            - EARLIER.water().titrationAlkalinity(WATER_END).number())
        / (ROOT_2 * OF_ALKALINITY);
  }

  /** Draws what a cause of a size does to the measured figures, without noise. */
  private static double[] effects(SimulatedCause cause, double size, SplittableRandom random) {
    double[] means = cause.means();
    double[] standardDeviations = cause.standardDeviations();
    double[] effects = new double[SimulatedFigure.MEASURED];
    double sign = cause.eitherSign && random.nextBoolean() ? -1 : 1;
    for (int i = 0; i < effects.length; i++) {
      effects[i] = sign * size * (means[i] + standardDeviations[i] * random.nextGaussian());
    }
    if (cause == SimulatedCause.MALT) {
      double angle = 2 * Math.PI * random.nextDouble();
      effects[SimulatedFigure.PH.ordinal()] += size * Math.cos(angle);
      effects[SimulatedFigure.ACIDITY.ordinal()] += size * Math.sin(angle);
    }
    return effects;
  }

  static CausePair draw(SimulatedCause cause, double size, SplittableRandom random) {
    double[] z = effects(cause, size, random);
    for (int i = 0; i < z.length; i++) {
      z[i] += random.nextGaussian();
    }
    return new CausePair(new Batch(z, random.nextGaussian(), random.nextGaussian()));
  }

  /** The z of all figures in their order, as the differences have them. */
  double[] scores() {
    double[] all = new double[SimulatedFigure.values().length];
    System.arraycopy(later.z, 0, all, 0, later.z.length);
    double alkalinity = later.z[SimulatedFigure.ALKALINITY.ordinal()];
    all[SimulatedFigure.RESIDUAL.ordinal()] =
        (OF_ALKALINITY * alkalinity
                - OF_HARDNESS / CALCIUM_EQUIVALENT / 3.5 * later.hardness
                - OF_MAGNESIUM / MAGNESIUM_EQUIVALENT / 7 * later.magnesium)
            / OF_RESIDUAL;
    return all;
  }

  /** The same through beers and waters, as a user has them. */
  List<Difference> differences() {
    Beer beer = later.beer();
    Water water = later.water();
    return List.of(
        Difference.inOneLaboratory(beer.pH(), Earlier.BEER.pH(), stated(beer.pH(), OF_PH)),
        Difference.inOneLaboratory(
            beer.titratableAcidity(),
            Earlier.BEER.titratableAcidity(),
            stated(
                beer.titratableAcidity(),
                OF_ACIDITY * Earlier.BEER.titratableAcidity().number() / 20)),
        Difference.inOneLaboratory(
            beer.calcium(), Earlier.BEER.calcium(), stated(beer.calcium(), OF_CALCIUM)),
        Difference.inOneLaboratory(
            beer.sulfateToChloride(),
            Earlier.BEER.sulfateToChloride(),
            stated(beer.sulfateToChloride(), OF_RATIO)),
        Difference.inOneLaboratory(
            water.titrationAlkalinity(WATER_END),
            Earlier.WATER.titrationAlkalinity(WATER_END),
            stated(water.titrationAlkalinity(WATER_END), OF_ALKALINITY * TO_TITRATION)),
        Difference.inOneLaboratory(
            water.residualAlkalinity(),
            Earlier.WATER.residualAlkalinity(),
            stated(water.residualAlkalinity(), OF_RESIDUAL * CACO3_EQUIVALENT)));
  }

  /** The batch that every pair has in common. */
  private static final class Earlier {
    static final Beer BEER = EARLIER.beer();
    static final Water WATER = EARLIER.water();
  }

  private static MethodPrecision stated(Answer<?> answer, double u) {
    return MethodPrecision.stated("invented bench", u, answer.unit());
  }
}
