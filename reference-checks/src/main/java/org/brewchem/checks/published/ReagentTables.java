package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.MassFraction;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.StrongLacticAcid;

/** Concentrations of reagents from their assay and density. */
public final class ReagentTables {

  private static final Pattern PRINTED = Pattern.compile("molarity printed ([0-9.]+);.*");
  private static final Pattern SPECIFIC_GRAVITY = Pattern.compile("specific gravity ([0-9.]+)");
  private static final Pattern STRENGTH = Pattern.compile("([0-9]+) %");
  private static final Pattern OLIGOMERS =
      Pattern.compile(
          "titratable at once ([0-9.]+) .*; monomer ([0-9.]+); lactoyllactic ([0-9.]+); trimer"
              + " ([0-9.]+); water ([0-9.]+); bound part .*: ([0-9.]+)");
  private static final double WATER_GRAMS_PER_MILLILITRE = 0.9982;

  private static final Map<String, Compound> COMPOUNDS =
      Map.of(
          "HCl", Acid.HYDROCHLORIC,
          "H3PO4", Acid.PHOSPHORIC,
          "H2SO4", Acid.SULFURIC,
          "NaOH", Base.SODIUM_HYDROXIDE,
          "acetic acid glacial", Acid.ACETIC);

  private ReagentTables() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "hydrochloric-acid-table",
            Suite.PUBLISHED,
            "Concentration of hydrochloric acid",
            new Source(
                "hydrochloric-acid-density-table",
                "encyclopaedia table after Perry/International Critical Tables"),
            "mol/L from mass per cent and density",
            Tolerance.halfOfLastDigit("mol/L", "as printed"),
            "the densities themselves",
            7,
            ReagentTables::hydrochloricAcid),
        new ReferenceCheck(
            "commercial-acids-and-bases",
            Suite.PUBLISHED,
            "Concentration of commercial acids and of lye",
            new Source(
                "flowers",
                "Flowers et al., Chemistry 2e (OpenStax, CC BY), appendix Composition of Commercial"
                    + " Acids and Bases"),
            "mol/L from mass per cent and specific gravity, against water of 20 °C",
            Tolerance.halfOfLastDigit("mol/L", "as printed"),
            "aqueous ammonia, which is no base of the library",
            5,
            ReagentTables::commercial),
        new ReferenceCheck(
            "strong-lactic-acid",
            Suite.PUBLISHED,
            "Oligomers in strong lactic acid",
            new Source(
                "vu-2005",
                "Vu et al., Fluid Phase Equilib. 236 (2005) 125, as Poly(Lactic Acid), 2nd ed.,"
                    + " ch. 2, retells it"),
            "% by mass of what is titratable at once, of each chain and of the water, and the part"
                + " of the acid that is bound, at 50 to 92 % of total acid",
            Tolerance.halfOfLastDigit(
                "",
                "as printed, computed by others from the equations; the part"
                    + " bound at 60 % was rounded twice there"),
            "a bottle that has not come to equilibrium; measurements",
            48,
            ReagentTables::oligomers));
  }

  private static List<Row> oligomers() {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line line : CsvTable.read("strong-lactic-acid.csv", 8).lines()) {
      Matcher printed = OLIGOMERS.matcher(line.text("value") + "; " + line.text("note"));
      Matcher strength = STRENGTH.matcher(line.text("item"));
      if (!printed.matches() || !strength.find()) {
        throw new IllegalStateException("strong-lactic-acid.csv: " + line.text("item"));
      }
      MassFraction total = MassFraction.ofMassPercent(Double.parseDouble(strength.group(1)));
      StrongLacticAcid acid = StrongLacticAcid.ofTotalAcid(total);
      double[] computed = {
        acid.titratableAtOnce().inMassPercent(),
        acid.chainOf(1).inMassPercent(),
        acid.chainOf(2).inMassPercent(),
        acid.chainOf(3).inMassPercent(),
        acid.freeWater().inMassPercent(),
        acid.boundInEsters().fraction()
      };
      String[] names = {
        "titratable at once", "monomer", "lactoyllactic acid", "trimer", "water", "bound part"
      };
      for (int i = 0; i < computed.length; i++) {
        String label = strength.group(1) + " %, " + names[i];
        Row row = Row.ofPrinted(label, printed.group(i + 1), computed[i], line.howKnown());
        // 56.79 of 60 is 0.9465, which the source rounds to 0.947 and takes from 1.
        rows.add(label.equals("60 %, bound part") ? row.asNotReproduced() : row);
      }
    }
    return rows;
  }

  private static List<Row> hydrochloricAcid() {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : lines()) {
      Matcher printed = PRINTED.matcher(row.text("note"));
      if (printed.matches()) {
        rows.add(row(row, printed.group(1), row.number("value")));
      }
    }
    return rows;
  }

  private static List<Row> commercial() {
    List<Row> rows = new ArrayList<>();
    for (CsvTable.Line row : lines()) {
      Matcher gravity = SPECIFIC_GRAVITY.matcher(row.text("note"));
      if (gravity.matches()) {
        double density = Double.parseDouble(gravity.group(1)) * WATER_GRAMS_PER_MILLILITRE;
        rows.add(row(row, row.text("value"), density));
      }
    }
    return rows;
  }

  private static List<CsvTable.Line> lines() {
    return CsvTable.read("reagents.csv", 45).lines();
  }

  private static Row row(CsvTable.Line line, String printed, double gramsPerMillilitre) {
    Compound compound = Objects.requireNonNull(COMPOUNDS.get(line.text("substance")));
    return Row.ofPrinted(
        line.text("substance") + " " + line.text("mass_percent") + " %",
        printed,
        Reagent.of(compound, MassFraction.ofMassPercent(line.number("mass_percent")))
            .withDensity(Density.ofGramsPerMillilitre(gramsPerMillilitre), 0)
            .concentration()
            .inMolesPerLitre(),
        line.howKnown());
  }
}
