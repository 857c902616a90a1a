package org.brewchem.figure;

/** What can hurt someone in the work that a result proposes. */
public enum Hazard {
  /** Any acid as bought. */
  ACID,
  /** Hydrochloric acid, whose vapour burns. */
  ACID_FUMES,
  /** Sulfuric acid, which heats what it is poured into. */
  ACID_HEAT,
  /** Sodium and potassium hydroxide. */
  LYE,
  /** Calcium hydroxide and oxide. */
  LIME,
  /** Calcium chloride, which heats up as it dissolves. */
  SALT_HEAT,
  /** Powders and their dust. */
  DUST,
  /** Carbon dioxide that is set free or used. */
  CARBON_DIOXIDE,
  /** Carbonates, which foam in what is acid. */
  FOAMING,
  /** Sulfites, which give off sulfur dioxide in what is acid, and are allergens. */
  SULFITE,
  /** Anything that goes into what people drink. */
  DOSING_FOOD,
  /** Tasting a trial. */
  TASTING,
  /** A living beer with residual extract in a package. */
  REFERMENTATION,
  /** A warm wort that is soured by bacteria. */
  SOURING,
  /** Titrations: glass under pressure, burettes and pipettes, indicators. */
  LABORATORY
}
