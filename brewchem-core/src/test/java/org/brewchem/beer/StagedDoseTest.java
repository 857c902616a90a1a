package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.StagedDose;
import org.brewchem.treatment.Tank;
import org.brewchem.treatment.TankDose;
import org.brewchem.treatment.TreatmentCode;
import org.brewchem.treatment.UnreachableException;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Doses in two stages. What they are worth is measured by a study on simulated beers. */
class StagedDoseTest {

  private static final Reagent LACTIC =
      Reagent.of(Acid.LACTIC, massPercent(88))
          .withDensity(Density.ofGramsPerMillilitre(1.2), 0.002)
          .withAssayUncertainty(0.01);

  private static final Tank TANK = Tank.holding(hL(20), litres(40));

  private static final TankDose<Beer> WHOLE =
      TankDose.of(Beers.lager(), LACTIC, TANK).to(Constraint.around(PH_VALUE, pH(3.95), 0.05));

  private static final StagedDose<Beer> STAGES = StagedDose.of(WHOLE);

  private static double u(Traced number) {
    return number.standardUncertainty().orElseThrow();
  }

  private static double grams(StagedDose.Remainder<Beer> remainder) {
    return remainder.portion().mass().inGrams();
  }

  private static StagedDose.Remainder<Beer> read(double more, double u) {
    return STAGES.read(pH(STAGES.first().after().pH().number() + more), u);
  }

  @Test
  void twoThirdsGoInFirst() {
    assertEquals(
        WHOLE.portion().mass().inGrams() * 2 / 3, STAGES.first().portion().mass().inGrams(), 1e-9);
    assertSame(WHOLE, STAGES.whole());
    assertEquals(
        WHOLE.portion().mass().inGrams() / 2,
        StagedDose.of(WHOLE, 0.5).first().portion().mass().inGrams(),
        1e-9);
  }

  /** Conditioning of a normal pair: variance less covariance squared over that of the surprise. */
  @Test
  void aReadingLowersTheUncertaintyByWhatItSharesWithThePrediction() {
    StagedDose.Remainder<Beer> remainder = read(0, 0.02);
    Traced predicted = remainder.predicted().pH().traced();
    Traced first = STAGES.first().after().pH().traced();
    double variance = u(first) * u(first) + 0.02 * 0.02;
    double shared = predicted.covariance(first);
    double expected = Math.sqrt(u(predicted) * u(predicted) - shared * shared / variance);
    assertEquals(expected, u(remainder.answer(PH_VALUE).traced()), 1e-9);
    assertTrue(expected < 0.35 * u(predicted), expected + " of " + u(predicted));
    assertTrue(remainder.explain().holds());
    assertTrue(remainder.surprising().isEmpty());
  }

  @Test
  void aReadingAsExpectedLeavesALittleLessThanTheThird() {
    double third = WHOLE.portion().mass().inGrams() / 3;
    double rest = grams(read(0, 0.005));
    assertTrue(rest < third && rest > 0.9 * third, rest + " of " + third);
  }

  @Test
  void aBeerThatResistsMoreGetsMore() {
    assertTrue(grams(read(0.05, 0.01)) > grams(read(0, 0.01)));
    assertTrue(grams(read(-0.05, 0.01)) < grams(read(0, 0.01)));
  }

  /** The less a reading is worth, the nearer is what it teaches to nothing. */
  @Test
  void aWorthlessReadingTeachesNothing() {
    StagedDose.Remainder<Beer> worthless = read(0.1, 1e4);
    Traced predicted = worthless.predicted().pH().traced();
    assertEquals(predicted.value(), worthless.answer(PH_VALUE).number(), 1e-6);
    assertEquals(u(predicted), u(worthless.answer(PH_VALUE).traced()), 1e-6);
  }

  /**
   * An exact reading is the pH, and the grams per pH that it shows are those of what follows, but
   * for the bend of the curve, by which the last third of the whole moves the pH less.
   */
  @ParameterizedTest
  @ValueSource(doubles = {-0.03, 0.03})
  void anExactReadingIsBelieved(double more) {
    double before = Beers.lager().pH().number();
    double expected = STAGES.first().after().pH().number();
    double read = expected + more;
    double perGram = (before - read) / STAGES.first().portion().mass().inGrams();
    double bend = (before - expected) / (expected - 3.95) / 2;
    double linear = bend * (read - 3.95) / perGram;
    assertEquals(linear, grams(read(more, 1e-5)), 0.03 * linear);
  }

  @Test
  void theOddsAreThoseOfTheCorrectedFigure() {
    StagedDose.Remainder<Beer> remainder = read(0.02, 0.02);
    assertEquals(remainder.answer(PH_VALUE).number(), remainder.chances().answer().number(), 1e-12);
    assertTrue(remainder.chances().within().orElseThrow() > WHOLE.chances().within().orElseThrow());
  }

  /**
   * A reading of the acidity may serve for a pH, and one of the pH tells of the calcium nothing.
   */
  @Test
  void anyFigureCanBeReadAndAnyAsked() {
    StagedDose.Remainder<Beer> remainder =
        STAGES.read(
            Figures.titratableAcidity(pH(8.2)),
            STAGES.first().after().titratableAcidity().value(),
            0.02);
    assertTrue(grams(remainder) > 0);
    assertEquals(
        remainder.predicted().calcium().number(), remainder.answer(Figures.CALCIUM).number(), 0.01);
  }

  @Test
  void whatCannotBeIsRefused() {
    UnreachableException over = assertThrows(UnreachableException.class, () -> read(-0.4, 0.01));
    assertSame(UnreachableException.Reason.ALREADY_THERE, over.reason());
    UnreachableException still = assertThrows(UnreachableException.class, () -> read(0.4, 0.01));
    assertSame(UnreachableException.Reason.CONTRADICTED, still.reason());
    assertThrows(IllegalArgumentException.class, () -> read(0, 0));
    assertThrows(IllegalArgumentException.class, () -> read(0, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> StagedDose.of(WHOLE, 1));
    assertThrows(
        IllegalArgumentException.class,
        () -> StagedDose.of(TankDose.of(Beers.lager(), LACTIC, TANK).giving(g(100))));
    StagedDose<Beer> unknown =
        StagedDose.of(TankDose.of(Beer.of(pH(4.35), asLactic(1.8)), LACTIC, TANK).to(pH(4.1)));
    UnknownFigureException missing =
        assertThrows(UnknownFigureException.class, () -> unknown.read(pH(4.2), 0.02));
    assertTrue(missing.getMessage().contains("pH of the beer"), missing.getMessage());
  }

  /** The wide interval of a stand-in must not take a tank that is not mixed for resistance. */
  @Test
  void aBeerThatHardlyMovedIsToBeMixedAndReadAgain() {
    Beer beer =
        Beer.of(pH(4.35), asLactic(1.8))
            .withStandardUncertaintyOfPH(0.02)
            .withStandardUncertaintyOfAcidity(asLactic(0.05));
    StagedDose<Beer> stages = StagedDose.of(TankDose.of(beer, LACTIC, TANK).to(pH(4.2)));
    double moved = stages.first().after().pH().number() - 4.35;
    assertTrue(stages.read(pH(4.35 + 0.4 * moved), 0.02).surprising().isEmpty());
    assertTrue(stages.read(pH(4.35 + 0.3 * moved), 0.02).surprising().isPresent());
    // Of a small first stage the reading says nothing yet.
    StagedDose<Beer> small = StagedDose.of(TankDose.of(beer, LACTIC, TANK).to(pH(4.2)), 0.05);
    assertTrue(small.read(pH(4.36), 0.02).surprising().isEmpty());
    assertEquals(
        "pH moved by 0.0 where the first stage was expected to move it by -0.10: mix and read"
            + " again, and look at the reagent, the volume and the meter before anything more goes"
            + " in",
        stages.read(pH(4.35), 0.02).surprising().orElseThrow().text());
  }

  @Test
  void aReadingFarFromWhatWasExpectedIsNoticed() {
    StagedDose<Beer> precise =
        StagedDose.of(TankDose.of(Beers.lager(), LACTIC, TANK).to(asLactic(2.40)));
    Answer<TitratableAcidity> expected = precise.first().after().titratableAcidity();
    double far = expected.number() - 4 * Math.hypot(u(expected.traced()), 0.01);
    StagedDose.Remainder<Beer> remainder =
        precise.read(Figures.titratableAcidity(pH(8.2)), asLactic(far), 0.01);
    assertTrue(
        remainder.notices().stream()
            .anyMatch(notice -> notice.code() == TreatmentCode.READING_UNEXPECTED));
    assertEquals(precise.first().cautions(), remainder.cautions());
    assertEquals(remainder.cautions(), remainder.portion().cautions());
  }

  @Test
  void whatIsNotableAfterwardsIsSaidOnceBesideTheReading() {
    StagedDose.Remainder<Beer> remainder = read(0.05, 0.02);
    assertTrue(remainder.notices().containsAll(remainder.predicted().notices()));
    assertEquals(remainder.notices().stream().distinct().count(), remainder.notices().size());
    assertTrue(remainder.explain().holds());
    assertEquals("dose", remainder.kind());
    assertEquals("dose", WHOLE.kind());
    assertTrue(
        remainder.toString().contains(" more of lactic acid, 88 % by mass; pH then"),
        remainder.toString());
  }

  /**
   * A lager of pH 4.35 that reads 4.35 after its first stage has not moved, whatever last bits say.
   */
  @Test
  void aReadingThatIsTheOneBeforeHasMovedByNothing() {
    StagedDose<Beer> half = StagedDose.of(TankDose.of(Beers.lager(), LACTIC, TANK).to(pH(3.9)));
    List<String> texts =
        half.read(pH(4.35), 0.02).notices().stream()
            .filter(notice -> notice.code() == TreatmentCode.READING_UNEXPECTED)
            .map(Notice::text)
            .toList();
    assertEquals(1, texts.size());
    assertTrue(texts.get(0).matches("pH moved by 0(\\.0+)? where .*"), texts.get(0));
  }
}
