package org.brewchem.water;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Element;
import org.brewchem.substance.Ion;
import org.jspecify.annotations.Nullable;

/** The readings of a report as they come in, each once. Mutable. */
final class Readings {

  private final Map<Ion, Reading> ions = new LinkedHashMap<>();
  private final Map<StatedAs, Reading> alkalinities = new EnumMap<>(StatedAs.class);
  private final Set<StatedAs> stated = EnumSet.noneOf(StatedAs.class);
  private @Nullable TitrationAlkalinity titrated;
  private @Nullable Reading titration;
  private @Nullable Reading pH;
  private @Nullable Temperature temperatureOfPH;

  void ion(Ion ion, MassConcentration concentration, @Nullable MassConcentration u) {
    Objects.requireNonNull(concentration, "concentration");
    put(ion, Reading.of(concentration.inMilligramsPerLitre(), milligrams(u)));
  }

  void ion(Ion ion, MassConcentration concentration, @Nullable MassConcentration u, StatedAs as) {
    stated.add(as);
    ion(ion, concentration, u);
  }

  void asElement(
      Ion ion,
      Element element,
      MassConcentration concentration,
      @Nullable MassConcentration u,
      StatedAs as) {
    Objects.requireNonNull(concentration, "concentration");
    double factor = ion.massPerMassOf(element);
    stated.add(as);
    put(
        ion,
        Reading.converted(
            concentration.inMilligramsPerLitre(),
            milligrams(u),
            factor,
            String.format(
                Locale.ROOT, "reported as %s, %s x %.4f", element.name(), concentration, factor)));
  }

  private void put(Ion ion, Reading reading) {
    if (ions.putIfAbsent(ion, reading) != null) {
      throw new IllegalStateException(ion.name() + ": is stated twice");
    }
  }

  private static Optional<Double> milligrams(@Nullable MassConcentration u) {
    return Optional.ofNullable(u).map(MassConcentration::inMilligramsPerLitre);
  }

  void alkalinity(
      StatedAs as, CarbonateAlkalinity value, @Nullable CarbonateAlkalinity u, String how) {
    Reading reading =
        Reading.converted(
            value.inMilligramsPerLitreAsCaCO3(),
            Optional.ofNullable(u).map(CarbonateAlkalinity::inMilligramsPerLitreAsCaCO3),
            1,
            how);
    if (alkalinities.putIfAbsent(as, reading) != null) {
      throw new IllegalStateException("alkalinity: is stated twice on the same basis");
    }
    stated.add(as);
  }

  void titration(TitrationAlkalinity alkalinity, Optional<Double> u) {
    Objects.requireNonNull(alkalinity, "alkalinity");
    if (titrated != null) {
      throw new IllegalStateException("alkalinity: is stated twice on the same basis");
    }
    u.ifPresent(
        value -> Checks.nonNegative("standard uncertainty of the alkalinity", value, "mEq/L"));
    titrated = alkalinity;
    titration = Reading.of(alkalinity.inMilliequivalentsPerLitre(), u);
  }

  void pH(PH measured, Temperature temperature, Optional<Double> u) {
    Objects.requireNonNull(measured, "measured");
    Objects.requireNonNull(temperature, "temperature");
    if (pH != null) {
      throw new IllegalStateException("pH: is stated twice");
    }
    Checks.inRange("temperature of the pH", temperature.inCelsius(), "°C", 0, 100);
    u.ifPresent(value -> Checks.nonNegative("standard uncertainty of the pH", value, ""));
    pH = Reading.converted(measured.value(), u, 1, "reported, at " + temperature);
    temperatureOfPH = temperature;
  }

  /** The columns that may be headed wrongly. */
  Set<StatedAs> stated() {
    return Collections.unmodifiableSet(EnumSet.copyOf(stated));
  }

  Optional<PH> reportedPH() {
    return Optional.ofNullable(pH).map(reading -> PH.of(reading.number()));
  }

  Temperature temperature() {
    return temperatureOfPH == null ? ReportedContents.USUAL_TEMPERATURE : temperatureOfPH;
  }

  /** Everything that is stated, for a comparison with another report. */
  List<Object> all() {
    List<Object> all =
        new ArrayList<>(
            Arrays.asList(Map.copyOf(ions), Map.copyOf(alkalinities), Set.copyOf(stated)));
    for (Object each : new Object[] {titrated, titration, pH, temperatureOfPH}) {
      all.add(Optional.ofNullable(each));
    }
    return List.copyOf(all);
  }

  /**
   * What the readings make of a water.
   *
   * @throws IllegalStateException if a titration is stated without a pH
   */
  ReportedContents contents() {
    if (titrated != null && pH == null) {
      throw new IllegalStateException(
          "pH: is needed to make a carbonate alkalinity of " + titrated);
    }
    return new ReportedContents(
        ions,
        alkalinities.getOrDefault(
            StatedAs.ALKALINITY_AS_CACO3, alkalinities.get(StatedAs.BICARBONATE)),
        titration,
        titrated == null ? null : titrated.endPoint(),
        pH,
        temperature());
  }

  boolean isTitrated() {
    return titrated != null;
  }

  /**
   * Checks that alkalinities on several bases say the same, to the rounding of reports.
   *
   * @param water the water, whose carbonate alkalinity counts if one was titrated
   * @throws IllegalArgumentException if they differ by more than 1 mg/L as CaCO3 and by more than 1
   *     %
   */
  void requireAgreement(Water water) {
    if (titrated == null && alkalinities.size() < 2) {
      return;
    }
    double first = water.alkalinity().number();
    for (Reading reading : alkalinities.values()) {
      if (Math.abs(first - reading.number()) > Math.max(1, 0.01 * first)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "alkalinity: %.4g and %.4g mg/L as CaCO3 on two bases is not possible; they may"
                    + " differ by 1 mg/L or 1 %%",
                first,
                reading.number()));
      }
    }
  }
}
