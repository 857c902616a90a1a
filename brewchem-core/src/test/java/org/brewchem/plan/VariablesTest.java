package org.brewchem.plan;

import static org.brewchem.plan.SmallProblems.GYPSUM;
import static org.brewchem.plan.SmallProblems.calciumChloride;
import static org.brewchem.plan.SmallProblems.gypsum;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.beer.Beer;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.treatment.Blends;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** How the variables of a plan are laid out, limited, stepped and paid for. */
class VariablesTest {

  private static final Reagent LACTIC = Reagent.of(Acid.LACTIC, massPercent(80));

  private static Variables of(Shelf shelf, WaterPortion... portions) {
    return Plan.from(Water.pure()).using(shelf).forPortions(portions).problem().variables();
  }

  /** One source, one diluent, a salt and a liquid acid, in portions of 200 and 300 L. */
  private static Variables two(Shelf shelf) {
    return Plan.from(Invented.hard())
        .called("well")
        .using(shelf)
        .forPortions(portion("a", litres(200)), portion("b", litres(300)))
        .problem()
        .variables();
  }

  private static ShelfItem osmosis() {
    return ShelfItem.diluent("osmosis", Water.pure());
  }

  @Test
  void everyPortionHasAVariableForEachWaterAndThenForEachDose() {
    Variables variables = two(Shelf.of(gypsum(), osmosis(), ShelfItem.of(LACTIC)));
    assertEquals(8, variables.count());
    assertEquals(4, variables.perPortion());
    assertEquals(2, variables.waters().size());
    assertEquals(2, variables.doses().size());
    String[] names = {"well", "osmosis", gypsum().name(), LACTIC.toString()};
    for (int i = 0; i < 8; i++) {
      assertEquals(i / 4, variables.portionOf(i));
      assertEquals(i % 4, variables.inPortion(i));
      assertEquals(i, variables.index(i / 4, i % 4));
      assertEquals(i < 4 ? "a" : "b", variables.portion(i).name());
      assertEquals(names[i % 4], variables.name(i));
      assertEquals(i % 4 < 2, variables.isWater(i));
      assertEquals(i % 4 == 0, variables.isSource(i));
    }
    assertEquals("osmosis", variables.item(5).name());
    assertEquals(gypsum(), variables.item(6));
    assertEquals(gypsum(), variables.dose(2));
    assertEquals(ShelfItem.of(LACTIC), variables.dose(7));
    assertTrue(variables.toString().startsWith("[well, osmosis] ["), variables.toString());
    assertTrue(variables.toString().contains(", 200.0, "), variables.toString());
  }

  @Test
  void aUnitOfAWaterIsItsPortionAndOfADoseAMillimolePerLitre() {
    Variables variables = two(Shelf.of(gypsum(), osmosis(), ShelfItem.of(LACTIC)));
    assertEquals(200, variables.unit(0));
    assertEquals(300, variables.unit(5));
    assertEquals(200 * GYPSUM / 1000, variables.unit(2), 1e-6 * GYPSUM);
    assertEquals(300 * GYPSUM / 1000, variables.unit(6), 1e-6 * GYPSUM);
    // A millimole of lactic acid is 0.090078 g, of 80 % 0.112598 g.
    double millilitres = 0.090078 / 0.8 / LACTIC.density().orElseThrow().inKilogramsPerLitre();
    assertEquals(200 * millilitres, variables.unit(3), 1e-4 * 200 * millilitres);
    assertEquals(0.5 * variables.unit(6), variables.amount(6, 0.5), 1e-12);
    assertEquals(millilitres / 1000, variables.litresPerMillimole(3), 1e-7 * millilitres);
    assertEquals(0, variables.litresPerMillimole(2));
  }

  @Test
  void theOnlyWaterTakesTheWholePortionAndIsNotStepped() {
    Variables variables = of(Shelf.of(gypsum()).meteringWaterTo(litres(5)), portion("a", hL(1)));
    assertEquals(1, variables.lower(0));
    assertEquals(1, variables.upper(0));
    assertEquals(0, variables.step(0));
  }

  @Test
  void severalWatersAreMeteredInSharesOfThePortion() {
    Variables variables = two(Shelf.of(osmosis()).meteringWaterTo(litres(5)));
    assertEquals(0, variables.lower(0));
    assertEquals(1, variables.upper(0));
    assertEquals(5.0 / 200, variables.step(0), 1e-15);
    assertEquals(5.0 / 200, variables.step(1), 1e-15);
    assertEquals(5.0 / 300, variables.step(2), 1e-15);
    assertEquals(5.0 / 300, variables.step(3), 1e-15);
    Variables own = two(Shelf.of(osmosis().resolvedTo(litres(2))).meteringWaterTo(litres(5)));
    assertEquals(5.0 / 200, own.step(0), 1e-15);
    assertEquals(2.0 / 200, own.step(1), 1e-15);
    assertEquals(0, two(Shelf.of(osmosis())).step(1));
  }

  @Test
  void aDoseWithoutAStatedMostHasTheOneOfTheDefaults() {
    Variables variables = of(Shelf.of(gypsum()), portion("a", hL(1)));
    assertEquals(50, Variables.MOST_UNSTATED);
    assertEquals(50, variables.upper(1));
    assertEquals(0, variables.lower(1));
    assertTrue(Variables.isCapped(gypsum()));
    assertFalse(Variables.isCapped(gypsum().atMost(g(10))));
    assertFalse(Variables.isCapped(osmosis()));
  }

  @Test
  void statedLimitsAreThoseOfTheAmountsInTheOnlyPortion() {
    Variables variables =
        of(
            Shelf.of(
                gypsum().atLeast(g(5)).atMost(g(20)),
                osmosis().atLeast(litres(10)).atMost(litres(40))),
            portion("a", hL(1)));
    double unit = 100 * GYPSUM / 1000;
    assertEquals(5 / unit, variables.lower(2), 1e-6);
    assertEquals(20 / unit, variables.upper(2), 1e-6);
    assertEquals(0.1, variables.lower(1), 1e-15);
    assertEquals(0.4, variables.upper(1), 1e-15);
    assertArrayEquals(new double[] {0, 0.1, variables.lower(2)}, variables.lower());
    assertArrayEquals(new double[] {1, 0.4, variables.upper(2)}, variables.upper());
    assertEquals(List.of(), variables.shared());
    // A stated most that is more than the default counts.
    assertEquals(
        2000 / unit, of(Shelf.of(gypsum().atMost(g(2000))), portion("a", hL(1))).upper(1), 1e-4);
  }

  @Test
  void limitsOverSeveralPortionsAreSharedByThem() {
    Variables variables =
        two(
            Shelf.of(
                gypsum().atLeast(g(20)),
                osmosis().atMost(litres(100)),
                calciumChloride(),
                ShelfItem.of(LACTIC).atMost(mL(50))));
    // No portion need take the least of all, and each may take the most.
    assertEquals(0, variables.lower(2));
    assertEquals(0.5, variables.upper(1), 1e-15);
    assertEquals(100.0 / 300, variables.upper(6), 1e-15);
    assertEquals(List.of(1, 2, 4), variables.shared());
    double[] row = variables.totalOf(2);
    assertEquals(10, row.length);
    for (int i = 0; i < 10; i++) {
      assertEquals(i % 5 == 2 ? variables.unit(i) : 0, row[i]);
    }
    assertArrayEquals(new double[] {0, 0, 0, 0, 0, 1, 1, 0, 0, 0}, variables.sharesOf(1));
    double unit = GYPSUM / 1000;
    double[] x = {1, 0, 0.2, 0, 0, 1, 0, 0, 0, 0};
    x[7] = (20 / unit - 200 * x[2]) / 300;
    assertTrue(variables.keepsToTheShelf(x));
    x[7] -= 1e-4;
    assertFalse(variables.keepsToTheShelf(x));
    x[7] += 2e-4;
    assertTrue(variables.keepsToTheShelf(x));
    // 60 and 40 L of osmosis are the most; the last drop is too much.
    x[0] = 0.7;
    x[1] = 0.3;
    x[5] = 1 - 40.0 / 300;
    x[6] = 40.0 / 300;
    assertTrue(variables.keepsToTheShelf(x));
    x[5] -= 1e-6;
    x[6] += 1e-6;
    assertFalse(variables.keepsToTheShelf(x));
  }

  @Test
  void boundsAndSharesAreKeptButForRounding() {
    Variables variables =
        of(Shelf.of(gypsum().atLeast(g(5)).atMost(g(20)), osmosis()), portion("a", hL(1)));
    double least = variables.lower(2);
    double most = variables.upper(2);
    assertTrue(variables.keepsToTheShelf(new double[] {0.25, 0.75, least}));
    assertTrue(variables.keepsToTheShelf(new double[] {0.25, 0.75, most}));
    assertTrue(variables.keepsToTheShelf(new double[] {0.25, 0.75, least - 5e-10}));
    assertTrue(variables.keepsToTheShelf(new double[] {0.25, 0.75, most + 5e-10}));
    assertFalse(variables.keepsToTheShelf(new double[] {0.25, 0.75, least - 1e-8}));
    assertFalse(variables.keepsToTheShelf(new double[] {0.25, 0.75, most + 1e-8}));
    assertFalse(variables.keepsToTheShelf(new double[] {0.25, 0.75 + 1e-8, least}));
    assertFalse(variables.keepsToTheShelf(new double[] {0.25, 0.75 - 1e-8, least}));
    assertTrue(variables.keepsToTheShelf(new double[] {0.25, 0.75 - 5e-10, least}));
    // Less than nothing is not measured out, however little less.
    assertFalse(variables.keepsToTheShelf(new double[] {1 + 1e-10, -1e-10, least}));
    assertTrue(variables.keepsToTheShelf(new double[] {1, 0, least}));
  }

  /** By hand: 5 g at 3 a kilogram, 40 mL at 2 a litre and 30 L of water at 0.01 a litre. */
  @Test
  void costsArePricesTimesAmountsAndMassesLeaveWaterOut() {
    ShelfItem lactic = ShelfItem.of(LACTIC).pricedPerLitre(2);
    Shelf shelf = Shelf.of(gypsum().pricedPerKilogram(3), osmosis().pricedPerLitre(0.01), lactic);
    Plan.Request request = Plan.from(Water.pure()).using(shelf).forPortions(portion("a", hL(1)));
    Variables priced = request.problem().variables();
    double[] x = {0.7, 0.3, 5 / priced.unit(2), 40 / priced.unit(3)};
    assertEquals(0.015 + 0.08 + 0.3, priced.cost(x), 1e-12);
    assertEquals(1, priced.cost()[1], 1e-12);
    double density = LACTIC.density().orElseThrow().inKilogramsPerLitre();
    assertEquals(
        5 + 40 * density, request.leastMass().problem().variables().cost(x), 1e-4 * density);
    Plan.Request unpriced =
        Plan.from(Water.pure())
            .using(Shelf.of(gypsum(), osmosis(), lactic))
            .forPortions(portion("a", hL(1)));
    assertEquals(5 + 40 * density, unpriced.problem().variables().cost(x), 1e-4 * density);
    // Asked for the least cost, what has no price is free.
    assertEquals(0.08, unpriced.leastCost().problem().variables().cost(x), 1e-12);
  }

  @Test
  void theStartHasEqualSharesAndTheLeastDoses() {
    Variables variables =
        of(Shelf.of(gypsum().atLeast(g(5)), osmosis(), calciumChloride()), portion("a", hL(1)));
    assertArrayEquals(new double[] {0.5, 0.5, 5 / (GYPSUM / 10), 0}, variables.plainStart(), 1e-6);
  }

  @Test
  void theShareOfAPartIsLimitedByItsBlends() {
    TitratableAcidity acidity = acidity(gPerL(2), Acid.LACTIC, pH(8.2));
    Blends<Beer> blends =
        Blends.of(Beer.of(pH(4.4), acidity), Beer.of(pH(4.2), acidity))
            .called("ale", "old")
            .atLeast("ale", 0.2)
            .atMost("ale", 0.6);
    Query query =
        new Query(
            blends.liquids(),
            blends.names(),
            Shelf.of(),
            List.of(portion("blend", hL(1))),
            List.of(),
            Query.Economy.MASS,
            java.util.Optional.of(blends));
    Variables variables = new Variables(query);
    assertEquals(0.2, variables.lower(0), 1e-15);
    assertEquals(0.6, variables.upper(0), 1e-15);
    assertEquals(0, variables.lower(1));
    assertEquals(1, variables.upper(1));
    assertEquals(0.2, query.least(0), 1e-15);
    assertEquals(0.6, query.most(0), 1e-15);
  }

  @Test
  void whatHasNoStrengthAndNamesThatStandTwiceAreRefused() {
    assertEquals(
        "shelf: lactic acid states no strength; state the mass fraction that the label gives, 100 %"
            + " included",
        assertThrows(
                IllegalArgumentException.class,
                () -> of(Shelf.of(ShelfItem.of(Acid.LACTIC)), portion("a", hL(1))))
            .getMessage());
    assertEquals(
        "waters: [osmosis, osmosis] are not possible; each name stands once",
        assertThrows(
                IllegalArgumentException.class,
                () ->
                    Plan.from(Water.pure()).called("osmosis").using(Shelf.of(osmosis())).problem())
            .getMessage());
  }

  @Test
  void theStrengthOfTheLabelAndTheDensityOfALiquidCount() {
    Variables variables =
        of(
            Shelf.of(
                ShelfItem.of(Reagent.of(Salt.GYPSUM, massPercent(50))),
                ShelfItem.of(Reagent.of(Base.SODIUM_HYDROXIDE, massPercent(30))).weighed()),
            portion("a", litres(10)));
    // Half of it is gypsum: twice the mass for a millimole.
    assertEquals(2 * 10 * GYPSUM / 1000, variables.unit(1), 1e-6);
    assertEquals(10 * (22.990 + 17.007) / 0.3 / 1000, variables.unit(2), 1e-5);
    assertTrue(variables.litresPerMillimole(2) > 0);
  }
}
