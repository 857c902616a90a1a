package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.water.Constituent;
import org.brewchem.water.Water;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;

/** Hardness, residual alkalinity and ion balance of water analyses. */
public final class BrewingWaters {

  private static final Pattern CLASSIC =
      Pattern.compile(
          "GH ([0-9.]+); KH ([0-9.]+); NKH ([0-9.]+); Ca ([0-9.]+); Mg ([0-9.]+); RA ([0-9.]+)");

  private BrewingWaters() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "classic-waters",
            Suite.PUBLISHED,
            "Hardness and residual alkalinity of the classic waters",
            new Source(
                "narziss-kunze",
                "Narziss, Abriss der Bierbrauerei / Kunze, Technology Brewing & Malting (classic"
                    + " table)"),
            "total and permanent hardness and Kolbach's residual alkalinity of an analysis that"
                + " holds the calcium, magnesium and bicarbonate of the table",
            Tolerance.halfOfLastDigit("°dH", "as printed"),
            "the other classic waters of the books, whose figures are not at hand",
            6,
            BrewingWaters::classicWaters),
        new ReferenceCheck(
            "sour-threshold",
            Suite.PUBLISHED,
            "pH at the threshold of sourness",
            new Source(
                "li-liu-2015",
                "H. Li & F. Liu, The chemistry of sour taste and the strategy to reduce the sour"
                    + " taste of beer, Food Chem. 185 (2015) 200"),
            "pH of 0.575 mmol/L of a strong acid in water, level ideal",
            Tolerance.halfOfLastDigit("pH", "as printed"),
            "",
            1,
            () ->
                List.of(
                    Row.ofPrinted(
                        "0.575 mmol/L",
                        "3.24",
                        Textbook.in(1000).with(Acid.HYDROCHLORIC, 0.575).pH(),
                        CsvTable.read("residual-alkalinity-and-beer.csv", 28)
                            .only("item", "beer sourness threshold")
                            .howKnown()))),
        new ReferenceCheck(
            "ion-balance",
            Suite.IDENTITY,
            "Ion balance by its two formulas",
            new Source(
                "sm-1030",
                "Standard Methods 1030 E; DIN 38402-62, whose percentage is twice as large"),
            "percentages of an invented water of 5.1 mEq/L cations and 5.0 mEq/L anions",
            Tolerance.absolute(1e-9, "%", "arithmetic"),
            "",
            2,
            BrewingWaters::ionBalance),
        new ReferenceCheck(
            "din-ion-balance",
            Suite.PUBLISHED,
            "Ion balance of a worked example",
            new Source("din-38402-62", "E DIN 38402-62:2013-10, annex A, retold"),
            "sums and difference, in both forms, of a report that states what the example does, in"
                + " mmol/L, with iron, manganese and the acid capacity",
            Tolerance.halfOfLastDigit("", "as printed"),
            "the example's balance with complexes, whose set is not known",
            4,
            BrewingWaters::workedExample));
  }

  private static List<Row> classicWaters() {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("residual-alkalinity-and-beer.csv", 28).lines()) {
      Matcher figures = CLASSIC.matcher(row.text("value"));
      if (figures.matches()) {
        Water water = water(number(figures, 2), number(figures, 4), number(figures, 5));
        String name = row.text("item");
        rows.add(
            Row.ofPrinted(
                name + ", total hardness",
                figures.group(1),
                water.totalHardness().value().inGermanDegrees(),
                row.howKnown()));
        rows.add(
            Row.ofPrinted(
                name + ", permanent hardness",
                figures.group(3),
                water.permanentHardness().value().inGermanDegrees(),
                row.howKnown()));
        rows.add(
            Row.ofPrinted(
                name + ", residual alkalinity",
                figures.group(6),
                water.residualAlkalinity().value().inGermanDegrees(),
                row.howKnown()));
      }
    }
    return rows;
  }

  private static double number(Matcher matcher, int group) {
    return Double.parseDouble(matcher.group(group));
  }

  /** A water of so many German degrees of alkalinity, calcium and magnesium. */
  private static Water water(double alkalinity, double calcium, double magnesium) {
    double bicarbonate =
        CarbonateAlkalinity.ofGermanDegrees(alkalinity).inMilligramsPerLitreAsBicarbonate();
    return WaterReport.reported()
        .calcium(of(Ion.CALCIUM, Hardness.ofGermanDegrees(calcium).inMillimolesPerLitre()))
        .magnesium(of(Ion.MAGNESIUM, Hardness.ofGermanDegrees(magnesium).inMillimolesPerLitre()))
        .bicarbonate(MassConcentration.ofMilligramsPerLitre(bicarbonate))
        .build()
        .water();
  }

  private static List<Row> ionBalance() {
    Water water =
        WaterReport.reported()
            .calcium(of(Ion.CALCIUM, 1.5))
            .magnesium(of(Ion.MAGNESIUM, 0.5))
            .sodium(of(Ion.SODIUM, 1.1))
            .bicarbonate(of(Ion.BICARBONATE, 3))
            .chloride(of(Ion.CHLORIDE, 1))
            .sulfate(of(Ion.SULFATE, 0.5))
            .build()
            .water();
    return List.of(
        Row.of(
            "of the sum",
            100 * (5.1 - 5.0) / (5.1 + 5.0),
            water.ionBalance().number(),
            HowKnown.COMPUTED),
        Row.of(
            "of the mean",
            100 * (5.1 - 5.0) / (0.5 * (5.1 + 5.0)),
            water.answer(WaterFigures.ION_BALANCE_OF_MEAN).number(),
            HowKnown.COMPUTED));
  }

  private static List<Row> workedExample() {
    CsvTable table = CsvTable.read("ion-balance.csv", 14);
    Water water =
        WaterReport.reported()
            .concentration(Constituent.CALCIUM, amount(table, "calcium"))
            .concentration(Constituent.MAGNESIUM, amount(table, "magnesium"))
            .concentration(Constituent.SODIUM, amount(table, "sodium"))
            .concentration(Constituent.POTASSIUM, amount(table, "potassium"))
            .concentration(Constituent.IRON, amount(table, "iron(II)"))
            .concentration(Constituent.MANGANESE, amount(table, "manganese(II)"))
            .concentration(Constituent.NITRATE, amount(table, "nitrate"))
            .concentration(Constituent.CHLORIDE, amount(table, "chloride"))
            .concentration(Constituent.SULFATE, amount(table, "sulfate"))
            .acidCapacity(amount(table, "acid capacity to pH 4.3"))
            .build()
            .water();
    return List.of(
        printed(table, "sum of cations", water.answer(WaterFigures.SUM_OF_CATIONS).number()),
        printed(table, "sum of anions", water.answer(WaterFigures.SUM_OF_ANIONS).number()),
        printed(
            table,
            "difference of the mean",
            water.answer(WaterFigures.ION_BALANCE_OF_MEAN).number()),
        printed(table, "difference of the sum", water.ionBalance().number()));
  }

  private static AmountConcentration amount(CsvTable table, String item) {
    return AmountConcentration.ofMillimolesPerLitre(table.only("item", item).number("value"));
  }

  private static Row printed(CsvTable table, String item, double computed) {
    CsvTable.Line line = table.only("item", item);
    return Row.ofPrinted(item, line.text("value"), computed, line.howKnown());
  }

  private static MassConcentration of(Ion ion, double millimolesPerLitre) {
    return AmountConcentration.ofMillimolesPerLitre(millimolesPerLitre).times(ion.molarMass());
  }
}
