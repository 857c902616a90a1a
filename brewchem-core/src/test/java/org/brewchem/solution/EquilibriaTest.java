package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.EquilibriumConstant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EquilibriaTest {

  private static final Map<Component, Double> LIQUID =
      Map.of(
          Component.CALCIUM, 2.0,
          Component.SODIUM, 1.0,
          Component.CHLORIDE, 1.5,
          Component.SULFATE, 0.5,
          Component.CARBONATE, 3.0,
          Component.LACTATE, 0.0);

  private static Equilibria liquid(Level level) {
    Equilibria equilibria = Equilibria.of(LIQUID.keySet(), celsius(25), Chemistry.of(level));
    LIQUID.forEach(
        (component, millimoles) ->
            equilibria.setTotal(equilibria.indexOf(component), millimoles / 1000));
    equilibria.setInertCharge(0.0002);
    return equilibria;
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void chargesOfTheComponentsAddUpToTheChargeOfTheMixture(Level level) {
    Equilibria equilibria = liquid(level);
    for (double at : new double[] {3, 6, 8, 11}) {
      double whole = equilibria.chargeAt(at);
      double sum = 0.0002;
      for (int i = 0; i < equilibria.components().size(); i++) {
        sum += equilibria.chargeOf(i);
      }
      for (Species species : equilibria.species()) {
        if (species.component().isEmpty()) {
          int metalCharge = species.metal().map(Component::chargeWithoutProtons).orElse(0);
          sum += (species.charge() - metalCharge) * species.molality().inMolesPerKilogram();
        }
      }
      assertEquals(whole, sum, 1e-15);
    }
  }

  @ParameterizedTest
  @EnumSource(Level.class)
  void aDoseIntoAWorkSpaceIsThatIntoTheSolution(Level level) {
    Equilibria equilibria = liquid(level);
    double before = equilibria.pH();
    double[] added = new double[LIQUID.size()];
    added[equilibria.indexOf(Component.LACTATE)] = 1;
    Solution solution = Solution.at(celsius(25)).under(level);
    for (Map.Entry<Component, Double> entry : LIQUID.entrySet()) {
      solution = solution.with(entry.getKey(), mmolPerKg(entry.getValue()));
    }
    solution = solution.withInertCharge(mEqPerL(0.2 * solution.kilogramsPerLitre()));
    assertEquals(
        solution.doseOf(Acid.LACTIC, pH(5.5)).inMolesPerKilogram(),
        equilibria.doseTo(added, pH(5.5)),
        1e-12);
    assertEquals(before, equilibria.pH(), 1e-12);
    assertThrows(NoSolutionException.class, () -> equilibria.doseTo(added, pH(9)));
    assertEquals(before, equilibria.pH(), 1e-12);
    assertThrows(IllegalArgumentException.class, () -> equilibria.indexOf(Component.CITRATE));
  }

  private static final List<Component> WATER =
      List.of(
          Component.SODIUM,
          Component.POTASSIUM,
          Component.CALCIUM,
          Component.MAGNESIUM,
          Component.CHLORIDE,
          Component.SULFATE,
          Component.CARBONATE);

  private static final List<Component> BEER =
      Stream.concat(
              WATER.stream(),
              Stream.of(
                  Component.PHOSPHATE,
                  Component.CITRATE,
                  Component.LACTATE,
                  Component.ACETATE,
                  Component.SUCCINATE))
          .toList();

  /** A slope is exact, so that what is left is the error of the difference it is held against. */
  @Property(tries = 150)
  void slopesOfRandomWatersAndBeersAreThoseOfDifferences(
      @ForAll long seed, @ForAll Level level, @ForAll boolean beer, @ForAll boolean open) {
    List<Component> components = beer ? BEER : WATER;
    Random random = new Random(seed);
    Equilibria equilibria = Equilibria.of(components, celsius(20), Chemistry.of(level));
    int n = components.size();
    double[] own = new double[n + 1];
    for (int j = 0; j < n; j++) {
      own[j] = 1e-5 * Math.pow(1000, random.nextDouble());
    }
    own[n] = (random.nextBoolean() ? 1 : -1) * 1e-3 * (1 + random.nextDouble());
    int carbonate = equilibria.indexOf(Component.CARBONATE);
    if (open) {
      equilibria.hold(Component.CARBONATE, 2, -4 + random.nextDouble());
    }
    double at = beer ? 3.5 + 2 * random.nextDouble() : 6 + 2 * random.nextDouble();
    double[] change = new double[n + 1];
    double[][] slopes = new double[3][n + 1];
    double[] base = figures(equilibria, own, change, 0, at, carbonate);
    double byPh = equilibria.chargeSlopes(slopes[0]);
    assertEquals(-equilibria.bufferCapacity(), byPh, 1e-9 * Math.abs(byPh));
    equilibria.chargeSlopesOf(carbonate, slopes[1]);
    equilibria.ionicStrengthSlopes(slopes[2]);
    for (int j = 0; j <= n; j++) {
      double step = 0.004 * Math.abs(own[j]);
      change[j] = step;
      double[] one = figures(equilibria, own, change, 1, at, carbonate);
      double[] two = figures(equilibria, own, change, 2, at, carbonate);
      double[] minusOne = figures(equilibria, own, change, -1, at, carbonate);
      double[] minusTwo = figures(equilibria, own, change, -2, at, carbonate);
      change[j] = 0;
      if (two[0] * minusTwo[0] < 0) {
        continue; // the charge left over turns its sign, and its share in ionic strength has a kink
      }
      for (int figure = 0; figure < 3; figure++) {
        double expected =
            (8 * (one[figure] - minusOne[figure]) - (two[figure] - minusTwo[figure])) / (12 * step);
        double rounding = 1e-14 * (Math.abs(base[figure]) + base[2]) / step;
        assertEquals(
            expected,
            slopes[figure][j],
            1e-6 * Math.max(0.01, Math.abs(expected)) + rounding,
            "figure " + figure + " by total " + j);
      }
    }
  }

  /** Net charge, charge of carbonate and ionic strength. */
  private static double[] figures(
      Equilibria equilibria,
      double[] own,
      double[] change,
      double share,
      double at,
      int carbonate) {
    int n = own.length - 1;
    for (int j = 0; j < n; j++) {
      equilibria.setTotal(j, own[j] + share * change[j]);
    }
    equilibria.setInertCharge(own[n] + share * change[n]);
    double charge = equilibria.chargeAt(at);
    return new double[] {charge, equilibria.chargeOf(carbonate), equilibria.ionicStrength()};
  }

  private static Equilibria beer(Chemistry chemistry) {
    Equilibria equilibria = Equilibria.of(BEER, celsius(20), chemistry);
    for (int i = 0; i < BEER.size(); i++) {
      equilibria.setTotal(i, 1e-3 * (1 + i % 5));
    }
    return equilibria;
  }

  /** Each step of each acid, its constant moved by a thousandth and two thousandths. */
  @ParameterizedTest
  @EnumSource(Level.class)
  void slopesByPKaAreThoseOfDifferences(Level level) {
    Chemistry chemistry = Chemistry.of(level);
    double kelvin = celsius(20).inKelvin();
    Equilibria equilibria = beer(chemistry);
    double[] perTotal = new double[BEER.size() + 1];
    for (Component component : BEER) {
      int index = equilibria.indexOf(component);
      for (int step = 0; step < component.protons(); step++) {
        double[] charge = new double[5];
        for (int moved = -2; moved <= 2; moved++) {
          EquilibriumConstant[] constants =
              chemistry.constants().of(component).stream()
                  .map(constant -> EquilibriumConstant.ofLog10(constant.log10(kelvin)))
                  .toArray(EquilibriumConstant[]::new);
          constants[step] =
              EquilibriumConstant.ofLog10(constants[step].log10(kelvin) - 1e-3 * moved);
          charge[moved + 2] =
              beer(chemistry.withConstants(chemistry.constants().with(component, constants)))
                  .chargeAt(4.5);
        }
        double expected = (8 * (charge[3] - charge[1]) - (charge[4] - charge[0])) / 12e-3;
        equilibria.chargeAt(4.5);
        equilibria.chargeSlopes(perTotal);
        assertEquals(
            expected,
            equilibria.chargeSlopeByPKa(index, step),
            1e-9 + 1e-7 * Math.abs(expected),
            component.key() + " step " + step);
      }
    }
  }

  /** By hand: of c acid a half is dissociated at its pKa, and ln 10 c / 4 changes sides a unit. */
  @Test
  void theSlopeByThePKaOfOneAcid() {
    Equilibria equilibria =
        Equilibria.of(List.of(Component.LACTATE), celsius(25), Chemistry.of(Level.IDEAL));
    equilibria.setTotal(0, 0.01);
    double pKa =
        -Chemistry.of(Level.IDEAL)
            .constants()
            .of(Component.LACTATE)
            .get(0)
            .log10(celsius(25).inKelvin());
    equilibria.chargeAt(pKa);
    equilibria.chargeSlopes(new double[2]);
    assertEquals(Math.log(10) * 0.01 / 4, equilibria.chargeSlopeByPKa(0, 0), 1e-12);
  }

  @Test
  void aSlopeByAPKaThatIsNotThereIsRefused() {
    Equilibria equilibria = beer(Chemistry.standard());
    equilibria.hold(Component.CARBONATE, 2, -4);
    equilibria.chargeAt(4.5);
    equilibria.chargeSlopes(new double[BEER.size() + 1]);
    int lactate = equilibria.indexOf(Component.LACTATE);
    assertEquals(
        "index: 12 is not possible; 0 to 11 is allowed",
        assertThrows(
                IllegalArgumentException.class, () -> equilibria.chargeSlopeByPKa(BEER.size(), 0))
            .getMessage());
    assertEquals(
        "step: 1 is not possible; 0 to 0 is allowed",
        assertThrows(IllegalArgumentException.class, () -> equilibria.chargeSlopeByPKa(lactate, 1))
            .getMessage());
    assertEquals(
        "step: 0 is not possible; none is allowed",
        assertThrows(
                IllegalArgumentException.class,
                () -> equilibria.chargeSlopeByPKa(equilibria.indexOf(Component.SODIUM), 0))
            .getMessage());
    int carbonate = equilibria.indexOf(Component.CARBONATE);
    assertEquals(
        "slope by a constant: an activity of the ligand is held",
        assertThrows(IllegalStateException.class, () -> equilibria.chargeSlopeByPKa(carbonate, 0))
            .getMessage());
  }

  @Test
  void aTotalIsFiniteAndNotNegative() {
    Equilibria equilibria = liquid(Level.IDEAL);
    equilibria.setTotal(1, 0);
    assertEquals(0, equilibria.total(1), 0);
    equilibria.setTotal(1, 3e-3);
    assertEquals(3e-3, equilibria.total(1), 0);
    for (double wrong : new double[] {-1e-3, Double.POSITIVE_INFINITY, Double.NaN}) {
      assertThrows(IllegalArgumentException.class, () -> equilibria.setTotal(1, wrong));
    }
    assertEquals(3e-3, equilibria.total(1), 0);
    assertThrows(IllegalArgumentException.class, () -> equilibria.total(6));
  }
}
