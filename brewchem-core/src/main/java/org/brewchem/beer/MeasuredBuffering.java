package org.brewchem.beer;

import java.util.Map;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Solute;
import org.brewchem.titration.MeasuredBuffer;

/** The buffering of a beer as its own titration showed it. */
final class MeasuredBuffering implements Buffering {

  private final MeasuredBuffer buffer;

  MeasuredBuffering(MeasuredBuffer buffer) {
    this.buffer = buffer;
  }

  /** An ion that is known replaces what the buffer assumed of it. */
  @Override
  public Solution closed(Solution known, PH measured) {
    Solution sum = buffer.solution().heldAt(known.temperature()).under(known.chemistry());
    for (Map.Entry<Component, Molality> ion : known.totals().entrySet()) {
      sum = sum.withTotal(ion.getKey(), ion.getValue());
    }
    return sum.closedTo(measured);
  }

  /** That of the same step made with a strong acid or base. */
  @Override
  public double standardUncertaintyOf(PH measured, PH predicted) {
    double change = predicted.minus(measured);
    if (change == 0) {
      return 0;
    }
    Solution solution = buffer.solution();
    Solute strong = change < 0 ? Acid.HYDROCHLORIC : Base.SODIUM_HYDROXIDE;
    Molality dose = solution.doseOf(strong, PH.of(solution.pH().value() + change));
    return buffer
        .changeOfPHBy(
            strong,
            AmountConcentration.from(
                dose, Density.ofKilogramsPerLitre(solution.kilogramsPerLitre())))
        .value()
        .standardUncertainty();
  }

  @Override
  public boolean extrapolatedAt(PH predicted) {
    return predicted.compareTo(buffer.lowestReading()) < 0
        || predicted.compareTo(buffer.highestReading()) > 0;
  }

  @Override
  public String basis() {
    return "the buffering was measured by titration from "
        + Texts.format(
            "pH %.2f to %.2f", buffer.lowestReading().value(), buffer.highestReading().value());
  }

  @Override
  public String toString() {
    return buffer.toString();
  }
}
