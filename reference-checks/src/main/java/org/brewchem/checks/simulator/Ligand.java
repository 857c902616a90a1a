package org.brewchem.checks.simulator;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.brewchem.checks.CsvTable;

/**
 * What takes up protons, and in part calcium and magnesium: an acid of the simulator's own table,
 * or a group with one pKa.
 *
 * @param name the name
 * @param charge the charge without any of its protons
 * @param pKa stepwise at 25 °C and zero ionic strength, the first lost proton first
 * @param enthalpy of each dissociation, kJ/mol
 * @param calcium log10 K of the pair with calcium, by the number of protons that the ligand keeps;
 *     NaN for none
 * @param magnesium the same with magnesium
 */
record Ligand(
    String name,
    int charge,
    double[] pKa,
    double[] enthalpy,
    double[] calcium,
    double[] magnesium) {

  private static final CsvTable TABLE = CsvTable.read("simulator-constants.csv", 39);
  private static final Map<String, Ligand> NAMED = read();

  /** Returns an acid of the table. */
  static Ligand named(String name) {
    Ligand found = NAMED.get(name);
    if (found == null) {
      throw new IllegalArgumentException("no ligand \"" + name + "\"");
    }
    return found;
  }

  /** Returns a group with one proton. */
  static Ligand group(int charge, double pKa) {
    double[] none = {Double.NaN, Double.NaN};
    return new Ligand(
        String.format(Locale.ROOT, "group of charge %d and pKa %.6f", charge, pKa),
        charge,
        new double[] {pKa},
        new double[] {0},
        none,
        none);
  }

  /** Returns this ligand holding protons only. */
  Ligand withoutPairs() {
    double[] none = new double[pKa.length + 1];
    Arrays.fill(none, Double.NaN);
    return new Ligand(name, charge, pKa, enthalpy, none, none);
  }

  private static Map<String, Ligand> read() {
    Map<String, Ligand> found = new LinkedHashMap<>();
    for (CsvTable.Line row : TABLE.where("kind", "step")) {
      String name = row.text("ligand");
      found.computeIfAbsent(name, key -> of(key, TABLE.where("ligand", key)));
    }
    return found;
  }

  private static Ligand of(String name, List<CsvTable.Line> rows) {
    List<CsvTable.Line> steps =
        rows.stream().filter(row -> row.text("kind").equals("step")).toList();
    double[] calcium = new double[steps.size() + 1];
    double[] magnesium = new double[steps.size() + 1];
    Arrays.fill(calcium, Double.NaN);
    Arrays.fill(magnesium, Double.NaN);
    for (CsvTable.Line row : rows) {
      if (row.text("kind").equals("pair")) {
        double[] pairs = row.text("metal").equals("Ca") ? calcium : magnesium;
        pairs[(int) row.number("index")] = row.number("value");
      }
    }
    IntStream.range(0, steps.size())
        .filter(i -> steps.get(i).number("index") != i + 1)
        .findFirst()
        .ifPresent(
            i -> {
              throw new IllegalStateException(name + ": step " + (i + 1) + " is missing");
            });
    return new Ligand(
        name,
        (int) steps.get(0).number("charge"),
        steps.stream().mapToDouble(row -> row.number("value")).toArray(),
        steps.stream().mapToDouble(row -> row.number("dH_kJ_per_mol")).toArray(),
        calcium,
        magnesium);
  }
}
