package org.brewchem.fuzzing;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.Map;
import org.brewchem.substance.Element;
import org.brewchem.substance.Formula;
import org.brewchem.substance.Salt;

/** Formulas from any text; what was read reads again once its charge is set off by "^". */
class FormulaFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void formula(byte[] input) {
    String text = Oracle.text(input);
    Oracle.read(text, () -> Formula.parse(text)).ifPresent(FormulaFuzzTest::judge);
    Oracle.ask(() -> Salt.of("salt", text, Map.of()));
  }

  private static void judge(Formula formula) {
    Oracle.requireFinite(formula.molarMass().inGramsPerMole(), formula);
    double mass = 0;
    for (Map.Entry<Element, Integer> entry : formula.counts().entrySet()) {
      Oracle.requireEqual(entry.getValue(), formula.count(entry.getKey()));
      mass += entry.getKey().molarMass().inGramsPerMole() * entry.getValue();
    }
    if (Math.abs(mass / formula.molarMass().inGramsPerMole() - 1) > 1e-9) {
      throw new AssertionError(formula + " has the molar mass " + formula.molarMass());
    }
    Oracle.requireEqual(formula, Formula.parse(writtenAgain(formula)));
  }

  private static String writtenAgain(Formula formula) {
    int charge = formula.charge();
    if (charge == 0) {
      return formula.text();
    }
    String sign = charge > 0 ? "+" : "-";
    String size = Math.abs(charge) == 1 ? "" : String.valueOf(Math.abs(charge));
    String charged = size + sign;
    if (!formula.text().endsWith(charged)) {
      throw new AssertionError(formula + " does not end with its charge " + charge);
    }
    String atoms = formula.text().substring(0, formula.text().length() - charged.length());
    return atoms + "^" + charged;
  }
}
