package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.internal.ReferenceMolarMasses;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Carbonation;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.UnreachableException.Reason;
import org.brewchem.uncertainty.Traced;

/**
 * A dose of an acid, a base or a salt into a tank whose volume is not quite known: what to measure
 * out, where every figure lies afterwards, and the chance that it lies beyond a limit. {@code
 * TankDose.of(beer, lactic, tank).to(pH(4.2))}, or {@code .overshooting(PH_VALUE, pH(4.15), 0.05)}
 * for the dose that goes beyond a limit once in twenty times. A proposal, never an order: see
 * {@link #cautions()}.
 *
 * <p>What is uncertain is the liquid, the label of the reagent and the volume in the tank, each by
 * its sources; the chances are those of linear propagation. The amount measured out counts as
 * exact. The carbon dioxide of a carbonate counts as gone from a beer, as it is from the degassed
 * sample of a laboratory, unless {@link Request#keepingCarbonDioxide()} says otherwise. Immutable.
 *
 * @param <L> the kind of liquid
 */
public final class TankDose<L extends Liquid> implements Answering {

  private static final Scale<Mass> GRAMS = Scale.of("g", Mass::inGrams, Mass::ofGrams, 2);
  private static final Scale<Volume> MILLILITRES =
      Scale.of("mL", Volume::inMillilitres, Volume::ofMillilitres, 2);
  private static final String NO_TARGET = "the dose has no target that it could miss";

  private final Dosing<L> dosing;
  private final Optional<Constraint> constraint;
  private final double molesPerLitre;
  private final Addition addition;
  private final L after;
  private final Step needed;
  private final List<Notice> own;

  private TankDose(
      Dosing<L> dosing,
      Optional<Constraint> constraint,
      double molesPerLitre,
      Step needed,
      List<Notice> own) {
    this.dosing = dosing;
    this.constraint = constraint;
    this.molesPerLitre = molesPerLitre;
    this.needed = needed;
    this.own = own;
    addition = dosing.addition(molesPerLitre);
    after = dosing.after(molesPerLitre);
  }

  /**
   * Starts with a liquid, a reagent as bought and a tank. The reagent is measured out by volume if
   * its density is known, else weighed.
   *
   * @param liquid what is in the tank
   * @param reagent an acid, a base or a salt
   * @param tank the tank
   * @param <L> the kind of liquid
   * @return a request that wants its target
   * @throws IllegalArgumentException if the reagent may not go into such a liquid
   */
  public static <L extends Liquid> Request<L> of(L liquid, Reagent reagent, Tank tank) {
    Supply supply =
        reagent.density().isPresent() ? Supply.poured(reagent) : Supply.weighed(reagent);
    return new Request<>(Dosing.of(liquid, supply, tank));
  }

  /**
   * Starts with a liquid, a pure compound and a tank. The compound is known exactly and its volume
   * neglected.
   *
   * @param liquid what is in the tank
   * @param compound an acid, a base or a salt
   * @param tank the tank
   * @param <L> the kind of liquid
   * @return a request that wants its target
   * @throws IllegalArgumentException if the compound may not go into such a liquid
   */
  public static <L extends Liquid> Request<L> of(L liquid, Compound compound, Tank tank) {
    return new Request<>(Dosing.of(liquid, Supply.pure(compound), tank));
  }

  /**
   * The question for a dose, which still wants its target. Immutable.
   *
   * @param <L> the kind of liquid
   */
  public static final class Request<L extends Liquid> {

    private final Dosing<L> dosing;

    Request(Dosing<L> dosing) {
      this.dosing = dosing;
    }

    /**
     * Aims at what acts at once, as {@link Dose.Request#atOnce()} does.
     *
     * @return the request
     */
    public Request<L> atOnce() {
      return new Request<>(dosing.acting(dosing.supply().atOnce()));
    }

    /**
     * Counts the carbon dioxide that a carbonate brings as dissolved in the liquid, where it acts
     * as an acid: to pH 8.2 it is titrated.
     *
     * @return the request
     */
    public Request<L> keepingCarbonDioxide() {
      return new Request<>(dosing.keepingCarbonDioxide());
    }

    /**
     * Finds the dose that meets a constraint: to its aim, or without one to the nearer limit, where
     * half of the outcomes lie beyond it.
     *
     * @param constraint the constraint, on any figure of the liquid
     * @return the dose
     * @throws UnreachableException if the liquid meets it already, or no dose does
     * @throws UnknownFigureException if the figure of the liquid is unknown
     */
    public TankDose<L> to(Constraint constraint) {
      Figure<?> figure = constraint.figure();
      double shown = Shown.shown(figure, Dosing.value(dosing.liquid().step(figure), figure));
      double excess = constraint.excess(shown);
      if (constraint.aim().isEmpty() && excess == 0) {
        throw dosing.unreachable(figure, shown, shown, Reason.ALREADY_THERE);
      }
      double wantedShown = constraint.aim().orElse(shown - excess);
      double wanted = Shown.inOwnScale(figure, wantedShown);
      double found =
          new DoseSearch(moles -> dosing.value(moles, figure), wanted)
              .find(
                  (reason, nearest) ->
                      dosing.unreachable(
                          figure, wantedShown, Shown.shown(figure, nearest), reason));
      return new TankDose<>(
          dosing,
          Optional.of(constraint),
          found,
          dosing.needed(constraint, wanted, found),
          constraint.aim().isPresent() ? List.of() : List.of(Dosing.atLimit(figure, wantedShown)));
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
    public <Q> TankDose<L> to(Figure<Q> figure, Q value) {
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
    public TankDose<L> to(PH pH) {
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
    public TankDose<L> to(TitratableAcidity acidity) {
      return to(Figures.titratableAcidity(acidity.endPoint()), acidity);
    }

    /**
     * Finds the dose that carries a figure beyond a limit with a chance: 0.05 leaves it on this
     * side nineteen times of twenty.
     *
     * @param figure the figure
     * @param limit the limit, in the direction in which the dose moves the figure
     * @param chance the chance to lie beyond it after the dose, 1e-6 to 0.999999
     * @param <Q> the meaning of the figure
     * @return the dose
     * @throws UnreachableException if the liquid may lie beyond the limit already with a greater
     *     chance, or no dose comes so far
     * @throws UnknownFigureException if the figure or its uncertainty is unknown
     * @throws IllegalArgumentException if the chance is out of range
     */
    public <Q> TankDose<L> overshooting(Figure<Q> figure, Q limit, double chance) {
      return overshooting(Constraint.exactly(figure, limit), figure.shown().in(limit), chance);
    }

    private TankDose<L> overshooting(Constraint constraint, double limitShown, double chance) {
      Figure<?> figure = constraint.figure();
      Checks.inRange("chance", chance, "", 1e-6, 1 - 1e-6);
      double limit = Shown.inOwnScale(figure, limitShown);
      double probability = dosing.isFalling(figure) ? chance : 1 - chance;
      double start = dosing.quantile(0, figure, probability);
      if (dosing.isFalling(figure) ? start <= limit : start >= limit) {
        throw dosing.unreachable(
            figure, limitShown, Shown.shown(figure, start), Reason.TOO_UNCERTAIN);
      }
      double found =
          new DoseSearch(moles -> dosing.quantile(moles, figure, probability), limit)
              .find(
                  (reason, nearest) ->
                      dosing.unreachable(figure, limitShown, Shown.shown(figure, nearest), reason));
      String how =
          String.format(
              Locale.ROOT,
              "until %s lies beyond %s with a chance of %.3g %%",
              figure.title(),
              figure.shown().text(limitShown),
              100 * chance);
      Step step =
          dosing
              .amount(how)
              .inputs(List.of(dosing.liquid().step(figure), dosing.after(found).step(figure)))
              .detail(
                  () ->
                      new Step.Detail(
                          dosing.lines(figure, found),
                          dosing.quantile(found, figure, probability) - limit,
                          Dosing.tolerance(limit)))
              .found(Traced.exact(found * dosing.tank().volume().inLitres()));
      return new TankDose<>(dosing, Optional.of(constraint), found, step, List.of());
    }

    /**
     * Asks what a mass of the reagent would do.
     *
     * @param mass of the reagent, above 0
     * @return the dose, which has no target
     * @throws IllegalArgumentException if the mass is 0
     */
    public TankDose<L> giving(Mass mass) {
      return giving(Checks.positive("mass", mass.inGrams(), "g") / dosing.supply().gramsPerMole());
    }

    /**
     * Asks what a volume of the reagent would do.
     *
     * @param volume of the reagent, above 0
     * @return the dose, which has no target
     * @throws IllegalArgumentException if the volume is 0 or the reagent has no known density
     */
    public TankDose<L> giving(Volume volume) {
      double litres = Checks.positive("volume", volume.inLitres(), "L");
      if (dosing.supply().litresPerMole().isEmpty()) {
        throw new IllegalArgumentException(
            "volume: " + volume + " of " + dosing.supply().name() + " is not possible; weigh it");
      }
      return giving(litres / dosing.supply().litresPerMole().getAsDouble());
    }

    private TankDose<L> giving(double moles) {
      Step step = dosing.amount("as stated").unknown(List.of(NO_TARGET));
      return new TankDose<>(
          dosing, Optional.empty(), moles / dosing.tank().volume().inLitres(), step, List.of());
    }
  }

  /**
   * Finds the dose that carries the figure of the constraint beyond its far limit, in the direction
   * of the dose, with another chance.
   *
   * @param chance the chance, 1e-6 to 0.999999
   * @return the dose
   * @throws UnreachableException if the liquid may lie beyond the limit already with a greater
   *     chance, or no dose comes so far
   * @throws UnknownFigureException if the uncertainty of the figure is unknown
   * @throws IllegalArgumentException if the chance is out of range
   * @throws IllegalStateException if the dose has no target, or no limit in its direction
   */
  public TankDose<L> overshooting(double chance) {
    Constraint limits = constraint.orElseThrow(() -> new IllegalStateException(NO_TARGET));
    boolean falling = dosing.isFalling(limits.figure());
    OptionalDouble far = falling ? limits.lower() : limits.upper();
    if (far.isEmpty()) {
      throw new IllegalStateException(
          limits + " has no limit that " + dosing.supply().name() + " could overshoot");
    }
    return new Request<>(dosing).overshooting(limits, far.getAsDouble(), chance);
  }

  /**
   * Returns what to measure out for the tank.
   *
   * @return amount, mass and, if the density is known, volume of the reagent
   * @throws IllegalStateException if the compound has no molar mass
   */
  public Portion portion() {
    return portionOf(molesPerLitre);
  }

  /** What holds so many moles per litre of what is thought to be in the tank. */
  Portion portionOf(double perLitre) {
    double moles = perLitre * dosing.tank().volume().inLitres();
    OptionalDouble litres = dosing.supply().litresPerMole();
    return new Portion(
        AmountOfSubstance.ofMoles(moles),
        Mass.ofGrams(moles * dosing.supply().gramsPerMole()),
        litres.isPresent()
            ? Optional.of(Volume.ofLitres(moles * litres.getAsDouble()))
            : Optional.empty(),
        cautions());
  }

  /** A share of the dose, without a target of its own. */
  TankDose<L> part(double share) {
    return new Request<>(dosing).giving(share * molesPerLitre * dosing.tank().volume().inLitres());
  }

  Dosing<L> dosing() {
    return dosing;
  }

  double molesPerLitre() {
    return molesPerLitre;
  }

  /**
   * Returns the mass of reagent that is needed, as a range: by how much it may differ, because the
   * liquid, the label and the volume in the tank may.
   *
   * @return the mass for the tank; exact for a dose chosen by a chance, unknown without a target
   */
  public Answer<Mass> neededMass() {
    return needed(
        "mass needed for the tank", GRAMS, OptionalDouble.of(dosing.supply().gramsPerMole()));
  }

  /**
   * Returns the volume of reagent that is needed, as a range, as {@link #neededMass()}.
   *
   * @return the volume for the tank; unknown without a density, too
   */
  public Answer<Volume> neededVolume() {
    OptionalDouble litres = dosing.supply().litresPerMole();
    return needed(
        "volume needed for the tank",
        MILLILITRES,
        litres.isPresent() ? OptionalDouble.of(1000 * litres.getAsDouble()) : litres);
  }

  private <Q> Answer<Q> needed(String name, Scale<Q> scale, OptionalDouble perMole) {
    Step.Builder builder =
        Step.of(name, scale, Step.Kind.FORMULA)
            .text("amount x what a mole of the reagent takes", "")
            .inputs(List.of(needed));
    Step step;
    if (perMole.isEmpty()) {
      step = builder.unknown(List.of("the density of " + dosing.supply().name() + " is not known"));
    } else if (needed.found().isEmpty()) {
      step = builder.unknown(needed.whyUnknown());
    } else {
      step = Dosing.product(builder, needed.found().get(), perMole.getAsDouble());
    }
    return Answer.of(Dosing.figure(name, scale), step);
  }

  /**
   * Returns the carbon dioxide that a carbonate sets free, if all of it leaves: it foams, needs
   * headspace and a vent, and takes the beer's own gas with it.
   *
   * @return per litre of the liquid; 0 for a reagent without carbonate, whose acid may still set
   *     free what the liquid holds
   */
  public Answer<MassConcentration> carbonDioxide() {
    double perMole = dosing.carbonate() * ReferenceMolarMasses.CARBON_DIOXIDE * 1000;
    Step moles =
        Step.of("amount added", Scales.MILLIMOLES_PER_LITRE, Step.Kind.STATED)
            .text(addition.text(), "")
            .found(addition.moles().times(1000));
    Step.Builder builder =
        Step.of("carbon dioxide set free", Scales.MILLIGRAMS_PER_LITRE, Step.Kind.FORMULA)
            .text("carbonate of the dose x molar mass of CO2", "")
            .inputs(List.of(moles));
    return Answer.of(
        Dosing.figure("carbon dioxide set free", Scales.MILLIGRAMS_PER_LITRE),
        Dosing.product(builder, addition.moles(), perMole));
  }

  /**
   * Returns the volume in the tank after the dose, volumes taken as additive and that of a powder
   * neglected.
   *
   * @return the volume
   */
  public Volume volumeAfter() {
    return portion().volume().map(dosing.tank().volume()::plus).orElse(dosing.tank().volume());
  }

  /**
   * Returns the liquid before the dose.
   *
   * @return the liquid
   */
  public L before() {
    return dosing.liquid();
  }

  /**
   * Returns the liquid in the tank after the dose, with the uncertainty of the tank's volume.
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
    return acting(dosing.supply().atOnce());
  }

  /**
   * Returns the liquid after the esters of the reagent have hydrolysed, days or weeks in the cold.
   *
   * @return the liquid; {@link #after()} where nothing of the reagent is bound in esters
   */
  public L afterHydrolysis() {
    return acting(dosing.supply().afterHydrolysis());
  }

  private L acting(Supply acting) {
    return acting == dosing.supply() || !dosing.supply().actsInTwoSteps()
        ? after
        : dosing.acting(acting).after(molesPerLitre);
  }

  /**
   * Holds any figure after the dose against limits.
   *
   * @param limits the limits, on any figure of the liquid
   * @return the chance beyond each; unknown chances where an uncertainty is not stated
   */
  public Chances chances(Constraint limits) {
    return Chances.of(limits, after.answer(limits.figure()));
  }

  /**
   * Compares the figure of the constraint that was dosed to with its limits.
   *
   * @return the chances
   * @throws IllegalStateException if the dose has no target
   */
  public Chances chances() {
    return chances(constraint.orElseThrow(() -> new IllegalStateException(NO_TARGET)));
  }

  /**
   * Returns the constraint that was dosed to.
   *
   * @return the constraint; empty for a dose that was stated
   */
  public Optional<Constraint> constraint() {
    return constraint;
  }

  /**
   * Answers a figure of the liquid after the dose.
   *
   * @param figure the figure
   * @param <Q> the meaning of its value
   * @return the answer
   */
  public <Q> Answer<Q> answer(Figure<Q> figure) {
    return Answer.of(figure, this);
  }

  @Override
  public Step step(Figure<?> figure) {
    return after.step(figure);
  }

  @Override
  public String kind() {
    return "dose";
  }

  /**
   * Returns the dose as a treatment of the liquid in the tank.
   *
   * @return the treatment
   */
  public Treatment treatment() {
    return addition;
  }

  /**
   * Explains the amount: the figure before and after, and the root that was searched.
   *
   * @return the explanation
   */
  public Explanation explain() {
    return new Explanation(needed);
  }

  /**
   * Returns what is notable about the dose and the liquid after it.
   *
   * @return the notices, without repetition
   */
  public List<Notice> notices() {
    Set<Notice> all = new LinkedHashSet<>(own);
    double free = carbonDioxide().number();
    if (free > 0) {
      MassConcentration gas = MassConcentration.ofMilligramsPerLitre(free);
      all.add(
          Notice.of(
              TreatmentCode.SETS_GAS_FREE,
              dosing.supply().name(),
              "the dose sets free "
                  + gas
                  + " of carbon dioxide, "
                  + NumberText.significant(Carbonation.from(gas).inVolumes(), 2)
                  + " times the volume of the liquid: it foams"
                  + (dosing.leaving() ? ", and counts as gone afterwards" : "")));
    }
    all.addAll(after.notices());
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
    if (dosing.liquid().kind().equals("beer")) {
      all.addAll(Caution.of(List.of(Hazard.TASTING)));
    }
    return List.copyOf(all);
  }

  /** Returns the portion for the tank, and the chances of what was dosed to. */
  @Override
  public String toString() {
    return portion()
        + " of "
        + dosing.supply().name()
        + " into "
        + dosing.tank()
        + constraint.map(limits -> "; " + chances(limits)).orElse("");
  }
}
