package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class RootsTest {

  private static double value(Root root) {
    return root.orElseThrow(end -> new IllegalStateException("no root"));
  }

  /** Cube roots by the standard library. */
  @Property
  void cubeRootsOverThirtyPowersOfTen(
      @ForAll @DoubleRange(min = -27, max = 3) @Scale(6) double exponent) {
    double cube = Math.pow(10, exponent);
    DoubleUnaryOperator relative = x -> x * x * x / cube - 1;
    double exact = Math.cbrt(cube);
    assertEquals(1, value(Roots.rising(relative, 0, 1e-9, 50)) / exact, 1e-13);
    assertEquals(1, value(Roots.between(relative, 0, 50)) / exact, 1e-13);
    double logarithm = value(Roots.walking(relative.compose(Math::exp), 0, this::towards, 0));
    assertEquals(Math.log(exact), logarithm, 1e-13 * Math.max(1, Math.abs(logarithm)));
  }

  private double towards(double x, double residual) {
    return x - Math.signum(residual);
  }

  @Test
  void aRootAtAnEndIsFound() {
    assertEquals(2, value(Roots.between(x -> x - 2, 2, 5)));
    assertEquals(5, value(Roots.between(x -> x - 5, 2, 5)));
    assertEquals(8, value(Roots.rising(x -> x - 8, 0, 1, 8)));
    assertEquals(3, value(Roots.walking(x -> 0, 3, this::towards, 0)));
  }

  @Test
  void walkingStopsWhereOnlyRoundingIsLeft() {
    DoubleUnaryOperator neverNegative = x -> x <= -4 ? 1e-12 : 1;
    assertEquals(-4, value(Roots.walking(neverNegative, 0, this::towards, 1e-11)));
  }

  @Test
  void withoutASignChangeTheRangeAndWhatIsLeftAreSaid() {
    Root rising = Roots.rising(x -> x - 60, 0, 1, 50);
    assertTrue(rising.asOptional().isEmpty());
    assertEquals(0, rising.low());
    assertEquals(50, rising.high());
    assertEquals(-10, rising.residual());
    assertEquals(7, rising.evaluations());

    Root between = Roots.between(x -> x + 1, 0, 4);
    assertTrue(between.asOptional().isEmpty());
    assertEquals(1, between.residual());
    assertTrue(between.evaluations() >= 2);

    Root walking = Roots.walking(x -> x + 9, 0, (x, residual) -> Math.max(x - 1, -3), 0);
    assertTrue(walking.asOptional().isEmpty());
    assertEquals(-3, walking.low());
    assertEquals(6, walking.residual());
    assertEquals(4, walking.evaluations());
  }

  @Test
  void theFailureIsTheCallers() {
    IllegalStateException thrown =
        assertThrows(
            IllegalStateException.class,
            () ->
                Roots.between(x -> 1, 0, 1)
                    .orElseThrow(end -> new IllegalStateException("left " + end.residual())));
    assertEquals("left 1.0", thrown.getMessage());
  }

  @Test
  void aSearchThatNeverEndsIsGivenUp() {
    AtomicInteger asked = new AtomicInteger();
    DoubleUnaryOperator counted =
        x -> {
          asked.incrementAndGet();
          return -1;
        };
    assertTrue(Roots.rising(counted, 0, 0, 50).asOptional().isEmpty());
    assertEquals(Roots.CAP, asked.get());
    Root walking = Roots.walking(x -> 1, 0, (x, residual) -> x + 1, 0);
    assertTrue(walking.asOptional().isEmpty());
    assertEquals(Roots.CAP, walking.evaluations());
    // A jump at zero is closed in on through all the powers of two of a double.
    Root jump = Roots.between(x -> x > 0 ? 1 : -1, -1, 0x1p-3);
    assertTrue(jump.asOptional().isEmpty());
    assertEquals(1, Math.abs(jump.residual()));
  }

  @Test
  void aFunctionWithoutAValueIsAnError() {
    ArithmeticException thrown =
        assertThrows(ArithmeticException.class, () -> Roots.between(Math::sqrt, -1, 2));
    assertTrue(thrown.getMessage().contains("-1.0"), thrown.getMessage());
  }
}
