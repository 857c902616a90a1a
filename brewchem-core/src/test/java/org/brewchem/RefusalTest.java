package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.Element;
import org.brewchem.substance.Formula;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.PairSet;
import org.brewchem.substance.Salt;
import org.brewchem.substance.Use;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.Replicates;
import org.brewchem.units.ColumnHeader;
import org.brewchem.units.LabUnits;
import org.brewchem.units.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RefusalTest {

  private static final String ENDLESS = "x".repeat(5_000_000);

  @Test
  void aNumberIsRefusedWithItsParts() {
    OutOfRangeException refusal =
        assertThrows(OutOfRangeException.class, () -> MassConcentration.ofMilligramsPerLitre(-3));
    assertEquals("mass concentration", refusal.argument());
    assertEquals(-3, refusal.value());
    assertEquals("mg/L", refusal.unit());
    assertEquals("0 or more", refusal.allowed());
    assertEquals(
        "mass concentration: -3 mg/L is not possible; 0 or more is allowed", refusal.getMessage());
  }

  @Test
  void aRangeIsStatedWithItsUnit() {
    OutOfRangeException refusal = assertThrows(OutOfRangeException.class, () -> PH.of(17.5));
    assertEquals("-3 to 17", refusal.allowed());
    OutOfRangeException cold =
        assertThrows(OutOfRangeException.class, () -> Temperature.ofFahrenheit(-500));
    assertEquals("°F", cold.unit());
    assertEquals("absolute zero, -459.67 °F, or more", cold.allowed());
  }

  @Test
  void aNumberTooLargeForItsUnitIsRefusedAsItWasStated() {
    OutOfRangeException refusal =
        assertThrows(OutOfRangeException.class, () -> Volume.ofHectolitres(1e308));
    assertEquals(
        "volume: 1.0E308 hL is not possible; at most 1e100 is allowed", refusal.getMessage());
  }

  @Test
  void aCountIsAWholeNumber() {
    OutOfRangeException refusal =
        assertThrows(OutOfRangeException.class, () -> Replicates.of("mL", 1.5));
    assertEquals("replicates: 1 is not possible; 2 or more is allowed", refusal.getMessage());
  }

  @Test
  void whatIsMissingIsListed() {
    List<String> reasons = List.of("calcium is not reported", "magnesium is not reported");
    UnknownFigureException unknown = new UnknownFigureException("residual alkalinity", reasons);
    assertEquals(
        "residual alkalinity: unknown; calcium is not reported; magnesium is not reported",
        unknown.getMessage());
    assertEquals("residual alkalinity", unknown.figure());
    assertEquals(reasons, unknown.missing());
    assertTrue(new UnknownFigureException(ENDLESS, List.of(ENDLESS)).getMessage().length() < 500);
  }

  @Test
  void whatIsMissingIsStillListedAfterSerialisation() throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(new UnknownFigureException("pH", List.of("alkalinity is not reported")));
    }
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      UnknownFigureException read = (UnknownFigureException) in.readObject();
      assertEquals("pH", read.figure());
      assertEquals(List.of("alkalinity is not reported"), read.missing());
    }
  }

  static Stream<Executable> callsWithEndlessText() {
    return Stream.of(
        () -> Text.parseNumber(ENDLESS),
        () -> Text.parseVolume("5 " + ENDLESS),
        () -> Text.parsePH(ENDLESS),
        () -> Text.parseTitratableAcidity("5 " + ENDLESS + ", to pH 8.2", List.of(Acid.LACTIC)),
        () -> Text.parseTitrationAlkalinity("5 " + ENDLESS),
        () -> LabUnits.VOLUME.named(ENDLESS),
        () -> ColumnHeader.parse(ENDLESS + "["),
        () -> ColumnHeader.parse("calcium [" + ENDLESS + "]").unitOf(LabUnits.VOLUME),
        () -> Formula.parse(ENDLESS),
        () -> Formula.parse("H" + "2".repeat(1_000_000)),
        () -> Element.of(ENDLESS),
        () -> Component.of(ENDLESS),
        () -> Component.named(ENDLESS),
        () -> Acid.named(ENDLESS),
        () -> Use.of(ENDLESS),
        () -> ConstantSet.named(ENDLESS),
        () -> PairSet.named(ENDLESS),
        () -> PairSet.standard().without(ENDLESS),
        () -> Mineral.of(ENDLESS, ENDLESS),
        () -> Salt.of(ENDLESS, "NaCl", Map.of(Component.CALCIUM, 1.0)),
        () -> Input.normal(ENDLESS, Double.NaN, 0, ENDLESS),
        () -> Replicates.of(ENDLESS, Double.NaN, Double.NaN),
        () ->
            MeasurementModel.of("mass", "g")
                .with(Input.normal(ENDLESS, 1, 0, "g"), Input.normal(ENDLESS, 1, 0, "g")));
  }

  @ParameterizedTest
  @MethodSource("callsWithEndlessText")
  void noMessageGrowsWithTheTextGiven(Executable call) {
    String message =
        String.valueOf(assertThrows(IllegalArgumentException.class, call).getMessage());
    assertTrue(message.length() <= 500, () -> message.length() + " characters");
    assertTrue(message.contains("…"), message);
  }
}
