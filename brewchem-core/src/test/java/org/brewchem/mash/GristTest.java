package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.quantity.Mass;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.treatment.Treatments;
import org.brewchem.water.Water;
import org.junit.jupiter.api.Test;

/** Malts and masses, and what goes into a whole mash. */
class GristTest {

  private static Malt malt(String name) {
    return Malt.stated(name, "invented", pH(5.7), 0.02, 40, 2);
  }

  private static final Malt FIRST = malt("first");
  private static final Malt SECOND = malt("second");

  @Test
  void aGristKeepsItsMaltsAndTheirShares() {
    Grist grist = Grist.of(kg(5), FIRST).and(kg(2), SECOND).and(kg(1), FIRST);
    assertEquals(kg(8), grist.mass());
    assertEquals(List.of(FIRST, SECOND), grist.malts());
    assertEquals(Map.of("first", 0.75, "second", 0.25), grist.shares());
    assertSame(SECOND, grist.malt("second"));
    assertFalse(grist.isLearned());
    assertEquals("5 kg of first, 2 kg of second, 1 kg of first", grist.toString());
    Grist other = grist.with(List.of(SECOND, FIRST, FIRST), grist.kolbachFactor());
    assertEquals("5 kg of second, 2 kg of first, 1 kg of first", other.toString());
  }

  @Test
  void aGristOfAMapIsThatOfItsEntriesInTheirOrder() {
    Map<Malt, Mass> masses = new LinkedHashMap<>();
    masses.put(SECOND, kg(3));
    masses.put(FIRST, kg(2));
    assertEquals("3 kg of second, 2 kg of first", Grist.of(masses).toString());
  }

  @Test
  void aMaltThatIsNotThereIsNamedWithThoseThatAre() {
    Grist grist = Grist.of(kg(5), FIRST).and(kg(2), SECOND);
    assertEquals(
        "malt: rye is not in the grist; it has first, second",
        assertThrows(IllegalArgumentException.class, () -> grist.malt("rye")).getMessage());
    Malt warm =
        MaltTitration.of("warm", "invented", 0.01)
            .readAt(celsius(25))
            .base(mL(5), mEqPerL(100), pH(6.05))
            .none(pH(5.8))
            .acid(mL(10), mEqPerL(100), pH(5.3))
            .malt();
    assertEquals(
        "temperature of reading of warm: 25 °C is not possible; 20 °C is needed, as of the malts"
            + " before",
        assertThrows(IllegalArgumentException.class, () -> grist.and(kg(1), warm)).getMessage());
  }

  /** A relative u of 0.2 of the factor 1.5 is 0.3. */
  @Test
  void theFactorOnKolbachsTermIsWhatWasStated() {
    Grist grist = Grist.of(kg(5), FIRST);
    assertEquals(1.5, grist.withKolbachFactor(1.5, 0.2).kolbachFactor().value());
    assertEquals(
        0.3,
        grist.withKolbachFactor(1.5, 0.2).kolbachFactor().standardUncertainty().orElseThrow(),
        1e-12);
    assertEquals(
        0, grist.withKolbachFactor(1.5, 0).kolbachFactor().standardUncertainty().orElseThrow());
    assertEquals(List.of(), grist.withKolbachFactor(1.5, 0).kolbachFactor().sources());
    assertEquals(List.of(), grist.withKolbachFactor(0, 0.2).kolbachFactor().sources());
    assertThrows(IllegalArgumentException.class, () -> grist.withKolbachFactor(1, -0.1));
    // It stays when a malt is added.
    assertEquals(1.5, grist.withKolbachFactor(1.5, 0.2).and(kg(1), SECOND).kolbachFactor().value());
  }

  /** 4 g into 8 L are 0.5 g/L, whatever it is. */
  @Test
  void anAdditionIntoTheWholeMashIsItsMassPerLitreOfLiquor() {
    Mash mash = Mash.of(Grist.of(kg(2), FIRST), Mashes.alkaline(2), litres(8));
    Reagent lactic = Reagent.of(Acid.LACTIC, massPercent(80));
    Reagent gypsum = Reagent.of(Salt.GYPSUM, massPercent(90));
    same(mash, MashAddition.acid(lactic, g(4)), Treatments.acid(lactic, mgPerL(500)));
    same(mash, MashAddition.acid(Acid.CITRIC, g(4)), Treatments.acid(Acid.CITRIC, mgPerL(500)));
    same(
        mash,
        MashAddition.base(Base.SODIUM_BICARBONATE, g(4)),
        Treatments.base(Base.SODIUM_BICARBONATE, mgPerL(500)));
    same(mash, MashAddition.salt(Salt.GYPSUM, g(4)), Treatments.salt(Salt.GYPSUM, mgPerL(500)));
    same(mash, MashAddition.salt(gypsum, g(4)), Treatments.salt(gypsum, mgPerL(500)));
  }

  private static void same(Mash mash, MashAddition whole, Treatment perLitre) {
    double found = mash.after(whole).pH().number();
    assertEquals(mash.after(perLitre).pH().number(), found, 1e-9);
    assertTrue(Math.abs(found - mash.pH().number()) > 1e-3, "it does something");
  }

  @Test
  void aGristIsLearnedWhereOneOfItsMaltsIs() {
    Grist taught =
        Mash.of(Grist.of(kg(1), FIRST), Water.pure(), litres(4)).measured(pH(5.6), 0.02).grist();
    assertTrue(taught.isLearned());
    assertTrue(Grist.of(kg(1), SECOND).and(kg(1), taught.malt("first")).isLearned());
  }

  /** Above 1 a factor is not known to its size; the interval of its mash pH had no end. */
  @Test
  void aKolbachFactorIsKnownToItsOwnSizeAtWorst() {
    Grist grist = Grist.of(kg(1), FIRST);
    assertEquals(
        1, grist.withKolbachFactor(1, 1).kolbachFactor().standardUncertainty().orElseThrow());
    assertThrows(IllegalArgumentException.class, () -> grist.withKolbachFactor(1, 1.01));
    assertThrows(IllegalArgumentException.class, () -> grist.withKolbachFactor(1, -0.1));
    assertThrows(IllegalArgumentException.class, () -> grist.withKolbachFactor(-1, 0.1));
  }
}
