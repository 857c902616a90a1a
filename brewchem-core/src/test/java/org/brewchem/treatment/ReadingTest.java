package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.brewchem.figure.Figure;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Held;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Reagent;
import org.junit.jupiter.api.Test;

/** The fast reading of a figure while a dose is searched, held against the whole treatment. */
class ReadingTest {

  private static final Held BEER =
      new Held(
          Held.beer().contents().withAcidityBeyond(pH(8.2), Held.read("beyond", 1.5e-3, 1e-4)));

  private static Optional<DoubleUnaryOperator> reading(
      Held liquid, Supply supply, Figure<?> figure) {
    return Reading.of(figure, new Mixture(liquid.contents(), supply), liquid::step);
  }

  private static void assertReadsWhatTheTreatmentMakes(
      Held liquid, Supply supply, double moles, Figure<?> figure) {
    double whole =
        liquid.after(Addition.of(supply, moles)).step(figure).found().orElseThrow().value();
    double fast = reading(liquid, supply, figure).orElseThrow().applyAsDouble(moles);
    assertEquals(whole, fast, 1e-9 * Math.max(1, Math.abs(whole)), figure.title());
  }

  @Test
  void totalsFiguresOfTheBalanceAndTheirFormulasAreThoseOfTheTreatment() {
    Supply acid =
        Supply.weighed(Reagent.of(Acid.LACTIC, massPercent(80)).withDensity(gPerML(1.19), 0.01));
    for (Figure<?> figure :
        Figure.list(
            Figures.CALCIUM,
            Figures.CHLORIDE,
            Figures.PH_VALUE,
            Figures.titratableAcidity(pH(8.2)),
            Figures.SULFATE_TO_CHLORIDE)) {
      assertReadsWhatTheTreatmentMakes(BEER, acid, 0.004, figure);
      assertReadsWhatTheTreatmentMakes(BEER, acid, 0.02, figure);
    }
    for (Figure<?> figure :
        Figure.list(Figures.CARBONATE_ALKALINITY, Figures.titrationAlkalinity(pH(4.3)))) {
      assertReadsWhatTheTreatmentMakes(Held.water(), acid, 0.001, figure);
    }
  }

  /** A reading does not depend on what was read before it. */
  @Test
  void theOrderOfReadingsDoesNotMatter() {
    Supply acid = Supply.pure(Acid.LACTIC);
    DoubleUnaryOperator calcium = reading(BEER, acid, Figures.CALCIUM).orElseThrow();
    Mixture shared = new Mixture(BEER.contents(), acid);
    DoubleUnaryOperator acidity =
        Reading.of(Figures.titratableAcidity(pH(8.2)), shared, BEER::step).orElseThrow();
    shared.set(0.05);
    DoubleUnaryOperator later =
        Reading.of(Figures.titratableAcidity(pH(8.2)), shared, BEER::step).orElseThrow();
    assertEquals(acidity.applyAsDouble(0.01), later.applyAsDouble(0.01), 1e-10);
    assertEquals(calcium.applyAsDouble(0), calcium.applyAsDouble(0.03), 1e-12);
  }

  @Test
  void whatTheLiquidDoesNotTellIsNotRead() {
    Held unknown = new Held(Held.water().contents().withUnknown(Component.CHLORIDE));
    assertEquals(Optional.empty(), reading(unknown, Supply.pure(Acid.LACTIC), Figures.CHLORIDE));
    assertEquals(
        Optional.empty(), reading(unknown, Supply.pure(Acid.LACTIC), Figures.SULFATE_TO_CHLORIDE));
  }
}
