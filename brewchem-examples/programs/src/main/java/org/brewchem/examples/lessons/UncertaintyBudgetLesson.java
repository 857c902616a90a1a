package org.brewchem.examples.lessons;

import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.pH;

import org.brewchem.figure.Hazard;
import org.brewchem.pictures.Picture;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.Weighing;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/** A lesson on uncertainty budgets: what is worth improving. */
public final class UncertaintyBudgetLesson {

  private UncertaintyBudgetLesson() {}

  /**
   * Prints the lesson, or judges an answer.
   *
   * @param arguments none, a number, or "answer"
   */
  public static void main(String[] arguments) {
    lesson().run(arguments);
  }

  static Lesson lesson() {
    Titrant lye =
        Titrant.sodiumHydroxide()
            .standardised(Weighing.khp(g(0.4082), mL(19.94)), Weighing.khp(g(0.4107), mL(20.07)));
    AcidityResult twice = lye.titrate(mL(50)).to(pH(8.2)).took(mL(9.52), mL(9.57)).acidity();
    AcidityResult oftener =
        lye.titrate(mL(50)).to(pH(8.2)).took(mL(9.52), mL(9.57), mL(9.53), mL(9.56)).acidity();
    Lesson.Draft draft =
        Lesson.asking(
            "uncertainty-budget",
            "Uncertainty budget",
            """
            An invented beer is titrated twice, 9.52 and 9.57 mL. The laboratory can buy a better
            pipette, standardise the lye again, or titrate twice more. Which is worth it?""");
    draft.line("Twice:");
    twice.budget().toString().lines().forEach(line -> draft.line("%s", line));
    draft.line("");
    draft.line("Four times:");
    oftener.budget().toString().lines().forEach(line -> draft.line("%s", line));
    draft.line("");
    draft.line(
        "Uncertainties add as squares, so that the longest bar decides. Two titrations tell");
    draft.line(
        "little of their own scatter: with so few degrees of freedom U needs a factor of 4.6.");
    Picture picture =
        Picture.ofBars(
            "Titratable acidity, titrated twice",
            "contribution to the standard uncertainty [mEq/L]");
    for (Budget.Row row : twice.budget().rows()) {
      picture = picture.bar(row.input().name(), Math.abs(row.contribution()));
    }
    return draft.with(picture, exercise(), Hazard.LYE, Hazard.LABORATORY);
  }

  private static Lesson.Exercise exercise() {
    Traced titrant = Traced.of(Source.of("titrant", 100.2, 0.2, "mEq/L"));
    Traced titre = Traced.of(Source.of("titre", 10.00, 0.03, "mL"));
    Traced sample = Traced.of(Source.of("sample", 50.00, 0.05, "mL"));
    Traced acidity = titrant.times(titre).dividedBy(sample);
    return new Lesson.Exercise(
        """
        Lye of 100.2 mEq/L (u 0.2), titre 10.00 mL (u 0.03), sample 50.00 mL (u 0.05), all u standard
        uncertainties. What is U of the acidity, k = 2, in mEq/L?""",
        2 * acidity.standardUncertainty().orElseThrow(),
        0.002,
        "mEq/L",
        3,
        """
        The acidity is 20.04. Relative u: 0.0020, 0.0030, 0.0010; the root of the sum of their squares
        is 0.00374. U = 2 x 20.04 x 0.00374 = 0.150.""");
  }
}
