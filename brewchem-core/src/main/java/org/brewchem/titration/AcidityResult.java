package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.CarbonDioxidePressure;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;

/** A titratable acidity that was found by titration with alkali. Immutable. */
public final class AcidityResult extends Determination<TitratableAcidity> {

  /** Beer above this is unusual, in g/L as lactic acid (common practice, no source). */
  public static final double UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC = 10;

  /** No beer holds more carbon dioxide, g/L; our choice. */
  private static final double MOST_GAS = 20;

  /** An amount to tell what gas reads as. */
  private static final MassConcentration SOME_GAS = MassConcentration.ofGramsPerLitre(0.1);

  private static final String QUANTITY = "titratable acidity";
  private static final Temperature ROOM = Temperature.ofCelsius(20);
  private static final Temperature COLDEST = Temperature.ofCelsius(0);

  private AcidityResult(TitratedCharge charge) {
    super(
        Figures.titratableAcidity(charge.titration().endPoint()),
        charge.titration().method().source(),
        charge,
        size(charge));
  }

  static AcidityResult of(TitrationSetup titration, List<Volume> titres) {
    return new AcidityResult(TitratedCharge.ofVolumes(QUANTITY, alkaline(titration), titres));
  }

  static AcidityResult ofLogs(TitrationSetup titration, List<TitrationCurve> logs) {
    return new AcidityResult(TitratedCharge.ofLogs(QUANTITY, alkaline(titration), logs));
  }

  static AcidityResult of(
      TitrationSetup titration, List<TitrationCurve> logs, FoundEndPoint found) {
    return new AcidityResult(TitratedCharge.ofFound(QUANTITY, alkaline(titration), logs, found));
  }

  private static TitrationSetup alkaline(TitrationSetup titration) {
    if (!titration.titrant().substance().isAlkali()) {
      throw new IllegalStateException(
          "titrant: " + titration.titrant() + " measures no acidity; an alkali is needed");
    }
    return titration;
  }

  /**
   * Returns the greatest acidity that an open sample of a beer explains: {@link
   * #UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC} and all the carbon dioxide that water holds at 0 °C under 1
   * atm of it. More takes the gas of a closed vessel, or is a slip. Source of the solubility:
   * Plummer and Busenberg 1982; of what the gas adds: {@link Solution#acidityOfCarbonDioxide}, in
   * water at 20 °C.
   *
   * @param endPoint the pH that the titration ends at
   * @return the acidity, 17.0 g/L as lactic acid to pH 8.2
   */
  public static TitratableAcidity greatestOfOpenSample(PH endPoint) {
    MassConcentration saturated =
        CarbonDioxidePressure.carbonationUnder(Pressure.ofAtmospheres(1), COLDEST)
            .asMassConcentration();
    return TitratableAcidity.ofGramsPerLitreAs(
            UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC, Acid.LACTIC, endPoint)
        .plus(Solution.at(ROOM).acidityOfCarbonDioxide(saturated, endPoint));
  }

  private static List<Notice> size(TitratedCharge charge) {
    PH endPoint = charge.titration().endPoint();
    Temperature temperature = charge.titration().temperature();
    List<Notice> notices =
        new ArrayList<>(
            plausibility(
                TitratableAcidity.ofMilliequivalentsPerLitre(charge.value(), endPoint),
                temperature));
    double ofGas =
        Solution.at(temperature)
            .acidityOfCarbonDioxide(SOME_GAS, endPoint)
            .inGramsPerLitreAs(Acid.LACTIC);
    notices.add(
        Notice.of(
            TitrationCode.GAS_NOT_IN_BUDGET,
            QUANTITY,
            String.format(
                Locale.ROOT,
                "carbon dioxide that stayed in the sample is not in the budget: %s of it reads as %.2f"
                    + " g/L of lactic acid",
                SOME_GAS,
                ofGas)));
    return notices;
  }

  /**
   * Judges the size of a titratable acidity: what is unusual for a beer, and what no sample that
   * was open to the air can have, with the carbon dioxide that would explain it.
   *
   * @param value the acidity of a degassed beer
   * @param temperature the temperature of the titration
   * @return a notice; empty when there is nothing unusual
   */
  public static List<Notice> plausibility(TitratableAcidity value, Temperature temperature) {
    Objects.requireNonNull(temperature, "temperature");
    PH endPoint = value.endPoint();
    double lactic = value.inGramsPerLitreAs(Acid.LACTIC);
    if (lactic <= UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC) {
      return List.of();
    }
    boolean carbonated = value.compareTo(greatestOfOpenSample(endPoint)) > 0;
    double excess =
        1000 * (lactic - UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC) / Acid.LACTIC.gramsPerEquivalent();
    double grams =
        excess
            / Solution.at(temperature)
                .acidityOfCarbonDioxide(MassConcentration.ofGramsPerLitre(1), endPoint)
                .inMilliequivalentsPerLitre();
    return List.of(
        Notice.of(
            carbonated ? TitrationCode.SAMPLE_CARBONATED : TitrationCode.ACIDITY_UNUSUAL,
            QUANTITY,
            String.format(
                Locale.ROOT,
                "%.3g g/L as lactic acid is unusual for beer, also for a sour one%s%s",
                lactic,
                grams > MOST_GAS
                    ? ""
                    : String.format(
                        Locale.ROOT,
                        "; was the sample degassed? %.2g g/L of carbon dioxide left in it would"
                            + " explain what is above %.3g g/L",
                        grams,
                        UNUSUAL_GRAMS_PER_LITRE_AS_LACTIC),
                carbonated
                    ? ", more than any open liquid holds: it came from under pressure, or a figure"
                        + " is wrong"
                    : "")));
  }

  /**
   * States the acidity as an acid.
   *
   * @param basis the acid
   * @return the acidity in g/L of that acid, its equivalent a step of the explanation; {@link
   *     org.brewchem.figure.Scales} shows it per 100 mL or 100 g
   */
  public Answer<TitratableAcidity> as(AcidBasis basis) {
    return Answer.of(TitrationFigures.titratableAcidityAs(endPoint(), basis), this);
  }
}
