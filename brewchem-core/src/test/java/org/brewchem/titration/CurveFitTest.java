package org.brewchem.titration;

import static java.lang.Double.parseDouble;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerKg;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.brewchem.figure.Notice;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class CurveFitTest {

  /**
   * Dickson, Deep-Sea Res. 28A (1981) 609, Table 1 (seen): a simulated titration of 200 g of sea
   * water with 0.3 mol/kg of HCl, with conditional constants; total alkalinity 2.450e-3 and total
   * carbonate 2.200e-3 mol/kg are its answers.
   */
  private static final double TOTAL_SULFATE = 0.02824;

  private static final double TOTAL_FLUORIDE = 7e-5;
  private static final Component FLUORIDE = Component.group("fluoride", -1, Math.log10(408));

  private static List<double[]> dickson() {
    List<double[]> rows =
        TestTable.lines("dickson1981-table1.csv").stream()
            .map(cells -> new double[] {parseDouble(cells.get(0)), parseDouble(cells.get(1))})
            .toList();
    assertEquals(51, rows.size());
    return rows;
  }

  private static double[] column(List<double[]> rows, int column, double scale) {
    return rows.stream().mapToDouble(row -> row[column] * scale).toArray();
  }

  private static CurveFit.Problem seawater() {
    ConstantSet constants =
        ConstantSet.standard()
            .with(
                Component.CARBONATE,
                EquilibriumConstant.ofLog10(-6),
                EquilibriumConstant.ofLog10(Math.log10(8.20e-10)))
            .with(Component.BORATE, EquilibriumConstant.ofLog10(Math.log10(1.78e-9)))
            .with(Component.SULFATE, EquilibriumConstant.ofLog10(-Math.log10(12.3)));
    Chemistry chemistry = Chemistry.textbook(-Math.log10(4.32e-14)).withConstants(constants);
    Solution known =
        Solution.textbook()
            .under(chemistry)
            .with(Component.BORATE, molPerKg(4.2e-4))
            .with(Component.SULFATE, molPerKg(TOTAL_SULFATE))
            .with(FLUORIDE, molPerKg(TOTAL_FLUORIDE));
    Solution acid = Solution.textbook().under(chemistry).with(Acid.HYDROCHLORIC, molPerKg(0.3));
    return CurveFit.of(known, acid).unknownInertCharge().unknownTotal(Component.CARBONATE);
  }

  /** Alkalinity counts from sulfate and fluoride without protons, borate as boric acid. */
  private static double alkalinity(CurveFit fit) {
    return fit.inertCharge().number() - 2 * TOTAL_SULFATE - TOTAL_FLUORIDE;
  }

  @Test
  void dicksonsTableInverted() {
    List<double[]> rows = dickson();
    CurveFit fit = seawater().to(column(rows, 0, 1 / 200.0), column(rows, 1, 1));
    assertEquals(2.450e-3, alkalinity(fit), 1e-8);
    assertEquals(2.200e-3, fit.total(Component.CARBONATE).number(), 1e-8);
    assertEquals(List.of(), fit.notices());
  }

  @Test
  void anyOneReadingSpoiledByFiveThousandthsIsNamed() {
    List<double[]> rows = dickson();
    for (int row = 1; row <= rows.size(); row++) {
      for (double spoil : new double[] {-0.005, 0.005}) {
        double[] pH = column(rows, 1, 1);
        pH[row - 1] += spoil;
        List<Notice> notices = seawater().to(column(rows, 0, 1 / 200.0), pH).notices();
        assertEquals(1, notices.size(), "row " + row);
        assertEquals(TitrationCode.BAD_POINT, notices.get(0).code());
        assertEquals(row, notices.get(0).row().orElseThrow());
      }
    }
  }

  /**
   * Flowers et al., Chemistry 2e, table of 14.7 (seen): 25.00 mL of 0.100 mol/L acetic acid, Ka
   * 1.8e-5, with 0.100 mol/L NaOH, pH to two decimals.
   */
  @Test
  void theWeakAcidCurveOfATextbookInverted() {
    List<double[]> rows = TestTable.curve("T05");
    assertEquals(19, rows.size());
    WeakAcidCurve curve =
        WeakAcidCurve.of(
            Titrant.sodiumHydroxide()
                .of(molPerL(0.1))
                .titrate(mL(25))
                .at(celsius(25))
                .log(column(rows, 0, 1), column(rows, 1, 1)),
            Chemistry.textbook(14));
    assertEquals(25.00, curve.equivalenceVolume().number(), 0.025);
    assertEquals(-Math.log10(1.8e-5), curve.pKa().number(), 0.02);
    assertEquals(0.1, curve.concentration().number(), 1e-4);
    assertEquals(List.of(), curve.fit().notices());
  }

  @Test
  void whatIsNotDeterminedIsRefused() {
    CurveFit.Problem problem = seawater();
    assertThrows(
        IllegalArgumentException.class,
        () -> problem.to(new double[] {0, 1e-3, 2e-3}, new double[] {8, 7.9, 7.8}));
    assertThrows(IllegalArgumentException.class, () -> problem.unknownPKa(Component.CARBONATE, 6));
    List<double[]> rows = dickson();
    CurveFit fit = problem.to(column(rows, 0, 1 / 200.0), column(rows, 1, 1));
    assertFalse(fit.total(Component.PHOSPHATE).isStated());
    assertTrue(fit.toString().contains("fitted total of carbonate 0.0022"));
  }

  private static String refusal(Executable fit) {
    return assertThrows(IllegalArgumentException.class, fit).getMessage();
  }

  @Test
  void eachRefusalNamesItsArgument() {
    double[] titrant = {0, 1e-3, 2e-3, 3e-3, 4e-3};
    double[] pH = {8, 7.5, 7, 6.6, 6.4};
    CurveFit.Problem none = CurveFit.of(Solution.textbook(), Solution.textbook());
    assertEquals(
        "unknowns: none was declared; one or more is needed to fit",
        refusal(() -> none.to(titrant, pH)));
    CurveFit.Problem twice = none.unknownTotal(Component.CARBONATE).unknownInertCharge();
    assertEquals(
        "unknown: fitted total of carbonate was declared already; once is enough",
        refusal(() -> twice.unknownTotal(Component.CARBONATE)));
    assertEquals(
        "unknown: fitted inert charge was declared already; once is enough",
        refusal(twice::unknownInertCharge));
    CurveFit.Problem constant = none.unknownPKa(Component.LACTATE, 4);
    assertEquals(
        "unknown: fitted pKa of lactate was declared already; once is enough",
        refusal(() -> constant.unknownPKa(Component.LACTATE, 3)));
    // There is no lactate, nor anything in the titrant.
    assertEquals(
        "readings: they do not determine [fitted pKa of lactate]; fewer unknowns are needed",
        refusal(() -> constant.to(titrant, pH)));
    double[] broken = pH.clone();
    broken[2] = Double.NaN;
    assertTrue(refusal(() -> twice.to(titrant, broken)).startsWith("pH of reading 3: NaN"));
    double[] negative = titrant.clone();
    negative[1] = -1;
    assertTrue(
        refusal(() -> twice.to(negative, pH)).startsWith("titrant per sample of reading 2: -1"));
    assertEquals(
        "start: NaN is not possible; a finite number is allowed",
        refusal(() -> none.unknownPKa(Component.LACTATE, Double.NaN)));
  }

  /** Another way to the same: where there is no borate, the fit is the one that knows of none. */
  @Test
  void aTotalThatIsNotThereLeavesTheOthersAsIfItWereNotAskedFor() {
    Solution acid = Solution.at(celsius(20)).with(Acid.HYDROCHLORIC, molPerKg(0.1));
    Solution water =
        Solution.at(celsius(20))
            .with(Component.CARBONATE, molPerKg(1.9e-3))
            .with(Component.SODIUM, molPerKg(2e-3));
    double[] titrant = new double[30];
    double[] millilitres = new double[30];
    for (int i = 0; i < 30; i++) {
      titrant[i] = i * 1e-3;
      millilitres[i] = i;
    }
    double[] curve = SimulatedTitration.of(water, acid, mL(1000)).pHAfter(millilitres);
    Random random = new Random(20261126);
    int without = 0;
    for (int trial = 0; trial < 10; trial++) {
      double[] pH = Arrays.stream(curve).map(x -> x + 0.02 * random.nextGaussian()).toArray();
      CurveFit.Problem two =
          CurveFit.of(Solution.at(celsius(20)), acid)
              .unknownTotal(Component.CARBONATE)
              .unknownInertCharge();
      CurveFit withBorate = two.unknownTotal(Component.BORATE).to(titrant, pH);
      CurveFit withoutBorate = two.to(titrant, pH);
      if (withBorate.total(Component.BORATE).number() == 0) {
        without++;
        assertEquals(
            withoutBorate.total(Component.CARBONATE).number(),
            withBorate.total(Component.CARBONATE).number(),
            1e-11);
        assertEquals(
            withoutBorate.inertCharge().number(), withBorate.inertCharge().number(), 1e-11);
      } else {
        assertTrue(sumOfSquares(withBorate) < sumOfSquares(withoutBorate));
      }
    }
    assertTrue(without >= 3 && without <= 7, without + " of 10");
  }

  private static double sumOfSquares(CurveFit fit) {
    return Arrays.stream(fit.residuals()).map(x -> x * x).sum();
  }
}
