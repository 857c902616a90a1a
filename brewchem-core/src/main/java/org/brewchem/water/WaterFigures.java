package org.brewchem.water;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.internal.ClosedForms;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.solution.Figures;
import org.brewchem.solution.SolutionCode;
import org.brewchem.substance.Ion;

/**
 * The figures of brewing water that are closed forms of its ions and its alkalinity. They are meant
 * for static import, beside those of {@link Figures}, and apply to every liquid.
 *
 * <p>Residual alkalinity after P. Kolbach, Monatsschrift für Brauerei 6 (1953) 49, and MEBAK
 * W-030.01.900: alkalinity, less calcium hardness divided by 3.5, less magnesium hardness divided
 * by 7, in equivalents. Calcium and magnesium precipitate phosphate of the malt, which sets protons
 * free in the mash; the two numbers are measurements on laboratory worts, not a law. They say how
 * waters compare on one grist, not what pH a mash will have.
 */
public final class WaterFigures {

  private static final String KOLBACH = "Kolbach 1953; MEBAK W-030.01.900";
  private static final String KOLBACH_TEXT =
      "alkalinity - calcium hardness / 3.5 - magnesium hardness / 7";
  private static final String ATOMIC_WEIGHTS = "atomic weights CIAAW 2021";

  /** As mg/L of CaCO3 for each milliequivalent per litre. */
  private static final double CACO3 =
      Hardness.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();

  /** Milliequivalents per litre with three decimals. */
  private static final Scale<ChargeConcentration> MILLIEQUIVALENTS_PER_LITRE =
      Scale.of(
          "mEq/L",
          ChargeConcentration::inMilliequivalentsPerLitre,
          ChargeConcentration::ofMilliequivalentsPerLitre,
          3);

  /** The calcium in equivalents. */
  public static final Figure<Hardness> CALCIUM_HARDNESS =
      hardness("calcium hardness", Ion.CALCIUM, Figures.CALCIUM);

  /** The magnesium in equivalents. */
  public static final Figure<Hardness> MAGNESIUM_HARDNESS =
      hardness("magnesium hardness", Ion.MAGNESIUM, Figures.MAGNESIUM);

  /** Calcium and magnesium hardness together. */
  public static final Figure<Hardness> TOTAL_HARDNESS =
      ClosedForm.figure(
          "total hardness",
          Scales.HARDNESS_AS_CACO3,
          "calcium hardness + magnesium hardness",
          "",
          Figure.list(CALCIUM_HARDNESS, MAGNESIUM_HARDNESS),
          x -> x[0] + x[1]);

  /** The hardness that goes with bicarbonate and can be boiled out. */
  public static final Figure<Hardness> TEMPORARY_HARDNESS =
      ClosedForm.figure(
          "temporary hardness",
          Scales.HARDNESS_AS_CACO3,
          "the lesser of total hardness and carbonate alkalinity",
          "",
          Figure.list(TOTAL_HARDNESS, Figures.CARBONATE_ALKALINITY),
          x -> ClosedForms.temporaryHardness(x[0], x[1]));

  /** The hardness that stays on boiling. */
  public static final Figure<Hardness> PERMANENT_HARDNESS =
      ClosedForm.figure(
          "permanent hardness",
          Scales.HARDNESS_AS_CACO3,
          "total hardness - temporary hardness",
          "",
          Figure.list(TOTAL_HARDNESS, TEMPORARY_HARDNESS),
          x -> x[0] - x[1]);

  /** The residual alkalinity after Kolbach, of the carbonate alkalinity. */
  public static final Figure<ResidualAlkalinity> RESIDUAL_ALKALINITY =
      ClosedForm.figure(
          "residual alkalinity",
          Scales.RESIDUAL_ALKALINITY_AS_CACO3,
          KOLBACH_TEXT,
          KOLBACH,
          Figure.list(Figures.CARBONATE_ALKALINITY, CALCIUM_HARDNESS, MAGNESIUM_HARDNESS),
          x -> ClosedForms.residualAlkalinity(x[0], x[1], x[2]));

  /** The ratio of sulfate to chloride by equivalents. */
  public static final Figure<Double> SULFATE_TO_CHLORIDE_BY_EQUIVALENTS =
      ClosedForm.ratio(
          "sulfate to chloride by equivalents",
          Scale.number("by equivalents", 2),
          "sulfate / chloride, both in equivalents",
          ATOMIC_WEIGHTS,
          Figures.SULFATE,
          Figures.CHLORIDE,
          Ion.SULFATE.milliequivalentsPerMilligram() / Ion.CHLORIDE.milliequivalentsPerMilligram());

  /**
   * The sum of calcium, magnesium, sodium and potassium, and of ammonium, iron and manganese where
   * they are reported; what is unknown counts as absent, with a notice for the first four.
   */
  public static final Figure<ChargeConcentration> SUM_OF_CATIONS =
      sum(
          "sum of cations",
          "calcium + magnesium + sodium + potassium (+ ammonium + iron + manganese), in equivalents",
          Figure.list(Figures.CALCIUM, Figures.MAGNESIUM, Figures.SODIUM, Figures.POTASSIUM),
          Figure.list(
              minor(Constituent.AMMONIUM), minor(Constituent.IRON), minor(Constituent.MANGANESE)),
          Ion.CALCIUM.milliequivalentsPerMilligram(),
          Ion.MAGNESIUM.milliequivalentsPerMilligram(),
          Ion.SODIUM.milliequivalentsPerMilligram(),
          Ion.POTASSIUM.milliequivalentsPerMilligram(),
          Ion.AMMONIUM.milliequivalentsPerMilligram(),
          Constituent.IRON.milliequivalentsPerMilligram(),
          Constituent.MANGANESE.milliequivalentsPerMilligram());

  /**
   * The sum of carbonate alkalinity, sulfate, chloride and nitrate, and of nitrite, fluoride and
   * phosphate where they are reported, as a positive number; what is unknown counts as absent, with
   * a notice for the first four. Hydroxide is neglected. Phosphate counts one equivalent a mole:
   * the others are in the alkalinity, which was titrated.
   */
  public static final Figure<ChargeConcentration> SUM_OF_ANIONS =
      sum(
          "sum of anions",
          "carbonate alkalinity + sulfate + chloride + nitrate (+ nitrite + fluoride + phosphate),"
              + " in equivalents",
          Figure.list(
              Figures.CARBONATE_ALKALINITY, Figures.SULFATE, Figures.CHLORIDE, Figures.NITRATE),
          Figure.list(
              minor(Constituent.NITRITE),
              minor(Constituent.FLUORIDE),
              minor(Constituent.PHOSPHATE)),
          1 / CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3(),
          Ion.SULFATE.milliequivalentsPerMilligram(),
          Ion.CHLORIDE.milliequivalentsPerMilligram(),
          Ion.NITRATE.milliequivalentsPerMilligram(),
          Constituent.NITRITE.milliequivalentsPerMilligram(),
          Constituent.FLUORIDE.milliequivalentsPerMilligram(),
          Constituent.PHOSPHATE.milliequivalentsPerMilligram());

  /**
   * The ion balance: the difference of cations and anions as a percentage of the sum of both, -100
   * to 100, after Standard Methods 1030 E; 0 for a water without ions. An ion that is unknown
   * counts as absent, with a notice.
   */
  public static final Figure<Double> ION_BALANCE =
      ClosedForm.figure(
          "ion balance",
          Scale.number("%", 1),
          "100 x (cations - anions) / (cations + anions)",
          "Standard Methods 1030 E",
          Figure.list(SUM_OF_CATIONS, SUM_OF_ANIONS),
          x -> ClosedForms.ionBalancePercentage(x[0], x[1]));

  /**
   * The ion balance as German reports state it, relative to the mean of both sums and so twice
   * {@link #ION_BALANCE}. Source: DIN 38402-62, its formula from memory.
   */
  public static final Figure<Double> ION_BALANCE_OF_MEAN =
      ClosedForm.figure(
          "ion balance of the mean",
          Scale.number("%", 1),
          "100 x (cations - anions) / (0.5 x (cations + anions))",
          "DIN 38402-62, from memory",
          Figure.list(SUM_OF_CATIONS, SUM_OF_ANIONS),
          x -> 2 * ClosedForms.ionBalancePercentage(x[0], x[1]));

  /**
   * The conductivity at 25 °C that the ions give: the sum of their limiting conductivities, times
   * the square of the activity coefficient of a univalent ion. An ion that is unknown counts as
   * absent, with a notice; the alkalinity conducts as bicarbonate. For waters of up to about 0.05
   * mol/L. Source: Standard Methods 2510, from memory. On real waters it lies some 4 % below what
   * is measured (docs, reports on real waters).
   */
  public static final Figure<Conductivity> CONDUCTIVITY = Conductance.figure();

  private WaterFigures() {}

  /**
   * Returns the residual alkalinity of the alkalinity that a titration to an end point finds. With
   * the pH of a mash as the end point it counts what the alkalinity takes up in the mash.
   *
   * @param endPoint the end point
   * @return the figure, after Kolbach
   */
  public static Figure<ResidualAlkalinity> residualAlkalinity(PH endPoint) {
    Objects.requireNonNull(endPoint, "endPoint");
    return Figure.of(
        "residual alkalinity",
        Map.of("to", endPoint.toString()),
        Scales.RESIDUAL_ALKALINITY_AS_CACO3,
        new ClosedForm(
            KOLBACH_TEXT,
            KOLBACH,
            Figure.list(
                Figures.titrationAlkalinity(endPoint)
                    .shownIn(Scales.titrationAlkalinityAsCaCO3(endPoint)),
                CALCIUM_HARDNESS,
                MAGNESIUM_HARDNESS),
            x -> ClosedForms.residualAlkalinity(x[0], x[1], x[2])));
  }

  /**
   * Returns what one ion would have to be, besides what is reported of it, if it alone were to
   * close the ion balance: an assumption that puts all errors of the report into one ion.
   *
   * @param constituent the ion, and the basis of the number
   * @return its concentration; without a value where the other charge is lacking
   * @throws IllegalArgumentException for silica, which has no charge
   */
  public static Figure<MassConcentration> closing(Constituent constituent) {
    Ion ion =
        Objects.requireNonNull(constituent, "constituent")
            .ion()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        constituent.heading() + ": cannot close a balance; it has no charge"));
    int sign = Integer.signum(ion.charge());
    double perEquivalent =
        1 / (constituent.milliequivalentsPerMilligram() * constituent.speciesPerStated());
    return ClosedForm.figure(
        constituent.heading() + " that would close the ion balance",
        Scales.MILLIGRAMS_PER_LITRE,
        "the difference of the sums of cations and anions, all of it taken as "
            + constituent.heading()
            + " (assumed)",
        ATOMIC_WEIGHTS,
        Figure.list(SUM_OF_CATIONS, SUM_OF_ANIONS),
        x -> {
          double lacking = sign * (x[1] - x[0]);
          return lacking < 0 ? Double.NaN : lacking * perEquivalent;
        });
  }

  private static Figure<Hardness> hardness(String name, Ion ion, Figure<?> concentration) {
    double perMilligram = ion.milliequivalentsPerMilligram() * CACO3;
    return ClosedForm.figure(
        name,
        Scales.HARDNESS_AS_CACO3,
        ion.name() + " in equivalents",
        ATOMIC_WEIGHTS,
        List.of(concentration),
        x -> perMilligram * x[0]);
  }

  private static Figure<?> minor(Constituent constituent) {
    return ReportedFigure.of(constituent.ion().orElseThrow());
  }

  private static Figure<ChargeConcentration> sum(
      String name,
      String text,
      List<Figure<?>> ions,
      List<Figure<?>> minor,
      double... milliequivalents) {
    ToDoubleFunction<double[]> sum =
        x -> {
          double all = 0;
          for (int i = 0; i < x.length; i++) {
            all += milliequivalents[i] * x[i];
          }
          return all;
        };
    return ClosedForm.countingAbsent(
        name,
        MILLIEQUIVALENTS_PER_LITRE,
        text,
        ATOMIC_WEIGHTS,
        SolutionCode.COUNTED_AS_ABSENT,
        ions,
        minor,
        sum);
  }
}
