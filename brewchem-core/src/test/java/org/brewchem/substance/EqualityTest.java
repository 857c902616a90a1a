package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Supplier;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.MassFraction;
import org.junit.jupiter.api.Test;

/** What a user compares or makes a key of is equal when all that is stated of it is. */
class EqualityTest {

  /** Each is equal to itself made again, and to none of the others. */
  private static void allDifferent(List<Supplier<Object>> makers) {
    for (int i = 0; i < makers.size(); i++) {
      for (int j = 0; j < makers.size(); j++) {
        Object one = makers.get(i).get();
        Object other = makers.get(j).get();
        if (i == j) {
          assertEquals(one, other);
          assertEquals(one.hashCode(), other.hashCode());
        } else {
          assertNotEquals(one, other, i + ", " + j);
        }
      }
      assertNotEquals(makers.get(i).get(), null);
      assertNotEquals(makers.get(i).get(), "text");
    }
    // Equal hashes are allowed, but one for all would make every key a search.
    assertTrue(makers.stream().mapToInt(maker -> maker.get().hashCode()).distinct().count() > 1);
  }

  private static Reagent lactic(double massPercent) {
    return Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(massPercent));
  }

  private static final Density TYPED = Density.ofGramsPerMillilitre(1.2);

  @Test
  void reagents() {
    allDifferent(
        List.of(
            () -> lactic(80),
            () -> lactic(88),
            () -> Reagent.of(Acid.CITRIC, MassFraction.ofMassPercent(80)),
            () -> lactic(80).withDensity(TYPED, 0.01),
            () -> lactic(80).withDensity(TYPED, 0.02),
            () -> lactic(80).withDensity(Density.ofGramsPerMillilitre(1.19), 0.01),
            () -> lactic(80).withAssayUncertainty(0.01),
            () -> lactic(80).withAssayUncertainty(0),
            () -> Reagent.ofUsualPurity(Salt.GYPSUM),
            () -> Reagent.of(Salt.GYPSUM, Reagent.ofUsualPurity(Salt.GYPSUM).assay()),
            () -> lactic(80).withBoundInEsters(MassFraction.ofMassPercent(10)),
            () -> lactic(80).withBoundInEsters(MassFraction.ofMassPercent(10), 0.2),
            () -> lactic(80).withUse(Use.BEER, "our authority"),
            () -> lactic(80).withUse(Use.MASH, "our authority")));
  }

  @Test
  void setsOfConstants() {
    allDifferent(
        List.of(
            ConstantSet::standard,
            () -> ConstantSet.named("goldberg-2002"),
            () -> ConstantSet.standard().renamed("another", "the same constants"),
            () -> ConstantSet.standard().withPKa(Acid.ACETIC, 4.745),
            () -> ConstantSet.standard().withPKa(Acid.ACETIC, 4.76),
            () -> ConstantSet.empty("mine")));
    allDifferent(
        List.of(
            PairSet::standard,
            PairSet::none,
            () -> PairSet.named("nist46"),
            () -> PairSet.standard().renamed("another")));
  }

  @Test
  void gasesAndIonSizes() {
    allDifferent(
        List.of(
            () -> Gas.CARBON_DIOXIDE,
            () -> Gas.CARBON_DIOXIDE.with(EquilibriumConstant.ofLog10(-1.5))));
    allDifferent(
        List.of(
            IonSizeParameters::standard, () -> IonSizeParameters.standard().with("Fe2+", 6, 0)));
  }

  @Test
  void acidsAndComponents() {
    allDifferent(
        List.of(
            () -> Acid.LACTIC,
            () -> Acid.LACTIC.withUse(Use.BEER, "our authority"),
            () -> Acid.ofPKa("acid of our own", 4.76),
            () -> Acid.ofPKa("acid of our own", 4.75),
            () -> Acid.ofPKa("acid of our own", 4.76).withFormula("C2H4O2")));
    allDifferent(
        List.of(
            () -> Component.named("lactate"),
            () -> Component.group("lactate", -1, 3.86),
            () -> Component.group("lactate", -1, 3.87)));
  }

  @Test
  void ionsBasesAndSalts() {
    allDifferent(
        List.of(
            () -> Ion.CALCIUM,
            () -> Ion.named("chloride"),
            () -> Ion.BICARBONATE,
            () -> Ion.SODIUM));
    allDifferent(
        List.of(
            () -> Base.SODIUM_HYDROXIDE, () -> Base.named("KOH"), () -> Base.SODIUM_BICARBONATE));
    allDifferent(List.of(() -> Salt.GYPSUM, () -> Salt.EPSOM_SALT, () -> Salt.CHALK));
  }

  @Test
  void constants() {
    allDifferent(
        List.of(
            () -> EquilibriumConstant.ofLog10(-3),
            () -> EquilibriumConstant.ofLog10(-4),
            () -> EquilibriumConstant.analytic(-3, 0, 0, 0, 0),
            () -> EquilibriumConstant.analytic(-3, 1, 0, 0, 0)));
    assertEquals("log10 K = -3.0000 at 25 °C", EquilibriumConstant.ofLog10(-3).toString());
  }

  private static IonPair pair(
      String name, Component metal, Component ligand, int count, int protons, double log10) {
    return IonPair.of(name, metal, ligand, count, protons, EquilibriumConstant.ofLog10(log10));
  }

  @Test
  void ionPairs() {
    allDifferent(
        List.of(
            () -> pair("pair", Component.CALCIUM, Component.PHOSPHATE, 1, 1, 2),
            () -> pair("another", Component.CALCIUM, Component.PHOSPHATE, 1, 1, 2),
            () -> pair("pair", Component.MAGNESIUM, Component.PHOSPHATE, 1, 1, 2),
            () -> pair("pair", Component.CALCIUM, Component.CITRATE, 1, 1, 2),
            () -> pair("pair", Component.CALCIUM, Component.PHOSPHATE, 2, 1, 2),
            () -> pair("pair", Component.CALCIUM, Component.PHOSPHATE, 1, 2, 2),
            () -> pair("pair", Component.CALCIUM, Component.PHOSPHATE, 1, 1, 3)));
  }

  @Test
  void minerals() {
    allDifferent(
        List.of(
            () -> Mineral.CALCITE,
            () -> Mineral.ARAGONITE,
            () -> Mineral.BRUCITE,
            () -> Mineral.of("brucite", "brucite-set-b")));
    assertEquals("calcite", Mineral.CALCITE.toString());
  }
}
