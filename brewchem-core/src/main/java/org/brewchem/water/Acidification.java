package org.brewchem.water;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.brewchem.internal.NumberText;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.CarbonateSystem;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Permission;
import org.brewchem.substance.Permissions;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Use;

/**
 * The acidification of a water: how much acid, what it delivers, and where it takes the figures.
 *
 * <p>Found with the proton balance, the water closed to the air and its volume unchanged. The
 * carbon dioxide that the acid sets free is still in the water: where it leaves, the pH rises and
 * the alkalinity stays. Nothing precipitates.
 *
 * <p>Immutable. Made by {@link WaterAnalysis#acidDose(Acid, PH, Temperature)} and its kin.
 */
public final class Acidification {

  private static final double MOST_MOLES_PER_KILOGRAM = 10;

  /** A pale mash (common practice, no source). */
  private static final PH MASH = PH.of(5.4);

  /** Relative difference of the effective equivalents that a dose should not ignore; our choice. */
  private static final double WORTH_A_REMARK = 0.05;

  private final WaterAnalysis water;
  private final Acid acid;
  private final Solution before;
  private final Solution after;
  private final AmountConcentration amount;
  private final PH reached;

  private Acidification(WaterAnalysis water, Acid acid, Solution before, Molality dose) {
    this.water = water;
    this.acid = acid;
    this.before = before;
    this.after = before.with(acid, dose);
    this.amount =
        AmountConcentration.ofMolesPerLitre(dose.inMolesPerKilogram() * before.kilogramsPerLitre());
    this.reached = after.pH();
  }

  static Acidification to(WaterAnalysis water, Acid acid, PH target, Temperature temperature) {
    Permissions.of(acid, Use.BREWING_WATER).orThrow();
    Solution before = water.toSolution(temperature);
    PH own = before.pH();
    if (target.compareTo(own) >= 0) {
      throw notBelow("pH", target, own);
    }
    return new Acidification(water, acid, before, before.doseOf(acid, target));
  }

  static Acidification to(
      WaterAnalysis water, Acid acid, CarbonateAlkalinity target, Temperature temperature) {
    Permissions.of(acid, Use.BREWING_WATER).orThrow();
    Solution before = water.toSolution(temperature);
    CarbonateAlkalinity own = CarbonateSystem.carbonateAlkalinity(before);
    if (target.compareTo(own) >= 0) {
      throw notBelow("carbonate alkalinity", target, own);
    }
    if (target.inMilliequivalentsPerLitre() == 0) {
      throw new IllegalArgumentException(
          "carbonate alkalinity: 0 is not possible; no acid takes up the last of it. Set a pH, or a"
              + " titration alkalinity to an end point");
    }
    return search(
        water,
        acid,
        before,
        solution -> CarbonateSystem.carbonateAlkalinity(solution).inMilliequivalentsPerLitre(),
        own.inMilliequivalentsPerLitre(),
        target.inMilliequivalentsPerLitre(),
        "carbonate alkalinity: " + target);
  }

  static Acidification to(
      WaterAnalysis water, Acid acid, TitrationAlkalinity target, Temperature temperature) {
    Permissions.of(acid, Use.BREWING_WATER).orThrow();
    Solution before = water.toSolution(temperature);
    PH endPoint = target.endPoint();
    TitrationAlkalinity own = CarbonateSystem.titrationAlkalinity(before, endPoint);
    if (target.compareTo(own) >= 0) {
      throw notBelow("titration alkalinity", target, own);
    }
    return search(
        water,
        acid,
        before,
        solution -> solution.charge(endPoint).inMilliequivalentsPerLitre(),
        own.inMilliequivalentsPerLitre(),
        target.inMilliequivalentsPerLitre(),
        "titration alkalinity: " + target);
  }

  static Acidification to(
      WaterAnalysis water, Acid acid, ResidualAlkalinity target, Temperature temperature) {
    Permissions.of(acid, Use.BREWING_WATER).orThrow();
    KolbachResidualAlkalinity kolbach =
        water
            .kolbach()
            .orElseThrow(
                () ->
                    new IllegalStateException(
                        "residual alkalinity: calcium, magnesium and alkalinity are needed; missing: "
                            + IonBalance.names(water.missing())));
    ResidualAlkalinity own = kolbach.value();
    if (target.compareTo(own) >= 0) {
      throw notBelow("residual alkalinity", target, own);
    }
    ResidualAlkalinity left = target.plus(kolbach.calciumPart()).plus(kolbach.magnesiumPart());
    if (left.inMilliequivalentsPerLitre() <= 0) {
      throw new IllegalArgumentException(
          "residual alkalinity: "
              + target
              + " is not possible; with no alkalinity left it is "
              + kolbach.calciumPart().plus(kolbach.magnesiumPart()).times(-1));
    }
    return to(
        water,
        acid,
        CarbonateAlkalinity.ofMilliequivalentsPerLitre(left.inMilliequivalentsPerLitre()),
        temperature);
  }

  private static Acidification search(
      WaterAnalysis water,
      Acid acid,
      Solution before,
      ToDoubleFunction<Solution> alkalinity,
      double own,
      double target,
      String what) {
    double dose =
        Roots.rising(
                moles ->
                    target
                        - alkalinity.applyAsDouble(
                            before.with(acid, Molality.ofMolesPerKilogram(moles))),
                0,
                (own - target) / 1000,
                MOST_MOLES_PER_KILOGRAM)
            .orElseThrow(
                end ->
                    new IllegalArgumentException(
                        what
                            + " is not possible; 10 mol/kg of "
                            + acid.name()
                            + " do not reach it"));
    return new Acidification(water, acid, before, Molality.ofMolesPerKilogram(dose));
  }

  private static IllegalArgumentException notBelow(String what, Object target, Object own) {
    return new IllegalArgumentException(
        what + ": " + target + " is not possible; acid lowers it, and the water has " + own);
  }

  /**
   * Returns the acid.
   *
   * @return the acid
   */
  public Acid acid() {
    return acid;
  }

  /**
   * Returns the dose in moles.
   *
   * @return moles of acid per litre of water
   */
  public AmountConcentration amount() {
    return amount;
  }

  /**
   * Returns the dose in mass.
   *
   * @return mass of pure acid per litre of water
   * @throws IllegalStateException if the acid has no formula
   */
  public MassConcentration concentration() {
    return amount.times(acid.molarMass());
  }

  /**
   * Returns the dose for a volume of water.
   *
   * @param volume the volume of water
   * @return mass of pure acid; a reagent as bought takes more
   * @throws IllegalStateException if the acid has no formula
   */
  public Mass into(Volume volume) {
    return concentration().times(volume);
  }

  /**
   * Returns the dose for a volume of water, as a liquid reagent.
   *
   * @param volume the volume of water
   * @param reagent the acid as bought, with its density
   * @return the volume of the reagent
   * @throws IllegalArgumentException if the reagent is another acid
   * @throws IllegalStateException if the reagent has no density
   */
  public Volume into(Volume volume, Reagent reagent) {
    if (!reagent.compound().equals(acid)) {
      throw new IllegalArgumentException(
          "reagent: "
              + reagent.compound().name()
              + " is not possible; "
              + acid.name()
              + " is needed");
    }
    return reagent.volumeOf(amount.times(volume));
  }

  /**
   * Returns the protons that the dose delivers at the pH that is reached.
   *
   * @return the strong acid that would do the same
   */
  public ChargeConcentration equivalents() {
    return before.charge(reached);
  }

  /**
   * Returns the protons that a mole of the acid delivers at the pH that is reached.
   *
   * @return mol/mol, between 0 and the protons of the definition
   */
  public double effectiveEquivalents() {
    return effectiveEquivalents(reached);
  }

  /**
   * Returns the protons that a mole of the acid delivers where the water, treated, is at a pH: in a
   * titration to an end point, or in a mash.
   *
   * @param pH the pH
   * @return mol/mol, between 0 and the protons of the definition
   */
  public double effectiveEquivalents(PH pH) {
    return before.charge(pH).minus(after.charge(pH)).inEquivalentsPerLitre()
        / amount.inMolesPerLitre();
  }

  /**
   * Returns the pH that is reached, closed to the air.
   *
   * @return the pH
   */
  public PH pH() {
    return reached;
  }

  /**
   * Returns the treated water.
   *
   * @return the solution, with the carbon dioxide still in it
   */
  public Solution solution() {
    return after;
  }

  /**
   * Returns the carbonate alkalinity that is left.
   *
   * @return bicarbonate and twice carbonate
   */
  public CarbonateAlkalinity carbonateAlkalinity() {
    return CarbonateSystem.carbonateAlkalinity(after);
  }

  /**
   * Returns the titration alkalinity of the treated water. The anion of a weak acid takes part: a
   * titration to pH 4.5 turns a fifth of the lactate back into lactic acid.
   *
   * @param endPoint the pH that the titration ends at
   * @return the alkalinity; negative when the treated water lies below the end point
   */
  public TitrationAlkalinity titrationAlkalinity(PH endPoint) {
    return CarbonateSystem.titrationAlkalinity(after, endPoint);
  }

  /**
   * Returns the residual alkalinity that is left, of the carbonate alkalinity.
   *
   * @return the value; empty when calcium or magnesium is missing
   */
  public Optional<ResidualAlkalinity> residualAlkalinity() {
    Optional<Hardness> calcium = water.calciumHardness();
    return calcium.flatMap(
        ca ->
            water
                .magnesiumHardness()
                .map(mg -> KolbachResidualAlkalinity.of(carbonateAlkalinity(), ca, mg).value()));
  }

  /**
   * Returns what the acid leaves behind besides protons.
   *
   * @return the mass of its anion without any protons, per litre; empty when its formula is not
   *     known
   */
  public Optional<MassConcentration> anion() {
    return acid.component().molarMass().map(amount::times);
  }

  /**
   * Returns the sulfate of the treated water.
   *
   * @return as SO4, what sulfuric acid brings included; empty when it is missing
   */
  public Optional<MassConcentration> sulfate() {
    return with(water.sulfate(), Component.SULFATE);
  }

  /**
   * Returns the chloride of the treated water.
   *
   * @return what hydrochloric acid brings included; empty when it is missing
   */
  public Optional<MassConcentration> chloride() {
    return with(water.chloride(), Component.CHLORIDE);
  }

  private Optional<MassConcentration> with(Optional<MassConcentration> own, Component component) {
    return acid.component().equals(component)
        ? own.flatMap(before -> anion().map(more -> before.plus(more)))
        : own;
  }

  /**
   * Returns the ratio of sulfate to chloride of the treated water.
   *
   * @return a value, or why there is none
   */
  public SulfateToChloride sulfateToChloride() {
    return SulfateToChloride.of(sulfate(), chloride());
  }

  /**
   * Says what the figures alone do not: what the anion does, and where the acid delivers more or
   * less than it seems.
   *
   * @return an unmodifiable list of sentences
   */
  public List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    String name = acid.component().name();
    anion()
        .ifPresent(
            mass ->
                remarks.add(
                    "adds "
                        + NumberText.significant(mass.inMilligramsPerLitre(), 3)
                        + " mg/L of "
                        + name
                        + " in all its forms"));
    if (!water.sulfateToChloride().equals(sulfateToChloride())) {
      remarks.add(
          "sulfate to chloride goes from "
              + water.sulfateToChloride()
              + " to "
              + sulfateToChloride());
    }
    double here = effectiveEquivalents();
    remarks.add(
        acid.name()
            + " delivers "
            + NumberText.decimals(here, 2)
            + " Eq/mol at "
            + rounded(reached)
            + ", by definition "
            + acid.protonsByDefinition());
    double inMash = effectiveEquivalents(MASH);
    if (Math.abs(inMash - here) > WORTH_A_REMARK * here) {
      remarks.add(
          "in a mash at "
              + MASH
              + " it delivers "
              + NumberText.decimals(inMash, 2)
              + " Eq/mol; for a mash aim at a titration alkalinity with that end point");
    }
    Permission permission = Permissions.of(acid, Use.BREWING_WATER);
    if (permission.isNotable()) {
      remarks.add(permission.text());
    }
    remarks.add(
        "closed to the air: where carbon dioxide leaves, the pH rises above " + rounded(reached));
    return List.copyOf(remarks);
  }

  private static String rounded(PH pH) {
    return "pH " + NumberText.decimals(pH.value(), 2);
  }

  /**
   * Returns the usual cautions (common practice, no source). Local codes, the supplier's safety
   * data sheet and trained people on the site outrank them.
   *
   * @return an unmodifiable list of sentences
   */
  public List<String> cautions() {
    return List.of(
        "Concentrated acid burns skin and eyes: wear what its safety data sheet names, and pour acid"
            + " into water, never water into acid.",
        "Acid sets carbon dioxide free from this water: ventilate, and never dose into a vessel that"
            + " cannot vent.",
        "Compare assay and density of the reagent with its label, and use a food-grade acid that is permitted for this use and amount where you sell.",
        "Add part of the dose, mix, measure, and add the rest: what is in cannot be taken out.");
  }

  /**
   * Shows the arithmetic.
   *
   * @return one line per step, each ended by a line feed
   */
  public String explain() {
    List<String> lines = new ArrayList<>();
    lines.add("acid dose by the proton balance, " + before.temperature());
    lines.add(
        "  from "
            + rounded(before.pH())
            + ", total carbon dioxide "
            + Lines.number(before.total(Component.CARBONATE).inMillimolesPerLitre())
            + " mmol/L, to "
            + rounded(reached));
    lines.add(
        "  strong acid needed = "
            + Lines.number(equivalents().inMilliequivalentsPerLitre())
            + " mEq/L");
    lines.add(
        "  "
            + acid.name()
            + " delivers "
            + Lines.number(effectiveEquivalents())
            + " Eq/mol there, so "
            + Lines.number(amount.inMillimolesPerLitre())
            + " mmol/L are needed");
    lines.add(
        "  carbonate alkalinity left = "
            + Lines.number(carbonateAlkalinity().inMilliequivalentsPerLitre())
            + " mEq/L");
    residualAlkalinity()
        .ifPresent(
            left ->
                lines.add(
                    "  residual alkalinity left = "
                        + Lines.number(left.inMilliequivalentsPerLitre())
                        + " mEq/L"));
    return Lines.of(lines.toArray(String[]::new));
  }

  /**
   * Returns dose and result in a sentence.
   *
   * @return such as {@code lactic acid, 2.31 mmol/L: pH 6.24, carbonate alkalinity 99 mg/L as
   *     CaCO3}
   */
  @Override
  public String toString() {
    return acid.name()
        + ", "
        + NumberText.significant(amount.inMillimolesPerLitre(), 3)
        + " mmol/L: "
        + rounded(reached)
        + ", carbonate alkalinity "
        + NumberText.decimals(carbonateAlkalinity().inMilligramsPerLitreAsCaCO3(), 0)
        + " mg/L as CaCO3";
  }
}
