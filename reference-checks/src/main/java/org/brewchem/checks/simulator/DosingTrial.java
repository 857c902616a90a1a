package org.brewchem.checks.simulator;

import java.util.Random;
import org.brewchem.beer.Beer;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Tank;
import org.brewchem.treatment.TankDose;
import org.brewchem.treatment.UnreachableException;

/**
 * One dose into a tank, chosen by the library to overshoot a limit with a chance of 5 %, and what
 * the simulated beer makes of it: its buffer is known by a titration with all disturbances, the
 * volume in the tank to 2 %, the strength of the reagent as its label has it.
 *
 * <p>The limit is a pH or, in every other trial, an acidity to pH 8.2. Judged is the true figure of
 * the beer with the true amount in the true volume; that the reagent's own volume dilutes it, by
 * less than 0.1 %, is left out.
 */
final class DosingTrial {

  static final double CHANCE = 0.05;
  static final double LITRES = 2000;
  static final double RELATIVE_OF_VOLUME = 0.02;
  static final double RELATIVE_OF_ASSAY = 0.01;
  static final double RELATIVE_OF_DENSITY = 0.002;
  private static final double LEAST_CHANGE_OF_PH = 0.1;
  private static final double MOST_CHANGE_OF_PH = 0.6;
  private static final double LEAST_CHANGE_OF_ACIDITY = 1.5;
  private static final double MOST_CHANGE_OF_ACIDITY = 8;

  private static final Reagent LACTIC =
      Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(88))
          .withDensity(Density.ofGramsPerMillilitre(1.2), RELATIVE_OF_DENSITY)
          .withAssayUncertainty(RELATIVE_OF_ASSAY);

  private static final Reagent BICARBONATE =
      Reagent.of(Base.POTASSIUM_BICARBONATE, MassFraction.ofMassPercent(99))
          .withAssayUncertainty(RELATIVE_OF_ASSAY);

  /** Whether the library gave a dose. */
  boolean dosed;

  boolean overshot;

  DosingTrial(BeerKind kind, boolean acid, boolean ofPH, Random random) {
    Experiment experiment = new Experiment(kind, Disturbance.ALL, Fault.NONE, random);
    double volume = 1 + RELATIVE_OF_VOLUME * random.nextGaussian();
    double strength = strength(acid, random);
    double change =
        ofPH
            ? uniform(random, LEAST_CHANGE_OF_PH, MOST_CHANGE_OF_PH)
            : uniform(random, LEAST_CHANGE_OF_ACIDITY, MOST_CHANGE_OF_ACIDITY);
    SimulatedBeer truth = experiment.beer.at(experiment.celsius);
    try {
      MeasuredBuffer buffer = BufferTrial.told(experiment);
      Beer beer =
          Beer.of(buffer.pH(), buffer.acidityTo(PH.of(BufferTrial.END_POINT)))
              .measuredAt(Temperature.ofCelsius(experiment.celsius))
              .buffered(buffer);
      TankDose.Request<Beer> request = TankDose.of(beer, acid ? LACTIC : BICARBONATE, tank());
      double sign = acid == ofPH ? -1 : 1;
      double before =
          ofPH
              ? beer.pH().value().value()
              : beer.titratableAcidity().value().inMilliequivalentsPerLitre();
      double limit = before + sign * change;
      TankDose<Beer> dose =
          ofPH
              ? request.overshooting(Figures.PH_VALUE, PH.of(limit), CHANCE)
              : request.overshooting(
                  Figures.titratableAcidity(PH.of(BufferTrial.END_POINT)),
                  TitratableAcidity.ofMilliequivalentsPerLitre(limit, PH.of(BufferTrial.END_POINT)),
                  CHANCE);
      SimulatedBeer after =
          after(truth, acid, dose.portion().amount().inMoles() / LITRES * strength / volume);
      double figure =
          ofPH
              ? after.pH()
              : after.baseTo(BufferTrial.END_POINT) * 1000 * SimulatedBeer.KILOGRAMS_PER_LITRE;
      overshot = sign * (figure - limit) > 0;
      dosed = true;
    } catch (UnreachableException tooUncertain) {
      dosed = false;
    }
  }

  static Reagent lactic() {
    return LACTIC;
  }

  static Reagent bicarbonate() {
    return BICARBONATE;
  }

  static Tank tank() {
    return Tank.holding(Volume.ofLitres(LITRES), Volume.ofLitres(RELATIVE_OF_VOLUME * LITRES));
  }

  /** What is really in the reagent over what its label says. */
  static double strength(boolean acid, Random random) {
    double assay = 1 + RELATIVE_OF_ASSAY * random.nextGaussian();
    double density = 1 + RELATIVE_OF_DENSITY * random.nextGaussian();
    return acid ? assay * density : assay;
  }

  /** The beer with so many moles per litre, the carbon dioxide of the bicarbonate gone. */
  static SimulatedBeer after(SimulatedBeer beer, boolean acid, double molesPerLitre) {
    double perKilogram = molesPerLitre / SimulatedBeer.KILOGRAMS_PER_LITRE;
    return acid ? beer.with(Ligand.named("lactate"), perKilogram) : beer.withStrong(perKilogram);
  }

  static double uniform(Random random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
