package org.brewchem.titration;

import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Figures;
import org.brewchem.uncertainty.Traced;

/**
 * Hydroxide, carbonate and bicarbonate estimated from two alkalinities of one water: P, to pH 8.3,
 * and M, the total (the classical table, Standard Methods 2320 B). Immutable.
 *
 * <p>The table takes hydroxide and bicarbonate as never present together, and everything else that
 * takes up protons as absent. Its five cases are P = 0, P below, equal to and above half of M, and
 * P = M.
 */
public final class AlkalinitySplit {

  private final Answer<TitrationAlkalinity> hydroxide;
  private final Answer<TitrationAlkalinity> carbonate;
  private final Answer<TitrationAlkalinity> bicarbonate;

  private AlkalinitySplit(Answer<TitrationAlkalinity> p, Answer<TitrationAlkalinity> m) {
    Part part = new Part(p.step(), m.step(), m.value().endPoint());
    if (part.phenolphthalein() > part.total() / 2) {
      this.hydroxide = part.of("hydroxide", "2 P - M", 2, -1);
      this.carbonate = part.of("carbonate", "2 (M - P)", -2, 2);
      this.bicarbonate = part.of("bicarbonate", "none, as P is more than half of M", 0, 0);
    } else {
      this.hydroxide = part.of("hydroxide", "none, as P is not more than half of M", 0, 0);
      this.carbonate = part.of("carbonate", "2 P", 2, 0);
      this.bicarbonate = part.of("bicarbonate", "M - 2 P", -2, 1);
    }
  }

  /** What the parts are made of. */
  private record Part(Step p, Step m, PH endPoint) {

    double phenolphthalein() {
      return p.found().orElseThrow().value();
    }

    double total() {
      return m.found().orElseThrow().value();
    }

    Answer<TitrationAlkalinity> of(String ion, String text, int ofP, int ofM) {
      Figure<TitrationAlkalinity> figure = TitrationFigures.alkalinityOf(ion, endPoint);
      double found = ofP * phenolphthalein() + ofM * total();
      return Answer.of(
          figure,
          Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
              .text(text, "Standard Methods 2320 B")
              .inputs(List.of(p, m))
              .detail(
                  () ->
                      new Step.Detail(
                          List.of(), ofM * total() + ofP * phenolphthalein() - found, 0))
              .found(
                  Traced.linear(
                      found,
                      new Traced[] {p.found().orElseThrow(), m.found().orElseThrow()},
                      new double[] {ofP, ofM})));
    }
  }

  /**
   * Splits the alkalinity of a water.
   *
   * @param phenolphthalein P, the alkalinity to an end point of 8.2 or 8.3; 0 or more
   * @param total M, the alkalinity to a lower end point; P or more
   * @return the split, with what P and M share of their uncertainty counted once
   * @throws IllegalArgumentException if P is negative or above M, or its end point is not above
   *     that of M
   */
  public static AlkalinitySplit of(
      Answer<TitrationAlkalinity> phenolphthalein, Answer<TitrationAlkalinity> total) {
    TitrationAlkalinity p = phenolphthalein.value();
    TitrationAlkalinity m = total.value();
    if (p.endPoint().compareTo(m.endPoint()) <= 0) {
      throw new IllegalArgumentException(
          "end point of P: "
              + p.endPoint()
              + " is not possible; above the "
              + m.endPoint()
              + " of M is needed");
    }
    Checks.inRange("P", p.inMilliequivalentsPerLitre(), "mEq/L", 0, m.inMilliequivalentsPerLitre());
    return new AlkalinitySplit(phenolphthalein, total);
  }

  /**
   * Splits an alkalinity that is stated without an uncertainty.
   *
   * @param phenolphthalein P, the alkalinity to an end point of 8.2 or 8.3; 0 or more
   * @param total M, the alkalinity to a lower end point; P or more
   * @return the split
   * @throws IllegalArgumentException if P is negative or above M, or its end point is not above
   *     that of M
   */
  public static AlkalinitySplit of(TitrationAlkalinity phenolphthalein, TitrationAlkalinity total) {
    return of(stated("P", phenolphthalein), stated("M", total));
  }

  private static Answer<TitrationAlkalinity> stated(String name, TitrationAlkalinity value) {
    Figure<TitrationAlkalinity> figure = Figures.titrationAlkalinity(value.endPoint());
    return Answer.of(
        figure,
        Step.of(name + ", " + figure.title(), figure.scale(), Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text("as stated", "")
            .found(
                Traced.stated(
                    name,
                    value.inMilliequivalentsPerLitre(),
                    OptionalDouble.empty(),
                    figure.scale().symbol())));
  }

  /**
   * Returns the part due to hydroxide.
   *
   * @return the alkalinity of hydroxide, 0 or more
   */
  public Answer<TitrationAlkalinity> hydroxide() {
    return hydroxide;
  }

  /**
   * Returns the part due to carbonate, both its protons.
   *
   * @return the alkalinity of carbonate, 0 or more
   */
  public Answer<TitrationAlkalinity> carbonate() {
    return carbonate;
  }

  /**
   * Returns the part due to bicarbonate.
   *
   * @return the alkalinity of bicarbonate, 0 or more
   */
  public Answer<TitrationAlkalinity> bicarbonate() {
    return bicarbonate;
  }

  /** Prints the three parts. */
  @Override
  public String toString() {
    return "hydroxide "
        + hydroxide()
        + "; carbonate "
        + carbonate()
        + "; bicarbonate "
        + bicarbonate();
  }
}
