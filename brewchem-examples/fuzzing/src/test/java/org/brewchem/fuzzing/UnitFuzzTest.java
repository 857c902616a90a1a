package org.brewchem.fuzzing;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.function.Function;
import java.util.function.Supplier;
import org.brewchem.units.LabUnit;
import org.brewchem.units.UnitSet;

/** Units from any text; what was found is found again by its symbol. */
class UnitFuzzTest {

  @FuzzTest(maxDuration = "10m")
  @DictionaryFile(resourcePath = "units.dict")
  void unit(byte[] input) {
    String text = Oracle.text(input);
    for (UnitSet<?> units : Readers.UNIT_SETS) {
      named(text, () -> units.named(text), units::named);
    }
    named(text, () -> Readers.ALKALINITY.named(text), Readers.ALKALINITY::named);
    named(text, () -> Readers.ACIDITY.named(text), Readers.ACIDITY::named);
  }

  private static <Q> void named(
      String text, Supplier<LabUnit<Q>> reader, Function<String, ? extends LabUnit<?>> again) {
    Oracle.read(text, reader)
        .ifPresent(
            unit -> {
              Oracle.requireEqual(unit.symbol(), again.apply(unit.symbol()).symbol());
              Oracle.ask(() -> unit.from(7))
                  .ifPresent(value -> near(7, unit.in(value), unit.symbol()));
            });
  }

  private static void near(double expected, double found, String unit) {
    if (!(Math.abs(found / expected - 1) < 1e-9)) {
      throw new AssertionError(expected + " " + unit + " came back as " + found);
    }
  }
}
