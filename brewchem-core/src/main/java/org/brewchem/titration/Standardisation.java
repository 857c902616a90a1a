package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MolarMass;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.GrubbsTest;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.Replicates;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.brewchem.uncertainty.UncertainValue;

/**
 * The concentration of a titrant, found from weighed portions of a primary standard: c = m P z / (M
 * V), with the mass m and purity P of the standard, its molar mass M and equivalents z, and the
 * titre V. Immutable.
 *
 * <p>The budget follows example A2 of EURACHEM/CITAC Guide CG 4 (2012, from memory): the balance
 * enters twice, as a mass is a difference of two readings; the volume holds at 20 °C.
 */
public final class Standardisation implements Answering {

  /** Half width of a uniform distribution, as in example A2. */
  private static final double PURITY_HALF_WIDTH = 0.0005;

  private static final double SIGNIFICANCE = 0.05;
  private static final UsualRange USUAL_MASS = UsualRange.named("mass of a primary standard");
  private static final UsualRange USUAL_TITRE = UsualRange.named("titre of a primary standard");

  /** Relative difference of one formula computed in two orders. */
  private static final double ROUNDING = 1e-12;

  private static final Scale<Mass> GRAMS = Scale.of("g", Mass::inGrams, Mass::ofGrams, 4);
  private static final Scale<MolarMass> GRAMS_PER_MOLE =
      Scale.of("g/mol", MolarMass::inGramsPerMole, MolarMass::ofGramsPerMole, 4);

  private final TitrantSubstance substance;
  private final List<Weighing> weighings;
  private final double[] concentrations;
  private final Optional<Replicates> replicates;
  private final Budget budget;
  private final Step concentration;

  private Standardisation(
      TitrantSubstance substance, Apparatus apparatus, List<Weighing> weighings) {
    this.substance = substance;
    this.weighings = weighings;
    this.concentrations =
        weighings.stream()
            .mapToDouble(w -> w.equivalentsPerLitre() / substance.equivalentsPerMole())
            .toArray();
    for (int i = 0; i < concentrations.length; i++) {
      TitrantSolution.possible(
          "concentration of " + substance + " by " + weighings.get(i), concentrations[i]);
    }
    this.replicates =
        weighings.size() < 2
            ? Optional.empty()
            : Optional.of(Replicates.of("mol/L", concentrations));
    this.budget = model(apparatus).linear();
    this.concentration = found(examine(apparatus));
  }

  static Standardisation of(
      TitrantSubstance substance, Apparatus apparatus, List<Weighing> weighings) {
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
    Weighing.Standard standard = standard();
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

  /** What is unusual about the sizes of weighings and titres, and of what they give. */
  private List<Notice> sizes() {
    List<Notice> list = new ArrayList<>();
    for (int i = 0; i < weighings.size(); i++) {
      Weighing weighing = weighings.get(i);
      String label = weighing.standard().label;
      USUAL_MASS.judge("mass of " + label, i + 1L, weighing.mass().inGrams()).ifPresent(list::add);
      USUAL_TITRE
          .judge("titre of " + label, i + 1L, weighing.titre().inMillilitres())
          .ifPresent(list::add);
    }
    TitrantSolution.unusual(substance, mean()).ifPresent(list::add);
    return list;
  }

  private List<Notice> examine(Apparatus apparatus) {
    List<Notice> list =
        new ArrayList<>(
            Repeatability.notices(
                "weighings of " + standard().label,
                "standardisation",
                apparatus,
                replicates,
                weighings.stream()
                    .mapToDouble(w -> w.titre().inMillilitres())
                    .average()
                    .orElseThrow()));
    list.addAll(sizes());
    return list;
  }

  private Weighing.Standard standard() {
    return weighings.get(0).standard();
  }

  /** The mean of what each weighing gives, as one source of uncertainty from now on. */
  private Step found(List<Notice> notices) {
    Weighing.Standard standard = standard();
    Step molarMass =
        Step.of("molar mass of " + standard.label, GRAMS_PER_MOLE, Step.Kind.STATED)
            .text("by its formula", "atomic weights CIAAW 2021")
            .origin(Origin.ASSUMED)
            .found(
                Traced.of(
                    Source.of(
                        "molar mass of " + standard.label,
                        standard.gramsPerMole,
                        standard.uncertaintyOfGramsPerMole,
                        "g/mol")));
    List<Step> single = new ArrayList<>();
    for (int i = 0; i < concentrations.length; i++) {
      single.add(byWeighing(i, molarMass));
    }
    String name = TitrationFigures.concentrationOf(substance);
    UncertainValue result = budget.result();
    return Step.of(name, TitrationFigures.TITRANT_CONCENTRATION.scale(), Step.Kind.FORMULA)
        .text(
            single.size() == 1 ? "c1" : "mean of c1 to c" + single.size(),
            "uncertainty after EURACHEM/CITAC Guide CG 4, example A2")
        .inputs(single)
        .notices(notices)
        .detail(
            () ->
                new Step.Detail(
                    replicates.isEmpty()
                        ? List.of()
                        : List.of(
                            "relative standard deviation "
                                + NumberText.significant(
                                    100 * replicates.get().relativeStandardDeviation(), 2)
                                + " %"),
                    single.stream()
                            .mapToDouble(c -> c.found().orElseThrow().value())
                            .average()
                            .orElseThrow()
                        - result.value(),
                    ROUNDING * result.value()))
        .found(
            Traced.of(
                Source.of(
                    name,
                    result.value(),
                    result.standardUncertainty(),
                    result.degreesOfFreedom(),
                    "mol/L")));
  }

  /** What one weighing gives; the uncertainty of a single one is not known. */
  private Step byWeighing(int i, Step molarMass) {
    Weighing weighing = weighings.get(i);
    Weighing.Standard standard = weighing.standard();
    Step mass = stated("mass " + (i + 1), GRAMS, weighing.mass(), "g");
    Step titre = stated("titre " + (i + 1), TitrationFigures.MILLILITRES, weighing.titre(), "mL");
    double factor = (double) standard.equivalentsPerMole / substance.equivalentsPerMole();
    Traced computed =
        value(mass).dividedBy(value(molarMass).times(value(titre))).times(1000 * factor);
    return Step.of("c" + (i + 1), TitrationFigures.TITRANT_CONCENTRATION.scale(), Step.Kind.FORMULA)
        .text(
            String.format(
                Locale.ROOT,
                "%s g x %d Eq/mol / (%s g/mol x %s L x %d Eq/mol)",
                NumberText.plain(weighing.mass().inGrams()),
                standard.equivalentsPerMole,
                NumberText.plain(standard.gramsPerMole),
                NumberText.plain(weighing.titre().inLitres()),
                substance.equivalentsPerMole()),
            "")
        .inputs(List.of(mass, molarMass, titre))
        .detail(
            () ->
                new Step.Detail(
                    List.of(), computed.value() - concentrations[i], ROUNDING * concentrations[i]))
        .found(computed.withValue(concentrations[i]));
  }

  private static <Q> Step stated(String name, Scale<Q> scale, Q value, String unit) {
    return Step.of(name, scale, Step.Kind.STATED)
        .origin(Origin.MEASURED)
        .text("read", "")
        .found(Traced.stated(name, scale.in(value), OptionalDouble.empty(), unit));
  }

  private static Traced value(Step step) {
    return step.found().orElseThrow();
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
   * Returns the concentration: the mean over the weighings.
   *
   * @return the concentration in mol/L with its uncertainty, one source from now on
   */
  public Answer<AmountConcentration> concentration() {
    return Answer.of(TitrationFigures.TITRANT_CONCENTRATION, concentration);
  }

  @Override
  public Step step(Figure<?> figure) {
    return figure.equals(TitrationFigures.TITRANT_CONCENTRATION)
        ? concentration
        : figure.rule().find(figure, this);
  }

  @Override
  public String kind() {
    return "standardisation";
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
   * Returns what is notable.
   *
   * @return an unmodifiable list, empty when there is nothing
   */
  public List<Notice> notices() {
    return concentration.notices();
  }

  /** Prints the concentration with U, the number of weighings and their spread. */
  @Override
  public String toString() {
    String text = substance + " " + concentration() + ", n = " + weighings.size();
    return relativeStandardDeviation().isPresent()
        ? text
            + ", RSD "
            + NumberText.significant(100 * relativeStandardDeviation().getAsDouble(), 2)
            + " %"
        : text;
  }
}
