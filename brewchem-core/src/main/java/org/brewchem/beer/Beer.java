package org.brewchem.beer;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.brewchem.buffer.Buffer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Solution;
import org.brewchem.solution.TotalFigure;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Use;
import org.brewchem.titration.AcidityResult;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.jspecify.annotations.Nullable;

/**
 * A beer: its pH and titrated acidity, the ions known of it, and what buffers it. A dosed or
 * blended beer is a beer.
 *
 * <p>What was measured answers as it was measured. What follows, such as the pH after a dose, comes
 * from the contents: the buffer closed to the measured pH, a stand-in unless one was measured. Ions
 * that are known from the brewing water only are shown as such and do not count in the beer's
 * chemistry. Immutable and thread-safe.
 */
public final class Beer implements Liquid {

  private static final Temperature ROOM = Temperature.ofCelsius(20);

  private static final List<Figure<MassConcentration>> OF_WATER =
      List.of(Figures.CALCIUM, Figures.MAGNESIUM, Figures.SULFATE, Figures.CHLORIDE);

  private final Measured measured;
  private final @Nullable Contents treated;
  private final List<Caution> cautions;
  private volatile @Nullable Contents closed;

  private Beer(Measured measured, @Nullable Contents treated, List<Caution> cautions) {
    this.measured = measured;
    this.treated = treated;
    this.cautions = List.copyOf(cautions);
  }

  /**
   * Starts with a pH and a titrated acidity of which no uncertainty is stated.
   *
   * @param pH the pH at 20 °C, below the end point of the acidity
   * @param acidity the titratable acidity of the degassed beer, above 0
   * @return the beer, buffered by a stand-in
   * @throws IllegalArgumentException if the pH is not below the end point or the acidity not above
   *     0
   */
  public static Beer of(PH pH, TitratableAcidity acidity) {
    return of(
        pH,
        stated(
            Figures.titratableAcidity(acidity.endPoint()),
            Traced.of(
                Source.withoutUncertainty(
                    "titratable acidity", acidity.inMilliequivalentsPerLitre(), "mEq/L"))),
        acidity.endPoint());
  }

  /**
   * Starts with a pH and an acidity as it was titrated, with its sources of uncertainty.
   *
   * @param pH the pH at 20 °C, below the end point of the acidity
   * @param titrated the titratable acidity of the degassed beer, above 0
   * @return the beer, buffered by a stand-in
   * @throws IllegalArgumentException if the pH is not below the end point or the acidity not above
   *     0
   * @throws org.brewchem.figure.UnknownFigureException if the acidity is unknown
   */
  public static Beer of(PH pH, Answer<TitratableAcidity> titrated) {
    PH endPoint = titrated.value().endPoint();
    Figure<TitratableAcidity> figure = Figures.titratableAcidity(endPoint);
    Step step =
        Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
            .origin(Origin.MEASURED)
            .text("as titrated", "")
            .inputs(List.of(titrated.step()))
            .found(titrated.in(Scales.acidity(endPoint)).traced());
    return of(pH, step, endPoint);
  }

  /**
   * Starts with a pH and the result of a titration.
   *
   * @param pH the pH at 20 °C, below the end point of the titration
   * @param titrated the titration of the degassed beer
   * @return the beer, buffered by a stand-in
   * @throws IllegalArgumentException if the pH is not below the end point or the acidity not above
   *     0
   */
  public static Beer of(PH pH, AcidityResult titrated) {
    return of(pH, titrated.answer());
  }

  /**
   * Starts with answers: a pH as it was found, such as by a measured buffer, and an acidity as it
   * was titrated, both with their sources of uncertainty.
   *
   * @param pH the pH, below the end point of the acidity
   * @param titrated the titratable acidity of the degassed beer, above 0
   * @return the beer, buffered by a stand-in
   * @throws IllegalArgumentException if the pH is not below the end point or the acidity not above
   *     0
   * @throws org.brewchem.figure.UnknownFigureException if one of them is unknown
   */
  public static Beer of(Answer<PH> pH, Answer<TitratableAcidity> titrated) {
    Beer beer = of(pH.value(), titrated);
    Step read =
        Step.of(Figures.PH_VALUE.title(), Figures.PH_VALUE.scale(), Step.Kind.STATED)
            .origin(Origin.MEASURED)
            .text("as found", "")
            .inputs(List.of(pH.step()))
            .found(pH.traced());
    return new Beer(beer.measured.withPH(read), null, List.of());
  }

  private static Beer of(PH pH, Step acidity, PH endPoint) {
    if (pH.compareTo(endPoint) >= 0) {
      throw new IllegalArgumentException(
          "pH of the beer: "
              + pH.value()
              + " is not possible; less than the end point, "
              + endPoint
              + ", is allowed");
    }
    Checks.positive("titratable acidity", acidity.found().orElseThrow().value(), "mEq/L");
    Step reading =
        stated(
            Figures.PH_VALUE,
            Traced.of(Source.withoutUncertainty("pH of the beer", pH.value(), "")));
    return new Beer(
        new Measured(
            reading, acidity, endPoint, Map.of(), Optional.empty(), ROOM, Chemistry.standard()),
        null,
        List.of());
  }

  private static Step stated(Figure<?> figure, Traced value) {
    return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
        .origin(Origin.MEASURED)
        .text("as measured", "")
        .found(value);
  }

  /**
   * States how well the pH was read.
   *
   * @param ofPH standard uncertainty, 0 or more
   * @return the beer
   * @throws IllegalArgumentException if it is negative or not finite
   * @throws IllegalStateException if the beer was treated already
   */
  public Beer withStandardUncertaintyOfPH(double ofPH) {
    Measured m = untreated();
    double value = m.value(m.pH()).value();
    Step pH = stated(Figures.PH_VALUE, Traced.of(Source.of("pH of the beer", value, ofPH, "")));
    return new Beer(m.withPH(pH), null, cautions);
  }

  /**
   * States how well the acidity was titrated.
   *
   * @param ofAcidity standard uncertainty, 0 or more, to the end point of the acidity
   * @return the beer
   * @throws IllegalArgumentException if it is negative or has another end point
   * @throws IllegalStateException if the beer was treated already
   */
  public Beer withStandardUncertaintyOfAcidity(TitratableAcidity ofAcidity) {
    Measured m = untreated();
    double value = m.value(m.acidity()).value();
    // Throws when the end points differ.
    ofAcidity.compareTo(TitratableAcidity.ofMilliequivalentsPerLitre(value, m.endPoint()));
    Source source =
        Source.of("titratable acidity", value, ofAcidity.inMilliequivalentsPerLitre(), "mEq/L");
    Step acidity = stated(Figures.titratableAcidity(m.endPoint()), Traced.of(source));
    return new Beer(m.withAcidity(acidity), null, cautions);
  }

  /**
   * Says what buffers the beer.
   *
   * @param buffer a buffer measured by titration, or a stand-in of your own
   * @return the beer
   * @throws IllegalStateException if the beer was treated already
   */
  public Beer buffered(Buffer buffer) {
    Objects.requireNonNull(buffer, "buffer");
    return new Beer(untreated().buffered(buffer), null, cautions);
  }

  /**
   * Takes over the ions of the brewing water that were not measured in the beer: calcium,
   * magnesium, sulfate and chloride. They are shown, with a notice, and do not count in the beer's
   * chemistry, because malt and brewhouse change them.
   *
   * @param water the water
   * @return the beer
   * @throws IllegalStateException if the beer was treated already
   */
  public Beer brewedWith(Water water) {
    Measured m = untreated();
    for (Figure<MassConcentration> ion : OF_WATER) {
      Step own = m.ions().get(ion);
      Step ofWater = water.step(ion);
      if (ofWater.found().isPresent() && (own == null || own.origin() != Origin.MEASURED)) {
        m = m.with(ion, carriedOver(ion, ofWater.found().get(), List.of(ofWater)));
      }
    }
    return new Beer(m, null, cautions);
  }

  private static Step carriedOver(Figure<?> ion, Traced value, List<Step> inputs) {
    return Step.of(ion.title(), ion.scale(), Step.Kind.STATED)
        .origin(Origin.CARRIED_OVER)
        .text("carried over from the brewing water", "")
        .inputs(inputs)
        .notices(
            List.of(
                Notice.of(
                    BeerCode.KNOWN_FROM_WATER_ONLY,
                    ion.name(),
                    ion.name()
                        + " is known from the water only, which malt and brewhouse change, and is"
                        + " not counted in the beer's chemistry")))
        .found(value);
  }

  /**
   * States an ion that was measured in the beer, without an uncertainty.
   *
   * @param ion the ion
   * @param concentration its concentration
   * @return the beer
   * @throws IllegalArgumentException for bicarbonate and carbonate, which share one total
   * @throws IllegalStateException if the beer was treated already
   */
  public Beer with(Ion ion, MassConcentration concentration) {
    return measured(
        ion, Source.withoutUncertainty(ion.name(), concentration.inMilligramsPerLitre(), "mg/L"));
  }

  /**
   * States an ion that was measured in the beer.
   *
   * @param ion the ion
   * @param concentration its concentration
   * @param standardUncertainty u of the concentration
   * @return the beer
   * @throws IllegalArgumentException for bicarbonate and carbonate, which share one total
   * @throws IllegalStateException if the beer was treated already
   */
  public Beer with(
      Ion ion, MassConcentration concentration, MassConcentration standardUncertainty) {
    return measured(
        ion,
        Source.of(
            ion.name(),
            concentration.inMilligramsPerLitre(),
            standardUncertainty.inMilligramsPerLitre(),
            "mg/L"));
  }

  private Beer measured(Ion ion, Source source) {
    Figure<MassConcentration> figure = Figures.concentration(ion);
    return new Beer(untreated().with(figure, stated(figure, Traced.of(source))), null, cautions);
  }

  /**
   * States the temperature at which the pH was read.
   *
   * @param temperature 0 to 100 °C
   * @return the beer
   * @throws IllegalArgumentException if it is out of range
   * @throws IllegalStateException if the beer was treated already
   */
  public Beer measuredAt(Temperature temperature) {
    Checks.inRange("temperature", temperature.inCelsius(), "°C", 0, 100);
    return new Beer(untreated().at(temperature), null, cautions);
  }

  /**
   * Returns the same beer under another chemistry.
   *
   * @param chemistry the chemistry
   * @return the beer
   * @throws IllegalStateException if the beer was treated already
   */
  public Beer under(Chemistry chemistry) {
    return new Beer(untreated().under(chemistry), null, cautions);
  }

  private Measured untreated() {
    if (treated != null) {
      throw new IllegalStateException(
          "the beer was treated; state what was measured before it is treated");
    }
    return measured;
  }

  /**
   * {@inheritDoc}
   *
   * <p>Where the stand-in cannot have as little acidity as was titrated, the balance is open and
   * says so.
   */
  @Override
  public Contents contents() {
    Contents ready = treated == null ? closed : treated;
    if (ready == null) {
      ready = measured.closed();
      closed = ready;
    }
    return ready;
  }

  @Override
  public Beer after(Treatment... steps) {
    Objects.requireNonNull(steps, "steps");
    Contents after = Treatments.apply(contents(), Use.BEER, steps);
    Set<Caution> all = new LinkedHashSet<>(cautions);
    for (Treatment step : steps) {
      all.addAll(step.cautions());
    }
    return new Beer(measured, noticed(after), List.copyOf(all));
  }

  /** A pH outside the readings of the buffer is noticed on whatever rests on it. */
  private Contents noticed(Contents after) {
    if (measured.buffer().isEmpty() || !after.whyOpen().isEmpty()) {
      return after;
    }
    PH pH = PH.of(after.equilibria().pH());
    return after.withNotices(measured.buffer().get().extrapolatedAt(pH).stream().toList());
  }

  /**
   * Returns what the beer holds as a solution, uncertainties left behind.
   *
   * @return the solution
   * @throws IllegalStateException if the balance is open
   */
  public Solution solution() {
    return Solution.of(contents());
  }

  @Override
  public Step step(Figure<?> figure) {
    if (treated == null) {
      Step asMeasured =
          figure.equals(Figures.PH_VALUE)
              ? measured.pH()
              : figure.equals(Figures.titratableAcidity(measured.endPoint()))
                  ? measured.acidity()
                  : measured.ions().get(figure);
      if (asMeasured != null) {
        return asMeasured;
      }
    }
    if (treated != null && figure.rule() instanceof TotalFigure total) {
      Optional<Traced> carried = treated.carriedOver(total.component());
      if (carried.isPresent() && treated.unknown().contains(total.component())) {
        double factor = total.milligramsPerMole() * treated.kilogramsPerLitre();
        Traced sum = carried.get().plus(treated.least(total.component())).times(factor);
        return carriedOver(figure, sum, treated.basis());
      }
    }
    return figure.rule().find(figure, this);
  }

  @Override
  public String kind() {
    return "beer";
  }

  /**
   * Returns the pH: as measured, or as predicted after a treatment.
   *
   * @return the answer
   */
  public Answer<PH> pH() {
    return answer(Figures.PH_VALUE);
  }

  /**
   * Returns the titratable acidity to the end point it was titrated to: as measured, or as
   * predicted after a treatment.
   *
   * @return the answer, shown as lactic acid
   */
  public Answer<TitratableAcidity> titratableAcidity() {
    return titratableAcidity(measured.endPoint());
  }

  /**
   * Returns the titratable acidity to an end point.
   *
   * @param endPoint the end point
   * @return the answer, shown as lactic acid
   */
  public Answer<TitratableAcidity> titratableAcidity(PH endPoint) {
    return answer(Figures.titratableAcidity(endPoint));
  }

  /**
   * Returns the calcium.
   *
   * @return the answer; unknown unless it was measured or is known from the water
   */
  public Answer<MassConcentration> calcium() {
    return answer(Figures.CALCIUM);
  }

  /**
   * Returns the ratio of sulfate to chloride by mass.
   *
   * @return the answer; unknown unless both are known
   */
  public Answer<Double> sulfateToChloride() {
    return answer(Figures.SULFATE_TO_CHLORIDE);
  }

  @Override
  public List<Notice> notices() {
    Contents contents = contents();
    Set<Notice> all = new LinkedHashSet<>(measured.acidity().notices());
    all.addAll(measured.pH().notices());
    if (contents.whyOpen().isEmpty()) {
      all.addAll(contents.notices());
    } else {
      all.addAll(measured.plausibility());
      measured.ions().values().forEach(step -> all.addAll(step.notices()));
      all.add(
          Notice.of(
              BeerCode.ACIDITY_BELOW_STAND_IN,
              "titratable acidity",
              String.join("; ", contents.whyOpen())));
    }
    if (treated != null && measured.unusualAcidity().isEmpty()) {
      step(Figures.titratableAcidity(measured.endPoint()))
          .found()
          .ifPresent(after -> all.addAll(measured.unusualAcidity(after.value())));
    }
    if (treated != null) {
      step(Figures.PH_VALUE)
          .found()
          .flatMap(after -> Measured.unusualAfter(after.value()))
          .ifPresent(all::add);
    }
    return List.copyOf(all);
  }

  @Override
  public List<Caution> cautions() {
    return cautions;
  }

  @Override
  public String toString() {
    return pH() + "; " + titratableAcidity();
  }
}
