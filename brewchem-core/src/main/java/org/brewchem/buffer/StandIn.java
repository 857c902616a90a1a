package org.brewchem.buffer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
 * A stand-in for the buffer of a beer that nobody has measured: the acids of a {@link TypicalBeer},
 * and its lumped protein groups scaled until the whole has the titrated acidity. Nothing else is
 * scaled. Immutable.
 *
 * <p>An acid of which the beer's own total is known keeps that total. The proportion of the groups,
 * carboxyl to imidazole to amino of peptides to amino of amino acids as 4 : 1 : 1 : 1, is our own
 * choice after ranges from memory, and their pKa do not change with temperature.
 *
 * <p>How far a beer may lie from the typical one stands in the rows of its composition, a spread to
 * each amount. They are sources of uncertainty like any other: pH and titrated acidity come back
 * with the uncertainty that was stated for them, and what a dose changes carries that of the
 * composition, about 30 % of the change of pH in an ordinary beer. A measured buffer is always
 * better, and for a sour beer, whose acid is mostly lactic, the stand-in is a poor guess.
 */
public final class StandIn implements Buffer {

  private static final double MOST_GROUPS = 1000;

  /** Beyond it the stand-in no longer resembles a beer; our choice. */
  private static final double STRETCHED_SHARE_OF_GROUPS = 0.75;

  /** How far the listed acidity may be from the titrated one, Eq/kg. */
  private static final double TOLERANCE = 1e-10;

  private static final Scale<Double> FACTOR = Scale.number("times the typical amount", 3);

  private final Traced milliequivalentsPerLitre;
  private final PH endPoint;
  private final Map<Component, Traced> acids;
  private final Map<Component, Traced> groups;

  private StandIn(Traced milliequivalentsPerLitre, PH endPoint) {
    Checks.positive("titratable acidity", milliequivalentsPerLitre.value(), "mEq/L");
    this.milliequivalentsPerLitre = milliequivalentsPerLitre;
    this.endPoint = endPoint;
    this.acids = spread(TypicalBeer.acids());
    this.groups = spread(TypicalBeer.groups());
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
   * Returns the least titratable acidity that the stand-in can have at a pH: that of its acids
   * alone, without any groups.
   *
   * @param known the totals that are known of the beer
   * @param measured the pH of the beer
   * @return the acidity, to the end point of the one to match
   */
  public TitratableAcidity smallestAcidity(Contents known, PH measured) {
    Work work = new Work(withGroups(withAcids(known), Traced.exact(0)), measured.value());
    return inLitres(work.acidity(0), known);
  }

  private TitratableAcidity inLitres(double equivalentsPerKilogram, Contents known) {
    return TitratableAcidity.ofMilliequivalentsPerLitre(
        equivalentsPerKilogram * 1000 * known.kilogramsPerLitre(), endPoint);
  }

  /**
   * Returns the contents that stand for the beer.
   *
   * @throws AcidityBelowStandInException if the acids alone have more than the acidity to match
   */
  @Override
  public Contents contents(Contents known, Traced pH) {
    Contents bare = withAcids(known);
    Traced wanted = milliequivalentsPerLitre.times(1 / (1000 * known.kilogramsPerLitre()));
    Work work = new Work(withGroups(bare, Traced.exact(0)), pH.value());
    TitratableAcidity smallest = inLitres(work.acidity(0), known);
    double missing = acidity().minus(smallest).inMilliequivalentsPerLitre();
    if (missing < 0) {
      throw new AcidityBelowStandInException(acidity(), PH.of(pH.value()), smallest);
    }
    double found = missing == 0 ? 0 : search(work, wanted.value(), pH.value());
    Traced factor = factor(bare, pH, wanted, found);
    Contents closed = withGroups(bare, factor).closedTo(pH);
    Step step =
        Step.of("groups of the stand-in", FACTOR, Step.Kind.ROOT)
            .text("the amount that gives the typical acids the titrated acidity at the pH", "")
            .detail(() -> shown(closed, wanted.value()))
            .found(factor);
    return closed
        .withBasis(List.of(step))
        .withNotices(notices(missing / milliequivalentsPerLitre.value()));
  }

  private double search(Work work, double wanted, double pH) {
    return Roots.rising(factor -> work.acidity(factor) - wanted, 0, 1, MOST_GROUPS)
        .orElseThrow(
            end ->
                new IllegalArgumentException(
                    "titratable acidity: "
                        + acidity()
                        + " at pH "
                        + pH
                        + " is not possible; no amount of the stand-in's groups has it"));
  }

  /** The factor with its sources: it moves such that the acidity stays the titrated one. */
  private Traced factor(Contents bare, Traced pH, Traced wanted, double value) {
    Source unknown = Source.withoutUncertainty("groups of the stand-in", value, "");
    Traced residual =
        withGroups(bare, Traced.of(unknown))
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

  private Contents withAcids(Contents known) {
    Map<Component, Traced> more = new LinkedHashMap<>();
    acids.forEach(
        (acid, perLitre) -> {
          if (!known.totals().containsKey(acid)) {
            more.put(acid, perLitre.times(1 / known.kilogramsPerLitre()));
          }
        });
    return known.plus(more);
  }

  private Contents withGroups(Contents acids, Traced factor) {
    Map<Component, Traced> more = new LinkedHashMap<>();
    groups.forEach(
        (group, perLitre) ->
            more.put(group, perLitre.times(factor).times(1 / acids.kilogramsPerLitre())));
    return acids.plus(more);
  }

  private static List<Notice> notices(double shareOfGroups) {
    List<Notice> notices = new ArrayList<>();
    notices.add(
        Notice.of(
            BufferCode.RESTS_ON_STAND_IN,
            "buffer",
            "the buffer is a stand-in, the acids of an average beer with protein groups scaled to"
                + " the measured acidity, so that a change of pH is known to about 30 % (standard"
                + " uncertainty) at best"));
    if (shareOfGroups > STRETCHED_SHARE_OF_GROUPS) {
      notices.add(
          Notice.of(
              BufferCode.STAND_IN_STRETCHED,
              "buffer",
              String.format(
                  Locale.ROOT,
                  "%.0f %% of the acidity is carried by the stand-in's scaled groups, far from an"
                      + " average beer: expect more than the stated uncertainty, and measure the"
                      + " buffer",
                  100 * shareOfGroups)));
    }
    return notices;
  }

  /** Returns nothing: no pH was measured, which the contents say. */
  @Override
  public Optional<Notice> extrapolatedAt(PH pH) {
    return Optional.empty();
  }

  /** Returns what it is and the acidity that it matches. */
  @Override
  public String toString() {
    return "stand-in buffer matching " + acidity();
  }

  /** The acids and a variable amount of groups, closed to a pH, in a work space. */
  private final class Work {
    private final Equilibria equilibria;
    private final double pH;
    private final int[] indices;
    private final double[] typical;

    Work(Contents acids, double pH) {
      equilibria = acids.withInertCharge(Traced.exact(0)).equilibria();
      this.pH = pH;
      indices = new int[groups.size()];
      typical = new double[groups.size()];
      int i = 0;
      for (Map.Entry<Component, Traced> group : groups.entrySet()) {
        indices[i] = equilibria.indexOf(group.getKey());
        typical[i++] = group.getValue().value() / acids.kilogramsPerLitre();
      }
    }

    /** Strong base per kilogram from the pH to the end point. */
    double acidity(double factor) {
      for (int i = 0; i < indices.length; i++) {
        equilibria.setTotal(indices[i], factor * typical[i]);
      }
      equilibria.setInertCharge(0);
      equilibria.setInertCharge(-equilibria.chargeAt(pH));
      return -equilibria.chargeAt(endPoint.value());
    }
  }
}
