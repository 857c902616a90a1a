package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.brewchem.quantity.Density;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Use;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BeerDoseTest {

  private static final Reagent LACTIC_88 =
      Reagent.of(Acid.LACTIC, massPercent(88)).withDensity(Density.ofGramsPerMillilitre(1.2), 0.01);

  private static BeerDose toAcidity() {
    return Beers.lager().dose(LACTIC_88).into(hL(20)).to(asLactic(2.00));
  }

  /**
   * Definition: what is missing, over the assay. Lactic acid counts fully as lactic acid; at level
   * pairs a little less, for it loosens pairs of calcium and magnesium.
   */
  @ParameterizedTest
  @CsvSource({"IDEAL, 0.001", "ACTIVITY, 0.005", "PAIRS, 0.01"})
  void aLacticAcidityNeedsItsMassOfLacticAcid(Level level, double relativeTolerance) {
    BeerDose dose =
        Beers.lager().under(Chemistry.of(level)).dose(LACTIC_88).into(hL(20)).to(asLactic(2.00));
    // g of pure acid = 2.0 g/L x (2000 L + its own volume) - 1.8 g/L x 2000 L
    double byArithmetic = 0.2 * 2000 / (1 - 2.0 / (0.88 * 1200)) / 0.88;
    assertEquals(byArithmetic, dose.mass().inGrams(), relativeTolerance * byArithmetic);
  }

  @Test
  void massVolumeAndAmountBelongTogether() {
    BeerDose dose = toAcidity();
    assertEquals(dose.mass().inGrams() / 1.2, dose.volume().orElseThrow().inMillilitres(), 1e-9);
    assertEquals(dose.mass().inGrams() / 20, dose.massPerHectolitre().inGrams(), 1e-9);
    assertEquals(
        dose.mass().inGrams() / 1.2 / 20,
        dose.volumePerHectolitre().orElseThrow().inMillilitres(),
        1e-9);
    assertEquals(
        dose.mass().inGrams() * 0.88 / Acid.LACTIC.molarMass().inGramsPerMole(),
        dose.amount().inMoles(),
        1e-9);
    assertEquals(2.0, dose.acidityAfter().inGramsPerLitreAs(LACTIC), 1e-9);
    assertTrue(dose.pHAfter().compareTo(pH(4.35)) < 0);
  }

  @Test
  void aPhIsReached() {
    BeerDose dose = Beers.lager().dose(LACTIC_88).into(litres(500)).to(pH(4.1));
    assertEquals(4.1, dose.pHAfter().value(), 1e-9);
    assertTrue(dose.acidityAfter().compareTo(asLactic(1.8)) > 0);
  }

  @Test
  void dilutionByTheReagentCounts() {
    Reagent weak =
        Reagent.of(Acid.LACTIC, massPercent(2)).withDensity(Density.ofGramsPerMillilitre(1.0), 0);
    BeerDose diluted =
        Beers.lager().under(Chemistry.of(Level.IDEAL)).dose(weak).into(hL(1)).to(asLactic(2.0));
    double litres = diluted.volume().orElseThrow().inLitres();
    // 20 g/L x V + 1.8 g/L x 100 L = 2.0 g/L x (100 L + V)
    assertEquals(0.2 * 100 / 18, litres, 0.001 * litres);
    assertEquals(
        60 * 100 / (100 + litres),
        diluted.after().calcium().orElseThrow().value().inMilligramsPerLitre(),
        1e-9);
  }

  @Test
  void aPowderIsWeighed() {
    Reagent powder = Reagent.of(Acid.CITRIC_MONOHYDRATE, massPercent(99.5));
    BeerDose dose = Beers.lager().dose(powder).into(hL(10)).to(asLactic(2.0));
    assertEquals(Optional.empty(), dose.volume());
    assertEquals(Optional.empty(), dose.volumePerHectolitre());
    assertTrue(dose.mass().inGrams() > 0);
    assertTrue(dose.toString().contains(" g of citric acid monohydrate, 99.5 %"), dose.toString());
  }

  @Test
  void equivalentsDeliveredAreNotThoseOfTheDefinition() {
    BeerDose dose =
        Beers.lager()
            .dose(Reagent.of(Acid.PHOSPHORIC, massPercent(75)))
            .into(hL(10))
            .to(asLactic(2.0));
    assertEquals(3, dose.equivalentsByDefinition());
    assertEquals(1.9, dose.equivalentsAtEndPoint(), 0.1);
    assertEquals(1.0, dose.equivalentsInBeer(), 0.02);
  }

  @Test
  void theUncertaintiesArePropagated() {
    BeerDose dose = toAcidity();
    KeyFigures after = dose.after();
    double change = 4.35 - dose.pHAfter().value();
    double ofPH = after.pH().orElseThrow().standardUncertainty().orElseThrow();
    assertEquals(0.35 * change, ofPH, 0.05 * change);
    double perGram = 1000 / LACTIC.gramsPerEquivalent();
    assertEquals(
        Math.hypot(0.01, 0.01 * 0.2) * perGram,
        after.acidity().orElseThrow().standardUncertainty().orElseThrow(),
        1e-4);
    assertEquals(Origin.PREDICTED, after.pH().orElseThrow().origin());
  }

  @Test
  void anUncertaintyThatWasNotStatedIsSaid() {
    BeerDose dose =
        Beer.of(pH(4.35), asLactic(1.8))
            .dose(Reagent.of(Acid.CITRIC, massPercent(99)))
            .into(hL(1))
            .to(pH(4.2));
    assertEquals(
        3,
        dose.findings().stream()
            .filter(finding -> finding.kind() == BeerFinding.Kind.UNCERTAINTY_NOT_STATED)
            .count());
    assertTrue(
        toAcidity().findings().stream()
            .noneMatch(finding -> finding.kind() == BeerFinding.Kind.UNCERTAINTY_NOT_STATED));
  }

  @Test
  void aBetterBufferingNarrowsThePrediction() {
    Beer beer = Beer.of(pH(4.0), asLactic(2.0));
    Reagent reagent = LACTIC_88;
    BeerDose dose =
        beer.buffered(new BeerTest.LactateOnly()).dose(reagent).into(hL(1)).to(asLactic(2.2));
    assertEquals(2.2, dose.acidityAfter().inGramsPerLitreAs(LACTIC), 1e-9);
    assertTrue(
        dose.after().pH().orElseThrow().standardUncertainty().orElseThrow()
            < 0.11 * (4.0 - dose.pHAfter().value()) + 0.001);
    assertTrue(
        dose.findings().stream()
            .noneMatch(finding -> finding.kind() == BeerFinding.Kind.RESTS_ON_STAND_IN));
  }

  @Test
  void sulfuricAcidRaisesAndHydrochloricLowersSulfateToChloride() {
    BeerDose sulfuric =
        Beers.lager()
            .under(Chemistry.of(Level.IDEAL))
            .dose(Reagent.of(Acid.SULFURIC, massPercent(96)))
            .into(hL(10))
            .to(asLactic(2.0));
    AnionEffect effect = sulfuric.anionEffect();
    assertEquals(0.8, effect.sulfateToChlorideBefore().orElseThrow(), 1e-12);
    assertTrue(effect.sulfateToChlorideAfter().orElseThrow() > 0.8);
    assertEquals(
        effect.sulfateToChlorideAfter().orElseThrow(),
        sulfuric.after().sulfateToChloride().orElseThrow().value());
    // 0.2 g/L as lactic are 2.22 mEq/L, of which sulfuric acid brings two per 96.06 g of sulfate
    assertEquals(0.2 / 90.08 / 2 * 96060, effect.added().inMilligramsPerLitre(), 0.2);
    BeerDose hydrochloric =
        Beers.lager()
            .dose(Reagent.of(Acid.HYDROCHLORIC, massPercent(30)))
            .into(hL(10))
            .to(asLactic(2.0));
    assertTrue(hydrochloric.anionEffect().sulfateToChlorideAfter().orElseThrow() < 0.8);
    assertTrue(hydrochloric.anionEffect().toString().contains("sulfate to chloride falls"));
  }

  @Test
  void citrateHoldsCalcium() {
    AnionEffect effect =
        Beers.lager()
            .dose(Reagent.of(Acid.CITRIC, massPercent(99.5)))
            .into(hL(10))
            .to(asLactic(2.2))
            .anionEffect();
    assertTrue(
        effect.freeCalciumAfter().orElseThrow().compareTo(effect.freeCalciumBefore().orElseThrow())
            < 0);
    assertTrue(
        Beer.of(pH(4.35), asLactic(1.8))
            .dose(LACTIC_88)
            .into(hL(1))
            .to(pH(4.2))
            .anionEffect()
            .freeCalciumBefore()
            .isEmpty());
  }

  private static UnreachableTargetException refusedAcidity(double gramsPerLitre) {
    return assertThrows(
        UnreachableTargetException.class,
        () -> Beers.lager().dose(LACTIC_88).into(hL(20)).to(asLactic(gramsPerLitre)));
  }

  private static UnreachableTargetException refusedPH(double target) {
    return assertThrows(
        UnreachableTargetException.class,
        () -> Beers.lager().dose(LACTIC_88).into(hL(20)).to(pH(target)));
  }

  @Test
  void whatAnAcidCannotDoIsRefusedWithAWayOut() {
    UnreachableTargetException lower = refusedAcidity(1.5);
    assertEquals(UnreachableTargetException.Reason.ACID_CANNOT_LOWER_ACIDITY, lower.reason());
    assertTrue(lower.getMessage().contains("Blend"), lower.getMessage());
    assertTrue(lower.getMessage().contains("carbonate"), lower.getMessage());
    assertEquals(UnreachableTargetException.Reason.ACID_CANNOT_RAISE_PH, refusedPH(4.5).reason());
    assertEquals(UnreachableTargetException.Reason.ALREADY_THERE, refusedPH(4.35).reason());
    assertEquals(UnreachableTargetException.Reason.ALREADY_THERE, refusedAcidity(1.8).reason());
    assertEquals(UnreachableTargetException.Reason.ACID_TOO_WEAK, refusedPH(1.0).reason());
  }

  @Test
  void aTargetToAnotherEndPointIsRefused() {
    IllegalArgumentException thrown =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                Beers.lager()
                    .dose(LACTIC_88)
                    .into(hL(20))
                    .to(acidity(gPerL(2.0), LACTIC, pH(7.0))));
    assertTrue(thrown.getMessage().contains("end point"), thrown.getMessage());
  }

  @Test
  void aReagentThatIsNoAcidAndNoBeerAreRefused() {
    IllegalArgumentException thrown =
        assertThrows(
            IllegalArgumentException.class,
            () -> Beers.lager().dose(Reagent.of(Base.SODIUM_BICARBONATE, massPercent(99))));
    assertEquals(
        "reagent: "
            + Reagent.of(Base.SODIUM_BICARBONATE, massPercent(99))
            + " is not possible; an acid is needed",
        thrown.getMessage());
    assertThrows(IllegalArgumentException.class, () -> Beers.lager().dose(LACTIC_88).into(hL(0)));
  }

  @Test
  void estersAndExcessAreRemarkedOn() {
    BeerDose dose =
        Beers.lager()
            .dose(LACTIC_88.withBoundInEsters(massPercent(12)))
            .into(hL(1))
            .to(asLactic(11));
    assertTrue(
        dose.findings().stream()
            .anyMatch(finding -> finding.kind() == BeerFinding.Kind.BOUND_IN_ESTERS));
    assertTrue(
        dose.findings().stream()
            .anyMatch(finding -> finding.kind() == BeerFinding.Kind.ACIDITY_UNUSUAL));
  }

  @Test
  void whatIsNoFoodAcidIsRefused() {
    for (Acid acid :
        new Acid[] {Acid.OXALIC, Acid.PHTHALIC, Acid.BORIC, Acid.SULFUROUS, Acid.CARBONIC}) {
      IllegalArgumentException error =
          assertThrows(
              IllegalArgumentException.class,
              () -> Beers.lager().dose(Reagent.of(acid, massPercent(99))));
      assertTrue(
          error
              .getMessage()
              .startsWith(acid + ", 99 % by mass: a dose into beer is not possible; "),
          error.getMessage());
    }
  }

  @Test
  void anAcidWhoseUseIsNotStatedIsNotTasted() {
    Acid own = Acid.ofKa("acid of our own", 1e-4).withFormula("C2H4O2");
    BeerDose silent = Beers.lager().dose(Reagent.of(own, massPercent(99))).into(hL(1)).to(pH(4.2));
    assertTrue(
        silent.findings().stream()
            .anyMatch(finding -> finding.kind() == BeerFinding.Kind.PERMISSION));
    assertFalse(silent.anionEffect().toString().contains("taste"));
    assertFalse(String.join("\n", silent.cautions()).contains(", and taste"));
    BeerDose stated =
        Beers.lager()
            .dose(Reagent.of(own.withUse(Use.BEER, "our authority"), massPercent(99)))
            .into(hL(1))
            .to(pH(4.2));
    assertTrue(stated.anionEffect().toString().contains("taste"));
    for (BeerDose dose : new BeerDose[] {stated, toAcidity()}) {
      assertTrue(
          dose.findings().stream()
              .noneMatch(finding -> finding.kind() == BeerFinding.Kind.PERMISSION));
    }
  }

  @Test
  void everyDoseIsCautious() {
    for (Acid acid : new Acid[] {Acid.LACTIC, Acid.SULFURIC, Acid.HYDROCHLORIC}) {
      String cautions =
          String.join(
              "\n",
              Beers.lager()
                  .dose(Reagent.of(acid, massPercent(30)))
                  .into(hL(1))
                  .to(pH(4.2))
                  .cautions());
      for (String word :
          new String[] {"safety data sheet", "food law", "bench", "slowly", "label"}) {
        assertTrue(cautions.contains(word), word);
      }
    }
  }

  @Test
  void theExplanationPrintsTheResultsOwnNumbers() {
    BeerDose dose = toAcidity();
    String text = dose.explain();
    assertTrue(text.contains("stand-in"), text);
    assertTrue(
        text.contains(
            String.format(java.util.Locale.ROOT, "%.1f g of reagent", dose.mass().inGrams())),
        text);
    assertTrue(text.contains("1 by definition"), text);
    assertFalse(text.contains("NaN"), text);
    assertTrue(dose.toString().contains("into 20 hL; expected pH 4.19"), dose.toString());
  }
}
