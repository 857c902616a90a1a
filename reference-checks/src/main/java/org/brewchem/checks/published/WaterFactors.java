package org.brewchem.checks.published;

import java.util.List;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Formula;
import org.brewchem.substance.Reagent;

/** Units of hardness and alkalinity and the factors that laboratories use with them. */
public final class WaterFactors {

  private static final double CALCIUM = molarMass("Ca");
  private static final double MAGNESIUM = molarMass("Mg");

  private static final Tolerance FACTOR =
      Tolerance.relative(1e-4, "tables of atomic weights in use differ at 1e-5");

  private WaterFactors() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "hardness-units",
            Suite.IDENTITY,
            "Units of hardness and alkalinity",
            new Source(
                "water-unit-definitions",
                "definitions of the degrees (DIN 38409-6 and others) and molar masses of CIAAW"
                    + " 2021"),
            "one degree of each kind in the other units",
            Tolerance.halfOfLastDigit("", "values written with four or five digits"),
            "",
            13,
            WaterFactors::units),
        new ReferenceCheck(
            "sm-2340",
            Suite.PUBLISHED,
            "Hardness by calculation",
            new Source("sm-2340", "Standard Methods 2340 B"),
            "hardness as CaCO3 from calcium and magnesium",
            Tolerance.halfOfLastDigit("mg/L as CaCO3", "as printed"),
            "",
            3,
            WaterFactors::hardness),
        new ReferenceCheck(
            "usgs-alkalinity",
            Suite.PUBLISHED,
            "Factors of the alkalinity titration",
            new Source(
                "usgs-nfm-a6",
                "USGS National Field Manual, TWRI book 9, ch. A6 sec. 6.6 (Alkalinity/ANC), rev."
                    + " 9/2001"),
            "mg/L of CaCO3 and of bicarbonate per Eq/L; normality of a sodium carbonate solution and"
                + " of a sulfuric acid (96 %, 1.84 g/mL); bicarbonate that 1 mL of the former"
                + " answers to",
            Tolerance.halfOfLastDigit("", "as printed"),
            "",
            5,
            WaterFactors::fieldManual));
  }

  private static List<Row> units() {
    Hardness german = Hardness.ofGermanDegrees(1);
    CarbonateAlkalinity germanCarbonate = CarbonateAlkalinity.ofGermanDegrees(1);
    HowKnown seen = HowKnown.SEEN;
    HowKnown computed = HowKnown.COMPUTED;
    return List.of(
        Row.ofPrinted("1 German degree, mmol/L", "0.1783", german.inMillimolesPerLitre(), computed),
        Row.ofPrinted(
            "1 German degree, mEq/L", "0.35665", german.inMilliequivalentsPerLitre(), computed),
        Row.ofPrinted(
            "1 German degree, mg/L as CaCO3",
            "17.848",
            german.inMilligramsPerLitreAsCaCO3(),
            computed),
        Row.ofPrinted(
            "1 German degree, mg/L of Ca", "7.147", german.inMillimolesPerLitre() * CALCIUM, seen),
        Row.ofPrinted(
            "1 German degree, mg/L of Mg",
            "4.334",
            german.inMillimolesPerLitre() * MAGNESIUM,
            seen),
        Row.ofPrinted(
            "1 German degree of carbonate hardness, mg/L as HCO3-",
            "21.762",
            germanCarbonate.inMilligramsPerLitreAsBicarbonate(),
            computed),
        Row.ofPrinted(
            "1 French degree, mg/L as CaCO3",
            "10",
            Hardness.ofFrenchDegrees(1).inMilligramsPerLitreAsCaCO3(),
            seen),
        Row.ofPrinted(
            "1 US grain per gallon, mg/L as CaCO3",
            "17.118",
            Hardness.ofUsGrainsPerGallon(1).inMilligramsPerLitreAsCaCO3(),
            computed),
        Row.ofPrinted(
            "1 mEq/L, mg/L as CaCO3",
            "50.043",
            Hardness.ofMilliequivalentsPerLitre(1).inMilligramsPerLitreAsCaCO3(),
            computed),
        Row.ofPrinted(
            "1 mg/L as HCO3-, mg/L as CaCO3",
            "0.8202",
            CarbonateAlkalinity.ofMilligramsPerLitreAsBicarbonate(1).inMilligramsPerLitreAsCaCO3(),
            computed),
        Row.ofPrinted(
            "1 mg/L as CaCO3, mg/L as HCO3-",
            "1.2193",
            CarbonateAlkalinity.ofMilligramsPerLitreAsCaCO3(1).inMilligramsPerLitreAsBicarbonate(),
            computed),
        Row.of(
                "1 English degree, mg/L as CaCO3: one grain per imperial gallon",
                64.79891 / 4.54609,
                Hardness.ofEnglishDegrees(1).inMilligramsPerLitreAsCaCO3(),
                computed)
            .within(Tolerance.absolute(1e-9, "", "arithmetic")),
        Row.ofPrinted(
                "1 English degree as 7.19 mg/L, seen in print",
                "7.19",
                Hardness.ofEnglishDegrees(1).inMilligramsPerLitreAsCaCO3(),
                seen)
            .asNotReproduced());
  }

  private static List<Row> hardness() {
    HowKnown known = row("hardness factors").howKnown();
    return List.of(
        Row.ofPrinted("1 mg/L of calcium", "2.497", hardness(1, 0), known),
        Row.ofPrinted("1 mg/L of magnesium", "4.118", hardness(0, 1), known),
        Row.of("40 mg/L of calcium, 12 mg/L of magnesium", 149.296, hardness(40, 12), known)
            .within(
                Tolerance.absolute(
                    (40 + 12) * 0.0005,
                    "mg/L as CaCO3",
                    "the example multiplies 40 and 12 mg/L by factors rounded to three decimals:"
                        + " (40 + 12) x 0.0005")));
  }

  private static double hardness(double calcium, double magnesium) {
    return Hardness.ofMillimolesPerLitre(calcium / CALCIUM + magnesium / MAGNESIUM)
        .inMilligramsPerLitreAsCaCO3();
  }

  private static List<Row> fieldManual() {
    TitrationAlkalinity equivalent =
        TitrationAlkalinity.ofMilliequivalentsPerLitre(1000, TitrationAlkalinity.USUAL_END_POINT);
    TitrationAlkalinity oneMillilitre =
        TitrationAlkalinity.ofMilliequivalentsPerLitre(
            0.01639, TitrationAlkalinity.USUAL_END_POINT);
    HowKnown factors = row("alkalinity (hand calc.)").howKnown();
    HowKnown standard = row("titrant standardisation").howKnown();
    Reagent sulfuricAcid =
        Reagent.of(Acid.SULFURIC, MassFraction.ofMassPercent(96))
            .withDensity(Density.ofGramsPerMillilitre(1.84), 0);
    return List.of(
        Row.of("1 Eq/L, mg/L as CaCO3", 50044, equivalent.inMilligramsPerLitreAsCaCO3(), factors)
            .within(FACTOR),
        Row.of(
                "1 Eq/L, mg/L as HCO3-",
                61017,
                equivalent.inMilligramsPerLitreAsBicarbonate(),
                factors)
            .within(FACTOR),
        Row.ofPrinted(
            "0.8686 g/L of Na2CO3, Eq/L", "0.01639", 2 * 0.8686 / molarMass("Na2CO3"), standard),
        Row.ofPrinted(
            "1 mL of 0.01639 Eq/L, mg of HCO3-",
            "1.000",
            oneMillilitre.inMilligramsPerLitreAsBicarbonate(),
            standard),
        Row.ofPrinted(
            "0.5 mL/L of concentrated sulfuric acid, Eq/L",
            "0.018",
            2 * sulfuricAcid.amountIn(Volume.ofMillilitres(0.5)).inMoles(),
            row("titrant recipe").howKnown()));
  }

  private static CsvTable.Line row(String item) {
    return CsvTable.read("water.csv", 39).only("item", item);
  }

  private static double molarMass(String formula) {
    return Formula.parse(formula).molarMass().inGramsPerMole();
  }
}
