package org.brewchem.water;

import java.util.ArrayList;
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
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.CarbonateSystem;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Permissions;
import org.brewchem.substance.Salt;
import org.brewchem.substance.Use;
import org.jspecify.annotations.Nullable;

/**
 * A water analysis: the ions, the alkalinity and the pH that a report states, and what follows from
 * them.
 *
 * <p>Made with {@link #reported()}. What a report does not state stays missing, and a figure that
 * needs it is empty; nothing is ever taken as 0. The figures (hardness, residual alkalinity,
 * ratios, ion balance) take the report at its word. Where pH matters, {@link #toSolution} hands the
 * water over to the proton balance.
 *
 * <p>The alkalinity counts as carbonate alkalinity, whether it is stated as bicarbonate or as
 * CaCO3. Waters that were blended, diluted or salted carry on their total carbon dioxide instead of
 * a pH, because a pH does not mix.
 *
 * <p>Immutable and thread-safe.
 */
public final class WaterAnalysis {

  /** The temperature of a reported pH, when the report states none: 25 °C. */
  public static final Temperature USUAL_TEMPERATURE_OF_PH = Temperature.ofCelsius(25);

  /** The ions of an analysis in the order of a report; bicarbonate stands for the alkalinity. */
  static final List<Ion> ORDER =
      List.of(
          Ion.CALCIUM,
          Ion.MAGNESIUM,
          Ion.SODIUM,
          Ion.POTASSIUM,
          Ion.BICARBONATE,
          Ion.SULFATE,
          Ion.CHLORIDE,
          Ion.NITRATE);

  private static final List<Ion> IONS =
      ORDER.stream().filter(ion -> !ion.equals(Ion.BICARBONATE)).toList();

  private static final WaterAnalysis PURE = pure();

  /** The columns of a report that may be headed wrongly. */
  enum Stated {
    BICARBONATE,
    ALKALINITY_AS_CACO3,
    SULFATE,
    SULFATE_AS_SULFUR,
    NITRATE,
    NITRATE_AS_NITROGEN
  }

  private final Map<Ion, MassConcentration> ions;
  private final @Nullable CarbonateAlkalinity alkalinity;
  private final @Nullable PH pH;
  private final @Nullable Temperature temperatureOfPH;
  private final @Nullable AmountConcentration carriedCarbonDioxide;
  private final Set<Stated> stated;

  private WaterAnalysis(
      Map<Ion, MassConcentration> ions,
      @Nullable CarbonateAlkalinity alkalinity,
      @Nullable PH pH,
      @Nullable Temperature temperatureOfPH,
      @Nullable AmountConcentration carriedCarbonDioxide,
      Set<Stated> stated) {
    Map<Ion, MassConcentration> ordered = new LinkedHashMap<>();
    for (Ion ion : IONS) {
      MassConcentration concentration = ions.get(ion);
      if (concentration != null) {
        ordered.put(ion, concentration);
      }
    }
    this.ions = Collections.unmodifiableMap(ordered);
    this.alkalinity = alkalinity;
    this.pH = pH;
    this.temperatureOfPH = temperatureOfPH;
    this.carriedCarbonDioxide = carriedCarbonDioxide;
    this.stated = Collections.unmodifiableSet(EnumSet.copyOf(stated));
  }

  private static WaterAnalysis pure() {
    Map<Ion, MassConcentration> none = new LinkedHashMap<>();
    IONS.forEach(ion -> none.put(ion, MassConcentration.ofMilligramsPerLitre(0)));
    return derived(
        none,
        CarbonateAlkalinity.ofMilliequivalentsPerLitre(0),
        AmountConcentration.ofMolesPerLitre(0));
  }

  /**
   * Starts an analysis with everything missing.
   *
   * @return a builder
   */
  public static Builder reported() {
    return new Builder();
  }

  /** Collects what a report states; each figure once. Mutable, for one thread. */
  public static final class Builder {

    private final Map<Ion, MassConcentration> ions = new LinkedHashMap<>();
    private final Map<Stated, CarbonateAlkalinity> alkalinities = new EnumMap<>(Stated.class);
    private final Set<Stated> stated = EnumSet.noneOf(Stated.class);
    private @Nullable TitrationAlkalinity titrated;
    private @Nullable PH pH;
    private @Nullable Temperature temperatureOfPH;

    private Builder() {}

    private Builder ion(Ion ion, MassConcentration concentration) {
      Objects.requireNonNull(concentration, ion.name());
      if (ions.putIfAbsent(ion, concentration) != null) {
        throw new IllegalStateException(ion.name() + ": is stated twice");
      }
      return this;
    }

    private Builder ion(Ion ion, MassConcentration concentration, Stated as) {
      stated.add(as);
      return ion(ion, concentration);
    }

    /**
     * States the calcium.
     *
     * @param concentration as Ca
     * @return this builder
     * @throws IllegalStateException if it is stated already
     */
    public Builder calcium(MassConcentration concentration) {
      return ion(Ion.CALCIUM, concentration);
    }

    /**
     * States the magnesium.
     *
     * @param concentration as Mg
     * @return this builder
     * @throws IllegalStateException if it is stated already
     */
    public Builder magnesium(MassConcentration concentration) {
      return ion(Ion.MAGNESIUM, concentration);
    }

    /**
     * States the sodium.
     *
     * @param concentration as Na
     * @return this builder
     * @throws IllegalStateException if it is stated already
     */
    public Builder sodium(MassConcentration concentration) {
      return ion(Ion.SODIUM, concentration);
    }

    /**
     * States the potassium.
     *
     * @param concentration as K
     * @return this builder
     * @throws IllegalStateException if it is stated already
     */
    public Builder potassium(MassConcentration concentration) {
      return ion(Ion.POTASSIUM, concentration);
    }

    /**
     * States the sulfate.
     *
     * @param concentration as SO4
     * @return this builder
     * @throws IllegalStateException if the sulfate is stated already
     */
    public Builder sulfate(MassConcentration concentration) {
      return ion(Ion.SULFATE, concentration, Stated.SULFATE);
    }

    /**
     * States the sulfate as the sulfur in it.
     *
     * @param concentration as S
     * @return this builder
     * @throws IllegalStateException if the sulfate is stated already
     */
    public Builder sulfateAsSulfur(MassConcentration concentration) {
      return ion(
          Ion.SULFATE, concentration.times(Bases.SULFATE_PER_SULFUR), Stated.SULFATE_AS_SULFUR);
    }

    /**
     * States the chloride.
     *
     * @param concentration as Cl
     * @return this builder
     * @throws IllegalStateException if it is stated already
     */
    public Builder chloride(MassConcentration concentration) {
      return ion(Ion.CHLORIDE, concentration);
    }

    /**
     * States the nitrate.
     *
     * @param concentration as NO3
     * @return this builder
     * @throws IllegalStateException if the nitrate is stated already
     */
    public Builder nitrate(MassConcentration concentration) {
      return ion(Ion.NITRATE, concentration, Stated.NITRATE);
    }

    /**
     * States the nitrate as the nitrogen in it.
     *
     * @param concentration as N
     * @return this builder
     * @throws IllegalStateException if the nitrate is stated already
     */
    public Builder nitrateAsNitrogen(MassConcentration concentration) {
      return ion(
          Ion.NITRATE, concentration.times(Bases.NITRATE_PER_NITROGEN), Stated.NITRATE_AS_NITROGEN);
    }

    private Builder alkalinity(Stated as, CarbonateAlkalinity value) {
      if (alkalinities.putIfAbsent(as, value) != null) {
        throw new IllegalStateException("alkalinity: is stated twice on the same basis");
      }
      stated.add(as);
      return this;
    }

    /**
     * States the alkalinity as bicarbonate, as most reports do: they turn a titration into
     * bicarbonate and leave carbonate out of account.
     *
     * @param concentration as HCO3-
     * @return this builder
     * @throws IllegalStateException if it is stated as bicarbonate already
     */
    public Builder bicarbonate(MassConcentration concentration) {
      return alkalinity(Stated.BICARBONATE, CarbonateAlkalinity.fromBicarbonate(concentration));
    }

    /**
     * States the alkalinity as calcium carbonate, from a titration to its equivalence point. It may
     * stand beside a bicarbonate that says the same, and then counts.
     *
     * @param concentration as CaCO3
     * @return this builder
     * @throws IllegalStateException if it is stated as calcium carbonate already
     */
    public Builder alkalinityAsCaCO3(MassConcentration concentration) {
      return alkalinity(Stated.ALKALINITY_AS_CACO3, CarbonateAlkalinity.fromCaCO3(concentration));
    }

    /**
     * States an alkalinity that was titrated to a stated pH, such as the acid capacity of a German
     * report to pH 4.3. {@link #build()} finds the carbonate alkalinity of which that is the
     * titration, for which it needs the pH of the water.
     *
     * @param alkalinity the alkalinity with its end point
     * @return this builder
     * @throws IllegalStateException if a titration is stated already
     */
    public Builder titrationAlkalinity(TitrationAlkalinity alkalinity) {
      if (titrated != null) {
        throw new IllegalStateException("alkalinity: is stated twice on the same basis");
      }
      titrated = alkalinity;
      return this;
    }

    /**
     * States the pH of the water, measured at 25 °C.
     *
     * @param measured the pH
     * @return this builder
     * @throws IllegalStateException if it is stated already
     */
    public Builder pH(PH measured) {
      return pH(measured, USUAL_TEMPERATURE_OF_PH);
    }

    /**
     * States the pH of the water.
     *
     * @param measured the pH
     * @param temperature the temperature of the water when it was measured, 0 to 100 °C
     * @return this builder
     * @throws IllegalStateException if it is stated already
     * @throws IllegalArgumentException if the temperature is out of range
     */
    public Builder pH(PH measured, Temperature temperature) {
      if (pH != null) {
        throw new IllegalStateException("pH: is stated twice");
      }
      Checks.inRange("temperature of the pH", temperature.inCelsius(), "°C", 0, 100);
      pH = measured;
      temperatureOfPH = temperature;
      return this;
    }

    /**
     * Makes the analysis.
     *
     * @return the analysis
     * @throws IllegalArgumentException if alkalinities on several bases differ by more than 1 mg/L
     *     as CaCO3 and by more than 1 %, the rounding of reports; if a titration to a stated pH
     *     cannot be right at the pH of the water
     * @throws IllegalStateException if a titration to a stated pH is given without the pH of the
     *     water
     */
    public WaterAnalysis build() {
      CarbonateAlkalinity counted = null;
      List<CarbonateAlkalinity> all = new ArrayList<>();
      if (titrated != null) {
        all.add(carbonateAlkalinityOf(titrated));
      }
      for (Stated as : List.of(Stated.ALKALINITY_AS_CACO3, Stated.BICARBONATE)) {
        Optional.ofNullable(alkalinities.get(as)).ifPresent(all::add);
      }
      for (CarbonateAlkalinity each : all) {
        counted = counted == null ? each : agreeing(counted, each);
      }
      return new WaterAnalysis(ions, counted, pH, temperatureOfPH, null, stated);
    }

    private CarbonateAlkalinity carbonateAlkalinityOf(TitrationAlkalinity titration) {
      if (pH == null || temperatureOfPH == null) {
        throw new IllegalStateException(
            "pH: is needed to make a carbonate alkalinity of " + titration);
      }
      Solution others = strongIons(ions, temperatureOfPH, Chemistry.standard());
      AmountConcentration total = CarbonateSystem.totalCarbonDioxide(others, titration, pH);
      return CarbonateSystem.carbonateAlkalinity(others.with(Component.CARBONATE, total), pH);
    }

    private static CarbonateAlkalinity agreeing(
        CarbonateAlkalinity one, CarbonateAlkalinity other) {
      double first = one.inMilligramsPerLitreAsCaCO3();
      double second = other.inMilligramsPerLitreAsCaCO3();
      if (Math.abs(first - second) > Math.max(1, 0.01 * first)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "alkalinity: %.4g and %.4g mg/L as CaCO3 on two bases is not possible; they may"
                    + " differ by 1 mg/L or 1 %%",
                first,
                second));
      }
      return one;
    }
  }

  /**
   * Returns the calcium.
   *
   * @return as Ca; empty when it is missing
   */
  public Optional<MassConcentration> calcium() {
    return concentration(Ion.CALCIUM);
  }

  /**
   * Returns the magnesium.
   *
   * @return as Mg; empty when it is missing
   */
  public Optional<MassConcentration> magnesium() {
    return concentration(Ion.MAGNESIUM);
  }

  /**
   * Returns the sodium.
   *
   * @return as Na; empty when it is missing
   */
  public Optional<MassConcentration> sodium() {
    return concentration(Ion.SODIUM);
  }

  /**
   * Returns the potassium.
   *
   * @return as K; empty when it is missing
   */
  public Optional<MassConcentration> potassium() {
    return concentration(Ion.POTASSIUM);
  }

  /**
   * Returns the sulfate.
   *
   * @return as SO4, on whatever basis it was stated; empty when it is missing
   */
  public Optional<MassConcentration> sulfate() {
    return concentration(Ion.SULFATE);
  }

  /**
   * Returns the chloride.
   *
   * @return as Cl; empty when it is missing
   */
  public Optional<MassConcentration> chloride() {
    return concentration(Ion.CHLORIDE);
  }

  /**
   * Returns the nitrate.
   *
   * @return as NO3, on whatever basis it was stated; empty when it is missing
   */
  public Optional<MassConcentration> nitrate() {
    return concentration(Ion.NITRATE);
  }

  private Optional<MassConcentration> concentration(Ion ion) {
    return Optional.ofNullable(ions.get(ion));
  }

  /**
   * Returns the alkalinity, counted as carbonate alkalinity.
   *
   * @return on whatever basis it was stated; empty when it is missing
   */
  public Optional<CarbonateAlkalinity> alkalinity() {
    return Optional.ofNullable(alkalinity);
  }

  /**
   * Returns the pH as reported.
   *
   * @return the pH; empty when it is missing, and for a water that was blended, diluted or salted
   */
  public Optional<PH> pH() {
    return Optional.ofNullable(pH);
  }

  /**
   * Returns the ions that are missing, of calcium, magnesium, sodium, potassium, bicarbonate (the
   * alkalinity), sulfate, chloride and nitrate.
   *
   * @return an unmodifiable list in that order
   */
  public List<Ion> missing() {
    return ionBalance().missing();
  }

  /**
   * Returns the calcium hardness.
   *
   * @return the calcium in equivalents; empty when it is missing
   */
  public Optional<Hardness> calciumHardness() {
    return hardness(Ion.CALCIUM);
  }

  /**
   * Returns the magnesium hardness.
   *
   * @return the magnesium in equivalents; empty when it is missing
   */
  public Optional<Hardness> magnesiumHardness() {
    return hardness(Ion.MAGNESIUM);
  }

  private Optional<Hardness> hardness(Ion ion) {
    return concentration(ion)
        .map(
            concentration ->
                Hardness.ofMilliequivalentsPerLitre(Equivalents.of(ion, concentration)));
  }

  /**
   * Returns the total hardness.
   *
   * @return calcium and magnesium hardness together; empty when either is missing
   */
  public Optional<Hardness> totalHardness() {
    return calciumHardness()
        .flatMap(calcium -> magnesiumHardness().map(magnesium -> calcium.plus(magnesium)));
  }

  /**
   * Returns the temporary hardness, which goes with bicarbonate and can be boiled out.
   *
   * @return the lesser of total hardness and alkalinity, in equivalents; empty when calcium,
   *     magnesium or alkalinity is missing
   */
  public Optional<Hardness> temporaryHardness() {
    return totalHardness()
        .flatMap(
            total ->
                alkalinity()
                    .map(
                        a ->
                            Hardness.ofMilliequivalentsPerLitre(
                                Math.min(
                                    total.inMilliequivalentsPerLitre(),
                                    a.inMilliequivalentsPerLitre()))));
  }

  /**
   * Returns the permanent hardness, which stays.
   *
   * @return total less temporary hardness; empty when calcium, magnesium or alkalinity is missing
   */
  public Optional<Hardness> permanentHardness() {
    return totalHardness()
        .flatMap(total -> temporaryHardness().map(temporary -> total.minus(temporary)));
  }

  /**
   * Returns the residual alkalinity after Kolbach.
   *
   * @return alkalinity - calcium hardness / 3.5 - magnesium hardness / 7; empty when calcium,
   *     magnesium or alkalinity is missing
   */
  public Optional<ResidualAlkalinity> residualAlkalinity() {
    return kolbach().map(KolbachResidualAlkalinity::value);
  }

  /**
   * Returns the residual alkalinity after Kolbach with the arithmetic behind it.
   *
   * @return the result; empty when calcium, magnesium or alkalinity is missing
   */
  public Optional<KolbachResidualAlkalinity> kolbach() {
    return alkalinity()
        .flatMap(
            a ->
                calciumHardness()
                    .flatMap(
                        calcium ->
                            magnesiumHardness()
                                .map(
                                    magnesium ->
                                        KolbachResidualAlkalinity.of(a, calcium, magnesium))));
  }

  /**
   * Returns the ratio of sulfate to chloride.
   *
   * @return a value, or why there is none
   */
  public SulfateToChloride sulfateToChloride() {
    return SulfateToChloride.of(sulfate(), chloride());
  }

  /**
   * Returns the ion balance of what is reported.
   *
   * @return the balance
   */
  public IonBalance ionBalance() {
    Map<Ion, Double> equivalents = new LinkedHashMap<>();
    List<Ion> missing = new ArrayList<>();
    for (Ion ion : ORDER) {
      Optional<Double> value =
          ion.equals(Ion.BICARBONATE)
              ? alkalinity().map(CarbonateAlkalinity::inMilliequivalentsPerLitre)
              : concentration(ion).map(concentration -> Equivalents.of(ion, concentration));
      value.ifPresentOrElse(v -> equivalents.put(ion, v), () -> missing.add(ion));
    }
    return IonBalance.of(equivalents, missing);
  }

  /**
   * Returns what the analysis tells about itself.
   *
   * @return an unmodifiable list, the ion balance first
   */
  public List<WaterFinding> findings() {
    return WaterFindings.of(this);
  }

  Set<Stated> stated() {
    return stated;
  }

  Map<Ion, MassConcentration> ions() {
    return ions;
  }

  /**
   * Shows the arithmetic of hardness, residual alkalinity, sulfate to chloride and ion balance.
   *
   * @return one line per step, each ended by a line feed
   */
  public String explain() {
    StringBuilder text = new StringBuilder("equivalents = concentration / molar mass x charge\n");
    ions.forEach(
        (ion, concentration) ->
            text.append(
                String.format(
                    Locale.ROOT,
                    "  %s: %s mg/L / %s g/mol x %d = %s mEq/L\n",
                    ion.name(),
                    Lines.number(concentration.inMilligramsPerLitre()),
                    Lines.number(ion.molarMass().inGramsPerMole()),
                    Math.abs(ion.charge()),
                    Lines.number(Equivalents.of(ion, concentration)))));
    alkalinity()
        .ifPresent(
            a ->
                text.append(
                    String.format(
                        Locale.ROOT,
                        "  alkalinity: %s mg/L as CaCO3 = %s mEq/L\n",
                        Lines.number(a.inMilligramsPerLitreAsCaCO3()),
                        Lines.number(a.inMilliequivalentsPerLitre()))));
    totalHardness()
        .ifPresent(
            total ->
                text.append("total hardness = calcium + magnesium = ").append(Lines.of(total)));
    temporaryHardness()
        .ifPresent(
            temporary ->
                text.append("temporary hardness = the lesser of total hardness and alkalinity = ")
                    .append(Lines.of(temporary)));
    permanentHardness()
        .ifPresent(
            permanent ->
                text.append("permanent hardness = the rest = ").append(Lines.of(permanent)));
    kolbach().ifPresent(result -> text.append(result.explain()));
    text.append("sulfate to chloride: ").append(sulfateToChloride()).append('\n');
    return text.append(ionBalance().explain()).toString();
  }

  /**
   * Returns the total carbon dioxide: what alkalinity and pH amount to by the proton balance of the
   * standard chemistry, or what a blended, diluted or salted water carries on.
   *
   * @return CO2, bicarbonate and carbonate together; empty when it is not known, because the pH or
   *     the alkalinity is missing
   * @throws IllegalArgumentException if pH and alkalinity contradict each other
   */
  public Optional<AmountConcentration> totalCarbonDioxide() {
    return totalCarbonDioxide(Chemistry.standard());
  }

  private Optional<AmountConcentration> totalCarbonDioxide(Chemistry chemistry) {
    if (carriedCarbonDioxide != null || alkalinity == null || pH == null) {
      return Optional.ofNullable(carriedCarbonDioxide);
    }
    return Optional.of(
        CarbonateSystem.totalCarbonDioxide(
            strongIons(ions, temperatureOfPH(), chemistry), alkalinity, pH));
  }

  Temperature temperatureOfPH() {
    return temperatureOfPH == null ? USUAL_TEMPERATURE_OF_PH : temperatureOfPH;
  }

  /**
   * Returns the water as a solution under the standard chemistry.
   *
   * @param temperature the temperature that the water is to have, 0 to 100 °C
   * @return the solution, closed to the air
   * @throws IllegalStateException if the alkalinity is missing
   * @throws IllegalArgumentException if pH and alkalinity contradict each other, or the temperature
   *     is out of range
   * @see #toSolution(Temperature, Chemistry)
   */
  public Solution toSolution(Temperature temperature) {
    return toSolution(temperature, Chemistry.standard());
  }

  /**
   * Returns the water as a solution.
   *
   * <p>The total carbon dioxide follows from alkalinity and pH at the temperature of the pH. When
   * the pH is missing the water is assumed to hold as much carbon dioxide, in all its forms, as it
   * has alkalinity: bicarbonate alone, which lies near pH 8.3, or lower where calcium pairs with
   * carbonate. Ions that are missing, and the error of the ion balance, are carried together by an
   * inert univalent ion, so that the water has its reported pH at the temperature of the pH.
   *
   * @param temperature the temperature that the water is to have, 0 to 100 °C
   * @param chemistry the chemistry
   * @return the solution, closed to the air
   * @throws IllegalStateException if the alkalinity is missing
   * @throws IllegalArgumentException if pH and alkalinity contradict each other, or the temperature
   *     is out of range
   */
  public Solution toSolution(Temperature temperature, Chemistry chemistry) {
    if (alkalinity == null) {
      throw new IllegalStateException(
          "alkalinity: is missing; without it the proton balance of a water is not known");
    }
    Solution others = strongIons(ions, temperatureOfPH(), chemistry);
    AmountConcentration total =
        totalCarbonDioxide(chemistry)
            .orElse(
                AmountConcentration.ofMillimolesPerLitre(alkalinity.inMilliequivalentsPerLitre()));
    Solution water = others.with(Component.CARBONATE, total);
    if (pH != null) {
      return water.closedTo(pH).heldAt(temperature);
    }
    if (alkalinity.inMilliequivalentsPerLitre() == 0) {
      return water.withInertCharge(strongIonDifference().times(-1)).heldAt(temperature);
    }
    return water.closedTo(CarbonateSystem.pH(water, alkalinity)).heldAt(temperature);
  }

  private ChargeConcentration strongIonDifference() {
    ChargeConcentration sum = ChargeConcentration.ofMilliequivalentsPerLitre(0);
    for (Map.Entry<Ion, MassConcentration> entry : ions.entrySet()) {
      sum =
          sum.plus(
              Equivalents.amount(entry.getKey(), entry.getValue())
                  .timesCharge(entry.getKey().charge()));
    }
    return sum;
  }

  private static Solution strongIons(
      Map<Ion, MassConcentration> ions, Temperature temperature, Chemistry chemistry) {
    Solution solution = Solution.at(temperature).under(chemistry);
    for (Map.Entry<Ion, MassConcentration> entry : ions.entrySet()) {
      solution =
          solution.with(entry.getKey(), Equivalents.amount(entry.getKey(), entry.getValue()));
    }
    return solution;
  }

  /**
   * Returns the titration alkalinity of the water: the strong acid from its pH to an end point by
   * the proton balance, without dilution by the titrant.
   *
   * @param endPoint the pH that the titration ends at
   * @param temperature the temperature of the titration, 0 to 100 °C
   * @return the alkalinity with its end point
   * @throws IllegalStateException if the alkalinity is missing
   * @throws IllegalArgumentException if pH and alkalinity contradict each other, or the temperature
   *     is out of range
   */
  public TitrationAlkalinity titrationAlkalinity(PH endPoint, Temperature temperature) {
    return CarbonateSystem.titrationAlkalinity(toSolution(temperature), endPoint);
  }

  /**
   * Mixes volumes of two waters, volumes taken as additive. Ions, alkalinity and total carbon
   * dioxide mix exactly; what is missing in one of them is missing in the mixture.
   *
   * @param own the volume of this water
   * @param other the other water
   * @param volume the volume of the other
   * @return the mixture
   * @throws IllegalArgumentException if both volumes are zero
   */
  public WaterAnalysis mixed(Volume own, WaterAnalysis other, Volume volume) {
    double all = Checks.positive("volumes together", own.plus(volume).inLitres(), "L");
    return blended(own.inLitres() / all, other, volume.inLitres() / all);
  }

  private WaterAnalysis blended(double ownShare, WaterAnalysis other, double share) {
    Map<Ion, MassConcentration> sum = new LinkedHashMap<>();
    ions.forEach(
        (ion, concentration) ->
            other
                .concentration(ion)
                .ifPresent(
                    more -> sum.put(ion, concentration.times(ownShare).plus(more.times(share)))));
    CarbonateAlkalinity mixedAlkalinity =
        alkalinity()
            .flatMap(a -> other.alkalinity().map(b -> a.times(ownShare).plus(b.times(share))))
            .orElse(null);
    AmountConcentration carbonDioxide =
        totalCarbonDioxide()
            .flatMap(
                a -> other.totalCarbonDioxide().map(b -> a.times(ownShare).plus(b.times(share))))
            .orElse(null);
    return derived(sum, mixedAlkalinity, carbonDioxide);
  }

  private static WaterAnalysis derived(
      Map<Ion, MassConcentration> ions,
      @Nullable CarbonateAlkalinity alkalinity,
      @Nullable AmountConcentration carbonDioxide) {
    return new WaterAnalysis(
        ions, alkalinity, null, null, carbonDioxide, EnumSet.noneOf(Stated.class));
  }

  /**
   * Dilutes with pure water, which holds no carbon dioxide either.
   *
   * @param factor final volume over own volume, 1 or more
   * @return the diluted water; what is missing stays missing
   * @throws IllegalArgumentException if the factor is below 1 or not finite
   */
  public WaterAnalysis diluted(double factor) {
    Checks.inRange("dilution factor", factor, "", 1, Double.MAX_VALUE);
    return blended(1 / factor, PURE, 1 - 1 / factor);
  }

  /**
   * Adds a salt, which dissolves wholly and without changing the volume. Chalk does so only with
   * much carbon dioxide or acid (common practice, no source).
   *
   * @param salt the salt with its water of hydration
   * @param concentration the mass of salt per volume of water
   * @return the new water; an ion that was missing stays missing
   * @throws IllegalArgumentException if the salt brings something that an analysis does not hold,
   *     or is none that may be dosed into brewing water; see {@link Permissions}
   */
  public WaterAnalysis with(Salt salt, MassConcentration concentration) {
    return adding(salt, concentration);
  }

  /**
   * Adds a base, which dissolves wholly and without changing the volume. Bicarbonate and carbonate
   * of sodium add their equivalents to the alkalinity. A hydroxide takes up carbon dioxide and
   * bicarbonate, so that its effect on the carbonate alkalinity comes from the proton balance at 25
   * °C. What it makes precipitate is not counted.
   *
   * @param base the base
   * @param concentration the mass of base per volume of water
   * @return the new water; an ion that was missing stays missing
   * @throws IllegalArgumentException if the base brings something that an analysis does not hold
   * @throws IllegalStateException if the base is a hydroxide and the total carbon dioxide of this
   *     water is not known
   */
  public WaterAnalysis with(Base base, MassConcentration concentration) {
    if (base.components().containsKey(Component.CARBONATE)) {
      return adding(base, concentration);
    }
    if (totalCarbonDioxide().isEmpty()) {
      throw new IllegalStateException(
          base.name() + ": pH and alkalinity of the water are needed, and one is missing");
    }
    AmountConcentration moles = AmountConcentration.from(concentration, base.molarMass());
    Solution after = toSolution(USUAL_TEMPERATURE_OF_PH).with(base, moles);
    WaterAnalysis simply = adding(base, concentration);
    return derived(
        simply.ions, CarbonateSystem.carbonateAlkalinity(after), simply.carriedCarbonDioxide);
  }

  private WaterAnalysis adding(Compound compound, MassConcentration concentration) {
    Permissions.of(compound, Use.BREWING_WATER).orThrow();
    AmountConcentration moles = AmountConcentration.from(concentration, compound.molarMass());
    Map<Ion, MassConcentration> sum = new LinkedHashMap<>(ions);
    double equivalentsPerMole = 0;
    for (Map.Entry<Component, Double> entry : compound.components().entrySet()) {
      if (entry.getKey().equals(Component.CARBONATE)) {
        continue;
      }
      Ion ion = ionOf(compound, entry.getKey());
      equivalentsPerMole += ion.charge() * entry.getValue();
      sum.computeIfPresent(
          ion, (same, before) -> before.plus(moles.times(entry.getValue()).times(ion.molarMass())));
    }
    double equivalents = moles.inMillimolesPerLitre() * equivalentsPerMole;
    double carbonate = compound.components().getOrDefault(Component.CARBONATE, 0.0);
    return derived(
        sum,
        alkalinity()
            .map(
                a ->
                    CarbonateAlkalinity.ofMilliequivalentsPerLitre(
                        a.inMilliequivalentsPerLitre() + equivalents))
            .orElse(null),
        totalCarbonDioxide().map(total -> total.plus(moles.times(carbonate))).orElse(null));
  }

  private static Ion ionOf(Compound compound, Component component) {
    return IONS.stream()
        .filter(ion -> ion.components().containsKey(component))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    compound.name()
                        + ": brings "
                        + component.name()
                        + ", which a water analysis does not hold; add it to the solution"));
  }

  /**
   * Finds how much of an acid brings the water to a pH, closed to the air.
   *
   * @param acid the acid
   * @param target the pH to reach, below that of the water
   * @param temperature the temperature of the water, 0 to 100 °C
   * @return the dose and what it does
   * @throws IllegalArgumentException if the water lies at or below the target already, or the acid
   *     is none that may be dosed into brewing water; see {@link Permissions}
   * @throws IllegalStateException if the alkalinity is missing
   * @throws org.brewchem.solution.NoSolutionException if no dose reaches the target
   */
  public Acidification acidDose(Acid acid, PH target, Temperature temperature) {
    return Acidification.to(this, acid, target, temperature);
  }

  /**
   * Finds how much of an acid leaves a carbonate alkalinity, closed to the air.
   *
   * @param acid the acid
   * @param target the alkalinity to leave, above 0 and below that of the water
   * @param temperature the temperature of the water, 0 to 100 °C
   * @return the dose and what it does
   * @throws IllegalArgumentException if the target is not between 0 and the alkalinity of the
   *     water, or the acid is none that may be dosed into brewing water; see {@link Permissions}
   * @throws IllegalStateException if the alkalinity is missing
   */
  public Acidification acidDose(Acid acid, CarbonateAlkalinity target, Temperature temperature) {
    return Acidification.to(this, acid, target, temperature);
  }

  /**
   * Finds how much of an acid leaves a titration alkalinity. The acid counts with what it delivers
   * at the end point, so that with the pH of a mash as the end point it is the acid that counts in
   * the mash.
   *
   * @param acid the acid
   * @param target the alkalinity to leave with its end point, below that of the water
   * @param temperature the temperature of the water, 0 to 100 °C
   * @return the dose and what it does
   * @throws IllegalArgumentException if the target is not below the titration alkalinity of the
   *     water, or out of reach of the acid, or the acid is none that may be dosed into brewing
   *     water; see {@link Permissions}
   * @throws IllegalStateException if the alkalinity is missing
   */
  public Acidification acidDose(Acid acid, TitrationAlkalinity target, Temperature temperature) {
    return Acidification.to(this, acid, target, temperature);
  }

  /**
   * Finds how much of an acid leaves a residual alkalinity after Kolbach, of the carbonate
   * alkalinity that is left.
   *
   * @param acid the acid
   * @param target the residual alkalinity to leave, below that of the water
   * @param temperature the temperature of the water, 0 to 100 °C
   * @return the dose and what it does
   * @throws IllegalArgumentException if the target is not below the residual alkalinity of the
   *     water, or so low that no carbonate alkalinity would be left, or the acid is none that may
   *     be dosed into brewing water; see {@link Permissions}
   * @throws IllegalStateException if calcium, magnesium or alkalinity is missing
   */
  public Acidification acidDose(Acid acid, ResidualAlkalinity target, Temperature temperature) {
    return Acidification.to(this, acid, target, temperature);
  }

  /**
   * Tells whether the other object is an analysis that states the same.
   *
   * @param object the object to compare with
   * @return true if all figures are equal
   */
  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof WaterAnalysis other
        && ions.equals(other.ions)
        && Objects.equals(alkalinity, other.alkalinity)
        && Objects.equals(pH, other.pH)
        && Objects.equals(temperatureOfPH, other.temperatureOfPH)
        && Objects.equals(carriedCarbonDioxide, other.carriedCarbonDioxide)
        && stated.equals(other.stated);
  }

  @Override
  public int hashCode() {
    return Objects.hash(ions, alkalinity, pH, temperatureOfPH, carriedCarbonDioxide);
  }

  /**
   * Returns what is known.
   *
   * @return such as {@code calcium 92 mg/L, magnesium 11 mg/L, alkalinity 215 mg/L as CaCO3, pH
   *     7.6}
   */
  @Override
  public String toString() {
    List<String> parts = new ArrayList<>();
    ions.forEach((ion, concentration) -> parts.add(ion.name() + " " + concentration));
    alkalinity().ifPresent(a -> parts.add("alkalinity " + a));
    pH().ifPresent(measured -> parts.add(measured.toString()));
    return parts.isEmpty() ? "nothing reported" : String.join(", ", parts);
  }
}
