package org.brewchem.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.brewchem.OutOfRangeException;
import org.junit.jupiter.api.Test;

class UsualRangeTest {

  private static final UsualRange TITRANT = UsualRange.named("concentration of a titrant");

  /** What cannot be lies outside what is usual, and what is usual can be. */
  @Test
  void boundsStandInOrderInEveryRow() {
    assertTrue(UsualRange.all().size() >= 40);
    for (UsualRange range : UsualRange.all()) {
      assertTrue(range.lower().isPresent() || range.upper().isPresent(), range::quantity);
      double lower = range.lower().orElse(-1e100);
      double upper = range.upper().orElse(1e100);
      assertTrue(lower < upper, range::toString);
      assertTrue(range.holds(lower) && range.holds(upper), range::toString);
      assertEquals(lower, range.possible("x", lower), range.toString());
      assertEquals(upper, range.possible("x", upper), range.toString());
      assertTrue(range.slip((lower + upper) / 2).isEmpty(), range::toString);
    }
  }

  @Test
  void everySourceResolves() throws IOException {
    String sources = Files.readString(Path.of("../docs/sources.md"));
    for (UsualRange range : UsualRange.all()) {
      assertTrue(sources.contains("### `" + range.sourceKey() + "`"), range.sourceKey());
    }
  }

  @Test
  void anUnusualValueIsNamedWithItsRangeAndTheSlip() {
    Notice notice = TITRANT.judge("concentration of NaOH", 0.1 * 100).orElseThrow();
    assertEquals(FigureCode.UNUSUAL_VALUE, notice.code());
    assertEquals(
        "concentration of NaOH: 10 mol/L is unusual; usual is 0.005 to 2 mol/L; perhaps mmol/L"
            + " typed as mol/L: 0.01 mol/L",
        notice.text());
    assertEquals(Optional.empty(), TITRANT.judge("concentration of NaOH", 0.1));
    assertEquals(7, TITRANT.judge("titrant", 7, 3).orElseThrow().row().orElseThrow());
  }

  @Test
  void whatCannotBeIsRefusedWithTheSlip() {
    OutOfRangeException refused =
        assertThrows(OutOfRangeException.class, () -> TITRANT.possible("titrant", 100));
    assertEquals("titrant", refused.argument());
    assertEquals(100, refused.value());
    assertTrue(refused.getMessage().contains("mmol/L typed as mol/L: 0.1 mol/L"));
    assertThrows(OutOfRangeException.class, () -> TITRANT.possible("titrant", 1e-9));
    assertThrows(OutOfRangeException.class, () -> TITRANT.possible("titrant", Double.NaN));
    assertEquals(20, TITRANT.possible("titrant", 20));
  }

  @Test
  void aRangeReadsAsItsBounds() {
    assertEquals("concentration of a titrant", TITRANT.quantity());
    assertEquals("concentration of a titrant: 0.005 to 2 mol/L", TITRANT.toString());
    assertEquals("4 mEq/L or more", UsualRange.named("titratable acidity of a beer").text());
    assertEquals("pH 2.8 to 5.4", UsualRange.named("pH of a beer").text());
    assertEquals("0.15 to 16", UsualRange.named("pKa").text());
    UsualRange calcium = UsualRange.named("calcium of a water");
    OutOfRangeException refused =
        assertThrows(OutOfRangeException.class, () -> calcium.possible("calcium", 2e6));
    assertEquals("1000000 mg/L or less", refused.allowed());
  }

  /** What is typed as -0 goes on as 0: quantities hold no -0.0. */
  @Test
  void aNegativeZeroIsZero() {
    assertEquals(0.0, UsualRange.named("titre").possible("titre", -0.0));
  }

  /** 21.5 °C are 294.65 K and 70.7 °F. */
  @Test
  void slipsOfOtherShapesThanAFactorAreKnown() {
    UsualRange temperature = UsualRange.named("temperature of a titration");
    assertTrue(temperature.slip(294.65).orElseThrow().contains("K typed as °C: 21.5 °C"));
    assertTrue(temperature.slip(70.7).orElseThrow().contains("°F typed as °C: 21.5 °C"));
    UsualRange ka = UsualRange.named("dissociation constant Ka");
    assertTrue(ka.slip(4.76).orElseThrow().contains("pKa typed as Ka: 0.0000174 mol/L"));
    assertTrue(UsualRange.named("pKa").slip(1.738e-5).orElseThrow().contains("pKa: 4.76"));
    assertTrue(
        UsualRange.named("alkalinity of a water").slip(3765).orElseThrow().contains("°dH: 210.8"));
  }

  /**
   * 0.3 g/L of lactic acid (90.078 g/mol) are 3.3304... mEq/L: the zero of 3330 was never known,
   * and no beer has so much acid. 21 °C are 294.15 K; 71 °F are 21.67 °C.
   */
  @Test
  void aSuggestedValueHasTheDigitsThatAreKnown() {
    UsualRange acidity = UsualRange.named("titratable acidity of a beer");
    double converted = 300 / 90.078;
    assertEquals(
        "perhaps g/L typed as g per 100 mL, or a decimal place: 33 mEq/L",
        acidity.slip(converted).orElseThrow());
    assertEquals(
        "perhaps g/L typed as g per 100 mL, or a decimal place: 33.3 mEq/L",
        acidity.slip(3.33).orElseThrow());
    assertEquals("perhaps g/L typed as mg/L: 20 mEq/L", acidity.slip(1.8 / 90.078).orElseThrow());
    UsualRange temperature = UsualRange.named("temperature of a titration");
    assertEquals("perhaps K typed as °C: 21 °C", temperature.slip(294).orElseThrow());
    assertEquals("perhaps °F typed as °C: 21.7 °C", temperature.slip(71).orElseThrow());
    UsualRange mass = UsualRange.named("mass of a primary standard");
    assertEquals("perhaps mg typed as g: 0.4082 g", mass.slip(408.2).orElseThrow());
    assertEquals("perhaps mg typed as g: 0.41 g", mass.slip(410).orElseThrow());
    // In binary this is 434.99999999999994.
    assertEquals("perhaps mg typed as g: 0.435 g", mass.slip(4.35 * 100).orElseThrow());
  }

  @Test
  void aNameThatIsNotThereIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> UsualRange.named("calcium of a soup"));
    assertFalse(UsualRange.named("pKa").note().isEmpty());
    List<UsualRange> all = UsualRange.all();
    assertThrows(UnsupportedOperationException.class, () -> all.remove(0));
  }

  @Test
  void whatCanBeIsWhatIsNotRefused() {
    for (UsualRange range : UsualRange.all()) {
      for (double value : new double[] {-1e9, -1, 0, 0.01, 1, 14, 100, 1e5, 1e9}) {
        boolean refused = false;
        try {
          range.possible("x", value);
        } catch (OutOfRangeException e) {
          refused = true;
        }
        assertEquals(!refused, range.isPossible(value), range + " " + value);
      }
      assertThrows(OutOfRangeException.class, () -> range.isPossible(Double.NaN));
    }
  }
}
