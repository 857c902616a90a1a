package org.brewchem.mash;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.Temperature;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * Malts and their masses, which count as exactly weighed, and the factor on Kolbach's term that is
 * assumed for their mashes. Immutable and thread-safe.
 */
public final class Grist {

  /** A malt and how much of it. */
  record Part(Malt malt, double kilograms) {}

  private final List<Part> parts;
  private final Traced kolbachFactor;

  private Grist(List<Part> parts, Traced kolbachFactor) {
    this.parts = List.copyOf(parts);
    this.kolbachFactor = kolbachFactor;
  }

  /**
   * Starts a grist.
   *
   * @param mass mass of the malt, above 0
   * @param malt the malt
   * @return a grist of this malt alone
   * @throws IllegalArgumentException if the mass is 0
   */
  public static Grist of(Mass mass, Malt malt) {
    return new Grist(List.of(part(mass, malt)), MashValues.factorOnKolbachsTerm());
  }

  /**
   * Makes a grist of a map.
   *
   * @param masses the mass of each malt, above 0
   * @return the grist
   * @throws IllegalArgumentException if there is no malt, a mass is 0, or two malts do not go
   *     together
   */
  public static Grist of(Map<Malt, Mass> masses) {
    Objects.requireNonNull(masses, "masses");
    Grist grist = null;
    for (Map.Entry<Malt, Mass> entry : masses.entrySet()) {
      grist =
          grist == null
              ? of(entry.getValue(), entry.getKey())
              : grist.and(entry.getValue(), entry.getKey());
    }
    if (grist == null) {
      throw new IllegalArgumentException(
          "grist: an empty grist is not possible; at least one malt is needed");
    }
    return grist;
  }

  private static Part part(Mass mass, Malt malt) {
    Objects.requireNonNull(mass, "mass");
    Objects.requireNonNull(malt, "malt");
    return new Part(malt, Checks.positive("mass of " + malt.name(), mass.inKilograms(), "kg"));
  }

  /**
   * Adds a malt.
   *
   * @param mass mass of the malt, above 0
   * @param malt the malt, or one of the grist once more
   * @return the grist with it
   * @throws IllegalArgumentException if the mass is 0, another malt of the grist has the same name,
   *     or it was read at another temperature
   */
  public Grist and(Mass mass, Malt malt) {
    Part added = part(mass, malt);
    for (Part part : parts) {
      if (part.malt().name().equals(malt.name()) && part.malt() != malt) {
        throw new IllegalArgumentException(
            "malt: a second "
                + malt.name()
                + " is not possible; two malts of one grist need two names");
      }
    }
    if (!malt.readAt().equals(readAt())) {
      throw new IllegalArgumentException(
          "temperature of reading of "
              + malt.name()
              + ": "
              + malt.readAt()
              + " is not possible; "
              + readAt()
              + " is needed, as of the malts before");
    }
    List<Part> more = new ArrayList<>(parts);
    more.add(added);
    return new Grist(more, kolbachFactor);
  }

  /**
   * States how strong the effect of calcium and magnesium is against Kolbach's term, instead of the
   * assumed factor.
   *
   * @param factor the factor, 0 or more; 0 leaves calcium and magnesium without effect
   * @param relativeStandardUncertainty its relative standard uncertainty, 0 to 1
   * @return the grist
   * @throws IllegalArgumentException if a number is out of range
   */
  public Grist withKolbachFactor(double factor, double relativeStandardUncertainty) {
    Checks.nonNegative("factor on Kolbach's term", factor, "");
    Checks.inRange("relative uncertainty of the factor", relativeStandardUncertainty, "", 0, 1);
    Traced stated =
        factor == 0 || relativeStandardUncertainty == 0
            ? Traced.exact(factor)
            : Traced.of(
                    Source.of(
                        "factor on Kolbach's term, its logarithm",
                        Math.log(factor),
                        relativeStandardUncertainty,
                        ""))
                .times(factor)
                .withValue(factor);
    return new Grist(parts, stated);
  }

  /**
   * Returns the mass of all malts.
   *
   * @return above 0
   */
  public Mass mass() {
    return Mass.ofKilograms(kilograms());
  }

  double kilograms() {
    return parts.stream().mapToDouble(Part::kilograms).sum();
  }

  /**
   * Returns the malts, each once.
   *
   * @return an unmodifiable list in the order of the grist
   */
  public List<Malt> malts() {
    return parts.stream().map(Part::malt).distinct().toList();
  }

  /**
   * Returns a malt by its name.
   *
   * @param name the name
   * @return the malt
   * @throws IllegalArgumentException if the grist has none of that name
   */
  public Malt malt(String name) {
    Objects.requireNonNull(name, "name");
    return parts.stream()
        .map(Part::malt)
        .filter(malt -> malt.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "malt: "
                        + Excerpt.of(name)
                        + " is not in the grist; it has "
                        + malts().stream().map(Malt::name).collect(Collectors.joining(", "))));
  }

  List<Part> parts() {
    return parts;
  }

  Traced kolbachFactor() {
    return kolbachFactor;
  }

  Temperature readAt() {
    return parts.get(0).malt().readAt();
  }

  /** Shares by mass, by the name of the malt. */
  Map<String, Double> shares() {
    Map<String, Double> shares = new LinkedHashMap<>();
    double all = kilograms();
    parts.forEach(part -> shares.merge(part.malt().name(), part.kilograms() / all, Double::sum));
    return shares;
  }

  /** Whether a measured mash has taught about a malt, so that its brews scatter. */
  boolean isLearned() {
    return parts.stream().anyMatch(part -> part.malt().isLearned());
  }

  /** The same masses of other curves, part by part, and another factor. */
  Grist with(List<Malt> malts, Traced factor) {
    List<Part> changed = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      changed.add(new Part(malts.get(i), parts.get(i).kilograms()));
    }
    return new Grist(changed, factor);
  }

  /** Returns the masses and malts. */
  @Override
  public String toString() {
    return parts.stream()
        .map(part -> Mass.ofKilograms(part.kilograms()) + " of " + part.malt().name())
        .collect(Collectors.joining(", "));
  }
}
