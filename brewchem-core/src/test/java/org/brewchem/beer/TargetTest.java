package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TargetTest {

  private static final Target TARGET =
      Target.named("invented amber ale")
          .withPH(Band.between(pH(4.1), pH(4.3)))
          .withAcidity(Band.around(asLactic(1.9), asLactic(0.2)))
          .withSulfateToChloride(Band.atMost(2.0))
          .withCalcium(Band.atLeast(mgPerL(50)));

  @ParameterizedTest
  @CsvSource({
    "4.00, 0, BELOW",
    "4.10, 0, WITHIN",
    "4.20, 0.02, WITHIN",
    "4.30, 0, WITHIN",
    "4.31, 0, ABOVE",
    "4.31, 0.01, UNDECIDED",
    "4.29, 0.01, UNDECIDED",
    "4.33, 0.01, ABOVE",
    "4.09, 0.01, UNDECIDED",
    "4.07, 0.01, BELOW",
    "4.20, 0.10, UNDECIDED"
  })
  void aLimitWithinTheExpandedUncertaintyLeavesTheVerdictOpen(
      double value, double standardUncertainty, Verdict verdict) {
    Comparison comparison =
        TARGET.compare(KeyFigures.none().withPH(pH(value), standardUncertainty));
    assertEquals(verdict, comparison.row(KeyFigure.PH).orElseThrow().verdict());
  }

  @Test
  void differencesAreFromTheLimitAndFromTheAim() {
    Comparison.Row row =
        TARGET
            .compare(KeyFigures.none().withAcidity(asLactic(1.6)))
            .row(KeyFigure.TITRATABLE_ACIDITY)
            .orElseThrow();
    double perGram = 1000 / LACTIC.gramsPerEquivalent();
    assertEquals(-0.1 * perGram, row.differenceFromBand().orElseThrow(), 1e-9);
    assertEquals(-0.3 * perGram, row.differenceFromAim().orElseThrow(), 1e-9);
    assertEquals(
        "titratable acidity 1.60 g/L as lactic acid, to pH 8.2 (measured in beer): below 1.70 to"
            + " 2.10 g/L as lactic acid by 0.10, -0.30 from the aim",
        row.toString());
  }

  @Test
  void whatIsMissingIsMissing() {
    Comparison comparison =
        TARGET.compare(KeyFigures.none().withCalcium(mgPerL(40), Origin.TAKEN_FROM_WATER));
    assertEquals(
        List.of(Verdict.MISSING, Verdict.MISSING, Verdict.MISSING, Verdict.BELOW),
        comparison.rows().stream().map(Comparison.Row::verdict).toList());
    assertTrue(comparison.rows().get(0).differenceFromBand().isEmpty());
    assertEquals("pH: missing; wanted 4.10 to 4.30", comparison.rows().get(0).toString());
    assertEquals(
        "calcium 40 mg/L (taken from water): below at least 50 mg/L by 10",
        comparison.rows().get(3).toString());
    assertFalse(comparison.allWithin());
  }

  @Test
  void aFigureWithoutABandIsNotJudged() {
    Comparison comparison =
        Target.named("calcium only")
            .withCalcium(Band.between(mgPerL(50), mgPerL(100)))
            .compare(Beers.lager().keyFigures());
    assertEquals(1, comparison.rows().size());
    assertEquals(Optional.empty(), comparison.row(KeyFigure.PH));
    assertTrue(comparison.allWithin());
  }

  @Test
  void anotherEndPointDoesNotCompare() {
    KeyFigures toSeven = KeyFigures.none().withAcidity(acidity(gPerL(1.9), LACTIC, pH(7.0)));
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> TARGET.compare(toSeven));
    assertTrue(thrown.getMessage().contains("the same end point"), thrown.getMessage());
  }

  @Test
  void limitsInTheWrongOrderAreRefused() {
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> Band.between(pH(4.3), pH(4.1)));
    assertEquals(
        "lower limit: pH 4.3 is not possible; at most the upper limit pH 4.1", thrown.getMessage());
    assertThrows(IllegalArgumentException.class, () -> Band.around(pH(4.2), -0.1));
    assertThrows(IllegalArgumentException.class, () -> Band.around(1.0, Double.NaN));
    assertThrows(
        IllegalArgumentException.class,
        () -> Target.named("x").withSulfateToChloride(Band.between(-1.0, 2.0)));
    assertThrows(
        IllegalArgumentException.class,
        () -> Target.named("x").withSulfateToChloride(Band.atMost(Double.NaN)));
    assertThrows(IllegalArgumentException.class, () -> Target.named(" "));
  }

  @Test
  void aTargetPrintsItsBands() {
    assertEquals(
        "invented amber ale\npH 4.10 to 4.30\ntitratable acidity 1.70 to 2.10 g/L as lactic"
            + " acid\nsulfate to chloride at most 2.00\ncalcium at least 50 mg/L",
        TARGET.toString());
  }
}
