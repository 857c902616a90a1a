package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.uncertainty.Traced;

/**
 * A dose that is chosen for the liquid as it is after further treatments: sparge water that is read
 * when its carbon dioxide has left, lime of which a mineral forms. {@code DoseBefore.of(water,
 * lactic, aeration()).to(pH(5.8))}. A proposal, never an order.
 *
 * <p>The liquid is dosed, then treated, then read; the search asks for the dose at which the
 * reading is the one wanted. Immutable.
 *
 * @param <L> the kind of liquid
 */
public final class DoseBefore<L extends Liquid> {

  private static final double STEP = 1e-4;

  /** How near the reading comes, where the treatments between search themselves. */
  private static final double TOLERANCE = 1e-7;

  private final Request<L> request;
  private final Addition addition;
  private final double molesPerLitre;
  private final L dosed;
  private final L after;
  private final Step amount;

  private DoseBefore(Request<L> request, Figure<?> figure, double shown) {
    this.request = request;
    double wanted = Shown.inOwnScale(figure, shown);
    molesPerLitre =
        new DoseSearch(moles -> request.reading(moles, figure), wanted)
            .find(
                (reason, nearest) ->
                    new UnreachableException(
                        figure.title(),
                        shown,
                        Shown.shown(figure, nearest),
                        figure.shown(),
                        reason,
                        request.supply.name() + ", then " + request.text()));
    addition = Addition.of(request.supply, molesPerLitre);
    dosed = request.dosed(addition);
    after = request.treated(addition);
    Step reached = after.step(figure);
    double step = STEP * molesPerLitre;
    double slope =
        (request.reading(molesPerLitre + step, figure)
                - request.reading(molesPerLitre - step, figure))
            / (2 * step);
    amount =
        Step.of(
                "amount of the dose before " + request.text(),
                Scales.MILLIMOLES_PER_LITRE,
                Step.Kind.ROOT)
            .text("until the " + figure.title() + " is " + figure.shown().text(shown), "")
            .inputs(List.of(reached))
            .detail(
                () ->
                    new Step.Detail(
                        request.supply.arithmetic(molesPerLitre),
                        after.step(figure).found().orElseThrow().value() - wanted,
                        TOLERANCE * Math.max(1, Math.abs(wanted))))
            .found(
                Traced.linear(
                        molesPerLitre,
                        new Traced[] {reached.found().orElseThrow()},
                        new double[] {-1 / slope})
                    .times(1000));
  }

  /**
   * Starts with a liquid, a reagent as bought, and what is done after the dose.
   *
   * @param liquid the liquid
   * @param reagent an acid, a base or a salt
   * @param then what is done after the dose, in this order, at least one
   * @param <L> the kind of liquid
   * @return a request that wants its target
   * @throws IllegalArgumentException if nothing is done after the dose
   */
  public static <L extends Liquid> Request<L> of(L liquid, Reagent reagent, Treatment... then) {
    Objects.requireNonNull(then, "then");
    Supply supply =
        reagent.density().isPresent() ? Supply.poured(reagent) : Supply.weighed(reagent);
    return new Request<>(liquid, supply, then);
  }

  /**
   * Starts with a liquid, a pure compound, and what is done after the dose.
   *
   * @param liquid the liquid
   * @param compound an acid, a base or a salt, known exactly
   * @param then what is done after the dose, in this order, at least one
   * @param <L> the kind of liquid
   * @return a request that wants its target
   * @throws IllegalArgumentException if nothing is done after the dose
   */
  public static <L extends Liquid> Request<L> of(L liquid, Compound compound, Treatment... then) {
    Objects.requireNonNull(then, "then");
    return new Request<>(liquid, Supply.pure(compound), then);
  }

  /**
   * The question for a dose, which still wants its target. Immutable.
   *
   * @param <L> the kind of liquid
   */
  public static final class Request<L extends Liquid> {

    private final L liquid;
    private final Supply supply;
    private final List<Treatment> then;

    private Request(L liquid, Supply supply, Treatment... then) {
      this.liquid = Objects.requireNonNull(liquid, "liquid");
      this.supply = supply;
      this.then = List.of(then);
      Checks.positive("treatments after the dose", this.then.size(), "");
      Permitted.of(liquid.kind()).ifPresent(use -> Permitted.in(use, Addition.of(supply, 0)));
    }

    /**
     * Finds the dose after which, and after the treatments, a figure has a value.
     *
     * @param figure the figure
     * @param value what is wanted
     * @param <Q> its meaning
     * @return the dose
     * @throws UnreachableException if the liquid has it already, or no dose reaches it
     * @throws UnknownFigureException if the figure of the liquid is unknown
     */
    public <Q> DoseBefore<L> to(Figure<Q> figure, Q value) {
      return new DoseBefore<>(this, figure, figure.shown().in(value));
    }

    /**
     * Finds the dose after which, and after the treatments, the liquid has a pH.
     *
     * @param pH the pH
     * @return the dose
     * @throws UnreachableException if the liquid has it already, or no dose reaches it
     * @throws UnknownFigureException if the pH of the liquid is unknown
     */
    public DoseBefore<L> to(PH pH) {
      return to(Figures.PH_VALUE, pH);
    }

    private double reading(double moles, Figure<?> figure) {
      Step step = treated(Addition.of(supply, moles)).step(figure);
      return step.found()
          .orElseThrow(() -> new UnknownFigureException(figure.title(), step.whyUnknown()))
          .value();
    }

    @SuppressWarnings("unchecked") // a treated liquid is a liquid of its own kind
    private L dosed(Addition addition) {
      return (L) liquid.after(addition);
    }

    @SuppressWarnings("unchecked") // a treated liquid is a liquid of its own kind
    private L treated(Addition addition) {
      List<Treatment> steps = new ArrayList<>(List.of(addition.withoutSaturation()));
      steps.addAll(then);
      return (L) liquid.after(steps.toArray(Treatment[]::new));
    }

    private String text() {
      return String.join(", then ", then.stream().map(Treatment::text).toList());
    }
  }

  /**
   * Returns the amount of the compound by the label that is needed.
   *
   * @return per litre of the liquid before, with by how much it may differ because the liquid and
   *     the label may
   */
  public Answer<AmountConcentration> amount() {
    return Answer.of(Dose.AMOUNT, amount);
  }

  /**
   * Returns what to measure out for a volume of the liquid.
   *
   * @param volume the volume of the liquid before the dose, above 0
   * @return amount, mass and, if the density is known, volume of the reagent
   * @throws IllegalArgumentException if the volume is 0
   */
  public Portion into(Volume volume) {
    double litres = Checks.positive("volume", volume.inLitres(), "L");
    double moles = molesPerLitre * litres;
    OptionalDouble perMole = request.supply.litresPerMole();
    return new Portion(
        AmountOfSubstance.ofMoles(moles),
        Mass.ofGrams(moles * request.supply.gramsPerMole()),
        perMole.isPresent()
            ? Optional.of(Volume.ofLitres(moles * perMole.getAsDouble()))
            : Optional.empty(),
        cautions());
  }

  /**
   * Returns the dose as a treatment, without what is done after it.
   *
   * @return the treatment
   */
  public Treatment treatment() {
    return addition;
  }

  /**
   * Returns the liquid just after the dose.
   *
   * @return the liquid before the other treatments
   */
  public L dosed() {
    return dosed;
  }

  /**
   * Returns the liquid after the dose and the treatments.
   *
   * @return the liquid
   */
  public L after() {
    return after;
  }

  /**
   * Returns what is notable about the liquid after all.
   *
   * @return the notices
   */
  public List<Notice> notices() {
    return after.notices();
  }

  /**
   * Returns what to mind in the dose and in the treatments.
   *
   * @return the cautions, without repetition
   */
  public List<Caution> cautions() {
    Set<Caution> all = new LinkedHashSet<>(addition.cautions());
    request.then.forEach(step -> all.addAll(step.cautions()));
    return List.copyOf(all);
  }

  @Override
  public String toString() {
    return addition.text() + ", then " + request.text();
  }
}
