package org.brewchem.buffer;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.brewchem.figure.Scales;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Solute;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/**
 * What leaves no trace in readings: each source against the fit of readings that were moved by it.
 */
class BufferSourcesTest {

  private static final AmountConcentration DECIMOLAR = molPerL(0.1);

  /** Invented. */
  private static final Solution BEER =
      TypicalBeer.namedAcids(celsius(20))
          .plus(TypicalBeer.lumpedGroups(celsius(20), 1.2))
          .with(Ion.CALCIUM, mmolPerL(1.5))
          .with(Ion.MAGNESIUM, mmolPerL(3))
          .with(Ion.CHLORIDE, mmolPerL(8))
          .closedTo(pH(4.3));

  private static double[] volumes(Solute titrant, double last) {
    Solution solution = Solution.at(celsius(20)).with(titrant, DECIMOLAR);
    double end = SimulatedTitration.of(BEER, solution, mL(50)).volumeTo(pH(last)).inMillilitres();
    double[] volumes = new double[30];
    for (int i = 0; i < volumes.length; i++) {
      volumes[i] = end * i / (volumes.length - 1);
    }
    return volumes;
  }

  private static double[] read(Solute titrant, double[] volumes) {
    return SimulatedTitration.of(BEER, Solution.at(celsius(20)).with(titrant, DECIMOLAR), mL(50))
        .pHAfter(volumes);
  }

  private static BufferReadings up(double zero, double slope) {
    double[] volumes = volumes(Base.SODIUM_HYDROXIDE, 9);
    double[] read = read(Base.SODIUM_HYDROXIDE, volumes);
    return BufferReadings.withAlkali(
        mL(50),
        DECIMOLAR,
        volumes,
        Arrays.stream(read).map(x -> x + zero + slope * (x - 7)).toArray());
  }

  private static BufferReadings down() {
    double[] volumes = volumes(Acid.HYDROCHLORIC, 2.7);
    return BufferReadings.withAcid(mL(50), DECIMOLAR, volumes, read(Acid.HYDROCHLORIC, volumes));
  }

  private static Traced acidity(MeasuredBuffer buffer) {
    return buffer.acidityTo(pH(8.2)).in(Scales.acidity(pH(8.2))).traced();
  }

  private static Traced change(MeasuredBuffer buffer) {
    return buffer.changeOfPHBy(Acid.LACTIC, mmolPerL(11)).traced();
  }

  private static Source named(Traced number, String name) {
    return number.sources().stream()
        .filter(source -> source.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static double part(Traced number, String name) {
    return number.sensitivity(named(number, name));
  }

  private static MeasuredBuffer told(double salt, double carbonDioxide) {
    return MeasuredBuffer.fit()
        .with(up(0, 0))
        .with(down())
        .backgroundSalt(mmolPerL(salt), mmolPerL(5))
        .carbonDioxide(gPerL(carbonDioxide), gPerL(0.03))
        .buffer();
  }

  @Test
  void theAcidityMovesWithTheCarbonDioxideThatWasLeftAndSaysByHowMuch() {
    Traced none = acidity(told(8, 0));
    Traced some = acidity(told(8, 0.02));
    double slope = (some.value() - none.value()) / 0.02;
    assertEquals(slope, part(none, "carbon dioxide in the sample"), 0.03 * Math.abs(slope));
    // A mole of it takes nearly one equivalent to pH 8.2.
    assertEquals(-1000 / 44.01, slope, 0.6);
  }

  @Test
  void aChangeOfPhMovesWithTheBackgroundSaltAndSaysByHowMuch() {
    Traced less = change(told(8, 0));
    double slope = (change(told(9, 0)).value() - less.value()) / 0.001;
    assertEquals(slope, part(less, "background salt"), 0.1 * Math.abs(slope));
    assertTrue(Math.abs(slope) * 0.005 > 0.0005);
  }

  /** The fit believes an error of the electrode as far as nothing contradicts it. */
  @Test
  void theElectrodeStaysASourceByItsName() {
    Traced pH =
        MeasuredBuffer.fit().withZeroUncertainty(0.05).with(up(0, 0)).buffer().pH().traced();
    double u = named(pH, "zero of the electrode").standardUncertainty().orElseThrow();
    assertEquals(0.05, u);
    assertTrue(Math.abs(part(pH, "zero of the electrode")) > 0.2);
    assertEquals(0.005, named(pH, "slope of the electrode").standardUncertainty().orElseThrow());
  }

  @Test
  void errorsOfThePhThatReadingsBringReplaceThoseOfTheFit() {
    Source buffer = Source.of("buffer of pH 7", 0, 0.006, "pH");
    double[] column = new double[30];
    Arrays.fill(column, 1);
    Traced pH = MeasuredBuffer.from(up(0, 0).withErrorOfPH(buffer, column)).pH().traced();
    assertTrue(pH.sources().contains(buffer));
    assertTrue(pH.sources().stream().noneMatch(s -> s.name().equals("zero of the electrode")));
  }

  @Test
  void titrantAndSampleMoveTheAcidityInFullAndCanBeStated() {
    MeasuredBuffer assumed = MeasuredBuffer.from(up(0, 0));
    Traced acidity = acidity(assumed);
    String titrant = "concentration of the alkali, relative to the stated one";
    assertEquals(acidity.value(), part(acidity, titrant), 0.03 * acidity.value());
    assertEquals(0.003, named(acidity, titrant).standardUncertainty().orElseThrow());
    Traced better = acidity(MeasuredBuffer.from(up(0, 0).withTitrantUncertainty(0.001)));
    assertEquals(
        0.001,
        named(better, "concentration of the titrant, relative to the stated one")
            .standardUncertainty()
            .orElseThrow());
    assertTrue(better.sources().stream().noneMatch(source -> source.name().equals(titrant)));
    assertEquals(acidity.value(), better.value());
  }

  @Test
  void aBlankComesOffAtItsEndPointAndHardlyBefore() {
    BufferReadings plain = up(0, 0);
    BufferReadings less = plain.withBlank(mL(0.1), pH(8.2), mL(0.02));
    int last = plain.size() - 1;
    double perMillilitre = plain.base(last) / volumes(Base.SODIUM_HYDROXIDE, 9)[last];
    assertEquals(0, plain.base(0) - less.base(0), 0.01 * 0.1 * perMillilitre);
    assertEquals(0.1, (plain.base(last) - less.base(last)) / perMillilitre, 0.002);
    Traced with = acidity(MeasuredBuffer.from(less));
    assertEquals(-2, part(with, "blank"), 0.15);
  }

  @Test
  void aSampleLogKeepsVolumeAndPhApart() {
    BufferReadings log =
        BufferReadings.logWithAlkali(mL(50), DECIMOLAR)
            .read(mL(0), pH(4.31))
            .read(mL(1), pH(4.5))
            .read(mL(2), pH(4.71))
            .readings();
    assertEquals(3, log.size());
    assertEquals(4.5, log.pH(1));
    assertEquals(2, log.base(2) / log.base(1), 1e-12);
    assertEquals("3 readings from pH 4.31 to 4.71", log.toString());
  }
}
