package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SOURNESS_INDEX;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The index that sourness follows. */
class SournessIndexTest {

  private static Solution water() {
    return Solution.at(celsius(25)).under(Chemistry.of(Level.IDEAL));
  }

  /**
   * Acetic acid of 50, 100 and 150 mg/L in water (Li & Liu, Food Chem. 185 (2015) 200, section 3.1;
   * extract seen) has pH 3.95, 3.79, 3.70 by Ka 1.75e-5, not 3.77, 3.59, 3.49 as printed: a slip,
   * or carbon dioxide. The printed values must not come out.
   */
  @ParameterizedTest
  @CsvSource({"50, 3.95, 3.77", "100, 3.79, 3.59", "150, 3.70, 3.49"})
  void aceticAcidHasThePHOfItsConstant(double milligramsPerLitre, double expected, double printed) {
    double millimoles = milligramsPerLitre / Acid.ACETIC.molarMass().inGramsPerMole();
    double found = water().with(Acid.ACETIC, mmolPerL(millimoles)).answer(PH_VALUE).value().value();
    assertEquals(expected, found, 0.006);
    assertTrue(found - printed > 0.15, found + " beside " + printed);
  }

  /**
   * By the balance of charge: of one monoprotic acid in water H+ stands for the anion, so that the
   * index is the acid's total, less what the water itself brings.
   */
  @Property(tries = 50)
  void ofOneMonoproticAcidItIsTheTotal(
      @ForAll @DoubleRange(min = 0.5, max = 80) double millimoles) {
    for (Acid acid : Stream.of(Acid.LACTIC, Acid.ACETIC, Acid.PYRUVIC).toList()) {
      for (Level level : Level.values()) {
        Solution solution =
            Solution.at(celsius(25)).under(Chemistry.of(level)).with(acid, mmolPerL(millimoles));
        Answer<?> index = solution.answer(SOURNESS_INDEX);
        assertEquals(millimoles, index.number(), 1e-6 * millimoles, acid + " " + level);
        assertTrue(index.explain().holds());
      }
    }
  }

  /** A strong acid has its H+ alone, and phosphate is no organic acid. */
  @Test
  void mineralAcidsCountByTheirHydrogenIons() {
    assertEquals(
        2, water().with(Acid.HYDROCHLORIC, mmolPerL(2)).answer(SOURNESS_INDEX).number(), 1e-6);
    Solution phosphoric = water().with(Acid.PHOSPHORIC, mmolPerL(5));
    double hydrogen = 1000 * Math.pow(10, -phosphoric.answer(PH_VALUE).number());
    assertEquals(hydrogen, phosphoric.answer(SOURNESS_INDEX).number(), 0.02 * hydrogen);
  }

  /** Ka 1.38e-4 at pH 3.86: half of a monoprotic acid holds its proton at its pKa. */
  @Test
  void aBufferedAcidCountsByWhatHoldsItsProton() {
    Solution half =
        water().with(Acid.LACTIC, mmolPerL(40)).with(Base.SODIUM_HYDROXIDE, mmolPerL(20));
    double index = half.answer(SOURNESS_INDEX).number();
    double h = 1000 * Math.pow(10, -half.answer(PH_VALUE).number());
    // Neutral: 20 of sodium and h of hydrogen ions hold the anions.
    assertEquals(h + 40 - (20 + h), index, 0.1);
    assertTrue(index < half.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre() + 0.1);
  }

  /** A new organic acid of the library counts without an entry anywhere. */
  @Test
  void everyOrganicAcidOfTheLibraryCountsAndNoOther() {
    Set<Acid> others =
        Set.of(
            Acid.AMMONIUM,
            Acid.BORIC,
            Acid.CARBONIC,
            Acid.HYDROCHLORIC,
            Acid.NITRIC,
            Acid.PHOSPHORIC,
            Acid.PHTHALIC,
            Acid.SULFURIC,
            Acid.SULFUROUS);
    for (Acid acid : Acid.named()) {
      Solution solution = water().with(acid, mmolPerL(1));
      double hydrogen = 1000 * Math.pow(10, -solution.answer(PH_VALUE).number());
      double molecules = solution.answer(SOURNESS_INDEX).number() - hydrogen;
      assertEquals(!others.contains(acid), molecules > 0.01, acid + ": " + molecules);
    }
  }

  @Test
  void aLiquidOfNamedAcidsLacksNone() {
    assertTrue(
        Held.beer().answer(SOURNESS_INDEX).notices().stream()
            .noneMatch(notice -> notice.code() == SolutionCode.LUMPED_ACIDS_NOT_COUNTED));
    assertFalse(SOURNESS_INDEX.rule().text().isEmpty());
  }

  private static final Component PROTEIN = Component.group("protein", -1, 4.5);

  private static List<String> unnamed(Component component, double millimoles) {
    return water()
        .with(Acid.LACTIC, mmolPerL(20))
        .with(component, mmolPerKg(millimoles))
        .closedTo(pH(4.5))
        .answer(SOURNESS_INDEX)
        .notices()
        .stream()
        .filter(notice -> notice.code() == SolutionCode.LUMPED_ACIDS_NOT_COUNTED)
        .map(Notice::text)
        .toList();
  }

  /** Half of it holds its proton at its pKa; a hundredth of the index is worth a word. */
  @Test
  void acidsWithoutANameAreSaidWhereTheyAreMoreThanAHundredth() {
    String rest =
        " mmol/kg of protonated acid without a name, protein or the acids of a measured buffer, are"
            + " not in the index";
    assertEquals(List.of("5.00" + rest), unnamed(PROTEIN, 10));
    assertEquals(List.of("0.100" + rest), unnamed(PROTEIN, 0.2));
    assertEquals(List.of(), unnamed(PROTEIN, 0.05));
    assertEquals(List.of(), unnamed(Component.group("amino", 0, 4.5), 10));
  }

  /** A metal's charge is no proton: of the pairs only those that hold one would count. */
  @Test
  void ofTheSpeciesOfAnAcidOnlyThoseWithAProtonCount() {
    Solution pairs =
        Solution.at(celsius(25))
            .with(Acid.LACTIC, mmolPerL(40))
            .with(Base.CALCIUM_HYDROXIDE, mmolPerL(12));
    Equilibrium state = pairs.equilibrium();
    double counted = 0;
    for (Species species : state.species()) {
      if (species.name().equals("H+") || species.name().equals("H(lactate)")) {
        counted += species.molality().inMolesPerKilogram();
      }
    }
    assertTrue(state.bound(Component.CALCIUM).inMolesPerKilogram() > 1e-3);
    assertEquals(
        1000 * counted * pairs.kilogramsPerLitre(), pairs.answer(SOURNESS_INDEX).number(), 1e-9);
  }

  @Test
  void theExplanationListsWhatCountsAndNothingThatIsNotThere() {
    Answer<?> index =
        water()
            .with(Acid.LACTIC, mmolPerL(20))
            .withTotal(Component.CITRATE, mmolPerKg(0))
            .answer(SOURNESS_INDEX);
    String text = index.explain().toString();
    assertTrue(text.contains("H(lactate): "), text);
    assertFalse(text.contains("H(citrate)"), text);
  }
}
