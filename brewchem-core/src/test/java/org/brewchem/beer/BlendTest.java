package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.titration.TitrationCode;
import org.brewchem.treatment.Blend;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.UnreachableException;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

class BlendTest {

  private static Blend.Request<Beer> both() {
    return Blend.of(Beers.lager(), Beers.sour());
  }

  @Test
  void aBlendReachesItsAcidity() {
    Blend<Beer> blend = both().to(asLactic(4.0));
    assertEquals(4.0, blend.after().titratableAcidity().number(), 1e-8);
    assertEquals(30, blend.ofFirst(hL(30)).plus(blend.ofSecond(hL(30))).inHectolitres(), 1e-9);
    // by arithmetic (6.5 - 4.0) / (6.5 - 1.8)
    assertEquals(2.5 / 4.7, blend.shareOfFirst(), 0.01);
    assertTrue(blend.explain().holds());
  }

  @Test
  void aBlendReachesItsPh() {
    Blend<Beer> blend = both().to(pH(3.8));
    assertEquals(3.8, blend.after().pH().number(), 1e-8);
    // the better buffered sour beer pulls harder than its volume
    double byVolume = 4.35 * blend.shareOfFirst() + 3.5 * (1 - blend.shareOfFirst());
    assertTrue(byVolume > 3.85, Double.toString(byVolume));
  }

  @Test
  void givenVolumesAndATargetAgree() {
    Blend<Beer> wanted = both().to(pH(3.8));
    Blend<Beer> given = both().volumes(wanted.ofFirst(hL(30)), wanted.ofSecond(hL(30)));
    assertEquals(3.8, given.after().pH().number(), 1e-8);
    assertEquals(
        wanted.after().titratableAcidity().number(),
        given.after().titratableAcidity().number(),
        1e-8);
  }

  @Test
  void ionsKnownOfBothMixAndOthersAreUnknown() {
    Blend<Beer> blend =
        Blend.of(Beers.lager(), Beers.sour().with(Ion.CALCIUM, mgPerL(30), mgPerL(1)))
            .volumes(hL(10), hL(20));
    assertEquals(40, blend.after().calcium().number(), 1e-9);
    assertFalse(blend.after().sulfateToChloride().isStated());
  }

  @Test
  void thePredictionCarriesTheUncertaintyOfBothBuffers() {
    double u = both().volumes(hL(10), hL(10)).after().pH().standardUncertainty().orElseThrow();
    assertTrue(u > 0.02 && u < 0.3 * 0.95, Double.toString(u));
  }

  @Test
  void anIonOfWhichOneBeerTellsNothingIsUnknownInTheBlend() {
    Beer known =
        Beers.sour()
            .brewedWith(
                WaterReport.reported().sulfate(mgPerL(90)).chloride(mgPerL(60)).build().water());
    Beer silent = Beers.sour();
    assertFalse(
        Blend.of(known, silent).volumes(hL(1), hL(1)).after().sulfateToChloride().isStated());
    assertFalse(
        Blend.of(silent, known).volumes(hL(1), hL(1)).after().answer(Figures.SULFATE).isStated());
    Beer both = Blend.of(known, known).volumes(hL(1), hL(1)).after();
    assertEquals(90, both.answer(Figures.SULFATE).number(), 1e-9);
    Beer measured = Beers.sour().with(Ion.SULFATE, mgPerL(50));
    Beer mixed = Blend.of(known, measured).volumes(hL(1), hL(1)).after();
    assertEquals(70, mixed.answer(Figures.SULFATE).number(), 1e-9);
  }

  @Test
  void aBeerWithoutUncertaintyLeavesTheBlendWithoutOne() {
    Beer without = Beer.of(pH(3.5), asLactic(6.5));
    Blend<Beer> blend = Blend.of(Beers.lager(), without).volumes(hL(10), hL(10));
    assertTrue(blend.after().titratableAcidity().standardUncertainty().isEmpty());
    assertFalse(blend.after().titratableAcidity().toString().contains("U "));
  }

  @Test
  void aBlendWithItselfKeepsItsUncertainty() {
    Beer beer = Beers.lager();
    Beer twice = Blend.of(beer, beer).volumes(hL(1), hL(2)).after();
    assertEquals(0.01, twice.titratableAcidity().standardUncertainty().orElseThrow(), 1e-6);
    assertEquals(0.01, twice.pH().standardUncertainty().orElseThrow(), 1e-6);
  }

  @Test
  void aTargetThatIsNotBetweenTheBeersIsRefused() {
    UnreachableException thrown =
        assertThrows(UnreachableException.class, () -> both().to(pH(3.3)));
    assertEquals(UnreachableException.Reason.NOT_BETWEEN, thrown.reason());
    assertEquals(3.5, thrown.reach(), 1e-9);
    assertThrows(UnreachableException.class, () -> both().to(asLactic(7)));
  }

  @Test
  void beersThatDoNotGoTogetherAreRefused() {
    Beer warm = Beers.sour().measuredAt(celsius(25));
    assertThrows(IllegalArgumentException.class, () -> Blend.of(Beers.lager(), warm));
    assertThrows(IllegalArgumentException.class, () -> both().volumes(hL(0), hL(1)));
    // Another end point is another figure; it comes from the balance then.
    Beer toSeven = Beer.of(pH(3.5), acidity(gPerL(6), LACTIC, pH(7)));
    assertTrue(
        Blend.of(Beers.lager(), toSeven)
            .volumes(hL(1), hL(1))
            .after()
            .titratableAcidity()
            .isStated());
  }

  @Test
  void aBlendHasItsCautions() {
    assertTrue(
        both().volumes(hL(1), hL(1)).cautions().stream()
            .anyMatch(caution -> caution.hazard() == Hazard.REFERMENTATION));
  }

  @Test
  void whatIsNotableAboutEitherBeerIsNotableAboutTheBlend() {
    Beer unusual = Beer.of(pH(3.2), asLactic(11));
    for (Blend.Request<Beer> request :
        List.of(Blend.of(unusual, Beers.lager()), Blend.of(Beers.lager(), unusual))) {
      assertTrue(
          request.volumes(hL(1), hL(1)).notices().stream()
              .anyMatch(notice -> notice.code() == TitrationCode.ACIDITY_UNUSUAL));
    }
    assertTrue(
        Dose.of(Beers.sour(), Reagent.of(Acid.LACTIC, massPercent(80)))
            .to(asLactic(10.5))
            .notices()
            .stream()
            .anyMatch(notice -> notice.code() == TitrationCode.ACIDITY_UNUSUAL));
  }

  /**
   * Each beer's reading by its share: 0.01 and 0.05 g/L, two volumes to one. At level ideal
   * acidities mix exactly.
   */
  @Test
  void theAcidityCarriesTheUncertaintyOfBothByTheirShares() {
    assertEquals(
        Math.hypot(2 * 0.01, 0.05) / 3,
        Blend.of(
                Beers.lager().under(Chemistry.of(Level.IDEAL)),
                Beers.sour().under(Chemistry.of(Level.IDEAL)))
            .volumes(hL(20), hL(10))
            .after()
            .titratableAcidity()
            .standardUncertainty()
            .orElseThrow(),
        1e-6);
  }

  /** By hand: one of three. */
  @Test
  void aShareByVolumesIsExplained() {
    Blend<Beer> blend = both().volumes(hL(1), hL(2));
    assertTrue(blend.explain().holds());
    assertTrue(
        blend.explain().toString().contains("its volume over both = 33.33 %"),
        blend.explain().toString());
  }

  @Test
  void withoutAnAimTheNearerLimitIsMet() {
    assertEquals(
        3.9,
        both().to(Constraint.between(Figures.PH_VALUE, pH(3.7), pH(3.9))).after().pH().number(),
        1e-8);
    assertEquals(
        3.7,
        Blend.of(Beers.sour(), Beers.lager())
            .to(Constraint.between(Figures.PH_VALUE, pH(3.7), pH(3.9)))
            .after()
            .pH()
            .number(),
        1e-8);
  }

  @Test
  void noNoticeIsSaidTwice() {
    List<Notice> blended = both().volumes(hL(1), hL(1)).notices();
    assertEquals(Set.copyOf(blended).size(), blended.size());
    Dose<Beer> dose =
        Dose.of(Beers.sour(), Reagent.of(Acid.LACTIC, massPercent(80))).to(asLactic(10.5));
    assertEquals(Set.copyOf(dose.notices()).size(), dose.notices().size());
    assertTrue(dose.notices().containsAll(dose.after().notices()));
  }

  /** A lager of pH 4.35 and a sour beer of 3.5, whichever is named first. */
  @Test
  void ofOneBeerWithinALimitAsMuchAsPossibleIsReplaced() {
    Constraint limit = Constraint.atLeast(Figures.PH_VALUE, pH(4.0));
    Blend<Beer> blend = both().to(limit);
    Blend<Beer> swapped = Blend.of(Beers.sour(), Beers.lager()).to(limit);
    assertEquals(4.0, blend.after().pH().number(), 1e-8);
    assertEquals(1 - swapped.shareOfFirst(), blend.shareOfFirst(), 1e-9);
    assertEquals(
        3.8,
        both().to(Constraint.between(Figures.PH_VALUE, pH(3.7), pH(3.8))).after().pH().number(),
        1e-8);
  }

  @Test
  void aBeerThatIsThereAlreadyNeedsNoOther() {
    UnreachableException both = assertThrows(UnreachableException.class, () -> both().to(pH(4.35)));
    assertEquals(UnreachableException.Reason.ALREADY_THERE, both.reason());
    assertEquals(
        "pH: pH 4.35 needs none of the second liquid; the liquid is there already or beyond it, at"
            + " pH 4.35",
        both.getMessage());
    assertEquals(
        UnreachableException.Reason.ALREADY_THERE,
        assertThrows(
                UnreachableException.class,
                () -> both().to(Constraint.atMost(Figures.PH_VALUE, pH(5))))
            .reason());
    assertTrue(
        assertThrows(
                UnreachableException.class,
                () -> Blend.of(Beers.sour(), Beers.lager()).to(pH(4.35)))
            .getMessage()
            .contains("the first liquid"));
  }

  /** Numbers that differ by the last bits of a conversion are the same. */
  @Test
  void anAcidityThatABeerHasIsThereAlready() {
    Beer two = Beer.of(pH(4.4), asLactic(2.0));
    Beer three = Beer.of(pH(4.1), asLactic(3.0));
    assertEquals(
        UnreachableException.Reason.ALREADY_THERE,
        assertThrows(UnreachableException.class, () -> Blend.of(two, three).to(asLactic(2.0)))
            .reason());
    assertEquals(
        UnreachableException.Reason.ALREADY_THERE,
        assertThrows(UnreachableException.class, () -> Blend.of(two, three).to(asLactic(3.0)))
            .reason());
  }
}
