package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/** A malt by its numbers, its kind, its species or measured mashes, and what it says of itself. */
class MaltTest {

  private static Malt stated() {
    return Malt.stated("own malt", "laboratory, lot 7", pH(5.75), 0.02, 42, 3);
  }

  @Test
  void aStatedMaltAnswersWhatWasStated() {
    Malt malt = stated();
    assertEquals("own malt", malt.name());
    assertEquals("laboratory, lot 7", malt.source());
    assertFalse(malt.isAssumed());
    assertEquals(List.of(), malt.notices());
    assertEquals(5.75, malt.pH().number());
    assertEquals(0.02, malt.pH().standardUncertainty().orElseThrow(), 1e-12);
    assertEquals(42, malt.bufferCapacity().number(), 1e-12);
    assertEquals(3, malt.bufferCapacity().standardUncertainty().orElseThrow(), 1e-12);
    assertEquals(Origin.REPORTED, malt.pH().origin());
    assertEquals(4, malt.litresPerKilogram());
    assertEquals(celsius(20), malt.readAt());
    assertTrue(malt.species().isEmpty());
    // Strong acid of a capacity lowers the pH by 1.
    assertEquals(42, malt.curve().acidAt(4.75), 1e-9);
    assertEquals(
        "own malt, pH in distilled water 5.75, U 0.04 (k = 2), 42.0 mEq/(kg pH), U 6.0 (k = 2)",
        malt.toString());
  }

  /** Acid typed ten times too strong or too weak makes a malt that there is not. */
  @Test
  void aMaltUnlikeAnyIsNoticed() {
    for (double capacity : new double[] {4.3, 14.9, 121, 430}) {
      List<Notice> notices = Malt.stated("own", "ours", pH(5.75), 0.02, capacity, 1).notices();
      assertEquals(1, notices.size(), "capacity " + capacity);
      assertTrue(
          notices
              .get(0)
              .text()
              .matches("capacity of own: .* is unusual; usual is 15 to 120 mEq/\\(kg pH\\).*"),
          notices.get(0).text());
    }
    assertEquals(List.of(), Malt.stated("own", "ours", pH(3.4), 0.02, 15.1, 1).notices());
    List<Notice> alkaline = Malt.stated("own", "ours", pH(11.9), 0.02, 42, 1).notices();
    assertTrue(
        alkaline.get(0).text().startsWith("pH of own: 11.9 is unusual"), alkaline.toString());
  }

  @Test
  void theCapacityHasTheLimitsThatAreSaid() {
    assertEquals(0.1, Malt.stated("m", "s", pH(5.8), 0, 0.1, 0).bufferCapacity().number(), 1e-12);
    assertEquals(
        10_000, Malt.stated("m", "s", pH(5.8), 0, 10_000, 0).bufferCapacity().number(), 1e-6);
    for (double beyond : new double[] {0.09, 10_001}) {
      assertThrows(
          IllegalArgumentException.class, () -> Malt.stated("m", "s", pH(5.8), 0, beyond, 0));
    }
  }

  /** 95 % of the capacities of pale malt lie from 30 to 65: their median is the root of 1950. */
  @Test
  void anAssumedMaltHasTheNumbersOfItsRow() {
    Malt pale = Malt.assumed(MaltKind.PALE);
    assertEquals("pale malt", pale.name());
    assertEquals(
        "assumed-malts, pale malt (computed)", pale.source(), "key, place, how it is known");
    assertEquals(5.80, pale.pH().number());
    assertEquals(0.10, pale.pH().standardUncertainty().orElseThrow(), 1e-12);
    double spread = Math.log(65 / 30.0) / 2 / 1.959963984540054;
    AssumedMalt read = AssumedMalt.of(MaltKind.PALE);
    Traced slope = read.curve().slope();
    // The mean of the inverse of a lognormal capacity.
    assertEquals(-Math.exp(spread * spread / 2) / Math.sqrt(1950), slope.value(), 1e-12);
    assertEquals(
        spread, slope.standardUncertainty().orElseThrow() / -slope.value(), 1e-12, "relative");
    assertEquals(
        List.of(
            "rests on an assumed malt: nobody measured this lot of pale malt; titrate it in three"
                + " jars"),
        pale.notices().stream().map(notice -> notice.text()).toList());
    assertEquals(
        List.of(MashCode.ASSUMED_MALT),
        pale.pH().notices().stream().map(notice -> notice.code()).toList());
  }

  /** Half a 95 % interval is 1.96 standard deviations: 0.4 to 2.5 as the factor is assumed. */
  @Test
  void theSpreadOfALogarithmIsThatOfA95PercentRange() {
    assertEquals(
        Math.log(2.5 / 0.4) / 3.919927969080108, MashValues.logarithmicSpread(0.4, 2.5), 1e-15);
    assertEquals(1 / 1.959963984540054, MashValues.logarithmicSpread(1, Math.exp(2)), 1e-15);
    Traced factor = Grist.of(kg(1), stated()).kolbachFactor();
    assertEquals(1, factor.value());
    assertEquals(0.4675, factor.standardUncertainty().orElseThrow(), 1e-4);
    assertEquals(
        "own-choice, weak prior of the curvature (computed)",
        MashValues.source(MashValues.row("curvature of a malt")));
    assertEquals(0.02, MashValues.value("reading of a mash pH"));
    assertEquals(
        "mash-values.csv: there is no item tea",
        assertThrows(IllegalStateException.class, () -> MashValues.value("tea")).getMessage());
  }

  @Test
  void aFigureOfAMaltIsOfNothingElse() {
    Answer<PH> ofWater = Water.pure().answer(stated().pH().figure());
    assertEquals(List.of("does not apply to a water"), ofWater.whyUnknown());
    assertTrue(
        ofWater.explain().toString().contains("number of the charge curve of a malt"),
        ofWater.explain().toString());
    assertEquals(
        List.of("does not apply to a water"),
        Water.pure().answer(MashFigures.MASH_PH).whyUnknown());
    assertTrue(
        Water.pure()
            .answer(MashFigures.KOLBACH_ACID)
            .explain()
            .toString()
            .contains("factor x (calcium / 3.5 + magnesium / 7), in mEq per litre of liquor"));
  }

  private static Solution extract(Temperature temperature) {
    Solution acids =
        Solution.at(temperature)
            .with(Ion.MAGNESIUM, mmolPerKg(2))
            .with(Ion.CHLORIDE, mmolPerKg(4))
            .with(Acid.PHOSPHORIC, mmolPerKg(8))
            .with(Acid.CITRIC, mmolPerKg(1));
    for (double pKa : new double[] {4.6, 5.2, 5.8, 6.4}) {
      acids = acids.with(Acid.ofPKa("groups of pKa " + pKa, pKa), mmolPerKg(5));
    }
    return acids.with(Ion.POTASSIUM, acids.doseOf(Base.POTASSIUM_HYDROXIDE, pH(5.75)));
  }

  /** The quadratic through the kernel's pH at three jars meets them, at any ratio. */
  @Test
  void theCurveOfSpeciesGoesThroughThreeJarsOfTheKernel() {
    for (double ratio : new double[] {1, 4, 20}) {
      Solution species = extract(celsius(20));
      Malt malt = Malt.ofSpecies("own malt", "congress wort", species, ratio);
      assertEquals(Origin.COMPUTED, malt.pH().origin());
      for (double acid : new double[] {-10, 0, 20}) {
        double solved =
            species
                .withInertCharge(species.inertCharge().plus(mEqPerL(-acid / ratio)))
                .pH()
                .value();
        assertEquals(acid, malt.curve().acidAt(solved), 1e-6, "at " + ratio + " L/kg");
      }
      assertEquals(-10, malt.curve().lowest());
      assertEquals(20, malt.curve().highest());
      assertEquals(0, malt.curve().slopes(0)[3], 1e-15);
      assertEquals(ratio, malt.litresPerKilogram());
      assertEquals(0.004, malt.curve().parameters()[3].standardUncertainty().orElseThrow());
      assertTrue(malt.species().isPresent());
    }
  }

  @Test
  void speciesAreTakenFrom10To30DegreesAndFrom1To20LitresPerKilogram() {
    for (double degrees : new double[] {10, 30}) {
      Malt malt = Malt.ofSpecies("own malt", "wort", extract(celsius(degrees)), 4);
      assertEquals(celsius(degrees), malt.readAt());
      assertEquals(5.75, malt.pH().number(), 1e-9);
    }
    refused(
        "temperature of the species: 31 °C is not possible; 10 to 30 °C is allowed",
        () -> Malt.ofSpecies("own malt", "wort", extract(celsius(31)), 4));
    refused(
        "litres per kilogram: 0.9 L/kg is not possible; 1 to 20 L/kg is allowed",
        () -> Malt.ofSpecies("own malt", "wort", extract(celsius(20)), 0.9));
    refused(
        "litres per kilogram: 20.1 L/kg is not possible; 1 to 20 L/kg is allowed",
        () -> Malt.ofSpecies("own malt", "wort", extract(celsius(20)), 20.1));
    Water open = WaterReport.reported().calcium(mgPerL(50)).magnesium(mgPerL(5)).build().water();
    refused(
        "species of own malt: a solution with unknown totals or an open balance is not possible;"
            + " state each total and the pH or the inert charge",
        () -> Malt.ofSpecies("own malt", "wort", open, 4));
  }

  private static void refused(String message, org.junit.jupiter.api.function.Executable input) {
    assertEquals(message, assertThrows(IllegalArgumentException.class, input).getMessage());
  }

  /** What a brew taught stays with the malt when its species are stated afterwards. */
  @Test
  void aLearnedMaltSaysWhereItsNumbersComeFrom() {
    Malt pale = Malt.assumed(MaltKind.PALE);
    Grist grist = Grist.of(kg(3), pale).and(kg(1), stated());
    Grist taught = Mash.of(grist, Water.pure(), litres(16)).measured(pH(5.7), 0.02).grist();
    Malt learned = taught.malt("pale malt");
    assertTrue(learned.isLearned());
    assertFalse(learned.isAssumed());
    assertEquals(List.of(), learned.notices());
    assertEquals(Origin.COMPUTED, learned.pH().origin());
    assertEquals(Origin.REPORTED, taught.malt("own malt").pH().origin());
    assertTrue(
        learned.pH().explain().toString().contains(", as measured mashes taught it"),
        learned.pH().explain().toString());
    assertTrue(
        stated().pH().explain().toString().contains(", reported"),
        stated().pH().explain().toString());
    assertFalse(learned.toString().endsWith("assumed"));
    assertEquals(List.of(Map.of("pale malt", 0.75, "own malt", 0.25)), learned.brews());
    assertFalse(stated().isLearned());
    Malt both = learned.withSpecies(extract(celsius(20)));
    assertEquals(learned.brews(), both.brews());
    assertEquals(learned.pH().number(), both.pH().number());
    assertTrue(both.species().isPresent());
  }
}
