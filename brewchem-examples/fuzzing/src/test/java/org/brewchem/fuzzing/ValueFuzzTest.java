package org.brewchem.fuzzing;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import org.brewchem.units.EndPointUnits;
import org.brewchem.units.LabUnit;
import org.brewchem.units.Text;
import org.brewchem.units.UnitSet;

/** Numbers and values with their units from any text; what was read prints, and reads again. */
class ValueFuzzTest {

  private static final int MOST_DIGITS = 15;

  @FuzzTest(maxDuration = "10m")
  @DictionaryFile(resourcePath = "units.dict")
  void value(byte[] input) {
    String text = Oracle.text(input);
    Oracle.read(text, () -> Text.parseNumber(text))
        .ifPresent(number -> Oracle.requireFinite(number, text));
    Oracle.read(text, () -> Text.parsePH(text))
        .ifPresent(pH -> Oracle.requireEqual(pH, Text.parsePH(Text.exact(pH))));
    for (UnitSet<?> units : Readers.UNIT_SETS) {
      read(units, text);
    }
    read(Readers.ALKALINITY, text);
    read(Readers.ACIDITY, text);
  }

  private static <Q> void read(UnitSet<Q> units, String text) {
    Oracle.read(text, () -> units.read(text))
        .ifPresent(
            value -> {
              Oracle.requireEqual(value, units.read(units.exact(value)));
              for (LabUnit<Q> unit : units.units()) {
                Oracle.requireFinite(unit.in(value), text + " in " + unit);
                String printed = unit.text(value, MOST_DIGITS);
                Oracle.read(printed, () -> units.read(printed));
              }
            });
  }

  private static <Q> void read(EndPointUnits<Q> units, String text) {
    Oracle.read(text, () -> units.read(text))
        .ifPresent(value -> Oracle.requireEqual(value, units.read(units.exact(value))));
  }
}
