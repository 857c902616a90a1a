package org.brewchem.solution;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.brewchem.figure.Answering;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.MolarMass;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Gas;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Mineral;
import org.brewchem.uncertainty.Traced;

/**
 * The figures of any liquid. They are meant for static import; the ions and components of the same
 * names are then written with their class.
 */
public final class Figures {

  /** Milliequivalents in an equivalent, and millimoles in a mole. */
  private static final double MILLI = 1000;

  /** Hydroxide or hydrogen ion worth a word, mol/kg: 5 mg/L as CaCO3; our choice. */
  private static final double MUCH_BESIDES_CARBONATE = 1e-4;

  /** The pH, from the charge balance. */
  public static final Figure<PH> PH_VALUE =
      BalanceFigure.figure(
          "pH",
          Map.of(),
          Scales.PH_SCALE,
          "root of the charge balance",
          Equilibria::pH,
          0,
          (contents, balance) -> balance.pH(),
          (contents, pH) -> BalanceDetail.charges(contents, pH, 0));

  /** The ionic strength: half the sum of molality times squared charge. */
  public static final Figure<Molality> IONIC_STRENGTH =
      BalanceFigure.figure(
          "ionic strength",
          Map.of(),
          Scales.MILLIMOLES_PER_KILOGRAM,
          "half the sum of molality times squared charge",
          Figures::ionicStrength,
          0,
          (contents, balance) -> balance.ionicStrength().times(MILLI),
          (contents, found) -> shown(contents, found, 0, Figures::ionicStrength));

  /** The carbonate alkalinity: bicarbonate and twice carbonate, what is paired included. */
  public static final Figure<CarbonateAlkalinity> CARBONATE_ALKALINITY =
      BalanceFigure.figure(
          "carbonate alkalinity",
          Map.of(),
          Scales.ALKALINITY_AS_CACO3,
          "bicarbonate + 2 carbonate, what is paired included",
          Figures::carbonateAlkalinity,
          MILLI * caCO3PerMilliequivalent(),
          (contents, balance) -> balance.chargeOf(Component.CARBONATE).times(-1),
          (contents, found) ->
              BalanceDetail.chargeOf(
                  Component.CARBONATE,
                  contents,
                  -found / (MILLI * caCO3PerMilliequivalent() * contents.kilogramsPerLitre())),
          Figures::besidesCarbonate);

  /** All carbon dioxide, bicarbonate and carbonate together. */
  public static final Figure<AmountConcentration> TOTAL_CARBON_DIOXIDE =
      Figure.of(
          "total carbon dioxide",
          Map.of(),
          Scales.MILLIMOLES_PER_LITRE,
          new TotalFigure(Component.CARBONATE, MolarMass.ofGramsPerMole(1)));

  /** The partial pressure of carbon dioxide with which the liquid is in equilibrium. */
  public static final Figure<Pressure> CARBON_DIOXIDE_PRESSURE =
      BalanceFigure.ofSolubility(
          "partial pressure of carbon dioxide",
          Map.of(),
          Scales.KILOPASCALS,
          "activity of dissolved carbon dioxide over its solubility",
          Figures::carbonDioxidePressure,
          (contents, found) -> shown(contents, found, 0, Figures::carbonDioxidePressure),
          "carbon dioxide",
          Gas.CARBON_DIOXIDE.solubility());

  /** The buffer capacity at the liquid's own pH. */
  public static final Figure<BufferCapacity> BUFFER_CAPACITY =
      BalanceFigure.figure(
          "buffer capacity",
          Map.of(),
          Scales.BUFFER_CAPACITY_SCALE,
          "slope of the charge at the liquid's own pH",
          Figures::ownBufferCapacity,
          MILLI,
          (contents, balance) -> balance.byDifferences(Figures::ownBufferCapacity),
          (contents, found) -> BalanceDetail.slope(contents, contents.equilibria().pH(), found));

  /**
   * The index that sourness follows: free H+ and the molecules of organic acids with at least one
   * proton, each counted alike (Da Conceicao Neta, Johanningsmeier, Drake and McFeeters, J. Food
   * Sci. 72(6) (2007) S352; abstract seen). An index and no score: other work finds that hydroxyl
   * groups make an acid more sour (Li and Liu, Food Chem. 185 (2015) 200; extracts seen), and that
   * a titration to pH 4.4 orders acids as tasters do. Phosphate and protein are no organic acids
   * here.
   */
  public static final Figure<AmountConcentration> SOURNESS_INDEX =
      Figure.of("sourness index", Map.of(), Scales.MILLIMOLES_PER_LITRE, new SournessIndex());

  /** Calcium as Ca. */
  public static final Figure<MassConcentration> CALCIUM = concentration(Ion.CALCIUM);

  /** Magnesium as Mg. */
  public static final Figure<MassConcentration> MAGNESIUM = concentration(Ion.MAGNESIUM);

  /** Sodium as Na. */
  public static final Figure<MassConcentration> SODIUM = concentration(Ion.SODIUM);

  /** Potassium as K. */
  public static final Figure<MassConcentration> POTASSIUM = concentration(Ion.POTASSIUM);

  /** Sulfate as SO4. */
  public static final Figure<MassConcentration> SULFATE = concentration(Ion.SULFATE);

  /** Chloride as Cl. */
  public static final Figure<MassConcentration> CHLORIDE = concentration(Ion.CHLORIDE);

  /** Nitrate as NO3. */
  public static final Figure<MassConcentration> NITRATE = concentration(Ion.NITRATE);

  /** The ratio of sulfate to chloride by mass, both as mg/L of the ion. */
  public static final Figure<Double> SULFATE_TO_CHLORIDE =
      ClosedForm.ratio(
          "sulfate to chloride",
          Scale.number("by mass", 2),
          "sulfate / chloride",
          "",
          SULFATE,
          CHLORIDE,
          1);

  private Figures() {}

  /**
   * Returns the figure of an ion whose total is reported as that ion, whatever forms it takes.
   *
   * @param ion the ion, such as phosphate; not bicarbonate or carbonate, which share one total
   * @return its concentration
   * @throws IllegalArgumentException for bicarbonate and carbonate
   */
  public static Figure<MassConcentration> concentration(Ion ion) {
    Component component = ion.components().keySet().iterator().next();
    if (component.equals(Component.CARBONATE)) {
      throw new IllegalArgumentException(
          "ion: "
              + ion.name()
              + " is not possible; it is one form of a total. Ask for the carbonate alkalinity or"
              + " the total carbon dioxide");
    }
    return Figure.of(
        ion.name(),
        Map.of(),
        Scales.MILLIGRAMS_PER_LITRE,
        new TotalFigure(component, ion.molarMass()));
  }

  /**
   * Returns the free part of an ion: what of its total is in no ion pair at the liquid's own pH.
   *
   * @param ion the ion, such as calcium; not bicarbonate or carbonate, which share one total
   * @return its concentration, as that ion
   * @throws IllegalArgumentException for bicarbonate and carbonate
   */
  public static Figure<MassConcentration> free(Ion ion) {
    Figure<MassConcentration> total = concentration(ion);
    return Figure.of(
        "free " + ion.name(),
        Map.of(),
        Scales.MILLIGRAMS_PER_LITRE,
        new FreeRule(
            ion.components().keySet().iterator().next(),
            total,
            ion.molarMass().inGramsPerMole() * MILLI));
  }

  /**
   * Returns the titratable acidity to an end point, without dilution by the titrant: the strong
   * base per litre that brings the liquid there. Shown as lactic acid.
   *
   * @param endPoint the end point
   * @return the figure
   */
  public static Figure<TitratableAcidity> titratableAcidity(PH endPoint) {
    return titratableAcidity(endPoint, Acid.LACTIC);
  }

  /**
   * Returns the titratable acidity to an end point, shown as an acid.
   *
   * @param endPoint the end point
   * @param basis the acid in whose grams it is shown
   * @return the figure
   */
  public static Figure<TitratableAcidity> titratableAcidity(PH endPoint, AcidBasis basis) {
    return BalanceFigure.figure(
            "titratable acidity",
            Map.of("to", endPoint.toString()),
            Scales.acidity(endPoint),
            "charge at the end point with its sign changed",
            equilibria -> -equilibria.chargeAt(endPoint.value()),
            MILLI,
            (contents, balance) ->
                contents
                    .acidityBeyond(endPoint)
                    .minus(balance.chargeAt(Traced.exact(endPoint.value()))),
            (contents, found) ->
                BalanceDetail.charges(
                    contents,
                    endPoint.value(),
                    contents.acidityBeyond(endPoint).value()
                        - found / (MILLI * contents.kilogramsPerLitre())))
        .shownIn(Scales.acidityAs(basis, endPoint));
  }

  /**
   * Returns the alkalinity that a titration with acid to an end point finds.
   *
   * @param endPoint the end point
   * @return the figure
   */
  public static Figure<TitrationAlkalinity> titrationAlkalinity(PH endPoint) {
    return BalanceFigure.figure(
        "titration alkalinity",
        Map.of("to", endPoint.toString()),
        Scales.titrationAlkalinity(endPoint),
        "charge at the end point",
        equilibria -> equilibria.chargeAt(endPoint.value()),
        MILLI,
        (contents, balance) -> balance.chargeAt(Traced.exact(endPoint.value())),
        (contents, found) ->
            BalanceDetail.charges(
                contents, endPoint.value(), found / (MILLI * contents.kilogramsPerLitre())));
  }

  /**
   * Returns the buffer capacity at a pH.
   *
   * @param at the pH
   * @return the figure
   */
  public static Figure<BufferCapacity> bufferCapacity(PH at) {
    ToDoubleFunction<Equilibria> slope =
        equilibria -> {
          equilibria.chargeAt(at.value());
          return equilibria.bufferCapacity();
        };
    return BalanceFigure.figure(
        "buffer capacity",
        Map.of("at", at.toString()),
        Scales.BUFFER_CAPACITY_SCALE,
        "slope of the charge",
        slope,
        MILLI,
        (contents, balance) -> balance.byDifferences(slope),
        (contents, found) -> BalanceDetail.slope(contents, at.value(), found));
  }

  /**
   * Returns the saturation index of a mineral: above 0 the liquid is supersaturated.
   *
   * @param mineral the mineral
   * @return the figure; without a value where the liquid holds none of one of its components
   */
  public static Figure<Double> saturationIndex(Mineral mineral) {
    ToDoubleFunction<Equilibria> index =
        equilibria -> {
          equilibria.pH();
          OptionalDouble found = equilibria.state().saturationIndex(mineral);
          return found.orElse(Double.NEGATIVE_INFINITY);
        };
    return Figure.of(
        "saturation index",
        Map.of("of", mineral.name()),
        Scale.number("", 2),
        new IndexRule(mineral, index));
  }

  /** Shows the solved balance and evaluates the function once more. */
  private static Step.Detail shown(
      Contents contents, double found, double perKilogram, ToDoubleFunction<Equilibria> number) {
    Equilibria equilibria = contents.equilibria();
    double again =
        number.applyAsDouble(equilibria)
            * (perKilogram == 0 ? 1 : perKilogram * contents.kilogramsPerLitre());
    Step.Detail balance = BalanceDetail.charges(contents, contents.equilibria().pH(), 0);
    return new Step.Detail(balance.lines(), again - found, 1e-9 * Math.max(1, Math.abs(found)));
  }

  /** About hydroxide and free acid, which are no carbonate and count in a mash all the same. */
  private static List<Notice> besidesCarbonate(Contents contents) {
    Equilibrium state = contents.equilibria().equilibrium();
    double base = molality(state, "OH-") - molality(state, "H+");
    if (Math.abs(base) < MUCH_BESIDES_CARBONATE) {
      return List.of();
    }
    return List.of(
        Notice.of(
            SolutionCode.BESIDES_CARBONATE,
            "carbonate alkalinity",
            String.format(
                Locale.ROOT,
                "at pH %.2f about %.2g mEq/kg of %s are no carbonate and not counted: ask for the"
                    + " titration alkalinity, or the residual alkalinity, to the pH of the mash",
                state.pH().value(),
                Math.abs(1000 * base),
                base > 0 ? "hydroxide" : "free acid")));
  }

  private static double molality(Equilibrium state, String species) {
    return state.species(species).orElseThrow().molality().inMolesPerKilogram();
  }

  private static double carbonateAlkalinity(Equilibria equilibria) {
    equilibria.pH();
    return equilibria.components().contains(Component.CARBONATE)
        ? -equilibria.chargeOf(equilibria.indexOf(Component.CARBONATE)) + 0.0
        : 0;
  }

  private static double carbonDioxidePressure(Equilibria equilibria) {
    equilibria.pH();
    return equilibria.state().partialPressure(Gas.CARBON_DIOXIDE).inKilopascals();
  }

  private static double ionicStrength(Equilibria equilibria) {
    equilibria.pH();
    return MILLI * equilibria.ionicStrength();
  }

  private static double ownBufferCapacity(Equilibria equilibria) {
    equilibria.pH();
    return equilibria.bufferCapacity();
  }

  private static double caCO3PerMilliequivalent() {
    return CarbonateAlkalinity.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3();
  }

  /** The part of a total that is in no pair; unknown where the total is. */
  private record FreeRule(
      Component component, Figure<MassConcentration> total, double milligramsPerMole)
      implements Figure.Rule {

    @Override
    public Step find(Figure<?> figure, Answering from) {
      Step all = total.rule().find(total, from);
      if (all.found().isEmpty()) {
        return Step.of(figure.title(), figure.scale(), Step.Kind.ROOT)
            .text(text(), "")
            .unknown(all.whyUnknown());
      }
      Figure<?> counted =
          BalanceFigure.figure(
              figure.name(),
              figure.parameters(),
              Scales.MILLIGRAMS_PER_LITRE,
              text(),
              this::free,
              milligramsPerMole,
              (contents, balance) -> balance.byDifferences(this::free),
              (contents, found) -> shown(contents, found, milligramsPerMole, this::free));
      return counted.rule().find(counted, from);
    }

    private double free(Equilibria equilibria) {
      equilibria.pH();
      return equilibria.components().contains(component)
          ? equilibria.state().free(component).inMolesPerKilogram()
          : 0;
    }

    @Override
    public String text() {
      return "total less what is in ion pairs";
    }
  }

  /** A saturation index, which a liquid without the mineral's components does not have. */
  private record IndexRule(Mineral mineral, ToDoubleFunction<Equilibria> index)
      implements Figure.Rule {

    @Override
    public Step find(Figure<?> figure, Answering from) {
      if (from instanceof Liquid liquid) {
        for (Component component : mineral.components().keySet()) {
          if (liquid.contents().least(component).value() == 0) {
            return Step.of(figure.title(), figure.scale(), Step.Kind.ROOT)
                .text(text(), "")
                .unknown(List.of("the liquid holds no " + component.name()));
          }
        }
      }
      Figure<?> counted =
          BalanceFigure.ofSolubility(
              figure.name(),
              figure.parameters(),
              Scale.number("", 2),
              text(),
              index,
              (contents, found) -> shown(contents, found, 0, index),
              mineral.name(),
              mineral.constant());
      return counted.rule().find(counted, from);
    }

    @Override
    public String text() {
      return "log10 of the product of activities over that of " + mineral.name();
    }
  }
}
