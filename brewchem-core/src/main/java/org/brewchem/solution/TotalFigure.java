package org.brewchem.solution;

import java.util.List;
import java.util.Locale;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.quantity.MolarMass;
import org.brewchem.substance.Component;

/** The rule of a figure that is the total of one component, as a mass per litre. Immutable. */
public final class TotalFigure implements Figure.Rule {

  private final Component component;
  private final double milligramsPerMole;

  TotalFigure(Component component, MolarMass as) {
    this.component = component;
    this.milligramsPerMole = as.inGramsPerMole() * 1000;
  }

  /**
   * Returns the component.
   *
   * @return whose total the figure is
   */
  public Component component() {
    return component;
  }

  /**
   * Returns the mass of a mole.
   *
   * @return mg per mole of the component
   */
  public double milligramsPerMole() {
    return milligramsPerMole;
  }

  @Override
  public Step find(Figure<?> figure, Answering from) {
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
            .text(text(), "atomic weights CIAAW 2021");
    if (!(from instanceof Liquid liquid)) {
      return builder.unknown(List.of("does not apply to a " + from.kind()));
    }
    Contents contents = liquid.contents();
    builder.inputs(contents.basis());
    double factor = milligramsPerMole * contents.kilogramsPerLitre();
    if (contents.unknown().contains(component)) {
      double added = contents.least(component).value() * factor;
      Scale<?> scale = figure.scale();
      return builder.unknown(
          List.of(
              component.name()
                  + " is not reported"
                  + (added == 0 ? "" : "; at least " + scale.text(added) + " was added")));
    }
    builder.notices(
        contents.notices().stream()
            .filter(notice -> notice.subject().equals(figure.name()))
            .toList());
    double total = contents.least(component).value();
    double found = total * factor;
    return builder
        .detail(
            () ->
                new Step.Detail(
                    List.of(
                        String.format(
                            Locale.ROOT,
                            "%.6g mmol/kg x %.5g g/mol x %.5g kg/L",
                            total * 1000,
                            milligramsPerMole / 1000,
                            contents.kilogramsPerLitre())),
                    total * factor - found,
                    0))
        .found(contents.least(component).times(factor));
  }

  @Override
  public String text() {
    return "total of " + component.name() + " x molar mass x kg of water per litre";
  }
}
