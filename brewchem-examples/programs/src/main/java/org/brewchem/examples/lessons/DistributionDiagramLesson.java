package org.brewchem.examples.lessons;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.util.Objects;
import org.brewchem.pictures.Picture;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;

/** A lesson on distribution diagrams: which form of carbonate a pH allows. */
public final class DistributionDiagramLesson {

  private static final String[] SPECIES = {"CO2(aq)", "HCO3-", "CO32-"};
  private static final String[] NAMES = {"carbon dioxide", "bicarbonate", "carbonate"};

  private DistributionDiagramLesson() {}

  /**
   * Prints the lesson, or judges an answer.
   *
   * @param arguments none, a number, or "answer"
   */
  public static void main(String[] arguments) {
    lesson().run(arguments);
  }

  static Lesson lesson() {
    Solution water = Solution.at(celsius(25)).with(Acid.CARBONIC, mmolPerL(4));
    Lesson.Draft draft =
        Lesson.asking(
            "distribution-diagram",
            "Distribution diagram of carbonate",
            """
            An invented report states 244 mg/L of bicarbonate, 4 mmol/L, at pH 7.6. The water goes
            into a mash of pH 5.4, and no gas leaves yet. How much of it is still bicarbonate?""");
    draft.line("%5s %16s %13s %11s", "pH", NAMES[0], NAMES[1], NAMES[2]);
    for (double at : new double[] {5.4, 6.4, 7.6, 8.3, 9.5}) {
      draft.line(
          "%5.1f %14.1f %% %11.1f %% %9.1f %%",
          at,
          100 * share(water, at, SPECIES[0]),
          100 * share(water, at, SPECIES[1]),
          100 * share(water, at, SPECIES[2]));
    }
    draft.line("");
    draft.line("At pH 7.6 nearly all is bicarbonate, which is why a report may call it so. In the");
    draft.line("mash nine tenths have taken up a proton: that is what alkalinity does there.");
    double[] places = Lesson.even(4, 12, 161);
    Picture picture =
        Picture.of("Forms of 4 mmol/L of carbonate, 25 °C", "pH", "share of all carbonate [%]")
            .across(4, 12)
            .up(0, 104);
    for (int i = 0; i < SPECIES.length; i++) {
      double[] shares = new double[places.length];
      for (int j = 0; j < places.length; j++) {
        shares[j] = 100 * share(water, places[j], SPECIES[i]);
      }
      picture = picture.line(NAMES[i], places, shares);
    }
    return draft.with(picture.limitUp("mash, pH 5.4", 5.4), exercise());
  }

  private static double share(Solution water, double at, String species) {
    return Objects.requireNonNull(
        water.equilibriumAt(pH(at)).fractions(Component.CARBONATE).get(species), species);
  }

  private static Lesson.Exercise exercise() {
    Solution water = Solution.textbook();
    ConstantSet constants = ConstantSet.standard().withPKa(Acid.CARBONIC, 6.35, 10.33);
    Solution ideal =
        water.under(water.chemistry().withConstants(constants)).with(Acid.CARBONIC, mmolPerL(4));
    return new Lesson.Exercise(
        """
        With pKa 6.35 and 10.33, activities taken as concentrations: what per cent of the carbonate
        is bicarbonate at pH 5.4?""",
        100 * share(ideal, 5.4, SPECIES[1]),
        0.2,
        "%",
        1,
        "10^(5.4 - 6.35) = 0.112 of bicarbonate for each of carbon dioxide; 0.112 / 1.112 = 10.1 %.");
  }
}
