package org.brewchem.treatment;

import java.util.List;
import java.util.function.UnaryOperator;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.internal.NumberText;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Treatment;
import org.brewchem.uncertainty.Traced;

/** A liquid mixed with another, by mass or by volume: totals mix exactly, pH does not. */
final class Mixing implements Treatment {

  private static final int DIGITS = 4;

  private final UnaryOperator<Contents> other;
  private final String name;
  private final Traced share;
  private final boolean byVolume;
  private final List<Caution> cautions;

  /**
   * Mixes.
   *
   * @param other gives the contents that are mixed in, from those before
   * @param name what is mixed in
   * @param share its share of the mixture, 0 to 1
   * @param byVolume whether the share is one by volume
   * @param cautions what to mind about what is mixed in
   */
  Mixing(
      UnaryOperator<Contents> other,
      String name,
      Traced share,
      boolean byVolume,
      List<Caution> cautions) {
    this.other = other;
    this.name = name;
    this.share = share;
    this.byVolume = byVolume;
    this.cautions = cautions;
  }

  @Override
  public Contents on(Contents before) {
    Contents added = other.apply(before);
    Step step =
        Step.of(name + " in the mixture", Scale.number(unit(), 2), Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text("totals mix, pH follows", "")
            .found(share.times(100));
    return before.mixed(added, own(before, added)).withBasis(List.of(step));
  }

  /** The share of the liquid's own water by mass. */
  private Traced own(Contents before, Contents added) {
    double ratio = byVolume ? added.kilogramsPerLitre() / before.kilogramsPerLitre() : 1;
    double part = share.value();
    double weight = 1 - part + part * ratio;
    return Traced.linear(
        (1 - part) / weight, new Traced[] {share}, new double[] {-ratio / (weight * weight)});
  }

  private String unit() {
    return byVolume ? "% by volume" : "% by mass";
  }

  @Override
  public String text() {
    double rounded = Double.parseDouble(NumberText.significant(share.value() * 100, DIGITS));
    return "mixing in " + NumberText.plain(rounded) + " " + unit() + " of " + name;
  }

  @Override
  public List<Caution> cautions() {
    return cautions;
  }

  @Override
  public String toString() {
    return text();
  }
}
