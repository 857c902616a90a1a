package org.brewchem.substance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Notice;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.Volume;
import org.jspecify.annotations.Nullable;

/**
 * A chemical as it is bought: a compound, the mass fraction of it that the label states, and, for a
 * liquid, a density. The rest of the bottle or bag counts as water.
 *
 * <p><strong>Assay.</strong> It is the mass of the named compound, with the water of hydration of
 * its formula, in the mass of the reagent. Citric acid monohydrate of 99.5 % and the same powder
 * assayed as 91 % of the acid without water are two ways to say one thing: name the compound that
 * the label counts.
 *
 * <p><strong>Lactic acid.</strong> Commercial lactic acid is assayed as total acid: a part of it is
 * bound in esters of lactic acid with itself and reacts only after hydrolysis, which is slow in the
 * cold. Amounts computed here are total acid. From 30 to 92 % the bound part is that of {@link
 * StrongLacticAcid} unless {@link #withBoundInEsters(MassFraction)} states another; {@link
 * #titratableAtOnce()} and {@link #freeConcentration()} tell what reacts at once. The label of
 * lactic acid of 50 to 92 % is taken to be within 5 % of itself (76 to 84 % for "80 %", a
 * rectangular distribution) unless {@link #withAssayUncertainty(double)} states another
 * uncertainty.
 *
 * <p><strong>Density.</strong> Where published tables give one for the strength, it is taken from
 * them, with the spread between tables (1 % at least); otherwise type the one of the bottle.
 *
 * <p><strong>Use.</strong> {@link #uses()} tells which liquids the reagent may be dosed into. What
 * is refused there is refused as a dose, and a reagent of a compound that the library does not know
 * states its use by {@link #withUse(Use, String)}.
 *
 * <p>Two reagents are equal when all that is stated of them is: compound, assay, density with its
 * uncertainty and sources, the part bound in esters, uses, and whether the assay was assumed.
 *
 * <p>Concentrated acids and alkalis burn skin and eyes. Follow the supplier's safety data sheet and
 * local rules, add acid to water and never water to acid, and check the label: strengths and
 * densities here are no substitute for it.
 */
public final class Reagent {

  private static final UsualRange USUAL_ASSAY = UsualRange.named("assay of a reagent");
  private static final UsualRange USUAL_DENSITY = UsualRange.named("density of a liquid reagent");

  /** A bottle's density that lies farther from the tables than this is not of its strength. */
  private static final double TOLERATED_DENSITY = 0.05;

  private final Compound compound;
  private final MassFraction assay;
  private final @Nullable Density density;
  private final @Nullable Double densityRelativeUncertainty;
  private final List<Provenance> densitySources;
  private final @Nullable Double assayRelativeUncertainty;
  private final @Nullable MassFraction boundInEsters;
  private final @Nullable Double boundRelativeUncertainty;
  private final Map<Use, String> uses;
  private final @Nullable UsualPurity assumed;

  private Reagent(
      Compound compound,
      MassFraction assay,
      @Nullable Density density,
      @Nullable Double densityRelativeUncertainty,
      List<Provenance> densitySources,
      @Nullable Double assayRelativeUncertainty,
      @Nullable MassFraction boundInEsters,
      @Nullable Double boundRelativeUncertainty,
      Map<Use, String> uses,
      @Nullable UsualPurity assumed) {
    this.compound = compound;
    this.assay = assay;
    Checks.positive("assay of " + compound.name(), assay.inMassPercent(), "% by mass");
    this.density = density;
    this.densityRelativeUncertainty = densityRelativeUncertainty;
    this.densitySources = densitySources;
    this.assayRelativeUncertainty = assayRelativeUncertainty;
    this.boundInEsters = boundInEsters;
    this.boundRelativeUncertainty = boundRelativeUncertainty;
    this.uses = uses;
    this.assumed = assumed;
  }

  /**
   * Returns a reagent of a strength, with its density from published tables where they give one.
   *
   * @param compound the compound that the label counts
   * @param assay the mass fraction of the compound, more than 0
   * @return the reagent
   * @throws IllegalArgumentException if the assay is 0
   */
  public static Reagent of(Compound compound, MassFraction assay) {
    Optional<PublishedDensity> published = PublishedDensity.of(compound, assay);
    Optional<StrongLacticAcid> oligomers = StrongLacticAcid.of(compound, assay);
    return new Reagent(
        compound,
        assay,
        published.map(PublishedDensity::density).orElse(null),
        published.map(PublishedDensity::relativeStandardUncertainty).orElse(null),
        published.map(PublishedDensity::sources).orElse(List.of()),
        boxed(StrongLacticAcid.relativeUncertaintyOfLabel(compound, assay)),
        oligomers.map(StrongLacticAcid::boundInEsters).orElse(null),
        oligomers.isPresent() ? StrongLacticAcid.relativeUncertaintyOfBoundPart() : null,
        compound.statedUses(),
        null);
  }

  /**
   * Returns a salt or a lime whose bag states no assay, with what specifications allow: the middle
   * of their limits, and the standard uncertainty of a rectangular distribution between them. Every
   * answer that rests on it says that the assay is assumed.
   *
   * <p>Calcium chloride dihydrate that has lost water holds more calcium chloride than its formula
   * says; its limits, and so the reagent, count calcium chloride without water.
   *
   * @param compound what the bag is called: calcium chloride anhydrous or as the dihydrate, gypsum,
   *     chalk, slaked lime, sodium bicarbonate or sodium chloride
   * @return the reagent, its assay counting {@link #compound()}
   * @throws IllegalArgumentException if no specification of the compound is known
   */
  public static Reagent ofUsualPurity(Compound compound) {
    Objects.requireNonNull(compound, "compound");
    UsualPurity purity =
        UsualPurity.of(compound)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "compound: no usual purity of "
                            + Excerpt.of(compound.name())
                            + " is known; state the assay of the label, or one of "
                            + UsualPurity.known()));
    Reagent bought =
        of(purity.counted(), purity.middle())
            .withAssayUncertainty(purity.relativeStandardUncertainty());
    return new Reagent(
        bought.compound,
        bought.assay,
        bought.density,
        bought.densityRelativeUncertainty,
        bought.densitySources,
        bought.assayRelativeUncertainty,
        bought.boundInEsters,
        bought.boundRelativeUncertainty,
        bought.uses,
        purity);
  }

  private static @Nullable Double boxed(OptionalDouble number) {
    return number.isPresent() ? Double.valueOf(number.getAsDouble()) : null;
  }

  /**
   * Returns the same reagent with the density of the bottle.
   *
   * @param typed the density
   * @param relativeStandardUncertainty its relative standard uncertainty, 0 or more
   * @return the reagent with that density
   * @throws IllegalArgumentException if the uncertainty is negative, or the density is none that
   *     matter has
   */
  public Reagent withDensity(Density typed, double relativeStandardUncertainty) {
    Objects.requireNonNull(typed, "typed");
    USUAL_DENSITY.possible("density of " + this, typed.inGramsPerMillilitre());
    return new Reagent(
        compound,
        assay,
        typed,
        Checks.nonNegative(
            "relative standard uncertainty of the density", relativeStandardUncertainty, ""),
        List.of(),
        assayRelativeUncertainty,
        boundInEsters,
        boundRelativeUncertainty,
        uses,
        assumed);
  }

  /**
   * Returns the same reagent with an uncertainty of its assay.
   *
   * @param relativeStandardUncertainty the relative standard uncertainty, 0 or more
   * @return the reagent with that uncertainty
   * @throws IllegalArgumentException if the uncertainty is negative
   */
  public Reagent withAssayUncertainty(double relativeStandardUncertainty) {
    return new Reagent(
        compound,
        assay,
        density,
        densityRelativeUncertainty,
        densitySources,
        Checks.nonNegative(
            "relative standard uncertainty of the assay", relativeStandardUncertainty, ""),
        boundInEsters,
        boundRelativeUncertainty,
        uses,
        assumed);
  }

  /**
   * Returns the same reagent with the part of the assayed acid that is bound in esters, counted as
   * the acid it becomes, without an uncertainty.
   *
   * @param fractionOfTheAcid the bound part of the total acid
   * @return the reagent with that part
   */
  public Reagent withBoundInEsters(MassFraction fractionOfTheAcid) {
    return withBound(fractionOfTheAcid, null);
  }

  /**
   * Returns the same reagent with the part of the assayed acid that is bound in esters, and how
   * well it is known.
   *
   * @param fractionOfTheAcid the bound part of the total acid, counted as the acid it becomes
   * @param relativeStandardUncertainty its relative standard uncertainty, 0 or more
   * @return the reagent with that part
   * @throws IllegalArgumentException if the uncertainty is negative
   */
  public Reagent withBoundInEsters(
      MassFraction fractionOfTheAcid, double relativeStandardUncertainty) {
    return withBound(
        fractionOfTheAcid,
        Checks.nonNegative(
            "relative standard uncertainty of the bound part", relativeStandardUncertainty, ""));
  }

  private Reagent withBound(MassFraction fractionOfTheAcid, @Nullable Double relative) {
    Objects.requireNonNull(fractionOfTheAcid, "fractionOfTheAcid");
    return new Reagent(
        compound,
        assay,
        density,
        densityRelativeUncertainty,
        densitySources,
        assayRelativeUncertainty,
        fractionOfTheAcid,
        relative,
        uses,
        assumed);
  }

  /**
   * Returns the same reagent with a use that the caller answers for, where the library does not
   * know the compound or food laws differ.
   *
   * @param use the liquid that it may be dosed into
   * @param basis by what authority, such as "permit of our food authority"
   * @return the reagent with that use
   * @throws IllegalArgumentException if the basis is blank, or the library refuses the compound in
   *     this liquid
   */
  public Reagent withUse(Use use, String basis) {
    Objects.requireNonNull(use, "use");
    return new Reagent(
        compound,
        assay,
        density,
        densityRelativeUncertainty,
        densitySources,
        assayRelativeUncertainty,
        boundInEsters,
        boundRelativeUncertainty,
        Permissions.stating(toString(), compound, uses, use, basis),
        assumed);
  }

  /**
   * Returns whether the reagent may be dosed into a liquid, and why. Food grade and amounts are not
   * looked at. Local law has the last word.
   *
   * @param use the liquid
   * @return the permission, which may be a refusal
   */
  public Permission permissionIn(Use use) {
    Objects.requireNonNull(use, "use");
    return Permissions.of(toString(), compound, use, uses);
  }

  /**
   * Returns what is known about the reagent in each liquid.
   *
   * @return an unmodifiable list of one permission for each {@link Use}
   */
  public List<Permission> uses() {
    return Arrays.stream(Use.values()).map(this::permissionIn).toList();
  }

  /**
   * Returns what is notable about the label: a strength or a density that may be a slip of typing,
   * a density that is more than 5 % off what tables give for the strength (our choice), an assay
   * that was assumed.
   *
   * @return an unmodifiable list, empty when there is nothing
   */
  public List<Notice> notices() {
    List<Notice> list = new ArrayList<>();
    if (assumed != null) {
      list.add(assumed.notice());
    }
    USUAL_ASSAY.judge("assay of " + compound.name(), assay.inMassPercent()).ifPresent(list::add);
    if (density != null) {
      double typed = density.inGramsPerMillilitre();
      Optional<Notice> unusual = USUAL_DENSITY.judge("density of " + this, typed);
      unusual.ifPresent(list::add);
      if (unusual.isEmpty() && densitySources.isEmpty()) {
        PublishedDensity.of(compound, assay)
            .map(published -> published.density().inGramsPerMillilitre())
            .filter(expected -> Math.abs(typed / expected - 1) > TOLERATED_DENSITY)
            .ifPresent(
                expected ->
                    list.add(
                        Notice.of(
                            SubstanceCode.DENSITY_AND_ASSAY_DISAGREE,
                            "density of " + this,
                            "density of "
                                + this
                                + ": "
                                + NumberText.significant(typed, 4)
                                + " g/mL, where tables have "
                                + NumberText.significant(expected, 4)
                                + " g/mL for this strength; one of the two is perhaps that of"
                                + " another bottle")));
      }
    }
    return List.copyOf(list);
  }

  /**
   * Returns the compound that the label counts.
   *
   * @return the compound
   */
  public Compound compound() {
    return compound;
  }

  /**
   * Returns the mass fraction of the compound.
   *
   * @return the assay
   */
  public MassFraction assay() {
    return assay;
  }

  /**
   * Returns the density.
   *
   * @return the density; empty for a solid, and for a strength that no table covers
   */
  public Optional<Density> density() {
    return Optional.ofNullable(density);
  }

  /**
   * Returns where the density comes from.
   *
   * @return the rows used; empty when the density was typed or there is none
   */
  public List<Provenance> densitySources() {
    return densitySources;
  }

  /**
   * Returns the relative standard uncertainty of the density.
   *
   * @return the relative standard uncertainty; empty when there is no density
   */
  public OptionalDouble densityRelativeStandardUncertainty() {
    return densityRelativeUncertainty == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(densityRelativeUncertainty);
  }

  /**
   * Returns the part of the acid that is bound in esters.
   *
   * @return the part of the total acid; empty when it was not stated and no model covers it
   */
  public Optional<MassFraction> boundInEsters() {
    return Optional.ofNullable(boundInEsters);
  }

  /**
   * Returns the relative standard uncertainty of the part that is bound in esters.
   *
   * @return the relative standard uncertainty; empty when there is no bound part or it was stated
   *     without one
   */
  public OptionalDouble boundRelativeStandardUncertainty() {
    return boundRelativeUncertainty == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(boundRelativeUncertainty);
  }

  /**
   * Returns whether an unknown part of the acid may be bound in esters: strong lactic acid beyond
   * the range of {@link StrongLacticAcid}, without a stated part.
   *
   * @return true if the bound part is there and not known
   */
  public boolean isBoundPartUnknown() {
    return boundInEsters == null && StrongLacticAcid.holdsOligomers(compound, assay);
  }

  /**
   * Returns what can be titrated at once, counted as the compound: the assay without the part that
   * is bound in esters. After hydrolysis it is the whole {@link #assay()}.
   *
   * @return its mass in the mass of the reagent
   */
  public MassFraction titratableAtOnce() {
    return boundInEsters == null
        ? assay
        : MassFraction.of(assay.fraction() * (1 - boundInEsters.fraction()));
  }

  /**
   * Returns the relative standard uncertainty of an amount that is weighed out: that of the assay.
   *
   * @return the relative standard uncertainty; empty when none was stated, and for lactic acid of
   *     50 to 92 % the tolerance of the label
   */
  public OptionalDouble relativeStandardUncertaintyByMass() {
    return assayRelativeUncertainty == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(assayRelativeUncertainty);
  }

  /**
   * Returns the relative standard uncertainty of an amount that is measured out by volume: that of
   * the density, with that of the assay where it was stated.
   *
   * @return the relative standard uncertainty; empty when there is no density
   */
  public OptionalDouble relativeStandardUncertaintyByVolume() {
    return densityRelativeUncertainty == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            Math.hypot(
                densityRelativeUncertainty, relativeStandardUncertaintyByMass().orElse(0.0)));
  }

  /**
   * Returns the amount of the compound in a mass of the reagent.
   *
   * @param mass the mass of the reagent
   * @return the amount, for an acid assayed as total acid the total
   */
  public AmountOfSubstance amountIn(Mass mass) {
    Objects.requireNonNull(mass, "mass");
    return AmountOfSubstance.from(assay.times(mass), compound.molarMass());
  }

  /**
   * Returns the amount of the compound in a volume of the reagent.
   *
   * @param volume the volume of the reagent
   * @return the amount, for an acid assayed as total acid the total
   * @throws IllegalStateException if the reagent has no density
   */
  public AmountOfSubstance amountIn(Volume volume) {
    Objects.requireNonNull(volume, "volume");
    return amountIn(massOf(volume));
  }

  /**
   * Returns the mass of the reagent that holds an amount of the compound.
   *
   * @param amount the amount of the compound
   * @return the mass of the reagent
   */
  public Mass massOf(AmountOfSubstance amount) {
    return amount.times(compound.molarMass()).times(1.0 / assay.fraction());
  }

  /**
   * Returns the mass of a volume of the reagent.
   *
   * @param volume the volume
   * @return the mass
   * @throws IllegalStateException if the reagent has no density
   */
  public Mass massOf(Volume volume) {
    Objects.requireNonNull(volume, "volume");
    return knownDensity().times(volume);
  }

  /**
   * Returns the volume of the reagent that holds an amount of the compound.
   *
   * @param amount the amount of the compound
   * @return the volume of the reagent
   * @throws IllegalStateException if the reagent has no density
   */
  public Volume volumeOf(AmountOfSubstance amount) {
    return volumeOf(massOf(amount));
  }

  /**
   * Returns the volume of a mass of the reagent.
   *
   * @param mass the mass
   * @return the volume
   * @throws IllegalStateException if the reagent has no density
   */
  public Volume volumeOf(Mass mass) {
    Objects.requireNonNull(mass, "mass");
    return knownDensity().volumeOf(mass);
  }

  /**
   * Returns the concentration of the compound in the reagent.
   *
   * @return the concentration, for an acid assayed as total acid the total
   * @throws IllegalStateException if the reagent has no density
   */
  public AmountConcentration concentration() {
    return AmountConcentration.from(assay.times(knownDensity()), compound.molarMass());
  }

  /**
   * Returns the concentration of the acid that is not bound in esters and reacts at once.
   *
   * @return the concentration; empty when there is no bound part or it is not known
   * @throws IllegalStateException if the reagent has no density
   */
  public Optional<AmountConcentration> freeConcentration() {
    return boundInEsters().map(bound -> concentration().times(1.0 - bound.fraction()));
  }

  private Density knownDensity() {
    if (density == null) {
      throw new IllegalStateException(
          this + ": its density is not known, so it has no volume; weigh it or give the density");
    }
    return density;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Reagent other
        && compound.equals(other.compound)
        && assay.equals(other.assay)
        && Objects.equals(density, other.density)
        && Objects.equals(densityRelativeUncertainty, other.densityRelativeUncertainty)
        && densitySources.equals(other.densitySources)
        && Objects.equals(assayRelativeUncertainty, other.assayRelativeUncertainty)
        && Objects.equals(boundInEsters, other.boundInEsters)
        && Objects.equals(boundRelativeUncertainty, other.boundRelativeUncertainty)
        && uses.equals(other.uses)
        && Objects.equals(assumed, other.assumed);
  }

  @Override
  public int hashCode() {
    return Objects.hash(compound, assay, density, assayRelativeUncertainty, boundInEsters);
  }

  /** Returns the compound and its assay, such as "lactic acid, 88 % by mass". */
  @Override
  public String toString() {
    return compound.name() + ", " + NumberText.plain(assay.inMassPercent()) + " % by mass";
  }
}
