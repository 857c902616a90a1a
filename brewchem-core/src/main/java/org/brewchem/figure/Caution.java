package org.brewchem.figure;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.internal.DataTable;

/**
 * A usual caution about work with acids, lye, lime, gas or food. It does not replace the supplier's
 * safety data sheet, local codes or a trained person, and the texts say so.
 *
 * @param hazard what can hurt
 * @param text what to mind
 */
public record Caution(Hazard hazard, String text) {

  private static final Map<Hazard, List<Caution>> BY_HAZARD = read();

  /**
   * Makes a caution.
   *
   * @param hazard what can hurt
   * @param text what to mind
   * @throws IllegalArgumentException if the text is blank
   */
  public Caution {
    Objects.requireNonNull(hazard, "hazard");
    Checks.notBlank("text", text);
  }

  /**
   * Returns the cautions of hazards.
   *
   * @param hazards what can hurt; the same one twice counts once
   * @return an unmodifiable list, hazard by hazard in their order
   */
  public static List<Caution> of(List<Hazard> hazards) {
    return hazards.stream().distinct().flatMap(h -> all(h).stream()).toList();
  }

  private static List<Caution> all(Hazard hazard) {
    return BY_HAZARD.getOrDefault(hazard, List.of());
  }

  private static Map<Hazard, List<Caution>> read() {
    Map<Hazard, List<Caution>> all = new EnumMap<>(Hazard.class);
    for (DataTable.Row row : DataTable.read(Caution.class, "cautions.csv")) {
      Hazard hazard = Hazard.valueOf(row.text("hazard").toUpperCase(Locale.ROOT));
      all.computeIfAbsent(hazard, h -> new ArrayList<>())
          .add(new Caution(hazard, row.text("text")));
    }
    return all;
  }

  @Override
  public String toString() {
    return text;
  }
}
