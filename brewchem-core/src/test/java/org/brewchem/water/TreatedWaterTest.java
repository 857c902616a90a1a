package org.brewchem.water;

import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.treatment.Treatments.acid;
import static org.brewchem.treatment.Treatments.aeration;
import static org.brewchem.treatment.Treatments.salt;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.junit.jupiter.api.Test;

/** What a treated water says of itself that hardly any brewing water is. */
class TreatedWaterTest {

  private static final Water SOFT =
      WaterReport.reported()
          .calcium(mgPerL(9))
          .magnesium(mgPerL(1.5))
          .sodium(mgPerL(6))
          .potassium(mgPerL(1))
          .sulfate(mgPerL(7))
          .chloride(mgPerL(8))
          .nitrate(mgPerL(2))
          .alkalinityAsCaCO3(mgPerL(22))
          .pH(pH(7.2))
          .build()
          .water();

  private static final Reagent LACTIC =
      Reagent.of(Acid.LACTIC, massPercent(80))
          .withDensity(Density.ofGramsPerMillilitre(1.18), 0.002);

  private static List<String> texts(Water water, WaterCode code) {
    return water.notices().stream()
        .filter(notice -> notice.code() == code)
        .map(Notice::toString)
        .toList();
  }

  @Test
  void acidWithoutALimitToThePHIsSaid() {
    Water sour = SOFT.after(acid(LACTIC, VolumeRatio.ofMillilitresPerLitre(4)));
    assertTrue(sour.pH().number() < 3, sour.pH().toString());
    List<String> said = texts(sour, WaterCode.TREATED_WATER_UNUSUAL);
    assertEquals(1, said.size());
    assertTrue(
        said.get(0).matches("pH of the treated water: pH 2\\.\\d+ is unusual in brewing water;.*"),
        said.get(0));
    assertEquals(
        List.of(),
        texts(
            SOFT.after(acid(LACTIC, VolumeRatio.ofMillilitresPerLitre(0.02))),
            WaterCode.TREATED_WATER_UNUSUAL));
    assertEquals(List.of(), texts(SOFT, WaterCode.TREATED_WATER_UNUSUAL));
  }

  /** By hand: 3 g/L of sodium chloride hold 1180 mg/L of sodium, where 1000 is unusual. */
  @Test
  void anIonThatHardlyAnyWaterHasIsSaid() {
    Water salty = SOFT.after(salt(Salt.SODIUM_CHLORIDE, gPerL(3)));
    List<String> said = texts(salty, WaterCode.TREATED_WATER_UNUSUAL);
    assertTrue(said.get(0).startsWith("sodium of the treated water: 118"), said.toString());
    assertTrue(said.get(1).startsWith("chloride of the treated water: 1"), said.toString());
    assertEquals(2, said.size());
  }

  /** Acid in a closed vessel leaves its carbon dioxide in the water, and a sparge is open. */
  @Test
  void carbonDioxideThatWillLeaveIsSaid() {
    Water closed = SOFT.after(acid(LACTIC, VolumeRatio.ofMillilitresPerLitre(0.3)));
    assertEquals(1, texts(closed, WaterCode.CARBON_DIOXIDE_LEAVES).size());
    Water open = closed.after(aeration());
    assertEquals(List.of(), texts(open, WaterCode.CARBON_DIOXIDE_LEAVES));
    assertTrue(open.pH().number() > closed.pH().number());
    assertFalse(closed.notices().isEmpty());
  }
}
