package org.brewchem.mash;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Liquid;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * A malt as its charge curve in distilled water: the pH of a cooled mash against the strong acid
 * that it was given, with the uncertainty of the curve and where it comes from.
 *
 * <p>A malt is measured by a {@link MaltTitration}, stated by its numbers, or assumed by its kind.
 * An assumed malt is labelled in every result; colour alone tells nothing about the curve. A
 * reading is one source of uncertainty wherever it is used: the same malt in two places of a grist,
 * and two assumed malts of one kind, err together. Immutable and thread-safe.
 */
public final class Malt {

  /** The pH of a cooled mash of the malt in distilled water. */
  static final Scale<PH> IN_DISTILLED_WATER =
      Scale.beforeTheNumber("pH in distilled water", PH::value, PH::of, 2);

  /** Beyond these no malt was ever met, by powers of ten; our choice. */
  private static final UsualRange USUAL_PH = UsualRange.named("pH of a malt");

  private static final UsualRange USUAL_CAPACITY = UsualRange.named("capacity of a malt");

  private static final double LEAST_CAPACITY = 0.1;

  private static final double GREATEST_CAPACITY = 10_000;

  private static final Scale<Double> CAPACITY = Scale.number("mEq/(kg pH)", 1);

  /** What is asked of a malt alone. */
  private static final Figure.Rule OF_A_MALT =
      new Figure.Rule() {
        @Override
        public Step find(Figure<?> figure, Answering from) {
          return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
              .text(text(), "")
              .unknown(List.of("does not apply to a " + from.kind()));
        }

        @Override
        public String text() {
          return "number of the charge curve of a malt";
        }
      };

  private static final Map<MaltKind, Malt> ASSUMED = new EnumMap<>(MaltKind.class);

  static {
    for (MaltKind kind : MaltKind.values()) {
      ASSUMED.put(
          kind,
          new Malt(
              kind + " malt",
              AssumedMalt.of(kind).source(),
              Origin.ASSUMED,
              AssumedMalt.of(kind).curve(),
              MashValues.value("ratio of reading"),
              Temperature.ofCelsius(20),
              List.of(),
              Optional.empty()));
    }
  }

  private final String name;
  private final String source;
  private final Origin origin;
  private final MaltCurve curve;
  private final double litresPerKilogram;
  private final Temperature readAt;
  private final List<Map<String, Double>> brews;
  private final Optional<Contents> species;

  private Malt(
      String name,
      String source,
      Origin origin,
      MaltCurve curve,
      double litresPerKilogram,
      Temperature readAt,
      List<Map<String, Double>> brews,
      Optional<Contents> species) {
    this.name = Checks.notBlank("name of the malt", name);
    this.source = Checks.notBlank("source of the malt", source);
    this.origin = origin;
    this.curve = curve;
    this.litresPerKilogram = litresPerKilogram;
    this.readAt = readAt;
    this.brews = List.copyOf(brews);
    this.species = species;
  }

  /** A malt that was measured in jars. */
  static Malt measured(
      String name, String source, MaltCurve curve, double litresPerKilogram, Temperature readAt) {
    return new Malt(
        name,
        source,
        Origin.MEASURED,
        curve,
        litresPerKilogram,
        readAt,
        List.of(),
        Optional.empty());
  }

  /**
   * Returns a malt whose lot nobody measured: the assumed default of its kind.
   *
   * @param kind the kind
   * @return the malt, read at 20 °C and 4 L/kg; every result that rests on it says so
   */
  public static Malt assumed(MaltKind kind) {
    return Objects.requireNonNull(ASSUMED.get(Objects.requireNonNull(kind, "kind")));
  }

  /**
   * Returns a malt by the numbers of its curve, such as a laboratory states them, independent of
   * each other.
   *
   * @param name its name
   * @param source where the numbers come from, such as a laboratory and a lot
   * @param pH of a cooled mash in distilled water at 20 °C and 4 L/kg
   * @param standardUncertaintyOfPH standard uncertainty of that pH, 0 or more
   * @param capacity strong acid that lowers the pH by 1 there, mEq/(kg pH), 0.1 to 10,000
   * @param standardUncertaintyOfCapacity standard uncertainty of the capacity, 0 or more
   * @return the malt, of constant capacity
   * @throws IllegalArgumentException if a text is blank or a number is out of range
   */
  public static Malt stated(
      String name,
      String source,
      PH pH,
      double standardUncertaintyOfPH,
      double capacity,
      double standardUncertaintyOfCapacity) {
    Objects.requireNonNull(pH, "pH");
    Checks.inRange("capacity", capacity, "mEq/(kg pH)", LEAST_CAPACITY, GREATEST_CAPACITY);
    Source read = Source.of("pH of " + name, pH.value(), standardUncertaintyOfPH, "");
    Source resisting =
        Source.of("capacity of " + name, capacity, standardUncertaintyOfCapacity, "mEq/(kg pH)");
    Traced slope = Traced.exact(-1).dividedBy(Traced.of(resisting));
    return new Malt(
        name,
        source,
        Origin.REPORTED,
        MaltCurve.straight(Traced.of(read), slope),
        MashValues.value("ratio of reading"),
        Temperature.ofCelsius(20),
        List.of(),
        Optional.empty());
  }

  /**
   * Returns a malt whose species are known, with the curve that the kernel finds for them: a
   * quadratic through the pH at -10, 0 and 20 mEq/kg of strong acid, as of three jars.
   *
   * @param name its name
   * @param source where the species come from, such as an analysis of a congress wort
   * @param inDistilledWater the cooled mash of the malt alone in distilled water as a solution, at
   *     10 to 30 °C: phosphate, metals, organic acids, groups of your own
   * @param litresPerKilogram water of that mash per kilogram of malt, 1 to 20 L/kg
   * @return the malt, its species stated
   * @throws IllegalArgumentException if a text is blank, a number is out of range, the balance of
   *     the solution is open or a total unknown, or its pH does not fall with acid
   */
  public static Malt ofSpecies(
      String name, String source, Liquid inDistilledWater, double litresPerKilogram) {
    Contents contents = known(name, inDistilledWater);
    double celsius = contents.temperature().inCelsius();
    Checks.inRange("temperature of the species", celsius, "°C", 10, 30);
    Checks.inRange("litres per kilogram", litresPerKilogram, "L/kg", 1, 20);
    return new Malt(
        name,
        source,
        Origin.COMPUTED,
        MaltCurve.ofSpecies(name, contents, litresPerKilogram),
        litresPerKilogram,
        contents.temperature(),
        List.of(),
        Optional.of(contents));
  }

  /**
   * States the species that the malt gives off. A mash can then tell how much of the acid that
   * calcium and magnesium set free comes from these species. The curve already includes their
   * effect in distilled water and stays as it is.
   *
   * @param inDistilledWater the cooled mash of the malt alone in distilled water as a solution, at
   *     the ratio and the temperature at which the malt was read
   * @return the malt with its species
   * @throws IllegalArgumentException if the temperature is another, the balance of the solution is
   *     open or a total unknown
   */
  public Malt withSpecies(Liquid inDistilledWater) {
    Contents contents = known(name, inDistilledWater);
    if (!contents.temperature().equals(readAt)) {
      throw new IllegalArgumentException(
          "temperature of the species of "
              + name
              + ": "
              + contents.temperature()
              + " is not possible; "
              + readAt
              + " is needed, at which the malt was read");
    }
    return new Malt(
        name, source, origin, curve, litresPerKilogram, readAt, brews, Optional.of(contents));
  }

  private static Contents known(String name, Liquid inDistilledWater) {
    Contents contents = Objects.requireNonNull(inDistilledWater, "in distilled water").contents();
    if (!contents.whyOpen().isEmpty() || !contents.unknown().isEmpty()) {
      throw new IllegalArgumentException(
          "species of "
              + name
              + ": a solution with unknown totals or an open balance is not possible; state each"
              + " total and the pH or the inert charge");
    }
    return contents;
  }

  /**
   * Returns the name.
   *
   * @return the name, which tells malts of a grist apart
   */
  public String name() {
    return name;
  }

  /**
   * Returns where the curve comes from.
   *
   * @return a laboratory and a lot, or the row of an assumed default
   */
  public String source() {
    return source;
  }

  /**
   * Tells whether the curve is assumed.
   *
   * @return true while nothing was measured of the malt or of a mash with it
   */
  public boolean isAssumed() {
    return origin == Origin.ASSUMED;
  }

  /**
   * Returns the pH of a cooled mash of this malt alone in distilled water.
   *
   * @return the pH with its uncertainty
   */
  public Answer<PH> pH() {
    Figure<PH> figure = Figure.of("pH of " + name, Map.of(), IN_DISTILLED_WATER, OF_A_MALT);
    return Answer.of(figure, pHStep());
  }

  /**
   * Returns the buffer capacity at that pH.
   *
   * @return strong acid that lowers the pH by 1, mEq/(kg pH)
   */
  public Answer<Double> bufferCapacity() {
    Figure<Double> figure = Figure.of("capacity of " + name, Map.of(), CAPACITY, OF_A_MALT);
    return Answer.of(figure, capacityStep());
  }

  Step pHStep() {
    return stated("pH of " + name, IN_DISTILLED_WATER).found(curve.pH());
  }

  Step capacityStep() {
    return stated("capacity of " + name, CAPACITY).found(Traced.exact(-1).dividedBy(curve.slope()));
  }

  private Step.Builder stated(String quantity, Scale<?> scale) {
    return Step.of(quantity, scale, Step.Kind.STATED)
        .origin(origin)
        .text(isLearned() ? "as measured mashes taught it" : origin.toString(), source)
        .notices(notices());
  }

  /**
   * Returns what is notable about the malt.
   *
   * @return a notice where its curve is assumed, and where its pH in distilled water or its
   *     capacity there is unusual, as of acid typed ten times too strong
   */
  public List<Notice> notices() {
    List<Notice> all = new ArrayList<>();
    if (isAssumed()) {
      all.add(
          Notice.of(
              MashCode.ASSUMED_MALT,
              name,
              "rests on an assumed malt: nobody measured this lot of "
                  + name
                  + "; titrate it in three jars"));
    }
    USUAL_PH.judge("pH of " + name, curve.pH().value()).ifPresent(all::add);
    USUAL_CAPACITY.judge("capacity of " + name, -1 / curve.slopeAt(0)).ifPresent(all::add);
    return List.copyOf(all);
  }

  MaltCurve curve() {
    return curve;
  }

  double litresPerKilogram() {
    return litresPerKilogram;
  }

  Temperature readAt() {
    return readAt;
  }

  /** The shares by mass of the grists in which a measured mash pH taught about this malt. */
  List<Map<String, Double>> brews() {
    return brews;
  }

  boolean isLearned() {
    return !brews.isEmpty();
  }

  /** The malt as measured mashes teach it. */
  Malt learned(MaltCurve as, List<Map<String, Double>> from) {
    return new Malt(
        name,
        source,
        isAssumed() ? Origin.COMPUTED : origin,
        as,
        litresPerKilogram,
        readAt,
        from,
        species);
  }

  /** The species in distilled water at the ratio of reading, if they were stated. */
  Optional<Contents> species() {
    return species;
  }

  /** Returns name, pH and capacity. */
  @Override
  public String toString() {
    return name + ", " + pH() + ", " + bufferCapacity() + (isAssumed() ? ", assumed" : "");
  }
}
