package org.brewchem.solution;

import java.util.LinkedHashMap;
import java.util.Map;
import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Component;

/**
 * A titration as the laboratory does it, simulated: a sample diluted by the titrant that it takes.
 * Volumes are additive. Immutable.
 */
public final class SimulatedTitration {
  private final Solution solution;
  private final Volume sample;
  private final Solution titrant;

  private SimulatedTitration(Solution solution, Solution titrant, Volume sample) {
    Checks.positive("sample", sample.inMillilitres(), "mL");
    if (!solution.temperature().equals(titrant.temperature())) {
      throw new IllegalArgumentException(
          "temperature of the titrant: "
              + titrant.temperature()
              + " is not possible; "
              + solution.temperature()
              + " is needed");
    }
    this.solution = solution;
    this.sample = sample;
    this.titrant = titrant;
  }

  /**
   * Prepares a titration.
   *
   * @param solution what is titrated
   * @param titrant the titrant, at the same temperature
   * @param sample the volume of the solution, above 0
   * @return the titration
   * @throws IllegalArgumentException if the temperatures differ or there is no sample
   */
  public static SimulatedTitration of(Solution solution, Solution titrant, Volume sample) {
    return new SimulatedTitration(solution, titrant, sample);
  }

  /**
   * Makes a work space over what the sample and the titrant hold, for one thread.
   *
   * @return the work space
   */
  public TitratedMixture mixture() {
    return new TitratedMixture(search());
  }

  private DoseSearch search() {
    // What stands per litre in the titrant stands per litre in the sample, whatever that weighs.
    double factor = titrant.kilogramsPerLitre() / solution.kilogramsPerLitre();
    Map<Component, Double> moles = new LinkedHashMap<>(titrant.molesPerKilogram());
    moles.replaceAll((component, own) -> own * factor);
    return solution.adding(moles, titrant.inertPerKilogram() * factor, 1, work -> {});
  }

  /**
   * Finds the volume of titrant to an end point.
   *
   * @param endPoint the end point
   * @return the volume; 0 when the sample is there already
   * @throws NoSolutionException if no volume up to fifty times the sample reaches it
   */
  public Volume volumeTo(PH endPoint) {
    return sample.times(search().toReach(endPoint, "titrant"));
  }

  /**
   * Finds the pH after a volume of titrant.
   *
   * @param volume the titrant added
   * @return the pH
   */
  public PH pHAfter(Volume volume) {
    return PH.of(pHAfter(new double[] {volume.inMillilitres()})[0]);
  }

  /**
   * Finds the pH along the titration.
   *
   * @param millilitres volumes of titrant, mL, each 0 or more, best in ascending order
   * @return the pH after each, in a new array of the same length
   * @throws IllegalArgumentException if a volume is negative or not finite
   */
  public double[] pHAfter(double[] millilitres) {
    DoseSearch dose = search();
    double[] pH = new double[millilitres.length];
    for (int i = 0; i < pH.length; i++) {
      double volume = Checks.nonNegative("volume", millilitres[i], "mL");
      pH[i] = dose.pHAfter(volume / sample.inMillilitres());
    }
    return pH;
  }
}
