package org.brewchem.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import org.brewchem.internal.EquilibriumSystem.Activity;
import org.brewchem.substance.IonSizeParameters;
import org.junit.jupiter.api.Test;

class ActivityRuleTest {

  private static final IonSizeParameters SIZES = IonSizeParameters.standard().with("X2+", 5, 0.15);

  private static ActivityRule sizes() {
    return ActivityRule.ionSize(SIZES, 0.1);
  }

  @Test
  void aSpeciesHasItsOwnParametersElseTheRuleForItsCharge() {
    assertEquals(new Activity(5, 0.15), sizes().of("X2+", 2));
    assertEquals(new Activity(0, 0.1), sizes().of("Y", 0));
    assertEquals(Activity.DAVIES, sizes().of("Y+", 1));
    assertEquals(Activity.DAVIES, ActivityRule.davies().of("X2+", 2));
    assertEquals(Activity.DAVIES, ActivityRule.davies().of("Y", 0));
  }

  @Test
  void rulesAreEqualByAllThatTheyHold() {
    assertEquals(sizes(), sizes());
    assertEquals(sizes().hashCode(), sizes().hashCode());
    for (Object other :
        List.of(
            ActivityRule.davies(),
            ActivityRule.ionSize(SIZES, 0.2),
            ActivityRule.ionSize(IonSizeParameters.standard(), 0.1),
            "ion size")) {
      assertNotEquals(sizes(), other);
    }
    assertNotEquals(sizes().hashCode(), ActivityRule.davies().hashCode());
    assertEquals("ion size", sizes().name());
    assertEquals("Davies", ActivityRule.davies().name());
    assertEquals("Davies", ActivityRule.davies().toString());
  }
}
