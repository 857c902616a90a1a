package org.brewchem.beer;

import java.util.Locale;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.substance.Acid;

/** How this room writes its numbers for people. */
final class Texts {

  private Texts() {}

  /** As lactic acid, as is the custom for beer. */
  static String acidity(TitratableAcidity acidity) {
    return NumberText.decimals(acidity.inGramsPerLitreAs(Acid.LACTIC), 3)
        + " g/L as lactic acid, to "
        + acidity.endPoint();
  }

  static String format(String format, Object... arguments) {
    return String.format(Locale.ROOT, format, arguments);
  }
}
