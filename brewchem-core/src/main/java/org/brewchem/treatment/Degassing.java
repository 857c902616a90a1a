package org.brewchem.treatment;

import java.util.List;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.internal.Roots;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.Species;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;

/**
 * Carbon dioxide let out until so much is left dissolved. It leaves as a neutral molecule: the
 * charge that closes the balance stays, the total carbonate falls, the pH rises.
 */
final class Degassing implements Treatment {

  private static final String WHAT = "dissolved carbon dioxide";
  private static final List<Caution> CAUTIONS = Caution.of(List.of(Hazard.CARBON_DIOXIDE));
  private static final double STEP = 1e-6;

  private final Traced residue;

  /**
   * Degasses.
   *
   * @param residue dissolved carbon dioxide left, mg/L of CO2, above 0
   */
  Degassing(Traced residue) {
    this.residue = residue;
  }

  @Override
  public Contents on(Contents before) {
    Balance.required("degassing", before, List.of(Component.CARBONATE));
    double perMole = Acid.CARBONIC.molarMass().inGramsPerMole() * 1000 * before.kilogramsPerLitre();
    double wanted = residue.value() / perMole;
    Equilibria equilibria = before.equilibria();
    double present = dissolved(equilibria);
    if (wanted >= present) {
      throw new UnreachableException(
          WHAT,
          residue.value(),
          present * perMole,
          Scales.MILLIGRAMS_PER_LITRE,
          wanted == present
              ? UnreachableException.Reason.ALREADY_THERE
              : UnreachableException.Reason.WRONG_DIRECTION,
          "degassing");
    }
    int index = equilibria.indexOf(Component.CARBONATE);
    double left =
        Roots.between(
                total -> {
                  equilibria.setTotal(index, total);
                  return dissolved(equilibria) - wanted;
                },
                0,
                before.least(Component.CARBONATE).value())
            .orElseThrow(
                end -> new IllegalStateException("degassing: no root of " + WHAT + " was found"));
    equilibria.setTotal(index, left * (1 + STEP));
    double above = dissolved(equilibria);
    equilibria.setTotal(index, left * (1 - STEP));
    // Both ways: what carbonate and alkalinity do to the pH nearly cancels, an error in one does
    // not.
    double slope = (above - dissolved(equilibria)) / (2 * left * STEP);
    Traced there =
        before.withTotal(Component.CARBONATE, Traced.exact(left)).trace(Degassing::dissolved);
    Traced total =
        Traced.linear(
            left, new Traced[] {residue, there}, new double[] {1 / (perMole * slope), -1 / slope});
    Step step =
        Step.of(WHAT + " after degassing", Scales.MILLIGRAMS_PER_LITRE, Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text("leaves as a neutral molecule", "")
            .found(residue);
    return before.withTotal(Component.CARBONATE, total).withBasis(List.of(step));
  }

  static double dissolved(Equilibria equilibria) {
    equilibria.pH();
    double sum = 0;
    for (Species species : equilibria.state().species()) {
      if (species.charge() == 0
          && species.metal().isEmpty()
          && species.component().filter(Component.CARBONATE::equals).isPresent()) {
        sum += species.molality().inMolesPerKilogram();
      }
    }
    return sum;
  }

  @Override
  public String text() {
    return "degassing to " + Scales.MILLIGRAMS_PER_LITRE.text(residue.value()) + " of CO2";
  }

  @Override
  public List<Caution> cautions() {
    return CAUTIONS;
  }

  @Override
  public String toString() {
    return text();
  }
}
