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

import org.brewchem.buffer.BufferCode;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.buffer.TypicalBeer;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Blend;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
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

  private static final Reagent LACTIC_80 =
      Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(0.01);

  private static Beer beer() {
    return Beer.of(pH(3.9), TRUTH.titratableAcidity(pH(8.2)))
        .withStandardUncertaintyOfPH(0.01)
        .withStandardUncertaintyOfAcidity(Beers.asLactic(0.01));
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

  private static Dose<Beer> dosed(Beer beer) {
    return Dose.of(beer, LACTIC_80).to(pH(3.6));
  }

  @Test
  void itPredictsADoseBetterThanTheStandIn() {
    Dose<Beer> byStandIn = dosed(beer());
    Dose<Beer> byBuffer = dosed(beer().buffered(buffer(true)));
    double truth = TRUTH.doseOf(Acid.LACTIC, pH(3.6)).inMolesPerKilogram();
    double perLitre = truth * TRUTH.kilogramsPerLitre();
    assertEquals(perLitre, byBuffer.perLitre().inMolesPerLitre(), 0.03 * perLitre);
    assertTrue(Math.abs(byStandIn.perLitre().inMolesPerLitre() / perLitre - 1) > 0.05);
    assertTrue(
        byBuffer.after().pH().standardUncertainty().orElseThrow()
            < byStandIn.after().pH().standardUncertainty().orElseThrow() / 3);
    assertFalse(byBuffer.explain().toString().contains("stand-in"));
  }

  @Test
  void belowItsReadingsItSaysExtrapolated() {
    assertTrue(
        dosed(beer().buffered(buffer(false))).notices().stream()
            .anyMatch(notice -> notice.code() == BufferCode.EXTRAPOLATED));
    assertTrue(
        dosed(beer().buffered(buffer(true))).notices().stream()
            .noneMatch(notice -> notice.code() == BufferCode.EXTRAPOLATED));
  }

  @Test
  void theMeasuredPhIsKeptAndTheMeasuredCalciumReplacesTheAssumed() {
    Beer beer =
        Beer.of(pH(3.95), TRUTH.titratableAcidity(pH(8.2)))
            .buffered(buffer(true))
            .with(Ion.CALCIUM, mgPerL(40.078));
    assertEquals(3.95, beer.solution().pH().value(), 1e-10);
    assertEquals(1, beer.solution().total(Component.CALCIUM).inMillimolesPerLitre(), 1e-9);
    // Of the assumed magnesium the beer's own acids, for which the grid stands, hold some already.
    assertEquals(
        0.87 * 2.8, beer.solution().total(Component.MAGNESIUM).inMillimolesPerLitre(), 1e-9);
  }

  /** The room asks the buffer itself: one dose, one u. */
  @Test
  void beerAndBufferGiveTheSameUncertaintyForTheSameDose() {
    MeasuredBuffer buffer = buffer(true);
    Beer beer = Beer.of(buffer.pH(), buffer.acidityTo(pH(8.2))).buffered(buffer);
    AmountConcentration dose = mmolPerL(8);
    double byBuffer = buffer.changeOfPHBy(Acid.LACTIC, dose).standardUncertainty().orElseThrow();
    Traced change =
        beer.after(Treatments.solute(Acid.LACTIC, dose)).pH().traced().minus(beer.pH().traced());
    assertEquals(byBuffer, change.standardUncertainty().orElseThrow(), 1e-6 * byBuffer);
    assertEquals(buffer.changeOfPHBy(Acid.LACTIC, dose).number(), change.value(), 1e-9);
  }

  @Test
  void theCalciumOfTheWaterIsNotAddedToTheOneThatTheBufferAssumes() {
    Water water = WaterReport.reported().calcium(mgPerL(48)).build().water();
    Beer beer = beer().buffered(buffer(true)).brewedWith(water);
    assertEquals(48, beer.calcium().number(), 1e-9);
    assertEquals(48, beer.after().calcium().number(), 1e-9);
    Beer blend = Blend.of(beer, Beers.lager()).volumes(hL(1), hL(1)).after();
    assertEquals((48 + 60) / 2.0, blend.calcium().number(), 1e-9);
  }
}
