package org.brewchem.treatment;

import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;

/**
 * What leaves a liquid, as a solid or a gas, until functions of its balance are zero: the amounts
 * with the sources of uncertainty that the liquid had, by the slopes of the functions.
 */
final class Leaving {

  /** A step of the slopes, relative to the least of the totals that move. */
  private static final double STEP = 1e-6;

  /** A total that there is hardly anything of still moves by this, mol/kg. */
  private static final double LEAST_STEP = 1e-12;

  private Leaving() {}

  /**
   * One thing that leaves.
   *
   * @param parts moles of each component in a mole of it
   * @param excess is zero at equilibrium, by a work space that holds the totals that are left
   */
  record Way(Map<Component, Double> parts, ToDoubleFunction<Equilibria> excess) {}

  /** The contents without so many moles of each, mol per kg of water, negative where it came in. */
  static Contents without(Contents before, List<Way> ways, Traced[] amounts) {
    Contents after = before;
    for (int i = 0; i < amounts.length; i++) {
      for (Map.Entry<Component, Double> part : ways.get(i).parts().entrySet()) {
        Traced left = after.least(part.getKey()).minus(amounts[i].times(part.getValue()));
        after = after.withTotal(part.getKey(), left.withValue(Math.max(left.value(), 0)));
      }
    }
    return after;
  }

  /**
   * Gives amounts their sources.
   *
   * @param before the contents before
   * @param ways what leaves
   * @param found the amounts, which a search has found
   * @param wanted what each excess is to be, exact zeros or with sources of its own
   * @return the same amounts with their sources
   */
  static Traced[] traced(Contents before, List<Way> ways, double[] found, Traced[] wanted) {
    int size = found.length;
    Traced[] amounts = new Traced[size];
    for (int i = 0; i < size; i++) {
      amounts[i] = Traced.exact(found[i]);
    }
    if (size == 0) {
      return amounts;
    }
    Contents left = without(before, ways, amounts);
    Traced[] missing = new Traced[size];
    for (int i = 0; i < size; i++) {
      missing[i] = left.trace(ways.get(i).excess()).minus(wanted[i]);
    }
    RealMatrix inverse =
        new LUDecomposition(new Array2DRowRealMatrix(slopes(left, ways), false))
            .getSolver()
            .getInverse();
    for (int i = 0; i < size; i++) {
      double[] row = inverse.getRow(i);
      for (int j = 0; j < size; j++) {
        row[j] = -row[j];
      }
      amounts[i] = Traced.linear(found[i], missing, row);
    }
    return amounts;
  }

  /** By how much each excess changes with a mole that leaves. */
  private static double[][] slopes(Contents left, List<Way> ways) {
    double[][] slopes = new double[ways.size()][ways.size()];
    Equilibria equilibria = left.equilibria();
    double[] at = excesses(equilibria, ways);
    for (int i = 0; i < at.length; i++) {
      Map<Component, Double> parts = ways.get(i).parts();
      double scarcest =
          parts.entrySet().stream()
              .mapToDouble(part -> left.least(part.getKey()).value() / part.getValue())
              .min()
              .orElseThrow();
      double step = Math.max(scarcest * STEP, LEAST_STEP);
      // Where next to nothing is left, only more of it can be tried.
      double back = scarcest > step ? step : 0;
      move(equilibria, left, parts, step);
      double[] more = excesses(equilibria, ways);
      move(equilibria, left, parts, -back);
      double[] less = back > 0 ? excesses(equilibria, ways) : at;
      for (int j = 0; j < at.length; j++) {
        slopes[j][i] = (less[j] - more[j]) / (step + back);
      }
      move(equilibria, left, parts, 0);
    }
    return slopes;
  }

  private static double[] excesses(Equilibria equilibria, List<Way> ways) {
    return ways.stream().mapToDouble(way -> way.excess().applyAsDouble(equilibria)).toArray();
  }

  private static void move(
      Equilibria equilibria, Contents left, Map<Component, Double> parts, double step) {
    parts.forEach(
        (component, count) ->
            equilibria.setTotal(
                equilibria.indexOf(component), left.least(component).value() + step * count));
  }
}
