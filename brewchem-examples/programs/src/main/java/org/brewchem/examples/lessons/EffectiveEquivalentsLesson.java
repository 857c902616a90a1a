package org.brewchem.examples.lessons;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.brewchem.figure.Hazard;
import org.brewchem.pictures.Picture;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.Ion;

/** A lesson on effective equivalents: how many protons a mole of an acid gives at a pH. */
public final class EffectiveEquivalentsLesson {

  private static final double CITRIC_ACID = 1;

  private EffectiveEquivalentsLesson() {}

  /**
   * Prints the lesson, or judges an answer.
   *
   * @param arguments none, a number, or "answer"
   */
  public static void main(String[] arguments) {
    lesson().run(arguments);
  }

  static Lesson lesson() {
    DoubleUnaryOperator phosphoric = of(Acid.PHOSPHORIC);
    DoubleUnaryOperator citric = of(Acid.CITRIC);
    DoubleUnaryOperator lactic = of(Acid.LACTIC);
    Lesson.Draft draft =
        Lesson.asking(
            "effective-equivalents",
            "Effective equivalents",
            """
            By their formulas phosphoric and citric acid have three protons each, lactic acid has
            one. A water is to be acidified to pH 5.4. Do three moles of lactic acid do the work of
            one mole of the others, and does it matter how hard the water is?""");
    draft.line(
        "%-4s %10s %12s %20s %34s",
        "pH", "lactic", "phosphoric", "citric, soft water", "citric, 3 mmol/L of calcium");
    for (double at : new double[] {4.5, 5.4, 6.0, 8.2}) {
      draft.line(
          "%-4.1f %10.2f %12.2f %20.2f %34.2f",
          at,
          lactic.applyAsDouble(at),
          phosphoric.applyAsDouble(at),
          citric.applyAsDouble(at),
          citricInHardWater(at));
    }
    draft.line("");
    draft.line("An acid gives the protons whose pKa lies below the pH where it ends up. Calcium");
    draft.line("holds citrate, so that in hard water citric acid gives more of its protons.");
    double[] places = Lesson.even(3, 9, 121);
    Picture picture =
        Picture.of("What a mole gives at a pH, 25 °C", "pH", "equivalents per mole")
            .across(3, 9)
            .up(0, 3.2)
            .line(
                "citric, hard water",
                places,
                at(places, EffectiveEquivalentsLesson::citricInHardWater))
            .line("citric", places, at(places, citric))
            .line("phosphoric", places, at(places, phosphoric))
            .line("lactic", places, at(places, lactic))
            .limitUp("mash, pH 5.4", 5.4);
    return draft.with(picture, exercise(), Hazard.ACID, Hazard.DOSING_FOOD);
  }

  private static DoubleUnaryOperator of(Acid acid) {
    EffectiveEquivalents equivalents = EffectiveEquivalents.of(acid);
    return at -> equivalents.at(pH(at));
  }

  /** The charge that a little citric acid takes from a water with calcium, per mole of it. */
  private static double citricInHardWater(double at) {
    Solution water =
        Solution.at(celsius(25)).with(Ion.CALCIUM, mmolPerL(3)).with(Ion.CHLORIDE, mmolPerL(6));
    return water
            .charge(pH(at))
            .minus(water.with(Acid.CITRIC, mmolPerL(CITRIC_ACID)).charge(pH(at)))
            .inMilliequivalentsPerLitre()
        / CITRIC_ACID;
  }

  private static double[] at(double[] places, DoubleUnaryOperator equivalents) {
    return Arrays.stream(places).map(equivalents).toArray();
  }

  private static Lesson.Exercise exercise() {
    Chemistry textbook =
        Chemistry.textbook(14.00)
            .withConstants(ConstantSet.standard().withPKa(Acid.PHOSPHORIC, 2.15, 7.20, 12.35));
    double perMole = EffectiveEquivalents.of(Acid.PHOSPHORIC, celsius(25), textbook).at(pH(5.4));
    return new Lesson.Exercise(
        """
        100 L of water need 3.0 mEq/L of acid to end at pH 5.4. With pKa 2.15, 7.20 and 12.35,
        activities taken as concentrations: how many grams of pure phosphoric acid (97.99 g/mol)?""",
        0.300 / perMole * Acid.PHOSPHORIC.molarMass().inGramsPerMole(),
        0.2,
        "g",
        1,
        """
        At pH 5.4 the first proton is gone and 10^(5.4 - 7.2) / (1 + 10^(5.4 - 7.2)) = 0.016 of the
        second: 1.015 per mole. 0.300 / 1.015 x 97.99 = 29.0. Counted with three protons it would be 9.8, a third of what is
        needed.""");
  }
}
