package org.brewchem.water;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.CarbonateClosure;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.uncertainty.Traced;
import org.jspecify.annotations.Nullable;

/**
 * What the readings of a report make of a water: a step to each of them, and contents that give
 * them back.
 */
final class ReportedContents {

  static final Temperature USUAL_TEMPERATURE = Temperature.ofCelsius(25);

  /** The end point of base capacity and p value. */
  static final PH PHENOLPHTHALEIN = PH.of(8.2);

  /** The ions that no report of a brewing water should be without, with their figures. */
  static final Map<Ion, Figure<?>> IONS = ions();

  /** The other ions that a report may state, with their figures. */
  static final Map<Ion, Figure<?>> MINOR_IONS = minorIons();

  /** The figures of a report in its order. */
  static final List<Figure<?>> ORDER =
      Figure.list(
          Figures.CALCIUM,
          Figures.MAGNESIUM,
          Figures.SODIUM,
          Figures.POTASSIUM,
          Figures.CARBONATE_ALKALINITY,
          Figures.SULFATE,
          Figures.CHLORIDE,
          Figures.NITRATE);

  /**
   * Contents of more than so many mol/kg are solved at once, to see whether they have a pH. Our
   * choice, to save the others that time: failures were seen from 10 mol/kg upwards.
   */
  private static final double SURELY_SOLVED = 1;

  private static final double CACO3_PER_EQUIVALENT =
      1000 * CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();

  private final Temperature temperature;
  private final Map<Figure<?>, Step> steps = new LinkedHashMap<>();
  private final @Nullable PH endPoint;

  /**
   * Makes a step of each reading.
   *
   * @param concentrations mg/L of each species, by its name
   * @param alkalinity carbonate alkalinity, mg/L as CaCO3, if it is stated and is to count
   * @param titrated titration alkalinity, mEq/L, if it is stated
   * @param endPoint the end point of the titration
   * @param other titration alkalinity to pH 8.2, mEq/L, if it takes the place of a pH
   * @param pH the pH, if it is stated
   * @param temperature the temperature of the pH
   * @param side what is stated beside these
   * @param carbonDioxide total carbon dioxide, mmol/L, if there is no pH and something says it
   */
  ReportedContents(
      Map<String, Reading> concentrations,
      @Nullable Reading alkalinity,
      @Nullable Reading titrated,
      @Nullable PH endPoint,
      @Nullable Reading other,
      @Nullable Reading pH,
      Temperature temperature,
      SideReadings side,
      @Nullable Reading carbonDioxide) {
    this.temperature = temperature;
    this.endPoint = endPoint;
    IONS.forEach((ion, figure) -> put(figure, concentrations.get(ion.name())));
    MINOR_IONS.forEach((ion, figure) -> put(figure, concentrations.get(ion.name())));
    put(Constituent.SILICA.figure(), concentrations.get("silica"));
    if (titrated != null && endPoint != null) {
      put(Figures.titrationAlkalinity(endPoint), titrated);
      put(Figures.titrationAlkalinity(PHENOLPHTHALEIN), other);
    } else {
      put(Figures.CARBONATE_ALKALINITY, alkalinity);
    }
    put(Figures.PH_VALUE, pH);
    put(Figures.TOTAL_CARBON_DIOXIDE, carbonDioxide);
    put(WaterFigures.TOTAL_HARDNESS, side.find(SideReadings.Kind.TOTAL_HARDNESS).orElse(null));
    put(WaterFigures.CONDUCTIVITY, side.find(SideReadings.Kind.CONDUCTIVITY).orElse(null));
  }

  private void put(Figure<?> figure, @Nullable Reading reading) {
    if (reading != null) {
      steps.put(
          figure,
          reading.step(
              figure.title(),
              figure.scale(),
              reading.number().isPresent()
                  ? UsualWater.judge(figure, reading.number().getAsDouble())
                  : List.of()));
    }
  }

  private static Map<Ion, Figure<?>> ions() {
    Map<Ion, Figure<?>> ions = new LinkedHashMap<>();
    ions.put(Ion.CALCIUM, Figures.CALCIUM);
    ions.put(Ion.MAGNESIUM, Figures.MAGNESIUM);
    ions.put(Ion.SODIUM, Figures.SODIUM);
    ions.put(Ion.POTASSIUM, Figures.POTASSIUM);
    ions.put(Ion.SULFATE, Figures.SULFATE);
    ions.put(Ion.CHLORIDE, Figures.CHLORIDE);
    ions.put(Ion.NITRATE, Figures.NITRATE);
    return ions;
  }

  private static Map<Ion, Figure<?>> minorIons() {
    Map<Ion, Figure<?>> ions = new LinkedHashMap<>();
    for (Constituent constituent : Constituent.values()) {
      constituent
          .ion()
          .filter(ion -> !IONS.containsKey(ion))
          .ifPresent(ion -> ions.put(ion, ReportedFigure.of(ion)));
    }
    return ions;
  }

  /** Each figure that is stated, with its step. */
  Map<Figure<?>, Step> steps() {
    return steps;
  }

  /**
   * The contents; their balance is open, with why, where the readings contradict each other or the
   * balance has no solution.
   */
  Contents closedOrOpen(Chemistry chemistry) {
    List<Notice> unusual =
        steps.values().stream().flatMap(step -> step.notices().stream()).toList();
    try {
      Contents closed = closed(chemistry);
      if (closed.whyOpen().isEmpty() && molality(closed) > SURELY_SOLVED) {
        closed.equilibria().pH();
      }
      return closed.withNotices(unusual);
    } catch (IllegalArgumentException | NoSolutionException contradiction) {
      return bare(chemistry)
          .withUnknown(Component.CARBONATE)
          .open(List.of(String.valueOf(contradiction.getMessage())))
          .withBasis(List.copyOf(steps.values()))
          .withNotices(unusual);
    }
  }

  private static double molality(Contents contents) {
    return contents.totals().values().stream().mapToDouble(Traced::value).sum();
  }

  /**
   * The contents; their balance is open if no alkalinity is stated.
   *
   * @throws IllegalArgumentException if pH and alkalinity contradict each other
   * @throws NoSolutionException if the water has no pH
   */
  Contents closed(Chemistry chemistry) {
    Contents bare = bare(chemistry);
    double kilograms = bare.kilogramsPerLitre();
    Optional<Traced> pH = found(Figures.PH_VALUE);
    List<Step> basis = List.copyOf(steps.values());
    CarbonateClosure closure = CarbonateClosure.of(bare, basis);
    if (endPoint != null) {
      Traced titrated =
          found(Figures.titrationAlkalinity(endPoint)).orElseThrow().times(1 / (1000 * kilograms));
      return pH.isPresent()
          ? closure.byTitration(titrated, endPoint, pH.get())
          : closure.byTitrations(
              titrated,
              endPoint,
              found(Figures.titrationAlkalinity(PHENOLPHTHALEIN))
                  .orElseThrow()
                  .times(1 / (1000 * kilograms)),
              PHENOLPHTHALEIN);
    }
    Optional<Traced> alkalinity =
        found(Figures.CARBONATE_ALKALINITY)
            .map(stated -> stated.times(1 / (CACO3_PER_EQUIVALENT * kilograms)));
    if (alkalinity.isEmpty()) {
      return bare.withUnknown(Component.CARBONATE)
          .open(List.of("alkalinity is not reported"))
          .withBasis(basis);
    }
    Optional<Traced> carbonDioxide =
        found(Figures.TOTAL_CARBON_DIOXIDE).map(stated -> stated.times(1 / (1000 * kilograms)));
    if (carbonDioxide.isPresent()) {
      return closure.byTotal(alkalinity.get(), carbonDioxide.get());
    }
    return pH.isPresent()
        ? closure.byPH(alkalinity.get(), pH.get())
        : closure.byAlkalinity(alkalinity.get());
  }

  private Contents bare(Chemistry chemistry) {
    Contents contents = Contents.pure(temperature, chemistry);
    for (Map.Entry<Ion, Figure<?>> entry : IONS.entrySet()) {
      contents = with(contents, entry.getKey(), found(entry.getValue()));
    }
    for (Map.Entry<Ion, Figure<?>> entry : MINOR_IONS.entrySet()) {
      if (steps.containsKey(entry.getValue())) {
        contents = with(contents, entry.getKey(), found(entry.getValue()));
      }
    }
    return contents;
  }

  private static Contents with(Contents contents, Ion ion, Optional<Traced> stated) {
    Component component = ion.components().keySet().iterator().next();
    double milligramsPerMole = 1000 * ion.molarMass().inGramsPerMole();
    return stated.isPresent()
        ? contents.withTotal(
            component, stated.get().times(1 / (milligramsPerMole * contents.kilogramsPerLitre())))
        : contents.withUnknown(component);
  }

  private Optional<Traced> found(Figure<?> figure) {
    return Optional.ofNullable(steps.get(figure)).flatMap(Step::found);
  }
}
