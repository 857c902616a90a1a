package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Held;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Ion;
import org.junit.jupiter.api.Test;

class ChancesTest {

  private static final OptionalDouble NONE = OptionalDouble.empty();

  /** 2.3 mmol/L, u 0.05: 92.0 mg/L by the density of water, u 2.0. */
  private static final Answer<?> CALCIUM = Held.water().answer(Figures.CALCIUM);

  private static Chances chances(Constraint constraint) {
    return Chances.of(constraint, CALCIUM);
  }

  /** The normal distribution: 15.87 % lie beyond one standard deviation, 2.28 % beyond two. */
  @Test
  void theChanceBeyondALimitIsThatOfTheNormalDistribution() {
    double value = CALCIUM.number();
    double u = CALCIUM.standardUncertainty().orElseThrow();
    Chances chances =
        chances(Constraint.between(Figures.CALCIUM, mgPerL(value - u), mgPerL(value + 2 * u)));
    assertEquals(0.15866, chances.below().orElseThrow(), 1e-5);
    assertEquals(0.02275, chances.above().orElseThrow(), 1e-5);
    assertEquals(1 - 0.15866 - 0.02275, chances.within().orElseThrow(), 1e-5);
    String text = chances.toString();
    assertTrue(text.startsWith("calcium then: 92.0 mg/L"), text);
    assertTrue(text.contains(" mg/L: 16 %"), text);
    assertTrue(text.endsWith(" mg/L: 2.3 %"), text);
    Chances oneSided = chances(Constraint.atMost(Figures.CALCIUM, mgPerL(value + u)));
    assertEquals(NONE, oneSided.below());
    assertEquals(1 - 0.15866, oneSided.within().orElseThrow(), 1e-5);
    assertTrue(!oneSided.toString().contains("below"), oneSided.toString());
  }

  @Test
  void withoutAnUncertaintyNoChanceIsKnown() {
    Solution exact = Solution.textbook().with(Ion.CALCIUM, mmolPerL(1));
    Answer<?> answer = exact.answer(Figures.CALCIUM);
    Constraint most = Constraint.atMost(Figures.CALCIUM, mgPerL(50));
    Chances unknown = new Chances(most, answer, NONE, NONE);
    assertEquals(NONE, unknown.within());
    assertTrue(unknown.toString().endsWith(", chances unknown"), unknown.toString());
  }

  @Test
  void whatIsNoChanceIsRefused() {
    Constraint most = Constraint.atMost(Figures.CALCIUM, mgPerL(50));
    OptionalDouble tooMuch = OptionalDouble.of(1.01);
    assertThrows(IllegalArgumentException.class, () -> new Chances(most, CALCIUM, tooMuch, NONE));
    assertThrows(IllegalArgumentException.class, () -> new Chances(most, CALCIUM, NONE, tooMuch));
  }
}
