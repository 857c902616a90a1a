package org.brewchem.mash;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * A malt titrated in jars: small mashes of it in distilled water, one with strong base, one without
 * and one with strong acid, or more, and the pH of each, cooled. The protocol with its cautions is
 * docs/mash-protocol.md.
 *
 * <p>The curve is a quadratic through the readings by least squares, its curvature restrained by a
 * weak prior. The misfit of a quadratic between and beyond the jars is a source of uncertainty of
 * its own. A malt that does not convert alone is mashed with a base malt of known curve, whose part
 * is subtracted, with its uncertainty. Immutable.
 */
public final class MaltTitration {

  private static final int MOST_ROUNDS = 100;
  private static final int NUMBERS = 3;

  private record Jar(double acid, PH read) {}

  private record WithBase(Malt malt, double share) {}

  private final String name;
  private final String source;
  private final double uOfReading;
  private final double uOfZero;
  private final double kilograms;
  private final double litres;
  private final Temperature readAt;
  private final Optional<WithBase> base;
  private final List<Jar> jars;

  private MaltTitration(
      String name,
      String source,
      double uOfReading,
      double uOfZero,
      double kilograms,
      double litres,
      Temperature readAt,
      Optional<WithBase> base,
      List<Jar> jars) {
    this.name = name;
    this.source = source;
    this.uOfReading = uOfReading;
    this.uOfZero = uOfZero;
    this.kilograms = kilograms;
    this.litres = litres;
    this.readAt = readAt;
    this.base = base;
    this.jars = List.copyOf(jars);
  }

  /**
   * Starts with a malt: 50 g in 200 mL of distilled water in each jar, read at 20 °C, unless stated
   * otherwise.
   *
   * @param name name of the malt
   * @param source who measured which lot, such as "own laboratory, lot 12"
   * @param standardUncertaintyOfReading standard uncertainty of one reading of pH, independent of
   *     the others, 0.001 to 0.5
   * @return a titration without jars
   * @throws IllegalArgumentException if a text is blank or the uncertainty is out of range
   */
  public static MaltTitration of(String name, String source, double standardUncertaintyOfReading) {
    return new MaltTitration(
        Checks.notBlank("name of the malt", name),
        Checks.notBlank("source of the malt", source),
        Checks.inRange("uncertainty of a reading", standardUncertaintyOfReading, "pH", 0.001, 0.5),
        0,
        0.05,
        0.2,
        Temperature.ofCelsius(20),
        Optional.empty(),
        List.of());
  }

  /**
   * States how well the zero of the electrode is known, which is common to all jars.
   *
   * @param standardUncertainty its standard uncertainty in pH, 0 to 0.5
   * @return the titration
   * @throws IllegalArgumentException if it is out of range
   */
  public MaltTitration withZeroUncertainty(double standardUncertainty) {
    return new MaltTitration(
        name,
        source,
        uOfReading,
        Checks.inRange("uncertainty of the zero", standardUncertainty, "pH", 0, 0.5),
        kilograms,
        litres,
        readAt,
        base,
        jars);
  }

  /**
   * States what every jar holds.
   *
   * @param malt mass of the malt, or of the malts together, above 0
   * @param water volume of distilled water, above 0
   * @return the titration
   * @throws IllegalArgumentException if one is 0, or jars were read already
   */
  public MaltTitration weighing(Mass malt, Volume water) {
    Objects.requireNonNull(malt, "malt");
    Objects.requireNonNull(water, "water");
    beforeTheJars("what a jar holds");
    return new MaltTitration(
        name,
        source,
        uOfReading,
        uOfZero,
        Checks.positive("mass of the malt", malt.inKilograms(), "kg"),
        Checks.positive("volume of the water", water.inLitres(), "L"),
        readAt,
        base,
        jars);
  }

  /**
   * States the temperature of the cooled sample.
   *
   * @param temperature of the reading, 10 to 30 °C
   * @return the titration
   * @throws IllegalArgumentException if it is out of range
   */
  public MaltTitration readAt(Temperature temperature) {
    Checks.inRange("temperature of the reading", temperature.inCelsius(), "°C", 10, 30);
    return new MaltTitration(
        name, source, uOfReading, uOfZero, kilograms, litres, temperature, base, jars);
  }

  /**
   * States that the malt was mashed together with one that converts, whose curve is known and is
   * subtracted. The free protons of another ratio are neglected.
   *
   * @param known the other malt
   * @param shareOfKnown its share of the malt in each jar, above 0 and below 1
   * @return the titration
   * @throws IllegalArgumentException if the share is 0 or 1, or jars were read already
   */
  public MaltTitration mashedWith(Malt known, MassFraction shareOfKnown) {
    Objects.requireNonNull(known, "known");
    double share = shareOfKnown.fraction();
    if (share <= 0 || share >= 1) {
      throw Checks.outOfRange("share of " + known.name(), share, "", "more than 0 and less than 1");
    }
    beforeTheJars("the malt that was mashed with it");
    return new MaltTitration(
        name,
        source,
        uOfReading,
        uOfZero,
        kilograms,
        litres,
        readAt,
        Optional.of(new WithBase(known, share)),
        jars);
  }

  private void beforeTheJars(String what) {
    if (!jars.isEmpty()) {
      throw new IllegalArgumentException(
          "jars: " + what + " is not possible after a jar was read; state it before");
    }
  }

  /**
   * Adds the jar without acid or base.
   *
   * @param read the pH of its cooled sample
   * @return the titration
   */
  public MaltTitration none(PH read) {
    return jar(0, read);
  }

  /**
   * Adds a jar with strong acid, such as hydrochloric acid.
   *
   * @param volume of the acid, above 0
   * @param strength of the acid, above 0
   * @param read the pH of its cooled sample
   * @return the titration
   * @throws IllegalArgumentException if volume or strength is 0
   */
  public MaltTitration acid(Volume volume, ChargeConcentration strength, PH read) {
    return jar(dose("acid", volume, strength), read);
  }

  /**
   * Adds a jar with strong base, such as sodium hydroxide.
   *
   * @param volume of the base, above 0
   * @param strength of the base, above 0
   * @param read the pH of its cooled sample
   * @return the titration
   * @throws IllegalArgumentException if volume or strength is 0
   */
  public MaltTitration base(Volume volume, ChargeConcentration strength, PH read) {
    return jar(-dose("base", volume, strength), read);
  }

  private double dose(String what, Volume volume, ChargeConcentration strength) {
    Objects.requireNonNull(volume, "volume");
    Objects.requireNonNull(strength, "strength");
    return Checks.positive("volume of the " + what, volume.inLitres(), "L")
        * Checks.positive("strength of the " + what, strength.inMilliequivalentsPerLitre(), "mEq/L")
        / kilograms;
  }

  private MaltTitration jar(double acid, PH read) {
    Objects.requireNonNull(read, "read");
    List<Jar> more = new ArrayList<>(jars);
    more.add(new Jar(acid, read));
    return new MaltTitration(
        name, source, uOfReading, uOfZero, kilograms, litres, readAt, base, more);
  }

  /**
   * Fits the curve.
   *
   * @return the malt, measured
   * @throws IllegalArgumentException if there are fewer than three different jars, or their pH does
   *     not fall with acid
   */
  public Malt malt() {
    if (jars.stream().mapToDouble(Jar::acid).distinct().count() < NUMBERS) {
      throw new IllegalArgumentException(
          "jars: "
              + NumberText.count(jars.size(), "is", "are")
              + " not possible; three of different acid are needed: with base, without, with"
              + " acid");
    }
    return Malt.measured(name, source, curve(), litres / kilograms, readAt);
  }

  private MaltCurve curve() {
    int count = jars.size();
    double[] acids = new double[count];
    double[] read = new double[count];
    Source[] readings = new Source[count];
    for (int i = 0; i < count; i++) {
      Jar jar = jars.get(i);
      read[i] = jar.read().value();
      acids[i] = ofTheMalt(jar);
      readings[i] =
          Source.of(
              "pH of " + name + " at " + NumberText.significant(jar.acid(), 3) + " mEq/kg",
              read[i],
              uOfReading,
              "");
    }
    Source prior =
        Source.of(
            "curvature of " + name, 0, MashValues.value("curvature of a malt"), "pH kg2/mEq2");
    double[] found = {0, -1, 0};
    double[][] estimator = {};
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double[] before = found;
      estimator = estimator(acids, scales(acids, found), prior.standardUncertainty().orElseThrow());
      found = times(estimator, read);
      if (base.isEmpty() || Arrays.equals(before, found)) {
        break;
      }
    }
    double[] scales = scales(acids, found);
    Traced[] observed = new Traced[count + 1];
    for (int i = 0; i < count; i++) {
      observed[i] = observed(i, acids[i], Traced.of(readings[i]), scales[i], found);
    }
    observed[count] = Traced.of(prior);
    Traced[] numbers = new Traced[NUMBERS];
    for (int k = 0; k < NUMBERS; k++) {
      numbers[k] = Traced.linear(found[k], observed, estimator[k]);
    }
    double[] sorted = acids.clone();
    Arrays.sort(sorted);
    double centre = (2 * sorted[0] + sorted[count - 1]) / 3;
    double middle =
        Arrays.stream(sorted, 1, count - 1)
            .boxed()
            .min(Comparator.comparingDouble(acid -> Math.abs(acid - centre)))
            .orElseThrow();
    Traced zero =
        uOfZero == 0
            ? Traced.exact(0)
            : Traced.of(Source.of("zero of the electrode for " + name, 0, uOfZero, ""));
    return new MaltCurve(
        numbers[0].plus(zero),
        numbers[1],
        numbers[2],
        MaltCurve.missed(name),
        sorted[0],
        middle,
        sorted[count - 1]);
  }

  /** Acid that the malt itself took, mEq/kg of it, when the jar stood at its pH. */
  private double ofTheMalt(Jar jar) {
    return base.map(
            known ->
                (jar.acid() - known.share() * known.malt().curve().acidAt(jar.read().value()))
                    / (1 - known.share()))
        .orElse(jar.acid());
  }

  /** How much stronger an error of a reading moves the malt's curve than the reading itself. */
  private double[] scales(double[] acids, double[] numbers) {
    double[] scales = new double[acids.length];
    for (int i = 0; i < scales.length; i++) {
      double own = numbers[1] + 2 * numbers[2] * acids[i];
      double read = jars.get(i).read().value();
      scales[i] = 1 + base.map(known -> ratio(known, read) * own).orElse(0.0);
    }
    return scales;
  }

  /** Known acid over own, per pH of the known malt. */
  private static double ratio(WithBase known, double pH) {
    MaltCurve curve = known.malt().curve();
    return known.share() / (1 - known.share()) / curve.slopeAt(curve.acidAt(pH));
  }

  private Traced observed(int i, double acid, Traced reading, double scale, double[] numbers) {
    if (base.isEmpty()) {
      return reading;
    }
    MaltCurve curve = base.get().malt().curve();
    double read = jars.get(i).read().value();
    double own = numbers[1] + 2 * numbers[2] * acid;
    Traced[] parameters = curve.parameters();
    Traced[] inputs = Arrays.copyOf(parameters, parameters.length + 1);
    double[] slopes = Arrays.copyOf(curve.slopes(curve.acidAt(read)), inputs.length);
    for (int k = 0; k < parameters.length; k++) {
      slopes[k] *= -own * ratio(base.get(), read);
    }
    inputs[parameters.length] = reading;
    slopes[parameters.length] = scale;
    return Traced.linear(reading.value(), inputs, slopes);
  }

  /** Rows: the three numbers; columns: the readings, and behind them the prior of the curvature. */
  private double[][] estimator(double[] acids, double[] scales, double uOfCurvature) {
    int count = acids.length;
    double[][] normal = new double[NUMBERS][NUMBERS];
    double[][] weighted = new double[NUMBERS][count + 1];
    for (int i = 0; i < count; i++) {
      double u = uOfReading * scales[i];
      double[] row = {1, acids[i], acids[i] * acids[i]};
      for (int k = 0; k < NUMBERS; k++) {
        weighted[k][i] = row[k] / (u * u);
        for (int l = 0; l < NUMBERS; l++) {
          normal[k][l] += row[k] * row[l] / (u * u);
        }
      }
    }
    double held = 1 / (uOfCurvature * uOfCurvature);
    normal[2][2] += held;
    weighted[2][count] = held;
    return new LUDecomposition(MatrixUtils.createRealMatrix(normal), 0)
        .getSolver()
        .solve(MatrixUtils.createRealMatrix(weighted))
        .getData();
  }

  private static double[] times(double[][] estimator, double[] read) {
    double[] found = new double[NUMBERS];
    for (int k = 0; k < NUMBERS; k++) {
      for (int i = 0; i < read.length; i++) {
        found[k] += estimator[k][i] * read[i];
      }
    }
    return found;
  }

  @Override
  public String toString() {
    return name + ", " + jars.size() + " jars";
  }
}
