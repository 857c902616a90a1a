package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Notice;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Handling;
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
 * <p>Of an acid with a part that is bound in esters the whole acts, as after hydrolysis, or at once
 * the free part: {@link #atOnce()}.
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
  private final Traced free;
  private final boolean atOnce;

  private Supply(
      Compound compound,
      Optional<Reagent> reagent,
      boolean byVolume,
      double litresPerMole,
      Traced moles,
      Traced litres,
      Traced free,
      boolean atOnce) {
    this.compound = compound;
    this.reagent = reagent;
    this.byVolume = byVolume;
    this.litresPerMole = litresPerMole;
    this.moles = moles;
    this.litres = litres;
    this.free = free;
    this.atOnce = atOnce;
  }

  /** A pure compound, known exactly, whose volume is neglected. */
  static Supply pure(Compound compound) {
    Objects.requireNonNull(compound, "compound");
    return new Supply(compound, Optional.empty(), false, 0, ONE, ONE, ONE, false);
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
        reagent.compound(),
        Optional.of(reagent),
        byVolume,
        litresPerMole,
        moles,
        litres,
        free(reagent),
        false);
  }

  private static Traced free(Reagent reagent) {
    if (reagent.boundInEsters().isEmpty()) {
      return ONE;
    }
    double bound = reagent.boundInEsters().get().fraction();
    return bound == 0
        ? ONE
        : relative(
                "part of " + reagent + " that is bound in esters",
                100 * bound,
                reagent.boundRelativeStandardUncertainty(),
                "% of the acid")
            .times(-bound)
            .plus(ONE);
  }

  /** The same use, of which only what is free at once acts. */
  Supply atOnce() {
    return acting(true);
  }

  /** The same use, of which the whole acts, as after hydrolysis. */
  Supply afterHydrolysis() {
    return acting(false);
  }

  private Supply acting(boolean free) {
    return free == atOnce
        ? this
        : new Supply(compound, reagent, byVolume, litresPerMole, moles, litres, this.free, free);
  }

  /** Whether a part of the acid acts only after hydrolysis. */
  boolean actsInTwoSteps() {
    return free.value() < 1;
  }

  /** What acts of a mole by the label. */
  private Traced acting() {
    return atOnce ? free : ONE;
  }

  /** Moles that act, for a mole by the label. */
  double actingPerMole() {
    return acting().value();
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

  /** Moles that are really added and act, for moles by the label. */
  Traced moles(double byLabel) {
    return moles.times(acting()).times(byLabel);
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

  /** How the amount becomes a mass and a volume, in lines. */
  List<String> arithmetic(double molesPerLitre) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "mass: "
            + NumberText.significant(1000 * molesPerLitre, 4)
            + " mmol/L x "
            + NumberText.significant(gramsPerMole() * assay(), 5)
            + " g/mol / "
            + NumberText.plain(assay())
            + " = "
            + NumberText.significant(molesPerLitre * gramsPerMole() * 100, 4)
            + " g/hL");
    if (litresPerMole > 0) {
      lines.add(
          "volume: "
              + NumberText.significant(molesPerLitre * litresPerMole * 1e5, 4)
              + " mL/hL; volume increases by "
              + NumberText.significant(100 * molesPerLitre * litresPerMole, 3)
              + " %");
    }
    return lines;
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
    return reagent.map(Handling::cautionsOf).orElseGet(() -> Handling.cautionsOf(compound));
  }

  List<Notice> notices() {
    List<Notice> list = new ArrayList<>(reagent.map(Reagent::notices).orElse(List.of()));
    if (reagent.map(Reagent::isBoundPartUnknown).orElse(false)) {
      list.add(
          bound("an unknown part of the acid is bound in esters; state it (withBoundInEsters). "));
    } else if (reagent.isPresent() && actsInTwoSteps()) {
      list.add(
          bound(
              NumberText.significant(100 * (1 - free.value()), 3)
                  + " % of the acid is bound in esters. "));
    }
    return list;
  }

  private Notice bound(String part) {
    return Notice.of(
        TreatmentCode.BOUND_IN_ESTERS,
        name(),
        part
            + (atOnce
                ? "Only the free acid is counted here: the liquid becomes more acid as the esters"
                    + " hydrolyse, slowly in the cold"
                : "It acts only after hydrolysis, slow in the cold: just after the dose the liquid"
                    + " is less acid than computed"));
  }
}
