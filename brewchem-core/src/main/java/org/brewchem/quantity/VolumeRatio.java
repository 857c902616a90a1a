package org.brewchem.quantity;

/**
 * A volume ratio: the volume of what is added over the volume of the liquid that it is added to, as
 * liquid reagents are dosed. Not a share of the mixture.
 */
public final class VolumeRatio extends ScalarValue<VolumeRatio> {

  private static final String NAME = "volume ratio";
  private static final double MILLILITRES_PER_HECTOLITRE = 1e5;
  private static final double MILLILITRES_PER_LITRE = 1e3;

  private VolumeRatio(double ratio) {
    super(ratio);
  }

  /**
   * Returns a volume ratio stated as a plain number, litres per litre.
   *
   * @param ratio the ratio, 0 or more
   * @return the volume ratio
   * @throws IllegalArgumentException if the number is negative or not finite
   */
  public static VolumeRatio of(double ratio) {
    return new VolumeRatio(nonNegative(NAME, ratio, "L/L", ratio));
  }

  /**
   * Returns a volume ratio in mL/L.
   *
   * @param millilitresPerLitre the number, 0 or more
   * @return the volume ratio
   * @throws IllegalArgumentException if the number is negative or not finite
   */
  public static VolumeRatio ofMillilitresPerLitre(double millilitresPerLitre) {
    return new VolumeRatio(
        nonNegative(
            NAME, millilitresPerLitre, "mL/L", millilitresPerLitre / MILLILITRES_PER_LITRE));
  }

  /**
   * Returns a volume ratio in mL/hL.
   *
   * @param millilitresPerHectolitre the number, 0 or more
   * @return the volume ratio
   * @throws IllegalArgumentException if the number is negative or not finite
   */
  public static VolumeRatio ofMillilitresPerHectolitre(double millilitresPerHectolitre) {
    return new VolumeRatio(
        nonNegative(
            NAME,
            millilitresPerHectolitre,
            "mL/hL",
            millilitresPerHectolitre / MILLILITRES_PER_HECTOLITRE));
  }

  /**
   * Returns the ratio of two volumes.
   *
   * @param added the volume of what is added
   * @param liquid the volume of the liquid, above 0
   * @return added / liquid
   * @throws IllegalArgumentException if the volume of the liquid is 0
   */
  public static VolumeRatio from(Volume added, Volume liquid) {
    return of(added.inLitres() / positive("liquid", liquid.inLitres(), "L", liquid.inLitres()));
  }

  /**
   * Returns the ratio as a plain number.
   *
   * @return litres per litre, 0 or more
   */
  public double ratio() {
    return value;
  }

  /**
   * Returns the ratio in mL/L.
   *
   * @return millilitres per litre
   */
  public double inMillilitresPerLitre() {
    return value * MILLILITRES_PER_LITRE;
  }

  /**
   * Returns the ratio in mL/hL.
   *
   * @return millilitres per hectolitre
   */
  public double inMillilitresPerHectolitre() {
    return value * MILLILITRES_PER_HECTOLITRE;
  }

  /**
   * Returns what is added to a volume of the liquid.
   *
   * @param liquid the volume of the liquid
   * @return ratio x volume
   */
  public Volume times(Volume liquid) {
    return Volume.ofLitres(value * liquid.inLitres());
  }

  @Override
  public String toString() {
    return text(inMillilitresPerHectolitre(), "mL/hL");
  }
}
