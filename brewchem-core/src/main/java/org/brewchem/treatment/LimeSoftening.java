package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;

/**
 * Lime softening: how much lime and soda by the stoichiometry of the handbooks, what it leaves by
 * the same arithmetic, and, as a treatment, what the kernel's equilibrium with calcite and brucite
 * leaves. Practice lies between both.
 *
 * <p>The arithmetic (Davis, Water and Wastewater Engineering, 2010, chapter 7) takes a mole of lime
 * for each of carbon dioxide and of magnesium to be removed, and one for two of bicarbonate; soda
 * for the hardness beyond carbonate. Nothing stays dissolved there unless {@link
 * #toPracticalLimits} asks for it. The figures are answered by any liquid whose calcium, magnesium,
 * alkalinity and total carbon dioxide are known; in tables too. Immutable.
 *
 * <p>As a treatment it doses both, closed to the air, before recarbonation, and lets calcite and
 * brucite precipitate to equilibrium. Softened water is alkaline (pH 10 to 11.5): acid or carbon
 * dioxide brings it back before anybody drinks it.
 */
public final class LimeSoftening implements Treatment {

  private static final String SOURCE =
      "Davis, Water and Wastewater Engineering: Design Principles and Practice (2010), ch. 7";

  private static final double CALCIUM = Ion.CALCIUM.molarMass().inGramsPerMole();
  private static final double MAGNESIUM = Ion.MAGNESIUM.molarMass().inGramsPerMole();

  /** mg/L as CaCO3 of a mmol/L of calcium, magnesium, lime or soda. */
  private static final double PER_MILLIMOLE =
      CarbonateAlkalinity.ofMilliequivalentsPerLitre(2).inMilligramsPerLitreAsCaCO3();

  private static final List<Figure<?>> INPUTS =
      Figure.list(
          Figures.CALCIUM,
          Figures.MAGNESIUM,
          Figures.CARBONATE_ALKALINITY,
          Figures.TOTAL_CARBON_DIOXIDE);

  private final boolean magnesium;
  private final boolean soda;
  private final boolean excess;
  private final boolean practical;
  private final double mineralAcid;

  private LimeSoftening(
      boolean magnesium, boolean soda, boolean excess, boolean practical, double mineralAcid) {
    this.magnesium = magnesium;
    this.soda = soda;
    this.excess = excess;
    this.practical = practical;
    this.mineralAcid = mineralAcid;
  }

  /**
   * Softens with lime alone: carbonate hardness of calcium leaves, magnesium stays.
   *
   * @return the softening
   */
  public static LimeSoftening withLime() {
    return new LimeSoftening(false, false, false, false, 0);
  }

  /**
   * Removes magnesium as hydroxide too.
   *
   * @return the softening
   */
  public LimeSoftening removingMagnesium() {
    return new LimeSoftening(true, soda, excess, practical, mineralAcid);
  }

  /**
   * Adds soda for the hardness that the alkalinity does not cover.
   *
   * @return the softening
   */
  public LimeSoftening withSoda() {
    return new LimeSoftening(magnesium, true, excess, practical, mineralAcid);
  }

  /**
   * Adds the excess of lime that drives the reactions on: 20 to 40 mg/L as CaCO3, by how much
   * magnesium exceeds what may stay (Davis and Cornwell, from memory).
   *
   * @return the softening
   */
  public LimeSoftening withExcess() {
    return new LimeSoftening(magnesium, soda, true, practical, mineralAcid);
  }

  /**
   * Leaves in the arithmetic what practice leaves: calcium 30 and magnesium 10 mg/L as CaCO3 (Davis
   * 2010).
   *
   * @return the softening
   */
  public LimeSoftening toPracticalLimits() {
    return new LimeSoftening(magnesium, soda, excess, true, mineralAcid);
  }

  /**
   * Counts free mineral acid that a report states in addition to the alkalinity: it takes lime, and
   * soda for the calcium that this lime brings.
   *
   * @param acid the free acid, 0 or more
   * @return the softening
   * @throws IllegalArgumentException if the acid is negative
   */
  public LimeSoftening withMineralAcid(ChargeConcentration acid) {
    return new LimeSoftening(
        magnesium,
        soda,
        excess,
        practical,
        Checks.nonNegative("mineral acid", acid.inMilliequivalentsPerLitre(), "mEq/L"));
  }

  private static double alkalinity(double[] x) {
    return x[2] / PER_MILLIMOLE;
  }

  private double lime(double[] x) {
    double removed = magnesium ? x[1] / MAGNESIUM : 0;
    return x[3] - alkalinity(x) + removed + mineralAcid / 2 + (excess ? excess(x) : 0);
  }

  private double excess(double[] x) {
    double over =
        magnesium
            ? x[1] / MAGNESIUM * PER_MILLIMOLE - SofteningPractice.number("magnesium that may stay")
            : 0;
    double least = SofteningPractice.number("least excess of lime");
    double greatest = SofteningPractice.number("greatest excess of lime");
    return Math.max(least, Math.min(over, greatest)) / PER_MILLIMOLE;
  }

  private double sodaOf(double[] x) {
    double hardness = x[0] / CALCIUM + (magnesium ? x[1] / MAGNESIUM : 0);
    return soda ? Math.max(0, hardness - alkalinity(x) + mineralAcid / 2) : 0;
  }

  private double calciumLeft(double[] x) {
    double beyond = x[0] / CALCIUM + (magnesium ? x[1] / MAGNESIUM : 0) - alkalinity(x);
    return limited(soda ? 0 : Math.max(0, beyond), x[0] / CALCIUM, "calcium left in practice");
  }

  private double magnesiumLeft(double[] x) {
    return magnesium
        ? limited(0, x[1] / MAGNESIUM, "magnesium left in practice")
        : x[1] / MAGNESIUM;
  }

  /** What practice leaves, but no more than there was. */
  private double limited(double millimoles, double before, String limit) {
    return practical
        ? Math.max(millimoles, Math.min(before, SofteningPractice.number(limit) / PER_MILLIMOLE))
        : millimoles;
  }

  private Figure<AmountConcentration> figure(
      String name, String text, ToDoubleFunction<double[]> formula) {
    return ClosedForm.figure(name, Scales.MILLIMOLES_PER_LITRE, text, SOURCE, INPUTS, formula);
  }

  /**
   * Returns the figure of the lime that the arithmetic asks for.
   *
   * @return moles of Ca(OH)2 per litre of the water
   */
  public Figure<AmountConcentration> lime() {
    return figure(
        "lime for softening" + options(),
        "total carbon dioxide - alkalinity / 2"
            + (magnesium ? " + magnesium" : "")
            + (mineralAcid > 0 ? " + mineral acid / 2" : "")
            + (excess ? " + excess" : ""),
        this::lime);
  }

  /**
   * Returns the figure of the soda that the arithmetic asks for.
   *
   * @return moles of Na2CO3 per litre of the water; 0 without soda or where alkalinity covers the
   *     hardness
   */
  public Figure<AmountConcentration> soda() {
    return figure(
        "soda for softening" + options(),
        soda
            ? "calcium"
                + (magnesium ? " + magnesium" : "")
                + " - alkalinity / 2"
                + (mineralAcid > 0 ? " + mineral acid / 2" : "")
                + ", at least 0"
            : "none",
        this::sodaOf);
  }

  /**
   * Returns the figure of the calcium that the arithmetic leaves, after recarbonation.
   *
   * @return moles of calcium per litre
   */
  public Figure<AmountConcentration> calciumLeft() {
    return figure(
        "calcium left by softening" + options(),
        soda
            ? "none" + (practical ? ", at least the practical limit" : "")
            : "calcium"
                + (magnesium ? " + magnesium" : "")
                + " - alkalinity / 2, at least "
                + (practical ? "the practical limit" : "0"),
        this::calciumLeft);
  }

  /**
   * Returns the figure of the magnesium that the arithmetic leaves.
   *
   * @return moles of magnesium per litre
   */
  public Figure<AmountConcentration> magnesiumLeft() {
    return figure(
        "magnesium left by softening" + options(),
        magnesium ? (practical ? "the practical limit" : "none") : "magnesium",
        this::magnesiumLeft);
  }

  private String options() {
    return (magnesium ? ", magnesium removed" : "")
        + (soda ? ", with soda" : "")
        + (excess ? ", with excess" : "")
        + (practical ? ", to practical limits" : "")
        + (mineralAcid > 0
            ? String.format(Locale.ROOT, ", mineral acid %.4g mEq/L", mineralAcid)
            : "");
  }

  @Override
  public Contents on(Contents before) {
    Objects.requireNonNull(before, "before");
    Balance.required(
        text(), before, List.of(Component.CALCIUM, Component.MAGNESIUM, Component.CARBONATE));
    Solution water = Solution.of(before);
    double lime = water.answer(lime()).number();
    double carbonate = water.answer(soda()).number();
    Contents dosed =
        Addition.of(Supply.pure(Base.CALCIUM_HYDROXIDE), lime / 1000)
            .withoutSaturation()
            .on(before);
    if (carbonate > 0) {
      dosed =
          Addition.of(Supply.pure(Base.SODIUM_CARBONATE), carbonate / 1000)
              .withoutSaturation()
              .on(dosed);
    }
    Contents after = new Precipitation(List.of(Mineral.CALCITE, Mineral.BRUCITE)).on(dosed);
    return after.withNotices(List.of(beside(water, Solution.of(after))));
  }

  private Notice beside(Solution before, Solution after) {
    LimeSoftening limits = toPracticalLimits();
    return Notice.of(
        TreatmentCode.STOPS_EARLIER,
        "lime softening",
        "calcium and magnesium left, mg/L as CaCO3: by stoichiometry "
            + pair(before.answer(calciumLeft()), before.answer(magnesiumLeft()))
            + ", at equilibrium with calcite and brucite, at pH "
            + String.format(Locale.ROOT, "%.1f", after.pH().value())
            + " before recarbonation, "
            + pair(
                after.total(Component.CALCIUM).inMillimolesPerLitre(),
                after.total(Component.MAGNESIUM).inMillimolesPerLitre())
            + ", with practical limits "
            + pair(before.answer(limits.calciumLeft()), before.answer(limits.magnesiumLeft()))
            + ". "
            + SofteningPractice.ofLime());
  }

  private static String pair(Answer<?> calcium, Answer<?> magnesium) {
    return pair(calcium.number(), magnesium.number());
  }

  private static String pair(double calcium, double magnesium) {
    return String.format(
        Locale.ROOT, "%.0f and %.0f", calcium * PER_MILLIMOLE, magnesium * PER_MILLIMOLE);
  }

  @Override
  public String text() {
    return "lime softening" + options();
  }

  @Override
  public List<Caution> cautions() {
    Set<Caution> all = new LinkedHashSet<>(Supply.pure(Base.CALCIUM_HYDROXIDE).cautions());
    if (soda) {
      all.addAll(Supply.pure(Base.SODIUM_CARBONATE).cautions());
    }
    return new ArrayList<>(all);
  }

  @Override
  public String toString() {
    return text();
  }
}
