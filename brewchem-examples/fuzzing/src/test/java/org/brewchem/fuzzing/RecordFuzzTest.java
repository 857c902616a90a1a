package org.brewchem.fuzzing;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.brewchem.figure.Figure;
import org.brewchem.figure.StructuredAnswer;
import org.brewchem.quality.BatchRecord;
import org.brewchem.quality.RecordBook;
import org.brewchem.quality.TargetVersion;
import org.brewchem.quality.TitrantRecord;
import org.brewchem.solution.Figures;

/**
 * Records from any text, each line a JSON object: read, through maps and JSON and back without
 * loss, and entered into a book one after the other.
 */
class RecordFuzzTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 27);
  private static final List<Figure<?>> FIGURES = List.of(Figures.PH_VALUE, Figures.IONIC_STRENGTH);

  @FuzzTest(maxDuration = "10m")
  @DictionaryFile(resourcePath = "records.dict")
  void record(byte[] input) {
    RecordBook book = RecordBook.of(FIGURES.toArray(new Figure<?>[0]));
    for (String line : Oracle.text(input).lines().limit(8).toList()) {
      Optional<Map<String, Object>> map = map(line);
      if (map.isPresent()) {
        book = entered(book, map.get());
      }
    }
    String shown = book.toString();
    Oracle.requireShort(shown);
  }

  private static RecordBook entered(RecordBook before, Map<String, Object> map) {
    RecordBook book = before;
    Optional<TitrantRecord> titrant = read(map, TitrantRecord::from, TitrantRecord::toMap);
    if (titrant.isPresent()) {
      book = with(book, longer -> longer.with(TODAY, titrant.get()));
    }
    Function<Map<String, ?>, TargetVersion> targets = each -> TargetVersion.from(each, FIGURES);
    Optional<TargetVersion> target = read(map, targets, TargetVersion::toMap);
    if (target.isPresent()) {
      book = with(book, longer -> longer.with(TODAY, target.get()));
    }
    Optional<BatchRecord> batch = read(map, BatchRecord::from, BatchRecord::toMap);
    if (batch.isPresent()) {
      book = with(book, longer -> longer.with(TODAY, batch.get()));
      for (StructuredAnswer answer : batch.get().answers()) {
        answer.number().ifPresent(number -> Oracle.requireFinite(number, answer.figure()));
      }
      RecordBook now = book;
      Oracle.ask(() -> now.series(Figures.PH_VALUE, batch.get().beer()));
    }
    read(map, StructuredAnswer::from, StructuredAnswer::toMap);
    return book;
  }

  private static RecordBook with(RecordBook book, Function<RecordBook, RecordBook> entry) {
    return Oracle.ask(() -> entry.apply(book)).orElse(book);
  }

  private static <R> Optional<R> read(
      Map<String, Object> map,
      Function<Map<String, ?>, R> reader,
      Function<R, Map<String, Object>> writer) {
    Optional<R> read = Oracle.ask(() -> reader.apply(map));
    read.ifPresent(
        record -> {
          Oracle.requireEqual(record, reader.apply(writer.apply(record)));
          Oracle.requireEqual(record, reader.apply(throughJson(writer.apply(record))));
        });
    return read;
  }

  private static Map<String, Object> throughJson(Map<String, Object> map) {
    try {
      return JSON.readValue(JSON.writeValueAsString(map), new TypeReference<>() {});
    } catch (JsonProcessingException e) {
      throw new AssertionError(e);
    }
  }

  /** A line that is no JSON object is the parser's business. */
  private static Optional<Map<String, Object>> map(String line) {
    try {
      return Optional.ofNullable(JSON.readValue(line, new TypeReference<>() {}));
    } catch (JsonProcessingException e) {
      return Optional.empty();
    }
  }
}
