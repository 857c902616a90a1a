package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Step;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class WeakAcidCurveTest {

  private static final Component ACID = Component.group("an acid", -1, 4.7);

  private static final Titrant LYE = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0002));

  /** 10 mmol/L in 25 mL, diluted twice before and into 25 mL of water: 2.5 mL of 0.1 mol/L. */
  private static WeakAcidCurve analysed() {
    double[] volumes = new double[40];
    for (int i = 0; i < 40; i++) {
      volumes[i] = 0.1 * i;
    }
    Solution sample = Solution.at(celsius(20)).with(ACID, mmolPerL(5));
    double[] read =
        SimulatedTitration.of(sample, LYE.solution(celsius(20)), mL(50)).pHAfter(volumes);
    for (int i = 0; i < 40; i++) {
      read[i] = Math.round(1000 * read[i]) / 1000.0;
    }
    return WeakAcidCurve.of(
        LYE.titrate(mL(25)).prediluted(2).into(mL(25)).log(volumes, read), Chemistry.standard());
  }

  @Test
  void volumeConcentrationAndConstantAreFoundAgain() {
    WeakAcidCurve curve = analysed();
    assertEquals(2.5, curve.equivalenceVolume().number(), 0.003);
    assertEquals(0.02, curve.concentration().number(), 2e-5);
    assertEquals(4.7, curve.pKa().number(), 0.003);
    // Both are the one fitted total.
    assertEquals(
        0.1 * curve.equivalenceVolume().number() / 12.5, curve.concentration().number(), 1e-6);
  }

  @Test
  void theConcentrationMovesWithTheTitrantAndTheVolumeDoesNot() {
    WeakAcidCurve curve = analysed();
    Source titrant = LYE.concentration().traced().sources().get(0);
    Traced concentration = curve.concentration().traced();
    assertEquals(concentration.value() / 0.1, concentration.sensitivity(titrant), 1e-9);
    assertEquals(0, curve.equivalenceVolume().traced().sensitivity(titrant));
  }

  @Test
  void theStepsHoldToRounding() {
    WeakAcidCurve curve = analysed();
    Step volume = curve.equivalenceVolume().step();
    assertTrue(volume.detail().orElseThrow().holds());
    assertTrue(volume.detail().orElseThrow().tolerance() < 1e-11);
    assertEquals(
        "fitted total x kg of water per litre x volume under the burette / titrant", volume.text());
    assertEquals(1, volume.inputs().size());
    Step concentration = curve.concentration().step();
    assertTrue(concentration.detail().orElseThrow().holds());
    assertTrue(concentration.detail().orElseThrow().tolerance() < 1e-13);
    assertEquals(2, concentration.inputs().size());
  }

  @Test
  void itPrintsVolumeAndConstant() {
    WeakAcidCurve curve = analysed();
    assertEquals(
        "equivalence volume " + curve.equivalenceVolume() + "; pKa " + curve.pKa(),
        curve.toString());
    assertEquals("fitted curve", curve.kind());
    assertEquals(
        List.of(
            "was not declared unknown, only [fitted total of weak acid, fitted pKa of weak acid]"),
        Answer.of(TitrationFigures.FITTED_INERT_CHARGE, curve).whyUnknown());
  }

  @Test
  void anAcidTitratesNoAcid() {
    TitrationLog log =
        Titrant.hydrochloricAcid()
            .of(molPerL(0.1))
            .titrate(mL(50))
            .log(new double[] {0, 1, 2}, new double[] {8, 6, 4});
    assertEquals(
        "log: HCl 0.1 mol/L titrates no acid; an alkali is needed",
        assertThrows(
                IllegalArgumentException.class, () -> WeakAcidCurve.of(log, Chemistry.standard()))
            .getMessage());
  }
}
