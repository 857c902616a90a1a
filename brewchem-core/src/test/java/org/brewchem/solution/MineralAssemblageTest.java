package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.junit.jupiter.api.Test;

class MineralAssemblageTest {

  private static final Solution LIMED =
      Solution.at(celsius(20))
          .with(Ion.CALCIUM, mmolPerKg(2))
          .with(Ion.MAGNESIUM, mmolPerKg(1))
          .with(Ion.BICARBONATE, mmolPerKg(6))
          .with(Base.CALCIUM_HYDROXIDE, mmolPerKg(5));

  @Test
  void whatPrecipitatesIsMissingInWhatIsLeft() {
    MineralAssemblage both =
        MineralAssemblage.precipitating(LIMED, Mineral.CALCITE, Mineral.BRUCITE);
    assertEquals(
        LIMED.total(Component.CALCIUM).inMillimolesPerLitre(),
        both.solution().total(Component.CALCIUM).inMillimolesPerLitre()
            + both.precipitatedMillimolesPerLitre(Mineral.CALCITE),
        1e-9);
    assertEquals(
        LIMED.total(Component.MAGNESIUM).inMillimolesPerLitre(),
        both.solution().total(Component.MAGNESIUM).inMillimolesPerLitre()
            + both.precipitatedMillimolesPerLitre(Mineral.BRUCITE),
        1e-9);
    assertTrue(both.precipitatedMillimolesPerLitre(Mineral.BRUCITE) > 0.1);
    assertEquals(both.solution().pH(), both.pH());
  }

  @Test
  void brucitePrecipitatesFirstAndGivesBackWhatCalciteMakesDissolve() {
    // Without calcite the liquid is alkaline enough for brucite; calcite takes the alkalinity away.
    Solution little =
        Solution.at(celsius(20))
            .with(Ion.CALCIUM, mmolPerKg(6))
            .with(Ion.MAGNESIUM, mmolPerKg(1))
            .with(Ion.CHLORIDE, mmolPerKg(14))
            .with(Base.SODIUM_CARBONATE, mmolPerKg(4));
    MineralAssemblage alone = MineralAssemblage.precipitating(little, Mineral.BRUCITE);
    MineralAssemblage both =
        MineralAssemblage.precipitating(little, Mineral.BRUCITE, Mineral.CALCITE);
    assertTrue(alone.precipitatedMillimolesPerLitre(Mineral.BRUCITE) > 0, alone.toString());
    assertEquals(0, both.precipitatedMillimolesPerLitre(Mineral.BRUCITE), 0);
    assertEquals(
        MineralAssemblage.precipitating(little, Mineral.CALCITE).pH().value(),
        both.pH().value(),
        1e-9);
    assertEquals(
        little.total(Component.MAGNESIUM).inMillimolesPerLitre(),
        both.solution().total(Component.MAGNESIUM).inMillimolesPerLitre(),
        1e-9);
  }

  @Test
  void oneMineralAloneIsTheMineralEquilibrium() {
    MineralAssemblage one = MineralAssemblage.precipitating(LIMED, Mineral.CALCITE);
    MineralEquilibrium same = MineralEquilibrium.of(LIMED, Mineral.CALCITE);
    assertEquals(
        same.precipitatedMillimolesPerLitre(),
        one.precipitatedMillimolesPerLitre(Mineral.CALCITE),
        1e-12);
    assertTrue(one.toString().contains(" mmol/L of calcite, precipitated; left: 20 °C, "));
  }

  @Test
  void whatIsNotSupersaturatedStaysAndIsToldAsZero() {
    Solution soft = Solution.at(celsius(20)).with(Acid.CARBONIC, mmolPerKg(1));
    MineralAssemblage none =
        MineralAssemblage.precipitating(
            soft.with(Ion.CALCIUM, mmolPerKg(0.1)), Mineral.GYPSUM, Mineral.CALCITE);
    assertEquals(0, none.precipitatedMillimolesPerLitre(Mineral.GYPSUM), 0);
    assertEquals(0, none.precipitatedMillimolesPerLitre(Mineral.CALCITE), 0);
  }

  @Test
  void noticesAreThoseOfTheSolubilities() {
    MineralAssemblage both =
        MineralAssemblage.precipitating(LIMED, Mineral.CALCITE, Mineral.BRUCITE);
    assertEquals(
        BalanceNotices.solubility("brucite", Mineral.BRUCITE.constant(), celsius(20)),
        both.notices().stream().filter(notice -> notice.subject().equals("brucite")).toList());
    assertTrue(both.notices().size() > 0);
  }

  @Test
  void theMineralsAreAtLeastOneAndNoneTwice() {
    for (Mineral[] minerals :
        List.of(new Mineral[0], new Mineral[] {Mineral.CALCITE, Mineral.CALCITE})) {
      assertEquals(
          "minerals: "
              + minerals.length
              + " is not possible; at least one, and none twice, is allowed",
          assertThrows(
                  IllegalArgumentException.class,
                  () -> MineralAssemblage.precipitating(LIMED, minerals))
              .getMessage());
    }
    MineralAssemblage one = MineralAssemblage.precipitating(LIMED, Mineral.CALCITE);
    assertEquals(
        "mineral: gypsum is not possible; one of [calcite] is needed",
        assertThrows(
                IllegalArgumentException.class,
                () -> one.precipitatedMillimolesPerLitre(Mineral.GYPSUM))
            .getMessage());
  }
}
