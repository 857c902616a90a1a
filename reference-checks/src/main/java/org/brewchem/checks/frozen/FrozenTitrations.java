package org.brewchem.checks.frozen;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.brewchem.checks.CsvTable;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.BufferCapacity;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.ElectricPotential;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TemperatureDifference;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.AlkalinityCurve;
import org.brewchem.titration.AlkalinityResult;
import org.brewchem.titration.AlkalinitySplit;
import org.brewchem.titration.Apparatus;
import org.brewchem.titration.CalibrationReading;
import org.brewchem.titration.CarbonateInLye;
import org.brewchem.titration.CurveFit;
import org.brewchem.titration.ElectrodeCalibration;
import org.brewchem.titration.Reading;
import org.brewchem.titration.SampleTitration;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.TitrantDrift;
import org.brewchem.titration.TitrationCode;
import org.brewchem.titration.TitrationLog;
import org.brewchem.titration.WeakAcidCurve;
import org.brewchem.titration.Weighing;
import org.brewchem.uncertainty.Budget;
import org.brewchem.uncertainty.Interval;
import org.brewchem.uncertainty.MonteCarlo;
import org.brewchem.uncertainty.Traced;

/** The titration laboratory: titrants, determinations, logs, electrodes, curves. */
final class FrozenTitrations {

  private static final int DRAWS = 2_000;
  private static final long SEED = 17;

  private FrozenTitrations() {}

  static void compute(FrozenFigures figures) {
    standardisations(figures);
    for (CsvTable.Line line : determinations().lines()) {
      determination(figures.of(line.text("id")), line);
    }
    for (CsvTable.Line line : CsvTable.read("frozen/low-alkalinities.csv", 5).lines()) {
      lowAlkalinity(figures.of(line.text("id")), line);
    }
    for (CsvTable.Line line : CsvTable.read("frozen/alkalinity-splits.csv", 8).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt(
          "split",
          () ->
              AlkalinitySplit.of(caco3(line, "to_phenolphthalein", 8.3), caco3(line, "total", 4.5)),
          split -> split(of, split));
    }
    for (CsvTable.Line line : CsvTable.read("frozen/calibrations.csv", 8).lines()) {
      calibration(figures.of(line.text("id")), line);
    }
    for (CsvTable.Line line : CsvTable.read("frozen/carbon-dioxide-residues.csv", 6).lines()) {
      residue(figures.of(line.text("id")), line);
    }
    for (CsvTable.Line line : CsvTable.read("frozen/carbonate-in-lyes.csv", 5).lines()) {
      figures
          .of(line.text("id"))
          .number(
              "relative bias of the titre",
              "",
              CarbonateInLye.of(
                      line.number("share"),
                      pH(line, "pH"),
                      pH(line, "end_point"),
                      celsius(line, "temperature"))
                  .relativeBias());
    }
    logs(figures);
  }

  private static PH pH(CsvTable.Line line, String column) {
    return PH.of(line.number(column));
  }

  private static Temperature celsius(CsvTable.Line line, String column) {
    return Temperature.ofCelsius(line.number(column));
  }

  private static Volume mL(CsvTable.Line line, String column) {
    return Volume.ofMillilitres(line.number(column));
  }

  private static TitrationAlkalinity caco3(CsvTable.Line line, String column, double endPoint) {
    return TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(line.number(column), PH.of(endPoint));
  }

  private static Apparatus apparatus(String name) {
    return switch (name) {
      case "usual" -> Apparatus.usual();
      case "fine" ->
          Apparatus.usual()
              .withBuretteTolerance(Volume.ofMillilitres(0.01))
              .withBalanceTolerance(Mass.ofMilligrams(0.1))
              .withTemperatureSpread(TemperatureDifference.ofKelvin(1))
              .withRepeatability(0.001);
      default -> throw new IllegalStateException(name);
    };
  }

  private static Titrant.Unstandardised substance(String name) {
    return switch (name) {
      case "sodium hydroxide" -> Titrant.sodiumHydroxide();
      case "potassium hydroxide" -> Titrant.potassiumHydroxide();
      case "hydrochloric acid" -> Titrant.hydrochloricAcid();
      case "sulfuric acid" -> Titrant.sulfuricAcid();
      default -> throw new IllegalStateException(name);
    };
  }

  private static Titrant titrant(CsvTable.Line line) {
    Titrant.Unstandardised substance = substance(line.text("titrant"));
    AmountConcentration concentration =
        AmountConcentration.ofMolesPerLitre(line.number("concentration"));
    return line.isEmpty("u")
        ? substance.of(concentration)
        : substance.of(concentration, AmountConcentration.ofMolesPerLitre(line.number("u")));
  }

  private static void findings(FrozenFigures.Of of, String name, List<Notice> notices) {
    of.text(name, notices.stream().map(Notice::code).map(TitrationCode.class::cast).toList());
  }

  /** The uncertainty as far as it is known: that of a titrant may be missing. */
  private static void known(FrozenFigures.Of of, String name, String unit, Traced traced) {
    of.uncertain(name, unit, traced.value(), traced.knownPart());
  }

  private static void budget(FrozenFigures.Of of, String result, Budget budget) {
    for (Budget.Row row : budget.rows()) {
      String name = result + ": " + row.input().name().replace(",", "");
      of.uncertain(
          name, row.input().unit(), row.input().estimate(), row.input().standardUncertainty());
      of.number(name + " share of variance", "", row.shareOfVariance());
    }
  }

  private static void monteCarlo(FrozenFigures.Of of, String result, MonteCarlo drawn) {
    of.number("median of " + result + " by Monte Carlo", "mEq/L", drawn.median());
    Interval interval = drawn.interval(0.95);
    of.number("lower limit of " + result + " by Monte Carlo", "mEq/L", interval.lower());
    of.number("upper limit of " + result + " by Monte Carlo", "mEq/L", interval.upper());
  }

  private static void standardisations(FrozenFigures figures) {
    CsvTable table = CsvTable.read("frozen/standardisations.csv", 10);
    for (CsvTable.Line line : table.lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt("standardisation", () -> standardised(line), titrant -> standardised(of, titrant));
    }
    for (int i = 0; i < 5; i++) {
      CsvTable.Line earlier = table.lines().get(i);
      for (int j = i + 1; j < table.lines().size(); j++) {
        CsvTable.Line later = table.lines().get(j);
        if (earlier.text("titrant").equals(later.text("titrant"))) {
          FrozenFigures.Of of =
              figures.of("drift from " + earlier.text("id") + " to " + later.text("id"));
          of.attempt(
              "drift",
              () -> standardised(later).driftSince(standardised(earlier)),
              drift -> drift(of, drift));
        }
      }
    }
  }

  private static Titrant standardised(CsvTable.Line line) {
    Titrant.Unstandardised substance = substance(line.text("titrant"));
    Weighing[] weighings =
        Arrays.stream(line.text("weighings").split("; "))
            .map(text -> text.split(" "))
            .map(
                pair -> {
                  Mass mass = Mass.ofGrams(Double.parseDouble(pair[0]));
                  Volume titre = Volume.ofMillilitres(Double.parseDouble(pair[1]));
                  return substance.substance().isAlkali()
                      ? Weighing.khp(mass, titre)
                      : Weighing.sodiumCarbonate(mass, titre);
                })
            .toArray(Weighing[]::new);
    return substance
        .standardised(apparatus(line.text("apparatus")), weighings)
        .on(LocalDate.parse(line.text("date")));
  }

  private static void standardised(FrozenFigures.Of of, Titrant titrant) {
    known(of, "concentration", "mol/L", titrant.concentration().traced());
    known(of, "equivalents", "Eq/L", titrant.equivalentsPerLitre());
    titrant
        .standardisation()
        .ifPresent(
            standardisation -> {
              double[] single = standardisation.concentrationsInMolesPerLitre();
              for (int i = 0; i < single.length; i++) {
                of.number("concentration by weighing " + (i + 1), "mol/L", single[i]);
              }
              of.number(
                  "relative standard deviation", "", standardisation.relativeStandardDeviation());
              of.number("Grubbs' statistic", "", standardisation.grubbs(), g -> g.statistic());
              budget(of, "concentration", standardisation.budget());
              findings(of, "findings", standardisation.notices());
            });
    of.number(
        "pH of the titrant at 20 °C", "", titrant.solution(Temperature.ofCelsius(20)).pH().value());
  }

  private static void drift(FrozenFigures.Of of, TitrantDrift drift) {
    of.number("relative change", "", drift.relativeChange());
    of.text("significant", drift.isSignificant());
    of.number("days", "d", drift.days().stream().asDoubleStream().findFirst());
  }

  private static CsvTable determinations() {
    return CsvTable.read("frozen/determinations.csv", 40);
  }

  /** Returns the acidity of a determination, for the beers too. */
  static AcidityResult acidity(String id) {
    return titration(determinations().only("id", id)).acidity();
  }

  private static SampleTitration titration(CsvTable.Line line) {
    SampleTitration titration =
        titrant(line)
            .titrate(mL(line, "sample"))
            .to(pH(line, "end_point"))
            .with(apparatus(line.text("apparatus")));
    if (!line.isEmpty("blank")) {
      titration = titration.blank(mL(line, "blank"));
    }
    if (!line.isEmpty("prediluted")) {
      titration = titration.prediluted(line.number("prediluted"));
    }
    if (!line.isEmpty("into")) {
      titration = titration.into(mL(line, "into"));
    }
    if (!line.isEmpty("temperature")) {
      titration = titration.at(celsius(line, "temperature"));
    }
    if (!line.isEmpty("slope")) {
      titration =
          titration.slopeAtEndPoint(
              BufferCapacity.ofMilliequivalentsPerLitrePerPH(line.number("slope")));
    }
    return titration.took(
        Arrays.stream(line.text("titres").split("; "))
            .map(text -> Volume.ofMillilitres(Double.parseDouble(text)))
            .toArray(Volume[]::new));
  }

  private static void determination(FrozenFigures.Of of, CsvTable.Line line) {
    SampleTitration titration = titration(line);
    if (line.text("result").equals("acidity")) {
      of.attempt("acidity", titration::acidity, result -> acidity(of, result));
    } else {
      of.attempt("alkalinity", titration::alkalinity, result -> alkalinity(of, "", result));
    }
  }

  private static void acidity(FrozenFigures.Of of, AcidityResult result) {
    PH endPoint = result.endPoint();
    known(of, "titratable acidity", "mEq/L", result.budget().traced());
    Answer<TitratableAcidity> lactic = result.as(Acid.LACTIC);
    known(of, "acidity as lactic acid", "g/L", lactic.traced());
    known(
        of,
        "acidity for 100 mL",
        "g",
        lactic.in(Scales.acidityPer100MillilitresAs(Acid.LACTIC, endPoint)).traced());
    Density density = Density.ofGramsPerMillilitre(1.01);
    known(
        of,
        "acidity for 100 g",
        "g",
        lactic.in(Scales.acidityPer100GramsAs(Acid.LACTIC, density, endPoint)).traced());
    known(of, "acidity as citric acid", "g/L", result.as(Acid.CITRIC).traced());
    of.number("relative difference of replicates", "", result.relativeDifference());
    of.number("repeatability limit", "mEq/L", result.repeatabilityLimit(), r -> r.value());
    budget(of, "acidity", result.budget());
    monteCarlo(of, "acidity", result.model().monteCarlo(DRAWS, SEED));
    findings(of, "findings", result.notices());
  }

  private static void alkalinity(FrozenFigures.Of of, String by, AlkalinityResult result) {
    known(of, "alkalinity" + by, "mEq/L", result.budget().traced());
    known(of, "alkalinity as CaCO3" + by, "mg/L", result.asCaCO3().traced());
    of.number("end point" + by, "", result.endPoint().value());
    of.number("repeatability limit" + by, "mEq/L", result.repeatabilityLimit(), r -> r.value());
    of.number(
        "slope at the end point" + by,
        "mEq/L per pH",
        result.slopeAtEndPoint(),
        BufferCapacity::inMilliequivalentsPerLitrePerPH);
    budget(of, "alkalinity" + by, result.budget());
    monteCarlo(of, "alkalinity" + by, result.model().monteCarlo(DRAWS, SEED));
    findings(of, "findings" + by, result.notices());
  }

  private static void lowAlkalinity(FrozenFigures.Of of, CsvTable.Line line) {
    of.attempt(
        "two end points",
        () ->
            Titrant.hydrochloricAcid()
                .of(AmountConcentration.ofMolesPerLitre(line.number("concentration")))
                .titrate(mL(line, "sample"))
                .lowAlkalinity(
                    Reading.reading(mL(line, "first_volume"), pH(line, "first_pH")),
                    Reading.reading(mL(line, "second_volume"), pH(line, "second_pH"))),
        result -> alkalinity(of, " by two end points", result));
  }

  private static void split(FrozenFigures.Of of, AlkalinitySplit split) {
    of.number("hydroxide", "mEq/L", split.hydroxide().number());
    of.number("carbonate", "mEq/L", split.carbonate().number());
    of.number("bicarbonate", "mEq/L", split.bicarbonate().number());
  }

  private static void calibration(FrozenFigures.Of of, CsvTable.Line line) {
    CalibrationReading[] readings =
        Arrays.stream(line.text("readings").split("; "))
            .map(text -> text.split(" "))
            .map(
                pair ->
                    CalibrationReading.of(
                        Named.primaryBuffer(pair[0]),
                        ElectricPotential.ofMillivolts(Double.parseDouble(pair[1]))))
            .toArray(CalibrationReading[]::new);
    of.attempt(
        "calibration",
        () -> ElectrodeCalibration.of(celsius(line, "bath"), readings),
        electrode -> {
          Temperature sample = celsius(line, "sample_temperature");
          of.number("slope", "mV", electrode.slopePotential().inMillivolts());
          of.number("slope of Nernst's", "", electrode.slope().value());
          of.number("offset", "mV", electrode.offset().number());
          double[] deviations = electrode.deviations();
          for (int i = 0; i < deviations.length; i++) {
            of.number("deviation of buffer " + (i + 1), "", deviations[i]);
          }
          of.number(
              "pH of 95 mV in the sample",
              "",
              electrode.pH(ElectricPotential.ofMillivolts(95), sample).value());
          of.number(
              "potential of pH 5.2 in the sample",
              "mV",
              electrode.potential(PH.of(5.2), sample).inMillivolts());
          of.text("covers pH 5.2", electrode.covers(PH.of(5.2)));
          of.text("fit for use", electrode.isFitForUse());
          findings(of, "findings", electrode.notices());
        });
  }

  private static void residue(FrozenFigures.Of of, CsvTable.Line line) {
    MassConcentration left = MassConcentration.ofMilligramsPerLitre(line.number("carbon_dioxide"));
    double bias =
        Solution.at(celsius(line, "temperature"))
            .acidityOfCarbonDioxide(left, pH(line, "end_point"))
            .inMilliequivalentsPerLitre();
    of.number(
        "equivalents per mole",
        "",
        bias / AmountConcentration.from(left, Acid.CARBONIC.molarMass()).inMillimolesPerLitre());
    of.number("bias of the acidity", "mEq/L", bias);
  }

  /** Returns the log of an input, for the measured buffers too. */
  static TitrationLog log(String id) {
    return log(CsvTable.read("frozen/logs.csv", 21).only("id", id));
  }

  private static TitrationLog log(CsvTable.Line line) {
    List<CsvTable.Line> readings =
        CsvTable.read("frozen/log-readings.csv", 632).where("log", line.text("id"));
    return titrant(line)
        .titrate(mL(line, "sample"))
        .to(pH(line, "end_point"))
        .at(celsius(line, "temperature"))
        .log(
            readings.stream().mapToDouble(reading -> reading.number("volume")).toArray(),
            readings.stream().mapToDouble(reading -> reading.number("pH")).toArray());
  }

  private static void logs(FrozenFigures figures) {
    for (CsvTable.Line line : CsvTable.read("frozen/logs.csv", 21).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      TitrationLog log = log(line);
      findings(of, "findings of the log", log.notices());
      of.number(
          "volume to the end point",
          "mL",
          log.volumeTo(pH(line, "end_point")),
          Volume::inMillilitres);
      switch (line.text("result")) {
        case "acidity" -> of.attempt("acidity", log::acidity, result -> acidity(of, result));
        case "alkalinity" -> alkalinityCurve(of, log);
        case "weak acid" -> weakAcid(of, log);
        case "acid leg" -> {}
        default -> throw new IllegalStateException(line.text("result"));
      }
    }
  }

  private static void alkalinityCurve(FrozenFigures.Of of, TitrationLog log) {
    AlkalinityCurve curve = log.alkalinityCurve();
    of.attempt(
        "fixed end point",
        () -> curve.to(PH.of(4.5)),
        result -> alkalinity(of, " to pH 4.5", result));
    of.attempt(
        "fitting end point",
        curve::toFittingEndPoint,
        result -> alkalinity(of, " to the fitting end point", result));
    of.attempt(
        "inflection", curve::toInflection, result -> alkalinity(of, " to the inflection", result));
    of.attempt("Gran", curve::byGran, result -> alkalinity(of, " by Gran", result));
    of.attempt("split", curve::split, split -> split(of, split));
    of.attempt(
        "fit of carbonate",
        () ->
            CurveFit.of(
                    Solution.at(log.titration().temperature()),
                    log.titration().titrant().solution(log.titration().temperature()))
                .unknownInertCharge()
                .unknownTotal(Component.CARBONATE)
                .to(log),
        fit -> {
          known(of, "fitted carbonate", "", fit.total(Component.CARBONATE).traced());
          known(of, "fitted inert charge", "", fit.inertCharge().traced());
          fit(of, fit);
        });
  }

  private static void weakAcid(FrozenFigures.Of of, TitrationLog log) {
    of.attempt(
        "weak acid",
        () -> WeakAcidCurve.of(log, Chemistry.standard()),
        curve -> {
          known(of, "equivalence volume", "mL", curve.equivalenceVolume().traced());
          known(of, "concentration", "mol/L", curve.concentration().traced());
          known(of, "pKa", "", curve.pKa().traced());
          fit(of, curve.fit());
        });
  }

  private static void fit(FrozenFigures.Of of, CurveFit fit) {
    of.number("standard deviation of the fit", "", fit.standardDeviation());
    of.number("pH of the fitted sample", "", fit.solution().pH().value());
    findings(of, "findings of the fit", fit.notices());
  }
}
