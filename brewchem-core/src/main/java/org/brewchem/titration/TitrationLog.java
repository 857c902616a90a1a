package org.brewchem.titration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.brewchem.buffer.BufferReadings;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * The readings of a titration, volume by volume, and what can be computed from them. Immutable.
 *
 * <p>The end point is interpolated between the readings around it ({@link TitrationCurve} says
 * how), unless it is found in another way ({@link FoundEndPoint}).
 */
public final class TitrationLog extends TitrationCurve {

  TitrationLog(TitrationSetup titration, List<Reading> readings) {
    super(titration, readings, Optional.empty());
  }

  private TitrationLog(
      TitrationSetup titration, List<Reading> readings, Optional<TitrationCurve> back) {
    super(titration, readings, back);
  }

  /**
   * Adds the way back: the same portion, titrated back at once with the opposite titrant from the
   * last reading on. Where both ways pass the end point, the difference of the net volumes shows
   * lag of the electrode, drift and uptake of carbon dioxide; it counts in the uncertainty, and
   * where it is more than chance explains a notice says so.
   *
   * @param way the log of the way back, its volumes counted from 0, of a sample of the same volume
   * @return this log with it
   * @throws IllegalArgumentException if its titrant is of the same kind or the sample differs
   */
  public TitrationLog andBack(TitrationLog way) {
    TitrationSetup setup = way.titration();
    if (setup.titrant().substance().isAlkali() == titration().titrant().substance().isAlkali()) {
      throw new IllegalArgumentException(
          "way back: titrant "
              + setup.titrant()
              + " is not possible; the opposite of "
              + titration().titrant()
              + " is needed");
    }
    if (!setup.sample().equals(titration().sample())) {
      throw new IllegalArgumentException(
          "way back: a sample of "
              + setup.sample()
              + " is not possible; it is the same portion, "
              + titration().sample());
    }
    return new TitrationLog(titration(), readings(), Optional.of(way));
  }

  /**
   * Computes the titratable acidity to the end point of the titration.
   *
   * @param replicates logs of further portions of the same sample
   * @return the acidity, the mean over this log and the replicates
   * @throws IllegalArgumentException if a replicate has another titrant, sample volume, dilution,
   *     blank, temperature, burette, reading of the end point or end point: compute it by itself
   * @throws IllegalStateException if the titrant is an acid or a log does not reach the end point
   */
  public AcidityResult acidity(TitrationLog... replicates) {
    return AcidityResult.ofLogs(titration(), withReplicates(replicates));
  }

  /**
   * Computes the alkalinity to the end point of the titration.
   *
   * @param replicates logs of further portions of the same sample
   * @return the alkalinity, the mean over this log and the replicates
   * @throws IllegalArgumentException if a replicate has another titrant, sample volume, dilution,
   *     blank, temperature, burette, reading of the end point or end point: compute it by itself
   * @throws IllegalStateException if the titrant is an alkali or a log does not reach the end point
   */
  public AlkalinityResult alkalinity(TitrationLog... replicates) {
    return AlkalinityResult.ofLogs(titration(), withReplicates(replicates));
  }

  /**
   * Computes the titratable acidity to an end point that was found in another way than by its pH.
   *
   * @param found the end point in this log
   * @return the acidity
   * @throws IllegalStateException if the titrant is an acid
   */
  public AcidityResult acidityAt(FoundEndPoint found) {
    return AcidityResult.of(titration(), List.of(this), found);
  }

  /**
   * Computes the alkalinity to an end point that was found in another way than by its pH.
   *
   * @param found the end point in this log
   * @return the alkalinity
   * @throws IllegalStateException if the titrant is an alkali
   */
  public AlkalinityResult alkalinityAt(FoundEndPoint found) {
    return AlkalinityResult.of(titration(), List.of(this), found);
  }

  /**
   * Analyses the log as an alkalinity titration, by end points that the log itself decides.
   *
   * @return the analysis
   * @throws IllegalStateException if the titrant is an alkali
   */
  public AlkalinityCurve alkalinityCurve() {
    return AlkalinityCurve.of(this);
  }

  /**
   * Returns the readings as a measured buffer takes them: the direction that of the titrant, water
   * counted in the dilution, volumes read to 0.02 mL. What is common to all readings comes as
   * sources of uncertainty: the concentration of the titrant, the volume of the sample, the
   * burette, whose limit of error is reached at the last volume, and the blank, which counts at
   * each pH as the carbon dioxide that it mostly is.
   *
   * @return the readings
   * @throws IllegalArgumentException if the titrant is sulfuric acid, whose second proton is not
   *     all free at the low end of such a log, or a reading lies outside pH 0 to 14
   */
  public BufferReadings bufferReadings() {
    TitrationSetup titration = titration();
    TitrantSolution titrant = titration.titrant();
    if (titrant.substance().equivalentsPerMole() != 1) {
      throw new IllegalArgumentException(
          "titrant: " + titrant.substance() + " is not possible; a univalent one is needed");
    }
    Traced strength = titrant.equivalentsPerLitre();
    AmountConcentration concentration = AmountConcentration.ofMolesPerLitre(strength.value());
    Volume sample = titration.sample();
    Volume own = titration.undilutedSample();
    double[] volumes = readings().stream().mapToDouble(r -> r.volume().inMillilitres()).toArray();
    double[] read = readings().stream().mapToDouble(r -> r.pH().value()).toArray();
    BufferReadings plain =
        titrant.substance().isAlkali()
            ? BufferReadings.withAlkali(own, concentration, volumes, read)
            : BufferReadings.withAcid(own, concentration, volumes, read);
    Traced taken =
        Input.triangular(
                "sample",
                sample.inMillilitres(),
                titration.apparatus().pipetteTolerance(sample).inMillilitres(),
                "mL")
            .traced();
    double last = Arrays.stream(volumes).max().orElse(0);
    Input burette =
        Input.triangular(
            "burette at its last volume",
            last,
            titration.apparatus().buretteTolerance().inMillilitres(),
            "mL");
    Traced factor = strength.dividedBy(taken);
    BufferReadings all = plain.proportionalTo(factor.times(burette.traced()));
    if (titration.blank().inMillilitres() > 0) {
      double u = titration.apparatus().buretteTolerance().inMillilitres() / Math.sqrt(6);
      all = all.withBlank(titration.blank(), titration.endPoint(), Volume.ofMillilitres(u));
    }
    return all.dilutedBy(titration.initialVolume().minus(own), own).at(titration.temperature());
  }

  /**
   * Returns the same readings with the errors of the electrode that read them, as its calibration
   * leaves them: the error of each buffer is a source, which moves every reading by its share in
   * the line. A second log with the same sources correlates with this one.
   *
   * @param calibration the calibration
   * @param buffers how well each of its buffers was read, in its order, from {@link
   *     ElectrodeCalibration#errors}
   * @return the readings
   * @throws IllegalArgumentException if there is not one source to each buffer, or the titrant is
   *     sulfuric acid
   */
  public BufferReadings bufferReadings(ElectrodeCalibration calibration, List<Source> buffers) {
    BufferReadings all = bufferReadings();
    double[] read = readings().stream().mapToDouble(r -> r.pH().value()).toArray();
    double[][] shares = new double[read.length][];
    for (int i = 0; i < read.length; i++) {
      shares[i] = calibration.shares(PH.of(read[i]));
    }
    if (buffers.size() != calibration.deviations().length) {
      throw new IllegalArgumentException(
          "buffers: "
              + NumberText.count(buffers.size(), "source is", "sources are")
              + " not possible; one to each of "
              + calibration.deviations().length
              + " buffers is needed");
    }
    for (int buffer = 0; buffer < buffers.size(); buffer++) {
      double[] column = new double[read.length];
      for (int i = 0; i < column.length; i++) {
        column[i] = shares[i][buffer];
      }
      all = all.withErrorOfPH(buffers.get(buffer), column);
    }
    return all;
  }

  /**
   * Returns the same readings, for another end point.
   *
   * @param endPoint the pH that the titration ends at
   * @return the log
   */
  public TitrationLog to(PH endPoint) {
    return new TitrationLog(titration().endingAt(endPoint), readings(), back());
  }

  private List<TitrationCurve> withReplicates(TitrationLog... replicates) {
    List<TitrationCurve> logs = new ArrayList<>(List.of(this));
    for (TitrationLog log : replicates) {
      if (!log.titration().replicates(titration())) {
        throw new IllegalArgumentException(
            "replicates: \""
                + log.titration()
                + "\" is no replicate of \""
                + titration()
                + "\"; the same titrant, sample, dilution, blank, temperature and end point are"
                + " needed");
      }
      logs.add(log);
    }
    return logs;
  }
}
