package org.brewchem.quality;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Target;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.MapEntries;

/**
 * A target as it stands from a day on, as it goes into a {@link RecordBook}. Earlier versions stay:
 * a batch is judged by the one of its day.
 *
 * @param target the target; its name is the same in all versions
 * @param version counted from 1
 * @param validFrom the first day on which it holds, which may be still to come
 * @param who who entered it
 * @param entered when, by the clock of whoever entered it
 */
public record TargetVersion(
    Target target, int version, LocalDate validFrom, String who, LocalDateTime entered) {

  /**
   * Makes a version.
   *
   * @param target the target; its name is the same in all versions
   * @param version counted from 1
   * @param validFrom the first day on which it holds, which may be still to come
   * @param who who entered it
   * @param entered when, by the clock of whoever entered it
   * @throws IllegalArgumentException if the version is below 1, who is blank, or the target has no
   *     limits
   */
  public TargetVersion {
    Objects.requireNonNull(target, "target");
    Checks.inRange("version of target " + target.name(), version, "", 1, Integer.MAX_VALUE);
    Objects.requireNonNull(validFrom, "valid from");
    Checks.notBlank("who entered target " + target.name(), who);
    Objects.requireNonNull(entered, "entered");
    if (target.constraints().isEmpty()) {
      throw new IllegalArgumentException(
          "target "
              + Excerpt.of(target.name())
              + ": no limits are not possible; one or more are needed");
    }
  }

  /**
   * Returns the version as a map of maps, lists, numbers and strings, for JSON, a file or a
   * database. Dates are written as ISO 8601 has them.
   *
   * @return a new map in a fixed order, which {@link #from} reads back without loss
   */
  public Map<String, Object> toMap() {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("target", target.name());
    map.put("version", version);
    map.put("validFrom", validFrom.toString());
    map.put("who", who);
    map.put("entered", entered.toString());
    map.put("limits", target.constraints().stream().map(Constraint::toMap).toList());
    return map;
  }

  /**
   * Reads what {@link #toMap} wrote, also after a way through JSON.
   *
   * @param map the map
   * @param known the figures among which those of its limits are looked for
   * @return the version, equal to the one written
   * @throws IllegalArgumentException if an entry is missing or of another kind, a date none, or a
   *     figure not known
   */
  public static TargetVersion from(Map<String, ?> map, Collection<? extends Figure<?>> known) {
    Target target = Target.named(MapEntries.text(map, "target"));
    for (Map<String, Object> limits : MapEntries.maps(map, "limits")) {
      target = target.with(Constraint.from(limits, known));
    }
    return new TargetVersion(
        target,
        MapEntries.whole(map, "version"),
        MapEntries.date(map, "validFrom"),
        MapEntries.text(map, "who"),
        MapEntries.time(map, "entered"));
  }

  @Override
  public String toString() {
    return target.name() + ", version " + version + ", from " + validFrom + ", by " + who;
  }
}
