package org.brewchem.units;

import static org.brewchem.quantity.Quantities.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.TitratableAcidity;
import org.junit.jupiter.api.Test;

class LabUnitsTest {

  private record Basis(String name, double gramsPerEquivalent) implements AcidBasis {}

  private static final AcidBasis LACTIC = new Basis("lactic acid", 90.078);

  private static final EndPointUnits<TitratableAcidity> ACIDITY = LabUnits.acidity(List.of(LACTIC));

  private static List<UnitSet<?>> sets() {
    return List.of(
        LabUnits.TEMPERATURE,
        LabUnits.TEMPERATURE_DIFFERENCE,
        LabUnits.VOLUME,
        LabUnits.VOLUME_RATIO,
        LabUnits.MASS,
        LabUnits.AMOUNT_OF_SUBSTANCE,
        LabUnits.MOLAR_MASS,
        LabUnits.DENSITY,
        LabUnits.SPECIFIC_GRAVITY,
        LabUnits.MASS_CONCENTRATION,
        LabUnits.AMOUNT_CONCENTRATION,
        LabUnits.MOLALITY,
        LabUnits.CHARGE_CONCENTRATION,
        LabUnits.BUFFER_CAPACITY,
        LabUnits.PRESSURE,
        LabUnits.ELECTRIC_POTENTIAL,
        LabUnits.HARDNESS,
        LabUnits.CARBONATE_ALKALINITY,
        LabUnits.RESIDUAL_ALKALINITY,
        LabUnits.TITRATION_ALKALINITY.to(pH(4.3)),
        ACIDITY.to(pH(8.2)));
  }

  private record Member<Q>(UnitSet<Q> set, LabUnit<Q> unit) {

    double thereAndBackAsText(double number) {
      return unit.in(set.read(unit.text(unit.from(number))));
    }

    @Override
    public String toString() {
      return set.meaning() + " in " + unit;
    }
  }

  private static <Q> List<Member<Q>> members(UnitSet<Q> set) {
    return set.units().stream().map(unit -> new Member<>(set, unit)).toList();
  }

  @Provide
  Arbitrary<Member<?>> member() {
    List<Member<?>> members = new ArrayList<>();
    sets().forEach(set -> members.addAll(members(set)));
    return Arbitraries.of(members);
  }

  @Provide
  Arbitrary<Double> number() {
    return Arbitraries.doubles().between(1e-3, 1e9).ofScale(12);
  }

  @Property
  void everyUnitPrintsWhatItReads(
      @ForAll("member") Member<?> member, @ForAll("number") double number) {
    double tolerance =
        member.set() == LabUnits.TEMPERATURE ? 1e-5 * (number + 1000) : 1e-5 * number;
    assertEquals(number, member.thereAndBackAsText(number), tolerance);
  }

  @Property
  void everyUnitIsFoundByItsSymbol(@ForAll("member") Member<?> member) {
    assertEquals(member.unit(), member.set().named(member.unit().symbol()));
  }

  @Test
  void aUnitConvertsAndRounds() {
    LabUnit<MassConcentration> gPerL = LabUnits.MASS_CONCENTRATION.named("g/L");
    assertEquals("g/L", gPerL.symbol());
    assertEquals("g/L", gPerL.toString());
    assertEquals(mgPerL(2800), gPerL.from(2.8));
    assertEquals(2.8, gPerL.in(mgPerL(2800)));
    assertEquals("2.8 g/L", gPerL.text(mgPerL(2800)));
    assertEquals("2.80 g/L", gPerL.text(mgPerL(2800), 3));
    assertEquals("2.800 g/L", gPerL.textWithDecimals(mgPerL(2800), 3));
    assertEquals("pH 4.20", LabUnits.PH.named("pH").textWithDecimals(pH(4.2), 2));
  }

  @Test
  void aSetTellsWhatItHolds() {
    assertEquals(
        "mass concentration [mg/L, g/L, g/hL, µg/L, ppm of dilute water]",
        LabUnits.MASS_CONCENTRATION.toString());
    assertEquals("mass concentration", LabUnits.MASS_CONCENTRATION.meaning());
    assertThrows(UnitTextException.class, () -> LabUnits.MASS_CONCENTRATION.named("mg/l"));
    assertThrows(UnitTextException.class, () -> LabUnits.MASS_CONCENTRATION.named(""));
  }

  @Test
  void anAcidityUnitCarriesBasisAndEndPoint() {
    LabUnit<TitratableAcidity> unit = ACIDITY.named("g/L as lactic acid, to pH 8.20");
    assertEquals("g/L as lactic acid, to pH 8.2", unit.symbol());
    TitratableAcidity acidity = acidity(gPerL(2.8), LACTIC, pH(8.2));
    assertEquals(acidity, unit.from(2.8));
    assertEquals("2.80 g/L as lactic acid, to pH 8.2", unit.text(acidity, 3));
    TitratableAcidity elsewhere = acidity(gPerL(2.8), LACTIC, pH(7));
    IllegalArgumentException error =
        assertThrows(IllegalArgumentException.class, () -> unit.in(elsewhere));
    assertTrue(error.getMessage().contains("pH 7"), error.getMessage());
    assertTrue(error.getMessage().contains("to pH 8.2"), error.getMessage());
  }

  @Test
  void acidsNeedNamesThatDiffer() {
    IllegalArgumentException error =
        assertThrows(
            IllegalArgumentException.class, () -> LabUnits.acidity(List.of(LACTIC, LACTIC)));
    assertEquals(
        "acids: two are called \"lactic acid\"; each needs its own name", error.getMessage());
  }
}
