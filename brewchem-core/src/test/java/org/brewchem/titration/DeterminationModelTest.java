package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.titration.Weighing.khp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.UncertainValue;
import org.junit.jupiter.api.Test;

/** The model of a determination that is drawn at random, against the budget that is stated. */
class DeterminationModelTest {

  private static final Titrant LYE = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0002));
  private static final Titrant ACID =
      Titrant.hydrochloricAcid().of(molPerL(0.02), molPerL(0.00004));

  private static final double[] VOLUMES = {0, 2, 4, 6, 7, 7.5, 8, 8.5, 9, 10};
  private static final double[] READ = {4.3, 4.9, 5.6, 6.5, 7.1, 7.5, 7.9, 8.4, 8.9, 9.6};

  private static void assertModelHolds(Determination<?> found) {
    UncertainValue stated = found.budget().result();
    UncertainValue modelled = found.model().linear().result();
    assertEquals(stated.value(), modelled.value(), 1e-9 * Math.abs(stated.value()));
    assertEquals(
        stated.standardUncertainty(),
        modelled.standardUncertainty(),
        0.01 * stated.standardUncertainty());
  }

  @Test
  void theModelOfADeterminationIsItsBudget() {
    List<Determination<?>> all = new ArrayList<>();
    SampleTitration fifty = LYE.titrate(mL(50));
    all.add(fifty.took(mL(7.8), mL(7.9), mL(7.85)).acidity());
    all.add(fifty.blank(mL(0.1)).prediluted(2).at(celsius(23)).took(mL(7.8)).acidity());
    all.add(fifty.log(VOLUMES, READ).acidity());
    all.add(fifty.blank(mL(0.1)).into(mL(50)).log(VOLUMES, READ).acidity());
    double[] falling = {8.1, 7.6, 7.1, 6.6, 6.3, 6.0, 5.5, 4.8, 4.2, 3.5};
    SampleTitration hundred = ACID.titrate(mL(100));
    all.add(hundred.log(VOLUMES, falling).alkalinity());
    all.add(hundred.to(pH(4.3)).took(mL(8.9)).alkalinity());
    all.add(
        hundred.lowAlkalinity(Reading.reading(mL(2), pH(4.5)), Reading.reading(mL(2.6), pH(4.2))));
    all.forEach(DeterminationModelTest::assertModelHolds);
  }

  /**
   * A blank is read off a burette as a titre is: 0.1 mol/L over 50 mL make 2 mEq/L of a millilitre,
   * and a triangle of half width a has a standard uncertainty of a over the root of six.
   */
  @Test
  void theBlankIsPartOfTheBudget() {
    SampleTitration fifty = LYE.titrate(mL(50));
    Apparatus apparatus = Apparatus.usual();
    double ofTheBlank = 2 * apparatus.buretteTolerance().inMillilitres() / Math.sqrt(6);
    SampleTitration blanked = fifty.blank(mL(0.5));
    List<Determination<?>> without = new ArrayList<>();
    List<Determination<?>> with = new ArrayList<>();
    without.add(fifty.took(mL(8)).acidity());
    with.add(blanked.took(mL(8.5)).acidity());
    BufferCapacity slope = BufferCapacity.ofMilliequivalentsPerLitrePerPH(3);
    without.add(fifty.slopeAtEndPoint(slope).took(mL(8)).acidity());
    with.add(blanked.slopeAtEndPoint(slope).took(mL(8.5)).acidity());
    for (int i = 0; i < with.size(); i++) {
      Budget budget = with.get(i).budget();
      assertEquals(ofTheBlank, budget.row("blank").contribution(), 1e-6);
      assertEquals(without.get(i).budget().result().value(), budget.result().value(), 1e-12);
      assertEquals(
          Math.hypot(without.get(i).budget().result().standardUncertainty(), ofTheBlank),
          budget.result().standardUncertainty(),
          1e-6);
    }
    Budget ofLog = blanked.log(VOLUMES, READ).acidity().budget();
    assertEquals(ofTheBlank, ofLog.row("blank").contribution(), 1e-6);
  }

  private static String shares(Budget budget) {
    return budget.rows().stream()
        .map(row -> String.format(Locale.ROOT, "%.1f %%", 100 * row.shareOfVariance()))
        .collect(Collectors.joining(" "));
  }

  private static double contribution(Budget budget, String input) {
    return Math.abs(budget.row(input).contribution()) / budget.result().value();
  }

  /**
   * By hand: 0.15 mg twice on 0.4084 g, 0.05 % of purity, 0.03 mL on 19.98 mL, 3 °C at 0.021 %
   * each, half widths of rectangles but for the triangle of the burette.
   */
  @Test
  void theBudgetOfAStandardisation() {
    Standardisation found =
        Titrant.sodiumHydroxide()
            .standardised(
                Apparatus.usual(),
                khp(g(0.4084), mL(19.96)),
                khp(g(0.4084), mL(19.98)),
                khp(g(0.4084), mL(20.00)))
            .standardisation()
            .orElseThrow();
    Budget budget = found.budget();
    double root = Math.sqrt(3);
    assertEquals(0.15e-3 / 0.4084 / root, contribution(budget, "balance, tare"), 1e-9);
    assertEquals(0.15e-3 / 0.4084 / root, contribution(budget, "balance, gross"), 1e-9);
    assertEquals(0.03 / 19.98 / Math.sqrt(6), contribution(budget, "titre"), 1e-8);
    double sum = 0;
    for (Budget.Row row : budget.rows()) {
      sum += row.contribution() * row.contribution();
    }
    assertEquals(Math.sqrt(sum), budget.result().standardUncertainty(), 1e-9);
    assertEquals(List.of(), found.notices().stream().map(Notice::toString).toList());
    assertEquals("NaOH 0.10009 mol/L, U 0.00021 (k = 2.10), n = 3, RSD 0.10 %", found.toString());
    assertEquals("4.4 % 4.4 % 8.2 % 0.2 % 36.9 % 13.0 % 32.8 %", shares(budget));
    List<String> notices =
        Titrant.sodiumHydroxide()
            .standardised(Apparatus.usual(), khp(g(0.01), mL(0.5)), khp(g(0.01), mL(0.49)))
            .standardisation()
            .orElseThrow()
            .notices()
            .stream()
            .map(Notice::toString)
            .toList();
    assertEquals(4, notices.size(), notices.toString());
    for (int row = 1; row <= 2; row++) {
      assertEquals(
          "row "
              + row
              + ": mass of KHP: 0.01 g is unusual; usual is 0.02 to 10 g; perhaps g typed"
              + " as mg: 10 g",
          notices.get(row));
    }
    assertEquals(
        "row 2: titre of KHP: 0.49 mL is unusual; usual is 0.5 to 100 mL; perhaps a decimal place:"
            + " 4.9 mL",
        notices.get(3));
    String explained = found.concentration().explain().toString();
    assertTrue(
        explained.contains(
            "c1 = 0.4084 g x 1 Eq/mol / (204.222 g/mol x 0.01996 L x 1 Eq/mol) = 0.100190 mol/L"),
        explained);
  }
}
