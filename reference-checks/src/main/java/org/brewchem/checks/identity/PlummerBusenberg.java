package org.brewchem.checks.identity;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Gas;
import org.brewchem.substance.Mineral;

/**
 * Carbonate equilibria against temperature: the expressions of a paper beside the same expressions
 * evaluated elsewhere, which shows that they were typed and read rightly, and no more.
 */
public final class PlummerBusenberg {

  private static final ConstantSet CONSTANTS = ConstantSet.named("plummer-busenberg-1982");

  /** What the table calls a constant, and the constant of the library. */
  private static final Map<String, EquilibriumConstant> BY_NAME =
      Map.of(
          "logKcalcite", Mineral.of("calcite", "plummer-busenberg-1982").constant(),
          "logK1", CONSTANTS.of(Component.CARBONATE).get(0),
          "logK2", CONSTANTS.of(Component.CARBONATE).get(1),
          "logKH", Gas.CARBON_DIOXIDE.solubility());

  private static final Pattern VALUE = Pattern.compile("(logK[a-zA-Z0-9]+) (-[0-9.]+)");
  private static final Pattern TEMPERATURE = Pattern.compile("P&B 1982 at ([0-9]+) C");
  private static final double ZERO_CELSIUS = 273.15;

  private PlummerBusenberg() {}

  /** Returns the check. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "plummer-busenberg",
            Suite.IDENTITY,
            "Carbonate equilibria from 0 to 90 °C",
            new Source(
                "plummer-busenberg-1982",
                "Plummer & Busenberg, Geochim. Cosmochim. Acta 46 (1982) 1011"),
            "log K of calcite, of both dissociations of carbonic acid and of the solubility of"
                + " carbon dioxide, from the expressions in temperature, beside another evaluation of the"
                + " same expressions",
            Tolerance.halfOfLastDigit("", "as evaluated"),
            "",
            32,
            PlummerBusenberg::rows));
  }

  private static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("water.csv", 39).lines()) {
      Matcher temperature = TEMPERATURE.matcher(row.text("item"));
      if (temperature.matches()) {
        double kelvin = Double.parseDouble(temperature.group(1)) + ZERO_CELSIUS;
        Matcher value = VALUE.matcher(row.text("value"));
        while (value.find()) {
          EquilibriumConstant constant = BY_NAME.get(value.group(1));
          if (constant != null) {
            rows.add(
                Row.ofPrinted(
                    value.group(1) + " at " + temperature.group(1) + " °C",
                    value.group(2),
                    constant.log10(kelvin),
                    row.howKnown()));
          }
        }
      }
    }
    return rows;
  }
}
