package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.ClosedForms;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.Volume;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.RepeatabilityLimit;
import org.brewchem.uncertainty.Replicates;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * The equivalents per litre of sample that a titration took: the one arithmetic behind every {@link
 * Determination}, with its replicates, its model, its steps and what is notable about it.
 */
final class TitratedCharge {

  private static final String TITRANT = "titrant";
  private static final String BLANK = "blank";
  private static final String SAMPLE = "sample";
  private static final String END_POINT_READING = "reading of the end point";
  private static final String UNIT = "mEq/L";
  private static final UsualRange USUAL_TITRE = UsualRange.named("titre");
  private static final Scale<Double> MILLIEQUIVALENTS = Scale.number("mEq", 6);

  /** A tenth of U is what the second digit of a stated U can show. */
  private static final double TOLERATED_BEND = 0.1;

  /** Relative difference of one formula computed in two orders. */
  private static final double ROUNDING = 1e-12;

  private final String measurand;
  private final TitrationSetup titration;
  private final List<Volume> titres;
  private final List<TitrationCurve> logs;
  private final Optional<FoundEndPoint> found;
  private final double meanTitre;
  private final Optional<Replicates> replicates;
  private final List<Movement> movements;
  private final Optional<Source> bias;
  private final MeasurementModel model;
  private final Budget budget;

  private TitratedCharge(
      String measurand,
      TitrationSetup titration,
      List<Volume> titres,
      List<TitrationCurve> logs,
      Optional<FoundEndPoint> found,
      Optional<Source> bias) {
    this.bias = bias;
    this.measurand = measurand;
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
    this.movements = found.isPresent() ? List.of() : this.logs.stream().map(Movement::of).toList();
    this.model = model(measurand);
    this.budget = model.linear();
  }

  static TitratedCharge ofVolumes(String measurand, TitrationSetup titration, List<Volume> titres) {
    return new TitratedCharge(
        measurand, titration, titres, List.of(), Optional.empty(), Optional.empty());
  }

  static TitratedCharge ofLogs(
      String measurand, TitrationSetup titration, List<TitrationCurve> logs) {
    return ofLogs(measurand, titration, logs, Optional.empty());
  }

  /** Of logs whose end point misses what is asked for by as much as a source of mL says. */
  static TitratedCharge ofBiasedLogs(
      String measurand, TitrationSetup titration, List<TitrationCurve> logs, Source bias) {
    return ofLogs(measurand, titration, logs, Optional.of(bias));
  }

  private static TitratedCharge ofLogs(
      String measurand,
      TitrationSetup titration,
      List<TitrationCurve> logs,
      Optional<Source> bias) {
    List<Volume> titres = logs.stream().map(TitrationCurve::titre).toList();
    return new TitratedCharge(measurand, titration, titres, logs, Optional.empty(), bias);
  }

  static TitratedCharge ofFound(
      String measurand,
      TitrationSetup titration,
      List<? extends TitrationCurve> logs,
      FoundEndPoint found) {
    List<TitrationCurve> there = new ArrayList<>();
    logs.forEach(log -> there.add(log.endingAt(found.endPoint())));
    return new TitratedCharge(
        measurand,
        titration.endingAt(found.endPoint()),
        List.of(Volume.ofMillilitres(found.millilitres())),
        there,
        Optional.of(found),
        Optional.empty());
  }

  private double equivalentsPerLitre() {
    return titration.titrant().equivalentsPerLitre().value();
  }

  private double milliequivalentsPerLitre(double titreMillilitres) {
    return milliequivalentsPerLitre(
        equivalentsPerLitre(),
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
    double endPoint = titration.endPoint().value();
    MeasurementModel.Builder inputs =
        MeasurementModel.of(measurand, UNIT)
            .with(
                Input.from(TITRANT, titration.titrant().equivalentsPerLitre(), "Eq/L"),
                Input.triangular(
                    "titre", meanTitre, apparatus.buretteTolerance().inMillilitres(), "mL"),
                Input.triangular(
                    SAMPLE,
                    titration.sample().inMillilitres(),
                    apparatus.pipetteTolerance(titration.sample()).inMillilitres(),
                    "mL"),
                Repeatability.input(apparatus, replicates, titres.size()));
    // The blank stands last, since it is not always there.
    Input[] blank =
        hasBlank()
            ? new Input[] {
              Input.triangular(
                  BLANK,
                  titration.blank().inMillilitres(),
                  apparatus.buretteTolerance().inMillilitres(),
                  "mL")
            }
            : new Input[0];
    Input reading = Input.normal(END_POINT_READING, endPoint, apparatus.endPointReading(), "pH");
    if (found.isPresent()) {
      Traced place = found.get().titre().found().orElseThrow().withValue(0);
      return inputs
          .with(Input.from("end point", place, "mL"))
          .with(blank)
          .calculatedBy(x -> milliequivalentsPerLitre(x[0], (x[1] + x[4] - blank(x)) * x[3], x[2]));
    }
    if (!logs.isEmpty()) {
      double interpolation =
          logs.stream().mapToDouble(TitrationCurve::interpolationError).max().orElseThrow();
      double moved = movements.stream().mapToDouble(Movement::halfWidth).max().orElse(0);
      List<Input> further = new ArrayList<>();
      further.add(Input.uniform("interpolation", 0, interpolation, "mL"));
      if (moved > 0) {
        further.add(Input.uniform(Movement.NAME, 0, moved, "mL"));
      }
      bias.ifPresent(source -> further.add(Input.from(source.name(), Traced.of(source), "mL")));
      return inputs
          .with(read(reading))
          .with(further.toArray(Input[]::new))
          .with(blank)
          .calculatedBy(
              x -> {
                double volume = x[1] + shift(x[4]) - blank(x);
                for (int i = 5; i < 5 + further.size(); i++) {
                  volume += x[i];
                }
                return milliequivalentsPerLitre(x[0], volume * x[3], x[2]);
              });
    }
    if (titration.slopeAtEndPoint().isPresent()) {
      double slope = titration.slopeAtEndPoint().get().inMilliequivalentsPerLitrePerPH();
      double sign = titration.titrant().substance().isAlkali() ? 1 : -1;
      return inputs
          .with(reading)
          .with(blank)
          .calculatedBy(
              x ->
                  milliequivalentsPerLitre(x[0], (x[1] - blank(x)) * x[3], x[2])
                      + sign * slope * (x[4] - endPoint));
    }
    return inputs
        .with(blank)
        .calculatedBy(x -> milliequivalentsPerLitre(x[0], (x[1] - blank(x)) * x[3], x[2]));
  }

  private boolean hasBlank() {
    return titration.blank().inMillilitres() > 0;
  }

  /** The blank among the numbers of the model. */
  private double blank(double[] x) {
    return hasBlank() ? x[x.length - 1] : 0;
  }

  /** The reading with what it scatters, where that is more than was stated of it. */
  private Input read(Input stated) {
    double noise = logs.stream().mapToDouble(TitrationCurve::excessNoise).max().orElse(0);
    return noise == 0
        ? stated
        : Input.normal(END_POINT_READING, titration.endPoint().value(), noise, "pH");
  }

  /** Mean change of the titre when the end point is another pH than the chosen one, mL. */
  private double shift(double pH) {
    double sum = 0;
    for (TitrationCurve log : logs) {
      sum += log.shiftTo(pH);
    }
    return sum / logs.size();
  }

  TitrationSetup titration() {
    return titration;
  }

  List<Volume> titres() {
    return titres;
  }

  Optional<Replicates> replicates() {
    return replicates;
  }

  MeasurementModel model() {
    return model;
  }

  Budget budget() {
    return budget;
  }

  double value() {
    return budget.traced().value();
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

  /** What is notable about this titration; the titrant speaks for itself. */
  List<Notice> notices() {
    List<Notice> list =
        new ArrayList<>(
            Repeatability.notices(
                "titres", measurand, titration.apparatus(), replicates, meanTitre));
    list.addAll(titration.unusual());
    findSizes(list);
    boolean read = found.map(FoundEndPoint::isRead).orElse(true);
    if (read && slopeAtEndPoint().isEmpty()) {
      list.add(
          Notice.of(
              TitrationCode.END_POINT_READING_NOT_IN_BUDGET,
              "end point",
              "the slope of the curve at the end point is not known from a volume alone, so the"
                  + " reading of pH is not in the budget; record readings around the end point"));
    }
    logs.forEach(log -> list.addAll(log.notices()));
    movements.forEach(movement -> movement.notice().ifPresent(list::add));
    if (movements.stream().anyMatch(movement -> !movement.isChecked())) {
      list.add(
          Notice.of(
              TitrationCode.LAG_AND_DRIFT_UNCHECKED,
              "readings",
              "lag of the electrode, drift and uptake of carbon dioxide are unchecked and not in"
                  + " the budget: a log of one direction shows none of them; read some volumes"
                  + " again after a wait, with times, or titrate back"));
    }
    findBend(list);
    return list;
  }

  private void findSizes(List<Notice> list) {
    double blank = titration.blank().inMillilitres();
    for (int i = 0; i < titres.size(); i++) {
      double millilitres = titres.get(i).inMillilitres();
      USUAL_TITRE.judge("titre", i + 1L, millilitres).ifPresent(list::add);
      if (blank > millilitres) {
        list.add(
            Notice.ofRow(
                TitrationCode.BLANK_ABOVE_TITRE,
                "blank",
                i + 1L,
                String.format(
                    Locale.ROOT,
                    "the blank, %s, takes more than the sample, %s: the result is below 0",
                    titration.blank(),
                    titres.get(i))));
      }
    }
  }

  /** Whether the curve leaves its tangent within the expanded uncertainty of the reading of pH. */
  private void findBend(List<Notice> list) {
    if (found.isPresent() || logs.isEmpty()) {
      return;
    }
    double endPoint = titration.endPoint().value();
    double k = budget.result().coverageFactor();
    double reach = k * titration.apparatus().endPointReading();
    double bend =
        Math.abs(
            milliequivalentsPerLitre(
                equivalentsPerLitre(),
                (shift(endPoint + reach) + shift(endPoint - reach)) / 2,
                titration.sample().inMillilitres()));
    double expanded = k * budget.result().standardUncertainty();
    if (bend > TOLERATED_BEND * expanded) {
      list.add(
          Notice.of(
              TitrationCode.BUDGET_NOT_LINEAR,
              "end point",
              String.format(
                  Locale.ROOT,
                  "within %.2g pH of the end point the curve leaves its tangent by %.0f %% of the"
                      + " expanded uncertainty; take the interval by Monte Carlo instead",
                  reach,
                  100 * bend / expanded)));
    }
  }

  /** The steps from titrant and titres to the equivalents per litre of undiluted sample. */
  Step step(String quantity, Scale<?> scale, String source, List<Notice> notices) {
    Step net = netTitre();
    Step titrant = titration.titrant().step(TitrationFigures.TITRANT_CONCENTRATION);
    int perMole = titration.titrant().substance().equivalentsPerMole();
    double concentration = value(titrant).value();
    double used = value(net).value() * concentration * perMole;
    Step titrantUsed =
        Step.of("titrant used", MILLIEQUIVALENTS, Step.Kind.FORMULA)
            .text(
                String.format(
                    Locale.ROOT,
                    "%s mL x %s mol/L x %d Eq/mol",
                    NumberText.plain(value(net).value()),
                    NumberText.significant(concentration, 6),
                    perMole),
                "")
            .inputs(List.of(titrant, net))
            .detail(
                () ->
                    detail(
                        value(net).value() * titration.titrant().equivalentsPerLitre().value(),
                        used))
            .found(value(net).times(value(titrant)).times(perMole).withValue(used));
    Step undiluted = undilutedSample();
    double chained = used / (value(undiluted).value() / 1000);
    return Step.of(quantity, scale, Step.Kind.FORMULA)
        .text(
            String.format(
                Locale.ROOT,
                "%s mEq / %s L",
                NumberText.significant(used, 6),
                NumberText.plain(titration.undilutedSample().inLitres())),
            source)
        .origin(Origin.MEASURED)
        .inputs(List.of(titrantUsed, undiluted))
        .notices(notices)
        .detail(() -> detail(chained, value()))
        .found(budget.traced());
  }

  /** The mean titre without the blank; every source but titrant and sample moves it. */
  private Step netTitre() {
    List<Step> inputs = new ArrayList<>();
    StringBuilder sum = new StringBuilder();
    for (int i = 0; i < titres.size(); i++) {
      inputs.add(titreStep(i));
      sum.append(i == 0 ? "" : " + ").append(NumberText.plain(titres.get(i).inMillilitres()));
    }
    double blank = titration.blank().inMillilitres();
    double net = meanTitre - blank;
    double perMillilitre =
        milliequivalentsPerLitre(equivalentsPerLitre(), 1, titration.sample().inMillilitres());
    List<Traced> moving = new ArrayList<>();
    List<Double> slopes = new ArrayList<>();
    for (Budget.Row row : budget.rows()) {
      String name = row.input().name();
      if (!name.equals(TITRANT) && !name.equals(SAMPLE)) {
        moving.add(row.input().traced());
        slopes.add(row.sensitivity() / perMillilitre);
      }
    }
    double[] read = inputs.stream().mapToDouble(step -> value(step).value()).toArray();
    return Step.of("net titre", TitrationFigures.MILLILITRES, Step.Kind.FORMULA)
        .text(
            (titres.size() == 1 ? sum.toString() : "(" + sum + ") / " + titres.size())
                + " - blank "
                + NumberText.plain(blank),
            titration.method().toString())
        .inputs(inputs)
        .detail(
            () -> {
              double total = 0;
              for (double titre : read) {
                total += titre - blank;
              }
              return new Step.Detail(
                  List.of(), total / read.length - net, ROUNDING * Math.max(meanTitre, blank));
            })
        .found(
            Traced.linear(
                net,
                moving.toArray(Traced[]::new),
                slopes.stream().mapToDouble(Double::doubleValue).toArray()));
  }

  private Step titreStep(int i) {
    String name = "titre " + (i + 1);
    if (found.isPresent()) {
      return found.get().titre();
    }
    return logs.isEmpty()
        ? Step.of(name, TitrationFigures.MILLILITRES, Step.Kind.STATED)
            .origin(Origin.MEASURED)
            .text("read at " + titration.endPoint(), "")
            .found(Traced.exact(titres.get(i).inMillilitres()))
        : logs.get(i).titreStep(name);
  }

  private Step undilutedSample() {
    Traced taken = budget.row(SAMPLE).input().traced();
    Step sample =
        Step.of(SAMPLE, TitrationFigures.MILLILITRES, Step.Kind.STATED)
            .origin(Origin.MEASURED)
            .text("taken", "")
            .found(taken);
    double undiluted = titration.undilutedSample().inMillilitres();
    return Step.of("undiluted sample", TitrationFigures.MILLILITRES, Step.Kind.FORMULA)
        .text(titration.sample() + " / " + NumberText.plain(titration.predilution()), "")
        .inputs(List.of(sample))
        .detail(() -> detail(taken.value() / titration.predilution(), undiluted))
        .found(taken.times(1 / titration.predilution()).withValue(undiluted));
  }

  private static Traced value(Step step) {
    return step.found().orElseThrow();
  }

  private static Step.Detail detail(double again, double found) {
    return new Step.Detail(List.of(), again - found, ROUNDING * Math.abs(found));
  }
}
