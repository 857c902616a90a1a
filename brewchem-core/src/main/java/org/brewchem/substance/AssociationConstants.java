package org.brewchem.substance;

import java.util.List;

/**
 * The formation, from fully deprotonated ligands, of the partly protonated ligands on which some
 * rows of ion pairs and minerals are printed. The constants are those of set "phreeqc-dat", with
 * which these rows belong.
 */
final class AssociationConstants {

  private AssociationConstants() {}

  static EquilibriumConstant of(String species) {
    return switch (species) {
      case "HCO3-" -> protonation(Component.CARBONATE, 1);
      case "HSO4-" -> protonation(Component.SULFATE, 1);
      case "HPO42-" -> protonation(Component.PHOSPHATE, 1);
      case "H2PO4-" -> protonation(Component.PHOSPHATE, 2);
      case "MgSO4(aq)" -> magnesiumSulfate();
      default -> throw new IllegalStateException(species + ": its formation is not known");
    };
  }

  private static EquilibriumConstant protonation(Component ligand, int protons) {
    List<EquilibriumConstant> dissociation = ConstantSet.named("phreeqc-dat").of(ligand);
    EquilibriumConstant sum = dissociation.get(dissociation.size() - 1).negate();
    for (int n = 1; n < protons; n++) {
      sum = sum.plus(dissociation.get(dissociation.size() - 1 - n).negate());
    }
    return sum;
  }

  private static EquilibriumConstant magnesiumSulfate() {
    for (ResourceTable.Row row : ResourceTable.read("ion-pairs.csv")) {
      if (row.text("product").equals("MgSO4(aq)") && row.text("set").equals("A")) {
        return row.constant("log_K_25C", 1.0);
      }
    }
    throw new IllegalStateException("MgSO4(aq): its formation is not known");
  }
}
