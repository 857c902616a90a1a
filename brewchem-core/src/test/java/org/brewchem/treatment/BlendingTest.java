package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Held;
import org.brewchem.substance.Component;
import org.brewchem.treatment.UnreachableException.Reason;
import org.junit.jupiter.api.Test;

/** Blends of liquids that are nothing but contents. */
class BlendingTest {

  private static final Held WATER = Held.water();
  private static final Held BEER = Held.beer();

  private static void notBetween(Held first, Held second, PH wanted, double nearest) {
    refused(Reason.NOT_BETWEEN, first, second, wanted, nearest);
  }

  private static void refused(Reason reason, Held first, Held second, PH wanted, double nearest) {
    UnreachableException refused =
        assertThrows(UnreachableException.class, () -> Blend.of(first, second).to(wanted));
    assertSame(reason, refused.reason());
    assertEquals(nearest, refused.reach(), 1e-9);
  }

  /** Neither of the two is a blend of both, and what lies beyond names the nearer. */
  @Test
  void aTargetHasToLieBetweenTheTwo() {
    double high = WATER.answer(PH_VALUE).number();
    double low = BEER.answer(PH_VALUE).number();
    notBetween(WATER, BEER, pH(8.5), high);
    notBetween(BEER, WATER, pH(8.5), high);
    notBetween(WATER, BEER, pH(3.5), low);
    notBetween(BEER, WATER, pH(3.5), low);
    refused(Reason.ALREADY_THERE, WATER, BEER, pH(high), high);
    refused(Reason.ALREADY_THERE, BEER, WATER, pH(high), high);
    refused(Reason.ALREADY_THERE, WATER, BEER, pH(low), low);
    refused(Reason.ALREADY_THERE, BEER, WATER, pH(low), low);
  }

  @Test
  void theExplanationOfAShareIsTheShareInPerCent() {
    Blend<Held> blend = Blend.of(WATER, BEER).to(CALCIUM, mgPerL(75));
    Step root = blend.explain().root();
    assertEquals(100 * blend.shareOfFirst(), root.found().orElseThrow().value(), 1e-12);
    assertTrue(blend.shareOfFirst() > 0.3 && blend.shareOfFirst() < 0.7, blend.toString());
    assertEquals(
        1e-9 * Shown.inOwnScale(CALCIUM, 75),
        root.detail().orElseThrow().tolerance(),
        1e-12 * Shown.inOwnScale(CALCIUM, 75));
    assertTrue(blend.explain().holds());
  }

  /** What is notable about the figure that was blended to, as of each liquid, is said once. */
  @Test
  void theNoticesOfWhatWasBlendedToAreSaid() {
    double one = WATER.answer(Figures.SOURNESS_INDEX).number();
    double other = BEER.answer(Figures.SOURNESS_INDEX).number();
    Blend<Held> blend =
        Blend.of(WATER, BEER)
            .to(
                Figures.SOURNESS_INDEX,
                org.brewchem.quantity.Quantities.mmolPerL((one + other) / 2));
    List<Notice> notices = blend.notices();
    assertTrue(notices.containsAll(blend.explain().root().notices()));
    assertTrue(notices.containsAll(blend.after().notices()));
    assertEquals(notices.stream().distinct().count(), notices.size());
    assertFalse(blend.explain().root().notices().isEmpty());
  }

  /** A part of no volume tells nothing, and so leaves nothing untold. */
  @Test
  void aPartOfNoVolumeIsNotInTheBlend() {
    Held silent = new Held(WATER.contents().withUnknown(Component.CALCIUM));
    Held same = WATER.after(Treatments.blend(hL(1), List.of(silent), List.of(hL(0))));
    assertEquals(WATER.answer(CALCIUM).number(), same.answer(CALCIUM).number(), 1e-12);
    String said =
        Blends.of(WATER, BEER, silent)
            .volumes(hL(3), hL(1), hL(0))
            .answer(CALCIUM)
            .explain()
            .toString();
    assertTrue(said.contains("liquid 2 (liquid) in the mixture"), said);
    assertFalse(said.contains("liquid 3"), said);
  }

  @Test
  void eightLiquidsAreBlended() {
    Held[] more = new Held[6];
    java.util.Arrays.fill(more, BEER);
    Blends<Held> eight = Blends.of(WATER, BEER, more);
    assertEquals(8, eight.names().size());
    assertEquals(
        "blends of part 1, part 2 (0.00 to 50.0 %), part 3 (10.0 to 100 %)",
        Blends.of(WATER, BEER, BEER).atMost("part 2", 0.5).atLeast("part 3", 0.1).toString());
  }
}
