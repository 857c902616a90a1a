package org.brewchem.buffer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * A stand-in for the buffer of a beer that nobody has measured: a {@link TypicalBeer}, all its
 * acids and lumped protein groups scaled by one factor until the whole has the titrated acidity at
 * the beer's pH. Immutable.
 *
 * <p>An acid whose total in the beer is known keeps that total. The proportion of the groups,
 * carboxyl to imidazole to amino of peptides to amino of amino acids as 9 : 4 : 4 : 4, is our own
 * choice, between beers with most groups near pKa 4 and beers with groups everywhere, and their pKa
 * do not change with temperature.
 *
 * <p>How far a beer may lie from the typical one is in the rows of its composition: each amount has
 * a spread. They are sources of uncertainty like any other: pH and titrated acidity come back with
 * the uncertainty that was stated for them, and what a dose changes carries that of the
 * composition, about 40 % of the change of pH by 0.4 g/L of lactic acid, which a study of unlike
 * beers showed to be necessary. A measured buffer is always better.
 *
 * <p>Below pH 4 a beer was soured, or holds fruit, and its acid buffers far more there than protein
 * does. A share of the acidity that nothing known explains is then taken as lactic acid: none at pH
 * 4.0, rising to 0.4 mol per equivalent at pH 3.6 and below, with a standard uncertainty of three
 * quarters of it; the rest is a typical beer. Where lactic acid is known, none is added.
 */
public final class StandIn implements Buffer {

  private static final double GREATEST_FACTOR = 1000;

  /** Beyond these multiples of a typical beer the stand-in no longer resembles one; our choice. */
  private static final double STRETCHED_FROM = 2.5;

  private static final double STRETCHED_TO = 0.4;

  /** Where a beer begins to count as soured, and from where on it counts as one; our choice. */
  private static final double SOUR_BELOW = 4.0;

  private static final double SOURED_BELOW = 3.6;

  /**
   * Lactic acid of a soured beer in moles per equivalent of its acidity: our choice, settled on
   * simulated beers that hold next to none and beers that hold little else.
   */
  private static final double SOURED_SHARE = 0.4;

  private static final double SOURED_SPREAD = 0.3;

  /** How far the listed acidity may be from the titrated one, Eq/kg. */
  private static final double TOLERANCE = 1e-10;

  private static final Scale<Double> FACTOR = Scale.number("times the typical amount", 3);

  private final Traced milliequivalentsPerLitre;
  private final PH endPoint;
  private final Map<Component, Traced> typical;

  private StandIn(Traced milliequivalentsPerLitre, PH endPoint) {
    Checks.positive("titratable acidity", milliequivalentsPerLitre.value(), "mEq/L");
    this.milliequivalentsPerLitre = milliequivalentsPerLitre;
    this.endPoint = endPoint;
    Map<Component, Traced> amounts = spread(TypicalBeer.acids());
    amounts.putAll(spread(TypicalBeer.groups()));
    this.typical = Collections.unmodifiableMap(amounts);
  }

  /** Amounts in mol/L, each a source of its own. */
  private static Map<Component, Traced> spread(List<TypicalBeer.Part> parts) {
    Map<Component, Traced> amounts = new LinkedHashMap<>();
    for (TypicalBeer.Part part : parts) {
      Source source =
          Source.of(
              part.component().name() + " of the stand-in",
              part.millimolesPerLitre(),
              part.relativeSpread() * part.millimolesPerLitre(),
              "mmol/L");
      amounts.put(part.component(), Traced.of(source).times(0.001));
    }
    return amounts;
  }

  /**
   * Returns the stand-in for a titrated acidity without a stated uncertainty.
   *
   * @param titrated the acidity, above 0
   * @return the stand-in
   * @throws IllegalArgumentException if the acidity is not above 0
   */
  public static StandIn matching(TitratableAcidity titrated) {
    double value = titrated.inMilliequivalentsPerLitre();
    return matching(
        Traced.of(Source.withoutUncertainty("titratable acidity", value, "mEq/L")),
        titrated.endPoint());
  }

  /**
   * Returns the stand-in for a titrated acidity.
   *
   * @param milliequivalentsPerLitre the acidity with its sources, mEq/L, above 0
   * @param endPoint its end point
   * @return the stand-in
   * @throws IllegalArgumentException if the acidity is not above 0
   */
  public static StandIn matching(Traced milliequivalentsPerLitre, PH endPoint) {
    Objects.requireNonNull(endPoint, "end point");
    return new StandIn(milliequivalentsPerLitre, endPoint);
  }

  /**
   * Returns the titratable acidity that the stand-in matches.
   *
   * @return the acidity
   */
  public TitratableAcidity acidity() {
    return TitratableAcidity.ofMilliequivalentsPerLitre(milliequivalentsPerLitre.value(), endPoint);
  }

  /**
   * Returns the least titratable acidity that the stand-in can have at a pH: that of what is known
   * of the beer, with nothing typical in it.
   *
   * @param known the totals that are known of the beer
   * @param measured the pH of the beer
   * @return the acidity, to the end point of the one to match
   */
  public TitratableAcidity smallestAcidity(Contents known, PH measured) {
    Work work = new Work(known, measured.value());
    return inLitres(work.acidity(0, 0), known);
  }

  private TitratableAcidity inLitres(double equivalentsPerKilogram, Contents known) {
    return TitratableAcidity.ofMilliequivalentsPerLitre(
        equivalentsPerKilogram * 1000 * known.kilogramsPerLitre(), endPoint);
  }

  /**
   * Returns the contents that stand for the beer.
   *
   * @throws AcidityBelowStandInException if what is known of the beer alone has more than the
   *     acidity to match
   */
  @Override
  public Contents contents(Contents known, Traced pH) {
    Traced wanted = milliequivalentsPerLitre.times(1 / (1000 * known.kilogramsPerLitre()));
    Work work = new Work(known, pH.value());
    double least = work.acidity(0, 0);
    TitratableAcidity smallest = inLitres(least, known);
    if (acidity().minus(smallest).inMilliequivalentsPerLitre() < 0) {
      throw new AcidityBelowStandInException(acidity(), PH.of(pH.value()), smallest);
    }
    Traced soured =
        known.totals().containsKey(Component.LACTATE)
            ? Traced.exact(0)
            : souring(pH.value()).times(wanted.plus(Traced.exact(-least)));
    double found = search(work, soured.value(), wanted.value(), pH.value());
    Traced factor = factor(known, soured, pH, wanted, found);
    Contents closed = scaled(known, soured, factor).closedTo(pH);
    Step step =
        Step.of("size of the stand-in", FACTOR, Step.Kind.ROOT)
            .text(
                "the multiple of a typical beer that has the titrated acidity at the pH"
                    + (soured.value() > 0 ? ", lactic acid of souring beside it" : ""),
                "")
            .detail(() -> shown(closed, wanted.value()))
            .found(factor);
    return closed
        .withBasis(List.of(step))
        .withNotices(notices(found, pH.value(), soured.value(), wanted.value()));
  }

  private double search(Work work, double soured, double wanted, double pH) {
    return Roots.rising(factor -> work.acidity(factor, soured) - wanted, 0, 1, GREATEST_FACTOR)
        .orElseThrow(
            end ->
                new IllegalArgumentException(
                    "titratable acidity: "
                        + acidity()
                        + " at pH "
                        + pH
                        + " is not possible; no amount of a typical beer's acids has it"));
  }

  /** The factor with its sources: it moves such that the acidity stays the titrated one. */
  private Traced factor(Contents known, Traced soured, Traced pH, Traced wanted, double value) {
    Source unknown = Source.withoutUncertainty("size of the stand-in", value, "");
    Traced residual =
        scaled(known, soured, Traced.of(unknown))
            .closedTo(pH)
            .chargeAt(Traced.exact(endPoint.value()))
            .plus(wanted);
    double overUnknown = residual.sensitivity(unknown);
    List<Traced> inputs = new ArrayList<>();
    List<Double> slopes = new ArrayList<>();
    for (Source source : residual.sources()) {
      if (source != unknown) {
        inputs.add(Traced.of(source));
        slopes.add(-residual.sensitivity(source) / overUnknown);
      }
    }
    return Traced.linear(
        value,
        inputs.toArray(Traced[]::new),
        slopes.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private Step.Detail shown(Contents closed, double wanted) {
    double acidity = -closed.equilibria().chargeAt(endPoint.value());
    return new Step.Detail(
        List.of(
            String.format(
                Locale.ROOT,
                "strong base to %s: %.6g mEq/kg, titrated %.6g mEq/kg",
                endPoint,
                acidity * 1000,
                wanted * 1000)),
        acidity - wanted,
        TOLERANCE);
  }

  /** A typical beer's acids and groups, so many times, and souring, besides what is known. */
  private Contents scaled(Contents known, Traced soured, Traced factor) {
    Map<Component, Traced> more = new LinkedHashMap<>();
    typical.forEach(
        (component, perLitre) -> {
          if (!known.totals().containsKey(component)) {
            more.put(component, perLitre.times(factor).times(1 / known.kilogramsPerLitre()));
          }
        });
    if (soured.value() > 0) {
      more.merge(Component.LACTATE, soured, Traced::plus);
    }
    return known.plus(more);
  }

  /** Moles of lactic acid of souring for each equivalent of acidity. */
  private static Traced souring(double pH) {
    double ramp = Math.min(1, Math.max(0, (SOUR_BELOW - pH) / (SOUR_BELOW - SOURED_BELOW)));
    return ramp == 0
        ? Traced.exact(0)
        : Traced.of(
            Source.of(
                "lactic acid of souring in the stand-in",
                SOURED_SHARE * ramp,
                SOURED_SPREAD * ramp,
                "mol/Eq"));
  }

  private static List<Notice> notices(double factor, double pH, double soured, double wanted) {
    List<Notice> notices = new ArrayList<>();
    notices.add(
        Notice.of(
            BufferCode.RESTS_ON_STAND_IN,
            "buffer",
            "the buffer is a stand-in, an average beer scaled to the measured acidity, so that a"
                + " change of pH is known to about 40 % (standard uncertainty)"));
    if (soured > 0) {
      notices.add(
          Notice.of(
              BufferCode.STAND_IN_SOURED,
              "buffer",
              String.format(
                  Locale.ROOT,
                  "at pH %.2f a beer was soured or holds fruit, and nothing tells how much: of its %.2g"
                      + " mEq/kg of acidity %.2g mmol/kg are taken as lactic acid, with a standard"
                      + " uncertainty of %.2g; measure the buffer",
                  pH,
                  1000 * wanted,
                  1000 * soured,
                  1000 * soured * SOURED_SPREAD / SOURED_SHARE)));
    }
    if (factor > STRETCHED_FROM || factor < STRETCHED_TO) {
      notices.add(
          Notice.of(
              BufferCode.STAND_IN_STRETCHED,
              "buffer",
              String.format(
                  Locale.ROOT,
                  "the stand-in is %.2g times an average beer, far from one: expect more than the"
                      + " stated uncertainty, and measure the buffer%s",
                  factor,
                  factor < 1 ? "" : ". Was the sample degassed? Carbon dioxide reads as acid")));
    }
    return notices;
  }

  /** Returns nothing: no pH was measured, which the contents say. */
  @Override
  public Optional<Notice> extrapolatedAt(PH pH) {
    Objects.requireNonNull(pH, "pH");
    return Optional.empty();
  }

  /** Returns what it is and the acidity that it matches. */
  @Override
  public String toString() {
    return "stand-in buffer matching " + acidity();
  }

  /** What is known with a variable amount of a typical beer, closed to a pH, in a work space. */
  private final class Work {
    private final Equilibria equilibria;
    private final double pH;
    private final int lactate;
    private final List<Integer> indices = new ArrayList<>();
    private final List<Double> amounts = new ArrayList<>();

    Work(Contents known, double pH) {
      equilibria =
          scaled(known, Traced.exact(0), Traced.exact(0))
              .withInertCharge(Traced.exact(0))
              .equilibria();
      lactate = equilibria.indexOf(Component.LACTATE);
      this.pH = pH;
      typical.forEach(
          (component, perLitre) -> {
            if (!known.totals().containsKey(component)) {
              indices.add(equilibria.indexOf(component));
              amounts.add(perLitre.value() / known.kilogramsPerLitre());
            }
          });
    }

    /** Strong base per kilogram from the pH to the end point, with so much lactic acid more. */
    double acidity(double factor, double soured) {
      for (int i = 0; i < indices.size(); i++) {
        double more = indices.get(i) == lactate ? soured : 0;
        equilibria.setTotal(indices.get(i), factor * amounts.get(i) + more);
      }
      equilibria.setInertCharge(0);
      equilibria.setInertCharge(-equilibria.chargeAt(pH));
      return -equilibria.chargeAt(endPoint.value());
    }
  }
}
