package org.brewchem.checks.simulator;

import java.util.Random;
import org.brewchem.beer.Beer;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.treatment.StagedDose;
import org.brewchem.treatment.TankDose;
import org.brewchem.treatment.UnreachableException;

/**
 * A dose in one stage beside the same in two, into a beer of which pH and acidity are known and the
 * buffer is a stand-in.
 *
 * <p>One meter reads the beer before and after the first stage, each reading with noise of 0.02; an
 * error of its zero would be in both readings and in the aim, which counts on the scale of the
 * meter. The acidity is known to 1 %, tank and reagent as in {@link DosingTrial}. The aim lies a
 * drawn change from the reading before. Judged is the true pH against the aim.
 */
final class StagedTrial {

  static final double OF_READING = 0.02;
  static final double RELATIVE_OF_ACIDITY = 0.01;

  /** The change that was wanted, in pH. */
  final double wanted;

  double errorOfWhole;
  double errorOfStaged;

  /**
   * By how much the first stage alone goes beyond the aim, which no second stage takes back: what
   * is left to a reader who knows the beer from then on.
   */
  double errorOfFirst;

  boolean refused;

  StagedTrial(BeerKind kind, boolean acid, double wanted, Random random) {
    this.wanted = wanted;
    SimulatedBeer truth = kind.draw(random);
    double read = truth.pH() + OF_READING * random.nextGaussian();
    double acidity =
        truth.baseTo(BufferTrial.END_POINT)
            * 1000
            * SimulatedBeer.KILOGRAMS_PER_LITRE
            * (1 + RELATIVE_OF_ACIDITY * random.nextGaussian());
    double volume = 1 + DosingTrial.RELATIVE_OF_VOLUME * random.nextGaussian();
    double strength = DosingTrial.strength(acid, random);
    double noise = OF_READING * random.nextGaussian();
    double aim = read + (acid ? -wanted : wanted);
    try {
      Beer beer =
          Beer.of(PH.of(read), milliequivalents(acidity))
              .withStandardUncertaintyOfPH(OF_READING)
              .withStandardUncertaintyOfAcidity(milliequivalents(RELATIVE_OF_ACIDITY * acidity));
      TankDose<Beer> whole =
          TankDose.of(
                  beer, acid ? DosingTrial.lactic() : DosingTrial.bicarbonate(), DosingTrial.tank())
              .to(PH.of(aim));
      double perMole = strength / volume / DosingTrial.LITRES;
      errorOfWhole =
          DosingTrial.after(truth, acid, perMole * whole.portion().amount().inMoles()).pH() - aim;
      StagedDose<Beer> stages = StagedDose.of(whole);
      double given = stages.first().portion().amount().inMoles();
      double afterFirst = DosingTrial.after(truth, acid, perMole * given).pH();
      double beyond = acid ? aim - afterFirst : afterFirst - aim;
      errorOfFirst = Math.max(0, beyond);
      double between = afterFirst + noise;
      try {
        given += stages.read(PH.of(between), OF_READING).portion().amount().inMoles();
      } catch (UnreachableException nothingLeft) {
        if (nothingLeft.reason() != UnreachableException.Reason.ALREADY_THERE) {
          throw nothingLeft;
        }
      }
      errorOfStaged = DosingTrial.after(truth, acid, perMole * given).pH() - aim;
    } catch (IllegalArgumentException refusal) {
      refused = true;
    }
  }

  private static TitratableAcidity milliequivalents(double number) {
    return TitratableAcidity.ofMilliequivalentsPerLitre(number, PH.of(BufferTrial.END_POINT));
  }
}
