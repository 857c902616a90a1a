package org.brewchem.water;

import static org.brewchem.figure.Constraint.atMost;
import static org.brewchem.figure.Constraint.between;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.treatment.Treatments.acid;
import static org.brewchem.treatment.Treatments.base;
import static org.brewchem.treatment.Treatments.blend;
import static org.brewchem.treatment.Treatments.degassing;
import static org.brewchem.treatment.Treatments.dilution;
import static org.brewchem.treatment.Treatments.precipitation;
import static org.brewchem.treatment.Treatments.salt;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Comparison.Judgement;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Target;
import org.brewchem.figure.Verdict;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Salt;
import org.junit.jupiter.api.Test;

/** A treated water is a water. The numbers are invented. */
class WaterTreatmentTest {

  private static final Water TAP = Waters.tap().water();
  private static final Water SOFT = Waters.soft().water().at(celsius(25));

  private static double alkalinity(Water water) {
    return water.alkalinity().value().inMilliequivalentsPerLitre();
  }

  @Test
  void mixingIsExactInIonsAndCarbonDioxide() {
    Water mixed = TAP.after(blend(litres(3), SOFT, litres(1)));
    assertEquals((3 * 92 + 9) / 4.0, mixed.calcium().number(), 1e-9);
    assertEquals(Origin.COMPUTED, mixed.calcium().origin());
    assertFalse(mixed.potassium().isStated());
    assertEquals((3 * alkalinity(TAP) + alkalinity(SOFT)) / 4, alkalinity(mixed), 1e-3);
    Solution together = TAP.solution().mixed(litres(3), SOFT.solution(), litres(1));
    assertEquals(
        together.total(Component.CARBONATE).inMillimolesPerLitre(),
        mixed.totalCarbonDioxide().number(),
        1e-9);
    assertEquals(together.pH().value(), mixed.pH().number(), 1e-9);
    assertThrows(
        IllegalArgumentException.class, () -> TAP.after(blend(litres(0), SOFT, litres(0))));
  }

  @Test
  void dilutionHalvesEverythingThatIsKnown() {
    Water half = TAP.after(dilution(VolumeRatio.of(1)));
    assertEquals(46, half.calcium().number(), 1e-9);
    assertEquals(107.5, half.alkalinity().number(), 0.02);
    assertFalse(half.potassium().isStated());
    assertEquals(TAP.totalCarbonDioxide().number() / 2, half.totalCarbonDioxide().number(), 1e-9);
  }

  /** 1 g of gypsum is 0.2328 g of calcium and 0.5579 g of sulfate by its formula. */
  @Test
  void aSaltChangesExactlyItsIons() {
    Water before = Waters.soft().water();
    Water salted = before.after(salt(Salt.GYPSUM, gPerL(0.1)));
    assertEquals(9 + 23.28, salted.calcium().number(), 0.01);
    assertEquals(7 + 55.79, salted.sulfate().number(), 0.01);
    for (Figure<?> figure :
        Figure.list(
            Figures.MAGNESIUM,
            Figures.SODIUM,
            Figures.POTASSIUM,
            Figures.CHLORIDE,
            Figures.NITRATE,
            Figures.TOTAL_CARBON_DIOXIDE)) {
      assertEquals(
          before.answer(figure).number(),
          salted.answer(figure).number(),
          1e-12 * Math.max(1, before.answer(figure).number()),
          figure.title());
    }
    assertEquals(alkalinity(before), alkalinity(salted), 2e-4 * alkalinity(before));
    assertEquals(
        before.contents().inertCharge().orElseThrow().value(),
        salted.contents().inertCharge().orElseThrow().value());
  }

  @Test
  void aSaltLeavesAnUnknownIonUnknownWithWhatWasAddedAsTheLeast() {
    Water salted = TAP.after(salt(Salt.POTASSIUM_CHLORIDE, mgPerL(50)));
    assertEquals(
        List.of("potassium is not reported; at least 26.2 mg/L was added"),
        salted.potassium().whyUnknown());
    assertTrue(
        salted.notices().stream()
            .map(Notice::text)
            .anyMatch("counted with what was added only: potassium"::equals),
        salted.notices().toString());
    assertFalse(salted.after(dilution(VolumeRatio.of(1))).potassium().isStated());
    assertTrue(salted.pH().isStated());
  }

  @Test
  void carbonatesAddTheirEquivalentsToTheAlkalinity() {
    double before = alkalinity(SOFT);
    Water water = SOFT.after(base(Base.SODIUM_BICARBONATE, mgPerL(84.006)));
    assertEquals(before + 1, alkalinity(water), 1e-3);
    assertEquals(SOFT.totalCarbonDioxide().number() + 1, water.totalCarbonDioxide().number(), 1e-4);
    Water chalked = SOFT.after(salt(Salt.CHALK, mgPerL(50.043)));
    // A part of the carbonate is hydroxide by then; a titration finds the whole equivalent.
    assertTrue(alkalinity(chalked) < before + 0.95 && chalked.pH().number() > 9.5);
    assertEquals(
        SOFT.titrationAlkalinity(pH(4.5)).number() + 1,
        chalked.titrationAlkalinity(pH(4.5)).number(),
        0.01);
  }

  @Test
  void aHydroxideTakesUpCarbonDioxide() {
    Water limed = TAP.after(base(Base.CALCIUM_HYDROXIDE, mgPerL(10)));
    assertEquals(alkalinity(TAP) + 2 * 10 / 74.092, alkalinity(limed), 0.01);
    assertEquals(TAP.totalCarbonDioxide().number(), limed.totalCarbonDioxide().number(), 1e-12);
    assertEquals(
        TAP.solution().with(Base.CALCIUM_HYDROXIDE, mmolPerL(10 / 74.092)).pH().value(),
        limed.pH().number(),
        1e-4);
  }

  @Test
  void whatIsNoIonOfAReportCountsToo() {
    Water water = TAP.after(salt(Salt.SODIUM_ACETATE_TRIHYDRATE, mgPerL(10)));
    assertEquals(
        10 / 136.08,
        water.contents().least(Component.ACETATE).value()
            * water.contents().kilogramsPerLitre()
            * 1000,
        1e-4);
    Salt bisulfate =
        Salt.of(
            "sodium bisulfate", "NaHSO4", Map.of(Component.SODIUM, 1.0, Component.SULFATE, 1.0));
    assertEquals(
        alkalinity(TAP) - 1, alkalinity(TAP.after(salt(bisulfate, mgPerL(120.054)))), 0.01);
    assertThrows(IllegalArgumentException.class, () -> TAP.after(salt(Salt.BORAX, mgPerL(10))));
  }

  /** Salting moves neither the alkalinity that was read nor how well it was read. */
  @Test
  void saltingLeavesTheUncertaintyOfTheAlkalinity() {
    Water water = Waters.uncertain().build().water();
    Water salted =
        water.after(
            salt(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mgPerL(150)), salt(Salt.GYPSUM, mgPerL(200)));
    assertEquals(4, salted.alkalinity().standardUncertainty().orElseThrow(), 0.04);
    assertEquals(
        water.calcium().standardUncertainty().orElseThrow(),
        salted.calcium().standardUncertainty().orElseThrow(),
        1e-9);
    double change =
        salted
            .alkalinity()
            .traced()
            .minus(water.alkalinity().traced())
            .standardUncertainty()
            .orElseThrow();
    assertTrue(change < 0.02 * 4, "u of the change " + change);
  }

  @Test
  void aBlendWithItselfKeepsItsUncertainty() throws ReflectiveOperationException {
    Water water = Waters.uncertain().potassium(mgPerL(2), mgPerL(0.1)).build().water();
    Water blended = water.after(blend(litres(2), water, litres(3)));
    for (Answer<?> before : WaterTest.answers(water)) {
      Answer<?> after = blended.answer(before.figure());
      assertEquals(before.number(), after.number(), 1e-8 * Math.abs(before.number()));
      assertEquals(
          before.standardUncertainty().orElseThrow(),
          after.standardUncertainty().orElseThrow(),
          0.01 * before.standardUncertainty().orElseThrow(),
          before.figure().title());
    }
  }

  /** Acidified, softened, blended, salted, degassed: still a water, answered and judged. */
  @Test
  void aTreatedWaterIsAWaterThatATargetJudges() throws ReflectiveOperationException {
    Target target =
        Target.named("invented liquor")
            .with(atMost(WaterFigures.RESIDUAL_ALKALINITY, ResidualAlkalinity.ofGermanDegrees(2)))
            .with(between(Figures.CALCIUM, mgPerL(20), mgPerL(90)));
    Water full = Waters.uncertain().potassium(mgPerL(2), mgPerL(0.1)).build().water();
    List<Treatment> each =
        List.of(
            acid(Acid.LACTIC, mgPerL(300)),
            base(Base.CALCIUM_HYDROXIDE, mgPerL(120)),
            precipitation(Mineral.CALCITE),
            degassing(mgPerL(5)),
            blend(SOFT, massPercent(40)),
            dilution(VolumeRatio.of(0.25)),
            salt(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mgPerL(50)));
    List<Water> waters = new ArrayList<>();
    waters.add(full.after(each.toArray(new Treatment[0])));
    each.forEach(step -> waters.add(full.after(step)));
    for (Water water : waters) {
      assertEquals("water", water.kind());
      List<Judgement> judged = target.compare(water).judgements();
      assertEquals(2, judged.size());
      assertTrue(judged.stream().noneMatch(one -> one.verdict() == Verdict.UNKNOWN));
      for (Answer<?> answer : WaterTest.answers(water)) {
        assertTrue(answer.isStated(), answer.figure().title() + " " + answer);
        assertTrue(answer.explain().holds(), answer.explain().toString());
      }
    }
    assertFalse(waters.get(0).cautions().isEmpty());
    assertEquals(
        waters.get(0).cautions().size(), waters.get(0).cautions().stream().distinct().count());
    assertSame(full, full.after());
  }

  @Test
  void treatmentsFollowAChangeOfChemistry() {
    Water salted = TAP.after(salt(Salt.GYPSUM, mgPerL(100)));
    Water ideal = salted.under(Chemistry.of(Level.IDEAL));
    assertEquals(
        TAP.under(Chemistry.of(Level.IDEAL)).after(salt(Salt.GYPSUM, mgPerL(100))).pH().number(),
        ideal.pH().number(),
        1e-12);
    // But for the protons that sulfate takes up.
    assertEquals(7.6, ideal.pH().number(), 1e-5);
    assertEquals(salted.calcium().number(), ideal.calcium().number(), 1e-9);
  }

  @Test
  void aWaterWithoutAlkalinityTakesUpSaltsAndKeepsItsBalanceOpen() {
    Water water = WaterReport.reported().calcium(mgPerL(40)).build().water();
    Water salted = water.after(salt(Salt.GYPSUM, gPerL(0.1)));
    assertEquals(40 + 23.28, salted.calcium().number(), 0.01);
    assertEquals(List.of("alkalinity is not reported"), salted.pH().whyUnknown());
    assertFalse(salted.totalCarbonDioxide().isStated());
    assertEquals(
        2 * Ion.CALCIUM.equivalents(salted.calcium().value()).inMilliequivalentsPerLitre() / 2,
        salted.calciumHardness().value().inMilliequivalentsPerLitre(),
        1e-9);
  }
}
