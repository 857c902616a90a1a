package org.brewchem.examples.service;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Portion;
import org.brewchem.units.EndPointUnits;
import org.brewchem.units.LabUnits;

/**
 * Takes a beer, an acid as it is bought, a target and a volume, and answers the dose with what the
 * beer is after it and what to mind. A proposal: a person decides and doses.
 */
final class BeerDoseEndpoint {

  private static final EndPointUnits<TitratableAcidity> ACIDITY =
      LabUnits.acidity(List.of(Acid.LACTIC));

  private BeerDoseEndpoint() {}

  static Map<String, Object> answer(Fields request) {
    Beer beer = beer(request);
    Reagent reagent = reagent(request.object("reagent"));
    Volume volume = request.quantity("volume", LabUnits.VOLUME::named);
    Fields target = request.object("target");
    request.end();
    Dose<Beer> dose = dose(request, target, beer, reagent);
    Portion portion = request.at("volume", () -> dose.into(volume));
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put(
        "dose",
        List.of(
            dose.answer(Dose.AMOUNT).structured().toMap(),
            dose.answer(Dose.MASS).structured().toMap(),
            dose.answer(Dose.VOLUME).structured().toMap()));
    answer.put("measureOut", measureOut(portion));
    answer.put(
        "after",
        List.of(
            dose.after().pH().structured().toMap(),
            dose.after().titratableAcidity().structured().toMap()));
    answer.put("notices", Notices.of(dose.notices()));
    answer.put("cautions", dose.cautions().stream().map(Caution::text).distinct().toList());
    return answer;
  }

  private static Beer beer(Fields request) {
    Fields stated = request.object("beer");
    Fields.StatedPH pH = stated.pH("pH");
    Fields.Stated<TitratableAcidity> acidity = stated.read("acidity", ACIDITY::named);
    stated.end();
    Beer read = request.at("beer", () -> Beer.of(pH.value(), acidity.value()));
    Beer beer =
        pH.standardUncertainty().isPresent()
            ? stated.at(
                "pH.standardUncertainty",
                () -> read.withStandardUncertaintyOfPH(pH.standardUncertainty().getAsDouble()))
            : read;
    return acidity
        .standardUncertainty()
        .map(
            u ->
                stated.at(
                    "acidity.standardUncertainty", () -> beer.withStandardUncertaintyOfAcidity(u)))
        .orElse(beer);
  }

  private static Reagent reagent(Fields stated) {
    String name = stated.text("acid");
    double massPercent = stated.number("massPercent");
    OptionalDouble u = stated.optionalNumber("relativeStandardUncertainty");
    stated.end();
    Acid acid = stated.at("acid", () -> Acid.named(name));
    Reagent reagent =
        stated.at("massPercent", () -> Reagent.of(acid, MassFraction.ofMassPercent(massPercent)));
    return u.isPresent()
        ? stated.at(
            "relativeStandardUncertainty", () -> reagent.withAssayUncertainty(u.getAsDouble()))
        : reagent;
  }

  private static Map<String, Object> measureOut(Portion portion) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("mass", Map.of("number", portion.mass().inGrams(), "unit", "g"));
    portion
        .volume()
        .ifPresent(v -> map.put("volume", Map.of("number", v.inMillilitres(), "unit", "mL")));
    return map;
  }

  private static Dose<Beer> dose(Fields request, Fields target, Beer beer, Reagent reagent) {
    boolean byPH = target.has("pH");
    if (byPH == target.has("acidity")) {
      throw RequestException.of(
          "target", null, "pH or acidity", "one of two figures is to be aimed at");
    }
    try {
      if (byPH) {
        PH aim = target.pH("pH").value();
        target.end();
        return request.at("target", () -> Dose.of(beer, reagent).to(aim));
      }
      TitratableAcidity aim = target.quantity("acidity", ACIDITY::named);
      target.end();
      return request.at("target", () -> Dose.of(beer, reagent).to(aim));
    } catch (UnknownFigureException | NoSolutionException unknown) {
      throw RequestException.of("beer", null, unknown);
    }
  }
}
