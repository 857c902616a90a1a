package org.brewchem.water;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Ion;
import org.jspecify.annotations.Nullable;

/**
 * A water report as a laboratory prints it: the ions, the alkalinity and the pH, each on the basis
 * on which it is stated, with its standard uncertainty where the report states one.
 *
 * <p>Made with {@link #reported()}. What a report does not state stays missing and is never
 * silently taken as 0: where the ion balance has to count an ion as absent, a notice says so.
 * {@link #notices()} tells whether the report can be right, and {@link #water()} is the liquid that
 * it describes.
 *
 * <p>The alkalinity counts as carbonate alkalinity, whether it is stated as bicarbonate or as
 * CaCO3; one that was titrated to a stated pH counts as what it is. Immutable and thread-safe.
 */
public final class WaterReport {

  /** The temperature of a reported pH, when the report states none: 25 °C. */
  public static final Temperature USUAL_TEMPERATURE_OF_PH = ReportedContents.USUAL_TEMPERATURE;

  private final Readings readings;
  private final ReportedContents contents;
  private final Water water;

  private WaterReport(Readings readings, ReportedContents contents, Water water) {
    this.readings = readings;
    this.contents = contents;
    this.water = water;
  }

  /**
   * Starts a report with everything missing.
   *
   * @return a builder
   */
  public static Builder reported() {
    return new Builder(new Readings());
  }

  /** Collects what a report states; each figure once. Mutable, for one thread. */
  public static final class Builder extends SideEntries<Builder> {

    private final Readings readings;

    private Builder(Readings readings) {
      super(readings);
      this.readings = readings;
    }

    @Override
    Builder self() {
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
      readings.alkalinity(
          StatedAs.BICARBONATE,
          CarbonateAlkalinity.fromBicarbonate(
              Objects.requireNonNull(concentration, "concentration")),
          null,
          "reported as bicarbonate, " + concentration);
      return this;
    }

    /**
     * States the alkalinity as bicarbonate, with its uncertainty.
     *
     * @param concentration as HCO3-
     * @param standardUncertainty its standard uncertainty, on the same basis
     * @return this builder
     * @throws IllegalStateException if it is stated as bicarbonate already
     */
    public Builder bicarbonate(
        MassConcentration concentration, MassConcentration standardUncertainty) {
      readings.alkalinity(
          StatedAs.BICARBONATE,
          CarbonateAlkalinity.fromBicarbonate(
              Objects.requireNonNull(concentration, "concentration")),
          CarbonateAlkalinity.fromBicarbonate(given(standardUncertainty)),
          "reported as bicarbonate, " + concentration);
      return this;
    }

    /**
     * States the alkalinity as calcium carbonate, from a titration to its equivalence point. A
     * report may state it in addition to a bicarbonate that says the same; it is then the one that
     * counts. It counts as carbonate; a titration counts the hydroxide of a water above pH 9.5 too,
     * which {@link #titrationAlkalinity(TitrationAlkalinity)} leaves out.
     *
     * @param concentration as CaCO3
     * @return this builder
     * @throws IllegalStateException if it is stated as calcium carbonate already
     */
    public Builder alkalinityAsCaCO3(MassConcentration concentration) {
      return alkalinity(
          CarbonateAlkalinity.fromCaCO3(Objects.requireNonNull(concentration, "concentration")));
    }

    /**
     * States the alkalinity as calcium carbonate, from a titration to its equivalence point, with
     * its uncertainty.
     *
     * @param concentration as CaCO3
     * @param standardUncertainty its standard uncertainty, on the same basis
     * @return this builder
     * @throws IllegalStateException if it is stated as calcium carbonate already
     */
    public Builder alkalinityAsCaCO3(
        MassConcentration concentration, MassConcentration standardUncertainty) {
      return alkalinity(
          CarbonateAlkalinity.fromCaCO3(Objects.requireNonNull(concentration, "concentration")),
          CarbonateAlkalinity.fromCaCO3(given(standardUncertainty)));
    }

    /**
     * States the alkalinity in whatever unit the report prints it, such as degrees. It counts like
     * one stated as calcium carbonate.
     *
     * @param alkalinity the alkalinity
     * @return this builder
     * @throws IllegalStateException if it is stated as calcium carbonate already
     */
    public Builder alkalinity(CarbonateAlkalinity alkalinity) {
      readings.alkalinity(
          StatedAs.ALKALINITY_AS_CACO3,
          Objects.requireNonNull(alkalinity, "alkalinity"),
          null,
          "reported");
      return this;
    }

    /**
     * States the alkalinity in whatever unit the report prints it, such as degrees, with its
     * uncertainty.
     *
     * @param alkalinity the alkalinity
     * @param standardUncertainty its standard uncertainty, on the same basis
     * @return this builder
     * @throws IllegalStateException if it is stated as calcium carbonate already
     */
    public Builder alkalinity(
        CarbonateAlkalinity alkalinity, CarbonateAlkalinity standardUncertainty) {
      readings.alkalinity(
          StatedAs.ALKALINITY_AS_CACO3,
          Objects.requireNonNull(alkalinity, "alkalinity"),
          given(standardUncertainty),
          "reported");
      return this;
    }

    /**
     * States an alkalinity that was titrated to a stated pH, such as the acid capacity of a German
     * report to pH 4.3. It needs the pH of the water.
     *
     * @param alkalinity the alkalinity with its end point
     * @return this builder
     * @throws IllegalStateException if a titration is stated already
     */
    public Builder titrationAlkalinity(TitrationAlkalinity alkalinity) {
      readings.titration(alkalinity, Optional.empty());
      return this;
    }

    /**
     * States an alkalinity that was titrated to a stated pH, with its uncertainty.
     *
     * @param alkalinity the alkalinity with its end point
     * @param standardUncertainty its standard uncertainty, 0 or more
     * @return this builder
     * @throws IllegalStateException if a titration is stated already
     * @throws IllegalArgumentException if the uncertainty is negative
     */
    public Builder titrationAlkalinity(
        TitrationAlkalinity alkalinity, ChargeConcentration standardUncertainty) {
      readings.titration(
          alkalinity, Optional.of(given(standardUncertainty).inMilliequivalentsPerLitre()));
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
     * States the pH of the water, measured at 25 °C, with its uncertainty.
     *
     * @param measured the pH
     * @param standardUncertainty its standard uncertainty, 0 or more
     * @return this builder
     * @throws IllegalStateException if it is stated already
     * @throws IllegalArgumentException if the uncertainty is negative
     */
    public Builder pH(PH measured, double standardUncertainty) {
      return pH(measured, USUAL_TEMPERATURE_OF_PH, standardUncertainty);
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
      readings.pH(measured, temperature, Optional.empty());
      return this;
    }

    /**
     * States the pH of the water with its uncertainty.
     *
     * @param measured the pH
     * @param temperature the temperature of the water when it was measured, 0 to 100 °C
     * @param standardUncertainty its standard uncertainty, 0 or more
     * @return this builder
     * @throws IllegalStateException if it is stated already
     * @throws IllegalArgumentException if the temperature is out of range or the uncertainty is
     *     negative
     */
    public Builder pH(PH measured, Temperature temperature, double standardUncertainty) {
      readings.pH(measured, temperature, Optional.of(standardUncertainty));
      return this;
    }

    /**
     * Makes the report.
     *
     * @return the report
     * @throws IllegalArgumentException if alkalinities on several bases differ by more than 1 mg/L
     *     as CaCO3 and by more than 1 %, the rounding of reports; if a titration to a stated pH
     *     cannot be right at the pH of the water
     * @throws IllegalStateException if a titration to a stated pH is given without the pH of the
     *     water
     */
    public WaterReport build() {
      return WaterReport.of(readings.copy());
    }
  }

  private static WaterReport of(Readings stated) {
    Readings readings = stated.settled();
    ReportedContents contents = readings.contents();
    if (readings.isTitrated()) {
      contents.closed(Chemistry.standard());
    }
    Water water = Water.reported(contents.steps(), contents::closedOrOpen);
    readings.requireAgreement(water);
    return new WaterReport(readings, contents, water);
  }

  /**
   * Returns the water that the report describes.
   *
   * <p>Its carbon dioxide follows from alkalinity and pH at the temperature of the pH. When the pH
   * is missing the water is taken to hold as much carbon dioxide, in all its forms, as it has
   * alkalinity: bicarbonate alone, which lies near pH 8.3, or lower where calcium pairs with
   * carbonate; a notice says so. Ions that are missing, and the error of the ion balance, are
   * carried together by an inert univalent ion, so that the water has its reported pH.
   *
   * @return the water at the temperature of the pH, always the same object
   */
  public Water water() {
    return water;
  }

  /**
   * Returns what the report tells about itself: whether its ions balance; what is missing, and how
   * much of it would close the balance; the cause of an imbalance, where one stands alone; whether
   * pH and alkalinity go together.
   *
   * @return an unmodifiable list, the ion balance first
   */
  public List<Notice> notices() {
    return Plausibility.of(readings, water);
  }

  /**
   * Tells, for each figure that a laboratory may have stated on another basis, what the ion balance
   * would be on that basis. One report alone decides little; {@code Waters} of the tables looks at
   * all reports of one source.
   *
   * @return an unmodifiable list; empty where the balance cannot be judged
   */
  public List<BasisReading> basisReadings() {
    return Plausibility.bases(readings, water);
  }

  /**
   * Returns the ions that are missing, of calcium, magnesium, sodium, potassium, bicarbonate (the
   * alkalinity), sulfate, chloride and nitrate.
   *
   * @return an unmodifiable list in that order
   */
  public List<Ion> missing() {
    return List.copyOf(Plausibility.missing(readings, water));
  }

  /**
   * Returns the report with a standard uncertainty for each figure that states none, the larger of
   * a share of the reading and a least value that proficiency tests of laboratories accept. Every
   * figure says that it is assumed, and so does a notice. What a drinking-water law demands of a
   * laboratory, such as 15 %, is a share of the limit value and not of the reading, and is not
   * used.
   *
   * @return the report, figures with an uncertainty of their own and those below a limit as they
   *     are
   */
  public WaterReport withAssumedUncertainties() {
    return of(readings.withAssumedUncertainties());
  }

  /**
   * Tells between which values a figure lies when what is reported as below a limit, or with its
   * extremes of a year, may be anything between.
   *
   * @param figure any figure of a water that rises or falls evenly with each of these
   * @return the lowest and highest value in the unit that the figure is shown in; equal where
   *     nothing is open
   * @throws IllegalStateException if the figure is unknown for another reason
   */
  public Range range(Figure<?> figure) {
    return Range.of(Objects.requireNonNull(figure, "figure"), readings, other -> of(other).water());
  }

  /**
   * Returns the day of the sample.
   *
   * @return the day; empty when the report states none
   */
  public Optional<LocalDate> date() {
    return readings.side().date();
  }

  /**
   * Returns the temperature of the sample when it was taken.
   *
   * @return the temperature; empty when the report states none
   */
  public Optional<Temperature> sampleTemperature() {
    return readings.side().temperature();
  }

  /**
   * Tells whether the other object is a report that states the same.
   *
   * @param object the object to compare with
   * @return true if all that is stated is equal, uncertainties included
   */
  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof WaterReport other && readings.all().equals(other.readings.all());
  }

  @Override
  public int hashCode() {
    return readings.all().hashCode();
  }

  /**
   * Returns what is stated.
   *
   * @return such as {@code calcium 92.0 mg/L, magnesium 11.0 mg/L, pH 7.60}
   */
  @Override
  public String toString() {
    List<String> parts = new ArrayList<>();
    contents
        .steps()
        .forEach(
            (figure, step) ->
                parts.add(
                    step.found()
                        .map(
                            found ->
                                figure.equals(Figures.PH_VALUE)
                                    ? step.scale().text(found)
                                    : step.quantity() + " " + step.scale().text(found))
                        .orElseGet(() -> String.join("; ", step.whyUnknown()))));
    return parts.isEmpty() ? "nothing reported" : String.join(", ", parts);
  }
}
