package org.brewchem.substance;

import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.internal.DataTable;

/** A data table of this package, whose rows hold constants with their sources. */
final class ResourceTable {

  private ResourceTable() {}

  static List<Row> read(String resource) {
    return DataTable.read(ResourceTable.class, resource).stream().map(Row::new).toList();
  }

  record Row(DataTable.Row row) {

    String place() {
      return row.place();
    }

    String text(String column) {
      return row.text(column);
    }

    /** Returns the name of a species, or a cell without one, in IUPAC's notation. */
    String species(String column) {
      return SpeciesName.iupac(text(column));
    }

    double number(String column) {
      return row.number(column);
    }

    int integer(String column) {
      return row.integer(column);
    }

    OptionalDouble optionalNumber(String column) {
      return row.optionalNumber(column);
    }

    Provenance provenance() {
      return new Provenance(
          text("source_key"), text("locator"), HowKnown.of(text("how_known")), text("note"));
    }

    /**
     * Reads a constant: the analytic expression where there is one, otherwise log10 K (the column
     * times {@code sign}), enthalpy and heat capacity, an empty cell counting as 0.
     */
    EquilibriumConstant constant(String logColumn, double sign) {
      EquilibriumConstant constant;
      if (text("analytic").isEmpty()) {
        double heatCapacity =
            row.has("dCp_J_per_K_mol") ? optionalNumber("dCp_J_per_K_mol").orElse(0.0) : 0.0;
        constant =
            EquilibriumConstant.ofLog10(
                sign * number(logColumn),
                optionalNumber("dH_kJ_per_mol").orElse(0.0),
                heatCapacity);
      } else {
        String[] terms = text("analytic").split(" ", -1);
        if (terms.length != 5) {
          throw new IllegalStateException(place() + ": five coefficients are needed");
        }
        constant =
            EquilibriumConstant.analytic(
                Double.parseDouble(terms[0]),
                Double.parseDouble(terms[1]),
                Double.parseDouble(terms[2]),
                Double.parseDouble(terms[3]),
                Double.parseDouble(terms[4]));
      }
      if (!text("t_min_C").isEmpty()) {
        constant = constant.withRangeCelsius(number("t_min_C"), number("t_max_C"));
      }
      if (!text("uncertainty").isEmpty()) {
        constant = constant.withUncertainty(number("uncertainty"));
      }
      return constant;
    }
  }
}
