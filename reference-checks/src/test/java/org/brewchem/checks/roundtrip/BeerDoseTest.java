package org.brewchem.checks.roundtrip;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.RandomDistribution;
import org.brewchem.beer.Beer;
import org.brewchem.beer.BeerDose;
import org.brewchem.beer.Blend;
import org.brewchem.beer.Origin;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;

/** A dose or a blend for a target, mixed again by volume, has the target. */
class BeerDoseTest {

  private static final PH END_POINT = pH(8.2);

  /** Invented beers: pH 3.2 to 4.7, 1.4 to 6 g/L as lactic acid, with calcium. */
  @Provide
  Arbitrary<Beer> beers() {
    return Combinators.combine(
            between(3.2, 4.7), between(1.4, 6), between(20, 120), Arbitraries.of(Level.class))
        .as(
            (pH, gramsPerLitre, calcium, level) ->
                Beer.of(pH(pH), asLactic(gramsPerLitre))
                    .with(Ion.CALCIUM, mgPerL(calcium), Origin.MEASURED_IN_BEER)
                    .under(Chemistry.of(level)));
  }

  @Provide
  Arbitrary<Reagent> reagents() {
    return Arbitraries.of(
        Reagent.of(Acid.LACTIC, massPercent(80)),
        Reagent.of(Acid.LACTIC, massPercent(88)),
        Reagent.of(Acid.PHOSPHORIC, massPercent(10)),
        Reagent.of(Acid.PHOSPHORIC, massPercent(75)),
        Reagent.of(Acid.HYDROCHLORIC, massPercent(30)),
        Reagent.of(Acid.SULFURIC, massPercent(10)),
        Reagent.of(Acid.CITRIC_MONOHYDRATE, massPercent(99.5)),
        Reagent.of(Acid.MALIC, massPercent(99)));
  }

  private static Arbitrary<Double> between(double low, double high) {
    return Arbitraries.doubles()
        .between(low, high)
        .ofScale(9)
        .withDistribution(RandomDistribution.uniform());
  }

  @Provide
  Arbitrary<Double> steps() {
    return between(0.001, 0.6);
  }

  private static TitratableAcidity asLactic(double gramsPerLitre) {
    return acidity(gPerL(gramsPerLitre), LACTIC, END_POINT);
  }

  private static Solution mixed(Beer beer, BeerDose dose, Acid acid) {
    if (dose.volume().isEmpty()) {
      return beer.solution().with(acid, AmountConcentration.from(dose.amount(), dose.beerVolume()));
    }
    Solution bottle =
        Solution.at(beer.temperature())
            .under(beer.chemistry())
            .with(acid, dose.reagent().concentration());
    Volume volume = dose.volume().orElseThrow();
    return beer.solution().mixed(dose.beerVolume(), bottle, volume);
  }

  @Property(tries = 200)
  void aDoseToAnAcidityHasIt(
      @ForAll("beers") Beer beer,
      @ForAll("reagents") Reagent reagent,
      @ForAll("steps") double step) {
    TitratableAcidity target = beer.acidity().plus(asLactic(5 * step));
    BeerDose dose = beer.dose(reagent).into(hL(20)).to(target);
    Solution mixture = mixed(beer, dose, (Acid) reagent.compound());
    assertEquals(
        target.inMilliequivalentsPerLitre(),
        mixture.titratableAcidity(END_POINT).inMilliequivalentsPerLitre(),
        1e-8);
    assertEquals(dose.pHAfter().value(), mixture.pH().value(), 1e-9);
  }

  @Property(tries = 200)
  void aDoseToAPhHasIt(
      @ForAll("beers") Beer beer,
      @ForAll("reagents") Reagent reagent,
      @ForAll("steps") double step) {
    PH target = pH(beer.pH().value() - step);
    BeerDose dose = beer.dose(reagent).into(hL(20)).to(target);
    Solution mixture = mixed(beer, dose, (Acid) reagent.compound());
    assertEquals(target.value(), mixture.pH().value(), 1e-9);
    assertEquals(
        dose.acidityAfter().inMilliequivalentsPerLitre(),
        mixture.titratableAcidity(END_POINT).inMilliequivalentsPerLitre(),
        1e-8);
  }

  @Property(tries = 100)
  void aBlendToAnAcidityHasIt(
      @ForAll("beers") Beer one, @ForAll("beers") Beer other, @ForAll("steps") double step) {
    Beer second = other.under(one.chemistry());
    TitratableAcidity target = one.acidity().times(1 - step).plus(second.acidity().times(step));
    // pairs can bend the acidity of a blend of nearly equals past either beer's
    Assume.that(Math.abs(one.acidity().minus(second.acidity()).inMilliequivalentsPerLitre()) > 2);
    Blend blend = one.blendedWith(second).total(hL(10)).to(target);
    Blend again = one.blendedWith(second).volumes(blend.ofFirst(), blend.ofSecond());
    assertEquals(
        target.inMilliequivalentsPerLitre(), again.acidity().inMilliequivalentsPerLitre(), 1e-8);
    assertEquals(blend.pH().value(), again.pH().value(), 1e-9);
  }
}
