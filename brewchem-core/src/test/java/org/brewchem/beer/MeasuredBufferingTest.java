package org.brewchem.beer;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.buffer.TypicalBeer;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.junit.jupiter.api.Test;

class MeasuredBufferingTest {

  private static final AmountConcentration DECIMOLAR = molPerL(0.1);

  /** Invented: more lactic acid and fewer protein groups than the stand-in would have. */
  private static final Solution TRUTH =
      TypicalBeer.namedAcids(celsius(20))
          .plus(TypicalBeer.lumpedGroups(celsius(20), 0.8))
          .with(Acid.LACTIC, mmolPerL(12))
          .with(Ion.CALCIUM, mmolPerL(1.5))
          .with(Ion.MAGNESIUM, mmolPerL(3.5))
          .closedTo(pH(3.9));

  private static final Reagent LACTIC_80 = Reagent.of(Acid.LACTIC, massPercent(80));

  private static Beer beer() {
    return Beer.of(pH(3.9), TRUTH.titratableAcidity(pH(8.2)));
  }

  private static MeasuredBuffer buffer(boolean bothLegs) {
    SimulatedTitration up =
        SimulatedTitration.of(
            TRUTH, Solution.at(celsius(20)).with(Base.SODIUM_HYDROXIDE, DECIMOLAR), mL(50));
    double[] alkali = volumes(up.volumeTo(pH(9)).inMillilitres());
    MeasuredBuffer.Fit fit =
        MeasuredBuffer.fit()
            .with(BufferReadings.withAlkali(mL(50), DECIMOLAR, alkali, up.pHAfter(alkali)));
    if (bothLegs) {
      SimulatedTitration down =
          SimulatedTitration.of(
              TRUTH, Solution.at(celsius(20)).with(Acid.HYDROCHLORIC, DECIMOLAR), mL(50));
      double[] acid = volumes(down.volumeTo(pH(2.8)).inMillilitres());
      fit = fit.with(BufferReadings.withAcid(mL(50), DECIMOLAR, acid, down.pHAfter(acid)));
    }
    return fit.buffer();
  }

  private static double[] volumes(double last) {
    double[] volumes = new double[25];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = last * i / (volumes.length - 1);
    }
    return volumes;
  }

  @Test
  void itPredictsADoseBetterThanTheStandIn() {
    PH target = pH(3.6);
    BeerDose byStandIn = beer().dose(LACTIC_80).into(hL(1)).to(target);
    BeerDose byBuffer = beer().buffered(buffer(true)).dose(LACTIC_80).into(hL(1)).to(target);
    double truth = TRUTH.doseOf(Acid.LACTIC, target).inMolesPerKilogram();
    double perLitre = truth * TRUTH.kilogramsPerLitre() * 100;
    assertEquals(perLitre, byBuffer.amount().inMoles(), 0.03 * perLitre);
    assertTrue(Math.abs(byStandIn.amount().inMoles() / perLitre - 1) > 0.05);
    assertTrue(
        byBuffer.after().pH().orElseThrow().standardUncertainty().orElseThrow()
            < byStandIn.after().pH().orElseThrow().standardUncertainty().orElseThrow() / 3);
    assertFalse(byBuffer.explain().contains("stand-in"));
  }

  @Test
  void belowItsReadingsItSaysExtrapolated() {
    Beer beer = beer().buffered(buffer(false));
    BeerDose dose = beer.dose(LACTIC_80).into(hL(1)).to(pH(3.6));
    assertTrue(
        dose.findings().stream()
            .anyMatch(finding -> finding.kind() == BeerFinding.Kind.EXTRAPOLATED));
    assertTrue(
        beer().buffered(buffer(true)).dose(LACTIC_80).into(hL(1)).to(pH(3.6)).findings().stream()
            .noneMatch(finding -> finding.kind() == BeerFinding.Kind.EXTRAPOLATED));
  }

  @Test
  void theMeasuredPhIsKeptAndTheMeasuredCalciumReplacesTheAssumed() {
    Beer beer =
        Beer.of(pH(3.95), TRUTH.titratableAcidity(pH(8.2)))
            .buffered(buffer(true))
            .with(Ion.CALCIUM, mgPerL(40.078), Origin.MEASURED_IN_BEER);
    assertEquals(3.95, beer.solution().pH().value(), 1e-10);
    assertEquals(1, beer.solution().total(Component.CALCIUM).inMillimolesPerLitre(), 1e-9);
    assertEquals(3.5, beer.solution().total(Component.MAGNESIUM).inMillimolesPerLitre(), 1e-9);
  }
}
