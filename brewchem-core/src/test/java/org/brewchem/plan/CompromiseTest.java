package org.brewchem.plan;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.TreatmentCode;
import org.brewchem.treatment.Treatments;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** Mixtures of acids into a beer, the best compromise between a pH and an acidity. */
class CompromiseTest {

  private static final Figure<TitratableAcidity> ACIDITY = Figures.titratableAcidity(pH(8.2));
  private static final Volume TANK = hL(20);
  private static final Volume STOCK = litres(20);
  private static final Reagent STRONG = Reagent.of(LACTIC, massPercent(80));
  private static final Reagent POWDER = Reagent.of(Acid.CITRIC, massPercent(99.5));
  private static final double MOST_KILOGRAMS = 2;
  private static final int STEPS = 24;

  private static Beer beer(double pH, double acidity) {
    return Beer.of(pH(pH), asLactic(acidity))
        .measuredAt(celsius(25))
        .withStandardUncertaintyOfPH(0.02)
        .withStandardUncertaintyOfAcidity(asLactic(0.05));
  }

  private static TitratableAcidity asLactic(double gramsPerLitre) {
    return acidity(gPerL(gramsPerLitre), LACTIC, pH(8.2));
  }

  private static Shelf shelf(Reagent... reagents) {
    ShelfItem[] items = new ShelfItem[reagents.length];
    for (int i = 0; i < items.length; i++) {
      items[i] = ShelfItem.of(reagents[i]).weighed().atMost(kg(MOST_KILOGRAMS));
    }
    return Shelf.of(items);
  }

  private static Plan plan(Beer beer, Shelf shelf, Constraint... constraints) {
    return Plan.from(Invented.soft())
        .using(shelf)
        .forPortions(WaterPortion.portion("stock", STOCK))
        .and(Downstream.beer("tank", beer, TANK), constraints)
        .solve();
  }

  @Test
  void isNeverWorseThanAFineGrid() {
    List<String> faults = new ArrayList<>();
    int compromises = 0;
    for (int n = 0; n < 8; n++) {
      Random random = new Random(4711 + n);
      Beer beer = beer(4.3 + 0.3 * random.nextDouble(), 1.5 + 0.6 * random.nextDouble());
      double wantedPH = beer.pH().number() - 0.1 - 0.3 * random.nextDouble();
      double wanted = beer.titratableAcidity().number() + 0.7 * random.nextDouble();
      double tolerance = 0.02 + 0.05 * random.nextDouble();
      double weight = 0.3 + 2 * random.nextDouble();
      Plan plan =
          plan(
              beer,
              shelf(STRONG, POWDER),
              Constraint.around(Figures.PH_VALUE, PH.of(wantedPH), 0.03).withWeight(1),
              Constraint.around(ACIDITY, asLactic(wanted), tolerance).withWeight(weight));
      double grid = Double.POSITIVE_INFINITY;
      for (int a = 0; a <= STEPS; a++) {
        for (int b = 0; b <= STEPS; b++) {
          double strong = 1000 * MOST_KILOGRAMS * a / STEPS;
          double powder = 1000 * MOST_KILOGRAMS * b / STEPS;
          Beer dosed = dosed(beer, stock(strong, powder), strong);
          double sum =
              Math.abs(dosed.pH().number() - wantedPH) / 0.03
                  + weight * Math.abs(dosed.titratableAcidity().number() - wanted) / tolerance;
          grid = Math.min(grid, sum);
        }
      }
      compromises += plan.weightedSumBeforeRounding() > 0.1 ? 1 : 0;
      if (plan.weightedSumBeforeRounding() > grid + 1e-6) {
        faults.add(n + ": " + plan.weightedSumBeforeRounding() + " instead of " + grid);
      }
    }
    assertEquals(List.of(), faults);
    assertTrue(compromises >= 3, compromises + " of 8 problems could not be met wholly");
  }

  private static Water stock(double gramsOfStrong, double gramsOfPowder) {
    double litres = STOCK.inLitres();
    Water strong =
        gramsOfStrong == 0
            ? Invented.soft()
            : Invented.soft().after(Treatments.acid(STRONG, gPerL(gramsOfStrong / litres)));
    double grown = STOCK.plus(STRONG.volumeOf(g(gramsOfStrong))).inLitres();
    return gramsOfPowder == 0
        ? strong
        : strong.after(Treatments.acid(POWDER, gPerL(gramsOfPowder / grown)));
  }

  /** The tank with the whole stock, which the volume of the strong acid is a part of. */
  private static Beer dosed(Beer beer, Water stock, double gramsOfStrong) {
    Volume grown = STOCK.plus(STRONG.volumeOf(g(gramsOfStrong)));
    return beer.after(Treatments.blend(TANK, stock, grown));
  }

  /** What nothing limits is limited per litre of the beer, not of the little stock. */
  @Test
  void aSmallStockForALargeTankIsNotLimitedByItsOwnLitres() {
    Plan.Request small =
        Plan.from(Water.pure())
            .using(Shelf.of(ShelfItem.of(STRONG)))
            .forPortions(WaterPortion.portion("stock", litres(10)))
            .and(
                Downstream.beer("tank", beer(4.46, 1.70), hL(20)),
                Constraint.atMost(Figures.PH_VALUE, pH(4.25)));
    Plan plan = small.solve();
    assertEquals(Plan.Outcome.FOUND, plan.outcome());
    assertTrue(plan.doses().get(0).volume().orElseThrow().inMillilitres() > 50, plan.toString());
  }

  @Test
  void saysWhatTheBeerIsThenWithItsChances() {
    Beer beer = beer(4.46, 1.70);
    Plan plan =
        plan(
            beer,
            shelf(STRONG.withAssayUncertainty(0.02), POWDER.withAssayUncertainty(0.003)),
            Constraint.around(Figures.PH_VALUE, pH(4.15), 0.05).withWeight(1),
            Constraint.around(ACIDITY, asLactic(2.05), 0.1).withWeight(1));
    Reached reached = plan.reached().get(1);
    assertEquals("tank of stock", reached.liquid());
    Beer dosed =
        dosed(beer, plan.water("stock"), plan.doses().get(0).mass().orElseThrow().inGrams());
    assertEquals(dosed.titratableAcidity().number(), reached.answer().number(), 1e-9);
    assertTrue(reached.chance().orElseThrow() > 0.5);
    assertTrue(plan.cautions().stream().anyMatch(caution -> caution.hazard() == Hazard.TASTING));
  }

  @Test
  void whatMayNotGoIntoBeerIsRefusedAndWhatVariesIsSaid() {
    Constraint lower = Constraint.atMost(Figures.PH_VALUE, pH(4.3));
    Reagent lye = Reagent.of(Base.SODIUM_HYDROXIDE, massPercent(99));
    String message =
        String.valueOf(
            assertThrows(
                    IllegalArgumentException.class,
                    () -> plan(beer(4.46, 1.7), shelf(STRONG, lye), lower))
                .getMessage());
    assertTrue(message.contains("sodium hydroxide"), message);
    Reagent phosphoric = Reagent.of(Acid.PHOSPHORIC, massPercent(75));
    assertTrue(
        plan(beer(4.46, 1.7), shelf(phosphoric), lower).notices().stream()
            .anyMatch(notice -> notice.code() == TreatmentCode.PERMISSION));
    assertFalse(
        plan(beer(4.46, 1.7), shelf(STRONG), lower).notices().stream()
            .anyMatch(notice -> notice.code() == TreatmentCode.PERMISSION));
  }

  @Test
  void aBeerAtAnotherTemperatureIsRefusedByName() {
    Beer cold = beer(4.46, 1.7).measuredAt(celsius(20));
    Constraint lower = Constraint.atMost(Figures.PH_VALUE, pH(4.3));
    String message =
        String.valueOf(
            assertThrows(IllegalArgumentException.class, () -> plan(cold, shelf(STRONG), lower))
                .getMessage());
    assertTrue(message.contains("25 °C is not possible; 20 °C is needed"), message);
  }
}
