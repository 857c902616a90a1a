package org.brewchem.examples.service;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.figure.Figure;
import org.brewchem.solution.Figures;
import org.brewchem.units.LabUnits;
import org.brewchem.water.Water;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;

/** Takes a water report, and answers the key figures of the water with its notices. */
final class WaterEndpoint {

  private static final List<Figure<?>> FIGURES =
      List.of(
          Figures.PH_VALUE,
          Figures.CALCIUM,
          Figures.CARBONATE_ALKALINITY,
          WaterFigures.TOTAL_HARDNESS,
          WaterFigures.RESIDUAL_ALKALINITY,
          Figures.SULFATE_TO_CHLORIDE);

  private WaterEndpoint() {}

  static Map<String, Object> answer(Fields request) {
    WaterReport report = report(request);
    Water water = report.water();
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("figures", FIGURES.stream().map(f -> water.answer(f).structured().toMap()).toList());
    answer.put("notices", Notices.of(report.notices()));
    return answer;
  }

  private static WaterReport report(Fields request) {
    WaterReport.Builder report = WaterReport.reported();
    var concentration = LabUnits.MASS_CONCENTRATION;
    request.stated("calcium", concentration, report::calcium, report::calcium);
    request.stated("magnesium", concentration, report::magnesium, report::magnesium);
    request.stated("sodium", concentration, report::sodium, report::sodium);
    request.stated("potassium", concentration, report::potassium, report::potassium);
    request.stated("sulfate", concentration, report::sulfate, report::sulfate);
    request.stated("chloride", concentration, report::chloride, report::chloride);
    request.stated("nitrate", concentration, report::nitrate, report::nitrate);
    request.stated(
        "alkalinity", LabUnits.CARBONATE_ALKALINITY, report::alkalinity, report::alkalinity);
    if (request.has("pH")) {
      Fields.StatedPH pH = request.pH("pH");
      request.at(
          "pH.standardUncertainty",
          () ->
              pH.standardUncertainty().isPresent()
                  ? report.pH(pH.value(), pH.standardUncertainty().getAsDouble())
                  : report.pH(pH.value()));
    }
    request.end();
    return request.at("alkalinity", report::build);
  }
}
