package org.brewchem.examples.csv;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.brewchem.table.Column;
import org.brewchem.table.Failure;
import org.brewchem.table.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CsvFileTest {

  @TempDir private Path directory;

  private CsvFile file(String text) throws IOException {
    return CsvFile.of(Files.writeString(directory.resolve("titrations.csv"), text));
  }

  private void refuses(String message, String text) throws IOException {
    CsvFile file = file(text);
    CsvException refused = assertThrows(CsvException.class, file::read);
    assertEquals(message, refused.getMessage());
  }

  @Test
  void unitsStandInTheHeadingsAndAnEmptyCellIsMissing() throws IOException {
    Table table =
        file("sample,volume [mL],pH\nfirst,14.62,4.2\n\n\"second, again\",,4\r\nthird,1e1,")
            .withTexts("sample")
            .read();
    assertEquals(List.of("first", "second, again", "third"), table.texts("sample"));
    assertEquals("volume [mL]", table.column("volume").heading());
    assertArrayEquals(new double[] {14.62, -1, 10}, table.column("volume").valuesOr(-1));
    assertEquals(List.of(new Failure.Missing(4, "volume [mL]")), table.column("volume").failures());
    assertEquals(List.of(new Failure.Missing(5, "pH")), table.column("pH").failures());
  }

  @Test
  void whatIsNoNumberIsNamedWithFileLineAndColumn() throws IOException {
    refuses(
        "titrations.csv, line 3, column \"volume [mL]\": \"14,62\" is not a number (use a point)",
        "volume [mL]\n14.62\n\"14,62\"\n");
    refuses(
        "titrations.csv, line 2, column \"volume [mL]\": \"n.d.\" is not a number (a number such as"
            + " 5, -0.25 or 1.5E-7 is allowed here, with a point as decimal mark)",
        "volume [mL]\nn.d.\n");
    CsvFile spaced = file("volume [mL],pH\n 14.62,4.2\n");
    assertThrows(CsvException.class, spaced::read);
  }

  @Test
  void aLineWithMoreOrFewerCellsThanHeadingsIsNamed() throws IOException {
    refuses(
        "titrations.csv, line 2, column \"volume [mL]\": the line has 3 cells, the headings are 2",
        "volume [mL],pH\n14,62,4.2\n");
    refuses(
        "titrations.csv, line 2, column \"volume [mL]\": the line has 1 cells, the headings are 2",
        "volume [mL],pH\n14.62\n");
  }

  @Test
  void headingsAreChecked() throws IOException {
    refuses("titrations.csv: is empty; a line of headings is needed", "");
    refuses(
        "titrations.csv, line 1: column \"pH\" stands twice", "volume [mL],pH,pH\n14.62,4.2,4.2\n");
    CsvFile malformed = file("volume [mL\n14.62\n");
    assertTrue(
        assertThrows(CsvException.class, malformed::read)
            .getMessage()
            .startsWith("titrations.csv, line 1: "));
    CsvFile without = file("volume [mL]\n14.62\n").withTexts("sample");
    assertThrows(CsvException.class, without::read);
  }

  @Test
  void quotesFollowTheirStandard() throws IOException {
    Table table =
        file("\uFEFF\"sample\",\"volume [mL]\"\r\n\"a \"\"b\"\"\nc\",\"14.62\"\r\nd,15\r\n")
            .withTexts("sample")
            .read();
    assertEquals(List.of("a \"b\"\nc", "d"), table.texts("sample"));
    assertEquals(2, table.row(0));
    assertEquals(4, table.row(1));
    refuses("titrations.csv, line 2: a quoted cell does not end", "pH\n\"4.2\n4.3\n");
    refuses("titrations.csv, line 2: text after the end of a quoted cell", "pH\n\"4.2\"x\n");
    refuses(
        "titrations.csv, line 2: a cell is longer than 100000 characters; is a quote not closed?",
        "pH\n\"" + "4".repeat(200_000));
  }

  @Test
  void anotherEncodingIsRefused() throws IOException {
    Path path = directory.resolve("waters.csv");
    Files.write(path, "alkalinity [°dH]\n12\n".getBytes(StandardCharsets.ISO_8859_1));
    CsvFile file = CsvFile.of(path);
    assertEquals(
        "waters.csv: is not UTF-8", assertThrows(CsvException.class, file::read).getMessage());
  }

  @Test
  void faultsAreKeptInTheirRowsOnRequest() throws IOException {
    CsvFile file = file("volume [mL],pH\n14.62,4.2\n\"14,62\",4.3\n1,2,3\n15,4.4\n");
    Table table = file.readKeepingFaults();
    assertEquals(4, table.size());
    assertEquals(15, table.column("volume").value(3));
    assertEquals(4.3, table.column("pH").value(1));
    assertEquals(
        List.of(3L, 4L), table.column("volume").failures().stream().map(Failure::row).toList());
    assertEquals(
        "titrations.csv, line 3, column \"volume [mL]\": \"14,62\" is not a number (use a point)",
        file.describe(table.column("volume").failures().get(0)));
  }

  @Test
  void aFileComesInTablesOfBoundedSizeAndTellsHowFarItIs() throws IOException {
    CsvFile file = file("pH\n1\n2\n3\n4\n5\n");
    List<Integer> sizes = new ArrayList<>();
    List<Long> rows = new ArrayList<>();
    List<Double> shares = new ArrayList<>();
    file.forEachTable(
        2,
        table -> {
          sizes.add(table.size());
          rows.add(table.row(0));
        },
        (done, share) -> shares.add(done + share));
    assertEquals(List.of(2, 2, 1), sizes);
    assertEquals(List.of(2L, 4L, 6L), rows);
    assertEquals(6, shares.get(2));
    assertThrows(
        IllegalArgumentException.class,
        () -> file.forEachTable(0, table -> {}, (done, share) -> {}));
  }

  @Test
  void headingsAloneAreAnEmptyTable() throws IOException {
    assertEquals(0, file("pH\n").read().size());
  }

  @Test
  void whatIsWrittenReadsBackTheSame() throws IOException {
    Path path = directory.resolve("results.csv");
    double[] numbers = {0.1 + 0.2, 1e-9, 12345678.9, -3};
    Table table =
        Table.of(Column.of("titratable acidity [g/L as lactic acid, to pH 8.2]", numbers))
            .withTexts("sample", List.of("a", "b, \"c\"", "", "d\ne"));
    try (CsvWriter writer = CsvWriter.to(path)) {
      writer.write(table);
      writer.write(table);
      assertThrows(IllegalArgumentException.class, () -> writer.write(table.without("sample")));
    }
    Table back = CsvFile.of(path).withTexts("sample").read();
    assertEquals(8, back.size());
    assertEquals(table.texts("sample"), back.texts("sample").subList(4, 8));
    for (int i = 0; i < numbers.length; i++) {
      assertEquals(numbers[i], back.column("titratable acidity").value(i), 0);
    }
  }

  @Test
  void aRowWithoutANumberIsWrittenEmptyAndStaysMissing() throws IOException {
    Path path = directory.resolve("results.csv");
    Table.Builder rows = Table.withHeadings("pH");
    rows.row().set(0, 7);
    rows.row();
    rows.row().set(0, 8);
    try (CsvWriter writer = CsvWriter.to(path)) {
      writer.write(rows.build());
    }
    assertArrayEquals(new double[] {7, -1, 8}, CsvFile.of(path).read().column("pH").valuesOr(-1));
  }
}
