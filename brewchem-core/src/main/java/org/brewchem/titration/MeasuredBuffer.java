package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.brewchem.internal.BufferRegression;
import org.brewchem.internal.Checks;
import org.brewchem.internal.WaterProperties;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Solute;
import org.brewchem.uncertainty.UncertainValue;

/**
 * The buffer of a beer, wort or mash as its titration shows it: good for the pH after any dose of
 * any acid or base, the acidity to any end point, and the buffer capacity, each with its
 * uncertainty. Immutable.
 *
 * <p>The readings are explained by monoprotic acids on a grid of pK, their amounts at or above zero
 * and drawn towards a typical beer, and by a strong-ion difference that is free. Non-negative least
 * squares with a ridge; the method is ours, its parts are textbook. Calcium and magnesium, which
 * hold part of an acid that is added, are as measured, or assumed as in {@link TypicalBeer} with a
 * spread of 20 %.
 *
 * <p>Outside its readings the result rests on what beers usually hold: intervals widen, and {@link
 * BufferPrediction#extrapolated} says so.
 */
public final class MeasuredBuffer {

  private static final double LOWEST_PK = 1.5;
  private static final double PK_STEP = 0.5;
  private static final int GRID = 18;

  /**
   * Spread of an amount on the grid around the typical one: so much, and half of it besides. Wide
   * enough for any beer; our choice.
   */
  private static final double SPREAD_MOLES_PER_KILOGRAM = 0.0025;

  /** Spread of the strong-ion difference, Eq/kg, so wide that the readings alone decide it. */
  private static final double STRONG_ION_SPREAD = 0.05;

  /**
   * Univalent salt besides metals and strong-ion difference, mol/kg: ionic strength only; a guess.
   */
  private static final double BACKGROUND_SALT = 0.005;

  /**
   * Relative standard uncertainty of calcium and magnesium together where they are assumed: 0.5 to
   * 2.5 and 2.5 to 5 mmol/L (from memory) as rectangles give 0.18.
   */
  private static final double ASSUMED_METALS_SPREAD = 0.2;

  private final Fit fit;
  private final BufferRegression regression;
  private final double[] estimate;
  private final Solution solution;
  private final Solution withMoreMetal;
  private final double lowestPh;
  private final double highestPh;

  private MeasuredBuffer(Fit fit) {
    this.fit = fit;
    int n = fit.legs.stream().mapToInt(BufferLeg::size).sum();
    if (n < 3) {
      throw Checks.outOfRange("readings", n, "", "3 or more");
    }
    double[] pH = new double[n];
    double[] base = new double[n];
    double[] dilution = new double[n];
    double chargeNoise = 0;
    int i = 0;
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (BufferLeg leg : fit.legs) {
      for (int reading = 0; reading < leg.size(); reading++) {
        pH[i] = leg.pH(reading);
        base[i] = leg.base(reading) / fit.kilogramsPerLitre();
        dilution[i] = leg.dilution(reading);
        lowest = Math.min(lowest, pH[i]);
        highest = Math.max(highest, pH[i]);
        i++;
      }
      chargeNoise = Math.max(chargeNoise, leg.baseNoise(fit.volumeNoise));
    }
    lowestPh = lowest;
    highestPh = highest;
    double kelvin = fit.temperature.inKelvin();
    regression =
        BufferRegression.of(
            prior(),
            new BufferRegression.Readings(pH, base, dilution, chargeNoise),
            new BufferRegression.Medium(
                WaterProperties.debyeHueckelA(kelvin),
                Chemistry.standard().log10IonProduct(kelvin),
                fit.metals(1) + BACKGROUND_SALT));
    estimate = regression.estimate();
    solution = solutionWith(1);
    withMoreMetal = solutionWith(1 + ASSUMED_METALS_SPREAD);
  }

  /**
   * Fits the buffer to logs, with the temperature of the first and the usual uncertainties of
   * {@link #fit()}.
   *
   * @param logs one or more; alkali and acid on two portions of the same liquid know both sides
   * @return the buffer
   * @throws IllegalArgumentException if there are fewer than 3 readings or a titrant is not
   *     univalent
   */
  public static MeasuredBuffer from(TitrationLog... logs) {
    Fit fit = fit();
    if (logs.length > 0) {
      fit = fit.at(logs[0].titration().temperature());
    }
    for (TitrationLog log : logs) {
      fit = fit.with(BufferLeg.from(log));
    }
    return fit.buffer();
  }

  /**
   * Starts a fit at 20 °C with readings good to 0.01 pH, an electrode good to 0.02 pH and 1 % of
   * slope, and volumes good to 0.02 mL (standard uncertainties).
   *
   * @return the fit, without readings yet
   */
  public static Fit fit() {
    return new Fit(
        List.of(),
        Temperature.ofCelsius(20),
        0.01,
        0.02,
        0.01,
        0.02,
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  private BufferRegression.Prior prior() {
    double[] grid = new double[GRID];
    double[] mean = new double[GRID];
    double[] spread = new double[GRID];
    for (int k = 0; k < GRID; k++) {
      grid[k] = LOWEST_PK + PK_STEP * k;
    }
    Solution typical =
        TypicalBeer.namedAcids(fit.temperature).plus(TypicalBeer.lumpedGroups(fit.temperature, 1));
    for (Map.Entry<Component, Molality> entry : typical.totals().entrySet()) {
      double total = entry.getValue().inMolesPerKilogram();
      for (EquilibriumConstant step : Chemistry.standard().constants().of(entry.getKey())) {
        double place = (-step.log10(fit.temperature.inKelvin()) - LOWEST_PK) / PK_STEP;
        int below = (int) Math.floor(place);
        // Steps beyond the grid, such as phosphate's third, take no part in beer.
        if (below >= 0 && below + 1 < GRID) {
          mean[below] += total * (below + 1 - place);
          mean[below + 1] += total * (place - below);
        }
      }
    }
    for (int k = 0; k < GRID; k++) {
      spread[k] = SPREAD_MOLES_PER_KILOGRAM + 0.5 * mean[k];
    }
    return new BufferRegression.Prior(
        grid,
        mean,
        spread,
        0.01,
        STRONG_ION_SPREAD,
        fit.electrodeOffset,
        fit.electrodeSlope,
        fit.noise);
  }

  private Solution solutionWith(double metalFactor) {
    double calcium = fit.calcium(metalFactor);
    double magnesium = fit.magnesium(metalFactor);
    double anions = BACKGROUND_SALT;
    Solution sum =
        Solution.at(fit.temperature)
            .with(Component.CALCIUM, Molality.ofMolesPerKilogram(calcium))
            .with(Component.MAGNESIUM, Molality.ofMolesPerKilogram(magnesium))
            .with(Component.NITRATE, Molality.ofMolesPerKilogram(anions));
    for (int k = 0; k < GRID; k++) {
      if (estimate[k + 1] > 0) {
        double pK = LOWEST_PK + PK_STEP * k;
        sum =
            sum.with(
                Component.group(String.format(Locale.ROOT, "acid of pK %.1f", pK), -1, pK),
                Molality.ofMolesPerKilogram(estimate[k + 1]));
      }
    }
    double inert = estimate[0] - 2 * (calcium + magnesium) + anions;
    return sum.withInertCharge(
        ChargeConcentration.ofEquivalentsPerLitre(inert * fit.kilogramsPerLitre()));
  }

  /**
   * Returns the liquid as the kernel sees it, for every question that is not asked here.
   *
   * @return a solution of the acids found, the metals and the strong ions
   */
  public Solution solution() {
    return solution;
  }

  /**
   * Returns the pH of the liquid by all readings together.
   *
   * @return the pH with its uncertainty, that of the electrode included
   */
  public UncertainValue pH() {
    PH own = solution.pH();
    return UncertainValue.of(own.value(), sd(slopesOfPh(solution, own)), "");
  }

  /**
   * Predicts the pH after a dose.
   *
   * @param solute what is added
   * @param dose how much per litre of the liquid, its volume unchanged
   * @return the pH
   */
  public BufferPrediction pHAfter(Solute solute, AmountConcentration dose) {
    return predict(solute, dose, false);
  }

  /**
   * Predicts by how much a dose changes the pH, which is surer than the pH itself since an error of
   * the electrode's zero drops out.
   *
   * @param solute what is added
   * @param dose how much per litre of the liquid, its volume unchanged
   * @return the change, negative for an acid
   */
  public BufferPrediction changeOfPHBy(Solute solute, AmountConcentration dose) {
    return predict(solute, dose, true);
  }

  private BufferPrediction predict(Solute solute, AmountConcentration dose, boolean change) {
    PH before = solution.pH();
    Solution dosed = solution.with(solute, dose);
    PH after = dosed.pH();
    double shift = after.minus(before);
    double otherShift = withMoreMetal.with(solute, dose).pH().minus(withMoreMetal.pH());
    double[] gradient = slopesOfPh(dosed, after);
    if (change) {
      double[] start = slopesOfPh(solution, before);
      for (int i = 0; i < gradient.length; i++) {
        gradient[i] -= start[i];
      }
    }
    double u = sd(gradient);
    if (!fit.metalsKnown()) {
      u = Math.hypot(u, otherShift - shift);
    }
    return new BufferPrediction(
        UncertainValue.of(change ? shift : after.value(), u, ""), outside(after.value()));
  }

  /**
   * Predicts the titratable acidity, without dilution by the titrant.
   *
   * @param endPoint the end point
   * @return the acidity in mEq/L, negative when the liquid lies above the end point
   */
  public BufferPrediction acidityTo(PH endPoint) {
    double scale = 1000 * fit.kilogramsPerLitre();
    return new BufferPrediction(
        UncertainValue.of(
            solution.titratableAcidity(endPoint).inMilliequivalentsPerLitre(),
            sd(gradientOfCharge(solution, endPoint)) * scale,
            "mEq/L"),
        outside(endPoint.value()));
  }

  /**
   * Returns the buffer capacity at a pH.
   *
   * @param at the pH
   * @return the capacity in mEq/L per pH
   */
  public BufferPrediction bufferCapacity(PH at) {
    double scale = 1000 * fit.kilogramsPerLitre();
    double ionic = ionicStrength(solution, at);
    double step = 1e-3;
    double[] high = regression.gradient(at.value() + step, ionic);
    double[] low = regression.gradient(at.value() - step, ionic);
    for (int i = 0; i < high.length; i++) {
      high[i] = (low[i] - high[i]) / (2 * step);
    }
    return new BufferPrediction(
        UncertainValue.of(
            solution.bufferCapacity(at).inMilliequivalentsPerLitrePerPH(),
            sd(high) * scale,
            "mEq/L per pH"),
        outside(at.value()));
  }

  /**
   * Returns by how much each reading lies off the fitted curve.
   *
   * @return reading minus curve in pH, in the order in which the legs were given
   */
  public double[] residuals() {
    return regression.residuals();
  }

  /**
   * Returns the standard deviation of a single reading as the scatter shows it.
   *
   * @return in pH
   */
  public double readingNoise() {
    return regression.noise();
  }

  /**
   * Returns the lowest pH that was read.
   *
   * @return the lower end of what was measured
   */
  public PH lowestReading() {
    return PH.of(lowestPh);
  }

  /**
   * Returns the highest pH that was read.
   *
   * @return the upper end of what was measured
   */
  public PH highestReading() {
    return PH.of(highestPh);
  }

  private boolean outside(double pH) {
    return pH < lowestPh || pH > highestPh;
  }

  private double[] gradientOfCharge(Solution of, PH at) {
    return regression.gradient(at.value(), ionicStrength(of, at));
  }

  private static double ionicStrength(Solution of, PH at) {
    return of.equilibriumAt(at).ionicStrength().inMolesPerKilogram();
  }

  /** How the root of the charge balance moves with the strong-ion difference and the amounts. */
  private double[] slopesOfPh(Solution of, PH at) {
    double capacity =
        of.bufferCapacity(at).inMilliequivalentsPerLitrePerPH() / 1000 / fit.kilogramsPerLitre();
    double[] gradient = gradientOfCharge(of, at);
    for (int i = 0; i < gradient.length; i++) {
      gradient[i] /= capacity;
    }
    return gradient;
  }

  private double sd(double[] gradient) {
    return Math.sqrt(regression.variance(gradient));
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "buffer measured from pH %.2f to %.2f, pH %s",
        lowestPh,
        highestPh,
        pH().expanded(2));
  }

  /** What a fit is told besides the readings, and the readings. Immutable. */
  public static final class Fit {
    private final List<BufferLeg> legs;
    private final Temperature temperature;
    private final double noise;
    private final double electrodeOffset;
    private final double electrodeSlope;
    private final double volumeNoise;
    private final OptionalDouble calciumMolesPerLitre;
    private final OptionalDouble magnesiumMolesPerLitre;

    private Fit(
        List<BufferLeg> legs,
        Temperature temperature,
        double noise,
        double electrodeOffset,
        double electrodeSlope,
        double volumeNoise,
        OptionalDouble calciumMolesPerLitre,
        OptionalDouble magnesiumMolesPerLitre) {
      this.legs = List.copyOf(legs);
      this.temperature = temperature;
      this.noise = noise;
      this.electrodeOffset = electrodeOffset;
      this.electrodeSlope = electrodeSlope;
      this.volumeNoise = volumeNoise;
      this.calciumMolesPerLitre = calciumMolesPerLitre;
      this.magnesiumMolesPerLitre = magnesiumMolesPerLitre;
    }

    /**
     * Adds a leg.
     *
     * @param leg its readings
     * @return the fit with them
     */
    public Fit with(BufferLeg leg) {
      List<BufferLeg> more = new ArrayList<>(legs);
      more.add(leg);
      return new Fit(
          more,
          temperature,
          noise,
          electrodeOffset,
          electrodeSlope,
          volumeNoise,
          calciumMolesPerLitre,
          magnesiumMolesPerLitre);
    }

    /**
     * States the temperature of the readings.
     *
     * @param other 0 to 100 °C
     * @return the fit with it
     */
    public Fit at(Temperature other) {
      return new Fit(
          legs,
          other,
          noise,
          electrodeOffset,
          electrodeSlope,
          volumeNoise,
          calciumMolesPerLitre,
          magnesiumMolesPerLitre);
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
          legs,
          temperature,
          Checks.inRange("uncertainty of a reading", pH, "pH", 1e-5, 1),
          electrodeOffset,
          electrodeSlope,
          volumeNoise,
          calciumMolesPerLitre,
          magnesiumMolesPerLitre);
    }

    /**
     * States how well the zero of the electrode is known, which is common to all readings.
     *
     * @param pH its standard uncertainty in pH, 1e-5 to 1
     * @return the fit with it
     * @throws IllegalArgumentException if it is out of range
     */
    public Fit withZeroUncertainty(double pH) {
      return new Fit(
          legs,
          temperature,
          noise,
          Checks.inRange("uncertainty of the zero", pH, "pH", 1e-5, 1),
          electrodeSlope,
          volumeNoise,
          calciumMolesPerLitre,
          magnesiumMolesPerLitre);
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
          legs,
          temperature,
          noise,
          electrodeOffset,
          Checks.inRange("uncertainty of the slope", fraction, "", 1e-5, 1),
          volumeNoise,
          calciumMolesPerLitre,
          magnesiumMolesPerLitre);
    }

    /**
     * States how well a volume is read off the burette.
     *
     * @param volume its standard uncertainty
     * @return the fit with it
     */
    public Fit withVolumeUncertainty(Volume volume) {
      return new Fit(
          legs,
          temperature,
          noise,
          electrodeOffset,
          electrodeSlope,
          volume.inMillilitres(),
          calciumMolesPerLitre,
          magnesiumMolesPerLitre);
    }

    /**
     * States the calcium and magnesium of the liquid, instead of assuming them.
     *
     * @param calcium 0 or more
     * @param magnesium 0 or more
     * @return the fit with them
     */
    public Fit metals(AmountConcentration calcium, AmountConcentration magnesium) {
      return new Fit(
          legs,
          temperature,
          noise,
          electrodeOffset,
          electrodeSlope,
          volumeNoise,
          OptionalDouble.of(calcium.inMolesPerLitre()),
          OptionalDouble.of(magnesium.inMolesPerLitre()));
    }

    /**
     * Fits the buffer.
     *
     * @return the buffer
     * @throws IllegalArgumentException if there are fewer than 3 readings
     */
    public MeasuredBuffer buffer() {
      return new MeasuredBuffer(this);
    }

    private double kilogramsPerLitre() {
      return Solution.at(temperature).kilogramsPerLitre();
    }

    private boolean metalsKnown() {
      return calciumMolesPerLitre.isPresent();
    }

    private double calcium(double factor) {
      return calciumMolesPerLitre.orElse(factor * TypicalBeer.CALCIUM_MILLIMOLES_PER_LITRE / 1000)
          / kilogramsPerLitre();
    }

    private double magnesium(double factor) {
      return magnesiumMolesPerLitre.orElse(
              factor * TypicalBeer.MAGNESIUM_MILLIMOLES_PER_LITRE / 1000)
          / kilogramsPerLitre();
    }

    private double metals(double factor) {
      return calcium(factor) + magnesium(factor);
    }
  }
}
