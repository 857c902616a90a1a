package org.brewchem.examples;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.brewchem.solution.Figures.titratableAcidity;
import static org.brewchem.water.WaterFigures.RESIDUAL_ALKALINITY;
import static org.brewchem.water.WaterFigures.TOTAL_HARDNESS;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Comparison;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Target;
import org.brewchem.figure.Verdict;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.readers.FileFaultException;
import org.brewchem.solution.SolutionCode;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.Weighing;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Portion;
import org.brewchem.treatment.UnreachableException;
import org.brewchem.units.LabUnits;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/**
 * Reads the files of an invented brewery, its water, a standardisation, duplicate titrations of its
 * beers and their targets, and writes a laboratory report: what was found, how sure it is, how it
 * stands to the target, what would bring it there, and how it would stand then.
 */
public final class BreweryReport {

  private static final Path FOLDER = Path.of("brewchem-examples", "brewery");
  private static final PH END_POINT = pH(8.2);
  private static final Figure<TitratableAcidity> ACIDITY = titratableAcidity(END_POINT);

  /** The pH of a beer is read to 0.02 (an assumption of this example). */
  private static final double PH_UNCERTAINTY = 0.02;

  /** 80 % lactic acid may hold 76 to 84 % (EU specification, from memory): 5 % as a rectangle. */
  private static final double ASSAY_UNCERTAINTY = 0.05 / Math.sqrt(3);

  private static final Scale<Hardness> HARDNESS =
      Scale.of("°dH", Hardness::inGermanDegrees, Hardness::ofGermanDegrees, 1);
  private static final Scale<CarbonateAlkalinity> ALKALINITY =
      Scale.of(
          "°dH", CarbonateAlkalinity::inGermanDegrees, CarbonateAlkalinity::ofGermanDegrees, 1);

  /** What to do about a figure that acid does not put right. */
  private static final Map<Figure<?>, Map<Verdict, String>> ADVICE =
      Map.of(
          SULFATE_TO_CHLORIDE,
          Map.of(
              Verdict.ABOVE, "less sulfate or more chloride in the brewing water of the next brew",
              Verdict.BELOW, "more sulfate or less chloride in the brewing water of the next brew"),
          CALCIUM,
          Map.of(
              Verdict.ABOVE, "less of the calcium salt, or softer brewing water, in the next brew",
              Verdict.BELOW, "a calcium salt in the brewing water of the next brew"),
          ACIDITY,
          Map.of(Verdict.ABOVE, "a blend with a beer of less acidity"),
          PH_VALUE,
          Map.of(
              Verdict.ABOVE, "acid, if the titratable acidity allows it",
              Verdict.BELOW, "a blend with a beer of higher pH"));

  /** The portions titrated of a beer: their volume, the pH before, and what each took. */
  private record Portions(Volume sample, PH reading, List<Volume> titres) {}

  private final Path folder;
  private final StringBuilder page = new StringBuilder();
  private final Set<Caution> cautions = new LinkedHashSet<>();
  private final Set<String> said = new HashSet<>();

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
    Map<String, Beer> beers = titrations(lye, water);
    targets(beers);
    heading("What to mind");
    cautions.forEach(caution -> item(caution.text()));
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
            .alkalinityAsCaCO3(alkalinityAsCaCO3(table))
            .sulfate(concentration(table, "sulfate", 0))
            .chloride(concentration(table, "chloride", 0))
            .nitrate(concentration(table, "nitrate", 0))
            .pH(table.value("pH", 0, number -> pH(number)))
            .build();
    Water water = report.water();
    heading("Brewing water");
    row("figure", "result", "how");
    row("---", "---", "---");
    row("total hardness", water.answer(TOTAL_HARDNESS).in(HARDNESS), "from calcium and magnesium");
    row("alkalinity", water.alkalinity().in(ALKALINITY), "as reported");
    row(
        "residual alkalinity",
        water.answer(RESIDUAL_ALKALINITY).in(Scales.RESIDUAL_ALKALINITY_IN_GERMAN_DEGREES),
        "Kolbach 1953");
    row("sulfate to chloride", water.sulfateToChloride(), "from the report");
    page.append('\n');
    notices(report.notices());
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
    lye.standardisation().ifPresent(s -> notices(s.notices()));
    return lye;
  }

  private Map<String, Beer> titrations(Titrant lye, Water water) {
    Sheet table = Sheet.read(folder, "titrations.csv", "beer");
    Map<String, Portions> portions = new LinkedHashMap<>();
    for (int i = 0; i < table.size(); i++) {
      Volume sample = volume(table, "sample", i);
      PH reading = table.value("pH", i, number -> pH(number));
      portions
          .computeIfAbsent(
              table.text("beer", i), name -> new Portions(sample, reading, new ArrayList<>()))
          .titres()
          .add(volume(table, "sodium hydroxide", i));
    }
    heading("Titratable acidity");
    page.append("Degassed beer titrated with standardised alkali.\n\n");
    row("beer", "acidity", "replicates");
    row("---", "---", "---");
    Map<String, Beer> beers = new LinkedHashMap<>();
    Set<Notice> notices = new LinkedHashSet<>();
    portions.forEach(
        (name, portion) -> {
          AcidityResult result =
              lye.titrate(portion.sample())
                  .to(END_POINT)
                  .took(portion.titres().toArray(new Volume[0]))
                  .acidity();
          notices.addAll(result.notices());
          row(name, result.as(Acid.LACTIC), replicates(result, portion.titres().size()));
          beers.put(
              name,
              Beer.of(portion.reading(), result)
                  .withStandardUncertaintyOfPH(PH_UNCERTAINTY)
                  .brewedWith(water));
        });
    page.append('\n');
    notices(List.copyOf(notices));
    return beers;
  }

  private static String replicates(AcidityResult result, int count) {
    return result.relativeDifference().isPresent()
        ? String.format(
            Locale.ROOT,
            "%d, differing by %.1f %%",
            count,
            100 * result.relativeDifference().getAsDouble())
        : String.valueOf(count);
  }

  private void targets(Map<String, Beer> beers) {
    Sheet table = Sheet.read(folder, "targets.csv", "beer");
    for (int i = 0; i < table.size(); i++) {
      String name = table.text("beer", i);
      Beer beer = beers.get(name);
      if (beer == null) {
        throw table.unknown("beer", i, "beer of titrations.csv");
      }
      Target target = target(table, i);
      heading(name);
      Comparison found = target.compare(beer);
      comparison("found", found);
      if (found.of(ACIDITY).orElseThrow().excess().orElseThrow() < 0) {
        dose(beer, target, volume(table, "tank", i));
      } else {
        page.append("No acid: the acidity is not below its limits.\n\n");
        advice(found);
      }
      notices(beer.notices());
    }
  }

  private static Target target(Sheet table, int i) {
    return Target.named(table.text("beer", i))
        .with(
            Constraint.between(
                PH_VALUE,
                table.value("pH at least", i, number -> pH(number)),
                table.value("pH at most", i, number -> pH(number))))
        .with(
            Constraint.between(
                ACIDITY,
                asLactic(table, "acidity at least", i),
                asLactic(table, "acidity at most", i)))
        .with(
            Constraint.between(
                SULFATE_TO_CHLORIDE,
                table.<Double>value("sulfate to chloride at least", i, Double::valueOf),
                table.<Double>value("sulfate to chloride at most", i, Double::valueOf)))
        .with(
            Constraint.between(
                CALCIUM,
                concentration(table, "calcium at least", i),
                concentration(table, "calcium at most", i)));
  }

  private void comparison(String what, Comparison comparison) {
    row("figure", what, "limits", "verdict");
    row("---", "---", "---", "---");
    for (Comparison.Judgement judgement : comparison.judgements()) {
      row(
          judgement.constraint().figure().name(),
          judgement.answer(),
          judgement.constraint().band(),
          judgement.verdict() + (judgement.byTheValueAlone() ? " (by the value alone)" : ""));
    }
    page.append('\n');
  }

  /** The lactic acid that brings the acidity to the middle of its limits. */
  private void dose(Beer beer, Target target, Volume tank) {
    Constraint limits =
        target.constraints().stream()
            .filter(c -> c.figure().equals(ACIDITY))
            .findFirst()
            .orElseThrow();
    double middle = (limits.lower().orElseThrow() + limits.upper().orElseThrow()) / 2;
    TitratableAcidity aim = ACIDITY.shown().of(middle);
    Reagent lactic =
        Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(ASSAY_UNCERTAINTY);
    try {
      Dose<Beer> dose = Dose.of(beer, lactic).to(ACIDITY, aim);
      Portion portion = dose.into(tank);
      page.append(
          String.format(
              Locale.ROOT,
              "To %s: %s of %s into %.4g hL, that is %s.%n%n",
              ACIDITY.shown().text(middle),
              portion.volume().map(BreweryReport::measured).orElse(portion.mass().toString()),
              lactic,
              tank.inHectolitres(),
              dose.answer(Dose.VOLUME)));
      Comparison after = target.compare(dose.after());
      comparison("after the dose", after);
      advice(after);
      cautions.addAll(dose.cautions());
    } catch (UnreachableException unreachable) {
      item(String.valueOf(unreachable.getMessage()));
    }
  }

  private static String measured(Volume volume) {
    return String.format(Locale.ROOT, "%.0f mL", volume.inMillilitres());
  }

  private void advice(Comparison comparison) {
    for (Comparison.Judgement judgement : comparison.judgements()) {
      String advice =
          ADVICE.getOrDefault(judgement.constraint().figure(), Map.of()).get(judgement.verdict());
      if (advice != null) {
        item(judgement.constraint().figure().name() + ": " + advice);
      }
    }
  }

  /** What was not said before, but for remarks on constants and on ions that only pairs feel. */
  private void notices(List<Notice> notices) {
    notices.stream()
        .filter(notice -> notice.code() != SolutionCode.CONSTANT_RANGE_UNSTATED)
        .filter(notice -> notice.code() != SolutionCode.COUNTED_AS_ABSENT)
        .map(Notice::toString)
        .filter(said::add)
        .forEach(this::item);
  }

  private void heading(String text) {
    page.append("\n## ").append(text).append("\n\n");
  }

  private void row(Object... cells) {
    page.append('|');
    for (Object cell : cells) {
      page.append(' ').append(text(cell)).append(" |");
    }
    page.append('\n');
  }

  private static String text(Object cell) {
    return cell instanceof Answer<?> answer && !answer.isStated() ? "not known" : cell.toString();
  }

  private void item(String text) {
    page.append("- ").append(text).append('\n');
  }

  private static TitratableAcidity asLactic(Sheet table, String column, int row) {
    return acidity(concentration(table, column, row), Acid.LACTIC, END_POINT);
  }

  private static MassConcentration alkalinityAsCaCO3(Sheet table) {
    CarbonateAlkalinity stated = table.quantity(LabUnits.CARBONATE_ALKALINITY, "alkalinity", 0);
    return mgPerL(stated.inMilligramsPerLitreAsCaCO3());
  }

  private static MassConcentration concentration(Sheet table, String column, int row) {
    return table.quantity(LabUnits.MASS_CONCENTRATION, column, row);
  }

  private static Volume volume(Sheet table, String column, int row) {
    return table.quantity(LabUnits.VOLUME, column, row);
  }
}
