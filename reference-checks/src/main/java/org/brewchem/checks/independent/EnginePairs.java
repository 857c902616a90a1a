package org.brewchem.checks.independent;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.checks.CsvTable;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.PairSet;

/** Reads the ion pairs of the engine, reaction by reaction, from {@code data/ion-pairs.csv}. */
final class EnginePairs {

  private static final Map<String, Component> METALS =
      Map.of(
          "Ca+2", Component.CALCIUM,
          "Mg+2", Component.MAGNESIUM,
          "Na+", Component.SODIUM,
          "K+", Component.POTASSIUM);

  private static final String MAGNESIUM_SULFATE = "MgSO4(aq)";

  /** A reactant that is a ligand, with the protons it already holds. */
  private record Ligand(Component component, int protons, EquilibriumConstant formation) {}

  private static final EquilibriumConstant NONE = EquilibriumConstant.ofLog10(0);

  private static final Map<String, Ligand> LIGANDS = ligands();

  private EnginePairs() {}

  private static Map<String, Ligand> ligands() {
    Map<String, Ligand> ligands = new HashMap<>();
    ligands.put("CO3-2", new Ligand(Component.CARBONATE, 0, NONE));
    ligands.put(
        "HCO3-",
        new Ligand(
            Component.CARBONATE,
            1,
            EquilibriumConstant.analytic(107.8871, 0.03252849, -5151.79, -38.92561, 563713.9)));
    ligands.put("SO4-2", new Ligand(Component.SULFATE, 0, NONE));
    ligands.put(
        "HSO4-",
        new Ligand(
            Component.SULFATE,
            1,
            EquilibriumConstant.analytic(-56.889, 0.006473, 2307.9, 19.8858, 0)));
    ligands.put("PO4-3", new Ligand(Component.PHOSPHATE, 0, NONE));
    ligands.put(
        "HPO4-2",
        new Ligand(Component.PHOSPHATE, 1, EquilibriumConstant.ofLog10(12.346, -14.77, 0)));
    ligands.put(
        "H2PO4-",
        new Ligand(Component.PHOSPHATE, 2, EquilibriumConstant.ofLog10(19.553, -18.91, 0)));
    ligands.put("Cl-", new Ligand(Component.CHLORIDE, 0, NONE));
    ligands.put("lactate-", new Ligand(Component.LACTATE, 0, NONE));
    ligands.put("acetate-", new Ligand(Component.ACETATE, 0, NONE));
    ligands.put("citrate-3", new Ligand(Component.CITRATE, 0, NONE));
    ligands.put("malate-2", new Ligand(Component.MALATE, 0, NONE));
    ligands.put("tartrate-2", new Ligand(Component.TARTRATE, 0, NONE));
    ligands.put("succinate-2", new Ligand(Component.SUCCINATE, 0, NONE));
    ligands.put("phthalate-2", new Ligand(Component.PHTHALATE, 0, NONE));
    return ligands;
  }

  /**
   * Returns all pairs of the sets A, B, C and M. Hydrochloric acid, which has no metal, is taken
   * from the library; it is negligible.
   */
  static PairSet all() {
    PairSet set = PairSet.none().with(PairSet.named("phreeqc-dat").find("HCl(aq)").orElseThrow());
    for (CsvTable.Line row : CsvTable.read("ion-pairs.csv", 63).lines()) {
      String[] sides = row.text("reaction").split(" = ", 2);
      List<String> reactants = List.of(sides[0].split(" \\+ ", -1));
      if (row.text("set").equals("P")) {
        continue;
      }
      if (METALS.containsKey(reactants.get(0))) {
        set = set.with(pair(reactants, sides[1], constant(row)));
      } else if (reactants.get(0).equals(MAGNESIUM_SULFATE)) {
        EquilibriumConstant first = set.find(MAGNESIUM_SULFATE).orElseThrow().constant();
        set =
            set.with(
                IonPair.of(
                    libraryName(sides[1]),
                    Component.MAGNESIUM,
                    Component.SULFATE,
                    2,
                    0,
                    first.plus(constant(row))));
      }
    }
    return set.renamed("as the engine");
  }

  /** The engine writes the sign of a charge first, as in SO4-2; the library writes SO42-. */
  static String libraryName(String engineName) {
    return engineName.replaceFirst("([+-])([2-9])$", "$2$1");
  }

  private static IonPair pair(
      List<String> reactants, String products, EquilibriumConstant constant) {
    Component metal = METALS.getOrDefault(reactants.get(0), Component.CALCIUM);
    if (reactants.contains("H2O")) {
      return IonPair.hydroxide(libraryName(products.split(" ", 2)[0]), metal, 1, constant);
    }
    int protons = reactants.contains("H+") ? 1 : reactants.contains("2H+") ? 2 : 0;
    for (String reactant : reactants) {
      Ligand ligand = LIGANDS.get(reactant);
      if (ligand != null) {
        return IonPair.of(
            libraryName(products),
            metal,
            ligand.component(),
            1,
            protons + ligand.protons(),
            constant.plus(ligand.formation()));
      }
    }
    throw new IllegalStateException("ion-pairs.csv: no ligand in the reaction to " + products);
  }

  private static EquilibriumConstant constant(CsvTable.Line row) {
    if (!row.isEmpty("analytic")) {
      String[] coefficients = row.text("analytic").split(" ", -1);
      double[] c = new double[5];
      for (int i = 0; i < c.length; i++) {
        c[i] = Double.parseDouble(coefficients[i]);
      }
      return EquilibriumConstant.analytic(c[0], c[1], c[2], c[3], c[4]);
    }
    double enthalpy = row.isEmpty("dH_kJ_per_mol") ? 0 : row.number("dH_kJ_per_mol");
    return EquilibriumConstant.ofLog10(row.number("log_K_25C"), enthalpy, 0);
  }
}
