package org.brewchem.titration;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** Published tables that tests of this package read. */
final class TestTable {

  private TestTable() {}

  /** The cells of the rows below the header. */
  static List<List<String>> lines(String resource) {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(TestTable.class.getResourceAsStream(resource)),
                StandardCharsets.UTF_8))) {
      return reader
          .lines()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .map(line -> Arrays.asList(line.split(",(?=([^\"]*\"[^\"]*\")*[^\"]*$)", -1)))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Volume in mL, from the id, and pH of a curve whose printed answers are right. */
  static List<double[]> curve(String prefix) {
    return lines("textbook-curves.csv").stream()
        .filter(cells -> cells.get(0).startsWith(prefix + "-") && cells.get(6).equals("yes"))
        .map(
            cells ->
                new double[] {
                  Double.parseDouble(cells.get(0).substring(prefix.length() + 1)),
                  Double.parseDouble(cells.get(3))
                })
        .toList();
  }
}
