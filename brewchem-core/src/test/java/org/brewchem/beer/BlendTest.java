package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;

class BlendTest {

  @Test
  void aBlendReachesItsAcidity() {
    Blend blend = Beers.lager().blendedWith(Beers.sour()).total(hL(30)).to(asLactic(4.0));
    assertEquals(4.0, blend.acidity().inGramsPerLitreAs(LACTIC), 1e-9);
    assertEquals(30, blend.ofFirst().plus(blend.ofSecond()).inHectolitres(), 1e-9);
    // by arithmetic (6.5 - 4.0) / (6.5 - 1.8)
    assertEquals(2.5 / 4.7, blend.shareOfFirst(), 0.01);
  }

  @Test
  void aBlendReachesItsPh() {
    Blend blend = Beers.lager().blendedWith(Beers.sour()).total(hL(30)).to(pH(3.8));
    assertEquals(3.8, blend.pH().value(), 1e-9);
    // the better buffered sour beer pulls harder than its volume
    double byVolume = 4.35 * blend.shareOfFirst() + 3.5 * (1 - blend.shareOfFirst());
    assertTrue(byVolume > 3.85, Double.toString(byVolume));
  }

  @Test
  void givenVolumesAndATargetAgree() {
    Blend wanted = Beers.lager().blendedWith(Beers.sour()).total(hL(30)).to(pH(3.8));
    Blend given =
        Beers.lager().blendedWith(Beers.sour()).volumes(wanted.ofFirst(), wanted.ofSecond());
    assertEquals(3.8, given.pH().value(), 1e-9);
    assertEquals(
        wanted.acidity().inMilliequivalentsPerLitre(),
        given.acidity().inMilliequivalentsPerLitre(),
        1e-9);
  }

  @Test
  void ionsKnownOfBothMixAndOthersAreMissing() {
    Blend blend =
        Beers.lager()
            .blendedWith(Beers.sour().with(Ion.CALCIUM, mgPerL(30), Origin.MEASURED_IN_BEER))
            .volumes(hL(10), hL(20));
    KeyFigures after = blend.after();
    assertEquals(40, after.calcium().orElseThrow().value().inMilligramsPerLitre(), 1e-9);
    assertEquals(Origin.PREDICTED, after.calcium().orElseThrow().origin());
    assertTrue(after.sulfateToChloride().isEmpty());
  }

  @Test
  void thePredictionCarriesTheUncertaintyOfBothBufferings() {
    Figure<?> pH =
        Beers.lager().blendedWith(Beers.sour()).volumes(hL(10), hL(10)).after().pH().orElseThrow();
    double u = pH.standardUncertainty().orElseThrow();
    assertTrue(u > 0.02 && u < 0.3 * 0.95, Double.toString(u));
  }

  @Test
  void aTargetThatIsNotBetweenTheBeersIsRefused() {
    BlendRequest.OfTotal request = Beers.lager().blendedWith(Beers.sour()).total(hL(30));
    UnreachableTargetException thrown =
        assertThrows(UnreachableTargetException.class, () -> request.to(pH(3.3)));
    assertEquals(UnreachableTargetException.Reason.NOT_BETWEEN_THE_BEERS, thrown.reason());
    assertThrows(UnreachableTargetException.class, () -> request.to(asLactic(7)));
    assertThrows(
        IllegalArgumentException.class, () -> request.to(acidity(gPerL(4), LACTIC, pH(7))));
  }

  @Test
  void beersThatDoNotGoTogetherAreRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Beers.lager().blendedWith(Beers.sour().measuredAt(celsius(25))));
    assertThrows(
        IllegalArgumentException.class,
        () -> Beers.lager().blendedWith(Beer.of(pH(3.5), acidity(gPerL(6), LACTIC, pH(7)))));
    assertThrows(
        IllegalArgumentException.class,
        () -> Beers.lager().blendedWith(Beers.sour()).volumes(hL(0), hL(1)));
  }
}
