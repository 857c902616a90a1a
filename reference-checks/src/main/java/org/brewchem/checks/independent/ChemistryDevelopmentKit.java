package org.brewchem.checks.independent;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.substance.Formula;
import org.openscience.cdk.silent.SilentChemObjectBuilder;
import org.openscience.cdk.tools.manipulator.MolecularFormulaManipulator;

/** Molar masses against the Chemistry Development Kit. */
public final class ChemistryDevelopmentKit {

  /** Our formula, and the same with hydrates and brackets written out, as the kit needs it. */
  private static final Map<String, String> FORMULAS =
      new TreeMap<>(
          Map.ofEntries(
              Map.entry("H2O", "H2O"),
              Map.entry("CO2", "CO2"),
              Map.entry("HCl", "HCl"),
              Map.entry("H2SO4", "H2SO4"),
              Map.entry("H3PO4", "H3PO4"),
              Map.entry("H3BO3", "H3BO3"),
              Map.entry("NH4Cl", "NH4Cl"),
              Map.entry("NaOH", "NaOH"),
              Map.entry("KOH", "KOH"),
              Map.entry("Ca(OH)2", "CaO2H2"),
              Map.entry("NaHCO3", "NaHCO3"),
              Map.entry("Na2CO3", "Na2CO3"),
              Map.entry("CaCO3", "CaCO3"),
              Map.entry("CaO", "CaO"),
              Map.entry("MgO", "MgO"),
              Map.entry("Mg(OH)2", "MgO2H2"),
              Map.entry("CaSO4.2H2O", "CaSO6H4"),
              Map.entry("CaCl2", "CaCl2"),
              Map.entry("CaCl2.2H2O", "CaCl2O2H4"),
              Map.entry("MgSO4.7H2O", "MgSO11H14"),
              Map.entry("MgCl2.6H2O", "MgCl2O6H12"),
              Map.entry("NaCl", "NaCl"),
              Map.entry("KCl", "KCl"),
              Map.entry("KH2PO4", "KH2PO4"),
              Map.entry("Na2HPO4", "Na2HPO4"),
              Map.entry("Ca(H2PO4)2.H2O", "CaP2O9H6"),
              Map.entry("Na2B4O7.10H2O", "Na2B4O17H20"),
              Map.entry("C3H6O3", "C3H6O3"),
              Map.entry("C2H4O2", "C2H4O2"),
              Map.entry("C4H6O6", "C4H6O6"),
              Map.entry("C4H6O5", "C4H6O5"),
              Map.entry("C4H6O4", "C4H6O4"),
              Map.entry("C6H8O7", "C6H8O7"),
              Map.entry("C6H8O7.H2O", "C6H10O8"),
              Map.entry("H2C2O4.2H2O", "C2H6O6"),
              Map.entry("C3H4O3", "C3H4O3"),
              Map.entry("C6H12O7", "C6H12O7"),
              Map.entry("C6H8O6", "C6H8O6"),
              Map.entry("KHC8H4O4", "KC8H5O4")));

  private ChemistryDevelopmentKit() {}

  /** Returns the check. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "cdk-molar-masses",
            Suite.INDEPENDENT,
            "Molar masses by another library",
            new Source("cdk", "Chemistry Development Kit 2.11, cdk-formula"),
            "molar mass from the formula, hydrates and brackets included",
            Tolerance.relative(
                1e-4,
                "tables of atomic weights in use differ at 1e-5; a wrong atom count is 1e-3 and"
                    + " more"),
            "sulfur dioxide: the abridged atomic weight of sulfur, 32.06 with an uncertainty of 0.02,"
                + " alone makes 1.1e-4",
            FORMULAS.size(),
            ChemistryDevelopmentKit::rows));
  }

  private static List<Row> rows() {
    return FORMULAS.entrySet().stream()
        .map(
            entry ->
                Row.of(
                    entry.getKey(),
                    molarMassByTheKit(entry.getValue()),
                    Formula.parse(entry.getKey()).molarMass().inGramsPerMole(),
                    HowKnown.COMPUTED))
        .toList();
  }

  private static double molarMassByTheKit(String formula) {
    return MolecularFormulaManipulator.getMass(
        MolecularFormulaManipulator.getMolecularFormula(
            formula, SilentChemObjectBuilder.getInstance()),
        MolecularFormulaManipulator.MolWeight);
  }
}
