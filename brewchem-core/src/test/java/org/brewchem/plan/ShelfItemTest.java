package org.brewchem.plan;

import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What items of a shelf state, how they are measured out, and what they refuse. */
class ShelfItemTest {

  private static final Reagent LACTIC = Reagent.of(Acid.LACTIC, massPercent(80));
  private static final ShelfItem ACID = ShelfItem.of(LACTIC);
  private static final ShelfItem SALT = ShelfItem.of(Reagent.of(Salt.GYPSUM, massPercent(99)));
  private static final ShelfItem WATER = ShelfItem.diluent("osmosis", Water.pure());

  private static void assertRefused(String message, Executable made) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, made).getMessage());
  }

  @Test
  void liquidAcidsAndBasesArePouredAndAllElseIsWeighed() {
    assertEquals(ShelfItem.Kind.POURED, ACID.kind());
    assertEquals(
        ShelfItem.Kind.POURED,
        ShelfItem.of(Reagent.of(Base.SODIUM_HYDROXIDE, massPercent(30))).kind());
    assertEquals(ShelfItem.Kind.WEIGHED, SALT.kind());
    assertEquals(
        ShelfItem.Kind.WEIGHED, ShelfItem.of(Reagent.of(Acid.CITRIC, massPercent(99))).kind());
    assertEquals(ShelfItem.Kind.WATER, WATER.kind());
    assertEquals(ShelfItem.Kind.WEIGHED, ShelfItem.of(Acid.LACTIC).kind());
    assertEquals("1.5 g", SALT.text(1.5));
    assertEquals("1.50 mL", ACID.text(1.5));
    assertEquals("1.5 L", WATER.text(1.5));
  }

  @Test
  void anItemTellsItsReagentOrItsWater() {
    assertEquals(Optional.of(LACTIC), ACID.reagent());
    assertEquals(Optional.empty(), ACID.water());
    assertEquals(LACTIC.toString(), ACID.name());
    assertEquals(Optional.empty(), WATER.reagent());
    assertEquals(Optional.of(Water.pure()), WATER.water());
    assertEquals("osmosis", WATER.name());
    assertEquals(Optional.empty(), ShelfItem.of(Acid.LACTIC).reagent());
    assertEquals("lactic acid", ShelfItem.of(Acid.LACTIC).name());
    for (ShelfItem item : List.of(ACID, SALT, WATER, ShelfItem.of(Acid.LACTIC))) {
      assertFalse(item.isPriced());
      assertEquals(OptionalDouble.empty(), item.price());
      assertEquals(OptionalDouble.empty(), item.resolution());
      assertEquals(0, item.least());
      assertEquals(Double.POSITIVE_INFINITY, item.most());
    }
  }

  @Test
  void pricesCountPerGramPerMillilitreAndPerLitreOfWater() {
    assertEquals(0.004, SALT.pricedPerKilogram(4).price().orElseThrow(), 1e-15);
    assertTrue(SALT.pricedPerKilogram(4).isPriced());
    assertEquals(0.004, ACID.pricedPerLitre(4).price().orElseThrow(), 1e-15);
    assertEquals(4, WATER.pricedPerLitre(4).price().orElseThrow());
    assertTrue(SALT.pricedPerKilogram(0).isPriced());
    assertRefused(
        "osmosis: a price by mass is not possible; it is measured out by volume",
        () -> WATER.pricedPerKilogram(1));
    assertThrows(IllegalArgumentException.class, () -> SALT.pricedPerKilogram(-1));
  }

  @Test
  void limitsCountInGramsMillilitresAndLitresOfWater() {
    ShelfItem salt = SALT.atLeast(kg(1)).atMost(kg(2));
    assertEquals(1000, salt.least());
    assertEquals(2000, salt.most());
    ShelfItem acid = ACID.atMost(litres(2)).atLeast(mL(5));
    assertEquals(5, acid.least());
    assertEquals(2000, acid.most());
    ShelfItem water = WATER.atLeast(litres(5)).atMost(litres(50));
    assertEquals(5, water.least());
    assertEquals(50, water.most());
    assertEquals(0.5, SALT.resolvedTo(g(0.5)).resolution().orElseThrow());
    assertEquals(500, ACID.resolvedTo(litres(0.5)).resolution().orElseThrow());
    assertEquals(0.5, WATER.resolvedTo(litres(0.5)).resolution().orElseThrow());
    assertRefused(
        SALT.name() + ": at least 3.0 g and at most 2.0 g is not possible",
        () -> SALT.atMost(g(2)).atLeast(g(3)));
    assertRefused(
        SALT.name() + ": a resolution by volume is not possible; it is weighed",
        () -> SALT.resolvedTo(mL(1)));
    assertRefused(
        "osmosis: a resolution by mass is not possible; it is measured out by volume",
        () -> WATER.resolvedTo(g(1)));
    assertThrows(IllegalArgumentException.class, () -> SALT.resolvedTo(g(0)));
    assertEquals(
        "osmosis, at least 5.0 L, at most 50.0 L, to 0.5 L",
        water.resolvedTo(litres(0.5)).toString());
    assertEquals(
        ACID.name() + ", at least 5.00 mL, at most 2000.00 mL, to 10 mL",
        acid.resolvedTo(mL(10)).toString());
  }

  @Test
  void whatIsStatedOnceStaysWhenMoreIsStated() {
    ShelfItem item = SALT.pricedPerKilogram(4).atLeast(g(1)).atMost(g(9)).resolvedTo(g(0.5));
    ShelfItem other = SALT.resolvedTo(g(0.5)).atMost(g(9)).atLeast(g(1)).pricedPerKilogram(4);
    assertEquals(item, other);
    assertEquals(item.hashCode(), other.hashCode());
    assertEquals(0.004, item.price().orElseThrow(), 1e-15);
    assertEquals(1, item.least());
    assertEquals(9, item.most());
    assertEquals(0.5, item.resolution().orElseThrow());
    assertEquals(SALT.reagent(), item.reagent());
    ShelfItem water = WATER.pricedPerLitre(1).atLeast(litres(1)).resolvedTo(litres(1));
    assertEquals(Optional.of(Water.pure()), water.water());
  }

  @Test
  void itemsAreEqualByEverythingThatTheyState() {
    ShelfItem item = SALT.pricedPerKilogram(4).atLeast(g(1)).atMost(g(9)).resolvedTo(g(0.5));
    List<ShelfItem> others =
        List.of(
            SALT.atLeast(g(1)).atMost(g(9)).resolvedTo(g(0.5)),
            SALT.pricedPerKilogram(5).atLeast(g(1)).atMost(g(9)).resolvedTo(g(0.5)),
            SALT.pricedPerKilogram(4).atLeast(g(2)).atMost(g(9)).resolvedTo(g(0.5)),
            SALT.pricedPerKilogram(4).atLeast(g(1)).atMost(g(8)).resolvedTo(g(0.5)),
            SALT.pricedPerKilogram(4).atLeast(g(1)).atMost(g(9)).resolvedTo(g(0.2)),
            SALT.pricedPerKilogram(4).atLeast(g(1)).atMost(g(9)));
    for (ShelfItem other : others) {
      assertNotEquals(item, other);
      assertNotEquals(item.hashCode(), other.hashCode());
    }
    assertEquals(item, item.atMost(g(9)));
    assertNotEquals(item, (Object) "gypsum");
    assertNotEquals(ACID, ACID.weighed());
    assertNotEquals(ACID.hashCode(), ACID.weighed().hashCode());
    assertNotEquals(ShelfItem.diluent("a", Water.pure()), ShelfItem.diluent("b", Water.pure()));
    assertNotEquals(ShelfItem.diluent("a", Water.pure()), ShelfItem.diluent("a", Invented.soft()));
    // Of one name, with another density: another reagent.
    Reagent denser =
        LACTIC.withDensity(org.brewchem.quantity.Density.ofKilogramsPerLitre(1.3), 0.01);
    assertEquals(LACTIC.toString(), denser.toString());
    assertNotEquals(ACID, ShelfItem.of(denser));
  }

  @Test
  void aLiquidCanBeWeighedBeforeItsLimitsAreStated() {
    ShelfItem weighed = ACID.pricedPerLitre(2).weighed();
    assertEquals(ShelfItem.Kind.WEIGHED, weighed.kind());
    assertEquals(ACID.reagent(), weighed.reagent());
    assertEquals(7, weighed.atMost(g(7)).most());
    assertEquals(SALT, SALT.weighed());
    for (ShelfItem item :
        List.of(WATER, ACID.atLeast(mL(1)), ACID.atMost(mL(1)), ACID.resolvedTo(mL(1)))) {
      assertRefused(
          item.name()
              + ": weighing is not possible; a water is metered, and limits are stated after"
              + " it",
          item::weighed);
    }
  }

  @Test
  void aStrengthIsStatedBeforeLimitsThatItWouldTurn() {
    ShelfItem citric = ShelfItem.of(Acid.CITRIC).pricedPerKilogram(4).atMost(g(9)).atLeast(g(1));
    ShelfItem stated = citric.resolvedTo(g(0.5)).withStrength(massPercent(99));
    assertEquals(
        ShelfItem.of(Reagent.of(Acid.CITRIC, massPercent(99)))
            .pricedPerKilogram(4)
            .atMost(g(9))
            .atLeast(g(1))
            .resolvedTo(g(0.5)),
        stated);
    assertEquals(ACID, ShelfItem.of(Acid.LACTIC).withStrength(massPercent(80)));
    ShelfItem lactic = ShelfItem.of(Acid.LACTIC);
    for (ShelfItem item :
        List.of(lactic.atLeast(g(1)), lactic.atMost(g(1)), lactic.resolvedTo(g(1)))) {
      assertRefused(
          "lactic acid: state its strength before its limits; with 80.0 % by mass it is measured out"
              + " by volume",
          () -> item.withStrength(massPercent(80)));
    }
    assertRefused(
        "osmosis: a strength is not possible; it is a water",
        () -> WATER.withStrength(massPercent(80)));
    // A strength stated once can be stated again.
    assertEquals(
        ShelfItem.of(Reagent.of(Acid.LACTIC, massPercent(60))), ACID.withStrength(massPercent(60)));
  }

  /** A litre of 80 % lactic acid weighs its density in kilograms. */
  @Test
  void aPriceStaysThatOfTheSameAmountWhenTheWayOfMeasuringChanges() {
    double density = LACTIC.density().orElseThrow().inKilogramsPerLitre();
    assertEquals(
        0.003 * density,
        ShelfItem.of(Acid.LACTIC)
            .pricedPerKilogram(3)
            .withStrength(massPercent(80))
            .price()
            .orElseThrow(),
        1e-12);
    assertEquals(0.003 / density, ACID.pricedPerLitre(3).weighed().price().orElseThrow(), 1e-12);
    // The same strength again is poured again.
    assertEquals(
        0.003,
        ACID.pricedPerLitre(3).weighed().withStrength(massPercent(80)).price().orElseThrow(),
        1e-12);
    assertEquals(
        0.003, ACID.pricedPerLitre(3).withStrength(massPercent(80)).price().orElseThrow(), 1e-15);
    assertEquals(0.003, SALT.pricedPerKilogram(3).weighed().price().orElseThrow(), 1e-15);
    assertEquals(OptionalDouble.empty(), ACID.weighed().price());
    // A powder for which no table has a density is weighed from then on.
    Reagent citric = Reagent.of(Acid.CITRIC, massPercent(99));
    Reagent liquid =
        citric.withDensity(org.brewchem.quantity.Density.ofKilogramsPerLitre(1.6), 0.01);
    ShelfItem poured = ShelfItem.of(liquid).pricedPerLitre(3.2);
    assertEquals(ShelfItem.Kind.POURED, poured.kind());
    ShelfItem dry = poured.withStrength(massPercent(99));
    assertEquals(ShelfItem.Kind.WEIGHED, dry.kind());
    assertEquals(0.002, dry.price().orElseThrow(), 1e-12);
  }

  @Test
  void anItemHasAName() {
    assertThrows(IllegalArgumentException.class, () -> ShelfItem.diluent(" ", Water.pure()));
    assertThrows(IllegalArgumentException.class, () -> Shelf.of(SALT, SALT));
    assertEquals(List.of(SALT, ACID), Shelf.of(SALT, ACID).items());
  }

  @Test
  void theStepOfAnItemIsItsOwnElseTheOneOfTheShelf() {
    Shelf shelf = Shelf.of().weighingTo(g(2)).pipettingTo(mL(3)).meteringWaterTo(litres(4));
    assertEquals(OptionalDouble.of(2), shelf.resolution(SALT));
    assertEquals(OptionalDouble.of(3), shelf.resolution(ACID));
    assertEquals(OptionalDouble.of(4), shelf.resolution(WATER));
    assertEquals(OptionalDouble.of(4), shelf.waterResolution());
    assertEquals(OptionalDouble.of(0.5), shelf.resolution(SALT.resolvedTo(g(0.5))));
    assertEquals(OptionalDouble.empty(), Shelf.of().resolution(SALT));
    assertEquals(OptionalDouble.empty(), Shelf.of().waterResolution());
  }

  @Test
  void shelvesAreEqualByTheirItemsAndTheirSteps() {
    Shelf shelf = Shelf.of(SALT).weighingTo(g(2)).pipettingTo(mL(3)).meteringWaterTo(litres(4));
    Shelf same = Shelf.of(SALT).meteringWaterTo(litres(4)).pipettingTo(mL(3)).weighingTo(g(2));
    assertEquals(shelf, same);
    assertEquals(shelf.hashCode(), same.hashCode());
    for (Shelf other :
        List.of(
            shelf.with(ACID),
            shelf.weighingTo(g(1)),
            shelf.pipettingTo(mL(1)),
            shelf.meteringWaterTo(litres(1)))) {
      assertNotEquals(shelf, other);
      assertNotEquals(shelf.hashCode(), other.hashCode());
    }
    assertNotEquals(shelf, (Object) "shelf");
    assertEquals(SALT + "\n" + ACID, Shelf.of(SALT, ACID).toString());
    // As much at least as at most is possible, and nothing at all at least.
    assertEquals(5, SALT.atLeast(g(5)).atMost(g(5)).most());
    assertEquals(SALT.name(), SALT.atLeast(g(0)).toString());
    for (Executable one :
        List.<Executable>of(
            () -> SALT.atLeast(mL(1)),
            () -> SALT.atMost(mL(1)),
            () -> ACID.atLeast(g(1)),
            () -> ACID.atMost(g(1)))) {
      assertThrows(IllegalArgumentException.class, one);
    }
  }

  @Test
  void anAcidIsWeighedOnceItsStrengthIsStated() {
    assertEquals(
        ShelfItem.Kind.WEIGHED,
        ShelfItem.of(Acid.LACTIC).withStrength(massPercent(80)).weighed().kind());
    assertThrows(IllegalArgumentException.class, () -> ShelfItem.of(Acid.LACTIC).weighed());
    assertEquals(ShelfItem.Kind.WEIGHED, ShelfItem.of(Salt.GYPSUM).weighed().kind());
  }
}
