package org.brewchem;

import static org.brewchem.figure.Constraint.atLeast;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.kg;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Target;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.Mash;
import org.brewchem.plan.Plan;
import org.brewchem.plan.Shelf;
import org.brewchem.plan.ShelfItem;
import org.brewchem.quantity.Hardness;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.table.Column;
import org.brewchem.table.Failure;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.brewchem.units.Text;
import org.brewchem.units.UnitTextException;
import org.brewchem.water.BasisReading;
import org.brewchem.water.Water;
import org.brewchem.water.WaterCode;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/**
 * What people get wrong, as a program that embeds the library meets it: recognised, named, and what
 * stands beside it kept. All waters are invented.
 */
class BadInputTest {

  private static final Table GOOD_AND_BAD =
      Table.of(
          Column.of("calcium [mg/L]", 92, 92),
          Column.of("magnesium [mg/L]", 11, 11),
          Column.of("sodium [mg/L]", 19, -3),
          Column.of("chloride [mg/L]", 31, 31),
          Column.of("sulfate [mg/L]", 45, 45),
          Column.of("bicarbonate [mg/L]", 262, 262));

  private static WaterReport.Builder metals() {
    return WaterReport.reported()
        .calcium(mgPerL(180))
        .magnesium(mgPerL(30))
        .sodium(mgPerL(38))
        .potassium(mgPerL(3))
        .chloride(mgPerL(60))
        .bicarbonate(mgPerL(120))
        .pH(pH(7.4));
  }

  /** 154 mg/L of sulfur are 461 mg/L of sulfate, and so much closes the balance. */
  @Test
  void sulfateThatIsSulfurIsNamedAndReadAsStated() {
    WaterReport report = metals().nitrate(mgPerL(4)).sulfate(mgPerL(154)).build();
    named(report, WaterCode.SULFATE_PERHAPS_SULFUR, "sulfate", "the sulfate were stated as sulfur");
    assertEquals(154, report.water().sulfate().number(), 1e-9);
    BasisReading reading = reading(report, WaterCode.SULFATE_PERHAPS_SULFUR);
    assertEquals(96.06 / 32.06, reading.factor(), 1e-3);
    WaterReport read = metals().nitrate(mgPerL(4)).sulfateAsSulfur(mgPerL(154)).build();
    assertEquals(reading.ifSo(), read.water().ionBalance().number(), 1e-9);
    assertTrue(
        read.notices().stream().map(Notice::code).noneMatch(WaterCode.ION_BALANCE_OFF::equals));
  }

  /** Nitrate is seldom that much; then nothing else closes the balance. */
  @Test
  void nitrateThatIsNitrogenIsNamedAndReadAsStated() {
    WaterReport report = metals().sulfate(mgPerL(60)).nitrate(mgPerL(120)).build();
    named(
        report,
        WaterCode.NITRATE_PERHAPS_NITROGEN,
        "nitrate",
        "the nitrate were stated as nitrogen");
    assertEquals(120, report.water().nitrate().number(), 1e-9);
    assertEquals(Ion.NITRATE, reading(report, WaterCode.NITRATE_PERHAPS_NITROGEN).ion());
  }

  @Test
  void aNegativeNumberIsNamedWithItsUnitAndTheOtherRowsAreKept() {
    refused("mass concentration: -3 mg/L is not possible; 0 or more is allowed", () -> mgPerL(-3));
    Waters waters = Waters.from(GOOD_AND_BAD);
    Failure failure = waters.ionBalance().failures().get(0);
    assertEquals(1, waters.ionBalance().failures().size());
    assertEquals(2, failure.row());
    assertEquals("sodium [mg/L]", failure.column());
    assertEquals("sodium: -3 mg/L is not possible; 0 or more is allowed", failure.reason());
    assertTrue(waters.ionBalance().isPresent(0));
    assertEquals(2, waters.totalHardness().size() - waters.totalHardness().failures().size());
  }

  @Test
  void aMissingUnitIsNamedWithTheUnitsThereAre() {
    UnitTextException bare =
        assertThrows(UnitTextException.class, () -> Text.parseMassConcentration("92"));
    assertTrue(bare.getMessage().contains("\"92\""), bare.getMessage());
    assertTrue(bare.getMessage().contains("mg/L"), bare.getMessage());
    UnitTextException heading =
        assertThrows(
            UnitTextException.class, () -> Waters.from(Table.of(Column.of("calcium", 92))));
    assertTrue(heading.getMessage().contains("calcium"), heading.getMessage());
    assertTrue(heading.getMessage().contains("mg/L"), heading.getMessage());
  }

  /** As CaCO3 calcium is a hardness: said at once, and it has an entry of its own. */
  @Test
  void anIonAsCalciumCarbonateIsNoConcentrationOfTheIon() {
    UnitTextException text =
        assertThrows(
            UnitTextException.class, () -> Text.parseMassConcentration("230 mg/L as CaCO3"));
    assertTrue(text.getMessage().contains("as CaCO3"), text.getMessage());
    UnitTextException heading =
        assertThrows(
            UnitTextException.class,
            () -> Waters.from(Table.of(Column.of("calcium [mg/L as CaCO3]", 230))));
    assertTrue(heading.getMessage().contains("mg/L as CaCO3"), heading.getMessage());
    Water water =
        WaterReport.reported()
            .calciumHardness(Hardness.ofMilligramsPerLitreAsCaCO3(230))
            .build()
            .water();
    assertEquals(92.1, water.calcium().number(), 0.05);
  }

  /** Alkalinity as CaCO3 under the heading of bicarbonate. */
  @Test
  void anAlkalinityOnTheOtherBasisIsNamed() {
    WaterReport report =
        WaterReport.reported()
            .calcium(mgPerL(92))
            .magnesium(mgPerL(11))
            .sodium(mgPerL(19))
            .potassium(mgPerL(3))
            .sulfate(mgPerL(45))
            .chloride(mgPerL(31))
            .nitrate(mgPerL(8))
            .bicarbonate(mgPerL(215))
            .pH(pH(7.6))
            .build();
    BasisReading reading = reading(report, WaterCode.ALKALINITY_BASIS_DOUBTFUL);
    assertEquals("what is stated as bicarbonate were stated as CaCO3", reading.condition());
    assertTrue(Math.abs(reading.ifSo()) < Math.abs(reading.asStated()), reading.toString());
  }

  @Test
  void aShelfWithoutStrengthIsRefusedWithEveryNameAndStaysAsItWas() {
    Shelf shelf =
        Shelf.of(
            ShelfItem.of(Acid.LACTIC),
            ShelfItem.of(Reagent.of(Salt.GYPSUM, massPercent(98))),
            ShelfItem.of(Salt.EPSOM_SALT));
    Water water = WaterReport.reported().calcium(mgPerL(20)).build().water();
    Plan.Request request =
        Plan.from(water)
            .using(shelf.weighingTo(g(1)))
            .meeting(Target.named("harder").with(atLeast(CALCIUM, mgPerL(50))));
    refused(
        "shelf: lactic acid, magnesium sulfate heptahydrate (Epsom salt) state no strength",
        request::solve);
    assertEquals(3, shelf.items().size());
  }

  @Test
  void anEmptyGristAndARatioOfNothingAreRefused() {
    Grist grist = Grist.of(kg(200), Malt.assumed(MaltKind.PALE));
    refused(
        "grist: an empty grist is not possible; at least one malt is needed",
        () -> Grist.of(Map.of()));
    refused(
        "mass of pale malt: 0 kg is not possible", () -> grist.and(kg(0), grist.malts().get(0)));
    refused("volume of the liquor: 0 L is not possible", () -> Mash.of(grist, Water.pure(), hL(0)));
    refused("volume", () -> Volume.ofLitres(-1));
  }

  private static void named(WaterReport report, WaterCode code, String subject, String condition) {
    List<Notice> found = report.notices().stream().filter(notice -> notice.code() == code).toList();
    assertEquals(1, found.size(), report.notices().toString());
    assertEquals(subject, found.get(0).subject());
    assertTrue(found.get(0).text().startsWith("if " + condition + ": "), found.get(0).text());
  }

  private static BasisReading reading(WaterReport report, WaterCode code) {
    return report.basisReadings().stream()
        .filter(reading -> reading.code() == code)
        .findFirst()
        .orElseThrow();
  }

  private static void refused(String message, Executable input) {
    IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, input);
    assertTrue(refusal.getMessage().startsWith(message), refusal.getMessage());
  }
}
