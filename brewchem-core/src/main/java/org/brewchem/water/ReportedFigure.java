package org.brewchem.water;

import java.util.List;
import java.util.Map;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.jspecify.annotations.Nullable;

/**
 * The rule of a figure that most reports leave out: unknown where none stated it, instead of 0. It
 * goes through treatments if the liquid holds it as a component. Immutable.
 *
 * @param total the figure of what the liquid holds; null for what it does not hold as a component
 * @param component the component
 * @param name what it is called
 */
record ReportedFigure(
    @Nullable Figure<MassConcentration> total, @Nullable Component component, String name)
    implements Figure.Rule {

  /** The figure of an ion. */
  static Figure<MassConcentration> of(Ion ion) {
    return figure(
        ion.name(),
        new ReportedFigure(
            Figures.concentration(ion), ion.components().keySet().iterator().next(), ion.name()));
  }

  /** The figure of what is only ever reported. */
  static Figure<MassConcentration> of(String name) {
    return figure(name, new ReportedFigure(null, null, name));
  }

  private static Figure<MassConcentration> figure(String name, ReportedFigure rule) {
    return Figure.of(name, Map.of(), Scales.MILLIGRAMS_PER_LITRE, rule);
  }

  @Override
  public Step find(Figure<?> figure, Answering from) {
    if (total != null
        && component != null
        && from instanceof Liquid liquid
        && (liquid.contents().totals().containsKey(component)
            || liquid.contents().unknown().contains(component))) {
      return total.rule().find(figure, from);
    }
    return Step.of(figure.title(), figure.scale(), Step.Kind.STATED)
        .text(text(), "")
        .unknown(List.of(name + " is not reported"));
  }

  @Override
  public String text() {
    return "as reported";
  }
}
