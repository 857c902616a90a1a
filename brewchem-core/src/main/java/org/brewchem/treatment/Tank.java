package org.brewchem.treatment;

import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Traced;

/**
 * A tank with the volume of liquid in it and the uncertainty of that volume. Two doses into one
 * tank share the error of its volume. Immutable.
 */
public final class Tank {

  private final Volume volume;
  private final Traced litres;

  private Tank(Volume volume, OptionalDouble uncertainty) {
    this.volume = volume;
    litres =
        Traced.stated(
            "volume in the tank",
            Checks.positive("volume in the tank", volume.inLitres(), "L"),
            uncertainty,
            "L");
  }

  /**
   * Returns a tank of whose volume no uncertainty is stated: the chances of a dose are unknown.
   *
   * @param volume of the liquid in it, above 0
   * @return the tank
   * @throws IllegalArgumentException if the volume is 0
   */
  public static Tank holding(Volume volume) {
    return new Tank(volume, OptionalDouble.empty());
  }

  /**
   * Returns a tank.
   *
   * @param volume of the liquid in it, above 0
   * @param standardUncertainty u of the volume, at most the volume; 0 where it is known exactly
   * @return the tank
   * @throws IllegalArgumentException if the volume is 0, or its u above it
   */
  public static Tank holding(Volume volume, Volume standardUncertainty) {
    double u =
        Checks.inRange(
            "standard uncertainty of the volume in the tank",
            standardUncertainty.inLitres(),
            "L",
            0,
            volume.inLitres());
    return new Tank(volume, OptionalDouble.of(u));
  }

  /**
   * Returns the volume.
   *
   * @return what is thought to be in the tank
   */
  public Volume volume() {
    return volume;
  }

  /** The volume with its source, L. */
  Traced litres() {
    return litres;
  }

  /** What is thought to be in the tank over what is: 1, with the source of the volume. */
  Traced ratio() {
    return Traced.exact(volume.inLitres()).dividedBy(litres).withValue(1);
  }

  @Override
  public String toString() {
    OptionalDouble u = litres.standardUncertainty();
    return volume + (u.isEmpty() ? ", u not stated" : ", u " + Volume.ofLitres(u.getAsDouble()));
  }
}
