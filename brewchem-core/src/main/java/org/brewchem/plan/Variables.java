package org.brewchem.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.internal.DataTable;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Use;

/**
 * The variables of a plan: in each portion the share of every water, and the dose of every item in
 * millimoles by the label per litre of the portion. Immutable.
 */
final class Variables {

  private static final AmountOfSubstance MILLIMOLE = AmountOfSubstance.ofMillimoles(1);

  /**
   * The most of a dose for which the shelf states none, mmol per litre of the portion, or of the
   * beer that the portion goes into.
   */
  static final double MOST_UNSTATED = mostUnstated();

  /** How near a bound or a step an amount counts as on it. */
  static final double ON = 1e-9;

  private final Query query;
  private final List<Liquid> waters = new ArrayList<>();
  private final List<String> waterNames = new ArrayList<>();
  private final List<ShelfItem> diluents = new ArrayList<>();
  private final List<ShelfItem> doses = new ArrayList<>();
  private final int perPortion;
  private final double[] unit;
  private final double[] lower;
  private final double[] upper;
  private final double[] step;
  private final double[] cost;

  /**
   * Lays the variables out.
   *
   * @throws IllegalArgumentException if an item has no strength, or may not go into brewing water
   */
  Variables(Query query) {
    this.query = query;
    waters.addAll(query.sources());
    waterNames.addAll(query.names());
    List<String> withoutStrength = new ArrayList<>();
    for (ShelfItem item : query.shelf().items()) {
      if (item.kind() == ShelfItem.Kind.WATER) {
        waters.add(item.water().orElseThrow());
        waterNames.add(item.name());
        diluents.add(item);
      } else if (item.reagent().isEmpty()) {
        withoutStrength.add(item.name());
      } else {
        item.reagent().get().permissionIn(Use.BREWING_WATER).orThrow();
        doses.add(item);
      }
    }
    if (!withoutStrength.isEmpty()) {
      throw new IllegalArgumentException(
          "shelf: "
              + String.join(", ", withoutStrength)
              + (withoutStrength.size() == 1 ? " states" : " state")
              + " no strength; state the mass fraction that the label gives, 100 % included");
    }
    if (waterNames.stream().distinct().count() < waterNames.size()) {
      throw new IllegalArgumentException(
          "waters: " + waterNames + " are not possible; each name stands once");
    }
    perPortion = waters.size() + doses.size();
    int count = perPortion * query.portions().size();
    unit = new double[count];
    lower = new double[count];
    upper = new double[count];
    step = new double[count];
    cost = new double[count];
    for (int i = 0; i < count; i++) {
      layOut(i);
    }
  }

  private void layOut(int i) {
    double litres = portion(i).volume().inLitres();
    OptionalDouble resolution;
    if (isWater(i)) {
      unit[i] = litres;
      upper[i] = 1;
      resolution =
          isSource(i)
              ? query.shelf().waterResolution()
              : query.shelf().resolution(diluents.get(inPortion(i) - query.sources().size()));
      if (isSource(i)) {
        lower[i] = query.least(inPortion(i));
        upper[i] = query.most(inPortion(i));
      }
      if (waters.size() == 1) {
        lower[i] = 1;
        resolution = OptionalDouble.empty();
      }
    } else {
      ShelfItem item = dose(i);
      unit[i] = litres * perMillimole(item);
      upper[i] = isCapped(item) ? mostUnstated(i) : Double.POSITIVE_INFINITY;
      resolution = query.shelf().resolution(item);
    }
    if (resolution.isPresent()) {
      step[i] = resolution.getAsDouble() / unit[i];
    }
    if (!isSource(i)) {
      ShelfItem item = item(i);
      upper[i] = Math.min(upper[i], item.most() / unit[i]);
      if (query.portions().size() == 1) {
        lower[i] = Math.max(lower[i], item.least() / unit[i]);
      }
      cost[i] = unit[i] * (query.byCost() ? item.price().orElse(0) : grams(item));
    }
  }

  private static double mostUnstated() {
    DataTable.Row row = DataTable.read(Variables.class, "defaults.csv").get(0);
    return row.number("value");
  }

  /** The default limit of a dose, mmol per litre of its portion. */
  double mostUnstated(int i) {
    double litres = query.litresWith(portion(i));
    return MOST_UNSTATED * (1 + query.litresOfBeerWith(portion(i)) / litres);
  }

  /** Whether nothing but the default limits a dose. */
  static boolean isCapped(ShelfItem item) {
    return item.kind() != ShelfItem.Kind.WATER && Double.isInfinite(item.most());
  }

  private static double perMillimole(ShelfItem item) {
    Reagent reagent = item.reagent().orElseThrow();
    return item.kind() == ShelfItem.Kind.POURED
        ? reagent.volumeOf(MILLIMOLE).inMillilitres()
        : reagent.massOf(MILLIMOLE).inGrams();
  }

  /** Grams of an item in a gram or millilitre of it; water does not count. */
  private static double grams(ShelfItem item) {
    return switch (item.kind()) {
      case WATER -> 0;
      case WEIGHED -> 1;
      case POURED -> item.reagent().orElseThrow().massOf(Volume.ofMillilitres(1)).inGrams();
    };
  }

  /** Litres that a millimole of an item takes; 0 for a powder. */
  double litresPerMillimole(int i) {
    Reagent reagent = dose(i).reagent().orElseThrow();
    return reagent.density().isPresent() ? reagent.volumeOf(MILLIMOLE).inLitres() : 0;
  }

  Query query() {
    return query;
  }

  int count() {
    return unit.length;
  }

  /** Waters and doses in each portion. */
  int perPortion() {
    return perPortion;
  }

  int index(int portion, int inPortion) {
    return portion * perPortion + inPortion;
  }

  int portionOf(int i) {
    return i / perPortion;
  }

  WaterPortion portion(int i) {
    return query.portions().get(portionOf(i));
  }

  int inPortion(int i) {
    return i % perPortion;
  }

  boolean isWater(int i) {
    return inPortion(i) < waters.size();
  }

  boolean isSource(int i) {
    return inPortion(i) < query.sources().size();
  }

  List<Liquid> waters() {
    return waters;
  }

  /** The item of a dose. */
  ShelfItem dose(int i) {
    return doses.get(inPortion(i) - waters.size());
  }

  List<ShelfItem> doses() {
    return doses;
  }

  /** The item of a dose or a diluent. */
  ShelfItem item(int i) {
    return isWater(i) ? diluents.get(inPortion(i) - query.sources().size()) : dose(i);
  }

  String name(int i) {
    return isWater(i) ? waterNames.get(inPortion(i)) : dose(i).name();
  }

  /** An amount in g, mL or L. */
  double amount(int i, double value) {
    return value * unit[i];
  }

  double unit(int i) {
    return unit[i];
  }

  double lower(int i) {
    return lower[i];
  }

  double upper(int i) {
    return upper[i];
  }

  /** The least step; 0 where nothing says how it is measured. */
  double step(int i) {
    return step[i];
  }

  double[] lower() {
    return lower.clone();
  }

  double[] upper() {
    return upper.clone();
  }

  /** What one of each variable costs, or weighs in grams. */
  double[] cost() {
    return cost.clone();
  }

  double cost(double[] x) {
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      sum += cost[i] * x[i];
    }
    return sum;
  }

  /** Items with a limit that counts over several portions: their positions in a portion. */
  List<Integer> shared() {
    List<Integer> shared = new ArrayList<>();
    if (query.portions().size() > 1) {
      for (int k = query.sources().size(); k < perPortion; k++) {
        ShelfItem item = item(k);
        if (item.least() > 0 || !Double.isInfinite(item.most())) {
          shared.add(k);
        }
      }
    }
    return shared;
  }

  /** Coefficients of the amount of an item over all portions, in g, mL or L. */
  double[] totalOf(int inPortion) {
    double[] row = new double[count()];
    for (int p = 0; p < query.portions().size(); p++) {
      int i = index(p, inPortion);
      row[i] = unit[i];
    }
    return row;
  }

  /** Coefficients of the sum of the shares of a portion. */
  double[] sharesOf(int portion) {
    double[] row = new double[count()];
    for (int k = 0; k < waters.size(); k++) {
      row[index(portion, k)] = 1;
    }
    return row;
  }

  /** Whether the amounts keep to the shelf, and the waters make up their portions. */
  boolean keepsToTheShelf(double[] x) {
    for (int i = 0; i < x.length; i++) {
      double slack = ON * Math.max(1, Math.abs(x[i]));
      if (x[i] < 0 || x[i] < lower[i] - slack || x[i] > upper[i] + slack) {
        return false;
      }
    }
    for (int p = 0; p < query.portions().size(); p++) {
      double whole = 0;
      for (int k = 0; k < waters.size(); k++) {
        whole += x[index(p, k)];
      }
      if (Math.abs(whole - 1) > ON) {
        return false;
      }
    }
    for (int k : shared()) {
      double[] row = totalOf(k);
      double sum = 0;
      for (int i = 0; i < x.length; i++) {
        sum += row[i] * x[i];
      }
      ShelfItem item = item(k);
      if (sum < item.least() * (1 - ON) || sum > item.most() * (1 + ON)) {
        return false;
      }
    }
    return true;
  }

  /** Equal shares, no doses beyond the least. */
  double[] plainStart() {
    double[] x = new double[count()];
    for (int i = 0; i < x.length; i++) {
      x[i] = isWater(i) ? 1.0 / waters.size() : lower[i];
    }
    return x;
  }

  @Override
  public String toString() {
    return waterNames + " " + doses + " " + Arrays.toString(unit);
  }
}
