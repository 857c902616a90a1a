package org.brewchem.buffer;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.brewchem.uncertainty.Source;

/**
 * The readings of all portions one behind the other. Immutable; arrays are not to be written to.
 */
final class AllReadings {

  private static final double NEUTRAL = 7;

  /** Portion and row of each reading, counted from 0. */
  final int[] leg;

  final int[] row;
  final double[] pH;
  final double[] base;
  final double[] dilution;
  final double[] chargeNoise;

  /** By how much the base, or the pH, of each reading moves with a unit of a source. */
  final Map<Source, double[]> columns;

  final Map<Source, double[]> errorsOfPH;

  private AllReadings(
      int[] leg,
      int[] row,
      double[][] numbers,
      Map<Source, double[]> columns,
      Map<Source, double[]> errorsOfPH) {
    this.leg = leg;
    this.row = row;
    pH = numbers[0];
    base = numbers[1];
    dilution = numbers[2];
    chargeNoise = numbers[3];
    this.columns = columns;
    this.errorsOfPH = errorsOfPH;
  }

  static AllReadings of(FitInputs inputs) {
    List<BufferReadings> legs = inputs.readings();
    int n = legs.stream().mapToInt(BufferReadings::size).sum();
    int[] leg = new int[n];
    int[] row = new int[n];
    double[][] numbers = new double[4][n];
    Map<Source, double[]> columns = new LinkedHashMap<>();
    Map<Source, double[]> errors = new LinkedHashMap<>();
    double[] zero = new double[n];
    double[] slope = new double[n];
    if (inputs.electrodeCounts()) {
      errors.put(inputs.zeroSource(), zero);
      errors.put(inputs.slopeSource(), slope);
    }
    int i = 0;
    for (int l = 0; l < legs.size(); l++) {
      BufferReadings one = legs.get(l);
      put(columns, one.columns(), i, n);
      put(errors, one.errorsOfPH(), i, n);
      for (int reading = 0; reading < one.size(); reading++) {
        leg[i] = l;
        row[i] = reading;
        numbers[0][i] = one.pH(reading);
        numbers[1][i] = one.base(reading);
        numbers[2][i] = one.dilution(reading);
        numbers[3][i] = one.baseUncertainty();
        if (one.errorsOfPH().isEmpty()) {
          zero[i] = 1;
          slope[i] = one.pH(reading) - NEUTRAL;
        }
        i++;
      }
    }
    return new AllReadings(leg, row, numbers, columns, errors);
  }

  private static void put(
      Map<Source, double[]> all, Map<Source, double[]> own, int first, int length) {
    own.forEach(
        (source, column) ->
            System.arraycopy(
                column,
                0,
                all.computeIfAbsent(source, key -> new double[length]),
                first,
                column.length));
  }

  int size() {
    return pH.length;
  }

  /** The same without the readings that are marked. */
  AllReadings without(boolean[] marked) {
    int[] kept = IntStream.range(0, size()).filter(i -> !marked[i]).toArray();
    double[][] numbers = {pH, base, dilution, chargeNoise};
    double[][] fewer = Arrays.stream(numbers).map(all -> pick(all, kept)).toArray(double[][]::new);
    Map<Source, double[]> fewerColumns = new LinkedHashMap<>();
    columns.forEach((source, column) -> fewerColumns.put(source, pick(column, kept)));
    Map<Source, double[]> fewerErrors = new LinkedHashMap<>();
    errorsOfPH.forEach((source, column) -> fewerErrors.put(source, pick(column, kept)));
    return new AllReadings(
        Arrays.stream(kept).map(i -> leg[i]).toArray(),
        Arrays.stream(kept).map(i -> row[i]).toArray(),
        fewer,
        fewerColumns,
        fewerErrors);
  }

  private static double[] pick(double[] all, int[] kept) {
    return Arrays.stream(kept).mapToDouble(i -> all[i]).toArray();
  }

  /** The errors of the pH at their standard uncertainties, as a regression takes them. */
  double[][] scaledErrorsOfPH() {
    return errorsOfPH.entrySet().stream()
        .map(
            entry -> {
              double u = entry.getKey().standardUncertainty().orElseThrow();
              return Arrays.stream(entry.getValue()).map(x -> x * u).toArray();
            })
        .toArray(double[][]::new);
  }
}
