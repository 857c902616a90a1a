package org.brewchem.readers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.brewchem.table.Table;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On a workbook that is written here part by part; its waters are invented. */
class ExcelFileTest {

  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String OFFICE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  private static final String PACKAGE = "http://schemas.openxmlformats.org/package/2006";

  private static final FileFormat DECLARED =
      FileFormat.standard()
          .decimalComma()
          .roundBrackets()
          .smallLitre()
          .limits()
          .headingsIn("de")
          .texts("Probe")
          .dates("Datum", "d.M.uuuu");

  @TempDir private Path folder;
  private Path path;

  @BeforeEach
  void writeTheWorkbook() throws IOException {
    path = folder.resolve("wasser.xlsx");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(path))) {
      put(
          zip,
          "[Content_Types].xml",
          "<Types xmlns='"
              + PACKAGE
              + "/content-types'><Default Extension='rels' ContentType='application/vnd.openxmlformats-package.relationships+xml'/>"
              + "<Override PartName='/xl/workbook.xml' ContentType='application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml'/>"
              + "<Override PartName='/xl/styles.xml' ContentType='application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml'/></Types>");
      put(
          zip,
          "_rels/.rels",
          "<Relationships xmlns='"
              + PACKAGE
              + "/relationships'><Relationship Id='r1' Type='"
              + OFFICE
              + "/officeDocument' Target='xl/workbook.xml'/></Relationships>");
      put(
          zip,
          "xl/workbook.xml",
          "<workbook xmlns='"
              + MAIN
              + "' xmlns:r='"
              + OFFICE
              + "'><sheets><sheet name='Titel' sheetId='1' r:id='r1'/>"
              + "<sheet name='Wasser' sheetId='2' r:id='r2'/></sheets></workbook>");
      put(
          zip,
          "xl/_rels/workbook.xml.rels",
          "<Relationships xmlns='"
              + PACKAGE
              + "/relationships'><Relationship Id='r1' Type='"
              + OFFICE
              + "/worksheet' Target='worksheets/sheet1.xml'/><Relationship Id='r2' Type='"
              + OFFICE
              + "/worksheet' Target='worksheets/sheet2.xml'/><Relationship Id='r3' Type='"
              + OFFICE
              + "/styles' Target='styles.xml'/></Relationships>");
      put(
          zip,
          "xl/styles.xml",
          "<styleSheet xmlns='"
              + MAIN
              + "'><numFmts count='1'><numFmt numFmtId='164' formatCode='dd\\.mm\\.yyyy'/></numFmts>"
              + "<cellXfs count='2'><xf numFmtId='0'/><xf numFmtId='164' applyNumberFormat='1'/></cellXfs></styleSheet>");
      put(zip, "xl/worksheets/sheet1.xml", sheet(row(1, text("A1", "erfunden"))));
      put(
          zip,
          "xl/worksheets/sheet2.xml",
          sheet(
              row(
                      1,
                      text("A1", "Probe"),
                      text("B1", "Datum"),
                      text("C1", "Calcium (mg/l)"),
                      text("D1", "Magnesium (mg/l)"),
                      text("E1", "Eisen (mg/l)"))
                  + row(
                      2,
                      text("A2", "Brunnen"),
                      "<c r='B2' s='1'><v>46056</v></c>",
                      "<c r='C2'><v>92.5</v></c>",
                      "<c r='D2'><f>10+1</f><v>11</v></c>",
                      text("E2", "<0,02"))
                  + row(4, text("A4", "Netz"), text("B4", "4.2.2026"), text("C4", "58,5"))
                  + row(
                      5, text("A5", "Tank"), "<c r='B5' s='1'><v>46057</v></c>", text("C5", "x"))));
    }
  }

  private static void put(ZipOutputStream zip, String name, String text) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(("<?xml version='1.0' encoding='UTF-8'?>" + text).getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
  }

  private static String sheet(String rows) {
    return "<worksheet xmlns='" + MAIN + "'><sheetData>" + rows + "</sheetData></worksheet>";
  }

  private static String row(int number, String... cells) {
    return "<row r='" + number + "'>" + String.join("", cells) + "</row>";
  }

  private static String text(String place, String text) {
    return "<c r='"
        + place
        + "' t='inlineStr'><is><t>"
        + text.replace("<", "&lt;")
        + "</t></is></c>";
  }

  @Test
  void aSheetIsReadAsATextFileIs() throws IOException {
    TableReading reading = ExcelFile.of(path).sheet("Wasser").in(DECLARED).reading();
    Table table = reading.table();
    assertEquals(List.of("Brunnen", "Netz", "Tank"), table.texts("sample"));
    assertEquals(List.of("2026-02-03", "2026-02-04", "2026-02-04"), table.texts("date"));
    assertArrayEquals(new double[] {92.5, 58.5, -1}, table.column("calcium").valuesOr(-1));
    assertArrayEquals(new double[] {11, -1, -1}, table.column("magnesium").valuesOr(-1));
    assertArrayEquals(new double[] {0.02, -1, -1}, table.column("iron below").valuesOr(-1));
    assertEquals(4, table.row(1));
    assertEquals(
        List.of(
            "wasser.xlsx, line 5, column \"calcium [mg/L]\": \"x\" is not a number (a number such as"
                + " 5, -0,25 or 1,5E-7 is allowed here)"),
        reading.report().faults().stream().map(Fault::toString).toList());
  }

  @Test
  void aSheetThatIsNotThereIsNamed() {
    assertEquals(
        "wasser.xlsx: has no sheet \"Bier\": [Titel, Wasser]",
        assertThrows(FileFaultException.class, ExcelFile.of(path).sheet("Bier")::read)
            .getMessage());
  }
}
