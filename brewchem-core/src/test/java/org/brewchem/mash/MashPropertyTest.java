package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Salt;
import org.brewchem.substance.Solute;
import org.brewchem.treatment.Treatments;
import org.brewchem.water.Water;

/** What holds for every mash. */
class MashPropertyTest {

  /** Of the root's search. */
  private static final double ROUNDING = 1e-11;

  private static final List<Solute> ACIDS =
      List.of(Acid.LACTIC, Acid.PHOSPHORIC, Acid.SULFURIC, Acid.HYDROCHLORIC, Acid.CITRIC);

  private static final List<Solute> SALTS = List.of(Salt.CALCIUM_CHLORIDE_DIHYDRATE, Salt.GYPSUM);

  private static Mash mash(
      double malt,
      double capacity,
      double second,
      double ratio,
      double alkalinity,
      boolean closed) {
    Grist grist =
        Grist.of(kg(1 - second), Mashes.exact(malt, capacity))
            .and(kg(second), Malt.assumed(MaltKind.CARAMEL));
    Water liquor =
        Mashes.alkaline(alkalinity)
            .after(
                Treatments.solute(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mmolPerL(1)),
                Treatments.solute(Salt.EPSOM_SALT, mmolPerL(0.5)));
    Mash mash = Mash.of(grist, liquor, litres(ratio));
    return closed ? mash.keepingCarbonDioxide() : mash;
  }

  @Property(tries = 200, seed = "20261126")
  void moreAcidNeverRaisesTheMashPH(
      @ForAll @DoubleRange(min = 5.3, max = 6.2) double malt,
      @ForAll @DoubleRange(min = 25, max = 80) double capacity,
      @ForAll @DoubleRange(min = 0.01, max = 0.6) double second,
      @ForAll @DoubleRange(min = 2, max = 8) double ratio,
      @ForAll @DoubleRange(min = 0, max = 7) double alkalinity,
      @ForAll @DoubleRange(min = 0, max = 20) double before,
      @ForAll @DoubleRange(min = 0.01, max = 20) double more,
      @ForAll @IntRange(min = 0, max = 4) int acid,
      @ForAll boolean closed) {
    Mash mash = mash(malt, capacity, second, ratio, alkalinity, closed);
    double less = with(mash, ACIDS.get(acid), before);
    double then = with(mash, ACIDS.get(acid), before + more);
    assertTrue(then < less + ROUNDING, ACIDS.get(acid) + ": " + less + " to " + then);
  }

  @Property(tries = 200, seed = "20261126")
  void moreCalciumAsChlorideOrSulfateNeverRaisesTheMashPH(
      @ForAll @DoubleRange(min = 5.3, max = 6.2) double malt,
      @ForAll @DoubleRange(min = 25, max = 80) double capacity,
      @ForAll @DoubleRange(min = 0.01, max = 0.6) double second,
      @ForAll @DoubleRange(min = 2, max = 8) double ratio,
      @ForAll @DoubleRange(min = 0, max = 7) double alkalinity,
      @ForAll @DoubleRange(min = 0, max = 6) double before,
      @ForAll @DoubleRange(min = 0.01, max = 6) double more,
      @ForAll @IntRange(min = 0, max = 1) int salt,
      @ForAll @DoubleRange(min = 0, max = 10) double lactic,
      @ForAll boolean closed) {
    Mash mash =
        mash(malt, capacity, second, ratio, alkalinity, closed)
            .after(Treatments.solute(Acid.LACTIC, mmolPerL(lactic)));
    double less = with(mash, SALTS.get(salt), before);
    double then = with(mash, SALTS.get(salt), before + more);
    assertTrue(then < less + ROUNDING, SALTS.get(salt) + ": " + less + " to " + then);
  }

  private static double with(Mash mash, Solute solute, double millimolesPerLitre) {
    return mash.after(Treatments.solute(solute, mmolPerL(millimolesPerLitre))).balance().pH();
  }

  @Property(tries = 100, seed = "20261126")
  void aMashWithinItsMaltsLiesBetweenThem(
      @ForAll @DoubleRange(min = 4.6, max = 6.2) double first,
      @ForAll @DoubleRange(min = 4.6, max = 6.2) double second,
      @ForAll @DoubleRange(min = 25, max = 80) double capacity,
      @ForAll @DoubleRange(min = 0.05, max = 0.95) double share) {
    Grist grist =
        Grist.of(kg(share), Malt.stated("first", "invented", pH(first), 0, capacity, 0))
            .and(kg(1 - share), Malt.stated("second", "invented", pH(second), 0, 45, 0));
    double found = Mash.of(grist, Water.pure(), litres(4)).balance().pH();
    assertTrue(
        found > Math.min(first, second) - 1e-9 && found < Math.max(first, second) + 1e-9,
        first + ", " + second + ": " + found);
  }
}
