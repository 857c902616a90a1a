package org.brewchem.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.brewchem.substance.IonSizeParameters;
import org.brewchem.substance.PairSet;
import org.junit.jupiter.api.Test;

/** Activity coefficients and ion pairs that belong together. */
class ActivityRulePairsTest {

  private static final ActivityRule ION_SIZE =
      ActivityRule.ionSize(IonSizeParameters.standard(), 0.1);

  @Test
  void aRuleBringsItsPairsUnlessOthersAreStated() {
    assertSame(PairSet.standard(), Chemistry.standard().pairs());
    Chemistry ionSize = Chemistry.standard().withActivityRule(ION_SIZE);
    assertSame(PairSet.withAlkaliPairs(), ionSize.pairs());
    assertSame(PairSet.standard(), ionSize.withActivityRule(ActivityRule.davies()).pairs());
    PairSet stated = PairSet.named("nist46");
    assertSame(stated, ionSize.withPairs(stated).pairs());
    assertSame(stated, Chemistry.standard().withPairs(stated).withActivityRule(ION_SIZE).pairs());
    assertEquals(
        "level pairs, constants standard, activity by ion size, pairs standard with alkali pairs,"
            + " ion product IAPWS R11-07",
        ionSize.toString());
  }
}
