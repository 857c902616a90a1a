package org.brewchem.checks.frozen;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.beer.AnionEffect;
import org.brewchem.beer.Band;
import org.brewchem.beer.Beer;
import org.brewchem.beer.BeerDose;
import org.brewchem.beer.BeerFinding;
import org.brewchem.beer.Blend;
import org.brewchem.beer.BlendRequest;
import org.brewchem.beer.Comparison;
import org.brewchem.beer.DoseRequest;
import org.brewchem.beer.Figure;
import org.brewchem.beer.KeyFigures;
import org.brewchem.beer.Origin;
import org.brewchem.beer.Target;
import org.brewchem.checks.CsvTable;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;

/** Beers: key figures, targets, the stand-in buffer, doses and blends. */
final class FrozenBeers {

  private FrozenBeers() {}

  static void compute(FrozenFigures figures) {
    for (CsvTable.Line line : beers().lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      Beer beer = beer(line);
      beer(of, beer);
      for (CsvTable.Line target : CsvTable.read("frozen/targets.csv", 6).lines()) {
        of.attempt(
            target.text("id"),
            () -> target(target).compare(beer.keyFigures()),
            comparison -> comparison(of, target.text("id"), comparison));
      }
    }
    titrated(figures, "determination 01");
    titrated(figures, "determination 04");
    for (CsvTable.Line line : CsvTable.read("frozen/beer-doses.csv", 48).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt("dose", () -> dose(line), dose -> dose(of, dose));
    }
    for (CsvTable.Line line : CsvTable.read("frozen/beer-blends.csv", 21).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt("blend", () -> blend(line), blend -> blend(of, blend));
    }
  }

  private static CsvTable beers() {
    return CsvTable.read("frozen/beers.csv", 24);
  }

  private static Beer beer(String id) {
    return beer(beers().only("id", id));
  }

  private static TitratableAcidity asLactic(double gramsPerLitre, double endPoint) {
    return TitratableAcidity.ofGramsPerLitreAs(gramsPerLitre, Acid.LACTIC, PH.of(endPoint));
  }

  private static double asLactic(TitratableAcidity acidity) {
    return acidity.inGramsPerLitreAs(Acid.LACTIC);
  }

  private static MassConcentration mgPerL(CsvTable.Line line, String column) {
    return MassConcentration.ofMilligramsPerLitre(line.number(column));
  }

  private static Beer beer(CsvTable.Line line) {
    double endPoint = line.number("end_point");
    Beer beer = Beer.of(PH.of(line.number("pH")), asLactic(line.number("acidity"), endPoint));
    if (!line.isEmpty("u_pH")) {
      beer =
          beer.withStandardUncertainties(
              line.number("u_pH"), asLactic(line.number("u_acidity"), endPoint));
    }
    if (!line.isEmpty("temperature")) {
      beer = beer.measuredAt(Temperature.ofCelsius(line.number("temperature")));
    }
    beer = beer.under(chemistry(line.text("chemistry")));
    if (!line.isEmpty("buffer")) {
      beer = beer.buffered(FrozenBuffers.buffer(line.text("buffer")));
    }
    if (!line.isEmpty("calcium")) {
      beer =
          line.isEmpty("u_calcium")
              ? beer.with(Ion.CALCIUM, mgPerL(line, "calcium"), Origin.MEASURED_IN_BEER)
              : beer.with(
                  Ion.CALCIUM,
                  mgPerL(line, "calcium"),
                  mgPerL(line, "u_calcium"),
                  Origin.MEASURED_IN_BEER);
    }
    beer = with(beer, line, "magnesium", Ion.MAGNESIUM);
    beer = with(beer, line, "sulfate", Ion.SULFATE);
    beer = with(beer, line, "chloride", Ion.CHLORIDE);
    return line.isEmpty("water")
        ? beer
        : beer.brewedWith(FrozenWaters.water(line.text("water")).water());
  }

  private static Beer with(Beer beer, CsvTable.Line line, String column, Ion ion) {
    return line.isEmpty(column)
        ? beer
        : beer.with(ion, mgPerL(line, column), Origin.MEASURED_IN_BEER);
  }

  private static Chemistry chemistry(String name) {
    return switch (name) {
      case "standard" -> Chemistry.standard();
      case "ideal" -> Chemistry.of(Level.IDEAL);
      case "activity" -> Chemistry.of(Level.ACTIVITY);
      default -> throw new IllegalStateException(name);
    };
  }

  private static void beer(FrozenFigures.Of of, Beer beer) {
    keyFigures(of, "", beer.keyFigures());
    findings(of, beer.findings());
    of.attempt(
        "buffering",
        beer::solution,
        solution -> {
          PH lower = PH.of(beer.pH().value() - 0.3);
          of.number("pH of the solution", "", solution.pH().value());
          of.number(
              "acidity of the solution",
              "g/L",
              asLactic(solution.titratableAcidity(beer.acidity().endPoint())));
          of.number(
              "buffer capacity",
              "mEq/L per pH",
              solution.bufferCapacity(beer.pH()).inMilliequivalentsPerLitrePerPH());
          of.text("extrapolated 0.3 lower", beer.buffering().extrapolatedAt(lower).isPresent());
        });
  }

  private static void titrated(FrozenFigures figures, String determination) {
    FrozenFigures.Of of = figures.of("beer titrated in " + determination);
    of.attempt(
        "beer",
        () ->
            Beer.of(PH.of(4.2), FrozenTitrations.acidity(determination))
                .withStandardUncertaintyOfPH(0.02),
        beer -> beer(of, beer));
  }

  private static void findings(FrozenFigures.Of of, List<BeerFinding> findings) {
    of.text("findings", findings.stream().map(BeerFinding::kind).toList());
  }

  private static void keyFigures(FrozenFigures.Of of, String when, KeyFigures figures) {
    figure(of, "pH" + when, "", figures.pH());
    figure(of, "acidity" + when, "mEq/L", figures.acidity());
    figure(of, "sulfate to chloride" + when, "", figures.sulfateToChloride());
    figure(of, "calcium" + when, "mg/L", figures.calcium());
  }

  private static <V> void figure(
      FrozenFigures.Of of, String name, String unit, Optional<Figure<V>> figure) {
    if (figure.isPresent()) {
      of.uncertain(name, unit, figure.get().number(), figure.get().standardUncertainty());
      of.text(name + ": origin", figure.get().origin());
    } else {
      of.number(name, unit, OptionalDouble.empty());
    }
  }

  private static Target target(CsvTable.Line line) {
    double endPoint = line.number("end_point");
    return Target.named(line.text("id"))
        .withPH(Band.between(PH.of(line.number("pH_low")), PH.of(line.number("pH_high"))))
        .withAcidity(
            Band.between(
                asLactic(line.number("acidity_low"), endPoint),
                asLactic(line.number("acidity_high"), endPoint)))
        .withSulfateToChloride(Band.between(line.number("ratio_low"), line.number("ratio_high")))
        .withCalcium(Band.between(mgPerL(line, "calcium_low"), mgPerL(line, "calcium_high")));
  }

  private static void comparison(FrozenFigures.Of of, String target, Comparison comparison) {
    for (Comparison.Row row : comparison.rows()) {
      String name =
          target
              + ": "
              + switch (row.kind()) {
                case PH -> "pH";
                case TITRATABLE_ACIDITY -> "acidity";
                case SULFATE_TO_CHLORIDE -> "sulfate to chloride";
                case CALCIUM -> "calcium";
              };
      of.text(name, row.verdict());
      of.number(name + " from band", row.kind().unit(), row.differenceFromBand());
    }
    of.text(target + ": all within", comparison.allWithin());
  }

  private static BeerDose dose(CsvTable.Line line) {
    Beer beer = beer(line.text("beer"));
    DoseRequest.InVolume request =
        beer.dose(FrozenSubstances.reagent(line.text("reagent")))
            .into(Volume.ofHectolitres(line.number("volume")));
    double value = line.number("value");
    return line.text("target").equals("pH")
        ? request.to(PH.of(value))
        : request.to(asLactic(value, beer.acidity().endPoint().value()));
  }

  private static void dose(FrozenFigures.Of of, BeerDose dose) {
    of.number("amount", "mol", dose.amount().inMoles());
    of.number("mass", "g", dose.mass().inGrams());
    of.number("volume", "mL", dose.volume(), Volume::inMillilitres);
    of.number("mass for 1 hL", "g", dose.massPerHectolitre().inGrams());
    of.number("volume for 1 hL", "mL", dose.volumePerHectolitre(), Volume::inMillilitres);
    keyFigures(of, " after", dose.after());
    of.number("acidity after as lactic acid", "g/L", asLactic(dose.acidityAfter()));
    of.number("equivalents per mole in the beer", "", dose.equivalentsInBeer());
    of.number("equivalents per mole at the end point", "", dose.equivalentsAtEndPoint());
    of.number("equivalents by definition", "", dose.equivalentsByDefinition());
    AnionEffect anion = dose.anionEffect();
    of.number("anion added", "mg/L", anion.added().inMilligramsPerLitre());
    of.number("sulfate to chloride before", "", anion.sulfateToChlorideBefore());
    of.number("sulfate to chloride with the anion", "", anion.sulfateToChlorideAfter());
    of.number(
        "free calcium before",
        "mg/L",
        anion.freeCalciumBefore(),
        MassConcentration::inMilligramsPerLitre);
    of.number(
        "free calcium after",
        "mg/L",
        anion.freeCalciumAfter(),
        MassConcentration::inMilligramsPerLitre);
    findings(of, dose.findings());
    of.number("cautions", "", dose.cautions().size());
  }

  private static Blend blend(CsvTable.Line line) {
    Beer first = beer(line.text("first"));
    BlendRequest request = first.blendedWith(beer(line.text("second")));
    Volume volume = Volume.ofHectolitres(line.number("volume"));
    double value = line.number("value");
    return switch (line.text("by")) {
      case "volumes" -> request.volumes(volume, Volume.ofHectolitres(value));
      case "pH" -> request.total(volume).to(PH.of(value));
      case "acidity" ->
          request.total(volume).to(asLactic(value, first.acidity().endPoint().value()));
      default -> throw new IllegalStateException(line.text("by"));
    };
  }

  private static void blend(FrozenFigures.Of of, Blend blend) {
    of.number("volume of the first", "L", blend.ofFirst().inLitres());
    of.number("volume of the second", "L", blend.ofSecond().inLitres());
    of.number("share of the first", "", blend.shareOfFirst());
    keyFigures(of, "", blend.after());
    of.number("acidity as lactic acid", "g/L", asLactic(blend.acidity()));
    findings(of, blend.findings());
    of.number("cautions", "", blend.cautions().size());
  }
}
