package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.NoSolutionException;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Salt;

/**
 * Waters of a known alkalinity, titrated by the kernel as a log was: by how much an end point
 * misses the equivalence point in them. Closed: all carbon dioxide stays in the vessel, what the
 * water held besides its bicarbonate too, where the log begins with the pH of the water. Open: all
 * of it is gone, as if the alkalinity were lye. And closed with 10 mmol/L of other salt. What a
 * real vessel does lies between.
 */
final class ModelWaters {

  private static final double OTHER_SALT = 10;

  /** A water of a lower pH hardly has an alkalinity; our choice. */
  private static final PH LOWEST = PH.of(6);

  private final List<SimulatedTitration> titrations = new ArrayList<>();
  private final double equivalenceMillilitres;

  private ModelWaters(TitrationCurve log, double equivalenceMillilitres) {
    TitrationSetup setup = log.titration();
    this.equivalenceMillilitres = equivalenceMillilitres;
    Temperature temperature = setup.temperature();
    double initial = setup.initialVolume().inMillilitres();
    AmountConcentration alkalinity =
        AmountConcentration.ofMolesPerLitre(
            setup.titrant().equivalentsPerLitre().value() * equivalenceMillilitres / initial);
    Solution closed =
        withItsGas(
            Solution.at(temperature).with(Base.SODIUM_BICARBONATE, alkalinity), log.readings());
    Solution titrant = setup.titrant().solution(temperature);
    for (Solution water :
        List.of(
            closed,
            closed.with(Salt.SODIUM_CHLORIDE, AmountConcentration.ofMillimolesPerLitre(OTHER_SALT)),
            Solution.at(temperature).with(Base.SODIUM_HYDROXIDE, alkalinity))) {
      titrations.add(SimulatedTitration.of(water, titrant, setup.initialVolume()));
    }
  }

  /** Waters whose equivalence point takes a volume of the titrant of a log. */
  static ModelWaters of(TitrationCurve log, double equivalenceMillilitres) {
    return new ModelWaters(log, equivalenceMillilitres);
  }

  /** With the carbon dioxide that lowers its pH to that of the reading before any titrant. */
  private static Solution withItsGas(Solution bicarbonate, List<Reading> readings) {
    return readings.stream()
        .filter(reading -> reading.volume().inMillilitres() == 0)
        .map(Reading::pH)
        .filter(start -> start.compareTo(bicarbonate.pH()) < 0 && start.compareTo(LOWEST) > 0)
        .findFirst()
        .map(start -> bicarbonate.with(Acid.CARBONIC, bicarbonate.doseOf(Acid.CARBONIC, start)))
        .orElse(bicarbonate);
  }

  /**
   * The greatest miss of an end point over the waters, mL.
   *
   * @param endPoint the volume that an end point takes, from the pH after volumes
   */
  double greatestMiss(ToDoubleFunction<SimulatedTitration> endPoint) {
    double greatest = 0;
    for (SimulatedTitration titration : titrations) {
      Optional<Double> found;
      try {
        found = Optional.of(endPoint.applyAsDouble(titration));
      } catch (IllegalStateException | NoSolutionException e) {
        found = Optional.empty();
      }
      greatest =
          Math.max(greatest, found.map(v -> Math.abs(v - equivalenceMillilitres)).orElse(0.0));
    }
    return greatest;
  }
}
