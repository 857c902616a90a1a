package org.brewchem.treatment;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Permission;
import org.brewchem.substance.Permissions;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Use;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * One use of a substance as it is bought or as it stands in a book: how much of it a mole takes,
 * and by which sources, one object each, what is measured out may differ from the label. Immutable.
 *
 * <p>What is measured out by mass errs with the assay, what is measured out by volume with the
 * density too. A liquid reagent makes the liquid grow by its volume; a powder and a pure compound
 * do not.
 */
final class Supply {

  private static final Traced ONE = Traced.exact(1);
  private static final AmountOfSubstance MOLE = AmountOfSubstance.ofMoles(1);

  private final Compound compound;
  private final Optional<Reagent> reagent;
  private final boolean byVolume;
  private final double litresPerMole;
  private final Traced moles;
  private final Traced litres;

  private Supply(
      Compound compound,
      Optional<Reagent> reagent,
      boolean byVolume,
      double litresPerMole,
      Traced moles,
      Traced litres) {
    this.compound = compound;
    this.reagent = reagent;
    this.byVolume = byVolume;
    this.litresPerMole = litresPerMole;
    this.moles = moles;
    this.litres = litres;
  }

  /** A pure compound, known exactly, whose volume is neglected. */
  static Supply pure(Compound compound) {
    Objects.requireNonNull(compound, "compound");
    return new Supply(compound, Optional.empty(), false, 0, ONE, ONE);
  }

  /** A reagent that is weighed out. */
  static Supply weighed(Reagent reagent) {
    Traced litres = reagent.density().isPresent() ? ONE.dividedBy(density(reagent)) : ONE;
    return of(reagent, false, assay(reagent), litres);
  }

  /** A liquid reagent that is measured out by volume. */
  static Supply poured(Reagent reagent) {
    if (reagent.density().isEmpty()) {
      throw new IllegalArgumentException(
          "reagent: "
              + reagent
              + " is not possible by volume; its density is not known. Weigh it or give the"
              + " density");
    }
    return of(reagent, true, assay(reagent).times(density(reagent)), ONE);
  }

  private static Supply of(Reagent reagent, boolean byVolume, Traced moles, Traced litres) {
    double litresPerMole = reagent.density().isPresent() ? reagent.volumeOf(MOLE).inLitres() : 0;
    return new Supply(
        reagent.compound(), Optional.of(reagent), byVolume, litresPerMole, moles, litres);
  }

  private static Traced assay(Reagent reagent) {
    return relative(
        "assay of " + reagent,
        reagent.assay().inMassPercent(),
        reagent.relativeStandardUncertaintyByMass(),
        "% by mass");
  }

  private static Traced density(Reagent reagent) {
    return relative(
        "density of " + reagent,
        reagent.density().orElseThrow().inGramsPerMillilitre(),
        reagent.densityRelativeStandardUncertainty(),
        "g/mL");
  }

  private static Traced relative(String name, double label, OptionalDouble relative, String unit) {
    Source source =
        relative.isPresent()
            ? Source.of(name, label, relative.getAsDouble() * label, unit)
            : Source.withoutUncertainty(name, label, unit);
    return Traced.of(source).times(1 / label).withValue(1);
  }

  /** Moles that are really added, for moles by the label. */
  Traced moles(double byLabel) {
    return moles.times(byLabel);
  }

  /** Litres that are really added, for moles by the label; 0 for what has no volume. */
  Traced litres(double molesByLabel) {
    return litresPerMole == 0 ? Traced.exact(0) : litres.times(molesByLabel * litresPerMole);
  }

  /** Grams to weigh out for a mole by the label. */
  double gramsPerMole() {
    return reagent
        .map(r -> r.massOf(MOLE))
        .orElseGet(() -> MOLE.times(compound.molarMass()))
        .inGrams();
  }

  /** Litres to measure out for a mole by the label; empty for what has no volume. */
  OptionalDouble litresPerMole() {
    return litresPerMole == 0 ? OptionalDouble.empty() : OptionalDouble.of(litresPerMole);
  }

  boolean byVolume() {
    return byVolume;
  }

  Compound compound() {
    return compound;
  }

  double assay() {
    return reagent.map(r -> r.assay().fraction()).orElse(1.0);
  }

  String name() {
    return reagent.map(Reagent::toString).orElseGet(compound::name);
  }

  Permission permissionIn(Use use) {
    return reagent
        .map(bought -> bought.permissionIn(use))
        .orElseGet(() -> Permissions.of(compound, use));
  }

  List<Caution> cautions() {
    List<Hazard> hazards =
        Hazards.of(compound, reagent.isPresent() && reagent.get().density().isEmpty());
    return Caution.of(hazards);
  }

  List<Notice> notices() {
    return reagent.flatMap(Reagent::boundInEsters).stream()
        .map(
            bound ->
                Notice.of(
                    TreatmentCode.BOUND_IN_ESTERS,
                    name(),
                    bound
                        + " of the acid is bound in esters and acts only after hydrolysis, slow in"
                        + " the cold: just after the dose the liquid is less acid than computed"))
        .toList();
  }
}
