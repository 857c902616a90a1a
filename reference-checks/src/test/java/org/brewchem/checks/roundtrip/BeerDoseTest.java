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
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Blend;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Portion;

/** A dose or a blend for a target, mixed again by volume, has the target. */
class BeerDoseTest {

  private static final PH END_POINT = pH(8.2);
  private static final Volume TANK = hL(20);

  /** Invented beers: pH 3.2 to 4.7, 1.4 to 6 g/L as lactic acid, with calcium. */
  @Provide
  Arbitrary<Beer> beers() {
    return Combinators.combine(
            between(3.2, 4.7), between(1.4, 6), between(20, 120), Arbitraries.of(Level.class))
        .as(
            (pH, gramsPerLitre, calcium, level) ->
                Beer.of(pH(pH), asLactic(gramsPerLitre))
                    .with(Ion.CALCIUM, mgPerL(calcium))
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

  private static TitratableAcidity acidityOf(Beer beer) {
    return beer.titratableAcidity(END_POINT).value();
  }

  private static TitratableAcidity asLactic(double gramsPerLitre) {
    return acidity(gPerL(gramsPerLitre), LACTIC, END_POINT);
  }

  /**
   * The beer and its portion poured together by volume, as the bottle's solution where it is one.
   */
  private static Solution mixed(Beer beer, Dose<Beer> dose, Reagent reagent) {
    Acid acid = (Acid) reagent.compound();
    Portion portion = dose.into(TANK);
    if (portion.volume().isEmpty()) {
      return beer.solution().with(acid, dose.perLitre());
    }
    Solution bottle =
        Solution.at(beer.contents().temperature())
            .under(beer.contents().chemistry())
            .with(acid, reagent.concentration());
    return beer.solution().mixed(TANK, bottle, portion.volume().orElseThrow());
  }

  @Property(tries = 200)
  void aDoseToAnAcidityHasIt(
      @ForAll("beers") Beer beer,
      @ForAll("reagents") Reagent reagent,
      @ForAll("steps") double step) {
    TitratableAcidity target = acidityOf(beer).plus(asLactic(5 * step));
    Dose<Beer> dose = Dose.of(beer, reagent).to(target);
    Solution mixture = mixed(beer, dose, reagent);
    assertEquals(
        target.inMilliequivalentsPerLitre(),
        mixture.titratableAcidity(END_POINT).inMilliequivalentsPerLitre(),
        1e-8);
    assertEquals(dose.after().pH().number(), mixture.pH().value(), 1e-9);
  }

  @Property(tries = 200)
  void aDoseToAPhHasIt(
      @ForAll("beers") Beer beer,
      @ForAll("reagents") Reagent reagent,
      @ForAll("steps") double step) {
    PH target = pH(beer.pH().number() - step);
    Dose<Beer> dose = Dose.of(beer, reagent).to(target);
    Solution mixture = mixed(beer, dose, reagent);
    assertEquals(target.value(), mixture.pH().value(), 1e-9);
    assertEquals(
        acidityOf(dose.after()).inMilliequivalentsPerLitre(),
        mixture.titratableAcidity(END_POINT).inMilliequivalentsPerLitre(),
        1e-8);
  }

  @Property(tries = 100)
  void aBlendToAnAcidityHasIt(
      @ForAll("beers") Beer one, @ForAll("beers") Beer other, @ForAll("steps") double step) {
    Beer second = other.under(one.contents().chemistry());
    TitratableAcidity target = acidityOf(one).times(1 - step).plus(acidityOf(second).times(step));
    // pairs can bend the acidity of a blend of nearly equals past either beer's
    Assume.that(Math.abs(acidityOf(one).minus(acidityOf(second)).inMilliequivalentsPerLitre()) > 2);
    Blend<Beer> blend = Blend.of(one, second).to(target);
    Beer again =
        Blend.of(one, second).volumes(blend.ofFirst(hL(10)), blend.ofSecond(hL(10))).after();
    assertEquals(
        target.inMilliequivalentsPerLitre(), acidityOf(again).inMilliequivalentsPerLitre(), 1e-8);
    assertEquals(blend.after().pH().number(), again.pH().number(), 1e-9);
  }
}
