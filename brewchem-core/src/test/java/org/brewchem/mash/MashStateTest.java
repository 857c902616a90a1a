package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Step;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Salt;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/** How the figures of a mash are found, and what their explanations and notices say. */
class MashStateTest {

  private static Malt malt(String name, double pH, double capacity) {
    return Malt.stated(name, "invented", pH(pH), 0, capacity, 0);
  }

  /** 3.5 mEq/L of calcium and 1.4 of magnesium: 1.2 mEq/L by Kolbach's term. */
  private static Water hard() {
    return Water.pure()
        .after(
            Treatments.solute(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mmolPerL(1.75)),
            Treatments.solute(Component.MAGNESIUM, mmolPerL(0.7)),
            Treatments.solute(Component.CHLORIDE, mmolPerL(1.4)));
  }

  private static String line(Answer<?> answer, String start) {
    return answer.explain().lines().stream()
        .map(String::strip)
        .filter(line -> line.startsWith(start))
        .findFirst()
        .orElseThrow(() -> new AssertionError(start + " in " + answer.explain()));
  }

  private static double charge(Answer<?> answer, String start) {
    String line = line(answer, start);
    return Double.parseDouble(line.substring(start.length()).strip());
  }

  /** Two malts of 0.5 kg and 50 mEq/(kg pH) in 4 L, 5.8 and 5.4: each 0.2 off, 1.25 mEq/L. */
  @Test
  void theExplanationListsTheChargesThatBalance() {
    Grist grist = Grist.of(kg(0.5), malt("first", 5.8, 50)).and(kg(0.5), malt("second", 5.4, 50));
    Answer<?> answer = Mash.of(grist, Water.pure(), litres(4)).pH();
    assertEquals(5.6, answer.number(), 1e-12);
    double water = Solution.at(celsius(20)).charge(pH(5.6)).inMilliequivalentsPerLitre();
    assertEquals(water, charge(answer, "liquor"), 1e-5);
    assertEquals(1.25 - water / 2, charge(answer, "first "), 1e-5);
    assertEquals(-1.25 - water / 2, charge(answer, "second "), 1e-5);
    assertEquals("acid set free               +0.00000", line(answer, "acid set free  "));
    assertEquals("sum of the charges          +0.00000", line(answer, "sum of the charges"));
    assertEquals("charges at pH 5.6000, mEq per litre of liquor", line(answer, "charges at"));
    assertEquals(
        "ratio of liquor to grist, as weighed and measured = 4.00 L/kg", line(answer, "ratio of"));
    assertTrue(answer.explain().toString().contains("pH of first, reported = pH"));
    assertTrue(answer.explain().toString().contains("capacity of second, reported = 50.0"));
    assertTrue(answer.explain().holds());
  }

  @Test
  void theRatioIsThatOfTheLiquorToAllMalts() {
    Grist grist = Grist.of(kg(1.5), malt("first", 5.8, 50)).and(kg(0.5), malt("second", 5.4, 50));
    assertEquals(
        "ratio of liquor to grist, as weighed and measured = 3.50 L/kg",
        line(Mash.of(grist, Water.pure(), litres(7)).pH(), "ratio of"));
  }

  /** Whatever side of zero rounding leaves it on, it is printed without a minus. */
  @Test
  void aChargeOfNothingHasNoMinus() {
    for (double pH = 5; pH < 6.2; pH += 0.05) {
      Mash mash = Mash.of(Grist.of(kg(1), malt("own malt", pH, 43)), Mashes.tap(), litres(3.7));
      assertEquals("sum of the charges          +0.00000", line(mash.pH(), "sum of"), "at " + pH);
    }
    Malt malt = Mashes.exact(5.75, 45).withSpecies(extract());
    Mash soft = Mash.of(Grist.of(kg(1), malt), Water.pure(), litres(4));
    assertEquals("among malts' species      +0.00000", line(soft.pH(), "among"));
    assertEquals("beyond them               +0.00000", line(soft.pH(), "beyond"));
    assertEquals(0, soft.kolbachAcidBeyondSpecies().number(), 1e-15);
    assertEquals(List.of(), ofMashes(soft.kolbachAcidBeyondSpecies()), "no more than the term");
  }

  /** 1.5 x (3.5 / 3.5 + 1.4 / 7) = 1.8 mEq/L, of which the species take a part. */
  @Test
  void theAcidSetFreeIsListedWithWhatItRestsOn() {
    Malt malt = Mashes.exact(5.75, 45).withSpecies(extract());
    Grist grist = Grist.of(kg(1), malt).withKolbachFactor(1.5, 0.2);
    Mash mash = Mash.of(grist, hard(), litres(8));
    Answer<Double> acid = mash.kolbachAcid();
    assertEquals(1.8, acid.number(), 1e-12);
    assertEquals(0.2 * 1.8, acid.standardUncertainty().orElseThrow(), 1e-9);
    assertEquals(
        "1.500 x (3.500 / 3.5 + 1.400 / 7) mEq/L", line(acid, "1.500 x"), "by its numbers");
    assertTrue(
        line(acid, "factor on Kolbach's term")
            .startsWith("factor on Kolbach's term, assumed, stated or learned = 1.50"));
    assertTrue(line(acid, "factor on").contains("assumed-mash-terms"));
    Answer<?> answer = mash.pH();
    assertEquals(-1.8, charge(answer, "acid set free   "), 1e-5);
    double among = mash.kolbachAcidAmongSpecies().number();
    assertTrue(among > 0.05, "some: " + among);
    assertEquals(-among, charge(answer, "among malts' species"), 1e-5);
    assertEquals(among - 1.8, charge(answer, "beyond them"), 1e-5);
    assertEquals(1.8 - among, mash.kolbachAcidBeyondSpecies().number(), 1e-12);
    for (Answer<?> one :
        List.of(acid, answer, mash.kolbachAcidAmongSpecies(), mash.kolbachAcidBeyondSpecies())) {
      assertTrue(one.explain().holds(), one.explain().toString());
    }
  }

  private static Solution extract() {
    Solution acids =
        Solution.at(celsius(20))
            .with(Ion.POTASSIUM, mmolPerKg(1))
            .with(Ion.CHLORIDE, mmolPerKg(1))
            .with(Acid.PHOSPHORIC, mmolPerKg(8))
            .with(Acid.CITRIC, mmolPerKg(1));
    return acids.with(Ion.POTASSIUM, acids.doseOf(Base.POTASSIUM_HYDROXIDE, pH(5.75)));
  }

  /** Calcium has an uncertainty of 3 of 92 mg/L, magnesium of 1 of 11; a third and a seventh. */
  @Test
  void theUncertaintyOfTheAcidSetFreeIsThatOfCalciumMagnesiumAndFactor() {
    Grist grist = Grist.of(kg(1), malt("own malt", 5.8, 45)).withKolbachFactor(1, 0);
    Answer<Double> acid = Mash.of(grist, Mashes.tap(), litres(4)).kolbachAcid();
    double calcium = 2 / 40.078 / 3.5;
    double magnesium = 2 / 24.305 / 7;
    assertEquals(92 * calcium + 11 * magnesium, acid.number(), 1e-4);
    assertEquals(
        Math.hypot(3 * calcium, magnesium), acid.standardUncertainty().orElseThrow(), 1e-4);
  }

  @Test
  void theAcidSetFreeNeedsCalciumAndMagnesiumButNoClosedBalance() {
    Grist grist = Grist.of(kg(1), malt("own malt", 5.8, 45));
    Water open =
        WaterReport.reported()
            .calcium(mgPerL(40.078), mgPerL(1))
            .magnesium(mgPerL(24.305), mgPerL(1))
            .build()
            .water();
    Mash mash = Mash.of(grist, open, litres(4));
    assertEquals(2 / 3.5 + 2 / 7.0, mash.kolbachAcid().number(), 1e-4);
    assertFalse(mash.pH().isStated());
    assertFalse(mash.hotPH(celsius(65)).isStated());
    assertEquals(mash.pH().whyUnknown(), mash.hotPH(celsius(65)).whyUnknown());
    assertEquals(mash.pH().whyUnknown(), mash.riseOfPHByDegassing().whyUnknown());
    assertEquals(mash.pH().whyUnknown(), mash.kolbachAcidAmongSpecies().whyUnknown().subList(0, 1));
    assertEquals(
        mash.kolbachAcidAmongSpecies().whyUnknown(), mash.kolbachAcidBeyondSpecies().whyUnknown());
    Water noMetals =
        WaterReport.reported()
            .alkalinityAsCaCO3(mgPerL(50), mgPerL(2))
            .pH(pH(7.5), 0.1)
            .build()
            .water();
    List<String> why = Mash.of(grist, noMetals, litres(4)).kolbachAcid().whyUnknown();
    assertEquals(
        List.of(
            "calcium of the liquor is not known, which Kolbach's term needs",
            "magnesium of the liquor is not known, which Kolbach's term needs"),
        why);
    assertTrue(Mash.of(grist, noMetals, litres(4)).pH().whyUnknown().containsAll(why));
  }

  @Test
  void aLearnedMashCountsWhatItsBrewDiffersBy() {
    Malt own = Malt.stated("own malt", "invented", pH(5.8), 0.1, 45, 0);
    Mash now = Mash.of(Grist.of(kg(1), own), Water.pure(), litres(4)).measured(pH(5.6), 0.02).now();
    Answer<?> answer = now.pH();
    // 0.2 x 0.03² / (0.1² + 0.03² + 0.02²) is this brew's.
    assertEquals(
        "brew to brew, what this brew differs by from others of its grist = -0.016 in pH",
        line(answer, "brew to brew").substring(0, 79));
    assertTrue(line(answer, "brew to brew").endsWith("(computed)]"));
    assertEquals("root of the balance + what this brew differs by", answer.step().text());
    Step sum = answer.step();
    assertEquals(
        answer.number(),
        sum.inputs().get(0).found().orElseThrow().value()
            + sum.inputs().get(1).found().orElseThrow().value(),
        1e-12);
    assertTrue(sum.detail().orElseThrow().holds());
    assertEquals(0, sum.detail().orElseThrow().residual(), 1e-12);
    MashState state = new MashState(now.grist(), now.contents(), Traced.exact(4), Optional.empty());
    assertEquals(
        answer.number() + 0.2 * 9 / 113,
        state.cooled(MashFigures.MASH_PH, true).found().orElseThrow().value(),
        1e-6);
  }

  /** Between 20 and 65 °C in proportion: half of -0.35 at 42.5 °C, and half of its width, 0.2. */
  @Test
  void theHotMashIsInterpolatedFromTheCooledSample() {
    Mash mash = Mash.of(Grist.of(kg(1), malt("own malt", 5.8, 45)), Water.pure(), litres(4));
    Answer<?> half = mash.hotPH(celsius(42.5));
    assertEquals(5.8 - 0.175, half.number(), 1e-9);
    assertEquals(0.1 / Math.sqrt(12), half.standardUncertainty().orElseThrow(), 1e-9);
    // Half-way to 78 °C, -0.40; both printed widths are 0.2.
    Answer<?> above = mash.hotPH(celsius(71.5));
    assertEquals(5.8 - 0.40, above.number(), 1e-9);
    assertEquals(0.2 / Math.sqrt(12), above.standardUncertainty().orElseThrow(), 1e-9);
    assertEquals(
        "difference of the hot mash, interpolated to 72 °C; -0.40 to -0.20 at 65 °C in print"
            + " = -0.40 in pH, U 0.12 (k = 2)  [briggs-2004, chapter 4 (from memory)]",
        line(above, "difference"));
    assertTrue(above.explain().holds());
    assertEquals(0, above.step().detail().orElseThrow().residual(), 1e-12);
    assertEquals(0, mash.riseOfPHByDegassing().step().detail().orElseThrow().residual(), 1e-12);
  }

  /** At 4 L/kg of reading: from 2 to 8 L/kg nothing is said. */
  @Test
  void aRatioIsFarFromMoreThanTwiceOrLessThanHalfOfThatOfTheReading() {
    Malt malt = malt("own malt", 5.8, 45);
    for (double near : new double[] {2, 4, 8}) {
      assertEquals(List.of(), texts(Mash.of(Grist.of(kg(1), malt), Water.pure(), litres(near))));
    }
    assertEquals(
        List.of("8.50 L/kg is far from 4.00 L/kg, at which own malt was read"),
        texts(Mash.of(Grist.of(kg(2), malt), Water.pure(), litres(17))));
    assertEquals(
        List.of("1.90 L/kg is far from 4.00 L/kg, at which own malt was read"),
        texts(Mash.of(Grist.of(kg(10), malt), Water.pure(), litres(19))));
  }

  private static List<String> texts(Mash mash) {
    return ofMashes(mash.pH());
  }

  /** What the room says, without what is said of constants and doses. */
  private static List<String> ofMashes(Answer<?> answer) {
    return answer.notices().stream()
        .filter(notice -> notice.code() instanceof MashCode)
        .map(notice -> notice.text())
        .toList();
  }

  /** Measured from -10 to 20 mEq/kg, 40 mEq/(kg pH): 6 mEq/L at 4 L/kg are 24 mEq/kg. */
  @Test
  void aMashBeyondTheJarsSaysHowFarItIsAndHowFarTheyWere() {
    Malt malt =
        MaltTitration.of("own malt", "invented", 0.01)
            .base(mL(5), mEqPerL(100), pH(6.05))
            .none(pH(5.80))
            .acid(mL(10), mEqPerL(100), pH(5.30))
            .malt();
    assertEquals(
        List.of(
            "the mash takes own malt to 24.0 mEq/kg of acid; its curve was measured from -10.0 to"
                + " 20.0"),
        texts(Mashes.mash(malt, Mashes.acid(6), 4)));
    assertEquals(List.of(), texts(Mashes.mash(malt, Mashes.acid(4.8), 4)));
  }

  @Test
  void speciesThatSetFreeMoreThanTheTermAreSaidWithBothNumbers() {
    Malt malt = Mashes.exact(5.75, 45).withSpecies(extract());
    Grist grist = Grist.of(kg(1), malt).withKolbachFactor(0.01, 0);
    Mash mash = Mash.of(grist, hard(), litres(4));
    double among = mash.kolbachAcidAmongSpecies().number();
    assertEquals(
        List.of(
            String.format(
                Locale.ROOT,
                "the species of the malts alone set free %.3g mEq/L and Kolbach's term says 0.0120;"
                    + " the mash pH counts the term",
                among)),
        ofMashes(mash.kolbachAcidBeyondSpecies()));
    Mash usual = Mash.of(grist.withKolbachFactor(1, 0), hard(), litres(4));
    assertEquals(List.of(), ofMashes(usual.kolbachAcidBeyondSpecies()));
  }

  /** Twice the malt in the same liquor has twice the ligands; without it there are none. */
  @Test
  void whatTheSpeciesSetFreeIsPerLitreOfLiquor() {
    Malt malt = Mashes.exact(5.75, 45).withSpecies(extract());
    Malt second = malt("second", 5.75, 45).withSpecies(extract());
    Mash one = Mash.of(Grist.of(kg(1), malt), hard(), litres(4));
    Mash both = Mash.of(Grist.of(kg(0.5), malt).and(kg(0.5), second), hard(), litres(4));
    assertEquals(
        one.kolbachAcidAmongSpecies().number(), both.kolbachAcidAmongSpecies().number(), 1e-9);
    Mash more = Mash.of(Grist.of(kg(10), malt), hard(), litres(40));
    assertEquals(
        one.kolbachAcidAmongSpecies().number(), more.kolbachAcidAmongSpecies().number(), 1e-9);
  }

  private static final Source OF_LITRES = Source.of("volume", 4, 0.1, "L");

  private static MashState state(Grist grist, Contents liquor, Traced litres) {
    return new MashState(grist, liquor, litres, Optional.empty());
  }

  private static double pHOf(MashState state) {
    return state.cooled(MashFigures.MASH_PH, true).found().orElseThrow().value();
  }

  /** 2 mEq/L of alkalinity at 4 L on 45 mEq/pH are 8 / 45; a litre more, 2 / 45. */
  @Test
  void moreLiquorThinsTheMalts() {
    Grist grist = Grist.of(kg(1), malt("own malt", 5.8, 45));
    Contents liquor = Mashes.alkaline(2).contents().at(celsius(20));
    Traced found =
        state(grist, liquor, Traced.of(OF_LITRES))
            .cooled(MashFigures.MASH_PH, true)
            .found()
            .orElseThrow();
    double step =
        pHOf(state(grist, liquor, Traced.exact(4.001)))
            - pHOf(state(grist, liquor, Traced.exact(3.999)));
    assertEquals(step / 0.002, found.sensitivity(OF_LITRES), 1e-6);
    assertEquals(2 / 45.0, found.sensitivity(OF_LITRES), 1e-3);
    assertEquals(
        found.sensitivity(OF_LITRES),
        state(grist, liquor, Traced.of(OF_LITRES)).notDrawn(true).sensitivity(OF_LITRES),
        1e-15);
  }

  /** Capacity, pH and factor are drawn; the rest, and what this brew differs by, is linear. */
  @Test
  void whatIsNotDrawnMovesTheRootAsItDoesInThePH() {
    Malt malt = Malt.stated("own malt", "invented", pH(5.8), 0.1, 45, 4);
    Source brew = Source.of("brew", 0.05, 0.03, "");
    Grist grist = Grist.of(kg(1), malt).withKolbachFactor(1.3, 0.2);
    Contents liquor = Mashes.tap().contents().at(celsius(20));
    MashState state = new MashState(grist, liquor, Traced.exact(4), Optional.of(Traced.of(brew)));
    Traced whole = state.cooled(MashFigures.MASH_PH, true).found().orElseThrow();
    Traced rest = state.notDrawn(true);
    for (Source source : whole.sources()) {
      boolean drawn =
          malt.curve().sources().contains(source)
              || grist.kolbachFactor().sources().contains(source);
      assertEquals(
          drawn ? 0 : whole.sensitivity(source), rest.sensitivity(source), 1e-12, source.name());
    }
    assertEquals(1, rest.sensitivity(brew), 1e-12);
    assertTrue(Math.abs(whole.sensitivity(grist.kolbachFactor().sources().get(0))) > 0.1);
    // The factor moves the root by its own part: a difference of the whole.
    Traced factor = grist.kolbachFactor();
    double step =
        pHOf(state(grist.withKolbachFactor(1.3001, 0), liquor, Traced.exact(4)))
            - pHOf(state(grist.withKolbachFactor(1.2999, 0), liquor, Traced.exact(4)));
    assertEquals(
        step / 0.0002 * 1.3, whole.sensitivity(factor.sources().get(0)), 1e-5, "its logarithm");
  }

  /** Curvature and misfit move the pH by a² and by nothing at a jar, per slope there. */
  @Test
  void everyNumberOfACurveMovesThePHAsTheCurveDoes() {
    Source[] own = {
      Source.of("pH", 5.8, 0.1, ""),
      Source.of("slope", -0.025, 0.002, ""),
      Source.of("curvature", 2e-4, 3e-5, ""),
      Source.of("misfit", 0, 0.004, "")
    };
    MaltCurve curve =
        new MaltCurve(
            Traced.of(own[0]), Traced.of(own[1]), Traced.of(own[2]), Traced.of(own[3]), -10, 0, 20);
    Malt malt = Malt.measured("own malt", "invented", curve, 4, celsius(20));
    Contents acid = Mashes.acid(2.5).contents().at(celsius(20));
    MashState state = state(Grist.of(kg(1), malt), acid, Traced.exact(4));
    Traced found = state.cooled(MashFigures.MASH_PH, true).found().orElseThrow();
    // 10 mEq/kg: 5.8 - 0.25 + 0.02.
    assertEquals(5.57, found.value(), 1e-3);
    assertEquals(1, found.sensitivity(own[0]), 1e-3);
    assertEquals(10, found.sensitivity(own[1]), 0.02);
    assertEquals(100, found.sensitivity(own[2]), 0.3);
    assertEquals(20 * 10 * -10 / 1000.0, found.sensitivity(own[3]), 0.01);
    Traced rest = state.notDrawn(true);
    assertEquals(0, rest.sensitivity(own[0]), 1e-12);
    assertEquals(0, rest.sensitivity(own[1]), 1e-12);
    assertEquals(found.sensitivity(own[2]), rest.sensitivity(own[2]), 1e-12);
    assertEquals(found.sensitivity(own[3]), rest.sensitivity(own[3]), 1e-12);
  }
}
