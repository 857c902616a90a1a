package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.Volume;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReagentTest {

  private static final Pattern PRINTED = Pattern.compile("molarity printed ([0-9.]+);.*");

  /**
   * The table of hydrochloric acid (after Perry and the International Critical Tables; seen) prints
   * mol/L beside per cent and density.
   */
  @Test
  void molaritiesOfHydrochloricAcidAreThosePrinted() {
    int checked = 0;
    for (ResourceTable.Row row : ResourceTable.read("reagent-densities.csv")) {
      Matcher printed = PRINTED.matcher(row.text("note"));
      if (printed.matches()) {
        Reagent reagent =
            Reagent.of(
                    Acid.HYDROCHLORIC, MassFraction.ofMassPercent(row.number("mass_percent_min")))
                .withDensity(Density.ofGramsPerMillilitre(row.number("density_min")), 0.0);
        assertEquals(
            Double.parseDouble(printed.group(1)),
            reagent.concentration().inMolesPerLitre(),
            0.0062,
            row::place);
        checked++;
      }
    }
    assertEquals(7, checked);
  }

  /** By hand: 1000 x density x share / molar mass. */
  @Test
  void concentratedAcidsHaveTheirKnownStrength() {
    Reagent phosphoric =
        Reagent.of(Acid.PHOSPHORIC, MassFraction.ofMassPercent(85))
            .withDensity(Density.ofGramsPerMillilitre(1.685), 0.0);
    assertEquals(14.616, phosphoric.concentration().inMolesPerLitre(), 5e-4);
    Reagent sulfuric =
        Reagent.of(Acid.SULFURIC, MassFraction.ofMassPercent(96))
            .withDensity(Density.ofGramsPerMillilitre(1.84), 0.0);
    assertEquals(18.01, sulfuric.concentration().inMolesPerLitre(), 5e-3);
    Reagent lye =
        Reagent.of(Base.SODIUM_HYDROXIDE, MassFraction.ofMassPercent(50.5))
            .withDensity(Density.ofGramsPerMillilitre(1.53), 0.0);
    assertEquals(19.32, lye.concentration().inMolesPerLitre(), 5e-3);
  }

  @Test
  void aPublishedDensityComesWithItsSpreadAndItsSources() {
    Reagent lactic = Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(88));
    assertEquals(1.205, lactic.density().orElseThrow().inGramsPerMillilitre(), 1e-9);
    // 1 % for the density and the tolerance of 5 % of the label, both rectangular.
    assertEquals(
        Math.sqrt((1e-4 + 25e-4) / 3.0),
        lactic.relativeStandardUncertaintyByVolume().orElseThrow(),
        1e-12);
    assertEquals("lactic-acid-grade-sheet", lactic.densitySources().get(0).sourceKey());
    assertEquals("lactic acid, 88 % by mass", lactic.toString());

    Reagent phosphoric = Reagent.of(Acid.PHOSPHORIC, MassFraction.ofMassPercent(85));
    double density = phosphoric.density().orElseThrow().inGramsPerMillilitre();
    assertEquals((1.689 + 1.6891) / 2, density, 1e-9);
    double halfWidth =
        density * Math.sqrt(3.0) * phosphoric.relativeStandardUncertaintyByVolume().orElseThrow();
    assertTrue(density - halfWidth <= 1.685 && density + halfWidth >= 1.70);
  }

  /** A row of a name that no compound has would never be used. */
  @Test
  void everyDensityBelongsToACompound() {
    List<String> names =
        Stream.of(Acid.named(), Base.named(), Salt.named())
            .flatMap(List::stream)
            .map(Compound::name)
            .toList();
    for (ResourceTable.Row row : ResourceTable.read("reagent-densities.csv")) {
      assertTrue(names.contains(row.text("compound")), row::place);
    }
  }

  @Test
  void strengthsBetweenTwoOfATableAreInterpolatedAndOthersAreNotInvented() {
    double density =
        Reagent.of(Acid.HYDROCHLORIC, MassFraction.ofMassPercent(37))
            .density()
            .orElseThrow()
            .inGramsPerMillilitre();
    assertEquals(1.184, density, 5e-4);
    assertEquals(
        Optional.empty(), Reagent.of(Acid.SULFURIC, MassFraction.ofMassPercent(5)).density());
    assertEquals(
        Optional.empty(), Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(95)).density());
    assertEquals(
        Optional.empty(), Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(20)).density());
  }

  @Test
  void aSolidIsWeighedAndHasNoVolume() {
    Reagent citric = Reagent.of(Acid.CITRIC_MONOHYDRATE, MassFraction.ofMassPercent(99.5));
    assertEquals(0.995 * 210.138, citric.amountIn(Mass.ofGrams(210.138 * 210.138)).inMoles(), 1e-9);
    IllegalStateException error =
        assertThrows(
            IllegalStateException.class, () -> citric.volumeOf(AmountOfSubstance.ofMoles(1.0)));
    assertTrue(error.getMessage().startsWith("citric acid monohydrate, 99.5 % by mass: its"));
    assertEquals(OptionalDouble.empty(), citric.relativeStandardUncertaintyByMass());
    assertEquals(OptionalDouble.empty(), citric.relativeStandardUncertaintyByVolume());
  }

  @Test
  void totalAcidIsCountedAndWhatEstersHoldBackIsTold() {
    Reagent lactic = Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(88));
    assertEquals(0.166, lactic.boundInEsters().orElseThrow().fraction(), 5e-4);
    assertEquals(73.39, lactic.titratableAtOnce().inMassPercent(), 5e-3);
    Reagent known = lactic.withBoundInEsters(MassFraction.of(0.2));
    assertEquals(lactic.concentration().inMolesPerLitre(), known.concentration().inMolesPerLitre());
    assertEquals(
        0.8 * known.concentration().inMolesPerLitre(),
        known.freeConcentration().orElseThrow().inMolesPerLitre(),
        1e-12);
  }

  @Test
  void theLabelOfLacticAcidCountsAsGoodToItsToleranceUnlessMoreIsStated() {
    Reagent lactic = Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(80));
    // Directive 2008/84/EC: 76 to 84 % for a label of 80 %.
    double halfWidth = 80 * Math.sqrt(3) * lactic.relativeStandardUncertaintyByMass().orElseThrow();
    assertEquals(84, 80 + halfWidth, 1e-9);
    assertEquals(
        0.003,
        lactic.withAssayUncertainty(0.003).relativeStandardUncertaintyByMass().orElseThrow());
    for (double other : new double[] {40, 93}) {
      assertEquals(
          OptionalDouble.empty(),
          Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(other))
              .relativeStandardUncertaintyByMass());
    }
  }

  @Test
  void theBoundPartIsTheModelsWhereItReachesElseNoneOrUnknown() {
    Reagent weak = Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(20));
    assertEquals(Optional.empty(), weak.boundInEsters());
    assertFalse(weak.isBoundPartUnknown());
    assertEquals(weak.assay(), weak.titratableAtOnce());
    Reagent strongest = Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(95));
    assertEquals(Optional.empty(), strongest.boundInEsters());
    assertTrue(strongest.isBoundPartUnknown());
    assertFalse(strongest.withBoundInEsters(MassFraction.of(0.25)).isBoundPartUnknown());
    assertFalse(Reagent.of(Acid.CITRIC, MassFraction.ofMassPercent(95)).isBoundPartUnknown());
    assertEquals(
        0.1,
        Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(80))
            .boundRelativeStandardUncertainty()
            .orElseThrow());
    assertEquals(
        OptionalDouble.empty(),
        weak.withBoundInEsters(MassFraction.of(0.1)).boundRelativeStandardUncertainty());
    assertThrows(
        IllegalArgumentException.class, () -> weak.withBoundInEsters(MassFraction.of(0.1), -0.1));
  }

  @Test
  void uncertaintiesOfAssayAndDensityCombine() {
    Reagent reagent =
        Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(80))
            .withDensity(Density.ofGramsPerMillilitre(1.19), 0.003)
            .withAssayUncertainty(0.004);
    assertEquals(0.005, reagent.relativeStandardUncertaintyByVolume().orElseThrow(), 1e-15);
    assertEquals(0.004, reagent.relativeStandardUncertaintyByMass().orElseThrow());
    assertTrue(reagent.densitySources().isEmpty());
    assertThrows(IllegalArgumentException.class, () -> reagent.withAssayUncertainty(-0.1));
    assertThrows(
        IllegalArgumentException.class, () -> Reagent.of(Acid.LACTIC, MassFraction.of(0.0)));
  }

  /** The limits as salts-and-limes.csv prints them: JECFA INS 509 and 516, a bulletin, E 170(i). */
  @ParameterizedTest
  @CsvSource({
    "'calcium chloride, anhydrous', 'calcium chloride, anhydrous', 94, 97",
    "calcium chloride dihydrate, 'calcium chloride, anhydrous', 99.0, 107.0",
    "calcium sulfate dihydrate (gypsum), calcium sulfate dihydrate (gypsum), 96.4, 102.4",
    "calcium carbonate (chalk), calcium carbonate (chalk), 96.03, 100",
    "sodium chloride, sodium chloride, 97, 100"
  })
  void aBagWithoutAnAssayIsTakenBetweenThePrintedLimits(
      String bag, String counted, double least, double most) {
    Salt salt = Salt.named(bag);
    Reagent reagent = Reagent.ofUsualPurity(salt);
    assertEquals(counted, reagent.compound().name());
    double perFormula =
        reagent.compound().molarMass().inGramsPerMole() / salt.molarMass().inGramsPerMole();
    double middle = (least + most) / 2 * perFormula;
    assertEquals(middle, reagent.assay().inMassPercent(), 0.03);
    assertEquals(
        (most - least) / (most + least) / Math.sqrt(3),
        reagent.relativeStandardUncertaintyByMass().orElseThrow(),
        0.0003);
    assertEquals(SubstanceCode.ASSUMED_PURITY, reagent.notices().get(0).code());
  }

  /** 23 % lost and 1 % impure, or 19 % lost and pure, of 79.07 % in the formula. */
  @Test
  void theLimitsOfGypsumFollowFromItsLossOnDrying() {
    double formula = 136.14 / Salt.GYPSUM.molarMass().inGramsPerMole();
    assertEquals(96.4, 100 * 0.77 * 0.99 / formula, 0.05);
    assertEquals(102.4, 100 * 0.81 / formula, 0.05);
  }

  @Test
  void aBagOfNoKnownSpecificationIsRefusedByName() {
    IllegalArgumentException refusal =
        assertThrows(
            IllegalArgumentException.class, () -> Reagent.ofUsualPurity(Salt.POTASSIUM_CHLORIDE));
    assertTrue(
        refusal.getMessage().startsWith("compound: no usual purity of potassium chloride is known"),
        refusal.getMessage());
    assertTrue(
        Reagent.ofUsualPurity(Base.CALCIUM_HYDROXIDE).notices().get(0).text().contains("92"));
  }

  @Property(tries = 200)
  void massVolumeAndAmountGoThereAndBack(
      @ForAll @Scale(9) @DoubleRange(min = 1e-6, max = 1e4) double moles,
      @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 1.0) double assay,
      @ForAll @Scale(9) @DoubleRange(min = 0.7, max = 2.0) double gramsPerMillilitre) {
    Reagent reagent =
        Reagent.of(Acid.LACTIC, MassFraction.of(assay))
            .withDensity(Density.ofGramsPerMillilitre(gramsPerMillilitre), 0.01);
    AmountOfSubstance amount = AmountOfSubstance.ofMoles(moles);
    Volume volume = reagent.volumeOf(amount);
    assertEquals(moles, reagent.amountIn(volume).inMoles(), 1e-12 * moles);
    assertEquals(moles, reagent.amountIn(reagent.massOf(amount)).inMoles(), 1e-12 * moles);
    assertEquals(moles, reagent.concentration().times(volume).inMoles(), 1e-12 * moles);
  }
}
