package org.brewchem.examples;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.pH;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.pictures.Picture;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.ElectricPotential;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.readers.FileFaultException;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.PrimaryBuffer;
import org.brewchem.substance.Solute;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.CalibrationReading;
import org.brewchem.titration.ElectrodeCalibration;
import org.brewchem.titration.Reading;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.TitrationLog;
import org.brewchem.titration.Weighing;
import org.brewchem.units.LabUnits;

/**
 * A day in an invented laboratory: lye and acid are standardised, the electrode is calibrated, a
 * beer is titrated in duplicate in both directions. Out come a laboratory report with its
 * uncertainty budget, the beer's buffer with what it predicts of a dose, and two pictures.
 */
public final class LaboratoryDay {

  private static final Path FOLDER = Path.of("brewchem-examples", "laboratory");
  private static final Temperature BATH = celsius(20);
  private static final Volume SAMPLE = mL(50);
  private static final PH END_POINT = pH(8.2);
  private static final double[] DOSES_GRAMS_PER_LITRE = {0.3, 1.0, 3.0};
  private static final double LOWEST_PLOTTED = 3;
  private static final double HIGHEST_PLOTTED = 9;
  private static final int PLOTTED = 121;

  private final Path folder;
  private final StringBuilder page = new StringBuilder();

  private LaboratoryDay(Path folder) {
    this.folder = folder;
  }

  /**
   * Prints the report and writes it and the pictures into the folder of the files.
   *
   * @param arguments the folder; the invented laboratory of this module if there is none
   */
  public static void main(String[] arguments) {
    System.setProperty("java.awt.headless", "true");
    Path folder = arguments.length > 0 ? Path.of(arguments[0]) : FOLDER;
    try {
      System.out.print(new LaboratoryDay(folder).run());
    } catch (FileFaultException | IOException fault) {
      System.err.println(fault.getMessage());
      System.exit(1);
    }
  }

  private String run() throws IOException {
    page.append(
        "# Laboratory report\n\nInvented laboratory, invented data. Computed by brewchem.\n");
    Titrant lye = Titrant.sodiumHydroxide().standardised(weighings("alkali.csv"));
    Titrant acid = Titrant.hydrochloricAcid().standardised(weighings("acid.csv"));
    heading("Titrants");
    page.append("- ").append(lye).append("\n- ").append(acid).append("\n");
    ElectrodeCalibration electrode = calibration();
    heading("Electrode");
    page.append(electrode).append('\n');
    electrode.notices().forEach(notice -> page.append("- ").append(notice).append('\n'));

    Map<String, TitrationLog> logs = logs(electrode, lye, acid);
    List<TitrationLog> up = starting(logs, "alkali");
    AcidityResult result = up.get(0).acidity(up.subList(1, up.size()).toArray(new TitrationLog[0]));
    heading("Titratable acidity");
    page.append(result.as(Acid.LACTIC))
        .append("\n\n```\n")
        .append(result.budget())
        .append("\n```\n");
    result.notices().forEach(notice -> page.append("- ").append(notice).append('\n'));

    MeasuredBuffer buffer = buffer(logs);
    heading("Buffer");
    page.append(buffer).append("\n\n| lactic acid | pH becomes |\n| --- | --- |\n");
    for (double dose : DOSES_GRAMS_PER_LITRE) {
      Answer<PH> predicted =
          buffer.pHAfter(
              Acid.LACTIC, AmountConcentration.from(gPerL(dose), Acid.LACTIC.molarMass()));
      page.append("| ").append(gPerL(dose)).append(" | ").append(predicted).append(" |\n");
    }
    heading("Cautions");
    Caution.of(
            List.of(
                Hazard.ACID,
                Hazard.LYE,
                Hazard.LABORATORY,
                Hazard.CARBON_DIOXIDE,
                Hazard.DOSING_FOOD,
                Hazard.TASTING))
        .forEach(caution -> page.append("- ").append(caution).append('\n'));
    Files.writeString(folder.resolve("report.md"), page);
    curve(logs, buffer, lye, acid).save(folder.resolve("curve.png"));
    capacity(buffer).save(folder.resolve("capacity.png"));
    return page.toString();
  }

  /** The titration of the folder's beer, with its fitted buffer. */
  static Picture curve(Path folder) {
    LaboratoryDay day = new LaboratoryDay(folder);
    Titrant lye = Titrant.sodiumHydroxide().standardised(day.weighings("alkali.csv"));
    Titrant acid = Titrant.hydrochloricAcid().standardised(day.weighings("acid.csv"));
    Map<String, TitrationLog> logs = day.logs(day.calibration(), lye, acid);
    return curve(logs, buffer(logs), lye, acid);
  }

  /** The buffer capacity of the folder's beer. */
  static Picture capacity(Path folder) {
    LaboratoryDay day = new LaboratoryDay(folder);
    Titrant lye = Titrant.sodiumHydroxide().standardised(day.weighings("alkali.csv"));
    Titrant acid = Titrant.hydrochloricAcid().standardised(day.weighings("acid.csv"));
    return capacity(buffer(day.logs(day.calibration(), lye, acid)));
  }

  private static MeasuredBuffer buffer(Map<String, TitrationLog> logs) {
    return MeasuredBuffer.from(
        logs.values().stream().map(TitrationLog::bufferReadings).toArray(BufferReadings[]::new));
  }

  private void heading(String text) {
    page.append("\n## ").append(text).append("\n\n");
  }

  private Weighing[] weighings(String file) {
    Sheet table = Sheet.read(folder, file);
    boolean alkali = table.has("potassium hydrogen phthalate");
    String standard = alkali ? "potassium hydrogen phthalate" : "sodium carbonate";
    String titrant = alkali ? "sodium hydroxide" : "hydrochloric acid";
    Weighing[] weighings = new Weighing[table.size()];
    for (int i = 0; i < weighings.length; i++) {
      Mass mass = table.quantity(LabUnits.MASS, standard, i);
      Volume titre = table.quantity(LabUnits.VOLUME, titrant, i);
      weighings[i] = alkali ? Weighing.khp(mass, titre) : Weighing.sodiumCarbonate(mass, titre);
    }
    return weighings;
  }

  private ElectrodeCalibration calibration() {
    Sheet table = Sheet.read(folder, "calibration.csv", "buffer");
    CalibrationReading[] readings = new CalibrationReading[table.size()];
    for (int i = 0; i < readings.length; i++) {
      PrimaryBuffer buffer =
          switch (table.text("buffer", i)) {
            case "phthalate" -> PrimaryBuffer.PHTHALATE;
            case "phosphate" -> PrimaryBuffer.PHOSPHATE;
            case "carbonate" -> PrimaryBuffer.CARBONATE;
            default -> throw table.unknown("buffer", i, "buffer known here");
          };
      readings[i] = CalibrationReading.of(buffer, potential(table, i));
    }
    return ElectrodeCalibration.of(BATH, readings);
  }

  private Map<String, TitrationLog> logs(
      ElectrodeCalibration electrode, Titrant lye, Titrant acid) {
    Sheet table = Sheet.read(folder, "log.csv", "portion");
    Map<String, List<double[]>> portions = new LinkedHashMap<>();
    for (int i = 0; i < table.size(); i++) {
      PH read = electrode.pH(potential(table, i), BATH);
      Volume added = table.quantity(LabUnits.VOLUME, "added", i);
      portions
          .computeIfAbsent(table.text("portion", i), name -> new ArrayList<>())
          .add(new double[] {added.inMillilitres(), read.value()});
    }
    Map<String, TitrationLog> logs = new LinkedHashMap<>();
    portions.forEach(
        (name, readings) ->
            logs.put(
                name,
                (name.startsWith("alkali") ? lye : acid)
                    .titrate(SAMPLE)
                    .to(name.startsWith("alkali") ? END_POINT : pH(3))
                    .at(BATH)
                    .log(column(readings, 0), column(readings, 1))));
    return logs;
  }

  private static ElectricPotential potential(Sheet table, int row) {
    return table.quantity(LabUnits.ELECTRIC_POTENTIAL, "electrode", row);
  }

  private static double[] column(List<double[]> rows, int index) {
    return rows.stream().mapToDouble(row -> row[index]).toArray();
  }

  private static List<TitrationLog> starting(Map<String, TitrationLog> logs, String with) {
    return logs.entrySet().stream()
        .filter(entry -> entry.getKey().startsWith(with))
        .map(Map.Entry::getValue)
        .toList();
  }

  /** Both legs on one axis, acid to the left, with the titration of the fitted buffer. */
  static Picture curve(
      Map<String, TitrationLog> logs, MeasuredBuffer buffer, Titrant lye, Titrant acid) {
    Picture picture =
        Picture.of(
                "Titration of an invented beer, " + SAMPLE,
                "alkali added, of acid to the left [mL of 0.1 mol/L]",
                "pH")
            .limitAcross("end point, pH 8.2", END_POINT.value());
    double most = 0;
    double least = 0;
    for (Map.Entry<String, TitrationLog> entry : logs.entrySet()) {
      double sign = entry.getKey().startsWith("alkali") ? 1 : -1;
      List<Reading> readings = entry.getValue().readings();
      double[] added =
          readings.stream().mapToDouble(r -> sign * r.volume().inMillilitres()).toArray();
      double[] read = readings.stream().mapToDouble(r -> r.pH().value()).toArray();
      picture = picture.points(entry.getKey(), added, read);
      most = Math.max(most, added[added.length - 1]);
      least = Math.min(least, added[added.length - 1]);
    }
    double[] up = even(0, most);
    double[] down = even(0, -least);
    double[] fittedUp = simulated(buffer, lye, Base.SODIUM_HYDROXIDE).pHAfter(up);
    double[] fittedDown = simulated(buffer, acid, Acid.HYDROCHLORIC).pHAfter(down);
    double[] added = new double[2 * PLOTTED - 1];
    double[] fitted = new double[2 * PLOTTED - 1];
    for (int i = 0; i < PLOTTED; i++) {
      added[PLOTTED - 1 - i] = -down[i];
      fitted[PLOTTED - 1 - i] = fittedDown[i];
      added[PLOTTED - 1 + i] = up[i];
      fitted[PLOTTED - 1 + i] = fittedUp[i];
    }
    return picture.line("fitted buffer", added, fitted);
  }

  private static SimulatedTitration simulated(
      MeasuredBuffer buffer, Titrant titrant, Solute substance) {
    Solution beer = buffer.solution();
    return SimulatedTitration.of(
        beer, Solution.at(BATH).with(substance, titrant.concentration().value()), SAMPLE);
  }

  /** The capacity with its interval; the axis starts at zero, for its height is the resistance. */
  static Picture capacity(MeasuredBuffer buffer) {
    double[] at = even(LOWEST_PLOTTED, HIGHEST_PLOTTED);
    double[] value = new double[PLOTTED];
    double[] lower = new double[PLOTTED];
    double[] upper = new double[PLOTTED];
    for (int i = 0; i < PLOTTED; i++) {
      var capacity = buffer.bufferCapacity(pH(at[i])).expanded().orElseThrow();
      value[i] = capacity.value();
      lower[i] = capacity.lower();
      upper[i] = capacity.upper();
    }
    double start = buffer.pH().number();
    return Picture.of("Buffer capacity of the same beer", "pH", "buffer capacity [mEq/L per pH]")
        .across(LOWEST_PLOTTED, HIGHEST_PLOTTED)
        .upFromZero()
        .band("interval, k = 2", at, lower, upper)
        .line("measured buffer", at, value)
        .limitUp(
            String.format(Locale.ROOT, "the beer, pH %.2f: acid read below, alkali above", start),
            start);
  }

  private static double[] even(double from, double to) {
    double[] places = new double[PLOTTED];
    for (int i = 0; i < PLOTTED; i++) {
      places[i] = from + (to - from) * i / (PLOTTED - 1);
    }
    return places;
  }
}
