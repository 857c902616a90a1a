package org.brewchem.checks.simulator;

import java.util.Random;
import org.brewchem.beer.Beer;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.figure.Answer;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.BenchTrial;
import org.brewchem.treatment.GlassDose;
import org.brewchem.treatment.Tank;

/**
 * One bench trial of a simulated beer: glasses are made with what a pipette, a flask, a balance and
 * a measuring cylinder do, one is chosen, its pH is read, and the tank is dosed like it. Judged are
 * the true pH and acidity of the tank.
 */
final class GlassTrial {

  private static final double U_OF_READING = 0.02;
  private static final double MILLILITRES = 200;
  private static final double U_OF_GLASS = 1;
  private static final double U_OF_PIPETTE = 0.02;
  private static final double U_OF_FLASK = 0.1;
  private static final double U_OF_BALANCE = 0.01;
  private static final double FLASK = 100;
  private static final int GLASSES = 6;

  private static final Reagent LACTIC =
      Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(50))
          .withDensity(Density.ofGramsPerMillilitre(1.12), 0.002)
          .withAssayUncertainty(DosingTrial.RELATIVE_OF_ASSAY)
          .withBoundInEsters(MassFraction.ofMassPercent(0));

  final boolean coveredByReading;
  final double uByReading;
  final boolean coveredByPrediction;
  final double uOfPrediction;
  final boolean coveredAcidity;

  GlassTrial(BeerKind kind, boolean measured, Random random) {
    Experiment experiment = new Experiment(kind, Disturbance.ALL, Fault.NONE, random);
    SimulatedBeer truth = experiment.beer.at(experiment.celsius);
    MeasuredBuffer buffer = BufferTrial.told(experiment);
    Beer read =
        Beer.of(buffer.pH(), buffer.acidityTo(PH.of(BufferTrial.END_POINT)))
            .measuredAt(Temperature.ofCelsius(experiment.celsius));
    Beer beer = measured ? read.buffered(buffer) : read;
    double top = DosingTrial.uniform(random, 0.5, 2);
    BenchTrial<Beer> trial =
        BenchTrial.of(beer, LACTIC)
            .glasses(GLASSES, Volume.ofMillilitres(MILLILITRES), Volume.ofMillilitres(U_OF_GLASS))
            .pipettingTo(Volume.ofMillilitres(0.1), Volume.ofMillilitres(U_OF_PIPETTE))
            .stockOf(
                Volume.ofMillilitres(FLASK),
                Volume.ofMillilitres(U_OF_FLASK),
                Mass.ofGrams(U_OF_BALANCE))
            .upTo(MassConcentration.ofGramsPerLitre(top));
    GlassDose<Beer> glass = trial.glass(2 + random.nextInt(GLASSES - 1));

    double assay = 1 + DosingTrial.RELATIVE_OF_ASSAY * random.nextGaussian();
    double inStock = trial.massInStock().inGrams();
    double pipetted = glass.pipetted().inMillilitres() + U_OF_PIPETTE * random.nextGaussian();
    double inGlass = MILLILITRES + U_OF_GLASS * random.nextGaussian();
    double stock =
        (inStock + U_OF_BALANCE * random.nextGaussian())
            / (FLASK + U_OF_FLASK * random.nextGaussian());
    double share = inGlass / (inGlass + pipetted);
    double gramsPerLitre = pipetted * stock / inGlass * 1000;
    double trueGlass = dosed(truth, gramsPerLitre * assay).pH(0, share);
    double volume = 1 + DosingTrial.RELATIVE_OF_VOLUME * random.nextGaussian();
    SimulatedBeer tankThen = dosed(truth, glass.dose().inGramsPerLitre() * assay / volume);

    Tank tank = DosingTrial.tank();
    double seen = trueGlass + U_OF_READING * random.nextGaussian();
    Answer<PH> byReading = glass.pHOf(tank, PH.of(seen), U_OF_READING);
    coveredByReading = covers(byReading, tankThen.pH());
    uByReading = byReading.expanded().orElseThrow().halfWidth();
    Beer predicted = glass.into(tank).after();
    coveredByPrediction = covers(predicted.pH(), tankThen.pH());
    uOfPrediction = predicted.pH().expanded().orElseThrow().halfWidth();
    Answer<?> acidity = predicted.answer(Figures.titratableAcidity(PH.of(BufferTrial.END_POINT)));
    double perLitre =
        tankThen.baseTo(BufferTrial.END_POINT) * 1000 * SimulatedBeer.KILOGRAMS_PER_LITRE;
    coveredAcidity = covers(acidity, perLitre * Acid.LACTIC.molarMass().inGramsPerMole() / 1000);
  }

  /** The reagent's own water, below 0.2 % of the tank, is left out. */
  private static SimulatedBeer dosed(SimulatedBeer beer, double gramsOfReagentPerLitre) {
    double moles =
        gramsOfReagentPerLitre
            * LACTIC.assay().fraction()
            / Acid.LACTIC.molarMass().inGramsPerMole();
    return DosingTrial.after(beer, true, moles);
  }

  private static boolean covers(Answer<?> answer, double truth) {
    return Math.abs(answer.number() - truth) <= answer.expanded().orElseThrow().halfWidth();
  }
}
