package org.brewchem.examples.book;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Target;
import org.brewchem.quality.BatchRecord;
import org.brewchem.quality.RefusedRecordException;
import org.brewchem.quality.TargetVersion;
import org.brewchem.quality.TitrantRecord;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.titration.Titrant;
import org.brewchem.water.WaterFigures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqlBookTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 4, 1);
  private static final Clock CLOCK =
      Clock.fixed(TODAY.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
  private static final TitrantRecord LYE =
      TitrantRecord.of(
          "lye 12",
          Titrant.sodiumHydroxide().of(molPerL(0.1003), molPerL(0.0002)).concentration(),
          TODAY.minusDays(3),
          "M. Adler",
          TODAY.minusDays(3).atTime(9, 0));
  private static final TargetVersion TARGET =
      new TargetVersion(
          Target.named("invented lager")
              .with(Constraint.around(Figures.PH_VALUE, pH(4.3), 0.1).withWeight(2).scaledBy(0.05))
              .with(
                  Constraint.atMost(
                      Figures.titratableAcidity(pH(8.2)),
                      acidity(gPerL(2.4), Acid.LACTIC, pH(8.2)))),
          1,
          TODAY.minusDays(40),
          "M. Adler",
          TODAY.minusDays(2).atTime(9, 0));

  @TempDir private Path folder;

  private SqlBook open() throws IOException {
    return SqlBook.open(folder.resolve("book.sqlite"), CLOCK, Writer.FIGURES);
  }

  @Test
  void whatIsEnteredIsThereWhenTheBookIsOpenedAgain() throws IOException {
    BatchRecord first = Writer.batch("L-041", 12).titratedWith("lye 12");
    BatchRecord corrected = Writer.batch("L-041", 13).correcting("read from the wrong line");
    try (SqlBook book = open()) {
      book.enter(LYE);
      book.enter(TARGET);
      book.enter(first);
      book.enter(corrected);
    }
    try (SqlBook book = open()) {
      assertEquals(List.of(first, corrected), book.book().entries());
      assertEquals(List.of(corrected), book.book().batches());
      assertEquals(List.of(LYE), book.book().titrants());
      TargetVersion read = book.book().target("invented lager", TODAY).orElseThrow();
      assertEquals(TARGET.target().constraints(), read.target().constraints());
      assertEquals(TARGET.toString(), read.toString());
      assertEquals(List.of(), book.problems());
    }
  }

  @Test
  void columnsSayTheirUnitsAndHoldTheNumbers() throws IOException, SQLException {
    try (SqlBook book = open()) {
      book.enter(Writer.batch("L-041", 12));
      try (Statement statement = book.connection().createStatement();
          ResultSet row =
              statement.executeQuery(
                  "SELECT \"pH\", \"u of pH\","
                      + " \"titratable acidity to pH 8.2 [g/L as lactic acid, to pH 8.2]\" FROM batch_records")) {
        assertTrue(row.next());
        assertEquals(4.012, row.getDouble(1), 1e-12);
        assertEquals(0.02, row.getDouble(2), 1e-12);
        assertEquals(1.012, row.getDouble(3), 1e-12);
      }
    }
  }

  @Test
  void whatTheRulesRefuseIsNotStored() throws IOException {
    try (SqlBook book = open()) {
      book.enter(Writer.batch("L-041", 12));
      for (BatchRecord refused :
          new BatchRecord[] {
            Writer.batch("l-041 ", 13),
            Writer.batch("L-042", 14).titratedWith("lye 99"),
            Writer.batch("L-043", 15).correcting("no such batch"),
            BatchRecord.of(
                "L-044",
                "invented lager",
                TODAY.plusDays(1),
                "M. Adler",
                TODAY.plusDays(1).atTime(9, 0),
                Beer.of(pH(4.3), acidity(gPerL(2), Acid.LACTIC, pH(8.2))).pH())
          }) {
        assertThrows(RefusedRecordException.class, () -> book.enter(refused));
      }
      assertThrows(
          RefusedRecordException.class,
          () ->
              book.enter(
                  new TargetVersion(
                      Target.named("invented lager")
                          .with(
                              Constraint.atMost(
                                  WaterFigures.RESIDUAL_ALKALINITY,
                                  ResidualAlkalinity.ofGermanDegrees(2))),
                      1,
                      TODAY,
                      "M. Adler",
                      TODAY.atTime(9, 0))));
      assertEquals(1, book.book().entries().size());
      assertEquals(0, book.book().targetVersions("invented lager").size());
    }
  }

  @Test
  void whatIsStoredIsNeitherChangedNorDeleted() throws IOException {
    try (SqlBook book = open()) {
      book.enter(Writer.batch("L-041", 12));
      for (String change :
          new String[] {"DELETE FROM batch_records", "UPDATE batch_records SET who = 'nobody'"}) {
        SQLException refused =
            assertThrows(
                SQLException.class,
                () -> {
                  try (Statement statement = book.connection().createStatement()) {
                    statement.execute(change);
                  }
                });
        assertTrue(String.valueOf(refused.getMessage()).contains("what was entered stays"));
      }
    }
  }

  @Test
  void goesThroughCsvWithoutLoss() throws IOException {
    try (SqlBook book = open();
        SqlBook copy = SqlBook.open(folder.resolve("copy.sqlite"), CLOCK, Writer.FIGURES)) {
      book.enter(LYE);
      book.enter(TARGET);
      for (int i = 1; i <= 30; i++) {
        book.enter(Writer.batch("L, \"" + i, 37 * i).titratedWith("lye 12"));
      }
      book.writeCsv(folder);
      assertEquals(32, copy.readCsv(folder));
      assertEquals(book.book().entries(), copy.book().entries());
      assertEquals(book.book().titrants(), copy.book().titrants());
      assertEquals(
          List.of(TARGET), copy.book().targetVersions("invented lager"), "to the last bit");
      Path again = Files.createDirectory(folder.resolve("again"));
      copy.writeCsv(again);
      for (String file : List.of("batch_records", "titrant_records", "target_versions")) {
        assertEquals(
            -1, Files.mismatch(folder.resolve(file + ".csv"), again.resolve(file + ".csv")), file);
      }
    }
  }

  @Test
  void twoBooksOnOneFileSeeEachOther() throws IOException {
    try (SqlBook one = open();
        SqlBook other = open()) {
      one.enter(Writer.batch("L-041", 12));
      assertEquals(1, other.book().entries().size());
      other.enter(Writer.batch("L-042", 13));
      assertThrows(RefusedRecordException.class, () -> one.enter(Writer.batch("L-042", 14)));
      assertEquals(2, one.book().entries().size());
    }
  }

  @Test
  void aFullDiskSaysSoAndKeepsWhatWasThere() throws IOException, SQLException {
    try (SqlBook book = open()) {
      book.enter(Writer.batch("L-1", 1));
      try (Statement statement = book.connection().createStatement()) {
        statement.execute("PRAGMA max_page_count = 12");
      }
      int entered = 1;
      IOException full = null;
      while (full == null) {
        assertTrue(entered < 1000, "the disk is never full");
        try {
          book.enter(Writer.batch("L-" + (entered + 1), entered + 1));
          entered++;
        } catch (IOException e) {
          full = e;
        }
      }
      assertTrue(
          String.valueOf(full.getMessage()).endsWith("nothing was entered; the disk is full"),
          full.getMessage());
      assertEquals(entered, book.book().entries().size());
      assertEquals(List.of(), book.problems());
    }
  }

  @Test
  void aFileThatCanOnlyBeReadSaysSo() throws IOException, SQLException {
    try (SqlBook book = open()) {
      book.enter(Writer.batch("L-1", 1));
      try (Statement statement = book.connection().createStatement()) {
        statement.execute("PRAGMA query_only = 1");
      }
      IOException fault = assertThrows(IOException.class, () -> book.enter(Writer.batch("L-2", 2)));
      assertTrue(
          String.valueOf(fault.getMessage())
              .endsWith("nothing was entered; the file can only be read"),
          fault.getMessage());
      assertEquals(1, book.book().entries().size());
    }
  }

  @Test
  void saysWhatKeepsItFromBeingOpened() throws IOException {
    Path text = Files.writeString(folder.resolve("text.sqlite"), "no database, ".repeat(100));
    assertSays("it is no database", text);
    assertSays("there is no such folder", folder.resolve("nowhere").resolve("book.sqlite"));
    Path path = folder.resolve("book.sqlite");
    SqlBook.open(path, CLOCK, Figures.PH_VALUE).close();
    assertSays("is a book of [pH, u of pH]", path);
  }

  private void assertSays(String said, Path path) {
    IOException fault =
        assertThrows(IOException.class, () -> SqlBook.open(path, CLOCK, Writer.FIGURES));
    assertTrue(String.valueOf(fault.getMessage()).contains(said), fault.getMessage());
  }
}
