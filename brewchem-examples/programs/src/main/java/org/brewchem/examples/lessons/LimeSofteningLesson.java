package org.brewchem.examples.lessons;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerL;

import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.pictures.Picture;
import org.brewchem.solution.MineralAssemblage;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.brewchem.treatment.LimeSoftening;

/** A lesson on lime softening: why too much lime makes a water hard again. */
public final class LimeSofteningLesson {

  private LimeSofteningLesson() {}

  /**
   * Prints the lesson, or judges an answer.
   *
   * @param arguments none, a number, or "answer"
   */
  public static void main(String[] arguments) {
    lesson().run(arguments);
  }

  static Lesson lesson() {
    Solution well =
        Solution.at(celsius(25))
            .with(Ion.CALCIUM, mmolPerL(2.8))
            .with(Ion.MAGNESIUM, mmolPerL(0.7))
            .with(Ion.CHLORIDE, mmolPerL(2.0))
            .with(Ion.BICARBONATE, mmolPerL(5.0))
            .with(Acid.CARBONIC, mmolPerL(1.1));
    LimeSoftening softening = LimeSoftening.withLime();
    double stoichiometric = well.answer(softening.lime()).number();
    Lesson.Draft draft =
        Lesson.asking(
            "lime-softening",
            "Lime softening",
            """
            Lime is calcium hydroxide: it brings calcium into the water from which it is to remove
            calcium. How can that work, and what does twice the lime do? An invented well has 2.8
            mmol/L of calcium, 0.7 of magnesium, 5.0 of bicarbonate and 1.1 of carbon dioxide.""");
    draft.line("%14s %18s %20s %8s", "lime, mmol/L", "calcium left", "magnesium left", "pH");
    for (double lime : new double[] {0, 1, 2, 3, 3.6, 4.5, 6, 7.2}) {
      Solution after = softened(well, lime).solution();
      draft.line(
          "%14.1f %18.2f %20.2f %8.1f", lime, calcium(after), magnesium(after), after.pH().value());
    }
    draft.line("");
    draft.line("by stoichiometry: %.2f mmol/L of lime", stoichiometric);
    draft.line(
        "Each mole of lime makes carbonate of two moles of bicarbonate, and calcite forms of");
    draft.line("its own calcium and of one from the water. When bicarbonate is used up, more lime");
    draft.line("only adds calcium; magnesium leaves as brucite where the pH is high enough.");
    draft.line("This is equilibrium: practice stops earlier, and the water is recarbonated.");
    double[] lime = Lesson.even(0, 7.2, 145);
    double[] calcium = new double[lime.length];
    double[] magnesium = new double[lime.length];
    for (int i = 0; i < lime.length; i++) {
      Solution after = softened(well, lime[i]).solution();
      calcium[i] = calcium(after);
      magnesium[i] = magnesium(after);
    }
    Picture picture =
        Picture.of(
                "Lime into an invented well, at equilibrium, 25 °C",
                "lime [mmol/L]",
                "left in the water [mmol/L]")
            .across(0, 7.2)
            .up(0, 4.3)
            .line("calcium", lime, calcium)
            .line("magnesium", lime, magnesium)
            .limitUp("lime by stoichiometry", stoichiometric);
    return draft.with(
        picture,
        exercise(stoichiometric),
        softening.cautions().stream().map(Caution::hazard).toArray(Hazard[]::new));
  }

  private static MineralAssemblage softened(Solution well, double lime) {
    Solution dosed = lime == 0 ? well : well.with(Base.CALCIUM_HYDROXIDE, mmolPerL(lime));
    return MineralAssemblage.precipitating(dosed, Mineral.CALCITE, Mineral.BRUCITE);
  }

  private static double calcium(Solution water) {
    return water.total(Component.CALCIUM).inMillimolesPerLitre();
  }

  private static double magnesium(Solution water) {
    return water.total(Component.MAGNESIUM).inMillimolesPerLitre();
  }

  private static Lesson.Exercise exercise(double stoichiometric) {
    return new Lesson.Exercise(
        """
        For the same well, calcium alone to be removed: how many grams of pure calcium hydroxide
        (74.09 g/mol) does a hectolitre need by stoichiometry?""",
        stoichiometric * Base.CALCIUM_HYDROXIDE.molarMass().inGramsPerMole() / 10,
        0.2,
        "g/hL",
        1,
        """
        One mole for each of carbon dioxide and one for two of bicarbonate: 1.1 + 5.0 / 2 = 3.6 mmol/L,
        and 3.6 x 74.09 = 267 mg/L, 26.7 g/hL.""");
  }
}
