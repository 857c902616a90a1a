package org.brewchem.beer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.buffer.AcidityBelowStandInException;
import org.brewchem.buffer.Buffer;
import org.brewchem.buffer.StandIn;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.figure.UsualRange;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.TotalFigure;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.titration.AcidityResult;
import org.brewchem.uncertainty.Traced;

/**
 * What was measured or is otherwise known of a beer before any treatment, and what it closes to.
 */
record Measured(
    Step pH,
    Step acidity,
    PH endPoint,
    Map<Figure<?>, Step> ions,
    Optional<Buffer> buffer,
    Temperature temperature,
    Chemistry chemistry) {

  /** A titrated acidity that differs by more from its own buffer is worth a warning; our choice. */
  private static final double DISAGREEING_SHARE = 0.05;

  private static final UsualRange PH_OF_BEER = UsualRange.named("pH of a beer");
  private static final UsualRange ACIDITY = UsualRange.named("titratable acidity of a beer");
  private static final UsualRange TEMPERATURE = UsualRange.named("temperature of a beer");

  private static final List<Ion> IONS =
      List.of(
          Ion.CALCIUM,
          Ion.MAGNESIUM,
          Ion.SODIUM,
          Ion.POTASSIUM,
          Ion.SULFATE,
          Ion.CHLORIDE,
          Ion.NITRATE);

  Measured withPH(Step other) {
    return new Measured(other, acidity, endPoint, ions, buffer, temperature, chemistry);
  }

  Measured withAcidity(Step other) {
    return new Measured(pH, other, endPoint, ions, buffer, temperature, chemistry);
  }

  Measured with(Figure<?> ion, Step step) {
    Map<Figure<?>, Step> all = new LinkedHashMap<>(ions);
    all.put(ion, step);
    return new Measured(
        pH, acidity, endPoint, Collections.unmodifiableMap(all), buffer, temperature, chemistry);
  }

  Measured buffered(Buffer other) {
    return new Measured(pH, acidity, endPoint, ions, Optional.of(other), temperature, chemistry);
  }

  Measured at(Temperature other) {
    return new Measured(pH, acidity, endPoint, ions, buffer, other, chemistry);
  }

  Measured under(Chemistry other) {
    Objects.requireNonNull(other, "chemistry");
    return new Measured(pH, acidity, endPoint, ions, buffer, temperature, other);
  }

  Traced value(Step step) {
    return step.found().orElseThrow();
  }

  /** What is unusual about the sizes of what was measured; a treatment corrects no slip of it. */
  List<Notice> plausibility() {
    List<Notice> all = new ArrayList<>(unusualAcidity());
    ACIDITY.judge("titratable acidity", value(acidity).value()).ifPresent(all::add);
    PH_OF_BEER.judge("pH of the beer", value(pH).value()).ifPresent(all::add);
    TEMPERATURE.judge("temperature of the beer", temperature.inCelsius()).ifPresent(all::add);
    ions.forEach(
        (ion, step) ->
            UsualRange.find(ion.name() + " of a beer")
                .flatMap(usual -> usual.judge(ion.name() + " of the beer", value(step).value()))
                .ifPresent(all::add));
    return all;
  }

  /** What is unusual about a pH after a treatment. */
  static Optional<Notice> unusualAfter(double pH) {
    return PH_OF_BEER.judge("pH of the beer after the treatment", pH);
  }

  Contents closed() {
    Traced stated = value(acidity);
    Buffer resisting = buffer.orElseGet(() -> StandIn.matching(stated, endPoint));
    try {
      Contents contents = resisting.contents(known(), value(pH));
      Traced computed = contents.chargeAt(Traced.exact(endPoint.value())).times(-1);
      Traced titrated = stated.times(1 / (1000 * contents.kilogramsPerLitre()));
      return noticed(withoutWhatTheBufferAssumes(contents), titrated.minus(computed));
    } catch (AcidityBelowStandInException below) {
      return known().open(List.of(String.valueOf(below.getMessage())));
    }
  }

  /** An ion of the water that the buffer assumes too must not count twice where it is shown. */
  private Contents withoutWhatTheBufferAssumes(Contents contents) {
    Contents result = contents;
    for (Figure<?> ion : ions.keySet()) {
      Component component = ((TotalFigure) ion.rule()).component();
      Optional<Traced> carried = contents.carriedOver(component);
      if (carried.isPresent()) {
        result = result.withCarriedOver(component, carried.get().minus(contents.least(component)));
      }
    }
    return result;
  }

  /** What is notable about what was measured stays with whatever is made of the beer. */
  private Contents noticed(Contents contents, Traced acidityBeyond) {
    List<Notice> all = new ArrayList<>(plausibility());
    ions.values().forEach(step -> all.addAll(step.notices()));
    Contents result = contents.withAcidityBeyond(endPoint, acidityBeyond);
    disagreement(result, value(acidity)).ifPresent(all::add);
    return result.withNotices(all);
  }

  /** What is unusual about the acidity as measured. */
  List<Notice> unusualAcidity() {
    return unusualAcidity(value(acidity).value());
  }

  List<Notice> unusualAcidity(double milliequivalentsPerLitre) {
    return AcidityResult.plausibility(
        TitratableAcidity.ofMilliequivalentsPerLitre(milliequivalentsPerLitre, endPoint),
        temperature);
  }

  /** What is known of the ions: measured totals, and unknown ones with what the water had. */
  private Contents known() {
    Contents known = Contents.pure(temperature, chemistry);
    double kilograms = known.kilogramsPerLitre();
    List<Step> basis = new ArrayList<>(List.of(pH, acidity));
    for (Ion ion : IONS) {
      known = known.withUnknown(componentOf(ion));
    }
    for (Map.Entry<Figure<?>, Step> entry : ions.entrySet()) {
      TotalFigure total = (TotalFigure) entry.getKey().rule();
      Step step = entry.getValue();
      Traced molesPerKilogram = value(step).times(1 / (total.milligramsPerMole() * kilograms));
      if (step.origin() == Origin.MEASURED) {
        known = known.withTotal(total.component(), molesPerKilogram);
        basis.add(step);
      } else {
        known = known.withCarriedOver(total.component(), molesPerKilogram);
      }
    }
    return known.withBasis(basis);
  }

  private static Component componentOf(Ion ion) {
    return ion.components().keySet().iterator().next();
  }

  private Optional<Notice> disagreement(Contents contents, Traced acidity) {
    double beyond =
        contents.acidityBeyond(endPoint).value()
            * 1000
            * contents.kilogramsPerLitre()
            / acidity.value();
    return Math.abs(beyond) <= DISAGREEING_SHARE
        ? Optional.empty()
        : Optional.of(
            Notice.of(
                BeerCode.BUFFER_DISAGREES,
                "titratable acidity",
                String.format(
                    Locale.ROOT,
                    "the measured acidity lies %+.1f %% from that of the buffer",
                    100 * beyond)));
  }
}
