package org.brewchem.checks.simulator;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.brewchem.buffer.BufferCode;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Severity;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Solute;

/**
 * What the library makes of one experiment: predicted changes of pH and acidity beside the truth,
 * and what it notices. An input that the library refuses counts as noticed.
 */
final class BufferTrial {

  static final double END_POINT = 8.2;

  /** Half the width of a 95 % interval in standard uncertainties. */
  static final double COVERAGE_FACTOR = 1.96;

  /** A dose and what the simulator takes for it. */
  record Dose(String text, Solute solute, String ligand, double gramsPerLitre, double molarMass) {

    double molesPerLitre() {
      return gramsPerLitre / molarMass;
    }
  }

  private static final double LACTIC_ACID = 90.078;
  private static final double PHOSPHORIC_ACID = 97.994;

  static final List<Dose> DOSES =
      List.of(
          new Dose("0.3 g/L of lactic acid", Acid.LACTIC, "lactate", 0.3, LACTIC_ACID),
          new Dose("1 g/L of lactic acid", Acid.LACTIC, "lactate", 1, LACTIC_ACID),
          new Dose("3 g/L of lactic acid", Acid.LACTIC, "lactate", 3, LACTIC_ACID),
          new Dose("1 g/L of phosphoric acid", Acid.PHOSPHORIC, "phosphate", 1, PHOSPHORIC_ACID));

  final double[] error = new double[DOSES.size()];
  final double[] uncertainty = new double[DOSES.size()];
  final boolean[] outside = new boolean[DOSES.size()];
  double acidityError;
  double acidityUncertainty;
  boolean refused;
  final Set<String> noticed = new HashSet<>();

  BufferTrial(BeerKind kind, Disturbance disturbance, Fault fault, boolean told, Random random) {
    Experiment experiment = new Experiment(kind, disturbance, fault, random);
    try {
      judge(experiment, told ? told(experiment) : untold(experiment), told);
    } catch (IllegalArgumentException refusal) {
      refused = true;
      noticed.add("refused");
    }
  }

  /** Whether anything is said of the readings. */
  boolean isNoticed() {
    return !noticed.isEmpty();
  }

  private static MeasuredBuffer untold(Experiment experiment) {
    return MeasuredBuffer.from(alkali(experiment), acid(experiment));
  }

  static MeasuredBuffer told(Experiment experiment) {
    Temperature temperature = Temperature.ofCelsius(experiment.celsius);
    return MeasuredBuffer.fit()
        .with(told(alkali(experiment), experiment).at(temperature))
        .with(told(acid(experiment), experiment).at(temperature))
        .withReadingUncertainty(Experiment.NOISE)
        .withZeroUncertainty(experiment.zeroUncertainty)
        .withSlopeUncertainty(experiment.slopeUncertainty)
        .metals(
            perKilogram(experiment.calciumMolesPerKilogram),
            perKilogram(experiment.magnesiumMolesPerKilogram),
            Experiment.RELATIVE_OF_METALS)
        .backgroundSalt(
            perKilogram(experiment.saltMolesPerKilogram), perKilogram(experiment.saltUncertainty))
        .carbonDioxide(
            MassConcentration.ofGramsPerLitre(experiment.carbonDioxideGramsPerLitre),
            MassConcentration.ofGramsPerLitre(experiment.carbonDioxideUncertainty))
        .buffer();
  }

  private static BufferReadings told(BufferReadings leg, Experiment experiment) {
    return leg.withTitrantUncertainty(experiment.titrantUncertainty).withSampleUncertainty(0);
  }

  private static BufferReadings alkali(Experiment experiment) {
    return BufferReadings.withAlkali(
        Volume.ofMillilitres(experiment.sampleMillilitres),
        AmountConcentration.ofMolesPerLitre(Experiment.MOLES_PER_LITRE),
        Volume.ofMillilitres(Experiment.BURETTE_MILLILITRES),
        experiment.alkaliVolumes,
        experiment.alkaliPH);
  }

  private static BufferReadings acid(Experiment experiment) {
    return BufferReadings.withAcid(
        Volume.ofMillilitres(experiment.sampleMillilitres),
        AmountConcentration.ofMolesPerLitre(Experiment.MOLES_PER_LITRE),
        Volume.ofMillilitres(Experiment.BURETTE_MILLILITRES),
        experiment.acidVolumes,
        experiment.acidPH);
  }

  private static AmountConcentration perKilogram(double moles) {
    return AmountConcentration.ofMolesPerLitre(moles * SimulatedBeer.KILOGRAMS_PER_LITRE);
  }

  private void judge(Experiment experiment, MeasuredBuffer buffer, boolean told) {
    SimulatedBeer beer = told ? experiment.beer.at(experiment.celsius) : experiment.beer;
    double before = beer.pH();
    double lowest = buffer.lowestReading().value();
    for (int d = 0; d < DOSES.size(); d++) {
      Dose dose = DOSES.get(d);
      double after =
          beer.with(
                  Ligand.named(dose.ligand),
                  dose.molesPerLitre() / SimulatedBeer.KILOGRAMS_PER_LITRE)
              .pH();
      Answer<Double> predicted =
          buffer.changeOfPHBy(
              dose.solute, AmountConcentration.ofMolesPerLitre(dose.molesPerLitre()));
      error[d] = predicted.number() - (after - before);
      uncertainty[d] = predicted.standardUncertainty().orElse(Double.NaN);
      outside[d] = after < lowest;
      note(predicted.notices());
    }
    Answer<TitratableAcidity> acidity = buffer.acidityTo(PH.of(END_POINT));
    double perLitre = 1000 * SimulatedBeer.KILOGRAMS_PER_LITRE;
    acidityError = acidity.value().inMilliequivalentsPerLitre() - beer.baseTo(END_POINT) * perLitre;
    acidityUncertainty =
        acidity.in(Scales.acidity(PH.of(END_POINT))).standardUncertainty().orElse(Double.NaN);
    note(acidity.notices());
  }

  /** A remark says what a result rests on, whatever the readings are like. */
  private void note(List<Notice> notices) {
    for (Notice notice : notices) {
      if (notice.code() instanceof BufferCode code
          && code.severity() != Severity.REMARK
          && code != BufferCode.EXTRAPOLATED) {
        noticed.add(code.name());
      }
    }
  }
}
