package org.brewchem.checks.simulator;

import java.util.Random;

/**
 * A beer titrated on two legs, alkali and acid, as a laboratory does it, with what is known of its
 * errors.
 */
final class Experiment {

  static final double NOISE = 0.01;
  static final double BURETTE_MILLILITRES = 0.01;
  static final double MOLES_PER_LITRE = 0.1;
  static final double CALIBRATED_ZERO = 0.005;
  static final double CALIBRATED_SLOPE = 0.003;
  static final double RELATIVE_OF_METALS = 0.05;
  static final double GRAMS_PER_MOLE_OF_CARBON_DIOXIDE = 44.009;

  /** Of which the readings were taken and of which predictions are judged, the gas left out. */
  final SimulatedBeer beer;

  final double sampleMillilitres;
  final double[] alkaliVolumes;
  final double[] alkaliPH;
  final double[] acidVolumes;
  final double[] acidPH;

  /** What can be told of it, standard uncertainties beside the values. */
  final double zeroUncertainty;

  final double slopeUncertainty;
  final double titrantUncertainty;
  final double carbonDioxideGramsPerLitre;
  final double carbonDioxideUncertainty;
  final double saltMolesPerKilogram;
  final double saltUncertainty;
  final double calciumMolesPerKilogram;
  final double magnesiumMolesPerKilogram;
  final double celsius;

  Experiment(BeerKind kind, Disturbance disturbance, Fault fault, Random random) {
    SimulatedBeer drawn = kind.draw(random);
    double pH = drawn.pH();
    if (disturbance.includes(Disturbance.METALS)) {
      drawn =
          drawn.withMetals(
              uniform(random, 0.2, 6) * 0.001 / SimulatedBeer.KILOGRAMS_PER_LITRE,
              uniform(random, 0.5, 10) * 0.001 / SimulatedBeer.KILOGRAMS_PER_LITRE);
    }
    boolean salty = disturbance.includes(Disturbance.SALT);
    if (salty) {
      drawn = drawn.withSalt(uniform(random, 0, 0.04));
    }
    beer = drawn.closedTo(pH);
    // Sulfate counts three times in the ionic strength: 0.5 to 2.5 mmol besides.
    saltMolesPerKilogram = (salty ? 0.02 : 0.006) + 3 * 0.0015;
    saltUncertainty = Math.hypot(salty ? 0.04 : 0.006, 3 * 0.002) / Math.sqrt(12);
    calciumMolesPerKilogram = measured(beer.calcium(), random);
    magnesiumMolesPerKilogram = measured(beer.magnesium(), random);

    boolean gassy = disturbance.includes(Disturbance.CARBON_DIOXIDE);
    double gas = gassy ? uniform(random, 0, 0.15) : 0;
    if (fault == Fault.CARBON_DIOXIDE) {
      gas = uniform(random, 0.2, 1);
    }
    carbonDioxideGramsPerLitre = gassy ? 0.075 : 0;
    carbonDioxideUncertainty = gassy ? 0.15 / Math.sqrt(12) : 0;
    boolean warm = disturbance.includes(Disturbance.TEMPERATURE);
    double actual = warm ? uniform(random, 15, 28) : 20;
    celsius = actual + (warm ? 0.5 * random.nextGaussian() : 0);

    zeroUncertainty = disturbance.includes(Disturbance.OFFSET) ? 0.02 : CALIBRATED_ZERO;
    slopeUncertainty = disturbance.includes(Disturbance.SLOPE) ? 0.01 : CALIBRATED_SLOPE;
    titrantUncertainty = disturbance.includes(Disturbance.TITRANT) ? 0.003 : 0;
    double offset = zeroUncertainty * random.nextGaussian();
    double slope = slopeUncertainty * random.nextGaussian();
    double alkaliFactor = 1 + titrantUncertainty * random.nextGaussian();
    double acidFactor = 1 + titrantUncertainty * random.nextGaussian();

    sampleMillilitres = new double[] {25, 50, 100}[random.nextInt(3)];
    int readings = 25 + random.nextInt(36);
    SimulatedBeer sample = gassed(beer, gas).at(actual);
    SimulatedBeer second =
        fault == Fault.OTHER_BEER ? gassed(kind.draw(random), gas).at(actual) : sample;
    alkaliVolumes = volumes(sample, 1, uniform(random, 8.4, 9.4), readings / 2);
    acidVolumes =
        volumes(
            second,
            -1,
            uniform(random, 2.5, Math.min(3.5, second.pH() - 0.4)),
            readings - readings / 2);
    if (fault == Fault.TITRANT) {
      double wrong = random.nextBoolean() ? 1.1 : 0.9;
      if (random.nextBoolean()) {
        alkaliFactor *= wrong;
      } else {
        acidFactor *= wrong;
      }
    }
    double apart =
        fault == Fault.LEGS_APART
            ? (random.nextBoolean() ? 1 : -1) * uniform(random, 0.05, 0.3)
            : 0;
    double[] up = read(sample, alkaliFactor, alkaliVolumes, offset, slope, random);
    double[] down = read(second, -acidFactor, acidVolumes, offset + apart, slope, random);
    if (fault == Fault.STRAY_READING) {
      double[] leg = random.nextBoolean() ? up : down;
      leg[1 + random.nextInt(leg.length - 1)] += (random.nextBoolean() ? 5 : -5) * NOISE;
    }
    if (fault == Fault.REVERSED) {
      reverse(random.nextBoolean() ? alkaliVolumes : acidVolumes);
    }
    alkaliPH = fault == Fault.SWAPPED ? alkaliVolumes.clone() : up;
    acidPH = fault == Fault.SWAPPED ? acidVolumes.clone() : down;
    if (fault == Fault.SWAPPED) {
      System.arraycopy(up, 0, alkaliVolumes, 0, up.length);
      System.arraycopy(down, 0, acidVolumes, 0, down.length);
    }
  }

  private static double measured(double truth, Random random) {
    return truth * (1 + RELATIVE_OF_METALS * random.nextGaussian());
  }

  private static SimulatedBeer gassed(SimulatedBeer beer, double gramsPerLitre) {
    return gramsPerLitre == 0
        ? beer
        : beer.with(
            Ligand.named("carbonate"),
            gramsPerLitre / GRAMS_PER_MOLE_OF_CARBON_DIOXIDE / SimulatedBeer.KILOGRAMS_PER_LITRE);
  }

  /** Even steps to where the beer has the last pH. */
  private double[] volumes(SimulatedBeer sample, int sign, double lastPH, int readings) {
    double last = 0;
    for (int pass = 0; pass < 50; pass++) {
      double share = sampleMillilitres / (sampleMillilitres + last);
      last = sign * sample.baseTo(lastPH, share) * sampleMillilitres / perMillilitreAndKilogram();
    }
    double[] volumes = new double[readings];
    for (int i = 0; i < readings; i++) {
      volumes[i] = Math.round(100 * last * i / (readings - 1)) / 100.0;
    }
    return volumes;
  }

  private static double perMillilitreAndKilogram() {
    return MOLES_PER_LITRE / SimulatedBeer.KILOGRAMS_PER_LITRE;
  }

  private double[] read(
      SimulatedBeer sample,
      double factor,
      double[] volumes,
      double offset,
      double slope,
      Random random) {
    double[] read = new double[volumes.length];
    for (int i = 0; i < read.length; i++) {
      double delivered = volumes[i] + (i == 0 ? 0 : BURETTE_MILLILITRES * random.nextGaussian());
      double pH =
          sample.pH(
              factor * perMillilitreAndKilogram() * delivered / sampleMillilitres,
              sampleMillilitres / (sampleMillilitres + delivered));
      read[i] = pH + offset + slope * (pH - 7) + NOISE * random.nextGaussian();
    }
    return read;
  }

  private static void reverse(double[] volumes) {
    for (int i = 0, j = volumes.length - 1; i < j; i++, j--) {
      double volume = volumes[i];
      volumes[i] = volumes[j];
      volumes[j] = volume;
    }
  }

  private static double uniform(Random random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
