package org.brewchem.plan;

import static org.brewchem.plan.SmallProblems.CA;
import static org.brewchem.plan.SmallProblems.epsom;
import static org.brewchem.plan.SmallProblems.gypsum;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Figure;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Reagent;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/** The water of a portion, or of all mixed, as a function of shares and doses. */
class SiteTest {

  private static final Reagent ACID = Reagent.of(Acid.HYDROCHLORIC, massPercent(20));

  private static Variables variables() {
    return Plan.from(Invented.hard(), Water.pure())
        .called("well", "osmosis")
        .using(Shelf.of(gypsum(), ShelfItem.of(ACID)))
        .forPortions(portion("a", litres(100)), portion("b", litres(300)))
        .problem()
        .variables();
  }

  private static Site site(Variables variables, Integer... portions) {
    return new Site(variables, List.of(portions), Optional.empty());
  }

  /** The litres that a millimole of the acid takes. */
  private static double growth() {
    return 36.458 / 0.2 / ACID.density().orElseThrow().inKilogramsPerLitre() * 1e-6;
  }

  @Test
  void aSiteHasThePartsOfItsPortions() {
    Variables variables = variables();
    Site one = site(variables, 1);
    assertEquals(1, one.portion());
    assertEquals("b", one.name());
    assertArrayEquals(new int[] {4, 5, 6, 7}, one.own());
    Site all = site(variables, 0, 1);
    assertEquals(-1, all.portion());
    assertEquals("all portions mixed", all.name());
    assertArrayEquals(new int[] {0, 1, 2, 3, 4, 5, 6, 7}, all.own());
    assertTrue(one.toString().endsWith(" water"), one.toString());
    assertFalse(one.isDownstream());
    assertTrue(one.hasWorkSpace());
    assertFalse(one.hasMash());
  }

  /** By hand: a quarter of 400 L is the portion a, and three are b. */
  @Test
  void whatAVariableBringsIsCountedInPartsOfAllThatIsMixed() {
    Site one = site(variables(), 1);
    Site all = site(variables(), 0, 1);
    int calcium = one.indexOf(Component.CALCIUM);
    double perKilogram = 92 / (1000 * CA) / one.kilogramsPerLitre();
    assertArrayEquals(
        new double[] {0, 0, 0, 0, perKilogram, 0, 1e-3 / one.kilogramsPerLitre(), 0},
        one.brings(calcium),
        1e-9);
    double[] brings = all.brings(calcium);
    assertEquals(perKilogram / 4, brings[0], 1e-9);
    assertEquals(perKilogram * 3 / 4, brings[4], 1e-9);
    assertEquals(0.25e-3 / all.kilogramsPerLitre(), brings[2], 1e-12);
    assertEquals(0.75e-3 / all.kilogramsPerLitre(), brings[6], 1e-12);
    assertArrayEquals(new double[] {0, 0, 0, 0, 1, 1, 0, growth()}, one.volume(), 1e-9);
    assertArrayEquals(
        new double[] {0.25, 0.25, 0, growth() / 4, 0.75, 0.75, 0, growth() * 3 / 4},
        all.volume(),
        1e-9);
  }

  @Test
  void aDoseOfALiquidDilutesTheWater() {
    Site one = site(variables(), 1);
    one.set(new double[] {1, 0, 0, 0, 0.5, 0.5, 2, 40});
    double litres = 1 + 40 * growth();
    assertEquals(litres, one.litres(), 1e-7);
    int calcium = one.indexOf(Component.CALCIUM);
    double expected = (46 / CA + 2) / 1000 / one.kilogramsPerLitre() / litres;
    assertEquals(expected, one.total(calcium), 1e-6 * expected);
    int chloride = one.indexOf(Component.CHLORIDE);
    double acid = (31 / 2.0 / 35.45 + 40) / 1000 / one.kilogramsPerLitre() / litres;
    assertEquals(acid, one.total(chloride), 1e-6 * acid);
  }

  /** What is asked of the site is what treatments make of the waters, one after the other. */
  @Test
  void theLiquidOfASiteIsThatOfItsTreatments() {
    Variables variables = variables();
    Kettle kettle = new Kettle(variables);
    double[] x = {0.25, 0.75, 1.5, 0.7, 0.5, 0.5, 2, 1.1};
    for (Site site : List.of(site(variables, 0), site(variables, 1), site(variables, 0, 1))) {
      site.set(x);
      Liquid expected = site.portion() < 0 ? kettle.together(x) : kettle.water(site.portion(), x);
      for (Figure<?> figure : Figure.list(CALCIUM, CHLORIDE, PH_VALUE)) {
        double own = figure.inShown(site.step(figure).found().orElseThrow()).value();
        assertEquals(expected.answer(figure).number(), own, 1e-8, figure + " of " + site.name());
      }
      assertEquals(0, site.chargeAt(expected.answer(PH_VALUE).number()), 1e-8);
      assertTrue(site.chargeAt(expected.answer(PH_VALUE).number() - 0.5) > 0);
      double fall = (site.chargeAt(6 - 1e-4) - site.chargeAt(6 + 1e-4)) / 2e-4;
      assertEquals(fall, site.capacityAt(6), 1e-3 * fall);
    }
  }

  @Test
  void aLiquidIsMadeOnceForTheSameVariables() {
    Site one = site(variables(), 1);
    double[] x = {1, 0, 0, 0, 0.5, 0.5, 2, 1};
    one.set(x);
    Liquid liquid = one.liquid();
    one.set(x.clone());
    assertSame(liquid, one.liquid());
    // Another portion is none of its business.
    double[] other = x.clone();
    other[2] = 5;
    one.set(other);
    assertSame(liquid, one.liquid());
    other[6] = 1;
    one.set(other);
    assertFalse(liquid == one.liquid());
    assertEquals(46 + CA, ((Water) one.liquid()).calcium().number(), 0.05);
  }

  @Test
  void aLiquidDownstreamIsMadeOfAllThatThereIs() {
    Downstream made = Downstream.of("hot", water -> water.at(celsius(60)));
    Site hot = new Site(variables(), List.of(0), Optional.of(made));
    assertTrue(hot.isDownstream());
    assertFalse(hot.hasWorkSpace());
    assertFalse(hot.hasMash());
    assertEquals("hot of a", hot.name());
    assertTrue(hot.toString().endsWith(" hot"), hot.toString());
    assertEquals(
        "hot of all portions mixed",
        new Site(variables(), List.of(0, 1), Optional.of(made)).name());
    double[] x = {1, 0, 0, 0, 1, 0, 0, 0};
    hot.set(x);
    double expected = Invented.hard().at(celsius(60)).pH().number();
    assertEquals(
        expected, PH_VALUE.inShown(hot.step(PH_VALUE).found().orElseThrow()).value(), 1e-9);
  }

  @Test
  void whatOneWaterDoesNotReportIsUnknown() {
    Water bare = WaterReport.reported().calcium(mgPerL(40)).build().water();
    Variables variables = Plan.from(bare).using(Shelf.of(epsom())).problem().variables();
    Site site = site(variables, 0);
    assertTrue(site.isUnknown(Component.MAGNESIUM));
    assertFalse(site.isUnknown(Component.CALCIUM));
    assertFalse(site.hasWorkSpace());
    assertEquals(-1, site.indexOf(Component.LACTATE));
    site.set(new double[] {1, 1});
    assertEquals(40, CALCIUM.inShown(site.step(CALCIUM).found().orElseThrow()).value(), 1e-9);
  }

  @Test
  void aPortionBeginsWithTheFirstWaterThatItHas() {
    Variables variables = variables();
    Kettle kettle = new Kettle(variables);
    double[] x = {0, 1, 1, 0, 0.5, 0.5, 0, 2};
    assertEquals(Water.pure(), kettle.start(0, x));
    assertSame(variables.waters().get(0), kettle.start(1, x));
    List<Treatment> first = kettle.steps(0, x);
    assertEquals(1, first.size());
    assertEquals(2, kettle.steps(1, x).size());
    assertEquals(100, kettle.litres(0, x), 1e-9);
    assertEquals(300 * (1 + 2 * growth()), kettle.litres(1, x), 1e-4);
    Water mixed = (Water) kettle.together(x);
    double litres = 400 + 600 * growth();
    assertEquals((100 * CA + 300 * 46) / litres, mixed.calcium().number(), 1e-3);
  }
}
