package org.brewchem.spark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.brewchem.scale.ParquetWaters;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The job of ten million rows at a five-hundredth of its size, on two threads. */
class SparkWatersTest {

  private static final int ROWS = 20_000;
  private static final int BAD = 20;

  @TempDir private static Path folder;
  private static Path waters;
  private static SparkSession spark;

  @BeforeAll
  static void makeWaters() throws IOException {
    waters = folder.resolve("waters");
    ParquetWaters.write(waters, ROWS, BAD);
    spark =
        SparkSession.builder()
            .master("local[2]")
            .config("spark.ui.enabled", false)
            .config("spark.driver.bindAddress", "127.0.0.1")
            .config("spark.driver.host", "127.0.0.1")
            .config("spark.sql.files.maxPartitionBytes", "200k")
            .config("spark.sql.warehouse.dir", folder.resolve("warehouse").toString())
            .getOrCreate();
  }

  @AfterAll
  static void end() throws IOException {
    spark.close();
  }

  @Test
  void theResultsAreThoseOfAPlainLoopToTheBitAndOfSingleSolutions() throws IOException {
    Path results = folder.resolve("results");
    Dataset<Row> figures = SparkWaters.withFigures(spark.read().parquet(waters.toString()));
    assertEquals(13, figures.columns().length);
    figures.write().parquet(results.toString());
    ParquetWaters.Comparison found = ParquetWaters.compare(waters, results);
    assertEquals(ROWS, found.rows());
    assertEquals(BAD, found.failures());
    assertEquals(0, found.different());
    assertTrue(found.single() >= 20);
    assertEquals(0, found.largestDifference(), 1e-12);
  }

  @Test
  void aBadRowIsKeptWithItsReason() {
    Dataset<Row> figures = SparkWaters.withFigures(spark.read().parquet(waters.toString()));
    List<Row> bad =
        figures.filter("failure <> ''").select("sample", "pH", "failure").limit(2).collectAsList();
    assertEquals("[W501,null,calcium [mg/L]: NaN is not a finite number]", bad.get(0).toString());
    assertEquals("[W1501,null,magnesium [mg/L]: is missing]", bad.get(1).toString());
  }

  @Test
  void wrongHeadingsAreRefusedBeforeARowIsRead() {
    Dataset<Row> inPints = spark.sql("select 1.0d as `calcium [pint]`");
    assertThrows(IllegalArgumentException.class, () -> SparkWaters.withFigures(inPints));
    Dataset<Row> calciumAlone = spark.sql("select 1.0d as `calcium [mg/L]`");
    assertThrows(IllegalStateException.class, () -> SparkWaters.withFigures(calciumAlone));
  }
}
