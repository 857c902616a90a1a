package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.jspecify.annotations.Nullable;

/** One reading of a titration: the titrant added so far and the pH it gave. Immutable. */
public final class Reading {

  private final Volume volume;
  private final PH pH;

  private Reading(Volume volume, PH pH) {
    this.volume = Objects.requireNonNull(volume, "volume");
    this.pH = Objects.requireNonNull(pH, "pH");
  }

  /**
   * Makes a reading.
   *
   * @param volume the titrant added so far
   * @param pH the pH read
   * @return the reading
   */
  public static Reading reading(Volume volume, PH pH) {
    return new Reading(volume, pH);
  }

  static List<Reading> list(double[] millilitres, double[] pH) {
    if (millilitres.length != pH.length) {
      throw new IllegalArgumentException(
          "readings: " + millilitres.length + " volumes do not go with " + pH.length + " pH");
    }
    List<Reading> list = new ArrayList<>();
    for (int i = 0; i < pH.length; i++) {
      list.add(reading(Volume.ofMillilitres(millilitres[i]), PH.of(pH[i])));
    }
    return list;
  }

  /**
   * Returns the titrant added so far.
   *
   * @return the volume
   */
  public Volume volume() {
    return volume;
  }

  /**
   * Returns the pH read.
   *
   * @return the pH
   */
  public PH pH() {
    return pH;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Reading that && volume.equals(that.volume) && pH.equals(that.pH);
  }

  @Override
  public int hashCode() {
    return Objects.hash(volume, pH);
  }

  /** Prints volume and pH. */
  @Override
  public String toString() {
    return volume + ": " + pH;
  }
}
