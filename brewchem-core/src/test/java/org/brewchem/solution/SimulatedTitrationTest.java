package org.brewchem.solution;

import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.junit.jupiter.api.Test;

/** Strong acid and lye by hand: what is left over of one, in the volume of both. */
class SimulatedTitrationTest {

  private static final Solution LYE = Solution.textbook().with(Base.SODIUM_HYDROXIDE, molPerL(0.1));

  private static SimulatedTitration titration(Solution sample) {
    return SimulatedTitration.of(sample, LYE, mL(50));
  }

  @Test
  void theTitrantDilutesTheSample() {
    SimulatedTitration titration =
        titration(Solution.textbook().with(Acid.HYDROCHLORIC, mmolPerL(10)));
    assertEquals(5, titration.volumeTo(pH(7)).inMillilitres(), 1e-9);
    double[] byHand = {-Math.log10(0.5 / 50), -Math.log10(0.3 / 52), 14 + Math.log10(0.5 / 60)};
    assertArrayEquals(byHand, titration.pHAfter(new double[] {0, 2, 10}), 1e-9);
    assertEquals(byHand[2], titration.pHAfter(mL(10)).value(), 1e-9);
  }

  /** 10 mEq/L of inert anions are an acid without a name, 100 of inert cations a lye. */
  @Test
  void inertChargesMixToo() {
    SimulatedTitration titration =
        SimulatedTitration.of(
            Solution.textbook().withInertCharge(mEqPerL(-10)),
            Solution.textbook().withInertCharge(mEqPerL(100)),
            mL(50));
    assertEquals(5, titration.volumeTo(pH(7)).inMillilitres(), 1e-9);
    assertEquals(-Math.log10(0.3 / 52), titration.pHAfter(mL(2)).value(), 1e-9);
  }
}
