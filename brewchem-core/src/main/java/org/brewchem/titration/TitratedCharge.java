package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.ClosedForms;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.RepeatabilityLimit;
import org.brewchem.uncertainty.Replicates;

/**
 * The equivalents per litre of sample that a titration took: the one arithmetic behind acidity and
 * alkalinity, with its replicates, its model and what is noteworthy about it.
 *
 * <p>c z (V - B) f / S, with the concentration c and equivalents z of the titrant, the mean titre
 * V, the blank B, the predilution f and the sample volume S.
 */
final class TitratedCharge {

  /**
   * Where a titre comes from when it was not read at the end point.
   *
   * @param text for the explanation
   * @param standardUncertainty of the titre from this cause, mL
   */
  record EndPointFound(String text, double standardUncertainty) {}

  private static final String END_POINT_READING = "reading of the end point";
  private static final String UNIT = "mEq/L";
  private static final double COVERAGE_FACTOR = 2;

  /** A tenth of U is what the second digit of a stated U can show. */
  private static final double TOLERATED_BEND = 0.1;

  private final SampleTitration titration;
  private final List<Volume> titres;
  private final List<TitrationLog> logs;
  private final Optional<EndPointFound> found;
  private final double meanTitre;
  private final Optional<Replicates> replicates;
  private final MeasurementModel model;
  private final Budget budget;

  TitratedCharge(
      String measurand,
      SampleTitration titration,
      List<Volume> titres,
      List<TitrationLog> logs,
      Optional<EndPointFound> found) {
    this.titration = titration;
    this.found = found;
    this.titres = List.copyOf(titres);
    this.logs = List.copyOf(logs);
    double[] values = new double[titres.size()];
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      double millilitres = titres.get(i).inMillilitres();
      values[i] = milliequivalentsPerLitre(millilitres);
      sum += millilitres;
    }
    this.meanTitre = sum / values.length;
    this.replicates =
        values.length < 2 ? Optional.empty() : Optional.of(Replicates.of(UNIT, values));
    this.model = model(measurand);
    this.budget = model.linear();
  }

  private double milliequivalentsPerLitre(double titreMillilitres) {
    return milliequivalentsPerLitre(
        titration.titrant().equivalentsPerLitre().value(),
        titreMillilitres - titration.blank().inMillilitres(),
        titration.sample().inMillilitres());
  }

  private double milliequivalentsPerLitre(
      double equivalentsPerLitre, double netMillilitres, double sampleMillilitres) {
    return ClosedForms.titratedMilliequivalentsPerLitre(
        equivalentsPerLitre, netMillilitres, titration.predilution(), sampleMillilitres);
  }

  private MeasurementModel model(String measurand) {
    Apparatus apparatus = titration.apparatus();
    double blank = titration.blank().inMillilitres();
    double endPoint = titration.endPoint().value();
    MeasurementModel.Builder inputs =
        MeasurementModel.of(measurand, UNIT)
            .with(
                Input.from("titrant", titration.titrant().equivalentsPerLitre()),
                Input.triangular(
                    "titre", meanTitre, apparatus.buretteTolerance().inMillilitres(), "mL"),
                Input.triangular(
                    "sample",
                    titration.sample().inMillilitres(),
                    apparatus.pipetteTolerance(titration.sample()).inMillilitres(),
                    "mL"),
                Repeatability.input(apparatus, replicates, titres.size()));
    Input reading = Input.normal(END_POINT_READING, endPoint, apparatus.endPointReading(), "pH");
    if (found.isPresent()) {
      return inputs
          .with(Input.normal("end point", 0, found.get().standardUncertainty(), "mL"))
          .calculatedBy(x -> milliequivalentsPerLitre(x[0], (x[1] + x[4] - blank) * x[3], x[2]));
    }
    if (!logs.isEmpty()) {
      double interpolation =
          logs.stream().mapToDouble(TitrationLog::interpolationError).max().orElseThrow();
      return inputs
          .with(reading, Input.uniform("interpolation", 0, interpolation, "mL"))
          .calculatedBy(
              x ->
                  milliequivalentsPerLitre(x[0], (x[1] + shift(x[4]) + x[5] - blank) * x[3], x[2]));
    }
    if (titration.slopeAtEndPoint().isPresent()) {
      double slope = titration.slopeAtEndPoint().get().inMilliequivalentsPerLitrePerPH();
      double sign = titration.titrant().substance().isAlkali() ? 1 : -1;
      return inputs
          .with(reading)
          .calculatedBy(
              x ->
                  milliequivalentsPerLitre(x[0], (x[1] - blank) * x[3], x[2])
                      + sign * slope * (x[4] - endPoint));
    }
    return inputs.calculatedBy(x -> milliequivalentsPerLitre(x[0], (x[1] - blank) * x[3], x[2]));
  }

  /** Mean change of the titre when the end point is another pH than the chosen one, mL. */
  private double shift(double pH) {
    double sum = 0;
    for (TitrationLog log : logs) {
      sum += log.millilitresAt(pH) - log.millilitresAt(titration.endPoint().value());
    }
    return sum / logs.size();
  }

  SampleTitration titration() {
    return titration;
  }

  List<Volume> titres() {
    return titres;
  }

  Optional<Replicates> replicates() {
    return replicates;
  }

  OptionalDouble relativeDifference() {
    return replicates.filter(r -> r.mean() != 0).stream()
        .mapToDouble(Replicates::relativeRange)
        .findFirst();
  }

  MeasurementModel model() {
    return model;
  }

  Budget budget() {
    return budget;
  }

  double value() {
    return budget.result().value();
  }

  Optional<BufferCapacity> slopeAtEndPoint() {
    return found.isPresent() || logs.isEmpty()
        ? titration.slopeAtEndPoint()
        : Optional.of(
            BufferCapacity.ofMilliequivalentsPerLitrePerPH(
                Math.abs(budget.row(END_POINT_READING).sensitivity())));
  }

  /** The greatest difference of two determinations that the known repeatability explains. */
  Optional<RepeatabilityLimit> repeatabilityLimit() {
    return titration.apparatus().relativeRepeatability().stream()
        .mapToObj(
            relative ->
                RepeatabilityLimit.fromStandardDeviation(relative * Math.abs(value()), UNIT))
        .findFirst();
  }

  List<Finding> findings() {
    List<Finding> list = new ArrayList<>();
    if (titration.titrant().concentration().standardUncertainty() == 0) {
      list.add(
          Finding.of(
              Finding.Kind.TITRANT_WITHOUT_UNCERTAINTY,
              titration.titrant()
                  + " was taken as exact; standardise it, or state its uncertainty"));
    }
    list.addAll(Repeatability.findings(titration.apparatus(), replicates));
    boolean read = found.map(f -> f.standardUncertainty() == 0).orElse(true);
    if (read && slopeAtEndPoint().isEmpty()) {
      list.add(
          Finding.of(
              Finding.Kind.END_POINT_READING_NOT_IN_BUDGET,
              "the slope of the curve at the end point is not known from a volume alone, so the"
                  + " reading of pH is not in the budget; record readings around the end point"));
    }
    logs.forEach(log -> list.addAll(log.findings()));
    findBend(list);
    return list;
  }

  /** Whether the curve leaves its tangent within twice the uncertainty of the reading of pH. */
  private void findBend(List<Finding> list) {
    if (found.isPresent() || logs.isEmpty()) {
      return;
    }
    double endPoint = titration.endPoint().value();
    double reach = COVERAGE_FACTOR * titration.apparatus().endPointReading();
    double bend =
        Math.abs(
            milliequivalentsPerLitre(
                titration.titrant().equivalentsPerLitre().value(),
                (shift(endPoint + reach) + shift(endPoint - reach)) / 2,
                titration.sample().inMillilitres()));
    double expanded = COVERAGE_FACTOR * budget.result().standardUncertainty();
    if (bend > TOLERATED_BEND * expanded) {
      list.add(
          Finding.of(
              Finding.Kind.BUDGET_NOT_LINEAR,
              String.format(
                  Locale.ROOT,
                  "within %.2g pH of the end point the curve leaves its tangent by %.0f %% of the"
                      + " expanded uncertainty; take the interval by Monte Carlo instead",
                  reach,
                  100 * bend / expanded)));
    }
  }

  /** Lines from the titrant to the equivalents per litre. */
  Explanation.Lines explained(String quantity, String source) {
    Titrant titrant = titration.titrant();
    Explanation.Lines lines = new Explanation.Lines();
    lines.add("method", titration.method().toString(), source);
    lines.add(
        "titrant",
        titrant.toString(),
        titrant.standardisation().isPresent() ? "standardised" : "as stated");
    if (found.isPresent() || !logs.isEmpty()) {
      String origin =
          found
              .map(EndPointFound::text)
              .orElse("on the line between the readings before and after " + titration.endPoint());
      for (int i = 0; i < titres.size(); i++) {
        lines.add(
            "titre " + (i + 1),
            NumberText.significant(titres.get(i).inMillilitres(), 5) + " mL, " + origin);
      }
    }
    String sum =
        titres.stream()
            .map(v -> NumberText.plain(v.inMillilitres()))
            .reduce((a, b) -> a + " + " + b)
            .orElseThrow();
    double blank = titration.blank().inMillilitres();
    double net = meanTitre - blank;
    double equivalents = titrant.equivalentsPerLitre().value();
    lines.add(
        "net titre",
        String.format(
            Locale.ROOT,
            "%s - blank %s = %s mL",
            titres.size() == 1 ? sum : "(" + sum + ") / " + titres.size(),
            NumberText.plain(blank),
            NumberText.plain(net)));
    lines.add(
        "titrant used",
        String.format(
            Locale.ROOT,
            "%s mL x %s mol/L x %d Eq/mol = %s mEq",
            NumberText.plain(net),
            NumberText.significant(titrant.concentration().value(), 6),
            titrant.substance().equivalentsPerMole(),
            NumberText.significant(net * equivalents, 6)));
    lines.add(
        "undiluted sample",
        String.format(
            Locale.ROOT,
            "%s / %s = %s",
            titration.sample(),
            NumberText.plain(titration.predilution()),
            titration.undilutedSample()));
    lines.add(
        quantity,
        String.format(
            Locale.ROOT,
            "%s mEq / %s L = %s mEq/L",
            NumberText.significant(net * equivalents, 6),
            NumberText.plain(titration.undilutedSample().inLitres()),
            NumberText.significant(value(), 6)));
    return lines;
  }
}
