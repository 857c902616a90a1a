package org.brewchem.buffer;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.brewchem.OutOfRangeException;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Code;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Severity;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Solute;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** How the fitted curve judges the readings, and what is refused. */
class JudgedReadingsTest {

  private static final AmountConcentration DECIMOLAR = molPerL(0.1);
  private static final double NOISE = 0.01;

  /** Invented. */
  private static Solution beer(double groups, double lactic, double own) {
    return TypicalBeer.namedAcids(celsius(20))
        .plus(TypicalBeer.lumpedGroups(celsius(20), groups))
        .with(Acid.LACTIC, mmolPerL(lactic))
        .with(Ion.CALCIUM, mmolPerL(1.4))
        .with(Ion.MAGNESIUM, mmolPerL(3.1))
        .with(Ion.CHLORIDE, mmolPerL(6))
        .closedTo(pH(own));
  }

  private static final Solution BEER = beer(1.1, 2, 4.25);

  /** Volumes, then the pH read there. */
  private static double[][] leg(Solution beer, Solute titrant, double last, long seed) {
    SimulatedTitration titration =
        SimulatedTitration.of(beer, Solution.at(celsius(20)).with(titrant, DECIMOLAR), mL(50));
    double end = titration.volumeTo(pH(last)).inMillilitres();
    double[] volumes = new double[30];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = end * i / (volumes.length - 1);
    }
    double[] read = titration.pHAfter(volumes);
    Random random = new Random(seed);
    for (int i = 0; i < read.length; i++) {
      read[i] += NOISE * random.nextGaussian();
    }
    return new double[][] {volumes, read};
  }

  private static double[][] up(Solution beer) {
    return leg(beer, Base.SODIUM_HYDROXIDE, 9, 41);
  }

  private static double[][] down(Solution beer) {
    return leg(beer, Acid.HYDROCHLORIC, 2.7, 42);
  }

  private static BufferReadings alkali(double[][] leg) {
    return BufferReadings.withAlkali(mL(50), DECIMOLAR, leg[0], leg[1]);
  }

  private static BufferReadings acid(double[][] leg) {
    return BufferReadings.withAcid(mL(50), DECIMOLAR, leg[0], leg[1]);
  }

  private static List<Notice> faults(BufferReadings... readings) {
    return MeasuredBuffer.from(readings).pH().notices().stream()
        .filter(notice -> notice.severity() != Severity.REMARK)
        .toList();
  }

  private static Set<Code> codes(BufferReadings... readings) {
    return faults(readings).stream().map(Notice::code).collect(Collectors.toSet());
  }

  @Test
  void soundReadingsOfTwoPortionsGiveNoNotice() {
    assertEquals(List.of(), faults(alkali(up(BEER)), acid(down(BEER))));
    assertEquals(List.of(), faults(alkali(up(BEER))));
  }

  @Test
  void everyReadingThatTheCurveRejectsIsNamedByItsRow() {
    double[][] up = up(BEER);
    double[][] down = down(BEER);
    up[1][4] += 0.09;
    up[1][19] -= 0.1;
    down[1][12] += 0.1;
    List<Notice> rejected =
        faults(alkali(up), acid(down)).stream()
            .filter(notice -> notice.code() == BufferCode.READING_REJECTED)
            .toList();
    assertEquals(
        List.of(OptionalLong.of(5), OptionalLong.of(13), OptionalLong.of(20)),
        rejected.stream().map(Notice::row).toList());
    assertEquals("readings 2, with acid", rejected.get(1).subject());
  }

  @Test
  void readingsThatScatterMoreThanStatedAreNoticed() {
    double[][] up = up(BEER);
    MeasuredBuffer buffer =
        MeasuredBuffer.fit()
            .withReadingUncertainty(0.003)
            .with(BufferReadings.withAlkali(mL(50), DECIMOLAR, mL(0.005), up[0], up[1]))
            .buffer();
    assertTrue(buffer.pH().notices().stream().anyMatch(n -> n.code() == BufferCode.TOO_MUCH_NOISE));
  }

  @Test
  void anElectrodeThatWandersLeavesAPattern() {
    double[][] up = up(BEER);
    for (int i = 0; i < up[1].length; i++) {
      up[1][i] += 0.05 * Math.sin(2 * Math.PI * i / 10.0);
    }
    assertTrue(codes(alkali(up)).contains(BufferCode.RESIDUALS_WITH_PATTERN));
  }

  @Test
  void portionsOfDifferentLiquidsDoNotMeet() {
    assertTrue(
        codes(alkali(up(BEER)), acid(down(beer(1.1, 2, 4.4))))
            .contains(BufferCode.LEGS_DO_NOT_MEET));
  }

  @Test
  void aTitrantToldFiveTimesAsStrongIsDoubted() {
    double[][] down = down(BEER);
    BufferReadings wrong = BufferReadings.withAcid(mL(50), molPerL(0.5), down[0], down[1]);
    assertTrue(codes(alkali(up(BEER)), wrong).contains(BufferCode.TITRANT_DOUBTFUL));
  }

  @Test
  void reversedColumnsAndAnAcidToldAsAlkaliRunAgainstTheTitrant() {
    double[][] up = up(BEER);
    double[] reversed = new double[up[0].length];
    for (int i = 0; i < reversed.length; i++) {
      reversed[i] = up[0][reversed.length - 1 - i];
    }
    assertEquals(
        Set.of(BufferCode.RUNS_AGAINST_TITRANT), codes(alkali(new double[][] {reversed, up[1]})));
    assertEquals(Set.of(BufferCode.RUNS_AGAINST_TITRANT), codes(alkali(up), alkali(down(BEER))));
  }

  @Test
  void volumesInThePlaceOfThePhAreNoticed() {
    double[][] down = down(BEER);
    assertEquals(
        Set.of(BufferCode.READING_IMPLAUSIBLE, BufferCode.RUNS_AGAINST_TITRANT),
        codes(alkali(new double[][] {down[1], down[0]})));
  }

  @Test
  void carbonDioxideThatNoBeerWouldBindThereIsSuspected() {
    Solution sample = BEER.with(Acid.CARBONIC, mmolPerL(1000 * 0.25 / 44.01));
    assertTrue(codes(alkali(up(sample))).contains(BufferCode.CARBON_DIOXIDE_LIKELY));
  }

  /** A beer takes the buffer over, and with it what is wrong with its readings. */
  @Test
  void judgementsGoIntoTheLiquidThatIsBuffered() {
    Solution sample = BEER.with(Acid.CARBONIC, mmolPerL(1000 * 0.25 / 44.01));
    Contents beer =
        MeasuredBuffer.from(alkali(up(sample)))
            .contents(Contents.pure(celsius(20), Chemistry.standard()), Traced.exact(4.25));
    assertTrue(
        beer.notices().stream()
            .map(Notice::code)
            .anyMatch(BufferCode.CARBON_DIOXIDE_LIKELY::equals));
  }

  private static List<String> said(BufferReadings... readings) {
    return faults(readings).stream().map(Notice::toString).toList();
  }

  /** Whichever portion is doubted, so many times its titrant would fit the other. */
  @Test
  void howFarATitrantIsOffIsSaidWhereOneStepTellsIt() {
    double[][] down = down(BEER);
    for (double told : new double[] {0.6, 0.7, 0.8, 1.3, 1.5}) {
      String text = doubt(BufferReadings.withAcid(mL(50), molPerL(0.1 * told), down[0], down[1]));
      double times = Double.parseDouble(text.replaceFirst(".*with ([0-9.]+) times.*", "$1"));
      assertEquals(told < 1 ? told : 1 / told, times, 0.07, text);
    }
    for (double told : new double[] {0.5, 2, 5}) {
      String text = doubt(BufferReadings.withAcid(mL(50), molPerL(0.1 * told), down[0], down[1]));
      assertTrue(text.contains("with far less than the stated concentration"), text);
    }
  }

  private static String doubt(BufferReadings down) {
    return faults(alkali(up(BEER)), down).stream()
        .filter(notice -> notice.code() == BufferCode.TITRANT_DOUBTFUL)
        .findFirst()
        .orElseThrow()
        .text();
  }

  /** Our own digits, so that a change of a rule or of its arithmetic shows. */
  @Test
  void whatIsSaidIsWhatItWas() {
    double[][] up = up(BEER);
    double[][] down = down(BEER);
    double[][] spoilt = up(BEER);
    spoilt[1][4] += 0.09;
    spoilt[1][19] -= 0.1;
    assertEquals(
        List.of(
            "row 5: pH 4.683 lies +0.085 off the fitted curve, more than a scatter of 0.017"
                + " explains",
            "row 20: pH 6.735 lies -0.086 off the fitted curve, more than a scatter of 0.012"
                + " explains"),
        said(alkali(spoilt), acid(down)));
    double[][] wandering = up(BEER);
    for (int i = 0; i < wandering[1].length; i++) {
      wandering[1][i] += 0.05 * Math.sin(2 * Math.PI * i / 10.0);
    }
    assertEquals(
        List.of(
            "the readings scatter by 0.018 pH around the fitted curve, 1.7 times what was"
                + " stated for them",
            "readings that follow each other lie off the fitted curve to the same side: the"
                + " electrode lagged or drifted, or a volume is wrong"),
        said(alkali(wandering)));
    assertEquals(
        List.of(
            "the readings scatter by 0.026 pH around the fitted curve, 2.5 times what was"
                + " stated for them",
            "readings that follow each other lie off the fitted curve to the same side: the"
                + " electrode lagged or drifted, or a volume is wrong",
            "they lie +0.133 pH off those of the first portion: another liquid, or an"
                + " electrode that moved in between"),
        said(alkali(up), acid(down(beer(1.1, 2, 4.4)))));
    assertEquals(
        List.of(
            "row 1: pH 4.256 lies +0.091 off the fitted curve, more than a scatter of 0.022"
                + " explains",
            "row 2: pH 4.322 lies +0.066 off the fitted curve, more than a scatter of 0.018"
                + " explains",
            "row 3: pH 4.411 lies +0.059 off the fitted curve, more than a scatter of 0.016"
                + " explains",
            "row 4: pH 4.498 lies +0.050 off the fitted curve, more than a scatter of 0.014"
                + " explains",
            "row 5: pH 4.593 lies +0.047 off the fitted curve, more than a scatter of 0.012"
                + " explains",
            "row 6: pH 4.690 lies +0.044 off the fitted curve, more than a scatter of 0.010"
                + " explains",
            "they lie -0.126 pH off those of the first portion: another liquid, or an"
                + " electrode that moved in between",
            "they would fit the other portion with 0.73 times the stated concentration of"
                + " titrant over sample"),
        said(alkali(up), acid(down(beer(1.1, 2, 4.1)))));
    assertEquals(
        List.of(
            "the readings scatter by 0.045 pH around the fitted curve, 4.0 times what was"
                + " stated for them",
            "readings that follow each other lie off the fitted curve to the same side: the"
                + " electrode lagged or drifted, or a volume is wrong",
            "they would fit the other portion with far less than the stated concentration of"
                + " titrant over sample"),
        said(alkali(up), BufferReadings.withAcid(mL(50), molPerL(0.5), down[0], down[1])));
    assertEquals(
        List.of(
            "row 1: pH 4.261 lies +0.060 off the fitted curve, more than a scatter of 0.017"
                + " explains",
            "row 1: pH 4.256 lies +0.058 off the fitted curve, more than a scatter of 0.014"
                + " explains",
            "row 2: pH 4.210 lies +0.051 off the fitted curve, more than a scatter of 0.012"
                + " explains",
            "they would fit the other portion with far less than the stated concentration of"
                + " titrant over sample"),
        said(alkali(up), BufferReadings.withAcid(mL(50), molPerL(0.05), down[0], down[1])));
    assertEquals(
        List.of(
            "the pH falls while alkali is added: the titrant is an acid, or a column is"
                + " reversed"),
        said(alkali(down)));
    assertEquals(
        List.of(
            "the pH rises while acid is added: the titrant is an alkali, or a column is"
                + " reversed"),
        said(alkali(up), acid(up)));
    assertEquals(
        List.of(
            "row 1: pH 0.00, beyond 1 to 13, is no reading of a beer's titration: are volume"
                + " and pH exchanged?",
            "the pH falls while alkali is added: the titrant is an acid, or a column is"
                + " reversed"),
        said(alkali(new double[][] {down[1], down[0]})));
    assertEquals(
        List.of(
            "9.3 mmol/kg are bound about pK 6.4, more than a beer holds there: was the"
                + " sample degassed? Its pH and its acidity count carbon dioxide that is left"),
        said(alkali(up(BEER.with(Acid.CARBONIC, mmolPerL(1000 * 0.25 / 44.01))))));
  }

  private static String digits(Answer<?> answer) {
    return String.format(
        Locale.ROOT, "%.8g u %.6g", answer.number(), answer.standardUncertainty().orElseThrow());
  }

  private static String digits(MeasuredBuffer buffer) {
    return String.join(
        "; ",
        digits(buffer.pH()),
        digits(buffer.pHAfter(Acid.LACTIC, mmolPerL(5))),
        digits(buffer.changeOfPHBy(Acid.LACTIC, mmolPerL(5))),
        digits(buffer.acidityTo(pH(8.2))),
        digits(buffer.bufferCapacity(pH(4.5))),
        String.format(Locale.ROOT, "%.6g", buffer.readingNoise()));
  }

  /** What a fit rests on; the last notice is about the constants. */
  private static List<String> remarks(MeasuredBuffer buffer) {
    List<String> all = buffer.pH().notices().stream().map(Notice::toString).toList();
    return all.subList(0, all.size() - 1);
  }

  /** Our own digits, of fits that rest on what is usual and on what was stated. */
  @Test
  void whatIsFittedIsWhatItWas() {
    BufferReadings up = alkali(up(BEER));
    BufferReadings down = acid(down(BEER));
    assertEquals(
        "4.2498196 u 0.0181125; 3.8604021 u 0.0269271; -0.38941756 u 0.0194447;"
            + " 1.3401803 u 0.0615478; 6.5907670 u 0.133245; 0.00518370",
        digits(MeasuredBuffer.from(up)));
    assertEquals(
        "4.2581013 u 0.0165137; 3.8635902 u 0.0127547; -0.39451113 u 0.00537026;"
            + " 1.3404032 u 0.0615442; 6.6403490 u 0.100453; 0.00606087",
        digits(MeasuredBuffer.from(up, down)));
    MeasuredBuffer stated =
        MeasuredBuffer.fit()
            .withReadingUncertainty(0.01)
            .withZeroUncertainty(0.005)
            .withSlopeUncertainty(0.003)
            .metals(mmolPerL(1.4), mmolPerL(3.1), 0.03)
            .backgroundSalt(mmolPerL(6), mmolPerL(0.5))
            .carbonDioxide(gPerL(0.05), gPerL(0.02))
            .with(up.withTitrantUncertainty(0.002).withSampleUncertainty(0.001))
            .with(down.withBlank(mL(0.05), pH(4.3), mL(0.02)).dilutedBy(mL(10), mL(50)))
            .buffer();
    assertEquals(
        "4.2472710 u 0.0102793; 3.8524840 u 0.00796842; -0.39478692 u 0.00370188;"
            + " 1.2382004 u 0.0410573; 6.4393171 u 0.0857264; 0.00643525",
        digits(stated));
    assertEquals(
        List.of(
            "the buffer was measured by titration from pH 4.26 to 9.00",
            "calcium and magnesium were not measured and assumed as in a typical beer, u" + " 30 %",
            "assumed as after a calibration: zero of the electrode u 0.010 pH, slope of"
                + " the electrode u 0.50 %",
            "assumed: concentration of the alkali, relative to the stated one, u 0.30 %;"
                + " volume of the sample, relative to the stated one, u 0.10 %",
            "background salt was not stated and is assumed to be 10 mmol/kg, u 5 mmol/kg",
            "the sample is assumed to have been degassed, 0.0 g/L of carbon dioxide left,"
                + " u 0.030 g/L; more would leave no sure trace"),
        remarks(MeasuredBuffer.from(up)));
    assertEquals(
        List.of(
            "the buffer was measured by titration from pH 2.68 to 9.00",
            "assumed: concentration of the acid, relative to the stated one, u 0.30 %;"
                + " volume of the sample, relative to the stated one, u 0.10 %"),
        remarks(stated));
    assertEquals(
        List.of(
            "the buffer was measured by titration from pH 4.26 to 9.00",
            "calcium and magnesium were not measured and assumed as in a typical beer, u" + " 30 %",
            "assumed as after a calibration: slope of the electrode u 0.50 %",
            "assumed: concentration of the alkali, relative to the stated one, u 0.30 %;"
                + " volume of the sample, relative to the stated one, u 0.10 %",
            "background salt was not stated and is assumed to be 10 mmol/kg, u 5 mmol/kg",
            "the sample is assumed to have been degassed, 0.0 g/L of carbon dioxide left,"
                + " u 0.030 g/L; more would leave no sure trace"),
        remarks(MeasuredBuffer.fit().withZeroUncertainty(0.01).with(up).buffer()));
    assertEquals(
        "buffer measured from pH 4.26 to 9.00, pH 4.25, U 0.04 (k = 2)",
        MeasuredBuffer.from(up).toString());
    assertEquals(
        "fit of [30 readings from pH 4.26 to 9.00]", MeasuredBuffer.fit().with(up).toString());
    assertEquals(
        "0 readings of 50 mL with alkali, 0.1 mol/L",
        BufferReadings.logWithAlkali(mL(50), DECIMOLAR).toString());
    String explained = MeasuredBuffer.from(up).pH().explain().toString();
    assertTrue(
        explained.contains("    acid of pK 4.5: 6.346 mmol/kg\n    acid of pK 5.0: 0.9315 mmol/kg"),
        explained);
    assertTrue(explained.contains("    scatter of a reading: 0.0052 pH; normal"), explained);
    Liquid after = MeasuredBuffer.from(up).liquid();
    assertEquals("titrated liquid", after.kind());
    assertEquals(MeasuredBuffer.from(up).contents().notices(), after.notices());
  }

  @Test
  void whatLeavesNoTraceIsNamedAsAssumedUntilItIsStated() {
    BufferReadings up = alkali(up(BEER));
    Set<Code> assumed =
        MeasuredBuffer.from(up).pH().notices().stream()
            .map(Notice::code)
            .collect(Collectors.toSet());
    Set<BufferCode> all =
        Set.of(
            BufferCode.METALS_ASSUMED,
            BufferCode.ELECTRODE_ASSUMED,
            BufferCode.TITRANT_ASSUMED,
            BufferCode.SALT_ASSUMED,
            BufferCode.CARBON_DIOXIDE_ASSUMED);
    assertTrue(assumed.containsAll(all), assumed.toString());
    Set<Code> stated =
        MeasuredBuffer.fit()
            .withZeroUncertainty(0.005)
            .withSlopeUncertainty(0.003)
            .metals(mmolPerL(1.4), mmolPerL(3.1), 0.03)
            .backgroundSalt(mmolPerL(6), mmolPerL(0.5))
            .carbonDioxide(gPerL(0), gPerL(0.002))
            .with(up.withTitrantUncertainty(0.002).withSampleUncertainty(0.001))
            .buffer()
            .pH()
            .notices()
            .stream()
            .map(Notice::code)
            .collect(Collectors.toSet());
    assertTrue(stated.stream().noneMatch(all::contains), stated.toString());
  }

  @Test
  void whatCannotBeIsRefusedByNameAndRange() {
    double[][] up = up(BEER);
    MeasuredBuffer.Fit fit = MeasuredBuffer.fit();
    assertRefused("alkali", () -> BufferReadings.withAlkali(mL(50), molPerL(1000), up[0], up[1]));
    assertRefused("acid", () -> BufferReadings.logWithAcid(mL(50), molPerL(1e-9)));
    assertRefused("magnesium", () -> fit.metals(mmolPerL(1), molPerL(50)));
    assertRefused("background salt", () -> fit.backgroundSalt(molPerL(2), molPerL(0)));
    assertRefused("carbon dioxide in the sample", () -> fit.carbonDioxide(gPerL(40), gPerL(0)));
  }

  private static void assertRefused(String argument, Executable call) {
    assertEquals(argument, assertThrows(OutOfRangeException.class, call).argument());
  }
}
