package org.brewchem.buffer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.internal.BufferRegression;
import org.brewchem.internal.WaterProperties;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * Readings explained by monoprotic acids on a grid of pK, and what was titrated as contents whose
 * sources have the covariance of the fit.
 */
final class GridFit {

  private static final double LOWEST_PK = 1.5;
  private static final double PK_STEP = 0.5;
  private static final int GRID = 18;

  private static final List<Component> ACIDS = acids();

  /**
   * Spread of an amount on the grid around the typical one: so much, and half of it, or of what is
   * found around it, besides. Wide enough for any beer; our choice.
   */
  private static final double SPREAD_MOLES_PER_KILOGRAM = 0.001;

  private static final double RELATIVE_SPREAD = 0.5;

  /** The same where readings are judged, so wide that no beer is unusual. */
  private static final double JUDGING_SPREAD = 0.001;

  private static final double JUDGING_RELATIVE_SPREAD = 0.5;

  /** Spread of the strong-ion difference, Eq/kg, so wide that the readings alone decide it. */
  private static final double STRONG_ION_SPREAD = 0.05;

  /** How far the normal equations may be from holding, in standard deviations. */
  private static final double BALANCED = 1e-6;

  /** Readings' worth of belief in the noise of a reading, so few that the residuals decide. */
  private static final double NOISE_DEGREES = 4;

  private static final double DIVIDING_PK = 6;

  private static final Scale<Double> MILLIEQUIVALENTS = Scale.number("mEq/kg", 3);

  private final FitInputs inputs;
  private final AllReadings readings;
  private final Metals metals;
  private final Traced salt;
  private final Traced carbonDioxide;
  private final BufferRegression regression;
  private final Contents contents;

  GridFit(FitInputs inputs) {
    this.inputs = inputs;
    readings = AllReadings.of(inputs);
    metals = inputs.metals().orElseGet(Metals::assumed);
    salt = inputs.salt().orElseGet(() -> Traced.of(Usual.SALT.source()));
    carbonDioxide =
        inputs.carbonDioxide().orElseGet(() -> CarbonicAcid.perKilogram(Usual.CARBON_DIOXIDE));
    regression =
        fitted(readings, prior(SPREAD_MOLES_PER_KILOGRAM, RELATIVE_SPREAD, NOISE_DEGREES, false));
    contents = contents(parameters());
  }

  private Temperature temperature() {
    return inputs.readings().get(0).temperature();
  }

  /**
   * A fit of some of the readings in which a typical beer hardly counts: these judge themselves.
   */
  BufferRegression judging(AllReadings some) {
    return fitted(
        some, prior(JUDGING_SPREAD, JUDGING_RELATIVE_SPREAD, inputs.noiseDegrees(), true));
  }

  private BufferRegression fitted(AllReadings some, BufferRegression.Prior prior) {
    double kelvin = temperature().inKelvin();
    return BufferRegression.of(
        prior,
        new BufferRegression.Readings(
            some.pH, some.base, some.dilution, some.chargeNoise, some.scaledErrorsOfPH()),
        new BufferRegression.Medium(
            WaterProperties.debyeHueckelA(kelvin),
            Chemistry.standard().log10IonProduct(kelvin),
            background().value(),
            carbonDioxide.value(),
            CarbonicAcid.pK(1, temperature()),
            CarbonicAcid.pK(2, temperature()),
            Usual.MISFIT.standardUncertainty()));
  }

  /** What counts in the ionic strength besides the strong ions of the balance, mol/kg. */
  private Traced background() {
    return metals.calcium().plus(metals.magnesium()).plus(salt);
  }

  private static List<Component> acids() {
    List<Component> acids = new ArrayList<>();
    for (int k = 0; k < GRID; k++) {
      double pK = LOWEST_PK + PK_STEP * k;
      acids.add(Component.group(String.format(Locale.ROOT, "acid of pK %.1f", pK), -1, pK));
    }
    return List.copyOf(acids);
  }

  private BufferRegression.Prior prior(
      double spread, double relativeSpread, double noiseDegrees, boolean signed) {
    double[] grid = new double[GRID];
    double[] mean = new double[GRID];
    for (int k = 0; k < GRID; k++) {
      grid[k] = LOWEST_PK + PK_STEP * k;
    }
    Solution typical =
        TypicalBeer.namedAcids(temperature()).plus(TypicalBeer.lumpedGroups(temperature(), 1));
    for (Map.Entry<Component, Molality> entry : typical.totals().entrySet()) {
      for (EquilibriumConstant step : Chemistry.standard().constants().of(entry.getKey())) {
        double place = (-step.log10(temperature().inKelvin()) - LOWEST_PK) / PK_STEP;
        int below = (int) Math.floor(place);
        // Steps beyond the grid, such as phosphate's third, take no part in beer.
        if (below >= 0 && below + 1 < GRID) {
          double total = entry.getValue().inMolesPerKilogram();
          mean[below] += total * (below + 1 - place);
          mean[below + 1] += total * (place - below);
        }
      }
    }
    return new BufferRegression.Prior(
        grid,
        mean,
        spread,
        relativeSpread,
        0.01,
        STRONG_ION_SPREAD,
        inputs.noisePH(),
        noiseDegrees,
        signed);
  }

  /**
   * By how much the base of each reading seems larger with a unit of each source that leaves no
   * trace: what the readings state themselves, acids that follow the ionic strength in another way
   * than assumed, carbon dioxide, and salt and metals, which count in the ionic strength.
   */
  Map<Traced, double[]> untraced(AllReadings of, BufferRegression fit) {
    Map<Traced, double[]> all = new LinkedHashMap<>();
    of.columns.forEach((source, column) -> all.put(Traced.of(source), column));
    all.put(Traced.of(Usual.ACTIVITY_BELOW.source()), fit.overActivity(0, DIVIDING_PK));
    all.put(Traced.of(Usual.ACTIVITY_ABOVE.source()), fit.overActivity(DIVIDING_PK, 14));
    all.put(carbonDioxide, fit.overCarbonDioxide());
    all.put(background(), fit.overBackground());
    return all;
  }

  /**
   * What the fit leaves open, and what the grid cannot follow: an acid between its places is a
   * little wider, or narrower, than those beside it make it. As few independent parts as there are
   * rows.
   */
  private static double[][] withMisfit(double[][] parts, double[] estimate) {
    int rows = parts.length;
    int fitted = parts[0].length;
    double[][] all = new double[fitted + GRID - 2][rows];
    for (int part = 0; part < fitted; part++) {
      for (int i = 0; i < rows; i++) {
        all[part][i] = parts[i][part];
      }
    }
    double share =
        Usual.MISFIT_SHARE.standardUncertainty() / Arrays.stream(estimate, 1, GRID + 1).sum();
    for (int k = 1; k < GRID - 1; k++) {
      double[] wider = all[fitted + k - 1];
      double moved = share * estimate[k + 1] * estimate[k + 1];
      wider[k] = moved / 2;
      wider[k + 1] = -moved;
      wider[k + 2] = moved / 2;
    }
    double[][] upper = new QRDecomposition(new Array2DRowRealMatrix(all, false)).getR().getData();
    double[][] together = new double[rows][rows];
    for (int i = 0; i < rows; i++) {
      for (int part = 0; part < rows; part++) {
        together[i][part] = upper[part][i];
      }
    }
    return together;
  }

  /** Strong-ion difference and amounts, with the covariance of the fit and the sources of it. */
  private Traced[] parameters() {
    double[] estimate = regression.estimate();
    double[][] parts = withMisfit(regression.principalParts(), estimate);
    List<Traced> sources = new ArrayList<>();
    List<double[]> moved = new ArrayList<>();
    for (int k = 0; k < parts[0].length; k++) {
      sources.add(Traced.of(Source.of("fit of the buffer, part " + (k + 1), 0, 1, "")));
      double[] column = new double[parts.length];
      for (int i = 0; i < column.length; i++) {
        column[i] = parts[i][k];
      }
      moved.add(column);
    }
    int error = 0;
    for (Source source : readings.errorsOfPH.keySet()) {
      double u = source.standardUncertainty().orElseThrow();
      double[] part = regression.partOfCommonError(error++);
      if (u > 0) {
        sources.add(Traced.of(source));
        moved.add(Arrays.stream(part).map(x -> x / u).toArray());
      }
    }
    untraced(readings, regression)
        .forEach(
            (source, column) -> {
              sources.add(source);
              moved.add(regression.response(column));
            });
    Traced[] inputsOfAll = sources.toArray(Traced[]::new);
    Traced[] parameters = new Traced[parts.length];
    for (int i = 0; i < parameters.length; i++) {
      double[] slopes = new double[inputsOfAll.length];
      for (int k = 0; k < slopes.length; k++) {
        slopes[k] = moved.get(k)[i];
      }
      parameters[i] = Traced.linear(estimate[i], inputsOfAll, slopes);
    }
    return parameters;
  }

  private Contents contents(Traced[] parameters) {
    Map<Component, Traced> totals = new LinkedHashMap<>();
    totals.put(Component.CALCIUM, metals.calcium());
    totals.put(Component.MAGNESIUM, metals.magnesium());
    totals.put(Component.NITRATE, salt);
    for (int k = 0; k < GRID; k++) {
      totals.put(ACIDS.get(k), parameters[k + 1]);
    }
    Traced inert =
        Traced.linear(
            parameters[0].value()
                - 2 * (metals.calcium().value() + metals.magnesium().value())
                + salt.value(),
            new Traced[] {parameters[0], metals.calcium(), metals.magnesium(), salt},
            new double[] {1, -2, -2, 1});
    return Contents.pure(temperature(), Chemistry.standard())
        .plus(totals)
        .withInertCharge(inert)
        .withBasis(List.of(step(parameters)));
  }

  private Step step(Traced[] parameters) {
    return Step.of("charge of the strong ions", MILLIEQUIVALENTS, Step.Kind.FIT)
        .text(
            "least squares of "
                + regression.residuals().length
                + " readings by acids on a grid of pK, drawn towards a typical beer",
            "")
        .detail(() -> new Step.Detail(lines(parameters), regression.unbalanced(), BALANCED))
        .found(parameters[0].times(1000));
  }

  private List<String> lines(Traced[] parameters) {
    List<String> lines = new ArrayList<>();
    for (int k = 0; k < GRID; k++) {
      lines.add(
          String.format(
              Locale.ROOT,
              "%s: %.4g mmol/kg",
              ACIDS.get(k).name(),
              parameters[k + 1].value() * 1000));
    }
    lines.add(
        String.format(
            Locale.ROOT,
            "scatter of a reading: %.4f pH; normal equations hold to %.1g standard deviations",
            regression.noise(),
            regression.unbalanced()));
    return lines;
  }

  /** Closed contents whose pH is that of all readings together. */
  Contents contents() {
    return contents;
  }

  BufferRegression regression() {
    return regression;
  }

  /** What is bound about the first pK of carbon dioxide, mol/kg, and its share in all acids. */
  double[] nearCarbonDioxide() {
    double[] estimate = regression.estimate();
    double near = 0;
    double sum = 0;
    for (int k = 0; k < GRID; k++) {
      double pK = LOWEST_PK + PK_STEP * k;
      sum += estimate[k + 1];
      near += Math.abs(pK - CarbonicAcid.pK(1, temperature())) < PK_STEP ? estimate[k + 1] : 0;
    }
    return new double[] {near, sum > 0 ? near / sum : 0};
  }

  AllReadings readings() {
    return readings;
  }

  FitInputs inputs() {
    return inputs;
  }

  double lowestPH() {
    return Arrays.stream(readings.pH).min().orElseThrow();
  }

  double highestPH() {
    return Arrays.stream(readings.pH).max().orElseThrow();
  }
}
