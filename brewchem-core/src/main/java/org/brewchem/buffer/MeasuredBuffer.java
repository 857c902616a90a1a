package org.brewchem.buffer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.substance.Solute;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * The buffer of a beer, wort or mash as its titration shows it. It gives the pH after any dose of
 * any acid or base, the acidity to any end point, and the buffer capacity, each with its
 * uncertainty. Immutable.
 *
 * <p>The readings are explained by monoprotic acids on a grid of pK, their amounts at or above zero
 * and drawn towards a typical beer, the less the more of an acid there is, and by a strong-ion
 * difference that is free. Non-negative least squares with a ridge; the method is ours, its parts
 * are textbook. Calcium and magnesium, which hold part of an acid that is added, are as measured,
 * or assumed as in {@link TypicalBeer} with a common spread of 30 %.
 *
 * <p>The fitted curve judges the readings. Every answer gets a notice where there is too much
 * noise, where successive readings lie on one side of the curve, where it rejects a reading, where
 * portions do not meet, and where a titrant is not what was stated.
 *
 * <p>The amounts carry the covariance of the fit as sources of uncertainty, so that whatever is
 * computed from {@link #contents() the contents} has its u by the propagation of every liquid.
 * Outside its readings the result rests on what beers usually hold: intervals widen, and a notice
 * says so.
 */
public final class MeasuredBuffer implements Buffer {

  private static final String CHANGE = "pH after the dose - pH before";

  /** A difference of two pH values; it is got by {@link #changeOfPHBy} alone. */
  private static final Figure<Double> CHANGE_OF_PH =
      Figure.of(
          "change of pH",
          Map.of(),
          Scale.number("", 3),
          new Figure.Rule() {
            @Override
            public Step find(Figure<?> figure, Answering from) {
              return Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
                  .unknown(List.of("needs a dose; ask a measured buffer for it"));
            }

            @Override
            public String text() {
              return CHANGE;
            }
          });

  private final GridFit grid;
  private final List<Notice> judged;
  private final Contents contents;

  private MeasuredBuffer(FitInputs inputs) {
    int n = inputs.readings().stream().mapToInt(BufferReadings::size).sum();
    if (n < 3) {
      throw Checks.outOfRange("readings", n, "", "3 or more");
    }
    grid = new GridFit(inputs);
    judged = new Misfit(grid).notices();
    contents = grid.contents().withNotices(notices(false, false)).withNotices(judged);
  }

  /**
   * Fits the buffer to readings with the usual uncertainties of {@link #fit()}.
   *
   * @param readings of one or more portions; alkali into one portion of the liquid and acid into
   *     another cover both sides of its pH
   * @return the buffer
   * @throws IllegalArgumentException if there are fewer than 3 readings or the temperatures differ
   */
  public static MeasuredBuffer from(BufferReadings... readings) {
    Objects.requireNonNull(readings, "readings");
    Fit fit = fit();
    for (BufferReadings leg : readings) {
      fit = fit.with(leg);
    }
    return fit.buffer();
  }

  /**
   * Starts a fit of readings good to 0.01 pH, with an electrode good to 0.01 pH and 0.5 % of slope
   * (standard uncertainties). What leaves no trace in readings is assumed until it is stated, and
   * every answer names it: the electrode, the titrant, the metals, the background salt and the
   * carbon dioxide left in the sample.
   *
   * @return the fit, without readings yet
   */
  public static Fit fit() {
    return new Fit(FitInputs.NOTHING);
  }

  private List<Notice> notices(boolean calciumKnown, boolean magnesiumKnown) {
    List<Notice> notices = new ArrayList<>();
    notices.add(
        Notice.of(
            BufferCode.RESTS_ON_MEASURED_BUFFER,
            "buffer",
            String.format(
                Locale.ROOT,
                "the buffer was measured by titration from pH %.2f to %.2f",
                grid.lowestPH(),
                grid.highestPH())));
    notices.addAll(new Assumptions(grid).notices(calciumKnown, magnesiumKnown));
    return notices;
  }

  /**
   * Returns what was titrated: the acids found, the metals and the strong ions, with the sources of
   * the fit.
   *
   * @return closed contents, whose pH is that of all readings together
   */
  public Contents contents() {
    return contents;
  }

  @Override
  public Contents contents(Contents known, Traced pH) {
    Objects.requireNonNull(pH, "pH");
    Map<Component, Traced> more = new LinkedHashMap<>();
    Map<Component, Traced> totals = known.totals();
    contents
        .totals()
        .forEach(
            (component, total) -> {
              if (!totals.containsKey(component)) {
                more.put(component, total);
              }
            });
    return known
        .plus(more)
        .closedTo(pH)
        .withBasis(contents.basis())
        .withNotices(
            notices(totals.containsKey(Component.CALCIUM), totals.containsKey(Component.MAGNESIUM)))
        .withNotices(judged);
  }

  @Override
  public Optional<Notice> extrapolatedAt(PH pH) {
    if (pH.value() >= grid.lowestPH() && pH.value() <= grid.highestPH()) {
      return Optional.empty();
    }
    return Optional.of(
        Notice.of(
            BufferCode.EXTRAPOLATED,
            "buffer",
            String.format(
                Locale.ROOT,
                "pH %.2f lies outside the readings of the measured buffer, pH %.2f to %.2f",
                pH.value(),
                grid.lowestPH(),
                grid.highestPH())));
  }

  /**
   * Returns the liquid that was titrated, which answers figures and can be treated.
   *
   * @return the liquid
   */
  public Liquid liquid() {
    return BufferedLiquid.titrated(this, contents);
  }

  /**
   * Returns the liquid as the kernel sees it, uncertainties left behind.
   *
   * @return a solution of the acids found, the metals and the strong ions
   */
  public Solution solution() {
    return Solution.of(contents);
  }

  /**
   * Returns the pH of the liquid by all readings together.
   *
   * @return the pH with its uncertainty, that of the electrode included
   */
  public Answer<PH> pH() {
    return liquid().answer(Figures.PH_VALUE);
  }

  /**
   * Predicts the pH after a dose.
   *
   * @param solute what is added
   * @param dose how much per litre of the liquid, its volume unchanged
   * @return the pH
   */
  public Answer<PH> pHAfter(Solute solute, AmountConcentration dose) {
    return dosed(solute, dose).answer(Figures.PH_VALUE);
  }

  private Liquid dosed(Solute solute, AmountConcentration dose) {
    double molesPerKilogram = dose.inMolesPerLitre() / contents.kilogramsPerLitre();
    Map<Component, Traced> added = new LinkedHashMap<>();
    solute
        .components()
        .forEach(
            (component, moles) -> added.put(component, Traced.exact(moles * molesPerKilogram)));
    return BufferedLiquid.changed(this, contents.plus(added), List.of());
  }

  /**
   * Predicts by how much a dose changes the pH, which is surer than the pH itself since an error of
   * the electrode's zero drops out.
   *
   * @param solute what is added
   * @param dose how much per litre of the liquid, its volume unchanged
   * @return the change, negative for an acid
   */
  public Answer<Double> changeOfPHBy(Solute solute, AmountConcentration dose) {
    Step before = liquid().step(Figures.PH_VALUE);
    Step after = dosed(solute, dose).step(Figures.PH_VALUE);
    Traced first = before.found().orElseThrow();
    Traced second = after.found().orElseThrow();
    Traced change = second.minus(first);
    return Answer.of(
        CHANGE_OF_PH,
        Step.of(CHANGE_OF_PH.title(), CHANGE_OF_PH.scale(), Step.Kind.FORMULA)
            .text(CHANGE, "")
            .inputs(List.of(before, after))
            .detail(
                () ->
                    new Step.Detail(List.of(), second.value() - first.value() - change.value(), 0))
            .found(change));
  }

  /**
   * Predicts the titratable acidity, without dilution by the titrant.
   *
   * @param endPoint the end point
   * @return the acidity, negative when the liquid lies above the end point
   */
  public Answer<TitratableAcidity> acidityTo(PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    return at(endPoint).answer(Figures.titratableAcidity(endPoint));
  }

  /**
   * Returns the buffer capacity at a pH.
   *
   * @param at the pH
   * @return the capacity
   */
  public Answer<BufferCapacity> bufferCapacity(PH at) {
    Objects.requireNonNull(at, "at");
    return at(at).answer(Figures.bufferCapacity(at));
  }

  private Liquid at(PH asked) {
    return BufferedLiquid.titrated(
        this, contents.withNotices(extrapolatedAt(asked).stream().toList()));
  }

  /**
   * Returns by how much each reading lies off the fitted curve.
   *
   * @return reading minus curve in pH, in the order in which the readings were given
   */
  public double[] residuals() {
    return grid.regression().residuals();
  }

  /**
   * Returns the standard deviation of a single reading as the scatter shows it.
   *
   * @return in pH
   */
  public double readingNoise() {
    return grid.regression().noise();
  }

  /**
   * Returns the lowest pH that was read.
   *
   * @return the lower end of what was measured
   */
  public PH lowestReading() {
    return PH.of(grid.lowestPH());
  }

  /**
   * Returns the highest pH that was read.
   *
   * @return the upper end of what was measured
   */
  public PH highestReading() {
    return PH.of(grid.highestPH());
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "buffer measured from pH %.2f to %.2f, %s",
        grid.lowestPH(),
        grid.highestPH(),
        pH());
  }

  /** What a fit is told besides the readings, and the readings. Immutable. */
  public static final class Fit {
    private final FitInputs inputs;

    private Fit(FitInputs inputs) {
      this.inputs = inputs;
    }

    /**
     * Adds readings of a portion.
     *
     * @param leg the readings
     * @return the fit with them
     * @throws IllegalArgumentException if they were taken at another temperature than those before
     */
    public Fit with(BufferReadings leg) {
      List<BufferReadings> more = new ArrayList<>(inputs.readings());
      more.add(leg);
      if (!leg.temperature().equals(more.get(0).temperature())) {
        throw new IllegalArgumentException(
            "temperature: "
                + leg.temperature()
                + " is not possible; "
                + more.get(0).temperature()
                + " is needed, as of the readings before");
      }
      return new Fit(inputs.with(List.copyOf(more)));
    }

    /**
     * States how good a single reading of pH is, independent of the others.
     *
     * @param pH its standard uncertainty in pH, 1e-5 to 1; better readings than that are lost in
     *     rounding
     * @return the fit with it
     * @throws IllegalArgumentException if it is out of range
     */
    public Fit withReadingUncertainty(double pH) {
      return new Fit(
          inputs.withNoise(Checks.inRange("uncertainty of a reading", pH, "pH", 1e-5, 1)));
    }

    /**
     * States how well the zero of the electrode is known, which is common to all readings.
     *
     * @param pH its standard uncertainty in pH, 1e-5 to 1
     * @return the fit with it
     * @throws IllegalArgumentException if it is out of range
     */
    public Fit withZeroUncertainty(double pH) {
      return new Fit(inputs.withZero(Checks.inRange("uncertainty of the zero", pH, "pH", 1e-5, 1)));
    }

    /**
     * States how well the slope of the electrode is known, which is common to all readings.
     *
     * @param fraction its relative standard uncertainty as a fraction, 1e-5 to 1
     * @return the fit with it
     * @throws IllegalArgumentException if it is out of range
     */
    public Fit withSlopeUncertainty(double fraction) {
      return new Fit(
          inputs.withSlope(Checks.inRange("uncertainty of the slope", fraction, "", 1e-5, 1)));
    }

    /**
     * States the calcium and magnesium of the liquid, instead of assuming them, without an
     * uncertainty: what moves with them has none either.
     *
     * @param calcium 0 to 0.1 mol/L
     * @param magnesium 0 to 0.1 mol/L
     * @return the fit with them
     * @throws IllegalArgumentException if one is out of range
     */
    public Fit metals(AmountConcentration calcium, AmountConcentration magnesium) {
      Objects.requireNonNull(calcium, "calcium");
      Objects.requireNonNull(magnesium, "magnesium");
      return new Fit(inputs.with(Metals.stated(calcium, magnesium, OptionalDouble.empty())));
    }

    /**
     * States the calcium and magnesium of the liquid, instead of assuming them.
     *
     * @param calcium 0 to 0.1 mol/L
     * @param magnesium 0 to 0.1 mol/L
     * @param relativeStandardUncertainty of each, independent of the other, as a fraction
     * @return the fit with them
     * @throws IllegalArgumentException if one is out of range or the uncertainty negative
     */
    public Fit metals(
        AmountConcentration calcium,
        AmountConcentration magnesium,
        double relativeStandardUncertainty) {
      Objects.requireNonNull(calcium, "calcium");
      Objects.requireNonNull(magnesium, "magnesium");
      double u =
          Checks.nonNegative(
              "uncertainty of calcium and magnesium", relativeStandardUncertainty, "");
      return new Fit(inputs.with(Metals.stated(calcium, magnesium, OptionalDouble.of(u))));
    }

    /**
     * States the background salt of the liquid, instead of assuming it: the ions that buffer
     * nothing, besides calcium, magnesium and the strong ions that balance the acids. Counted as a
     * univalent salt of the same ionic strength, which is about chloride and three times sulfate.
     *
     * @param salt 0 to 1 mol/L
     * @param standardUncertainty its standard uncertainty
     * @return the fit with it
     * @throws IllegalArgumentException if it is out of range
     */
    public Fit backgroundSalt(AmountConcentration salt, AmountConcentration standardUncertainty) {
      double perLitre =
          Checks.inRange(
              "background salt", salt.inMolesPerLitre(), "mol/L", 0, Usual.MOST_SALT.value());
      double u =
          Checks.nonNegative(
              "uncertainty of the salt", standardUncertainty.inMolesPerLitre(), "mol/L");
      return new Fit(
          inputs.withSalt(
              Traced.of(Source.of("background salt", perLitre, u, "mol/L"))
                  .times(1 / CarbonicAcid.KILOGRAMS_PER_LITRE)));
    }

    /**
     * States the carbon dioxide that was left in the sample when it was titrated, instead of
     * assuming the residue of a degassed one. It does not count in what is predicted.
     *
     * @param left 0 to 10 g/L
     * @param standardUncertainty its standard uncertainty
     * @return the fit with it
     * @throws IllegalArgumentException if it is out of range
     */
    public Fit carbonDioxide(MassConcentration left, MassConcentration standardUncertainty) {
      double grams =
          Checks.inRange(
              "carbon dioxide in the sample",
              left.inGramsPerLitre(),
              "g/L",
              0,
              Usual.MOST_CARBON_DIOXIDE.value());
      double u =
          Checks.nonNegative(
              "uncertainty of the carbon dioxide", standardUncertainty.inGramsPerLitre(), "g/L");
      return new Fit(
          inputs.withCarbonDioxide(
              CarbonicAcid.perKilogram(
                  Traced.of(Source.of(Usual.CARBON_DIOXIDE.toString(), grams, u, "g/L")))));
    }

    /**
     * Fits the buffer.
     *
     * @return the buffer
     * @throws IllegalArgumentException if there are fewer than 3 readings
     */
    public MeasuredBuffer buffer() {
      return new MeasuredBuffer(inputs);
    }

    @Override
    public String toString() {
      return "fit of " + inputs.readings();
    }
  }
}
