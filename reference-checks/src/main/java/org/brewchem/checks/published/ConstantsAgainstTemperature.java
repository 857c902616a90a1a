package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;

/** Dissociation constants measured against temperature, from pKa, enthalpy and heat capacity. */
public final class ConstantsAgainstTemperature {

  private static final double ZERO_CELSIUS = 273.15;

  private ConstantsAgainstTemperature() {}

  /** Returns the check. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "tris",
            Suite.PUBLISHED,
            "Dissociation of tris from 0 to 50 °C",
            new Source("bates-hetzer-1961", "Bates & Hetzer, J. Phys. Chem. 65 (1961) 667"),
            "pKa at the temperature, from pKa, dH and dCp of Goldberg, Kishore & Lennen 2002 at"
                + " 25 °C",
            Tolerance.absolute(
                0.01, "", "the heat capacity counts as constant; half of a pH read to 0.02"),
            "the other acids of a beer, whose constants were not seen against temperature",
            4,
            ConstantsAgainstTemperature::rows));
  }

  private static List<Row> rows() {
    EquilibriumConstant tris = ConstantSet.named("goldberg-2002").of(Component.TRIS).get(0);
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("constants-against-temperature.csv", 4).lines()) {
      rows.add(
          Row.of(
              row.text("t_C") + " °C",
              row.number("pKa"),
              -tris.log10(row.number("t_C") + ZERO_CELSIUS),
              row.howKnown()));
    }
    return rows;
  }
}
