package org.brewchem.water;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Use;
import org.brewchem.treatment.Treatments;
import org.jspecify.annotations.Nullable;

/**
 * A brewing water as a liquid: it answers figures and can be treated, and a treated water is a
 * water.
 *
 * <p>It comes from {@link WaterReport#water()}, or is {@link #pure()}. A figure that the report
 * states is answered as reported. Everything else, and every figure of a treated water, comes from
 * what the water holds: its ions, its carbon dioxide and the inert charge that closes its balance.
 * What nobody stated stays unknown through every treatment, and an answer says so.
 *
 * <p>A water whose alkalinity is not known, or contradicts its pH, has no proton balance: its pH
 * and all that rests on it are unknown, with the reason; its ions, and figures that are formulas of
 * them, are known.
 *
 * <p>Immutable and thread-safe.
 */
public final class Water implements Liquid {

  private static final Water PURE =
      new Water(
          Map.of(),
          Chemistry.standard(),
          chemistry -> Contents.pure(ReportedContents.USUAL_TEMPERATURE, chemistry),
          List.of(),
          false);

  private final Map<Figure<?>, Step> reported;
  private final Chemistry chemistry;
  private final Function<Chemistry, Contents> made;
  private final List<Caution> cautions;
  private final boolean treated;
  private volatile @Nullable Contents contents;

  private Water(
      Map<Figure<?>, Step> reported,
      Chemistry chemistry,
      Function<Chemistry, Contents> made,
      List<Caution> cautions,
      boolean treated) {
    this.reported = reported;
    this.chemistry = chemistry;
    this.made = made;
    this.cautions = List.copyOf(cautions);
    this.treated = treated;
  }

  /**
   * Returns a water of which some figures are stated, such as a row of a table, under the standard
   * chemistry. Most callers want {@link WaterReport} instead.
   *
   * @param reported the figures that are answered as stated, each with its step
   * @param closing gives the contents that have the figures stated, under a chemistry; called when
   *     they are first needed, perhaps by several threads
   * @return the water
   */
  public static Water reported(
      Map<Figure<?>, Step> reported, Function<Chemistry, Contents> closing) {
    Objects.requireNonNull(reported, "reported");
    Objects.requireNonNull(closing, "closing");
    return new Water(Map.copyOf(reported), Chemistry.standard(), closing, List.of(), false);
  }

  /**
   * Returns pure water at 25 °C, free of carbon dioxide.
   *
   * @return the water
   */
  public static Water pure() {
    return PURE;
  }

  @Override
  public Contents contents() {
    Contents ready = contents;
    if (ready == null) {
      ready = made.apply(chemistry);
      contents = ready;
    }
    return ready;
  }

  private Contents contentsUnder(Chemistry other) {
    return other.equals(chemistry) ? contents() : made.apply(other);
  }

  private Water derived(Function<Contents, Contents> change, List<Caution> all, boolean isTreated) {
    Water water =
        new Water(Map.of(), chemistry, other -> change.apply(contentsUnder(other)), all, isTreated);
    water.contents();
    return water;
  }

  /**
   * Treats the water.
   *
   * @param steps what is done, in this order
   * @return the water afterwards, with the notices of both and the cautions of every step so far
   * @throws IllegalArgumentException if a step does not go with what the water holds, or adds what
   *     may not go into brewing water
   */
  @Override
  public Water after(Treatment... steps) {
    Treatment[] all = Objects.requireNonNull(steps, "steps").clone();
    if (all.length == 0) {
      return this;
    }
    Set<Caution> minded = new LinkedHashSet<>(cautions);
    for (Treatment step : all) {
      minded.addAll(step.cautions());
    }
    return derived(
        before -> Treatments.apply(before, Use.BREWING_WATER, all), List.copyOf(minded), true);
  }

  /**
   * Returns the water warmed or cooled in a closed vessel: what it holds stays, its pH moves.
   *
   * @param temperature 0 to 100 °C
   * @return the water at that temperature
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public Water at(Temperature temperature) {
    Objects.requireNonNull(temperature, "temperature");
    Checks.inRange("temperature", temperature.inCelsius(), "°C", 0, 100);
    return temperature.equals(contents().temperature())
        ? this
        : derived(before -> before.at(temperature), cautions, treated);
  }

  /**
   * Returns the water as another chemistry sees it: what was reported stays, its carbon dioxide and
   * inert charge are found by that chemistry, and the treatments follow.
   *
   * @param other the chemistry
   * @return the water under that chemistry
   */
  public Water under(Chemistry other) {
    return new Water(reported, Objects.requireNonNull(other, "other"), made, cautions, treated);
  }

  /**
   * Returns the water as a solution, its uncertainties left behind.
   *
   * @return the solution, closed to the air, at the water's temperature; what is unknown counts as
   *     absent
   * @throws IllegalStateException if the proton balance of the water is not known
   */
  public Solution solution() {
    return Solution.of(contents());
  }

  @Override
  public Step step(Figure<?> figure) {
    Step own = reported.get(Objects.requireNonNull(figure, "figure"));
    return own == null ? figure.rule().find(figure, this) : own;
  }

  @Override
  public String kind() {
    return "water";
  }

  /**
   * {@inheritDoc}
   *
   * <p>Of a water that was treated also what is unusual in it: an ion or a pH that hardly any water
   * has, such as of acid dosed without a limit to its pH, and carbon dioxide that will leave.
   */
  @Override
  public List<Notice> notices() {
    Set<Notice> all = new LinkedHashSet<>(contents().notices());
    if (treated) {
      all.addAll(UsualWater.afterTreatment(this));
    }
    return List.copyOf(all);
  }

  @Override
  public List<Caution> cautions() {
    return cautions;
  }

  /**
   * Returns the calcium.
   *
   * @return as Ca; unknown when it was not reported
   */
  public Answer<MassConcentration> calcium() {
    return answer(Figures.CALCIUM);
  }

  /**
   * Returns the magnesium.
   *
   * @return as Mg; unknown when it was not reported
   */
  public Answer<MassConcentration> magnesium() {
    return answer(Figures.MAGNESIUM);
  }

  /**
   * Returns the sodium.
   *
   * @return as Na; unknown when it was not reported
   */
  public Answer<MassConcentration> sodium() {
    return answer(Figures.SODIUM);
  }

  /**
   * Returns the potassium.
   *
   * @return as K; unknown when it was not reported
   */
  public Answer<MassConcentration> potassium() {
    return answer(Figures.POTASSIUM);
  }

  /**
   * Returns the sulfate.
   *
   * @return as SO4, on whatever basis it was reported; unknown when it was not
   */
  public Answer<MassConcentration> sulfate() {
    return answer(Figures.SULFATE);
  }

  /**
   * Returns the chloride.
   *
   * @return as Cl; unknown when it was not reported
   */
  public Answer<MassConcentration> chloride() {
    return answer(Figures.CHLORIDE);
  }

  /**
   * Returns the nitrate.
   *
   * @return as NO3, on whatever basis it was reported; unknown when it was not
   */
  public Answer<MassConcentration> nitrate() {
    return answer(Figures.NITRATE);
  }

  /**
   * Returns the pH.
   *
   * @return the pH, closed to the air; unknown when the proton balance is not known
   */
  public Answer<PH> pH() {
    return answer(Figures.PH_VALUE);
  }

  /**
   * Returns the carbonate alkalinity.
   *
   * @return bicarbonate and twice carbonate, on whatever basis it was reported; unknown when it was
   *     not
   */
  public Answer<CarbonateAlkalinity> alkalinity() {
    return answer(Figures.CARBONATE_ALKALINITY);
  }

  /**
   * Returns the titration alkalinity: the strong acid from the pH of the water to an end point,
   * without dilution by the titrant.
   *
   * @param endPoint the pH that the titration ends at
   * @return the alkalinity with its end point; unknown when the proton balance is not known
   */
  public Answer<TitrationAlkalinity> titrationAlkalinity(PH endPoint) {
    return answer(Figures.titrationAlkalinity(Objects.requireNonNull(endPoint, "endPoint")));
  }

  /**
   * Returns all carbon dioxide in its three forms.
   *
   * @return CO2, bicarbonate and carbonate together; unknown when the alkalinity is
   */
  public Answer<AmountConcentration> totalCarbonDioxide() {
    return answer(Figures.TOTAL_CARBON_DIOXIDE);
  }

  /**
   * Returns the residual alkalinity after Kolbach.
   *
   * @return of the carbonate alkalinity; unknown when calcium, magnesium or alkalinity is
   */
  public Answer<ResidualAlkalinity> residualAlkalinity() {
    return answer(WaterFigures.RESIDUAL_ALKALINITY);
  }

  /**
   * Returns the calcium hardness.
   *
   * @return the calcium in equivalents; unknown when it was not reported
   */
  public Answer<Hardness> calciumHardness() {
    return answer(WaterFigures.CALCIUM_HARDNESS);
  }

  /**
   * Returns the magnesium hardness.
   *
   * @return the magnesium in equivalents; unknown when it was not reported
   */
  public Answer<Hardness> magnesiumHardness() {
    return answer(WaterFigures.MAGNESIUM_HARDNESS);
  }

  /**
   * Returns the total hardness.
   *
   * @return calcium and magnesium hardness together; unknown when either is
   */
  public Answer<Hardness> totalHardness() {
    return answer(WaterFigures.TOTAL_HARDNESS);
  }

  /**
   * Returns the temporary hardness, which goes with bicarbonate and can be boiled out.
   *
   * @return the lesser of total hardness and alkalinity; unknown when either is
   */
  public Answer<Hardness> temporaryHardness() {
    return answer(WaterFigures.TEMPORARY_HARDNESS);
  }

  /**
   * Returns the permanent hardness, which stays on boiling.
   *
   * @return total less temporary hardness; unknown when either is
   */
  public Answer<Hardness> permanentHardness() {
    return answer(WaterFigures.PERMANENT_HARDNESS);
  }

  /**
   * Returns the ratio of sulfate to chloride by mass.
   *
   * @return the ratio; unknown when either is, and when there is no chloride
   */
  public Answer<Double> sulfateToChloride() {
    return answer(Figures.SULFATE_TO_CHLORIDE);
  }

  /**
   * Returns the ion balance.
   *
   * @return the difference of cations and anions in per cent of their sum, what is unknown counted
   *     as absent, with a notice
   */
  public Answer<Double> ionBalance() {
    return answer(WaterFigures.ION_BALANCE);
  }

  /**
   * Returns what is known.
   *
   * @return such as {@code calcium 92.0 mg/L, magnesium 11.0 mg/L, carbonate alkalinity 215.0 mg/L
   *     as CaCO3, pH 7.60}
   */
  @Override
  public String toString() {
    List<String> parts = new ArrayList<>();
    for (Figure<?> figure : ReportedContents.ORDER) {
      step(figure)
          .found()
          .ifPresent(found -> parts.add(figure.title() + " " + figure.shown().text(found.value())));
    }
    pH().optional().ifPresent(value -> parts.add(pH().figure().shown().text(pH().number())));
    return parts.isEmpty() ? "nothing known" : String.join(", ", parts);
  }
}
