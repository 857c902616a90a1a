package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Held;
import org.brewchem.substance.Ion;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** What of two figures blends reach, of liquids whose totals are set such that it is known. */
class ReachableBlendsTest {

  private static final Contents PURE = Contents.pure(Held.AT, Chemistry.standard());

  private static Contents with(Contents contents, Ion ion, double milligramsPerLitre) {
    double molesPerLitre = milligramsPerLitre / 1000 / ion.molarMass().inGramsPerMole();
    return contents.withTotal(
        ion.components().keySet().iterator().next(),
        Traced.exact(molesPerLitre / contents.kilogramsPerLitre()));
  }

  /** A liquid with so many mg/L of calcium, sulfate and chloride. */
  private static Held of(double calcium, double sulfate, double chloride) {
    return new Held(
        with(with(with(PURE, Ion.CALCIUM, calcium), Ion.SULFATE, sulfate), Ion.CHLORIDE, chloride));
  }

  private static Held of(double calcium, double sulfate) {
    return of(calcium, sulfate, 100);
  }

  private static ReachableBlends<Held, MassConcentration, MassConcentration> ions(
      Blends<Held> blends) {
    return blends.reachable(Figures.CALCIUM, Figures.SULFATE);
  }

  /** By hand: two liquids inside, two corners beyond the straight line between their neighbours. */
  @Test
  void cornersGoRoundThePolygonFromTheLeastOfTheFirstFigure() {
    Held[] liquids = {
      of(60, 90), of(20, 80), of(50, 100), of(90, 95), of(40, 140), of(25, 60), of(80, 130)
    };
    ReachableBlends<Held, MassConcentration, MassConcentration> reachable =
        ions(
            Blends.of(
                liquids[0],
                liquids[1],
                liquids[2],
                liquids[3],
                liquids[4],
                liquids[5],
                liquids[6]));
    assertTrue(reachable.isPolygon());
    List<List<Double>> corners =
        reachable.corners().stream()
            .map(
                corner ->
                    List.of(
                        (double) Math.round(corner.answer(Figures.CALCIUM).number()),
                        (double) Math.round(corner.answer(Figures.SULFATE).number())))
            .toList();
    assertEquals(
        List.of(
            List.of(20.0, 80.0),
            List.of(25.0, 60.0),
            List.of(90.0, 95.0),
            List.of(80.0, 130.0),
            List.of(40.0, 140.0)),
        corners);
  }

  /** Corners are told apart in the spans of the figures, however narrow these are. */
  @Test
  void aNarrowSetHasItsCorners() {
    double small = 1e-5;
    assertEquals(
        3, ions(Blends.of(of(10, 10), of(10 + small, 10), of(10, 10 + small))).corners().size());
    assertEquals(3, ions(Blends.of(of(10, 10), of(10 + small, 10), of(10, 60))).corners().size());
    assertEquals(3, ions(Blends.of(of(10, 10), of(60, 10), of(10, 10 + small))).corners().size());
  }

  @Test
  void totalsMixInProportionHoweverGreatAndAlsoWhereThereIsNone() {
    assertTrue(
        ions(Blends.of(of(41_000, 33_333), of(77_777, 12_345), of(23_456, 54_321))).isPolygon());
    ReachableBlends<Held, MassConcentration, MassConcentration> none =
        ions(Blends.of(of(40, 0), of(60, 0)));
    assertTrue(none.isPolygon());
    assertEquals(2, none.corners().size());
    assertEquals(
        List.of(
            "calcium mixes in proportion to the shares",
            "sulfate mixes in proportion to the shares",
            "every value within the polygon of the corners is reached, and none outside it"),
        none.scope());
    assertEquals("calcium 40.00 to 60.00 mg/L", none.ofFirst().toString());
  }

  /** By hand: 100 to 101 mg/L, and a millionth of that span beyond. */
  @Test
  void aMillionthOfTheSpanBeyondTheBorderIsReachedAndNoMore() {
    ReachableBlends<Held, MassConcentration, MassConcentration> narrow =
        ions(Blends.of(of(100, 200), of(101, 201)));
    assertTrue(narrow.contains(mgPerL(101 + 0.5e-6), mgPerL(201)));
    assertFalse(narrow.contains(mgPerL(101 + 2e-6), mgPerL(201)));
    assertTrue(narrow.contains(mgPerL(100 - 0.5e-6), mgPerL(200)));
    assertFalse(narrow.contains(mgPerL(100 - 2e-6), mgPerL(200)));
    assertTrue(narrow.contains(mgPerL(100.5), mgPerL(200.5 + 0.5e-6)));
    assertFalse(narrow.contains(mgPerL(100.5), mgPerL(200.5 + 2e-6)));
    assertTrue(narrow.contains(mgPerL(100.5), mgPerL(200.5 - 0.5e-6)));
    assertFalse(narrow.contains(mgPerL(100.5), mgPerL(200.5 - 2e-6)));
  }

  @Test
  void whereAllLiquidsAreAlikeRoundingIsNoDifference() {
    Held one = of(100, 200);
    ReachableBlends<Held, MassConcentration, MassConcentration> point = ions(Blends.of(one, one));
    double calcium = one.answer(Figures.CALCIUM).number();
    double sulfate = one.answer(Figures.SULFATE).number();
    assertTrue(point.contains(mgPerL(calcium + 5e-14), mgPerL(sulfate + 5e-14)));
    assertFalse(point.contains(mgPerL(calcium + 1e-9), mgPerL(sulfate)));
  }

  /** A side along which the first figure does not change: from 100 to 300 of the second. */
  @Test
  void aSideOfOneValueIsReachedFromEndToEnd() {
    ReachableBlends<Held, MassConcentration, MassConcentration> reachable =
        ions(Blends.of(of(50, 100), of(50, 300), of(90, 150)));
    ReachableBlends.Range side = reachable.ofSecondAt(mgPerL(50)).orElseThrow();
    assertEquals(100, side.least(), 1e-9);
    assertEquals(300, side.greatest(), 1e-9);
    ReachableBlends.Range corner = reachable.ofSecondAt(mgPerL(90)).orElseThrow();
    assertEquals(150, corner.least(), 1e-9);
    assertEquals(150, corner.greatest(), 1e-9);
  }

  /** By hand: sulfate over chloride of 0.3 and 0.7 of the two is (30 + 210)/(30 + 35). */
  @Test
  void aCurvedFigureIsFoundAlongASide() {
    Blends<Held> blends = Blends.of(of(40, 100, 100), of(60, 300, 50));
    ReachableBlends.Range at =
        blends
            .reachable(Figures.SULFATE_TO_CHLORIDE, Figures.CALCIUM)
            .ofSecondAt(240.0 / 65)
            .orElseThrow();
    assertEquals(54, at.least(), 1e-6);
    assertEquals(54, at.greatest(), 1e-6);
  }

  /**
   * By hand: with 100 and 120 of chloride the ratio goes from 1 to 100/120, and is 100/110
   * half-way: 0.0076 off the straight line, 4.5 % of the span.
   */
  @Test
  void theScopeSaysHowFarAFigureLiesOffTheStraightLine() {
    ReachableBlends<Held, Double, MassConcentration> curved =
        Blends.of(of(40, 100, 100), of(60, 100, 120))
            .reachable(Figures.SULFATE_TO_CHLORIDE, Figures.CALCIUM);
    assertEquals(
        "sulfate to chloride does not mix in proportion to the shares: between corners it lies up"
            + " to 0.0076 by mass off the straight line",
        curved.scope().get(0));
    Figure<Double> plain = ratio(Figures.SULFATE, Figures.CHLORIDE);
    assertEquals(
        "ratio does not mix in proportion to the shares: between corners it lies up to 0.0076 off"
            + " the straight line",
        Blends.of(of(40, 100, 100), of(60, 100, 120))
            .reachable(plain, Figures.CALCIUM)
            .scope()
            .get(0));
    // With 100 and 102 it is 0.5 % of the span.
    assertTrue(
        Blends.of(of(40, 100, 100), of(60, 100, 102))
            .reachable(plain, Figures.CALCIUM)
            .scope()
            .get(0)
            .startsWith("ratio mixes nearly in proportion"));
    assertEquals(
        "ratio 0.8333 to 1.000",
        Blends.of(of(40, 100, 100), of(60, 100, 120))
            .reachable(plain, Figures.CALCIUM)
            .ofFirst()
            .toString());
  }

  private static Figure<Double> ratio(Figure<?> numerator, Figure<?> denominator) {
    return ClosedForm.ratio(
        "ratio", Scale.number("", 4), "one / other", "", numerator, denominator, 1);
  }

  /** A quotient is least and greatest at corners only if both its parts mix in proportion. */
  @Test
  void aRatioOfWhatDoesNotMixInProportionHasNoRule() {
    Blends<Held> blends = Blends.of(Held.water(), Held.beer(), Held.water());
    assertTrue(hasNoRule(blends, ratio(Figures.BUFFER_CAPACITY, Figures.CALCIUM)));
    assertFalse(hasNoRule(blends, ratio(Figures.SULFATE, Figures.CALCIUM)));
  }

  private static boolean hasNoRule(Blends<Held> blends, Figure<Double> figure) {
    return blends.reachable(figure, Figures.CALCIUM).notices().stream()
        .map(Notice::code)
        .anyMatch(TreatmentCode.NO_RULE_BETWEEN::equals);
  }
}
