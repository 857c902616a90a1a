package org.brewchem.treatment;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Component;
import org.brewchem.substance.Handling;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Traced;

/** Chalk stirred into a liquid, of which so much dissolves as equilibrium allows. */
final class Dissolution implements Treatment {

  private static final Mineral SOLID = Mineral.CALCITE;

  private final MassConcentration amount;
  private final Optional<Opening> open;

  Dissolution(MassConcentration amount, Optional<Opening> open) {
    this.amount = amount;
    this.open = open;
  }

  @Override
  public Contents on(Contents before) {
    Balance.required(text(), before, SOLID.components().keySet());
    double stirred =
        amount.inGramsPerLitre()
            / Salt.CHALK.molarMass().inGramsPerMole()
            / before.kilogramsPerLitre();
    Map<Component, Traced> all = new LinkedHashMap<>();
    SOLID.components().forEach((part, count) -> all.put(part, Traced.exact(count * stirred)));
    Contents with = before.plus(all);
    Contents after =
        open.isPresent() ? open.get().on(with) : new Precipitation(List.of(SOLID)).on(with);
    Traced dissolved = after.least(Component.CALCIUM).minus(before.least(Component.CALCIUM));
    if (dissolved.value() < 0) {
      // It was supersaturated before: chalk does not dissolve, and what forms is another step.
      return open.map(gas -> gas.withoutMineral().on(before))
          .orElse(before)
          .withNotices(List.of(said(0, stirred)));
    }
    Step step =
        Step.of("chalk dissolved", Scales.MILLIMOLES_PER_LITRE, Step.Kind.FORMULA)
            .text("calcium afterwards less calcium before", "")
            .found(dissolved.times(1000 * before.kilogramsPerLitre()));
    return after.withBasis(List.of(step)).withNotices(List.of(said(dissolved.value(), stirred)));
  }

  private static Notice said(double dissolved, double stirred) {
    return Notice.of(
        TreatmentCode.STOPS_EARLIER,
        "chalk",
        Math.round(100 * dissolved / stirred)
            + " % of the chalk dissolves at equilibrium; "
            + SofteningPractice.stopsEarlier());
  }

  @Override
  public String text() {
    return Scales.GRAMS_PER_HECTOLITRE.text(amount.inGramsPerLitre() * 100)
        + " of chalk, "
        + open.map(Opening::text).orElse("closed");
  }

  @Override
  public List<Caution> cautions() {
    return Handling.cautionsOf(Salt.CHALK);
  }

  @Override
  public String toString() {
    return text();
  }
}
