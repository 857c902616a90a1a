package org.brewchem.mash;

import static org.brewchem.mash.MaltKind.CARAMEL;
import static org.brewchem.mash.MaltKind.MUNICH;
import static org.brewchem.mash.MaltKind.PALE;
import static org.brewchem.mash.MaltKind.WHEAT;
import static org.brewchem.mash.MashAddition.acid;
import static org.brewchem.mash.MashFigures.MASH_PH;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mLPerHL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Origin;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Component;
import org.brewchem.substance.Salt;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Interval;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MashTest {

  /** The proposal of the assumed rows: what the default distributions give, printed to 0.01. */
  @ParameterizedTest
  @CsvSource({
    "-10, 6.03, 5.82, 6.25",
    "0, 5.80, 5.60, 6.00",
    "10, 5.57, 5.35, 5.78",
    "20, 5.34, 5.06, 5.59"
  })
  void theAssumedPaleMaltGivesWhatItsDistributionsDo(
      double acid, double value, double lower, double upper) {
    Mash mash = Mashes.mash(Malt.assumed(PALE), Mashes.acid(acid / 4), 4);
    assertEquals(value, mash.pH().number(), 0.02);
    Interval interval = mash.interval();
    assertEquals(lower, interval.lower(), 0.02);
    assertEquals(upper, interval.upper(), 0.02);
    double half = mash.pH().expanded().orElseThrow().halfWidth();
    assertEquals(lower, mash.pH().number() - half, 0.02, "to first order");
    assertEquals(upper, mash.pH().number() + half, 0.02, "to first order");
  }

  /** Proton balance, computed: rows of dpH/d alkalinity at 3, 4 and 5 L/kg. */
  @ParameterizedTest
  @CsvSource({
    "3, 30, 0.100", "3, 45, 0.067", "3, 65, 0.046",
    "4, 30, 0.133", "4, 45, 0.089", "4, 65, 0.062",
    "5, 30, 0.167", "5, 45, 0.111", "5, 65, 0.077"
  })
  void alkalinityRaisesTheMashByRatioOverCapacity(double ratio, double capacity, double printed) {
    Malt malt = Mashes.exact(5.8, capacity);
    double rise =
        Mashes.mash(malt, Mashes.alkaline(1), ratio).pH().number()
            - Mashes.mash(malt, Mashes.alkaline(0), ratio).pH().number();
    assertEquals(ratio / capacity, rise, 0.02 * ratio / capacity);
    assertEquals(printed, rise, 0.02 * printed);
  }

  /** Proton balance, computed: 4 L/kg, 45 mEq/(kg pH); printed to 0.01 of pH. */
  @ParameterizedTest
  @CsvSource({
    "5.8, 1, 0.02", "5.8, 3, 0.08", "5.8, 5, 0.16",
    "5.4, 1, 0.01", "5.4, 3, 0.04", "5.4, 5, 0.09"
  })
  void carbonDioxideThatStaysKeepsTheMashLower(double malt, double alkalinity, double printed) {
    Mash mash = Mashes.mash(Mashes.exact(malt, 45), Mashes.alkaline(alkalinity), 4);
    double rise = mash.riseOfPHByDegassing().number();
    assertEquals(printed, rise, 0.01);
    assertEquals(rise, mash.pH().number() - mash.keepingCarbonDioxide().pH().number(), 1e-12);
    assertTrue(mash.riseOfPHByDegassing().explain().holds());
  }

  @Test
  void distilledWaterGivesTheMaltItsOwnPHAtTheRatioOfItsReading() {
    assertEquals(5.62, Mashes.mash(Mashes.exact(5.62, 40), Water.pure(), 4).pH().number(), 1e-12);
    // The free protons of another ratio, nearly nothing.
    assertEquals(4.70, Mashes.mash(Mashes.exact(4.70, 40), Water.pure(), 8).pH().number(), 0.003);
  }

  @Test
  void aMaltEnteredTwiceGivesTheSameInterval() {
    for (Malt malt : List.of(Malt.assumed(CARAMEL), Mashes.exact(5.7, 40))) {
      Mash once = Mash.of(Grist.of(kg(150), malt), Mashes.tap(), hL(6));
      Mash twice = Mash.of(Grist.of(kg(50), malt).and(kg(100), malt), Mashes.tap(), hL(6));
      assertEquals(once.pH().number(), twice.pH().number(), 1e-12);
      assertEquals(
          once.pH().standardUncertainty().orElseThrow(),
          twice.pH().standardUncertainty().orElseThrow(),
          1e-12);
      assertEquals(once.interval().lower(), twice.interval().lower(), 1e-9);
      assertEquals(once.interval().upper(), twice.interval().upper(), 1e-9);
    }
    assertEquals(
        1, Grist.of(kg(1), Malt.assumed(PALE)).and(kg(2), Malt.assumed(PALE)).malts().size());
  }

  @Test
  void maltsOfDifferentKindsErrIndependently() {
    Malt pale = Malt.assumed(PALE);
    double alone = uOf(Mash.of(Grist.of(kg(2), pale), Water.pure(), hL(0.08)));
    double mixed =
        uOf(Mash.of(Grist.of(kg(1), pale).and(kg(1), Malt.assumed(WHEAT)), Water.pure(), hL(0.08)));
    assertTrue(mixed < 0.85 * alone, mixed + " of " + alone);
  }

  private static double uOf(Mash mash) {
    return mash.pH().standardUncertainty().orElseThrow();
  }

  /** Kolbach's term: factor (Ca / 3.5 + Mg / 7), mEq per litre of liquor, as strong acid. */
  @Test
  void calciumAndMagnesiumSetFreeAcidByKolbachsTerm() {
    Malt malt = Mashes.exact(5.8, 45);
    Water hard =
        Water.pure()
            .after(
                Treatments.solute(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mmolPerL(1.75)),
                Treatments.solute(Component.MAGNESIUM, mmolPerL(0.7)),
                Treatments.solute(Component.CHLORIDE, mmolPerL(1.4)));
    Mash mash = Mashes.mash(malt, hard, 4);
    assertEquals(1.2, mash.kolbachAcid().number(), 1e-12);
    assertEquals(5.8 - 1.2 * 4 / 45, mash.pH().number(), 1e-4);
    Grist without = mash.grist().withKolbachFactor(0, 0);
    assertEquals(5.8, Mash.of(without, hard, mash.volume()).pH().number(), 1e-4);
    Grist twice = mash.grist().withKolbachFactor(2, 0.1);
    assertEquals(5.8 - 2.4 * 4 / 45, Mash.of(twice, hard, mash.volume()).pH().number(), 1e-4);
    assertEquals(
        2.4 * 4 / 45 * 0.1,
        Mash.of(twice, hard, mash.volume()).pH().standardUncertainty().orElseThrow(),
        1e-5);
  }

  /** Two malts and an alkaline liquor by arithmetic: straight curves have a closed form. */
  @Test
  void aGristIsTheSumOfItsMalts() {
    Malt first = Malt.stated("first", "invented", pH(5.8), 0, 50, 0);
    Malt second = Malt.stated("second", "invented", pH(5.1), 0, 35, 0);
    Grist grist = Grist.of(kg(170), first).and(kg(30), second);
    double capacity = 170 * 50 + 30 * 35;
    double expected = (170 * 50 * 5.8 + 30 * 35 * 5.1 + 3 * 700) / capacity;
    assertEquals(expected, Mash.of(grist, Mashes.alkaline(3), hL(7)).pH().number(), 3e-4);
  }

  @Test
  void aMashSaysWhatItRestsOn() {
    Grist grist = Grist.of(kg(200), Malt.assumed(PALE)).and(kg(20), Malt.assumed(CARAMEL));
    Answer<PH> answer = Mash.of(grist, Mashes.tap(), hL(8)).pH();
    List<String> assumed =
        answer.notices().stream()
            .filter(notice -> notice.code() == MashCode.ASSUMED_MALT)
            .map(notice -> notice.subject())
            .toList();
    assertEquals(List.of("pale malt", "caramel malt"), assumed);
    assertTrue(answer.toString().startsWith("pH of the cooled mash 5.9"), answer.toString());
    assertTrue(answer.explain().holds());
    assertTrue(answer.explain().toString().contains("sum of the charges"));
    Mash own = Mash.of(Grist.of(kg(2), Mashes.exact(5.7, 40)), Water.pure(), hL(0.08));
    assertTrue(own.notices().stream().noneMatch(n -> n.code() == MashCode.ASSUMED_MALT));
  }

  @Test
  void theHotMashReadsLowerAndSaysThatItIsHot() {
    Mash mash = Mash.of(Grist.of(kg(1), Malt.assumed(PALE)), Water.pure(), hL(0.04));
    assertEquals(5.80 - 0.35, mash.hotPH(celsius(65)).number(), 1e-9);
    assertEquals(5.80 - 0.45, mash.hotPH(celsius(78)).number(), 1e-9);
    assertEquals(5.80, mash.hotPH(celsius(20)).number(), 1e-9);
    assertEquals(5.80 - 0.4, mash.hotPH(celsius(71.5)).number(), 1e-9);
    assertTrue(mash.hotPH(celsius(65)).toString().startsWith("pH in the mash at 65 °C 5.45"));
    // 0.2 to 0.4 in print, anywhere in between.
    double u = mash.hotPH(celsius(65)).standardUncertainty().orElseThrow();
    assertEquals(Math.hypot(0.1, 0.2 / Math.sqrt(12)), u, 1e-4);
    assertThrows(IllegalArgumentException.class, () -> mash.hotPH(celsius(90)));
    assertThrows(IllegalArgumentException.class, () -> mash.hotPH(celsius(10)));
  }

  @Test
  void whatTheLiquorDoesNotTellTheMashDoesNotGuess() {
    Grist grist = Grist.of(kg(1), Malt.assumed(PALE));
    Water noCalcium =
        WaterReport.reported()
            .magnesium(mgPerL(5), mgPerL(1))
            .alkalinityAsCaCO3(mgPerL(50), mgPerL(2))
            .pH(pH(7.5), 0.1)
            .build()
            .water();
    Answer<PH> answer = Mash.of(grist, noCalcium, hL(0.04)).pH();
    assertFalse(answer.isStated());
    assertTrue(answer.whyUnknown().get(0).startsWith("calcium of the liquor is not known"));
    Water open = WaterReport.reported().calcium(mgPerL(50)).magnesium(mgPerL(5)).build().water();
    assertFalse(Mash.of(grist, open, hL(0.04)).pH().isStated());
    Mash mash = Mash.of(grist, Mashes.tap(), hL(0.04));
    Answer<PH> unlabelled = mash.answer(Figures.PH_VALUE);
    assertFalse(unlabelled.isStated());
    assertTrue(unlabelled.toString().contains("ask the liquor"), unlabelled.toString());
    assertFalse(mash.answer(Figures.CALCIUM).isStated());
    assertFalse(Mashes.tap().answer(MASH_PH).isStated());
  }

  @Test
  void anInputWithoutUncertaintyIsNamed() {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .magnesium(mgPerL(11), mgPerL(1))
            .alkalinityAsCaCO3(mgPerL(215), mgPerL(4))
            .pH(pH(7.6), 0.05)
            .build()
            .water();
    Mash mash = Mashes.mash(Malt.assumed(PALE), water, 4);
    assertTrue(mash.pH().standardUncertainty().isEmpty());
    assertTrue(mash.pH().uncertaintiesMissing().get(0).startsWith("calcium"));
    assertThrows(IllegalStateException.class, mash::interval);
  }

  @Test
  void acidIntoTheMashIsAcidPerLitreOfLiquor() {
    Grist grist = Grist.of(kg(200), Malt.assumed(PALE));
    Mash mash = Mash.of(grist, Mashes.tap(), hL(8));
    Mash whole = mash.after(acid(Mashes.LACTIC_80, mL(400)));
    Mash perLiquor = mash.after(Treatments.acid(Mashes.LACTIC_80, mLPerHL(50)));
    assertEquals(perLiquor.pH().number(), whole.pH().number(), 1e-12);
    assertTrue(whole.pH().number() < mash.pH().number() - 0.3);
    assertTrue(whole.cautions().stream().anyMatch(c -> c.hazard() == Hazard.ACID));
    // In two portions it is the same mash, though the liquor has grown in between.
    Mash portions = mash.after(acid(Mashes.LACTIC_80, mL(150)), acid(Mashes.LACTIC_80, mL(250)));
    assertEquals(whole.pH().number(), portions.pH().number(), 1e-9);
  }

  @Test
  void waterIntoTheMashThinsIt() {
    Malt malt = Mashes.exact(5.8, 45);
    Mash thin = Mashes.mash(malt, Mashes.alkaline(2), 4);
    // The same bicarbonate in half as much again of liquor.
    Mash thinner = thin.after(Treatments.dilution(org.brewchem.quantity.VolumeRatio.of(0.5)));
    assertEquals(thin.pH().number(), thinner.pH().number(), 1e-3);
    assertEquals(
        Mashes.mash(malt, Mashes.alkaline(2 / 1.5), 6).pH().number(), thinner.pH().number(), 1e-4);
  }

  /** A mash has no pH of its liquor; what is delivered at the pH that it has is asked for by it. */
  @Test
  void whatADoseDeliversIsUnknownWithItsReason() {
    Mash mash = Mashes.mash(Mashes.exact(5.8, 43), Mashes.tap(), 4);
    Dose<Mash> dose = mash.dose(Mashes.LACTIC_80).to(MASH_PH, pH(5.4));
    Answer<Double> delivered = dose.delivered();
    assertFalse(delivered.isStated());
    assertEquals(mash.answer(Figures.PH_VALUE).whyUnknown(), delivered.whyUnknown());
    assertTrue(delivered.whyUnknown().get(0).contains("ask the liquor"), delivered.toString());
    assertEquals(Map.of("at", "the pH after the dose"), delivered.figure().parameters());
    assertTrue(delivered.explain().toString().contains("moles added"));
    // Lactic acid has a pKa of 3.86: at pH 5.4 some 97 % of it are dissociated.
    assertEquals(0.97, dose.delivered(pH(5.4)).number(), 0.02);
  }

  @Test
  void aDoseBringsTheMashToItsTarget() {
    Grist grist = Grist.of(kg(200), Malt.assumed(PALE)).and(kg(20), Malt.assumed(MUNICH));
    Mash mash = Mash.of(grist, Mashes.tap(), hL(8));
    Dose<Mash> dose = mash.dose(Mashes.LACTIC_80).to(MASH_PH, pH(5.4));
    assertEquals(5.4, dose.after().pH().number(), 1e-8);
    assertTrue(dose.explain().holds());
    assertEquals(
        5.4,
        mash.after(acid(Mashes.LACTIC_80, dose.into(hL(8)).volume().orElseThrow())).pH().number(),
        1e-8);
    double u = dose.answer(Dose.AMOUNT).standardUncertainty().orElseThrow();
    assertTrue(u > 0.2 * dose.answer(Dose.AMOUNT).number(), "as wide as the malts");
    assertTrue(dose.notices().stream().anyMatch(n -> n.code() == MashCode.ASSUMED_MALT));
    assertTrue(
        mash.dose(Mashes.LACTIC_80).to(Constraint.atMost(MASH_PH, pH(5.5))).notices().stream()
            .anyMatch(n -> n.text().contains("half of the outcomes")));
  }

  /** Each source by a difference of the whole calculation. */
  @Test
  void theUncertaintyIsThatOfDifferences() {
    double step = 1e-4;
    double base = stated(5.75, 42, 215).pH().number();
    double byPH = (stated(5.75 + step, 42, 215).pH().number() - base) / step * 0.04;
    double byCapacity = (stated(5.75, 42 + step, 215).pH().number() - base) / step * 5;
    double byAlkalinity = (stated(5.75, 42, 215 + step).pH().number() - base) / step * 4;
    Mash mash = stated(5.75, 42, 215);
    Answer<PH> answer = mash.pH();
    assertEquals(Math.abs(byPH), part(answer, "pH of own malt"), 1e-4);
    assertEquals(Math.abs(byCapacity), part(answer, "capacity of own malt"), 1e-4);
    assertEquals(Math.abs(byAlkalinity), part(answer, "alkalinity"), 1e-4);
  }

  private static double part(Answer<PH> answer, String name) {
    return answer.traced().parts().entrySet().stream()
        .filter(entry -> entry.getKey().name().contains(name))
        .mapToDouble(entry -> Math.abs(entry.getValue()))
        .findFirst()
        .orElseThrow();
  }

  private static Mash stated(double pH, double capacity, double alkalinity) {
    Malt malt = Malt.stated("own malt", "invented", pH(pH), 0.04, capacity, 5);
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(92), mgPerL(3))
            .magnesium(mgPerL(11), mgPerL(1))
            .sodium(mgPerL(19), mgPerL(1))
            .chloride(mgPerL(31), mgPerL(1))
            .sulfate(mgPerL(45), mgPerL(2))
            .alkalinityAsCaCO3(mgPerL(alkalinity), mgPerL(4))
            .pH(pH(7.6), 0.05)
            .build()
            .water();
    return Mashes.mash(malt, water, 3.7);
  }

  @Test
  void aWorkSpaceFindsWhatTheMashDoes() {
    Mash mash = Mash.of(Grist.of(kg(220), Malt.assumed(PALE)), Mashes.tap(), hL(8));
    MashBalance balance = mash.balance();
    assertEquals(mash.pH().number(), balance.pH(), 1e-12);
    int calcium = balance.liquor().indexOf(Component.CALCIUM);
    double had = balance.liquor().total(calcium);
    balance.liquor().setTotal(calcium, had + 1e-3);
    int chloride = balance.liquor().indexOf(Component.CHLORIDE);
    balance.liquor().setTotal(chloride, balance.liquor().total(chloride) + 2e-3);
    double perLitre = mash.contents().kilogramsPerLitre();
    Mash salted =
        mash.after(Treatments.solute(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mmolPerL(perLitre)));
    assertEquals(salted.pH().number(), balance.pH(), 1e-10);
    Mash closed = mash.keepingCarbonDioxide();
    assertEquals(closed.pH().number(), closed.balance().pH(), 1e-12);
  }

  @Test
  void anotherLiquorIsTheSameGristInIt() {
    Mash mash = Mash.of(Grist.of(kg(220), Malt.assumed(PALE)), Mashes.tap(), hL(8));
    assertEquals(
        Mash.of(mash.grist(), Water.pure(), hL(8)).pH().number(),
        mash.with(Water.pure()).pH().number(),
        1e-12);
  }

  @Test
  void aFarRatioIsNoticed() {
    Mash thick = Mashes.mash(Mashes.exact(5.8, 45), Water.pure(), 1.5);
    assertTrue(thick.notices().stream().anyMatch(n -> n.code() == MashCode.RATIO_FAR_FROM_READING));
    Mash usual = Mashes.mash(Mashes.exact(5.8, 45), Water.pure(), 3.2);
    assertEquals(List.of(), usual.notices());
  }

  @Test
  void whatIsNoMashIsRefusedByName() {
    Malt malt = Malt.assumed(PALE);
    refused("mass of pale malt: 0 kg", () -> Grist.of(kg(0), malt));
    refused("grist: an empty grist", () -> Grist.of(Map.of()));
    refused("volume of the liquor: 0 L", () -> Mash.of(Grist.of(kg(1), malt), Water.pure(), hL(0)));
    refused(
        "malt: a second own is not possible",
        () ->
            Grist.of(kg(1), Malt.stated("own", "lot 1", pH(5.7), 0.02, 40, 4))
                .and(kg(1), Malt.stated("own", "lot 2", pH(5.6), 0.02, 40, 4)));
    refused("capacity: 0 mEq/(kg pH)", () -> Malt.stated("own", "lot", pH(5.7), 0.02, 0, 4));
    refused("name of the malt", () -> Malt.stated(" ", "lot", pH(5.7), 0.02, 40, 4));
    refused("source of the malt", () -> Malt.stated("own", "", pH(5.7), 0.02, 40, 4));
    refused("factor on Kolbach's term: -1", () -> Grist.of(kg(1), malt).withKolbachFactor(-1, 0.1));
    refused("malt: rye is not in the grist", () -> Grist.of(kg(1), malt).malt("rye"));
    Mash mash = Mash.of(Grist.of(kg(1), malt), Water.pure(), hL(0.04));
    // Nothing but what may go into a mash.
    assertThrows(
        IllegalArgumentException.class,
        () ->
            mash.after(
                acid(
                    org.brewchem.substance.Reagent.of(
                        org.brewchem.substance.Acid.OXALIC, massPercent(99)),
                    org.brewchem.quantity.Quantities.g(1))));
  }

  private static void refused(String message, org.junit.jupiter.api.function.Executable input) {
    IllegalArgumentException exception = assertThrows(IllegalArgumentException.class, input);
    assertTrue(exception.getMessage().startsWith(message), exception.getMessage());
  }

  @Test
  void anAssumedMaltPrintsThatItIs() {
    assertEquals(Origin.ASSUMED, Malt.assumed(WHEAT).pH().origin());
    assertTrue(Malt.assumed(WHEAT).isAssumed());
    assertTrue(Malt.assumed(WHEAT).toString().endsWith(", assumed"));
    assertTrue(Malt.assumed(WHEAT).bufferCapacity().explain().toString().contains("assumed-malts"));
  }
}
