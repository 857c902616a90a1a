package org.brewchem.treatment;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Solute;
import org.brewchem.substance.Use;
import org.brewchem.uncertainty.Traced;

/**
 * What can be done to a liquid, meant for static import: {@code water.after(salt(GYPSUM,
 * gPerHL(20)), acid(lactic, mLPerHL(30)))}.
 *
 * <p>An amount per volume counts on the liquid as it stands before that step. A reagent with a
 * density has a volume, by which the liquid grows; the volume of a powder and of a pure compound is
 * neglected. The amounts are taken as measured out exactly; what the label of a reagent states is
 * not exact: assay and density are sources of uncertainty of the liquid afterwards, the same ones
 * each time that one treatment is used.
 */
public final class Treatments {

  private Treatments() {}

  /**
   * Applies treatments to the contents of a liquid that people drink or brew from. Every such
   * liquid implements {@link Liquid#after} by this method, which refuses what may not be dosed into
   * it.
   *
   * @param before what the liquid holds
   * @param use what the liquid is
   * @param steps what is done, in this order
   * @return what the liquid holds afterwards, with a notice where food laws differ on a substance
   *     or its use was not stated
   * @throws IllegalArgumentException if a substance is not for this liquid, with the reason; see
   *     {@link org.brewchem.substance.Permissions}
   */
  public static Contents apply(Contents before, Use use, Treatment... steps) {
    Objects.requireNonNull(before, "before");
    Objects.requireNonNull(use, "use");
    Objects.requireNonNull(steps, "steps");
    Contents after = before;
    for (Treatment step : steps) {
      Treatment taken =
          use == Use.MASH && step instanceof Addition addition ? addition.intoMash() : step;
      after = taken.on(after).withNotices(Permitted.in(use, step));
    }
    return after;
  }

  /**
   * Adds a pure salt, known exactly.
   *
   * @param salt the salt, or another compound that is weighed
   * @param amount its mass per volume of the liquid
   * @return the treatment
   * @throws IllegalStateException if the compound has no molar mass
   */
  public static Treatment salt(Compound salt, MassConcentration amount) {
    Objects.requireNonNull(salt, "salt");
    return weighed(Supply.pure(salt), amount);
  }

  /**
   * Adds a salt as bought, weighed out.
   *
   * @param salt the salt with its assay
   * @param amount the mass of the reagent per volume of the liquid
   * @return the treatment
   */
  public static Treatment salt(Reagent salt, MassConcentration amount) {
    Objects.requireNonNull(salt, "salt");
    return weighed(Supply.weighed(salt), amount);
  }

  /**
   * Adds a pure base, known exactly.
   *
   * @param base the base
   * @param amount its mass per volume of the liquid
   * @return the treatment
   */
  public static Treatment base(Base base, MassConcentration amount) {
    Objects.requireNonNull(base, "base");
    return weighed(Supply.pure(base), amount);
  }

  /**
   * Adds a base as bought, weighed out.
   *
   * @param base the base with its assay
   * @param amount the mass of the reagent per volume of the liquid
   * @return the treatment
   * @throws IllegalArgumentException if the reagent is no base
   */
  public static Treatment base(Reagent base, MassConcentration amount) {
    return weighed(Supply.weighed(ofKind(Base.class, "a base", base)), amount);
  }

  /**
   * Adds a liquid base as bought, measured out by volume.
   *
   * @param base the base with assay and density
   * @param amount the volume of the reagent per volume of the liquid
   * @return the treatment
   * @throws IllegalArgumentException if the reagent is no base or has no density
   */
  public static Treatment base(Reagent base, VolumeRatio amount) {
    return poured(ofKind(Base.class, "a base", base), amount);
  }

  /**
   * Adds a pure acid, known exactly.
   *
   * @param acid the acid
   * @param amount its mass per volume of the liquid
   * @return the treatment
   * @throws IllegalStateException if the acid was made without a formula
   */
  public static Treatment acid(Acid acid, MassConcentration amount) {
    Objects.requireNonNull(acid, "acid");
    return weighed(Supply.pure(acid), amount);
  }

  /**
   * Adds an acid as bought, weighed out.
   *
   * @param acid the acid with its assay
   * @param amount the mass of the reagent per volume of the liquid
   * @return the treatment
   * @throws IllegalArgumentException if the reagent is no acid
   */
  public static Treatment acid(Reagent acid, MassConcentration amount) {
    return weighed(Supply.weighed(ofKind(Acid.class, "an acid", acid)), amount);
  }

  /**
   * Adds a liquid acid as bought, measured out by volume.
   *
   * @param acid the acid with assay and density
   * @param amount the volume of the reagent per volume of the liquid
   * @return the treatment
   * @throws IllegalArgumentException if the reagent is no acid or has no density
   */
  public static Treatment acid(Reagent acid, VolumeRatio amount) {
    return poured(ofKind(Acid.class, "an acid", acid), amount);
  }

  /**
   * Adds an amount of a solute, known exactly, as chemistry on paper does.
   *
   * @param solute the solute
   * @param amount how much of it per litre of the liquid
   * @return the treatment
   */
  public static Treatment solute(Solute solute, AmountConcentration amount) {
    return Addition.of(solute, amount);
  }

  /**
   * Blends with another liquid at the same temperature. Totals mix, pH follows; what is known of
   * one liquid only is unknown in the mixture.
   *
   * @param other the other liquid
   * @param shareOfOther its share of the mixture by mass, known exactly
   * @return the treatment, which refuses a liquid at another temperature
   */
  public static Treatment blend(Liquid other, MassFraction shareOfOther) {
    return blend(other, Traced.exact(shareOfOther.fraction()));
  }

  /**
   * Blends with another liquid whose share is uncertain.
   *
   * @param other the other liquid, at the same temperature
   * @param shareOfOther its share of the mixture by mass
   * @param standardUncertainty u of the share, in per cent by mass, 0 or more
   * @return the treatment, which refuses a liquid at another temperature
   * @throws IllegalArgumentException if the uncertainty is negative
   */
  public static Treatment blend(
      Liquid other, MassFraction shareOfOther, double standardUncertainty) {
    Traced percent =
        Traced.stated(
            "share of the " + other.kind() + " blended in",
            shareOfOther.inMassPercent(),
            OptionalDouble.of(standardUncertainty),
            "% by mass");
    return blend(other, percent.times(0.01).withValue(shareOfOther.fraction()));
  }

  private static Treatment blend(Liquid other, Traced share) {
    Contents contents = other.contents();
    return new Mixing(
        before -> contents, "another " + other.kind(), share, false, other.cautions());
  }

  /**
   * Blends volumes of two liquids at the same temperature, volumes taken as additive.
   *
   * @param own the volume of the liquid that is treated
   * @param other the other liquid
   * @param volume the volume of the other
   * @return the treatment, which refuses a liquid at another temperature
   * @throws IllegalArgumentException if both volumes are 0
   */
  public static Treatment blend(Volume own, Liquid other, Volume volume) {
    Objects.requireNonNull(volume, "volume");
    double both = Checks.positive("volumes", own.plus(volume).inLitres(), "L");
    Contents contents = other.contents();
    return new Mixing(
        before -> contents,
        "another " + other.kind(),
        Traced.exact(volume.inLitres() / both),
        true,
        other.cautions());
  }

  /**
   * Blends volumes of any number of liquids at one temperature, volumes taken as additive.
   *
   * @param own the volume of the liquid that is treated, 0 or more
   * @param liquids the other liquids
   * @param volumes their volumes, as many, in the same order
   * @return the treatment, which refuses a liquid at another temperature
   * @throws IllegalArgumentException if all volumes are 0, or their number is not that of the
   *     liquids
   */
  public static Treatment blend(Volume own, List<? extends Liquid> liquids, List<Volume> volumes) {
    if (liquids.size() != volumes.size()) {
      throw Checks.outOfRange(
          "volumes", volumes.size(), "", "as many as there are liquids, " + liquids.size() + ",");
    }
    return new Blending(own, List.copyOf(liquids), volumes);
  }

  /**
   * Makes the permeate of reverse osmosis: one share of all ions is held back, dissolved carbon
   * dioxide passes, so that the permeate is acid. Membranes pass nitrate and sodium more easily
   * than calcium; one share for all is a simplification of ours. Dilute with it by {@link #blend}.
   *
   * @param rejection the share of the ions that is held back, 0 to 1, known exactly
   * @return the treatment
   * @throws IllegalArgumentException if the share is out of range
   */
  public static Treatment reverseOsmosis(double rejection) {
    return new ReverseOsmosis(Traced.exact(Checks.inRange("rejection", rejection, "", 0, 1)));
  }

  /**
   * Makes the permeate of reverse osmosis, as {@link #reverseOsmosis(double)} does.
   *
   * @param rejection the share of the ions that is held back, 0 to 1
   * @param standardUncertainty its u, a share too, 0 or more
   * @return the treatment
   * @throws IllegalArgumentException if the share is out of range or the uncertainty negative
   */
  public static Treatment reverseOsmosis(double rejection, double standardUncertainty) {
    return new ReverseOsmosis(
        Traced.stated(
            "rejection of the membrane",
            Checks.inRange("rejection", rejection, "", 0, 1),
            OptionalDouble.of(standardUncertainty),
            ""));
  }

  /**
   * Dilutes with pure water.
   *
   * @param water the volume of water per volume of the liquid
   * @return the treatment
   */
  public static Treatment dilution(VolumeRatio water) {
    return new Mixing(
        Treatments::pureWater,
        "pure water",
        Traced.exact(water.ratio() / (1 + water.ratio())),
        true,
        List.of());
  }

  /**
   * Dilutes with pure water.
   *
   * @param shareOfWater the share of the water in the mixture by mass
   * @return the treatment
   */
  public static Treatment dilution(MassFraction shareOfWater) {
    return new Mixing(
        Treatments::pureWater,
        "pure water",
        Traced.exact(shareOfWater.fraction()),
        false,
        List.of());
  }

  private static Contents pureWater(Contents before) {
    return Contents.pure(before.temperature(), before.chemistry());
  }

  /**
   * Lets carbon dioxide out until a given amount is left dissolved. It leaves as a neutral
   * molecule: the bicarbonate that a metal holds stays, and the pH rises.
   *
   * @param residue the dissolved carbon dioxide that is left, as CO2, above 0, taken as exact
   * @return the treatment; it throws {@link UnreachableException} where less is there already, and
   *     {@link org.brewchem.figure.UnknownFigureException} where carbonate or the balance is not
   *     known
   * @throws IllegalArgumentException if the residue is 0
   */
  public static Treatment degassing(MassConcentration residue) {
    return new Degassing(Traced.exact(left(residue)));
  }

  /**
   * Lets carbon dioxide out until about a given amount is left dissolved, as {@link
   * #degassing(MassConcentration)} does.
   *
   * @param residue the dissolved carbon dioxide that is left, as CO2, above 0
   * @param standardUncertainty its u
   * @return the treatment
   * @throws IllegalArgumentException if the residue is 0
   */
  public static Treatment degassing(
      MassConcentration residue, MassConcentration standardUncertainty) {
    return new Degassing(
        Traced.stated(
            "carbon dioxide left",
            left(residue),
            OptionalDouble.of(standardUncertainty.inMilligramsPerLitre()),
            "mg/L"));
  }

  private static double left(MassConcentration residue) {
    return Checks.positive("residue", residue.inMilligramsPerLitre(), "mg/L");
  }

  /**
   * Leaves the liquid open to outdoor air (0.00042 atm of CO2, our choice) until both are in
   * equilibrium: it gives off carbon dioxide or takes it up.
   *
   * @return the treatment
   */
  public static Treatment aeration() {
    return aeration(air());
  }

  /**
   * Leaves the liquid open to a pressure of carbon dioxide until both are in equilibrium.
   *
   * @param carbonDioxide the partial pressure of CO2, absolute, above 0, taken as exact
   * @return the treatment
   * @throws IllegalArgumentException if the pressure is 0
   */
  public static Treatment aeration(Pressure carbonDioxide) {
    return opening("open to the gas", carbonDioxide, Optional.empty(), Optional.empty());
  }

  private static Opening opening(
      String name, Pressure carbonDioxide, Optional<Temperature> hot, Optional<Mineral> mineral) {
    Checks.positive("partial pressure", carbonDioxide.inKilopascals(), "kPa");
    return new Opening(
        name,
        Traced.exact(carbonDioxide.inKilopascals()),
        hot,
        mineral,
        mineral.isEmpty() || hot.isEmpty()
            ? List.of()
            : List.of(
                Notice.of(TreatmentCode.STOPS_EARLIER, name, SofteningPractice.stopsEarlier())));
  }

  private static Pressure air() {
    return Pressure.ofAtmospheres(SofteningPractice.number("carbon dioxide of the air"));
  }

  /**
   * Boils: carbon dioxide leaves until it is in equilibrium with air, and calcite precipitates hot,
   * by the constants at 100 °C, which their sources cover to 90 °C. The liquid is then as warm as
   * before; what evaporates is not counted. Equilibrium is the final state: practice stops earlier,
   * and a notice says so.
   *
   * @return the treatment
   */
  public static Treatment boiling() {
    return boiling(Temperature.ofCelsius(100), air());
  }

  /**
   * Heats, with carbon dioxide and calcite at equilibrium, as {@link #boiling()} does.
   *
   * @param hot the temperature, 0 to 100 °C
   * @param carbonDioxide the partial pressure of CO2 above the liquid, absolute, above 0
   * @return the treatment
   * @throws IllegalArgumentException if the pressure is 0
   */
  public static Treatment boiling(Temperature hot, Pressure carbonDioxide) {
    Objects.requireNonNull(hot, "hot");
    return opening(
        "boiling at " + hot, carbonDioxide, Optional.of(hot), Optional.of(Mineral.CALCITE));
  }

  /**
   * Stirs in chalk in a closed vessel: what dissolves until calcite is in equilibrium. In a mash or
   * another acid liquid it is most or all of it.
   *
   * @param amount the mass of chalk per volume of the liquid
   * @return the treatment, with a notice of the part that dissolves; the rest stays as a solid
   * @throws IllegalArgumentException if the mass is 0
   */
  public static Treatment chalkClosed(MassConcentration amount) {
    Objects.requireNonNull(amount, "amount");
    return new Dissolution(positive(amount), Optional.empty());
  }

  /**
   * Stirs in chalk while the liquid is open to carbon dioxide, which helps to dissolve it.
   *
   * @param amount the mass of chalk per volume of the liquid
   * @param carbonDioxide the partial pressure of CO2, absolute, above 0
   * @return the treatment, with a notice of the part that dissolves; the rest stays as a solid
   * @throws IllegalArgumentException if the pressure is 0
   */
  public static Treatment chalkOpen(MassConcentration amount, Pressure carbonDioxide) {
    Objects.requireNonNull(amount, "amount");
    return new Dissolution(
        positive(amount),
        Optional.of(
            opening(
                "open to the gas", carbonDioxide, Optional.empty(), Optional.of(Mineral.CALCITE))));
  }

  private static MassConcentration positive(MassConcentration chalk) {
    Checks.positive("chalk", chalk.inGramsPerLitre(), "g/L");
    return chalk;
  }

  /**
   * Precipitates minerals to equilibrium: until no saturation index is above 0; nothing
   * precipitates where all are below. Equilibrium is the final state, which a liquid may never
   * reach; many minerals form slowly or not at all.
   *
   * @param minerals the minerals, at least one, none twice
   * @return the treatment; it throws {@link org.brewchem.figure.UnknownFigureException} where a
   *     component of the mineral or the balance is not known
   */
  public static Treatment precipitation(Mineral... minerals) {
    Objects.requireNonNull(minerals, "minerals");
    return new Precipitation(Arrays.asList(minerals));
  }

  private static Treatment weighed(Supply supply, MassConcentration amount) {
    return Addition.of(supply, amount.inGramsPerLitre() / supply.gramsPerMole());
  }

  private static Treatment poured(Reagent reagent, VolumeRatio amount) {
    Supply supply = Supply.poured(reagent);
    return Addition.of(supply, amount.ratio() / supply.litresPerMole().orElseThrow());
  }

  private static Reagent ofKind(Class<? extends Compound> kind, String needed, Reagent reagent) {
    if (!kind.isInstance(reagent.compound())) {
      throw new IllegalArgumentException(
          "reagent: " + reagent + " is not possible; " + needed + " is needed");
    }
    return reagent;
  }
}
