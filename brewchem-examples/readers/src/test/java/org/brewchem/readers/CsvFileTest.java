package org.brewchem.readers;

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
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
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

  private static List<String> faults(CsvFile file) {
    FileFaultException refused = assertThrows(FileFaultException.class, file::read);
    assertTrue(String.valueOf(refused.getMessage()).startsWith(refused.faults().get(0).toString()));
    return refused.faults().stream().map(Fault::toString).toList();
  }

  private void refuses(String text, String... faults) throws IOException {
    assertEquals(List.of(faults), faults(file(text)));
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
  void allThatIsNoNumberIsNamedWithFileLineAndColumnInOnePass() throws IOException {
    refuses(
        "volume [mL],pH\n14.62,4.2\n\"14,62\",4.2\nn.d.,4.2\n 14.62,\n5,1e999\n",
        "titrations.csv, line 3, column \"volume [mL]\": \"14,62\" is not a number (use a point)",
        "titrations.csv, line 4, column \"volume [mL]\": \"n.d.\" is not a number (a number such as"
            + " 5, -0.25 or 1.5E-7 is allowed here, with a point as decimal mark)",
        "titrations.csv, line 5, column \"volume [mL]\": \" 14.62\" is not a number (a number such as"
            + " 5, -0.25 or 1.5E-7 is allowed here, with a point as decimal mark)",
        "titrations.csv, line 6, column \"pH\": \"1e999\" is not a number (at most"
            + " 1.7976931348623157E308 is allowed)");
  }

  @Test
  void linesWithMoreOrFewerCellsThanHeadingsAreNamedOnceEach() throws IOException {
    refuses(
        "volume [mL],pH\n14,62,4.2\n14.62\n14.62,4.2\n",
        "titrations.csv, line 2: the line has 3 cells, the headings are 2",
        "titrations.csv, line 3: the line has 1 cell, the headings are 2");
  }

  @Test
  void headingsAreChecked() throws IOException {
    assertEquals(
        "titrations.csv: is empty; a line of headings is needed",
        assertThrows(FileFaultException.class, file("")::read).getMessage());
    refuses(
        "volume [mL],pH,pH\n14.62,4.2,4.2\n", "titrations.csv, line 1: column \"pH\" stands twice");
    assertTrue(faults(file("volume [mL\n14.62\n")).get(0).startsWith("titrations.csv, line 1: "));
    assertEquals(
        List.of("titrations.csv, line 1: has no column \"sample\": [volume [mL]]"),
        faults(file("volume [mL]\n14.62\n").withTexts("sample")));
  }

  @Test
  void aColumnWithoutHeadingAndCellsIsPassedOver() throws IOException {
    assertEquals(1, file("pH,\n4.2,\n4.3,\n").read().columns().size());
    refuses("pH,\n4.2,\n4.3,x\n", "titrations.csv, line 3: cell 2, \"x\", has no heading");
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
  }

  @Test
  void aCarriageReturnInAQuotedCellDoesNotEndItsRecord() throws IOException {
    Table table = file("pH,sample\n4.2,\"a\rb\"\n4.3,\"c\r\"\n4.4,d\n").withTexts("sample").read();
    assertEquals(List.of("a\rb", "c\r", "d"), table.texts("sample"));
    assertArrayEquals(new double[] {4.2, 4.3, 4.4}, table.column("pH").valuesOr(-1));
    assertEquals(1, file("\"\u0000\rpH\"\n7\n").read().size());
  }

  @Test
  void aByteOrderMarkBehindTheFirstLineIsNoPartOfAHeading() throws IOException {
    refuses(
        "\n\uFEFFpH,sample\n7,8\n",
        "titrations.csv, line 2, column \"\uFEFFpH\": holds a byte order mark, which is not seen;"
            + " only the first character of a file can be one");
    assertEquals(
        List.of("sample"),
        file("\uFEFF\uFEFFpH,sample\n7,8\n").reading().table().columns().stream()
            .map(Column::name)
            .toList());
  }

  /** A name between blanks is refused before a unit in round brackets as before one in square. */
  @Test
  void aNameBetweenBlanksIsNoHeadingWhateverItsBrackets() throws IOException {
    for (String unit : List.of("[mg/L]", "(mg/L)")) {
      CsvFile file = file(" calcium " + unit + "\n7\n").in(FileFormat.standard().roundBrackets());
      assertTrue(faults(file).get(0).contains("stands between spaces"), faults(file).toString());
    }
  }

  @Test
  void aQuoteThatIsNotClosedSpoilsItsLineAlone() throws IOException {
    refuses(
        "pH\n\"4.2\n4.3\nx\n",
        "titrations.csv, line 2: a quoted cell does not end",
        "titrations.csv, line 4, column \"pH\": \"x\" is not a number (a number such as 5, -0.25 or"
            + " 1.5E-7 is allowed here, with a point as decimal mark)");
    refuses(
        "pH\n\"4.2\"x\n\"4.3\n4.4\n\"4.5\"\n",
        "titrations.csv, line 2: text after the end of a quoted cell; is a quote not closed, or not"
            + " doubled?",
        "titrations.csv, line 3: text after the end of a quoted cell; is a quote not closed, or not"
            + " doubled?");
    refuses(
        "pH\n\"4.2" + "\n4.3".repeat(100_000) + "\n\"4.4\"\n",
        "titrations.csv, line 2: a quoted cell does not end");
    TableReading reading = file("sample,pH\n\"a,4.2\nb,4.3\n").withTexts("sample").reading();
    assertEquals(List.of("", "b"), reading.table().texts("sample"));
    assertEquals(4.3, reading.table().column("pH").value(1));
  }

  @Test
  void bytesOfAnotherCharacterSetAreNamedWhereTheyStand() throws IOException {
    Path path = directory.resolve("waters.csv");
    Files.write(
        path,
        "sample,pH,alkalinity [°dH]\nMühle,7,12\nMill,7,12\nMill,7ä,3\n"
            .getBytes(StandardCharsets.ISO_8859_1));
    assertEquals(
        List.of(
            "waters.csv, line 1, column \"alkalinity [\uFFFDdH]\": holds bytes that are not UTF-8",
            "waters.csv, line 2, column \"sample\": \"M\uFFFDhle\" holds bytes that are not UTF-8",
            "waters.csv, line 4, column \"pH\": \"7\uFFFD\" holds bytes that are not UTF-8"),
        faults(CsvFile.of(path).withTexts("sample")));
  }

  @Test
  void bytesOfAnotherCharacterSetAmongTheUnitsAreNamedToo() throws IOException {
    Path path = directory.resolve("waters.csv");
    Files.write(path, "pH,alkalinity\n,°dH\n7,12\n".getBytes(StandardCharsets.ISO_8859_1));
    assertEquals(
        List.of(
            "waters.csv, line 1, column \"alkalinity\": unit \"\uFFFDdH\" holds bytes that are not"
                + " UTF-8"),
        faults(CsvFile.of(path).in(FileFormat.standard().unitsUnderHeadings())));
  }

  @Test
  void aTableWithoutColumnsIsNotWritten() throws IOException {
    Table none = file("pH]\n7\n").reading().table();
    assertEquals(List.of(), none.columns());
    try (CsvWriter writer = CsvWriter.to(directory.resolve("none.csv"))) {
      assertThrows(IllegalArgumentException.class, () -> writer.write(none));
    }
  }

  @Test
  void faultsAreKeptInTheirRowsOnRequest() throws IOException {
    CsvFile file = file("volume [mL],pH\n14.62,4.2\n\"14,62\",4.3\n1,2,3\n15,4.4\n");
    TableReading reading = file.reading();
    Table table = reading.table();
    assertEquals(4, table.size());
    assertEquals(15, table.column("volume").value(3));
    assertEquals(4.3, table.column("pH").value(1));
    assertEquals(
        List.of(3L, 4L), table.column("volume").failures().stream().map(Failure::row).toList());
    assertEquals(List.of(4L), table.column("pH").failures().stream().map(Failure::row).toList());
    assertEquals(
        "titrations.csv, line 3, column \"volume [mL]\": \"14,62\" is not a number (use a point)",
        file.describe(table.column("volume").failures().get(0)));
    assertEquals(2, reading.report().faultCount());
    assertEquals(List.of("volume [mL]", "pH"), reading.report().used());
  }

  /** The fast way and the way digit by digit give the same number. */
  @Property(seed = "20261126")
  void aNumberReadsAsTheJavaPlatformReadsIt(
      @ForAll long digits, @ForAll @IntRange(max = 25) int decimals) {
    String text = java.math.BigDecimal.valueOf(digits, decimals).toPlainString();
    CellReader reader = new CellReader(FileFormat.standard().settings);
    assertEquals(CellReader.Kind.NUMBER, reader.read(text));
    assertEquals(Double.parseDouble(text) + 0.0, reader.number() + 0.0);
    String cut =
        java.math.BigDecimal.valueOf(digits % 1_000_000_000_000_000L, decimals % 16)
            .toPlainString();
    assertEquals(CellReader.Kind.NUMBER, reader.read(cut));
    assertEquals(Double.parseDouble(cut) + 0.0, reader.number() + 0.0);
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
            .withTexts("sample", List.of("a\rb", "b, \"c\"", "", "d\ne"));
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
