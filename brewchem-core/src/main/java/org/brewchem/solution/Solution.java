package org.brewchem.solution;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Solute;
import org.jspecify.annotations.Nullable;

/**
 * A solution: components with their total concentrations at a temperature, of which pH, charge,
 * buffer capacity and species are asked.
 *
 * <p>Immutable and thread-safe; equal by temperature, chemistry and totals. The totals count in mol
 * per kg of water. A concentration per litre is converted once, on the way in, with the density of
 * water at 20 °C, and on the way out by the same factor; extract and dissolved salts are neglected
 * in it. A concentration per kilogram goes in as it is.
 *
 * <p>At a pH that is not its own a solution is not neutral. What is missing is carried by an inert
 * univalent ion that counts in the ionic strength: the sodium of the lye, the chloride of the acid.
 */
public final class Solution implements Liquid {

  private final Temperature temperature;
  private final Chemistry chemistry;
  private final Map<Component, Double> totals;
  private final double inertCharge;
  private final double kilogramsPerLitre;
  private final History history;
  private volatile @Nullable CompiledMixture compiled;

  private Solution(
      Temperature temperature,
      Chemistry chemistry,
      Map<Component, Double> totals,
      double inertCharge,
      double kilogramsPerLitre,
      History history,
      @Nullable CompiledMixture compiled) {
    this.history = history;
    this.compiled = compiled;
    this.temperature = Objects.requireNonNull(temperature, "temperature");
    Checks.inRange("temperature", temperature.inCelsius(), "°C", 0, 100);
    this.chemistry = Objects.requireNonNull(chemistry, "chemistry");
    this.totals = Collections.unmodifiableMap(totals);
    this.inertCharge = Checks.finite("inert charge", inertCharge, "Eq/kg");
    this.kilogramsPerLitre = kilogramsPerLitre;
  }

  /**
   * Starts with pure water and the standard chemistry.
   *
   * @param temperature 0 to 100 °C
   * @return pure water
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public static Solution at(Temperature temperature) {
    return new Solution(
        temperature,
        Chemistry.standard(),
        Map.of(),
        0,
        Contents.STANDARD_KILOGRAMS_PER_LITRE,
        History.NONE,
        null);
  }

  /**
   * Starts with pure water in a textbook's arithmetic: 25 °C, activities are concentrations, pKw
   * 14.00, and a litre counts as a kilogram.
   *
   * @return pure water
   */
  public static Solution textbook() {
    return new Solution(
        Temperature.ofCelsius(25), Chemistry.textbook(14), Map.of(), 0, 1, History.NONE, null);
  }

  /**
   * Makes a solution of totals per kilogram of water, as {@link #totals} and {@link #inertCharge}
   * give them.
   *
   * @param temperature 0 to 100 °C
   * @param chemistry the chemistry
   * @param totals the total of each component
   * @param inertCharge net charge of the inert univalent ions, of either sign
   * @return the solution, a litre of which holds the water of a litre at 20 °C
   * @throws IllegalArgumentException if the temperature is out of range
   */
  public static Solution fromTotals(
      Temperature temperature,
      Chemistry chemistry,
      Map<Component, Molality> totals,
      ChargeConcentration inertCharge) {
    Map<Component, Double> plain = new LinkedHashMap<>();
    totals.forEach((component, total) -> plain.put(component, total.inMolesPerKilogram()));
    double litre = Contents.STANDARD_KILOGRAMS_PER_LITRE;
    return new Solution(
        temperature,
        chemistry,
        plain,
        inertCharge.inEquivalentsPerLitre() / litre,
        litre,
        History.NONE,
        null);
  }

  /**
   * Adds an amount of a solute per litre of this solution, its volume unchanged.
   *
   * @param solute what is dissolved
   * @param concentration 0 or more
   * @return the new solution
   */
  public Solution with(Solute solute, AmountConcentration concentration) {
    return adding(solute, concentration.inMolesPerLitre() / kilogramsPerLitre);
  }

  /**
   * Adds so much of a solute per kilogram of water.
   *
   * @param solute what is dissolved
   * @param molality 0 or more
   * @return the new solution
   */
  public Solution with(Solute solute, Molality molality) {
    return adding(solute, molality.inMolesPerKilogram());
  }

  private Solution adding(Solute solute, double molesPerKilogram) {
    Map<Component, Double> sum = new LinkedHashMap<>(totals);
    solute
        .components()
        .forEach((component, moles) -> sum.merge(component, moles * molesPerKilogram, Double::sum));
    return holding(sum, inertCharge).having(history.with(solute, molesPerKilogram));
  }

  /** The same solution with another history. */
  private Solution having(History other) {
    return new Solution(
        temperature, chemistry, totals, inertCharge, kilogramsPerLitre, other, compiled);
  }

  /**
   * Replaces the total of a component, such as carbonate after degassing; other charges stay.
   *
   * @param component the component
   * @param total its new total, 0 or more
   * @return the new solution
   */
  public Solution withTotal(Component component, Molality total) {
    Map<Component, Double> changed = new LinkedHashMap<>(totals);
    changed.put(Objects.requireNonNull(component, "component"), total.inMolesPerKilogram());
    return holding(changed, inertCharge);
  }

  /** The same solution with other totals, which needs compiling only if components came in. */
  private Solution holding(Map<Component, Double> others, double otherInertCharge) {
    return new Solution(
        temperature,
        chemistry,
        others,
        otherInertCharge,
        kilogramsPerLitre,
        history,
        others.size() == totals.size() ? compiled : null);
  }

  /**
   * Takes out carbon dioxide until a given amount is left. It leaves as a neutral molecule, so that
   * the charge of everything else stays as it was.
   *
   * @param residue the CO2 left, all its forms together counted as CO2; at most what is there
   * @return the degassed solution
   * @throws IllegalArgumentException if the residue is more than there was
   */
  public Solution degassedTo(MassConcentration residue) {
    AmountConcentration moles = AmountConcentration.from(residue, Acid.CARBONIC.molarMass());
    double left = moles.inMolesPerLitre() / kilogramsPerLitre;
    if (left > totals.getOrDefault(Component.CARBONATE, 0.0)) {
      throw Checks.outOfRange(
          "residue of CO2",
          residue.inGramsPerLitre(),
          "g/L",
          "at most " + total(Component.CARBONATE).times(Acid.CARBONIC.molarMass()));
    }
    return withTotal(Component.CARBONATE, Molality.ofMolesPerKilogram(left));
  }

  /**
   * Returns the error that carbon dioxide left in a sample makes in its titratable acidity: the
   * acidity with the residue less that without any. It reads as acid of the liquid, about two grams
   * per litre as lactic acid for each gram per litre to pH 8.2. For an unknown sample ask water.
   *
   * @param residue the CO2 left, all its forms together counted as CO2
   * @param endPoint the end point of the titration
   * @return the error, without dilution by the titrant; 0 or more
   */
  public TitratableAcidity acidityOfCarbonDioxide(MassConcentration residue, PH endPoint) {
    Solution degassed = withTotal(Component.CARBONATE, Molality.ofMolesPerKilogram(0));
    return degassed
        .with(Acid.CARBONIC, AmountConcentration.from(residue, Acid.CARBONIC.molarMass()))
        .titratableAcidity(endPoint)
        .minus(degassed.titratableAcidity(endPoint));
  }

  /**
   * Adds inert univalent ions, strong ions that nobody named.
   *
   * @param netCharge their net charge per litre, of either sign
   * @return the new solution
   */
  public Solution withInertCharge(ChargeConcentration netCharge) {
    return holding(totals, inertCharge + netCharge.inEquivalentsPerLitre() / kilogramsPerLitre);
  }

  /**
   * Closes the strong-ion difference to a measured pH: adds the inert univalent ions that make the
   * solution have it.
   *
   * @param measured the pH it is to have
   * @return the new solution
   */
  public Solution closedTo(PH measured) {
    return holding(totals, inertCharge - equilibria().chargeAt(measured.value()));
  }

  /**
   * Returns the same solution at another temperature, its totals per kilogram unchanged.
   *
   * @param other 0 to 100 °C
   * @return the new solution
   */
  public Solution heldAt(Temperature other) {
    return new Solution(other, chemistry, totals, inertCharge, kilogramsPerLitre, history, null);
  }

  /**
   * Returns the same solution under another chemistry.
   *
   * @param other the chemistry
   * @return the new solution
   */
  public Solution under(Chemistry other) {
    return new Solution(temperature, other, totals, inertCharge, kilogramsPerLitre, history, null);
  }

  /**
   * Returns the same solution at another level of its chemistry.
   *
   * @param level the level
   * @return the new solution
   */
  public Solution under(Level level) {
    return under(chemistry.at(level));
  }

  /**
   * Dilutes with pure water.
   *
   * @param factor final volume over own volume, 1 or more
   * @return the diluted solution
   * @throws IllegalArgumentException if the factor is below 1 or not finite
   */
  public Solution diluted(double factor) {
    Checks.inRange("dilution factor", factor, "", 1, Double.MAX_VALUE);
    return scaled(1 / factor);
  }

  private Solution scaled(double factor) {
    Map<Component, Double> scaled = new LinkedHashMap<>();
    totals.forEach((component, total) -> scaled.put(component, total * factor));
    return holding(scaled, inertCharge * factor).having(history.times(factor));
  }

  /**
   * Adds all that another solution holds per litre to this one, its volume unchanged.
   *
   * @param other a solution at the same temperature
   * @return the sum, under this solution's chemistry
   * @throws IllegalArgumentException if the temperatures differ
   */
  public Solution plus(Solution other) {
    if (!temperature.equals(other.temperature)) {
      throw new IllegalArgumentException(
          "temperature: " + other.temperature + " is not possible; " + temperature + " is needed");
    }
    // What stands per litre in the other stands per litre here, whatever a litre weighs in each.
    Solution same = other.scaled(other.kilogramsPerLitre / kilogramsPerLitre);
    Map<Component, Double> sum = new LinkedHashMap<>(totals);
    same.totals.forEach((component, total) -> sum.merge(component, total, Double::sum));
    return holding(sum, inertCharge + same.inertCharge).having(history.plus(same.history));
  }

  /**
   * Mixes volumes of two solutions, volumes taken as additive: totals and strong-ion difference mix
   * exactly, pH does not.
   *
   * @param own the volume of this solution
   * @param other the other solution, at the same temperature
   * @param volume the volume of the other
   * @return the mixture, under this solution's chemistry
   * @throws IllegalArgumentException if the temperatures differ or both volumes are zero
   */
  public Solution mixed(Volume own, Solution other, Volume volume) {
    double share = own.inLitres() / own.plus(Objects.requireNonNull(volume, "volume")).inLitres();
    if (Double.isNaN(share)) {
      throw new IllegalArgumentException("volumes: 0 and 0 is not possible; one must be above 0");
    }
    return scaled(share).plus(other.scaled(1 - share));
  }

  /**
   * Returns the temperature.
   *
   * @return the temperature
   */
  public Temperature temperature() {
    return temperature;
  }

  /**
   * Returns the chemistry.
   *
   * @return the chemistry
   */
  public Chemistry chemistry() {
    return chemistry;
  }

  /**
   * Returns the totals per kilogram of water, which {@link #fromTotals} takes back.
   *
   * @return an unmodifiable map
   */
  public Map<Component, Molality> totals() {
    Map<Component, Molality> typed = new LinkedHashMap<>();
    totals.forEach((component, total) -> typed.put(component, Molality.ofMolesPerKilogram(total)));
    return Collections.unmodifiableMap(typed);
  }

  /**
   * Returns the net charge of the inert ions.
   *
   * @return the charge per litre, of either sign
   */
  public ChargeConcentration inertCharge() {
    return ChargeConcentration.ofEquivalentsPerLitre(inertCharge * kilogramsPerLitre);
  }

  /**
   * Returns the factor between concentrations per litre and per kilogram of water.
   *
   * @return kg of water per litre of solution
   */
  public double kilogramsPerLitre() {
    return kilogramsPerLitre;
  }

  /**
   * Returns the total concentration of a component.
   *
   * @param component the component
   * @return its total per litre, 0 when there is none
   */
  public AmountConcentration total(Component component) {
    double total = totals.getOrDefault(Objects.requireNonNull(component, "component"), 0.0);
    return AmountConcentration.ofMolesPerLitre(total * kilogramsPerLitre);
  }

  /**
   * Finds the pH.
   *
   * @return -log10 of the H+ activity
   * @throws NoSolutionException if there is none between -3 and 17
   */
  public PH pH() {
    return PH.of(equilibria().pH());
  }

  /**
   * Solves for everything at once.
   *
   * @return pH, ionic strength and species
   * @throws NoSolutionException if there is no pH between -3 and 17
   */
  public Equilibrium equilibrium() {
    return equilibria().equilibrium();
  }

  /**
   * Solves for everything at a given pH.
   *
   * @param pH the pH
   * @return ionic strength and species at that pH
   */
  public Equilibrium equilibriumAt(PH pH) {
    return equilibria().equilibriumAt(pH.value());
  }

  /**
   * Returns the net charge at a pH: zero at the solution's own, positive below, negative above.
   *
   * @param pH the pH
   * @return the charge per litre
   */
  public ChargeConcentration charge(PH pH) {
    return ChargeConcentration.ofEquivalentsPerLitre(
        equilibria().chargeAt(Objects.requireNonNull(pH, "pH").value()) * kilogramsPerLitre);
  }

  /**
   * Returns the strong base that takes the solution from one pH to another, without dilution by it.
   *
   * @param from where it starts
   * @param to where it ends
   * @return equivalents of base per litre; negative when acid is needed
   */
  public ChargeConcentration equivalents(PH from, PH to) {
    return charge(Objects.requireNonNull(from, "from"))
        .minus(charge(Objects.requireNonNull(to, "to")));
  }

  /**
   * Returns the titratable acidity: the strong base per litre from the solution's own pH to the end
   * point, without dilution by it. {@link SimulatedTitration} gives the laboratory's, diluted.
   *
   * @param endPoint the end point
   * @return the acidity; negative when the solution lies above the end point
   */
  public TitratableAcidity titratableAcidity(PH endPoint) {
    return TitratableAcidity.ofMilliequivalentsPerLitre(
        -charge(endPoint).inMilliequivalentsPerLitre(), endPoint);
  }

  /**
   * Returns the buffer capacity at a pH: the slope of the charge.
   *
   * @param pH the pH
   * @return equivalents per litre and pH, above 0
   */
  public BufferCapacity bufferCapacity(PH pH) {
    Equilibria equilibria = equilibria();
    equilibria.chargeAt(pH.value());
    return BufferCapacity.ofMilliequivalentsPerLitrePerPH(
        equilibria.bufferCapacity() * kilogramsPerLitre * 1000);
  }

  /**
   * Finds how much of a solute brings the solution to a pH, its volume unchanged. A proposal: see
   * {@link org.brewchem.substance.Handling}.
   *
   * @param solute an acid, a base or a salt
   * @param target the pH to reach
   * @return the dose per kg of water; 0 when the solution is there already
   * @throws NoSolutionException if no dose between 0 and 50 mol/kg reaches the target
   */
  public Molality doseOf(Solute solute, PH target) {
    return Molality.ofMolesPerKilogram(
        adding(solute.components(), 0, 0, work -> {}).toReach(target, solute.name()));
  }

  /**
   * Makes a solution of what a liquid holds, uncertainties left behind.
   *
   * @param contents the contents
   * @return the solution; a component whose total is unknown counts with what was added to it
   * @throws IllegalStateException if the balance is open
   */
  public static Solution of(Contents contents) {
    Map<Component, Double> totals = new LinkedHashMap<>();
    Equilibria equilibria = contents.equilibria();
    equilibria.components().forEach(c -> totals.put(c, contents.least(c).value()));
    return new Solution(
        contents.temperature(),
        contents.chemistry(),
        totals,
        contents.inertCharge().orElseThrow().value(),
        contents.kilogramsPerLitre(),
        History.NONE,
        contents.compiled());
  }

  @Override
  public Contents contents() {
    return history.toldOf(
        Contents.exact(temperature, chemistry, kilogramsPerLitre, totals, inertCharge, compiled()));
  }

  @Override
  public Solution after(Treatment... steps) {
    Contents contents = contents();
    for (Treatment step : Objects.requireNonNull(steps, "steps")) {
      contents = step.on(contents);
    }
    Solution plain = of(contents);
    return plain.having(history.treated(contents, plain.contents(), List.of(steps)));
  }

  @Override
  public Step step(Figure<?> figure) {
    return figure.rule().find(figure, this);
  }

  @Override
  public String kind() {
    return "solution";
  }

  @Override
  public List<Notice> notices() {
    return contents().notices();
  }

  @Override
  public List<Caution> cautions() {
    return history.cautions();
  }

  /** Searches along an addition, in a work space of its own that may be prepared first. */
  DoseSearch adding(
      Map<Component, Double> added,
      double addedInert,
      double dilution,
      Consumer<Equilibria> prepared) {
    Set<Component> all = new LinkedHashSet<>(totals.keySet());
    all.addAll(added.keySet());
    Equilibria equilibria =
        all.size() == totals.size()
            ? Equilibria.over(compiled())
            : Equilibria.of(all, temperature, chemistry);
    prepared.accept(equilibria);
    return DoseSearch.along(equilibria, totals, inertCharge, added, addedInert, dilution);
  }

  /** Totals, mol/kg. */
  Map<Component, Double> molesPerKilogram() {
    return totals;
  }

  /** Inert charge, Eq/kg. */
  double inertPerKilogram() {
    return inertCharge;
  }

  private CompiledMixture compiled() {
    CompiledMixture ready = compiled;
    if (ready == null) {
      ready = Equilibria.compile(totals.keySet(), temperature, chemistry);
      compiled = ready;
    }
    return ready;
  }

  Equilibria equilibria() {
    Equilibria equilibria = Equilibria.over(compiled());
    totals.forEach((component, total) -> equilibria.setTotal(equilibria.indexOf(component), total));
    equilibria.setInertCharge(inertCharge);
    return equilibria;
  }

  private List<Object> state() {
    return List.of(temperature, chemistry, totals, inertCharge, kilogramsPerLitre);
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Solution other && state().equals(other.state());
  }

  @Override
  public int hashCode() {
    return state().hashCode();
  }

  @Override
  public String toString() {
    return History.text(temperature, totals, inertCharge);
  }
}
