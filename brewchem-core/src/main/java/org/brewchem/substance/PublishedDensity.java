package org.brewchem.substance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.MassFraction;

/**
 * The density of a reagent solution from published tables, near 20 °C, with the spread between
 * tables.
 *
 * <p>Tables of one strength disagree by up to 1 %, so a density counts as known to within 1 % (a
 * rectangular distribution) or to within the range of the rows used, whichever is larger. Between
 * two published strengths of at most 20 percentage points distance the density is interpolated
 * linearly; further apart, and beyond the tables, none is given.
 *
 * @param density the density
 * @param relativeStandardUncertainty the relative standard uncertainty
 * @param sources the rows used
 */
record PublishedDensity(
    Density density, double relativeStandardUncertainty, List<Provenance> sources) {

  private static final double LEAST_RELATIVE_HALF_WIDTH = 0.01;
  private static final double LARGEST_GAP_MASS_PERCENT = 20.0;
  private static final double SAME_STRENGTH_MASS_PERCENT = 1e-9;
  private static final List<Row> ROWS = read();

  private record Row(
      String compound, double low, double high, double least, double most, Provenance provenance) {

    double middle() {
      return (least + most) / 2.0;
    }
  }

  private static List<Row> read() {
    List<Row> rows = new ArrayList<>();
    for (ResourceTable.Row row : ResourceTable.read("reagent-densities.csv")) {
      if (row.text("used").equals("yes")) {
        rows.add(
            new Row(
                row.text("compound"),
                row.number("mass_percent_min"),
                row.number("mass_percent_max"),
                row.number("density_min"),
                row.number("density_max"),
                row.provenance()));
      }
    }
    return List.copyOf(rows);
  }

  /** Returns the density of a compound's solution of a strength, if the tables give one. */
  static Optional<PublishedDensity> of(Compound compound, MassFraction assay) {
    double massPercent = assay.inMassPercent();
    List<Row> rows = ROWS.stream().filter(row -> row.compound.equals(compound.name())).toList();
    List<Row> there = rows.stream().filter(row -> covers(row, massPercent)).toList();
    if (!there.isEmpty()) {
      return Optional.of(between(there, there, 0.0));
    }
    List<Row> below = nearest(rows, massPercent, -1.0);
    List<Row> above = nearest(rows, massPercent, 1.0);
    if (below.isEmpty() || above.isEmpty()) {
      return Optional.empty();
    }
    double from = below.get(0).high;
    double to = above.get(0).low;
    if (to - from > LARGEST_GAP_MASS_PERCENT) {
      return Optional.empty();
    }
    return Optional.of(between(below, above, (massPercent - from) / (to - from)));
  }

  private static boolean covers(Row row, double massPercent) {
    return massPercent >= row.low - SAME_STRENGTH_MASS_PERCENT
        && massPercent <= row.high + SAME_STRENGTH_MASS_PERCENT;
  }

  /** The rows of the nearest strength below (direction -1) or above (direction 1). */
  private static List<Row> nearest(List<Row> rows, double massPercent, double direction) {
    Comparator<Row> byDistance =
        Comparator.comparingDouble(row -> distance(row, massPercent, direction));
    Optional<Row> nearest =
        rows.stream().filter(row -> distance(row, massPercent, direction) > 0.0).min(byDistance);
    return nearest
        .map(row -> rows.stream().filter(other -> byDistance.compare(row, other) == 0).toList())
        .orElse(List.of());
  }

  private static double distance(Row row, double massPercent, double direction) {
    return direction > 0.0 ? row.low - massPercent : massPercent - row.high;
  }

  private static PublishedDensity between(List<Row> below, List<Row> above, double share) {
    double density = (1.0 - share) * mean(below) + share * mean(above);
    double halfWidth =
        Math.max(
            LEAST_RELATIVE_HALF_WIDTH,
            Math.max(relativeHalfWidth(below), relativeHalfWidth(above)));
    List<Provenance> sources = new ArrayList<>();
    below.forEach(row -> sources.add(row.provenance));
    if (share > 0.0) {
      above.forEach(row -> sources.add(row.provenance));
    }
    return new PublishedDensity(
        Density.ofGramsPerMillilitre(density), halfWidth / Math.sqrt(3.0), List.copyOf(sources));
  }

  private static double mean(List<Row> rows) {
    return rows.stream().mapToDouble(Row::middle).average().orElseThrow();
  }

  private static double relativeHalfWidth(List<Row> rows) {
    double least = rows.stream().mapToDouble(Row::least).min().orElseThrow();
    double most = rows.stream().mapToDouble(Row::most).max().orElseThrow();
    return (most - least) / 2.0 / mean(rows);
  }
}
