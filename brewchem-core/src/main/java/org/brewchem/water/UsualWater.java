package org.brewchem.water;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.BalanceFigure;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.uncertainty.Traced;

/** Judges the readings of a report by what is usual in a water, to catch slips of typing. */
final class UsualWater {

  private static final String TITRATION =
      Figures.titrationAlkalinity(TitrationAlkalinity.USUAL_END_POINT).name();

  private static final double CACO3_PER_MILLIEQUIVALENT =
      CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();

  private static final Map<Figure<?>, UsualRange> RANGES = ranges();

  /** What a treatment may make too much of; phosphate comes with the acid, which is known. */
  private static final List<Figure<?>> MAIN_IONS =
      Figure.list(
          Figures.CALCIUM,
          Figures.MAGNESIUM,
          Figures.SODIUM,
          Figures.POTASSIUM,
          Figures.SULFATE,
          Figures.CHLORIDE,
          Figures.NITRATE);

  /** Pressure from which carbon dioxide is said to leave, atm: 24 times that of air; our choice. */
  private static final double WILL_LEAVE = 0.01;

  private UsualWater() {}

  private static Map<Figure<?>, UsualRange> ranges() {
    Map<Figure<?>, UsualRange> ranges = new HashMap<>();
    for (Constituent constituent : Constituent.values()) {
      put(ranges, constituent.figure(), constituent.species());
    }
    put(ranges, Figures.CARBONATE_ALKALINITY, "alkalinity");
    put(ranges, WaterFigures.TOTAL_HARDNESS, "total hardness");
    put(ranges, WaterFigures.CONDUCTIVITY, "conductivity");
    put(ranges, Figures.PH_VALUE, "pH");
    return Map.copyOf(ranges);
  }

  private static void put(Map<Figure<?>, UsualRange> ranges, Figure<?> figure, String quantity) {
    UsualRange.find(quantity + " of a water").ifPresent(range -> ranges.put(figure, range));
  }

  /** What is unusual about a water after a treatment. */
  static List<Notice> afterTreatment(Liquid water) {
    List<Notice> all = new ArrayList<>();
    for (Figure<?> figure : MAIN_IONS) {
      judged(water, figure).ifPresent(all::add);
    }
    if (water.contents().whyOpen().isEmpty()) {
      judged(water, Figures.PH_VALUE).ifPresent(all::add);
      double atmospheres = carbonDioxidePressure(water.contents()).inAtmospheres();
      if (atmospheres > WILL_LEAVE) {
        all.add(
            Notice.of(
                WaterCode.CARBON_DIOXIDE_LEAVES,
                "pH",
                "the water holds carbon dioxide of "
                    + NumberText.significant(atmospheres, 2)
                    + " atm, far more than the air: its pH is that of a closed vessel, and rises where it"
                    + " stands open or is heated"));
      }
    }
    return all;
  }

  /** The number alone: to trace its sources takes a dozen more solutions of the balance. */
  static Pressure carbonDioxidePressure(Contents contents) {
    Figure<Pressure> pressure = Figures.CARBON_DIOXIDE_PRESSURE;
    BalanceFigure rule = (BalanceFigure) pressure.rule();
    return pressure.scale().of(rule.number(contents.equilibria(), contents.kilogramsPerLitre()));
  }

  private static Optional<Notice> judged(Liquid water, Figure<?> figure) {
    UsualRange range = RANGES.get(figure);
    Optional<Traced> found = water.step(figure).found();
    if (range == null || found.isEmpty()) {
      return Optional.empty();
    }
    double value = figure.inShown(found.get()).value();
    return range.holds(value)
        ? Optional.empty()
        : Optional.of(
            Notice.of(
                WaterCode.TREATED_WATER_UNUSUAL,
                figure.title(),
                figure.title()
                    + " of the treated water: "
                    + figure.shown().text(value)
                    + " is unusual in brewing water; usual is "
                    + range.text()));
  }

  /**
   * What is unusual about a reading.
   *
   * @param figure what was read; a titration alkalinity counts as a carbonate alkalinity
   * @param number in the scale of the figure
   */
  static List<Notice> judge(Figure<?> figure, double number) {
    boolean titrated = figure.name().equals(TITRATION);
    return Optional.ofNullable(RANGES.get(titrated ? Figures.CARBONATE_ALKALINITY : figure))
        .flatMap(
            range ->
                range.judge(figure.title(), titrated ? number * CACO3_PER_MILLIEQUIVALENT : number))
        .stream()
        .toList();
  }
}
