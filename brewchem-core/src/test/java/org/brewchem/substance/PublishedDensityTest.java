package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.brewchem.quantity.MassFraction;
import org.junit.jupiter.api.Test;

/** Which rows of {@code reagent-densities.csv} a strength is read from, and how sure that is. */
class PublishedDensityTest {

  private static Optional<PublishedDensity> at(Compound compound, double massPercent) {
    return PublishedDensity.of(compound, MassFraction.ofMassPercent(massPercent));
  }

  private static void reads(
      double gramsPerMillilitre, int sources, Compound compound, double massPercent) {
    PublishedDensity density = at(compound, massPercent).orElseThrow();
    assertEquals(gramsPerMillilitre, density.density().inGramsPerMillilitre(), 1e-12);
    assertEquals(sources, density.sources().size());
  }

  @Test
  void atAPrintedStrengthTheMeanOfItsRowsCounts() {
    reads((1.1089 + 1.1085) / 2, 2, Base.SODIUM_HYDROXIDE, 10);
    reads(1.159, 1, Acid.HYDROCHLORIC, 32);
    reads(1.205, 1, Acid.LACTIC, 88);
    reads(1.205, 1, Acid.LACTIC, 90);
    reads(1.205, 1, Acid.LACTIC, 92);
  }

  @Test
  void betweenTwoStrengthsItIsInterpolatedFromTheRowsOfBoth() {
    reads(
        0.75 * (1.0428 + 1.0422) / 2 + 0.25 * (1.1089 + 1.1085) / 2, 4, Base.SODIUM_HYDROXIDE, 5.5);
    reads(0.5 * 1.159 + 0.5 * 1.169, 2, Acid.HYDROCHLORIC, 33);
    reads(0.75 * 1.19 + 0.25 * 1.205, 2, Acid.LACTIC, 82);
  }

  @Test
  void acrossTwentyPercentagePointsItIsKnownAndBeyondTheTableNot() {
    reads(
        ((1.3279 + 1.3257) / 2 + (1.5253 + 1.5163 + 1.527) / 3) / 2, 5, Base.SODIUM_HYDROXIDE, 40);
    assertEquals(Optional.empty(), at(Base.SODIUM_HYDROXIDE, 51));
    assertEquals(Optional.empty(), at(Base.SODIUM_HYDROXIDE, 3));
    assertEquals(Optional.empty(), at(Acid.LACTIC, 79));
    assertEquals(Optional.empty(), at(Acid.CITRIC, 50));
  }

  /** A rectangular distribution of half width 1 %, for rows that agree better than that. */
  @Test
  void theUncertaintyIsThatOfARectangleOfAtLeastOnePercent() {
    for (double massPercent : List.of(10.0, 33.0)) {
      assertEquals(
          0.01 / Math.sqrt(3),
          at(Acid.HYDROCHLORIC, massPercent).orElseThrow().relativeStandardUncertainty(),
          1e-15);
    }
  }
}
