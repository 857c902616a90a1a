package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The tables of constants, checked by what they mean rather than by their digits. */
class ConstantDataTest {

  private static final double ROOM_K = 298.15;
  private static final Pattern TERM = Pattern.compile("([0-9]*)([^0-9].*)");

  @Test
  void theTablesAreComplete() {
    holdsRows(126, "dissociation-constants.csv");
    holdsRows(73, "ion-pairs.csv");
    holdsRows(12, "minerals.csv");
    holdsRows(1, "gases.csv");
    holdsRows(33, "ion-size-parameters.csv");
  }

  private static void holdsRows(int count, String table) {
    assertEquals(
        count,
        ResourceTable.read(table).size(),
        () -> "rows of " + table + ": none may be lost; with new ones, change the number here");
  }

  @Test
  void everySetHasItsStepsInOrderAndInRange() {
    for (String name : ConstantSet.names()) {
      ConstantSet set = ConstantSet.named(name);
      for (Component component : Component.named()) {
        double before = 0.0;
        for (int step = 1; step <= component.protons(); step++) {
          if (set.step(component, step).isPresent()) {
            double pKa = -set.step(component, step).orElseThrow().log10(ROOM_K);
            assertTrue(pKa > before && pKa < 14.0, name + ", " + component + " " + step);
            before = pKa;
          }
        }
      }
    }
  }

  /** Where an expression stands in for the printed pKa and dH, it must give them at 25 °C. */
  @Test
  void expressionsGiveThePrintedValues() {
    int checked = 0;
    for (ResourceTable.Row row : ResourceTable.read("dissociation-constants.csv")) {
      if (!row.text("analytic").isEmpty()) {
        double pKa = -row.constant("pKa", -1.0).log10(ROOM_K);
        assertEquals(row.number("pKa"), pKa, 0.0025, row::place);
        if (row.optionalNumber("dH_kJ_per_mol").isPresent()) {
          double slope =
              row.constant("pKa", -1.0).log10(ROOM_K + 0.05)
                  - row.constant("pKa", -1.0).log10(ROOM_K - 0.05);
          double enthalpy = slope / 0.1 * Math.log(10.0) * 8.314462618e-3 * ROOM_K * ROOM_K;
          assertEquals(row.number("dH_kJ_per_mol"), enthalpy, 0.35, row::place);
        }
        checked++;
      }
    }
    assertEquals(6, checked);
    for (String table : List.of("ion-pairs.csv", "minerals.csv", "gases.csv")) {
      for (ResourceTable.Row row : ResourceTable.read(table)) {
        if (!row.text("analytic").isEmpty()) {
          assertEquals(
              row.number("log_K_25C"),
              row.constant("log_K_25C", 1.0).log10(ROOM_K),
              0.0075,
              row::place);
        }
      }
    }
  }

  @Test
  void independentSetsAgreeWhereTheyShould() {
    ConstantSet standard = ConstantSet.standard();
    for (String name : ConstantSet.names()) {
      ConstantSet other = ConstantSet.named(name);
      for (Component component : other.components()) {
        List<EquilibriumConstant> expected = standard.of(component);
        List<EquilibriumConstant> actual = other.of(component);
        for (int i = 0; i < actual.size(); i++) {
          // the widest published disagreement is that of the first step of oxalic acid
          assertEquals(
              expected.get(i).log10(ROOM_K),
              actual.get(i).log10(ROOM_K),
              0.135,
              name + ", " + component);
        }
      }
    }
  }

  @Test
  void theStandardSetHoldsEveryAcid() {
    for (Component component : Component.named()) {
      assertTrue(ConstantSet.standard().contains(component), component::key);
    }
    assertEquals(
        "obigt",
        ConstantSet.standard().of(Component.LACTATE).get(0).provenance().orElseThrow().sourceKey());
    assertEquals(
        "goldberg-2002",
        ConstantSet.standard().of(Component.CITRATE).get(2).provenance().orElseThrow().sourceKey());
  }

  @Test
  void setsAreNeverMixedInSilence() {
    ConstantSet goldberg = ConstantSet.named("goldberg-2002");
    assertFalse(goldberg.contains(Component.LACTATE));
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> goldberg.of(Component.LACTATE));
    assertTrue(error.getMessage().contains("goldberg-2002"), error.getMessage());
    assertTrue(goldberg.of(Component.SODIUM).isEmpty());
    ConstantSet completed = goldberg.completedWith(ConstantSet.named("partanen-2003"));
    assertEquals(-3.858, completed.of(Component.LACTATE).get(0).log10(ROOM_K));
    assertFalse(ConstantSet.named("bates-acree-1943").contains(Component.PHOSPHATE));
    assertThrows(IllegalArgumentException.class, () -> ConstantSet.named("nobody"));
  }

  @Test
  void constantsCanBeTyped() {
    EquilibriumConstant typed = EquilibriumConstant.ofLog10(-4.75);
    ConstantSet set = ConstantSet.standard().with(Component.ACETATE, typed);
    assertSame(typed, set.of(Component.ACETATE).get(0));
    assertEquals("standard with other acetate", set.name());
    assertThrows(
        IllegalArgumentException.class,
        () -> ConstantSet.standard().with(Component.CITRATE, typed));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            ConstantSet.empty("own")
                .with(Component.TARTRATE, typed, EquilibriumConstant.ofLog10(-3.0)));
  }

  /** Bates and Acree 1943: pK2 = 1979.5/T - 5.3541 + 0.01984 T; from memory, as the row says. */
  @Test
  void reviewAndMeasurementOfPhosphoricAcidAgreeOverTemperature() {
    EquilibriumConstant measured =
        ConstantSet.named("bates-acree-1943").step(Component.PHOSPHATE, 2).orElseThrow();
    EquilibriumConstant review = ConstantSet.standard().of(Component.PHOSPHATE).get(1);
    for (double kelvin = 273.15; kelvin <= 323.15; kelvin += 5.0) {
      assertEquals(measured.log10(kelvin), review.log10(kelvin), 0.01);
    }
  }

  @Test
  void everyPrintedReactionIsBalancedAndSaysWhatTheColumnsSay() {
    for (ResourceTable.Row row : ResourceTable.read("ion-pairs.csv")) {
      String[] sides = row.text("reaction").split(" = ");
      double charge = charge(sides[0]);
      assertEquals(charge, charge(sides[1]), row::place);
      Map<String, Integer> left = terms(sides[0]);
      int hydrogen = left.getOrDefault("H+", 0) - terms(sides[1]).getOrDefault("H+", 0);
      String writtenOn = row.text("written_on");
      int protonsOfLigand =
          switch (writtenOn) {
            case "HCO3-", "HPO4-2", "HSO4-" -> 1;
            case "H2PO4-" -> 2;
            default -> 0;
          };
      assertEquals(row.integer("protons"), hydrogen + protonsOfLigand, row::place);
      if (!writtenOn.isEmpty()) {
        assertTrue(left.containsKey(writtenOn), row::place);
      }
      IonPair pair =
          PairSet.named(row.text("source_key")).find(row.species("product")).orElseThrow();
      assertTrue(terms(sides[1]).containsKey(row.text("product")), row::place);
      assertEquals(SoluteTest.chargeOfName(row.text("product")), pair.charge(), row::place);
      String stem = SoluteTest.withoutCharge(pair.product(), pair.charge());
      assertEquals(
          row.text("product").replace("(aq)", "").replaceAll("[+-][0-9]?$", ""), stem, row::place);
    }
  }

  private static double charge(String side) {
    return terms(side).entrySet().stream()
        .mapToDouble(term -> term.getValue() * SoluteTest.chargeOfName(term.getKey()))
        .sum();
  }

  private static Map<String, Integer> terms(String side) {
    Map<String, Integer> terms = new LinkedHashMap<>();
    for (String part : side.split(" \\+ ")) {
      Matcher term = TERM.matcher(part);
      assertTrue(term.matches(), part);
      terms.merge(
          term.group(2),
          term.group(1).isEmpty() ? 1 : Integer.parseInt(term.group(1)),
          Integer::sum);
    }
    return terms;
  }

  /** Sums of the rows of phreeqc.dat, written out: 12.346 + 2.739, 19.553 + 1.408, 2.42 + 0.52. */
  @Test
  void pairsAreCountedOnFullyDeprotonatedLigands() {
    assertEquals(15.085, constant("CaHPO4(aq)"), 1e-9);
    assertEquals(20.961, constant("CaH2PO4+"), 1e-9);
    assertEquals(-0.06 + 10.329, constant("NaHCO3(aq)"), 2e-4);
    assertEquals(1.08 + 1.988, constant("CaHSO4+"), 5e-4);
    assertEquals(2.42 + 0.52, constant("Mg(SO4)22-"), 5e-3);
    assertEquals(
        1.1057 + 10.3289,
        PairSet.named("plummer-busenberg-1982")
            .find("CaHCO3+")
            .orElseThrow()
            .constant()
            .log10(ROOM_K),
        2e-4);
  }

  private static double constant(String product) {
    return PairSet.withAlkaliPairs().find(product).orElseThrow().constant().log10(ROOM_K);
  }

  @Test
  void pairSetsAreChosenByNameAndChangedByPair() {
    assertEquals(42, PairSet.standard().pairs().size());
    assertEquals(56, PairSet.withAlkaliPairs().pairs().size());
    assertTrue(PairSet.none().pairs().isEmpty());
    IonPair other = PairSet.named("plummer-busenberg-1982").find("CaHCO3+").orElseThrow();
    PairSet changed = PairSet.standard().with(other);
    assertEquals(42, changed.pairs().size());
    assertSame(other, changed.find("CaHCO3+").orElseThrow());
    assertTrue(changed.without("CaHCO3+").find("CaHCO3+").isEmpty());
    assertThrows(IllegalArgumentException.class, () -> PairSet.none().without("CaHCO3+"));
    assertThrows(IllegalArgumentException.class, () -> PairSet.named("nobody"));
  }

  /** Set apart by their meaning: a metal that is sodium or potassium, and no hydrogen phosphate. */
  @Test
  void theDefaultLeavesOutWhatTheDaviesEquationCounts() {
    List<String> alkali = new ArrayList<>();
    for (IonPair pair : PairSet.standard().pairs()) {
      if (pair.product().startsWith("Na") || pair.product().startsWith("K")) {
        alkali.add(pair.product());
      }
    }
    assertEquals(List.of("NaHPO4-", "KHPO4-"), alkali);
    for (String product : alkali) {
      assertEquals(0.29 + 12.346, constant(product), 1e-9);
    }
    PairSet all = PairSet.withAlkaliPairs();
    for (IonPair pair : PairSet.standard().pairs()) {
      assertSame(pair, all.find(pair.product()).orElseThrow());
    }
  }

  /**
   * Magnesium phosphate of SCD 3.02 in minteq.v4.dat, between which and 4.85 of ThermoChimie the
   * critical compilations stand; magnesium malate 1.71 at 0.1 mol/L (NIST 46) and 8 times the
   * Davies term of a univalent ion, 0.107, rounded to 2.6.
   */
  @Test
  void theArguedDefaultsAreWhatTheirPageSays() {
    assertEquals(4.654, constant("MgPO4-"), 1e-9);
    assertEquals(6.589, constantOf("phreeqc-dat", "MgPO4-"), 1e-9);
    assertEquals(4.85, constantOf("thermochimie", "MgPO4-"), 1e-9);
    assertEquals(1.71 + 8 * 0.107, constant("MgMalate"), 0.05);
    assertEquals(2.3, constantOf("martell-smith", "MgMalate"), 1e-9);
  }

  /** At 65 °C as the data set itself gives it: 1.54, 1.62, 0.16 and 0.21. */
  @Test
  void lactatePairsFollowTemperature() {
    assertEquals(1.54, atMashTemperature("CaLactate+"), 0.006);
    assertEquals(1.62, atMashTemperature("MgLactate+"), 0.006);
    assertEquals(0.16, atMashTemperature("NaLactate(aq)"), 0.006);
    assertEquals(0.21, atMashTemperature("KLactate(aq)"), 0.006);
  }

  private static double atMashTemperature(String product) {
    return PairSet.named("shock-koretsky-1995")
        .find(product)
        .orElseThrow()
        .constant()
        .log10(338.15);
  }

  private static double constantOf(String set, String product) {
    return PairSet.named(set).find(product).orElseThrow().constant().log10(ROOM_K);
  }

  @Test
  void anImpossiblePairIsRefused() {
    EquilibriumConstant one = EquilibriumConstant.ofLog10(1.0);
    IonPair pair = IonPair.of("FeCitrate(aq)", iron(), Component.CITRATE, 1, 0, one);
    assertEquals(0, pair.charge());
    assertEquals(1, IonPair.hydroxide("Fe(OH)2+", iron(), 2, one).charge());
    assertThrows(
        IllegalArgumentException.class,
        () -> IonPair.of("x", Component.PHOSPHATE, Component.CITRATE, 1, 0, one));
    assertThrows(
        IllegalArgumentException.class,
        () -> IonPair.of("x", Component.CALCIUM, Component.LACTATE, 1, 2, one));
    assertThrows(
        IllegalArgumentException.class,
        () -> IonPair.of("x", Component.CALCIUM, Component.LACTATE, 0, 0, one));
    assertThrows(
        IllegalArgumentException.class, () -> IonPair.hydroxide("x", Component.CALCIUM, 0, one));
  }

  private static Component iron() {
    return Component.strongIon("iron(III)", "Fe^3+");
  }

  @Test
  void mineralsDissolveAsTheirPrintedReactionsSay() {
    for (ResourceTable.Row row : ResourceTable.read("minerals.csv")) {
      Mineral mineral = Mineral.of(row.text("mineral"), row.text("source_key"));
      String[] sides = row.text("reaction").split(" = ");
      Map<String, Integer> left = terms(sides[0]);
      Map<String, Integer> right = terms(sides[1]);
      double hydrogen =
          right.getOrDefault("H+", 0)
              - left.getOrDefault("H+", 0)
              + right.getOrDefault("HPO4-2", 0);
      assertEquals(hydrogen, mineral.hydrogenIons(), row::place);
      assertEquals((double) right.getOrDefault("H2O", 0), mineral.waters(), row::place);
      Component metal =
          mineral.components().containsKey(Component.CALCIUM)
              ? Component.CALCIUM
              : Component.MAGNESIUM;
      String printed = metal.equals(Component.CALCIUM) ? "Ca+2" : "Mg+2";
      assertEquals((double) right.get(printed), mineral.components().get(metal), row::place);
    }
    assertEquals(-3.421 - 3.0 * 12.346, Mineral.HYDROXYAPATITE.constant().log10(ROOM_K), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> Mineral.of("calcite", "nist46"));
  }

  /** The Debye-Hückel parameters name species that exist, and have sizes that ions have. */
  @Test
  void ionSizesBelongToKnownSpecies() {
    List<String> known = new ArrayList<>(List.of("H+", "OH-"));
    for (Component component : Component.named()) {
      for (int n = 0; n <= component.protons(); n++) {
        known.add(component.form(n));
      }
    }
    PairSet.withAlkaliPairs().pairs().forEach(pair -> known.add(pair.product()));
    IonSizeParameters.standard()
        .all()
        .forEach(
            (species, values) -> {
              assertTrue(known.contains(species), species);
              if (!species.matches(".*[+-]")) {
                assertEquals(0.0, values.angstroms(), species);
              } else {
                assertTrue(values.angstroms() >= 2.0 && values.angstroms() <= 9.0, species);
              }
              assertTrue(Math.abs(values.slope()) < 0.5, species);
            });
    IonSizeParameters changed = IonSizeParameters.standard().with("F-", 3.5, 0.0);
    assertEquals(3.5, changed.of("F-").orElseThrow().angstroms());
    assertTrue(IonSizeParameters.standard().of("F-").isEmpty());
  }
}
