package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.AcidBasis;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.titration.Titrant;

/** Equivalent weights and conversion factors of acidities, through the library's conversions. */
public final class AcidityFactors {

  private static final PH END_POINT = PH.of(8.2);

  private static final Map<String, AcidBasis> BASES =
      Map.ofEntries(
          Map.entry("tartaric acid", Acid.TARTARIC),
          Map.entry("malic acid", Acid.MALIC),
          Map.entry("citric acid anhydrous", Acid.CITRIC),
          Map.entry("citric acid monohydrate", Acid.CITRIC_MONOHYDRATE),
          Map.entry("lactic acid", Acid.LACTIC),
          Map.entry("acetic acid", Acid.ACETIC),
          Map.entry("succinic acid", Acid.SUCCINIC),
          Map.entry("H2SO4", Acid.SULFURIC),
          Map.entry("citric", Acid.CITRIC),
          Map.entry("malic", Acid.MALIC),
          Map.entry("tartaric", Acid.TARTARIC),
          Map.entry("lactic", Acid.LACTIC),
          Map.entry("acetic", Acid.ACETIC));

  private static final Source ATOMIC_WEIGHTS =
      new Source("ciaaw-2021", "molar mass / z with the conventional weights of CIAAW 2021");

  private static final Tolerance QUOTIENT =
      Tolerance.absolute(
          0.001, "", "the note's molar masses 60.05 and 150.09 differ by 3e-5 from those of 2021");

  private AcidityFactors() {}

  /** An acid as a source typed it, with its own equivalent weight. */
  private record TypedBasis(String name, double gramsPerEquivalent) implements AcidBasis {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "acid-equivalent-weights",
            Suite.IDENTITY,
            "Equivalent weights of acids",
            ATOMIC_WEIGHTS,
            "g/L of an acid that make 1 Eq/L of acidity",
            Tolerance.halfOfLastDigit("g/Eq", "values written with three decimals"),
            "",
            8,
            AcidityFactors::equivalentWeights),
        new ReferenceCheck(
            "acidity-conversions",
            Suite.IDENTITY,
            "Conversion factors between acid bases",
            new Source("ciaaw-2021", "ratio of equivalent weights, weights of CIAAW 2021"),
            "an acidity stated as one acid, read as another",
            Tolerance.halfOfLastDigit("g/g", "values written with four decimals"),
            "",
            20,
            AcidityFactors::conversions),
        new ReferenceCheck(
            "oiv-total-acidity",
            Suite.PUBLISHED,
            "Total acidity of wine",
            new Source(
                "oiv-as313-01",
                "OIV Compendium of International Methods of Wine and Must Analysis,"
                    + " OIV-MA-AS313-01 (Type I)"),
            "acidity in mEq/L from millilitres of alkali; the same as tartaric and sulfuric acid",
            Tolerance.halfOfLastDigit("", "as printed"),
            "",
            3,
            AcidityFactors::oiv),
        new ReferenceCheck(
            "enology-conversions",
            Suite.PUBLISHED,
            "Acidity conversions of enology",
            new Source(
                "ribereau-gayon",
                "Ribereau-Gayon et al., Handbook of Enology vol. 1 (conversion table)"),
            "acidity between mEq/L, tartaric and sulfuric acid; the printed 20.40 mEq/L for 1 g/L of"
                + " sulfuric acid is neither 1000/49.04 (20.39) nor 1/0.049 (20.41)",
            Tolerance.halfOfLastDigit("", "as printed"),
            "",
            6,
            AcidityFactors::enology),
        new ReferenceCheck(
            "awri-tn14",
            Suite.PUBLISHED,
            "Interconversion of acidity units",
            new Source(
                "awri-tn14",
                "Australian Wine Research Institute Technical Note TN14, Interconversion of acidity"
                    + " units"),
            "acidity between mEq/L, acetic, tartaric and sulfuric acid; the two ratios with the"
                + " molar masses that the note prints",
            Tolerance.halfOfLastDigit("", "as printed"),
            "",
            4,
            AcidityFactors::awri),
        new ReferenceCheck(
            "aoac-950-07",
            Suite.PUBLISHED,
            "Total acidity of beer",
            new Source(
                "aoac-950-07",
                "AOAC Official Method 950.07 Acidity (Total) of Beer, First Action 1950"),
            "15.00 mL of 0.1 mol/L alkali on 50 mL of beer as lactic acid, with the exact"
                + " equivalent of lactic acid: 2.702 g/L where the method's rounded factor of"
                + " 0.0090 g/mL gives 2.70 g/L",
            Tolerance.halfOfLastDigit("", "as printed"),
            "",
            5,
            AcidityFactors::beer),
        new ReferenceCheck(
            "aoac-930-35",
            Suite.PUBLISHED,
            "Acidity of vinegar as acetic acid",
            new Source("aoac-930-35", "AOAC 930.35J as cited"),
            "1 mL of 0.1 mol/L alkali on 1 mL",
            Tolerance.halfOfLastDigit("g/100 mL", "as printed"),
            "",
            1,
            () ->
                List.of(
                    Row.ofPrinted(
                        "1 mL on 1 mL",
                        "0.6",
                        titrated(1, 1).inGramsPer100MillilitresAs(Acid.ACETIC),
                        row("vinegar as acetic").howKnown()))),
        new ReferenceCheck(
            "usda-milliequivalents",
            Suite.PUBLISHED,
            "Milliequivalent factors of acids",
            new Source("usda-milliequivalents", "USDA / extension tables"),
            "g of an acid that make 1 mEq of acidity",
            Tolerance.halfOfLastDigit("g/mEq", "as printed"),
            "",
            5,
            AcidityFactors::milliequivalents));
  }

  private static List<Row> equivalentWeights() {
    String prefix = "equivalent weight ";
    return startingWith(prefix).stream()
        .map(
            row -> {
              String acid = row.text("item").substring(prefix.length());
              return Row.ofPrinted(
                  acid,
                  row.text("value"),
                  acidity(1000).inGramsPerLitreAs(basis(acid)),
                  row.howKnown());
            })
        .toList();
  }

  private static List<Row> conversions() {
    String prefix = "TA as ";
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : startingWith(prefix)) {
      if (row.howKnown() == HowKnown.COMPUTED) {
        String[] pair = row.text("item").substring(prefix.length()).split(" -> as ", 2);
        rows.add(
            Row.ofPrinted(
                row.text("item"),
                row.text("value"),
                TitratableAcidity.ofGramsPerLitreAs(1, basis(pair[0]), END_POINT)
                    .inGramsPerLitreAs(basis(pair[1])),
                row.howKnown()));
      }
    }
    return rows;
  }

  private static List<Row> oiv() {
    return List.of(
        Row.ofPrinted(
            "1 mL of 0.1 mol/L alkali on 10 mL, mEq/L",
            "10",
            titrated(1, 10).inMilliequivalentsPerLitre(),
            row("total acidity formula").howKnown()),
        Row.ofPrinted(
            "1 mEq/L, g/L as tartaric acid",
            "0.075",
            acidity(1).inGramsPerLitreAs(Acid.TARTARIC),
            row("total acidity as tartaric").howKnown()),
        Row.ofPrinted(
            "1 mEq/L, g/L as sulfuric acid",
            "0.049",
            acidity(1).inGramsPerLitreAs(Acid.SULFURIC),
            row("total acidity as sulfuric").howKnown()));
  }

  private static List<Row> enology() {
    TitratableAcidity asSulfuric = TitratableAcidity.ofGramsPerLitreAs(1, Acid.SULFURIC, END_POINT);
    TitratableAcidity asTartaric = TitratableAcidity.ofGramsPerLitreAs(1, Acid.TARTARIC, END_POINT);
    return List.of(
        printed("mEq/L -> g/L H2SO4", acidity(1).inGramsPerLitreAs(Acid.SULFURIC)),
        printed("mEq/L -> g/L tartaric", acidity(1).inGramsPerLitreAs(Acid.TARTARIC)),
        printed("g/L H2SO4 -> mEq/L", asSulfuric.inMilliequivalentsPerLitre()).asNotReproduced(),
        printed("g/L H2SO4 -> g/L tartaric", asSulfuric.inGramsPerLitreAs(Acid.TARTARIC)),
        printed("g/L tartaric -> mEq/L", asTartaric.inMilliequivalentsPerLitre()),
        printed("g/L tartaric -> g/L H2SO4", asTartaric.inGramsPerLitreAs(Acid.SULFURIC)));
  }

  private static List<Row> awri() {
    AcidBasis acetic = new TypedBasis("acetic acid", 60.05);
    AcidBasis tartaric = new TypedBasis("tartaric acid", 150.09 / 2);
    AcidBasis sulfuric = new TypedBasis("sulfuric acid", 98.08 / 2);
    return List.of(
        printed(
            "VA as acetic -> as sulfuric",
            TitratableAcidity.ofGramsPerLitreAs(1, acetic, END_POINT).inGramsPerLitreAs(sulfuric)),
        printed(
            "TA as tartaric -> as sulfuric",
            TitratableAcidity.ofGramsPerLitreAs(1, tartaric, END_POINT)
                .inGramsPerLitreAs(sulfuric)),
        quotient("VA as acetic -> mEq/L", Acid.ACETIC),
        quotient("TA as tartaric -> mEq/L", Acid.TARTARIC));
  }

  private static Row quotient(String item, AcidBasis basis) {
    String[] parts = row(item).text("value").split("/", 2);
    return Row.of(
            item,
            Double.parseDouble(parts[0]) / Double.parseDouble(parts[1]),
            TitratableAcidity.ofGramsPerLitreAs(1, basis, END_POINT).inMilliequivalentsPerLitre(),
            row(item).howKnown())
        .within(QUOTIENT);
  }

  private static List<Row> beer() {
    HowKnown seen = row("beer acidity factor").howKnown();
    AcidBasis factorOfTheMethod = new TypedBasis("lactic acid", 90.0);
    return List.of(
        Row.ofPrinted(
            "1 mL of 0.1 mol/L alkali, g of lactic acid",
            "0.0090",
            titrated(1, 100).inGramsPer100MillilitresAs(Acid.LACTIC),
            seen),
        Row.ofPrinted(
            "15.00 mL on 50 mL, g of lactic acid",
            "0.135",
            titrated(15, 50).inGramsPer100MillilitresAs(Acid.LACTIC) / 2,
            seen),
        Row.ofPrinted(
            "15.00 mL on 50 mL, g/L as lactic acid",
            "2.70",
            titrated(15, 50).inGramsPerLitreAs(Acid.LACTIC),
            seen),
        Row.ofPrinted(
            "the same with the exact equivalent",
            "2.702",
            titrated(15, 50).inGramsPerLitreAs(Acid.LACTIC),
            HowKnown.COMPUTED),
        Row.ofPrinted(
            "15.00 mL on 50 mL of 1.010 g/mL, factor of the method, g/100 g",
            "0.2673",
            titrated(15, 50)
                .inGramsPer100GramsAs(factorOfTheMethod, Density.ofGramsPerMillilitre(1.010)),
            HowKnown.COMPUTED));
  }

  private static List<Row> milliequivalents() {
    String prefix = "milliequivalent factor ";
    return startingWith(prefix).stream()
        .map(
            row ->
                Row.ofPrinted(
                    row.text("item"),
                    row.text("value"),
                    acidity(1).inGramsPerLitreAs(basis(row.text("item").substring(23))),
                    row.howKnown()))
        .toList();
  }

  private static Row printed(String item, double computed) {
    CsvTable.Line row = row(item);
    return Row.ofPrinted(item, row.text("value"), computed, row.howKnown());
  }

  private static TitratableAcidity acidity(double milliequivalentsPerLitre) {
    return TitratableAcidity.ofMilliequivalentsPerLitre(milliequivalentsPerLitre, END_POINT);
  }

  private static TitratableAcidity titrated(double alkaliMillilitres, double sampleMillilitres) {
    return Titrant.sodiumHydroxide()
        .of(AmountConcentration.ofMolesPerLitre(0.1))
        .titrate(Volume.ofMillilitres(sampleMillilitres))
        .to(END_POINT)
        .took(Volume.ofMillilitres(alkaliMillilitres))
        .acidity()
        .value();
  }

  private static AcidBasis basis(String acid) {
    AcidBasis basis = BASES.get(acid);
    if (basis == null) {
      throw new IllegalStateException("titratable-acidity.csv: no acid \"" + acid + "\"");
    }
    return basis;
  }

  private static CsvTable.Line row(String item) {
    return table().only("item", item);
  }

  private static List<CsvTable.Line> startingWith(String prefix) {
    return table().lines().stream().filter(row -> row.text("item").startsWith(prefix)).toList();
  }

  private static CsvTable table() {
    return CsvTable.read("titratable-acidity.csv", 56);
  }
}
