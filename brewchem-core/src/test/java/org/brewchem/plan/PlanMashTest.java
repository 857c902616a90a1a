package org.brewchem.plan;

import static org.brewchem.figure.Constraint.around;
import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.mash.MashFigures.MASH_PH;
import static org.brewchem.mash.MashFigures.hotMashPH;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.IONIC_STRENGTH;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SODIUM;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Target;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.Mash;
import org.brewchem.mash.MashBalance;
import org.brewchem.plan.Plan.Outcome;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Treatment;
import org.brewchem.water.Water;
import org.brewchem.water.WaterCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlanMashTest {

  private static final Grist GRIST =
      Grist.of(kg(280), Malt.stated("invented malt", "ours", pH(5.74), 0.02, 43, 2))
          .and(kg(20), Malt.assumed(MaltKind.CARAMEL));
  private static final Downstream MASH = Downstream.mash("mash", GRIST, hL(12)).madeOf("strike");
  private static final Target PALE =
      Target.named("invented")
          .with(between(CALCIUM, mgPerL(50), mgPerL(110)))
          .with(atMost(SODIUM, mgPerL(25)))
          .with(around(CHLORIDE, mgPerL(60), 20).withWeight(1));

  private static Plan.Request request() {
    return Plan.from(Invented.hard(), Invented.soft())
        .using(Invented.full().meteringWaterTo(litres(5)))
        .meeting(PALE)
        .forPortions(portion("strike", hL(12)), portion("sparge", hL(14)));
  }

  /**
   * Acid for the mash makes its liquor sour, which is how it is meant; a sparge is another thing.
   */
  @Test
  void aSourLiquorOfAMashIsNothingUnusualAndASourSpargeIs() {
    Plan.Request soft =
        Plan.from(Invented.soft())
            .using(Invented.full())
            .forPortions(portion("strike", hL(12)), portion("sparge", hL(14)));
    Plan mashed = soft.and(MASH, between(MASH_PH, pH(5.2), pH(5.25))).solve();
    assertTrue(mashed.water("strike").pH().number() < 4, mashed.toString());
    assertEquals(List.of(), aboutPH(mashed));
    Plan sparged =
        soft.meeting("sparge", Target.named("sour").with(atMost(PH_VALUE, pH(3.5)))).solve();
    assertEquals(1, aboutPH(sparged).size());
  }

  private static List<Notice> aboutPH(Plan plan) {
    return plan.notices().stream()
        .filter(notice -> notice.code() == WaterCode.TREATED_WATER_UNUSUAL)
        .toList();
  }

  /** The doses of a portion reach no more water than there is. */
  @Test
  void aMashOfMoreLiquorThanItsPortionIsRefused() {
    Downstream large = Downstream.mash("mash", GRIST, hL(13)).madeOf("strike");
    assertEquals(
        "volume of the liquor of mash of strike: 1300 L is not possible; at most the 1200 L that the"
            + " plan has of its water",
        assertThrows(
                IllegalArgumentException.class,
                () -> request().and(large, between(MASH_PH, pH(5.3), pH(5.5))).solve())
            .getMessage());
    Downstream ofAll = Downstream.mash("mash", GRIST, hL(26));
    assertEquals(
        Outcome.FOUND, request().and(ofAll, between(MASH_PH, pH(5.2), pH(5.8))).solve().outcome());
  }

  @Test
  void aPlanWithAMashReachesItsPHAndEqualsItsStepsDoneOneByOne() {
    Plan plan = request().and(MASH, between(MASH_PH, pH(5.3), pH(5.5))).solve();
    assertEquals(Outcome.FOUND, plan.outcome());
    Water strike = plan.start("strike");
    for (Treatment step : plan.steps("strike")) {
      strike = strike.after(step);
    }
    Mash mash = Mash.of(GRIST, strike, hL(12));
    assertTrue(mash.pH().number() >= 5.3 && mash.pH().number() <= 5.5, mash.toString());
    Reached reached =
        plan.reached().stream()
            .filter(one -> one.constraint().figure().equals(MASH_PH))
            .findFirst()
            .orElseThrow();
    assertEquals(mash.pH().number(), reached.answer().number());
    assertEquals(mash.pH().standardUncertainty(), reached.answer().standardUncertainty());
    assertTrue(reached.chance().isPresent());
    assertTrue(plan.notices().stream().anyMatch(n -> n.toString().contains("assumed malt")));
    assertTrue(plan.explain().holds());
  }

  @Test
  void theSameQuestionHasTheSameAnswerBitByBit() {
    Plan.Request request = request().and(MASH, around(MASH_PH, pH(5.4), 0.05).withWeight(2));
    Plan one = request.solve();
    Plan other = request.solve();
    assertEquals(one.toString(), other.toString());
    assertEquals(
        Double.doubleToLongBits(one.weightedSumBeforeRounding()),
        Double.doubleToLongBits(other.weightedSumBeforeRounding()));
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void theBalanceThatIsWalkedSaysWhatTheMashSays(boolean leaves) {
    Volume volume = hL(12);
    Downstream made =
        leaves
            ? Downstream.mash("mash", GRIST, volume)
            : Downstream.mashKeepingCarbonDioxide("mash", GRIST, volume);
    Problem problem =
        request()
            .and(made.madeOf("strike"), between(MASH_PH, pH(5.3), pH(5.5)))
            .forPortions(portion("strike", volume))
            .problem();
    int g = problem.goals().size() - 1;
    assertTrue(problem.figure(g).isRoot());
    Random random = new Random(20261126);
    for (int n = 0; n < 40; n++) {
      double[] x = new double[problem.variables().count()];
      for (int i = 2; i < x.length; i++) {
        x[i] = random.nextInt(3) == 0 ? 0 : 3 * random.nextDouble();
      }
      x[0] = random.nextInt(4) / 3.0;
      x[1] = 1 - x[0];
      problem.set(x);
      double own = problem.number(g);
      Mash mash = Mash.of(GRIST, problem.kettle().water(0, x), volume);
      assertEquals((leaves ? mash : mash.keepingCarbonDioxide()).pH().number(), own, 1e-9);
      double[] slopes = problem.figure(g).gradient(x);
      for (int i = 2; i < x.length; i++) {
        double[] moved = x.clone();
        moved[i] += 1e-4;
        problem.set(moved);
        assertEquals((problem.number(g) - own) / 1e-4, slopes[i], 1e-4, i + " of " + n);
      }
      problem.set(x);
    }
  }

  @Test
  void theChargeOfAMashIsAboveZeroBelowItsRootAndFallsByItsCapacity() {
    MashBalance balance = Mash.of(GRIST, Invented.hard(), hL(12)).balance();
    double root = balance.pH();
    assertEquals(0, balance.chargeAt(root), 1e-9);
    assertTrue(balance.chargeAt(root - 0.1) > 0);
    double fall = (balance.chargeAt(root - 1e-4) - balance.chargeAt(root + 1e-4)) / 2e-4;
    assertEquals(fall, balance.bufferCapacityAt(root), 1e-4 * fall);
  }

  @Test
  void aMashPHThatNothingReachesIsNoProofAndTheNearestWaterIsPlanned() {
    Plan plan =
        Plan.from(Invented.hard())
            .using(Invented.salts())
            .meeting(
                Target.named("invented")
                    .with(atMost(CALCIUM, mgPerL(120)))
                    .with(atMost(MAGNESIUM, mgPerL(20))))
            .forPortions(portion("strike", hL(12)))
            .and(MASH, atMost(MASH_PH, pH(5.2)))
            .solve();
    assertEquals(Outcome.NONE_FOUND, plan.outcome());
    Conflict conflict = plan.conflicts().get(0);
    assertFalse(conflict.isProved());
    assertTrue(conflict.toString().startsWith("no plan was found that keeps together: "));
    assertEquals(
        List.of(), conflict.undecided().stream().filter(m -> m.contains("strike:")).toList());
    Plan nearest = plan.nearest().orElseThrow();
    double reached =
        nearest.reached().stream()
            .filter(one -> one.constraint().figure().equals(MASH_PH))
            .findFirst()
            .orElseThrow()
            .answer()
            .number();
    double before = Mash.of(GRIST, Invented.hard(), hL(12)).pH().number();
    assertTrue(reached > 5.2 && reached < before, reached + " of " + before);
  }

  @Test
  void otherFiguresOfAMashAreAskedAndThoseThatItDoesNotHaveAreNamed() {
    Plan hot = request().and(MASH, between(hotMashPH(celsius(65)), pH(5.0), pH(5.15))).solve();
    assertEquals(Outcome.FOUND, hot.outcome());
    Plan.Request ionic =
        request().and(MASH, atMost(IONIC_STRENGTH, Molality.ofMillimolesPerKilogram(20)));
    UnknownFigureException unknown = assertThrows(UnknownFigureException.class, ionic::solve);
    assertTrue(unknown.getMessage().contains("ask the liquor"), unknown.getMessage());
    assertThrows(IllegalArgumentException.class, () -> Downstream.mash("mash", GRIST, hL(0)));
  }

  /**
   * A water that is to suit two mashes is planned, and that there is not enough for both is said.
   */
  @Test
  void mashesThatShareMoreWaterThanThereIsAreNamed() {
    Downstream other = Downstream.mash("other mash", GRIST, hL(10)).madeOf("strike");
    Plan plan =
        request()
            .and(MASH, between(MASH_PH, pH(5.2), pH(5.8)))
            .and(other, between(MASH_PH, pH(5.2), pH(5.8)))
            .solve();
    Notice shared =
        plan.notices().stream()
            .filter(notice -> notice.code() == PlanCode.LIQUOR_SHARED)
            .findFirst()
            .orElseThrow();
    assertEquals(
        "mash of strike and other mash of strike take 22 hL of 12 hL together: the water suits each"
            + " of them and is not enough for all",
        shared.text());
    Plan one = request().and(MASH, between(MASH_PH, pH(5.2), pH(5.8))).solve();
    assertTrue(one.notices().stream().noneMatch(notice -> notice.code() == PlanCode.LIQUOR_SHARED));
  }
}
