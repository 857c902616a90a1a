package org.brewchem.plan;

import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Target;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.MashFigures;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.water.Water;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;

/** Invented problems of three variables, and of ten doses; the same for the same seed. */
final class RandomProblems {

  /** What the constraints are on. */
  enum Kind {
    LINEAR,
    RATIO,
    BALANCE,
    MASH_PH
  }

  private static final List<Figure<?>> LINEAR =
      Figure.list(
          Figures.CALCIUM,
          Figures.MAGNESIUM,
          Figures.SODIUM,
          Figures.SULFATE,
          Figures.CHLORIDE,
          WaterFigures.TOTAL_HARDNESS,
          WaterFigures.CALCIUM_HARDNESS);
  private static final List<Figure<?>> RATIO =
      Figure.list(Figures.SULFATE_TO_CHLORIDE, WaterFigures.SULFATE_TO_CHLORIDE_BY_EQUIVALENTS);
  private static final List<Figure<?>> BALANCE =
      Figure.list(
          Figures.CARBONATE_ALKALINITY,
          WaterFigures.RESIDUAL_ALKALINITY,
          Figures.PH_VALUE,
          Figures.IONIC_STRENGTH);

  private final Random random;
  private final Kind kind;

  RandomProblems(Kind kind, long seed) {
    this.kind = kind;
    this.random = new Random(seed);
  }

  private double between(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  private Water water() {
    return WaterReport.reported()
        .calcium(mgPerL(between(5, 120)))
        .magnesium(mgPerL(between(1, 30)))
        .sodium(mgPerL(between(3, 60)))
        .potassium(mgPerL(between(0, 5)))
        .sulfate(mgPerL(between(3, 120)))
        .chloride(mgPerL(between(3, 90)))
        .nitrate(mgPerL(between(0, 20)))
        .alkalinityAsCaCO3(mgPerL(between(15, 280)))
        .pH(pH(between(6.9, 8.1)))
        .build()
        .water();
  }

  private ShelfItem limited(ShelfItem item) {
    boolean weighed = item.kind() == ShelfItem.Kind.WEIGHED;
    ShelfItem own = item;
    if (random.nextInt(3) == 0) {
      double most = between(100, 800);
      own = weighed ? own.atMost(Mass.ofGrams(most)) : own.atMost(Volume.ofMillilitres(most));
    }
    if (random.nextInt(6) == 0) {
      double least = between(5, 60);
      own = weighed ? own.atLeast(Mass.ofGrams(least)) : own.atLeast(Volume.ofMillilitres(least));
    }
    double price = between(1, 20);
    return weighed ? own.pricedPerKilogram(price) : own.pricedPerLitre(price);
  }

  /** A request of three variables: three doses, or two doses and a share of a second water. */
  Plan.Request three() {
    boolean two = random.nextBoolean();
    return request(two, two ? 2 : 3);
  }

  /** A request of ten doses. */
  Plan.Request ten() {
    return request(random.nextBoolean(), 10);
  }

  private Plan.Request request(boolean two, int doses) {
    List<ShelfItem> items =
        new ArrayList<>(
            List.of(
                Invented.gypsum(),
                Invented.calciumChloride(),
                Invented.epsom(),
                Invented.tableSalt(),
                Invented.magnesiumChloride(),
                Invented.potassiumChloride(),
                Invented.lime(),
                Invented.hydrochloric(),
                Invented.lactic(),
                Invented.phosphoric()));
    Collections.shuffle(items, random);
    Shelf shelf = Shelf.of().weighingTo(g(random.nextInt(3) == 0 ? 10 : 1)).pipettingTo(mL(1));
    for (ShelfItem item : items.subList(0, doses)) {
      shelf = shelf.with(limited(item));
    }
    Water first = water();
    Plan.Request request = two ? Plan.from(first, water()) : Plan.from(first);
    request = request.using(shelf).forPortions(WaterPortion.portion("all", hL(between(3, 30))));
    Target target = target(request);
    return kind == Kind.MASH_PH ? mashed(request.meeting(target)) : request.meeting(target);
  }

  /** Waters about some doses, and the mash pH that one of them gives, more or less. */
  private Plan.Request mashed(Plan.Request request) {
    Problem bare = request.problem();
    double litres = bare.query().portions().get(0).volume().inLitres();
    Malt own =
        Malt.stated(
            "invented malt", "ours", pH(between(5.5, 6.0)), 0.02, between(30, 60), between(1, 6));
    double all = litres / between(2.5, 5);
    Grist grist =
        Grist.of(Mass.ofKilograms(all), own)
            .and(Mass.ofKilograms(all * between(0.02, 0.2)), Malt.assumed(MaltKind.CARAMEL));
    Volume volume = Volume.ofLitres(litres);
    Downstream mash =
        random.nextInt(4) == 0
            ? Downstream.mashKeepingCarbonDioxide("mash", grist, volume)
            : Downstream.mash("mash", grist, volume);
    double[] x = bare.variables().plainStart();
    for (int i = 0; i < x.length; i++) {
      if (!bare.variables().isWater(i)) {
        x[i] = Math.min(bare.variables().upper(i), bare.variables().lower(i) + between(0, 1.2));
      }
    }
    Water there = (Water) bare.kettle().water(0, x);
    double value = mash.of(there, volume).answer(MashFigures.MASH_PH).number();
    return request.and(mash, constraint(MashFigures.MASH_PH, value, between(0.03, 0.2)));
  }

  /** Bands about what some doses give, moved so that not all of them can be met. */
  private Target target(Plan.Request request) {
    Problem bare = request.meeting(Target.named("none")).problem();
    Variables variables = bare.variables();
    double[] x = variables.plainStart();
    for (int i = 0; i < x.length; i++) {
      if (!variables.isWater(i)) {
        x[i] = Math.min(variables.upper(i), variables.lower(i) + between(0, 1.2));
      }
    }
    Water there = (Water) bare.kettle().water(0, x);
    List<Figure<?>> figures = new ArrayList<>(LINEAR);
    Collections.shuffle(figures, random);
    List<Figure<?>> own = new ArrayList<>(figures.subList(0, kind == Kind.MASH_PH ? 2 : 3));
    if (kind != Kind.MASH_PH) {
      List<Figure<?>> kin = kind == Kind.RATIO ? RATIO : kind == Kind.BALANCE ? BALANCE : figures;
      own.add(kin.get(kin == figures ? 4 : random.nextInt(kin.size())));
    }
    Target target = Target.named("invented");
    for (Figure<?> figure : own) {
      target = target.with(constraint(figure, there));
    }
    return target;
  }

  private <Q> Constraint constraint(Figure<Q> figure, Water there) {
    double value = there.answer(figure).number();
    boolean isPH = figure.equals(Figures.PH_VALUE);
    double width = isPH ? between(0.1, 0.8) : Math.max(Math.abs(value), 2) * between(0.05, 0.3);
    return constraint(figure, value, width);
  }

  private <Q> Constraint constraint(Figure<Q> figure, double value, double width) {
    Scale<Q> scale = figure.shown();
    double off = width * between(-1, 1) * (random.nextInt(3) == 0 ? 3 : 0.6);
    double middle = value + off;
    boolean mayBeNegative = figure.equals(WaterFigures.RESIDUAL_ALKALINITY);
    if (!mayBeNegative) {
      middle = Math.max(middle, 1.05 * width);
    }
    Constraint constraint;
    switch (random.nextInt(4)) {
      case 0 -> constraint = Constraint.around(figure, scale.of(middle), width);
      case 1 -> constraint = Constraint.atMost(figure, scale.of(middle)).scaledBy(width);
      case 2 -> constraint = Constraint.atLeast(figure, scale.of(middle)).scaledBy(width);
      default ->
          constraint =
              Constraint.between(figure, scale.of(middle - width), scale.of(middle + width));
    }
    return random.nextBoolean() ? constraint.withWeight(between(0.5, 3)) : constraint;
  }
}
