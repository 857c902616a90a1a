package org.brewchem.spark;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.stream.IntStream;
import org.apache.spark.api.java.function.MapPartitionsFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.NumericType;
import org.apache.spark.sql.types.StructType;
import org.brewchem.examples.WaterResults;
import org.brewchem.readers.DatabaseTable;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * A function on the columns of a dataset of Spark: waters in, whose columns of numbers are named as
 * headings, and the same rows with pH, alkalinity, residual alkalinity and the reason of a failure
 * out. It solves the rows of a partition in blocks, at level activity.
 */
public final class SparkWaters {

  private static final int ROWS_OF_A_BLOCK = 20_000;
  private static final Chemistry CHEMISTRY = Chemistry.of(Level.ACTIVITY);

  private SparkWaters() {}

  /**
   * Reads waters, and writes their results without the numbers that they were calculated from.
   *
   * @param arguments the folder of Parquet files to read and the one to write, as Spark names them
   * @throws IOException if Spark cannot end
   * @throws IllegalArgumentException if there are not two arguments
   */
  public static void main(String[] arguments) throws IOException {
    if (arguments.length != 2) {
      throw new IllegalArgumentException("arguments: WATERS RESULTS");
    }
    try (SparkSession spark = SparkSession.builder().appName("waters").getOrCreate()) {
      Dataset<Row> waters = spark.read().parquet(arguments[0]);
      withFigures(waters)
          .drop(numbers(waters.schema()).toArray(new String[0]))
          .write()
          .parquet(arguments[1]);
    }
  }

  /**
   * Adds the figures to the rows. Nothing is read before Spark asks for rows, but the headings are
   * checked here.
   *
   * @param waters the waters; a column that is not one of numbers is passed on unread
   * @return the rows with a column to each figure, null where there is no number, and the texts
   *     {@link WaterResults#FAILURE}, empty where there are numbers
   * @throws IllegalArgumentException if a column has a unit that its meaning does not know, or two
   *     columns state the same thing
   * @throws IllegalStateException if a column that the figures take is not there
   */
  public static Dataset<Row> withFigures(Dataset<Row> waters) {
    StructType before = waters.schema();
    StructType after = before;
    for (Column column : results(Table.withHeadings(numbers(before), List.of())).columns()) {
      after = after.add(column.heading(), DataTypes.DoubleType, true);
    }
    after = after.add(WaterResults.FAILURE, DataTypes.StringType, false);
    return waters.mapPartitions(
        (MapPartitionsFunction<Row, Row>) rows -> new Blocks(rows, before), Encoders.row(after));
  }

  private static Table results(Table.Builder waters) {
    return WaterResults.of(waters.build(), CHEMISTRY, 1);
  }

  private static int[] placesOfNumbers(StructType type) {
    return IntStream.range(0, type.size())
        .filter(i -> type.apply(i).dataType() instanceof NumericType)
        .toArray();
  }

  private static List<String> numbers(StructType type) {
    return IntStream.of(placesOfNumbers(type)).mapToObj(i -> type.apply(i).name()).toList();
  }

  /** The rows of a partition with their figures, solved a block ahead. */
  private static final class Blocks implements Iterator<Row> {

    private final Iterator<Row> rows;
    private final List<String> headings;
    private final int[] places;
    private final List<Row> block = new ArrayList<>();
    private List<Column> figures = List.of();
    private List<String> failures = List.of();
    private int next;

    Blocks(Iterator<Row> rows, StructType type) {
      this.rows = rows;
      this.headings = numbers(type);
      this.places = placesOfNumbers(type);
    }

    @Override
    public boolean hasNext() {
      return next < block.size() || rows.hasNext();
    }

    @Override
    public Row next() {
      if (!hasNext()) {
        throw new NoSuchElementException();
      }
      if (next == block.size()) {
        solve();
      }
      Row water = block.get(next);
      int width = water.size();
      @Nullable Object[] values = new @Nullable Object[width + figures.size() + 1];
      for (int i = 0; i < width; i++) {
        values[i] = water.get(i);
      }
      for (int f = 0; f < figures.size(); f++) {
        Column figure = figures.get(f);
        values[width + f] = figure.isPresent(next) ? Double.valueOf(figure.value(next)) : null;
      }
      values[values.length - 1] = failures.get(next);
      next++;
      return RowFactory.create(values);
    }

    private void solve() {
      block.clear();
      Table.Builder waters = Table.withHeadings(headings, List.of());
      while (rows.hasNext() && block.size() < ROWS_OF_A_BLOCK) {
        Row row = rows.next();
        block.add(row);
        waters.row();
        for (int c = 0; c < places.length; c++) {
          if (row.get(places[c]) instanceof Number number) {
            DatabaseTable.set(waters, c, number.doubleValue());
          }
        }
      }
      Table results = results(waters);
      figures = results.columns();
      failures = results.texts(WaterResults.FAILURE);
      next = 0;
    }
  }
}
