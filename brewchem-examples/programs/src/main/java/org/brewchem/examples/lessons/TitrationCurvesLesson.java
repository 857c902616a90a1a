package org.brewchem.examples.lessons;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;

import org.brewchem.figure.Hazard;
import org.brewchem.pictures.Picture;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.ConstantSet;

/** A lesson on titration curves: what the volume to an end point counts. */
public final class TitrationCurvesLesson {

  private static final Volume SAMPLE = mL(50);
  private static final PH END_POINT = pH(8.2);
  private static final double LYE = 0.1;

  private TitrationCurvesLesson() {}

  /**
   * Prints the lesson, or judges an answer.
   *
   * @param arguments none, a number, or "answer"
   */
  public static void main(String[] arguments) {
    lesson().run(arguments);
  }

  static Lesson lesson() {
    Lesson.Draft draft =
        Lesson.asking(
            "titration-curves",
            "Titration curves",
            """
            Three invented samples of 50 mL hold 10 mmol/L of one acid each: hydrochloric, lactic,
            phosphoric. They start at different pH. Which one takes most lye to pH 8.2, and does
            the volume count the protons of the formula?""");
    draft.line("%-20s %9s %14s %17s", "acid", "pH before", "mL to pH 8.2", "protons per mole");
    Picture picture =
        Picture.of(
                "Three acids of 10 mmol/L, 50 mL, 25 °C", "0.1 mol/L sodium hydroxide [mL]", "pH")
            .across(0, 16)
            .limitAcross("end point, pH 8.2", END_POINT.value());
    double[] added = Lesson.even(0, 16, 321);
    for (Acid acid : new Acid[] {Acid.HYDROCHLORIC, Acid.LACTIC, Acid.PHOSPHORIC}) {
      Solution sample = Solution.at(celsius(25)).with(acid, mmolPerL(10));
      SimulatedTitration titration = with(Solution.at(celsius(25)), sample);
      double volume = titration.volumeTo(END_POINT).inMillilitres();
      draft.line(
          "%-20s %9.2f %14.2f %17.2f",
          acid, sample.pH().value(), volume, volume * LYE / (SAMPLE.inMillilitres() * 0.010));
      picture = picture.line(acid.toString(), added, titration.pHAfter(added));
    }
    draft.line("");
    draft.line("pH before the first drop tells how strong the acid is, the volume how much of it");
    draft.line("gives a proton below the end point. Phosphoric acid has three protons by its");
    draft.line("formula and gives less than two here: the second pKa lies near pH 7.");
    return draft.with(picture, exercise(), Hazard.ACID, Hazard.LYE, Hazard.LABORATORY);
  }

  private static SimulatedTitration with(Solution water, Solution sample) {
    return SimulatedTitration.of(sample, water.with(Base.SODIUM_HYDROXIDE, molPerL(LYE)), SAMPLE);
  }

  private static Lesson.Exercise exercise() {
    Solution water = Solution.textbook();
    ConstantSet constants = ConstantSet.standard().withPKa(Acid.PHOSPHORIC, 2.15, 7.20, 12.35);
    Solution ideal = water.under(water.chemistry().withConstants(constants));
    return new Lesson.Exercise(
        """
        50 mL of phosphoric acid, 10 mmol/L, and lye of 0.1 mol/L. With pKa 2.15, 7.20 and 12.35,
        activities taken as concentrations: how many millilitres to pH 8.2?""",
        with(ideal, ideal.with(Acid.PHOSPHORIC, mmolPerL(10))).volumeTo(END_POINT).inMillilitres(),
        0.05,
        "mL",
        2,
        """
        The first proton is gone, 5 mL. Of the second 10^(8.2 - 7.2) / (1 + 10^(8.2 - 7.2)) = 10 / 11
        is gone, 4.55 mL. The third has hardly begun.""");
  }
}
