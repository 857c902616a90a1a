package org.brewchem.beer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MolarMass;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Permission;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Use;
import org.jspecify.annotations.Nullable;

/**
 * A dose of an acid for a volume of beer: how much of the reagent, and the figures to expect.
 *
 * <p>It is a proposal. The uncertainties of the expected figures include those stated for the
 * measured pH and acidity and for the reagent, and that of the buffering; they do not include a
 * wrong label, an unmixed tank or a tank volume read wrongly. Volumes are taken as additive, and
 * the volume of a reagent without a density, a powder, is neglected.
 *
 * <p>Immutable.
 */
public final class BeerDose {

  /** Relative step of a central difference. */
  private static final double REAGENT_STEP = 0.01;

  private final AcidAddition addition;
  private final double molesPerLitreOfBeer;
  private final Solution mixture;
  private final PH pHAfter;
  private final TitratableAcidity acidityAfter;

  BeerDose(AcidAddition addition, double molesPerLitreOfBeer) {
    this.addition = addition;
    this.molesPerLitreOfBeer = molesPerLitreOfBeer;
    mixture = addition.with(molesPerLitreOfBeer);
    pHAfter = mixture.pH();
    acidityAfter = addition.acidity(mixture);
  }

  /**
   * Returns the beer before the dose.
   *
   * @return the beer
   */
  public Beer beer() {
    return addition.beer();
  }

  /**
   * Returns the volume of the beer before the dose.
   *
   * @return the volume
   */
  public Volume beerVolume() {
    return addition.volume();
  }

  /**
   * Returns the reagent.
   *
   * @return the reagent
   */
  public Reagent reagent() {
    return addition.reagent();
  }

  /**
   * Returns the amount of the acid to add.
   *
   * @return the amount of the compound, for an acid assayed as total acid the total
   */
  public AmountOfSubstance amount() {
    return AmountConcentration.ofMolesPerLitre(molesPerLitreOfBeer).times(beerVolume());
  }

  /**
   * Returns the mass of the reagent to add.
   *
   * @return the mass
   */
  public Mass mass() {
    return reagent().massOf(amount());
  }

  /**
   * Returns the volume of the reagent to add.
   *
   * @return the volume; empty when the density of the reagent is not known, as for a powder
   */
  public Optional<Volume> volume() {
    return reagent().density().map(density -> Volume.from(mass(), density));
  }

  /**
   * Returns the mass of the reagent for a hectolitre of beer.
   *
   * @return the mass
   */
  public Mass massPerHectolitre() {
    return mass().times(1 / beerVolume().inHectolitres());
  }

  /**
   * Returns the volume of the reagent for a hectolitre of beer.
   *
   * @return the volume; empty when the density of the reagent is not known, as for a powder
   */
  public Optional<Volume> volumePerHectolitre() {
    return volume().map(all -> all.times(1 / beerVolume().inHectolitres()));
  }

  /**
   * Returns the pH to expect.
   *
   * @return the pH; {@link #after()} has its uncertainty
   */
  public PH pHAfter() {
    return pHAfter;
  }

  /**
   * Returns the titratable acidity to expect.
   *
   * @return the acidity; {@link #after()} has its uncertainty
   */
  public TitratableAcidity acidityAfter() {
    return acidityAfter;
  }

  /**
   * Returns the key figures to expect, dilution by the reagent included.
   *
   * @return pH and acidity with their uncertainties, sulfate to chloride and calcium where they are
   *     known before; of origin {@link Origin#PREDICTED}, but for what only the water tells
   */
  public KeyFigures after() {
    return Beer.keyFigures(
        Figure.of(pHAfter, uncertaintyOfPH(), Origin.PREDICTED),
        Figure.of(acidityAfter, uncertaintyOfAcidity(), Origin.PREDICTED),
        ionsAfter());
  }

  private double uncertaintyOfPH() {
    Beer beer = beer();
    double measured = beer.pHFigure().standardUncertainty().orElse(0);
    double buffering = beer.uncertaintyOfChangeTo(pHAfter);
    double strength =
        (pHWith(1 + REAGENT_STEP) - pHWith(1 - REAGENT_STEP))
            / (2 * REAGENT_STEP)
            * uncertaintyOfStrength().orElse(0);
    return Math.hypot(Math.hypot(measured, buffering), strength);
  }

  private double pHWith(double factor) {
    return addition.with(factor * molesPerLitreOfBeer).pH().value();
  }

  private TitratableAcidity uncertaintyOfAcidity() {
    double growth = addition.growth(molesPerLitreOfBeer);
    double measured = beer().acidityFigure().standardUncertainty().orElse(0) / growth;
    double strength =
        equivalentsAtEndPoint()
            * molesPerLitreOfBeer
            * 1000
            / growth
            * uncertaintyOfStrength().orElse(0);
    return TitratableAcidity.ofMilliequivalentsPerLitre(
        Math.hypot(measured, strength), acidityAfter.endPoint());
  }

  /** Of the amount of acid in what is measured out: by volume if it is a liquid. */
  private OptionalDouble uncertaintyOfStrength() {
    return reagent().density().isPresent()
        ? reagent().relativeStandardUncertaintyByVolume()
        : reagent().relativeStandardUncertaintyByMass();
  }

  /**
   * Returns what a mole of the acid does to the pH: the moles of a strong acid with one proton that
   * bring the beer to the same pH. It is usually less than what the titration finds; it can exceed
   * the protons of a strong acid with several by a little, since the anion counts in the ionic
   * strength.
   *
   * @return the effective equivalents on the way to the new pH, Eq/mol
   */
  public double equivalentsInBeer() {
    double growth = addition.growth(molesPerLitreOfBeer);
    return addition.before().diluted(growth).charge(pHAfter).inEquivalentsPerLitre()
        * growth
        / molesPerLitreOfBeer;
  }

  /**
   * Returns what a mole of the acid adds to the titratable acidity. For phosphoric acid to pH 8.2
   * that is about 1.9 and neither 2 nor 3.
   *
   * @return the effective equivalents up to the end point, Eq/mol
   */
  public double equivalentsAtEndPoint() {
    double growth = addition.growth(molesPerLitreOfBeer);
    return (acidityAfter.inMilliequivalentsPerLitre() * growth
            - beer().acidity().inMilliequivalentsPerLitre())
        / (1000 * molesPerLitreOfBeer);
  }

  /**
   * Returns the protons of the acid's formula, the convention behind "as lactic acid". No dose is
   * computed from it.
   *
   * @return the number of protons
   */
  public int equivalentsByDefinition() {
    return addition.acid().protonsByDefinition();
  }

  /**
   * Returns what the anion of the acid does to the beer.
   *
   * @return the effect
   */
  public AnionEffect anionEffect() {
    boolean calcium =
        beer().chemistry().level() == Level.PAIRS
            && mixture.total(Component.CALCIUM).inMolesPerLitre() > 0;
    return new AnionEffect(
        addition.acid().component(),
        anionAdded(),
        ratio(beer().ions()),
        ratio(ionsAfter()),
        calcium ? freeCalcium(addition.before()) : null,
        calcium ? freeCalcium(mixture) : null,
        permission().mayBeTasted());
  }

  private Permission permission() {
    return reagent().permissionIn(Use.BEER);
  }

  private MassConcentration anionAdded() {
    MolarMass molarMass =
        addition.acid().component().molarMass().orElse(addition.acid().molarMass());
    return AmountConcentration.ofMolesPerLitre(
            molesPerLitreOfBeer / addition.growth(molesPerLitreOfBeer))
        .times(molarMass);
  }

  private static @Nullable Double ratio(Map<Ion, Beer.Content> ions) {
    return Beer.sulfateToChloride(ions).map(Figure::value).orElse(null);
  }

  private static MassConcentration freeCalcium(Solution solution) {
    return AmountConcentration.from(
            solution.equilibrium().free(Component.CALCIUM),
            Density.ofKilogramsPerLitre(solution.kilogramsPerLitre()))
        .times(Ion.CALCIUM.molarMass());
  }

  /** The known ions after the dose, diluted, and raised where the acid brings them. */
  private Map<Ion, Beer.Content> ionsAfter() {
    double share = 1 / addition.growth(molesPerLitreOfBeer);
    Component anion = addition.acid().component();
    Map<Ion, Beer.Content> after = new LinkedHashMap<>();
    beer()
        .ions()
        .forEach(
            (ion, content) -> {
              MassConcentration diluted = content.concentration().times(share);
              boolean raised = ion.components().containsKey(anion);
              MassConcentration u = content.standardUncertainty();
              after.put(
                  ion,
                  new Beer.Content(
                      raised ? diluted.plus(anionAdded()) : diluted,
                      u == null ? null : u.times(share),
                      content.origin() == Origin.MEASURED_IN_BEER
                          ? Origin.PREDICTED
                          : content.origin()));
            });
    return after;
  }

  /**
   * Returns what a brewer should know about this prediction.
   *
   * @return the findings
   */
  public List<BeerFinding> findings() {
    List<BeerFinding> findings = new ArrayList<>(beer().findings());
    if (Beer.acidityFindings(beer().acidity()).isEmpty()) {
      findings.addAll(Beer.acidityFindings(acidityAfter));
    }
    if (beer().buffering().extrapolatedAt(pHAfter).isPresent()) {
      findings.add(
          new BeerFinding(
              BeerFinding.Kind.EXTRAPOLATED,
              Texts.format(
                  "pH %.2f lies outside the readings of the measured buffer", pHAfter.value())));
    }
    if (permission().isNotable()) {
      findings.add(new BeerFinding(BeerFinding.Kind.PERMISSION, permission().text()));
    }
    notStated("measured pH", beer().pHFigure().standardUncertainty()).ifPresent(findings::add);
    notStated("measured titratable acidity", beer().acidityFigure().standardUncertainty())
        .ifPresent(findings::add);
    notStated("strength of the reagent", uncertaintyOfStrength()).ifPresent(findings::add);
    reagent()
        .boundInEsters()
        .ifPresent(
            bound ->
                findings.add(
                    new BeerFinding(
                        BeerFinding.Kind.BOUND_IN_ESTERS,
                        bound
                            + " of the acid is bound in esters and acts only after hydrolysis, slow"
                            + " in the cold: just after the dose the beer is less acid than"
                            + " predicted")));
    if (mixture.equilibrium().beyondActivityRange()) {
      findings.add(
          new BeerFinding(
              BeerFinding.Kind.BEYOND_ACTIVITY_RANGE,
              "the ionic strength is beyond the range of the activity rule"));
    }
    return List.copyOf(findings);
  }

  private static Optional<BeerFinding> notStated(String what, OptionalDouble uncertainty) {
    return uncertainty.isPresent()
        ? Optional.empty()
        : Optional.of(
            new BeerFinding(
                BeerFinding.Kind.UNCERTAINTY_NOT_STATED,
                "the uncertainty of the "
                    + what
                    + " was not stated and is not in the uncertainty of the prediction"));
  }

  /**
   * Returns the usual cautions for handling the acid and for dosing a beverage (common practice, no
   * source). Local law, the supplier's safety data sheet and a trained person outrank them.
   *
   * @return the cautions
   */
  public List<String> cautions() {
    List<String> cautions = new ArrayList<>();
    cautions.add(
        "Concentrated acid burns skin and eyes: goggles, gloves and apron as the supplier's safety"
            + " data sheet says.");
    Component anion = addition.acid().component();
    if (anion.equals(Component.SULFATE)) {
      cautions.add(
          "Sulfuric acid heats violently with water: pour it slowly into plenty of water, never"
              + " water into it.");
    } else if (anion.equals(Component.CHLORIDE)) {
      cautions.add("Hydrochloric acid fumes: work in moving air, and keep it off stainless steel.");
    } else {
      cautions.add("Dilute by pouring acid into water, never water into acid.");
    }
    cautions.add(
        "Use a food-grade reagent, permitted for beer in this amount and declared as local food law"
            + " wants; none of this is checked here but that the acid is a food additive at all.");
    cautions.add("Compare assay and density with the label: 88 % is not 80 %.");
    cautions.add(
        "Try the dose on the bench first: measure pH and acidity"
            + (permission().mayBeTasted()
                ? ", and taste."
                : ". Nobody tastes it before its use in beer is known to be permitted."));
    cautions.add(
        "Dose slowly into moving beer, two thirds first; mix, measure, then add the rest. A"
            + " carbonated beer foams: leave headspace, and a way out for the gas.");
    return List.copyOf(cautions);
  }

  /**
   * Shows the arithmetic line by line.
   *
   * @return lines separated by line feeds
   */
  public String explain() {
    double growth = addition.growth(molesPerLitreOfBeer);
    Beer beer = beer();
    PH endPoint = acidityAfter.endPoint();
    List<String> lines = new ArrayList<>();
    lines.add("beer: " + beer.pH() + ", " + Texts.acidity(beer.acidity()) + " (measured)");
    lines.add(beer.buffering().toString());
    lines.add("chemistry: " + beer.chemistry() + ", " + beer.temperature());
    lines.add(
        "buffer capacity of the beer: "
            + NumberText.significant(
                addition.before().bufferCapacity(beer.pH()).inMilliequivalentsPerLitrePerPH(), 3)
            + " mEq/L per pH at "
            + beer.pH());
    lines.add(
        "acid: "
            + NumberText.significant(1000 * molesPerLitreOfBeer, 4)
            + " mmol per litre of beer, "
            + NumberText.significant(amount().inMoles(), 4)
            + " mol of "
            + addition.acid().name()
            + " in "
            + NumberText.plain(beerVolume().inLitres())
            + " L");
    lines.add(
        "mass: "
            + NumberText.significant(amount().inMoles(), 4)
            + " mol x "
            + NumberText.significant(addition.acid().molarMass().inGramsPerMole(), 5)
            + " g/mol / "
            + NumberText.plain(reagent().assay().fraction())
            + " = "
            + NumberText.significant(mass().inGrams(), 4)
            + " g of reagent");
    volume()
        .ifPresent(
            litres ->
                lines.add(
                    "volume: "
                        + NumberText.significant(mass().inGrams(), 4)
                        + " g / "
                        + NumberText.significant(
                            reagent().density().orElseThrow().inGramsPerMillilitre(), 4)
                        + " g/mL = "
                        + NumberText.significant(litres.inMillilitres(), 4)
                        + " mL; volume increases by "
                        + NumberText.significant(100 * (growth - 1), 3)
                        + " %"));
    lines.add(
        Texts.format(
            "protons released per mole: %.3f in the beer down to %s, %.3f in the titration to"
                + " %s, %d by definition",
            equivalentsInBeer(),
            Texts.format("pH %.2f", pHAfter.value()),
            equivalentsAtEndPoint(),
            endPoint,
            equivalentsByDefinition()));
    lines.add(
        "acidity: ("
            + NumberText.significant(beer.acidity().inMilliequivalentsPerLitre(), 4)
            + " + "
            + NumberText.significant(equivalentsAtEndPoint(), 4)
            + " x "
            + NumberText.significant(1000 * molesPerLitreOfBeer, 4)
            + ") / "
            + NumberText.significant(growth, 7)
            + " = "
            + NumberText.significant(acidityAfter.inMilliequivalentsPerLitre(), 4)
            + " mEq/L");
    lines.add(
        "pH: root of the charge balance of the mixture, "
            + NumberText.decimals(pHAfter.value(), 3));
    lines.add(
        "standard uncertainty of the pH: measured "
            + NumberText.decimals(beer.pHFigure().standardUncertainty().orElse(0), 3)
            + ", buffering "
            + NumberText.decimals(beer.uncertaintyOfChangeTo(pHAfter), 3)
            + ", with the reagent together "
            + NumberText.decimals(uncertaintyOfPH(), 3));
    lines.add(anionEffect().toString());
    findings().forEach(finding -> lines.add("note: " + finding));
    return String.join("\n", lines);
  }

  /** Returns the dose and the figures to expect in a line. */
  @Override
  public String toString() {
    String dose =
        volume()
            .map(v -> NumberText.significant(v.inMillilitres(), 3) + " mL (" + grams() + ")")
            .orElse(grams());
    KeyFigures after = after();
    return dose
        + " of "
        + reagent()
        + " into "
        + NumberText.plain(beerVolume().inHectolitres())
        + " hL; expected "
        + after.pH().orElseThrow().text()
        + "; "
        + after.acidity().orElseThrow().text();
  }

  private String grams() {
    return NumberText.significant(mass().inGrams(), 3) + " g";
  }
}
