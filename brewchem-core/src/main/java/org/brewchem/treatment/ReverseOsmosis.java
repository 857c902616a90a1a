package org.brewchem.treatment;

import java.util.List;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.internal.NumberText;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;

/**
 * The permeate of a membrane that holds one share of all ions back and lets dissolved carbon
 * dioxide through, as it lets every gas.
 */
final class ReverseOsmosis implements Treatment {

  private static final Scale<Double> PERCENT = Scale.number("%", 2);

  private final Traced rejection;

  /**
   * Makes the treatment.
   *
   * @param rejection the share of the ions that is held back, 0 to 1
   */
  ReverseOsmosis(Traced rejection) {
    this.rejection = rejection;
  }

  @Override
  public Contents on(Contents before) {
    Balance.required("reverse osmosis", before, List.of(Component.CARBONATE));
    Traced through = Traced.exact(1).minus(rejection);
    Traced gas = before.trace(Degassing::dissolved);
    Traced ions = before.least(Component.CARBONATE).minus(gas);
    // As diluted with pure water, so that what was added to an unknown ion is held back too.
    Contents after =
        before
            .mixed(Contents.pure(before.temperature(), before.chemistry()), through)
            .withTotal(Component.CARBONATE, gas.plus(ions.times(through)));
    Step step =
        Step.of("rejection of the membrane", PERCENT, Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text("one share of all ions, none of dissolved carbon dioxide", "")
            .found(rejection.times(100));
    return after.withBasis(List.of(step));
  }

  @Override
  public String text() {
    return "reverse osmosis with a rejection of "
        + NumberText.significant(100 * rejection.value(), 4)
        + " %";
  }

  @Override
  public List<Caution> cautions() {
    return List.of();
  }

  @Override
  public String toString() {
    return text();
  }
}
