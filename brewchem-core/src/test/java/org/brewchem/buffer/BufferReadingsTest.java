package org.brewchem.buffer;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class BufferReadingsTest {

  private static final double KILOGRAMS_PER_LITRE =
      Contents.pure(celsius(20), Chemistry.standard()).kilogramsPerLitre();

  private static final double[] VOLUMES = {0, 1, 3};
  private static final double[] READ = {4.2, 4.6, 5.5};

  private static BufferReadings alkali() {
    return BufferReadings.withAlkali(mL(50), molPerL(0.1), VOLUMES, READ);
  }

  private static BufferReadings plain() {
    return BufferReadings.of(new double[] {0, 0.002, 0.006}, new double[] {0, 0, 0}, READ, 0);
  }

  private static double[] base(BufferReadings readings) {
    double[] base = new double[readings.size()];
    for (int i = 0; i < base.length; i++) {
      base[i] = readings.base(i);
    }
    return base;
  }

  /** By hand: 1 mL of 0.1 mol/L on 50 mL is 2 mmol/L, and a fiftieth of its volume. */
  @Test
  void volumesBecomeBasePerKilogramAndDilution() {
    double unit = 0.002 / KILOGRAMS_PER_LITRE;
    assertArrayEquals(new double[] {0, unit, 3 * unit}, base(alkali()), 1e-15);
    assertEquals(0.06, alkali().dilution(2), 1e-15);
    assertEquals(0.02 * unit, alkali().baseUncertainty(), 1e-15);
    BufferReadings acid = BufferReadings.withAcid(mL(50), molPerL(0.1), VOLUMES, READ);
    assertArrayEquals(new double[] {0, -unit, -3 * unit}, base(acid), 1e-15);
    assertEquals(0.02 * unit, acid.baseUncertainty(), 1e-15);
    assertEquals(celsius(20), acid.temperature());
  }

  private static void refused(String message, Executable call) {
    String said = assertThrows(IllegalArgumentException.class, call).getMessage();
    assertTrue(said.startsWith(message), said);
  }

  @Test
  void whatIsNotPossibleIsNamedByItsReading() {
    double[] zero = new double[3];
    refused(
        "base of reading 3: NaN",
        () -> BufferReadings.of(new double[] {0, 1, Double.NaN}, zero, READ, 0));
    refused(
        "dilution of reading 2: -0.1",
        () -> BufferReadings.of(zero, new double[] {0, -0.1, 0}, READ, 0));
    refused(
        "pH of reading 1: -0.01",
        () -> BufferReadings.of(zero, zero, new double[] {-0.01, 5, 6}, 0));
    refused(
        "pH of reading 3: 14.1", () -> BufferReadings.of(zero, zero, new double[] {4, 5, 14.1}, 0));
    refused("uncertainty of the base: -1", () -> BufferReadings.of(zero, zero, READ, -1));
    refused(
        "volume of reading 2: -1",
        () -> BufferReadings.withAlkali(mL(50), molPerL(0.1), new double[] {0, -1, 2}, READ));
    refused(
        "readings: 2 of base, 3 of dilution and 3 of pH are not possible",
        () -> BufferReadings.of(new double[2], zero, READ, 0));
    refused(
        "readings: 3 of base, 1 of dilution and 3 of pH are not possible",
        () -> BufferReadings.of(zero, new double[1], READ, 0));
    refused("sample: 0 mL", () -> BufferReadings.withAlkali(mL(0), molPerL(0.1), VOLUMES, READ));
    refused("sample: 0 mL", () -> BufferReadings.logWithAlkali(mL(0), molPerL(0.1)));
    refused("reading: 3", () -> alkali().pH(3));
    refused("temperature: 101", () -> alkali().at(celsius(101)));
  }

  private static List<String> names(BufferReadings readings) {
    return readings.columns().keySet().stream().map(Source::name).toList();
  }

  private static List<String> assumed(BufferReadings readings) {
    return readings.assumed().stream().map(Source::name).toList();
  }

  @Test
  void whatIsStatedTakesThePlaceOfThatAssumptionAlone() {
    String titrant = "concentration of the alkali, relative to the stated one";
    String sample = "volume of the sample, relative to the stated one";
    assertEquals(List.of(titrant, sample), names(alkali()));
    assertEquals(List.of(titrant, sample), assumed(alkali()));
    BufferReadings known = alkali().withTitrantUncertainty(0.002);
    assertEquals(
        List.of(sample, "concentration of the titrant, relative to the stated one"), names(known));
    assertEquals(List.of(sample), assumed(known));
    BufferReadings pipetted = alkali().withSampleUncertainty(0.0005);
    assertEquals(List.of(titrant, sample), names(pipetted));
    assertEquals(List.of(titrant), assumed(pipetted));
    Source stated = pipetted.columns().keySet().stream().skip(1).findFirst().orElseThrow();
    assertEquals(0.0005, stated.standardUncertainty().orElseThrow());
    assertEquals(1, stated.estimate());
    assertArrayEquals(base(alkali()), pipetted.columns().get(stated), 0);
    BufferReadings better = known.withTitrantUncertainty(0.001);
    assertEquals(names(known), names(better));
    assertEquals(
        0.001,
        better.columns().keySet().stream()
            .skip(1)
            .findFirst()
            .orElseThrow()
            .standardUncertainty()
            .orElseThrow());
    assertEquals(List.of(), assumed(known.withSampleUncertainty(0.001)));
    refused(
        "uncertainty of the concentration of the titrant: 1.1",
        () -> alkali().withTitrantUncertainty(1.1));
  }

  @Test
  void oneSourceInTwoColumnsMovesByTheirSum() {
    Source source = Source.of("temperature", 20, 1, "K");
    BufferReadings readings =
        plain().with(source, new double[] {1, 2, 3}).with(source, new double[] {10, 20, 40});
    assertArrayEquals(new double[] {11, 22, 43}, readings.columns().get(source), 0);
    BufferReadings errors =
        plain()
            .withErrorOfPH(source, new double[] {1, 1, 1})
            .withErrorOfPH(source, new double[] {0, 0.5, -1});
    assertArrayEquals(new double[] {1, 1.5, 0}, errors.errorsOfPH().get(source), 0);
    assertEquals(List.of(), names(errors));
    refused("temperature: NaN", () -> plain().with(source, new double[] {0, 0, Double.NaN}));
    refused(
        "temperature: a column of 2 is not possible; one number to each of 3 readings is needed",
        () -> plain().with(source, new double[2]));
    refused(
        "u: no uncertainty is not possible",
        () -> plain().withErrorOfPH(Source.withoutUncertainty("u", 0, "pH"), new double[3]));
  }

  /** By hand: of 0.1 / 50 a mol/L is 10 of it, a mL a fiftieth less. */
  @Test
  void aFactorMovesEveryReadingByItsShareAndReplacesWhatWasAssumed() {
    Source titrant = Source.of("titrant", 0.1, 0.001, "mol/L");
    Source sample = Source.of("sample", 50, 0.05, "mL");
    BufferReadings readings =
        alkali().proportionalTo(Traced.of(titrant).dividedBy(Traced.of(sample)));
    assertEquals(List.of("titrant", "sample"), names(readings));
    assertEquals(List.of(), readings.assumed());
    double[] base = base(alkali());
    for (int i = 0; i < 3; i++) {
      assertEquals(10 * base[i], readings.columns().get(titrant)[i], 1e-12);
      assertEquals(-0.02 * base[i], readings.columns().get(sample)[i], 1e-12);
      assertEquals(base[i], readings.base(i));
    }
    refused("factor: 0 is not possible", () -> alkali().proportionalTo(Traced.exact(0)));
  }

  /** By hand: at pH 8.3 carbon dioxide has taken nearly one equivalent, at pH 4.2 one of 150. */
  @Test
  void aBlankCountsAsTheCarbonDioxideThatItMostlyIs() {
    double[] read = {4.2, 6.4, 8.3, 9.5};
    BufferReadings whole =
        BufferReadings.withAlkali(mL(50), molPerL(0.1), new double[] {0, 1, 2, 3}, read);
    BufferReadings less = whole.withBlank(mL(0.2), pH(8.3), mL(0.03));
    Source blank =
        less.columns().keySet().stream()
            .filter(source -> source.name().equals("blank"))
            .findFirst()
            .orElseThrow();
    assertEquals(0.2, blank.estimate());
    assertEquals(0.03, blank.standardUncertainty().orElseThrow());
    double unit = 0.002 / KILOGRAMS_PER_LITRE;
    double[] share = new double[4];
    for (int i = 0; i < 4; i++) {
      share[i] = -less.columns().get(blank)[i] / unit;
      assertEquals(whole.base(i) - 0.2 * share[i] * unit, less.base(i), 1e-15);
    }
    double first = Math.pow(10, 4.2 - CarbonicAcid.pK(1, celsius(20)));
    assertEquals(first, share[0], 0.02 * first);
    assertEquals(0.5, share[1], 0.03);
    assertEquals(1, share[2], 1e-12);
    assertEquals(1, share[3], 1e-12, "no more than the whole");
    assertThrows(IllegalStateException.class, () -> plain().withBlank(mL(0.1), pH(8.3), mL(0.01)));
    assertEquals(
        0, whole.withBlank(mL(0), pH(8.3), mL(0.03)).base(0), "the blank of nothing is possible");
  }

  /** By hand: half of it bound at its first pK, one and a half at its second. */
  @Test
  void carbonDioxideTakesAnEquivalentAtEitherPK() {
    double first = CarbonicAcid.pK(1, celsius(20));
    double second = CarbonicAcid.pK(2, celsius(20));
    assertTrue(first < 7 && second > 10, first + " and " + second);
    assertEquals(0.5, CarbonicAcid.charge(first), 1e-3);
    assertEquals(1.5, CarbonicAcid.charge(second), 1e-3);
    double between = Math.pow(10, (second - first) / 2);
    assertEquals(
        between / (1 + between) * (1 + 1 / (1 + between)),
        CarbonicAcid.charge((first + second) / 2),
        1e-12);
    assertEquals(2, CarbonicAcid.charge(14), 1e-3);
  }

  @Test
  void waterBeforeTheFirstReadingDilutesAll() {
    BufferReadings diluted = alkali().dilutedBy(mL(100), mL(50));
    assertEquals(2, diluted.dilution(0), 1e-15);
    assertEquals(2.06, diluted.dilution(2), 1e-15);
    assertEquals(0.06, alkali().dilution(2), 1e-15);
    refused("portion: 0 mL", () -> alkali().dilutedBy(mL(1), mL(0)));
    assertEquals(25, alkali().at(celsius(25)).temperature().inCelsius(), 1e-12);
  }

  @Test
  void readingsPrintTheirRange() {
    assertEquals("3 readings from pH 4.20 to 5.50", alkali().toString());
    double[] none = {};
    assertEquals("no readings", BufferReadings.of(none, none, none, 0).toString());
    assertEquals(
        "1 reading of 50 mL with acid, 0.1 mol/L",
        BufferReadings.logWithAcid(mL(50), molPerL(0.1)).read(mL(0), pH(4.2)).toString());
  }

  @Test
  void eachRowOfTheAssumptionsHasItsUnit() {
    assertEquals("mol/kg", Usual.SALT.source().unit());
    assertEquals("", Usual.TITRANT.source().unit());
  }
}
