package org.brewchem.mash;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.solution.Equilibria;
import org.brewchem.substance.Acid;
import org.jspecify.annotations.Nullable;

/**
 * The buffer capacity of a wort per degree of extract, as a range: measured on the brewery's own
 * wort, or assumed. Immutable.
 */
public final class WortBuffer {

  private static final double HIGHEST_EXTRACT = 35;

  /** How far beyond the range of a mean it may be used without a notice; our choice. */
  private static final double PH_SLACK = 0.25;

  private final SourcedRange perDegree;
  private final @Nullable PH highest;
  private final @Nullable PH lowest;

  private WortBuffer(SourcedRange perDegree, @Nullable PH highest, @Nullable PH lowest) {
    this.perDegree = perDegree;
    this.highest = highest;
    this.lowest = lowest;
  }

  /**
   * Returns the assumed capacity of a wort from about pH 5.8 down to 5.0, by trade figures.
   *
   * @return the buffer
   */
  public static WortBuffer assumedAtKnockOut() {
    // How far "near 5.5" of the row reaches is our choice.
    return new WortBuffer(WortRanges.named("wort buffer near 5.5"), PH.of(5.8), PH.of(5));
  }

  /**
   * Returns the assumed mean capacity of unhopped all-malt wort from pH 5.0 down to 3.4, where it
   * is soured.
   *
   * @return the buffer
   */
  public static WortBuffer assumedForSouring() {
    // The stretch that the row is a mean of.
    return new WortBuffer(WortRanges.named("wort buffer for souring"), PH.of(5), PH.of(3.4));
  }

  /**
   * Returns a capacity that was measured on a wort.
   *
   * @param least the least it may be
   * @param most the most it may be
   * @param extract of that wort, by mass (°P), above 0 and at most 35 %
   * @param source who measured which wort
   * @return the buffer, taken as proportional to the extract
   * @throws IllegalArgumentException if the extract is out of range, the capacities are out of
   *     order or the source is blank
   */
  public static WortBuffer measured(
      BufferCapacity least, BufferCapacity most, MassFraction extract, String source) {
    double degrees = degrees(extract);
    return new WortBuffer(
        new SourcedRange(
            "capacity of the wort",
            least.inMilliequivalentsPerLitrePerPH() / degrees,
            most.inMilliequivalentsPerLitrePerPH() / degrees,
            "mEq/(L pH) per °P",
            List.of("capacity of the wort, measured: " + Checks.notBlank("source", source))),
        null,
        null);
  }

  static double degrees(MassFraction extract) {
    Objects.requireNonNull(extract, "extract");
    double degrees = extract.inMassPercent();
    if (degrees <= 0 || degrees > HIGHEST_EXTRACT) {
      throw Checks.outOfRange("extract", degrees, "°P", "more than 0 and at most 35");
    }
    return degrees;
  }

  /**
   * Returns the capacity per degree of extract.
   *
   * @return mEq/(L pH) per °P, with its basis
   */
  public SourcedRange perDegree() {
    return perDegree;
  }

  /**
   * Returns the strong acid that takes a wort from one pH to a lower one.
   *
   * @param extract of the wort, by mass (°P), above 0 and at most 35 %
   * @param measured the pH of the cooled wort
   * @param target the pH wanted, below it
   * @return mEq per litre of wort: what the wort takes up and the free protons of the lower pH
   * @throws IllegalArgumentException if the target is not below the measured pH, or the extract is
   *     out of range
   */
  public SourcedRange acid(MassFraction extract, PH measured, PH target) {
    Objects.requireNonNull(measured, "measured");
    Objects.requireNonNull(target, "target");
    double fall = measured.value() - target.value();
    if (fall <= 0) {
      throw new IllegalArgumentException(
          "target: "
              + target
              + " is not possible; a pH below the measured "
              + measured
              + " is needed, for acid lowers it");
    }
    String quantity = "acid into the wort";
    SourcedRange taken = perDegree.times(degrees(extract) * fall, quantity, "mEq/L");
    Contents pure = Contents.pure(Temperature.ofCelsius(20), Chemistry.standard());
    Equilibria water = pure.equilibria();
    double free =
        1000
            * pure.kilogramsPerLitre()
            * (water.chargeAt(target.value()) - water.chargeAt(measured.value()));
    return new SourcedRange(
        quantity, taken.lower() + free, taken.upper() + free, "mEq/L", taken.basis());
  }

  /**
   * Returns the pure acid that takes a wort from one pH to a lower one, by what a mole of it gives
   * off at the target.
   *
   * @param acid the acid
   * @param extract of the wort, by mass (°P), above 0 and at most 35 %
   * @param measured the pH of the cooled wort
   * @param target the pH wanted, below it
   * @return g per hectolitre of wort
   * @throws IllegalArgumentException if the target is not below the measured pH, or the extract is
   *     out of range
   * @throws IllegalStateException if the acid has no molar mass
   */
  public SourcedRange acid(Acid acid, MassFraction extract, PH measured, PH target) {
    Objects.requireNonNull(acid, "acid");
    SourcedRange needed = acid(extract, measured, target);
    double perMole = EffectiveEquivalents.of(acid).at(target);
    double gramsPerMilliequivalent = acid.molarMass().inGramsPerMole() / perMole / 1000;
    SourcedRange grams =
        needed.times(100 * gramsPerMilliequivalent, acid.name() + " into the wort", "g/hL");
    return new SourcedRange(
        grams.quantity(),
        grams.lower(),
        grams.upper(),
        grams.unit(),
        SourcedRange.both(
            grams.basis(),
            List.of(
                acid.name()
                    + " gives off "
                    + NumberText.significant(perMole, 3)
                    + " Eq/mol at "
                    + target)));
  }

  /**
   * Tells what is notable about the capacity between two values of the pH: that nobody measured it,
   * and that it is a mean over another range of pH.
   *
   * @param from the higher pH
   * @param to the lower pH
   * @return the notices; empty for a measured capacity
   */
  public List<Notice> notices(PH from, PH to) {
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    List<Notice> notices = new ArrayList<>();
    if (highest != null && lowest != null) {
      notices.add(
          Notice.of(
              MashCode.ASSUMED_WORT_BUFFER,
              "wort",
              "nobody measured the buffer of this wort: it is assumed, "
                  + perDegree
                  + "; titrate the wort"));
      if (Math.abs(from.value() - highest.value()) > PH_SLACK
          || Math.abs(to.value() - lowest.value()) > PH_SLACK) {
        notices.add(
            Notice.of(
                MashCode.BEYOND_WORT_BUFFER,
                "wort",
                "the assumed buffer is a mean from "
                    + highest
                    + " to "
                    + lowest
                    + ", and that from "
                    + from
                    + " to "
                    + to
                    + " is another"));
      }
    }
    return notices;
  }

  @Override
  public String toString() {
    return perDegree.toString();
  }
}
