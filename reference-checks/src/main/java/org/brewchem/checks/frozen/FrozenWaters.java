package org.brewchem.checks.frozen;

import java.util.Optional;
import org.brewchem.checks.CsvTable;
import org.brewchem.figure.Answer;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Equilibrium;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.Treatments;
import org.brewchem.water.Water;
import org.brewchem.water.WaterCode;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;

/** Water analyses, what is added to them, mixtures and acid doses. */
final class FrozenWaters {

  private static final PH END_POINT = PH.of(4.5);
  private static final double[] CELSIUS = {20, 65};

  private FrozenWaters() {}

  static void compute(FrozenFigures figures) {
    CsvTable waters = waters();
    for (CsvTable.Line line : waters.lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt(
          "analysis",
          () -> water(line),
          report -> {
            minerals(of, report.water());
            notices(of, report);
            carbonate(of, report.water());
          });
    }
    for (CsvTable.Line line : CsvTable.read("frozen/water-additions.csv", 36).lines()) {
      addition(figures.of(line.text("id")), line);
    }
    for (CsvTable.Line line : CsvTable.read("frozen/water-mixtures.csv", 15).lines()) {
      mixture(figures.of(line.text("id")), line);
    }
    for (CsvTable.Line line : CsvTable.read("frozen/water-doses.csv", 60).lines()) {
      FrozenFigures.Of of = figures.of(line.text("id"));
      of.attempt("dose", () -> dose(line), dose -> dose(of, line, dose));
    }
  }

  static CsvTable waters() {
    return CsvTable.read("frozen/waters.csv", 60);
  }

  static WaterReport water(String id) {
    return water(waters().only("id", id));
  }

  private static WaterReport water(CsvTable.Line line) {
    WaterReport.Builder water = WaterReport.reported();
    for (String column :
        new String[] {
          "calcium", "magnesium", "sodium", "potassium", "sulfate", "chloride", "nitrate"
        }) {
      if (!line.isEmpty(column)) {
        ion(water, line, column);
      }
    }
    if (!line.isEmpty("alkalinity")) {
      double alkalinity = line.number("alkalinity");
      switch (line.text("alkalinity_as")) {
        case "bicarbonate" -> water.bicarbonate(mgPerL(alkalinity));
        case "CaCO3" -> water.alkalinityAsCaCO3(mgPerL(alkalinity));
        case "titration" ->
            water.titrationAlkalinity(
                TitrationAlkalinity.ofMilliequivalentsPerLitre(alkalinity, END_POINT));
        default -> throw new IllegalStateException(line.text("alkalinity_as"));
      }
    }
    if (!line.isEmpty("pH")) {
      PH pH = PH.of(line.number("pH"));
      if (line.isEmpty("pH_temperature")) {
        water.pH(pH);
      } else {
        water.pH(pH, Temperature.ofCelsius(line.number("pH_temperature")));
      }
    }
    return water.build();
  }

  private static void ion(WaterReport.Builder water, CsvTable.Line line, String column) {
    MassConcentration stated = mgPerL(line.number(column));
    switch (column) {
      case "calcium" -> water.calcium(stated);
      case "magnesium" -> water.magnesium(stated);
      case "sodium" -> water.sodium(stated);
      case "potassium" -> water.potassium(stated);
      case "chloride" -> water.chloride(stated);
      case "sulfate" -> {
        if (line.text("sulfate_as").equals("sulfur")) {
          water.sulfateAsSulfur(stated);
        } else {
          water.sulfate(stated);
        }
      }
      case "nitrate" -> {
        if (line.text("nitrate_as").equals("nitrogen")) {
          water.nitrateAsNitrogen(stated);
        } else {
          water.nitrate(stated);
        }
      }
      default -> throw new IllegalStateException(column);
    }
  }

  private static MassConcentration mgPerL(double number) {
    return MassConcentration.ofMilligramsPerLitre(number);
  }

  private static void ions(FrozenFigures.Of of, Water water) {
    milligrams(of, "calcium", water.calcium());
    milligrams(of, "magnesium", water.magnesium());
    milligrams(of, "sodium", water.sodium());
    milligrams(of, "potassium", water.potassium());
    milligrams(of, "sulfate", water.sulfate());
    milligrams(of, "chloride", water.chloride());
    milligrams(of, "nitrate", water.nitrate());
  }

  private static void milligrams(
      FrozenFigures.Of of, String name, Answer<MassConcentration> answer) {
    of.number(name, "mg/L", answer.optional(), MassConcentration::inMilligramsPerLitre);
  }

  private static void alkalinities(FrozenFigures.Of of, Water water) {
    of.number(
        "carbonate alkalinity",
        "mEq/L",
        water.alkalinity().optional(),
        CarbonateAlkalinity::inMilliequivalentsPerLitre);
    of.number(
        "residual alkalinity",
        "mEq/L",
        water.residualAlkalinity().optional(),
        ResidualAlkalinity::inMilliequivalentsPerLitre);
  }

  private static void sulfateToChloride(FrozenFigures.Of of, Water water) {
    of.number("sulfate to chloride by mass", "", water.sulfateToChloride().optional(), x -> x);
    of.number(
        "sulfate to chloride by equivalents",
        "",
        water.answer(WaterFigures.SULFATE_TO_CHLORIDE_BY_EQUIVALENTS).optional(),
        x -> x);
  }

  private static void minerals(FrozenFigures.Of of, Water water) {
    ions(of, water);
    alkalinities(of, water);
    sulfateToChloride(of, water);
    hardness(of, "calcium hardness", water.calciumHardness());
    hardness(of, "magnesium hardness", water.magnesiumHardness());
    hardness(of, "total hardness", water.totalHardness());
    hardness(of, "temporary hardness", water.temporaryHardness());
    hardness(of, "permanent hardness", water.permanentHardness());
  }

  private static void hardness(FrozenFigures.Of of, String name, Answer<Hardness> answer) {
    of.number(name, "mEq/L", answer.optional(), Hardness::inMilliequivalentsPerLitre);
  }

  private static void notices(FrozenFigures.Of of, WaterReport report) {
    Water water = report.water();
    Optional<ChargeConcentration> cations = water.answer(WaterFigures.SUM_OF_CATIONS).optional();
    Optional<ChargeConcentration> anions = water.answer(WaterFigures.SUM_OF_ANIONS).optional();
    of.number("sum of cations", "mEq/L", cations, ChargeConcentration::inMilliequivalentsPerLitre);
    of.number("sum of anions", "mEq/L", anions, ChargeConcentration::inMilliequivalentsPerLitre);
    of.number(
        "cations less anions",
        "mEq/L",
        cations.flatMap(more -> anions.map(more::minus)),
        ChargeConcentration::inMilliequivalentsPerLitre);
    of.number("ion balance of the sum", "%", water.ionBalance().optional(), x -> x);
    of.number(
        "ion balance of the mean",
        "%",
        water.answer(WaterFigures.ION_BALANCE_OF_MEAN).optional(),
        x -> x);
    of.number("ions missing", "", report.missing().size());
    of.text(
        "findings",
        report.notices().stream().map(notice -> WaterCode.valueOf(notice.code().name())).toList());
  }

  private static void carbonate(FrozenFigures.Of of, Water water) {
    of.attempt(
        "carbon dioxide",
        () ->
            water.alkalinity().isStated()
                ? Optional.of(water.totalCarbonDioxide().value())
                : Optional.<AmountConcentration>empty(),
        total ->
            of.number(
                "total carbon dioxide",
                "mmol/L",
                total,
                AmountConcentration::inMillimolesPerLitre));
    for (double celsius : CELSIUS) {
      Temperature temperature = Temperature.ofCelsius(celsius);
      String at = " at " + celsius + " °C";
      of.attempt(
          "solution" + at,
          () -> water.at(temperature).solution(),
          solution -> {
            Equilibrium equilibrium = solution.equilibrium();
            of.number("pH" + at, "", equilibrium.pH().value());
            of.number(
                "ionic strength" + at,
                "mmol/kg",
                equilibrium.ionicStrength().inMillimolesPerKilogram());
          });
      of.attempt(
          "titrated alkalinity" + at,
          () -> water.at(temperature).titrationAlkalinity(END_POINT).value(),
          alkalinity ->
              of.number(
                  "alkalinity to pH 4.5" + at, "mEq/L", alkalinity.inMilliequivalentsPerLitre()));
    }
  }

  private static void addition(FrozenFigures.Of of, CsvTable.Line line) {
    String added = line.text("added");
    MassConcentration concentration = mgPerL(line.number("concentration"));
    of.attempt(
        "addition",
        () ->
            water(line.text("water"))
                .water()
                .after(
                    Named.SALTS.containsKey(added)
                        ? Treatments.salt(Named.salt(added), concentration)
                        : Treatments.base(Named.base(added), concentration)),
        after -> {
          ions(of, after);
          alkalinities(of, after);
          sulfateToChloride(of, after);
          of.number("pH", "", after.pH().optional(), PH::value);
        });
  }

  private static void mixture(FrozenFigures.Of of, CsvTable.Line line) {
    of.attempt(
        "mixture",
        () -> {
          Water first = water(line.text("first")).water();
          Water second = water(line.text("second")).water();
          return first.after(
              Treatments.blend(
                  Volume.ofHectolitres(line.number("first_volume")),
                  second.at(first.contents().temperature()),
                  Volume.ofHectolitres(line.number("second_volume"))));
        },
        mixed -> {
          ions(of, mixed);
          alkalinities(of, mixed);
          sulfateToChloride(of, mixed);
          of.number("pH", "", mixed.pH().optional(), PH::value);
          Water diluted =
              mixed.after(Treatments.dilution(VolumeRatio.of(line.number("dilution") - 1)));
          milligrams(of, "calcium when diluted", diluted.calcium());
          of.number(
              "residual alkalinity when diluted",
              "mEq/L",
              diluted.residualAlkalinity().optional(),
              ResidualAlkalinity::inMilliequivalentsPerLitre);
          of.number("pH when diluted", "", diluted.pH().optional(), PH::value);
        });
  }

  private static Dose<Water> dose(CsvTable.Line line) {
    double value = line.number("value");
    Water water =
        water(line.text("water")).water().at(Temperature.ofCelsius(line.number("temperature")));
    Dose.Request<Water> request = Dose.of(water, Named.acid(line.text("acid")));
    return switch (line.text("target")) {
      case "pH" -> request.to(PH.of(value));
      case "carbonate alkalinity" ->
          request.to(CarbonateAlkalinity.ofMilliequivalentsPerLitre(value));
      case "titration alkalinity" ->
          request.to(TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(value, END_POINT));
      case "residual alkalinity" ->
          request.to(
              WaterFigures.RESIDUAL_ALKALINITY,
              ResidualAlkalinity.ofMilligramsPerLitreAsCaCO3(value));
      default -> throw new IllegalStateException(line.text("target"));
    };
  }

  private static void dose(FrozenFigures.Of of, CsvTable.Line line, Dose<Water> dose) {
    Volume volume = Volume.ofHectolitres(20);
    Water after = dose.after();
    double millimoles = dose.perLitre().inMillimolesPerLitre();
    of.number("acid", "mmol/L", millimoles);
    of.number("acid by mass", "mg/L", 1000 * dose.into(Volume.ofLitres(1)).mass().inGrams());
    of.number("equivalents", "mEq/L", dose.delivered().number() * millimoles);
    of.number("equivalents per mole", "", dose.delivered().number());
    of.number("equivalents per mole to pH 4.3", "", dose.delivered(PH.of(4.3)).number());
    of.number("pure acid into 20 hL", "g", dose.into(volume).mass().inGrams());
    if (!line.isEmpty("reagent")) {
      of.attempt(
          "reagent",
          () -> {
            Reagent reagent = FrozenSubstances.reagent(line.text("reagent"));
            if (!reagent.compound().equals(Named.acid(line.text("acid")))) {
              throw new IllegalArgumentException("another acid");
            }
            return reagent.volumeOf(dose.perLitre().times(volume));
          },
          reagent -> of.number("reagent into 20 hL", "mL", reagent.inMillilitres()));
    }
    of.number("pH after", "", after.pH().number());
    of.number(
        "carbonate alkalinity after",
        "mEq/L",
        after.alkalinity().value().inMilliequivalentsPerLitre());
    of.number(
        "alkalinity to pH 4.5 after",
        "mEq/L",
        after.titrationAlkalinity(END_POINT).value().inMilliequivalentsPerLitre());
    of.number(
        "residual alkalinity after",
        "mEq/L",
        after.residualAlkalinity().optional(),
        ResidualAlkalinity::inMilliequivalentsPerLitre);
    milligrams(of, "sulfate after", after.sulfate());
    milligrams(of, "chloride after", after.chloride());
    of.number("sulfate to chloride after", "", after.sulfateToChloride().optional(), x -> x);
    of.number("cautions", "", dose.cautions().size());
  }
}
