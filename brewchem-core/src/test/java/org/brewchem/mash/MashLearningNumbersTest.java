package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.substance.Component;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/** What one reading teaches, by the normal equations of one number and by hand. */
class MashLearningNumbersTest {

  private static final double BREW = 0.03;
  private static final double READING = 0.02;

  private static Malt malt(String name, double u) {
    return Malt.stated(name, "invented", pH(5.8), u, 45, 0);
  }

  /**
   * Half and half, u 0.1 and 0.2: the pH moves by 0.05, 0.1 and by 0.03 of the brew. 0.1 less than
   * expected is shared in proportion to what each could have made.
   */
  @Test
  void aReadingIsSharedByWhatEachMaltCouldHaveMade() {
    Grist grist = Grist.of(kg(2), malt("first", 0.1)).and(kg(2), malt("second", 0.2));
    Mash mash = Mash.of(grist, Water.pure(), litres(16));
    Mash.Measured measured = mash.measured(pH(5.7), READING);
    double malts = 0.05 * 0.05 + 0.1 * 0.1;
    double all = malts + BREW * BREW + READING * READING;
    Malt first = measured.grist().malt("first");
    Malt second = measured.grist().malt("second");
    assertEquals(5.8 - 0.1 * 0.1 * 0.05 / all, first.pH().number(), 1e-6);
    assertEquals(5.8 - 0.1 * 0.2 * 0.1 / all, second.pH().number(), 1e-6);
    assertEquals(0.1 * Math.sqrt(1 - 0.05 * 0.05 / all), u(first), 1e-6);
    assertEquals(0.2 * Math.sqrt(1 - 0.1 * 0.1 / all), u(second), 1e-6);
    // The next brew of the same grist: what is left of the malts, and its own scatter.
    double left = malts - malts * malts / all;
    Mash next = Mash.of(measured.grist(), Water.pure(), litres(16));
    assertEquals(
        Math.sqrt(left + BREW * BREW), next.pH().standardUncertainty().orElseThrow(), 1e-6);
    assertEquals(45, first.bufferCapacity().number(), 1e-9, "a capacity known exactly");
    // Each of both, and this brew: three sources of the posterior.
    List<String> names = measured.now().pH().traced().sources().stream().map(Source::name).toList();
    assertEquals(
        List.of("pH of first, as learned", "pH of second, as learned", "brew to brew, as learned"),
        names.stream().sorted(Comparator.comparing(name -> order(name))).toList());
  }

  private static int order(String name) {
    return name.contains("first") ? 0 : name.contains("second") ? 1 : 2;
  }

  private static double u(Malt malt) {
    return malt.pH().standardUncertainty().orElseThrow();
  }

  /** Two readings of one malt: the mean of both with the prior, weighted by 1/u². */
  @Test
  void asManyReadingsAsThereAreWeighIn() {
    Mash first = Mash.of(Grist.of(kg(1), malt("own malt", 0.1)), Water.pure(), litres(4));
    Grist taught = first.measured(pH(5.7), READING).grist();
    Mash second = Mash.of(taught, Water.pure(), litres(4));
    Mash.Measured measured = second.measured(pH(5.6), READING);
    double of = BREW * BREW + READING * READING;
    double weights = 1 / 0.01 + 2 / of;
    Malt malt = measured.grist().malt("own malt");
    assertEquals((5.8 / 0.01 + 5.7 / of + 5.6 / of) / weights, malt.pH().number(), 1e-6);
    assertEquals(1 / Math.sqrt(weights), u(malt), 1e-6);
    assertEquals(List.of(Map.of("own malt", 1.0)), malt.brews(), "the same shares twice");
    // Of the scatter of the first brew nothing goes into the second; the name is not repeated.
    assertTrue(
        malt.curve().pH().sources().stream()
            .noneMatch(source -> source.name().contains("as learned, as learned")));
    assertEquals("pH of own malt, as learned", nameOfFirst(malt));
  }

  private static String nameOfFirst(Malt malt) {
    return malt.curve().pH().sources().get(0).name();
  }

  @Test
  void everyBrewThatTaughtIsRemembered() {
    Grist grist = Grist.of(kg(1), malt("first", 0.1)).and(kg(3), malt("second", 0.2));
    Mash.Measured measured = Mash.of(grist, Water.pure(), litres(16)).measured(pH(5.7), READING);
    assertEquals(
        List.of(MashCode.MALTS_UNDECIDED),
        measured.notices().stream().map(notice -> notice.code()).toList());
    Grist once = measured.grist();
    Grist other = Grist.of(kg(3), once.malt("first")).and(kg(1), once.malt("second"));
    Grist twice = Mash.of(other, Water.pure(), litres(16)).measured(pH(5.7), READING).grist();
    assertEquals(
        List.of(Map.of("first", 0.25, "second", 0.75), Map.of("first", 0.75, "second", 0.25)),
        twice.malt("second").brews());
    // Shares of 0.25 and 0.75 tell two malts apart, as their notices do.
    assertEquals(List.of(), Mash.of(twice, Water.pure(), litres(16)).pH().notices());
    assertEquals(
        List.of(
            "the measured brews hardly varied the shares of first, second: what each of them"
                + " brings is undecided, and only grists like those brewed are known better"),
        Mash.of(once, Water.pure(), litres(16)).pH().notices().stream()
            .map(notice -> notice.text())
            .toList());
  }

  /**
   * A capacity by its logarithm. 4.5 mEq/L at 4 L/kg on 45 mEq/(kg pH) are 0.4 of pH; with u 0.1 of
   * the logarithm the pH moves by 0.04, so that a reading 0.05 higher leaves 0.04² of 0.04² + 0.03²
   * + 0.02² of it, to first order.
   */
  @Test
  void aCapacityIsLearnedByItsLogarithm() {
    Malt malt = Malt.stated("own malt", "invented", pH(5.8), 0, 45, 4.5);
    Mash mash = Mash.of(Grist.of(kg(1), malt), Mashes.acid(4.5), litres(4));
    double expected = mash.pH().number();
    Mash.Measured measured = mash.measured(pH(expected + 0.01), READING);
    double share = 0.0016 / (0.0016 + BREW * BREW + READING * READING);
    Malt learned = measured.grist().malt("own malt");
    // 0.01 of 0.4 of pH: the slope is that much flatter.
    assertEquals(45 * Math.exp(0.01 * share / 0.4), learned.bufferCapacity().number(), 0.02);
    assertEquals(
        0.1 * Math.sqrt(1 - share),
        learned.bufferCapacity().standardUncertainty().orElseThrow()
            / learned.bufferCapacity().number(),
        1e-3);
    assertEquals(5.8, learned.pH().number(), 1e-9, "a pH known exactly");
  }

  /** Where the reading leads, the slopes are those there: a root of the whole condition. */
  @Test
  void aReadingFarOffIsFoundWithTheSlopesThatItLeadsTo() {
    Malt malt = Malt.stated("own malt", "invented", pH(5.8), 0, 45, 9);
    Mash mash = Mash.of(Grist.of(kg(1), malt), Mashes.acid(9), litres(4));
    double expected = mash.pH().number();
    Mash.Measured measured = mash.measured(pH(expected + 0.25), READING);
    // z of the logarithm, 0.2 each: the pH is 5.8 - 0.8 e^(0.2 z), and of the brew 0.03 b.
    double z = 0;
    for (int i = 0; i < 200; i++) {
      double v = -0.2 * 0.8 * Math.exp(0.2 * z);
      double without = 5.8 - 0.8 * Math.exp(0.2 * z) - (5.8 - 0.8);
      z = v * (0.25 - without + v * z) / (v * v + BREW * BREW + READING * READING);
    }
    Malt learned = measured.grist().malt("own malt");
    assertEquals(45 * Math.exp(-0.2 * z), learned.bufferCapacity().number(), 0.05);
  }

  /** The factor by its logarithm too; one that is 0 stays 0 and the malt learns all. */
  @Test
  void aFactorIsLearnedUnlessThereIsNone() {
    Water hard =
        Water.pure()
            .after(
                Treatments.solute(Component.CALCIUM, mmolPerL(1.75)),
                Treatments.solute(Component.CHLORIDE, mmolPerL(3.5)));
    Grist grist = Grist.of(kg(1), malt("own malt", 0)).withKolbachFactor(2, 0.4);
    Mash mash = Mash.of(grist, hard, litres(4));
    // 2 mEq/L at 4 L/kg on 45: 8 / 45 of pH, and 0.4 of that for one u.
    double v = 0.4 * 8 / 45;
    double share = v * v / (v * v + BREW * BREW + READING * READING);
    Mash.Measured measured = mash.measured(pH(mash.pH().number() + 0.01), READING);
    assertEquals(
        2 * Math.exp(-0.01 * share / (8 / 45.0)), measured.grist().kolbachFactor().value(), 0.003);
    // Read as expected, it is only known better.
    Mash.Measured same = mash.measured(mash.pH().value(), READING);
    assertEquals(2, same.grist().kolbachFactor().value(), 1e-12);
    assertEquals(
        2 * 0.4 * Math.sqrt(1 - share),
        same.grist().kolbachFactor().standardUncertainty().orElseThrow(),
        2e-3);
    Grist none = Grist.of(kg(1), malt("own malt", 0.1)).withKolbachFactor(0, 0);
    Mash without = Mash.of(none, hard, litres(4));
    Mash.Measured taught = without.measured(pH(without.pH().number() - 0.2), READING);
    assertEquals(0, taught.grist().kolbachFactor().value());
    assertEquals(5.8 - 0.2 * 0.01 / 0.0113, taught.grist().malt("own malt").pH().number(), 1e-5);
  }

  /**
   * A precise reading far off, where the slopes change on the way. In standard uncertainties what
   * is learned is z of the capacity and b of the brew, each in proportion to what moves the pH: z =
   * v d / u² of what is left, d. A search that has settled, its next step worth 1e-8, leaves of
   * either at most 1e-4 times the root of 1 + v² / u².
   */
  @Test
  void whatIsLearnedIsInProportionToWhatItCouldHaveMade() {
    Malt malt = Malt.stated("own malt", "invented", pH(5.8), 0, 45, 9);
    Mash mash = Mash.of(Grist.of(kg(1), malt), Mashes.acid(9), litres(4));
    MashState state =
        new MashState(mash.grist(), mash.contents(), Traced.exact(4), Optional.empty());
    double u = 0.001;
    for (double off = -0.4; off < 0.41; off += 0.02) {
      double read = mash.pH().number() + off;
      MashState after = new MashLearning(state, true).after(read, u);
      double capacity = after.grist().malts().get(0).bufferCapacity().number();
      double z = -Math.log(capacity / 45) / 0.2;
      double b = after.brew().orElseThrow().value() / BREW;
      double left = read - after.cooled(MashFigures.MASH_PH, true).found().orElseThrow().value();
      // The pH is 5.8 - 36 / capacity, but for the free protons: a difference of the whole.
      double v = (pHOf(capacity * Math.exp(-2e-5)) - pHOf(capacity * Math.exp(2e-5))) / 2e-4;
      double settled = 1e-4 * Math.sqrt(1 + (v * v + BREW * BREW) / (u * u));
      assertEquals(v * left / (u * u), z, settled, "capacity, " + off);
      assertEquals(BREW * left / (u * u), b, settled, "brew, " + off);
    }
  }

  private static double pHOf(double capacity) {
    return Mashes.mash(Mashes.exact(5.8, capacity), Mashes.acid(9), 4).pH().number();
  }

  /** What nothing is taught about makes the reading say less: it counts beside its own u. */
  @Test
  void anUncertainLiquorTakesItsShareOfTheReading() {
    Water vague =
        WaterReport.reported()
            .calcium(mgPerL(0), mgPerL(0))
            .magnesium(mgPerL(0), mgPerL(0))
            .alkalinityAsCaCO3(mgPerL(100), mgPerL(25))
            .pH(pH(7.6), 0)
            .build()
            .water();
    Grist grist = Grist.of(kg(1), malt("own malt", 0.1)).withKolbachFactor(0, 0);
    Mash mash = Mash.of(grist, vague, litres(4));
    double u = mash.pH().standardUncertainty().orElseThrow();
    // 25 mg/L as CaCO3 are 0.5 mEq/L: 4 L of them on 45 mEq/pH.
    assertEquals(Math.hypot(0.1, 0.5 * 4 / 45), u, 1e-3);
    Mash.Measured measured = mash.measured(pH(mash.pH().number() + 0.1), READING);
    Malt learned = measured.grist().malt("own malt");
    double all = u * u + BREW * BREW + READING * READING;
    assertEquals(5.8 + 0.1 * 0.01 / all, learned.pH().number(), 1e-4);
    assertEquals(0.1 * Math.sqrt(1 - 0.01 / all), u(learned), 1e-4);
  }

  /** v is 0.1 of the malt and 0.03 of the brew; k = 1 - sqrt(r / (v v + r)). */
  @Test
  void aReadingThatHardlyTeachesLeavesEachNumberOnItsOwnSource() {
    Mash mash = Mash.of(Grist.of(kg(1), malt("own malt", 0.1)), Water.pure(), litres(4));
    double all = 0.1 * 0.1 + BREW * BREW;
    double k = 1 - Math.sqrt(0.25 / (all + 0.25));
    Traced learned = mash.measured(pH(5.8), 0.5).grist().malt("own malt").pH().traced();
    List<Source> sources = learned.sources();
    assertEquals("pH of own malt, as learned", sources.get(0).name());
    assertEquals(0.1 - k * 0.1 * 0.01 / all, learned.sensitivity(sources.get(0)), 1e-9);
    assertEquals("brew to brew, as learned", sources.get(1).name());
    assertEquals(-k * 0.01 * BREW / all, learned.sensitivity(sources.get(1)), 1e-9);
  }

  /** All known exactly but for the brew: its reading is the brew's own difference. */
  @Test
  void withNothingToLearnAboutTheMaltsTheBrewDiffers() {
    Mash mash = Mash.of(Grist.of(kg(1), malt("own malt", 0)), Water.pure(), litres(4));
    Mash.Measured measured = mash.measured(pH(5.77), READING);
    assertEquals(5.8, measured.grist().malt("own malt").pH().number(), 1e-12);
    // 0.03² of 0.03² + 0.02² of 0.03.
    assertEquals(5.8 - 0.03 * 9 / 13, measured.now().pH().number(), 1e-9);
    assertEquals(
        BREW * READING / Math.hypot(BREW, READING),
        measured.now().pH().standardUncertainty().orElseThrow(),
        1e-9);
    // As it was expected, it teaches by being known.
    Mash.Measured same = mash.measured(pH(5.8), READING);
    assertEquals(5.8, same.now().pH().number(), 1e-12);
    assertEquals(
        BREW * READING / Math.hypot(BREW, READING),
        same.now().pH().standardUncertainty().orElseThrow(),
        1e-9);
  }
}
