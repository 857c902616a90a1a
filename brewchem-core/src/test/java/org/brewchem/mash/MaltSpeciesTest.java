package org.brewchem.mash;

import static org.brewchem.mash.MaltKind.CARAMEL;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Malts given as species, all invented. */
class MaltSpeciesTest {

  private static final double RATIO = 4;

  /** A cooled mash in distilled water at 4 L/kg, as far as its species are known. */
  private static Solution extract() {
    Solution acids =
        Solution.at(celsius(20))
            .with(Ion.CALCIUM, mmolPerKg(1.0))
            .with(Ion.MAGNESIUM, mmolPerKg(3.0))
            .with(Ion.CHLORIDE, mmolPerKg(2.0))
            .with(Acid.PHOSPHORIC, mmolPerKg(8.0))
            .with(Acid.LACTIC, mmolPerKg(0.6))
            .with(Acid.CITRIC, mmolPerKg(0.7))
            .with(Acid.MALIC, mmolPerKg(0.7));
    return acids.with(Ion.POTASSIUM, acids.doseOf(Base.POTASSIUM_HYDROXIDE, pH(5.75)));
  }

  private static Malt measured() {
    return Mashes.exact(5.75, 45).withSpecies(extract());
  }

  private static double free(Mash mash) {
    return mash.kolbachAcidAmongSpecies().number();
  }

  /**
   * Groups of proteins besides, so that it buffers as malts do: 30 to 65 mEq/(kg pH) by the assumed
   * rows. What a quadratic through three jars may miss of such a malt between them is below 0.005.
   */
  @Test
  void aMaltOfSpeciesMashesAsTheKernelDoes() {
    Solution acids = extract();
    for (double pKa : new double[] {4.6, 5.2, 5.8, 6.4}) {
      acids = acids.with(Acid.ofPKa("groups of pKa " + pKa, pKa), mmolPerKg(5));
    }
    Solution whole = acids.with(Ion.POTASSIUM, acids.doseOf(Base.POTASSIUM_HYDROXIDE, pH(5.75)));
    Malt malt = Malt.ofSpecies("invented malt", "invented", whole, RATIO);
    assertEquals(5.75, malt.pH().number(), 1e-9);
    assertEquals(5.75, Mashes.mash(malt, Water.pure(), RATIO).pH().number(), 1e-6);
    assertTrue(
        malt.bufferCapacity().number() > 30 && malt.bufferCapacity().number() < 65,
        malt.toString());
    for (double acid : new double[] {-2, -1, 1, 3}) {
      double solved = whole.withInertCharge(whole.inertCharge().plus(mEqPerL(-acid))).pH().value();
      assertEquals(
          solved, Mashes.mash(malt, Mashes.acid(acid), RATIO).pH().number(), 0.005, "at " + acid);
    }
  }

  /** The kernel with everything in it, at the mash's own pH: calcium and magnesium, or sodium. */
  @Test
  void theShareIsWhatTheKernelFindsBetweenLiquorAndMalt() {
    Water hard =
        Water.pure()
            .after(
                Treatments.solute(Component.CALCIUM, mmolPerL(1.75)),
                Treatments.solute(Component.MAGNESIUM, mmolPerL(0.7)),
                Treatments.solute(Component.CHLORIDE, mmolPerL(4.9)));
    Mash mash = Mashes.mash(measured(), hard, 2 * RATIO);
    double whole = exchanged(extract().diluted(2), mash.pH().value());
    double inLiquor = exchanged(Solution.at(celsius(20)), mash.pH().value());
    assertEquals(whole - inLiquor, free(mash), 1e-9);
    assertTrue(inLiquor < 1e-3 * whole, "the liquor has no ligand but hydroxide");
    assertTrue(free(mash) > 0);
    assertEquals(
        mash.kolbachAcid().number(), free(mash) + mash.kolbachAcidBeyondSpecies().number(), 1e-12);
  }

  /** Charge that the test's calcium and magnesium take from a liquid, sodium in their place. */
  private static double exchanged(Solution from, PH pH) {
    Solution chloride = from.with(Ion.CHLORIDE, mmolPerL(4.9));
    Solution with = chloride.with(Ion.CALCIUM, mmolPerL(1.75)).with(Ion.MAGNESIUM, mmolPerL(0.7));
    return chloride.with(Ion.SODIUM, mmolPerL(4.9)).charge(pH).inMilliequivalentsPerLitre()
        - with.charge(pH).inMilliequivalentsPerLitre();
  }

  /**
   * Kolbach's term less the kernel's share, with the species in the kernel: what the pH neglects is
   * that other ions of the liquor make the species of the malt stronger acids: 0.0008, 0.0013 and
   * 0.0018 here.
   */
  @ParameterizedTest
  @ValueSource(doubles = {4, 5, 6})
  void theMashPHIsThatOfTheWholeKernelWithTheRestOfKolbachsTerm(double ratio) {
    Malt malt = measured();
    Mash mash = Mashes.mash(malt, Mashes.tap(), ratio);
    Solution species = extract().diluted(ratio / RATIO);
    Solution liquor = Solution.of(mash.contents().withTotal(Component.CARBONATE, Traced.exact(0)));
    Solution both = liquor.plus(species);
    double rest = mash.kolbachAcidBeyondSpecies().number();
    double root =
        Roots.between(
                at ->
                    both.charge(pH(at)).inMilliequivalentsPerLitre()
                        + (malt.curve().acidAt(at)) / ratio
                        - species.charge(pH(at)).inMilliequivalentsPerLitre()
                        - rest,
                4.5,
                7)
            .orElseThrow(end -> new IllegalStateException("residual " + end.residual()));
    assertEquals(root, mash.pH().number(), 0.002);
  }

  @Test
  void theSpeciesMoveNoMashPH() {
    Mash with = Mashes.mash(measured(), Mashes.tap(), 3);
    Mash without = Mashes.mash(Mashes.exact(5.75, 45), Mashes.tap(), 3);
    assertEquals(without.pH().number(), with.pH().number());
    assertEquals(
        without.pH().standardUncertainty().orElseThrow(),
        with.pH().standardUncertainty().orElseThrow(),
        1e-15);
  }

  @Test
  void theExplanationPrintsBothAndHolds() {
    Mash mash = Mashes.mash(measured(), Mashes.tap(), 3);
    String text = mash.pH().explain().toString();
    assertTrue(text.contains("among malts' species"), text);
    assertTrue(text.contains("beyond them"), text);
    for (var answer : List.of(mash.kolbachAcidAmongSpecies(), mash.kolbachAcidBeyondSpecies())) {
      assertTrue(answer.explain().holds(), answer.explain().toString());
    }
    Mash bare = Mashes.mash(Mashes.exact(5.75, 45), Mashes.tap(), 3);
    assertFalse(bare.pH().explain().toString().contains("beyond them"));
  }

  @Test
  void theUncertaintyOfTheShareIsThatOfTheLiquor() {
    Mash mash = mashOf(92, 3);
    double slope = (free(mashOf(92.5, 3)) - free(mashOf(91.5, 3))) / 1.0;
    double u = mash.kolbachAcidAmongSpecies().standardUncertainty().orElseThrow();
    assertEquals(Math.abs(slope) * 3, u, 1e-3 * u);
  }

  private static Mash mashOf(double calcium, double u) {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(calcium), mgPerL(u))
            .magnesium(mgPerL(11), mgPerL(0))
            .chloride(mgPerL(31), mgPerL(0))
            .sodium(mgPerL(19), mgPerL(0))
            .sulfate(mgPerL(45), mgPerL(0))
            .alkalinityAsCaCO3(mgPerL(215), mgPerL(0))
            .pH(pH(7.6), 0)
            .build()
            .water();
    Grist grist = Grist.of(kg(1), measured()).withKolbachFactor(1, 0);
    return Mash.of(grist, water, litres(3));
  }

  @Test
  void aMaltThatIsNotGivenAsSpeciesIsNamed() {
    Mash mash =
        Mash.of(
            Grist.of(kg(90), measured()).and(kg(10), Malt.assumed(CARAMEL)), Mashes.tap(), hL(4));
    assertEquals(
        List.of("species of caramel malt are not stated; see Malt.withSpecies"),
        mash.kolbachAcidAmongSpecies().whyUnknown());
    assertFalse(mash.kolbachAcidBeyondSpecies().isStated());
  }

  @Test
  void moreThanKolbachsTermIsSaid() {
    Grist grist = Grist.of(kg(1), measured()).withKolbachFactor(0.02, 0.1);
    Mash mash = Mash.of(grist, Mashes.tap(), litres(3));
    assertTrue(mash.kolbachAcidBeyondSpecies().number() < 0);
    assertEquals(
        List.of(MashCode.SPECIES_BEYOND_KOLBACH),
        mash.kolbachAcidBeyondSpecies().notices().stream()
            .map(notice -> notice.code())
            .filter(code -> code == MashCode.SPECIES_BEYOND_KOLBACH)
            .toList());
  }

  @Test
  void speciesThatDoNotFitAreRefused() {
    Malt malt = Mashes.exact(5.75, 45);
    var warm =
        assertThrows(
            IllegalArgumentException.class, () -> malt.withSpecies(extract().heldAt(celsius(65))));
    assertEquals(
        "temperature of the species of invented malt: 65 °C is not possible; 20 °C is needed, at"
            + " which the malt was read",
        warm.getMessage());
    Water lacking = WaterReport.reported().calcium(mgPerL(20)).build().water();
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> malt.withSpecies(lacking))
            .getMessage()
            .startsWith("species of invented malt: a solution with unknown totals"));
    assertThrows(IllegalArgumentException.class, () -> Malt.ofSpecies("m", "s", extract(), 0.5));
  }
}
