package org.brewchem.water;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UsualRange;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Figures;

/** Judges the readings of a report by what is usual in a water, to catch slips of typing. */
final class UsualWater {

  private static final String TITRATION =
      Figures.titrationAlkalinity(TitrationAlkalinity.USUAL_END_POINT).name();

  private static final double CACO3_PER_MILLIEQUIVALENT =
      CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();

  private static final Map<Figure<?>, UsualRange> RANGES = ranges();

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
