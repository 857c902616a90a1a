package org.brewchem.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReplicatesTest {

  // By hand: invented volumes 2, 4, 4, 4, 5, 5, 7, 9 have mean 5 and squares that add up to 32.
  @Test
  void theStatisticsFollowTheirDefinitions() {
    Replicates sample = Replicates.of("mL", 2, 4, 4, 4, 5, 5, 7, 9);
    assertEquals(8, sample.count());
    assertEquals(5, sample.mean());
    assertEquals(Math.sqrt(32.0 / 7.0), sample.standardDeviation(), 1e-15);
    assertEquals(Math.sqrt(32.0 / 7.0) / 5, sample.relativeStandardDeviation(), 1e-15);
    assertEquals(7, sample.range());
    assertEquals(1.4, sample.relativeRange(), 1e-15);
    UncertainValue mean = sample.uncertainMean();
    assertEquals(5, mean.value());
    assertEquals(Math.sqrt(32.0 / 7.0 / 8.0), mean.standardUncertainty(), 1e-15);
    assertEquals(7, mean.degreesOfFreedom());
    assertTrue(sample.caution().isEmpty());
  }

  /** Differences from the mean -0.5, -0.25 and 0.75, by hand; the values are exact in binary. */
  @Test
  void aSmallSpreadOnALargeValueIsNotLost() {
    double large = 1L << 50;
    Replicates sample = Replicates.of("", large + 0.25, large + 0.5, large + 1.5);
    assertEquals(large + 0.75, sample.mean());
    assertEquals(Math.sqrt(0.875 / 2), sample.standardDeviation(), 1e-15);
  }

  // Another implementation: commons-math3.
  @Property
  void meanAndVarianceAgreeWithAnotherImplementation(
      @ForAll @Size(min = 2, max = 12)
          List<@DoubleRange(min = 14, max = 15) @Scale(4) Double> list) {
    double[] values = array(list);
    Replicates sample = Replicates.of("mL", values);
    assertEquals(StatUtils.mean(values), sample.mean(), 1e-13);
    assertEquals(StatUtils.variance(values), Math.pow(sample.standardDeviation(), 2), 1e-13);
  }

  // Tables of Student's t and of chi-squared in any textbook of statistics, from memory:
  // t(0.975, 1) = 12.706, chi-squared(0.975, 1) = 5.024 and (0.025, 1) = 0.000982.
  @Test
  void twoReplicatesSayHowLittleTheyKnow() {
    Replicates two = Replicates.of("mol/L", 0.10025, 0.10003);
    assertEquals(0.00022 / 0.10014, two.relativeRange(), 1e-12);
    assertEquals(
        12.706 * 0.00011, two.uncertainMean().expandedAt(0.95).halfWidth(), 0.0005 * 0.00011);
    double s = two.standardDeviation();
    Interval interval = two.standardDeviationInterval(0.95);
    assertEquals(1 / Math.sqrt(5.024), interval.lower() / s, 1e-4);
    assertEquals(1 / Math.sqrt(0.000982), interval.upper() / s, 0.02);
    assertEquals(
        "0.1001 mol/L, U 0.0014 (k = 12.7), n = 2, s 0.00016; two replicates do not fix the spread, "
            + "t(0.975, 1) = 12.7: run four",
        two.toString());
  }

  // Table of chi-squared, from memory: (0.975, 10) = 20.483 and (0.025, 10) = 3.247.
  @Test
  void elevenReplicatesKnowMore() {
    Replicates eleven = Replicates.of("g", 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11);
    Interval interval = eleven.standardDeviationInterval(0.95);
    assertEquals(Math.sqrt(10 / 20.483), interval.lower() / eleven.standardDeviation(), 5e-5);
    assertEquals(Math.sqrt(10 / 3.247), interval.upper() / eleven.standardDeviation(), 5e-4);
    assertTrue(interval.contains(eleven.standardDeviation()));
  }

  // Two-sided critical values at 5 %, as tabulated in ISO 5725-2 and Grubbs and Beck (1972), both
  // from memory.
  @ParameterizedTest
  @CsvSource({"4, 1.481", "5, 1.715", "6, 1.887", "7, 2.020", "9, 2.215", "10, 2.290"})
  void theCriticalValueOfGrubbsIsThatOfTheTables(int count, double printed) {
    assertEquals(printed, GrubbsTest.criticalValue(count, 0.05), 0.0005);
  }

  // The tables, from memory, print 1.155 for n = 3 and 2.126 for n = 8. Both are one unit of the
  // last digit off the value that follows from the definition, so they are not reproduced.
  @Test
  void theCriticalValueOfGrubbsFollowsFromTheDefinitionWhereTheTablesDoNot() {
    // n = 3: the residuals point anywhere on a circle, which gives 2/sqrt(3) cos(pi alpha/6).
    double three = GrubbsTest.criticalValue(3, 0.05);
    assertEquals(2 / Math.sqrt(3) * Math.cos(Math.PI * 0.05 / 6), three, 1e-12);
    assertEquals("1.154", Digits.significant(three, 4));
    // n = 8: t with 6 degrees of freedom has a closed distribution function.
    double eight = GrubbsTest.criticalValue(8, 0.05);
    double g2 = eight * eight;
    double t = Math.sqrt(6 * g2 / (49.0 / 8.0 - g2));
    double sine = t / Math.sqrt(6 + t * t);
    double cosine2 = 1 - sine * sine;
    double twoTails = 1 - sine * (1 + cosine2 / 2 + 3 * cosine2 * cosine2 / 8);
    assertEquals(0.05 / 8, twoTails, 1e-12);
    assertEquals("2.127", Digits.significant(eight, 4));
  }

  @Test
  void grubbsNamesTheOutlier() {
    Replicates sample = Replicates.of("mol/L", 0.10025, 0.10003, 0.1001, 0.1002, 0.1035, 0.10015);
    GrubbsTest test = sample.grubbs(0.05);
    assertTrue(test.isOutlier());
    assertEquals(4, test.outlierIndex().orElseThrow());
    assertEquals(4, test.suspectIndex());
    assertEquals(0.1035, test.suspectValue());
    assertEquals(GrubbsTest.criticalValue(6, 0.05), test.criticalValue());
    assertEquals(0.05, test.significance());
    assertEquals((0.1035 - sample.mean()) / sample.standardDeviation(), test.statistic(), 1e-12);
    assertEquals(
        "outlier: value 5, 0.1035 mol/L: G 2.038, critical 1.887 (Grubbs, two-sided, significance"
            + " 0.05)",
        test.toString());
  }

  @Test
  void grubbsFindsLowValuesToo() {
    assertEquals(
        0, Replicates.of("", -9, 1, 1.1, 0.9, 1).grubbs(0.05).outlierIndex().orElseThrow());
  }

  @Test
  void ofValuesEquallyFarGrubbsSuspectsTheFirst() {
    assertEquals(1, Replicates.of("mL", 2, 1, 3).grubbs(0.05).suspectIndex());
    assertEquals(1, Replicates.of("mL", 2, 3, 1).grubbs(0.05).suspectIndex());
  }

  @Test
  void theSignificanceOfGrubbsEndsWhereItSays() {
    double most = 2 / Math.sqrt(3);
    assertEquals(most, GrubbsTest.criticalValue(3, 1e-12), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> GrubbsTest.criticalValue(3, 9e-13));
    assertThrows(IllegalArgumentException.class, () -> GrubbsTest.criticalValue(3, 1));
  }

  @Test
  void grubbsLeavesAnOrdinaryOrEqualSampleAlone() {
    GrubbsTest ordinary = Replicates.of("mL", 14.62, 14.58, 14.60).grubbs(0.05);
    assertFalse(ordinary.isOutlier());
    assertTrue(ordinary.outlierIndex().isEmpty());
    GrubbsTest equal = Replicates.of("mL", 0.1, 0.1, 0.1).grubbs(0.05);
    assertEquals(0, equal.statistic());
    assertFalse(equal.isOutlier());
  }

  @Property
  void grubbsNeverExceedsWhatIsPossible(
      @ForAll @Size(min = 3, max = 10)
          List<@DoubleRange(min = -5, max = 5) @Scale(1) Double> list) {
    double[] values = array(list);
    double most = (values.length - 1) / Math.sqrt(values.length);
    assertTrue(Replicates.of("", values).grubbs(0.01).statistic() <= most * (1 + 1e-12));
    assertTrue(GrubbsTest.criticalValue(values.length, 0.01) < most);
  }

  // ISO 5725-6, from memory: r = 2.8 s_r, and 2.8 is 1.96 sqrt(2) = 2.77 rounded.
  @Test
  void theRepeatabilityLimitIsTwoPointEightStandardDeviations() {
    RepeatabilityLimit limit = RepeatabilityLimit.fromStandardDeviation(0.01, "g/L");
    assertEquals(0.028, limit.value(), 1e-15);
    assertTrue(limit.allows(2.64, 2.615));
    assertFalse(limit.allows(2.61, 2.64));
    assertEquals("g/L", limit.unit());
    // Binary fractions, so that the difference is the limit to the last bit.
    assertTrue(RepeatabilityLimit.fromStandardDeviation(0.625, "").allows(3.75, 2));
    assertEquals("r 0.028 g/L (2.8 s_r)", limit.toString());
    assertThrows(
        IllegalArgumentException.class,
        () -> RepeatabilityLimit.fromStandardDeviation(-0.01, "g/L"));
  }

  @Test
  void whatIsNotPossibleIsNamed() {
    assertEquals(
        "replicates: 1 is not possible; 2 or more is allowed",
        assertThrows(IllegalArgumentException.class, () -> Replicates.of("mL", 14.6)).getMessage());
    assertEquals(
        "replicate 2: NaN mL is not possible; a finite number is allowed",
        assertThrows(IllegalArgumentException.class, () -> Replicates.of("mL", 14.6, Double.NaN))
            .getMessage());
    Replicates aroundZero = Replicates.of("mV", -1, 1);
    assertThrows(IllegalStateException.class, aroundZero::relativeStandardDeviation);
    assertThrows(IllegalStateException.class, () -> aroundZero.grubbs(0.05));
    assertThrows(IllegalArgumentException.class, () -> GrubbsTest.criticalValue(2, 0.05));
    assertThrows(IllegalArgumentException.class, () -> GrubbsTest.criticalValue(3, 0));
    assertThrows(IllegalArgumentException.class, () -> Interval.of(2, 1, 0.95, "g"));
  }

  @Test
  void theValuesCannotBeChangedFromOutside() {
    double[] values = {1, 2, 3};
    Replicates sample = Replicates.of("g", values);
    values[0] = 9;
    sample.values()[1] = 9;
    assertEquals(1, sample.values()[0]);
    assertEquals(2, sample.values()[1]);
  }

  @Test
  void aSampleTooLargeForArithmeticIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Replicates.of("g", -1.7e308, 1.7e308));
  }

  private static double[] array(List<Double> list) {
    return list.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
