package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.brewchem.figure.Answer;
import org.brewchem.quantity.PH;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How well jars know malts of which everything is known: simulations. */
class MaltSimulationTest {

  private static final int MALTS = 1000;

  private static Malt titrated(SimulatedMalt truth, double noise, Random random) {
    return MaltTitrationTest.threeJars(
        truth.pHAt(-10) + noise * random.nextGaussian(),
        truth.pHAt(0) + noise * random.nextGaussian(),
        truth.pHAt(20) + noise * random.nextGaussian(),
        noise);
  }

  /** Bounds of the issue, set before the run: coverage 0.92 to 0.98, median U at most. */
  @ParameterizedTest
  @CsvSource({"0.01, 0.035", "0.02, 0.05", "0.04, 0.085"})
  void threeJarsKnowAMaltAsWellAsTheySay(double noise, double mostU) {
    for (boolean curved : new boolean[] {true, false}) {
      Random random = new Random(20261126);
      double[] acids = {-8, -5, -2, 1, 4, 7, 10, 13, 15};
      double[] widths = new double[MALTS * acids.length];
      int covered = 0;
      int coveredFar = 0;
      double squares = 0;
      for (int i = 0; i < MALTS; i++) {
        SimulatedMalt truth = curved ? SimulatedMalt.curved(random) : SimulatedMalt.broad(random);
        Malt malt = titrated(truth, noise, random);
        for (int k = 0; k < acids.length; k++) {
          Answer<PH> found = Mashes.mash(malt, Mashes.acid(acids[k] / 4), 4).pH();
          double error = found.number() - truth.pHAt(acids[k]);
          double half = found.expanded().orElseThrow().halfWidth();
          widths[i * acids.length + k] = half;
          squares += error * error;
          covered += Math.abs(error) <= half ? 1 : 0;
        }
        Answer<PH> far = Mashes.mash(malt, Mashes.acid(30 / 4.0), 4).pH();
        coveredFar +=
            Math.abs(far.number() - truth.pHAt(30)) <= far.expanded().orElseThrow().halfWidth()
                ? 1
                : 0;
      }
      Arrays.sort(widths);
      double median = widths[widths.length / 2];
      double coverage = covered / (double) widths.length;
      String what =
          (curved ? "curved" : "broad")
              + String.format(
                  " malts, noise %.2f: coverage %.3f, median U %.4f, rms %.4f, at 30: %.3f",
                  noise,
                  coverage,
                  median,
                  Math.sqrt(squares / widths.length),
                  coveredFar / (double) MALTS);
      assertTrue(coverage >= 0.92 && coverage <= 0.98, what);
      assertTrue(median <= mostU, what);
      assertTrue(coveredFar >= 0.90 * MALTS, what);
    }
  }

  /** A malt that does not convert alone, half and half with one whose jars are known. */
  @Test
  void aMaltMashedWithAKnownOneIsFoundByDifference() {
    Random random = new Random(20261126);
    double noise = 0.01;
    int covered = 0;
    int all = 0;
    List<Double> widths = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      SimulatedMalt base = SimulatedMalt.broad(random);
      SimulatedMalt dark = SimulatedMalt.broad(random);
      Malt known = titrated(base, noise, random);
      MaltTitration together =
          MaltTitration.of("dark malt", "invented", noise).mashedWith(known, massPercent(50));
      double[] read = new double[3];
      double[] acids = {-10, 0, 20};
      for (int k = 0; k < 3; k++) {
        read[k] = SimulatedMalt.pHAt(base, dark, 0.5, acids[k]) + noise * random.nextGaussian();
      }
      Malt found =
          together
              .base(mL(5), mEqPerL(100), pH(read[0]))
              .none(pH(read[1]))
              .acid(mL(10), mEqPerL(100), pH(read[2]))
              .malt();
      for (double acid : new double[] {-8, -2, 4, 10, 15}) {
        Answer<PH> alone = Mashes.mash(found, Mashes.acid(acid / 4), 4).pH();
        double half = alone.expanded().orElseThrow().halfWidth();
        covered += Math.abs(alone.number() - dark.pHAt(acid)) <= half ? 1 : 0;
        widths.add(half);
        all++;
      }
    }
    Collections.sort(widths);
    String what = covered / (double) all + " covered, median U " + widths.get(all / 2);
    assertTrue(covered >= 0.92 * all && covered <= 0.99 * all, what);
    assertTrue(widths.get(all / 2) <= 0.10, what);
  }
}
