package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.titration.Reading.reading;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.brewchem.figure.Notice;
import org.junit.jupiter.api.Test;

/**
 * What readings that still moved make of an end point, by hand: straight lines of 1 pH a millilitre
 * from pH 4, so that the end point of 8.2 lies at 4.2 mL.
 */
class MovementTest {

  private static final SampleTitration UP =
      Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001)).titrate(mL(50));

  private static TitrationLog there() {
    return UP.log(new double[] {0, 1, 2, 3, 4, 5, 6}, new double[] {4, 5, 6, 7, 8, 9, 10});
  }

  /** The way back from pH 10 with acid, later or earlier by so much than it went. */
  private static TitrationLog back(double concentration, double later) {
    double[] millilitres = new double[6];
    double[] pH = new double[6];
    for (int i = 0; i < 6; i++) {
      millilitres[i] = i * 0.1 / concentration;
      pH[i] = 10 - i + later;
    }
    return Titrant.hydrochloricAcid()
        .of(molPerL(concentration), molPerL(0.001 * concentration))
        .titrate(mL(50))
        .to(pH(8.2))
        .log(millilitres, pH);
  }

  private static Movement moved(double concentration, double later) {
    Movement movement = Movement.of(there().andBack(back(concentration, later)));
    assertTrue(movement.isChecked());
    return movement;
  }

  private static String said(Movement movement) {
    return movement.notice().map(Notice::text).orElse("");
  }

  /**
   * Two readings of 0.02 at 1 pH/mL, three volumes of a burette of 0.03 (triangular), and titrants
   * of 0.1 % each over 1.8 mL: u is 0.0354 mL, of which 2.576 are 0.0913.
   */
  @Test
  void theWayBackPassesTheEndPointElsewhere() {
    for (double concentration : new double[] {0.1, 0.2, 0.05}) {
      assertEquals(0, moved(concentration, 0).halfWidth(), 1e-12);
      assertEquals(0.09, moved(concentration, 0.09).halfWidth(), 1e-12);
      assertEquals("", said(moved(concentration, 0.09)));
      assertEquals(0.093, moved(concentration, 0.093).halfWidth(), 1e-12);
      assertEquals(
          "the way back passes the end point 0.093 mL before the way there: the electrode lags, so"
              + " wait longer, or it drifts",
          said(moved(concentration, 0.093)));
    }
  }

  /**
   * What was taken up since the start shows over four readings of nine only, those behind the end
   * point there and before it on the way back: five were read before.
   */
  @Test
  void whatIsTakenUpWithTimeBeganWithTheFirstReading() {
    assertEquals(0.03, moved(0.1, -0.03).halfWidth(), 1e-12, "within u");
    assertEquals(1.25 * 0.05, moved(0.1, -0.05).halfWidth(), 1e-12);
    assertEquals("", said(moved(0.1, -0.05)));
    assertEquals(1.25 * 0.1, moved(0.1, -0.1).halfWidth(), 1e-12);
    assertEquals(
        "the way back passes the end point 0.10 mL behind the way there: the sample took up carbon"
            + " dioxide meanwhile, or the electrode drifts",
        said(moved(0.1, -0.1)));
  }

  @Test
  void aWayBackThatDoesNotPassTheEndPointTellsNothing() {
    TitrationLog shortWay =
        Titrant.hydrochloricAcid()
            .of(molPerL(0.1))
            .titrate(mL(50))
            .to(pH(8.2))
            .log(new double[] {0, 1}, new double[] {10, 9});
    assertFalse(Movement.of(there().andBack(shortWay)).isChecked());
    TitrationLog late =
        Titrant.hydrochloricAcid()
            .of(molPerL(0.1))
            .titrate(mL(50))
            .to(pH(8.2))
            .log(new double[] {0, 1}, new double[] {8, 7});
    assertFalse(Movement.of(there().andBack(late)).isChecked());
    assertFalse(Movement.of(there()).isChecked());
    assertEquals(0, Movement.of(there()).halfWidth());
  }

  private static Reading timed(double millilitres, double pH, int seconds) {
    return reading(mL(millilitres), pH(pH)).at(Duration.ofSeconds(seconds));
  }

  /** Readings of 0 to 6 mL, each again a minute later moved by so much, the later one first. */
  private static TitrationLog waited(SampleTitration titration, double sign, double... moves) {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i <= 6; i++) {
      double read = sign > 0 ? 4 + i : 10 - i;
      if (i < moves.length) {
        readings.add(timed(i, read + moves[i], 120 * i + 60));
      }
      readings.add(timed(i, read, 120 * i));
    }
    return titration.log(readings);
  }

  private static double slope(TitrationLog log) {
    return Math.abs(log.endPoint().orElseThrow().slope());
  }

  @Test
  void readingsThatMovedOnAfterAWait() {
    TitrationLog log = waited(UP, 1, 0.05, 0.05, 0.05, 0.05, 0.06, 0.05);
    double mean = 0.31 / 6;
    assertEquals(1.5 * 0.06 / slope(log), Movement.of(log).halfWidth(), 1e-12, "that nearest by");
    assertEquals(
        "read again after a wait, 6 volumes moved by 0.052 pH on average: the electrode had not come"
            + " to rest; wait longer",
        said(Movement.of(log)));
    log = waited(UP, 1, 0.06, 0.05, 0.05, 0.05, 0.05, 0.05);
    assertEquals(1.5 * mean / slope(log), Movement.of(log).halfWidth(), 1e-12, "far from it");
    log = waited(UP, 1, -0.05, -0.05, -0.05, -0.05, -0.05, -0.06);
    assertEquals(
        "read again after a wait, 6 volumes moved by -0.052 pH on average: the sample took up carbon"
            + " dioxide, or the electrode drifts",
        said(Movement.of(log)));
    TitrationLog down =
        waited(
            Titrant.hydrochloricAcid().of(molPerL(0.1)).titrate(mL(50)).to(pH(5.8)),
            -1,
            -0.05,
            -0.05,
            -0.05,
            -0.05,
            -0.05,
            -0.06);
    assertEquals(
        "read again after a wait, 6 volumes moved by -0.052 pH on average: the electrode had not come"
            + " to rest; wait longer",
        said(Movement.of(down)));
  }

  @Test
  void readingsThatMovedToAndFroDidNotMoveOn() {
    TitrationLog log = waited(UP, 1, 0.05, -0.05, 0.05, -0.05, 0.05, -0.04);
    assertTrue(Movement.of(log).isChecked());
    assertEquals(0.01 / 6 / slope(log), Movement.of(log).halfWidth(), 1e-12);
    assertEquals("", said(Movement.of(log)));
    assertFalse(Movement.of(waited(UP, 1, 0.05)).isChecked(), "of one volume nothing is known");
  }

  /** By hand: two volumes tell a movement from 2.576 times the noise of a reading on. */
  @Test
  void twoVolumesAreJudgedByTheNoiseOfAReading() {
    TitrationLog quiet = waited(UP, 1, 0, 0.2);
    assertEquals("", said(Movement.of(quiet)), "they differ from each other");
    assertTrue(waited(UP, 1, 0.06, 0.06).noise() <= 0.02);
    assertFalse(said(Movement.of(waited(UP, 1, 0.06, 0.06))).isEmpty());
  }

  private static final double[] CURVED = {4, 5, 6, 7, 8, 9.4, 10.2};

  private static TitrationLog curved() {
    return Titrant.sodiumHydroxide()
        .of(molPerL(0.1), molPerL(0.001))
        .titrate(mL(50))
        .log(new double[] {0, 1, 2, 3, 4, 5, 8}, CURVED);
  }

  private static TitrationLog curvedBack(double from) {
    double[] millilitres = {from, from + 0.5, from + 1, from + 1.5, from + 2};
    return Titrant.hydrochloricAcid()
        .of(molPerL(0.2), molPerL(0.004))
        .titrate(mL(50))
        .to(pH(8.2))
        .log(millilitres, new double[] {10.2, 9.3, 8.6, 7.4, 6.8});
  }

  /**
   * Readings, three volumes, 1 and 2 % of two titrants and the half widths of both places; acid of
   * twice the concentration counts twice.
   */
  @Test
  void theWayBackIsJudgedByAllThatIsKnownOfBothWays() {
    EndPointSearch.Place place = curved().endPoint().orElseThrow();
    assertEquals(1.4, place.slope(), 1e-12);
    for (double sign : new double[] {-1, 1}) {
      for (double k : new double[] {2.55, 2.6}) {
        double from = 0;
        double difference = 0;
        for (int round = 0; round < 50; round++) {
          EndPointSearch.Place there = curvedBack(from).endPoint().orElseThrow();
          double read = 0.02 / 1.4;
          double burette = 0.03 / Math.sqrt(6);
          double titrants = there.millilitres() * 2 * Math.hypot(0.01, 0.02);
          double u =
              Math.sqrt(
                  2 * read * read
                      + 3 * burette * burette
                      + titrants * titrants
                      + (Math.pow(place.halfWidth(), 2) + Math.pow(2 * there.halfWidth(), 2)) / 3);
          assertTrue(place.halfWidth() > 0.01 && there.halfWidth() > 0.01);
          difference = sign * k * u;
          from += (8 - place.millilitres() - difference) / 2 - there.millilitres();
        }
        assertTrue(from >= 0, "from " + from);
        Movement movement = Movement.of(curved().andBack(curvedBack(from)));
        assertEquals(k > 2.576, movement.notice().isPresent(), k + " " + sign);
        assertTrue(movement.halfWidth() >= Math.abs(difference) - 1e-9);
      }
    }
  }

  /** By hand: eight readings before the one at the end point, three from it on and two back. */
  @Test
  void aReadingAtTheEndPointIsNotBeforeIt() {
    double[] volumes = {0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6};
    double[] read = new double[volumes.length];
    for (int i = 0; i < read.length; i++) {
      read[i] = 4.2 + volumes[i];
    }
    read[8] = 8.2;
    TitrationLog way =
        Titrant.hydrochloricAcid()
            .of(molPerL(0.1), molPerL(0.0001))
            .titrate(mL(50))
            .to(pH(8.2))
            .log(new double[] {0, 1, 2, 3}, new double[] {10, 9, 8, 7});
    Movement movement = Movement.of(UP.log(volumes, read).andBack(way));
    assertEquals(8 / 5.0 * 0.2, movement.halfWidth(), 1e-9);
  }

  /** By hand: a scatter of 0.05 over six volumes, t of 4.032: 0.0823 on average. */
  @Test
  void sixVolumesAreJudgedByTheirOwnScatter() {
    double off = 0.05 * Math.sqrt(5.0 / 6);
    for (double mean : new double[] {0.0815, 0.0831}) {
      TitrationLog log =
          waited(UP, 1, mean - off, mean + off, mean - off, mean + off, mean - off, mean + off);
      assertEquals(mean > 0.0823, Movement.of(log).notice().isPresent(), "mean " + mean);
      assertEquals(
          mean > 0.0823 ? 1.5 * (mean + off) / slope(log) : mean / slope(log),
          Movement.of(log).halfWidth(),
          1e-9);
    }
  }

  /** By hand: of two volumes the half of their difference counts 2.576 times. */
  @Test
  void twoVolumesThatDifferAreJudgedByTheNormalQuantile() {
    assertEquals("", said(Movement.of(waited(UP, 1, 0.12, 0.28))));
    assertFalse(said(Movement.of(waited(UP, 1, 0.125, 0.275))).isEmpty());
  }
}
