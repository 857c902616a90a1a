package org.brewchem.mash;

import java.util.Objects;
import java.util.function.Function;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Volume;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Treatments;

/**
 * An addition to the whole mash: an amount of a substance, as it is measured out on a brew day.
 * Meant for static import beside {@link Treatments}, whose amounts count per volume of liquor.
 * Immutable.
 */
public final class MashAddition {

  private final Function<Volume, Treatment> perLiquor;

  private MashAddition(Function<Volume, Treatment> perLiquor) {
    this.perLiquor = perLiquor;
  }

  /**
   * Adds a liquid acid as bought.
   *
   * @param acid the acid with assay and density
   * @param volume of the reagent into the mash
   * @return the addition
   */
  public static MashAddition acid(Reagent acid, Volume volume) {
    Objects.requireNonNull(acid, "acid");
    Objects.requireNonNull(volume, "volume");
    return new MashAddition(liquor -> Treatments.acid(acid, VolumeRatio.from(volume, liquor)));
  }

  /**
   * Adds an acid as bought, weighed out.
   *
   * @param acid the acid with its assay
   * @param mass of the reagent into the mash
   * @return the addition
   */
  public static MashAddition acid(Reagent acid, Mass mass) {
    Objects.requireNonNull(acid, "acid");
    Objects.requireNonNull(mass, "mass");
    return new MashAddition(liquor -> Treatments.acid(acid, perLitre(mass, liquor)));
  }

  /**
   * Adds a pure acid.
   *
   * @param acid the acid
   * @param mass of it into the mash
   * @return the addition
   */
  public static MashAddition acid(Acid acid, Mass mass) {
    Objects.requireNonNull(acid, "acid");
    Objects.requireNonNull(mass, "mass");
    return new MashAddition(liquor -> Treatments.acid(acid, perLitre(mass, liquor)));
  }

  /**
   * Adds a pure base.
   *
   * @param base the base
   * @param mass of it into the mash
   * @return the addition
   */
  public static MashAddition base(Base base, Mass mass) {
    Objects.requireNonNull(base, "base");
    Objects.requireNonNull(mass, "mass");
    return new MashAddition(liquor -> Treatments.base(base, perLitre(mass, liquor)));
  }

  /**
   * Adds a pure salt.
   *
   * @param salt the salt, or another compound that is weighed
   * @param mass of it into the mash
   * @return the addition
   */
  public static MashAddition salt(Compound salt, Mass mass) {
    Objects.requireNonNull(salt, "salt");
    Objects.requireNonNull(mass, "mass");
    return new MashAddition(liquor -> Treatments.salt(salt, perLitre(mass, liquor)));
  }

  /**
   * Adds a salt as bought.
   *
   * @param salt the salt with its assay
   * @param mass of the reagent into the mash
   * @return the addition
   */
  public static MashAddition salt(Reagent salt, Mass mass) {
    Objects.requireNonNull(salt, "salt");
    Objects.requireNonNull(mass, "mass");
    return new MashAddition(liquor -> Treatments.salt(salt, perLitre(mass, liquor)));
  }

  private static MassConcentration perLitre(Mass mass, Volume liquor) {
    return MassConcentration.ofGramsPerLitre(mass.inGrams() / liquor.inLitres());
  }

  /** The same per volume of liquor. */
  Treatment into(Volume liquor) {
    return perLiquor.apply(liquor);
  }
}
