package org.brewchem.plan;

import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Volume;

/**
 * A portion of water that is mixed and treated by itself, such as that for mashing in.
 *
 * @param name its name
 * @param volume the volume of the waters mixed, before anything is dosed
 */
public record WaterPortion(String name, Volume volume) {

  /**
   * Makes a portion.
   *
   * @param name its name
   * @param volume the volume of the waters mixed, before anything is dosed
   * @throws IllegalArgumentException if the name is blank or the volume is 0
   */
  public WaterPortion {
    Checks.notBlank("name of the portion", name);
    Objects.requireNonNull(volume, "volume");
    Checks.positive("volume of the portion " + name, volume.inLitres(), "L");
  }

  /**
   * Makes a portion; meant for static import.
   *
   * @param name its name
   * @param volume the volume of the waters mixed, before anything is dosed
   * @return the portion
   * @throws IllegalArgumentException if the name is blank or the volume is 0
   */
  public static WaterPortion portion(String name, Volume volume) {
    return new WaterPortion(name, volume);
  }

  /** Prints name and volume. */
  @Override
  public String toString() {
    return name + ", " + volume;
  }
}
