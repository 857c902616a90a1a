package org.brewchem.checks.simulator;

import java.util.Map;
import java.util.Random;
import org.brewchem.buffer.StandIn;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * What the stand-in makes of a beer of which only pH and titrated acidity are known: changes of pH
 * by lactic acid beside the truth.
 */
final class StandInTrial {

  static final double[] GRAMS_PER_LITRE = {0.4, 0.8};

  /** Standard uncertainties of what is known of the beer. */
  private static final double OF_PH = 0.01;

  private static final double OF_ACIDITY = 0.01;
  private static final double END_POINT = 8.2;
  private static final double LACTIC_ACID = 90.078;

  final double[] truth = new double[GRAMS_PER_LITRE.length];
  final double[] change = new double[GRAMS_PER_LITRE.length];
  final double[] uncertainty = new double[GRAMS_PER_LITRE.length];
  boolean refused;

  StandInTrial(BeerKind kind, Random random) {
    SimulatedBeer beer = kind.draw(random);
    double pH = beer.pH() + OF_PH * random.nextGaussian();
    double acidity =
        beer.baseTo(END_POINT)
            * 1000
            * SimulatedBeer.KILOGRAMS_PER_LITRE
            * (1 + OF_ACIDITY * random.nextGaussian());
    try {
      Contents before =
          StandIn.matching(
                  Traced.of(Source.of("acidity", acidity, OF_ACIDITY * acidity, "mEq/L")),
                  PH.of(END_POINT))
              .contents(
                  Contents.pure(Temperature.ofCelsius(20), Chemistry.standard()),
                  Traced.of(Source.of("pH", pH, OF_PH, "")));
      for (int d = 0; d < GRAMS_PER_LITRE.length; d++) {
        double dose = GRAMS_PER_LITRE[d] / LACTIC_ACID / SimulatedBeer.KILOGRAMS_PER_LITRE;
        truth[d] = beer.with(Ligand.named("lactate"), dose).pH() - beer.pH();
        Traced predicted =
            before.plus(Map.of(Component.LACTATE, Traced.exact(dose))).pH().minus(before.pH());
        change[d] = predicted.value();
        uncertainty[d] = predicted.standardUncertainty().orElseThrow();
      }
    } catch (IllegalArgumentException refusal) {
      refused = true;
    }
  }
}
