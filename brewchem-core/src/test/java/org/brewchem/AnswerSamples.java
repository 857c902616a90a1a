package org.brewchem;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;

import java.util.LinkedHashMap;
import java.util.Map;
import org.brewchem.beer.Beer;
import org.brewchem.beer.Souring;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.figure.Figure;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.Mash;
import org.brewchem.mash.WortToBeer;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Solute;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.Weighing;
import org.brewchem.treatment.BenchTrial;
import org.brewchem.treatment.Blend;
import org.brewchem.treatment.Delivery;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.DoseBefore;
import org.brewchem.treatment.StagedDose;
import org.brewchem.treatment.Tank;
import org.brewchem.treatment.TankDose;
import org.brewchem.treatment.Treatments;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/** Invented samples of everything that answers. */
final class AnswerSamples {

  /** What a method that answers is asked with, by the type of its parameter. */
  static final Map<Class<?>, Object> ARGUMENTS =
      Map.of(
          PH.class,
          pH(8.2),
          AcidBasis.class,
          Acid.TARTARIC,
          Figure.class,
          Figures.CHLORIDE,
          Solute.class,
          LACTIC,
          AmountConcentration.class,
          mmolPerL(2),
          Temperature.class,
          Temperature.ofCelsius(65),
          Tank.class,
          Tank.holding(hL(20), hL(0.3)),
          double.class,
          0.02);

  private AnswerSamples() {}

  static Map<String, Object> all() {
    Map<String, Object> samples = new LinkedHashMap<>();
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(92), mgPerL(3))
            .magnesium(mgPerL(11), mgPerL(1))
            .sodium(mgPerL(19), mgPerL(1))
            .potassium(mgPerL(3), mgPerL(0.3))
            .sulfate(mgPerL(45), mgPerL(2))
            .chloride(mgPerL(31), mgPerL(1))
            .nitrate(mgPerL(8), mgPerL(1))
            .alkalinityAsCaCO3(mgPerL(215), mgPerL(4))
            .pH(pH(7.6), 0.05)
            .build()
            .water();
    add(samples, water);
    add(samples, PlanSample.reached(water));
    add(samples, Solution.at(Temperature.ofCelsius(25)).with(LACTIC, mmolPerL(5)));
    Titrant lye =
        Titrant.sodiumHydroxide()
            .standardised(
                Weighing.khp(g(0.4082), mL(19.94)),
                Weighing.khp(g(0.4107), mL(20.07)),
                Weighing.khp(g(0.4099), mL(20.02)));
    AcidityResult acidity =
        lye.titrate(mL(50)).to(pH(8.2)).took(mL(9.52), mL(9.57), mL(9.55)).acidity();
    Solution extract =
        Solution.at(Temperature.ofCelsius(20))
            .with(Acid.PHOSPHORIC, mmolPerL(8))
            .with(Ion.POTASSIUM, mmolPerL(9));
    Malt malt = Malt.stated("own malt", "invented", pH(5.75), 0.03, 42, 4).withSpecies(extract);
    add(samples, malt);
    Grist grist =
        Grist.of(kg(180), malt).and(kg(20), Malt.assumed(MaltKind.CARAMEL).withSpecies(extract));
    Mash mash = Mash.of(grist, water, hL(8));
    add(samples, mash);
    add(samples, mash.measured(pH(5.61)));
    add(samples, WortToBeer.of(mash, massPercent(12)));
    Beer beer =
        Beer.of(pH(4.38), acidity)
            .withStandardUncertaintyOfPH(0.02)
            .with(Ion.CALCIUM, mgPerL(60), mgPerL(2))
            .with(Ion.SULFATE, mgPerL(90), mgPerL(2))
            .with(Ion.CHLORIDE, mgPerL(60), mgPerL(2));
    add(samples, beer);
    Reagent lactic = Reagent.of(LACTIC, massPercent(80)).withAssayUncertainty(0.02);
    add(samples, Dose.of(beer, lactic).to(acidity(gPerL(2.0), LACTIC, pH(8.2))));
    TankDose<Beer> tank =
        TankDose.of(
                beer,
                lactic.withDensity(Density.ofGramsPerMillilitre(1.19), 0.01),
                Tank.holding(hL(20), hL(0.3)))
            .to(pH(4.2));
    add(samples, tank);
    add(samples, tank.chances());
    add(samples, StagedDose.of(tank).read(pH(4.27), 0.02));
    add(samples, BenchTrial.of(beer, lactic).upTo(gPerL(0.6)).glass(3));
    add(samples, DoseBefore.of(water, lactic, Treatments.aeration()).to(pH(7)));
    add(samples, Delivery.of(beer, LACTIC, mmolPerL(3)));
    add(samples, Blend.of(beer, beer.after()).volumes(hL(1), hL(2)));
    add(
        samples,
        Souring.of(Solution.at(Temperature.ofCelsius(25)).with(Acid.CITRIC, mmolPerL(2)))
            .withLactateBefore(gPerL(0.2), gPerL(0.01))
            .to(pH(2.7)));
    double[] volumes = {0, 2, 4, 6, 8, 10, 12};
    double[] read = {4.38, 4.72, 5.10, 5.62, 6.35, 7.10, 7.95};
    add(
        samples,
        MeasuredBuffer.from(BufferReadings.withAlkali(mL(50), molPerL(0.1), volumes, read)));
    return samples;
  }

  private static void add(Map<String, Object> samples, Object sample) {
    samples.put(sample.getClass().getName(), sample);
  }
}
