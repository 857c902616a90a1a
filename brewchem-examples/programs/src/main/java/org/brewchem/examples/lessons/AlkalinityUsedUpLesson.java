package org.brewchem.examples.lessons;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.kPa;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;

import org.brewchem.figure.Hazard;
import org.brewchem.pictures.Picture;
import org.brewchem.quantity.Pressure;
import org.brewchem.solution.OpenSolution;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.Ion;

/** A lesson on alkalinity that acid uses up, with the carbon dioxide kept and gone. */
public final class AlkalinityUsedUpLesson {

  /** Carbon dioxide of air, from memory. */
  private static final Pressure AIR = kPa(0.042);

  private AlkalinityUsedUpLesson() {}

  /**
   * Prints the lesson, or judges an answer.
   *
   * @param arguments none, a number, or "answer"
   */
  public static void main(String[] arguments) {
    lesson().run(arguments);
  }

  static Lesson lesson() {
    Solution tap =
        Solution.at(celsius(20))
            .with(Ion.CALCIUM, mmolPerL(2.3))
            .with(Ion.CHLORIDE, mmolPerL(0.6))
            .with(Acid.CARBONIC, mmolPerL(4.3));
    Lesson.Draft draft =
        Lesson.asking(
            "alkalinity-used-up",
            "Alkalinity, used up by acid",
            """
            An invented water has 4 mEq/L of alkalinity. Hydrochloric acid is added, in a closed
            vessel and in one that stands open until air and water agree. Where does each end, and
            what does the gas change: the pH, the alkalinity, or both?""");
    draft.line("%12s %17s %18s %16s", "acid, mEq/L", "alkalinity left", "pH, closed", "pH, open");
    for (double acid : new double[] {0, 1, 2, 3, 3.8, 4.2}) {
      draft.line("%12.1f %17.1f %18.2f %16.2f", acid, 4 - acid, closed(tap, acid), open(tap, acid));
    }
    draft.line("");
    draft.line("An equivalent of acid takes an equivalent of alkalinity, open or closed. The gas");
    draft.line(
        "changes the pH alone: carbon dioxide that stays is an acid that has been set free.");
    double[] added = Lesson.even(0, 4.8, 481);
    double[] kept = new double[added.length];
    double[] gone = new double[added.length];
    for (int i = 0; i < added.length; i++) {
      kept[i] = closed(tap, added[i]);
      gone[i] = open(tap, added[i]);
    }
    Picture picture =
        Picture.of(
                "Acid into an invented water, 4 mEq/L of alkalinity, 20 °C",
                "hydrochloric acid [mEq/L]",
                "pH")
            .across(0, 4.8)
            .line("carbon dioxide kept", added, kept)
            .line("open to air", added, gone)
            .limitUp("all alkalinity used up", 4);
    return draft.with(
        picture,
        exercise(),
        Hazard.ACID,
        Hazard.ACID_FUMES,
        Hazard.CARBON_DIOXIDE,
        Hazard.DOSING_FOOD);
  }

  private static Solution acidified(Solution tap, double acid) {
    return acid == 0 ? tap : tap.with(Acid.HYDROCHLORIC, mmolPerL(acid));
  }

  private static double closed(Solution tap, double acid) {
    return acidified(tap, acid).pH().value();
  }

  private static double open(Solution tap, double acid) {
    return OpenSolution.of(acidified(tap, acid), AIR).pH().value();
  }

  private static Lesson.Exercise exercise() {
    Solution water = Solution.textbook();
    ConstantSet constants = ConstantSet.standard().withPKa(Acid.CARBONIC, 6.35, 10.33);
    Solution bicarbonate =
        water
            .under(water.chemistry().withConstants(constants))
            .with(Acid.CARBONIC, mmolPerL(4))
            .with(Base.SODIUM_HYDROXIDE, mmolPerL(4));
    return new Lesson.Exercise(
        """
        A closed vessel holds 4.00 mmol/L of sodium bicarbonate. With pKa 6.35, activities taken as
        concentrations: how much strong acid, in mEq/L, brings it to pH 5.4?""",
        1000
            * bicarbonate.doseOf(Acid.HYDROCHLORIC, pH(5.4)).inMolesPerKilogram()
            * bicarbonate.kilogramsPerLitre(),
        0.03,
        "mEq/L",
        2,
        """
        At pH 5.4 the share 1 / (1 + 10^(5.4 - 6.35)) = 0.899 is carbon dioxide, each of which took a
        proton: 4.00 x 0.899 = 3.60. Free H+ is 0.004.""");
  }
}
