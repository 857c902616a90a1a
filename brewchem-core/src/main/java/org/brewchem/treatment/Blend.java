package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.Treatment;
import org.brewchem.uncertainty.Traced;

/**
 * A blend of liquids of one kind: of two, of given volumes or in the proportion that meets a
 * constraint on any figure; of more, in shares that {@link Blends} is told. Totals mix exactly, pH
 * follows from the balance. Immutable.
 *
 * @param <L> the kind of the liquids and of the blend
 */
public final class Blend<L extends Liquid> {

  private static final Scale<Double> PERCENT = Scale.number("% by volume", 2);
  private static final double SAME = 1e-12;
  private static final double TOLERANCE = 1e-9;

  private final List<Double> shares;
  private final L after;
  private final List<Caution> cautions;
  private final Step share;
  private final String text;

  private Blend(List<Double> shares, L after, List<Caution> cautions, Step share, String text) {
    this.shares = shares;
    this.after = after;
    this.cautions = cautions;
    this.share = share;
    this.text = text;
  }

  private static <L extends Liquid> Blend<L> ofTwo(
      double shareOfFirst, L after, List<Caution> cautions, Step share) {
    return new Blend<>(
        List.of(shareOfFirst, 1 - shareOfFirst), after, cautions, share, share.toString());
  }

  /** A blend of any number of named parts. */
  static <L extends Liquid> Blend<L> of(
      List<String> names, List<Double> shares, L after, List<Caution> cautions) {
    List<String> parts = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      if (shares.get(i) > 0) {
        parts.add(PERCENT.text(100 * shares.get(i)) + " of " + names.get(i));
      }
    }
    Step together =
        Step.of("shares of the parts, together", PERCENT, Step.Kind.FORMULA)
            .text("sum of the shares", "")
            .detail(
                () ->
                    new Step.Detail(
                        parts,
                        shares.stream().mapToDouble(Double::doubleValue).sum() - 1,
                        ShareLimits.ON))
            .found(Traced.exact(100));
    return new Blend<>(List.copyOf(shares), after, cautions, together, String.join(", ", parts));
  }

  /**
   * Starts with two liquids.
   *
   * @param first the liquid whose kind and chemistry the blend has
   * @param second the other, at the same temperature
   * @param <L> their kind
   * @return what can be asked of them
   * @throws IllegalArgumentException if the temperatures differ
   */
  public static <L extends Liquid> Request<L> of(L first, L second) {
    return new Request<>(first, second);
  }

  /**
   * Two liquids of which a blend is wanted.
   *
   * @param <L> their kind
   */
  public static final class Request<L extends Liquid> {
    private final L first;
    private final L second;

    private Request(L first, L second) {
      this.first = Objects.requireNonNull(first, "first");
      this.second = Objects.requireNonNull(second, "second");
      if (!first.contents().temperature().equals(second.contents().temperature())) {
        throw new IllegalArgumentException(
            "temperature of the other liquid: "
                + second.contents().temperature()
                + " is not possible; "
                + first.contents().temperature()
                + " is needed");
      }
    }

    /**
     * Blends given volumes.
     *
     * @param ofFirst volume of the first liquid, above 0
     * @param ofSecond volume of the second liquid, above 0
     * @return the blend
     * @throws IllegalArgumentException if a volume is not above 0
     */
    public Blend<L> volumes(Volume ofFirst, Volume ofSecond) {
      Checks.positive("volume of the first liquid", ofFirst.inLitres(), "L");
      Checks.positive("volume of the second liquid", ofSecond.inLitres(), "L");
      double share = ofFirst.inLitres() / ofFirst.plus(ofSecond).inLitres();
      Step step =
          Step.of("share of the first liquid", PERCENT, Step.Kind.FORMULA)
              .text("its volume over both", "")
              .detail(
                  () ->
                      new Step.Detail(
                          List.of(ofFirst + " and " + ofSecond),
                          ofFirst.inLitres() / ofFirst.plus(ofSecond).inLitres() - share,
                          0))
              .found(Traced.exact(100 * share));
      return ofTwo(share, mixed(share), blending(share).cautions(), step);
    }

    /**
     * Finds the proportion that meets a constraint: its aim, or where it has none the limit that is
     * nearest to the liquid that does not meet it, of two the first.
     *
     * @param constraint the constraint
     * @return the blend
     * @throws UnreachableException if both liquids lie on the same side of it, or one is there
     *     already
     * @throws UnknownFigureException if one of the liquids does not know the figure
     */
    public Blend<L> to(Constraint constraint) {
      Figure<?> figure = constraint.figure();
      double one = number(first, figure);
      double other = number(second, figure);
      double shown = figure.inShown(Traced.exact(one)).value();
      double otherShown = figure.inShown(Traced.exact(other)).value();
      double excess = constraint.excess(shown);
      double wantedShown =
          constraint
              .aim()
              .orElse(excess == 0 ? otherShown - constraint.excess(otherShown) : shown - excess);
      double wanted = Shown.inOwnScale(figure, wantedShown);
      boolean isThere = isSame(shown, wantedShown);
      if (isThere || isSame(otherShown, wantedShown)) {
        throw new UnreachableException(
            figure.title(),
            wantedShown,
            wantedShown,
            figure.shown(),
            UnreachableException.Reason.ALREADY_THERE,
            isThere ? "the second liquid" : "the first liquid");
      }
      if ((one - wanted) * (other - wanted) >= 0) {
        double nearest = Math.abs(one - wanted) < Math.abs(other - wanted) ? one : other;
        throw notBetween(figure, wantedShown, nearest);
      }
      double found =
          Roots.between(
                  share ->
                      share <= 0
                          ? other - wanted
                          : share >= 1 ? one - wanted : number(mixed(share), figure) - wanted,
                  0,
                  1)
              .orElseThrow(end -> notBetween(figure, wantedShown, other));
      L after = mixed(found);
      Step reached = after.step(figure);
      Step step =
          Step.of("share of the first liquid", PERCENT, Step.Kind.ROOT)
              .text("until the " + constraint, "")
              .inputs(List.of(first.step(figure), second.step(figure), reached))
              .detail(
                  () ->
                      new Step.Detail(
                          List.of(figure.title() + " of the blend: " + reached),
                          reached.found().orElseThrow().value() - wanted,
                          TOLERANCE * Math.max(1, Math.abs(wanted))))
              .found(Traced.exact(100 * found));
      return ofTwo(found, after, blending(found).cautions(), step);
    }

    /**
     * Finds the proportion that has a value of a figure.
     *
     * @param figure the figure
     * @param value what it is to be
     * @param <Q> its meaning
     * @return the blend
     * @throws UnreachableException if it does not lie between the liquids
     */
    public <Q> Blend<L> to(Figure<Q> figure, Q value) {
      return to(Constraint.exactly(figure, value));
    }

    /**
     * Finds the proportion that has a pH.
     *
     * @param pH the pH
     * @return the blend
     * @throws UnreachableException if it does not lie between the liquids
     */
    public Blend<L> to(PH pH) {
      return to(Figures.PH_VALUE, pH);
    }

    /**
     * Finds the proportion that has a titratable acidity.
     *
     * @param acidity the acidity with its end point
     * @return the blend
     * @throws UnreachableException if it does not lie between the liquids
     */
    public Blend<L> to(TitratableAcidity acidity) {
      return to(Figures.titratableAcidity(acidity.endPoint()), acidity);
    }

    /** The same but for the last bits of a conversion. */
    private static boolean isSame(double number, double wanted) {
      return Math.abs(number - wanted) <= SAME * Math.max(1, Math.abs(wanted));
    }

    private UnreachableException notBetween(Figure<?> figure, double wanted, double nearest) {
      return new UnreachableException(
          figure.title(),
          wanted,
          figure.inShown(Traced.exact(nearest)).value(),
          figure.shown(),
          UnreachableException.Reason.NOT_BETWEEN,
          "a blend of the two");
    }

    private static double number(Liquid liquid, Figure<?> figure) {
      Step step = liquid.step(figure);
      return step.found()
          .orElseThrow(() -> new UnknownFigureException(figure.title(), step.whyUnknown()))
          .value();
    }

    private Treatment blending(double share) {
      return Treatments.blend(Volume.ofLitres(share), second, Volume.ofLitres(1 - share));
    }

    @SuppressWarnings("unchecked") // a treated liquid is a liquid of its own kind
    private L mixed(double share) {
      return (L) first.after(blending(share));
    }
  }

  /**
   * Returns the share of the first liquid.
   *
   * @return its volume over that of both, 0 to 1
   */
  public double shareOfFirst() {
    return shares.get(0);
  }

  /**
   * Returns the shares of all parts, in the order in which they were named.
   *
   * @return their volumes over that of the blend, each 0 to 1
   */
  public List<Double> shares() {
    return shares;
  }

  /**
   * Returns the volumes of all parts, in the order in which they were named.
   *
   * @param total the volume of the blend
   * @return their volumes, taken as additive
   */
  public List<Volume> volumes(Volume total) {
    Objects.requireNonNull(total, "total");
    return shares.stream().map(total::times).toList();
  }

  /**
   * Returns the volume of the first liquid.
   *
   * @param total the volume of the blend
   * @return its volume, the liquids' volumes taken as additive
   */
  public Volume ofFirst(Volume total) {
    return total.times(shareOfFirst());
  }

  /**
   * Returns the volume of the second liquid; of more than two, {@link #volumes} has them all.
   *
   * @param total the volume of the blend
   * @return its volume, the liquids' volumes taken as additive
   */
  public Volume ofSecond(Volume total) {
    return total.times(shares.get(1));
  }

  /**
   * Returns the blend.
   *
   * @return a liquid of the same kind
   */
  public L after() {
    return after;
  }

  /**
   * Answers a figure of the blend.
   *
   * @param figure the figure
   * @param <Q> the meaning of its value
   * @return the answer
   */
  public <Q> Answer<Q> answer(Figure<Q> figure) {
    return after.answer(figure);
  }

  /**
   * Explains the proportion, of named parts their shares.
   *
   * @return the steps
   */
  public Explanation explain() {
    return new Explanation(share);
  }

  /**
   * Returns what is notable about the blend.
   *
   * @return the notices
   */
  public List<Notice> notices() {
    Set<Notice> all = new LinkedHashSet<>(after.notices());
    all.addAll(share.notices());
    return List.copyOf(all);
  }

  /**
   * Returns what to mind while blending.
   *
   * @return the cautions
   */
  public List<Caution> cautions() {
    Set<Caution> all = new LinkedHashSet<>(cautions);
    if (after.kind().equals("beer")) {
      all.addAll(Caution.of(List.of(Hazard.TASTING, Hazard.REFERMENTATION, Hazard.CARBON_DIOXIDE)));
    }
    return List.copyOf(all);
  }

  /** The shares in words. */
  String parts() {
    return text;
  }

  @Override
  public String toString() {
    return text + "; " + after;
  }
}
