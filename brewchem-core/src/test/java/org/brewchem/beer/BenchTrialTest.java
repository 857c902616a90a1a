package org.brewchem.beer;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.OutOfRangeException;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.BenchTrial;
import org.brewchem.treatment.GlassDose;
import org.brewchem.treatment.Tank;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class BenchTrialTest {

  private static final Figure<TitratableAcidity> ACIDITY = Figures.titratableAcidity(pH(8.2));
  private static final Beer BEER =
      Beer.of(pH(4.36), acidity(gPerL(1.80), LACTIC, pH(8.2)))
          .withStandardUncertaintyOfPH(0.02)
          .withStandardUncertaintyOfAcidity(acidity(gPerL(0.02), LACTIC, pH(8.2)));
  private static final Reagent ACID =
      Reagent.of(LACTIC, massPercent(80)).withAssayUncertainty(0.029);

  private static BenchTrial<Beer> trial() {
    return BenchTrial.of(BEER, ACID)
        .glasses(6, mL(200), mL(1))
        .pipettingTo(mL(0.1), mL(0.02))
        .stockOf(mL(100), mL(0.1), g(0.01))
        .upTo(gPerL(0.6));
  }

  private static BenchTrial<Beer> exact(Beer beer, Reagent reagent) {
    return BenchTrial.of(beer, reagent)
        .glasses(6, mL(200), mL(0))
        .pipettingTo(mL(0.1), mL(0))
        .stockOf(mL(100), mL(0), g(0))
        .upTo(gPerL(0.6));
  }

  @Test
  void saysHowTheStockIsMadeAndWhatIsPipetted() {
    BenchTrial<Beer> trial = trial();
    assertEquals(3, trial.massInStock().inGrams(), 1e-12);
    assertEquals(100, trial.volumeOfStock().inMillilitres());
    double[] pipetted =
        trial.glasses().stream().mapToDouble(glass -> glass.pipetted().inMillilitres()).toArray();
    org.junit.jupiter.api.Assertions.assertArrayEquals(
        new double[] {0, 0.8, 1.6, 2.4, 3.2, 4}, pipetted, 1e-12);
    assertEquals(0.36, trial.glass(4).dose().inGramsPerLitre(), 1e-12);
    assertTrue(
        trial
            .toString()
            .startsWith(
                "stock: 3 g of lactic acid, 80 % by mass, made up with water to 100 mL; glass 1: 0"
                    + " mL; glass 2: 0.8 mL"),
        trial.toString());
  }

  @Test
  void dosesFollowThePipetteWhereItCannotBeReadFinely() {
    BenchTrial<Beer> coarse =
        BenchTrial.of(BEER, ACID)
            .glasses(4, mL(100), mL(1))
            .pipettingTo(mL(0.5), mL(0.1))
            .upTo(gPerL(0.6));
    List<GlassDose<Beer>> glasses = coarse.glasses();
    assertEquals(0.5, glasses.get(1).pipetted().inMillilitres(), 1e-12);
    assertEquals(1.5, glasses.get(2).pipetted().inMillilitres(), 1e-12);
    assertEquals(0.15, glasses.get(1).dose().inGramsPerLitre(), 1e-12);
    assertEquals(0.6, glasses.get(3).dose().inGramsPerLitre(), 1e-12);
  }

  @Test
  void aGlassIsTheBeerWithTheReagentAndTheWaterOfTheStock() {
    GlassDose<Beer> glass = trial().glass(4);
    double neat = ACID.volumeOf(g(0.36)).inMillilitres() / 1000;
    Beer same =
        BEER.after(
            Treatments.acid(ACID, gPerL(0.36)),
            Treatments.dilution(VolumeRatio.ofMillilitresPerHectolitre((0.012 - neat) * 1e5)));
    assertEquals(same.pH().number(), glass.answer(Figures.PH_VALUE).number(), 1e-9);
    assertEquals(same.answer(ACIDITY).number(), glass.answer(ACIDITY).number(), 1e-9);
    assertEquals(BEER.pH().number(), trial().glass(1).answer(Figures.PH_VALUE).number());
  }

  @Test
  void theTankIsDosedLikeTheGlassWithoutItsWater() {
    Tank tank = Tank.holding(hL(20), litres(40));
    var dose = trial().glass(4).into(tank);
    assertEquals(720, dose.portion().mass().inGrams(), 1e-9);
    assertEquals(
        BEER.after(Treatments.acid(ACID, gPerL(0.36))).pH().number(),
        dose.after().pH().number(),
        1e-9);
    // 1.2 % of water is 1.2 % of the acidity.
    assertEquals(
        1.012 * trial().glass(4).answer(ACIDITY).number(),
        dose.after().answer(ACIDITY).number(),
        0.003);
  }

  @Test
  void whatGlassAndTankShareCancelsInTheirDifference() {
    Tank tank = Tank.holding(hL(20), litres(0));
    GlassDose<Beer> exact = exact(BEER, ACID).glass(4);
    double predicted = exact.into(tank).after().pH().standardUncertainty().orElseThrow();
    assertTrue(predicted > 0.1, "the stand-in is hardly known: " + predicted);
    Answer<PH> found = exact.pHOf(tank, pH(4.21), 0.02);
    // Only the water of the stock is not in the tank.
    assertEquals(0.02, found.standardUncertainty().orElseThrow(), 0.0005);
    assertEquals(4.21, found.number(), 0.01);
    assertTrue(found.explain().holds());
  }

  @Test
  void pipetteStockGlassAndTankCountWhereTheyDiffer() {
    Tank tank = Tank.holding(hL(20), litres(40));
    double all = trial().glass(4).pHOf(tank, pH(4.21), 0).standardUncertainty().orElseThrow();
    double withoutTank =
        trial()
            .glass(4)
            .pHOf(Tank.holding(hL(20), litres(0)), pH(4.21), 0)
            .standardUncertainty()
            .orElseThrow();
    // 0.36 g/L moves the pH by 0.26; the pipette errs by 0.8 %, the glass by 0.5, the tank by 2 %.
    double slope = 0.26;
    double ofGlass = slope * Math.sqrt(0.0083 * 0.0083 + 0.005 * 0.005 + 0.0033 * 0.0033);
    assertEquals(ofGlass, withoutTank, 0.3 * ofGlass);
    assertEquals(Math.hypot(ofGlass, 0.02 * slope), all, 0.3 * all);
  }

  @Test
  void theCarbonDioxideOfACarbonateLeavesGlassAndTankAlike() {
    Reagent base = Reagent.of(Base.POTASSIUM_BICARBONATE, massPercent(99.5));
    GlassDose<Beer> glass = exact(BEER, base).glass(6);
    Beer tank = glass.into(Tank.holding(hL(20), litres(0))).after();
    // 2 % of water is 2 % of the acidity; what was kept of the gas would add 0.27 g/L.
    assertEquals(tank.pH().number(), glass.answer(Figures.PH_VALUE).number(), 0.01);
    assertEquals(tank.answer(ACIDITY).number(), 1.02 * glass.answer(ACIDITY).number(), 0.005);
    assertTrue(tank.answer(ACIDITY).number() < BEER.answer(ACIDITY).number() - 0.4);
  }

  @Test
  void aTopDoseBeyondTheReagentNamesTheGreatest() {
    Reagent dense = ACID.withDensity(gPerML(1.19), 0.002);
    String message =
        String.valueOf(
            assertThrows(
                    OutOfRangeException.class, () -> BenchTrial.of(BEER, dense).upTo(gPerL(30)))
                .getMessage());
    assertTrue(message.contains("below 23.80 g/L"), message);
    assertEquals(
        5, BenchTrial.of(BEER, dense).upTo(gPerL(23.79)).glasses().size(), "just below it");
  }

  @Test
  void refusesByName() {
    BenchTrial.Request<Beer> request = BenchTrial.of(BEER, ACID);
    BenchTrial<Beer> trial = trial();
    for (Executable call :
        new Executable[] {
          () -> request.glasses(1, mL(200), mL(1)),
          () -> request.glasses(51, mL(200), mL(1)),
          () -> request.glasses(5, mL(0), mL(1)),
          () -> request.pipettingTo(mL(0), mL(0)),
          () -> request.stockOf(mL(0), mL(0), g(0)),
          () -> request.upTo(gPerL(0)),
          () -> request.pipettingTo(mL(1), mL(0.1)).glasses(6, mL(200), mL(1)).upTo(gPerL(1)),
          () -> request.upTo(gPerL(30)),
          () -> trial.glass(0),
          () -> trial.glass(7),
          () -> trial.glass(2).pHOf(Tank.holding(hL(1)), pH(4.2), -0.1)
        }) {
      assertThrows(OutOfRangeException.class, call);
    }
    assertThrows(IllegalStateException.class, () -> trial.glass(1).into(Tank.holding(hL(1))));
    assertThrows(
        IllegalArgumentException.class,
        () -> BenchTrial.of(BEER, Reagent.of(org.brewchem.substance.Acid.OXALIC, massPercent(99))));
  }

  @Test
  void aGlassIsCalledByItsNumber() {
    GlassDose<Beer> glass = trial().glass(4);
    assertTrue(
        glass.toString().startsWith("glass 4: 2.4 mL, 360 mg/L of the reagent, pH "),
        glass.toString());
    String budget =
        glass.answer(Figures.PH_VALUE).traced().sources().stream()
            .map(Source::name)
            .toList()
            .toString();
    assertTrue(budget.contains("volume of glass 4"), budget);
    assertTrue(budget.contains("pipetted into glass 4"), budget);
    assertTrue(!budget.contains("glass 3") && !budget.contains("glass 5"), budget);
    assertEquals("glass", glass.kind());
  }

  /** Two glasses of 200 mL take 4 mL of stock at most: a step of 4 mL is enough, more is not. */
  @Test
  void theCoarsestPipetteThatTellsTheGlassesApart() {
    BenchTrial.of(BEER, ACID)
        .glasses(2, mL(200), mL(1))
        .pipettingTo(mL(4), mL(0.1))
        .upTo(gPerL(0.6));
    String said =
        assertThrows(
                IllegalArgumentException.class,
                () ->
                    BenchTrial.of(BEER, ACID)
                        .glasses(3, mL(200), mL(1))
                        .pipettingTo(mL(4), mL(0.1))
                        .upTo(gPerL(0.6)))
            .getMessage();
    assertTrue(said.contains("at most 2.0 mL for 3 glasses of 200 mL"), said);
  }

  /** By hand: 4 mL of 1250 g/L in 200 mL are 25 g/L, where the stock is the reagent as bought. */
  @Test
  void aStockAsStrongAsTheReagentIsNone() {
    Reagent liquid = ACID.withDensity(gPerML(1.25), 0.001);
    refused("top dose: 25 g/L is not possible; below 25.00 g/L", liquid, 25);
    assertEquals(
        124.5,
        BenchTrial.of(BEER, liquid)
            .glasses(6, mL(200), mL(1))
            .pipettingTo(mL(0.1), mL(0.02))
            .stockOf(mL(100), mL(0.1), g(0.01))
            .upTo(gPerL(24.9))
            .massInStock()
            .inGrams(),
        1e-9);
  }

  private static void refused(String start, Reagent liquid, double top) {
    String said =
        assertThrows(
                OutOfRangeException.class,
                () ->
                    BenchTrial.of(BEER, liquid)
                        .glasses(6, mL(200), mL(1))
                        .pipettingTo(mL(0.1), mL(0.02))
                        .stockOf(mL(100), mL(0.1), g(0.01))
                        .upTo(gPerL(top)))
            .getMessage();
    assertTrue(said.startsWith(start), said);
  }
}
