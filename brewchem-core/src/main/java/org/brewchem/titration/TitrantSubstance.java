package org.brewchem.titration;

import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Solute;

/** What a titrant is made of: a strong base or acid and the equivalents of a mole. Immutable. */
public final class TitrantSubstance {

  static final TitrantSubstance NAOH = of(Base.SODIUM_HYDROXIDE);
  static final TitrantSubstance KOH = of(Base.POTASSIUM_HYDROXIDE);
  static final TitrantSubstance HCL = of("HCl", Acid.HYDROCHLORIC);
  static final TitrantSubstance HNO3 = of("HNO3", Acid.NITRIC);
  static final TitrantSubstance H2SO4 = of("H2SO4", Acid.SULFURIC);

  private final String formula;
  private final Solute solute;
  private final int equivalentsPerMole;
  private final boolean alkali;

  private TitrantSubstance(String formula, Solute solute, int equivalentsPerMole, boolean alkali) {
    this.formula = Checks.notBlank("formula", formula);
    this.solute = Objects.requireNonNull(solute, "solute");
    this.equivalentsPerMole = equivalentsPerMole;
    this.alkali = alkali;
  }

  private static TitrantSubstance of(Base base) {
    return new TitrantSubstance(base.formula().text(), base, base.protonsByDefinition(), true);
  }

  private static TitrantSubstance of(String formula, Acid acid) {
    return new TitrantSubstance(formula, acid, acid.protonsByDefinition(), false);
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

  /**
   * Returns it as a solute, to make a solution of.
   *
   * @return the base or acid
   */
  public Solute solute() {
    return solute;
  }

  /** Returns the formula. */
  @Override
  public String toString() {
    return formula;
  }
}
