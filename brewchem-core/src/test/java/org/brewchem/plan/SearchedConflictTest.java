package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.plan.SmallProblems.CA;
import static org.brewchem.plan.SmallProblems.calciumChloride;
import static org.brewchem.plan.SmallProblems.epsom;
import static org.brewchem.plan.SmallProblems.made;
import static org.brewchem.plan.SmallProblems.millimoles;
import static org.brewchem.plan.SmallProblems.millimolesOfMagnesium;
import static org.brewchem.plan.SmallProblems.target;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Constraint;
import org.brewchem.plan.ConflictSearch.Found;
import org.brewchem.plan.Plan.Outcome;
import org.brewchem.plan.Search.Point;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** Conflicts of limits that are curved, which searches tell: doses of one salt, in mmol/L. */
class SearchedConflictTest {

  private static final String SHELF =
      "the limits of the shelf, and that doses and volumes are 0 or more";

  /** A hump of 3 at 1 mmol/L of calcium, falling to both sides. */
  private static Downstream hump() {
    return made(water -> 3 / (1 + Math.pow(millimoles(water) - 1, 2)));
  }

  private static Plan.Request salt() {
    return Plan.from(Water.pure())
        .using(Shelf.of(calciumChloride()))
        .forPortions(portion("a", litres(1)));
  }

  private static Constraint least(double milligrams) {
    return atLeast(CALCIUM, mgPerL(milligrams));
  }

  private static Constraint most(double milligrams) {
    return atMost(CALCIUM, mgPerL(milligrams));
  }

  private static double grams(Conflict.Way way) {
    return way.amounts().get(1).mass().orElseThrow().inGrams();
  }

  /** Nothing of the hump is 5, whatever the calcium may be. */
  @Test
  void whatNothingReachesIsAConflictByItself() {
    Problem problem =
        salt()
            .meeting(target(between(CALCIUM, mgPerL(0.5 * CA), mgPerL(2 * CA))))
            .and(hump(), least(5))
            .problem();
    Found found = new SearchedConflict(problem).find().orElseThrow();
    assertEquals(
        List.of("calcium of made of a: at least 5.0 mg/L", SHELF), found.conflict().members());
    assertEquals(List.of(1), found.goals());
    assertEquals(List.of(), found.members());
    assertFalse(found.conflict().isProved());
    assertEquals(List.of(), found.conflict().proof());
    assertEquals(List.of(least(5)), found.conflict().constraints());
    // The way without it keeps the calcium at its least, half a mmol, or 73.5 mg of the salt.
    assertEquals(1, found.conflict().ways().size());
    Conflict.Way way = found.conflict().ways().get(0);
    assertEquals("calcium of made of a: at least 5.0 mg/L", way.without());
    assertEquals(0.5 * SmallProblems.CALCIUM_CHLORIDE / 1000, grams(way), 1e-6);
    assertEquals(List.of(), way.figures());
    assertEquals(List.of(SHELF), found.conflict().undecided());
  }

  /**
   * The hump is 2.9 from 1 less the root of 1/29, or 0.814; half a mmol of calcium is allowed. The
   * limits that take no part are left out, the soft goal is none of it.
   */
  @Test
  void twoLimitsThatExcludeEachOtherAreBothNamed() {
    Problem problem =
        salt()
            .meeting(target(between(CALCIUM, mgPerL(0.1 * CA), mgPerL(0.5 * CA))))
            .meeting(target(around(CALCIUM, mgPerL(CA), 1).withWeight(1)))
            .and(hump(), between(CALCIUM, mgPerL(2.9), mgPerL(4)))
            .problem();
    Found found = new SearchedConflict(problem).find().orElseThrow();
    String calcium = "calcium of a: at most 20.0 mg/L";
    String humped = "calcium of made of a: at least 2.9 mg/L";
    assertEquals(List.of(calcium, humped, SHELF), found.conflict().members());
    assertEquals(List.of(0, 2), found.goals());
    assertEquals(2, found.conflict().constraints().size());
    List<Conflict.Way> ways = found.conflict().ways();
    assertEquals(2, ways.size());
    assertEquals(calcium, ways.get(0).without());
    double edge = 1 - Math.sqrt(1.0 / 29);
    assertEquals(edge * SmallProblems.CALCIUM_CHLORIDE / 1000, grams(ways.get(0)), 1e-5);
    assertEquals(List.of("made of a, calcium: 2.9 mg/L"), ways.get(0).figures());
    assertEquals(humped, ways.get(1).without());
    assertEquals(0.1 * SmallProblems.CALCIUM_CHLORIDE / 1000, grams(ways.get(1)), 1e-5);
    assertEquals(List.of("a, calcium: 4.0 mg/L"), ways.get(1).figures());
  }

  @Test
  void withoutLimitsThereIsNoConflict() {
    Problem free =
        salt()
            .meeting(target(around(CALCIUM, mgPerL(CA), 1).withWeight(1)))
            .and(hump(), least(9).withWeight(1).scaledBy(1))
            .problem();
    assertEquals(Optional.empty(), new SearchedConflict(free).find());
  }

  /**
   * The least broken point is found by the plan, and its tangents show a conflict: those of the
   * hump and of the calcium alone, and ways without each.
   */
  @Test
  void aPlanNamesTheConflictAndTheNearestWater() {
    Plan plan =
        salt()
            .meeting(target(between(CALCIUM, mgPerL(0.1 * CA), mgPerL(0.5 * CA))))
            .and(hump(), least(2.9))
            .solve();
    assertEquals(Outcome.NONE_FOUND, plan.outcome());
    Conflict conflict = plan.conflicts().get(0);
    assertFalse(conflict.isProved());
    assertEquals(
        List.of(
            "calcium of a: at most 20.0 mg/L",
            "calcium of made of a: at least 2.9 mg/L",
            "the waters make up the portion a"),
        conflict.members());
    assertEquals(2, conflict.ways().size());
    assertEquals("calcium of a: at most 20.0 mg/L", conflict.ways().get(0).without());
    assertEquals(List.of("made of a, calcium: 2.9 mg/L"), conflict.ways().get(0).figures());
    assertEquals("calcium of made of a: at least 2.9 mg/L", conflict.ways().get(1).without());
    // Both are made weighted: half the band of the calcium, 0.2 mmol, is dear, so it is kept.
    Plan nearest = plan.nearest().orElseThrow();
    assertEquals(0.5 * CA, nearest.water().calcium().number(), 1e-4);
    assertEquals((2.9 - 3 / 1.25) / 2.9, nearest.weightedSum(), 1e-6);
  }

  /**
   * Magnesium adds a hundredth to the hump, and 3.2 need more of it than is allowed. The tangents
   * of the least broken point blame the limit of the calcium as well; without it no plan is found
   * either, so it is left out.
   */
  @Test
  void whatTangentsBlameWronglyIsLeftOut() {
    Problem problem =
        Plan.from(Water.pure())
            .using(Shelf.of(calciumChloride(), epsom()))
            .forPortions(portion("a", litres(1)))
            .and(
                made(
                    water ->
                        3 / (1 + Math.pow(millimoles(water) - 1, 2))
                            + 0.01 * millimolesOfMagnesium(water)),
                least(3.2))
            .meeting(target(atMost(MAGNESIUM, mgPerL(SmallProblems.MG))))
            .meeting(target(most(0.5 * CA)))
            .problem();
    Point point = new Search(problem).best().orElseThrow();
    Found shown = new ConflictSearch(problem).at(point).orElseThrow();
    assertEquals(3, shown.goals().size());
    Found checked = new SearchedConflict(problem).checked(shown);
    assertEquals(
        List.of("calcium of made of a: at least 3.2 mg/L", "magnesium of a: at most 24.3 mg/L"),
        checked.conflict().members().subList(0, 2));
    assertEquals(List.of(0, 1), checked.goals());
    assertEquals(2, checked.conflict().constraints().size());
  }
}
