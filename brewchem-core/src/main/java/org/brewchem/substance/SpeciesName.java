package org.brewchem.substance;

/**
 * How the library writes the name of a species: IUPAC's notation, in which the charge number comes
 * before its sign ({@code Ca2+}, {@code HPO42-}, {@code citrate3-}).
 */
final class SpeciesName {

  private SpeciesName() {}

  /** Returns a name in IUPAC's notation, whether a table writes "HPO4-2" or "HPO42-". */
  static String iupac(String name) {
    return name.replaceFirst("([+-])([2-9])$", "$2$1");
  }

  /** Returns what stands behind the formula: "2+" for 2, "-" for -1, nothing for 0. */
  static String charge(int charge) {
    if (charge == 0) {
      return "";
    }
    String sign = charge > 0 ? "+" : "-";
    return Math.abs(charge) == 1 ? sign : Math.abs(charge) + sign;
  }
}
