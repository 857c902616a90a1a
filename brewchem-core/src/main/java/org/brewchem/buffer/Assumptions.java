package org.brewchem.buffer;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.brewchem.figure.Notice;
import org.brewchem.uncertainty.Source;

/** What leaves no trace in readings and was assumed, each with the uncertainty assumed. */
final class Assumptions {

  private final FitInputs inputs;

  Assumptions(GridFit grid) {
    inputs = grid.inputs();
  }

  List<Notice> notices(boolean calciumKnown, boolean magnesiumKnown) {
    List<Notice> notices = new ArrayList<>();
    if (inputs.metals().isEmpty() && !(calciumKnown && magnesiumKnown)) {
      notices.add(
          Notice.of(
              BufferCode.METALS_ASSUMED,
              "calcium and magnesium",
              String.format(
                  Locale.ROOT,
                  "%s not measured and assumed as in a typical beer, u %.0f %%",
                  calciumKnown
                      ? "magnesium was"
                      : magnesiumKnown ? "calcium was" : "calcium and magnesium were",
                  100 * TypicalBeer.metals().get(0).relativeSpread())));
    }
    electrode(notices);
    titrants(notices);
    if (inputs.salt().isEmpty()) {
      notices.add(
          Notice.of(
              BufferCode.SALT_ASSUMED,
              Usual.SALT.toString(),
              String.format(
                  Locale.ROOT,
                  "background salt was not stated and is assumed to be %.0f mmol/kg, u %.0f mmol/kg",
                  1000 * Usual.SALT.value(),
                  1000 * Usual.SALT.standardUncertainty())));
    }
    if (inputs.carbonDioxide().isEmpty()) {
      notices.add(
          Notice.of(
              BufferCode.CARBON_DIOXIDE_ASSUMED,
              Usual.CARBON_DIOXIDE.toString(),
              String.format(
                  Locale.ROOT,
                  "the sample is assumed to have been degassed, %.2g g/L of carbon dioxide left,"
                      + " u %.2g g/L; more would leave no sure trace",
                  Usual.CARBON_DIOXIDE.value(),
                  Usual.CARBON_DIOXIDE.standardUncertainty())));
    }
    return notices;
  }

  private void electrode(List<Notice> notices) {
    if (!inputs.electrodeCounts()) {
      return;
    }
    List<String> assumed = new ArrayList<>();
    if (inputs.zero().isEmpty()) {
      assumed.add(
          String.format(Locale.ROOT, "%s u %.2g pH", Usual.ZERO, Usual.ZERO.standardUncertainty()));
    }
    if (inputs.slope().isEmpty()) {
      assumed.add(
          String.format(
              Locale.ROOT, "%s u %.2g %%", Usual.SLOPE, 100 * Usual.SLOPE.standardUncertainty()));
    }
    if (!assumed.isEmpty()) {
      notices.add(
          Notice.of(
              BufferCode.ELECTRODE_ASSUMED,
              "electrode",
              "assumed as after a calibration: " + String.join(", ", assumed)));
    }
  }

  private void titrants(List<Notice> notices) {
    Set<String> assumed = new LinkedHashSet<>();
    for (BufferReadings leg : inputs.readings()) {
      for (Source source : leg.assumed()) {
        double u = source.standardUncertainty().orElseThrow();
        assumed.add(String.format(Locale.ROOT, "%s, u %.2g %%", source.name(), 100 * u));
      }
    }
    if (!assumed.isEmpty()) {
      notices.add(
          Notice.of(
              BufferCode.TITRANT_ASSUMED,
              "titrant and sample",
              "assumed: " + String.join("; ", assumed)));
    }
  }
}
