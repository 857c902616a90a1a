package org.brewchem.checks.independent;

import ch.obermuhlner.math.big.BigDecimalMath;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.checks.Mixture;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Level;
import org.brewchem.solution.Species;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonPair;

/**
 * The proton balance with fifty digits, set up in another way than the library does: every free
 * component is an unknown with its own mass balance, beside the charge balance and the ionic
 * strength, and residuals are computed with {@link BigDecimal}. Each Newton step, found in doubles,
 * gains some eight digits; the start does not matter for where it ends.
 *
 * <p>Levels ideal, and activity or pairs with the Davies equation.
 */
final class PrecisionOracle {

  private static final MathContext DIGITS = new MathContext(50);
  private static final BigDecimal HALF = new BigDecimal("0.5");
  private static final BigDecimal DAVIES = new BigDecimal("0.3");
  private static final double LN10 = Math.log(10);
  private static final double ENOUGH = 1e-30;
  private static final int MOST_STEPS = 100;
  private static final double ZERO_CELSIUS = 273.15;

  /** A species: its constant from H+ and the free components, and how many of each it holds. */
  private record Form(BigDecimal beta, int protons, int[] unknowns, int charge) {}

  private final List<Component> unknowns = new ArrayList<>();
  private final List<Form> forms = new ArrayList<>();
  private final double[] totals;
  private final boolean ideal;
  private final double debyeHueckel;
  private BigDecimal inertCharge = BigDecimal.ZERO;
  private BigDecimal inertSquares = BigDecimal.ZERO;

  private PrecisionOracle(Map<Component, Double> given, double celsius, Chemistry chemistry) {
    double kelvin = celsius + ZERO_CELSIUS;
    ideal = chemistry.level() == Level.IDEAL;
    debyeHueckel = ideal ? 0 : debyeHueckel(celsius);
    List<IonPair> pairs =
        chemistry.level() == Level.PAIRS
            ? chemistry.pairs().pairs().stream()
                .filter(pair -> present(pair.metal(), given) && present(pair.ligand(), given))
                .toList()
            : List.of();
    for (Map.Entry<Component, Double> entry : given.entrySet()) {
      Component component = entry.getKey();
      boolean paired =
          pairs.stream()
              .anyMatch(
                  pair ->
                      pair.metal().equals(Optional.of(component))
                          || pair.ligand().equals(Optional.of(component)));
      if (component.protons() > 0 || paired) {
        unknowns.add(component);
      } else {
        BigDecimal charge =
            new BigDecimal(entry.getValue())
                .multiply(new BigDecimal(component.chargeWithoutProtons()));
        inertCharge = inertCharge.add(charge);
        inertSquares =
            inertSquares.add(charge.multiply(new BigDecimal(component.chargeWithoutProtons())));
      }
    }
    totals =
        unknowns.stream().mapToDouble(component -> given.getOrDefault(component, 0.0)).toArray();
    forms.add(new Form(BigDecimal.ONE, 1, new int[unknowns.size()], 1));
    forms.add(
        form(chemistry.log10IonProduct(kelvin), -1, Optional.empty(), 0, Optional.empty(), -1));
    for (Component component : unknowns) {
      int charge = component.chargeWithoutProtons();
      forms.add(form(0, 0, Optional.of(component), 1, Optional.empty(), charge));
      double log10 = 0;
      List<EquilibriumConstant> dissociation =
          component.protons() > 0 ? chemistry.constants().of(component) : List.of();
      for (int protons = 1; protons <= component.protons(); protons++) {
        log10 -= dissociation.get(component.protons() - protons).log10(kelvin);
        forms.add(
            form(log10, protons, Optional.of(component), 1, Optional.empty(), charge + protons));
      }
    }
    for (IonPair pair : pairs) {
      forms.add(
          form(
              pair.constant().log10(kelvin),
              pair.protons(),
              pair.ligand(),
              pair.ligandCount(),
              pair.metal(),
              pair.charge()));
    }
  }

  /** Returns the pH of a mixture of stated totals, starting from a solution of the library. */
  static BigDecimal pH(
      Map<Component, Double> totals, double celsius, Chemistry chemistry, Equilibria start) {
    return new PrecisionOracle(totals, celsius, chemistry).solve(start);
  }

  private static boolean present(Optional<Component> component, Map<Component, Double> totals) {
    return component.map(totals::containsKey).orElse(true);
  }

  /** The slope is not public; a salt shows it to the last bits of a double. */
  private static double debyeHueckel(double celsius) {
    Equilibria salt =
        Mixture.of(
            Map.of(Component.SODIUM, 0.1, Component.CHLORIDE, 0.1),
            celsius,
            Chemistry.of(Level.ACTIVITY));
    salt.pH();
    Species sodium =
        salt.species().stream()
            .filter(species -> species.name().equals("Na+"))
            .findFirst()
            .orElseThrow();
    double root = Math.sqrt(salt.ionicStrength());
    return Math.log10(sodium.molality().inMolesPerKilogram() / sodium.activity())
        / (root / (1 + root) - 0.3 * salt.ionicStrength());
  }

  private Form form(
      double log10Beta,
      int protons,
      Optional<Component> ligand,
      int ligands,
      Optional<Component> metal,
      int charge) {
    int[] counts = new int[unknowns.size()];
    ligand.ifPresent(component -> counts[unknowns.indexOf(component)] += ligands);
    metal.ifPresent(component -> counts[unknowns.indexOf(component)] += 1);
    BigDecimal beta = BigDecimalMath.pow(BigDecimal.TEN, new BigDecimal(log10Beta), DIGITS);
    return new Form(beta, protons, counts, charge);
  }

  /** Unknowns: ln of the H+ activity, of the activity of each free component, of I. */
  private BigDecimal solve(Equilibria start) {
    int n = unknowns.size() + (ideal ? 1 : 2);
    BigDecimal[] x = new BigDecimal[n];
    x[0] = new BigDecimal(-LN10 * start.pH());
    for (int i = 0; i < unknowns.size(); i++) {
      String free = unknowns.get(i).form(0);
      double activity =
          start.species().stream()
              .filter(species -> species.name().equals(free))
              .mapToDouble(Species::activity)
              .sum();
      x[i + 1] = new BigDecimal(Math.log(activity));
    }
    if (!ideal) {
      x[n - 1] = new BigDecimal(Math.log(start.ionicStrength()));
    }
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] correction = correction(x);
      double largest = 0;
      for (int i = 0; i < n; i++) {
        x[i] = x[i].subtract(new BigDecimal(correction[i]), DIGITS);
        largest = Math.max(largest, Math.abs(correction[i]));
      }
      if (largest < ENOUGH) {
        return x[0].negate().divide(BigDecimalMath.log(BigDecimal.TEN, DIGITS), DIGITS);
      }
    }
    throw new IllegalStateException("the oracle did not settle on " + unknowns);
  }

  private double[] correction(BigDecimal[] x) {
    int n = x.length;
    BigDecimal[] factor = new BigDecimal[unknowns.size() + 1];
    for (int i = 0; i < factor.length; i++) {
      factor[i] = BigDecimalMath.exp(x[i], DIGITS);
    }
    BigDecimal ionic = ideal ? BigDecimal.ZERO : BigDecimalMath.exp(x[n - 1], DIGITS);
    BigDecimal inverseGamma = ideal ? BigDecimal.ONE : inverseGamma(ionic);
    double slope = ideal ? 0 : slope(ionic.doubleValue());

    BigDecimal[] residual = new BigDecimal[n];
    double[][] jacobian = new double[n][n];
    residual[0] = inertCharge;
    for (int i = 0; i < unknowns.size(); i++) {
      residual[i + 1] = new BigDecimal(-totals[i]);
    }
    BigDecimal squares = inertSquares;
    for (Form form : forms) {
      BigDecimal concentration =
          form.beta()
              .multiply(factor[0].pow(form.protons(), DIGITS), DIGITS)
              .multiply(inverseGamma.pow(form.charge() * form.charge(), DIGITS), DIGITS);
      for (int i = 0; i < unknowns.size(); i++) {
        concentration =
            concentration.multiply(factor[i + 1].pow(form.unknowns()[i], DIGITS), DIGITS);
      }
      int z = form.charge();
      residual[0] = residual[0].add(concentration.multiply(new BigDecimal(z)), DIGITS);
      squares = squares.add(concentration.multiply(new BigDecimal(z * z)), DIGITS);
      double c = concentration.doubleValue();
      addRow(jacobian[0], form, z * c, slope);
      for (int i = 0; i < unknowns.size(); i++) {
        int count = form.unknowns()[i];
        if (count > 0) {
          residual[i + 1] =
              residual[i + 1].add(concentration.multiply(new BigDecimal(count)), DIGITS);
          addRow(jacobian[i + 1], form, count * c, slope);
        }
      }
      if (!ideal) {
        addRow(jacobian[n - 1], form, 0.5 * z * z * c, slope);
      }
    }
    if (!ideal) {
      residual[n - 1] = squares.multiply(HALF).subtract(ionic, DIGITS);
      jacobian[n - 1][n - 1] -= ionic.doubleValue();
    }
    return solved(jacobian, residual);
  }

  /** Adds how a weighted concentration changes with each unknown. */
  private void addRow(double[] row, Form form, double weighted, double slope) {
    row[0] += weighted * form.protons();
    for (int i = 0; i < unknowns.size(); i++) {
      row[i + 1] += weighted * form.unknowns()[i];
    }
    if (!ideal) {
      row[row.length - 1] += weighted * form.charge() * form.charge() * slope;
    }
  }

  /** 1/gamma of a univalent ion. */
  private BigDecimal inverseGamma(BigDecimal ionic) {
    BigDecimal root = BigDecimalMath.sqrt(ionic, DIGITS);
    BigDecimal davies =
        root.divide(BigDecimal.ONE.add(root), DIGITS).subtract(DAVIES.multiply(ionic), DIGITS);
    return BigDecimalMath.pow(
        BigDecimal.TEN, davies.multiply(new BigDecimal(debyeHueckel), DIGITS), DIGITS);
  }

  /** Derivative of ln(1/gamma) of a univalent ion by ln I. */
  private double slope(double ionic) {
    double root = Math.sqrt(ionic);
    return LN10 * debyeHueckel * (0.5 * root / ((1 + root) * (1 + root)) - 0.3 * ionic);
  }

  /** Gaussian elimination with rows scaled and pivoted. */
  private static double[] solved(double[][] matrix, BigDecimal[] right) {
    int n = right.length;
    double[] b = new double[n];
    for (int r = 0; r < n; r++) {
      double largest = 0;
      for (double value : matrix[r]) {
        largest = Math.max(largest, Math.abs(value));
      }
      for (int c = 0; c < n; c++) {
        matrix[r][c] /= largest;
      }
      b[r] = right[r].doubleValue() / largest;
    }
    for (int k = 0; k < n; k++) {
      int pivot = k;
      for (int r = k + 1; r < n; r++) {
        if (Math.abs(matrix[r][k]) > Math.abs(matrix[pivot][k])) {
          pivot = r;
        }
      }
      double[] row = matrix[k];
      matrix[k] = matrix[pivot];
      matrix[pivot] = row;
      double value = b[k];
      b[k] = b[pivot];
      b[pivot] = value;
      for (int r = k + 1; r < n; r++) {
        double share = matrix[r][k] / matrix[k][k];
        for (int c = k; c < n; c++) {
          matrix[r][c] -= share * matrix[k][c];
        }
        b[r] -= share * b[k];
      }
    }
    for (int k = n - 1; k >= 0; k--) {
      for (int c = k + 1; c < n; c++) {
        b[k] -= matrix[k][c] * b[c];
      }
      b[k] /= matrix[k][k];
    }
    return b;
  }
}
