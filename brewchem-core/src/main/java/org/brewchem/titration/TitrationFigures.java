package org.brewchem.titration;

import java.util.List;
import java.util.Map;
import org.brewchem.figure.Answering;
import org.brewchem.figure.ClosedForm;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.ElectricPotential;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Component;

/**
 * The figures that titrants, electrodes, titrations and fitted curves answer. Those of a liquid
 * that a titration answers as well, titratable acidity and titration alkalinity, are in {@link
 * Figures}.
 */
public final class TitrationFigures {

  static final Scale<Volume> MILLILITRES =
      Scale.of("mL", Volume::inMillilitres, Volume::ofMillilitres, 3);

  /** The concentration of a titrant, in moles of the named substance. */
  public static final Figure<AmountConcentration> TITRANT_CONCENTRATION =
      Figure.of(
          "titrant concentration",
          Map.of(),
          Scale.of(
              "mol/L",
              AmountConcentration::inMolesPerLitre,
              AmountConcentration::ofMolesPerLitre,
              6),
          new Found("as a label states it or weighings of a primary standard give it"));

  /** The slope of an electrode as a fraction of Nernst's, shown in per cent. */
  public static final Figure<Double> ELECTRODE_SLOPE =
      Figure.of(
              "electrode slope",
              Map.of(),
              Scale.number("of Nernst's", 4),
              new Found("line through the buffers"))
          .shownIn(Scale.of("% of Nernst's", slope -> 100 * slope, number -> number / 100, 1));

  /** The potential of an electrode at pH 7. */
  public static final Figure<ElectricPotential> ELECTRODE_OFFSET =
      Figure.of(
          "electrode offset",
          Map.of("at", "pH 7"),
          Scale.of("mV", ElectricPotential::inMillivolts, ElectricPotential::ofMillivolts, 1),
          new Found("line through the buffers"));

  /** The inert charge of a sample that a curve was fitted with, besides that of what is known. */
  public static final Figure<Double> FITTED_INERT_CHARGE =
      Figure.of(
          "fitted inert charge",
          Map.of(),
          Scale.number("Eq/kg", 7),
          new Found("fit to the titration curve"));

  /** The volume of titrant that neutralises a weak acid, by the fit of its curve. */
  public static final Figure<Volume> EQUIVALENCE_VOLUME =
      Figure.of(
          "equivalence volume",
          Map.of(),
          MILLILITRES,
          new Found("fitted total x volume under the burette / titrant"));

  /** The concentration of a weak acid in the undiluted sample, by the fit of its curve. */
  public static final Figure<AmountConcentration> WEAK_ACID_CONCENTRATION =
      Figure.of(
          "concentration of the weak acid",
          Map.of(),
          TITRANT_CONCENTRATION.scale(),
          new Found("fitted total x volume under the burette / undiluted sample"));

  private TitrationFigures() {}

  static String concentrationOf(TitrantSubstance substance) {
    return "concentration of " + substance;
  }

  /**
   * Returns the titratable acidity to an end point stated as an acid, its equivalent a step of the
   * explanation.
   *
   * @param endPoint the end point
   * @param basis the acid
   * @return the figure, in g/L of the acid
   */
  public static Figure<TitratableAcidity> titratableAcidityAs(PH endPoint, AcidBasis basis) {
    double perEquivalent = basis.gramsPerEquivalent();
    return Figure.of(
        "titratable acidity",
        Map.of("as", basis.name() + " to " + endPoint),
        Scales.acidityAs(basis, endPoint),
        new ClosedForm(
            "acidity in mEq/L x " + NumberText.plain(perEquivalent) + " g/Eq / 1000",
            "molar mass over protons by definition; atomic weights CIAAW 2021",
            Figure.list(Figures.titratableAcidity(endPoint).shownIn(Scales.acidity(endPoint))),
            x -> x[0] * (perEquivalent / 1000)));
  }

  /**
   * Returns the titration alkalinity to an end point stated as calcium carbonate, its equivalent a
   * step of the explanation.
   *
   * @param endPoint the end point
   * @return the figure, in mg/L as CaCO3
   */
  public static Figure<TitrationAlkalinity> titrationAlkalinityAsCaCO3(PH endPoint) {
    double perEquivalent =
        TitrationAlkalinity.ofMilliequivalentsPerLitre(1, endPoint).inMilligramsPerLitreAsCaCO3();
    return Figure.of(
        "titration alkalinity",
        Map.of("as", "CaCO3 to " + endPoint),
        Scales.titrationAlkalinityAsCaCO3(endPoint),
        new ClosedForm(
            "alkalinity in mEq/L x " + NumberText.plain(perEquivalent) + " mg/mEq",
            "half the molar mass of CaCO3; atomic weights CIAAW 2021",
            Figure.list(Figures.titrationAlkalinity(endPoint)),
            x -> x[0] * perEquivalent));
  }

  /**
   * Returns a part of an alkalinity that is due to one ion, by the split of P and M.
   *
   * @param ion "hydroxide", "carbonate" or "bicarbonate"
   * @param endPoint the end point of M
   * @return the figure
   */
  static Figure<TitrationAlkalinity> alkalinityOf(String ion, PH endPoint) {
    return Figure.of(
        ion + " alkalinity",
        Map.of("to", endPoint.toString()),
        Scales.titrationAlkalinity(endPoint),
        new Found("split of P and M"));
  }

  /**
   * Returns the total of a component that a curve was fitted with.
   *
   * @param component the component
   * @return the figure, in mol/kg
   */
  public static Figure<Molality> fittedTotal(Component component) {
    return Figure.of(
        "fitted total",
        Map.of("of", component.name()),
        Scale.of("mol/kg", Molality::inMolesPerKilogram, Molality::ofMolesPerKilogram, 7),
        new Found("fit to the titration curve"));
  }

  /**
   * Returns the dissociation constant that a curve was fitted with.
   *
   * @param component the component, of one step
   * @return the figure
   */
  public static Figure<Double> fittedPKa(Component component) {
    return Figure.of(
        "fitted pKa",
        Map.of("of", component.name()),
        Scale.number("", 4),
        new Found("fit to the titration curve"));
  }

  /** The rule of a figure that only its own kind of measurement finds, and answers by itself. */
  private record Found(String text) implements Figure.Rule {

    @Override
    public Step find(Figure<?> figure, Answering from) {
      return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
          .text(text, "")
          .unknown(List.of("does not apply to a " + from.kind()));
    }
  }
}
