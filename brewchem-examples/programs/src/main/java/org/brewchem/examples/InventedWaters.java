package org.brewchem.examples;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;

import java.util.List;
import java.util.Random;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.table.Table;

/**
 * Random waters, always the same ones: anions and carbon dioxide at random, and as many equivalents
 * of cations, shared out at random. They are invented. Mutable, for one thread.
 */
public final class InventedWaters {

  /** The headings of their columns. */
  public static final List<String> HEADINGS =
      List.of(
          "calcium [mg/L]",
          "magnesium [mg/L]",
          "sodium [mg/L]",
          "potassium [mg/L]",
          "chloride [mg/L]",
          "sulfate [mg/L]",
          "nitrate [mg/L]",
          "total carbon dioxide [mmol/L]");

  private static final List<Ion> IONS =
      List.of(
          Ion.CALCIUM,
          Ion.MAGNESIUM,
          Ion.SODIUM,
          Ion.POTASSIUM,
          Ion.CHLORIDE,
          Ion.SULFATE,
          Ion.NITRATE);

  private final Random random = new Random(20_261_125);

  /** Starts with the first water. */
  public InventedWaters() {}

  /**
   * Makes the next water.
   *
   * @return a number to each heading, in a new array: masses to 0.001 mg/L, the carbon dioxide to
   *     0.0001 mmol/L
   */
  public double[] next() {
    double bicarbonate = between(0.2, 7);
    double chloride = between(0.05, 5);
    double sulfate = between(0.02, 3);
    double nitrate = between(0.01, 0.8);
    double[] shares = new double[4];
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      shares[i] = between(0.05, 1);
      sum += shares[i];
    }
    double equivalents = (bicarbonate + chloride + 2 * sulfate + nitrate) / sum;
    double[] water = {
      shares[0] * equivalents / 2,
      shares[1] * equivalents / 2,
      shares[2] * equivalents,
      shares[3] * equivalents,
      chloride,
      sulfate,
      nitrate,
      bicarbonate * (1 + between(0.005, 0.5))
    };
    for (int i = 0; i < IONS.size(); i++) {
      water[i] = rounded(water[i] * IONS.get(i).molarMass().inGramsPerMole(), 1e3);
    }
    water[IONS.size()] = rounded(water[IONS.size()], 1e4);
    return water;
  }

  /** Evenly on a logarithmic scale. */
  private double between(double low, double high) {
    return low * Math.pow(high / low, random.nextDouble());
  }

  private static double rounded(double value, double steps) {
    return Math.round(value * steps) / steps;
  }

  /**
   * Makes a solution of one row, ion by ion, without the room of tables.
   *
   * @param table a table with the headings of these waters
   * @param index the row's index, from 0
   * @param chemistry under which it is solved
   * @return the solution, at 25 °C
   */
  public static Solution solution(Table table, int index, Chemistry chemistry) {
    Solution solution = Solution.at(celsius(25)).under(chemistry);
    for (Ion ion : IONS) {
      solution =
          solution.with(
              ion,
              AmountConcentration.from(
                  mgPerL(table.column(ion.name()).value(index)), ion.molarMass()));
    }
    return solution.with(
        Component.CARBONATE, mmolPerL(table.column("total carbon dioxide").value(index)));
  }
}
