package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SoluteTest {

  @Test
  void componentsKnowTheirFormsAndCharges() {
    for (Component component : Component.named()) {
      assertEquals(component.chargeWithoutProtons(), component.formula().orElseThrow().charge());
      for (int n = 0; n <= component.protons(); n++) {
        String form = component.form(n);
        String stem = withoutCharge(form, component.chargeWithoutProtons() + n);
        if (component.form(0).startsWith(component.name())) {
          assertTrue(stem.endsWith(n == 0 ? component.name() : "(" + component.name() + ")"), form);
        } else if (n == 0) {
          assertEquals(
              component.formula().orElseThrow().counts(), Formula.parse(stem).counts(), form);
        } else {
          Formula below =
              Formula.parse(
                  withoutCharge(component.form(n - 1), component.chargeWithoutProtons() + n - 1));
          int water = below.count(Element.of("O")) - Formula.parse(stem).count(Element.of("O"));
          assertEquals(
              below.count(Element.of("H")) + 1,
              Formula.parse(stem).count(Element.of("H")) + 2 * water,
              form);
        }
      }
    }
    assertEquals("HPO42-", Component.PHOSPHATE.form(1));
    assertEquals("CO2(aq)", Component.CARBONATE.form(2));
    assertEquals("H2(citrate)-", Component.CITRATE.form(2));
    assertEquals("NH4+", Component.AMMONIA.form(1));
    assertThrows(IllegalArgumentException.class, () -> Component.SODIUM.form(1));
  }

  @Test
  void componentsAndIonsAreFoundByTheNameOfTheirSpecies() {
    assertEquals(Component.PHOSPHATE, Component.of("PO43-"));
    assertEquals(Component.CITRATE, Component.named("citrate3-"));
    assertEquals(Component.CALCIUM, Component.named("Ca^2+"));
    assertEquals(Ion.SULFATE, Ion.named("SO42-"));
    assertEquals(Ion.SULFATE, Ion.named("SO4^2-"));
    assertEquals("SO42-", Ion.SULFATE.toString());
    assertEquals("Fe2+", Component.strongIon("iron(II)", "Fe^2+").key());
    assertEquals(Component.strongIon("iron(II)", "Fe^2+"), Component.strongIon("iron(II)", "Fe+2"));
    assertEquals("sites2-", Component.group("sites", -2, 4.0).form(0));
    assertThrows(IllegalArgumentException.class, () -> Component.of("PO4-3"));
    assertThrows(IllegalArgumentException.class, () -> Ion.strong("iron(II)", "Fe2+"));
  }

  @Test
  void tablesMayWriteTheSignOfAChargeFirst() {
    assertEquals("Mg(SO4)22-", SpeciesName.iupac("Mg(SO4)2-2"));
    assertEquals("Mg(SO4)22-", SpeciesName.iupac("Mg(SO4)22-"));
    assertEquals("Ca2+", SpeciesName.iupac("Ca+2"));
    assertEquals("HCO3-", SpeciesName.iupac("HCO3-"));
    assertEquals("CO2(aq)", SpeciesName.iupac("CO2(aq)"));
    assertEquals("", SpeciesName.iupac(""));
  }

  /** The name without the charge that has to stand at its end, in IUPAC's notation. */
  static String withoutCharge(String name, int charge) {
    String size = Math.abs(charge) < 2 ? "" : String.valueOf(Math.abs(charge));
    String end = charge == 0 ? "" : size + (charge > 0 ? "+" : "-");
    assertTrue(name.endsWith(end), name + " should end in " + end);
    String stem = name.substring(0, name.length() - end.length());
    assertFalse(stem.endsWith("+") || stem.endsWith("-"), name);
    return stem.replace("(aq)", "");
  }

  /** The charge that the end of a species' name states in a table, where the sign comes first. */
  static int chargeOfName(String name) {
    String end = name.replaceAll("^.*?([+-][0-9]?)?$", "$1");
    if (end.isEmpty()) {
      return 0;
    }
    int size = end.length() == 1 ? 1 : Integer.parseInt(end.substring(1));
    return end.charAt(0) == '+' ? size : -size;
  }

  @ParameterizedTest
  @CsvSource({
    "1, LACTIC", "3, PHOSPHORIC", "3, CITRIC", "3, CITRIC_MONOHYDRATE", "2, MALIC", "2, TARTARIC",
    "1, ACETIC", "2, SUCCINIC", "1, PYRUVIC", "2, CARBONIC", "2, SULFUROUS", "2, SULFURIC",
    "1, HYDROCHLORIC", "1, NITRIC", "2, OXALIC", "1, BORIC", "2, PHTHALIC", "1, AMMONIUM"
  })
  void protonsByDefinitionFollowFromFormulaAndComponent(int protons, String acid)
      throws ReflectiveOperationException {
    assertEquals(protons, ((Acid) Acid.class.getField(acid).get(null)).protonsByDefinition());
  }

  /** Equivalent weights as analytical chemistry tabulates them, with the weights of 2021. */
  @Test
  void equivalentsByDefinition() {
    assertEquals(75.043, Acid.TARTARIC.gramsPerEquivalent(), 5e-4);
    assertEquals(67.043, Acid.MALIC.gramsPerEquivalent(), 6e-4);
    assertEquals(64.041, Acid.CITRIC.gramsPerEquivalent(), 5e-4);
    assertEquals(70.046, Acid.CITRIC_MONOHYDRATE.gramsPerEquivalent(), 5e-4);
    assertEquals(90.078, Acid.LACTIC.gramsPerEquivalent(), 5e-4);
    assertEquals(60.052, Acid.ACETIC.gramsPerEquivalent(), 5e-4);
    assertEquals(59.044, Acid.SUCCINIC.gramsPerEquivalent(), 5e-4);
    assertEquals(49.036, Acid.SULFURIC.gramsPerEquivalent(), 5e-4);
  }

  @Test
  void basesTakeUpProtonsByDefinition() {
    assertEquals(1, Base.SODIUM_HYDROXIDE.protonsByDefinition());
    assertEquals(1, Base.POTASSIUM_HYDROXIDE.protonsByDefinition());
    assertEquals(2, Base.CALCIUM_HYDROXIDE.protonsByDefinition());
    assertEquals(1, Base.SODIUM_BICARBONATE.protonsByDefinition());
    assertEquals(2, Base.SODIUM_CARBONATE.protonsByDefinition());
    assertEquals(52.994, Base.SODIUM_CARBONATE.gramsPerEquivalent(), 1e-9);
  }

  @Test
  void saltsBringTheirComponents() {
    assertEquals(
        Map.of(Component.CALCIUM, 1.0, Component.CHLORIDE, 2.0),
        Salt.CALCIUM_CHLORIDE_DIHYDRATE.components());
    assertEquals(
        Map.of(Component.POTASSIUM, 1.0, Component.PHTHALATE, 1.0),
        Salt.POTASSIUM_HYDROGEN_PHTHALATE.components());
    assertEquals(204.222, Salt.POTASSIUM_HYDROGEN_PHTHALATE.molarMass().inGramsPerMole());
    assertEquals(Map.of(Component.SODIUM, 2.0, Component.BORATE, 4.0), Salt.BORAX.components());
  }

  @Test
  void aSaltWhoseComponentsDoNotMakeItsFormulaIsRefused() {
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                Salt.of(
                    "soda",
                    "Na2CO3.10H2O",
                    Map.of(Component.SODIUM, 1.0, Component.CARBONATE, 1.0)));
    assertTrue(error.getMessage().startsWith("soda: formula Na2CO3.10H2O"));
    Salt soda =
        Salt.of("soda", "Na2CO3.10H2O", Map.of(Component.SODIUM, 2.0, Component.CARBONATE, 1.0));
    assertEquals(286.138, soda.molarMass().inGramsPerMole(), 1e-9);
    assertThrows(
        IllegalArgumentException.class, () -> Salt.of("ion", "Na+", Map.of(Component.SODIUM, 1.0)));
    assertThrows(
        IllegalArgumentException.class,
        () -> Salt.of("salt", "NaCl", Map.of(Component.SODIUM, 1.0, Component.CHLORIDE, 0.0)));
  }

  @Test
  void ionsCarryChargeAndMass() {
    assertEquals(2, Ion.CALCIUM.charge());
    assertEquals(-1, Ion.BICARBONATE.charge());
    assertEquals(61.016, Ion.BICARBONATE.molarMass().inGramsPerMole());
    assertEquals(Map.of(Component.CARBONATE, 1.0), Ion.BICARBONATE.components());
    Ion fluoride = Ion.strong("fluoride", "F-");
    assertEquals(-1, fluoride.charge());
    assertEquals(fluoride, Ion.strong("fluoride", "F-"));
    assertThrows(IllegalArgumentException.class, () -> Ion.strong("sodium", "Na+"));
    assertThrows(IllegalArgumentException.class, () -> Ion.strong("water", "H2O"));
  }

  @Test
  void anOwnAcidCarriesItsOwnConstants() {
    Acid own = Acid.ofKa("acid of our own", 1.8e-5);
    assertEquals(-1, own.component().chargeWithoutProtons());
    assertEquals(1, own.component().protons());
    assertEquals(
        Math.log10(1.8e-5), ConstantSet.standard().of(own.component()).get(0).log10(330.0), 1e-15);
    assertEquals(own, Acid.ofKa("acid of our own", 1.8e-5));
    assertNotEquals(own.component(), Acid.ofKa("acid of our own", 1.75e-5).component());
    assertThrows(IllegalStateException.class, own::gramsPerEquivalent);
    assertEquals(60.052, own.withFormula("CH3COOH").gramsPerEquivalent(), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> own.withFormula("CO2"));
    assertThrows(IllegalArgumentException.class, () -> Acid.ofKa("reversed", 1e-8, 1e-4));
    assertThrows(IllegalArgumentException.class, () -> Acid.ofKa("none"));
    assertThrows(IllegalArgumentException.class, () -> Acid.ofKa("zero", 0.0));
  }

  @Test
  void kaAndPKaAreTwoFactories() {
    assertEquals(
        -4.76, Acid.ofPKa("acid of our own", 4.76).component().ownConstants().get(0).log10(298.15));
    assertEquals(Acid.ofPKa("acid of our own", 4, 8), Acid.ofKa("acid of our own", 1e-4, 1e-8));
    assertThrows(IllegalArgumentException.class, () -> Acid.ofPKa("reversed", 8, 4));
    assertThrows(IllegalArgumentException.class, () -> Acid.ofPKa("none"));
    assertThrows(IllegalArgumentException.class, () -> Acid.ofPKa("nothing", Double.NaN));
  }

  @Test
  void ownConstantsForAnAcidOfTheLibraryGoIntoASet() {
    for (String name : new String[] {"acetic", "acetic acid", "oxalic", "carbonic acid"}) {
      IllegalArgumentException error =
          assertThrows(IllegalArgumentException.class, () -> Acid.ofKa(name, 1.8e-5));
      assertTrue(error.getMessage().contains("ConstantSet.withPKa"), error.getMessage());
    }
    ConstantSet set =
        ConstantSet.standard().withPKa(Acid.ACETIC, 4.745).withKa(Acid.CARBONIC, 4.3e-7, 4.7e-11);
    assertEquals(-4.745, set.of(Component.ACETATE).get(0).log10(330));
    assertEquals(Math.log10(4.7e-11), set.of(Component.CARBONATE).get(1).log10(280));
    assertThrows(
        IllegalArgumentException.class, () -> ConstantSet.standard().withPKa(Acid.CITRIC, 3.1));
    assertThrows(
        IllegalArgumentException.class,
        () -> ConstantSet.standard().withPKa(Acid.HYDROCHLORIC, -6));
  }

  @Test
  void groupsAreWhatTheirConstantsMakeThem() {
    Component carboxyl = Component.group("carboxyl groups", -1, 4.3);
    assertEquals(carboxyl, Component.group("carboxyl groups", -1, 4.3));
    assertNotEquals(carboxyl, Component.group("carboxyl groups", -1, 4.4));
    assertNotEquals(carboxyl, Component.group("carboxyl groups", 0, 4.3));
    assertEquals("H(carboxyl groups)", carboxyl.form(1));
    assertThrows(IllegalArgumentException.class, () -> Component.group("none", -1, new double[0]));
    assertThrows(IllegalArgumentException.class, () -> Component.group("fall", -2, 7.0, 4.0));
  }
}
