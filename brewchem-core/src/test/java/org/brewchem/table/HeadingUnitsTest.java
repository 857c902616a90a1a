package org.brewchem.table;

import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Ion;
import org.brewchem.units.UnitTextException;
import org.junit.jupiter.api.Test;

/** How the unit of a heading is written, and which units are read. */
class HeadingUnitsTest {

  private static List<String> noticesOf(String heading) {
    return Waters.from(Table.of(Column.of("alkalinity [mEq/L]", 2), Column.of(heading, 3)))
        .notices()
        .stream()
        .filter(notice -> notice.code() == TableCode.HEADING_NEARLY_KNOWN)
        .map(Object::toString)
        .toList();
  }

  @Test
  void aKnownNameWithItsUnitWrittenOtherwiseGivesANotice() {
    for (String heading :
        List.of(
            "calcium (mg/L)",
            "Calcium, mg/l",
            "calcium mg/L",
            "calcium_mg_L",
            "calcium ppm",
            "u(calcium) (mg/L)")) {
      List<String> notices = noticesOf(heading);
      assertEquals(1, notices.size(), heading);
      assertTrue(
          notices
              .get(0)
              .contains(
                  "column \""
                      + heading
                      + "\" is not read; \"calcium\" is read with its unit, if it has one, after"
                      + " one space in square brackets, as in \"calcium [mg/L]\""),
          notices.get(0));
    }
    List<String> longest = noticesOf("sulfate as sulfur (mg/L)");
    assertTrue(longest.get(0).contains("\"sulfate as sulfur\" is read"), longest.get(0));
  }

  @Test
  void aNameOfItsOwnThatBeginsWithAKnownOneGivesNone() {
    for (String heading :
        List.of(
            "calcium hardness [mg/L as CaCO3]",
            "calcium of the well",
            "calcium below [mg/L]",
            "pH of mash",
            "sodium-free",
            "well")) {
      assertEquals(List.of(), noticesOf(heading), heading);
    }
    Table table =
        Table.of(Column.of("volume [mL]", 14), Column.of("blank (mL)", 0.1))
            .withTexts("sample mL", List.of("50"));
    assertEquals(2, Acidities.from(table, pH(8.2)).notices().size());
  }

  /** By definition 1 mEq/L of an ion of two charges is 0.5 mmol/L, and 1000 µg are 1 mg. */
  @Test
  void anIonIsReadInMicrogramsAndMilliequivalents() {
    Waters waters =
        Waters.from(
            Table.of(
                Column.of("alkalinity [mEq/L]", 2),
                Column.of("calcium [mEq/L]", 4),
                Column.of("u(calcium) [mEq/L]", 0.2),
                Column.of("chloride [mEq/L]", 2),
                Column.of("sodium [µg/L]", 12000)));
    Column calcium = waters.columnWithUncertainty(Figures.concentration(Ion.CALCIUM));
    double perMole = Ion.CALCIUM.molarMass().inGramsPerMole();
    assertEquals(2 * perMole, calcium.value(0), 1e-12);
    assertEquals(0.1 * perMole, calcium.standardUncertainty().orElseThrow().value(0), 1e-12);
    assertEquals(
        2 * Ion.CHLORIDE.molarMass().inGramsPerMole(),
        waters.column(Figures.concentration(Ion.CHLORIDE)).value(0),
        1e-12);
    assertEquals(12, waters.column(Figures.concentration(Ion.SODIUM)).value(0), 1e-12);
  }

  @Test
  void theMessageOfAUnitThatIsNotReadNamesAllThatAre() {
    String units = "mg/L, g/L, g/hL, µg/L, ppm of dilute water, mmol/L, mol/L";
    assertEquals(
        "\"calcium [mg/l]\", character 10: \"mg/l\" is not a unit of mass concentration or amount"
            + " concentration or charge concentration; allowed: "
            + units
            + ", mEq/L, Eq/L",
        refusalOf("calcium [mg/l]"));
    assertEquals(
        "\"silica [mEq/L]\", character 9: \"mEq/L\" is not a unit of mass concentration or amount"
            + " concentration; allowed: "
            + units,
        refusalOf("silica [mEq/L]"));
    assertTrue(refusalOf("calcium").endsWith(units + ", mEq/L, Eq/L"));
  }

  private static String refusalOf(String heading) {
    Table table = Table.of(Column.of(heading, 4));
    return assertThrows(UnitTextException.class, () -> Waters.from(table)).getMessage();
  }

  /** A million milligrams a litre is allowed, and stays that when it is counted in moles. */
  @Test
  void theGreatestNumberAllowedIsAllowedInEveryUnit() {
    for (String ion : List.of("calcium", "magnesium", "sodium", "potassium")) {
      Table table =
          Table.of(
              Column.of(ion + " [mg/L]", 1e6, 1000000.01), Column.of("alkalinity [mEq/L]", 2, 2));
      Column column = Waters.from(table).column(Figures.concentration(Ion.named(ion)));
      assertEquals(1e6, column.value(0), 1e-8, ion);
      assertEquals(
          ion + ": 1000000.01 mg/L is not possible; 1000000 mg/L or less is allowed",
          column.failure(1).orElseThrow().reason());
    }
  }

  /** 3 would be 300 %; 3 % are 0.03. */
  @Test
  void aRelativeUncertaintyIsAShareOfAtMostOne() {
    Waters waters = Waters.from(Table.of(Column.of("calcium [mg/L]", 40)));
    assertEquals(
        "calcium, relative standard uncertainty: 3 is not possible; 0 to 1 is allowed",
        assertThrows(
                IllegalArgumentException.class, () -> waters.withRelativeUncertainty("calcium", 3))
            .getMessage());
    assertEquals(
        40,
        waters
            .withRelativeUncertainty("calcium", 1)
            .columnWithUncertainty(Figures.concentration(Ion.CALCIUM))
            .standardUncertainty()
            .orElseThrow()
            .value(0),
        1e-12);
  }
}
