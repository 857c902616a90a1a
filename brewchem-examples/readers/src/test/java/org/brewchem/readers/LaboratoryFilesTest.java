package org.brewchem.readers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files as laboratories write them; laboratories, waters and figures are invented. */
class LaboratoryFilesTest {

  private static final String GERMAN =
      """
      # Auszug, erfundenes Labor
      Probe;Datum;Calcium ;Magnesium;Natrium;Chlorid;Sulfat;Nitrat;Karbonathärte;pH-Wert;Eisen;
      ;;(mg/l);(mg/l);(mg/l);(mg/l);(mg/l);(mg/l);(°dH);(-);(mg/l);
      Brunnen Süd;3.2.2026;92,5;11,2 ;19;31;45;8,1;12,0;7,60;<0,02;
      Brunnen Nord;3.2.2026; 58,0;9;14;30;46;n.b.;6,7;7,4;0,05;
      Netz;4.2.2026;1.092,5;11;19;31;45;<0,5;12;7,6;<0,02;
      """;

  private static final FileFormat DECLARED =
      FileFormat.standard()
          .charset(StandardCharsets.ISO_8859_1)
          .separator(';')
          .decimalComma()
          .thousands('.')
          .comments('#')
          .unitsUnderHeadings()
          .smallLitre()
          .blanksAroundCells()
          .limits()
          .missing("n.b.")
          .headingsIn("de")
          .alias("Karbonathärte", "alkalinity")
          .dates("Datum", "d.M.uuuu")
          .texts("Probe");

  @TempDir private Path folder;

  private CsvFile latin(String text) throws IOException {
    Path path = folder.resolve("wasser.csv");
    Files.write(path, text.getBytes(StandardCharsets.ISO_8859_1));
    return CsvFile.of(path);
  }

  @Test
  void aEuropeanLaboratorysFileIsReadAsItIsDeclared() throws IOException {
    TableReading reading = latin(GERMAN).in(DECLARED).reading();
    Table table = reading.orThrow();
    assertEquals(List.of("Brunnen Süd", "Brunnen Nord", "Netz"), table.texts("sample"));
    assertEquals(List.of("2026-02-03", "2026-02-03", "2026-02-04"), table.texts("date"));
    assertEquals("calcium [mg/L]", table.column("calcium").heading());
    assertEquals("alkalinity [°dH]", table.column("alkalinity").heading());
    assertEquals("pH", table.column("pH").heading());
    assertArrayEquals(new double[] {92.5, 58, 1092.5}, table.column("calcium").values());
    assertArrayEquals(new double[] {8.1, -1, -1}, table.column("nitrate").valuesOr(-1));
    assertArrayEquals(new double[] {-1, -1, 0.5}, table.column("nitrate below").valuesOr(-1));
    assertEquals("iron below [mg/L]", table.column("iron below").heading());
    assertArrayEquals(new double[] {0.02, -1, 0.02}, table.column("iron below").valuesOr(-1));
    assertEquals(4, table.row(0));

    Waters waters = Waters.from(table);
    assertTrue(waters.used().containsAll(List.of("calcium", "magnesium", "alkalinity", "pH")));
    // 12.0 °dH less (92.5/20.04/3.5 + 11.2/12.15/7) mEq/L of 2.804 °dH each
    assertEquals(
        12.0 - 2.804 * (92.5 / 20.04 / 3.5 + 11.2 / 12.15 / 7),
        waters
            .residualAlkalinity()
            .in(org.brewchem.units.LabUnits.RESIDUAL_ALKALINITY, "°dH")
            .value(0),
        0.005);

    ReadingReport report = reading.report();
    assertEquals(
        List.of(
            "\"Probe\" as sample",
            "\"Datum\" as date",
            "\"Calcium \" as calcium [mg/L]",
            "\"Magnesium\" as magnesium [mg/L]",
            "\"Natrium\" as sodium [mg/L]",
            "\"Chlorid\" as chloride [mg/L]",
            "\"Sulfat\" as sulfate [mg/L]",
            "\"Nitrat\" as nitrate [mg/L]",
            "\"Karbonathärte\" as alkalinity [°dH]",
            "\"pH-Wert\" as pH",
            "\"Eisen\" as iron [mg/L]"),
        report.used());
    assertEquals(List.of("comment lines, in line 1"), report.ignored());
    assertEquals(
        List.of(
            "blanks around a cell: 2 times, the first in line 4",
            "a value below a limit in iron [mg/L]: 2 times, the first in line 4",
            "\"n.b.\" taken as missing, in line 5",
            "a value below a limit in nitrate [mg/L], in line 6"),
        report.odd());
  }

  @Test
  void everyFaultOfItIsNamedInOnePass() throws IOException {
    String spoilt =
        GERMAN
                .replace("92,5", "92.5")
                .replace("3.2.2026; 58,0", "31.2.2026;58,0")
                .replace("n.b.", "k.A.")
                .replace("1.092,5", "10.92,5")
                .replace("Netz;4.2.2026", "\"Netz;4.2.2026")
            + "Tank;5.2.2026;1;2\nTank 2;5.2.2026;10.92,5;2;3;4;5;6;7;8;9;\n";
    FileFaultException refused =
        assertThrows(FileFaultException.class, latin(spoilt).in(DECLARED)::read);
    assertEquals(
        List.of(
            "wasser.csv, line 4, column \"calcium [mg/L]\": \"92.5\" is not a number (the digits are"
                + " not grouped by three with '.')",
            "wasser.csv, line 5, column \"date\": \"31.2.2026\" is no date of the declared pattern",
            "wasser.csv, line 5, column \"nitrate [mg/L]\": \"k.A.\" is not a number (the digits are"
                + " not grouped by three with '.')",
            "wasser.csv, line 6: a quoted cell does not end",
            "wasser.csv, line 7: the line has 4 cells, the headings are 12",
            "wasser.csv, line 8, column \"calcium [mg/L]\": \"10.92,5\" is not a number (the digits"
                + " are not grouped by three with '.')"),
        refused.faults().stream().map(Fault::toString).toList());
  }

  @Test
  void withoutDeclarationsOneMessageSaysWhatToDeclare() throws IOException {
    FileFaultException refused = assertThrows(FileFaultException.class, latin(GERMAN)::read);
    assertEquals(
        "nothing is guessed; if the file is meant so, declare in its FileFormat: "
            + ".charset(StandardCharsets.ISO_8859_1).comments('#').separator(';')"
            + ".unitsUnderHeadings().smallLitre().blanksAroundCells().headingsIn(\"de\")"
            + ".decimalComma().limits().thousands('.').texts(\"Probe\")"
            + ".dates(\"Datum\", \"d.M.uuuu\").missing(\"n.b.\")",
        refused.advice().get(0));
    assertEquals("with that, the beginning of the file has no fault", refused.advice().get(1));
    assertTrue(String.valueOf(refused.getMessage()).endsWith(refused.advice().get(1)));
  }

  @Test
  void unitsInRoundBracketsAndColumnsOfTextAreFoundWhenAsked() throws IOException {
    String text = "Sample,calcium (mg/l),pH,remark\nA,92,7.6,boiled\nB,58,NA,\nC,1,7,\n";
    CsvFile file = latin(text);
    Table table =
        file.in(
                FileFormat.standard()
                    .roundBrackets()
                    .smallLitre()
                    .missing("NA")
                    .headingsIn("en")
                    .textsFound())
            .read();
    assertEquals(List.of("sample", "remark"), table.textNames());
    assertEquals("calcium [mg/L]", table.column("calcium").heading());
    assertArrayEquals(new double[] {7.6, -1, 7}, table.column("pH").valuesOr(-1));
    assertEquals(
        "nothing is guessed; if the file is meant so, declare in its FileFormat: .roundBrackets().smallLitre()"
            + ".texts(\"Sample\").texts(\"remark\").missing(\"NA\")",
        assertThrows(FileFaultException.class, file::read).advice().get(0));
  }

  @Test
  void aFileInLongFormatBecomesARowASample() throws IOException {
    String text =
        """
        Probe;Parameter;Wert;Einheit
        Brunnen;Calcium;92,5;mg/l
        Brunnen;Magnesium;11;mg/l
        Brunnen;pH-Wert;7,6;-
        Netz;pH-Wert;7,4;-
        Netz;Calcium;58;mg/l
        Netz;Eisen;<0,02;mg/l
        """;
    FileFormat format =
        FileFormat.standard()
            .charset(StandardCharsets.ISO_8859_1)
            .separator(';')
            .decimalComma()
            .smallLitre()
            .limits()
            .headingsIn("de")
            .longFormat("Parameter", "Wert", "Einheit", "Probe");
    TableReading reading = latin(text).in(format).reading();
    Table table = reading.orThrow();
    assertEquals(List.of("Brunnen", "Netz"), table.texts("sample"));
    assertArrayEquals(new double[] {92.5, 58}, table.column("calcium").values());
    assertArrayEquals(new double[] {7.6, 7.4}, table.column("pH").values());
    assertArrayEquals(new double[] {11, -1}, table.column("magnesium").valuesOr(-1));
    assertArrayEquals(new double[] {-1, 0.02}, table.column("iron below").valuesOr(-1));
    assertEquals(
        List.of(
            "sample",
            "\"Calcium\" as calcium [mg/L]",
            "\"Magnesium\" as magnesium [mg/L]",
            "\"pH-Wert\" as pH",
            "\"Eisen\" as iron [mg/L]"),
        reading.report().used());

    String spoilt =
        text + "Netz;Calcium;59;mg/l\nTank;Calcium;3;mmol/l\nTank;Eisen;viel;mg/l\nTank;Eisen\n";
    assertEquals(
        List.of(
            "wasser.csv, line 8, column \"Parameter\": \"Calcium\" of [Netz] stands in line 6 already",
            "wasser.csv, line 9, column \"Einheit\": \"Calcium\" has the unit \"mmol/L\" here,"
                + " \"mg/L\" before",
            "wasser.csv, line 11: the line has 2 cells, the headings are 4",
            "wasser.csv, line 10, column \"iron [mg/L]\": \"viel\" is not a number (a number such as 5,"
                + " -0,25 or 1,5E-7 is allowed here)"),
        assertThrows(FileFaultException.class, latin(spoilt).in(format)::read).faults().stream()
            .map(Fault::toString)
            .toList());
  }

  @Test
  void headingsMayStandBelowATitle() throws IOException {
    Table table =
        latin("Waters of\nmy town, \"as told\"\npH\n7\n")
            .in(FileFormat.standard().headingsInLine(3))
            .read();
    assertEquals(7, table.column("pH").value(0));
    assertEquals(4, table.row(0));
  }

  @Test
  void aFormatSaysWhatIsDeclared() {
    assertEquals(
        "UTF-8, cells separated by ',', decimal mark '.'", FileFormat.standard().toString());
    assertEquals(
        "ISO-8859-1, cells separated by ';', decimal mark ',', units under headings, small litre,"
            + " limits, missing [NA], texts [sample]",
        FileFormat.standard()
            .charset(StandardCharsets.ISO_8859_1)
            .separator(';')
            .decimalComma()
            .unitsUnderHeadings()
            .smallLitre()
            .limits()
            .missing("NA")
            .texts("sample")
            .toString());
  }

  @Test
  void whatCannotBeDeclaredIsRefused() {
    FileFormat format = FileFormat.standard();
    assertThrows(IllegalArgumentException.class, () -> format.separator('a'));
    assertThrows(IllegalArgumentException.class, () -> format.thousands('x'));
    assertThrows(IllegalArgumentException.class, () -> format.headingsInLine(0));
    assertThrows(IllegalArgumentException.class, () -> format.headingsIn("xx"));
    assertThrows(IllegalArgumentException.class, () -> format.dates("Datum", "bad"));
    assertThrows(
        IllegalArgumentException.class, () -> format.longFormat("Parameter", "Wert", "Einheit"));
  }

  @Test
  void everyNameOfAHeadingLeadsToOneOfTheLibrary() {
    for (String language : HeadingNames.languages()) {
      assertTrue(HeadingNames.of(language).containsValue("calcium"), language);
      assertTrue(HeadingNames.of(language).containsValue("bicarbonate"), language);
    }
    assertEquals(List.of("de", "en", "es", "fr", "it", "nl"), HeadingNames.languages());
  }
}
