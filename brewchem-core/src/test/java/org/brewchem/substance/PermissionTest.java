package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Field;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.brewchem.quantity.MassFraction;
import org.junit.jupiter.api.Test;

/** What may be dosed into which liquid. */
class PermissionTest {

  private static final Acid OWN = Acid.ofKa("acid of our own", 1e-4).withFormula("C2H4O2");

  /** The public constants of a class that are of that class. */
  static <T> List<T> constants(Class<T> type) {
    List<T> constants = new ArrayList<>();
    for (Field field : type.getFields()) {
      if (field.getType() == type) {
        try {
          constants.add(type.cast(field.get(null)));
        } catch (IllegalAccessException exception) {
          throw new AssertionError(field.getName(), exception);
        }
      }
    }
    assertFalse(constants.isEmpty());
    return constants;
  }

  private static Reagent pure(Compound compound) {
    return Reagent.of(compound, MassFraction.ofMassPercent(99));
  }

  @Test
  void everyAcidBaseSaltAndGasOfTheLibraryHasARowForEachLiquid() {
    List<Solute> solutes = new ArrayList<>(constants(Acid.class));
    solutes.addAll(constants(Base.class));
    solutes.addAll(constants(Salt.class));
    for (Use use : Use.values()) {
      for (Solute solute : solutes) {
        Permission permission = Permissions.of(solute, use);
        assertNotEquals(
            Permission.Standing.NOT_STATED,
            permission.standing(),
            () -> solute.name() + " lacks a row of reagent-uses.csv: " + permission.text());
        assertTrue(permission.provenance().isPresent(), permission::text);
      }
      for (Gas gas : constants(Gas.class)) {
        assertTrue(Permissions.of(gas, use).provenance().isPresent());
      }
    }
  }

  @Test
  void everyRowNamesASubstanceOfTheLibrary() {
    Set<String> named = new TreeSet<>();
    constants(Acid.class).forEach(acid -> named.add("acid " + acid.name()));
    constants(Base.class).forEach(base -> named.add("base " + base.name()));
    constants(Salt.class).forEach(salt -> named.add("salt " + salt.name()));
    constants(Gas.class).forEach(gas -> named.add("gas " + gas.name()));
    Set<String> inTable = new TreeSet<>();
    for (ResourceTable.Row row : ResourceTable.read("reagent-uses.csv")) {
      if (row.text("kind").equals("component")) {
        String key = row.species("substance");
        assertEquals(key, Component.of(key).key(), row::place);
      } else {
        inTable.add(row.text("kind") + " " + row.text("substance"));
      }
      assertFalse(row.text("note").isBlank(), row::place);
    }
    Set<String> withoutRow = new TreeSet<>(named);
    withoutRow.removeAll(inTable);
    assertEquals(Set.of(), withoutRow, "no row of reagent-uses.csv names them");
    assertEquals(named, inTable, "rows of reagent-uses.csv that name nothing of the library");
  }

  /** Common practice, no source: the acids that brewers dose, and what nobody may drink. */
  @Test
  void foodAcidsPassAndTheOthersAreRefusedWithTheReason() {
    for (Use use : Use.values()) {
      for (Acid acid :
          List.of(
              Acid.LACTIC,
              Acid.PHOSPHORIC,
              Acid.CITRIC,
              Acid.CITRIC_MONOHYDRATE,
              Acid.MALIC,
              Acid.TARTARIC,
              Acid.ACETIC,
              Acid.SULFURIC,
              Acid.HYDROCHLORIC)) {
        assertSame(use, pure(acid).permissionIn(use).orThrow().use());
        assertTrue(pure(acid).permissionIn(use).mayBeTasted());
      }
      for (Acid acid :
          List.of(
              Acid.NITRIC,
              Acid.OXALIC,
              Acid.PHTHALIC,
              Acid.BORIC,
              Acid.SULFUROUS,
              Acid.CARBONIC,
              Acid.AMMONIUM,
              Acid.PYRUVIC,
              Acid.SUCCINIC)) {
        Permission permission = pure(acid).permissionIn(use);
        assertTrue(permission.isRefused(), permission::text);
        assertFalse(permission.mayBeTasted(), permission::text);
        IllegalArgumentException error =
            assertThrows(IllegalArgumentException.class, permission::orThrow);
        assertEquals(permission.text(), error.getMessage());
        assertTrue(
            permission.text().startsWith(acid.name() + ", 99 % by mass: a dose into " + use));
      }
      assertFalse(Permissions.of(Gas.CARBON_DIOXIDE, use).isRefused());
      assertFalse(Permissions.of(Salt.POTASSIUM_METABISULFITE, use).isRefused());
      assertFalse(Permissions.of(Salt.SODIUM_METABISULFITE, use).isRefused());
      assertTrue(Permissions.of(Salt.BORAX, use).isRefused());
      assertTrue(Permissions.of(Salt.POTASSIUM_HYDROGEN_PHTHALATE, use).isRefused());
    }
    assertEquals(
        "oxalic acid: a dose into beer is not possible; oxalic acid is poisonous and no food"
            + " additive (eu-1333-2008, Annex II, part B, from memory); local law has the last word",
        Permissions.of(Acid.OXALIC, Use.BEER).text());
  }

  @Test
  void lyeAndLimeAreRefusedInBeerAndNotInWater() {
    for (Base base :
        List.of(Base.SODIUM_HYDROXIDE, Base.POTASSIUM_HYDROXIDE, Base.CALCIUM_HYDROXIDE)) {
      assertTrue(Permissions.of(base, Use.BEER).isRefused());
      assertFalse(Permissions.of(base, Use.BREWING_WATER).isRefused());
    }
  }

  @Test
  void whereFoodLawsDifferTheTextSaysSo() {
    Permission permission = pure(Acid.PHOSPHORIC).permissionIn(Use.BEER);
    assertEquals(Permission.Standing.LAWS_DIFFER, permission.standing());
    assertTrue(permission.isNotable());
    assertTrue(permission.text().contains("local law has the last word"), permission::text);
    assertEquals(HowKnown.FROM_MEMORY, permission.provenance().orElseThrow().howKnown());
    assertFalse(pure(Acid.LACTIC).permissionIn(Use.BEER).isNotable());
    Permission stated =
        pure(Acid.PHOSPHORIC).withUse(Use.BEER, "our authority").permissionIn(Use.BEER);
    assertEquals(Permission.Standing.STATED_BY_CALLER, stated.standing());
    assertFalse(stated.isNotable());
  }

  @Test
  void anOwnAcidStatesItsUseOrTheResultSaysThatItDidNot() {
    Permission silent = pure(OWN).permissionIn(Use.BEER);
    assertEquals(Permission.Standing.NOT_STATED, silent.standing());
    assertTrue(silent.isNotable());
    assertFalse(silent.mayBeTasted());
    assertSame(silent, silent.orThrow());
    assertTrue(silent.text().contains("its use is not stated"), silent::text);
    assertTrue(silent.text().contains("do not taste"), silent::text);

    Acid stated = OWN.withUse(Use.BEER, "permit 7 of our food authority");
    assertNotEquals(OWN, stated);
    for (Permission permission :
        List.of(
            Permissions.of(stated, Use.BEER),
            pure(stated).permissionIn(Use.BEER),
            pure(OWN).withUse(Use.BEER, "permit 7 of our food authority").permissionIn(Use.BEER))) {
      assertEquals(Permission.Standing.STATED_BY_CALLER, permission.standing());
      assertTrue(permission.mayBeTasted());
      assertTrue(permission.text().contains("permit 7"), permission::text);
    }
    assertEquals(Permission.Standing.NOT_STATED, pure(stated).permissionIn(Use.MASH).standing());
    Acid twice = stated.withUse(Use.MASH, "permit 8");
    for (Use use : List.of(Use.BEER, Use.MASH)) {
      assertEquals(Permission.Standing.STATED_BY_CALLER, Permissions.of(twice, use).standing());
    }
    assertEquals(4, pure(stated).uses().size());
    assertThrows(IllegalArgumentException.class, () -> OWN.withUse(Use.BEER, " "));
  }

  @Test
  void nobodyCanStateAUseThatTheLibraryRefuses() {
    assertThrows(IllegalArgumentException.class, () -> Acid.OXALIC.withUse(Use.BEER, "said so"));
    assertThrows(
        IllegalArgumentException.class, () -> pure(Acid.BORIC).withUse(Use.MASH, "said so"));
  }

  @Test
  void anOwnSaltOfAPoisonIsRefused() {
    Salt oxalate =
        Salt.of("sodium oxalate", "Na2C2O4", Map.of(Component.SODIUM, 2.0, Component.OXALATE, 1.0));
    for (Use use : Use.values()) {
      assertTrue(Permissions.of(oxalate, use).isRefused());
      assertTrue(Permissions.of(Component.OXALATE, use).isRefused());
      assertFalse(Permissions.of(Component.LACTATE, use).isRefused());
    }
    Salt disguised =
        Salt.of(
            "sodium chloride", "Na2C2O4", Map.of(Component.SODIUM, 2.0, Component.OXALATE, 1.0));
    assertFalse(Permissions.of(Salt.SODIUM_CHLORIDE, Use.BEER).isRefused());
    assertTrue(Permissions.of(disguised, Use.BEER).isRefused());
    Permission refused = Permissions.of(oxalate, Use.BEER);
    assertEquals(refused.text(), refused.toString());
    assertThrows(IllegalArgumentException.class, () -> Use.of("wine"));
    assertEquals(Use.BREWING_WATER, Use.of("brewing water"));
  }
}
