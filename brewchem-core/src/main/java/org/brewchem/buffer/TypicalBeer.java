package org.brewchem.buffer;

import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.internal.DataTable;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;

/**
 * What an ordinary beer holds, as far as it is published: what is assumed of a beer's buffer before
 * anything of it is measured.
 *
 * <p>Its rows are in {@code typical-beer.csv}, each with its source: organic acids as published
 * means, phosphate, calcium and magnesium from tables of foods and ion chromatography, and lumped
 * groups of protein and amino acids of our own choice of pKa and amount.
 */
public final class TypicalBeer {

  /** A row of the composition. */
  record Part(Component component, double millimolesPerLitre, double relativeSpread) {}

  private static final List<DataTable.Row> ROWS =
      DataTable.read(TypicalBeer.class, "typical-beer.csv");

  private static final List<Part> ACIDS = parts("acid");
  private static final List<Part> GROUPS = parts("group");
  private static final List<Part> METALS = parts("metal");

  /** Carboxyl groups of peptides and amino acids. */
  public static final Component CARBOXYL = group("carboxyl groups");

  /** Imidazole groups of histidine. */
  public static final Component IMIDAZOLE = group("imidazole groups");

  /** Amino groups at the end of peptides. */
  public static final Component AMINO_OF_PEPTIDES = group("amino groups of peptides");

  /** Amino groups of free amino acids. */
  public static final Component AMINO_OF_AMINO_ACIDS = group("amino groups of amino acids");

  private TypicalBeer() {}

  private static List<Part> parts(String part) {
    return ROWS.stream()
        .filter(row -> row.text("part").equals(part))
        .map(
            row ->
                new Part(
                    component(row),
                    row.number("millimoles_per_litre"),
                    row.number("relative_spread")))
        .toList();
  }

  private static Component component(DataTable.Row row) {
    OptionalDouble pKa = row.optionalNumber("pKa");
    return pKa.isPresent()
        ? Component.group(row.text("component"), row.integer("charge"), pKa.getAsDouble())
        : Component.of(row.text("component"));
  }

  private static Component group(String name) {
    return GROUPS.stream()
        .map(Part::component)
        .filter(component -> component.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  static List<Part> acids() {
    return ACIDS;
  }

  static List<Part> groups() {
    return GROUPS;
  }

  static List<Part> metals() {
    return METALS;
  }

  /**
   * Returns the acids of known identity.
   *
   * @param temperature 0 to 100 °C
   * @return a solution of them, its strong-ion difference open
   */
  public static Solution namedAcids(Temperature temperature) {
    return with(Solution.at(temperature), ACIDS, 1);
  }

  /**
   * Returns the lumped groups.
   *
   * @param temperature 0 to 100 °C
   * @param factor multiple of the usual amount, 0 or more
   * @return a solution of them, its strong-ion difference open
   */
  public static Solution lumpedGroups(Temperature temperature, double factor) {
    return with(Solution.at(temperature), GROUPS, factor);
  }

  private static Solution with(Solution start, List<Part> parts, double factor) {
    Solution sum = start;
    for (Part part : parts) {
      sum =
          sum.with(
              part.component(),
              AmountConcentration.ofMillimolesPerLitre(part.millimolesPerLitre() * factor));
    }
    return sum;
  }
}
