package org.brewchem.quality;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.brewchem.figure.Answer;
import org.brewchem.figure.StructuredAnswer;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.MapEntries;

/**
 * What a titrant was found to be on one day, as it goes into a {@link RecordBook}. A titrant that
 * is standardised again gets another record under the same name.
 *
 * @param titrant what the bottle is called
 * @param concentration its concentration, stated and above 0, with its uncertainty where known
 * @param found the day on which it was found
 * @param who who entered it
 * @param entered when, by the clock of whoever entered it
 */
public record TitrantRecord(
    String titrant,
    StructuredAnswer concentration,
    LocalDate found,
    String who,
    LocalDateTime entered) {

  /**
   * Makes a record.
   *
   * @param titrant what the bottle is called
   * @param concentration its concentration, stated and above 0, with its uncertainty where known
   * @param found the day on which it was found
   * @param who who entered it
   * @param entered when, by the clock of whoever entered it
   * @throws IllegalArgumentException if titrant or who is blank, or the concentration is unknown or
   *     not above 0
   */
  public TitrantRecord {
    Checks.notBlank("titrant", titrant);
    Objects.requireNonNull(concentration, "concentration");
    Objects.requireNonNull(found, "found");
    Checks.notBlank("who entered titrant " + titrant, who);
    Objects.requireNonNull(entered, "entered");
    RecordRules.checkNumbers("titrant " + titrant, concentration);
    if (concentration.number().isEmpty()) {
      throw new IllegalArgumentException(
          "concentration of titrant "
              + Excerpt.of(titrant)
              + ": unknown is not possible; a number is needed ("
              + String.join("; ", concentration.whyUnknown())
              + ")");
    }
    Checks.positive(
        "concentration of titrant " + titrant,
        concentration.number().getAsDouble(),
        concentration.unit());
  }

  /**
   * Makes a record of an answer.
   *
   * @param titrant what the bottle is called
   * @param concentration its concentration, as the titrant answers it
   * @param found the day on which it was found
   * @param who who entered it
   * @param entered when, by the clock of whoever entered it
   * @return the record
   * @throws IllegalArgumentException if titrant or who is blank, or the concentration is unknown
   */
  public static TitrantRecord of(
      String titrant, Answer<?> concentration, LocalDate found, String who, LocalDateTime entered) {
    return new TitrantRecord(titrant, concentration.structured(), found, who, entered);
  }

  /**
   * Returns the record as a map of maps, lists, numbers and strings, for JSON, a file or a
   * database. Dates are written as ISO 8601 has them.
   *
   * @return a new map in a fixed order, which {@link #from} reads back without loss
   */
  public Map<String, Object> toMap() {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("titrant", titrant);
    map.put("concentration", concentration.toMap());
    map.put("found", found.toString());
    map.put("who", who);
    map.put("entered", entered.toString());
    return map;
  }

  /**
   * Reads what {@link #toMap} wrote, also after a way through JSON.
   *
   * @param map the map
   * @return the record, equal to the one written
   * @throws IllegalArgumentException if an entry is missing or of another kind, or a date none
   */
  public static TitrantRecord from(Map<String, ?> map) {
    return new TitrantRecord(
        MapEntries.text(map, "titrant"),
        RecordRules.answer(map, "concentration"),
        MapEntries.date(map, "found"),
        MapEntries.text(map, "who"),
        MapEntries.time(map, "entered"));
  }
}
