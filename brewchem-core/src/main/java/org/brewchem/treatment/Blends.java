package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Formula;

/**
 * All blends of two or more liquids of one kind, the share of each by volume within its limits:
 * single ones with their figures, and what of two figures can be reached at all. Totals mix
 * exactly, pH follows from the balance of each blend. Immutable.
 *
 * @param <L> the kind of the liquids and of their blends
 */
public final class Blends<L extends Liquid> {

  /** Each liquid more doubles the corners; our choice. */
  private static final int MOST_LIQUIDS = 8;

  /**
   * Four moles of carbon dioxide from a mole of maltose, what a yeast keeps for itself left out.
   */
  private static final double GAS_OF_EXTRACT = 4 * gramsPerMole("CO2") / gramsPerMole("C12H22O11");

  private final List<L> liquids;
  private final ShareLimits limits;
  private final Set<Integer> living;
  private final Map<Integer, Double> extracts;

  private Blends(
      List<L> liquids, ShareLimits limits, Set<Integer> living, Map<Integer, Double> extracts) {
    this.liquids = liquids;
    this.limits = limits;
    this.living = living;
    this.extracts = extracts;
  }

  /**
   * Starts with liquids, called "part 1" and so on.
   *
   * @param first a liquid
   * @param second another
   * @param more further ones; at most 8 in all, at one temperature and under one chemistry
   * @param <L> their kind
   * @return all their blends
   * @throws IllegalArgumentException if there are more than 8, or temperature or chemistry differ
   */
  @SafeVarargs
  public static <L extends Liquid> Blends<L> of(L first, L second, L... more) {
    List<L> liquids = new ArrayList<>();
    liquids.add(Objects.requireNonNull(first, "first"));
    liquids.add(Objects.requireNonNull(second, "second"));
    for (L another : Objects.requireNonNull(more, "more")) {
      liquids.add(Objects.requireNonNull(another, "another"));
    }
    if (liquids.size() > MOST_LIQUIDS) {
      throw Checks.outOfRange("number of liquids", liquids.size(), "", "2 to " + MOST_LIQUIDS);
    }
    for (L liquid : liquids) {
      same("temperature", liquid.contents().temperature(), first.contents().temperature());
      same("chemistry", liquid.contents().chemistry(), first.contents().chemistry());
    }
    List<String> names =
        IntStream.rangeClosed(1, liquids.size()).mapToObj(number -> "part " + number).toList();
    return new Blends<>(List.copyOf(liquids), ShareLimits.none(names), Set.of(), Map.of());
  }

  private static void same(String what, Object other, Object needed) {
    if (!other.equals(needed)) {
      throw new IllegalArgumentException(
          what + " of another liquid: " + other + " is not possible; " + needed + " is needed");
    }
  }

  private static double gramsPerMole(String formula) {
    return Formula.parse(formula).molarMass().inGramsPerMole();
  }

  /**
   * Names the parts.
   *
   * @param names one to each liquid, in their order, each once
   * @return the blends
   * @throws IllegalArgumentException if there are more or fewer names than liquids, one is blank or
   *     stands twice
   */
  public Blends<L> called(String... names) {
    Objects.requireNonNull(names, "names");
    return new Blends<>(liquids, limits.called(List.of(names.clone())), living, extracts);
  }

  /**
   * States the least share of a part.
   *
   * @param name the name of the part
   * @param share its volume over that of the blend, 0 to its most
   * @return the blends
   * @throws IllegalArgumentException if there is no such part, or the least shares exceed 1
   */
  public Blends<L> atLeast(String name, double share) {
    return new Blends<>(liquids, limits.atLeast(part(name), share), living, extracts);
  }

  /**
   * States the most of a part that may go in.
   *
   * @param name the name of the part
   * @param share its volume over that of the blend, its least to 1
   * @return the blends
   * @throws IllegalArgumentException if there is no such part, or the most shares stay below 1
   */
  public Blends<L> atMost(String name, double share) {
    return new Blends<>(liquids, limits.atMost(part(name), share), living, extracts);
  }

  /**
   * States how much of a part there is.
   *
   * @param name the name of the part
   * @param available what there is of it, above 0
   * @param ofBlend how much blend is wanted, above 0
   * @return the blends
   * @throws IllegalArgumentException if there is no such part, a volume is not above 0, or the
   *     parts do not make up the blend
   */
  public Blends<L> atMost(String name, Volume available, Volume ofBlend) {
    Objects.requireNonNull(available, "available");
    Objects.requireNonNull(ofBlend, "of blend");
    Checks.positive("volume available", available.inLitres(), "L");
    Checks.positive("volume of the blend", ofBlend.inLitres(), "L");
    return atMost(name, Math.min(1, available.inLitres() / ofBlend.inLitres()));
  }

  /**
   * Says that a part holds living yeast or bacteria, which ferment on what the blend holds. Blends
   * with it have a caution.
   *
   * @param name the name of the part
   * @return the blends
   * @throws IllegalArgumentException if there is no such part
   */
  public Blends<L> living(String name) {
    Set<Integer> more = new TreeSet<>(living);
    more.add(part(name));
    return new Blends<>(liquids, limits, more, extracts);
  }

  /**
   * States the residual extract of a part that yeast or bacteria may ferment, so that the caution
   * of a living part tells how much carbon dioxide it may set free.
   *
   * @param name the name of the part
   * @param fermentable its fermentable extract
   * @return the blends
   * @throws IllegalArgumentException if there is no such part
   */
  public Blends<L> withResidualExtract(String name, MassConcentration fermentable) {
    Objects.requireNonNull(fermentable, "fermentable");
    Map<Integer, Double> more = new HashMap<>(extracts);
    more.put(part(name), fermentable.inMilligramsPerLitre() / 1000);
    return new Blends<>(liquids, limits, living, more);
  }

  private int part(String name) {
    return limits.part(name);
  }

  /**
   * Returns the liquids.
   *
   * @return an unmodifiable list, in the order of {@link #names()}
   */
  public List<L> liquids() {
    return liquids;
  }

  /**
   * Returns the names of the parts.
   *
   * @return an unmodifiable list
   */
  public List<String> names() {
    return limits.names();
  }

  /**
   * Returns the least share of a part.
   *
   * @param name the name of the part
   * @return 0 to 1
   * @throws IllegalArgumentException if there is no such part
   */
  public double leastShareOf(String name) {
    return limits.least(part(name));
  }

  /**
   * Returns the most share of a part.
   *
   * @param name the name of the part
   * @return 0 to 1
   * @throws IllegalArgumentException if there is no such part
   */
  public double mostShareOf(String name) {
    return limits.most(part(name));
  }

  /**
   * Blends in given shares.
   *
   * @param shares the volume of each part over that of the blend, within its limits, 1 together
   * @return the blend
   * @throws IllegalArgumentException if there are more or fewer shares than parts, one is out of
   *     its limits, or they are not 1 together
   */
  public Blend<L> shares(double... shares) {
    double[] kept = limits.checked(shares);
    int start = IntStream.range(0, kept.length).filter(i -> kept[i] > 0).findFirst().orElseThrow();
    List<Liquid> others = new ArrayList<>();
    List<Volume> volumes = new ArrayList<>();
    for (int i = start + 1; i < kept.length; i++) {
      if (kept[i] > 0) {
        others.add(liquids.get(i));
        volumes.add(Volume.ofLitres(kept[i]));
      }
    }
    L first = liquids.get(start);
    L after = others.isEmpty() ? first : mixed(first, kept[start], others, volumes);
    Set<Caution> cautions = new LinkedHashSet<>(fermentingOn(kept));
    for (int i = 0; i < kept.length; i++) {
      if (kept[i] > 0) {
        cautions.addAll(liquids.get(i).cautions());
      }
    }
    return Blend.of(names(), Arrays.stream(kept).boxed().toList(), after, List.copyOf(cautions));
  }

  @SuppressWarnings("unchecked") // a treated liquid is a liquid of its own kind
  private static <L extends Liquid> L mixed(
      L first, double share, List<Liquid> others, List<Volume> volumes) {
    return (L) first.after(Treatments.blend(Volume.ofLitres(share), others, volumes));
  }

  /**
   * Blends given volumes.
   *
   * @param volumes the volume of each part, 0 or more
   * @return the blend
   * @throws IllegalArgumentException if there are more or fewer volumes than parts, all are 0, or a
   *     share is out of its limits
   */
  public Blend<L> volumes(Volume... volumes) {
    Objects.requireNonNull(volumes, "volumes");
    double[] litres = Arrays.stream(volumes).mapToDouble(Volume::inLitres).toArray();
    double sum = Checks.positive("volume of the blend", Arrays.stream(litres).sum(), "L");
    return shares(Arrays.stream(litres).map(volume -> volume / sum).toArray());
  }

  /**
   * Returns what of two figures the blends reach, with its corners.
   *
   * @param x a figure
   * @param y another
   * @param <X> the meaning of the first
   * @param <Y> the meaning of the second
   * @return what is reachable
   * @throws UnknownFigureException if one of the liquids does not know one of the figures
   */
  public <X, Y> ReachableBlends<L, X, Y> reachable(Figure<X> x, Figure<Y> y) {
    return new ReachableBlends<>(
        Objects.requireNonNull(x, "x"), Objects.requireNonNull(y, "y"), limits, this::shares);
  }

  private List<Caution> fermentingOn(double[] shares) {
    List<String> alive = new ArrayList<>();
    List<String> untold = new ArrayList<>();
    double extract = 0;
    for (int i = 0; i < shares.length; i++) {
      if (shares[i] > 0) {
        if (living.contains(i)) {
          alive.add(names().get(i));
        }
        if (!extracts.containsKey(i)) {
          untold.add(names().get(i));
        }
        extract += shares[i] * extracts.getOrDefault(i, 0.0);
      }
    }
    if (alive.isEmpty() || (extract == 0 && untold.isEmpty())) {
      return List.of();
    }
    String least = untold.isEmpty() ? "" : "at least ";
    return List.of(
        new Caution(
            Hazard.REFERMENTATION,
            String.join(" and ", alive)
                + (alive.size() == 1 ? " is" : " are")
                + " living"
                + (extract > 0
                    ? ", and the blend holds "
                        + least
                        + NumberText.significant(extract, 3)
                        + " g/L of residual extract: fermented in the package, that sets free up to "
                        + NumberText.significant(extract * GAS_OF_EXTRACT, 2)
                        + " g/L of carbon dioxide"
                    : "")
                + (untold.isEmpty()
                    ? ""
                    : "; the residual extract of "
                        + String.join(" and ", untold)
                        + " is not stated")
                + ". Let the blend ferment out, or stabilise it, before it is packaged: packages"
                + " can burst (common practice, no source)."));
  }

  @Override
  public String toString() {
    List<String> parts = new ArrayList<>();
    for (int i = 0; i < limits.count(); i++) {
      parts.add(
          names().get(i)
              + (limits.least(i) > 0 || limits.most(i) < 1
                  ? " ("
                      + NumberText.significant(100 * limits.least(i), 3)
                      + " to "
                      + NumberText.significant(100 * limits.most(i), 3)
                      + " %)"
                  : ""));
    }
    return "blends of " + String.join(", ", parts);
  }
}
