package org.brewchem.beer;

import static org.brewchem.beer.Beers.asLactic;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.buffer.Buffer;
import org.brewchem.buffer.BufferCode;
import org.brewchem.figure.Code;
import org.brewchem.figure.FigureCode;
import org.brewchem.figure.Notice;
import org.brewchem.mash.WortBuffer;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Salt;
import org.brewchem.titration.TitrationCode;
import org.brewchem.treatment.Treatments;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/** What is notable about a beer and a soured wort, before and after what is done to them. */
class BeerNoticesTest {

  private static List<String> unusual(Liquid liquid) {
    return liquid.notices().stream()
        .filter(notice -> notice.code() == FigureCode.UNUSUAL_VALUE)
        .map(Notice::subject)
        .toList();
  }

  private static long count(Liquid liquid, Code code) {
    return liquid.notices().stream().filter(notice -> notice.code() == code).count();
  }

  private static Beer beer() {
    return Beer.of(pH(4.4), asLactic(2.0));
  }

  /** Usual are pH 2.8 to 5.4, 4 mEq/L (0.36 g/L) or more, -2 to 40 °C, up to 500 mg/L of Ca. */
  @Test
  void whateverWasMeasuredIsJudged() {
    assertEquals(List.of(), unusual(beer()));
    assertEquals(List.of("pH of the beer"), unusual(Beer.of(pH(5.5), asLactic(2.0))));
    assertEquals(List.of("titratable acidity"), unusual(Beer.of(pH(4.9), asLactic(0.35))));
    assertEquals(List.of("temperature of the beer"), unusual(beer().measuredAt(celsius(45))));
    assertEquals(List.of("calcium of the beer"), unusual(beer().with(Ion.CALCIUM, mgPerL(510))));
    assertEquals(List.of(), unusual(beer().with(Ion.CALCIUM, mgPerL(490))));
  }

  @Test
  void aBeerWhoseBalanceIsOpenIsJudgedTheSame() {
    Water water = WaterReport.reported().magnesium(mgPerL(10)).build().water();
    Beer open = Beer.of(pH(3), asLactic(0.08)).with(Ion.CALCIUM, mgPerL(510)).brewedWith(water);
    assertEquals(List.of("titratable acidity", "calcium of the beer"), unusual(open));
    assertEquals(1, count(open, BeerCode.KNOWN_FROM_WATER_ONLY));
    assertEquals(1, count(open, BeerCode.ACIDITY_BELOW_STAND_IN));
    assertEquals(
        "wort: an open balance is not possible; " + String.join("; ", open.contents().whyOpen()),
        assertThrows(IllegalArgumentException.class, () -> Souring.of(open)).getMessage());
    assertFalse(open.after(Treatments.solute(Acid.LACTIC, mmolPerL(1))).pH().isStated());
  }

  /** 10 g/L are unusual; 100 mmol/L of lactic acid bring 9 g/L. */
  @Test
  void anAcidityThatATreatmentMakesUnusualIsNoticedOnce() {
    Beer soured = beer().after(Treatments.solute(Acid.LACTIC, mmolPerL(100)));
    assertEquals(0, count(beer(), TitrationCode.ACIDITY_UNUSUAL));
    assertEquals(1, count(soured, TitrationCode.ACIDITY_UNUSUAL));
    Beer sour = Beer.of(pH(3.2), asLactic(11));
    assertEquals(1, count(sour, TitrationCode.ACIDITY_UNUSUAL));
    assertEquals(
        1,
        count(
            sour.after(Treatments.solute(Acid.LACTIC, mmolPerL(10))),
            TitrationCode.ACIDITY_UNUSUAL));
    Beer little = beer().after(Treatments.solute(Acid.LACTIC, mmolPerL(1)));
    assertEquals(0, count(little, TitrationCode.ACIDITY_UNUSUAL));
    assertEquals(List.of(), unusual(little));
    Beer acid = beer().after(Treatments.solute(Acid.HYDROCHLORIC, mmolPerL(100)));
    assertEquals(List.of("pH of the beer after the treatment"), unusual(acid));
  }

  @Test
  void theIonsOfTheLastWaterAreShownAndThoseMeasuredStay() {
    Water first = WaterReport.reported().calcium(mgPerL(90)).chloride(mgPerL(30)).build().water();
    Water second = WaterReport.reported().calcium(mgPerL(50)).build().water();
    Beer twice = beer().brewedWith(first).brewedWith(second);
    assertEquals(50, twice.calcium().number(), 1e-9);
    assertEquals(30, twice.answer(Figures.CHLORIDE).number(), 1e-9);
    assertEquals(2, count(twice, BeerCode.KNOWN_FROM_WATER_ONLY));
    Beer measured = twice.with(Ion.CALCIUM, mgPerL(60)).brewedWith(first);
    assertEquals(60, measured.calcium().number(), 1e-9);
    assertEquals(1, count(measured, BeerCode.KNOWN_FROM_WATER_ONLY));
    assertFalse(twice.answer(Figures.SULFATE).isStated());
    assertFalse(twice.answer(Figures.NITRATE).isStated());
  }

  /** A millimole of calcium chloride brings 40.078 mg of calcium and 70.9 mg of chloride. */
  @Test
  void aDoseAddsToWhatTheWaterBrought() {
    Water water = WaterReport.reported().calcium(mgPerL(90)).build().water();
    Beer dosed =
        beer()
            .with(Ion.CHLORIDE, mgPerL(100))
            .brewedWith(water)
            .after(Treatments.solute(Salt.CALCIUM_CHLORIDE_ANHYDROUS, mmolPerL(1)));
    assertEquals(130.078, dosed.calcium().number(), 1e-6);
    assertEquals(100 + 2 * 35.45, dosed.answer(Figures.CHLORIDE).number(), 1e-6);
    assertEquals(1, count(dosed, BeerCode.KNOWN_FROM_WATER_ONLY));
    assertTrue(
        dosed.calcium().explain().toString().contains("carried over from the brewing water"));
  }

  /** Invented: 60 mmol/L of lactate, known at pH 3.5 to 4.5 only. */
  private static final class Between implements Buffer {

    private final Traced lactate = Traced.of(Source.of("lactate", 60, 4, "mmol/L")).times(0.001);

    @Override
    public Contents contents(Contents known, Traced pH) {
      return known
          .plus(Map.of(Component.LACTATE, lactate.times(1 / known.kilogramsPerLitre())))
          .closedTo(pH);
    }

    @Override
    public Optional<Notice> extrapolatedAt(PH pH) {
      return pH.value() >= 3.5
          ? Optional.empty()
          : Optional.of(Notice.of(BufferCode.EXTRAPOLATED, "pH", "below the readings"));
    }
  }

  @Test
  void aPHBeyondTheReadingsOfItsBufferIsNoticed() {
    Beer beer = Beer.of(pH(4), asLactic(2.3)).buffered(new Between());
    assertEquals(0, count(beer, BufferCode.EXTRAPOLATED));
    assertEquals(
        0, count(beer.after(Treatments.solute(Acid.LACTIC, mmolPerL(1))), BufferCode.EXTRAPOLATED));
    Beer beyond = beer.after(Treatments.solute(Acid.LACTIC, mmolPerL(100)));
    assertTrue(beyond.pH().number() < 3.5);
    assertEquals(1, count(beyond, BufferCode.EXTRAPOLATED));
  }

  @Test
  void aBeerPrintsItsPHAndItsAcidity() {
    assertEquals(beer().pH() + "; " + beer().titratableAcidity(), beer().toString());
    assertEquals("beer", beer().kind());
  }

  /** A wort that buffers least reaches pH 2.5 with the least lactic acid. */
  @Test
  void anEstimateEndsWhereThePHIsTooLow() {
    SouringEstimate estimate =
        SouringEstimate.of(WortBuffer.assumedForSouring(), massPercent(12), pH(5.0));
    double most = estimate.lactateFormedTo(pH(2.5)).lower();
    assertEquals(2.5, estimate.pHForming(gPerL(0.999999 * most)).lower(), 1e-4);
    String refused =
        String.valueOf(
            assertThrows(
                    IllegalArgumentException.class,
                    () -> estimate.pHForming(gPerL(1.000001 * most)))
                .getMessage());
    assertTrue(refused.contains("less than takes the wort to pH 2.5"), refused);
    assertEquals(5.0, estimate.pHForming(gPerL(1e-9)).upper(), 1e-6);
    assertEquals(5.0, estimate.pHForming(gPerL(1e-9)).lower(), 1e-6);
    assertEquals(1, estimate.pHForming(gPerL(1)).basis().size());
    assertEquals("", estimate.pHForming(gPerL(1)).unit());
  }

  /**
   * Phosphate has no usual range in a beer, and a beer of which it is known is one all the same.
   */
  @Test
  void anIonWithoutAUsualRangeIsNotJudged() {
    Beer known = beer().with(Ion.PHOSPHATE, mgPerL(400)).with(Ion.AMMONIUM, mgPerL(20));
    assertEquals(List.of(), unusual(known));
    assertEquals(400, known.answer(Figures.concentration(Ion.PHOSPHATE)).number(), 1e-9);
  }
}
