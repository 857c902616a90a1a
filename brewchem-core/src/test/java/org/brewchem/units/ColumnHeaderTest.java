package org.brewchem.units;

import static org.brewchem.quantity.Quantities.mgPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.TitratableAcidity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ColumnHeaderTest {

  private record Basis(String name, double gramsPerEquivalent) implements AcidBasis {}

  private static final EndPointUnits<TitratableAcidity> ACIDITY =
      LabUnits.acidity(List.of(new Basis("lactic acid", 90.078)));

  @Test
  void aHeadingIsANameAndAUnit() {
    ColumnHeader calcium = ColumnHeader.parse("calcium [mg/L]");
    assertEquals("calcium", calcium.name());
    assertEquals(Optional.of("mg/L"), calcium.unit());
    assertEquals(mgPerL(92), calcium.unitOf(LabUnits.MASS_CONCENTRATION).from(92));
    assertEquals("calcium [mg/L]", calcium.toString());
  }

  @Test
  void aHeadingMayBeANameAlone() {
    ColumnHeader sample = ColumnHeader.parse("sample number");
    assertEquals("sample number", sample.name());
    assertEquals(Optional.empty(), sample.unit());
    UnitTextException error =
        assertThrows(UnitTextException.class, () -> sample.unitOf(LabUnits.MASS_CONCENTRATION));
    assertEquals(13, error.position());
    assertThrows(UnitTextException.class, () -> sample.unitOf(ACIDITY));
  }

  @Test
  void anotherUnitIsRefusedWithItsPlace() {
    ColumnHeader calcium = ColumnHeader.parse("calcium [mg/l]");
    UnitTextException error =
        assertThrows(UnitTextException.class, () -> calcium.unitOf(LabUnits.MASS_CONCENTRATION));
    assertEquals(9, error.position());
    assertEquals("calcium [mg/l]", error.text());
  }

  @Test
  void anAcidityColumnNamesBasisAndEndPoint() {
    LabUnit<TitratableAcidity> unit =
        ColumnHeader.parse("acidity [g/L as lactic acid, to pH 8.2]").unitOf(ACIDITY);
    assertEquals("g/L as lactic acid, to pH 8.2", unit.symbol());
    UnitTextException error =
        assertThrows(
            UnitTextException.class,
            () -> ColumnHeader.parse("acidity [g/L as lactic acid]").unitOf(ACIDITY));
    assertEquals(27, error.position());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "[mg/L]",
        " [mg/L]",
        "calcium[mg/L]",
        "calcium  [mg/L]",
        "calcium []",
        "calcium [ ]",
        "calcium [ mg/L]",
        "calcium [mg/L",
        "calcium mg/L]",
        "calcium [mg/L] ",
        "calcium ]mg/L[",
        "]",
        "]mg/L",
        "[mg/L",
        "calcium [[mg/L]]",
        "calcium [mg] [L]",
        " calcium",
        "calcium "
      })
  void anythingElseIsNoHeading(String text) {
    UnitTextException error = assertThrows(UnitTextException.class, () -> ColumnHeader.parse(text));
    assertEquals(text, error.text());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "calcium mg/L]|12|the brackets are not one pair at the end",
        "]mg/L|0|the brackets are not one pair at the end",
        "[mg/L|0|the brackets are not one pair at the end",
        "calcium [[mg/L]]|8|the brackets are not one pair at the end",
        "calcium ]mg/L[|13|the brackets are not one pair at the end",
        "[mg/L]|0|a name and one space are missing before the bracket",
        "calcium[mg/L]|7|a name and one space are missing before the bracket",
        "calcium []|9|the unit is empty or stands between spaces",
        "calcium [ mg/L]|9|the unit is empty or stands between spaces",
        " calcium|0|the name is empty or stands between spaces"
      })
  void theErrorSaysWhereAndWhat(String text, int position, String problem) {
    UnitTextException error = assertThrows(UnitTextException.class, () -> ColumnHeader.parse(text));
    assertEquals(position, error.position(), error.getMessage());
    assertTrue(error.getMessage().contains(problem), error.getMessage());
  }
}
