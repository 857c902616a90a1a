package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.titration.Weighing.khp;
import static org.brewchem.titration.Weighing.sodiumCarbonate;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.FigureCode;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.junit.jupiter.api.Test;

/** The arithmetic of a standardisation by hand: c = m P z / (M V). */
class StandardisationTest {

  /** Potassium hydrogen phthalate, C8H5KO4, by CIAAW 2021. */
  private static final double KHP = 204.222;

  private static Standardisation lye(Weighing... weighings) {
    return Titrant.sodiumHydroxide().standardised(weighings).standardisation().orElseThrow();
  }

  private static double sensitivity(Standardisation found, String input) {
    return found.budget().row(input).sensitivity();
  }

  @Test
  void theConcentrationMovesWithEachInput() {
    Standardisation found = lye(khp(g(0.4), mL(20)), khp(g(0.42), mL(21)));
    double c = 0.4 / KHP / 0.02;
    assertEquals(c, found.concentration().number(), 1e-6);
    assertEquals(-c / 0.41, sensitivity(found, "balance, tare"), 1e-5);
    assertEquals(c / 0.41, sensitivity(found, "balance, gross"), 1e-5);
    assertEquals(c, sensitivity(found, "purity of KHP"), 1e-5);
    assertEquals(-c / KHP, sensitivity(found, "molar mass of KHP"), 1e-7);
    assertEquals(-c / 20.5, sensitivity(found, "titre"), 1e-6);
    assertEquals(c * 2.1e-4, sensitivity(found, "temperature off 20 °C"), 1e-8);
    assertEquals(c, sensitivity(found, "repeatability"), 1e-5);
    assertEquals(c, found.concentrationsInMolesPerLitre()[1], 1e-6);
  }

  /** By hand: 0.106 g of 105.988 g/mol and two equivalents in 20 mL. */
  @Test
  void anAcidOfTwoEquivalentsHasHalfTheConcentration() {
    double equivalents = 2 * 0.106 / 105.988 / 0.02;
    Titrant one = Titrant.hydrochloricAcid().standardised(sodiumCarbonate(g(0.106), mL(20)));
    Titrant two = Titrant.sulfuricAcid().standardised(sodiumCarbonate(g(0.106), mL(20)));
    assertEquals(equivalents, one.concentration().number(), 1e-6);
    assertEquals(equivalents / 2, two.concentration().number(), 1e-6);
    String text = two.concentration().explain().toString();
    assertTrue(
        text.contains("c1 = 0.106 g x 2 Eq/mol / (105.988 g/mol x 0.02 L x 2 Eq/mol) = "), text);
    assertTrue(two.concentration().explain().holds());
    assertTrue(one.concentration().explain().holds());
  }

  @Test
  void aConcentrationThatNoTitrantHasIsRefusedByItsWeighing() {
    String message =
        assertThrows(
                IllegalArgumentException.class, () -> lye(khp(g(0.4), mL(20)), khp(g(400), mL(20))))
            .getMessage();
    assertTrue(message.startsWith("concentration of NaOH by KHP 400 g, 20 mL: 97.9"), message);
    assertTrue(
        assertThrows(
                IllegalArgumentException.class,
                () -> lye(khp(g(0.4), mL(20)), sodiumCarbonate(g(0.4), mL(20))))
            .getMessage()
            .equals(
                "weighings: Na2CO3 0.4 g, 20 mL does not standardise NaOH; alkali needs KHP, acid"
                    + " needs sodium carbonate"));
  }

  @Test
  void anUnusualConcentrationIsSaid() {
    List<String> said =
        lye(khp(g(0.05), mL(99)), khp(g(0.05), mL(99))).notices().stream()
            .filter(notice -> notice.code() == FigureCode.UNUSUAL_VALUE)
            .map(Notice::toString)
            .toList();
    assertEquals(1, said.size(), said.toString());
    assertTrue(said.get(0).startsWith("concentration of NaOH: 0.00247"), said.toString());
    assertEquals(
        List.of(),
        lye(khp(g(0.4), mL(20)), khp(g(0.4), mL(20))).notices().stream()
            .filter(notice -> notice.code() == FigureCode.UNUSUAL_VALUE)
            .toList());
  }

  private static List<Step> steps(Standardisation found, String quantity) {
    return found.concentration().explain().steps().stream()
        .filter(step -> step.quantity().equals(quantity))
        .toList();
  }

  @Test
  void theExplanationNamesTheWeighings() {
    Standardisation two = lye(khp(g(0.4), mL(20)), khp(g(0.42), mL(21.02)));
    Step mean = two.concentration().step();
    assertEquals("mean of c1 to c2", mean.text());
    double rsd = 100 * two.relativeStandardDeviation().orElseThrow();
    // By hand: two values a part in a thousand apart scatter by that over the root of two.
    assertEquals(0.1 * (0.02 / 21.02 * 1000) / Math.sqrt(2), rsd, 1e-4);
    assertEquals(
        List.of("relative standard deviation 0.067 %"), mean.detail().orElseThrow().lines());
    for (int i = 1; i <= 2; i++) {
      assertEquals(1, steps(two, "mass " + i).size());
      assertEquals(1, steps(two, "titre " + i).size());
      assertEquals(
          List.of("mass " + i, "molar mass of KHP", "titre " + i),
          steps(two, "c" + i).get(0).inputs().stream().map(Step::quantity).toList());
    }
    for (Step step : two.concentration().explain().steps()) {
      step.detail()
          .ifPresent(
              detail -> {
                assertTrue(detail.holds(), step.quantity());
                assertTrue(detail.tolerance() < 1e-12, step.quantity());
              });
    }
    Standardisation one = lye(khp(g(0.4), mL(20)));
    assertEquals("c1", one.concentration().step().text());
    assertEquals(List.of(), one.concentration().step().detail().orElseThrow().lines());
  }

  @Test
  void oneWeighingHasNoSpreadAndTwoHaveNoOutlier() {
    Standardisation one = lye(khp(g(0.4), mL(20)));
    assertEquals(OptionalDouble.empty(), one.relativeStandardDeviation());
    assertTrue(one.replicates().isEmpty());
    assertEquals(Optional.empty(), one.grubbs());
    assertTrue(one.toString().endsWith("n = 1"), one.toString());
    assertEquals(TitrationCode.SINGLE_DETERMINATION, one.notices().get(0).code());
    assertEquals("weighings of KHP", one.notices().get(0).subject());
    Standardisation two = lye(khp(g(0.4), mL(20)), khp(g(0.42), mL(21.02)));
    assertEquals(Optional.empty(), two.grubbs());
    assertTrue(two.toString().endsWith("n = 2, RSD 0.067 %"), two.toString());
    Standardisation three =
        lye(khp(g(0.4), mL(20)), khp(g(0.42), mL(21.02)), khp(g(0.41), mL(20.51)));
    assertFalse(three.grubbs().orElseThrow().isOutlier());
    assertEquals(3, three.weighings().size());
  }

  @Test
  void otherFiguresDoNotApply() {
    Standardisation found = lye(khp(g(0.4), mL(20)));
    assertEquals(
        List.of("does not apply to a standardisation"),
        Answer.of(TitrationFigures.ELECTRODE_SLOPE, found).whyUnknown());
    assertEquals(
        found.concentration().traced(),
        Answer.of(TitrationFigures.TITRANT_CONCENTRATION, found).traced());
  }
}
