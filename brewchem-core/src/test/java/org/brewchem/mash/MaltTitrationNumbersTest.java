package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** The fit of three jars against a second way to it, and what a titration keeps. */
class MaltTitrationNumbersTest {

  private static final double U_OF_CURVATURE = 1e-4;

  /**
   * Three readings and a prior of one number that they state, the curvature: its contrast d y is
   * pulled towards 0, and each true reading by as much of that as its own part, u² d / (d U d +
   * u_c²). Then the quadratic through what is left, and its covariance.
   */
  private static final class ThreeJars {
    private final double[] acids;
    private final double[] contrast = new double[3];
    private final double[] squares = new double[3];
    private final double all;
    private final double[] left = new double[3];

    ThreeJars(double[] acids, double[] read, double[] u) {
      this.acids = acids;
      double sum = U_OF_CURVATURE * U_OF_CURVATURE;
      double seen = 0;
      for (int i = 0; i < 3; i++) {
        contrast[i] = 1;
        for (int k = 0; k < 3; k++) {
          contrast[i] /= k == i ? 1 : acids[i] - acids[k];
        }
        squares[i] = u[i] * u[i];
        sum += contrast[i] * contrast[i] * squares[i];
        seen += contrast[i] * read[i];
      }
      all = sum;
      for (int i = 0; i < 3; i++) {
        left[i] = read[i] - squares[i] * contrast[i] * seen / all;
      }
    }

    /** Of what is moved by errors of the readings, what moves a number with such weights. */
    double moved(double[] weights, double[] errors) {
      double sum = 0;
      double held = 0;
      for (int i = 0; i < 3; i++) {
        sum += weights[i] * errors[i];
        held += weights[i] * squares[i] * contrast[i];
      }
      for (int i = 0; i < 3; i++) {
        sum -= held * contrast[i] * errors[i] / all;
      }
      return sum;
    }

    private double of(double[] weights) {
      return weights[0] * left[0] + weights[1] * left[1] + weights[2] * left[2];
    }

    private double uOf(double[] weights) {
      double own = 0;
      double held = 0;
      for (int i = 0; i < 3; i++) {
        own += weights[i] * weights[i] * squares[i];
        held += weights[i] * squares[i] * contrast[i];
      }
      return Math.sqrt(own - held * held / all);
    }

    /** Lagrange's weights for the pH without acid. */
    double[] atNone() {
      return new double[] {
        contrast[0] * acids[1] * acids[2],
        contrast[1] * acids[0] * acids[2],
        contrast[2] * acids[0] * acids[1]
      };
    }

    /** And for the slope there. */
    double[] slope() {
      return new double[] {
        -contrast[0] * (acids[1] + acids[2]),
        -contrast[1] * (acids[0] + acids[2]),
        -contrast[2] * (acids[0] + acids[1])
      };
    }

    void agreesWith(MaltCurve curve, double tolerance) {
      same(of(atNone()), uOf(atNone()), curve.pH(), tolerance);
      same(of(slope()), uOf(slope()), curve.slope(), tolerance / 10);
      same(of(contrast), uOf(contrast), curve.curvature(), tolerance / 1000);
    }

    private static void same(double value, double u, Traced found, double tolerance) {
      assertEquals(value, found.value(), tolerance);
      assertEquals(u, found.standardUncertainty().orElseThrow(), tolerance);
    }
  }

  private static MaltTitration jars(MaltTitration none, double base, double own, double acid) {
    return none.base(mL(5), mEqPerL(100), pH(base))
        .none(pH(own))
        .acid(mL(10), mEqPerL(100), pH(acid));
  }

  private static MaltTitration of(double u) {
    return MaltTitration.of("own malt", "lot 7", u);
  }

  /** 6.05 / 300 - 5.80 / 200 + 5.36 / 600 = 0.0001, one u of the prior. */
  @Test
  void theCurvatureIsHeldByItsPriorAndTheReadingsGiveWay() {
    double u = 0.02;
    double[] read = {6.05, 5.80, 5.36};
    ThreeJars expected = new ThreeJars(new double[] {-10, 0, 20}, read, new double[] {u, u, u});
    MaltCurve curve = jars(of(u), 6.05, 5.80, 5.36).malt().curve();
    expected.agreesWith(curve, 1e-10);
    // 14/360000 u² of the readings against 1e-8 of the prior.
    double ofReadings = 14 * u * u / 360000;
    assertEquals(1e-4 * 1e-8 / (1e-8 + ofReadings), curve.curvature().value(), 1e-12);
    assertEquals(
        5.80 + u * u / 200 * 1e-4 / (1e-8 + ofReadings), curve.pH().value(), 1e-10, "pulled up");
    assertEquals(-10, curve.lowest());
    assertEquals(20, curve.highest());
    assertEquals(0, curve.slopes(0)[3], 1e-15, "the jar between");
  }

  /** Half known, pH 5.8 - a / 50, half pH 4.9 - a / 40: together 243 - 45 pH mEq/kg. */
  @Test
  void aKnownMaltIsSubtractedWithTheErrorsThatItStretches() {
    Malt known = Malt.stated("known", "invented", pH(5.8), 0, 50, 0);
    MaltTitration together = of(0.01).mashedWith(known, massPercent(50));
    MaltCurve curve = jars(together, 253 / 45.0, 243 / 45.0, 223 / 45.0).malt().curve();
    double[] acids = {40 * (4.9 - 253 / 45.0), -20, 40 * (4.9 - 223 / 45.0)};
    double[] read = {253 / 45.0, 243 / 45.0, 223 / 45.0};
    // The same error of a reading moves 45 mEq/(kg pH) of both, and 20 of half the own malt.
    double u = 0.01 * 45 / 20;
    new ThreeJars(acids, read, new double[] {u, u, u}).agreesWith(curve, 1e-7);
    assertEquals(4.9, curve.pH().value(), 1e-9);
    assertEquals(-1 / 40.0, curve.slope().value(), 1e-10);
    assertEquals(acids[0], curve.lowest(), 1e-9);
    assertEquals(acids[2], curve.highest(), 1e-9);
  }

  /** With a curved malt the errors are stretched by the slope at each jar, found in rounds. */
  @Test
  void eachJarIsWeightedByTheSlopeOfTheMaltThere() {
    Malt known = Malt.stated("known", "invented", pH(5.8), 0, 45, 0);
    Malt vague = Malt.stated("known", "invented", pH(5.8), 0.02, 45, 0);
    double[] read = {5.78, 5.52, 5.10};
    Malt dark = jars(of(0.002).mashedWith(known, massPercent(60)), 5.78, 5.52, 5.10).malt();
    double[] acids = new double[3];
    double[] u = new double[3];
    double[] errors = new double[3];
    for (int i = 0; i < 3; i++) {
      acids[i] = (new double[] {-10, 0, 20}[i] - 0.6 * 45 * (5.8 - read[i])) / 0.4;
      double own = dark.curve().slope().value() + 2 * dark.curve().curvature().value() * acids[i];
      u[i] = 0.002 * (1 - own * 1.5 * 45);
      // 1.5 x 45 mEq/kg of the known malt for each pH that it is off.
      errors[i] = own * 1.5 * 45;
    }
    assertNotEquals(u[0], u[2], 1e-3, "unlike errors");
    ThreeJars expected = new ThreeJars(acids, read, u);
    expected.agreesWith(dark.curve(), 1e-6);
    MaltCurve curve =
        jars(of(0.002).mashedWith(vague, massPercent(60)), 5.78, 5.52, 5.10).malt().curve();
    Source ofPH = vague.curve().pH().sources().get(0);
    assertNotEquals(errors[0], errors[2], 0.1, "each by its own slope");
    assertEquals(expected.moved(expected.atNone(), errors), curve.pH().sensitivity(ofPH), 1e-5);
    assertEquals(expected.moved(expected.slope(), errors), curve.slope().sensitivity(ofPH), 1e-6);
  }

  /** Known malt too high by 0.02: 50 mEq/kg x 0.02 less are the other's, 1.25 x 0.02 lower. */
  @Test
  void anErrorOfTheKnownMaltGoesIntoTheOther() {
    Malt exact = Malt.stated("known", "invented", pH(5.8), 0, 50, 0);
    Malt vague = Malt.stated("known", "invented", pH(5.8), 0.02, 50, 4);
    MaltCurve sure = half(exact);
    MaltCurve curve = half(vague);
    assertEquals(sure.pH().value(), curve.pH().value(), 1e-12);
    Source ofPH = vague.curve().pH().sources().get(0);
    assertEquals(-1.25, curve.pH().sensitivity(ofPH), 1e-6);
    assertEquals(0, curve.slope().sensitivity(ofPH), 1e-6);
    // Of a capacity, by a difference of the whole.
    Source ofCapacity = vague.curve().slope().sources().get(0);
    MaltCurve other = half(Malt.stated("known", "invented", pH(5.8), 0, 50.001, 0));
    assertEquals(
        (other.pH().value() - sure.pH().value()) / 0.001, curve.pH().sensitivity(ofCapacity), 1e-5);
    assertEquals(
        (other.slope().value() - sure.slope().value()) / 0.001,
        curve.slope().sensitivity(ofCapacity),
        1e-6);
  }

  private static MaltCurve half(Malt known) {
    return jars(of(0.01).mashedWith(known, massPercent(50)), 253 / 45.0, 243 / 45.0, 223 / 45.0)
        .malt()
        .curve();
  }

  /** A zero off by 0.05 moves every pH by as much and no capacity. */
  @Test
  void theZeroOfTheElectrodeMovesThePHAndNotTheCapacity() {
    Malt without = jars(of(0.02), 6.05, 5.80, 5.30).malt();
    Malt with = jars(of(0.02).withZeroUncertainty(0.05), 6.05, 5.80, 5.30).malt();
    double u = without.pH().standardUncertainty().orElseThrow();
    assertEquals(Math.hypot(u, 0.05), with.pH().standardUncertainty().orElseThrow(), 1e-12);
    assertEquals(
        without.bufferCapacity().standardUncertainty().orElseThrow(),
        with.bufferCapacity().standardUncertainty().orElseThrow(),
        1e-9);
    assertEquals(without.pH().number(), with.pH().number(), 1e-12);
    assertEquals(4, without.curve().pH().sources().size(), "three readings and the prior");
    assertEquals(5, with.curve().pH().sources().size());
    assertEquals("pH of own malt at -10.0 mEq/kg", name(with, 0));
    assertEquals("curvature of own malt", name(with, 3));
    assertEquals("zero of the electrode for own malt", name(with, 4));
  }

  private static String name(Malt malt, int source) {
    return malt.curve().pH().sources().get(source).name();
  }

  /** (2 x -10 + 20) / 3 = 0: the jar nearest to it is where nothing more is missed. */
  @Test
  void ofManyJarsTheOneAThirdOfTheWayUpIsTheMiddleOne() {
    MaltCurve curve =
        of(0.01)
            .acid(mL(10), mEqPerL(100), pH(5.30))
            .acid(mL(5), mEqPerL(100), pH(5.55))
            .base(mL(1), mEqPerL(100), pH(5.85))
            .base(mL(5), mEqPerL(100), pH(6.05))
            .malt()
            .curve();
    assertEquals(-10, curve.lowest());
    assertEquals(20, curve.highest());
    assertEquals(0, curve.slopes(-2)[3], 1e-15);
    assertEquals((10 + 10) * (10 + 2) * (10 - 20) / 1000.0, curve.slopes(10)[3], 1e-12);
    assertEquals(5.8, curve.pH().value(), 1e-9);
    assertEquals(-0.025, curve.slope().value(), 1e-10);
  }

  /** (2 x -4 + 20) / 3 = 4: of -2, 3 and 12 mEq/kg it is 3, none of the first and the last. */
  @Test
  void theMiddleJarIsTheNearestToAThirdOfTheWay() {
    MaltTitration jars = of(0.01);
    jars = jars.base(mL(2), mEqPerL(100), pH(5.9)).base(mL(1), mEqPerL(100), pH(5.85));
    for (double acid : new double[] {3, 12, 20}) {
      jars = jars.acid(mL(acid / 2), mEqPerL(100), pH(5.8 - acid / 40));
    }
    MaltCurve curve = jars.malt().curve();
    assertEquals(0, curve.slopes(3)[3], 1e-9);
    assertEquals((10 + 4) * (10 - 3) * (10 - 20) / 1000.0, curve.slopes(10)[3], 1e-9);
  }

  /** 40 g in 120 mL are 3 L/kg; 4 mL of 0.1 N are 10 mEq/kg of it. */
  @Test
  void whatWasStatedIsKeptWhateverFollows() {
    Malt known = Malt.stated("known", "invented", pH(5.8), 0, 50, 0);
    MaltTitration stated =
        of(0.03)
            .weighing(g(40), mL(120))
            .readAt(celsius(25))
            .mashedWith(known, massPercent(50))
            .withZeroUncertainty(0.04);
    MaltTitration jars =
        stated
            .base(mL(4), mEqPerL(100), pH(253 / 45.0))
            .none(pH(243 / 45.0))
            .acid(mL(8), mEqPerL(100), pH(223 / 45.0));
    assertEquals("own malt, 0 jars", stated.toString());
    assertEquals("own malt, 3 jars", jars.toString());
    Malt malt = jars.withZeroUncertainty(0.04).readAt(celsius(25)).malt();
    assertEquals(4.9, malt.pH().number(), 1e-9);
    assertEquals(40, malt.bufferCapacity().number(), 1e-6);
    assertEquals(3, malt.litresPerKilogram(), 1e-12);
    assertEquals(celsius(25), malt.readAt());
    assertEquals("own malt", malt.name());
    assertEquals("lot 7", malt.source());
    Source reading =
        malt.curve().slope().sources().stream()
            .filter(source -> source.name().startsWith("pH of own malt at"))
            .findFirst()
            .orElseThrow();
    assertEquals(0.03, reading.standardUncertainty().orElseThrow());
    assertEquals(
        4,
        of(0.03)
            .none(pH(5.8))
            .base(mL(5), mEqPerL(100), pH(6.05))
            .acid(mL(10), mEqPerL(100), pH(5.3))
            .malt()
            .litresPerKilogram(),
        1e-12);
  }

  @Test
  void limitsBelongToWhatIsAllowed() {
    of(0.001).withZeroUncertainty(0.5).readAt(celsius(10)).readAt(celsius(30));
    of(0.5).withZeroUncertainty(0);
    refused("uncertainty of a reading: 9.0E-4 pH", () -> of(0.0009));
    refused("uncertainty of a reading: 0.51 pH", () -> of(0.51));
    refused("uncertainty of the zero: 0.51 pH", () -> of(0.01).withZeroUncertainty(0.51));
    refused("uncertainty of the zero: -0.1 pH", () -> of(0.01).withZeroUncertainty(-0.1));
    refused("temperature of the reading: 31 °C", () -> of(0.01).readAt(celsius(31)));
    Malt known = Malt.stated("known", "invented", pH(5.8), 0, 50, 0);
    refused("share of known: 0", () -> of(0.01).mashedWith(known, massPercent(0)));
    refused("share of known: 1", () -> of(0.01).mashedWith(known, massPercent(100)));
    MaltTitration begun = of(0.01).none(pH(5.8));
    refused(
        "jars: the malt that was mashed with it is not possible after a jar was read; state it"
            + " before",
        () -> begun.mashedWith(known, massPercent(50)));
    refused(
        "jars: 1 is not possible; three of different acid are needed: with base, without, with"
            + " acid",
        begun::malt);
    refused("volume of the base: 0 L", () -> begun.base(mL(0), mEqPerL(100), pH(6)));
    refused("strength of the acid: 0 mEq/L", () -> begun.acid(mL(5), mEqPerL(0), pH(5)));
  }

  private static void refused(String start, org.junit.jupiter.api.function.Executable input) {
    String message = assertThrows(IllegalArgumentException.class, input).getMessage();
    assertEquals(start, message.substring(0, Math.min(start.length(), message.length())));
  }
}
