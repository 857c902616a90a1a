package org.brewchem.water;

import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Figure;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MolarMass;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Element;
import org.brewchem.substance.Formula;
import org.brewchem.substance.Ion;
import org.jspecify.annotations.Nullable;

/**
 * What a water report states as a concentration, and on which basis: {@code SULFATE} and {@code
 * SULFATE_AS_SULFUR} are the same ion on two. Alkalinity, hardness, pH and conductivity have
 * methods of their own in {@link WaterReport.Builder}.
 */
@SuppressWarnings(
    "ImmutableEnumChecker") // Ion and MolarMass are immutable, without its annotation.
public enum Constituent {
  /** Calcium as Ca. */
  CALCIUM(Ion.CALCIUM),
  /** Magnesium as Mg. */
  MAGNESIUM(Ion.MAGNESIUM),
  /** Sodium as Na. */
  SODIUM(Ion.SODIUM),
  /** Potassium as K. */
  POTASSIUM(Ion.POTASSIUM),
  /** Sulfate as SO4. */
  SULFATE(Ion.SULFATE),
  /** Sulfate as the sulfur in it. */
  SULFATE_AS_SULFUR(Ion.SULFATE, "S", "sulfur"),
  /** Chloride as Cl. */
  CHLORIDE(Ion.CHLORIDE),
  /** Nitrate as NO3. */
  NITRATE(Ion.NITRATE),
  /** Nitrate as the nitrogen in it. */
  NITRATE_AS_NITROGEN(Ion.NITRATE, "N", "nitrogen"),
  /** Nitrite as NO2. */
  NITRITE(MinorIons.NITRITE),
  /** Nitrite as the nitrogen in it. */
  NITRITE_AS_NITROGEN(MinorIons.NITRITE, "N", "nitrogen"),
  /** Ammonium as NH4. */
  AMMONIUM(Ion.AMMONIUM),
  /** Ammonium as the nitrogen in it. */
  AMMONIUM_AS_NITROGEN(Ion.AMMONIUM, "N", "nitrogen"),
  /** Dissolved phosphate as PO4, whatever forms it takes. */
  PHOSPHATE(Ion.PHOSPHATE),
  /** Dissolved phosphate as the phosphorus in it. */
  PHOSPHATE_AS_PHOSPHORUS(Ion.PHOSPHATE, "P", "phosphorus"),
  /** Fluoride as F. */
  FLUORIDE(MinorIons.FLUORIDE),
  /** Dissolved iron as Fe; it counts as iron(II). */
  IRON(MinorIons.IRON),
  /** Dissolved manganese as Mn; it counts as manganese(II). */
  MANGANESE(MinorIons.MANGANESE),
  /** Dissolved silica as SiO2; it carries no charge that counts. */
  SILICA(
      null,
      "silica",
      "silica",
      Formula.parse("SiO2").molarMass(),
      Formula.parse("SiO2").molarMass()),
  /** Dissolved silica as the silicon in it. */
  SILICA_AS_SILICON(
      null,
      "silica",
      "silica as silicon",
      Formula.parse("SiO2").molarMass(),
      Element.of("Si").molarMass());

  /** What no report of a brewing water should be without. */
  private static final Set<Ion> MAIN =
      Set.of(
          Ion.CALCIUM,
          Ion.MAGNESIUM,
          Ion.SODIUM,
          Ion.POTASSIUM,
          Ion.SULFATE,
          Ion.CHLORIDE,
          Ion.NITRATE);

  private final @Nullable Ion ion;
  private final String species;
  private final String heading;
  private final MolarMass statedMolarMass;
  private final double speciesPerStated;

  Constituent(Ion ion) {
    this(ion, ion.name(), ion.name(), ion.molarMass(), ion.molarMass());
  }

  Constituent(Ion ion, String element, String name) {
    this(
        ion,
        ion.name(),
        ion.name() + " as " + name,
        ion.molarMass(),
        Element.of(element).molarMass());
  }

  Constituent(
      @Nullable Ion ion, String species, String heading, MolarMass whole, MolarMass stated) {
    this.ion = ion;
    this.species = species;
    this.heading = heading;
    this.statedMolarMass = stated;
    this.speciesPerStated = whole.inGramsPerMole() / stated.inGramsPerMole();
  }

  /** The ions that have no constant of their own; they hold no protons that count. */
  private static final class MinorIons {
    static final Ion NITRITE = Ion.strong("nitrite", "NO2-");
    static final Ion FLUORIDE = Ion.strong("fluoride", "F-");
    static final Ion IRON = Ion.strong("iron", "Fe^2+");
    static final Ion MANGANESE = Ion.strong("manganese", "Mn^2+");
  }

  /**
   * Returns the constituent with a heading, spelled "sulfate" or "sulphate".
   *
   * @param heading such as {@code sulfate as sulfur}
   * @return the constituent; empty for another heading
   */
  public static Optional<Constituent> headed(String heading) {
    String spelled = Objects.requireNonNull(heading, "heading").replace("sulph", "sulf");
    for (Constituent each : values()) {
      if (each.heading.equals(spelled)) {
        return Optional.of(each);
      }
    }
    return Optional.empty();
  }

  /**
   * Returns the ion.
   *
   * @return the ion; empty for silica
   */
  public Optional<Ion> ion() {
    return Optional.ofNullable(ion);
  }

  /**
   * Returns the name as a table heads it.
   *
   * @return such as {@code sulfate as sulfur}
   */
  public String heading() {
    return heading;
  }

  /**
   * Returns the figure, on the basis of the ion, or of SiO2.
   *
   * @return the figure; for what reports often leave out it is unknown where none stated it
   */
  public Figure<MassConcentration> figure() {
    if (ion == null) {
      return ReportedFigure.of(species);
    }
    return MAIN.contains(ion) ? Figures.concentration(ion) : ReportedFigure.of(ion);
  }

  /**
   * Returns the molar mass of what is stated.
   *
   * @return such as that of sulfur for sulfate as sulfur
   */
  public MolarMass statedMolarMass() {
    return statedMolarMass;
  }

  /** Equivalents that a milligram of the ion counts in a balance of charges, 0 or more. */
  double milliequivalentsPerMilligram() {
    if (ion == null) {
      return 0;
    }
    return this == PHOSPHATE || this == PHOSPHATE_AS_PHOSPHORUS
        ? 1 / ion.molarMass().inGramsPerMole()
        : ion.milliequivalentsPerMilligram();
  }

  /** The name without the basis. */
  String species() {
    return species;
  }

  /** The mass of the ion for each mass that is stated. */
  double speciesPerStated() {
    return speciesPerStated;
  }

  /** Whether it is stated as the ion itself. */
  boolean isOnItsOwnBasis() {
    return heading.equals(species);
  }
}
