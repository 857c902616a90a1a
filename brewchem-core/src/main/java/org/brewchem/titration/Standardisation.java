package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.GrubbsTest;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.Replicates;
import org.brewchem.uncertainty.UncertainValue;

/**
 * The concentration of a titrant, found from weighed portions of a primary standard: c = m P z / (M
 * V), with the mass m and purity P of the standard, its molar mass M and equivalents z, and the
 * titre V. Immutable.
 *
 * <p>The budget follows example A2 of EURACHEM/CITAC Guide CG 4 (2012, from memory): the balance
 * enters twice, as a mass is a difference of two readings; the volume holds at 20 °C.
 */
public final class Standardisation {

  /** Half width of a uniform distribution, as in example A2. */
  private static final double PURITY_HALF_WIDTH = 0.0005;

  private static final double SIGNIFICANCE = 0.05;

  private final Titrant.Substance substance;
  private final List<Weighing> weighings;
  private final double[] concentrations;
  private final Optional<Replicates> replicates;
  private final Budget budget;
  private final List<Finding> findings;

  private Standardisation(
      Titrant.Substance substance, Apparatus apparatus, List<Weighing> weighings) {
    this.substance = substance;
    this.weighings = weighings;
    this.concentrations =
        weighings.stream()
            .mapToDouble(w -> w.equivalentsPerLitre() / substance.equivalentsPerMole())
            .toArray();
    this.replicates =
        weighings.size() < 2
            ? Optional.empty()
            : Optional.of(Replicates.of("mol/L", concentrations));
    this.budget = model(apparatus).linear();
    this.findings = List.copyOf(examine(apparatus));
  }

  static Standardisation of(
      Titrant.Substance substance, Apparatus apparatus, List<Weighing> weighings) {
    if (weighings.isEmpty()) {
      throw Checks.outOfRange("weighings", 0, "", "1 or more");
    }
    for (Weighing weighing : weighings) {
      if (!weighing.standard().standardises(substance)) {
        throw new IllegalArgumentException(
            "weighings: "
                + weighing
                + " does not standardise "
                + substance
                + "; alkali needs KHP, acid needs sodium carbonate");
      }
    }
    return new Standardisation(substance, apparatus, weighings);
  }

  private double mean() {
    return replicates.map(Replicates::mean).orElse(concentrations[0]);
  }

  private MeasurementModel model(Apparatus apparatus) {
    Weighing.Standard standard = weighings.get(0).standard();
    double grams = weighings.stream().mapToDouble(w -> w.mass().inGrams()).average().orElseThrow();
    double titre =
        weighings.stream().mapToDouble(w -> w.titre().inMillilitres()).average().orElseThrow();
    double balance = apparatus.balanceTolerance().inGrams();
    double mean = mean();
    return MeasurementModel.of("concentration of " + substance, "mol/L")
        .with(
            Input.uniform("balance, tare", 0, balance, "g"),
            Input.uniform("balance, gross", 0, balance, "g"),
            Input.uniform("purity of " + standard.label, 1, PURITY_HALF_WIDTH, ""),
            Input.normal(
                "molar mass of " + standard.label,
                standard.gramsPerMole,
                standard.uncertaintyOfGramsPerMole,
                "g/mol"),
            Input.triangular("titre", titre, apparatus.buretteTolerance().inMillilitres(), "mL"),
            apparatus.temperatureInput(),
            repeatability(apparatus))
        .calculatedBy(
            x ->
                mean
                    * (1 + (x[1] - x[0]) / grams)
                    * x[2]
                    * (standard.gramsPerMole / x[3])
                    * (titre / x[4])
                    / (1 - Apparatus.EXPANSION_PER_KELVIN * x[5])
                    * x[6]);
  }

  private Input repeatability(Apparatus apparatus) {
    return Repeatability.input(apparatus, replicates, weighings.size());
  }

  private List<Finding> examine(Apparatus apparatus) {
    List<Finding> list = new ArrayList<>(Repeatability.findings(apparatus, replicates));
    grubbs()
        .filter(GrubbsTest::isOutlier)
        .ifPresent(
            test ->
                list.add(
                    Finding.ofRow(
                        Finding.Kind.OUTLIER,
                        test.suspectIndex() + 1,
                        String.format(
                            Locale.ROOT,
                            "%s mol/L lies farther from the others than chance explains (%s); look"
                                + " for a cause, it is not dropped",
                            NumberText.significant(test.suspectValue(), 5),
                            test))));
    return list;
  }

  /**
   * Returns the weighings.
   *
   * @return an unmodifiable list of one or more
   */
  public List<Weighing> weighings() {
    return weighings;
  }

  /**
   * Returns what each weighing gives.
   *
   * @return mol/L, in the order of the weighings, in a new array
   */
  public double[] concentrationsInMolesPerLitre() {
    return concentrations.clone();
  }

  /**
   * Returns the concentration with its standard uncertainty: the mean over the weighings.
   *
   * @return the concentration in mol/L
   */
  public UncertainValue concentration() {
    return budget.result();
  }

  /**
   * Returns the spread of the weighings.
   *
   * @return mean and standard deviation in mol/L; empty for a single weighing
   */
  public Optional<Replicates> replicates() {
    return replicates;
  }

  /**
   * Returns the relative standard deviation of the weighings.
   *
   * @return a fraction; empty for a single weighing
   */
  public OptionalDouble relativeStandardDeviation() {
    return replicates.isPresent()
        ? OptionalDouble.of(replicates.get().relativeStandardDeviation())
        : OptionalDouble.empty();
  }

  /**
   * Returns Grubbs' test for one outlier among the weighings, at a significance of 5 %.
   *
   * @return the test; empty for fewer than three weighings
   */
  public Optional<GrubbsTest> grubbs() {
    return replicates.filter(r -> r.count() > 2).map(r -> r.grubbs(SIGNIFICANCE));
  }

  /**
   * Returns which input contributes what to the uncertainty.
   *
   * @return the budget in mol/L
   */
  public Budget budget() {
    return budget;
  }

  /**
   * Returns what is noteworthy.
   *
   * @return an unmodifiable list, empty when there is nothing
   */
  public List<Finding> findings() {
    return findings;
  }

  /**
   * Returns the arithmetic, line by line.
   *
   * @return the explanation
   */
  public Explanation explain() {
    Explanation.Lines lines = new Explanation.Lines();
    Weighing.Standard standard = weighings.get(0).standard();
    lines.add(
        "molar mass of " + standard.label,
        NumberText.plain(standard.gramsPerMole) + " g/mol",
        "atomic weights CIAAW 2021");
    for (int i = 0; i < concentrations.length; i++) {
      Weighing w = weighings.get(i);
      lines.add(
          "c" + (i + 1),
          String.format(
              Locale.ROOT,
              "%s g x %d Eq/mol / (%s g/mol x %s L x %d Eq/mol) = %s mol/L",
              NumberText.plain(w.mass().inGrams()),
              standard.equivalentsPerMole,
              NumberText.plain(standard.gramsPerMole),
              NumberText.plain(w.titre().inLitres()),
              substance.equivalentsPerMole(),
              NumberText.significant(concentrations[i], 6)));
    }
    if (replicates.isPresent()) {
      lines.add("mean", NumberText.significant(mean(), 6) + " mol/L");
      lines.add(
          "relative standard deviation",
          NumberText.significant(100 * replicates.get().relativeStandardDeviation(), 2) + " %");
    }
    lines.add("c(" + substance + ")", concentration().expanded(2).toString());
    return lines.done();
  }

  /** Prints the concentration with U (k = 2), the number of weighings and their spread. */
  @Override
  public String toString() {
    String text = substance + " " + concentration().expanded(2) + ", n = " + weighings.size();
    return relativeStandardDeviation().isPresent()
        ? text
            + ", RSD "
            + NumberText.significant(100 * relativeStandardDeviation().getAsDouble(), 2)
            + " %"
        : text;
  }
}
