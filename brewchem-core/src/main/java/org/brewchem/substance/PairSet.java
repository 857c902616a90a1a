package org.brewchem.substance;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.jspecify.annotations.Nullable;

/**
 * A named choice of ion pairs, at most one constant per pair.
 *
 * <p>All constants are those of the formation from free metal, fully deprotonated ligand and H+.
 * Where a source prints the association with hydrogencarbonate, hydrogen phosphate, dihydrogen
 * phosphate or hydrogen sulfate, the protonation of that ligand by the constants of set
 * "phreeqc-dat" has been added, because the rows belong to that set. A constant whose source prints
 * no enthalpy keeps its value at 25 °C at every temperature.
 *
 * <p>Two sets are equal when name and pairs are.
 */
public final class PairSet {

  private static final Map<String, PairSet> PUBLISHED = read();
  private static final PairSet NONE = new PairSet("none", Map.of());
  private static final PairSet WITH_ALKALI_PAIRS = composeWithAlkaliPairs();
  private static final PairSet STANDARD = composeStandard();

  private final String name;
  private final Map<String, IonPair> pairs;

  private PairSet(String name, Map<String, IonPair> pairs) {
    this.name = Checks.notBlank("name of the set", name);
    this.pairs = Collections.unmodifiableMap(pairs);
  }

  private static Map<String, PairSet> read() {
    Map<String, Map<String, IonPair>> tables = new LinkedHashMap<>();
    for (ResourceTable.Row row : ResourceTable.read("ion-pairs.csv")) {
      EquilibriumConstant constant = row.constant("log_K_25C", 1.0);
      if (!row.text("written_on").isEmpty()) {
        double uncertainty = row.optionalNumber("uncertainty").orElse(0.0);
        constant = constant.plus(AssociationConstants.of(row.species("written_on")));
        constant = uncertainty > 0.0 ? constant.withUncertainty(uncertainty) : constant;
      }
      IonPair pair =
          IonPair.of(
              row.species("product"),
              component(row, "metal"),
              component(row, "ligand"),
              row.integer("ligand_count"),
              row.integer("protons"),
              constant.from(row.provenance()));
      Map<String, IonPair> pairs =
          tables.computeIfAbsent(row.text("source_key"), key -> new LinkedHashMap<>());
      if (pairs.put(pair.product(), pair) != null) {
        throw new IllegalStateException(row.place() + ": a second row for " + pair.product());
      }
    }
    Map<String, PairSet> sets = new LinkedHashMap<>();
    tables.forEach((name, pairs) -> sets.put(name, new PairSet(name, pairs)));
    return Collections.unmodifiableMap(sets);
  }

  /** The phosphates of phreeqc.dat stay, whatever the later sets print beside them. */
  private static PairSet composeWithAlkaliPairs() {
    PairSet inorganic = named("phreeqc-dat");
    PairSet complexes = named("scd");
    return inorganic
        .plus(named("nist46"))
        .plus(complexes)
        .plus(named("thermochimie"))
        .plus(named("martell-smith").without("MgMalate"))
        .plus(named("nist46-davies"))
        .with(pair("shock-koretsky-1995", "CaLactate+"))
        .with(pair("shock-koretsky-1995", "MgLactate+"))
        .plus(inorganic)
        .with(pair("scd", "MgPO4-"))
        .renamed("standard with alkali pairs");
  }

  private static PairSet composeStandard() {
    PairSet set = WITH_ALKALI_PAIRS;
    for (IonPair pair : set.pairs()) {
      if (isAlkali(pair) && !isWithHydrogenPhosphate(pair)) {
        set = set.without(pair.product());
      }
    }
    return set.renamed("standard");
  }

  private static boolean isAlkali(IonPair pair) {
    return pair.metal()
        .map(metal -> metal.equals(Component.SODIUM) || metal.equals(Component.POTASSIUM))
        .orElse(false);
  }

  private static boolean isWithHydrogenPhosphate(IonPair pair) {
    return pair.ligand().equals(Optional.of(Component.PHOSPHATE)) && pair.protons() == 1;
  }

  private static IonPair pair(String set, String product) {
    return named(set)
        .find(product)
        .orElseThrow(() -> new IllegalStateException(set + ": it does not hold " + product));
  }

  private static Optional<Component> component(ResourceTable.Row row, String column) {
    String key = row.species(column);
    return key.isEmpty() ? Optional.empty() : Optional.of(Component.of(key));
  }

  /**
   * Returns the default set, made for the Davies equation. The inorganic pairs are those of the
   * USGS data set phreeqc.dat, except MgPO4- of the Stability Constants Database; those of organic
   * ligands are from NIST 46 and the Stability Constants Database, ThermoChimie (succinate), Shock
   * and Koretsky 1995 (lactate) and Martell and Smith (calcium malate). Of sodium and potassium it
   * holds only the pairs with hydrogen phosphate: with the others the certified pH standards are
   * reproduced less well, because the Davies equation already includes their effect. The reasons
   * are in docs/decisions.
   *
   * @return the set
   */
  public static PairSet standard() {
    return STANDARD;
  }

  /**
   * Returns the default set and the other pairs of sodium and potassium, fourteen in number. They
   * belong with activity coefficients that each ion has of its own.
   *
   * @return the set
   */
  public static PairSet withAlkaliPairs() {
    return WITH_ALKALI_PAIRS;
  }

  /**
   * Returns the set without any pair.
   *
   * @return the set
   */
  public static PairSet none() {
    return NONE;
  }

  /**
   * Returns the pairs of one source. The name is the key of the source, see docs/sources.md.
   *
   * @param name the name, one of {@link #names()}
   * @return the set, holding what its source prints and no more
   * @throws IllegalArgumentException if there is no such set
   */
  public static PairSet named(String name) {
    Objects.requireNonNull(name, "name");
    PairSet set = PUBLISHED.get(name);
    if (set == null) {
      throw new IllegalArgumentException(
          "pair set: \""
              + Excerpt.of(name)
              + "\" is not one of "
              + Excerpt.of(PUBLISHED.keySet().toString(), 250));
    }
    return set;
  }

  /**
   * Returns the names of the published sets.
   *
   * @return an unmodifiable list
   */
  public static List<String> names() {
    return List.copyOf(PUBLISHED.keySet());
  }

  /**
   * Returns the name.
   *
   * @return the name
   */
  public String name() {
    return name;
  }

  /**
   * Returns the pairs.
   *
   * @return an unmodifiable list
   */
  public List<IonPair> pairs() {
    return List.copyOf(pairs.values());
  }

  /**
   * Returns one pair.
   *
   * @param product the name of the pair
   * @return the pair; empty when the set does not hold it
   */
  public Optional<IonPair> find(String product) {
    Objects.requireNonNull(product, "product");
    return Optional.ofNullable(pairs.get(product));
  }

  /**
   * Returns a new set with a pair added, or put in the place of the pair of the same name.
   *
   * @param pair the pair
   * @return the new set, named after this one and the pair
   */
  public PairSet with(IonPair pair) {
    Map<String, IonPair> copy = new LinkedHashMap<>(pairs);
    copy.put(pair.product(), pair);
    return new PairSet(name + " with " + pair.product(), copy);
  }

  /**
   * Returns a new set without a pair.
   *
   * @param product the name of the pair
   * @return the new set, named after this one and the pair
   * @throws IllegalArgumentException if the set does not hold the pair
   */
  public PairSet without(String product) {
    Objects.requireNonNull(product, "product");
    if (!pairs.containsKey(product)) {
      throw new IllegalArgumentException(
          "pair set " + Excerpt.of(name) + ": it does not hold " + Excerpt.of(product));
    }
    Map<String, IonPair> copy = new LinkedHashMap<>(pairs);
    copy.remove(product);
    return new PairSet(name + " without " + product, copy);
  }

  /**
   * Returns a new set with all pairs of another set added, each put in the place of the pair of the
   * same name.
   *
   * @param other the other set
   * @return the new set, named after both
   */
  public PairSet plus(PairSet other) {
    Map<String, IonPair> copy = new LinkedHashMap<>(pairs);
    copy.putAll(other.pairs);
    return new PairSet(name + " and " + other.name, copy);
  }

  /**
   * Returns the same set under another name.
   *
   * @param newName the name
   * @return the renamed set
   * @throws IllegalArgumentException if the name is blank
   */
  public PairSet renamed(String newName) {
    Objects.requireNonNull(newName, "newName");
    return new PairSet(newName, pairs);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof PairSet other && name.equals(other.name) && pairs.equals(other.pairs);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, pairs);
  }

  /** Returns the name. */
  @Override
  public String toString() {
    return name;
  }
}
