package org.brewchem.checks.simulator;

import java.util.EnumSet;
import java.util.List;
import java.util.Random;

/**
 * Kinds of beer, each a distribution of compositions, unlike those on which the library's prior was
 * settled. Amounts are our choice, around the published ones of the typical beer. In each,
 * univalent salt besides all else is 3 to 9 mmol/L.
 */
enum BeerKind {
  /** Acids and groups as in pale beers. */
  ORDINARY("ordinary beers"),
  /** All acids and groups together up or down, lognormal by 0.7, each besides by 0.5. */
  WIDE("wide, correlated acids"),
  /** Little but 8 to 15 groups with pKa spread evenly from 2 to 9. */
  MANY_GROUPS("8 to 15 groups of pKa 2 to 9"),
  /** 0.2 to 6 mmol/L of calcium and 0.5 to 10 of magnesium. */
  METALS("unusual calcium and magnesium"),
  /** 6 to 15 mmol/L of phosphate. */
  PHOSPHATE_RICH("rich in phosphate"),
  /** At most 1.5 mmol/L of phosphate. */
  PHOSPHATE_POOR("poor in phosphate"),
  /** An ordinary beer with 20 to 90 mmol/L of lactate, pH 3.1 to 3.7. */
  SOURED("soured by lactic acid"),
  /** An ordinary beer with up to 40 mmol/L of lactate and malate each and 15 of citrate. */
  SOUR_WITH_FRUIT("sour, with fruit");

  private static final double PER_MILLIMOLE = 0.001 / SimulatedBeer.KILOGRAMS_PER_LITRE;

  private final String title;

  BeerKind(String title) {
    this.title = title;
  }

  /** The kinds on which all studies were run; of soured beers the stand-in's alone. */
  static List<BeerKind> notSoured() {
    return List.copyOf(EnumSet.range(ORDINARY, PHOSPHATE_POOR));
  }

  String title() {
    return title;
  }

  /** Draws a beer at 20 °C, without carbon dioxide. */
  SimulatedBeer draw(Random random) {
    SimulatedBeer beer =
        SimulatedBeer.water(20)
            .withSalt(between(random, 3, 9))
            .with(Ligand.named("sulfate"), between(random, 0.5, 2.5))
            .withMetals(
                this == METALS ? between(random, 0.2, 6) : between(random, 0.7, 2),
                this == METALS ? between(random, 0.5, 10) : between(random, 2, 3.8));
    beer =
        switch (this) {
          case WIDE -> wide(beer, random);
          case MANY_GROUPS -> manyGroups(beer, random);
          case PHOSPHATE_RICH -> ordinary(beer, random, 6, 15);
          case PHOSPHATE_POOR -> ordinary(beer, random, 0, 1.5);
          case SOURED ->
              ordinary(beer, random, 2, 5).with(Ligand.named("lactate"), between(random, 20, 90));
          case SOUR_WITH_FRUIT ->
              ordinary(beer, random, 2, 5)
                  .with(Ligand.named("lactate"), between(random, 5, 40))
                  .with(Ligand.named("malate"), between(random, 0, 40))
                  .with(Ligand.named("citrate"), between(random, 0, 15));
          default -> ordinary(beer, random, 2, 5);
        };
    return beer.closedTo(
        switch (this) {
          case WIDE -> uniform(random, 3.2, 4.9);
          case SOURED, SOUR_WITH_FRUIT -> uniform(random, 3.1, 3.7);
          default -> uniform(random, 3.9, 4.7);
        });
  }

  private static SimulatedBeer ordinary(
      SimulatedBeer water, Random random, double leastPhosphate, double mostPhosphate) {
    SimulatedBeer beer =
        water
            .with(Ligand.named("phosphate"), between(random, leastPhosphate, mostPhosphate))
            .with(Ligand.named("lactate"), between(random, 0.5, 4))
            .with(Ligand.named("acetate"), between(random, 0.8, 3))
            .with(Ligand.named("citrate"), between(random, 0.3, 1.2))
            .with(Ligand.named("malate"), between(random, 0.2, 1))
            .with(Ligand.named("succinate"), between(random, 0.3, 1))
            .with(Ligand.named("pyruvate"), between(random, 0.2, 0.8));
    for (double middle : new double[] {3.7, 4.3, 4.9}) {
      beer = beer.with(group(random, middle), between(random, 1, 3.3));
    }
    for (double middle : new double[] {6.2, 7.6, 9}) {
      beer = beer.with(group(random, middle), between(random, 0.5, 2.5));
    }
    return beer;
  }

  private static SimulatedBeer wide(SimulatedBeer water, Random random) {
    double common = Math.exp(0.7 * random.nextGaussian());
    SimulatedBeer beer =
        water
            .with(Ligand.named("phosphate"), lognormal(random, 4 * common))
            .with(Ligand.named("lactate"), lognormal(random, 1.4 * common))
            .with(Ligand.named("acetate"), lognormal(random, 1.8 * common))
            .with(Ligand.named("citrate"), lognormal(random, 0.6 * common))
            .with(Ligand.named("malate"), lognormal(random, 0.5 * common))
            .with(Ligand.named("succinate"), lognormal(random, 0.6 * common))
            .with(Ligand.named("pyruvate"), lognormal(random, 0.5 * common));
    for (double middle : new double[] {3.7, 4.3, 4.9}) {
      beer = beer.with(group(random, middle), lognormal(random, 2 * common));
    }
    for (double middle : new double[] {6.2, 7.6, 9}) {
      beer = beer.with(group(random, middle), lognormal(random, 1.5 * common));
    }
    return beer;
  }

  private static SimulatedBeer manyGroups(SimulatedBeer water, Random random) {
    SimulatedBeer beer =
        water
            .with(Ligand.named("phosphate"), between(random, 1, 4))
            .with(Ligand.named("lactate"), between(random, 0.5, 3));
    int groups = 8 + random.nextInt(8);
    for (int i = 0; i < groups; i++) {
      double pKa = uniform(random, 2, 9);
      beer = beer.with(Ligand.group(pKa < 5.5 ? -1 : 0, pKa), between(random, 0.3, 3));
    }
    return beer;
  }

  private static Ligand group(Random random, double middle) {
    return Ligand.group(middle < 5.5 ? -1 : 0, middle + 0.2 * random.nextGaussian());
  }

  /** Draws mmol/L, evenly, as mol/kg. */
  private static double between(Random random, double low, double high) {
    return uniform(random, low, high) * PER_MILLIMOLE;
  }

  private static double lognormal(Random random, double median) {
    return median * Math.exp(0.5 * random.nextGaussian()) * PER_MILLIMOLE;
  }

  private static double uniform(Random random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
