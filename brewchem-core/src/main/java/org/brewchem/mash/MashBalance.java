package org.brewchem.mash;

import java.util.List;
import java.util.function.DoubleSupplier;
import org.brewchem.internal.ClosedForms;
import org.brewchem.internal.Roots;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Equilibria;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.substance.Component;

/**
 * A work space that finds the mash pH of a grist in one liquor after the other: totals of the
 * liquor in, mash pH of the cooled sample out, as plain numbers. It solves the same balance as
 * {@link Mash}.
 *
 * <p>The balance, per litre of liquor: the charge of the liquor by the kernel, that of the malts by
 * their curves, less the acid that calcium and magnesium set free. It falls strictly as the pH
 * rises, so that it has one root. Mutable and for one thread at a time.
 */
public final class MashBalance {

  private static final double LOWEST = -1;
  private static final double HIGHEST = 15;

  /** No malt was read beyond; there its curve is straight and keeps the free protons of its end. */
  private static final double LOWEST_READ = 3;

  private static final double HIGHEST_READ = 10;

  private final Equilibria liquor;
  private final Equilibria water;
  private final double kilogramsPerLitre;
  private final boolean carbonDioxideLeaves;
  private final MaltCurve[] curves;
  private final double[] kilograms;
  private final double[] readIn;
  private final double factor;
  private final double offset;
  private final double start;
  private final double capacity;
  private final int calcium;
  private final int magnesium;
  private final int carbonate;

  private MashBalance(
      Equilibria liquor,
      Equilibria water,
      double kilogramsPerLitre,
      MaltCurve[] curves,
      double[] kilograms,
      double[] readIn,
      double factor,
      boolean carbonDioxideLeaves,
      double offset) {
    this.liquor = liquor;
    this.water = water;
    this.kilogramsPerLitre = kilogramsPerLitre;
    this.curves = curves;
    this.kilograms = kilograms;
    this.readIn = readIn;
    this.factor = factor;
    this.carbonDioxideLeaves = carbonDioxideLeaves;
    this.offset = offset;
    double weighted = 0;
    double all = 0;
    for (int i = 0; i < curves.length; i++) {
      double own = -kilograms[i] / curves[i].slope().value();
      weighted += own * curves[i].pH().value();
      all += own;
    }
    start = weighted / all;
    capacity = all;
    calcium = index(Component.CALCIUM);
    magnesium = index(Component.MAGNESIUM);
    carbonate = index(Component.CARBONATE);
  }

  /**
   * Makes a work space.
   *
   * @param contents of the liquor, at the temperature at which the malts were read
   * @param grist the malts
   * @param litres of liquor
   * @param carbonDioxideLeaves whether all carbonate counts as gone
   * @param offset added to the root
   */
  static MashBalance of(
      Contents contents, Grist grist, double litres, boolean carbonDioxideLeaves, double offset) {
    List<Grist.Part> parts = grist.parts();
    return new MashBalance(
        contents.equilibria(),
        Contents.pure(contents.temperature(), contents.chemistry()).equilibria(),
        contents.kilogramsPerLitre(),
        parts.stream().map(part -> part.malt().curve()).toArray(MaltCurve[]::new),
        parts.stream().mapToDouble(part -> part.kilograms() / litres).toArray(),
        parts.stream().mapToDouble(part -> part.malt().litresPerKilogram()).toArray(),
        grist.kolbachFactor().value(),
        carbonDioxideLeaves,
        offset);
  }

  /** The same liquor and masses with other curves, part by part, and another factor. */
  MashBalance with(List<MaltCurve> others, double otherFactor) {
    return new MashBalance(
        liquor,
        water,
        kilogramsPerLitre,
        others.toArray(MaltCurve[]::new),
        kilograms,
        readIn,
        otherFactor,
        carbonDioxideLeaves,
        offset);
  }

  private int index(Component component) {
    return liquor.components().contains(component) ? liquor.indexOf(component) : -1;
  }

  /**
   * Returns the work space of the liquor, whose totals and inert charge may be set before the next
   * {@link #pH()}.
   *
   * @return the work space, at the temperature at which the malts were read
   */
  public Equilibria liquor() {
    return liquor;
  }

  /**
   * Finds the mash pH of the cooled sample.
   *
   * @return the root of the balance
   * @throws NoSolutionException if the balance has no root between -1 and 15
   */
  public double pH() {
    return root() + offset;
  }

  /**
   * Finds the charge that is left over at a mash pH that is not the root of the balance. Except for
   * activities and pairs it is linear in the totals of the liquor, so that a limit of the mash pH
   * is a limit of this charge.
   *
   * @param mashPH the pH of the cooled sample
   * @return the sum of the charges, mEq per litre of liquor: above 0 where the root is higher
   */
  public double chargeAt(double mashPH) {
    return balanced(() -> charge(mashPH - offset, factor * kolbach()));
  }

  /**
   * Finds what it takes to move the mash from a pH.
   *
   * @param mashPH the pH of the cooled sample
   * @return the fall of {@link #chargeAt} with the pH, mEq per litre of liquor and pH, above 0
   */
  public double bufferCapacityAt(double mashPH) {
    return balanced(() -> -slope(mashPH - offset));
  }

  /** The root of the balance, before anything is added to it. */
  double root() {
    return balanced(
        () -> {
          double free = factor * kolbach();
          return Roots.walking(
                  pH -> charge(pH, free),
                  start,
                  (pH, charge) ->
                      Math.max(
                          LOWEST,
                          Math.min(HIGHEST, pH + 1.2 * charge / capacity + smallest(charge))),
                  1e-13)
              .orElseThrow(
                  end ->
                      new NoSolutionException(
                          "mash pH", LOWEST, HIGHEST, end.residual(), end.evaluations()));
        });
  }

  /** Asks something of the liquor as it is balanced: without its carbonate, if that leaves. */
  private double balanced(DoubleSupplier asked) {
    if (!carbonDioxideLeaves || carbonate < 0) {
      return asked.getAsDouble();
    }
    double held = liquor.total(carbonate);
    try {
      liquor.setTotal(carbonate, 0);
      return asked.getAsDouble();
    } finally {
      liquor.setTotal(carbonate, held);
    }
  }

  private static double smallest(double charge) {
    return Math.copySign(1e-3, charge);
  }

  /** Everything's charge at a pH, mEq per litre of liquor. */
  private double charge(double pH, double free) {
    double sum = ofLiquor(pH) - free;
    double own = ofWater(pH);
    for (int i = 0; i < curves.length; i++) {
      sum += malt(i, pH, own);
    }
    return sum;
  }

  /** The charge of the liquor at a pH, mEq per litre. */
  double ofLiquor(double pH) {
    return 1000 * kilogramsPerLitre * liquor.chargeAt(pH);
  }

  /** A malt's charge at a pH, mEq per litre of liquor. */
  double ofMalt(int i, double pH) {
    return malt(i, pH, ofWater(pH));
  }

  /** The charge of water alone, as in a malt's reading, mEq per litre. */
  private double ofWater(double pH) {
    double read = Math.max(LOWEST_READ, Math.min(HIGHEST_READ, pH));
    return 1000 * kilogramsPerLitre * water.chargeAt(read);
  }

  /** Slope of everything's charge against pH, mEq per litre of liquor and pH, below 0. */
  double slope(double pH) {
    liquor.chargeAt(pH);
    double ofWater = 0;
    if (pH > LOWEST_READ && pH < HIGHEST_READ) {
      water.chargeAt(pH);
      ofWater = -1000 * kilogramsPerLitre * water.bufferCapacity();
    }
    double sum = -1000 * kilogramsPerLitre * liquor.bufferCapacity();
    for (int i = 0; i < curves.length; i++) {
      double acid = curves[i].acidAt(pH);
      sum += kilograms[i] * (1 / curves[i].slopeAt(acid) - readIn[i] * ofWater);
    }
    return sum;
  }

  /** A malt's charge at a pH where water alone has a charge, both in mEq per litre. */
  private double malt(int i, double pH, double ofWater) {
    return kilograms[i] * (curves[i].acidAt(pH) - readIn[i] * ofWater);
  }

  /** Kolbach's term, mEq of acid per litre of liquor, before its factor. */
  double kolbach() {
    return -ClosedForms.residualAlkalinity(0, hardness(calcium), hardness(magnesium));
  }

  private double hardness(int index) {
    return index < 0 ? 0 : 2000 * kilogramsPerLitre * liquor.total(index);
  }
}
