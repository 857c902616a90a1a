package org.brewchem.beer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.brewchem.buffer.AcidityBelowStandInException;
import org.brewchem.buffer.Buffer;
import org.brewchem.buffer.BufferCode;
import org.brewchem.buffer.StandIn;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.titration.AcidityResult;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.jspecify.annotations.Nullable;

/**
 * A beer as the laboratory knows it: its measured pH and titratable acidity, the ions that are
 * known of it, and what it buffers with. From it come the {@link KeyFigures}, an {@link BeerDose}
 * and a {@link Blend}.
 *
 * <p>Both measurements are those of the degassed sample. Without {@link #buffered} a {@link
 * StandIn} stands for the buffering. Acidities predicted here are those of the undiluted beer: the
 * base per litre from its pH to the end point.
 *
 * <p>Immutable and thread-safe.
 */
public final class Beer {

  /** More than two careful titrations of one beer differ by; our choice. */
  private static final double DISAGREEING_SHARE = 0.05;

  private final Figure<PH> pH;
  private final Figure<TitratableAcidity> acidity;
  private final Map<Ion, Content> ions;
  private final Buffer buffering;
  private final Temperature temperature;
  private final Chemistry chemistry;

  /** An ion of the beer. */
  record Content(
      MassConcentration concentration,
      @Nullable MassConcentration standardUncertainty,
      Origin origin) {}

  private Beer(
      Figure<PH> pH,
      Figure<TitratableAcidity> acidity,
      Map<Ion, Content> ions,
      Buffer buffering,
      Temperature temperature,
      Chemistry chemistry) {
    this.pH = pH;
    this.acidity = acidity;
    this.ions = Collections.unmodifiableMap(ions);
    this.buffering = buffering;
    this.temperature = temperature;
    this.chemistry = chemistry;
  }

  /**
   * Returns a beer of a measured pH and titratable acidity, at 20 °C, under the standard chemistry,
   * buffered by the stand-in.
   *
   * @param pH the pH of the degassed beer, below the end point of its acidity
   * @param acidity the titratable acidity of the degassed beer, above 0
   * @return the beer
   * @throws IllegalArgumentException if the acidity is not above 0 or the pH not below its end
   *     point
   */
  public static Beer of(PH pH, TitratableAcidity acidity) {
    StandIn standIn =
        StandIn.matching(Traced.exact(acidity.inMilliequivalentsPerLitre()), acidity.endPoint());
    if (pH.compareTo(acidity.endPoint()) >= 0) {
      throw new IllegalArgumentException(
          "pH of the beer: "
              + pH.value()
              + " is not possible; less than the end point, "
              + acidity.endPoint()
              + ", is allowed");
    }
    return new Beer(
        Figure.of(pH, null, Origin.MEASURED_IN_BEER),
        Figure.of(acidity, null, Origin.MEASURED_IN_BEER),
        Map.of(),
        standIn,
        Temperature.ofCelsius(20),
        Chemistry.standard());
  }

  /**
   * Returns a beer of a measured pH and a titration's result, with the uncertainty of that result.
   *
   * @param pH the pH of the degassed beer, below the end point of its acidity
   * @param titrated the titration's result, above 0
   * @return the beer
   * @throws IllegalArgumentException if the acidity is not above 0 or the pH not below its end
   *     point
   */
  public static Beer of(PH pH, AcidityResult titrated) {
    Beer beer = of(pH, titrated.value());
    OptionalDouble milliequivalents = titrated.budget().traced().standardUncertainty();
    @Nullable TitratableAcidity u =
        milliequivalents.isEmpty()
            ? null
            : TitratableAcidity.ofMilliequivalentsPerLitre(
                milliequivalents.getAsDouble(), titrated.endPoint());
    return new Beer(
        beer.pH,
        Figure.of(titrated.value(), u, Origin.MEASURED_IN_BEER),
        beer.ions,
        beer.buffering,
        beer.temperature,
        beer.chemistry);
  }

  /**
   * States the standard uncertainty of the measured pH, which all predictions then include.
   *
   * @param ofPH u of the pH, 0 or more
   * @return the beer with it
   * @throws IllegalArgumentException if the uncertainty is negative or not finite
   */
  public Beer withStandardUncertaintyOfPH(double ofPH) {
    return new Beer(
        Figure.of(pH.value(), ofPH, Origin.MEASURED_IN_BEER),
        acidity,
        ions,
        buffering,
        temperature,
        chemistry);
  }

  /**
   * States the standard uncertainties of the measured pH and acidity, which all predictions then
   * include.
   *
   * @param ofPH u of the pH, 0 or more
   * @param ofAcidity u of the acidity, 0 or more, to the same end point
   * @return the beer with them
   * @throws IllegalArgumentException if an uncertainty is negative or has another end point
   */
  public Beer withStandardUncertainties(double ofPH, TitratableAcidity ofAcidity) {
    return new Beer(
        Figure.of(pH.value(), ofPH, Origin.MEASURED_IN_BEER),
        Figure.of(acidity.value(), ofAcidity, Origin.MEASURED_IN_BEER),
        ions,
        buffering,
        temperature,
        chemistry);
  }

  /**
   * Replaces the buffering, as by one that was measured. Where it and the measured acidity do not
   * agree, the acidity is believed, and the difference is carried along unchanged. Ions measured in
   * the beer replace those that the buffer assumed.
   *
   * @param measured the buffering
   * @return the beer with it
   */
  public Beer buffered(Buffer measured) {
    return new Beer(pH, acidity, ions, measured, temperature, chemistry);
  }

  /**
   * States the water that the beer was brewed with: its calcium, magnesium, sulfate and chloride
   * count in the key figures where nothing was measured in the beer.
   *
   * @param water the brewing liquor
   * @return the beer with it
   */
  public Beer brewedWith(Water water) {
    Map<Ion, MassConcentration> ofWater = new LinkedHashMap<>();
    water.calcium().optional().ifPresent(value -> ofWater.put(Ion.CALCIUM, value));
    water.magnesium().optional().ifPresent(value -> ofWater.put(Ion.MAGNESIUM, value));
    water.sulfate().optional().ifPresent(value -> ofWater.put(Ion.SULFATE, value));
    water.chloride().optional().ifPresent(value -> ofWater.put(Ion.CHLORIDE, value));
    Map<Ion, Content> all = new LinkedHashMap<>(ions);
    ofWater.forEach(
        (ion, value) -> {
          Content own = ions.get(ion);
          if (own == null || own.origin() != Origin.MEASURED_IN_BEER) {
            all.put(ion, new Content(value, null, Origin.TAKEN_FROM_WATER));
          }
        });
    return new Beer(pH, acidity, all, buffering, temperature, chemistry);
  }

  /**
   * States how much of an ion there is. What was measured in the beer counts in its chemistry (ion
   * pairs, ionic strength); what is known from the water only counts in the key figures alone.
   *
   * @param ion the ion: calcium, magnesium, sulfate, chloride or another
   * @param concentration its total concentration
   * @param origin {@link Origin#MEASURED_IN_BEER} or {@link Origin#TAKEN_FROM_WATER}
   * @return the beer with it
   */
  public Beer with(Ion ion, MassConcentration concentration, Origin origin) {
    return with(ion, new Content(concentration, null, origin));
  }

  /**
   * States how much of an ion there is, and how well that is known.
   *
   * @param ion the ion
   * @param concentration its total concentration
   * @param standardUncertainty u of the concentration
   * @param origin {@link Origin#MEASURED_IN_BEER} or {@link Origin#TAKEN_FROM_WATER}
   * @return the beer with it
   */
  public Beer with(
      Ion ion,
      MassConcentration concentration,
      MassConcentration standardUncertainty,
      Origin origin) {
    return with(ion, new Content(concentration, standardUncertainty, origin));
  }

  private Beer with(Ion ion, Content content) {
    if (content.origin() == Origin.PREDICTED) {
      throw new IllegalArgumentException(
          ion.name()
              + ": "
              + content.origin()
              + " is not possible; measured in beer or taken from water is allowed");
    }
    Map<Ion, Content> all = new LinkedHashMap<>(ions);
    all.put(ion, content);
    return new Beer(pH, acidity, all, buffering, temperature, chemistry);
  }

  /**
   * States the temperature at which pH and acidity were measured, and hold.
   *
   * @param other 0 to 100 °C
   * @return the beer at it
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public Beer measuredAt(Temperature other) {
    Checks.inRange("temperature", other.inCelsius(), "°C", 0, 100);
    return new Beer(pH, acidity, ions, buffering, other, chemistry);
  }

  /**
   * Chooses another chemistry for what is computed.
   *
   * @param other the chemistry
   * @return the beer under it
   */
  public Beer under(Chemistry other) {
    return new Beer(pH, acidity, ions, buffering, temperature, other);
  }

  /**
   * Returns the measured pH.
   *
   * @return the pH
   */
  public PH pH() {
    return pH.value();
  }

  /**
   * Returns the measured titratable acidity.
   *
   * @return the acidity
   */
  public TitratableAcidity acidity() {
    return acidity.value();
  }

  /**
   * Returns what the beer buffers with.
   *
   * @return the buffering
   */
  public Buffer buffering() {
    return buffering;
  }

  /**
   * Returns the temperature at which pH and acidity hold.
   *
   * @return the temperature
   */
  public Temperature temperature() {
    return temperature;
  }

  /**
   * Returns the chemistry.
   *
   * @return the chemistry
   */
  public Chemistry chemistry() {
    return chemistry;
  }

  /**
   * Returns the key figures.
   *
   * @return pH and acidity as measured; calcium, and sulfate to chloride, when the ions are known
   *     and chloride is not zero
   */
  public KeyFigures keyFigures() {
    return keyFigures(pH, acidity, ions);
  }

  static KeyFigures keyFigures(
      Figure<PH> pH, Figure<TitratableAcidity> acidity, Map<Ion, Content> ions) {
    KeyFigures figures = KeyFigures.none().with(pH).withAcidity(acidity);
    Content calcium = ions.get(Ion.CALCIUM);
    if (calcium != null) {
      figures =
          figures.withCalcium(
              Figure.ofCalcium(
                  calcium.concentration(), calcium.standardUncertainty(), calcium.origin()));
    }
    return sulfateToChloride(ions).map(figures::withRatio).orElse(figures);
  }

  static Optional<Figure<Double>> sulfateToChloride(Map<Ion, Content> ions) {
    Content sulfate = ions.get(Ion.SULFATE);
    Content chloride = ions.get(Ion.CHLORIDE);
    if (sulfate == null
        || chloride == null
        || chloride.concentration().inMilligramsPerLitre() == 0) {
      return Optional.empty();
    }
    double above = sulfate.concentration().inMilligramsPerLitre();
    double below = chloride.concentration().inMilligramsPerLitre();
    MassConcentration ofSulfate = sulfate.standardUncertainty();
    MassConcentration ofChloride = chloride.standardUncertainty();
    Double u =
        ofSulfate == null || ofChloride == null
            ? null
            : Math.hypot(
                ofSulfate.inMilligramsPerLitre() / below,
                above / below * ofChloride.inMilligramsPerLitre() / below);
    Origin origin =
        sulfate.origin() == chloride.origin() ? sulfate.origin() : Origin.TAKEN_FROM_WATER;
    return Optional.of(Figure.ofRatio(above / below, u, origin));
  }

  /**
   * Returns the solution that stands for the beer: the ions measured in it and its buffering,
   * closed to the measured pH.
   *
   * @return the solution
   * @throws AcidityBelowStandInException if the stand-in cannot have so little acidity
   */
  public Solution solution() {
    return Solution.of(contents());
  }

  private Contents contents() {
    return buffering.contents(known().contents(), Traced.exact(pH.value().value()));
  }

  /** How uncertain the buffer makes a pH to which strong acid or base brings the beer. */
  double uncertaintyOfChangeTo(PH predicted) {
    Contents contents = contents();
    double capacity =
        Solution.of(contents).bufferCapacity(predicted).inMilliequivalentsPerLitrePerPH();
    return contents.chargeAt(Traced.exact(predicted.value())).knownPart()
        * 1000
        * contents.kilogramsPerLitre()
        / capacity;
  }

  private Solution known() {
    Solution known = Solution.at(temperature).under(chemistry);
    for (Map.Entry<Ion, Content> entry : ions.entrySet()) {
      if (entry.getValue().origin() == Origin.MEASURED_IN_BEER) {
        known =
            known.with(
                entry.getKey(),
                AmountConcentration.from(
                    entry.getValue().concentration(), entry.getKey().molarMass()));
      }
    }
    return known;
  }

  /**
   * Returns what a brewer should know about the figures and their basis.
   *
   * @return the findings, none when there is nothing to say
   */
  public List<BeerFinding> findings() {
    List<BeerFinding> findings = new ArrayList<>(acidityFindings(acidity.value()));
    String ofWater =
        ions.entrySet().stream()
            .filter(entry -> entry.getValue().origin() == Origin.TAKEN_FROM_WATER)
            .map(entry -> entry.getKey().name())
            .collect(Collectors.joining(", "));
    if (!ofWater.isEmpty()) {
      findings.add(
          new BeerFinding(
              BeerFinding.Kind.KNOWN_FROM_WATER_ONLY,
              "known from the water only, which malt and brewhouse change, and not counted in the"
                  + " beer's chemistry: "
                  + ofWater));
    }
    try {
      Contents contents = contents();
      for (Notice notice : contents.notices()) {
        if (notice.code() == BufferCode.RESTS_ON_STAND_IN) {
          findings.add(new BeerFinding(BeerFinding.Kind.RESTS_ON_STAND_IN, notice.text()));
        } else if (notice.code() == BufferCode.STAND_IN_STRETCHED) {
          findings.add(new BeerFinding(BeerFinding.Kind.STAND_IN_STRETCHED, notice.text()));
        }
      }
      double disagreement = acidityBeyond(Solution.of(contents)) / acidity.number();
      if (Math.abs(disagreement) > DISAGREEING_SHARE) {
        findings.add(
            new BeerFinding(
                BeerFinding.Kind.BUFFERING_DISAGREES,
                Texts.format(
                    "the measured acidity lies %+.1f %% from that of the buffering",
                    100 * disagreement)));
      }
    } catch (AcidityBelowStandInException below) {
      findings.add(new BeerFinding(BeerFinding.Kind.RESTS_ON_STAND_IN, buffering.toString()));
      findings.add(
          new BeerFinding(
              BeerFinding.Kind.ACIDITY_BELOW_STAND_IN, String.valueOf(below.getMessage())));
    }
    return List.copyOf(findings);
  }

  static List<BeerFinding> acidityFindings(TitratableAcidity acidity) {
    double asLactic = acidity.inGramsPerLitreAs(Acid.LACTIC);
    if (acidity.compareTo(AcidityResult.greatestOfOpenSample(acidity.endPoint())) > 0) {
      return List.of(
          new BeerFinding(
              BeerFinding.Kind.ACIDITY_OF_CARBONATED_SAMPLE,
              Texts.acidity(acidity)
                  + " is more than a beer with all the carbon dioxide of an open sample reaches; the"
                  + " gas of a closed vessel, or a slip in the arithmetic, is likelier than acid"));
    }
    if (asLactic > AcidityResult.UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC) {
      return List.of(
          new BeerFinding(
              BeerFinding.Kind.ACIDITY_UNUSUAL,
              Texts.acidity(acidity)
                  + " is unusual for a beer (common practice, no source); was the sample degassed?"));
    }
    return List.of();
  }

  /** What was measured beyond the acidity of the solution that stands for the beer, mEq/L. */
  double acidityBeyond(Solution solution) {
    return acidity
        .value()
        .minus(solution.titratableAcidity(acidity.value().endPoint()))
        .inMilliequivalentsPerLitre();
  }

  Figure<PH> pHFigure() {
    return pH;
  }

  Figure<TitratableAcidity> acidityFigure() {
    return acidity;
  }

  Map<Ion, Content> ions() {
    return ions;
  }

  /**
   * Asks for a dose of an acid: {@code beer.dose(reagent).into(hL(20)).to(pH(4.2))}.
   *
   * @param reagent an acid as it is bought
   * @return a request that wants a volume and a target
   * @throws IllegalArgumentException if the reagent is not an acid, or none that may be dosed into
   *     beer; see {@link Reagent#permissionIn}
   */
  public DoseRequest dose(Reagent reagent) {
    return DoseRequest.of(this, reagent);
  }

  /**
   * Asks for a blend with another beer: {@code beer.blendedWith(other).total(hL(30)).to(pH(3.8))}.
   *
   * @param other the other beer, at the same temperature
   * @return a request that wants volumes, or a volume and a target
   * @throws IllegalArgumentException if temperatures or end points differ
   */
  public BlendRequest blendedWith(Beer other) {
    return BlendRequest.of(this, other);
  }

  /** Returns the key figures, one a line. */
  @Override
  public String toString() {
    return keyFigures().toString();
  }
}
