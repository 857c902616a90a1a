package org.brewchem.water;

import java.time.LocalDate;
import java.util.Objects;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Conductivity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MolarMass;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Formula;

/**
 * What a report states beside its ions: hardness, capacities, conductivity and the like, each once.
 * Mutable, for one thread.
 *
 * @param <B> the builder that these methods return
 */
abstract class SideEntries<B extends SideEntries<B>> extends IonEntries<B> {

  private static final String REPORTED = "reported";
  private static final MolarMass CALCIUM_OXIDE = Formula.parse("CaO").molarMass();

  private final Readings readings;

  SideEntries(Readings readings) {
    super(readings);
    this.readings = readings;
  }

  /**
   * States the alkalinity as calcium oxide.
   *
   * @param concentration as CaO
   * @return this builder
   * @throws IllegalStateException if it is stated already otherwise than as bicarbonate
   */
  public B alkalinityAsCaO(MassConcentration concentration) {
    double millimoles =
        Objects.requireNonNull(concentration, "concentration").inMilligramsPerLitre()
            / CALCIUM_OXIDE.inGramsPerMole();
    readings.alkalinity(
        StatedAs.ALKALINITY_AS_CACO3,
        CarbonateAlkalinity.ofMilliequivalentsPerLitre(2 * millimoles),
        null,
        "reported as CaO, " + concentration);
    return self();
  }

  /**
   * States the alkalinity as carbonate hardness, as German reports do.
   *
   * @param hardness the carbonate hardness, in degrees or otherwise
   * @return this builder
   * @throws IllegalStateException if it is stated already otherwise than as bicarbonate
   */
  public B carbonateHardness(Hardness hardness) {
    readings.alkalinity(
        StatedAs.ALKALINITY_AS_CACO3,
        CarbonateAlkalinity.ofMilliequivalentsPerLitre(
            Objects.requireNonNull(hardness, "hardness").inMilliequivalentsPerLitre()),
        null,
        "reported as carbonate hardness, " + hardness);
    return self();
  }

  /**
   * States the carbonate beside the bicarbonate of the report: both together are the alkalinity.
   *
   * @param concentration as CO3
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B carbonate(MassConcentration concentration) {
    readings
        .side()
        .put(
            SideReadings.Kind.CARBONATE,
            Objects.requireNonNull(concentration, "concentration").inMilligramsPerLitre(),
            null,
            REPORTED);
    return self();
  }

  /**
   * States the acid capacity to pH 4.3, the m value. With a pH of the water it counts as a
   * titration to that end point; without one as bicarbonate, as DIN 38402-62 counts it.
   *
   * @param capacity mmol of acid per litre
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B acidCapacity(AmountConcentration capacity) {
    readings
        .side()
        .put(
            SideReadings.Kind.ACID_CAPACITY,
            Objects.requireNonNull(capacity, "capacity").inMillimolesPerLitre(),
            null,
            "reported as acid capacity to pH 4.3");
    return self();
  }

  /**
   * States the base capacity to pH 8.2, the negative p value: the carbon dioxide. It is compared
   * with pH and alkalinity; without a pH, and without another alkalinity, pH and total carbon
   * dioxide follow from it and the acid capacity.
   *
   * @param capacity mmol of base per litre
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B baseCapacity(AmountConcentration capacity) {
    readings
        .side()
        .put(
            SideReadings.Kind.BASE_CAPACITY,
            Objects.requireNonNull(capacity, "capacity").inMillimolesPerLitre(),
            null,
            "reported as base capacity to pH 8.2");
    return self();
  }

  /**
   * States the p value: acid to pH 8.2 of a water above it. It is a base capacity below 0.
   *
   * @param acid mmol of acid per litre
   * @return this builder
   * @throws IllegalStateException if it or the base capacity is stated already
   */
  public B pValue(AmountConcentration acid) {
    readings
        .side()
        .put(
            SideReadings.Kind.BASE_CAPACITY,
            -Objects.requireNonNull(acid, "acid").inMillimolesPerLitre(),
            null,
            "reported as p value");
    return self();
  }

  /**
   * States the total hardness. Where calcium or magnesium is missing the ion balance counts it
   * instead; where both are stated it is compared with them.
   *
   * @param hardness in degrees or otherwise
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B totalHardness(Hardness hardness) {
    readings
        .side()
        .put(
            SideReadings.Kind.TOTAL_HARDNESS,
            Objects.requireNonNull(hardness, "hardness").inMilligramsPerLitreAsCaCO3(),
            null,
            REPORTED);
    return self();
  }

  /**
   * States the calcium as calcium hardness.
   *
   * @param hardness in degrees or otherwise
   * @return this builder
   * @throws IllegalStateException if the calcium is stated already
   */
  public B calciumHardness(Hardness hardness) {
    return concentration(Constituent.CALCIUM, equivalents(hardness));
  }

  /**
   * States the magnesium as magnesium hardness.
   *
   * @param hardness in degrees or otherwise
   * @return this builder
   * @throws IllegalStateException if the magnesium is stated already
   */
  public B magnesiumHardness(Hardness hardness) {
    return concentration(Constituent.MAGNESIUM, equivalents(hardness));
  }

  private static ChargeConcentration equivalents(Hardness hardness) {
    return ChargeConcentration.ofMilliequivalentsPerLitre(
        Objects.requireNonNull(hardness, "hardness").inMilliequivalentsPerLitre());
  }

  /**
   * States the conductivity, which is compared with the ions.
   *
   * @param conductivity with its reference temperature
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B conductivity(Conductivity conductivity) {
    readings
        .side()
        .put(
            SideReadings.Kind.CONDUCTIVITY,
            Objects.requireNonNull(conductivity, "conductivity").inMicrosiemensPerCentimetreAt25(),
            null,
            REPORTED);
    return self();
  }

  /**
   * States the dry residue, which is compared with what is dissolved.
   *
   * @param residue dried at 105 to 180 °C
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B dryResidue(MassConcentration residue) {
    readings
        .side()
        .put(
            SideReadings.Kind.DRY_RESIDUE,
            Objects.requireNonNull(residue, "residue").inMilligramsPerLitre(),
            null,
            REPORTED);
    return self();
  }

  /**
   * States the temperature of the sample when it was taken.
   *
   * @param sample 0 to 100 °C
   * @return this builder
   * @throws IllegalStateException if it is stated already
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public B temperature(Temperature sample) {
    readings.side().temperature(sample);
    return self();
  }

  /**
   * States the day of the sample.
   *
   * @param date the day
   * @return this builder
   * @throws IllegalStateException if it is stated already
   */
  public B sampledOn(LocalDate date) {
    readings.side().date(date);
    return self();
  }
}
