package org.brewchem.titration;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Solute;
import org.brewchem.uncertainty.UncertainValue;

/**
 * What is in the burette: a strong base or acid with its concentration and how well that is known,
 * from a label or from a {@link Standardisation}. Immutable.
 *
 * <p>The concentration is in mol/L of the named substance. What counts in a titration is {@link
 * #equivalentsPerLitre()}, which for sulfuric acid is twice that.
 */
public final class Titrant {

  /** What a titrant is made of, before its concentration is known. Immutable. */
  public static final class Substance {

    private final String formula;
    private final Solute solute;
    private final int equivalentsPerMole;
    private final boolean alkali;

    private Substance(String formula, Solute solute, int equivalentsPerMole, boolean alkali) {
      this.formula = formula;
      this.solute = solute;
      this.equivalentsPerMole = equivalentsPerMole;
      this.alkali = alkali;
    }

    /**
     * Gives it a concentration that is taken as exact.
     *
     * @param concentration moles of the named substance per litre, above 0
     * @return the titrant, whose results carry a remark that its uncertainty is not known
     * @throws IllegalArgumentException if the concentration is not above 0
     */
    public Titrant of(AmountConcentration concentration) {
      return of(concentration, AmountConcentration.ofMolesPerLitre(0));
    }

    /**
     * Gives it a concentration as a label or certificate states it.
     *
     * @param concentration moles of the named substance per litre, above 0
     * @param standardUncertainty its standard uncertainty
     * @return the titrant
     * @throws IllegalArgumentException if the concentration is not above 0
     */
    public Titrant of(AmountConcentration concentration, AmountConcentration standardUncertainty) {
      return new Titrant(
          this,
          UncertainValue.of(
              concentration.inMolesPerLitre(), standardUncertainty.inMolesPerLitre(), "mol/L"),
          Optional.empty(),
          Optional.empty());
    }

    /**
     * Finds its concentration from weighings of a primary standard, done with {@link
     * Apparatus#usual()}.
     *
     * @param weighings one or more, of potassium hydrogen phthalate for alkali and of sodium
     *     carbonate for acid
     * @return the titrant
     * @throws IllegalArgumentException if there is no weighing or the standard does not fit
     */
    public Titrant standardised(Weighing... weighings) {
      return standardised(Apparatus.usual(), weighings);
    }

    /**
     * Finds its concentration from weighings of a primary standard.
     *
     * @param apparatus what it was done with
     * @param weighings one or more, of potassium hydrogen phthalate for alkali and of sodium
     *     carbonate for acid
     * @return the titrant
     * @throws IllegalArgumentException if there is no weighing or the standard does not fit
     */
    public Titrant standardised(Apparatus apparatus, Weighing... weighings) {
      Standardisation standardisation = Standardisation.of(this, apparatus, List.of(weighings));
      return new Titrant(
          this, standardisation.concentration(), Optional.of(standardisation), Optional.empty());
    }

    /**
     * Returns the formula.
     *
     * @return the formula, such as "NaOH"
     */
    public String formula() {
      return formula;
    }

    /**
     * Tells whether it is an alkali.
     *
     * @return true for an alkali, false for an acid
     */
    public boolean isAlkali() {
      return alkali;
    }

    /**
     * Returns the equivalents that a mole of it brings.
     *
     * @return 2 for sulfuric acid, 1 for the others
     */
    public int equivalentsPerMole() {
      return equivalentsPerMole;
    }

    /** Returns the formula. */
    @Override
    public String toString() {
      return formula;
    }
  }

  private static final Substance NAOH = of(Base.SODIUM_HYDROXIDE);
  private static final Substance KOH = of(Base.POTASSIUM_HYDROXIDE);
  private static final Substance HCL = of("HCl", Acid.HYDROCHLORIC);
  private static final Substance H2SO4 = of("H2SO4", Acid.SULFURIC);

  /** End point of beer, with alkali (AOAC 950.07). */
  static final PH BEER_END_POINT = PH.of(8.2);

  /** Standard uncertainty in pH of the first lasting pink (common practice, no source). */
  private static final double PHENOLPHTHALEIN_READING = 0.15;

  private final Substance substance;
  private final UncertainValue concentration;
  private final Optional<Standardisation> standardisation;
  private final Optional<LocalDate> date;

  private Titrant(
      Substance substance,
      UncertainValue concentration,
      Optional<Standardisation> standardisation,
      Optional<LocalDate> date) {
    this.date = date;
    this.substance = substance;
    Checks.positive("concentration of " + substance, concentration.value(), "mol/L");
    this.concentration = concentration;
    this.standardisation = standardisation;
  }

  private static Substance of(Base base) {
    return new Substance(base.formula().text(), base, base.protonsByDefinition(), true);
  }

  private static Substance of(String formula, Acid acid) {
    return new Substance(formula, acid, acid.protonsByDefinition(), false);
  }

  /**
   * Returns sodium hydroxide, one equivalent a mole.
   *
   * @return the substance, which still needs a concentration
   */
  public static Substance sodiumHydroxide() {
    return NAOH;
  }

  /**
   * Returns potassium hydroxide, one equivalent a mole.
   *
   * @return the substance, which still needs a concentration
   */
  public static Substance potassiumHydroxide() {
    return KOH;
  }

  /**
   * Returns hydrochloric acid, one equivalent a mole.
   *
   * @return the substance, which still needs a concentration
   */
  public static Substance hydrochloricAcid() {
    return HCL;
  }

  /**
   * Returns sulfuric acid, two equivalents a mole down to the end points of alkalinity.
   *
   * @return the substance, which still needs a concentration
   */
  public static Substance sulfuricAcid() {
    return H2SO4;
  }

  /**
   * Returns what the titrant is made of.
   *
   * @return the substance
   */
  public Substance substance() {
    return substance;
  }

  /**
   * Returns the concentration of the named substance with its uncertainty.
   *
   * @return the concentration in mol/L
   */
  public UncertainValue concentration() {
    return concentration;
  }

  /**
   * Returns the concentration of equivalents with its uncertainty.
   *
   * @return the concentration in Eq/L
   */
  public UncertainValue equivalentsPerLitre() {
    return concentration.times(substance.equivalentsPerMole, "Eq/L");
  }

  /**
   * Returns where the concentration comes from.
   *
   * @return the standardisation; empty when the concentration was stated
   */
  public Optional<Standardisation> standardisation() {
    return standardisation;
  }

  /**
   * Dates the concentration.
   *
   * @param day when the titrant was standardised or its label written
   * @return the titrant with that date
   */
  public Titrant on(LocalDate day) {
    return new Titrant(substance, concentration, standardisation, Optional.of(day));
  }

  /**
   * Returns when the concentration was found.
   *
   * @return the date; empty when it was not stated
   */
  public Optional<LocalDate> date() {
    return date;
  }

  /**
   * Compares with an earlier standardisation of the same titrant.
   *
   * @param earlier the titrant as it was
   * @return the drift since
   * @throws IllegalArgumentException if the earlier one is another substance
   */
  public TitrantDrift driftSince(Titrant earlier) {
    return new TitrantDrift(earlier, this);
  }

  /**
   * Returns the titrant as a solution, to simulate a titration with it.
   *
   * @param temperature its temperature
   * @return the solution, free of carbonate
   */
  public Solution solution(Temperature temperature) {
    return Solution.at(temperature)
        .with(substance.solute, AmountConcentration.ofMolesPerLitre(concentration.value()));
  }

  /**
   * Starts the titration of a sample: with alkali to pH 8.2, the end point of beer (AOAC 950.07),
   * with acid to pH 4.5, the routine one of water; {@link SampleTitration#to} chooses another.
   *
   * @param sample the volume of sample taken, above 0
   * @return the titration
   * @throws IllegalArgumentException if the volume is not above 0
   */
  public SampleTitration titrate(Volume sample) {
    return SampleTitration.of(
        TitrationMethod.POTENTIOMETRIC,
        this,
        sample,
        substance.alkali ? BEER_END_POINT : TitrationAlkalinity.USUAL_END_POINT);
  }

  /**
   * Starts the titration of beer to the change of phenolphthalein: the beer goes into ten times its
   * volume of boiled water, by custom 25 mL into 250 mL, and its water needs a blank ({@link
   * TitrationMethod#PHENOLPHTHALEIN}).
   *
   * @param beer the volume of degassed beer taken, above 0
   * @return the titration
   * @throws IllegalArgumentException if the volume is not above 0
   * @throws IllegalStateException if the titrant is an acid
   */
  public SampleTitration titrateToPhenolphthalein(Volume beer) {
    if (!substance.alkali) {
      throw new IllegalStateException(
          "titrant: " + this + " turns no phenolphthalein pink; an alkali is needed");
    }
    return SampleTitration.of(TitrationMethod.PHENOLPHTHALEIN, this, beer, BEER_END_POINT)
        .into(beer.times(10))
        .with(Apparatus.usual().withEndPointReading(PHENOLPHTHALEIN_READING));
  }

  /** Prints the substance, its concentration with U (k = 2), and the number of weighings. */
  @Override
  public String toString() {
    String text =
        substance
            + " "
            + (concentration.standardUncertainty() == 0
                ? concentration.value() + " mol/L"
                : concentration.expanded(2).toString());
    return standardisation.map(s -> text + ", n = " + s.weighings().size()).orElse(text);
  }
}
