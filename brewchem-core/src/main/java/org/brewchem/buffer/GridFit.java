package org.brewchem.buffer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

  /** Step of a difference over the background, mol/kg. */
  private static final double SALT_STEP = 1e-5;

  /** How far the normal equations may be from holding, in standard deviations. */
  private static final double BALANCED = 1e-6;

  private static final Scale<Double> MILLIEQUIVALENTS = Scale.number("mEq/kg", 3);

  /** Standard uncertainties in pH: of a single reading, of the zero, and of the slope, relative. */
  record Electrode(double noise, double offset, double slope) {}

  private final Temperature temperature;
  private final BufferRegression regression;
  private final Contents contents;
  private final double lowestPH;
  private final double highestPH;

  GridFit(List<BufferReadings> readings, Electrode electrode, Metals metals) {
    temperature = readings.get(0).temperature();
    int n = readings.stream().mapToInt(BufferReadings::size).sum();
    double[] pH = new double[n];
    double[] base = new double[n];
    double[] dilution = new double[n];
    double chargeNoise = 0;
    Map<Source, double[]> columns = new LinkedHashMap<>();
    int i = 0;
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (BufferReadings leg : readings) {
      for (Map.Entry<Source, double[]> column : leg.columns().entrySet()) {
        double[] all = columns.computeIfAbsent(column.getKey(), source -> new double[n]);
        System.arraycopy(column.getValue(), 0, all, i, leg.size());
      }
      for (int reading = 0; reading < leg.size(); reading++) {
        pH[i] = leg.pH(reading);
        base[i] = leg.base(reading);
        dilution[i] = leg.dilution(reading);
        lowest = Math.min(lowest, pH[i]);
        highest = Math.max(highest, pH[i]);
        i++;
      }
      chargeNoise = Math.max(chargeNoise, leg.baseUncertainty());
    }
    lowestPH = lowest;
    highestPH = highest;
    BufferRegression.Prior prior = prior(electrode);
    BufferRegression.Readings all = new BufferRegression.Readings(pH, base, dilution, chargeNoise);
    double salt = metals.calcium().value() + metals.magnesium().value() + BACKGROUND_SALT;
    regression = BufferRegression.of(prior, all, medium(salt));
    double[] saltier = BufferRegression.of(prior, all, medium(salt + SALT_STEP)).estimate();
    contents = contents(metals, parameters(columns, metals, saltier));
  }

  private BufferRegression.Medium medium(double salt) {
    double kelvin = temperature.inKelvin();
    return new BufferRegression.Medium(
        WaterProperties.debyeHueckelA(kelvin), Chemistry.standard().log10IonProduct(kelvin), salt);
  }

  private static List<Component> acids() {
    List<Component> acids = new ArrayList<>();
    for (int k = 0; k < GRID; k++) {
      double pK = LOWEST_PK + PK_STEP * k;
      acids.add(Component.group(String.format(Locale.ROOT, "acid of pK %.1f", pK), -1, pK));
    }
    return List.copyOf(acids);
  }

  private BufferRegression.Prior prior(Electrode electrode) {
    double[] grid = new double[GRID];
    double[] mean = new double[GRID];
    double[] spread = new double[GRID];
    for (int k = 0; k < GRID; k++) {
      grid[k] = LOWEST_PK + PK_STEP * k;
    }
    Solution typical =
        TypicalBeer.namedAcids(temperature).plus(TypicalBeer.lumpedGroups(temperature, 1));
    for (Map.Entry<Component, Molality> entry : typical.totals().entrySet()) {
      for (EquilibriumConstant step : Chemistry.standard().constants().of(entry.getKey())) {
        double place = (-step.log10(temperature.inKelvin()) - LOWEST_PK) / PK_STEP;
        int below = (int) Math.floor(place);
        // Steps beyond the grid, such as phosphate's third, take no part in beer.
        if (below >= 0 && below + 1 < GRID) {
          double total = entry.getValue().inMolesPerKilogram();
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
        electrode.offset,
        electrode.slope,
        electrode.noise);
  }

  /**
   * Strong-ion difference and amounts, with the covariance of the fit, what the columns add, and
   * how the readings hold them against the metals, which count in the ionic strength of both.
   */
  private Traced[] parameters(Map<Source, double[]> columns, Metals metals, double[] saltier) {
    double[] estimate = regression.estimate();
    double[][] parts = regression.principalParts();
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
    columns.forEach(
        (source, column) -> {
          sources.add(Traced.of(source));
          moved.add(regression.response(column));
        });
    double[] overSalt = new double[parts.length];
    for (int i = 0; i < overSalt.length; i++) {
      overSalt[i] = (saltier[i] - estimate[i]) / SALT_STEP;
    }
    sources.add(metals.calcium().plus(metals.magnesium()));
    moved.add(overSalt);
    Traced[] inputs = sources.toArray(Traced[]::new);
    Traced[] parameters = new Traced[parts.length];
    for (int i = 0; i < parameters.length; i++) {
      double[] slopes = new double[inputs.length];
      for (int k = 0; k < slopes.length; k++) {
        slopes[k] = moved.get(k)[i];
      }
      parameters[i] = Traced.linear(estimate[i], inputs, slopes);
    }
    return parameters;
  }

  private Contents contents(Metals metals, Traced[] parameters) {
    Map<Component, Traced> totals = new LinkedHashMap<>();
    totals.put(Component.CALCIUM, metals.calcium());
    totals.put(Component.MAGNESIUM, metals.magnesium());
    totals.put(Component.NITRATE, Traced.exact(BACKGROUND_SALT));
    for (int k = 0; k < GRID; k++) {
      totals.put(ACIDS.get(k), parameters[k + 1]);
    }
    Traced inert =
        Traced.linear(
            parameters[0].value()
                - 2 * (metals.calcium().value() + metals.magnesium().value())
                + BACKGROUND_SALT,
            new Traced[] {parameters[0], metals.calcium(), metals.magnesium()},
            new double[] {1, -2, -2});
    return Contents.pure(temperature, Chemistry.standard())
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

  double lowestPH() {
    return lowestPH;
  }

  double highestPH() {
    return highestPH;
  }
}
