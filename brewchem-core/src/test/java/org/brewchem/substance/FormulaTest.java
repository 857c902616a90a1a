package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.brewchem.OutOfRangeException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FormulaTest {

  @Test
  void nestingAndCountsHaveLimits() {
    String deep = "(".repeat(20_000) + "H" + ")".repeat(20_000);
    OutOfRangeException nested = assertThrows(OutOfRangeException.class, () -> Formula.parse(deep));
    assertEquals(
        "nested brackets of a formula: 21 is not possible; 0 to 20 is allowed",
        nested.getMessage());
    OutOfRangeException many =
        assertThrows(OutOfRangeException.class, () -> Formula.parse("(((H999)999)999)999"));
    assertEquals("atoms of hydrogen", many.argument());
    assertEquals("1 to 1000000", many.allowed());
    assertEquals(998_001, Formula.parse("(H999)999").count(Element.of("H")));
    assertEquals(
        18, Formula.parse("(".repeat(20) + "H" + ")".repeat(20) + "18").count(Element.of("H")));
    assertEquals(30, Formula.parse("(H)".repeat(30)).count(Element.of("H")), "side by side");
  }

  @Test
  void readsHydratesBracketsAndCounts() {
    Formula gypsum = Formula.parse("CaSO4.2H2O");
    assertEquals(1, gypsum.count(Element.of("Ca")));
    assertEquals(6, gypsum.count(Element.of("O")));
    assertEquals(4, gypsum.count(Element.of("H")));
    assertEquals(0, gypsum.count(Element.of("N")));
    assertEquals(
        Map.of(Element.of("Ca"), 1, Element.of("S"), 1, Element.of("O"), 6, Element.of("H"), 4),
        gypsum.counts());
    assertEquals(gypsum, Formula.parse("CaSO4·2H2O"));
    assertEquals(gypsum, Formula.parse("H4CaSO6"));
    assertEquals(Formula.parse("CaH2O2"), Formula.parse("Ca(OH)2"));
    assertEquals(Formula.parse("FeC6N6K4"), Formula.parse("K4[Fe(CN)6]"));
    assertEquals(17, Formula.parse("Na2B4O7.10H2O").count(Element.of("O")));
  }

  @ParameterizedTest
  @CsvSource({
    "Na+, 1",
    "SO4-2, -2",
    "HPO4^2-, -2",
    "HPO4^-2, -2",
    "Ca^2+, 2",
    "Ca+2, 2",
    "NH4+, 1",
    "HCO3-, -1",
    "B(OH)4-, -1",
    "Cl^-, -1",
    "H2O, 0"
  })
  void readsCharges(String text, int charge) {
    assertEquals(charge, Formula.parse(text).charge());
  }

  @Test
  void formulasOfDifferentChargeDiffer() {
    assertNotEquals(Formula.parse("SO4-2"), Formula.parse("SO4"));
    assertEquals(Formula.parse("SO4-2"), Formula.parse("SO4^2-"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''          | 1 | an element or a bracket",
        "caCO3       | 1 | an element or a bracket",
        "CaXx        | 3 | an element of the table of atomic weights, not \"Xx\"",
        "Ca(OH       | 6 | \")\"",
        "Ca(OH]2     | 6 | \")\"",
        "Ca()2       | 4 | an element or a bracket",
        "CaSO4.      | 7 | an element or a bracket",
        "CaSO4.0.5H2O| 7 | a count without a leading zero",
        "CaSO4.1.5H2O| 8 | a whole number of parts",
        "CaSO4..H2O  | 7 | an element or a bracket",
        "AxO         | 1 | an element of the table of atomic weights, not \"Ax\"",
        "ZxO         | 1 | an element of the table of atomic weights, not \"Zx\"",
        "CzO         | 1 | an element of the table of atomic weights, not \"Cz\"",
        "H02         | 2 | a count without a leading zero",
        "C1234       | 2 | a number up to 999",
        "Na+x        | 4 | an element, a bracket, a charge or the end",
        "SO4^2       | 6 | a charge, such as + or -2",
        "Ca2+        | 4 | write Ca^2+ or Ca2^+",
        "SO42-       | 5 | write SO4^2- or SO42^-",
        "Mg(SO4)22-  | 10 | write Mg(SO4)2^2- or Mg(SO4)22^-",
        "Ca SO4      | 3 | a charge, such as + or -2"
      })
  void saysWhatIsWrongAndWhere(String text, int position, String expected) {
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> Formula.parse(text));
    String message = error.getMessage();
    assertEquals("formula \"" + text + "\", position " + position, message.split(":", 2)[0]);
    assertTrue(message.contains(expected), message);
  }

  @ParameterizedTest
  @ValueSource(strings = {"CaSO4.2H2O", "CaSO4·2H2O", "Ca(OH)2", "NaHCO3", "Na+", "H2PO4-"})
  void keepsItsText(String text) {
    assertEquals(text, Formula.parse(text).toString());
  }

  /** IUPAC, Red Book 2005, IR-2.5.2, from memory: the charge number stands before its sign. */
  @ParameterizedTest
  @CsvSource({
    "Ca^2+, Ca2+",
    "Ca+2, Ca2+",
    "Ca2^+, Ca2+",
    "HPO4^2-, HPO42-",
    "HPO4^-2, HPO42-",
    "PO4-3, PO43-",
    "Cl^-, Cl-",
    "[Fe(CN)6]-4, [Fe(CN)6]4-"
  })
  void printsTheChargeAsIupacDoes(String text, String printed) {
    assertEquals(printed, Formula.parse(text).text());
    assertEquals(printed, Formula.parse(text).toString());
  }

  /** Sums of the CIAAW 2021 abridged weights, written out by hand. */
  @ParameterizedTest
  @CsvSource({
    "H2O, 18.015",
    "CaCO3, 100.086",
    "HCO3-, 61.016",
    "CO3-2, 60.008",
    "CO2, 44.009",
    "CaO, 56.077",
    "HCl, 36.458",
    "H2SO4, 98.072",
    "H3PO4, 97.994",
    "NaOH, 39.997",
    "KOH, 56.105",
    "C3H6O3, 90.078",
    "CH3COOH, 60.052",
    "C4H6O6, 150.086",
    "C6H8O7, 192.123",
    "C6H8O7.H2O, 210.138",
    "KHC8H4O4, 204.222",
    "KHC4H4O6, 188.176",
    "Na2CO3, 105.988",
    "NaHCO3, 84.006",
    "Ca(OH)2, 74.092",
    "CaSO4.2H2O, 172.164",
    "CaCl2, 110.978",
    "CaCl2.2H2O, 147.008",
    "MgSO4.7H2O, 246.466",
    "MgCl2.6H2O, 203.295",
    "NaCl, 58.440",
    "KCl, 74.548",
    "SO4-2, 96.056",
    "PO4-3, 94.970",
    "NaH2PO4, 119.976",
    "KH2PO4, 136.084",
    "Na2HPO4, 141.958",
    "Na2B4O7.10H2O, 381.363"
  })
  void molarMassIsTheExactSum(String text, double gramsPerMole) {
    assertEquals(gramsPerMole, Formula.parse(text).molarMass().inGramsPerMole(), 0.0);
  }

  @Property(tries = 200)
  void massAndAtomsAddUp(
      @ForAll @IntRange(min = 1, max = 30) int carbon,
      @ForAll @IntRange(min = 1, max = 60) int hydrogen,
      @ForAll @IntRange(min = 1, max = 9) int groups) {
    Formula inside = Formula.parse("C" + carbon + "H" + hydrogen);
    Formula repeated = Formula.parse("(C" + carbon + "H" + hydrogen + ")" + groups);
    assertEquals(
        groups * inside.molarMass().inGramsPerMole(),
        repeated.molarMass().inGramsPerMole(),
        1e-10 * groups * inside.molarMass().inGramsPerMole());
    assertEquals(groups * hydrogen, repeated.count(Element.of("H")));
  }
}
