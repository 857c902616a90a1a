package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Reagent;
import org.brewchem.uncertainty.Traced;

/**
 * A row of glasses of a liquid with rising doses of a reagent, to be measured and tasted before the
 * tank is dosed: {@code BenchTrial.of(beer, lactic).upTo(gPerL(0.8))}. A glass takes too little of
 * a reagent to be measured out as it is bought; it comes from a stock solution, which the trial
 * says how to make.
 *
 * <p>The glass that was chosen is a {@link GlassDose}, which doses the tank. Immutable.
 *
 * @param <L> the kind of liquid
 */
public final class BenchTrial<L extends Liquid> {

  /** The most of the stock in a glass, a share of its volume: what is tasted is the liquid. */
  private static final double MOST_STOCK = 0.02;

  private static final int MOST_GLASSES = 50;

  private final L liquid;
  private final Reagent reagent;
  private final Supply supply;
  private final Bench bench;
  private final Traced strength;
  private final List<GlassDose<L>> glasses;

  /**
   * What the bench has. Immutable.
   *
   * @param glasses how many glasses, the one without a dose included
   * @param glass what stands in each, and its standard uncertainty
   * @param step to which the pipette can be set or read
   * @param pipette standard uncertainty of a volume that it delivers
   * @param flask the volume of the stock, and its standard uncertainty
   * @param balance standard uncertainty of a mass
   */
  private record Bench(
      int glasses,
      Volume glass,
      Volume uOfGlass,
      Volume step,
      Volume pipette,
      Volume flask,
      Volume uOfFlask,
      Mass balance) {}

  private BenchTrial(L liquid, Reagent reagent, Bench bench, double top) {
    this.liquid = liquid;
    this.reagent = reagent;
    // One for all glasses and the tank: they share the bottle.
    supply = Supply.weighed(reagent);
    this.bench = bench;
    double aliquot = topAliquot();
    double stock = top * bench.glass.inLitres() / aliquot;
    double pure = reagent.density().map(d -> d.inGramsPerMillilitre() * 1000).orElse(0.0);
    if (pure > 0 && stock >= pure) {
      throw Checks.outOfRange(
          "top dose",
          top,
          "g/L",
          "below "
              + NumberText.significant(pure * aliquot / bench.glass.inLitres(), 4)
              + " g/L, the reagent as bought instead of a stock");
    }
    double grams = stock * bench.flask.inLitres();
    strength =
        Traced.stated("mass in the stock", grams, of(bench.balance.inGrams()), "g")
            .dividedBy(
                Traced.stated(
                    "volume of the stock",
                    bench.flask.inLitres(),
                    of(bench.uOfFlask.inLitres()),
                    "L"));
    glasses = new ArrayList<>();
    for (int i = 0; i < bench.glasses; i++) {
      glasses.add(glass(i, aliquot));
    }
  }

  private static OptionalDouble of(double u) {
    return OptionalDouble.of(u);
  }

  /** Litres, a whole number of steps of the pipette. */
  private double topAliquot() {
    double step = bench.step.inLitres();
    double steps = Math.floor(MOST_STOCK * bench.glass.inLitres() / step * (1 + 1e-12));
    if (steps < bench.glasses - 1) {
      throw Checks.outOfRange(
          "step of the pipette",
          bench.step.inMillilitres(),
          "mL",
          "at most "
              + MOST_STOCK * bench.glass.inMillilitres() / (bench.glasses - 1)
              + " mL for "
              + bench.glasses
              + " glasses of "
              + bench.glass);
    }
    return steps * step;
  }

  private GlassDose<L> glass(int index, double topAliquot) {
    double step = bench.step.inLitres();
    double aliquot = Math.rint(topAliquot * index / (bench.glasses - 1) / step) * step;
    Traced volume =
        Traced.stated(
            "volume of glass " + (index + 1),
            bench.glass.inLitres(),
            of(bench.uOfGlass.inLitres()),
            "L");
    Traced pipetted =
        aliquot == 0
            ? Traced.exact(0)
            : Traced.stated(
                "pipetted into glass " + (index + 1), aliquot, of(bench.pipette.inLitres()), "L");
    return new GlassDose<>(
        liquid,
        supply,
        index + 1,
        Volume.ofLitres(aliquot),
        pipetted.times(strength).dividedBy(volume),
        aliquot / bench.glass.inLitres());
  }

  /**
   * Starts with a liquid and a reagent as bought.
   *
   * @param liquid the liquid, such as a beer
   * @param reagent an acid, a base or a salt
   * @param <L> the kind of liquid
   * @return a request: five glasses of 200 mL to 1 mL, a pipette of 0.05 mL read to 0.02 mL, a
   *     flask of 100 mL to 0.1 mL, a balance to 0.01 g, each as a standard uncertainty
   * @throws IllegalArgumentException if the reagent may not go into such a liquid
   */
  public static <L extends Liquid> Request<L> of(L liquid, Reagent reagent) {
    Objects.requireNonNull(liquid, "liquid");
    Objects.requireNonNull(reagent, "reagent");
    Permitted.of(liquid.kind())
        .ifPresent(use -> Permitted.in(use, Addition.of(Supply.weighed(reagent), 0)));
    return new Request<>(
        liquid,
        reagent,
        new Bench(
            5,
            Volume.ofMillilitres(200),
            Volume.ofMillilitres(1),
            Volume.ofMillilitres(0.05),
            Volume.ofMillilitres(0.02),
            Volume.ofMillilitres(100),
            Volume.ofMillilitres(0.1),
            Mass.ofGrams(0.01)));
  }

  /**
   * The question for a trial, which still wants its top dose. Immutable.
   *
   * @param <L> the kind of liquid
   */
  public static final class Request<L extends Liquid> {

    private final L liquid;
    private final Reagent reagent;
    private final Bench bench;

    private Request(L liquid, Reagent reagent, Bench bench) {
      this.liquid = liquid;
      this.reagent = reagent;
      this.bench = bench;
    }

    /**
     * States the glasses.
     *
     * @param count how many, the one without a dose included, 2 to 50
     * @param each the volume of the liquid in each, above 0
     * @param standardUncertainty u of that volume
     * @return the request
     * @throws IllegalArgumentException if the count or the volume is out of range
     */
    public Request<L> glasses(int count, Volume each, Volume standardUncertainty) {
      Checks.inRange("glasses", count, "", 2, MOST_GLASSES);
      Checks.positive("volume of a glass", each.inMillilitres(), "mL");
      return new Request<>(
          liquid,
          reagent,
          new Bench(
              count,
              each,
              Objects.requireNonNull(standardUncertainty, "standard uncertainty"),
              bench.step,
              bench.pipette,
              bench.flask,
              bench.uOfFlask,
              bench.balance));
    }

    /**
     * States the pipette.
     *
     * @param step to which it can be set or read, above 0
     * @param standardUncertainty u of a volume that it delivers
     * @return the request
     * @throws IllegalArgumentException if the step is 0
     */
    public Request<L> pipettingTo(Volume step, Volume standardUncertainty) {
      Checks.positive("step of the pipette", step.inMillilitres(), "mL");
      return new Request<>(
          liquid,
          reagent,
          new Bench(
              bench.glasses,
              bench.glass,
              bench.uOfGlass,
              step,
              Objects.requireNonNull(standardUncertainty, "standard uncertainty"),
              bench.flask,
              bench.uOfFlask,
              bench.balance));
    }

    /**
     * States how the stock is made.
     *
     * @param flask its volume, above 0
     * @param standardUncertainty u of that volume
     * @param ofBalance u of the mass that is weighed in
     * @return the request
     * @throws IllegalArgumentException if the volume is 0
     */
    public Request<L> stockOf(Volume flask, Volume standardUncertainty, Mass ofBalance) {
      Objects.requireNonNull(ofBalance, "standard uncertainty of balance");
      Checks.positive("volume of the stock", flask.inMillilitres(), "mL");
      return new Request<>(
          liquid,
          reagent,
          new Bench(
              bench.glasses,
              bench.glass,
              bench.uOfGlass,
              bench.step,
              bench.pipette,
              flask,
              Objects.requireNonNull(standardUncertainty, "standard uncertainty"),
              Objects.requireNonNull(ofBalance, "standard uncertainty of the balance")));
    }

    /**
     * Lays out the glasses, from none to a top dose in even steps, as far as the pipette can be
     * read.
     *
     * @param topDose the mass of the reagent per volume of the liquid in the last glass, above 0
     * @return the trial
     * @throws IllegalArgumentException if the dose is 0, the pipette cannot be read finely enough
     *     for so many glasses, or the reagent is too weak for the dose
     */
    public BenchTrial<L> upTo(MassConcentration topDose) {
      return new BenchTrial<>(
          liquid, reagent, bench, Checks.positive("top dose", topDose.inGramsPerLitre(), "g/L"));
    }
  }

  /**
   * Returns the glasses.
   *
   * @return an unmodifiable list; the first has no dose, the last the top dose
   */
  public List<GlassDose<L>> glasses() {
    return List.copyOf(glasses);
  }

  /**
   * Returns a glass.
   *
   * @param number from 1, the one without a dose
   * @return what goes into it, and what it then is
   * @throws org.brewchem.OutOfRangeException if there is no such glass
   */
  public GlassDose<L> glass(int number) {
    return glasses.get(Checks.index("glass", number - 1, glasses.size()));
  }

  /**
   * Returns what is weighed into the flask for the stock, to be made up with water of the quality
   * that a beer would get.
   *
   * @return the mass of the reagent
   */
  public Mass massInStock() {
    return Mass.ofGrams(strength.value() * bench.flask.inLitres());
  }

  /**
   * Returns the volume of the stock.
   *
   * @return the volume of the flask
   */
  public Volume volumeOfStock() {
    return bench.flask;
  }

  /**
   * Returns the usual cautions for the reagent, for dosing and for tasting (common practice, no
   * source): only a clean, separate portion prepared with food-grade reagents is tasted, never one
   * that an electrode was in.
   *
   * @return the cautions
   */
  public List<Caution> cautions() {
    Set<Caution> all = new LinkedHashSet<>(Caution.of(List.of(Hazard.DOSING_FOOD, Hazard.TASTING)));
    all.addAll(supply.cautions());
    return List.copyOf(all);
  }

  /** Says how the stock is made and what goes into each glass. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    text.append("stock: ")
        .append(massInStock())
        .append(" of ")
        .append(reagent)
        .append(", made up with water to ")
        .append(bench.flask);
    for (GlassDose<L> glass : glasses) {
      text.append("; glass ").append(glass.number()).append(": ").append(glass.pipetted());
    }
    return text.append(" into ").append(bench.glass).append(" each").toString();
  }
}
