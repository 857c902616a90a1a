package org.brewchem.water;

import org.brewchem.internal.NumberText;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.ResidualAlkalinity;

/** The lines of an explanation. */
final class Lines {

  private Lines() {}

  static String of(String... lines) {
    return String.join("\n", lines) + "\n";
  }

  static String of(Hardness hardness) {
    return number(hardness.inMilliequivalentsPerLitre())
        + " mEq/L = "
        + NumberText.decimals(hardness.inMilligramsPerLitreAsCaCO3(), 1)
        + " mg/L as CaCO3 = "
        + NumberText.decimals(hardness.inGermanDegrees(), 2)
        + " °dH\n";
  }

  static String step(String what, double milliequivalents) {
    return "  " + what + " = " + number(milliequivalents) + " mEq/L";
  }

  static String step(String what, Hardness hardness, double divisor, ResidualAlkalinity part) {
    return "  "
        + what
        + " = "
        + number(hardness.inMilliequivalentsPerLitre())
        + " / "
        + NumberText.plain(divisor)
        + " = "
        + number(part.inMilliequivalentsPerLitre())
        + " mEq/L";
  }

  /** An intermediate value, to four decimals. */
  static String number(double value) {
    return NumberText.decimals(value, 4);
  }

  static String significant(double value, int digits) {
    return NumberText.significant(value, digits);
  }
}
