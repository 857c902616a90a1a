package org.brewchem.solution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Function;
import org.brewchem.figure.Step;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** What a closure finds, and how it moves with what was read. */
class CarbonateClosureTest {

  private static final PH END = PH.of(4.3);

  /** Calcium, alkalinity, then pH or total carbon dioxide; one of them moved. */
  private static Traced[] read(int moved, double by, double last, double uOfLast) {
    double[] values = {2.3e-3, 4.3e-3, last};
    double[] u = {0.05e-3, 0.1e-3, uOfLast};
    Traced[] read = new Traced[3];
    for (int i = 0; i < 3; i++) {
      read[i] = Held.read("read " + i, values[i] + (i == moved ? by * u[i] : 0), u[i]);
    }
    return read;
  }

  private static CarbonateClosure closure(Traced calcium) {
    return CarbonateClosure.of(
        Contents.pure(Held.AT, Chemistry.standard())
            .withTotal(Component.CALCIUM, calcium)
            .withTotal(Component.CHLORIDE, Traced.exact(1e-3)),
        List.of());
  }

  private static void assertMovesAsDifferencesSay(
      Function<Traced[], Contents> closing,
      Function<Contents, Traced> found,
      double last,
      double uOfLast) {
    Traced base = found.apply(closing.apply(read(-1, 0, last, uOfLast)));
    double step = 1e-3;
    for (Source source : base.sources()) {
      int i = Integer.parseInt(source.name().substring(5));
      double up = found.apply(closing.apply(read(i, step, last, uOfLast))).value();
      double down = found.apply(closing.apply(read(i, -step, last, uOfLast))).value();
      double expected = (up - down) / (2 * step);
      double own = base.sensitivity(source) * source.standardUncertainty().orElseThrow();
      assertEquals(expected, own, 1e-5 * base.standardUncertainty().orElseThrow(), source.name());
    }
    assertEquals(3, base.sources().size());
  }

  private static Traced carbonDioxide(Contents contents) {
    return contents.total(Component.CARBONATE).orElseThrow();
  }

  @Test
  void byAPh() {
    assertMovesAsDifferencesSay(
        read -> closure(read[0]).byPH(read[1], read[2]),
        CarbonateClosureTest::carbonDioxide,
        7.6,
        0.05);
  }

  @Test
  void byATotal() {
    assertMovesAsDifferencesSay(
        read -> closure(read[0]).byTotal(read[1], read[2]), Contents::pH, 4.6e-3, 0.1e-3);
    Contents closed =
        closure(Traced.exact(2.3e-3)).byTotal(Traced.exact(4.3e-3), Traced.exact(4.6e-3));
    assertEquals(4.6e-3, carbonDioxide(closed).value(), 0);
    assertEquals(-4.3e-3, closed.chargeOf(Component.CARBONATE).value(), 1e-12);
  }

  @Test
  void byATitration() {
    assertMovesAsDifferencesSay(
        read -> closure(read[0]).byTitration(read[1], END, read[2]),
        CarbonateClosureTest::carbonDioxide,
        7.6,
        0.05);
  }

  /** 0.4 mEq/kg of base to pH 8.2: the pH moves with both titrations and with the ions. */
  @Test
  void byTwoTitrations() {
    PH other = PH.of(8.2);
    assertMovesAsDifferencesSay(
        read -> closure(read[0]).byTitrations(read[1], END, read[2], other),
        Contents::pH,
        -0.4e-3,
        0.02e-3);
    Contents closed =
        closure(Traced.exact(2.3e-3))
            .byTitrations(Traced.exact(4.3e-3), END, Traced.exact(-0.4e-3), other);
    assertEquals(4.3e-3, closed.chargeAt(Traced.exact(4.3)).value(), 1e-12);
    assertEquals(-0.4e-3, closed.chargeAt(Traced.exact(8.2)).value(), 1e-11);
    assertEquals(
        "alkalinity: 1.000 mEq/kg to pH 4.3 is not possible with 1.500 mEq/kg to pH 8.2; no water"
            + " has both",
        refused(
            () ->
                closure(Traced.exact(2.3e-3))
                    .byTitrations(Traced.exact(1e-3), END, Traced.exact(1.5e-3), other)));
  }

  /** 2 x 2.3 mmol/kg of calcium against 1 of chloride. */
  @Test
  void withoutAlkalinityAndCarbonDioxideTheIonsAloneAreMadeNeutral() {
    Traced calcium = Held.read("calcium", 2.3e-3, 0.05e-3);
    Contents neutral = closure(calcium).byTotal(Traced.exact(0), Traced.exact(0));
    assertEquals(-3.6e-3, neutral.inertCharge().orElseThrow().value(), 1e-15);
    assertEquals(
        0.1e-3, neutral.inertCharge().orElseThrow().standardUncertainty().orElseThrow(), 1e-15);
    assertEquals(0, carbonDioxide(neutral).value(), 0);
  }

  private static String refused(Runnable closing) {
    return String.valueOf(assertThrows(IllegalArgumentException.class, closing::run).getMessage());
  }

  @Test
  void whatDoesNotGoTogetherIsRefused() {
    CarbonateClosure closure = closure(Traced.exact(2.3e-3));
    assertEquals(
        "alkalinity: 4.300 mEq/kg is not possible with 2.000 mmol/kg of carbon dioxide; more than 0"
            + " and less than twice as many mEq/kg are",
        refused(() -> closure.byTotal(Traced.exact(4.3e-3), Traced.exact(2e-3))));
    for (double[] row : new double[][] {{0, 2e-3}, {2e-3, 0}}) {
      assertTrue(
          refused(() -> closure.byTotal(Traced.exact(row[0]), Traced.exact(row[1])))
              .startsWith("alkalinity: "));
    }
    assertEquals(
        "pH: 2 is not possible with an alkalinity of 100.0 mEq/kg; more than 10 mol/kg of carbon"
            + " dioxide would be needed",
        refused(() -> closure.byPH(Traced.exact(0.1), Traced.exact(2))));
    assertEquals(
        "pH: 4.3 is not possible; a water with an alkalinity to pH 4.3 lies above that end point",
        refused(() -> closure.byTitration(Traced.exact(4.3e-3), END, Traced.exact(4.3))));
    assertTrue(
        refused(() -> closure.byTitration(Traced.exact(1e-6), END, Traced.exact(7.6)))
            .startsWith(
                "alkalinity: 0.001000 mEq/kg is not possible at pH 7.6; without any carbon dioxide"
                    + " the water takes up 0.05"));
  }

  @Test
  void theStepTellsTheTotalPerLitre() {
    Contents closed = closure(Traced.exact(2.3e-3)).byPH(Traced.exact(4.3e-3), Traced.exact(7.6));
    Step step = closed.basis().get(0);
    assertEquals("total carbon dioxide", step.quantity());
    assertEquals(
        carbonDioxide(closed).value() * 1000 * closed.kilogramsPerLitre(),
        step.found().orElseThrow().value(),
        1e-12);
  }
}
