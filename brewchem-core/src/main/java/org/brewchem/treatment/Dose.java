package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.uncertainty.Traced;

/**
 * A dose of an acid, a base or a salt that brings a figure of a liquid to a wanted value: {@code
 * Dose.of(beer, lactic).to(pH(4.2))}. A proposal, never an order: see {@link #cautions()}.
 *
 * <p>One search finds it, whatever the figure: the moles per litre at which the figure, evaluated
 * on the charge balance with the volume of the reagent counted, has the value wanted. A constraint
 * with an aim is dosed to the aim. One without is dosed to its nearer limit, and says that half of
 * the outcomes lie beyond it.
 *
 * <p>It has two uncertainties. That of the dose itself, {@link #answer answer(MASS)}, tells by how
 * much the dose that is needed may differ, because the figure and the label of the reagent may.
 * That of the liquid after the dose, {@link #after()}, holds for the stated dose: what was measured
 * before and the strength of the reagent. Immutable.
 *
 * @param <L> the kind of liquid
 */
public final class Dose<L extends Liquid> implements Answering {

  /** The amount of the compound per litre of the liquid before, by the label. */
  public static final Figure<AmountConcentration> AMOUNT =
      figure("amount of the dose", Scales.MILLIMOLES_PER_LITRE, dose -> OptionalDouble.of(1000));

  /** The mass of the reagent per volume of the liquid before. */
  public static final Figure<MassConcentration> MASS =
      figure(
          "mass of the dose",
          Scales.GRAMS_PER_HECTOLITRE,
          dose -> OptionalDouble.of(dose.supply.gramsPerMole() * 100));

  /** The volume of the reagent per volume of the liquid before; unknown without a density. */
  public static final Figure<VolumeRatio> VOLUME =
      figure(
          "volume of the dose",
          Scales.MILLILITRES_PER_HECTOLITRE,
          dose ->
              dose.supply.litresPerMole().isPresent()
                  ? OptionalDouble.of(dose.supply.litresPerMole().getAsDouble() * 1e5)
                  : OptionalDouble.empty());

  /** Relative step of the dose in a central difference. */
  private static final double STEP = 1e-4;

  private final L before;
  private final L after;
  private final Supply supply;
  private final Contents known;
  private final Contents prepared;
  private final Constraint constraint;
  private final boolean atLimit;
  private final double targetInOwnScale;
  private final double molesPerLitre;
  private final Addition addition;
  private final Step own;
  private final Step amount;

  private Dose(Request<L> request, Constraint constraint) {
    this.before = request.liquid;
    this.supply = request.supply;
    this.constraint = constraint;
    this.known = before.contents();
    this.prepared = Mixture.prepared(known, supply);
    Figure<?> figure = constraint.figure();
    Permitted.of(before.kind()).ifPresent(use -> Permitted.in(use, Addition.of(supply, 0)));
    own = before.step(figure);
    if (own.found().isEmpty()) {
      throw new UnknownFigureException(figure.title(), own.whyUnknown());
    }
    double shown = figure.inShown(own.found().get()).value();
    double target = target(constraint, shown);
    atLimit = constraint.aim().isEmpty();
    targetInOwnScale = Shown.inOwnScale(figure, target);
    Optional<DoubleUnaryOperator> reading =
        Reading.of(figure, new Mixture(prepared, supply), this::ownStep);
    double found = search(reading.orElse(this::byTheLiquid), figure, target);
    L there = after(found);
    Step reached = there.step(figure);
    if (reading.isPresent() && !isReached(reached)) {
      // The liquid answers this figure in a way of its own.
      reading = Optional.empty();
      found = search(this::byTheLiquid, figure, target);
      there = after(found);
      reached = there.step(figure);
    }
    molesPerLitre = found;
    addition = Addition.of(supply, found);
    after = there;
    amount = amount(reached, reading.orElse(this::byTheLiquid));
  }

  /**
   * Starts with a liquid and a reagent as bought. It is measured out by volume if its density is
   * known, else weighed.
   *
   * @param liquid the liquid
   * @param reagent an acid, a base or a salt
   * @param <L> the kind of liquid
   * @return a request that wants its target
   */
  public static <L extends Liquid> Request<L> of(L liquid, Reagent reagent) {
    return new Request<>(
        liquid, reagent.density().isPresent() ? Supply.poured(reagent) : Supply.weighed(reagent));
  }

  /**
   * Starts with a liquid and a pure compound, known exactly, whose volume is neglected.
   *
   * @param liquid the liquid
   * @param compound an acid, a base or a salt
   * @param <L> the kind of liquid
   * @return a request that wants its target
   */
  public static <L extends Liquid> Request<L> of(L liquid, Compound compound) {
    return new Request<>(liquid, Supply.pure(compound));
  }

  /**
   * The question for a dose, which still wants its target. Immutable.
   *
   * @param <L> the kind of liquid
   */
  public static final class Request<L extends Liquid> {

    private final L liquid;
    private final Supply supply;

    private Request(L liquid, Supply supply) {
      this.liquid = Objects.requireNonNull(liquid, "liquid");
      this.supply = supply;
    }

    /**
     * Aims at what acts at once: if a part of the acid is bound in esters, as in strong lactic
     * acid, that part does not count. The liquid goes beyond the target as the esters hydrolyse.
     * Without this a dose aims at the liquid after hydrolysis and does not overshoot.
     *
     * @return the request
     */
    public Request<L> atOnce() {
      return new Request<>(liquid, supply.atOnce());
    }

    /**
     * Finds the dose that meets a constraint: to its aim, or without one to the nearer limit.
     *
     * @param constraint the constraint, on any figure of the liquid
     * @return the dose
     * @throws UnreachableException if the liquid meets it already, or no dose does
     * @throws UnknownFigureException if the figure of the liquid is unknown
     */
    public Dose<L> to(Constraint constraint) {
      return new Dose<>(this, constraint);
    }

    /**
     * Finds the dose to a value of a figure.
     *
     * @param figure the figure
     * @param value what is wanted
     * @param <Q> its meaning
     * @return the dose
     * @throws UnreachableException if the liquid has it already, or no dose reaches it
     * @throws UnknownFigureException if the figure of the liquid is unknown
     */
    public <Q> Dose<L> to(Figure<Q> figure, Q value) {
      return to(Constraint.exactly(figure, value));
    }

    /**
     * Finds the dose to a pH.
     *
     * @param pH the pH
     * @return the dose
     * @throws UnreachableException if the liquid has it already, or no dose reaches it
     * @throws UnknownFigureException if the pH of the liquid is unknown
     */
    public Dose<L> to(PH pH) {
      return to(Figures.PH_VALUE, pH);
    }

    /**
     * Finds the dose to a titratable acidity, to its end point.
     *
     * @param acidity the acidity
     * @return the dose
     * @throws UnreachableException if the liquid has it already, or no dose reaches it
     * @throws UnknownFigureException if the acidity of the liquid is unknown
     */
    public Dose<L> to(TitratableAcidity acidity) {
      return to(Figures.titratableAcidity(acidity.endPoint()), acidity);
    }

    /**
     * Finds the dose to a carbonate alkalinity.
     *
     * @param alkalinity the alkalinity
     * @return the dose
     * @throws UnreachableException if the liquid has it already, or no dose reaches it
     * @throws UnknownFigureException if the alkalinity of the liquid is unknown
     */
    public Dose<L> to(CarbonateAlkalinity alkalinity) {
      return to(Figures.CARBONATE_ALKALINITY, alkalinity);
    }

    /**
     * Finds the dose to a titration alkalinity, to its end point.
     *
     * @param alkalinity the alkalinity
     * @return the dose
     * @throws UnreachableException if the liquid has it already, or no dose reaches it
     * @throws UnknownFigureException if the alkalinity of the liquid is unknown
     */
    public Dose<L> to(TitrationAlkalinity alkalinity) {
      return to(Figures.titrationAlkalinity(alkalinity.endPoint()), alkalinity);
    }
  }

  private double target(Constraint constraint, double shown) {
    if (constraint.aim().isPresent()) {
      return constraint.aim().getAsDouble();
    }
    double excess = constraint.excess(shown);
    if (excess == 0) {
      throw new UnreachableException(
          constraint.figure().title(),
          shown,
          shown,
          constraint.figure().shown(),
          UnreachableException.Reason.ALREADY_THERE,
          supply.name());
    }
    return shown - excess;
  }

  private double search(DoubleUnaryOperator reading, Figure<?> figure, double target) {
    return new DoseSearch(reading, targetInOwnScale)
        .find(
            (reason, nearest) ->
                new UnreachableException(
                    figure.title(),
                    target,
                    figure.inShown(Traced.exact(nearest)).value(),
                    figure.shown(),
                    reason,
                    supply.name()));
  }

  private double byTheLiquid(double moles) {
    Figure<?> figure = constraint.figure();
    Step step = after(moles).step(figure);
    return step.found()
        .orElseThrow(() -> new UnknownFigureException(figure.title(), step.whyUnknown()))
        .value();
  }

  /** A treated liquid is a liquid of the same kind, as {@link Liquid} requires. */
  @SuppressWarnings("unchecked")
  private L after(double moles) {
    return (L) before.after(Addition.of(supply, moles).preparedFor(known, prepared));
  }

  private boolean isReached(Step step) {
    return step.found().isPresent()
        && Math.abs(step.found().get().value() - targetInOwnScale) <= tolerance();
  }

  private double tolerance() {
    return DoseSearch.TOLERANCE * Math.max(1, Math.abs(targetInOwnScale));
  }

  private Step ownStep(Figure<?> figure) {
    return figure.equals(constraint.figure()) ? own : before.step(figure);
  }

  private Step amount(Step reached, DoubleUnaryOperator reading) {
    double step = STEP * molesPerLitre;
    double slope =
        (reading.applyAsDouble(molesPerLitre + step) - reading.applyAsDouble(molesPerLitre - step))
            / (2 * step);
    Traced needed =
        Traced.linear(
                molesPerLitre,
                new Traced[] {reached.found().orElseThrow()},
                new double[] {-1 / slope})
            .times(1000);
    return Step.of(AMOUNT.title(), AMOUNT.scale(), Step.Kind.ROOT)
        .origin(Origin.COMPUTED)
        .text("until the " + constraint + (atLimit ? ", to the limit" : ""), "")
        .inputs(List.of(own, reached))
        .notices(ownNotices())
        .detail(this::shown)
        .found(needed);
  }

  private Step.Detail shown() {
    Figure<?> figure = constraint.figure();
    double reached = after.step(figure).found().orElseThrow().value();
    List<String> lines = new ArrayList<>();
    lines.add("before the dose: " + own);
    lines.add("after " + addition.text() + ": " + Shown.text(figure, reached));
    lines.add("wanted: " + Shown.text(figure, targetInOwnScale));
    lines.addAll(supply.arithmetic(molesPerLitre));
    if (supply.actsInTwoSteps()) {
      lines.add("at once: " + atOnce().answer(figure));
      lines.add("after hydrolysis: " + afterHydrolysis().answer(figure));
    }
    Answer<PH> pH = after.answer(Figures.PH_VALUE);
    if (pH.isStated()) {
      lines.add("delivered at " + pH + ": " + delivered(pH.value()));
    }
    return new Step.Detail(lines, reached - targetInOwnScale, tolerance());
  }

  private List<Notice> ownNotices() {
    return atLimit
        ? List.of(
            Notice.of(
                TreatmentCode.AT_THE_LIMIT,
                constraint.figure().title(),
                "the dose goes to the limit, "
                    + Shown.text(constraint.figure(), targetInOwnScale)
                    + ": half of the outcomes lie beyond it. State an aim for a safe dose"))
        : List.of();
  }

  /**
   * Returns the liquid before the dose.
   *
   * @return the liquid
   */
  public L before() {
    return before;
  }

  /**
   * Returns the liquid after the stated dose, grown by the volume of the reagent: as the dose aims
   * at it, which is after hydrolysis unless {@link Request#atOnce()} was asked for.
   *
   * @return the liquid
   */
  public L after() {
    return after;
  }

  /**
   * Returns the liquid just after the dose, when only free acid has acted.
   *
   * @return the liquid; {@link #after()} where nothing of the reagent is bound in esters
   */
  public L atOnce() {
    return acting(supply.atOnce());
  }

  /**
   * Returns the liquid when all of the dose has acted, after the esters have hydrolysed: days or
   * weeks in the cold.
   *
   * @return the liquid; {@link #after()} where nothing of the reagent is bound in esters
   */
  public L afterHydrolysis() {
    return acting(supply.afterHydrolysis());
  }

  @SuppressWarnings("unchecked") // a treated liquid is a liquid of its own kind
  private L acting(Supply acting) {
    return acting == supply || !supply.actsInTwoSteps()
        ? after
        : (L) before.after(Addition.of(acting, molesPerLitre));
  }

  /**
   * Returns the dose as a treatment, which can be applied to another liquid too.
   *
   * @return the treatment
   */
  public Treatment treatment() {
    return addition;
  }

  /**
   * Returns the amount of the compound by the label.
   *
   * @return per litre of the liquid before; {@link #answer answer(AMOUNT)} has its uncertainty
   */
  public AmountConcentration perLitre() {
    return AmountConcentration.ofMolesPerLitre(molesPerLitre);
  }

  /**
   * Returns what to measure out for a volume of the liquid.
   *
   * @param volume the volume of the liquid before the dose, above 0
   * @return amount, mass and, if the density is known, volume of the reagent
   * @throws IllegalArgumentException if the volume is 0
   * @throws IllegalStateException if the compound has no molar mass
   */
  public Portion into(Volume volume) {
    Checks.positive("volume of the " + before.kind(), volume.inLitres(), "L");
    double moles = molesPerLitre * volume.inLitres();
    OptionalDouble litres = supply.litresPerMole();
    return new Portion(
        AmountOfSubstance.ofMoles(moles),
        Mass.ofGrams(moles * supply.gramsPerMole()),
        litres.isPresent()
            ? Optional.of(Volume.ofLitres(moles * litres.getAsDouble()))
            : Optional.empty(),
        cautions());
  }

  /**
   * Answers a figure: {@link #AMOUNT}, {@link #MASS} and {@link #VOLUME} of the dose itself, any
   * other of the liquid after it.
   *
   * @param figure the figure
   * @param <Q> the meaning of its value
   * @return the answer
   */
  public <Q> Answer<Q> answer(Figure<Q> figure) {
    return Answer.of(figure, this);
  }

  /**
   * Returns the figure that was aimed at, after the dose.
   *
   * @return the answer, with its uncertainty after the stated dose
   */
  public Answer<?> reached() {
    return after.answer(constraint.figure());
  }

  /**
   * Returns what a mole of the dose delivers at the pH that the liquid has after it.
   *
   * @return Eq/mol, negative for a base, as uncertain as that pH; as in a mash unknown where it is
   */
  public Answer<Double> delivered() {
    Answer<PH> pH = after.answer(Figures.PH_VALUE);
    return pH.isStated() ? delivery().atReached(pH) : delivery().atUnknown(pH.step());
  }

  /**
   * Returns what a mole of the dose delivers where the liquid is at a pH, such as the end point of
   * a titration.
   *
   * @param pH the pH
   * @return Eq/mol, negative for a base
   */
  public Answer<Double> delivered(PH pH) {
    return delivery().at(pH);
  }

  private Delivery delivery() {
    return new Delivery(before, after, supply.name(), addition);
  }

  /**
   * Returns the constraint that was dosed to.
   *
   * @return the constraint
   */
  public Constraint constraint() {
    return constraint;
  }

  /**
   * Explains the dose: the figure before and after, and the root that was searched.
   *
   * @return the explanation, whose last step holds if the figure after the dose is the one wanted
   */
  public Explanation explain() {
    return new Explanation(amount);
  }

  /**
   * Returns what is notable about the dose and the liquid after it.
   *
   * @return the notices, without repetition
   */
  public List<Notice> notices() {
    List<Notice> all = new ArrayList<>(amount.notices());
    after.notices().stream().filter(notice -> !all.contains(notice)).forEach(all::add);
    return List.copyOf(all);
  }

  /**
   * Returns the usual cautions for the reagent and for dosing what people drink (common practice,
   * no source). Local law, the supplier's safety data sheet and a trained person outrank them.
   *
   * @return the cautions
   */
  public List<Caution> cautions() {
    List<Caution> all = new ArrayList<>(addition.cautions());
    if (before.kind().equals("beer")) {
      all.addAll(Caution.of(List.of(Hazard.TASTING)));
    }
    return List.copyOf(all);
  }

  @Override
  public Step step(Figure<?> figure) {
    return figure.rule() instanceof DoseRule
        ? figure.rule().find(figure, this)
        : after.step(figure);
  }

  @Override
  public String kind() {
    return "dose";
  }

  /** Returns the dose and what it reaches, in a line. */
  @Override
  public String toString() {
    String line = addition.text() + "; " + constraint.figure().title() + " then: " + reached();
    return supply.actsInTwoSteps()
        ? line
            + "; at once: "
            + atOnce().answer(constraint.figure())
            + "; after hydrolysis: "
            + afterHydrolysis().answer(constraint.figure())
        : line;
  }

  private static <Q> Figure<Q> figure(
      String name, Scale<Q> scale, Function<Dose<?>, OptionalDouble> perMole) {
    return Figure.of(name, Map.of(), scale, new DoseRule(perMole));
  }

  private record DoseRule(Function<Dose<?>, OptionalDouble> perMole) implements Figure.Rule {

    @Override
    public Step find(Figure<?> figure, Answering from) {
      Step.Builder builder =
          Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA).text(text(), "");
      if (!(from instanceof Dose<?> dose)) {
        return builder.unknown(List.of("does not apply to a " + from.kind()));
      }
      if (figure.equals(AMOUNT)) {
        return dose.amount;
      }
      builder.inputs(List.of(dose.amount));
      OptionalDouble factor = perMole.apply(dose);
      if (factor.isEmpty()) {
        return builder.unknown(List.of("the density of " + dose.supply.name() + " is not known"));
      }
      double perMillimole = factor.getAsDouble() / 1000;
      Traced millimoles = dose.amount.found().orElseThrow();
      double value = millimoles.value() * perMillimole;
      return builder
          .detail(() -> new Step.Detail(List.of(), millimoles.value() * perMillimole - value, 0))
          .found(millimoles.times(perMillimole));
    }

    @Override
    public String text() {
      return "amount x what a mole of the reagent takes";
    }
  }
}
