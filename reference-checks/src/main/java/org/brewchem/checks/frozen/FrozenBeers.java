package org.brewchem.checks.frozen;

import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.beer.Beer;
import org.brewchem.checks.CsvTable;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Comparison;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Target;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.treatment.Blend;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Portion;

/** Beers: figures, targets, the stand-in buffer, doses and blends. */
final class FrozenBeers {

  /** Relative standard uncertainty of the other ions where that of calcium is stated. */
  private static final double ION_SHARE = 0.04;

  private FrozenBeers() {}

  static void compute(FrozenFigures figures) {
    for (CsvTable.Line line : beers().lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      Beer beer = beer(line);
      beer(of, beer);
      for (CsvTable.Line target : CsvTable.read("frozen/targets.csv", 6).lines()) {
        of.attempt(
            target.text("id"),
            () -> target(target).compare(beer),
            comparison -> comparison(of, target.text("id"), comparison));
      }
    }
    titrated(figures, "determination 01");
    titrated(figures, "determination 04");
    for (CsvTable.Line line : CsvTable.read("frozen/beer-doses.csv", 48).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt(
          "dose",
          () -> dose(line),
          dose -> dose(of, dose, Volume.ofHectolitres(line.number("volume"))));
    }
    for (CsvTable.Line line : CsvTable.read("frozen/beer-blends.csv", 21).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt("blend", () -> blend(line), blend -> blend(of, blend, total(line)));
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
          beer.withStandardUncertaintyOfPH(line.number("u_pH"))
              .withStandardUncertaintyOfAcidity(asLactic(line.number("u_acidity"), endPoint));
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
              ? beer.with(Ion.CALCIUM, mgPerL(line, "calcium"))
              : beer.with(Ion.CALCIUM, mgPerL(line, "calcium"), mgPerL(line, "u_calcium"));
    }
    beer = with(beer, line, "magnesium", Ion.MAGNESIUM);
    beer = with(beer, line, "sulfate", Ion.SULFATE);
    beer = with(beer, line, "chloride", Ion.CHLORIDE);
    return line.isEmpty("water")
        ? beer
        : beer.brewedWith(FrozenWaters.water(line.text("water")).water());
  }

  private static Beer with(Beer beer, CsvTable.Line line, String column, Ion ion) {
    if (line.isEmpty(column)) {
      return beer;
    }
    MassConcentration stated = mgPerL(line, column);
    return line.isEmpty("u_calcium")
        ? beer.with(ion, stated)
        : beer.with(ion, stated, stated.times(ION_SHARE));
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
    figures(of, "", beer);
    notices(of, beer.notices());
    of.attempt(
        "buffering",
        beer::solution,
        solution -> {
          of.number("pH of the solution", "", solution.pH().value());
          of.number(
              "acidity of the solution",
              "g/L",
              asLactic(solution.titratableAcidity(endPoint(beer))));
          of.number(
              "buffer capacity",
              "mEq/L per pH",
              solution.bufferCapacity(beer.pH().value()).inMilliequivalentsPerLitrePerPH());
        });
  }

  private static PH endPoint(Beer beer) {
    return beer.titratableAcidity().value().endPoint();
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

  private static void notices(FrozenFigures.Of of, List<Notice> notices) {
    of.text(
        "findings", notices.stream().map(notice -> (Enum<?>) notice.code()).distinct().toList());
  }

  private static void figures(FrozenFigures.Of of, String when, Beer beer) {
    figure(of, "pH" + when, "", beer.pH());
    figure(
        of, "acidity" + when, "mEq/L", beer.titratableAcidity().in(Scales.acidity(endPoint(beer))));
    figure(of, "sulfate to chloride" + when, "", beer.sulfateToChloride());
    figure(of, "calcium" + when, "mg/L", beer.calcium());
  }

  private static void figure(FrozenFigures.Of of, String name, String unit, Answer<?> answer) {
    if (answer.isStated()) {
      of.uncertain(name, unit, answer.number(), answer.standardUncertainty());
      of.text(name + ": origin", answer.origin());
    } else {
      of.number(name, unit, OptionalDouble.empty());
    }
  }

  private static Figure<TitratableAcidity> acidity(PH endPoint) {
    return Figures.titratableAcidity(endPoint).shownIn(Scales.acidity(endPoint));
  }

  private static Target target(CsvTable.Line line) {
    double endPoint = line.number("end_point");
    return Target.named(line.text("id"))
        .with(
            Constraint.between(
                Figures.PH_VALUE, PH.of(line.number("pH_low")), PH.of(line.number("pH_high"))))
        .with(
            Constraint.between(
                acidity(PH.of(endPoint)),
                asLactic(line.number("acidity_low"), endPoint),
                asLactic(line.number("acidity_high"), endPoint)))
        .with(
            Constraint.between(
                Figures.SULFATE_TO_CHLORIDE, line.number("ratio_low"), line.number("ratio_high")))
        .with(
            Constraint.between(
                Figures.CALCIUM, mgPerL(line, "calcium_low"), mgPerL(line, "calcium_high")));
  }

  private static void comparison(FrozenFigures.Of of, String target, Comparison comparison) {
    for (Comparison.Judgement judgement : comparison.judgements()) {
      Figure<?> figure = judgement.constraint().figure();
      boolean isAcidity = figure.name().equals("titratable acidity");
      String name = target + ": " + (isAcidity ? "acidity" : figure.name());
      of.text(name, judgement.verdict());
      of.number(
          name + " from band",
          isAcidity ? "mEq/L" : figure.equals(Figures.CALCIUM) ? "mg/L" : "",
          judgement.excess());
    }
    of.text(target + ": all within", comparison.allWithin());
  }

  private static Dose<Beer> dose(CsvTable.Line line) {
    Beer beer = beer(line.text("beer"));
    Dose.Request<Beer> request = Dose.of(beer, FrozenSubstances.reagent(line.text("reagent")));
    double value = line.number("value");
    return line.text("target").equals("pH")
        ? request.to(PH.of(value))
        : request.to(asLactic(value, endPoint(beer).value()));
  }

  private static void dose(FrozenFigures.Of of, Dose<Beer> dose, Volume volume) {
    Portion tank = dose.into(volume);
    Portion hectolitre = dose.into(Volume.ofHectolitres(1));
    of.number("amount", "mol", tank.amount().inMoles());
    of.number("mass", "g", tank.mass().inGrams());
    of.number("volume", "mL", tank.volume(), Volume::inMillilitres);
    of.number("mass for 1 hL", "g", hectolitre.mass().inGrams());
    of.number("volume for 1 hL", "mL", hectolitre.volume(), Volume::inMillilitres);
    Beer after = dose.after();
    figures(of, " after", after);
    of.number("acidity after as lactic acid", "g/L", asLactic(after.titratableAcidity().value()));
    of.number("equivalents per mole in the beer", "", dose.delivered().value());
    of.number("equivalents per mole at the end point", "", dose.delivered(endPoint(after)).value());
    freeCalcium(of, "free calcium before", dose.before());
    freeCalcium(of, "free calcium after", after);
    notices(of, dose.notices());
    of.number("cautions", "", dose.cautions().size());
  }

  private static void freeCalcium(FrozenFigures.Of of, String name, Beer beer) {
    of.number(
        name,
        "mg/L",
        beer.answer(Figures.free(Ion.CALCIUM)).optional(),
        MassConcentration::inMilligramsPerLitre);
  }

  private static Blend<Beer> blend(CsvTable.Line line) {
    Beer first = beer(line.text("first"));
    Blend.Request<Beer> request = Blend.of(first, beer(line.text("second")));
    double value = line.number("value");
    return switch (line.text("by")) {
      case "volumes" ->
          request.volumes(Volume.ofHectolitres(line.number("volume")), Volume.ofHectolitres(value));
      case "pH" -> request.to(PH.of(value));
      case "acidity" -> request.to(asLactic(value, endPoint(first).value()));
      default -> throw new IllegalStateException(line.text("by"));
    };
  }

  private static Volume total(CsvTable.Line line) {
    double volume = line.number("volume");
    return Volume.ofHectolitres(
        line.text("by").equals("volumes") ? volume + line.number("value") : volume);
  }

  private static void blend(FrozenFigures.Of of, Blend<Beer> blend, Volume total) {
    of.number("volume of the first", "L", blend.ofFirst(total).inLitres());
    of.number("volume of the second", "L", blend.ofSecond(total).inLitres());
    of.number("share of the first", "", blend.shareOfFirst());
    Beer after = blend.after();
    figures(of, "", after);
    of.number("acidity as lactic acid", "g/L", asLactic(after.titratableAcidity().value()));
    notices(of, blend.notices());
    of.number("cautions", "", blend.cautions().size());
  }
}
