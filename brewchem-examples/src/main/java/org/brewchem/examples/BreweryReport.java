package org.brewchem.examples;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.pH;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.brewchem.beer.Band;
import org.brewchem.beer.Beer;
import org.brewchem.beer.BeerDose;
import org.brewchem.beer.Comparison;
import org.brewchem.beer.KeyFigure;
import org.brewchem.beer.Origin;
import org.brewchem.beer.Target;
import org.brewchem.beer.UnreachableTargetException;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.Weighing;
import org.brewchem.units.LabUnits;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/**
 * Reads the files of an invented brewery, its water, a standardisation, duplicate titrations of its
 * beers and their targets, and writes a laboratory report: what was found, how sure it is, how it
 * compares with the target, and what would bring it there.
 */
public final class BreweryReport {

  private static final Path FOLDER = Path.of("brewchem-examples", "brewery");
  private static final PH END_POINT = pH(8.2);

  /** The pH of a beer is read to 0.02 (an assumption of this example). */
  private static final double PH_UNCERTAINTY = 0.02;

  /** The portions titrated of a beer: their volume, the pH before, and what each took. */
  private record Portions(Volume sample, PH reading, List<Volume> titres) {}

  private final Path folder;
  private final StringBuilder page = new StringBuilder();

  private BreweryReport(Path folder) {
    this.folder = folder;
  }

  /**
   * Prints the report and writes it as {@code report.md} into the folder of the files.
   *
   * @param arguments the folder; the invented brewery of this module if there is none
   */
  public static void main(String[] arguments) {
    Path folder = arguments.length > 0 ? Path.of(arguments[0]) : FOLDER;
    try {
      String report = new BreweryReport(folder).write();
      Files.writeString(folder.resolve("report.md"), report);
      System.out.print(report);
    } catch (FileFaultException | IOException fault) {
      System.err.println(fault.getMessage());
      System.exit(1);
    }
  }

  private String write() {
    page.append("# Laboratory report\n\n")
        .append("Invented brewery, invented data. Computed by brewchem.\n");
    Water water = water();
    Titrant lye = lye();
    Map<String, AcidityResult> acidities = new LinkedHashMap<>();
    Map<String, PH> readings = new LinkedHashMap<>();
    titrations(lye, acidities, readings);
    targets(water, acidities, readings);
    return page.toString();
  }

  private Water water() {
    Sheet table = Sheet.read(folder, "water.csv");
    WaterReport report =
        WaterReport.reported()
            .calcium(concentration(table, "calcium", 0))
            .magnesium(concentration(table, "magnesium", 0))
            .sodium(concentration(table, "sodium", 0))
            .potassium(concentration(table, "potassium", 0))
            .alkalinityAsCaCO3(concentration(table, "alkalinity as CaCO3", 0))
            .sulfate(concentration(table, "sulfate", 0))
            .chloride(concentration(table, "chloride", 0))
            .nitrate(concentration(table, "nitrate", 0))
            .pH(table.value("pH", 0, PH::of))
            .build();
    Water water = report.water();
    heading("Brewing water");
    row("figure", "result", "method");
    row("---", "---", "---");
    water
        .totalHardness()
        .optional()
        .ifPresent(h -> row("total hardness", degrees(h.inGermanDegrees()), "from Ca and Mg"));
    water
        .alkalinity()
        .optional()
        .ifPresent(a -> row("alkalinity", degrees(a.inGermanDegrees()), "as reported"));
    water
        .residualAlkalinity()
        .optional()
        .ifPresent(r -> row("residual alkalinity", degrees(r.inGermanDegrees()), "Kolbach 1953"));
    row("sulfate to chloride", water.sulfateToChloride().toString(), "by mass");
    page.append('\n');
    report.notices().forEach(notice -> remark(notice.toString()));
    return water;
  }

  private Titrant lye() {
    Sheet table = Sheet.read(folder, "standardisation.csv");
    List<Weighing> weighings = new ArrayList<>();
    for (int i = 0; i < table.size(); i++) {
      weighings.add(
          Weighing.khp(
              table.quantity(LabUnits.MASS, "potassium hydrogen phthalate", i),
              volume(table, "sodium hydroxide", i)));
    }
    Titrant lye = Titrant.sodiumHydroxide().standardised(weighings.toArray(new Weighing[0]));
    heading("Titrant");
    page.append(lye).append("\n\n");
    lye.standardisation().ifPresent(s -> s.notices().forEach(notice -> remark(notice.toString())));
    return lye;
  }

  private void titrations(
      Titrant lye, Map<String, AcidityResult> acidities, Map<String, PH> readings) {
    Sheet table = Sheet.read(folder, "titrations.csv", "beer");
    Map<String, Portions> beers = new LinkedHashMap<>();
    for (int i = 0; i < table.size(); i++) {
      Volume sample = volume(table, "sample", i);
      PH reading = table.value("pH", i, PH::of);
      beers
          .computeIfAbsent(
              table.text("beer", i), name -> new Portions(sample, reading, new ArrayList<>()))
          .titres()
          .add(volume(table, "sodium hydroxide", i));
    }
    heading("Titratable acidity");
    page.append(
        "Degassed beer titrated with standardised alkali to pH 8.2, stated as lactic acid.\n\n");
    row("beer", "pH", "acidity", "replicates");
    row("---", "---", "---", "---");
    beers.forEach(
        (beer, portions) -> {
          List<Volume> volumes = portions.titres();
          readings.put(beer, portions.reading());
          AcidityResult result =
              lye.titrate(portions.sample())
                  .to(END_POINT)
                  .took(volumes.toArray(new Volume[0]))
                  .acidity();
          acidities.put(beer, result);
          row(
              beer,
              String.format(Locale.ROOT, "%.2f", portions.reading().value()),
              result.as(Acid.LACTIC).toString(),
              result.relativeDifference().isPresent()
                  ? String.format(
                      Locale.ROOT,
                      "%d, differing by %.1f %%",
                      volumes.size(),
                      100 * result.relativeDifference().getAsDouble())
                  : String.valueOf(volumes.size()));
        });
    page.append('\n');
    acidities.values().stream()
        .flatMap(result -> result.notices().stream())
        .map(Object::toString)
        .distinct()
        .forEach(this::remark);
  }

  private void targets(
      Water water, Map<String, AcidityResult> acidities, Map<String, PH> readings) {
    Sheet table = Sheet.read(folder, "targets.csv", "beer");
    for (int i = 0; i < table.size(); i++) {
      String name = table.text("beer", i);
      AcidityResult result = acidities.get(name);
      PH reading = readings.get(name);
      if (result == null || reading == null) {
        throw table.unknown("beer", i, "beer of titrations.csv");
      }
      Beer beer = beer(water, result, reading);
      Target target = target(table, i);
      heading(name);
      comparison(target, target.compare(beer.keyFigures()));
      dose(beer, target, volume(table, "tank", i));
    }
  }

  private static Beer beer(Water water, AcidityResult result, PH reading) {
    Beer beer =
        Beer.of(reading, result.value())
            .withStandardUncertainties(
                PH_UNCERTAINTY,
                TitratableAcidity.ofMilliequivalentsPerLitre(
                    result.budget().traced().standardUncertainty().orElseThrow(), END_POINT));
    if (water.calcium().isStated()) {
      beer = beer.with(Ion.CALCIUM, water.calcium().value(), Origin.TAKEN_FROM_WATER);
    }
    if (water.sulfate().isStated() && water.chloride().isStated()) {
      beer =
          beer.with(Ion.SULFATE, water.sulfate().value(), Origin.TAKEN_FROM_WATER)
              .with(Ion.CHLORIDE, water.chloride().value(), Origin.TAKEN_FROM_WATER);
    }
    return beer;
  }

  private static Target target(Sheet table, int i) {
    return Target.named(table.text("beer", i))
        .withPH(
            Band.between(
                table.value("pH at least", i, PH::of), table.value("pH at most", i, PH::of)))
        .withAcidity(
            Band.between(
                asLactic(table, "acidity at least", i), asLactic(table, "acidity at most", i)))
        .withSulfateToChloride(
            Band.between(
                table.<Double>value("sulfate to chloride at least", i, Double::valueOf),
                table.<Double>value("sulfate to chloride at most", i, Double::valueOf)))
        .withCalcium(
            Band.between(
                concentration(table, "calcium at least", i),
                concentration(table, "calcium at most", i)));
  }

  private void comparison(Target target, Comparison comparison) {
    Map<KeyFigure, String> limits = new EnumMap<>(KeyFigure.class);
    target.pH().ifPresent(band -> limits.put(KeyFigure.PH, band.toString()));
    target.acidity().ifPresent(band -> limits.put(KeyFigure.TITRATABLE_ACIDITY, asLactic(band)));
    target
        .sulfateToChloride()
        .ifPresent(band -> limits.put(KeyFigure.SULFATE_TO_CHLORIDE, band.toString()));
    target.calcium().ifPresent(band -> limits.put(KeyFigure.CALCIUM, band.toString()));
    row("figure", "found", "limits", "verdict");
    row("---", "---", "---", "---");
    for (Comparison.Row found : comparison.rows()) {
      row(
          found.kind().toString(),
          found.figure().map(Object::toString).orElse("not known"),
          limits.getOrDefault(found.kind(), "none"),
          found.verdict().toString());
    }
    page.append('\n');
  }

  private static String asLactic(Band<TitratableAcidity> band) {
    return String.format(
        Locale.ROOT,
        "%.2f to %.2f g/L as lactic acid",
        band.lower().orElseThrow().inGramsPerLitreAs(Acid.LACTIC),
        band.upper().orElseThrow().inGramsPerLitreAs(Acid.LACTIC));
  }

  /** Where the acidity lies below its band: the lactic acid that brings it to the middle. */
  private void dose(Beer beer, Target target, Volume tank) {
    Band<TitratableAcidity> band = target.acidity().orElseThrow();
    TitratableAcidity middle =
        band.lower().orElseThrow().plus(band.upper().orElseThrow()).times(0.5);
    if (beer.acidity().compareTo(band.lower().orElseThrow()) >= 0) {
      page.append("No dose: the acidity is not below its band.\n\n");
      return;
    }
    Reagent lactic = Reagent.of(Acid.LACTIC, massPercent(80));
    try {
      BeerDose dose = beer.dose(lactic).into(tank).to(middle);
      page.append("```\n").append(dose.explain()).append("\n```\n\n");
      dose.cautions().forEach(this::remark);
    } catch (UnreachableTargetException unreachable) {
      remark(String.valueOf(unreachable.getMessage()));
    }
  }

  private void heading(String text) {
    page.append("\n## ").append(text).append("\n\n");
  }

  private void row(String... cells) {
    page.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }

  private void remark(String text) {
    page.append("- ").append(text).append('\n');
  }

  private static String degrees(double german) {
    return String.format(Locale.ROOT, "%.1f °dH", german);
  }

  private static TitratableAcidity asLactic(Sheet table, String column, int row) {
    return acidity(concentration(table, column, row), Acid.LACTIC, END_POINT);
  }

  private static MassConcentration concentration(Sheet table, String column, int row) {
    return table.quantity(LabUnits.MASS_CONCENTRATION, column, row);
  }

  private static Volume volume(Sheet table, String column, int row) {
    return table.quantity(LabUnits.VOLUME, column, row);
  }
}
