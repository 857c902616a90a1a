package org.brewchem.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.water.BasisReading;
import org.brewchem.water.Constituent;
import org.brewchem.water.WaterReport;

/** The rows of a table as the reports of laboratories, to be judged like one. Immutable. */
final class RowReports {

  /** A cell such as "&lt; 0.5", which a reader of numbers cannot take. */
  private final Table table;

  private final WaterColumns columns;
  private final Temperature temperature;

  RowReports(Table table, WaterColumns columns, Temperature temperature) {
    this.table = table;
    this.columns = columns;
    this.temperature = temperature;
  }

  /**
   * The report that a row is. What stands in a cell and cannot be used is left out; {@link
   * #notices(int)} names it.
   */
  WaterReport report(int index) {
    return report(index, new ArrayList<>());
  }

  private WaterReport report(int index, List<Failure> unused) {
    WaterReport.Builder report = WaterReport.reported();
    columns.constituents.forEach(
        (constituent, input) -> state(report, constituent, input, index, unused));
    columns.alkalinity.ifPresent(
        input -> {
          if (usable(input, index, unused)) {
            alkalinity(report, input, index);
          }
        });
    columns.pH.ifPresent(input -> pH(report, input, index, unused));
    WaterColumns.Side side = columns.side;
    usable(side.conductivity(), index, unused)
        .ifPresent(
            number -> report.conductivity(Conductivity.ofMicrosiemensPerCentimetreAt25(number)));
    usable(side.totalHardness(), index, unused)
        .ifPresent(number -> report.totalHardness(Hardness.ofMilligramsPerLitreAsCaCO3(number)));
    usable(side.dryResidue(), index, unused)
        .ifPresent(number -> report.dryResidue(MassConcentration.ofMilligramsPerLitre(number)));
    return report.build();
  }

  private static void state(
      WaterReport.Builder report,
      Constituent constituent,
      Input input,
      int index,
      List<Failure> unused) {
    OptionalDouble limit = input.column().limit(index);
    if (limit.isPresent()) {
      double milligrams =
          input.inUnits(limit.getAsDouble()) * constituent.statedMolarMass().inGramsPerMole();
      try {
        report.below(constituent, MassConcentration.ofMilligramsPerLitre(milligrams));
      } catch (IllegalArgumentException e) {
        unused.add(input.notPossible(index, e));
      }
    } else if (usable(input, index, unused)) {
      AmountConcentration amount = AmountConcentration.ofMillimolesPerLitre(input.at(index));
      OptionalDouble u = input.traced(index).standardUncertainty();
      if (u.isPresent()) {
        report.concentration(
            constituent, amount, AmountConcentration.ofMillimolesPerLitre(u.getAsDouble()));
      } else {
        report.concentration(constituent, amount);
      }
    }
  }

  private void alkalinity(WaterReport.Builder report, Input input, int index) {
    CarbonateAlkalinity alkalinity =
        CarbonateAlkalinity.ofMilliequivalentsPerLitre(input.at(index));
    OptionalDouble u = input.traced(index).standardUncertainty();
    if (columns.isBicarbonate()) {
      MassConcentration bicarbonate = asBicarbonate(alkalinity);
      if (u.isPresent()) {
        report.bicarbonate(
            bicarbonate,
            asBicarbonate(CarbonateAlkalinity.ofMilliequivalentsPerLitre(u.getAsDouble())));
      } else {
        report.bicarbonate(bicarbonate);
      }
    } else if (u.isPresent()) {
      report.alkalinity(
          alkalinity, CarbonateAlkalinity.ofMilliequivalentsPerLitre(u.getAsDouble()));
    } else {
      report.alkalinity(alkalinity);
    }
  }

  private static MassConcentration asBicarbonate(CarbonateAlkalinity alkalinity) {
    return MassConcentration.ofMilligramsPerLitre(alkalinity.inMilligramsPerLitreAsBicarbonate());
  }

  private void pH(WaterReport.Builder report, Input input, int index, List<Failure> unused) {
    if (!usable(input, index, unused)) {
      return;
    }
    PH measured = PH.of(input.at(index));
    OptionalDouble u = input.traced(index).standardUncertainty();
    if (u.isPresent()) {
      report.pH(measured, temperature, u.getAsDouble());
    } else {
      report.pH(measured, temperature);
    }
  }

  private static Optional<Double> usable(Optional<Input> input, int index, List<Failure> unused) {
    return input.filter(each -> usable(each, index, unused)).map(each -> each.at(index));
  }

  private static boolean usable(Input input, int index, List<Failure> unused) {
    Failure fault = input.fault(index);
    Failure unusable = fault == null ? input.uncertaintyFault(index) : fault;
    if (unusable != null && !(unusable instanceof Failure.Missing)) {
      unused.add(unusable);
    }
    return fault == null;
  }

  /** What is odd about one row, with its number. */
  List<Notice> notices(int index) {
    List<Failure> unused = new ArrayList<>();
    WaterReport report = report(index, unused);
    long number = table.row(index);
    List<Notice> notices = new ArrayList<>();
    for (Failure failure : unused) {
      notices.add(
          Notice.ofRow(
              TableCode.CELL_NOT_USED,
              failure.column(),
              number,
              "column \""
                  + failure.column()
                  + "\" is left out of the report: "
                  + failure.reason()));
    }
    notices.addAll(FigureRows.ofRow(number, report.notices()));
    return notices;
  }

  /** What every reading on another basis would do to the balances of each source. */
  List<SourceBasis> bases(List<String> sources) {
    Map<String, Map<String, List<BasisReading>>> readings = new LinkedHashMap<>();
    for (int i = 0; i < table.size(); i++) {
      Map<String, List<BasisReading>> own =
          readings.computeIfAbsent(sources.get(i), source -> new LinkedHashMap<>());
      for (BasisReading reading : report(i).basisReadings()) {
        own.computeIfAbsent(reading.condition(), condition -> new ArrayList<>()).add(reading);
      }
    }
    List<SourceBasis> bases = new ArrayList<>();
    readings.forEach((source, own) -> bases.addAll(BasisOfSource.judge(source, own.values())));
    return List.copyOf(bases);
  }
}
