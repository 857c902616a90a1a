package org.brewchem.figure;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.MapEntries;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * An answer as plain data: numbers at full precision, units and codes as text. {@link #toMap} gives
 * maps, lists, numbers and strings only, which any JSON library writes, and {@link #from} reads
 * them back without loss.
 *
 * @param figure the name of the figure
 * @param parameters its parameters
 * @param unit the unit of number and u; empty when there is none
 * @param number the number; empty when it is unknown
 * @param standardUncertainty u, in the unit of the number; empty when it is unknown
 * @param degreesOfFreedom those of u, above 0; empty when u is unknown or taken as given
 * @param origin where the value comes from
 * @param notices the codes of its notices
 * @param whyUnknown why there is no number
 * @param uncertaintiesMissing the inputs that matter and state no uncertainty
 */
public record StructuredAnswer(
    String figure,
    Map<String, String> parameters,
    String unit,
    OptionalDouble number,
    OptionalDouble standardUncertainty,
    OptionalDouble degreesOfFreedom,
    Origin origin,
    List<String> notices,
    List<String> whyUnknown,
    List<String> uncertaintiesMissing) {

  /**
   * Copies what can change.
   *
   * @param figure the name of the figure
   * @param parameters its parameters
   * @param unit the unit of number and u; empty when there is none
   * @param number the number; empty when it is unknown
   * @param standardUncertainty u, in the unit of the number; empty when it is unknown
   * @param degreesOfFreedom those of u, above 0; empty when u is unknown or taken as given
   * @param origin where the value comes from
   * @param notices the codes of its notices
   * @param whyUnknown why there is no number
   * @param uncertaintiesMissing the inputs that matter and state no uncertainty
   */
  public StructuredAnswer {
    Objects.requireNonNull(parameters, "parameters");
    Objects.requireNonNull(number, "number");
    Objects.requireNonNull(standardUncertainty, "standard uncertainty");
    Objects.requireNonNull(degreesOfFreedom, "degrees of freedom");
    Objects.requireNonNull(notices, "notices");
    Objects.requireNonNull(whyUnknown, "why unknown");
    Objects.requireNonNull(uncertaintiesMissing, "uncertainties missing");

    Objects.requireNonNull(figure, "figure");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(origin, "origin");
    parameters = Map.copyOf(parameters);
    notices = List.copyOf(notices);
    whyUnknown = List.copyOf(whyUnknown);
    uncertaintiesMissing = List.copyOf(uncertaintiesMissing);
  }

  static StructuredAnswer of(Answer<?> answer) {
    Optional<Traced> number = answer.isStated() ? Optional.of(answer.traced()) : Optional.empty();
    OptionalDouble u = answer.standardUncertainty();
    double dof = number.map(Traced::degreesOfFreedom).orElse(Double.POSITIVE_INFINITY);
    return new StructuredAnswer(
        answer.figure().name(),
        answer.figure().parameters(),
        answer.unit(),
        number.isPresent() ? OptionalDouble.of(number.get().value()) : OptionalDouble.empty(),
        u,
        u.isEmpty() || Double.isInfinite(dof) ? OptionalDouble.empty() : OptionalDouble.of(dof),
        answer.origin(),
        answer.notices().stream().map(notice -> notice.code().name()).distinct().toList(),
        answer.whyUnknown(),
        number.map(n -> n.missing().stream().map(Source::name).toList()).orElse(List.of()));
  }

  /**
   * Returns the record as a map of maps, lists, numbers and strings; what is empty is left out.
   *
   * @return a new map in a fixed order
   */
  public Map<String, Object> toMap() {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("figure", figure);
    map.put("parameters", parameters);
    map.put("unit", unit);
    number.ifPresent(value -> map.put("number", value));
    standardUncertainty.ifPresent(value -> map.put("standardUncertainty", value));
    degreesOfFreedom.ifPresent(value -> map.put("degreesOfFreedom", value));
    map.put("origin", origin.name());
    map.put("notices", notices);
    map.put("whyUnknown", whyUnknown);
    map.put("uncertaintiesMissing", uncertaintiesMissing);
    return map;
  }

  /**
   * Reads what {@link #toMap} wrote, also after a way through JSON.
   *
   * @param map the map
   * @return the record, equal to the one written
   * @throws IllegalArgumentException if an entry is missing or of another kind
   */
  public static StructuredAnswer from(Map<String, ?> map) {
    return new StructuredAnswer(
        MapEntries.text(map, "figure"),
        MapEntries.textsByName(map, "parameters"),
        MapEntries.text(map, "unit"),
        MapEntries.number(map, "number"),
        MapEntries.number(map, "standardUncertainty"),
        MapEntries.number(map, "degreesOfFreedom"),
        origin(MapEntries.text(map, "origin")),
        MapEntries.texts(map, "notices"),
        MapEntries.texts(map, "whyUnknown"),
        MapEntries.texts(map, "uncertaintiesMissing"));
  }

  private static Origin origin(String text) {
    return Arrays.stream(Origin.values())
        .filter(origin -> origin.name().equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                MapEntries.notPossible(
                    "origin", text, "one of " + Arrays.toString(Origin.values())));
  }
}
