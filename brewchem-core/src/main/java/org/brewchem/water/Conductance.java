package org.brewchem.water;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.internal.ClosedForms;
import org.brewchem.internal.DataTable;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Conductivity;
import org.brewchem.solution.Figures;
import org.brewchem.solution.SolutionCode;
import org.brewchem.substance.Ion;

/** The conductivity of a water from its ions. */
final class Conductance {

  private static final Scale<Conductivity> MICROSIEMENS =
      Scale.of(
          "µS/cm at 25 °C",
          Conductivity::inMicrosiemensPerCentimetreAt25,
          Conductivity::ofMicrosiemensPerCentimetreAt25,
          0);

  private static final List<Ion> MAIN =
      List.of(
          Ion.CALCIUM,
          Ion.MAGNESIUM,
          Ion.SODIUM,
          Ion.POTASSIUM,
          Ion.SULFATE,
          Ion.CHLORIDE,
          Ion.NITRATE);

  private static final List<Constituent> MINOR =
      List.of(
          Constituent.AMMONIUM,
          Constituent.IRON,
          Constituent.MANGANESE,
          Constituent.NITRITE,
          Constituent.FLUORIDE,
          Constituent.PHOSPHATE);

  private Conductance() {}

  private static Map<String, Double> limiting() {
    Map<String, Double> limiting = new HashMap<>();
    for (DataTable.Row row : DataTable.read(Conductance.class, "limiting-conductivities.csv")) {
      limiting.put(row.text("ion"), row.number("siemens_square_centimetres_per_equivalent"));
    }
    return limiting;
  }

  private static double of(Map<String, Double> limiting, String ion) {
    Double value = limiting.get(ion);
    if (value == null) {
      throw new IllegalStateException("limiting-conductivities.csv: no row for " + ion);
    }
    return value;
  }

  static Figure<Conductivity> figure() {
    Map<String, Double> limiting = limiting();
    List<Figure<?>> main = new ArrayList<>();
    List<Figure<?>> minor = new ArrayList<>();
    double[] milliequivalents = new double[MAIN.size() + 1 + MINOR.size()];
    double[] conductivities = new double[milliequivalents.length];
    double[] charges = new double[milliequivalents.length];
    int k = 0;
    for (Ion ion : MAIN) {
      main.add(Figures.concentration(ion));
      milliequivalents[k] = ion.milliequivalentsPerMilligram();
      conductivities[k] = of(limiting, ion.name());
      charges[k++] = Math.abs(ion.charge());
    }
    main.add(Figures.CARBONATE_ALKALINITY);
    milliequivalents[k] =
        1 / CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();
    conductivities[k] = of(limiting, "bicarbonate");
    charges[k++] = 1;
    for (Constituent constituent : MINOR) {
      minor.add(constituent.figure());
      milliequivalents[k] = constituent.milliequivalentsPerMilligram();
      conductivities[k] = of(limiting, constituent.heading());
      charges[k++] =
          constituent == Constituent.PHOSPHATE
              ? 1
              : Math.abs(constituent.ion().orElseThrow().charge());
    }
    minor.add(Figures.PH_VALUE);
    double hydrogen = of(limiting, "hydrogen");
    return ClosedForm.countingAbsent(
        "conductivity",
        MICROSIEMENS,
        "sum of limiting conductivity x equivalents x y^2, y of a univalent ion by Davies",
        "Standard Methods 2510, from memory; limiting conductivities CRC, from memory",
        SolutionCode.COUNTED_AS_ABSENT,
        main,
        minor,
        x -> sum(x, milliequivalents, conductivities, charges, hydrogen));
  }

  private static double sum(
      double[] x,
      double[] milliequivalents,
      double[] conductivities,
      double[] charges,
      double hydrogen) {
    double infinite = 0;
    double strength = 0;
    for (int i = 0; i < milliequivalents.length; i++) {
      double equivalents = milliequivalents[i] * x[i];
      infinite += conductivities[i] * equivalents;
      strength += charges[i] * equivalents / 2000;
    }
    double y = ClosedForms.univalentActivityCoefficient(Math.max(0, strength));
    double pH = x[milliequivalents.length];
    // An unknown pH arrives as 0; hydrogen ions then count as none.
    double protons = pH == 0 ? 0 : hydrogen * 1000 * Math.pow(10, -pH) / y;
    return (infinite + protons) * y * y;
  }
}
