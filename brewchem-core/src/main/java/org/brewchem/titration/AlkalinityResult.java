package org.brewchem.titration;

import java.util.List;
import org.brewchem.figure.Answer;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.uncertainty.Source;

/** A titration alkalinity that was found by titration with acid. Immutable. */
public final class AlkalinityResult extends Determination<TitrationAlkalinity> {

  private static final String QUANTITY = "alkalinity";

  private AlkalinityResult(TitratedCharge charge) {
    super(
        Figures.titrationAlkalinity(charge.titration().endPoint()),
        "Standard Methods 2320 B",
        charge,
        List.of());
  }

  static AlkalinityResult of(TitrationSetup titration, List<Volume> titres) {
    return new AlkalinityResult(TitratedCharge.ofVolumes(QUANTITY, acid(titration), titres));
  }

  static AlkalinityResult ofLogs(TitrationSetup titration, List<TitrationCurve> logs) {
    return new AlkalinityResult(TitratedCharge.ofLogs(QUANTITY, acid(titration), logs));
  }

  static AlkalinityResult ofBiasedLogs(
      TitrationSetup titration, List<TitrationCurve> logs, Source bias) {
    return new AlkalinityResult(TitratedCharge.ofBiasedLogs(QUANTITY, acid(titration), logs, bias));
  }

  static AlkalinityResult of(
      TitrationSetup titration, List<TitrationCurve> logs, FoundEndPoint found) {
    return new AlkalinityResult(TitratedCharge.ofFound(QUANTITY, acid(titration), logs, found));
  }

  private static TitrationSetup acid(TitrationSetup titration) {
    if (titration.titrant().substance().isAlkali()) {
      throw new IllegalStateException(
          "titrant: " + titration.titrant() + " measures no alkalinity; an acid is needed");
    }
    return titration;
  }

  /**
   * States the alkalinity as calcium carbonate.
   *
   * @return the alkalinity in mg/L as CaCO3, its equivalent a step of the explanation
   */
  public Answer<TitrationAlkalinity> asCaCO3() {
    return Answer.of(TitrationFigures.titrationAlkalinityAsCaCO3(endPoint()), this);
  }

  /** Prints the alkalinity as CaCO3 with U and the end point. */
  @Override
  public String toString() {
    return asCaCO3().toString();
  }
}
