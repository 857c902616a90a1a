package org.brewchem.treatment;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * One glass of a {@link BenchTrial}: what is pipetted into it, what it then is, and the tank that
 * is to be like it.
 *
 * <p>Glass and tank share the liquid and the bottle of reagent. The errors of these move both and
 * cancel in their difference; those of pipette, stock, glass and tank do not. A pH that was read in
 * the glass therefore says more about the tank than any prediction. Immutable.
 *
 * @param <L> the kind of liquid
 */
public final class GlassDose<L extends Liquid> implements Answering {

  private final L before;
  private final Supply supply;
  private final int number;
  private final Volume pipetted;
  private final Traced gramsPerLitre;
  private final L after;

  GlassDose(
      L before,
      Supply supply,
      int number,
      Volume pipetted,
      Traced gramsPerLitre,
      double shareOfStock) {
    this.before = before;
    this.supply = supply;
    this.number = number;
    this.pipetted = pipetted;
    this.gramsPerLitre = gramsPerLitre;
    after = gramsPerLitre.value() == 0 ? before : after(shareOfStock);
  }

  /** The reagent and the water of the stock. */
  @SuppressWarnings("unchecked") // a treated liquid is a liquid of its own kind
  private L after(double shareOfStock) {
    double grams = gramsPerLitre.value();
    Addition poured =
        Addition.of(supply, grams / supply.gramsPerMole()).times(gramsPerLitre.times(1 / grams));
    Addition dose = Dosing.isGasLeaving(before, supply) ? poured.withoutCarbonDioxide() : poured;
    double neat = supply.litres(grams / supply.gramsPerMole()).value();
    return (L)
        before.after(
            dose,
            Treatments.dilution(
                VolumeRatio.ofMillilitresPerHectolitre(Math.max(0, shareOfStock - neat) * 1e5)));
  }

  /**
   * Returns its place in the row.
   *
   * @return from 1, the glass without a dose
   */
  public int number() {
    return number;
  }

  /**
   * Returns what is pipetted into it.
   *
   * @return the volume of the stock; 0 in the first glass
   */
  public Volume pipetted() {
    return pipetted;
  }

  /**
   * Returns the dose.
   *
   * @return the mass of the reagent per volume of the liquid
   */
  public MassConcentration dose() {
    return MassConcentration.ofGramsPerLitre(gramsPerLitre.value());
  }

  /**
   * Returns what is then in the glass, the water of the stock included.
   *
   * @return the liquid, with the uncertainty of the dose
   */
  public L after() {
    return after;
  }

  /**
   * Answers a figure of what stands in the glass.
   *
   * @param figure the figure
   * @param <Q> the meaning of its value
   * @return the answer
   */
  public <Q> Answer<Q> answer(Figure<Q> figure) {
    return Answer.of(figure, this);
  }

  @Override
  public Step step(Figure<?> figure) {
    return after.step(figure);
  }

  @Override
  public String kind() {
    return "glass";
  }

  /**
   * Doses a tank like this glass: as much of the reagent to each litre, weighed.
   *
   * @param tank the tank
   * @return the dose of the tank, as predicted without the glass
   * @throws IllegalStateException if this is the glass without a dose
   */
  public TankDose<L> into(Tank tank) {
    if (gramsPerLitre.value() == 0) {
      throw new IllegalStateException("glass " + number + " has no dose; the tank stays as it is");
    }
    double grams = gramsPerLitre.value() * tank.volume().inLitres();
    return new TankDose.Request<>(Dosing.of(before, supply, tank)).giving(Mass.ofGrams(grams));
  }

  /**
   * Predicts the pH of a tank that is dosed like this glass, from the pH that was read in the
   * glass.
   *
   * @param tank the tank
   * @param read the pH read in the glass
   * @param standardUncertainty u of the reading, in pH, 0 or more
   * @return the reading, and by how much the tank will differ from the glass
   * @throws IllegalStateException if this is the glass without a dose
   */
  public Answer<PH> pHOf(Tank tank, PH read, double standardUncertainty) {
    Objects.requireNonNull(read, "pH read");
    Source source = Source.of("pH read in glass " + number, read.value(), standardUncertainty, "");
    Step predicted = stated(Figures.PH_VALUE, after.step(Figures.PH_VALUE));
    Step ofTank = stated(Figures.PH_VALUE, into(tank).after().step(Figures.PH_VALUE));
    Traced difference = ofTank.found().orElseThrow().minus(predicted.found().orElseThrow());
    Traced found = Traced.of(source).plus(difference);
    return Answer.of(
        Figures.PH_VALUE,
        Step.of("pH of the tank", Figures.PH_VALUE.scale(), Step.Kind.FORMULA)
            .origin(Origin.COMPUTED)
            .text("pH read in the glass + pH of the tank - pH of the glass, as predicted", "")
            .inputs(List.of(ofTank, predicted))
            .detail(
                () ->
                    new Step.Detail(
                        List.of("read in glass " + number + ": " + read),
                        read.value() + difference.value() - found.value(),
                        1e-12))
            .found(found));
  }

  private static Step stated(Figure<?> figure, Step step) {
    if (step.found().isEmpty()) {
      throw new UnknownFigureException(figure.title(), step.whyUnknown());
    }
    return step;
  }

  /** Says what goes into the glass and its pH then. */
  @Override
  public String toString() {
    return "glass "
        + number
        + ": "
        + pipetted
        + ", "
        + dose()
        + " of the reagent, "
        + Optional.of(answer(Figures.PH_VALUE)).map(Answer::toString).orElse("");
  }
}
