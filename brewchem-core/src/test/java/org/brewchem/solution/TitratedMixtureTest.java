package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerKg;
import static org.brewchem.quantity.Quantities.molPerKg;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class TitratedMixtureTest {

  private static final Solution LYE =
      Solution.at(celsius(20)).with(Base.SODIUM_HYDROXIDE, molPerKg(0.1));

  private static Solution beer(double lactate) {
    return Solution.at(celsius(20))
        .with(Component.CALCIUM, mmolPerKg(1.5))
        .with(Acid.PHOSPHORIC, mmolPerKg(7))
        .with(Component.LACTATE, mmolPerKg(lactate));
  }

  @Test
  void itIsTheTitrationThatItWasMadeOf() {
    SimulatedTitration titration = SimulatedTitration.of(beer(2), LYE, mL(50));
    TitratedMixture mixture = titration.mixture();
    for (double x : new double[] {0, 0.01, 0.14, 1}) {
      assertEquals(titration.pHAfter(mL(50 * x)).value(), mixture.with(x).pH(), 1e-12);
    }
    assertEquals(1, mixture.share(0));
    assertEquals(0.8, mixture.share(0.25), 1e-15);
  }

  @Test
  void whatIsChangedIsTheSampleAndNotTheTitrant() {
    TitratedMixture mixture = SimulatedTitration.of(beer(2), LYE, mL(50)).mixture();
    mixture.setSample(Component.LACTATE, 3e-3);
    mixture.setSample(Component.SODIUM, 5e-3);
    mixture.setSampleInertCharge(-1e-3);
    Solution changed = beer(3).with(Component.SODIUM, mmolPerKg(5));
    changed = changed.withInertCharge(mEqPerL(-1 * changed.kilogramsPerLitre()));
    for (double x : new double[] {0, 0.1}) {
      assertEquals(
          SimulatedTitration.of(changed, LYE, mL(50)).pHAfter(mL(50 * x)).value(),
          mixture.with(x).pH(),
          1e-12);
    }
  }

  private static String refusal(Executable call) {
    return assertThrows(IllegalArgumentException.class, call).getMessage();
  }

  @Test
  void refusalsNameTheArgument() {
    TitratedMixture mixture = SimulatedTitration.of(beer(2), LYE, mL(50)).mixture();
    assertEquals(
        "titrant per sample: -1 is not possible; 0 or more is allowed",
        refusal(() -> mixture.with(-1)));
    assertEquals(
        "titrant per sample: NaN is not possible; a finite number is allowed",
        refusal(() -> mixture.share(Double.NaN)));
    assertEquals(
        "lactate: -0.001 mol/kg is not possible; 0 or more is allowed",
        refusal(() -> mixture.setSample(Component.LACTATE, -1e-3)));
    assertEquals(
        "inert charge: Infinity Eq/kg is not possible; a finite number is allowed",
        refusal(() -> mixture.setSampleInertCharge(Double.POSITIVE_INFINITY)));
    assertEquals(
        "citrate3- is none of the components",
        refusal(() -> mixture.setSample(Component.CITRATE, 1e-3)).substring(0, 35));
  }
}
