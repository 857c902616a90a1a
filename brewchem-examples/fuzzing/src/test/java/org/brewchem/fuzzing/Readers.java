package org.brewchem.fuzzing;

import java.lang.reflect.Field;
import java.util.ArrayList;
import java.util.List;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Acid;
import org.brewchem.units.EndPointUnits;
import org.brewchem.units.LabUnits;
import org.brewchem.units.UnitSet;

/** All sets of units of the library. */
final class Readers {

  static final List<UnitSet<?>> UNIT_SETS = unitSets();

  static final EndPointUnits<TitrationAlkalinity> ALKALINITY = LabUnits.TITRATION_ALKALINITY;

  static final EndPointUnits<TitratableAcidity> ACIDITY =
      LabUnits.acidity(List.of(Acid.LACTIC, Acid.CITRIC));

  private Readers() {}

  private static List<UnitSet<?>> unitSets() {
    List<UnitSet<?>> sets = new ArrayList<>();
    for (Field field : LabUnits.class.getFields()) {
      try {
        if (field.get(null) instanceof UnitSet<?> set) {
          sets.add(set);
        }
      } catch (IllegalAccessException e) {
        throw new AssertionError(e);
      }
    }
    if (sets.size() < 20) {
      throw new AssertionError("only " + sets.size() + " sets of units");
    }
    return List.copyOf(sets);
  }
}
