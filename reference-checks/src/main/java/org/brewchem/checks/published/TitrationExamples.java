package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
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
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.titration.AlkalinitySplit;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.WeakAcidCurve;

/** Worked examples of textbooks, row by row through the kernel at level ideal. */
public final class TitrationExamples {

  private static final Source CHEMISTRY_2E =
      new Source("flowers", "Flowers et al., Chemistry 2e (OpenStax, CC BY)");
  private static final Source HARVEY =
      new Source("harvey-2000", "Harvey, Modern Analytical Chemistry (2000)");

  private static final Tolerance AS_PRINTED = Tolerance.halfOfLastDigit("", "as printed");

  private static final String ROUNDED_ON_THE_WAY = "some printed answers were rounded on the way";

  private static final String TEXTBOOK =
      "level ideal, the Ka printed with the exercise, pKw 14.00, volumes additive";

  private static final ConstantSet PRINTED =
      ConstantSet.empty("printed with the exercises")
          .withKa(Acid.ACETIC, 1.8e-5)
          .withKa(Acid.PHTHALIC, 1.1e-3, 3.9e-6)
          .withKa(Acid.CARBONIC, 4.3e-7, 4.7e-11);

  private static final Pattern CURVE =
      Pattern.compile(
          "([0-9.]+) mL of ([0-9.]+) mol/L (HCl|acetic acid \\(Ka 1\\.8e-5\\))"
              + " \\+ ([0-9.]+) mL of ([0-9.]+) mol/L NaOH");

  private TitrationExamples() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "chemistry-2e-curves",
            Suite.PUBLISHED,
            "Titration curves of hydrochloric and acetic acid",
            CHEMISTRY_2E,
            "pH of the mixture; " + TEXTBOOK,
            AS_PRINTED,
            "",
            46,
            () -> curves(CHEMISTRY_2E)),
        new ReferenceCheck(
            "chemistry-2e-curve-inverted",
            Suite.PUBLISHED,
            "Equivalence volume and pKa of acetic acid from its titration curve",
            CHEMISTRY_2E,
            "least squares through the 19 readings of the table, which are rounded to two decimals;"
                + " the expected pKa is that of the Ka printed with it; level ideal, pKw 14.00",
            Tolerance.absolute(0.02, "", "pKa from readings to 0.01 pH"),
            "",
            2,
            TitrationExamples::inverted),
        new ReferenceCheck(
            "p-and-m",
            Suite.PUBLISHED,
            "Hydroxide and carbonate from P and M alkalinity",
            new Source(
                "sm-2320", "classical P and M relations (Standard Methods 2320), teaching example"),
            "split of the two alkalinities of the example",
            AS_PRINTED,
            "the other four cases, which no worked example was found for",
            2,
            TitrationExamples::split),
        new ReferenceCheck(
            "harvey-curve",
            Suite.PUBLISHED,
            "Titration curve of hydrochloric acid",
            HARVEY,
            "pH of the mixture; the 12.50 at 30 mL is a misprint for 12.10, which the text of the"
                + " same page computes; "
                + TEXTBOOK,
            AS_PRINTED,
            "",
            15,
            () -> curves(HARVEY)),
        new ReferenceCheck(
            "harvey-equivalence",
            Suite.PUBLISHED,
            "Equivalence volume of acetic acid",
            new Source("harvey-2000", "Harvey (2000) p. 281"),
            "volume at which the computed curve is steepest; " + TEXTBOOK,
            AS_PRINTED,
            "",
            1,
            () -> List.of(row("T10", steepest()))),
        new ReferenceCheck(
            "chemistry-2e-buffers",
            Suite.PUBLISHED,
            "Buffers, salts and polyprotic acids",
            CHEMISTRY_2E,
            "pH, [H+], forms of phthalic acid, acetate needed for a pH; " + TEXTBOOK,
            AS_PRINTED,
            "",
            10,
            TitrationExamples::buffers),
        new ReferenceCheck(
            "chemistry-2e-stoichiometry",
            Suite.PUBLISHED,
            "Titrations to full equivalence",
            CHEMISTRY_2E,
            "amounts from the equivalents by definition of acids and bases",
            AS_PRINTED,
            "",
            4,
            TitrationExamples::stoichiometry),
        new ReferenceCheck(
            "van-slyke",
            Suite.IDENTITY,
            "Buffer capacity at pH = pKa",
            new Source("van-slyke-1922", "van Slyke relation, ln(10)/4 x C"),
            "buffer capacity of 0.1 mol/L acetate at its pKa, and one pH unit away from it, where"
                + " the relation gives 33.1 % of the maximum and about 23 % has been printed",
            Tolerance.absolute(5e-5, "mol/L per pH", "digits written"),
            "",
            3,
            TitrationExamples::bufferCapacity));
  }

  private static List<Row> curves(Source source) {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : table().lines()) {
      Matcher matcher = CURVE.matcher(row.text("inputs"));
      if (matcher.matches() && row.text("source").startsWith(source.text())) {
        double sample = Double.parseDouble(matcher.group(1));
        double titrant = Double.parseDouble(matcher.group(4));
        Acid acid = matcher.group(3).equals("HCl") ? Acid.HYDROCHLORIC : Acid.ACETIC;
        Textbook mixture =
            Textbook.in(sample + titrant, PRINTED)
                .with(acid, sample * Double.parseDouble(matcher.group(2)))
                .with(Base.SODIUM_HYDROXIDE, titrant * Double.parseDouble(matcher.group(5)));
        rows.add(row(row.text("id"), mixture.pH()));
      }
    }
    return rows;
  }

  private static List<Row> inverted() {
    List<CsvTable.Line> curve =
        table().lines().stream().filter(row -> row.text("id").startsWith("T05-")).toList();
    double[] millilitres =
        curve.stream()
            .mapToDouble(row -> Double.parseDouble(row.text("id").substring("T05-".length())))
            .toArray();
    WeakAcidCurve found =
        WeakAcidCurve.of(
            Titrant.sodiumHydroxide()
                .of(AmountConcentration.ofMolesPerLitre(0.1))
                .titrate(Volume.ofMillilitres(25))
                .log(millilitres, curve.stream().mapToDouble(r -> r.number("expected")).toArray()),
            Chemistry.textbook(14));
    return List.of(
        Row.of("equivalence volume, mL", 25.00, found.equivalenceVolume().number(), HowKnown.SEEN)
            .within(Tolerance.relative(0.001, "volume from readings to 0.01 pH")),
        Row.of("pKa", -Math.log10(1.8e-5), found.pKa().value(), HowKnown.SEEN));
  }

  private static List<Row> split() {
    AlkalinitySplit split =
        AlkalinitySplit.of(
            TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(300, PH.of(8.3)),
            TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(500, PH.of(4.5)));
    return List.of(
        row("T34-OH", split.hydroxide().value().inMilligramsPerLitreAsCaCO3()),
        row("T34-CO3", split.carbonate().value().inMilligramsPerLitreAsCaCO3()));
  }

  private static double steepest() {
    double step = 0.01;
    DoubleUnaryOperator slope =
        volume -> aceticPlusAlkali(volume + step) - aceticPlusAlkali(volume - step);
    double low = 45;
    double high = 55;
    while (high - low > 1e-6) {
      double third = (high - low) / 3;
      if (slope.applyAsDouble(low + third) < slope.applyAsDouble(high - third)) {
        low += third;
      } else {
        high -= third;
      }
    }
    return (low + high) / 2;
  }

  private static double aceticPlusAlkali(double alkaliMillilitres) {
    return Textbook.in(50 + alkaliMillilitres, PRINTED)
        .with(Acid.ACETIC, 5)
        .with(Base.SODIUM_HYDROXIDE, 0.1 * alkaliMillilitres)
        .pH();
  }

  private static List<Row> buffers() {
    Textbook buffer = Textbook.in(100, PRINTED).with(Acid.ACETIC, 20).with(Component.SODIUM, 10);
    Textbook dilute = Textbook.in(101, PRINTED).with(Acid.HYDROCHLORIC, 100 * 1.8e-5);
    Textbook phthalic = Textbook.in(1000, PRINTED).with(Acid.PHTHALIC, 10);
    return List.of(
        row("T11-a", buffer.pH()),
        row(
            "T11-b",
            Textbook.in(101, PRINTED).with(Acid.ACETIC, 20).with(Component.SODIUM, 10 + 0.1).pH()),
        row("T11-c", dilute.with(Base.SODIUM_HYDROXIDE, 0.1).pH()),
        row("T12", dilute.with(Acid.HYDROCHLORIC, 0.1).pH()),
        row(
            "T14",
            hydrogenIons(
                Textbook.in(1000, PRINTED).with(Acid.ACETIC, 280).with(Component.SODIUM, 30))),
        row("T15", acetateFor(5.00)),
        row("T27-[H2L]", 0.010 * phthalic.fraction(Acid.PHTHALIC.component(), 2)),
        row("T27-[HL-]", 0.010 * phthalic.fraction(Acid.PHTHALIC.component(), 1)),
        row("T27-[L2-]", 0.010 * phthalic.fraction(Acid.PHTHALIC.component(), 0)),
        row("T28", hydrogenIons(Textbook.in(1000, PRINTED).with(Acid.CARBONIC, 33))));
  }

  /** Moles of sodium acetate that bring 0.300 L of 0.50 mol/L acetic acid to a pH. */
  private static double acetateFor(double pH) {
    double low = 0;
    double high = 1;
    while (high - low > 1e-9) {
      double middle = (low + high) / 2;
      double reached =
          Textbook.in(300, PRINTED)
              .with(Acid.ACETIC, 150 + 1000 * middle)
              .with(Component.SODIUM, 1000 * middle)
              .pH();
      if (reached < pH) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private static double hydrogenIons(Textbook solution) {
    return Math.pow(10, -solution.pH());
  }

  private static List<Row> stoichiometry() {
    return List.of(
        row("T17", 35.23 * 0.250 / (50.00 * Acid.HYDROCHLORIC.protonsByDefinition())),
        row("T18", 1.7 * 0.0811 / (20.0 * Acid.SULFURIC.protonsByDefinition())),
        row("T20", 15.00 * 0.1500 * Acid.OXALIC.protonsByDefinition() / 0.3300),
        row("T21", 2.50 / Base.SODIUM_BICARBONATE.gramsPerEquivalent() / 0.600 * 1000));
  }

  private static List<Row> bufferCapacity() {
    double maximum = acetateBufferCapacity(0);
    double aside = acetateBufferCapacity(1);
    return List.of(
        row("T32", maximum),
        Row.of("one pH unit away", 0.331 * 0.0576, aside, table().only("id", "T32").howKnown()),
        Row.of(
                "one pH unit away, as printed",
                0.23 * 0.0576,
                aside,
                table().only("id", "T32").howKnown())
            .asNotReproduced());
  }

  /** Buffer capacity of the acid alone, without that of the water. */
  private static double acetateBufferCapacity(double pHBelowThePka) {
    double pH = -Math.log10(1.8e-5) - pHBelowThePka;
    Textbook water = Textbook.in(1000, PRINTED);
    return water.with(Acid.ACETIC, 100).bufferCapacity(pH) - water.bufferCapacity(pH);
  }

  private static Tolerance asPrinted(double lastDigits) {
    return lastDigits == AS_PRINTED.size()
        ? AS_PRINTED
        : Tolerance.ofLastDigit(lastDigits, "", ROUNDED_ON_THE_WAY);
  }

  private static Row row(String id, double computed) {
    CsvTable.Line row = table().only("id", id);
    Row result =
        Row.ofPrinted(
                id + ": " + row.text("inputs"), row.text("expected"), computed, row.howKnown())
            .within(asPrinted(row.number("tolerance_last_digits")));
    return row.text("reproduce").equals("yes") ? result : result.asNotReproduced();
  }

  private static CsvTable table() {
    return CsvTable.read("titration-examples.csv", 84);
  }
}
