package org.brewchem.examples.lessons;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerKg;

import java.util.Locale;
import org.brewchem.pictures.Picture;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.substance.PrimaryBuffer;

/** A lesson on three levels of chemistry: why a textbook's pH is not the meter's. */
public final class ThreeLevelsLesson {

  private static final Temperature ROOM = celsius(25);
  private static final double STANDARD = 25;

  private ThreeLevelsLesson() {}

  /**
   * Prints the lesson, or judges an answer.
   *
   * @param arguments none, a number, or "answer"
   */
  public static void main(String[] arguments) {
    lesson().run(arguments);
  }

  static Lesson lesson() {
    double certified = PrimaryBuffer.PHOSPHATE.pH(ROOM).value();
    Lesson.Draft draft =
        Lesson.asking(
            "three-levels",
            "Three levels of chemistry",
            """
            The phosphate standard of pH meters is 0.025 mol/kg of KH2PO4 and as much Na2HPO4. As
            much acid as salt: a textbook says that the pH is the pKa, 7.2. The certificate says
            6.865 at 25 °C. Who is wrong?""");
    draft.line("%-34s %6s %9s %6s", "", "ideal", "activity", "pairs");
    draft.line(
        "%-34s %6.3f %9.3f %6.3f",
        "the standard, mmol/kg 25 and 25",
        phosphate(STANDARD, Level.IDEAL),
        phosphate(STANDARD, Level.ACTIVITY),
        phosphate(STANDARD, Level.PAIRS));
    draft.line(
        "%-34s %6.3f %9.3f %6.3f",
        "one of 1 and 1",
        phosphate(1, Level.IDEAL),
        phosphate(1, Level.ACTIVITY),
        phosphate(1, Level.PAIRS));
    draft.line(
        "%-34s %6.3f %9.3f %6.3f",
        "an invented beer with calcium",
        beer(Level.IDEAL),
        beer(Level.ACTIVITY),
        beer(Level.PAIRS));
    draft.line("certified for the standard: %.3f", certified);
    draft.line("");
    draft.line(
        "Nobody: ions in company are less active, those of two charges most of all, and the");
    draft.line(
        "meter shows an activity. In beer, calcium and magnesium hold a part of the anions.");
    double[] amounts = Lesson.even(0.5, 50, 100);
    Picture picture =
        Picture.of(
                "KH2PO4 and as much Na2HPO4, 25 °C, at three levels",
                "of each salt [mmol/kg]",
                "pH")
            .across(0, 52)
            .points("certified", new double[] {STANDARD}, new double[] {certified});
    for (Level level : Level.values()) {
      double[] pH = new double[amounts.length];
      for (int i = 0; i < pH.length; i++) {
        pH[i] = phosphate(amounts[i], level);
      }
      picture = picture.line("level " + level.name().toLowerCase(Locale.ROOT), amounts, pH);
    }
    return draft.with(picture, exercise());
  }

  private static double phosphate(double each, Level level) {
    return Solution.at(ROOM)
        .under(level)
        .with(Acid.PHOSPHORIC, mmolPerKg(2 * each))
        .with(Ion.POTASSIUM, mmolPerKg(each))
        .with(Ion.SODIUM, mmolPerKg(2 * each))
        .pH()
        .value();
  }

  private static double beer(Level level) {
    return Solution.at(ROOM)
        .under(level)
        .with(Acid.PHOSPHORIC, mmolPerKg(6))
        .with(Acid.LACTIC, mmolPerKg(3))
        .with(Acid.CITRIC, mmolPerKg(1))
        .with(Acid.MALIC, mmolPerKg(1))
        .with(Ion.POTASSIUM, mmolPerKg(12))
        .with(Ion.CALCIUM, mmolPerKg(1.5))
        .with(Ion.MAGNESIUM, mmolPerKg(3))
        .with(Ion.CHLORIDE, mmolPerKg(8))
        .pH()
        .value();
  }

  private static Lesson.Exercise exercise() {
    return new Lesson.Exercise(
        """
        The ionic strength of the standard is 0.1 mol/kg. By the equation of Davies, log10 of an
        activity coefficient is -0.509 z^2 (s / (1 + s) - 0.3 I) with s the root of I. The pKa is
        7.20. What pH does the level activity give?""",
        phosphate(STANDARD, Level.ACTIVITY),
        0.02,
        "",
        2,
        """
        s / (1 + s) - 0.3 I = 0.240 - 0.030 = 0.210; log10 is -0.107 for one charge, -0.428 for two.
        pH = 7.20 - 0.428 + 0.107 = 6.88; the certificate has 6.865.""");
  }
}
