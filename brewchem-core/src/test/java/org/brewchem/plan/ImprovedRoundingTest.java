package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.brewchem.figure.Target;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/**
 * Gypsum and calcium chloride for a ratio and for calcium, as they are weighed: no step of one of
 * them, within two of the exact doses, is better by a forward calculation of our own.
 */
class ImprovedRoundingTest {

  private static final double GYPSUM = 172.17;
  private static final double CALCIUM_CHLORIDE = 147.01;

  private static double grams(Plan plan, String item) {
    return plan.doses().stream()
        .filter(dose -> dose.item().contains(item))
        .mapToDouble(dose -> dose.mass().orElseThrow().inGrams())
        .sum();
  }

  @Test
  void noStepOfOneDoseIsBetter() {
    Random random = new Random(20261128);
    int checked = 0;
    for (int t = 0; t < 100; t++) {
      double volume = new double[] {20, 100, 1000}[random.nextInt(3)];
      double step = new double[] {0.1, 1, 5}[random.nextInt(3)] * volume / 100;
      double calcium = random.nextInt(40);
      double chloride = 2 + random.nextInt(20);
      double sulfate = 2 + random.nextInt(30);
      double aim = 0.3 + 3 * random.nextDouble();
      double least = 50 + random.nextInt(60);
      Water water =
          WaterReport.reported()
              .calcium(mgPerL(calcium))
              .sodium(mgPerL(10))
              .sulfate(mgPerL(sulfate))
              .chloride(mgPerL(chloride))
              .alkalinityAsCaCO3(mgPerL(30))
              .pH(pH(7.3))
              .build()
              .water();
      Plan.Request request =
          Plan.from(water)
              .meeting(
                  Target.named("invented")
                      .with(around(SULFATE_TO_CHLORIDE, aim, 0.1 * aim).withWeight(1))
                      .with(atLeast(CALCIUM, mgPerL(least))))
              .forPortions(portion("w", litres(volume)));
      Shelf shelf =
          Shelf.of(
              ShelfItem.of(Reagent.of(Salt.GYPSUM, massPercent(100))),
              ShelfItem.of(Reagent.of(Salt.CALCIUM_CHLORIDE_DIHYDRATE, massPercent(100))));
      Plan plan = request.using(shelf.weighingTo(g(step))).solve();
      Plan exact = request.using(shelf).solve();
      assertEquals(Plan.Outcome.FOUND, plan.outcome());
      double[] weighed = {grams(plan, "gypsum"), grams(plan, "chloride")};
      double[] middle = {grams(exact, "gypsum"), grams(exact, "chloride")};
      for (int item = 0; item < 2; item++) {
        for (int steps : new int[] {-1, 1}) {
          double[] other = weighed.clone();
          other[item] += steps * step;
          double ca = calcium + 40078 / volume * (other[0] / GYPSUM + other[1] / CALCIUM_CHLORIDE);
          if (other[item] < 0
              || ca < least + 0.01
              || Math.abs(other[item] - middle[item]) > 1.99 * step) {
            continue;
          }
          checked++;
          double own = distance(weighed, aim, sulfate, chloride, volume);
          double its = distance(other, aim, sulfate, chloride, volume);
          assertTrue(its > own - 0.001, "case " + t + ": " + its + " instead of " + own);
        }
      }
    }
    assertTrue(checked > 100, checked + " checked");
  }

  private static double distance(
      double[] grams, double aim, double sulfate, double chloride, double volume) {
    double so4 = sulfate + 96060 * grams[0] / GYPSUM / volume;
    double cl = chloride + 70906 * grams[1] / CALCIUM_CHLORIDE / volume;
    return Math.abs(Math.log(so4 / cl / aim));
  }
}
