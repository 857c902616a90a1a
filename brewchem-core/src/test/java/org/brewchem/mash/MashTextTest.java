package org.brewchem.mash;

import static org.brewchem.mash.MashAddition.acid;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Severity;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.solution.SolutionCode;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Salt;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Interval;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/** What a mash keeps of what it was made of, and what it says. */
class MashTextTest {

  private static Malt malt(double u) {
    return Malt.stated("own malt", "invented", pH(5.8), u, 45, 0);
  }

  private static Mash mash(double u) {
    return Mash.of(Grist.of(kg(1), malt(u)), Water.pure(), litres(4));
  }

  @Test
  void aMashKeepsItsGristLiquorAndVolume() {
    Grist grist = Grist.of(kg(2), malt(0.02));
    Water liquor = Mashes.alkaline(2);
    Mash mash = Mash.of(grist, liquor, litres(8));
    assertSame(grist, mash.grist());
    assertSame(liquor, mash.liquor());
    assertEquals(litres(8), mash.volume());
    assertEquals("mash", mash.kind());
    assertEquals(celsius(20), mash.contents().temperature());
    assertEquals("2 kg of own malt, in 8 L of liquor: " + mash.pH(), mash.toString());
    assertTrue(mash.toString().contains("pH of the cooled mash 5.9"), mash.toString());
  }

  /** The balance is that of the cooled sample, at whatever temperature the liquor is. */
  @Test
  void theLiquorIsBalancedAtTheTemperatureOfTheReadings() {
    Solution hot = Solution.at(celsius(50)).with(Ion.CHLORIDE, mmolPerL(1));
    Mash mash = Mash.of(Grist.of(kg(1), malt(0)), hot, litres(4));
    assertEquals(celsius(20), mash.contents().temperature());
    // A litre of the hot liquor weighs a hundredth less, and so much less acid is in 4 L.
    assertEquals(5.8 - 4 / 45.0, mash.pH().number(), 3e-3);
  }

  /** Closed stays closed, whatever follows: 2 mEq/L held back keep the mash lower. */
  @Test
  void aClosedMashStaysClosed() {
    Mash open = Mash.of(Grist.of(kg(1), malt(0)), Mashes.alkaline(2), litres(4));
    Mash closed = open.keepingCarbonDioxide();
    double rise = open.pH().number() - closed.pH().number();
    assertTrue(rise > 0.02, "rise " + rise);
    assertEquals(rise, closed.riseOfPHByDegassing().number(), 1e-12);
    Mash other = closed.with(Mashes.alkaline(2));
    assertEquals(closed.pH().number(), other.pH().number(), 1e-12);
    double acid = closed.after(Treatments.solute(Acid.HYDROCHLORIC, mmolPerL(0.1))).pH().number();
    assertTrue(acid < closed.pH().number(), "closed, with acid: " + acid);
    assertTrue(closed.pH().explain().toString().contains("carbon dioxide staying"));
    assertTrue(open.pH().explain().toString().contains("all carbon dioxide gone"));
  }

  /** 45 mEq/pH: 4.5 mmol of strong acid in 4 L, twice, 0.2 of pH; another liquor has none. */
  @Test
  void anotherLiquorLeavesOutWhatWasAdded() {
    Mash mash = mash(0);
    Mash sour = mash.after(Treatments.solute(Acid.HYDROCHLORIC, mmolPerL(4.5 / 4)));
    assertEquals(5.7, sour.pH().number(), 1e-4);
    assertEquals(
        5.6,
        sour.after(Treatments.solute(Acid.HYDROCHLORIC, mmolPerL(4.5 / 4))).pH().number(),
        2e-4);
    assertEquals(5.8, sour.with(Water.pure()).pH().number(), 1e-9);
    assertEquals(List.of(), sour.with(Water.pure()).cautions());
    Mash lactic = mash.after(acid(Mashes.LACTIC_80, mL(1)));
    assertFalse(lactic.cautions().isEmpty());
    assertEquals(lactic.cautions(), lactic.keepingCarbonDioxide().cautions());
    assertTrue(lactic.after(acid(Acid.CITRIC, g(1))).cautions().containsAll(lactic.cautions()));
    Water treated = Water.pure().after(Treatments.acid(Mashes.LACTIC_80, VolumeRatio.of(1e-4)));
    assertEquals(treated.cautions(), mash.with(treated).cautions());
    assertEquals(treated.cautions(), Mash.of(mash.grist(), treated, litres(4)).cautions());
  }

  /** 4 L with half as much water on top are 6 L: an addition counts for all of it. */
  @Test
  void anAdditionCountsTheLiquorThatIsThere() {
    Mash thin = mash(0).after(Treatments.dilution(VolumeRatio.of(0.5)));
    Mash whole = thin.after(acid(Acid.CITRIC, g(3)));
    Mash perLitre = thin.after(Treatments.acid(Acid.CITRIC, mgPerL(500)));
    assertEquals(perLitre.pH().number(), whole.pH().number(), 1e-9);
    assertEquals(litres(4), thin.volume(), "as poured");
    assertTrue(thin.pH().explain().toString().contains("= 6.00 L/kg"));
  }

  @Test
  void theMashDoesNotSayWhatOnlyItsLiquorDoes() {
    assertEquals(
        List.of(
            Figures.CALCIUM.title()
                + " is known of the liquor, not of the mash; ask the liquor for it, and the mash"
                + " for MASH_PH or hotMashPH"),
        Mash.of(Grist.of(kg(1), malt(0)), Mashes.tap(), litres(4))
            .answer(Figures.CALCIUM)
            .whyUnknown());
  }

  @Test
  void theHotMashIsAskedFrom20To78Degrees() {
    assertEquals(5.8, mash(0).hotPH(celsius(20)).number(), 1e-12);
    assertEquals(5.35, mash(0).hotPH(celsius(78)).number(), 1e-12);
    for (double no : new double[] {19.9, 78.1}) {
      String message =
          assertThrows(IllegalArgumentException.class, () -> mash(0).hotPH(celsius(no)))
              .getMessage();
      assertTrue(message.endsWith("20 to 78 °C is allowed"), message);
    }
  }

  /** 0.1 and 0.03 and 0.02: u of the difference 0.1063, so that 0.319 is three of them. */
  @Test
  void aReadingIsSurprisingFromThreeStandardUncertaintiesOn() {
    double u = Math.sqrt(0.1 * 0.1 + 0.03 * 0.03 + 0.02 * 0.02);
    for (double sign : new double[] {-1, 1}) {
      assertEquals(List.of(), mash(0.1).measured(pH(5.8 + sign * 2.99 * u), 0.02).notices());
      assertEquals(
          List.of(
              String.format(
                  Locale.ROOT,
                  "%.2f was read and 5.80 expected: 3.5 standard uncertainties; read again, and"
                      + " look at the electrode, the weights and the lot of the malt",
                  5.8 + sign * 3.5 * u)),
          mash(0.1).measured(pH(5.8 + sign * 3.5 * u), 0.02).notices().stream()
              .map(notice -> notice.text())
              .toList());
    }
    assertEquals(Severity.WARNING, MashCode.SURPRISING_READING.severity());
    assertEquals(Severity.REMARK, MashCode.RATIO_FAR_FROM_READING.severity());
  }

  @Test
  void aMeasuredMashSaysWhatWasExpectedReadAndRemains() {
    Mash.Measured measured = mash(0.1).measured(pH(5.7));
    assertEquals(pH(5.7), measured.read());
    assertEquals(5.8, measured.expected().number(), 1e-12);
    assertEquals(
        "read pH 5.7, expected " + measured.expected() + ", now " + measured.now().pH(),
        measured.toString());
    assertTrue(measured.toString().contains("pH of the cooled mash 5.80"), measured.toString());
    // A reading without a stated u has that of the row, 0.02.
    assertEquals(
        mash(0.1).measured(pH(5.7), 0.02).now().pH().number(), measured.now().pH().number(), 1e-12);
    assertEquals(
        measured.now().grist().malt("own malt").pH().number(),
        measured.grist().malt("own malt").pH().number());
    // Limits belong to what is allowed.
    assertTrue(mash(0.1).measured(pH(5.7), 0.001).now().pH().number() < 5.701);
    assertTrue(mash(0.1).measured(pH(5.7), 0.5).now().pH().number() > 5.79);
  }

  @Test
  void whatIsUnknownIsNotMeasured() {
    Water open = WaterReport.reported().calcium(mgPerL(50)).magnesium(mgPerL(5)).build().water();
    Mash mash = Mash.of(Grist.of(kg(1), malt(0.1)), open, litres(4));
    assertThrows(UnknownFigureException.class, () -> mash.measured(pH(5.7)));
    assertThrows(UnknownFigureException.class, mash::interval);
    assertThrows(IllegalStateException.class, mash::balance);
    Water unstated =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .magnesium(mgPerL(11), mgPerL(1))
            .alkalinityAsCaCO3(mgPerL(215), mgPerL(4))
            .pH(pH(7.6), 0.05)
            .build()
            .water();
    assertEquals(
        "mash pH: the uncertainty of calcium is not stated; state it, or make the water of the"
            + " report withAssumedUncertainties()",
        assertThrows(IllegalStateException.class, () -> mash.with(unstated).interval())
            .getMessage());
  }

  /**
   * Nothing uncertain: one number. u 0.1: 1.96 times to both sides. Of 10 000 draws an end has a
   * standard error of sqrt(0.025 x 0.975) / 100 / 0.0584 = 0.027 standard deviations, and three of
   * them are allowed, 0.008.
   */
  @Test
  void theIntervalIsThatOfTheSources() {
    Interval none = mash(0).interval();
    assertEquals(5.8, none.lower(), 1e-12);
    assertEquals(5.8, none.upper(), 1e-12);
    assertEquals(0.95, none.coverageProbability());
    Interval own = mash(0.1).interval();
    assertEquals(5.8 - 0.196, own.lower(), 0.008);
    assertEquals(5.8 + 0.196, own.upper(), 0.008);
    assertEquals(own, mash(0.1).interval(), "the same each time");
  }

  /**
   * The logarithm of the factor normal with 0.4: 1 mEq/L at 4 L/kg on 40 mEq/(kg pH) is 0.1 of pH
   * times e^(±1.96 x 0.4), 0.457 to 2.19. An end may be off by 0.08 x 0.4 of itself.
   */
  @Test
  void theIntervalOfALognormalFactorIsLopsided() {
    Water hard =
        Water.pure()
            .after(
                Treatments.solute(Component.CALCIUM, mmolPerL(1.75)),
                Treatments.solute(Component.CHLORIDE, mmolPerL(3.5)));
    Grist grist = Grist.of(kg(1), Mashes.exact(5.8, 40)).withKolbachFactor(2, 0.4);
    Interval interval = Mash.of(grist, hard, litres(4)).interval();
    assertEquals(5.8 - 0.2 * Math.exp(0.784), interval.lower(), 0.014);
    assertEquals(5.8 - 0.2 * Math.exp(-0.784), interval.upper(), 0.004);
    // Without effect there is nothing to draw.
    Interval without =
        Mash.of(Grist.of(kg(1), malt(0.1)).withKolbachFactor(0, 0), hard, litres(4)).interval();
    assertEquals(5.8 - 0.196, without.lower(), 0.008);
    assertEquals(5.8 + 0.196, without.upper(), 0.008);
  }

  /** Chalk that water cannot hold meets the acid of the grain in a mash. */
  @Test
  void chalkIsJudgedInTheLiquorAndNotInTheMash() {
    Treatment chalk = Treatments.salt(Salt.CHALK, mgPerL(300));
    Water liquor = Mashes.tap();
    assertTrue(isSupersaturated(liquor.after(chalk).pH()));
    assertFalse(isSupersaturated(mash(0).with(liquor).after(chalk).pH()));
    Treatment gypsum = Treatments.salt(Salt.GYPSUM, mgPerL(9000));
    assertTrue(isSupersaturated(mash(0).with(liquor).after(gypsum).pH()));
  }

  private static boolean isSupersaturated(Answer<?> answer) {
    return answer.notices().stream()
        .anyMatch(notice -> notice.code() == SolutionCode.SUPERSATURATED);
  }

  /** 45 mEq/kg to a pH: 4 L/kg with 9 mEq/L lower a mash of pH 5.8 by 0.8, with 20 by 1.8. */
  @Test
  void oneCapacityIsNotBelievedFarFromWhereItWasRead() {
    assertFalse(isBeyondItsData(Mash.of(Grist.of(kg(1), malt(0.02)), Mashes.acid(9), litres(4))));
    Mash far = Mash.of(Grist.of(kg(1), malt(0.02)), Mashes.acid(20), litres(4));
    assertTrue(isBeyondItsData(far));
    assertTrue(
        far.pH().notices().toString().contains("1.8 from that of own malt in distilled water"));
  }

  private static boolean isBeyondItsData(Mash mash) {
    return mash.pH().notices().stream()
        .anyMatch(notice -> notice.code() == MashCode.BEYOND_MALT_DATA);
  }
}
