package org.brewchem.mash;

import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.mEqPerLPerPH;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.substance.Acid;
import org.brewchem.uncertainty.Interval;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

class WortToBeerTest {

  private static Mash mash() {
    return Mash.of(Grist.of(kg(200), Malt.assumed(MaltKind.PALE)), Mashes.tap(), hL(8));
  }

  private static final WortToBeer WAY = WortToBeer.of(mash(), massPercent(12));

  private static WortToBeer way() {
    return WAY;
  }

  @Test
  void thePHOnTheWayIsThatOfTheMashWithWhatIsPrinted() {
    WortToBeer way = way();
    Interval mash = mash().interval();
    assertEquals(mash.lower(), way.mashPH().lower());
    assertEquals(mash.lower() + 0.12, way.wortPH().lower(), 1e-12);
    assertEquals(mash.upper() + 0.14, way.wortPH().upper(), 1e-12);
    assertEquals(mash.lower() + 0.12 - 0.4, way.knockOutPH().lower(), 1e-12);
    assertEquals(mash.upper() + 0.14 - 0.2, way.knockOutPH().upper(), 1e-12);
    assertEquals(mash.lower() + 0.12 - 0.4 - 1.3, way.beerPH().lower(), 1e-12);
    assertEquals(mash.upper() + 0.14 - 0.2 - 0.7, way.beerPH().upper(), 1e-12);
    assertEquals(4, way.beerPH().basis().size());
    assertTrue(
        way.beerPH().basis().get(3).contains("macwilliam-1975"), way.beerPH().basis().get(3));
    assertTrue(way.beerPH().basis().get(3).contains("the width is our choice"));
  }

  /** 12 °P x 0.3 of pH x 0.44 to 0.51 mEq/(L pH) per °P. */
  @Test
  void acidAtKnockOutGoesByTheExtract() {
    SourcedRange acid = way().acid(pH(5.5), pH(5.2), WortBuffer.assumedAtKnockOut());
    double free = 1000 * (Math.pow(10, -5.2) - Math.pow(10, -5.5));
    assertEquals(12 * 0.3 * 0.44 + free, acid.lower(), 1e-4);
    assertEquals(12 * 0.3 * 0.51 + free, acid.upper(), 1e-4);
    assertEquals("mEq/L", acid.unit());
    SourcedRange thin =
        WortToBeer.of(mash(), massPercent(6))
            .acid(pH(5.5), pH(5.2), WortBuffer.assumedAtKnockOut());
    assertEquals(6 * 0.3 * 0.44 + free, thin.lower(), 1e-4);
  }

  /** Computed row: 12 °P from 5.2 to 3.4 takes 5.8 g/L of lactic acid, 4.3 to 7.7. */
  @Test
  void souringTakesAsMuchLacticAcidAsTheProtonBalanceSays() {
    SourcedRange lactic = way().acid(Acid.LACTIC, pH(5.2), pH(3.4), WortBuffer.assumedForSouring());
    assertEquals("g/hL", lactic.unit());
    assertEquals(430, lactic.lower(), 10);
    assertEquals(770, lactic.upper(), 10);
    assertTrue(lactic.basis().stream().anyMatch(basis -> basis.contains("Eq/mol at pH 3.4")));
  }

  @Test
  void aMeasuredWortReplacesTheAssumedOne() {
    WortBuffer own =
        WortBuffer.measured(mEqPerLPerPH(5.4), mEqPerLPerPH(6.0), massPercent(12), "own wort 7");
    assertEquals(0.45, own.perDegree().lower(), 1e-12);
    assertEquals(0.50, own.perDegree().upper(), 1e-12);
    assertTrue(own.perDegree().basis().get(0).contains("own wort 7"));
    assertTrue(way().acid(pH(5.5), pH(5.2), own).toString().startsWith("acid into the wort 1.6"));
  }

  /** The tap: 45 mg/L of sulfate, 31 of chloride; at 12 °P malt brings 150 to 200 of chloride. */
  @Test
  void sulfateToChlorideOfTheWaterAndOfTheBeerAreTwoFigures() {
    WortToBeer way = way();
    assertEquals(45 / 31.0, way.sulfateToChlorideOfTheWater().number(), 1e-9);
    assertEquals(31 + 150, way.chlorideOfTheBeer().lower(), 1e-9);
    assertEquals(31 + 200.4, way.chlorideOfTheBeer().upper(), 1e-9);
    assertEquals(45, way.sulfateOfTheBeer().lower(), 1e-9);
    assertEquals(45 + 205.2, way.sulfateOfTheBeer().upper(), 1e-9);
    SourcedRange ofBeer = way.sulfateToChlorideOfTheBeer();
    assertEquals(45 / 231.4, ofBeer.lower(), 1e-9);
    assertEquals(250.2 / 181, ofBeer.upper(), 1e-9);
    assertFalse(ofBeer.contains(way.sulfateToChlorideOfTheWater().number()));
    WortToBeer unknown =
        WortToBeer.of(
            mash()
                .with(
                    WaterReport.reported()
                        .calcium(mgPerL(40), mgPerL(1))
                        .magnesium(mgPerL(4), mgPerL(1))
                        .alkalinityAsCaCO3(mgPerL(100), mgPerL(2))
                        .pH(pH(7.5), 0.1)
                        .build()
                        .water()),
            massPercent(12));
    assertThrows(UnknownFigureException.class, unknown::chlorideOfTheBeer);
  }

  @Test
  void everyRangeHasABasisWithItsSource() {
    for (SourcedRange range :
        List.of(
            WortRanges.RISE_OF_PH_FROM_MASH_TO_WORT,
            WortRanges.FALL_OF_PH_ON_BOILING,
            WortRanges.KNOCK_OUT_PH_OF_CASK_ALES,
            WortRanges.KNOCK_OUT_PH_OF_STRONG_ALES,
            WortRanges.KNOCK_OUT_PH_OF_WEAK_ALES,
            WortRanges.FALL_OF_PH_IN_FERMENTATION,
            WortRanges.PH_OF_ALES,
            WortRanges.PH_OF_LAGERS,
            WortRanges.CALCIUM_OF_BEERS,
            WortRanges.MAGNESIUM_OF_BEERS,
            WortRanges.POTASSIUM_OF_BEERS,
            WortRanges.SODIUM_OF_BEERS,
            WortRanges.CHLORIDE_OF_BEERS,
            WortRanges.SULFATE_OF_BEERS)) {
      assertTrue(range.lower() < range.upper(), range.toString());
      assertTrue(
          range.basis().get(0).matches("(?s).*\\((seen|computed)\\).*"), range.basis().get(0));
    }
    assertEquals(
        "pH at knock-out 5.00 to 5.30 pH", WortRanges.KNOCK_OUT_PH_OF_CASK_ALES.toString());
  }

  @Test
  void whatIsNoRangeIsRefused() {
    refused("pH, lower end: 5.6 pH", () -> new SourcedRange("pH", 5.6, 5.5, "pH", List.of("own")));
    refused("pH: a range without a basis", () -> new SourcedRange("pH", 5, 6, "pH", List.of()));
    refused("extract: 0 °P", () -> WortToBeer.of(mash(), massPercent(0)));
    refused("extract: 40 °P", () -> WortToBeer.of(mash(), massPercent(40)));
    WortToBeer way = way();
    refused(
        "target: pH 5.6 is not possible",
        () -> way.acid(pH(5.5), pH(5.6), WortBuffer.assumedAtKnockOut()));
    assertFalse(way.cautions().isEmpty());
  }

  private static void refused(String start, org.junit.jupiter.api.function.Executable input) {
    IllegalArgumentException exception = assertThrows(IllegalArgumentException.class, input);
    assertTrue(exception.getMessage().startsWith(start), exception.getMessage());
  }
}
