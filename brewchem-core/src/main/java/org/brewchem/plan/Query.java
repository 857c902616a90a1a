package org.brewchem.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Permission;
import org.brewchem.substance.Use;
import org.brewchem.treatment.Blends;

/**
 * What a plan is asked for.
 *
 * @param sources the waters that come in, or the parts of a blend
 * @param names what they are called
 * @param shelf what may be used
 * @param portions the portions of water
 * @param wanted the constraints
 * @param economy what is kept low among plans that are equally good
 * @param blends the parts of a blend with the limits of their shares; empty for waters
 */
record Query(
    List<? extends Liquid> sources,
    List<String> names,
    Shelf shelf,
    List<WaterPortion> portions,
    List<Wanted> wanted,
    Economy economy,
    Optional<Blends<?>> blends) {

  private static final double ROUNDING = 1e-9;

  /** What is kept low. */
  enum Economy {
    /** The cost, if every item has a price, else the mass. */
    BY_THE_SHELF,
    COST,
    MASS
  }

  /** The same question, each constraint on the water of one portion or of all mixed. */
  Query spread() {
    List<Wanted> all = new ArrayList<>();
    for (Wanted one : wanted) {
      if (one.portion().isPresent() || one.together()) {
        all.add(one);
      } else {
        portions.forEach(
            portion ->
                all.add(
                    new Wanted(
                        one.constraint(), Optional.of(portion.name()), false, one.downstream())));
      }
    }
    return wanting(all);
  }

  Query called(List<String> others) {
    return new Query(sources, others, shelf, portions, wanted, economy, blends);
  }

  Query using(Shelf other) {
    return new Query(sources, names, other, portions, wanted, economy, blends);
  }

  Query forPortions(List<WaterPortion> others) {
    return new Query(sources, names, shelf, others, wanted, economy, blends);
  }

  Query wanting(List<Wanted> other) {
    return new Query(sources, names, shelf, portions, List.copyOf(other), economy, blends);
  }

  Query keepingLow(Economy other) {
    return new Query(sources, names, shelf, portions, wanted, other, blends);
  }

  /** The least share of a source. */
  double least(int source) {
    return blends.map(all -> all.leastShareOf(names.get(source))).orElse(0.0);
  }

  /** The most share of a source. */
  double most(int source) {
    return blends.map(all -> all.mostShareOf(names.get(source))).orElse(1.0);
  }

  /** The litres of a portion, and of the others if they go into a beer together with it. */
  double litresWith(WaterPortion portion) {
    return portions.stream()
        .filter(one -> one.equals(portion) || isTogetherInBeer())
        .mapToDouble(one -> one.volume().inLitres())
        .sum();
  }

  private boolean isTogetherInBeer() {
    return wanted.stream()
        .flatMap(one -> one.downstream().stream())
        .anyMatch(made -> made.isBeer() && made.portion().isEmpty());
  }

  /** The litres of the smallest beer that a portion goes into; 0 where it goes into none. */
  double litresOfBeerWith(WaterPortion portion) {
    return wanted.stream()
        .flatMap(one -> one.downstream().stream())
        .filter(made -> made.isBeer() && made.isMadeOf(portion))
        .mapToDouble(Downstream::litresOfBeer)
        .min()
        .orElse(0);
  }

  /** Whether a portion is the liquor of a mash. */
  boolean isLiquor(WaterPortion portion) {
    return wanted.stream()
        .flatMap(one -> one.downstream().stream())
        .anyMatch(made -> made.isMash() && made.isMadeOf(portion));
  }

  /** The mashes of a portion, if together they take more water than it has; else none. */
  List<Downstream> sharing(WaterPortion portion) {
    List<Downstream> mashes =
        wanted.stream()
            .flatMap(one -> one.downstream().stream())
            .filter(made -> made.isMash() && made.isMadeOf(portion))
            .filter(made -> made.portion().isPresent() || portions.size() == 1)
            .distinct()
            .toList();
    double all = mashes.stream().mapToDouble(Downstream::litresOfLiquor).sum();
    return mashes.size() > 1 && all > portion.volume().inLitres() * (1 + ROUNDING)
        ? mashes
        : List.of();
  }

  /** Whether what is dosed goes into a beer. */
  boolean isForBeer() {
    return wanted.stream().anyMatch(one -> one.downstream().filter(Downstream::isBeer).isPresent());
  }

  /** Whether the reagents of the shelf may go into a beer; empty where none is dosed. */
  List<Permission> permissionsInBeer() {
    return isForBeer()
        ? shelf.items().stream()
            .flatMap(item -> item.reagent().stream())
            .map(reagent -> reagent.permissionIn(Use.BEER))
            .toList()
        : List.of();
  }

  boolean byCost() {
    return economy == Economy.COST
        || (economy == Economy.BY_THE_SHELF
            && !shelf.items().isEmpty()
            && shelf.items().stream().allMatch(ShelfItem::isPriced));
  }
}
