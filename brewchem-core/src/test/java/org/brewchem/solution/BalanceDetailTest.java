package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Step;
import org.brewchem.quantity.Molality;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.IonSizeParameters;
import org.junit.jupiter.api.Test;

/** What an explanation prints of a balance, line by line; the digits are our own. */
class BalanceDetailTest {

  private static final Solution WATER =
      Solution.at(celsius(20))
          .with(Ion.CALCIUM, mmolPerKg(1))
          .with(Ion.SODIUM, mmolPerKg(1))
          .with(Acid.CARBONIC, mmolPerKg(4));

  /** The last lines of what is shown, after it was held against what was found. */
  private static String shown(Solution solution, Figure<?> figure, int lines) {
    Step.Detail detail = solution.answer(figure).step().detail().orElseThrow();
    assertTrue(detail.holds(), figure.name());
    List<String> all = detail.lines();
    return String.join("\n", all.subList(all.size() - lines, all.size()));
  }

  @Test
  void theBalanceIsShownWithConditionsConstantsCoefficientsAndSpecies() {
    assertEquals(
        """
            at 20 °C, level pairs, constants standard, activity by Davies, pairs standard, ion product IAPWS R11-07
            constants at 20.0 °C (log10)
              pKw                        14.1646   IAPWS R11-07
              pKa 1 of carbonate          6.3811   goldberg-2002, p. 264
              pKa 2 of carbonate         10.3748   goldberg-2002, p. 264
              formation of CaCO3(aq)      3.1858   phreeqc-dat, SOLUTION_SPECIES of phreeqc.dat
              formation of CaHCO3+       10.8632   phreeqc-dat, SOLUTION_SPECIES of phreeqc.dat
              formation of CaOH+        -12.7800   phreeqc-dat, SOLUTION_SPECIES of phreeqc.dat
            ionic strength 3.9845 mmol/kg, half the sum of molality times squared charge
            activity coefficients: 1.0000 for no charge, 0.9345 for ±1, 0.7626 for ±2
            charges at pH 6.8265       mmol/kg        mEq/kg
              H+                 0.000159573  +0.000159573
              OH-                4.91208e-05  -4.91208e-05
              Ca2+                  0.992118      +1.98424
              Na+                    1.00000      +1.00000
              CO32-               0.00103634   -0.00207268
              HCO3-                  2.98924      -2.98924
              CO2(aq)                1.00184             0
              CaCO3(aq)          0.000917117             0
              CaHCO3+             0.00696383   +0.00696383
              CaOH+              9.01066e-07  +9.01066e-07
            sum of the charges                           0""",
        shown(WATER, Figures.PH_VALUE, 22));
    assertEquals(22, WATER.answer(Figures.PH_VALUE).step().detail().orElseThrow().lines().size());
  }

  @Test
  void theChargeOfOneComponentLeavesThatOfTheMetalOut() {
    assertEquals(
        """
            charge of carbonate at pH 6.8265        mEq/kg
              CO32-           0.00103634 x -2   -0.00207268
              HCO3-             2.98924 x -1      -2.98924
              CO2(aq)            1.00184 x 0             0
              CaCO3(aq)       0.000917117 x -2   -0.00183423
              CaHCO3+         0.00696383 x -1   -0.00696383
            sum                                   -3.00011""",
        shown(WATER, Figures.CARBONATE_ALKALINITY, 7));
  }

  @Test
  void coefficientsThatDifferWithinAChargeAreShownSpeciesBySpecies() {
    ActivityRule rule = ActivityRule.ionSize(IonSizeParameters.standard(), 0.1);
    Solution salted =
        WATER.with(Ion.CHLORIDE, mmolPerKg(1)).under(Chemistry.standard().withActivityRule(rule));
    assertEquals(
        """
            charges at pH 6.3507       mmol/kg        mEq/kg   activity coefficient
              H+                 0.000474444  +0.000474444   0.9399
              OH-                1.64401e-05  -1.64401e-05   0.9337
              Ca2+                  0.995111      +1.99022   0.7671
              Na+                   0.998687     +0.998687   0.9351
              CO32-              0.000230027  -0.000460055   0.7675
              HCO3-                  1.99359      -1.99359   0.9360
              CO2(aq)                1.99998             0   1.0006
              Cl-                    1.00000      -1.00000   0.9340
              CaCO3(aq)          0.000206510             0   1.0009
              CaHCO3+             0.00468248   +0.00468248   0.9367
              CaOH+              3.04034e-07  +3.04034e-07   0.9345
              NaHCO3(aq)          0.00131349             0   1.0018
              HCl(aq)            1.31195e-07             0   1.0039
            sum of the charges                           0""",
        shown(salted, Figures.PH_VALUE, 15));
  }

  @Test
  void inertIonsAreARowOfTheBalance() {
    assertEquals(
        """
            ionic strength 4.2275 mmol/kg, half the sum of molality times squared charge
            activity coefficients: 1.0000 for no charge, 1.0000 for ±1, 1.0000 for ±2
            charges at pH 7.0000       mmol/kg        mEq/kg
              H+                 0.000100000  +0.000100000
              OH-                6.84505e-05  -6.84505e-05
              Ca2+                   1.00000      +2.00000
              Na+                    1.00000      +1.00000
              CO32-               0.00135993   -0.00271986
              HCO3-                  3.22339      -3.22339
              CO2(aq)               0.775249             0
              inert ions            0.226079     +0.226079
            sum of the charges                           0""",
        shown(WATER.under(Level.IDEAL).closedTo(pH(7)), Figures.PH_VALUE, 12));
  }

  @Test
  void aSumThatIsNotZeroIsShownWithItsSign() {
    Solution salt = WATER.with(Ion.CHLORIDE, mmolPerKg(1));
    double found = salt.titratableAcidity(pH(8.2)).inMilliequivalentsPerLitre();
    String sum = shown(salt, Figures.titratableAcidity(pH(8.2)), 1);
    assertEquals(
        -found / salt.kilogramsPerLitre(), Double.parseDouble(sum.substring(32).strip()), 1e-4);
  }

  @Test
  void aConstantWithoutASourceSaysSo() {
    Component site = Component.group("site", -1, 5);
    Solution grouped =
        Solution.at(celsius(20)).withTotal(site, Molality.ofMillimolesPerKilogram(1));
    assertTrue(
        shown(grouped, Figures.PH_VALUE, 9)
            .contains("  pKa 1 of site               5.0000   no source"),
        shown(grouped, Figures.PH_VALUE, 9));
  }

  @Test
  void aTotalIsShownAsTheProductThatItIs() {
    assertEquals("1.00000 mmol/kg x 40.078 g/mol x 0.99820 kg/L", shown(WATER, Figures.CALCIUM, 1));
    assertEquals(
        "total of calcium x molar mass x kg of water per litre",
        WATER.answer(Figures.CALCIUM).step().text());
    assertEquals(40.078 * WATER.kilogramsPerLitre(), WATER.answer(Figures.CALCIUM).number(), 1e-12);
    TotalFigure total = new TotalFigure(Component.CALCIUM, Ion.CALCIUM.molarMass());
    assertEquals(40078, total.milligramsPerMole(), 1e-9);
  }

  @Test
  void aSolutionIsToldInALine() {
    assertEquals(
        "20 °C, calcium 1.00000 mmol/kg, sodium 1.00000 mmol/kg, carbonate 4.00000 mmol/kg",
        WATER.toString());
    assertEquals(
        WATER + ", inert charge 0.226079 mEq/kg",
        WATER.under(Level.IDEAL).closedTo(pH(7)).toString());
    assertEquals("20 °C, [Ca2+, Na+, CO32-]", WATER.contents().toString());
    assertEquals("solution", WATER.kind());
  }

  @Test
  void activityRulesAreEqualWhenAllThatIsStatedIs() {
    ActivityRule rule = ActivityRule.ionSize(IonSizeParameters.standard(), 0.1);
    assertEquals(rule, ActivityRule.ionSize(IonSizeParameters.standard(), 0.1));
    assertEquals(
        rule.hashCode(), ActivityRule.ionSize(IonSizeParameters.standard(), 0.1).hashCode());
    for (Object other :
        List.of(
            ActivityRule.davies(),
            ActivityRule.ionSize(IonSizeParameters.standard(), 0.2),
            ActivityRule.ionSize(IonSizeParameters.standard().with("Fe2+", 6, 0), 0.1),
            "ion size")) {
      assertTrue(!rule.equals(other), String.valueOf(other));
    }
    assertTrue(rule.hashCode() != ActivityRule.davies().hashCode());
    assertEquals("Davies", ActivityRule.davies().name());
    assertEquals("ion size", rule.toString());
  }

  /** The charges of a buffer capacity are those at its pH, and their slope is what was found. */
  @Test
  void aBufferCapacityShowsTheSlopeThatItIs() {
    Solution acetate =
        Solution.at(celsius(25))
            .with(Acid.ACETIC, mmolPerL(10))
            .with(Base.SODIUM_HYDROXIDE, mmolPerL(4));
    Step.Detail shown =
        acetate.answer(Figures.bufferCapacity(pH(5))).explain().root().detail().orElseThrow();
    assertTrue(shown.holds());
    assertTrue(shown.lines().stream().anyMatch(line -> line.startsWith("charges at pH 5.0000")));
    String last = shown.lines().get(shown.lines().size() - 1);
    double slope = Double.parseDouble(last.replaceFirst(".*: ([0-9.]+) mEq/L per pH", "$1"));
    assertEquals(acetate.answer(Figures.bufferCapacity(pH(5))).number(), slope, 1e-4);
    assertTrue(acetate.answer(Figures.BUFFER_CAPACITY).explain().holds());
  }
}
