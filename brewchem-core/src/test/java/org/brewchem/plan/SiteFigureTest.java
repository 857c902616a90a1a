package org.brewchem.plan;

import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.plan.SmallProblems.CA;
import static org.brewchem.plan.SmallProblems.CL;
import static org.brewchem.plan.SmallProblems.MG;
import static org.brewchem.plan.SmallProblems.SO4;
import static org.brewchem.plan.SmallProblems.calciumChloride;
import static org.brewchem.plan.SmallProblems.epsom;
import static org.brewchem.plan.SmallProblems.gypsum;
import static org.brewchem.plan.WaterPortion.portion;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.BUFFER_CAPACITY;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.CARBONATE_ALKALINITY;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.IONIC_STRENGTH;
import static org.brewchem.solution.Figures.MAGNESIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.POTASSIUM;
import static org.brewchem.solution.Figures.SULFATE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.brewchem.water.WaterFigures.CALCIUM_HARDNESS;
import static org.brewchem.water.WaterFigures.CONDUCTIVITY;
import static org.brewchem.water.WaterFigures.PERMANENT_HARDNESS;
import static org.brewchem.water.WaterFigures.RESIDUAL_ALKALINITY;
import static org.brewchem.water.WaterFigures.SULFATE_TO_CHLORIDE_BY_EQUIVALENTS;
import static org.brewchem.water.WaterFigures.SUM_OF_CATIONS;
import static org.brewchem.water.WaterFigures.TOTAL_HARDNESS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Reagent;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/** Figures of a plan's water as functions of its variables, against the water's own answers. */
class SiteFigureTest {

  /** Two waters, three salts, an acid and a lye that make the water grow. */
  private static Problem problem() {
    return Plan.from(Invented.hard(), Invented.soft())
        .using(
            Shelf.of(
                gypsum(),
                calciumChloride(),
                epsom(),
                Invented.lactic(),
                ShelfItem.of(Reagent.of(Base.SODIUM_HYDROXIDE, massPercent(30)))))
        .forPortions(portion("a", hL(1)), portion("b", hL(2)))
        .problem();
  }

  private static Site site(Problem problem, Integer... portions) {
    return new Site(problem.variables(), List.of(portions), Optional.empty());
  }

  private static double[] random(Random random) {
    double[] x = new double[14];
    for (int i = 0; i < x.length; i++) {
      x[i] = 0.1 + 1.5 * random.nextDouble();
    }
    for (int p = 0; p < 14; p += 7) {
      x[p] = 0.1 + 0.8 * random.nextDouble();
      x[p + 1] = 1 - x[p];
    }
    return x;
  }

  private static double asked(Figure<?> figure, Site site) {
    return figure.inShown(site.step(figure).found().orElseThrow()).value();
  }

  /** Calcium in mmol/L, with two added and doubled, and as the logarithm of its mg/L. */
  private static Figure<MassConcentration> calciumIn(double times, double offset) {
    return CALCIUM.shownIn(
        Scale.of(
            "shown",
            c -> offset + times * c.inMilligramsPerLitre(),
            n -> mgPerL((n - offset) / times),
            6));
  }

  private static <Q> Figure<Q> logarithm(Figure<Q> figure) {
    return figure.shownIn(
        Scale.of(
            "ln", q -> Math.log(figure.scale().in(q)), n -> figure.scale().of(Math.exp(n)), 6));
  }

  private static final Figure<Double> PRODUCT =
      ClosedForm.figure(
          "product",
          Scale.number("", 6),
          "by hand",
          "ours",
          Figure.list(CALCIUM, MAGNESIUM, SULFATE),
          x -> (x[0] + 1) * (x[1] + 2) + x[2]);

  private static final List<Figure<?>> ALL =
      Figure.list(
          CALCIUM,
          calciumIn(1 / CA, 0),
          calciumIn(2, 4),
          logarithm(CALCIUM),
          CALCIUM_HARDNESS,
          TOTAL_HARDNESS,
          SULFATE_TO_CHLORIDE,
          logarithm(SULFATE_TO_CHLORIDE),
          SULFATE_TO_CHLORIDE_BY_EQUIVALENTS,
          PRODUCT,
          logarithm(PRODUCT),
          PH_VALUE,
          IONIC_STRENGTH,
          CARBONATE_ALKALINITY,
          RESIDUAL_ALKALINITY,
          PERMANENT_HARDNESS,
          BUFFER_CAPACITY,
          Figures.titratableAcidity(pH(8.2)),
          SUM_OF_CATIONS,
          CONDUCTIVITY);

  @Test
  void aFigureOfASiteIsTheFigureOfItsWater() {
    Problem problem = problem();
    Random random = new Random(1);
    for (Site site : List.of(site(problem, 0), site(problem, 1), site(problem, 0, 1))) {
      for (Figure<?> figure : ALL) {
        SiteFigure own = SiteFigure.of(figure, site);
        for (int n = 0; n < 3; n++) {
          site.set(random(random));
          double expected = asked(figure, site);
          assertEquals(
              expected, own.number(), 1e-9 * Math.max(1, Math.abs(expected)), figure.title());
        }
        assertEquals(figure.title(), own.toString());
      }
    }
  }

  @Test
  void aGradientIsThatOfDifferencesOnEitherSide() {
    Problem problem = problem();
    Random random = new Random(2);
    for (Site site : List.of(site(problem, 1), site(problem, 0, 1))) {
      for (Figure<?> figure : ALL) {
        SiteFigure own = SiteFigure.of(figure, site);
        double[] x = random(random);
        site.set(x);
        double[] slopes = own.gradient(x);
        assertEquals(x.length, slopes.length);
        // A root is known to 1e-9, and so is the difference that its slope is taken from.
        double root = 1e-9 * Math.abs(own.number()) / SiteFigure.STEP;
        for (int i = 0; i < x.length; i++) {
          double[] moved = x.clone();
          moved[i] = x[i] + 1e-3;
          site.set(moved);
          double above = asked(figure, site);
          moved[i] = x[i] - 1e-3;
          site.set(moved);
          double below = asked(figure, site);
          double expected = (above - below) / 2e-3;
          assertEquals(
              expected,
              slopes[i],
              root + 1e-4 * Math.max(1, Math.abs(expected)),
              figure.title() + " " + figure.shown().symbol() + " of " + i);
        }
        // The site is left at the variables that were set.
        site.set(x);
        double number = own.number();
        own.gradient(x);
        assertEquals(number, own.number(), 1e-12 * Math.abs(number), figure.title());
      }
    }
  }

  @Test
  void whatIsLinearIsASumOfTotals() {
    Site site = site(problem(), 0);
    int calcium = site.indexOf(Component.CALCIUM);
    int magnesium = site.indexOf(Component.MAGNESIUM);
    SiteFigure.Linear total = SiteFigure.of(CALCIUM, site).linear().orElseThrow();
    assertEquals(0, total.constant());
    assertEquals(1000 * CA * site.kilogramsPerLitre(), total.perTotal()[calcium], 1e-6 * 1000 * CA);
    SiteFigure.Linear shown = SiteFigure.of(calciumIn(2, 4), site).linear().orElseThrow();
    assertEquals(4, shown.constant(), 1e-9);
    assertEquals(2 * total.perTotal()[calcium], shown.perTotal()[calcium], 1e-7);
    // A milligram of calcium is 2 / 40.078 mEq, and each of these 50.04 mg of CaCO3.
    SiteFigure.Linear hardness = SiteFigure.of(TOTAL_HARDNESS, site).linear().orElseThrow();
    double perMole = 1000 * (CA + 12.011 + 3 * 15.999) * site.kilogramsPerLitre();
    assertEquals(perMole, hardness.perTotal()[calcium], 1e-5 * perMole);
    assertEquals(perMole, hardness.perTotal()[magnesium], 1e-5 * perMole);
    Figure<Double> sum =
        ClosedForm.figure(
            "sum",
            Scale.number("", 3),
            "by hand",
            "ours",
            Figure.list(CALCIUM, MAGNESIUM, SULFATE),
            x -> 7 + 2 * x[0] - 3 * x[1] + 0.5 * x[2]);
    SiteFigure.Linear own = SiteFigure.of(sum, site).linear().orElseThrow();
    double factor = 1000 * site.kilogramsPerLitre();
    assertEquals(7, own.constant(), 1e-9);
    assertEquals(2 * CA * factor, own.perTotal()[calcium], 1e-5 * CA * factor);
    assertEquals(-3 * MG * factor, own.perTotal()[magnesium], 1e-5 * MG * factor);
    assertEquals(
        0.5 * SO4 * factor, own.perTotal()[site.indexOf(Component.SULFATE)], 1e-5 * SO4 * factor);
    // A formula of a shown calcium, which has a constant of its own: 7 + 3 (4 + 2 Ca).
    Figure<Double> nested =
        ClosedForm.figure(
            "nested",
            Scale.number("", 3),
            "by hand",
            "ours",
            Figure.list(calciumIn(2, 4)),
            x -> 7 + 3 * x[0]);
    SiteFigure.Linear twice = SiteFigure.of(nested, site).linear().orElseThrow();
    assertEquals(19, twice.constant(), 1e-9);
    assertEquals(6 * total.perTotal()[calcium], twice.perTotal()[calcium], 1e-4);
  }

  @Test
  void whatIsCurvedIsNotLinear() {
    Site site = site(problem(), 0);
    for (Figure<?> figure :
        Figure.list(
            logarithm(CALCIUM),
            SULFATE_TO_CHLORIDE,
            PRODUCT,
            PH_VALUE,
            CARBONATE_ALKALINITY,
            RESIDUAL_ALKALINITY,
            SUM_OF_CATIONS)) {
      assertEquals(Optional.empty(), SiteFigure.of(figure, site).linear(), figure.title());
    }
    // Straight up to 30 mg/L, and above it not.
    Figure<Double> bent =
        ClosedForm.figure(
            "bent",
            Scale.number("", 3),
            "by hand",
            "ours",
            Figure.list(CALCIUM),
            x -> Math.min(x[0], 30));
    assertEquals(Optional.empty(), SiteFigure.of(bent, site).linear());
    // Of three inputs only the last is curved, and does not show it at 0 and 1.
    Figure<Double> third =
        ClosedForm.figure(
            "third",
            Scale.number("", 3),
            "by hand",
            "ours",
            Figure.list(CALCIUM, MAGNESIUM, SULFATE),
            x -> x[0] + x[1] + x[2] * x[2]);
    assertEquals(Optional.empty(), SiteFigure.of(third, site).linear());
  }

  @Test
  void aRatioHasItsPartsAndItsFactor() {
    Site site = site(problem(), 0);
    SiteFigure ratio = SiteFigure.of(SULFATE_TO_CHLORIDE, site);
    assertEquals(2, ratio.ratio().orElseThrow().size());
    assertEquals("sulfate", ratio.ratio().orElseThrow().get(0).toString());
    assertEquals("chloride", ratio.ratio().orElseThrow().get(1).toString());
    assertEquals(1, ratio.factor());
    assertEquals(
        2 / SO4 * CL, SiteFigure.of(SULFATE_TO_CHLORIDE_BY_EQUIVALENTS, site).factor(), 1e-5);
    assertEquals(Optional.empty(), SiteFigure.of(TOTAL_HARDNESS, site).ratio());
    assertEquals(Optional.empty(), SiteFigure.of(CALCIUM, site).ratio());
    assertEquals(1, SiteFigure.of(CALCIUM, site).factor());
  }

  @Test
  void thePHIsARootAndItsChargeHasSlopes() {
    Problem problem = problem();
    Site site = site(problem, 0);
    SiteFigure figure = SiteFigure.of(PH_VALUE, site);
    assertTrue(figure.isRoot());
    assertFalse(figure.isAsked());
    assertFalse(SiteFigure.of(CALCIUM, site).isRoot());
    assertFalse(SiteFigure.of(IONIC_STRENGTH, site).isRoot());
    double[] x = random(new Random(3));
    site.set(x);
    double[] slopes = figure.chargeGradient(6, x);
    for (int i = 0; i < x.length; i++) {
      double[] moved = x.clone();
      moved[i] += 1e-3;
      site.set(moved);
      double above = site.chargeAt(6);
      moved[i] -= 2e-3;
      site.set(moved);
      double below = site.chargeAt(6);
      assertEquals((above - below) / 2e-3, slopes[i], 1e-6, "variable " + i);
    }
    // A millimole of lye in a litre is a milliequivalent, less what dilutes and pairs.
    assertEquals(1e-3, slopes[6], 1e-4);
    assertEquals(0, slopes[13]);
    site.set(x);
    double own = site.chargeAt(6);
    figure.chargeGradient(6, x);
    assertEquals(own, site.chargeAt(6), 0);
  }

  @Test
  void whatNoWorkSpaceWalksIsAskedOfTheLiquid() {
    Site site = site(problem(), 0);
    assertTrue(SiteFigure.of(SUM_OF_CATIONS, site).isAsked());
    assertTrue(SiteFigure.of(CONDUCTIVITY, site).isAsked());
    assertFalse(SiteFigure.of(RESIDUAL_ALKALINITY, site).isAsked());
    assertFalse(SiteFigure.of(CALCIUM, site).isAsked());
    // A formula of what is asked is asked, too.
    Figure<Double> twice =
        ClosedForm.figure(
            "twice",
            Scale.number("", 3),
            "by hand",
            "ours",
            Figure.list(CALCIUM, CONDUCTIVITY),
            x -> x[0] + x[1]);
    assertTrue(SiteFigure.of(twice, site).isAsked());
    // Of a liquid that is made of the water everything is asked.
    Downstream hot = Downstream.of("hot", water -> water.at(celsius(60)));
    Site made = new Site(problem().variables(), List.of(0), Optional.of(hot));
    assertTrue(SiteFigure.of(CALCIUM, made).isAsked());
    assertFalse(SiteFigure.of(PH_VALUE, made).isRoot());
    // A water without a pH has totals, and its balance is open.
    Water open = WaterReport.reported().calcium(mgPerL(40)).build().water();
    Site bare =
        new Site(
            Plan.from(open).using(Shelf.of(calciumChloride())).problem().variables(),
            List.of(0),
            Optional.empty());
    assertFalse(SiteFigure.of(CALCIUM, bare).isAsked());
    assertTrue(SiteFigure.of(PH_VALUE, bare).isAsked());
    assertTrue(SiteFigure.of(POTASSIUM, bare).isAsked());
  }

  /** No water and no dose brings any: 0, whatever is dosed. */
  @Test
  void whatNothingBringsIsNone() {
    Problem problem =
        Plan.from(Water.pure())
            .using(Shelf.of(gypsum()))
            .forPortions(portion("a", litres(1)))
            .problem();
    Site site = site(problem, 0);
    double[] x = {1, 2};
    site.set(x);
    SiteFigure chloride = SiteFigure.of(CHLORIDE, site);
    assertEquals(0, chloride.number());
    assertEquals(0, chloride.gradient(x)[1]);
    assertEquals(-1, site.indexOf(Component.CHLORIDE));
    assertEquals(2 * SO4, SiteFigure.of(SULFATE, site).number(), 1e-6 * SO4);
  }

  /** Beyond 2 mmol/L there is no value: the slope at 2 is that of the side that has one. */
  @Test
  void aSlopeIsTakenOnTheSideThatHasValues() {
    Problem problem =
        Plan.from(Water.pure())
            .using(Shelf.of(gypsum()))
            .forPortions(portion("a", litres(1)))
            .and(
                SmallProblems.made(
                    water -> {
                      double x = SmallProblems.millimoles(water);
                      if (x > 2 || (x > 0.6 && x < 1.9)) {
                        throw new IllegalArgumentException("no value");
                      }
                      return 3 * x;
                    }),
                atMost(CALCIUM, mgPerL(1)))
            .problem();
    double[] x = {1, 2 - 1e-6};
    problem.set(x);
    assertEquals(6, problem.number(0), 1e-5);
    assertEquals(3, problem.figure(0).gradient(x)[1], 1e-4);
    double[] beyond = {1, 1};
    problem.set(beyond);
    assertEquals(Double.NaN, problem.number(0));
    assertEquals(Double.NaN, problem.figure(0).numberOrNaN());
  }
}
