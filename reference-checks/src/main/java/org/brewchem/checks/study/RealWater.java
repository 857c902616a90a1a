package org.brewchem.checks.study;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.brewchem.checks.CsvTable;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.water.Constituent;
import org.brewchem.water.WaterCode;
import org.brewchem.water.WaterReport;

/**
 * A published analysis of a real water.
 *
 * @param id as the source has it
 * @param ions mg/L of what is stated, on its basis
 * @param bicarbonate mg/L of HCO3-
 * @param pH the pH
 * @param conductivity µS/cm, as stated
 * @param extra iron, ammonium and manganese where the source has them, mg/L
 */
record RealWater(
    String id,
    Map<Constituent, Double> ions,
    OptionalDouble bicarbonate,
    OptionalDouble pH,
    OptionalDouble conductivity,
    Map<Constituent, Double> extra) {

  /** The sets. */
  static final List<String> SETS = List.of("hupsel", "menominee", "semarang");

  private static final List<Constituent> STATED =
      List.of(
          Constituent.CALCIUM,
          Constituent.MAGNESIUM,
          Constituent.SODIUM,
          Constituent.POTASSIUM,
          Constituent.SULFATE,
          Constituent.CHLORIDE,
          Constituent.NITRATE,
          Constituent.NITRATE_AS_NITROGEN);

  private static final Map<String, Constituent> EXTRA =
      Map.of(
          "Fe", Constituent.IRON,
          "NH4", Constituent.AMMONIUM,
          "Mn", Constituent.MANGANESE);

  static List<RealWater> read(String set) {
    List<RealWater> waters = new ArrayList<>();
    CsvTable table = CsvTable.read("real-waters-" + set + ".csv", rows(set));
    for (CsvTable.Line line : table.lines()) {
      Map<Constituent, Double> ions = new EnumMap<>(Constituent.class);
      for (Constituent constituent : STATED) {
        String column = constituent.heading() + " [mg/L]";
        if (table.has(column) && !line.isEmpty(column)) {
          ions.put(constituent, line.number(column));
        }
      }
      waters.add(
          new RealWater(
              line.text("id"),
              ions,
              optional(table, line, "bicarbonate [mg/L]"),
              optional(table, line, "pH"),
              optional(table, line, "conductivity [µS/cm]"),
              extra(line.text("extra"))));
    }
    return List.copyOf(waters);
  }

  private static int rows(String set) {
    return switch (set) {
      case "hupsel" -> 423;
      case "menominee" -> 19;
      case "semarang" -> 28;
      default -> throw new IllegalStateException(set);
    };
  }

  private static OptionalDouble optional(CsvTable table, CsvTable.Line line, String column) {
    return table.has(column) && !line.isEmpty(column)
        ? OptionalDouble.of(line.number(column))
        : OptionalDouble.empty();
  }

  private static Map<Constituent, Double> extra(String text) {
    Map<Constituent, Double> found = new EnumMap<>(Constituent.class);
    for (String part : text.split(" ")) {
      int at = part.indexOf('=');
      Constituent constituent = at < 0 ? null : EXTRA.get(part.substring(0, at));
      if (constituent != null) {
        found.put(constituent, Double.valueOf(part.substring(at + 1)));
      }
    }
    return found;
  }

  /** Whether all that a balance needs is stated. */
  boolean isJudged() {
    return bicarbonate.isPresent()
        && ions.keySet()
            .containsAll(
                List.of(
                    Constituent.CALCIUM,
                    Constituent.MAGNESIUM,
                    Constituent.SODIUM,
                    Constituent.SULFATE,
                    Constituent.CHLORIDE));
  }

  boolean hasPassed() {
    return isJudged() && has(report(), WaterCode.ION_BALANCE_ACCEPTABLE);
  }

  static boolean has(WaterReport report, WaterCode code) {
    return report.notices().stream().map(Notice::code).anyMatch(code::equals);
  }

  /** The same with one figure changed; left out if the factor is 0. */
  RealWater with(Constituent constituent, double factor) {
    Map<Constituent, Double> changed = new EnumMap<>(ions);
    changed.computeIfPresent(constituent, (same, number) -> factor == 0 ? null : number * factor);
    return new RealWater(id, changed, bicarbonate, pH, conductivity, extra);
  }

  /** The same with another bicarbonate; left out if the factor is 0. */
  RealWater withBicarbonate(double factor) {
    return new RealWater(
        id,
        ions,
        factor == 0
            ? OptionalDouble.empty()
            : OptionalDouble.of(bicarbonate.orElseThrow() * factor),
        pH,
        conductivity,
        extra);
  }

  WaterReport report() {
    return builder().build();
  }

  /** With conductivity, and with the iron, ammonium and manganese that conduct too. */
  WaterReport conducting(double factor) {
    WaterReport.Builder report = builder();
    extra.forEach((ion, number) -> report.concentration(ion, mgPerL(number)));
    return report
        .conductivity(
            Conductivity.ofMicrosiemensPerCentimetreAt25(factor * conductivity.orElseThrow()))
        .build();
  }

  private WaterReport.Builder builder() {
    WaterReport.Builder report = WaterReport.reported();
    ions.forEach((ion, number) -> report.concentration(ion, mgPerL(number)));
    bicarbonate.ifPresent(number -> report.bicarbonate(mgPerL(number)));
    pH.ifPresent(number -> report.pH(PH.of(number)));
    return report;
  }

  static MassConcentration mgPerL(double number) {
    return MassConcentration.ofMilligramsPerLitre(number);
  }
}
