package org.brewchem.checks.metamorphic;

import static org.brewchem.checks.metamorphic.Liquids.between;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Figure;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.Mash;
import org.brewchem.mash.MashFigures;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.Quantities;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.titration.Titrant;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Treatments;
import org.brewchem.water.Constituent;
import org.brewchem.water.Water;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;

/**
 * What must not change when a question is asked in another way, and what must move one way when an
 * input does: a thousand draws each, over waters, beers, mixtures and mashes.
 */
@Domain(Liquids.class)
class MetamorphicTest {

  private static final int DRAWS = 1000;
  private static final double SAME_PH = 1e-9;
  private static final double SAME = 1e-9;

  private static final Reagent LACTIC = Reagent.of(Acid.LACTIC, massPercent(80));

  private static final Figure<?> ACIDITY = Figures.titratableAcidity(pH(8.2));

  private static double value(Liquid liquid, Figure<?> figure) {
    return liquid.answer(figure).number();
  }

  private static void assertSame(Liquid one, Liquid other, Figure<?>... figures) {
    for (Figure<?> figure : figures) {
      double expected = value(one, figure);
      double tolerance =
          figure.equals(Figures.PH_VALUE) ? SAME_PH : SAME * Math.max(1, Math.abs(expected));
      assertEquals(expected, value(other, figure), tolerance, figure::toString);
    }
  }

  // What must not change.

  @Property(tries = DRAWS)
  void theOrderOfComponentsDoesNotMatter(@ForAll double[] n) {
    List<UnaryOperator<Solution>> parts = new ArrayList<>();
    Acid[] acids = {Acid.PHOSPHORIC, Acid.CITRIC, Acid.LACTIC, Acid.ACETIC, Acid.CARBONIC};
    for (int i = 0; i < acids.length; i++) {
      Acid acid = acids[i];
      double amount = between(n[i], 0.1, 10);
      parts.add(solution -> solution.with(acid, mmolPerL(amount)));
    }
    Ion[] ions = {Ion.CALCIUM, Ion.MAGNESIUM, Ion.SODIUM, Ion.SULFATE, Ion.CHLORIDE};
    for (int i = 0; i < ions.length; i++) {
      Ion ion = ions[i];
      double amount = between(n[i + 5], 0.1, 5);
      parts.add(solution -> solution.with(ion, mmolPerL(amount)));
    }
    Solution one = Solution.at(celsius(20));
    for (var part : parts) {
      one = part.apply(one);
    }
    Collections.shuffle(parts, new Random(Double.doubleToLongBits(n[11])));
    Solution other = Solution.at(celsius(20));
    for (var part : parts) {
      other = part.apply(other);
    }
    assertSame(one, other, Figures.PH_VALUE, ACIDITY, Figures.IONIC_STRENGTH);
  }

  @Property(tries = DRAWS)
  void aReportInOtherUnitsIsTheSameWater(@ForAll double[] n) {
    Water one = Liquids.water(n);
    double calcium = between(n[0], 1, 200);
    double magnesium = between(n[1], 0.5, 50);
    Water other =
        WaterReport.reported()
            .concentration(
                Constituent.CALCIUM, mmolPerL(calcium / Ion.CALCIUM.molarMass().inGramsPerMole()))
            .concentration(
                Constituent.MAGNESIUM,
                Quantities.mEqPerL(magnesium * Ion.MAGNESIUM.milliequivalentsPerMilligram()))
            .sodium(MassConcentration.ofGramsPerLitre(between(n[2], 1, 100) / 1000))
            .potassium(mgPerL(between(n[3], 0.1, 15)))
            .sulfate(mgPerL(between(n[4], 1, 250)))
            .chloride(mgPerL(between(n[5], 1, 150)))
            .nitrate(mgPerL(between(n[6], 0.1, 50)))
            .alkalinity(
                CarbonateAlkalinity.ofMilliequivalentsPerLitre(
                    one.alkalinity().value().inMilliequivalentsPerLitre()))
            .pH(pH(between(n[8], 6.8, 8.3)))
            .build()
            .water();
    assertSame(
        one,
        other,
        WaterFigures.RESIDUAL_ALKALINITY,
        WaterFigures.TOTAL_HARDNESS,
        Figures.TOTAL_CARBON_DIOXIDE,
        Figures.titrationAlkalinity(pH(4.3)),
        Figures.IONIC_STRENGTH);
  }

  @Property(tries = DRAWS)
  void aDoseInTwoPartsIsTheSameDose(@ForAll double[] n) {
    MassConcentration whole = mgPerL(between(n[9], 1, 300));
    MassConcentration first = whole.times(n[10]);
    MassConcentration second = whole.minus(first);
    Treatment[] parts = {Treatments.acid(Acid.LACTIC, first), Treatments.acid(Acid.LACTIC, second)};
    Treatment together = Treatments.acid(Acid.LACTIC, whole);
    Water water = Liquids.water(n);
    assertSame(
        water.after(together), water.after(parts), Figures.PH_VALUE, Figures.CARBONATE_ALKALINITY);
    Beer beer = Liquids.beer(n);
    assertSame(beer.after(together), beer.after(parts), Figures.PH_VALUE, ACIDITY);
    Solution mixture = Liquids.mixture(n);
    assertSame(mixture.after(together), mixture.after(parts), Figures.PH_VALUE, ACIDITY);
  }

  @Property(tries = DRAWS)
  void saltsInAnyOrderAreTheSameWater(@ForAll double[] n) {
    Treatment gypsum = Treatments.salt(Salt.GYPSUM, mgPerL(between(n[9], 1, 400)));
    Treatment chloride =
        Treatments.salt(Salt.CALCIUM_CHLORIDE_DIHYDRATE, mgPerL(between(n[10], 1, 400)));
    Water water = Liquids.water(n);
    assertSame(
        water.after(gypsum, chloride),
        water.after(chloride, gypsum),
        Figures.PH_VALUE,
        WaterFigures.RESIDUAL_ALKALINITY,
        Figures.IONIC_STRENGTH);
  }

  /** Equal salt per litre in both waters: adding it before or after the blend is one thing. */
  @Property(tries = DRAWS)
  void saltedThenBlendedIsBlendedThenSalted(@ForAll double[] n, @ForAll double[] other) {
    Treatment salt = Treatments.salt(Salt.GYPSUM, mgPerL(between(n[9], 1, 400)));
    MassFraction share = massPercent(between(n[10], 1, 99));
    Water one = Liquids.water(n);
    Water two = Liquids.water(other);
    assertSame(
        one.after(salt).after(Treatments.blend(two.after(salt), share)),
        one.after(Treatments.blend(two, share), salt),
        Figures.PH_VALUE,
        Figures.CALCIUM,
        Figures.SULFATE,
        Figures.CARBONATE_ALKALINITY);
  }

  @Property(tries = DRAWS)
  void aBlendWithItselfIsItself(@ForAll double[] n) {
    Water water = Liquids.water(n);
    MassFraction share = massPercent(between(n[9], 1, 99));
    assertSame(
        water,
        water.after(Treatments.blend(water, share)),
        Figures.PH_VALUE,
        Figures.CALCIUM,
        Figures.CARBONATE_ALKALINITY);
    Beer beer = Liquids.beer(n);
    assertSame(beer, beer.after(Treatments.blend(beer, share)), Figures.PH_VALUE, ACIDITY);
  }

  @Property(tries = DRAWS)
  void blendsInTwoStepsAreOneBlend(@ForAll double[] n, @ForAll double[] other) {
    Water one = Liquids.water(n);
    Water two = Liquids.water(other);
    double first = between(n[9], 0.05, 0.9);
    double second = between(n[10], 0.05, 0.9);
    double both = 1 - (1 - first) * (1 - second);
    assertSame(
        one.after(
            Treatments.blend(two, MassFraction.of(first)),
            Treatments.blend(two, MassFraction.of(second))),
        one.after(Treatments.blend(two, MassFraction.of(both))),
        Figures.PH_VALUE,
        Figures.CALCIUM,
        Figures.CARBONATE_ALKALINITY);
  }

  @Property(tries = DRAWS)
  void twiceTheTankTakesTwiceTheDose(@ForAll double[] n) {
    Beer beer = Liquids.beer(n);
    Dose<Beer> dose =
        Dose.of(beer, LACTIC).to(pH(beer.pH().value().value() - between(n[9], 0.02, 0.3)));
    double one = dose.into(hL(between(n[10], 1, 100))).mass().inGrams();
    double two = dose.into(hL(2 * between(n[10], 1, 100))).mass().inGrams();
    assertEquals(2 * one, two, SAME * two);
  }

  @Property(tries = DRAWS)
  void aDoseIsTheTreatmentThatItProposes(@ForAll double[] n) {
    Water water = Liquids.water(n);
    double wanted = between(n[9], 5.3, 6.3);
    Dose<Water> dose = Dose.of(water, LACTIC).to(pH(wanted));
    assertEquals(wanted, value(dose.after(), Figures.PH_VALUE), 1e-6);
    Beer beer = Liquids.beer(n);
    double lower = beer.pH().value().value() - between(n[10], 0.02, 0.4);
    assertEquals(lower, value(Dose.of(beer, LACTIC).to(pH(lower)).after(), Figures.PH_VALUE), 1e-6);
  }

  @Property(tries = DRAWS)
  void halfTheSampleTakesHalfTheTitre(@ForAll double[] n) {
    var lye = Titrant.sodiumHydroxide().of(molPerL(between(n[0], 0.02, 0.2)));
    double titre = between(n[1], 2, 40);
    double sample = between(n[2], 20, 100);
    double one =
        lye.titrate(mL(sample))
            .to(pH(8.2))
            .took(mL(titre))
            .acidity()
            .value()
            .inMilliequivalentsPerLitre();
    double half =
        lye.titrate(mL(sample / 2))
            .to(pH(8.2))
            .took(mL(titre / 2))
            .acidity()
            .value()
            .inMilliequivalentsPerLitre();
    assertEquals(one, half, SAME * one);
  }

  @Property(tries = DRAWS)
  void halfOfEverythingIsTheSameMash(@ForAll double[] n) {
    Water liquor = Liquids.water(n);
    double whole = value(Liquids.mash(n, liquor), MashFigures.MASH_PH);
    double half =
        value(
            Mash.of(
                Grist.of(Quantities.kg(between(n[9], 100, 250) / 2), Malt.assumed(MaltKind.PALE))
                    .and(Quantities.kg(between(n[10], 1, 40) / 2), Malt.assumed(MaltKind.CARAMEL)),
                liquor,
                hL(between(n[11], 4, 10) / 2)),
            MashFigures.MASH_PH);
    assertEquals(whole, half, SAME_PH);
  }

  // What must move one way.

  @Property(tries = DRAWS)
  void moreAcidLowersThePHAndRaisesTheAcidity(@ForAll double[] n) {
    Treatment acid = Treatments.acid(Acid.LACTIC, mgPerL(between(n[11], 0.1, 500)));
    for (Liquid liquid : new Liquid[] {Liquids.beer(n), Liquids.mixture(n), Liquids.water(n)}) {
      Liquid after = liquid.after(acid);
      assertTrue(value(after, Figures.PH_VALUE) < value(liquid, Figures.PH_VALUE));
      assertTrue(value(after, ACIDITY) > value(liquid, ACIDITY));
    }
    Water water = Liquids.water(n);
    assertTrue(
        value(water.after(acid), Figures.CARBONATE_ALKALINITY)
            < value(water, Figures.CARBONATE_ALKALINITY));
  }

  @Property(tries = DRAWS)
  void aHigherEndPointTakesMoreAlkali(@ForAll double[] n) {
    double low = between(n[9], 6, 8);
    double high = low + between(n[10], 0.01, 1);
    for (Liquid liquid : new Liquid[] {Liquids.beer(n), Liquids.mixture(n), Liquids.water(n)}) {
      assertTrue(
          value(liquid, Figures.titratableAcidity(pH(high)))
              > value(liquid, Figures.titratableAcidity(pH(low))));
    }
  }

  @Property(tries = DRAWS)
  void aLowerPHTakesMoreAcid(@ForAll double[] n) {
    Water water = Liquids.water(n);
    double high = between(n[9], 5.2, 6.5);
    double low = high - between(n[10], 0.01, 0.5);
    assertTrue(
        Dose.of(water, LACTIC).to(pH(low)).into(hL(1)).mass().inGrams()
            > Dose.of(water, LACTIC).to(pH(high)).into(hL(1)).mass().inGrams());
  }

  @Property(tries = DRAWS)
  void calciumAndMagnesiumLowerTheResidualAlkalinityAndAlkalinityRaisesIt(@ForAll double[] n) {
    Water water = Liquids.water(n);
    double before = value(water, WaterFigures.RESIDUAL_ALKALINITY);
    MassConcentration some = mgPerL(between(n[9], 0.1, 300));
    for (Salt salt : List.of(Salt.GYPSUM, Salt.CALCIUM_CHLORIDE_DIHYDRATE, Salt.EPSOM_SALT)) {
      Water after = water.after(Treatments.salt(salt, some));
      assertTrue(value(after, WaterFigures.RESIDUAL_ALKALINITY) < before, salt::toString);
      assertTrue(
          value(after, WaterFigures.TOTAL_HARDNESS) > value(water, WaterFigures.TOTAL_HARDNESS));
    }
    Water after = water.after(Treatments.base(Base.SODIUM_BICARBONATE, some));
    assertTrue(value(after, WaterFigures.RESIDUAL_ALKALINITY) > before);
  }

  @Property(tries = DRAWS)
  void dilutionMovesEveryIonTowardsTheDiluent(@ForAll double[] n) {
    Water water = Liquids.water(n);
    Water after = water.after(Treatments.dilution(VolumeRatio.of(0.01 + n[9])));
    for (Figure<?> figure :
        List.of(
            Figures.CALCIUM,
            Figures.SODIUM,
            Figures.SULFATE,
            Figures.CHLORIDE,
            Figures.CARBONATE_ALKALINITY)) {
      assertTrue(value(after, figure) < value(water, figure), figure::toString);
    }
  }

  @Property(tries = DRAWS)
  void moreAcidOrCalciumNeverRaisesTheMashPHAndAlkalinityDoes(@ForAll double[] n) {
    Water liquor = Liquids.water(n);
    double before = value(Liquids.mash(n, liquor), MashFigures.MASH_PH);
    MassConcentration some = mgPerL(between(n[6], 1, 300));
    assertTrue(
        value(
                Liquids.mash(n, liquor.after(Treatments.salt(Salt.GYPSUM, some))),
                MashFigures.MASH_PH)
            < before);
    assertTrue(
        value(
                Liquids.mash(n, liquor.after(Treatments.acid(Acid.LACTIC, some))),
                MashFigures.MASH_PH)
            < before);
    assertTrue(
        value(
                Liquids.mash(n, liquor.after(Treatments.base(Base.SODIUM_BICARBONATE, some))),
                MashFigures.MASH_PH)
            > before);
  }

  @Property(tries = DRAWS)
  void moreTitrantIsMoreAcidity(@ForAll double[] n) {
    var lye = Titrant.sodiumHydroxide().of(molPerL(0.1));
    var sample = lye.titrate(mL(50)).to(pH(8.2));
    double titre = between(n[0], 2, 40);
    double more = titre + between(n[1], 0.01, 5);
    assertTrue(
        sample.took(mL(more)).acidity().value().compareTo(sample.took(mL(titre)).acidity().value())
            > 0);
  }

  @Property(tries = DRAWS)
  void theBufferCapacityIsTheSlopeOfTheAcidity(@ForAll double[] n) {
    Solution mixture = Liquids.mixture(n);
    double at = between(n[9], 4, 9);
    double step = 1e-4;
    // At its own pH the ion that makes up for the charge changes its sign: ionic strength has a
    // kink.
    Assume.that(Math.abs(mixture.answer(Figures.PH_VALUE).number() - at) > step);
    double slope = (charge(mixture, at + step) - charge(mixture, at - step)) / (2 * step);
    double capacity =
        mixture.answer(Figures.bufferCapacity(pH(at))).value().inMilliequivalentsPerLitrePerPH();
    assertEquals(capacity, slope, 1e-4 * capacity);
  }

  private static double charge(Solution mixture, double end) {
    return mixture.answer(Figures.titratableAcidity(pH(end))).value().inMilliequivalentsPerLitre();
  }

  @Property(tries = DRAWS)
  void hardnessIsTheSumOfItsParts(@ForAll double[] n) {
    Water water = Liquids.water(n);
    Hardness total = water.totalHardness().value();
    assertEquals(
        total.inMilliequivalentsPerLitre(),
        water.temporaryHardness().value().inMilliequivalentsPerLitre()
            + water.permanentHardness().value().inMilliequivalentsPerLitre(),
        1e-9);
  }
}
