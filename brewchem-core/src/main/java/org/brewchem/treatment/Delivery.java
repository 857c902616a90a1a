package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Solute;
import org.brewchem.uncertainty.Traced;

/**
 * What a substance delivers in a liquid: the equivalents of protons that a mole of it releases
 * where the liquid is at a pH, negative for a base. It is the charge of the liquid at that pH
 * before less that after, per mole: at the pH that the dose leads to, what acts in the liquid; at
 * the end point of a titration, what the titration will find. Neither is a whole number, nor that
 * of the formula.
 *
 * <p>{@link org.brewchem.solution.EffectiveEquivalents} is the limit of it for a trace of the acid
 * at zero ionic strength, where the forms of the acid alone decide. Elsewhere "charge" is the
 * charge of a liquid or a component; what an acid gives is always "delivered". Immutable.
 */
public final class Delivery {

  private static final String TEXT =
      "(charge before - charge after x growth of the volume) / moles added";

  /** The step of a slope by pH. */
  private static final double STEP = 1e-4;

  private static final Scale<Double> EQUIVALENTS_PER_MOLE = Scale.number("Eq/mol", 3);

  private final Liquid before;
  private final Liquid after;
  private final String substance;
  private final Traced moles;
  private final Traced growth;

  Delivery(Liquid before, Liquid after, String substance, Addition addition) {
    this.before = before;
    this.after = after;
    this.substance = substance;
    this.moles = addition.moles();
    this.growth = addition.growth();
  }

  /**
   * Adds so much of a substance to a liquid, to see what it delivers.
   *
   * @param liquid the liquid
   * @param solute the substance
   * @param amount how much of it per litre of the liquid, above 0
   * @return what it delivers
   * @throws IllegalArgumentException if the amount is 0
   */
  public static Delivery of(Liquid liquid, Solute solute, AmountConcentration amount) {
    Checks.positive("amount of " + solute.name(), amount.inMillimolesPerLitre(), "mmol/L");
    Addition addition = Addition.of(solute, amount);
    return new Delivery(liquid, liquid.after(addition), solute.name(), addition);
  }

  /**
   * Returns the equivalents that a mole delivers where the liquid is at a pH.
   *
   * @param pH the pH
   * @return Eq/mol, negative for a base; what liquid before and after have in common cancels in its
   *     uncertainty
   */
  public Answer<Double> at(PH pH) {
    Objects.requireNonNull(pH, "pH");
    return answer(pH.toString(), figure -> find(figure, pH, List.of()));
  }

  /** The same at the pH that was reached, which is as uncertain as the liquid leaves it. */
  Answer<Double> atReached(Answer<PH> pH) {
    return answer(pH.value().toString(), figure -> find(figure, pH.value(), List.of(pH.step())));
  }

  /** What is delivered at the pH after the dose, of which a step says why it is unknown. */
  Answer<Double> atUnknown(Step pH) {
    return answer(
        "the pH after the dose",
        figure ->
            Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
                .text(TEXT, "")
                .inputs(List.of(pH))
                .unknown(pH.whyUnknown()));
  }

  private Answer<Double> answer(String place, Function<Figure<?>, Step> found) {
    Figure<Double> figure =
        Figure.of(
            "equivalents delivered by " + substance,
            Map.of("at", place),
            EQUIVALENTS_PER_MOLE,
            new DeliveryRule(found));
    return Answer.of(figure, figure.rule().find(figure, before));
  }

  /** The charge of the balance, also where a liquid would answer with what was measured. */
  private static Step charge(Liquid liquid, PH at) {
    Figure<TitrationAlkalinity> charge = Figures.titrationAlkalinity(at);
    return charge.rule().find(charge, liquid);
  }

  /** By how much more is delivered for each unit of pH. */
  private double slope(PH at) {
    double[] delivered = new double[2];
    for (int side = 0; side < 2; side++) {
      PH beside = PH.of(at.value() + (side == 0 ? -STEP : STEP));
      delivered[side] =
          charge(before, beside).found().orElseThrow().value()
              - charge(after, beside).found().orElseThrow().value() * (1 + growth.value());
    }
    return (delivered[1] - delivered[0]) / (2 * STEP) / (1000 * moles.value());
  }

  private Step find(Figure<?> figure, PH at, List<Step> reached) {
    Step own = charge(before, at);
    Step treated = charge(after, at);
    List<Step> inputs = new ArrayList<>(List.of(own, treated));
    inputs.addAll(reached);
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA).text(TEXT, "").inputs(inputs);
    if (own.found().isEmpty() || treated.found().isEmpty()) {
      return builder.unknown(own.found().isEmpty() ? own.whyUnknown() : treated.whyUnknown());
    }
    Traced first = own.found().get();
    Traced second = treated.found().get();
    double litres = 1 + growth.value();
    double perMole = 1 / (1000 * moles.value());
    double value = (first.value() - second.value() * litres) * perMole;
    Traced there =
        Traced.linear(
            value,
            new Traced[] {first, second, growth, moles},
            new double[] {
              perMole, -litres * perMole, -second.value() * perMole, -value / moles.value()
            });
    for (Step pH : reached) {
      Traced place = pH.found().orElseThrow();
      there = there.plus(place.minus(Traced.exact(place.value())).times(slope(at)));
    }
    return builder
        .detail(
            () ->
                new Step.Detail(
                    List.of(), (first.value() - second.value() * litres) * perMole - value, 0))
        .found(there);
  }

  private record DeliveryRule(Function<Figure<?>, Step> found) implements Figure.Rule {

    @Override
    public Step find(Figure<?> figure, Answering from) {
      return found.apply(figure);
    }

    @Override
    public String text() {
      return "charge of the liquid at the pH before less after, per mole";
    }
  }
}
