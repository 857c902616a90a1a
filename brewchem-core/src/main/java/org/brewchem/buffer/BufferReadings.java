package org.brewchem.buffer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * One portion of a liquid titrated in one direction: the strong base that was added before each
 * reading, the dilution by it, and the pH that was read. Immutable.
 *
 * <p>Adding alkali says nothing about the pH below the liquid's own; adding strong acid to a second
 * portion does. A fit of both knows both sides.
 *
 * <p>The base added has an uncertainty of its own at each reading, and uncertainties that are
 * common to all: a {@link #with source} moves every reading, each by its entry in the column of the
 * source.
 */
public final class BufferReadings {

  private static final double KILOGRAMS_PER_LITRE =
      Contents.pure(Temperature.ofCelsius(20), Chemistry.standard()).kilogramsPerLitre();

  /** What is stated so far; copied for each change. */
  private static final class Draft {
    private Temperature temperature = Temperature.ofCelsius(20);
    private double[] base = {};
    private double[] dilution = {};
    private double[] pH = {};
    private double baseUncertainty;
    private double equivalentsPerMillilitre;
    private Map<Source, double[]> columns = new LinkedHashMap<>();
    private Map<Source, double[]> errorsOfPH = new LinkedHashMap<>();
    private List<Source> assumed = new ArrayList<>();
  }

  private final Draft draft;

  private BufferReadings(Draft draft) {
    this.draft = draft;
    double[] pH = draft.pH;
    if (draft.base.length != pH.length || draft.dilution.length != pH.length) {
      throw new IllegalArgumentException(
          "readings: "
              + draft.base.length
              + " of base, "
              + draft.dilution.length
              + " of dilution and "
              + pH.length
              + " of pH are not possible; one of each to each reading is needed");
    }
    for (int i = 0; i < pH.length; i++) {
      Checks.finite("base of reading " + (i + 1), draft.base[i], "Eq/kg");
      Checks.nonNegative("dilution of reading " + (i + 1), draft.dilution[i], "");
      Checks.inRange("pH of reading " + (i + 1), pH[i], "", 0, 14);
    }
    Checks.nonNegative("uncertainty of the base", draft.baseUncertainty, "Eq/kg");
  }

  private Draft copy() {
    Draft copy = new Draft();
    copy.temperature = draft.temperature;
    copy.base = draft.base;
    copy.dilution = draft.dilution;
    copy.pH = draft.pH;
    copy.baseUncertainty = draft.baseUncertainty;
    copy.equivalentsPerMillilitre = draft.equivalentsPerMillilitre;
    copy.columns = new LinkedHashMap<>(draft.columns);
    copy.errorsOfPH = new LinkedHashMap<>(draft.errorsOfPH);
    copy.assumed = new ArrayList<>(draft.assumed);
    return copy;
  }

  /**
   * Makes readings of plain arrays, at 20 °C.
   *
   * @param base strong base added before each reading, eq per kg of the liquid's water; negative
   *     for acid
   * @param dilution titrant and water per volume of the liquid at each reading, each 0 or more
   * @param pH the readings, 0 to 14
   * @param baseUncertainty standard uncertainty of the base at a single reading, independent of the
   *     others, Eq/kg, 0 or more
   * @return the readings
   * @throws IllegalArgumentException if the lengths differ or a number is out of range
   */
  public static BufferReadings of(
      double[] base, double[] dilution, double[] pH, double baseUncertainty) {
    Draft draft = new Draft();
    draft.base = base.clone();
    draft.dilution = dilution.clone();
    draft.pH = pH.clone();
    draft.baseUncertainty = baseUncertainty;
    return new BufferReadings(draft);
  }

  /**
   * Makes the readings upwards, with a strong univalent base, volumes read to 0.02 mL.
   *
   * @param sample the portion titrated, more than 0
   * @param alkali the concentration of the base, 0.001 to 20 mol/L
   * @param millilitres total volume added before each reading, mL, each 0 or more; 0 for the sample
   *     itself
   * @param pH the readings, 0 to 14, as many
   * @return the readings
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferReadings withAlkali(
      Volume sample, AmountConcentration alkali, double[] millilitres, double[] pH) {
    Objects.requireNonNull(alkali, "alkali");
    return withAlkali(sample, alkali, usualVolumeUncertainty(), millilitres, pH);
  }

  /**
   * Makes the readings upwards, with a strong univalent base.
   *
   * @param sample the portion titrated, more than 0
   * @param alkali the concentration of the base, 0.001 to 20 mol/L
   * @param volumeUncertainty standard uncertainty of a single volume
   * @param millilitres total volume added before each reading, mL, each 0 or more; 0 for the sample
   *     itself
   * @param pH the readings, 0 to 14, as many
   * @return the readings
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferReadings withAlkali(
      Volume sample,
      AmountConcentration alkali,
      Volume volumeUncertainty,
      double[] millilitres,
      double[] pH) {
    Objects.requireNonNull(alkali, "alkali");
    return titrated("alkali", sample, alkali, volumeUncertainty, millilitres, pH);
  }

  /**
   * Makes the readings downwards, with a strong univalent acid, volumes read to 0.02 mL.
   *
   * @param sample the portion titrated, more than 0
   * @param acid the concentration of the acid, 0.001 to 20 mol/L
   * @param millilitres total volume added before each reading, mL, each 0 or more
   * @param pH the readings, 0 to 14, as many
   * @return the readings
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferReadings withAcid(
      Volume sample, AmountConcentration acid, double[] millilitres, double[] pH) {
    Objects.requireNonNull(acid, "acid");
    return withAcid(sample, acid, usualVolumeUncertainty(), millilitres, pH);
  }

  /**
   * Makes the readings downwards, with a strong univalent acid.
   *
   * @param sample the portion titrated, more than 0
   * @param acid the concentration of the acid, 0.001 to 20 mol/L
   * @param volumeUncertainty standard uncertainty of a single volume
   * @param millilitres total volume added before each reading, mL, each 0 or more
   * @param pH the readings, 0 to 14, as many
   * @return the readings
   * @throws IllegalArgumentException if an argument is out of range or the lengths differ
   */
  public static BufferReadings withAcid(
      Volume sample,
      AmountConcentration acid,
      Volume volumeUncertainty,
      double[] millilitres,
      double[] pH) {
    Objects.requireNonNull(acid, "acid");
    return titrated("acid", sample, acid, volumeUncertainty, millilitres, pH);
  }

  private static Volume usualVolumeUncertainty() {
    return Volume.ofMillilitres(Usual.READING_OF_BURETTE.standardUncertainty());
  }

  /**
   * Starts readings upwards with a strong univalent base, one by one.
   *
   * @param sample the portion titrated, more than 0
   * @param alkali the concentration of the base, 0.001 to 20 mol/L
   * @return readings to be written down
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static Log logWithAlkali(Volume sample, AmountConcentration alkali) {
    Objects.requireNonNull(alkali, "alkali");
    strength("alkali", alkali);
    return new Log("alkali", sample, alkali, List.of());
  }

  /**
   * Starts readings downwards with a strong univalent acid, one by one.
   *
   * @param sample the portion titrated, more than 0
   * @param acid the concentration of the acid, 0.001 to 20 mol/L
   * @return readings to be written down
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static Log logWithAcid(Volume sample, AmountConcentration acid) {
    Objects.requireNonNull(acid, "acid");
    strength("acid", acid);
    return new Log("acid", sample, acid, List.of());
  }

  /**
   * Readings written down one by one, each a volume and a pH that cannot be exchanged. Immutable.
   */
  public static final class Log {
    private final String titrant;
    private final Volume sample;
    private final AmountConcentration concentration;
    private final List<double[]> read;

    private Log(
        String titrant, Volume sample, AmountConcentration concentration, List<double[]> read) {
      this.titrant = titrant;
      this.sample = sample;
      this.concentration = concentration;
      this.read = read;
      Checks.positive("sample", sample.inMillilitres(), "mL");
    }

    /**
     * Adds a reading.
     *
     * @param total the volume added since the beginning, 0 for the sample itself
     * @param pH what the meter showed then
     * @return the readings with it
     */
    public Log read(Volume total, PH pH) {
      List<double[]> more = new ArrayList<>(read);
      more.add(new double[] {total.inMillilitres(), pH.value()});
      return new Log(titrant, sample, concentration, List.copyOf(more));
    }

    /**
     * Returns the readings, volumes read to 0.02 mL.
     *
     * @return the readings
     * @throws IllegalArgumentException if a volume is negative or a pH not 0 to 14
     */
    public BufferReadings readings() {
      double[] millilitres = read.stream().mapToDouble(pair -> pair[0]).toArray();
      double[] pH = read.stream().mapToDouble(pair -> pair[1]).toArray();
      return titrated(titrant, sample, concentration, usualVolumeUncertainty(), millilitres, pH);
    }

    @Override
    public String toString() {
      return NumberText.count(read.size(), "reading", "readings")
          + " of "
          + sample
          + " with "
          + titrant
          + ", "
          + concentration;
    }
  }

  private static double strength(String titrant, AmountConcentration concentration) {
    return Checks.inRange(
        titrant,
        concentration.inMolesPerLitre(),
        "mol/L",
        Usual.LEAST_TITRANT.value(),
        Usual.MOST_TITRANT.value());
  }

  private static BufferReadings titrated(
      String titrant,
      Volume sample,
      AmountConcentration concentration,
      Volume volumeUncertainty,
      double[] millilitres,
      double[] pH) {
    double equivalentsPerLitre =
        (titrant.equals("acid") ? -1 : 1) * strength(titrant, concentration);
    double portion = Checks.positive("sample", sample.inMillilitres(), "mL");
    if (millilitres.length != pH.length) {
      throw new IllegalArgumentException(
          "readings: "
              + NumberText.count(millilitres.length, "volume", "volumes")
              + " and "
              + NumberText.count(pH.length, "pH value", "pH values")
              + " are not possible; one pH to each volume is needed");
    }
    Draft draft = new Draft();
    draft.pH = pH.clone();
    draft.base = new double[pH.length];
    draft.dilution = new double[pH.length];
    draft.equivalentsPerMillilitre = equivalentsPerLitre / portion / KILOGRAMS_PER_LITRE;
    for (int i = 0; i < pH.length; i++) {
      Checks.nonNegative("volume of reading " + (i + 1), millilitres[i], "mL");
      draft.base[i] = draft.equivalentsPerMillilitre * millilitres[i];
      draft.dilution[i] = millilitres[i] / portion;
    }
    draft.baseUncertainty =
        Math.abs(draft.equivalentsPerMillilitre) * volumeUncertainty.inMillilitres();
    BufferReadings plain = new BufferReadings(draft);
    return plain
        .assuming(relative("concentration of the " + titrant, Usual.TITRANT.standardUncertainty()))
        .assuming(relative("volume of the sample", Usual.SAMPLE.standardUncertainty()));
  }

  /** How far something lies from what is stated of it, relative. */
  private static Source relative(String name, double standardUncertainty) {
    return Source.of(name + ", relative to the stated one", 1, standardUncertainty, "");
  }

  private BufferReadings assuming(Source source) {
    Draft changed = with(source, draft.base).copy();
    changed.assumed.add(source);
    return new BufferReadings(changed);
  }

  /** The same without what was assumed of some of its sources. */
  private BufferReadings without(List<Source> assumed) {
    Draft changed = copy();
    assumed.forEach(changed.columns::remove);
    changed.assumed.removeAll(assumed);
    return new BufferReadings(changed);
  }

  private BufferReadings stating(Usual what, double relativeStandardUncertainty) {
    double u = Checks.inRange("uncertainty of the " + what, relativeStandardUncertainty, "", 0, 1);
    boolean titrant = what == Usual.TITRANT;
    Source stated = relative(what.toString(), u);
    List<Source> replaced =
        draft.columns.keySet().stream()
            .filter(
                source ->
                    source.name().equals(stated.name())
                        || (draft.assumed.contains(source)
                            && source.name().startsWith("concentration") == titrant))
            .toList();
    return without(replaced).with(stated, draft.base);
  }

  /**
   * States how well the concentration of the titrant is known, instead of assuming 0.3 %.
   *
   * @param relativeStandardUncertainty as a fraction, 0 to 1
   * @return the readings with it
   * @throws IllegalArgumentException if it is out of range
   */
  public BufferReadings withTitrantUncertainty(double relativeStandardUncertainty) {
    return stating(Usual.TITRANT, relativeStandardUncertainty);
  }

  /**
   * States how well the volume of the sample is known, instead of assuming 0.1 %.
   *
   * @param relativeStandardUncertainty as a fraction, 0 to 1
   * @return the readings with it
   * @throws IllegalArgumentException if it is out of range
   */
  public BufferReadings withSampleUncertainty(double relativeStandardUncertainty) {
    return stating(Usual.SAMPLE, relativeStandardUncertainty);
  }

  /**
   * Subtracts what the water in the vessel takes by itself. A blank is titrated to one end point;
   * at readings before that it counts as the carbon dioxide that it mostly is.
   *
   * @param volume what the blank took, 0 or more
   * @param endPoint the pH that it was titrated to
   * @param standardUncertainty how well the volume is known
   * @return the readings without it
   * @throws IllegalArgumentException if the blank is negative
   * @throws IllegalStateException if the readings state no volumes
   */
  public BufferReadings withBlank(Volume volume, PH endPoint, Volume standardUncertainty) {
    if (draft.equivalentsPerMillilitre == 0) {
      throw new IllegalStateException("blank: readings of plain amounts of base state no volumes");
    }
    double millilitres = Checks.nonNegative("blank", volume.inMillilitres(), "mL");
    Source source = Source.of("blank", millilitres, standardUncertainty.inMillilitres(), "mL");
    double whole = CarbonicAcid.charge(endPoint.value());
    double[] column = new double[draft.pH.length];
    Draft changed = copy();
    changed.base = draft.base.clone();
    for (int i = 0; i < column.length; i++) {
      column[i] =
          -draft.equivalentsPerMillilitre * Math.min(1, CarbonicAcid.charge(draft.pH[i]) / whole);
      changed.base[i] += column[i] * millilitres;
    }
    return new BufferReadings(changed).with(source, column);
  }

  /**
   * States that water was added to the portion before the first reading.
   *
   * @param water its volume
   * @param portion the volume of the portion, above 0
   * @return the readings with that dilution in addition
   * @throws IllegalArgumentException if the portion is 0
   */
  public BufferReadings dilutedBy(Volume water, Volume portion) {
    double more = water.inMillilitres() / Checks.positive("portion", portion.inMillilitres(), "mL");
    Draft changed = copy();
    changed.dilution = draft.dilution.clone();
    for (int i = 0; i < changed.dilution.length; i++) {
      changed.dilution[i] += more;
    }
    return new BufferReadings(changed);
  }

  /**
   * States the temperature of the readings.
   *
   * @param actual 0 to 100 °C
   * @return the readings at it
   * @throws IllegalArgumentException if it is out of range
   */
  public BufferReadings at(Temperature actual) {
    Checks.inRange("temperature", actual.inCelsius(), "°C", 0, 100);
    Draft changed = copy();
    changed.temperature = actual;
    return new BufferReadings(changed);
  }

  /**
   * Adds a source of uncertainty that moves all readings together, such as the concentration of the
   * titrant. The same source in several readings, or in a pH or an acidity of the liquid,
   * correlates them.
   *
   * @param source the source
   * @param column by how much the base of each reading moves with a unit of the source, Eq/kg over
   *     the source's unit
   * @return the readings with it
   * @throws IllegalArgumentException if the column has another length or a number is not finite
   */
  public BufferReadings with(Source source, double[] column) {
    Draft changed = copy();
    add(changed.columns, source, column, "Eq/kg");
    return new BufferReadings(changed);
  }

  /**
   * Adds an error of the electrode that moves all readings of pH together, such as that of a buffer
   * it was calibrated with. Readings with such errors do not get the usual errors of the electrode
   * of {@link MeasuredBuffer#fit()} in addition. The fit estimates the error as far as its
   * uncertainty allows.
   *
   * @param source the source, with an uncertainty
   * @param column by how much each pH moves with a unit of the source
   * @return the readings with it
   * @throws IllegalArgumentException if the column has another length, a number is not finite or
   *     the source states no uncertainty
   */
  public BufferReadings withErrorOfPH(Source source, double[] column) {
    Objects.requireNonNull(source, "source");
    if (source.standardUncertainty().isEmpty()) {
      throw new IllegalArgumentException(
          source.name() + ": no uncertainty is not possible; an error of the pH needs one");
    }
    Draft changed = copy();
    add(changed.errorsOfPH, source, column, "pH");
    return new BufferReadings(changed);
  }

  private void add(Map<Source, double[]> columns, Source source, double[] column, String unit) {
    Objects.requireNonNull(source, "source");
    if (column.length != draft.pH.length) {
      throw new IllegalArgumentException(
          source.name()
              + ": a column of "
              + column.length
              + " is not possible; one number to each of "
              + draft.pH.length
              + " readings is needed");
    }
    double[] sum = column.clone();
    double[] before = columns.get(source);
    for (int i = 0; i < sum.length; i++) {
      Checks.finite(source.name(), column[i], unit);
      sum[i] += before == null ? 0 : before[i];
    }
    columns.put(source, sum);
  }

  /**
   * States that the base of all readings is proportional to a number that is uncertain, such as the
   * concentration of the titrant over the volume of the sample, in the place of what is assumed of
   * both.
   *
   * @param factor the number, not 0
   * @return the readings with its sources
   * @throws IllegalArgumentException if the number is 0
   */
  public BufferReadings proportionalTo(Traced factor) {
    double value = Checks.finite("factor", factor.value(), "");
    if (value == 0) {
      throw new IllegalArgumentException("factor: 0 is not possible; another number is needed");
    }
    BufferReadings all = without(draft.assumed);
    for (Source source : factor.sources()) {
      double relative = factor.sensitivity(source) / value;
      double[] column = draft.base.clone();
      for (int i = 0; i < column.length; i++) {
        column[i] *= relative;
      }
      all = all.with(source, column);
    }
    return all;
  }

  /**
   * Returns how many readings there are.
   *
   * @return a count
   */
  public int size() {
    return draft.pH.length;
  }

  /**
   * Returns the temperature.
   *
   * @return the temperature of the readings
   */
  public Temperature temperature() {
    return draft.temperature;
  }

  /**
   * Returns a reading.
   *
   * @param reading its index from 0
   * @return the pH read
   * @throws IllegalArgumentException if there is no reading of that index
   */
  public double pH(int reading) {
    return draft.pH[Checks.index("reading", reading, draft.pH.length)];
  }

  double base(int reading) {
    return draft.base[reading];
  }

  double dilution(int reading) {
    return draft.dilution[reading];
  }

  double baseUncertainty() {
    return draft.baseUncertainty;
  }

  Map<Source, double[]> columns() {
    return Collections.unmodifiableMap(draft.columns);
  }

  Map<Source, double[]> errorsOfPH() {
    return Collections.unmodifiableMap(draft.errorsOfPH);
  }

  /** Those of the columns that nobody stated. */
  List<Source> assumed() {
    return Collections.unmodifiableList(draft.assumed);
  }

  @Override
  public String toString() {
    double[] pH = draft.pH;
    return pH.length == 0
        ? "no readings"
        : String.format(
            Locale.ROOT,
            "%s from pH %.2f to %.2f",
            NumberText.count(pH.length, "reading", "readings"),
            pH[0],
            pH[pH.length - 1]);
  }
}
