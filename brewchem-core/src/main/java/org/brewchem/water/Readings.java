package org.brewchem.water;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Ion;
import org.jspecify.annotations.Nullable;

/** The readings of a report as they come in, each once. Mutable. */
final class Readings {

  /** The end points of acid and base capacity, DIN 38409-7. */
  static final PH METHYL_ORANGE = PH.of(4.3);

  private SideReadings side = new SideReadings();
  private boolean assumed;
  private final Map<String, Reading> concentrations = new LinkedHashMap<>();
  private final Map<String, Constituent> constituents = new LinkedHashMap<>();
  private final Map<StatedAs, Reading> alkalinities = new EnumMap<>(StatedAs.class);
  private @Nullable TitrationAlkalinity titrated;
  private @Nullable Reading titration;
  private @Nullable Reading pH;
  private @Nullable Temperature temperatureOfPH;

  /** A concentration on the basis of the constituent, mg/L; how says its unit. */
  void concentration(
      Constituent constituent, MassConcentration stated, @Nullable MassConcentration u) {
    Objects.requireNonNull(constituent, "constituent");
    Objects.requireNonNull(stated, "concentration");
    double factor = constituent.speciesPerStated();
    put(
        constituent,
        Reading.converted(
            stated.inMilligramsPerLitre(),
            Optional.ofNullable(u).map(MassConcentration::inMilligramsPerLitre),
            factor,
            how(constituent, stated, factor)));
  }

  /** The mass of an amount of what is stated. */
  static MassConcentration mass(Constituent constituent, AmountConcentration amount) {
    return MassConcentration.ofMilligramsPerLitre(
        Objects.requireNonNull(amount, "concentration").inMillimolesPerLitre()
            * Objects.requireNonNull(constituent, "constituent")
                .statedMolarMass()
                .inGramsPerMole());
  }

  /** The mass of equivalents of what is stated. */
  static MassConcentration mass(Constituent constituent, ChargeConcentration equivalents) {
    Ion ion =
        Objects.requireNonNull(constituent, "constituent")
            .ion()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        constituent.heading()
                            + ": equivalents are not possible; it has no charge"));
    double millimoles =
        Objects.requireNonNull(equivalents, "concentration").inMilliequivalentsPerLitre()
            / Math.abs(ion.charge());
    return mass(constituent, AmountConcentration.ofMillimolesPerLitre(millimoles));
  }

  /** The mean of a year with its extremes, on the basis of the constituent. */
  void yearly(
      Constituent constituent,
      MassConcentration lowest,
      MassConcentration mean,
      MassConcentration highest) {
    double low = Objects.requireNonNull(lowest, "lowest").inMilligramsPerLitre();
    double middle = Objects.requireNonNull(mean, "mean").inMilligramsPerLitre();
    double high = Objects.requireNonNull(highest, "highest").inMilligramsPerLitre();
    if (low > high) {
      throw Checks.outOfRange(
          constituent.heading() + ", lowest of the year",
          low,
          "mg/L",
          "at most the highest of the year");
    }
    Checks.inRange(constituent.heading() + ", mean of the year", middle, "mg/L", low, high);
    double factor = constituent.speciesPerStated();
    put(
        constituent,
        Reading.converted(middle, Optional.empty(), factor, how(constituent, mean, factor))
            .between(low * factor, high * factor));
  }

  /** The same readings, an acid capacity beside a pH as the titration that it is. */
  Readings settled() {
    Optional<Reading> capacity = side.find(SideReadings.Kind.ACID_CAPACITY);
    if (pH == null || titrated != null || capacity.isEmpty()) {
      return this;
    }
    Readings copy = copy();
    copy.titrated =
        TitrationAlkalinity.ofMilliequivalentsPerLitre(
            capacity.get().number().orElseThrow(), METHYL_ORANGE);
    copy.titration = capacity.get();
    return copy;
  }

  /** The same readings, to be changed on their own. */
  Readings copy() {
    Readings copy = new Readings();
    copy.concentrations.putAll(concentrations);
    copy.constituents.putAll(constituents);
    copy.alkalinities.putAll(alkalinities);
    copy.side = side.copy();
    copy.assumed = assumed;
    copy.titrated = titrated;
    copy.titration = titration;
    copy.pH = pH;
    copy.temperatureOfPH = temperatureOfPH;
    return copy;
  }

  private static String how(Constituent constituent, MassConcentration stated, double factor) {
    return constituent.isOnItsOwnBasis()
        ? "reported"
        : String.format(
            Locale.ROOT,
            "reported as %s, %s x %.4f",
            constituent.heading().substring(constituent.species().length() + 4),
            stated,
            factor);
  }

  /** A concentration that lies below a limit, on the basis of the constituent. */
  void below(Constituent constituent, MassConcentration limit) {
    Objects.requireNonNull(constituent, "constituent");
    Objects.requireNonNull(limit, "limit");
    double milligrams =
        Checks.positive(constituent.heading() + ", limit", limit.inMilligramsPerLitre(), "mg/L")
            * constituent.speciesPerStated();
    put(
        constituent,
        Reading.below(
            milligrams,
            "reported as below "
                + limit
                + (constituent.isOnItsOwnBasis()
                    ? ""
                    : constituent.heading().substring(constituent.species().length()))));
  }

  private void put(Constituent constituent, Reading reading) {
    if (concentrations.putIfAbsent(constituent.species(), reading) != null) {
      throw new IllegalStateException(constituent.species() + ": is stated twice");
    }
    constituents.put(constituent.species(), constituent);
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

  /** What is stated beside ions, alkalinity and pH. */
  SideReadings side() {
    return side;
  }

  /** Whether standard uncertainties were assumed. */
  boolean isAssumed() {
    return assumed;
  }

  /** The same readings, each with a standard uncertainty; those that state none assume one. */
  Readings withAssumedUncertainties() {
    Readings copy = copy();
    copy.assumed = true;
    copy.side = side.withAssumedUncertainties();
    copy.concentrations.replaceAll(AssumedUncertainties::of);
    copy.alkalinities.replaceAll((as, reading) -> AssumedUncertainties.of("alkalinity", reading));
    if (titration != null) {
      copy.titration = AssumedUncertainties.ofTitration(titration);
    }
    if (pH != null) {
      copy.pH = AssumedUncertainties.of("pH", pH);
    }
    return copy;
  }

  /** The same readings with one that lies between extremes at a number. */
  Readings at(String species, double number) {
    Readings copy = copy();
    copy.concentrations.computeIfPresent(species, (same, reading) -> reading.at(number));
    return copy;
  }

  /** The species of which extremes are stated. */
  Map<String, Reading.Extremes> extremes() {
    Map<String, Reading.Extremes> extremes = new LinkedHashMap<>();
    concentrations.forEach(
        (species, reading) -> {
          if (reading.extremes() != null) {
            extremes.put(species, reading.extremes());
          }
        });
    return extremes;
  }

  /** The concentration of a species by its name, mg/L. */
  Optional<Reading> concentration(String species) {
    return Optional.ofNullable(concentrations.get(species));
  }

  /** On which bases the concentrations are stated. */
  List<Constituent> constituents() {
    return List.copyOf(constituents.values());
  }

  /** On which basis the alkalinity that counts is stated; empty for a titration and for none. */
  Optional<StatedAs> alkalinityBasis() {
    if (titrated != null) {
      return Optional.empty();
    }
    return alkalinities.containsKey(StatedAs.ALKALINITY_AS_CACO3)
        ? Optional.of(StatedAs.ALKALINITY_AS_CACO3)
        : alkalinities.keySet().stream().findFirst();
  }

  Optional<PH> reportedPH() {
    return Optional.ofNullable(pH).map(reading -> PH.of(reading.number().orElseThrow()));
  }

  Temperature temperature() {
    return temperatureOfPH == null ? ReportedContents.USUAL_TEMPERATURE : temperatureOfPH;
  }

  /** Everything that is stated, for a comparison with another report. */
  List<Object> all() {
    List<Object> all =
        new ArrayList<>(
            List.of(
                Map.copyOf(concentrations), Map.copyOf(constituents), Map.copyOf(alkalinities)));
    for (Object each : new Object[] {titrated, titration, pH, temperatureOfPH}) {
      all.add(Optional.ofNullable(each));
    }
    all.addAll(side.all());
    all.add(assumed);
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
    if (isTitratedTwice()) {
      Reading base = side.find(SideReadings.Kind.BASE_CAPACITY).orElseThrow();
      return new ReportedContents(
          concentrations,
          null,
          side.find(SideReadings.Kind.ACID_CAPACITY).orElseThrow(),
          METHYL_ORANGE,
          Reading.converted(
              -base.number().orElseThrow(), Optional.empty(), 1, base.how() + ", to pH 8.2"),
          null,
          temperature(),
          side,
          null);
    }
    return new ReportedContents(
        concentrations,
        alkalinity(),
        titration,
        titrated == null ? null : titrated.endPoint(),
        null,
        pH,
        temperature(),
        side,
        carbonDioxide());
  }

  /** Acid and base capacity, and neither a pH nor another alkalinity: they tell both. */
  private boolean isTitratedTwice() {
    return pH == null
        && titrated == null
        && alkalinities.isEmpty()
        && side.find(SideReadings.Kind.ACID_CAPACITY).isPresent()
        && side.find(SideReadings.Kind.BASE_CAPACITY).isPresent();
  }

  /** The alkalinity that counts, mg/L as CaCO3: bicarbonate with the carbonate beside it. */
  private @Nullable Reading alkalinity() {
    Reading stated =
        alkalinities.getOrDefault(
            StatedAs.ALKALINITY_AS_CACO3, alkalinities.get(StatedAs.BICARBONATE));
    Optional<Double> carbonate = side.number(SideReadings.Kind.CARBONATE);
    if (stated != null
        && carbonate.isPresent()
        && !alkalinities.containsKey(StatedAs.ALKALINITY_AS_CACO3)) {
      return Reading.converted(
          stated.number().orElseThrow() + carbonateAsCaCO3(),
          stated.standardUncertainty().isPresent()
              ? Optional.of(stated.standardUncertainty().getAsDouble())
              : Optional.empty(),
          1,
          stated.how() + ", and as carbonate, " + carbonate.get() + " mg/L");
    }
    if (stated == null && titrated == null) {
      return side.find(SideReadings.Kind.ACID_CAPACITY)
          .map(
              capacity ->
                  Reading.converted(
                      capacity.number().orElseThrow(),
                      capacity.standardUncertainty().isPresent()
                          ? Optional.of(capacity.standardUncertainty().getAsDouble())
                          : Optional.empty(),
                      CarbonateAlkalinity.ofMilliequivalentsPerLitre(1)
                          .inMilligramsPerLitreAsCaCO3(),
                      capacity.how() + ", taken as bicarbonate, since no pH is reported"))
          .orElse(null);
    }
    return stated;
  }

  /** The carbonate that is reported beside bicarbonate; 0 where none is. */
  private double carbonateAsCaCO3() {
    return side.number(SideReadings.Kind.CARBONATE)
        .map(
            milligrams ->
                CarbonateAlkalinity.ofMilliequivalentsPerLitre(
                        milligrams * Ion.CARBONATE.milliequivalentsPerMilligram())
                    .inMilligramsPerLitreAsCaCO3())
        .orElse(0.0);
  }

  /** Without a pH: total carbon dioxide, mmol/L, by both capacities. */
  private @Nullable Reading carbonDioxide() {
    Optional<Reading> acid = side.find(SideReadings.Kind.ACID_CAPACITY);
    Optional<Reading> base = side.find(SideReadings.Kind.BASE_CAPACITY);
    if (pH != null || acid.isEmpty() || base.isEmpty()) {
      return null;
    }
    return Reading.converted(
        acid.get().number().orElseThrow() + base.get().number().orElseThrow(),
        Optional.empty(),
        1,
        "acid capacity to pH 4.3 + base capacity to pH 8.2 (m - p)");
  }

  boolean statesCarbonDioxide() {
    return carbonDioxide() != null;
  }

  boolean isTitrated() {
    return titrated != null || isTitratedTwice();
  }

  /**
   * Checks that alkalinities on several bases say the same, to the rounding of reports.
   *
   * @param water the water, whose carbonate alkalinity counts if one was titrated
   * @throws IllegalArgumentException if they differ by more than 1 mg/L as CaCO3 and by more than 1
   *     %
   */
  void requireAgreement(Water water) {
    List<Double> stated = new ArrayList<>();
    alkalinities.forEach(
        (as, reading) ->
            stated.add(
                reading.number().orElseThrow()
                    + (as == StatedAs.BICARBONATE ? carbonateAsCaCO3() : 0)));
    if (titrated == null) {
      // With a pH it is the titration.
      side.number(SideReadings.Kind.ACID_CAPACITY)
          .map(CarbonateAlkalinity::ofMilliequivalentsPerLitre)
          .ifPresent(capacity -> stated.add(capacity.inMilligramsPerLitreAsCaCO3()));
      if (stated.size() < 2) {
        return;
      }
    }
    if (stated.isEmpty() || !water.alkalinity().isStated()) {
      // Where the balance has no solution the water says so; there is nothing to compare with.
      return;
    }
    double first = water.alkalinity().number();
    for (double own : stated) {
      if (Math.abs(first - own) > Math.max(1, 0.01 * first)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "alkalinity: %.4g and %.4g mg/L as CaCO3 on two bases is not possible; they may"
                    + " differ by 1 mg/L or 1 %%",
                first,
                own));
      }
    }
  }
}
