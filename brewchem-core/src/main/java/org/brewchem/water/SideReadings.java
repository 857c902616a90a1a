package org.brewchem.water;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.Temperature;
import org.jspecify.annotations.Nullable;

/** What a report states beside its ions, alkalinity and pH, each once. Mutable. */
final class SideReadings {

  /** One of them. */
  enum Kind {
    /** Carbonate beside bicarbonate, mg/L of CO3. */
    CARBONATE("carbonate"),
    /** Calcium and magnesium together, mg/L as CaCO3. */
    TOTAL_HARDNESS("total hardness"),
    /** µS/cm at 25 °C. */
    CONDUCTIVITY("conductivity"),
    /** mg/L. */
    DRY_RESIDUE("dry residue"),
    /** Acid to pH 4.3, mEq/L. */
    ACID_CAPACITY("acid capacity"),
    /** Base to pH 8.2, mEq/L; negative for acid to pH 8.2. */
    BASE_CAPACITY("base capacity");

    private final String title;

    Kind(String title) {
      this.title = title;
    }
  }

  private final Map<Kind, Reading> readings = new EnumMap<>(Kind.class);
  private @Nullable LocalDate date;
  private @Nullable Temperature temperature;

  void put(Kind kind, double number, @Nullable Double u, String how) {
    if (u != null) {
      Checks.nonNegative("standard uncertainty of the " + kind.title, u, "");
    }
    Reading reading = Reading.converted(number, Optional.ofNullable(u), 1, how);
    if (readings.putIfAbsent(kind, reading) != null) {
      throw new IllegalStateException(kind.title + ": is stated twice");
    }
  }

  void date(LocalDate sampled) {
    Objects.requireNonNull(sampled, "date");
    if (date != null) {
      throw new IllegalStateException("date: is stated twice");
    }
    date = sampled;
  }

  void temperature(Temperature sample) {
    Objects.requireNonNull(sample, "temperature");
    if (temperature != null) {
      throw new IllegalStateException("temperature of the sample: is stated twice");
    }
    Checks.inRange("temperature of the sample", sample.inCelsius(), "°C", 0, 100);
    temperature = sample;
  }

  Optional<Reading> find(Kind kind) {
    return Optional.ofNullable(readings.get(kind));
  }

  /** The number of a reading, which is none below a limit. */
  Optional<Double> number(Kind kind) {
    return find(kind).map(reading -> reading.number().orElseThrow());
  }

  Optional<LocalDate> date() {
    return Optional.ofNullable(date);
  }

  Optional<Temperature> temperature() {
    return Optional.ofNullable(temperature);
  }

  SideReadings copy() {
    SideReadings copy = new SideReadings();
    copy.readings.putAll(readings);
    copy.date = date;
    copy.temperature = temperature;
    return copy;
  }

  /**
   * The same, acid capacity and total hardness with an uncertainty; what states none assumes that
   * of an alkalinity, which is titrated as they are.
   */
  SideReadings withAssumedUncertainties() {
    SideReadings copy = copy();
    copy.readings.computeIfPresent(
        Kind.ACID_CAPACITY, (kind, reading) -> AssumedUncertainties.ofTitration(reading));
    copy.readings.computeIfPresent(
        Kind.TOTAL_HARDNESS, (kind, reading) -> AssumedUncertainties.of("alkalinity", reading));
    return copy;
  }

  List<Object> all() {
    List<Object> all = new ArrayList<>(List.of(Map.copyOf(readings)));
    all.add(date());
    all.add(temperature());
    return all;
  }
}
