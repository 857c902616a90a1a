package org.brewchem.checks.frozen;

import org.brewchem.checks.CsvTable;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.ResidualAlkalinity;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Equilibrium;
import org.brewchem.substance.Acid;
import org.brewchem.water.Acidification;
import org.brewchem.water.IonBalance;
import org.brewchem.water.WaterAnalysis;
import org.brewchem.water.WaterFinding;

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
          water -> {
            minerals(of, water);
            findings(of, water);
            carbonate(of, water);
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

  static WaterAnalysis water(String id) {
    return water(waters().only("id", id));
  }

  private static WaterAnalysis water(CsvTable.Line line) {
    WaterAnalysis.Builder water = WaterAnalysis.reported();
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

  private static void ion(WaterAnalysis.Builder water, CsvTable.Line line, String column) {
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

  private static void ions(FrozenFigures.Of of, WaterAnalysis water) {
    of.number("calcium", "mg/L", water.calcium(), MassConcentration::inMilligramsPerLitre);
    of.number("magnesium", "mg/L", water.magnesium(), MassConcentration::inMilligramsPerLitre);
    of.number("sodium", "mg/L", water.sodium(), MassConcentration::inMilligramsPerLitre);
    of.number("potassium", "mg/L", water.potassium(), MassConcentration::inMilligramsPerLitre);
    of.number("sulfate", "mg/L", water.sulfate(), MassConcentration::inMilligramsPerLitre);
    of.number("chloride", "mg/L", water.chloride(), MassConcentration::inMilligramsPerLitre);
    of.number("nitrate", "mg/L", water.nitrate(), MassConcentration::inMilligramsPerLitre);
  }

  private static void alkalinities(FrozenFigures.Of of, WaterAnalysis water) {
    of.number(
        "carbonate alkalinity",
        "mEq/L",
        water.alkalinity(),
        CarbonateAlkalinity::inMilliequivalentsPerLitre);
    of.number(
        "residual alkalinity",
        "mEq/L",
        water.residualAlkalinity(),
        ResidualAlkalinity::inMilliequivalentsPerLitre);
  }

  private static void sulfateToChloride(FrozenFigures.Of of, WaterAnalysis water) {
    of.number("sulfate to chloride by mass", "", water.sulfateToChloride().byMass(), x -> x);
    of.number(
        "sulfate to chloride by equivalents",
        "",
        water.sulfateToChloride().byEquivalents(),
        x -> x);
  }

  private static void minerals(FrozenFigures.Of of, WaterAnalysis water) {
    ions(of, water);
    alkalinities(of, water);
    sulfateToChloride(of, water);
    of.number(
        "calcium hardness", "mEq/L", water.calciumHardness(), Hardness::inMilliequivalentsPerLitre);
    of.number(
        "magnesium hardness",
        "mEq/L",
        water.magnesiumHardness(),
        Hardness::inMilliequivalentsPerLitre);
    of.number(
        "total hardness", "mEq/L", water.totalHardness(), Hardness::inMilliequivalentsPerLitre);
    of.number(
        "temporary hardness",
        "mEq/L",
        water.temporaryHardness(),
        Hardness::inMilliequivalentsPerLitre);
    of.number(
        "permanent hardness",
        "mEq/L",
        water.permanentHardness(),
        Hardness::inMilliequivalentsPerLitre);
    of.number(
        "calcium part of residual alkalinity",
        "mEq/L",
        water.kolbach(),
        kolbach -> kolbach.calciumPart().inMilliequivalentsPerLitre());
    of.number(
        "magnesium part of residual alkalinity",
        "mEq/L",
        water.kolbach(),
        kolbach -> kolbach.magnesiumPart().inMilliequivalentsPerLitre());
  }

  private static void findings(FrozenFigures.Of of, WaterAnalysis water) {
    IonBalance balance = water.ionBalance();
    of.number("sum of cations", "mEq/L", balance.cationSum().inMilliequivalentsPerLitre());
    of.number("sum of anions", "mEq/L", balance.anionSum().inMilliequivalentsPerLitre());
    of.number("cations less anions", "mEq/L", balance.difference().inMilliequivalentsPerLitre());
    of.number("ion balance of the sum", "%", balance.percentage());
    of.number("ion balance of the mean", "%", balance.percentageOfMean());
    of.text("ion balance", balance.verdict());
    of.number("ions missing", "", water.missing().size());
    of.text("findings", water.findings().stream().map(WaterFinding::kind).toList());
  }

  private static void carbonate(FrozenFigures.Of of, WaterAnalysis water) {
    of.attempt(
        "carbon dioxide",
        water::totalCarbonDioxide,
        total ->
            of.number(
                "total carbon dioxide", "mmol/L", total, amount -> amount.inMillimolesPerLitre()));
    for (double celsius : CELSIUS) {
      Temperature temperature = Temperature.ofCelsius(celsius);
      String at = " at " + celsius + " °C";
      of.attempt(
          "solution" + at,
          () -> water.toSolution(temperature),
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
          () -> water.titrationAlkalinity(END_POINT, temperature),
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
        () -> {
          WaterAnalysis water = water(line.text("water"));
          return Named.SALTS.containsKey(added)
              ? water.with(Named.salt(added), concentration)
              : water.with(Named.base(added), concentration);
        },
        after -> {
          ions(of, after);
          alkalinities(of, after);
          sulfateToChloride(of, after);
          of.number("pH", "", after.pH(), PH::value);
        });
  }

  private static void mixture(FrozenFigures.Of of, CsvTable.Line line) {
    of.attempt(
        "mixture",
        () ->
            water(line.text("first"))
                .mixed(
                    Volume.ofHectolitres(line.number("first_volume")),
                    water(line.text("second")),
                    Volume.ofHectolitres(line.number("second_volume"))),
        mixed -> {
          ions(of, mixed);
          alkalinities(of, mixed);
          sulfateToChloride(of, mixed);
          of.number("pH", "", mixed.pH(), PH::value);
          WaterAnalysis diluted = mixed.diluted(line.number("dilution"));
          of.number(
              "calcium when diluted",
              "mg/L",
              diluted.calcium(),
              MassConcentration::inMilligramsPerLitre);
          of.number(
              "residual alkalinity when diluted",
              "mEq/L",
              diluted.residualAlkalinity(),
              ResidualAlkalinity::inMilliequivalentsPerLitre);
          of.number("pH when diluted", "", diluted.pH(), PH::value);
        });
  }

  private static Acidification dose(CsvTable.Line line) {
    WaterAnalysis water = water(line.text("water"));
    Acid acid = Named.acid(line.text("acid"));
    double value = line.number("value");
    Temperature temperature = Temperature.ofCelsius(line.number("temperature"));
    return switch (line.text("target")) {
      case "pH" -> water.acidDose(acid, PH.of(value), temperature);
      case "carbonate alkalinity" ->
          water.acidDose(acid, CarbonateAlkalinity.ofMilliequivalentsPerLitre(value), temperature);
      case "titration alkalinity" ->
          water.acidDose(
              acid, TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(value, END_POINT), temperature);
      case "residual alkalinity" ->
          water.acidDose(acid, ResidualAlkalinity.ofMilligramsPerLitreAsCaCO3(value), temperature);
      default -> throw new IllegalStateException(line.text("target"));
    };
  }

  private static void dose(FrozenFigures.Of of, CsvTable.Line line, Acidification dose) {
    Volume volume = Volume.ofHectolitres(20);
    of.number("acid", "mmol/L", dose.amount().inMillimolesPerLitre());
    of.number("acid by mass", "mg/L", dose.concentration().inMilligramsPerLitre());
    of.number("equivalents", "mEq/L", dose.equivalents().inMilliequivalentsPerLitre());
    of.number("equivalents per mole", "", dose.effectiveEquivalents());
    of.number("equivalents per mole to pH 4.3", "", dose.effectiveEquivalents(PH.of(4.3)));
    of.number("pure acid into 20 hL", "g", dose.into(volume).inGrams());
    if (!line.isEmpty("reagent")) {
      of.attempt(
          "reagent",
          () -> dose.into(volume, FrozenSubstances.reagent(line.text("reagent"))),
          reagent -> of.number("reagent into 20 hL", "mL", reagent.inMillilitres()));
    }
    of.number("pH after", "", dose.pH().value());
    of.number(
        "carbonate alkalinity after",
        "mEq/L",
        dose.carbonateAlkalinity().inMilliequivalentsPerLitre());
    of.number(
        "alkalinity to pH 4.5 after",
        "mEq/L",
        dose.titrationAlkalinity(END_POINT).inMilliequivalentsPerLitre());
    of.number(
        "residual alkalinity after",
        "mEq/L",
        dose.residualAlkalinity(),
        ResidualAlkalinity::inMilliequivalentsPerLitre);
    of.number("anion of the acid", "mg/L", dose.anion(), MassConcentration::inMilligramsPerLitre);
    of.number("sulfate after", "mg/L", dose.sulfate(), MassConcentration::inMilligramsPerLitre);
    of.number("chloride after", "mg/L", dose.chloride(), MassConcentration::inMilligramsPerLitre);
    of.number("sulfate to chloride after", "", dose.sulfateToChloride().byMass(), x -> x);
    of.number("remarks", "", dose.remarks().size());
    of.number("cautions", "", dose.cautions().size());
  }
}
