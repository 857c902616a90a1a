package org.brewchem.titration;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;

/**
 * What is in the burette: a strong base or acid with its concentration and how well that is known,
 * from a label or from a {@link Standardisation}. Immutable.
 *
 * <p>The concentration is in mol/L of the named substance. What counts in a titration is {@link
 * #equivalentsPerLitre()}, which for sulfuric acid is twice that.
 */
public final class Titrant extends TitrantSolution {

  /** A titrant of which the concentration is still to be stated or found. Immutable. */
  public static final class Unstandardised {

    private final TitrantSubstance substance;

    private Unstandardised(TitrantSubstance substance) {
      this.substance = substance;
    }

    /**
     * Returns what it is made of.
     *
     * @return the substance
     */
    public TitrantSubstance substance() {
      return substance;
    }

    /**
     * Gives it a concentration of which no uncertainty is stated.
     *
     * @param concentration moles of the named substance per litre, above 0
     * @return the titrant; no result of it has an uncertainty, and each says why
     * @throws IllegalArgumentException if the concentration is not above 0, or is none that a
     *     titrant has
     */
    public Titrant of(AmountConcentration concentration) {
      return stated(concentration, OptionalDouble.empty(), false);
    }

    /**
     * Gives it a concentration as a label or certificate states it.
     *
     * @param concentration moles of the named substance per litre, above 0
     * @param standardUncertainty its standard uncertainty, at most the concentration
     * @return the titrant
     * @throws IllegalArgumentException if the concentration is not above 0, or is none that a
     *     titrant has, or its uncertainty is above it
     */
    public Titrant of(AmountConcentration concentration, AmountConcentration standardUncertainty) {
      return stated(concentration, OptionalDouble.of(standardUncertainty.inMolesPerLitre()), false);
    }

    /**
     * Gives it a concentration of equivalents of which no uncertainty is stated, as a label in Eq/L
     * or N (normal) has it: sulfuric acid of 0.02 N is 0.01 mol/L.
     *
     * @param normality the equivalents per litre, above 0
     * @return the titrant; no result of it has an uncertainty, and each says why
     * @throws IllegalArgumentException if the concentration is not above 0, or is none that a
     *     titrant has
     */
    public Titrant ofEquivalents(ChargeConcentration normality) {
      return stated(moles(normality), OptionalDouble.empty(), true);
    }

    /**
     * Gives it a concentration of equivalents as a label in Eq/L or N (normal) states it.
     *
     * @param normality the equivalents per litre, above 0
     * @param standardUncertainty its standard uncertainty, at most the concentration
     * @return the titrant
     * @throws IllegalArgumentException if the concentration is not above 0, or is none that a
     *     titrant has, or its uncertainty is above it
     */
    public Titrant ofEquivalents(
        ChargeConcentration normality, ChargeConcentration standardUncertainty) {
      double u =
          Checks.nonNegative(
              "standard uncertainty", standardUncertainty.inEquivalentsPerLitre(), "Eq/L");
      return stated(moles(normality), OptionalDouble.of(u / substance.equivalentsPerMole()), true);
    }

    private AmountConcentration moles(ChargeConcentration normality) {
      return AmountConcentration.ofMolesPerLitre(
          Checks.positive(
                  "concentration of " + substance, normality.inEquivalentsPerLitre(), "Eq/L")
              / substance.equivalentsPerMole());
    }

    private Titrant stated(
        AmountConcentration concentration, OptionalDouble molesPerLitre, boolean byEquivalents) {
      return new Titrant(
          substance,
          TitrantSolution.stated(substance, concentration, molesPerLitre, byEquivalents),
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
      Standardisation found = Standardisation.of(substance, apparatus, List.of(weighings));
      return new Titrant(
          substance, found.concentration().step(), Optional.of(found), Optional.empty());
    }

    /** Returns the formula. */
    @Override
    public String toString() {
      return substance.toString();
    }
  }

  /** End point of beer, with alkali (AOAC 950.07). */
  private static final PH BEER_END_POINT = PH.of(8.2);

  /** Standard uncertainty in pH of the first lasting pink (common practice, no source). */
  private static final double PHENOLPHTHALEIN_READING = 0.15;

  private final Optional<Standardisation> standardisation;
  private final Optional<LocalDate> date;

  private Titrant(
      TitrantSubstance substance,
      Step concentration,
      Optional<Standardisation> standardisation,
      Optional<LocalDate> date) {
    super(substance, concentration);
    this.standardisation = standardisation;
    this.date = date;
  }

  /**
   * Returns sodium hydroxide, one equivalent a mole.
   *
   * @return the titrant, which still needs a concentration
   */
  public static Unstandardised sodiumHydroxide() {
    return new Unstandardised(TitrantSubstance.NAOH);
  }

  /**
   * Returns potassium hydroxide, one equivalent a mole.
   *
   * @return the titrant, which still needs a concentration
   */
  public static Unstandardised potassiumHydroxide() {
    return new Unstandardised(TitrantSubstance.KOH);
  }

  /**
   * Returns hydrochloric acid, one equivalent a mole.
   *
   * @return the titrant, which still needs a concentration
   */
  public static Unstandardised hydrochloricAcid() {
    return new Unstandardised(TitrantSubstance.HCL);
  }

  /**
   * Returns sulfuric acid, which has two equivalents in a mole at the end points of an alkalinity
   * titration.
   *
   * @return the titrant, which still needs a concentration
   */
  public static Unstandardised sulfuricAcid() {
    return new Unstandardised(TitrantSubstance.H2SO4);
  }

  /**
   * Returns nitric acid, one equivalent a mole. It is a titrant only, and may be dosed into nothing
   * that people drink.
   *
   * @return the titrant, which still needs a concentration
   */
  public static Unstandardised nitricAcid() {
    return new Unstandardised(TitrantSubstance.HNO3);
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
    return new Titrant(substance(), concentration().step(), standardisation, Optional.of(day));
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
    if (!earlier.substance().equals(substance())) {
      throw new IllegalArgumentException(
          "earlier titrant: "
              + earlier.substance()
              + " is not possible; "
              + substance()
              + " is needed");
    }
    return new TitrantDrift(
        substance(),
        earlier.concentration().traced(),
        concentration().traced(),
        earlier.date.isPresent() && date.isPresent()
            ? OptionalLong.of(ChronoUnit.DAYS.between(earlier.date.get(), date.get()))
            : OptionalLong.empty());
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
        substance().isAlkali() ? BEER_END_POINT : TitrationAlkalinity.USUAL_END_POINT);
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
    if (!substance().isAlkali()) {
      throw new IllegalStateException(
          "titrant: " + this + " turns no phenolphthalein pink; an alkali is needed");
    }
    return SampleTitration.of(TitrationMethod.PHENOLPHTHALEIN, this, beer, BEER_END_POINT)
        .into(beer.times(10))
        .with(Apparatus.usual().withEndPointReading(PHENOLPHTHALEIN_READING));
  }

  /** Prints the substance, its concentration with U, and the number of weighings. */
  @Override
  public String toString() {
    String text = super.toString();
    return standardisation.map(s -> text + ", n = " + s.weighings().size()).orElse(text);
  }
}
