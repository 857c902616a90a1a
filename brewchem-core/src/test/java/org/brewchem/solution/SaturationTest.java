package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Salt;
import org.brewchem.substance.Solubility;
import org.junit.jupiter.api.Test;

class SaturationTest {

  private static final Solution WATER = Solution.at(celsius(20));

  private static List<Notice> supersaturated(Solution solution) {
    return solution.answer(Figures.PH_VALUE).notices().stream()
        .filter(notice -> notice.code() == SolutionCode.SUPERSATURATED)
        .toList();
  }

  private static Solution dissolving(Compound salt, double gramsPerLitre) {
    MassConcentration amount = MassConcentration.ofGramsPerLitre(gramsPerLitre);
    return WATER.with(salt, AmountConcentration.from(amount, salt.molarMass()));
  }

  @Test
  void aHundredGramsOfGypsumInALitreAreSaidWithTheIndex() {
    Solution gypsum = dissolving(Salt.GYPSUM, 100);
    double index = gypsum.answer(Figures.saturationIndex(Mineral.GYPSUM)).number();
    assertTrue(index > 1);
    String text = supersaturated(gypsum).toString();
    assertTrue(text.contains(String.format("%.2f", index)), text);
    assertTrue(gypsum.notices().toString().contains("supersaturated with gypsum"));
  }

  /** CRC Handbook, from memory: 2.6 g/L of gypsum at 20 to 25 °C. */
  @Test
  void gypsumIsSilentBelowItsSolubilityAndSaidAbove() {
    assertEquals(List.of(), supersaturated(dissolving(Salt.GYPSUM, 2.2)));
    assertEquals(1, supersaturated(dissolving(Salt.GYPSUM, 3.2)).size());
    assertEquals(List.of(), supersaturated(dissolving(Salt.GYPSUM, 0.2)));
  }

  @Test
  void calciumChlorideInASulfateWaterIsJudgedByGypsumToo() {
    Solution sulfate = WATER.with(Ion.SODIUM, mmolPerL(100)).with(Ion.SULFATE, mmolPerL(50));
    assertEquals(
        1, supersaturated(sulfate.with(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mmolPerL(50))).size());
    assertEquals(
        0, supersaturated(sulfate.with(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mmolPerL(1))).size());
  }

  @Test
  void chalkAndLimeAreSaidAndAcidTakesChalkAway() {
    assertTrue(supersaturated(dissolving(Salt.CHALK, 0.1)).toString().contains("calcite"));
    Solution acid = WATER.with(Acid.HYDROCHLORIC, mmolPerL(4));
    assertEquals(List.of(), supersaturated(acid.with(Salt.CHALK, mmolPerL(1))));
    assertEquals(List.of(), supersaturated(dissolving(Base.CALCIUM_HYDROXIDE, 1.2)));
    assertTrue(
        supersaturated(dissolving(Base.CALCIUM_HYDROXIDE, 3)).toString().contains("portlandite"));
    Solution hard = WATER.with(Ion.CALCIUM, mmolPerL(3)).with(Ion.BICARBONATE, mmolPerL(6));
    assertTrue(
        supersaturated(hard.with(Base.CALCIUM_HYDROXIDE, mmolPerL(2)))
            .toString()
            .contains("calcite"));
    assertEquals(List.of(), supersaturated(hard.with(Acid.HYDROCHLORIC, mmolPerL(1))));
  }

  /** Printed solubility of slaked lime at 20 °C, 0.165 g/100 g, from log K -5.2 and the pair. */
  @Test
  void slakedLimeDissolvesAsTheTableSays() {
    MineralEquilibrium saturated = MineralEquilibrium.of(WATER, Mineral.PORTLANDITE);
    double perKilogram =
        -saturated.precipitatedMillimolesPerLitre() / 1000 / WATER.kilogramsPerLitre();
    double printed =
        Solubility.of(Base.CALCIUM_HYDROXIDE, celsius(20)).orElseThrow().molesPerKilogram();
    assertEquals(0.0223, printed, 5e-5);
    assertEquals(printed, perKilogram, 0.06 * printed);
  }

  @Test
  void saltsWithoutAMineralAreJudgedByThePrintedSolubility() {
    // 36.0 g of sodium chloride in 100 g of water at 20 °C.
    assertEquals(List.of(), supersaturated(WATER.with(Salt.SODIUM_CHLORIDE, molPerL(6))));
    String text = supersaturated(WATER.with(Salt.SODIUM_CHLORIDE, molPerL(6.3))).toString();
    assertTrue(text.contains("it takes 360 g"), text);
    assertEquals(Optional.empty(), Solubility.of(Salt.SODIUM_CHLORIDE, celsius(60)));
    // The dihydrate counts by its calcium chloride: 74.5 g in 100 g.
    assertEquals(
        Solubility.of(Salt.CALCIUM_CHLORIDE_ANHYDROUS, celsius(20))
            .orElseThrow()
            .molesPerKilogram(),
        Solubility.of(Salt.CALCIUM_CHLORIDE_DIHYDRATE, celsius(20))
            .orElseThrow()
            .molesPerKilogram(),
        0);
    for (Compound salt :
        List.of(
            Salt.CHALK,
            Salt.GYPSUM,
            Salt.EPSOM_SALT,
            Base.SODIUM_BICARBONATE,
            Base.SODIUM_CARBONATE)) {
      assertTrue(Solubility.of(salt, celsius(20)).isPresent(), salt::name);
    }
  }

  /** 36.0 g in 100 g of water are 6.16 mol/kg. */
  @Test
  void thePrintedSolubilityItselfDissolves() {
    double most = Solubility.of(Salt.SODIUM_CHLORIDE, celsius(20)).orElseThrow().molesPerKilogram();
    assertEquals(List.of(), Saturation.notices(WATER.contents(), Salt.SODIUM_CHLORIDE, most));
    assertEquals(
        List.of(
            "368 g of sodium chloride in a kg of water do not dissolve: at 20 °C it takes 360 g"
                + " (solubility-table)"),
        Saturation.notices(WATER.contents(), Salt.SODIUM_CHLORIDE, 6.3).stream()
            .map(Notice::text)
            .toList());
  }

  /** The ions alone are too many already, and common salt brings none of gypsum. */
  @Test
  void aSaltIsNotBlamedForAMineralItBringsNothingOf() {
    Solution full = WATER.with(Ion.CALCIUM, mmolPerL(60)).with(Ion.SULFATE, mmolPerL(60));
    assertTrue(full.answer(Figures.saturationIndex(Mineral.GYPSUM)).number() > 0.1);
    assertEquals(List.of(), supersaturated(full.with(Salt.SODIUM_CHLORIDE, mmolPerL(1))));
    assertEquals(1, supersaturated(full.with(Salt.EPSOM_SALT, mmolPerL(1))).size());
  }
}
