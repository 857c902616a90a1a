package org.brewchem.beer;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Acid;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Treatments;
import org.brewchem.treatment.UnreachableException;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * The souring of a wort whose buffer is known, by lactic acid bacteria: how much lactic acid they
 * have formed when the pH has fallen to the one at which they are stopped, by the proton balance.
 * Nothing but lactic acid is formed here; other acids, and time, are left out. Where the buffer was
 * not measured, {@link SouringEstimate} gives a range. Immutable.
 */
public final class Souring {

  private final Liquid wort;
  private final Optional<Traced> before;

  private Souring(Liquid wort, Optional<Traced> before) {
    this.wort = wort;
    this.before = before;
  }

  /**
   * Starts with a wort.
   *
   * @param wort the wort before it is soured, such as the {@link
   *     org.brewchem.buffer.MeasuredBuffer#liquid() liquid} of its titration
   * @return the souring
   * @throws IllegalArgumentException if the balance of the wort is open
   */
  public static Souring of(Liquid wort) {
    Objects.requireNonNull(wort, "wort");
    if (!wort.contents().whyOpen().isEmpty()) {
      throw new IllegalArgumentException(
          "wort: an open balance is not possible; " + String.join("; ", wort.contents().whyOpen()));
    }
    return new Souring(wort, Optional.empty());
  }

  /**
   * States the lactate that the wort holds before, which acidulated malt or sour wort brings. It is
   * part of what buffers already, and counts in {@link SouredWort#lactate()} only.
   *
   * @param lactate all of it, counted as lactic acid
   * @param standardUncertainty u of it
   * @return the souring
   */
  public Souring withLactateBefore(
      MassConcentration lactate, MassConcentration standardUncertainty) {
    Objects.requireNonNull(lactate, "lactate");
    Objects.requireNonNull(standardUncertainty, "standard uncertainty");
    Source source =
        Source.of(
            "lactate before souring",
            lactate.inMilligramsPerLitre() / 1000,
            standardUncertainty.inMilligramsPerLitre() / 1000,
            "g/L");
    return new Souring(wort, Optional.of(Traced.of(source)));
  }

  /**
   * Sours until a pH is reached.
   *
   * @param stop the pH at which the bacteria are stopped
   * @return the soured wort
   * @throws UnreachableException if the pH is not below that of the wort, or no lactic acid brings
   *     it there
   */
  public SouredWort to(PH stop) {
    Dose<Liquid> dose = Dose.of(wort, Acid.LACTIC).to(Objects.requireNonNull(stop, "stop"));
    Step amount = dose.answer(Dose.AMOUNT).step();
    double factor = Acid.LACTIC.molarMass().inGramsPerMole() / 1000;
    Traced grams = dose.answer(Dose.AMOUNT).traced().times(factor);
    Step formed =
        Step.of(SouredWort.FORMED.title(), SouredWort.FORMED.scale(), Step.Kind.FORMULA)
            .text("amount of lactic acid x its molar mass", "")
            .inputs(List.of(amount))
            .detail(
                () ->
                    new Step.Detail(
                        List.of(dose.answer(Dose.AMOUNT) + " of lactic acid"),
                        dose.answer(Dose.AMOUNT).number() * factor - grams.value(),
                        1e-12 * grams.value()))
            .notices(dose.after().step(Figures.PH_VALUE).notices())
            .found(grams);
    return new SouredWort(dose.after(), formed, before);
  }

  /**
   * Sours until an amount of lactic acid has been formed.
   *
   * @param formed the lactic acid and lactate formed, counted as lactic acid, above 0, known
   *     exactly
   * @return the soured wort
   * @throws IllegalArgumentException if the amount is 0
   */
  public SouredWort forming(MassConcentration formed) {
    Objects.requireNonNull(formed, "formed");
    double grams = Checks.positive("lactate formed", formed.inMilligramsPerLitre() / 1000, "g/L");
    AmountConcentration amount =
        AmountConcentration.ofMillimolesPerLitre(
            1000 * grams / Acid.LACTIC.molarMass().inGramsPerMole());
    Step stated =
        Step.of(SouredWort.FORMED.title(), SouredWort.FORMED.scale(), Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text("as stated", "")
            .found(Traced.exact(grams));
    return new SouredWort(wort.after(Treatments.solute(Acid.LACTIC, amount)), stated, before);
  }

  @Override
  public String toString() {
    return "souring of a wort of " + wort.answer(Figures.PH_VALUE);
  }
}
