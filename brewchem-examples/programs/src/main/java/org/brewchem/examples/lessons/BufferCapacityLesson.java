package org.brewchem.examples.lessons;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.util.Arrays;
import org.brewchem.figure.Hazard;
import org.brewchem.pictures.Picture;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.Ion;

/** A lesson on buffer capacity: a dose is an area below a curve. */
public final class BufferCapacityLesson {

  private BufferCapacityLesson() {}

  /**
   * Prints the lesson, or judges an answer.
   *
   * @param arguments none, a number, or "answer"
   */
  public static void main(String[] arguments) {
    lesson().run(arguments);
  }

  static Lesson lesson() {
    Solution liquid =
        Solution.at(celsius(20))
            .with(Acid.LACTIC, mmolPerL(12))
            .with(Acid.ACETIC, mmolPerL(3))
            .with(Acid.PHOSPHORIC, mmolPerL(6))
            .with(Ion.POTASSIUM, mmolPerL(20));
    double[] all = Lesson.even(3, 9, 241);
    double[] part = Lesson.even(5, 6, 41);
    double byDifference = liquid.equivalents(pH(5), pH(6)).inMilliequivalentsPerLitre();
    double byArea = area(part, capacity(liquid, part));
    Lesson.Draft draft =
        Lesson.asking(
            "buffer-capacity",
            "Buffer capacity",
            """
            An invented liquid holds 12 mmol/L of lactic, 3 of acetic and 6 of phosphoric acid. How
            much lye lifts it from pH 5 to pH 6, and would the next unit of pH take as much?""");
    draft.line("%-10s %21s %27s", "pH", "buffer capacity there", "lye to one unit higher");
    for (double at : new double[] {4, 5, 6, 7}) {
      draft.line(
          "%-10.0f %12.2f mEq/L/pH %21.2f mEq/L",
          at,
          liquid.bufferCapacity(pH(at)).inMilliequivalentsPerLitrePerPH(),
          liquid.equivalents(pH(at), pH(at + 1)).inMilliequivalentsPerLitre());
    }
    draft.line("");
    draft.line("Buffer capacity is the slope of the titration, so a dose is the area below it.");
    draft.line("From pH 5 to pH 6 the trapezia of the picture add up to %.3f mEq/L;", byArea);
    draft.line("the difference of the charge balance is %.3f mEq/L.", byDifference);
    Picture picture =
        Picture.of(
                "Buffer capacity of an invented liquid, 20 °C",
                "pH",
                "buffer capacity [mEq/L per pH]")
            .across(3, 9)
            .area("lye, pH 5 to 6", part, capacity(liquid, part))
            .line("buffer capacity", all, capacity(liquid, all));
    return draft.with(picture, exercise(), Hazard.LYE, Hazard.LABORATORY);
  }

  private static double[] capacity(Solution liquid, double[] places) {
    return Arrays.stream(places)
        .map(at -> liquid.bufferCapacity(pH(at)).inMilliequivalentsPerLitrePerPH())
        .toArray();
  }

  private static double area(double[] x, double[] y) {
    double area = 0;
    for (int i = 1; i < x.length; i++) {
      area += (x[i] - x[i - 1]) * (y[i] + y[i - 1]) / 2;
    }
    return area;
  }

  private static Lesson.Exercise exercise() {
    Solution water = Solution.textbook();
    ConstantSet constants = ConstantSet.standard().withPKa(Acid.ACETIC, 4.76);
    return new Lesson.Exercise(
        """
        Acetic acid and its salt, 20 mmol/L together, at pH 4.76, which is the pKa; activities taken
        as concentrations. What is the buffer capacity in mEq/L per pH?""",
        water
            .under(water.chemistry().withConstants(constants))
            .with(Acid.ACETIC, mmolPerL(20))
            .bufferCapacity(pH(4.76))
            .inMilliequivalentsPerLitrePerPH(),
        0.1,
        "mEq/L per pH",
        2,
        "At its pKa an acid buffers most: 2.303 x 20 / 4 = 11.51; free H+ adds 2.303 x 0.017 = 0.04.");
  }
}
