package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mV;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.substance.Acid;

class TitrationPropertyTest {

  @Property(tries = 300)
  void theAcidityGivesTheTitreBack(
      @ForAll @DoubleRange(min = 0.01, max = 1) @Scale(6) double concentration,
      @ForAll @DoubleRange(min = 5, max = 100) @Scale(4) double sample,
      @ForAll @DoubleRange(min = 0.5, max = 50) @Scale(4) double titre,
      @ForAll @DoubleRange(min = 0, max = 0.4) @Scale(4) double blank,
      @ForAll @DoubleRange(min = 1, max = 20) @Scale(4) double factor) {
    AcidityResult ta =
        Titrant.sodiumHydroxide()
            .of(molPerL(concentration), molPerL(concentration / 1000))
            .titrate(mL(sample))
            .prediluted(factor)
            .blank(mL(blank))
            .took(mL(titre))
            .acidity();
    double moles = ta.value().inMilliequivalentsPerLitre() * sample / factor / 1000;
    assertEquals(titre, moles / concentration + blank, 1e-9 * titre);
    assertTrue(ta.budget().traced().standardUncertainty().orElseThrow() > 0);
    assertEquals(
        ta.value().inGramsPerLitreAs(Acid.LACTIC),
        ta.as(Acid.LACTIC).in(Scales.acidityPer100MillilitresAs(Acid.LACTIC, pH(8.2))).number()
            * 10,
        1e-9 * Math.abs(ta.value().inGramsPerLitreAs(Acid.LACTIC)));
  }

  @Property(tries = 300)
  void anElectrodeReadsBackWhatItWouldShow(
      @ForAll @DoubleRange(min = 130, max = 210) @Scale(3) double inFour,
      @ForAll @DoubleRange(min = -20, max = 20) @Scale(3) double inSeven,
      @ForAll @DoubleRange(min = 0, max = 14) @Scale(4) double asked,
      @ForAll @DoubleRange(min = 0, max = 70) @Scale(2) double sample) {
    ElectrodeCalibration calibration =
        ElectrodeCalibration.of(
            celsius(25),
            CalibrationReading.of(pH(4.01), mV(inFour)),
            CalibrationReading.of(pH(7), mV(inSeven)));
    assertEquals(
        asked,
        calibration.pH(calibration.potential(pH(asked), celsius(sample)), celsius(sample)).value(),
        1e-9);
  }

  @Property(tries = 300)
  void theSplitAddsUpToTheTotal(
      @ForAll @DoubleRange(min = 0.01, max = 20) @Scale(6) double m,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double share) {
    AlkalinitySplit split =
        AlkalinitySplit.of(
            TitrationAlkalinity.ofMilliequivalentsPerLitre(share * m, pH(8.3)),
            TitrationAlkalinity.ofMilliequivalentsPerLitre(m, pH(4.5)));
    double sum =
        split
            .hydroxide()
            .value()
            .plus(split.carbonate().value())
            .plus(split.bicarbonate().value())
            .inMilliequivalentsPerLitre();
    assertEquals(m, sum, 1e-12 * m);
    double hydroxide = split.hydroxide().value().inMilliequivalentsPerLitre();
    assertEquals(
        share * m, hydroxide + split.carbonate().value().inMilliequivalentsPerLitre() / 2, 1e-9);
  }
}
