package org.brewchem.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.brewchem.internal.EquilibriumSystem.Activity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against the equations as they stand in {@link Activity}, written once more. */
class ActivityCoefficientsTest {

  private static final double B = 0.33;

  private static double davies(double a, double z, double ionic) {
    double root = Math.sqrt(ionic);
    return -a * z * z * (root / (1 + root) - 0.3 * ionic);
  }

  private static double extended(double a, double z, double size, double b, double ionic) {
    double root = Math.sqrt(ionic);
    return -a * z * z * root / (1 + B * size * root) + b * ionic;
  }

  /** By charge: 1, -1, 2, 3, 4, 5 and 0 by the Davies equation, then three rules of their own. */
  private static EquilibriumSystem system(double a) {
    EquilibriumSystem.Builder builder =
        new EquilibriumSystem.Builder(-14, a, B, Activity.DAVIES, Activity.DAVIES);
    for (int z = 2; z <= 5; z++) {
      builder.strongIon(z, Activity.DAVIES);
    }
    builder.ligand(0, Activity.DAVIES);
    builder.strongIon(2, new Activity(6, 0.165));
    builder.strongIon(-1, new Activity(3.5, 0.015));
    builder.ligand(0, new Activity(0, 0.1));
    return builder.build();
  }

  private static double expected(int group, double a, double ionic) {
    return switch (group) {
      case 6 -> extended(a, 2, 6, 0.165, ionic);
      case 7 -> extended(a, 1, 3.5, 0.015, ionic);
      case 8 -> 0.1 * ionic;
      default -> davies(a, new double[] {1, 2, 3, 4, 5, 0}[group], ionic);
    };
  }

  /** From one ionic strength to another, near or far. */
  @ParameterizedTest
  @ValueSource(doubles = {0.49, 0.51, 0.65})
  void coefficientsAndTheirSlopesAreThoseOfTheEquations(double a) {
    ActivityCoefficients coefficients = new ActivityCoefficients(system(a));
    assertEquals(9, coefficients.inverse.length);
    Random random = new Random(3);
    double ionic = 0.01;
    for (int i = 0; i < 2000; i++) {
      ionic =
          i % 10 == 0
              ? Math.pow(10, -7 + 7 * random.nextDouble())
              : ionic * (1 + 0.1 * random.nextGaussian() * Math.pow(10, -3 * random.nextDouble()));
      coefficients.forget();
      coefficients.at(0.9 * ionic);
      coefficients.at(ionic);
      for (int g = 0; g < 9; g++) {
        int group = g;
        DoubleUnaryOperator minusLn = x -> -Math.log(10) * expected(group, a, Math.exp(x));
        double inverse = Math.exp(minusLn.applyAsDouble(Math.log(ionic)));
        double rounding = 3e-15 * (1 + Math.abs(Math.log(inverse)));
        assertEquals(1, coefficients.inverse[g] / inverse, 4 * rounding, "group " + g);
        double at = Math.log(ionic);
        double slope = (minusLn.applyAsDouble(at + 1e-5) - minusLn.applyAsDouble(at - 1e-5)) / 2e-5;
        assertEquals(slope, coefficients.slope[g], 1e-8 * (1 + Math.abs(slope)), "slope " + g);
      }
    }
  }

  @Test
  void anIdealSolutionHasNone() {
    ActivityCoefficients coefficients = new ActivityCoefficients(system(0));
    coefficients.at(0.5);
    for (double inverse : coefficients.inverse) {
      assertEquals(1, inverse);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.49, 0.51, 0.65})
  void manyAtOnceAreEachOne(double a) {
    double[] ionic = new double[1001];
    double[] slope = new double[1001];
    double[] inverse = new double[1001];
    Arrays.setAll(ionic, i -> i / 1000.0);
    ActivityCoefficients.davies(a, ionic, slope, inverse);
    for (int i = 0; i < ionic.length; i++) {
      double log10 = davies(a, 1, ionic[i]);
      assertEquals(1, inverse[i] * Math.pow(10, log10), 2e-15);
      assertEquals(log10, ActivityCoefficients.davies(a, ionic[i]), 1e-15);
      double root = Math.sqrt(ionic[i]);
      double expected =
          Math.log(10) * a * (0.5 * root / ((1 + root) * (1 + root)) - 0.3 * ionic[i]);
      assertEquals(expected, slope[i], 1e-15);
    }
  }

  /** The series is left at a step of 0.03, where its last term is 4e-15. */
  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 1e-4, 6e-4, 6.6e-4, 7e-4})
  void aFirstStepFromNoIonsIsExact(double ionic) {
    ActivityCoefficients coefficients = new ActivityCoefficients(system(0.51));
    coefficients.at(ionic);
    assertEquals(1, coefficients.inverse[0] * Math.pow(10, davies(0.51, 1, ionic)), 1e-15);
  }

  /** A group to each charge and rule, however many species share it. */
  @Test
  void ionsOfOneChargeAndRuleShareAGroup() {
    EquilibriumSystem system = system(0.51);
    for (int component = 0; component < 4; component++) {
      assertEquals(component + 1, system.strongGroup(component));
    }
    assertEquals(6, system.strongGroup(5));
    assertEquals(7, system.strongGroup(6));
  }
}
