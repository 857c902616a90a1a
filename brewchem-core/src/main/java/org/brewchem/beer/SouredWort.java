package org.brewchem.beer;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.uncertainty.Traced;

/**
 * A wort after its {@link Souring}: the lactic acid that was formed, the pH, the titratable
 * acidity. Immutable.
 */
public final class SouredWort {

  private static final Scale<MassConcentration> GRAMS =
      Scale.of(
          "g/L as lactic acid",
          grams -> grams.inMilligramsPerLitre() / 1000,
          MassConcentration::ofGramsPerLitre,
          2);

  /** The lactic acid and lactate that bacteria formed, counted as lactic acid. */
  public static final Figure<MassConcentration> FORMED = figure("lactate formed");

  /** All lactic acid and lactate of the soured wort, counted as lactic acid. */
  public static final Figure<MassConcentration> LACTATE = figure("lactate of the soured wort");

  private final Liquid after;
  private final Step formed;
  private final Optional<Traced> before;

  SouredWort(Liquid after, Step formed, Optional<Traced> before) {
    this.after = after;
    this.formed = formed;
    this.before = before;
  }

  private static Figure<MassConcentration> figure(String name) {
    return Figure.of(
        name,
        Map.of(),
        GRAMS,
        new Figure.Rule() {
          @Override
          public Step find(Figure<?> figure, Answering from) {
            return Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
                .text(text(), "")
                .unknown(List.of("does not apply to a " + from.kind() + "; a souring answers it"));
          }

          @Override
          public String text() {
            return "from the pH at start to the pH at stop by the proton balance";
          }
        });
  }

  /**
   * Returns what was formed.
   *
   * @return lactic acid and lactate together, counted as lactic acid
   */
  public Answer<MassConcentration> lactateFormed() {
    return Answer.of(FORMED, formed);
  }

  /**
   * Returns all lactate of the soured wort.
   *
   * @return what was formed and what was there before; unknown while the latter is not stated
   */
  public Answer<MassConcentration> lactate() {
    Step.Builder sum =
        Step.of(LACTATE.title(), LACTATE.scale(), Step.Kind.FORMULA)
            .text("lactate formed + lactate before", "");
    if (before.isEmpty()) {
      return Answer.of(
          LACTATE,
          sum.inputs(List.of(formed)).unknown(List.of("the lactate before souring is not stated")));
    }
    Traced own = before.get();
    Traced more = formed.found().orElseThrow();
    Traced all = own.plus(more);
    Step there =
        Step.of("lactate before souring", GRAMS, Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text("as stated", "")
            .found(own);
    return Answer.of(
        LACTATE,
        sum.inputs(List.of(formed, there))
            .detail(() -> new Step.Detail(List.of(), own.value() + more.value() - all.value(), 0))
            .found(all));
  }

  /**
   * Returns the pH of the soured wort.
   *
   * @return the pH
   */
  public Answer<PH> pH() {
    return after.answer(Figures.PH_VALUE);
  }

  /**
   * Returns the titratable acidity of the soured wort, without dilution by the titrant.
   *
   * @param endPoint the end point
   * @return the acidity, shown as lactic acid
   */
  public Answer<TitratableAcidity> titratableAcidity(PH endPoint) {
    return after.answer(Figures.titratableAcidity(endPoint));
  }

  /**
   * Returns the soured wort.
   *
   * @return a liquid that answers figures and can be treated
   */
  public Liquid after() {
    return after;
  }

  /**
   * Explains what was formed.
   *
   * @return the steps
   */
  public Explanation explain() {
    return new Explanation(formed);
  }

  /**
   * Returns what is notable about the soured wort.
   *
   * @return the notices, without repetition
   */
  public List<Notice> notices() {
    Set<Notice> all = new LinkedHashSet<>(after.notices());
    all.addAll(formed.notices());
    all.addAll(pH().notices());
    return List.copyOf(all);
  }

  /**
   * Returns what to mind while a wort is soured (common practice, no source). Local law and a
   * trained person outrank it.
   *
   * @return the cautions
   */
  public List<Caution> cautions() {
    return Caution.of(List.of(Hazard.SOURING));
  }

  @Override
  public String toString() {
    return lactateFormed() + " formed; " + pH();
  }
}
