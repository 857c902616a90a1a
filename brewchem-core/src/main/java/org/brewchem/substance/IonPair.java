package org.brewchem.substance;

import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.jspecify.annotations.Nullable;

/**
 * An ion pair or complex: a free metal with ligands of one component, and the constant of its
 * formation from free metal, fully deprotonated ligand and H+:
 *
 * <pre>metal + n ligand + p H+ (- p H2O for a hydroxide) = product.</pre>
 *
 * <p>A hydroxide such as CaOH+ has no ligand and -1 protons: metal + H2O = CaOH+ + H+. A product
 * without a metal is a further protonation that no dissociation step covers, such as HCl.
 */
public final class IonPair {

  private final String product;
  private final @Nullable Component metal;
  private final @Nullable Component ligand;
  private final int ligandCount;
  private final int protons;
  private final EquilibriumConstant constant;

  private IonPair(
      String product,
      @Nullable Component metal,
      @Nullable Component ligand,
      int ligandCount,
      int protons,
      EquilibriumConstant constant) {
    this.product = Checks.notBlank("product of the ion pair", product);
    this.metal = metal;
    this.ligand = ligand;
    this.ligandCount = ligandCount;
    this.protons = protons;
    this.constant = constant;
    if (metal == null && ligand == null) {
      throw new IllegalArgumentException(Excerpt.of(product) + ": a metal or a ligand is needed");
    }
    if (metal != null && metal.protons() > 0) {
      throw new IllegalArgumentException(
          Excerpt.of(product)
              + ": "
              + metal.key()
              + " is not possible as a metal; it takes up protons");
    }
    if ((ligand == null) != (ligandCount == 0) || ligandCount < 0 || ligandCount > 4) {
      throw Checks.outOfRange("ligands of " + product, ligandCount, "", "1 to 4");
    }
    int most = ligand == null ? 0 : Math.max(1, ligand.protons()) * ligandCount;
    if (protons < -4 || protons > most) {
      throw Checks.outOfRange("protons of " + product, protons, "", "-4 to " + most);
    }
  }

  /**
   * Makes an ion pair.
   *
   * @param product the name of the pair, its identity in a {@link PairSet}, such as "CaHPO4(aq)"
   * @param metal the metal, a strong ion
   * @param ligand the ligand
   * @param ligandCount how many ligands, 1 to 4
   * @param protons how many H+ the pair holds besides the fully deprotonated ligands
   * @param formation the constant of metal + ligands without protons + H+ = pair
   * @return the ion pair
   * @throws IllegalArgumentException if a number is out of range or the metal takes up protons
   */
  public static IonPair of(
      String product,
      Component metal,
      Component ligand,
      int ligandCount,
      int protons,
      EquilibriumConstant formation) {
    Objects.requireNonNull(metal, "metal");
    Objects.requireNonNull(ligand, "ligand");
    Objects.requireNonNull(formation, "formation");
    return new IonPair(product, metal, ligand, ligandCount, protons, formation);
  }

  /**
   * Makes a hydroxide of a metal, by the reaction metal + n H2O = product + n H+.
   *
   * @param product the name, such as "CaOH+"
   * @param metal the metal, a strong ion
   * @param hydroxides how many protons are set free, 1 to 4
   * @param hydrolysis the constant of the reaction
   * @return the ion pair
   * @throws IllegalArgumentException if the number is out of range or the metal takes up protons
   */
  public static IonPair hydroxide(
      String product, Component metal, int hydroxides, EquilibriumConstant hydrolysis) {
    Objects.requireNonNull(metal, "metal");
    Objects.requireNonNull(hydrolysis, "hydrolysis");
    Checks.inRange("number of hydroxides of " + product, hydroxides, "", 1, 4);
    return new IonPair(product, metal, null, 0, -hydroxides, hydrolysis);
  }

  /** Makes the pair of a table row, in which metal or ligand may be missing. */
  static IonPair of(
      String product,
      Optional<Component> metal,
      Optional<Component> ligand,
      int ligandCount,
      int protons,
      EquilibriumConstant formation) {
    return new IonPair(
        product, metal.orElse(null), ligand.orElse(null), ligandCount, protons, formation);
  }

  /**
   * Returns the name of the pair.
   *
   * @return the name, such as "CaHPO4(aq)"
   */
  public String product() {
    return product;
  }

  /**
   * Returns the metal.
   *
   * @return the metal, of which the pair holds one; empty for a further protonation such as HCl
   */
  public Optional<Component> metal() {
    return Optional.ofNullable(metal);
  }

  /**
   * Returns the ligand.
   *
   * @return the ligand; empty for a hydroxide
   */
  public Optional<Component> ligand() {
    return Optional.ofNullable(ligand);
  }

  /**
   * Returns how many ligands the pair holds.
   *
   * @return the number, 0 for a hydroxide
   */
  public int ligandCount() {
    return ligandCount;
  }

  /**
   * Returns how many H+ the pair holds besides the fully deprotonated ligands.
   *
   * @return the number, negative for a hydroxide
   */
  public int protons() {
    return protons;
  }

  /**
   * Returns the charge, which follows from metal, ligands and protons.
   *
   * @return the charge number
   */
  public int charge() {
    int metalCharge = metal == null ? 0 : metal.chargeWithoutProtons();
    int ligandCharge = ligand == null ? 0 : ligandCount * ligand.chargeWithoutProtons();
    return metalCharge + ligandCharge + protons;
  }

  /**
   * Returns the constant of formation from free metal, fully deprotonated ligands and H+.
   *
   * @return the constant, at zero ionic strength
   */
  public EquilibriumConstant constant() {
    return constant;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof IonPair other
        && product.equals(other.product)
        && Objects.equals(metal, other.metal)
        && Objects.equals(ligand, other.ligand)
        && ligandCount == other.ligandCount
        && protons == other.protons
        && constant.equals(other.constant);
  }

  @Override
  public int hashCode() {
    return Objects.hash(product, constant);
  }

  /** Returns the name of the pair. */
  @Override
  public String toString() {
    return product;
  }
}
