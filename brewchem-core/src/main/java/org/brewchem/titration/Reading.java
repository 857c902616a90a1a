package org.brewchem.titration;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.jspecify.annotations.Nullable;

/** One reading of a titration: the titrant added so far and the pH it gave. Immutable. */
public final class Reading {

  private final Volume volume;
  private final PH pH;
  private final @Nullable Duration time;

  private Reading(Volume volume, PH pH, @Nullable Duration time) {
    this.volume = Objects.requireNonNull(volume, "volume");
    this.pH = Objects.requireNonNull(pH, "pH");
    this.time = time;
  }

  /**
   * Makes a reading.
   *
   * @param volume the titrant added so far
   * @param pH the pH read
   * @return the reading
   */
  public static Reading reading(Volume volume, PH pH) {
    return new Reading(volume, pH, null);
  }

  /**
   * States when it was read. Two readings of one volume, the second after a wait, show whether the
   * electrode had come to rest and whether the sample changes.
   *
   * @param sinceStart the time since the titration began
   * @return the reading with its time
   * @throws IllegalArgumentException if the time is negative
   */
  public Reading at(Duration sinceStart) {
    Objects.requireNonNull(sinceStart, "sinceStart");
    if (sinceStart.isNegative()) {
      throw new IllegalArgumentException(
          "time since the start: " + sinceStart + " is not possible; 0 or more is allowed");
    }
    return new Reading(volume, pH, sinceStart);
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

  /**
   * Returns when it was read.
   *
   * @return the time since the titration began; empty when it was not stated
   */
  public Optional<Duration> time() {
    return Optional.ofNullable(time);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Reading that
        && volume.equals(that.volume)
        && pH.equals(that.pH)
        && Objects.equals(time, that.time);
  }

  @Override
  public int hashCode() {
    return Objects.hash(volume, pH, time);
  }

  /** Prints volume and pH, and the time where it was stated. */
  @Override
  public String toString() {
    return volume + ": " + pH + (time == null ? "" : " after " + time.toSeconds() + " s");
  }
}
