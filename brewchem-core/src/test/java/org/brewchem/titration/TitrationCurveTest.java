package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.junit.jupiter.api.Test;

class TitrationCurveTest {

  private static final Titrant LYE = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001));
  private static final Titrant ACID = Titrant.hydrochloricAcid().of(molPerL(0.1), molPerL(0.0001));

  private static TitrationLog log(double[] millilitres, double... pH) {
    return LYE.titrate(mL(50)).log(millilitres, pH);
  }

  private static double[] at(double... millilitres) {
    return millilitres;
  }

  private static List<String> texts(TitrationCurve curve, TitrationCode code) {
    return curve.notices().stream()
        .filter(notice -> notice.code() == code)
        .map(Notice::toString)
        .toList();
  }

  /** By hand: 2 and 2/3 mL/pH meet at 4 mL, and 4/3 is the most that a cubic may have there. */
  private static final double TITRE = 4 + 0.2 * (4.0 / 3 + 0.2 * (-8.0 / 9 + 0.2 * 8 / 27));

  @Test
  void readingsAreJoinedByACubicAndShiftsByLines() {
    TitrationLog log = log(at(0, 1, 2, 4, 5), 4, 5, 7, 8, 9.5);
    assertEquals(TITRE, log.titre().inMillilitres(), 1e-12);
    assertEquals(4, log.pHAt(mL(0)).value(), 1e-12);
    assertEquals(4.5, log.pHAt(mL(0.5)).value(), 1e-12);
    assertEquals(5, log.pHAt(mL(1)).value(), 1e-12);
    assertEquals(7.5, log.pHAt(mL(3)).value(), 1e-12);
    assertEquals(9.5, log.pHAt(mL(5)).value(), 1e-12);
    assertTrue(log.holds(mL(0)));
    assertTrue(log.holds(mL(5)));
    assertFalse(log.holds(mL(5.01)));
    assertEquals(
        "readings: they span 0 to 5 mL and do not hold 6 mL",
        assertThrows(IllegalStateException.class, () -> log.pHAt(mL(6))).getMessage());
    assertTrue(log.startsBeyond(pH(3.9)));
    assertFalse(log.startsBeyond(pH(4)));
    assertEquals(0.1 / 1.5, log.shiftTo(8.3), 1e-12);
    assertEquals(3 - (4 + 0.2 / 1.5), log.shiftTo(7.5), 1e-12);
    TitrationLog late = log(at(1, 2, 3), 5, 8, 9);
    assertFalse(late.holds(mL(0.99)));
    assertTrue(late.holds(mL(1)));
  }

  /** Of two readings of one volume the first is met from before. */
  @Test
  void aVolumeThatWasReadTwiceHasThePHOfTheFirst() {
    assertEquals(4, log(at(1, 1, 2), 4, 4.2, 9).pHAt(mL(1)).value(), 1e-12);
    assertEquals(6.6, log(at(1, 1, 2), 4, 4.2, 9).pHAt(mL(1.5)).value(), 1e-12);
  }

  /** Volumes are sorted for the search; the rows stay as they were given. */
  @Test
  void rowsInDisorderAreNamedAndSorted() {
    TitrationLog log = log(at(0, 2, 1, 4, 4, 5), 4, 7, 5, 8, 8, 9.5);
    assertEquals(TITRE, log.titre().inMillilitres(), 1e-12);
    assertEquals(6, log.pHAt(mL(1.5)).value(), 1e-12);
    List<Notice> notices =
        log.notices().stream()
            .filter(notice -> notice.code() == TitrationCode.READING_OUT_OF_ORDER)
            .toList();
    assertEquals(1, notices.size());
    assertEquals(3, notices.get(0).row().orElseThrow());
    assertEquals("1 mL comes after 2 mL; volumes are totals and only grow", notices.get(0).text());
  }

  /** By hand: three times 0.02 times the root of two, 0.0849, may be noise. */
  @Test
  void aStepBackThatNoiseDoesNotExplainIsNamed() {
    assertEquals(
        List.of(), texts(log(at(0, 1, 2, 3), 4, 6, 5.916, 9), TitrationCode.STEP_NOT_MONOTONE));
    List<String> named =
        texts(log(at(0, 1, 2, 3), 4, 6, 5.914, 9), TitrationCode.STEP_NOT_MONOTONE);
    assertEquals(1, named.size());
    assertTrue(named.get(0).contains("though alkali was added"), named.get(0));
    TitrationLog down =
        ACID.titrate(mL(50)).to(pH(4.3)).log(at(0, 1, 2, 3), new double[] {8, 6, 6.1, 4});
    named = texts(down, TitrationCode.STEP_NOT_MONOTONE);
    assertEquals(1, named.size());
    assertTrue(named.get(0).contains("though acid was added"), named.get(0));
    // Read twice, a volume may differ.
    assertEquals(
        List.of(), texts(log(at(0, 1, 1, 3), 4, 6, 5, 9), TitrationCode.STEP_NOT_MONOTONE));
  }

  private static double[] grid(int count) {
    return IntStream.range(0, count).mapToDouble(i -> 0.25 * i).toArray();
  }

  private static double[] zigzag(int count, double size) {
    return IntStream.range(0, count)
        .mapToDouble(i -> 4 + 0.25 * i + (i % 2 == 0 ? size : -size))
        .toArray();
  }

  @Test
  void readingsThatScatterMoreThanStatedAreNamed() {
    TitrationLog quiet = log(grid(20), zigzag(20, 0.005));
    TitrationLog loud = log(grid(20), zigzag(20, 0.06));
    assertEquals(0, quiet.excessNoise());
    assertTrue(quiet.noise() < 0.02, "shown " + quiet.noise());
    assertTrue(quiet.noise() > 0.002, "shown " + quiet.noise());
    assertEquals(0.02, loud.noise(), "at most what is stated");
    assertTrue(loud.excessNoise() > 0.04, "shown " + loud.excessNoise());
    assertEquals(List.of(), texts(quiet, TitrationCode.NOISE_ABOVE_STATED));
    List<String> named = texts(loud, TitrationCode.NOISE_ABOVE_STATED);
    assertEquals(1, named.size());
    assertTrue(named.get(0).endsWith("where u 0.02 is stated of one"), named.get(0));
    // Of eleven readings a median says too little.
    assertEquals(0, log(grid(11), zigzag(11, 0.06)).excessNoise());
    assertTrue(log(grid(12), zigzag(12, 0.06)).excessNoise() > 0);
  }

  @Test
  void stepsTooCoarseForTheBuretteAreNamed() {
    TitrationLog coarse = log(at(0, 2, 4, 6), 4, 4.5, 7, 12);
    List<String> named = texts(coarse, TitrationCode.STEPS_TOO_COARSE);
    assertEquals(1, named.size());
    // By hand: at 2 mL the volume bends by 2.1 mL/pH2, so that it may be as far as 6 mL, 1.34 mL
    // from 4.66 mL, which is a half width.
    assertEquals(
        "row 4: the step of 2 mL to pH 12 is too coarse next to the end point, which is known to"
            + " 0.77 mL only",
        named.get(0));
    assertEquals(
        List.of(),
        texts(log(at(0, 2, 4, 6), 4, 6, 8, 10), TitrationCode.STEPS_TOO_COARSE),
        "straight");
    List<String> doubled =
        texts(log(at(0, 1, 2, 3, 4), 5, 9, 6, 9, 10), TitrationCode.STEPS_TOO_COARSE);
    assertEquals(1, doubled.size());
    assertTrue(
        doubled.get(0).contains("scatter around the end point or are doubled"), doubled.get(0));
  }

  @Test
  void aLogThatEndsEarlyIsNamedByItsLastRow() {
    List<Notice> notices = log(at(0, 1, 2), 4, 5, 6).notices();
    assertEquals(TitrationCode.END_POINT_NOT_REACHED, notices.get(0).code());
    assertEquals(3, notices.get(0).row().orElseThrow());
    assertTrue(
        notices.get(0).text().startsWith("the log ends at pH 6, before the end point"),
        notices.get(0).text());
    assertTrue(
        assertThrows(IllegalStateException.class, () -> log(at(0, 1, 2), 4, 5, 6).titre())
            .getMessage()
            .startsWith("readings: they end at 2 mL"));
  }

  @Test
  void aLogPrintsItsReadings() {
    String text = log(at(0, 1.5), 4, 9).toString();
    assertTrue(text.contains(String.format("%n  ")), text);
    assertTrue(text.contains("1.5 mL"), text);
    assertTrue(text.contains("pH 9"), text);
  }

  @Test
  void readingsThatAreNoneAreRefused() {
    assertEquals(
        "readings: 1 is not possible; 2 or more is allowed",
        assertThrows(IllegalArgumentException.class, () -> log(at(1), 5)).getMessage());
    assertEquals(
        "volumes of the readings: 1 mL in all of them is not possible; two that differ is allowed",
        assertThrows(IllegalArgumentException.class, () -> log(at(1, 1), 5, 6)).getMessage());
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> log(at(1, 2), 5, 14.01))
            .getMessage()
            .startsWith("pH of reading 2: 14.01"));
  }

  @Test
  void theLastRowIsExaminedAsTheOthers() {
    assertEquals(
        List.of("row 3: 1 mL comes after 2 mL; volumes are totals and only grow"),
        texts(log(at(0, 2, 1), 4, 9, 6), TitrationCode.READING_OUT_OF_ORDER));
    List<String> named = texts(log(at(0, 1, 2, 3), 4, 6, 9, 8.5), TitrationCode.STEP_NOT_MONOTONE);
    assertEquals(
        List.of(
            "row 4: pH 8.5 follows pH 9, though alkali was added; more than noise of the reading"
                + " explains"),
        named);
  }

  /** By hand: on a straight line a reading 0.3 off stands alone. */
  @Test
  void aReadingOffTheCurveOfItsNeighboursIsNamedByItsRow() {
    double[] read = {4, 4.5, 5, 5.8, 6, 6.5, 7, 7.5, 8, 8.5};
    List<String> named =
        texts(log(at(0, 1, 2, 3, 4, 5, 6, 7, 8, 9), read), TitrationCode.BAD_POINT);
    assertEquals(1, named.size(), named.toString());
    assertTrue(
        named.get(0).startsWith("row 4: pH 5.8 lies 0.30 off the curve of its neighbours, where"),
        named.get(0));
  }

  @Test
  void theLastReadingMayBeTheOneThatIsOff() {
    double[] read = {4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8, 9.5};
    List<String> named =
        texts(log(at(0, 1, 2, 3, 4, 5, 6, 7, 8, 9), read), TitrationCode.BAD_POINT);
    assertEquals(1, named.size(), named.toString());
    assertTrue(named.get(0).startsWith("row 10: pH 9.5 lies 1.0 off"), named.get(0));
  }

  /** The rows are not in the order of the volumes. */
  @Test
  void aRowIsFoundByVolumeAndPH() {
    double[] read = {8.5, 4, 4.5, 5, 5.8, 6, 6.5, 7, 7.5, 8};
    List<String> named =
        texts(log(at(9, 0, 1, 2, 3, 4, 5, 6, 7, 8), read), TitrationCode.BAD_POINT);
    assertEquals(1, named.size(), named.toString());
    assertTrue(named.get(0).startsWith("row 5: pH 5.8"), named.get(0));
  }

  @Test
  void theStepOfAnEndPointShowsTheReadingsAroundIt() {
    Step line = log(at(0, 1, 2, 4, 5), 4, 5, 7, 8, 9.5).titreStep("titre 1");
    assertEquals("on the monotone cubic between the readings before and after pH 8.2", line.text());
    assertEquals(
        List.of("2 mL: pH 7", "4 mL: pH 8", "5 mL: pH 9.5"), line.detail().orElseThrow().lines());
    assertTrue(line.detail().orElseThrow().holds());
    double[] volumes = new double[41];
    double[] read = new double[41];
    for (int i = 0; i < 41; i++) {
      volumes[i] = 0.01 * i;
      read[i] = 8 + 0.01 * i + (i % 2 == 0 ? 0.012 : -0.012);
    }
    Step fitted = log(volumes, read).titreStep("titre 1");
    assertTrue(
        fitted.text().matches("on the parabola through \\d+ readings around pH 8.2"),
        fitted.text());
    double slope = log(volumes, read).endPoint().orElseThrow().slope();
    assertEquals(1, slope, 0.2);
    assertEquals(0.03 / slope, log(volumes, read).shiftTo(8.23), 1e-12);
    assertEquals(20, fitted.detail().orElseThrow().lines().size(), "no more are shown");
  }
}
