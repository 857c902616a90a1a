package org.brewchem.quantity;

import static org.brewchem.quantity.Quantities.*;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import org.junit.jupiter.api.Test;

class ValueTextTest {

  @Test
  void everyValueCarriesItsUnit() {
    assertEquals("pH 8.2", pH(8.2).toString());
    assertEquals("pH 8.0778", pH(8.07775176923).toString());
    assertEquals("123.457 mg/L", mgPerL(123.456789).toString());
    assertEquals("5 g/L of CO2", Carbonation.ofGramsPerLitre(5).toString());
    assertEquals("20 °C", celsius(20).toString());
    assertEquals("5 K", TemperatureDifference.ofKelvin(5).toString());
    assertEquals("14.62 mL", mL(14.62).toString());
    assertEquals("20 hL", hL(20).toString());
    assertEquals("150 L", litres(150).toString());
    assertEquals("0 mL", litres(0).toString());
    assertEquals("12.5 mg", mg(12.5).toString());
    assertEquals("0.4082 g", g(0.4082).toString());
    assertEquals("25 kg", kg(25).toString());
    assertEquals("1.462 mmol", mmol(1.462).toString());
    assertEquals("2 mol", mol(2).toString());
    assertEquals("90.078 g/mol", gPerMol(90.078).toString());
    assertEquals("1.206 g/mL", gPerML(1.206).toString());
    assertEquals("1.048 SG 20/20", specificGravity(1.048).toString());
    assertEquals("92 mg/L", mgPerL(92).toString());
    assertEquals("2.8 g/L", gPerL(2.8).toString());
    assertEquals("6 mmol/L", mmolPerL(6).toString());
    assertEquals("0.1 mol/L", molPerL(0.1).toString());
    assertEquals("6 mmol/kg", mmolPerKg(6).toString());
    assertEquals("0.5 mol/kg", molPerKg(0.5).toString());
    assertEquals("-1.4 mEq/L", mEqPerL(-1.4).toString());
    assertEquals("12 mEq/L per pH", mEqPerLPerPH(12).toString());
    assertEquals("88 % by mass", massPercent(88).toString());
    assertEquals("101.325 kPa", atm(1).toString());
    assertEquals("-177.5 mV", mV(-177.5).toString());
    assertEquals("150 mg/L as CaCO3", hardnessAsCaCO3(mgPerL(150)).toString());
    assertEquals("215 mg/L as CaCO3, to pH 4.5", alkalinityAsCaCO3(mgPerL(215)).toString());
    assertEquals("215 mg/L as CaCO3", carbonateAlkalinityAsCaCO3(mgPerL(215)).toString());
    assertEquals(
        "-20 mg/L as CaCO3", ResidualAlkalinity.ofMilligramsPerLitreAsCaCO3(-20).toString());
    assertEquals(
        "31.1 mEq/L, to pH 8.2",
        TitratableAcidity.ofMilliequivalentsPerLitre(31.1, pH(8.2)).toString());
  }

  @Test
  void theNextUnitStartsAtItsOne() {
    assertEquals("999 mL", mL(999).toString());
    assertEquals("1 L", litres(1).toString());
    assertEquals("999 L", litres(999).toString());
    assertEquals("10 hL", litres(1000).toString());
    assertEquals("99 mg", mg(99).toString());
    assertEquals("0.1 g", mg(100).toString());
    assertEquals("999 g", g(999).toString());
    assertEquals("1 kg", g(1000).toString());
    assertEquals("999 mg/L", mgPerL(999).toString());
    assertEquals("1 g/L", mgPerL(1000).toString());
    assertEquals("99 mmol", mmol(99).toString());
    assertEquals("0.1 mol", mmol(100).toString());
    assertEquals("99 mmol/L", mmolPerL(99).toString());
    assertEquals("0.1 mol/L", mmolPerL(100).toString());
    assertEquals("99 mmol/kg", mmolPerKg(99).toString());
    assertEquals("0.1 mol/kg", mmolPerKg(100).toString());
  }

  @Test
  void theTextIsTheSameInEveryLocale() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertEquals("1.5 mg/L", mgPerL(1.5).toString());
      Locale.setDefault(Locale.forLanguageTag("ar-SA-u-nu-arab"));
      assertEquals("1.5 mg/L", mgPerL(1.5).toString());
    } finally {
      Locale.setDefault(before);
    }
  }
}
