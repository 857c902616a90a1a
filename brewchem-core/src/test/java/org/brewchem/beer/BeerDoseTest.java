package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.brewchem.buffer.BufferCode;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.Density;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Portion;
import org.brewchem.treatment.Treatments;
import org.brewchem.treatment.UnreachableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Doses into beers. What holds for doses into any liquid is tested with the dose itself. */
class BeerDoseTest {

  private static final Reagent LACTIC_88 =
      Reagent.of(Acid.LACTIC, massPercent(88))
          .withDensity(Density.ofGramsPerMillilitre(1.2), 0.01)
          .withAssayUncertainty(0.01);

  private static Dose<Beer> toAcidity() {
    return Dose.of(Beers.lager(), LACTIC_88).to(asLactic(2.00));
  }

  /**
   * Definition: what is missing, over the assay. Lactic acid counts fully as lactic acid; at level
   * pairs a little less, for it loosens pairs of calcium and magnesium.
   */
  @ParameterizedTest
  @CsvSource({"IDEAL, 0.001", "ACTIVITY, 0.005", "PAIRS, 0.01"})
  void aLacticAcidityNeedsItsMassOfLacticAcid(Level level, double relativeTolerance) {
    Portion tank =
        Dose.of(Beers.lager().under(Chemistry.of(level)), LACTIC_88)
            .to(asLactic(2.00))
            .into(hL(20));
    // g of pure acid = 2.0 g/L x (2000 L + its own volume) - 1.8 g/L x 2000 L
    double byArithmetic = 0.2 * 2000 / (1 - 2.0 / (0.88 * 1200)) / 0.88;
    assertEquals(byArithmetic, tank.mass().inGrams(), relativeTolerance * byArithmetic);
    assertEquals(tank.mass().inGrams() / 1.2, tank.volume().orElseThrow().inMillilitres(), 1e-9);
    assertEquals(
        tank.mass().inGrams() * 0.88 / Acid.LACTIC.molarMass().inGramsPerMole(),
        tank.amount().inMoles(),
        1e-9);
  }

  @Test
  void theTargetIsReachedAndTheOtherFigureFollows() {
    Beer after = toAcidity().after();
    assertEquals(2.0, after.titratableAcidity().number(), 1e-8);
    assertTrue(after.pH().number() < 4.35);
    Beer byPH = Dose.of(Beers.lager(), LACTIC_88).to(pH(4.1)).after();
    assertEquals(4.1, byPH.pH().number(), 1e-8);
    assertTrue(byPH.titratableAcidity().number() > 1.8);
  }

  @Test
  void dilutionByTheReagentCounts() {
    Reagent weak =
        Reagent.of(Acid.LACTIC, massPercent(2)).withDensity(Density.ofGramsPerMillilitre(1.0), 0);
    Dose<Beer> diluted =
        Dose.of(Beers.lager().under(Chemistry.of(Level.IDEAL)), weak).to(asLactic(2.0));
    double litres = diluted.into(hL(1)).volume().orElseThrow().inLitres();
    // 20 g/L x V + 1.8 g/L x 100 L = 2.0 g/L x (100 L + V)
    assertEquals(0.2 * 100 / 18, litres, 0.001 * litres);
    assertEquals(60 * 100 / (100 + litres), diluted.answer(CALCIUM).number(), 1e-9);
  }

  @Test
  void aPowderIsWeighed() {
    Reagent powder = Reagent.of(Acid.CITRIC_MONOHYDRATE, massPercent(99.5));
    Portion tank = Dose.of(Beers.lager(), powder).to(asLactic(2.0)).into(hL(10));
    assertEquals(Optional.empty(), tank.volume());
    assertTrue(tank.mass().inGrams() > 0);
  }

  @Test
  void equivalentsDeliveredAreNotThoseOfTheDefinition() {
    Dose<Beer> dose =
        Dose.of(Beers.lager(), Reagent.of(Acid.PHOSPHORIC, massPercent(75))).to(asLactic(2.0));
    assertEquals(3, Acid.PHOSPHORIC.protonsByDefinition());
    assertEquals(1.9, dose.delivered(pH(8.2)).number(), 0.1);
    assertEquals(1.0, dose.delivered().number(), 0.02);
  }

  @Test
  void theUncertaintiesArePropagated() {
    Beer after = toAcidity().after();
    double change = 4.35 - after.pH().number();
    double u = after.pH().standardUncertainty().orElseThrow();
    assertTrue(u > 0.2 * change && u < 0.5 * change, u + " of " + change);
    // The reading of the acidity, and what the bottle's strength, 1.4 %, does to the 0.2 g/L added.
    assertEquals(
        Math.hypot(0.01, Math.hypot(0.01, 0.01) * 0.2),
        after.titratableAcidity().standardUncertainty().orElseThrow(),
        2e-4);
  }

  @Test
  void anUncertaintyThatWasNotStatedIsNamed() {
    Beer after =
        Dose.of(Beer.of(pH(4.35), asLactic(1.8)), Reagent.of(Acid.CITRIC, massPercent(99)))
            .to(pH(4.2))
            .after();
    assertTrue(after.pH().standardUncertainty().isEmpty());
    String missing = String.join("; ", after.pH().uncertaintiesMissing());
    assertTrue(missing.contains("pH of the beer"), missing);
    assertTrue(missing.contains("titratable acidity"), missing);
    assertTrue(toAcidity().after().pH().uncertaintiesMissing().isEmpty());
  }

  @Test
  void aBetterBufferNarrowsThePrediction() {
    Beer beer =
        Beer.of(pH(4.0), asLactic(2.0))
            .withStandardUncertaintyOfPH(0.001)
            .withStandardUncertaintyOfAcidity(asLactic(0.01))
            .buffered(new BeerTest.LactateOnly());
    Dose<Beer> dose = Dose.of(beer, LACTIC_88).to(asLactic(2.2));
    assertEquals(2.2, dose.after().titratableAcidity().number(), 1e-8);
    assertTrue(
        dose.after().pH().standardUncertainty().orElseThrow()
            < 0.11 * (4.0 - dose.after().pH().number()) + 0.001);
    assertTrue(dose.notices().stream().noneMatch(n -> n.code() == BufferCode.RESTS_ON_STAND_IN));
  }

  @Test
  void sulfuricAcidRaisesAndHydrochloricLowersSulfateToChloride() {
    Dose<Beer> sulfuric =
        Dose.of(
                Beers.lager().under(Chemistry.of(Level.IDEAL)),
                Reagent.of(Acid.SULFURIC, massPercent(96)))
            .to(asLactic(2.0));
    assertEquals(0.8, Beers.lager().sulfateToChloride().number(), 1e-12);
    assertTrue(sulfuric.answer(SULFATE_TO_CHLORIDE).number() > 0.8);
    // 0.2 g/L as lactic are 2.22 mEq/L, of which sulfuric acid brings two per 96.06 g of sulfate
    assertEquals(120 + 0.2 / 90.08 / 2 * 96060, sulfuric.answer(Figures.SULFATE).number(), 0.2);
    Dose<Beer> hydrochloric =
        Dose.of(Beers.lager(), Reagent.of(Acid.HYDROCHLORIC, massPercent(30))).to(asLactic(2.0));
    assertTrue(hydrochloric.answer(SULFATE_TO_CHLORIDE).number() < 0.8);
    assertTrue(hydrochloric.cautions().stream().anyMatch(c -> c.hazard() == Hazard.ACID_FUMES));
  }

  @Test
  void citrateHoldsCalcium() {
    Dose<Beer> dose =
        Dose.of(Beers.lager(), Reagent.of(Acid.CITRIC, massPercent(99.5))).to(asLactic(2.2));
    assertTrue(
        dose.answer(Figures.free(Ion.CALCIUM)).number()
            < Beers.lager().answer(Figures.free(Ion.CALCIUM)).number());
  }

  private static UnreachableException.Reason refused(Runnable dose) {
    return assertThrows(UnreachableException.class, dose::run).reason();
  }

  @Test
  void whatAnAcidCannotDoIsRefused() {
    Dose.Request<Beer> acid = Dose.of(Beers.lager(), LACTIC_88);
    assertEquals(UnreachableException.Reason.WRONG_DIRECTION, refused(() -> acid.to(pH(4.5))));
    assertEquals(
        UnreachableException.Reason.WRONG_DIRECTION, refused(() -> acid.to(asLactic(1.5))));
    assertEquals(UnreachableException.Reason.ALREADY_THERE, refused(() -> acid.to(pH(4.35))));
    assertEquals(UnreachableException.Reason.ALREADY_THERE, refused(() -> acid.to(asLactic(1.8))));
    assertEquals(UnreachableException.Reason.TOO_WEAK, refused(() -> acid.to(pH(1.0))));
  }

  @Test
  void anotherEndPointIsAnotherFigureOfTheSameBeer() {
    Dose<Beer> dose = Dose.of(Beers.lager(), LACTIC_88).to(acidity(gPerL(1.9), LACTIC, pH(7.0)));
    assertEquals(1.9, dose.after().titratableAcidity(pH(7.0)).number(), 1e-8);
  }

  /** The carbon dioxide that bicarbonate brings reads as acid, until it is driven out. */
  @Test
  void bicarbonateLowersTheAcidityOnceItsGasHasLeft() {
    Dose.Request<Beer> bicarbonate =
        Dose.of(Beers.lager(), Reagent.of(Base.SODIUM_BICARBONATE, massPercent(99)));
    assertEquals(
        UnreachableException.Reason.WRONG_DIRECTION, refused(() -> bicarbonate.to(asLactic(1.6))));
    Dose<Beer> dose = bicarbonate.to(pH(4.5));
    assertTrue(dose.cautions().stream().anyMatch(c -> c.hazard() == Hazard.CARBON_DIOXIDE));
    Beer degassed = dose.after().after(Treatments.degassing(mgPerL(0.001)));
    double added = dose.perLitre().inMillimolesPerLitre();
    assertEquals(
        1.8 - added * LACTIC.gramsPerEquivalent() / 1000,
        degassed.titratableAcidity().number(),
        0.01);
  }

  @Test
  void aBeerWhoseBalanceIsOpenIsNotDosed() {
    Beer below = Beer.of(pH(3), asLactic(0.09));
    assertThrows(
        UnknownFigureException.class, () -> Dose.of(below, LACTIC_88).to(pH(2.9)).after().pH());
  }

  @Test
  void whatIsNoFoodAcidIsRefused() {
    for (Acid acid :
        new Acid[] {Acid.OXALIC, Acid.PHTHALIC, Acid.BORIC, Acid.SULFUROUS, Acid.CARBONIC}) {
      IllegalArgumentException error =
          assertThrows(
              IllegalArgumentException.class,
              () -> Dose.of(Beers.lager(), Reagent.of(acid, massPercent(99))).to(pH(4.2)));
      assertTrue(
          error.getMessage().contains("a dose into beer is not possible"), error.getMessage());
    }
  }

  @Test
  void everyDoseIsCautious() {
    for (Hazard hazard : new Hazard[] {Hazard.ACID, Hazard.DOSING_FOOD, Hazard.TASTING}) {
      assertTrue(toAcidity().cautions().stream().map(Caution::hazard).anyMatch(hazard::equals));
    }
    // The beer minds what was done; the dose, a trial, who tastes it besides.
    assertEquals(
        toAcidity().after().cautions(),
        toAcidity().cautions().stream().filter(c -> c.hazard() != Hazard.TASTING).toList());
  }

  @Test
  void theExplanationHolds() {
    assertTrue(toAcidity().explain().holds(), () -> toAcidity().explain().toString());
    assertFalse(toAcidity().explain().toMarkdown().isEmpty());
  }

  /** What was read off the beer is spread over more liquid, a tenth more here. */
  @Test
  void aDiluteAcidDilutesTheUncertaintyOfTheBeerToo() {
    Reagent dilute =
        Reagent.of(Acid.LACTIC, massPercent(1))
            .withDensity(Density.ofGramsPerMillilitre(1), 0)
            .withAssayUncertainty(0);
    Dose<Beer> dose = Dose.of(Beers.lager(), dilute).to(asLactic(2.55));
    double growth = 1 + dose.into(hL(1)).volume().orElseThrow().inLitres() / 100;
    assertTrue(growth > 1.09, Double.toString(growth));
    assertEquals(
        0.01 / growth, dose.after().titratableAcidity().standardUncertainty().orElseThrow(), 2e-4);
  }
}
