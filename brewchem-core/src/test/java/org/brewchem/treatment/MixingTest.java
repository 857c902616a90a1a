package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Component;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** Shares by volume of liquids that hold unlike masses of water to the litre. */
class MixingTest {

  private static final Solution SALTED =
      Solution.at(celsius(25)).with(Salt.SODIUM_CHLORIDE, mmolPerL(30));
  private static final Solution TEXTBOOK =
      Solution.textbook().with(Salt.SODIUM_CHLORIDE, mmolPerL(10));

  private static double chloride(Contents contents) {
    return contents.least(Component.CHLORIDE).value();
  }

  /** By hand: three litres with their water and their chloride, one with its own. */
  @Test
  void volumesMixByTheWaterThatTheyHold() {
    Contents salted = SALTED.contents();
    Contents textbook = TEXTBOOK.contents();
    double ownWater = 3 * salted.kilogramsPerLitre();
    double otherWater = textbook.kilogramsPerLitre();
    double expected =
        (ownWater * chloride(salted) + otherWater * chloride(textbook)) / (ownWater + otherWater);
    Contents mixed = SALTED.after(Treatments.blend(hL(3), TEXTBOOK, hL(1))).contents();
    assertEquals(expected, chloride(mixed), 1e-12);
  }

  /** The part of an uncertain share by volume is the change that another share makes. */
  @Test
  void anUncertainShareByVolumeCountsAsTheDifferenceThatItMakes() {
    Source share = Source.of("share", 0.25, 0.01, "");
    Traced mixed = mixed(Traced.of(share));
    double step = 1e-4;
    double expected =
        (mixed(Traced.exact(0.25 + step)).value() - mixed(Traced.exact(0.25 - step)).value())
            / (2 * step)
            * 0.01;
    assertEquals(expected, mixed.parts().get(share), 1e-6 * Math.abs(expected));
  }

  private static Traced mixed(Traced share) {
    Contents textbook = TEXTBOOK.contents();
    return new Mixing(before -> textbook, "another", share, true, List.of())
        .on(SALTED.contents())
        .least(Component.CHLORIDE);
  }
}
