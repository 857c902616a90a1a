package org.brewchem.checks.metamorphic;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Provide;
import net.jqwik.api.domains.DomainContextBase;
import org.brewchem.beer.Beer;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.Mash;
import org.brewchem.quantity.Quantities;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/** Liquids of all rooms from numbers between 0 and 1, over the ranges that breweries meet. */
final class Liquids extends DomainContextBase {

  static final int NUMBERS = 12;

  @Provide
  Arbitrary<double[]> numbers() {
    return Arbitraries.doubles().between(0, 1).ofScale(9).array(double[].class).ofSize(NUMBERS);
  }

  static double between(double share, double low, double high) {
    return low + share * (high - low);
  }

  static WaterReport.Builder report(double[] n) {
    return WaterReport.reported()
        .calcium(mgPerL(between(n[0], 1, 200)))
        .magnesium(mgPerL(between(n[1], 0.5, 50)))
        .sodium(mgPerL(between(n[2], 1, 100)))
        .potassium(mgPerL(between(n[3], 0.1, 15)))
        .sulfate(mgPerL(between(n[4], 1, 250)))
        .chloride(mgPerL(between(n[5], 1, 150)))
        .nitrate(mgPerL(between(n[6], 0.1, 50)))
        .alkalinityAsCaCO3(mgPerL(between(n[7], 20, 350)))
        .pH(pH(between(n[8], 6.8, 8.3)));
  }

  static Water water(double[] n) {
    return report(n).build().water();
  }

  static Solution mixture(double[] n) {
    return Solution.at(celsius(between(n[0], 5, 40)))
        .with(Acid.PHOSPHORIC, mmolPerL(between(n[1], 0.5, 12)))
        .with(Acid.CITRIC, mmolPerL(between(n[2], 0.1, 3)))
        .with(Acid.LACTIC, mmolPerL(between(n[3], 0.5, 20)))
        .with(Acid.ACETIC, mmolPerL(between(n[4], 0.1, 5)))
        .with(Ion.CALCIUM, mmolPerL(between(n[5], 0.1, 3)))
        .with(Ion.MAGNESIUM, mmolPerL(between(n[6], 0.1, 5)))
        .with(Ion.POTASSIUM, mmolPerL(between(n[7], 1, 20)))
        .with(Ion.SULFATE, mmolPerL(between(n[8], 0.1, 3)));
  }

  static Beer beer(double[] n) {
    return Beer.of(
            pH(between(n[0], 3.9, 4.7)),
            Quantities.acidity(gPerL(between(n[1], 1.2, 3)), Acid.LACTIC, pH(8.2)))
        .withStandardUncertaintyOfPH(0.02)
        .with(Ion.CALCIUM, mgPerL(between(n[2], 20, 120)))
        .with(Ion.SULFATE, mgPerL(between(n[3], 20, 300)))
        .with(Ion.CHLORIDE, mgPerL(between(n[4], 50, 350)));
  }

  static Mash mash(double[] n, Water liquor) {
    return Mash.of(
        Grist.of(kg(between(n[9], 100, 250)), Malt.assumed(MaltKind.PALE))
            .and(kg(between(n[10], 1, 40)), Malt.assumed(MaltKind.CARAMEL)),
        liquor,
        hL(between(n[11], 4, 10)));
  }
}
