package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.quantity.MassFraction;
import org.junit.jupiter.api.Test;

/** Which hazards belong to what, in the order in which they are told. */
class HandlingTest {

  private static List<Hazard> of(Solute solute) {
    return Handling.cautionsOf(solute).stream().map(Caution::hazard).distinct().toList();
  }

  private static List<Hazard> asBought(Compound compound, double massPercent) {
    return Handling.cautionsOf(Reagent.of(compound, MassFraction.ofMassPercent(massPercent)))
        .stream()
        .map(Caution::hazard)
        .distinct()
        .toList();
  }

  @Test
  void acids() {
    assertEquals(List.of(Hazard.ACID, Hazard.CARBON_DIOXIDE, Hazard.DOSING_FOOD), of(Acid.LACTIC));
    assertEquals(
        List.of(Hazard.ACID, Hazard.ACID_FUMES, Hazard.CARBON_DIOXIDE, Hazard.DOSING_FOOD),
        of(Acid.HYDROCHLORIC));
    assertEquals(
        List.of(Hazard.ACID, Hazard.ACID_HEAT, Hazard.CARBON_DIOXIDE, Hazard.DOSING_FOOD),
        of(Acid.SULFURIC));
    assertEquals(List.of(Hazard.CARBON_DIOXIDE, Hazard.DOSING_FOOD), of(Acid.CARBONIC));
  }

  @Test
  void anAcidBoughtAsAPowderIsDustToo() {
    assertEquals(
        List.of(Hazard.ACID, Hazard.DUST, Hazard.CARBON_DIOXIDE, Hazard.DOSING_FOOD),
        asBought(Acid.CITRIC, 100));
    assertEquals(
        List.of(Hazard.ACID, Hazard.CARBON_DIOXIDE, Hazard.DOSING_FOOD), asBought(Acid.LACTIC, 80));
  }

  @Test
  void hydroxides() {
    assertEquals(List.of(Hazard.LIME, Hazard.DOSING_FOOD), of(Base.CALCIUM_HYDROXIDE));
    assertEquals(List.of(Hazard.LYE, Hazard.DOSING_FOOD), of(Base.SODIUM_HYDROXIDE));
  }

  /** It takes up protons by a nitrogen, and is no lye. */
  @Test
  void anUnchargedBaseOfNitrogenIsAPowder() {
    Salt tris = Salt.of("tris base", "C4H11NO3", Map.of(Component.TRIS, 1.0));
    assertEquals(List.of(Hazard.DUST, Hazard.DOSING_FOOD), of(tris));
  }

  @Test
  void salts() {
    assertEquals(List.of(Hazard.DUST, Hazard.DOSING_FOOD), of(Salt.GYPSUM));
    assertEquals(
        List.of(Hazard.DUST, Hazard.SALT_HEAT, Hazard.DOSING_FOOD),
        of(Salt.CALCIUM_CHLORIDE_DIHYDRATE));
    assertEquals(
        List.of(Hazard.DUST, Hazard.CARBON_DIOXIDE, Hazard.FOAMING, Hazard.DOSING_FOOD),
        of(Base.SODIUM_BICARBONATE));
  }

  @Test
  void ofABareIonOnlyTheDosingCounts() {
    assertEquals(List.of(Hazard.DOSING_FOOD), of(Ion.CALCIUM));
    assertEquals(List.of(Hazard.DOSING_FOOD), of(Ion.BICARBONATE));
    assertEquals(List.of(Hazard.DOSING_FOOD), of(Component.CALCIUM));
  }
}
