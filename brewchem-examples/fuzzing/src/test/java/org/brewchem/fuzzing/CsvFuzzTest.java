package org.brewchem.fuzzing;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.brewchem.readers.CsvFile;
import org.brewchem.readers.CsvWriter;
import org.brewchem.readers.FileFaultException;
import org.brewchem.readers.ReadingReport;
import org.brewchem.readers.TableReading;
import org.brewchem.table.Column;
import org.brewchem.table.Table;

/**
 * Files of separated values from any bytes: read as a whole and in pieces alike, and what was read
 * is written and reads again to the same numbers and texts.
 */
class CsvFuzzTest {

  private static final Path FOLDER = folder();

  static Path folder() {
    try {
      Path folder = Files.createTempDirectory("fuzzing");
      folder.toFile().deleteOnExit();
      folder.resolve("read.csv").toFile().deleteOnExit();
      folder.resolve("written.csv").toFile().deleteOnExit();
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @FuzzTest(maxDuration = "10m")
  @DictionaryFile(resourcePath = "headings.dict")
  void csv(byte[] input) {
    CsvFile file = WrittenFile.of(input, FOLDER).file();
    Oracle.ask(WrittenFile.unchecked(file::reading)).ifPresent(reading -> judge(file, reading));
  }

  private static void judge(CsvFile file, TableReading reading) {
    WrittenFile.judge(reading.report());
    Table table = reading.table();
    for (Column column : table.columns()) {
      for (int i = 0; i < table.size(); i++) {
        if (column.isPresent(i)) {
          Oracle.requireFinite(column.value(i), column.heading());
        } else {
          Oracle.requireShort(file.describe(column.failure(i).orElseThrow()));
        }
      }
    }
    Oracle.requireEqual(
        reading.report().faults().isEmpty(),
        Oracle.ask(WrittenFile.unchecked(file::read)).isPresent());
    inPieces(file, reading);
    if (table.columns().isEmpty() && table.textNames().isEmpty()) {
      return;
    }
    try {
      requireSame(table, again(table));
    } catch (IOException | FileFaultException e) {
      throw new AssertionError("what was written is not read", e);
    }
  }

  private static void inPieces(CsvFile file, TableReading whole) {
    List<Long> rows = new ArrayList<>();
    ReadingReport report =
        Oracle.ask(
                WrittenFile.unchecked(
                    () ->
                        file.forEachTable(
                            2,
                            table -> {
                              for (int i = 0; i < table.size(); i++) {
                                rows.add(table.row(i));
                              }
                            },
                            (done, share) -> {})))
            .orElseThrow(() -> new AssertionError("a file read as a whole is not read in pieces"));
    Oracle.requireEqual(whole.report().rows(), report.rows());
    Oracle.requireEqual(whole.report().faultCount(), report.faultCount());
    Oracle.requireEqual(whole.table().size(), rows.size());
    for (int i = 0; i < rows.size(); i++) {
      Oracle.requireEqual(whole.table().row(i), rows.get(i));
    }
  }

  private static Table again(Table table) throws IOException {
    Path path = FOLDER.resolve("written.csv");
    try (CsvWriter writer = CsvWriter.to(path)) {
      writer.write(table);
    }
    return CsvFile.of(path).withTexts(table.textNames().toArray(new String[0])).read();
  }

  private static void requireSame(Table table, Table same) {
    Oracle.requireEqual(table.size(), same.size());
    Oracle.requireEqual(table.textNames(), same.textNames());
    for (String name : table.textNames()) {
      Oracle.requireEqual(table.texts(name), same.texts(name));
    }
    for (Column column : table.columns()) {
      Column other = same.column(column.name());
      Oracle.requireEqual(column.heading(), other.heading());
      for (int i = 0; i < table.size(); i++) {
        Oracle.requireEqual(column.get(i), other.get(i));
      }
    }
  }
}
