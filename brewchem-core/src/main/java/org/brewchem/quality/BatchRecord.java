package org.brewchem.quality;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.StructuredAnswer;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.MapEntries;

/**
 * What was measured and computed for one batch, as it goes into a {@link RecordBook}: plain data
 * with the uncertainties, who entered it and when.
 *
 * @param batch what the batch is called
 * @param beer the beer that it is a batch of
 * @param brewed the day of the brew
 * @param answers the answers, each figure once; one that is unknown says why
 * @param titrant the titrant that was used, as its {@link TitrantRecord} calls it; empty when none
 *     is stated
 * @param who who entered it
 * @param entered when, by the clock of whoever entered it
 * @param correction why it replaces an earlier record of the batch; empty for the first
 */
public record BatchRecord(
    String batch,
    String beer,
    LocalDate brewed,
    List<StructuredAnswer> answers,
    String titrant,
    String who,
    LocalDateTime entered,
    String correction) {

  /**
   * Makes a record.
   *
   * @param batch what the batch is called
   * @param beer the beer that it is a batch of
   * @param brewed the day of the brew
   * @param answers the answers, each figure once; one that is unknown says why
   * @param titrant the titrant that was used; empty when none is stated
   * @param who who entered it
   * @param entered when, by the clock of whoever entered it
   * @param correction why it replaces an earlier record of the batch; empty for the first
   * @throws IllegalArgumentException if batch, beer or who is blank, there is no answer, a figure
   *     comes twice, a number is not finite or an uncertainty negative
   */
  public BatchRecord {
    Checks.notBlank("batch", batch);
    Checks.notBlank("beer of batch " + batch, beer);
    Objects.requireNonNull(brewed, "brewed");
    answers = List.copyOf(answers);
    Objects.requireNonNull(titrant, "titrant");
    Checks.notBlank("who entered batch " + batch, who);
    Objects.requireNonNull(entered, "entered");
    Objects.requireNonNull(correction, "correction");
    if (answers.isEmpty()) {
      throw new IllegalArgumentException(
          "answers of batch "
              + Excerpt.of(batch)
              + ": none is not possible; one or more are needed");
    }
    for (int i = 0; i < answers.size(); i++) {
      RecordRules.checkNumbers("batch " + batch, answers.get(i));
      for (int j = 0; j < i; j++) {
        if (RecordRules.sameFigure(answers.get(i), answers.get(j))) {
          throw new IllegalArgumentException(
              "answers of batch "
                  + Excerpt.of(batch)
                  + ": "
                  + RecordRules.title(answers.get(i))
                  + " comes twice; state each figure once");
        }
      }
    }
  }

  /**
   * Makes the first record of a batch.
   *
   * @param batch what the batch is called
   * @param beer the beer that it is a batch of
   * @param brewed the day of the brew
   * @param who who entered it
   * @param entered when, by the clock of whoever entered it
   * @param answers the answers, one or more, each figure once
   * @return the record, without a titrant
   * @throws IllegalArgumentException if batch, beer or who is blank, there is no answer or a figure
   *     comes twice
   */
  public static BatchRecord of(
      String batch,
      String beer,
      LocalDate brewed,
      String who,
      LocalDateTime entered,
      Answer<?>... answers) {
    Objects.requireNonNull(answers, "answers");
    return new BatchRecord(
        batch,
        beer,
        brewed,
        Arrays.stream(answers).map(Answer::structured).toList(),
        "",
        who,
        entered,
        "");
  }

  /**
   * Adds which titrant the titrations were done with.
   *
   * @param name what its {@link TitrantRecord} calls it
   * @return the record
   * @throws IllegalArgumentException if the name is blank
   */
  public BatchRecord titratedWith(String name) {
    Objects.requireNonNull(name, "name of the titrant");
    Checks.notBlank("titrant of batch " + batch, name);
    return new BatchRecord(batch, beer, brewed, answers, name, who, entered, correction);
  }

  /**
   * Says that this record replaces the one that a book has of the batch. The book keeps both.
   *
   * @param why what was wrong with the earlier one
   * @return the record
   * @throws IllegalArgumentException if the reason is blank
   */
  public BatchRecord correcting(String why) {
    Objects.requireNonNull(why, "why it corrects");
    Checks.notBlank("correction of batch " + batch, why);
    return new BatchRecord(batch, beer, brewed, answers, titrant, who, entered, why);
  }

  /**
   * Finds the answer of a figure.
   *
   * @param figure the figure; its name and parameters count, not the unit that it is shown in
   * @return the answer, with the unit that it was recorded in; empty when the record has none
   */
  public Optional<StructuredAnswer> answer(Figure<?> figure) {
    Objects.requireNonNull(figure, "figure");
    return answers.stream().filter(answer -> RecordRules.isOf(figure, answer)).findFirst();
  }

  /**
   * Returns the record as a map of maps, lists, numbers and strings, for JSON, a file or a
   * database. Dates are written as ISO 8601 has them.
   *
   * @return a new map in a fixed order, which {@link #from} reads back without loss
   */
  public Map<String, Object> toMap() {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("batch", batch);
    map.put("beer", beer);
    map.put("brewed", brewed.toString());
    map.put("answers", answers.stream().map(StructuredAnswer::toMap).toList());
    map.put("titrant", titrant);
    map.put("who", who);
    map.put("entered", entered.toString());
    map.put("correction", correction);
    return map;
  }

  /**
   * Reads what {@link #toMap} wrote, also after a way through JSON.
   *
   * @param map the map
   * @return the record, equal to the one written
   * @throws IllegalArgumentException if an entry is missing or of another kind, or a date none
   */
  public static BatchRecord from(Map<String, ?> map) {
    return new BatchRecord(
        MapEntries.text(map, "batch"),
        MapEntries.text(map, "beer"),
        MapEntries.date(map, "brewed"),
        RecordRules.answers(map, "answers"),
        MapEntries.text(map, "titrant"),
        MapEntries.text(map, "who"),
        MapEntries.time(map, "entered"),
        MapEntries.text(map, "correction"));
  }
}
