package org.brewchem.checks.frozen;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.checks.CsvTable;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.MaltTitration;
import org.brewchem.mash.Mash;
import org.brewchem.mash.MashFigures;
import org.brewchem.mash.SourcedRange;
import org.brewchem.mash.WortBuffer;
import org.brewchem.mash.WortToBeer;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Interval;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/** Malts from jars, mashes, doses to a mash pH, what a reading teaches, ranges to the beer. */
final class FrozenMashes {

  private static final ChargeConcentration TENTH =
      ChargeConcentration.ofMilliequivalentsPerLitre(100);
  private static final double U_OF_PH = 0.05;
  private static final List<MaltKind> KINDS = List.of(MaltKind.values());

  private FrozenMashes() {}

  static void compute(FrozenFigures figures) {
    for (CsvTable.Line line : malts().lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt("malt", () -> malt(line), malt -> malt(of, "", malt));
    }
    for (CsvTable.Line line : CsvTable.read("frozen/mashes.csv", 24).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt("mash", () -> mash(line), mash -> mash(of, line, mash));
    }
  }

  private static CsvTable malts() {
    return CsvTable.read("frozen/malts.csv", 8);
  }

  private static Malt malt(CsvTable.Line line) {
    MaltTitration titration =
        MaltTitration.of("own " + line.text("id"), "invented", line.number("u_reading"));
    if (!line.isEmpty("with")) {
      titration =
          titration.mashedWith(
              malt(malts().only("id", line.text("with"))), MassFraction.ofMassPercent(50));
    }
    return titration
        .base(Volume.ofMillilitres(5), TENTH, PH.of(line.number("base")))
        .none(PH.of(line.number("none")))
        .acid(Volume.ofMillilitres(10), TENTH, PH.of(line.number("acid")))
        .malt();
  }

  private static void malt(FrozenFigures.Of of, String when, Malt malt) {
    answer(of, "pH of " + malt.name() + when, "", malt.pH());
    answer(of, "capacity of " + malt.name() + when, "mEq/(kg pH)", malt.bufferCapacity());
  }

  private static Mash mash(CsvTable.Line line) {
    Water water = line.isEmpty("calcium") ? Water.pure() : water(line);
    Map<Malt, Mass> masses = new LinkedHashMap<>();
    if (!line.isEmpty("malt")) {
      masses.put(malt(malts().only("id", line.text("malt"))), kilograms(line, "own"));
    }
    for (MaltKind kind : KINDS) {
      String column = kind.toString();
      if (!line.isEmpty(column)) {
        masses.put(Malt.assumed(kind), kilograms(line, column));
      }
    }
    Mash mash = Mash.of(Grist.of(masses), water, Volume.ofHectolitres(line.number("liquor")));
    double acid = line.number("acid");
    mash =
        mash.after(
            Treatments.solute(
                acid >= 0 ? Acid.HYDROCHLORIC : Base.SODIUM_HYDROXIDE,
                AmountConcentration.ofMillimolesPerLitre(Math.abs(acid))));
    return line.text("carbon_dioxide").equals("stays") ? mash.keepingCarbonDioxide() : mash;
  }

  private static Water water(CsvTable.Line line) {
    WaterReport.Builder report = WaterReport.reported();
    if (line.isEmpty("u_ions")) {
      report
          .calcium(stated(line, "calcium"))
          .magnesium(stated(line, "magnesium"))
          .sodium(stated(line, "sodium"))
          .sulfate(stated(line, "sulfate"))
          .chloride(stated(line, "chloride"))
          .alkalinityAsCaCO3(stated(line, "alkalinity"))
          .pH(PH.of(line.number("pH")));
    } else {
      report
          .calcium(stated(line, "calcium"), u(line, "calcium"))
          .magnesium(stated(line, "magnesium"), u(line, "magnesium"))
          .sodium(stated(line, "sodium"), u(line, "sodium"))
          .sulfate(stated(line, "sulfate"), u(line, "sulfate"))
          .chloride(stated(line, "chloride"), u(line, "chloride"))
          .alkalinityAsCaCO3(stated(line, "alkalinity"), u(line, "alkalinity"))
          .pH(PH.of(line.number("pH")), U_OF_PH);
    }
    return report.build().water();
  }

  private static MassConcentration stated(CsvTable.Line line, String column) {
    return MassConcentration.ofMilligramsPerLitre(line.number(column));
  }

  private static MassConcentration u(CsvTable.Line line, String column) {
    return stated(line, column).times(line.number("u_ions") / 100);
  }

  private static Mass kilograms(CsvTable.Line line, String column) {
    return Mass.ofKilograms(line.number(column));
  }

  private static void mash(FrozenFigures.Of of, CsvTable.Line line, Mash mash) {
    answer(of, "mash pH", "", mash.pH());
    answer(of, "pH of the mash at 65 degC", "", mash.hotPH(Temperature.ofCelsius(65)));
    answer(of, "pH that carbon dioxide makes", "", mash.riseOfPHByDegassing());
    answer(of, "acid set free", "mEq/L", mash.kolbachAcid());
    notices(of, "findings", mash.notices());
    of.attempt("interval", mash::interval, interval -> interval(of, interval));
    of.attempt(
        "dose",
        () ->
            mash.dose(FrozenSubstances.reagent("reagent 02"))
                .to(MashFigures.MASH_PH, PH.of(line.number("target"))),
        dose -> {
          answer(of, "dose", "mmol/L", dose.answer(Dose.AMOUNT));
          answer(of, "mash pH after the dose", "", dose.after().pH());
        });
    of.attempt(
        "reading",
        () -> mash.measured(PH.of(line.number("read")), line.number("u_read")),
        measured -> {
          answer(of, "mash pH expected of the brew", "", measured.expected());
          answer(of, "mash pH after the reading", "", measured.now().pH());
          measured.grist().malts().forEach(malt -> malt(of, " as learned", malt));
          notices(of, "findings of the reading", measured.notices());
        });
    of.attempt(
        "way to the beer",
        () -> WortToBeer.of(mash, MassFraction.ofMassPercent(12)),
        way -> {
          range(of, way.knockOutPH());
          range(of, way.beerPH());
          range(of, way.acid(Acid.LACTIC, PH.of(5.5), PH.of(5.1), WortBuffer.assumedAtKnockOut()));
        });
  }

  private static void interval(FrozenFigures.Of of, Interval interval) {
    of.number("interval from", "", interval.lower());
    of.number("interval to", "", interval.upper());
  }

  private static void range(FrozenFigures.Of of, SourcedRange range) {
    of.number(range.quantity() + " from", range.unit(), range.lower());
    of.number(range.quantity() + " to", range.unit(), range.upper());
  }

  private static void notices(FrozenFigures.Of of, String name, List<Notice> notices) {
    of.text(name, notices.stream().map(notice -> (Enum<?>) notice.code()).distinct().toList());
  }

  private static void answer(FrozenFigures.Of of, String name, String unit, Answer<?> answer) {
    if (answer.isStated()) {
      of.uncertain(name, unit, answer.number(), answer.standardUncertainty());
    } else {
      of.text(name, "missing");
    }
  }
}
