package org.brewchem.checks.reliability;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntFunction;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answer;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.Mash;
import org.brewchem.mash.MashFigures;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Quantities;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Formula;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.brewchem.titration.SampleTitration;
import org.brewchem.titration.Titrant;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Treatments;
import org.brewchem.units.Text;
import org.brewchem.water.Water;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;

/**
 * Mixed calls on values that many threads share: each has to give the bits that one thread alone
 * gives. All values are invented.
 *
 * <p>A million calls are made by hand, DEVELOPERS.md says how; the build makes some of them.
 */
public final class ManyThreads {

  private static final int VARIANTS = 25;
  private static final long SEED = 20261126;

  private final Water water =
      WaterReport.reported()
          .calcium(mgPerL(92), mgPerL(3))
          .magnesium(mgPerL(11), mgPerL(1))
          .sodium(mgPerL(19), mgPerL(1))
          .sulfate(mgPerL(45), mgPerL(2))
          .chloride(mgPerL(31), mgPerL(1))
          .alkalinityAsCaCO3(mgPerL(215), mgPerL(4))
          .pH(pH(7.6), 0.05)
          .build()
          .water();

  private final Solution mixture =
      Solution.at(celsius(20))
          .with(Acid.PHOSPHORIC, mmolPerL(5))
          .with(Acid.CITRIC, mmolPerL(0.7))
          .with(Ion.CALCIUM, mmolPerL(1.2))
          .with(Ion.POTASSIUM, mmolPerL(9));

  private final Beer beer =
      Beer.of(pH(4.41), Quantities.acidity(gPerL(2.2), Acid.LACTIC, pH(8.2)))
          .withStandardUncertaintyOfPH(0.02);

  private final Mash mash =
      Mash.of(
          Grist.of(kg(200), Malt.assumed(MaltKind.PALE))
              .and(kg(15), Malt.assumed(MaltKind.CARAMEL)),
          water,
          hL(8));

  private final Reagent lactic = Reagent.of(Acid.LACTIC, massPercent(80));
  private final SampleTitration sample =
      Titrant.sodiumHydroxide().of(molPerL(0.1002), molPerL(0.0002)).titrate(mL(50)).to(pH(8.2));
  private final Waters waters = Waters.from(table());

  private final List<IntFunction<double[]>> calls =
      List.of(
          k -> number(mixture.with(Ion.SODIUM, mmolPerL(k + 1)).answer(Figures.PH_VALUE)),
          k -> number(mixture.under(Level.ACTIVITY).answer(Figures.titratableAcidity(end(k)))),
          k -> number(mixture.answer(Figures.bufferCapacity(PH.of(4 + 0.1 * k)))),
          k -> number(water.answer(WaterFigures.RESIDUAL_ALKALINITY)),
          k -> number(water.answer(Figures.titrationAlkalinity(PH.of(4 + 0.02 * k)))),
          k ->
              number(
                  water
                      .after(Treatments.salt(Salt.GYPSUM, milligrams(20 * k + 5)))
                      .answer(Figures.PH_VALUE)),
          k -> number(mash.answer(MashFigures.MASH_PH)),
          k -> number(beer.answer(Figures.titratableAcidity(end(k)))),
          k ->
              number(
                  Dose.of(beer, lactic)
                      .to(Figures.PH_VALUE, PH.of(4.05 + 0.01 * k))
                      .answer(Figures.PH_VALUE)),
          k -> number(sample.took(mL(10 + k), mL(10.02 + k)).acidity().answer()),
          k -> waters.column(Figures.PH_VALUE).values(),
          k -> new double[] {Formula.parse("C6H8O7(H2O)" + (k + 1)).molarMass().inGramsPerMole()},
          k ->
              new double[] {
                Text.parseMassConcentration((k + 0.5) + " mg/L").inMilligramsPerLitre(),
                g(k + 1).toString().hashCode()
              });

  private static PH end(int k) {
    return PH.of(7 + 0.05 * k);
  }

  private static MassConcentration milligrams(double perLitre) {
    return MassConcentration.ofMilligramsPerLitre(perLitre);
  }

  private static <Q> double[] number(Answer<Q> answer) {
    return new double[] {answer.number(), answer.standardUncertainty().orElse(-1)};
  }

  private static Table table() {
    return Table.of(
        Column.of("calcium [mg/L]", 92, 40, 120, 15, 60),
        Column.of("magnesium [mg/L]", 11, 4, 20, 2, 9),
        Column.of("alkalinity [mg/L as CaCO3]", 215, 90, 300, 30, 150),
        Column.of("pH", 7.6, 7.9, 7.2, 8.1, 7.5));
  }

  /**
   * Makes calls from many threads.
   *
   * @param threads how many
   * @param callsOfAll how many calls all of them make together
   * @return how many gave other bits than one thread alone
   * @throws InterruptedException if the wait for them is interrupted
   * @throws ExecutionException if a call throws
   */
  public long differences(int threads, int callsOfAll)
      throws InterruptedException, ExecutionException {
    double[][][] alone = new double[calls.size()][VARIANTS][];
    for (int call = 0; call < calls.size(); call++) {
      for (int k = 0; k < VARIANTS; k++) {
        alone[call][k] = calls.get(call).apply(k);
      }
    }
    List<Callable<Long>> tasks = new ArrayList<>();
    for (int thread = 0; thread < threads; thread++) {
      Random random = new Random(SEED + thread);
      tasks.add(
          () -> {
            long different = 0;
            for (int i = 0; i < callsOfAll / threads; i++) {
              int call = random.nextInt(calls.size());
              int k = random.nextInt(VARIANTS);
              different += isSame(alone[call][k], calls.get(call).apply(k)) ? 0 : 1;
            }
            return different;
          });
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      long different = 0;
      for (Future<Long> each : pool.invokeAll(tasks)) {
        different += each.get();
      }
      return different;
    } finally {
      pool.shutdown();
    }
  }

  private static boolean isSame(double[] one, double[] other) {
    boolean same = one.length == other.length;
    for (int i = 0; same && i < one.length; i++) {
      same = Double.doubleToRawLongBits(one[i]) == Double.doubleToRawLongBits(other[i]);
    }
    return same;
  }

  /**
   * Prints how many calls gave other bits.
   *
   * @param args the number of calls, a million if there is none
   * @throws InterruptedException if the wait for the threads is interrupted
   * @throws ExecutionException if a call throws
   */
  public static void main(String[] args) throws InterruptedException, ExecutionException {
    int calls = args.length > 0 ? Integer.parseInt(args[0]) : 1_000_000;
    long start = System.nanoTime();
    long different = new ManyThreads().differences(16, calls);
    System.out.printf(
        Locale.ROOT,
        "%d calls from 16 threads, %d with other bits than one thread alone, %.0f s%n",
        calls,
        different,
        (System.nanoTime() - start) * 1e-9);
  }
}
