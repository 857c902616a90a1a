package org.brewchem;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.titration.Weighing.khp;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.brewchem.beer.Beer;
import org.brewchem.figure.FigureCode;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.SubstanceCode;
import org.brewchem.table.Acidities;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.SampleTitration;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.TitrationCode;
import org.brewchem.treatment.Dose;
import org.junit.jupiter.api.Test;

/** Slips of typing, each where it is made: noticed, or refused where it cannot be meant. */
class SlipsTest {

  private static final Titrant LYE = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0002));

  private static List<String> unusual(List<Notice> notices) {
    return notices.stream()
        .filter(notice -> notice.code() == FigureCode.UNUSUAL_VALUE)
        .map(Notice::text)
        .toList();
  }

  private static void assertSaid(String part, List<Notice> notices) {
    assertTrue(
        unusual(notices).stream().anyMatch(text -> text.contains(part)), part + ": " + notices);
  }

  @Test
  void milligramsTypedAsGramsMakeNoLye() {
    OutOfRangeException refused =
        assertThrows(
            OutOfRangeException.class,
            () -> Titrant.sodiumHydroxide().standardised(khp(g(408.2), mL(19.94))));
    assertTrue(refused.argument().contains("KHP 408.2 g"), refused.argument());
    assertEquals(100.24, refused.value(), 0.01);
    List<Notice> tenfold =
        Titrant.sodiumHydroxide()
            .standardised(khp(g(40.82), mL(19.94)))
            .standardisation()
            .orElseThrow()
            .notices();
    assertSaid("mass of KHP: 40.82 g is unusual", tenfold);
    assertSaid("perhaps mg typed as g: 0.04082 g", tenfold);
    assertSaid("concentration of NaOH: 10.024", tenfold);
  }

  @Test
  void aTitrantThatNobodyPoursIsRefusedOrNoticed() {
    assertThrows(OutOfRangeException.class, () -> Titrant.sodiumHydroxide().of(molPerL(100)));
    assertThrows(OutOfRangeException.class, () -> Titrant.sodiumHydroxide().of(molPerL(1e-9)));
    assertSaid(
        "mmol/L typed as mol/L: 0.0125",
        Titrant.sodiumHydroxide().of(molPerL(12.5)).concentration().notices());
    assertEquals(List.of(), LYE.concentration().notices());
  }

  @Test
  void sulfuricAcidIsNoSilentFactorOfTwo() {
    Titrant label =
        Titrant.sulfuricAcid().ofEquivalents(ChargeConcentration.ofEquivalentsPerLitre(0.02));
    assertEquals(0.01, label.concentration().value().inMolesPerLitre(), 1e-15);
    assertEquals(0.02, label.equivalentsPerLitre().value(), 1e-15);
    assertTrue(
        label.concentration().notices().stream()
            .noneMatch(n -> n.code() == TitrationCode.TITRANT_OF_MORE_EQUIVALENTS));
    Notice said =
        Titrant.sulfuricAcid().of(molPerL(0.02), molPerL(0.0001)).concentration().notices().get(0);
    assertEquals(TitrationCode.TITRANT_OF_MORE_EQUIVALENTS, said.code());
    assertTrue(said.text().contains("0.02 mol/L counts as 0.04 Eq/L"), said.text());
    Titrant known =
        Titrant.sulfuricAcid()
            .ofEquivalents(
                ChargeConcentration.ofEquivalentsPerLitre(0.02),
                ChargeConcentration.ofEquivalentsPerLitre(0.0001));
    assertEquals(
        0.0001, known.equivalentsPerLitre().knownPart(), 1e-12, "u is one of equivalents too");
    assertEquals(List.of(), known.concentration().notices());
  }

  @Test
  void sampleBlankEndPointAndTemperatureAreJudged() {
    SampleTitration usual = LYE.titrate(mL(50)).took(mL(14.62), mL(14.66), mL(14.60));
    assertEquals(List.of(), unusual(usual.acidity().notices()));
    assertSaid(
        "perhaps mL typed as L: 50 mL", LYE.titrate(litres(50)).took(mL(14)).acidity().notices());
    assertSaid("end point: pH 5 is unusual", usual.to(pH(5)).acidity().notices());
    assertThrows(OutOfRangeException.class, () -> usual.to(pH(17)));
    assertThrows(OutOfRangeException.class, () -> usual.at(celsius(300)));
    assertSaid("°F typed as °C: 20 °C", usual.at(celsius(68)).acidity().notices());
    AcidityResult below = usual.blank(mL(15)).acidity();
    assertEquals(
        3,
        below.notices().stream().filter(n -> n.code() == TitrationCode.BLANK_ABOVE_TITRE).count());
  }

  @Test
  void aTableSaysTheSameAsTheSingleTitration() {
    Table table =
        Table.of(
            Column.of("volume [mL]", 14.62, 14.6, 14.5, 9000),
            Column.of("sample [mL]", 50, 50000, 50, 50000),
            Column.of("titrant [mol/L]", 0.1, 0.1, 100, 0.1),
            Column.of("blank [mL]", 0.1, 0.1, 0.1, 9001));
    Acidities acidities = Acidities.from(table, pH(8.2));
    List<Notice> notices = acidities.notices();
    assertSaid("sample: 50000 mL is unusual; usual is 0.5 to 1000 mL", notices);
    assertSaid("so is 1 more row", notices);
    assertSaid("volume: 9000 mL", notices);
    assertTrue(notices.stream().anyMatch(n -> n.code() == TitrationCode.BLANK_ABOVE_TITRE));
    Column acidity = acidities.acidity();
    assertTrue(acidity.failure(2).orElseThrow().reason().contains("mmol/L typed as mol/L"));
    assertTrue(acidity.isPresent(0) && acidity.isPresent(1));
    assertSaid(
        "mL typed as L: 50 mL", acidities.answer(Figures.titratableAcidity(pH(8.2)), 1).notices());
    Acidities plain =
        Acidities.from(Table.of(Column.of("volume [mL]", 14.62, 14.6)), pH(8.2)).withTitrant(LYE);
    assertEquals(List.of(), plain.withSample(mL(50)).notices());
    assertSaid("mL typed as L", plain.withSample(litres(50)).notices());
  }

  @Test
  void strengthAndDensityOfABottleAreJudged() {
    Beer beer = Beer.of(pH(4.4), TitratableAcidity.from(gPerL(2.0), Acid.LACTIC, pH(8.2)));
    Reagent weak = Reagent.of(Acid.LACTIC, massPercent(0.8));
    assertSaid("perhaps a fraction typed as per cent: 80 % by mass", weak.notices());
    Dose<Beer> dose = Dose.of(beer, weak).to(pH(4.3));
    assertSaid("assay of lactic acid: 0.8 % by mass is unusual", dose.notices());
    assertTrue(dose.into(hL(20)).mass().inGrams() > 10_000);
    Reagent bottle = Reagent.of(Acid.LACTIC, massPercent(80));
    assertEquals(List.of(), bottle.notices());
    OutOfRangeException dense =
        assertThrows(
            OutOfRangeException.class,
            () -> bottle.withDensity(Density.ofGramsPerMillilitre(1180), 0.01));
    assertTrue(dense.getMessage().contains("kg/m3 or g/L typed as g/mL: 1.18 g/mL"));
    Reagent phosphoric =
        Reagent.of(Acid.PHOSPHORIC, massPercent(75))
            .withDensity(Density.ofGramsPerMillilitre(1.18), 0.01);
    assertEquals(SubstanceCode.DENSITY_AND_ASSAY_DISAGREE, phosphoric.notices().get(0).code());
    assertTrue(
        Dose.of(beer, phosphoric).to(pH(4.3)).notices().contains(phosphoric.notices().get(0)));
  }

  /** Acetic acid: pKa 4.76, Ka 1.74E-5. */
  @Test
  void kaAndPKaCannotBeConfused() {
    OutOfRangeException asKa =
        assertThrows(OutOfRangeException.class, () -> Acid.ofKa("my acid", 4.76));
    assertTrue(asKa.getMessage().contains("pKa typed as Ka: 0.0000174"), asKa.getMessage());
    assertThrows(OutOfRangeException.class, () -> Acid.ofPKa("my acid", 1.74e-5));
    assertThrows(OutOfRangeException.class, () -> ConstantSet.standard().withKa(Acid.ACETIC, 4.76));
    assertEquals(1, Acid.ofKa("my acid", 1.74e-5).protonsByDefinition());
    assertEquals(1, Acid.ofPKa("my acid", 4.76).protonsByDefinition());
    // What each refuses goes in by the other, so that no acid is left out.
    assertEquals(1, Acid.ofPKa("my acid", -Math.log10(4.76)).protonsByDefinition());
    assertEquals(1, Acid.ofKa("my acid", 0.8).protonsByDefinition());
    assertEquals(1, Acid.ofKa("my acid", 1e6).protonsByDefinition());
  }

  @Test
  void aBeerIsJudgedBeforeAndAfterItsDose() {
    TitratableAcidity acidity = TitratableAcidity.from(gPerL(2.0), Acid.LACTIC, pH(8.2));
    Beer beer = Beer.of(pH(4.4), acidity);
    assertEquals(List.of(), unusual(beer.notices()));
    assertSaid("perhaps mg/L typed as g/L: 92 mg/L", beer.with(Ion.CALCIUM, gPerL(92)).notices());
    assertSaid(
        "titratable acidity: 0.22",
        Beer.of(pH(4.4), TitratableAcidity.from(gPerL(0.02), Acid.LACTIC, pH(8.2))).notices());
    Reagent lactic = Reagent.of(Acid.LACTIC, massPercent(80));
    assertSaid(
        "pH of the beer after the treatment: pH 2.5", Dose.of(beer, lactic).to(pH(2.5)).notices());
  }

  @Test
  void nitricAcidTitratesAndIsDosedIntoNothing() {
    Titrant acid = Titrant.nitricAcid().of(molPerL(0.02), molPerL(0.00002));
    assertEquals(
        2,
        acid.titrate(mL(100)).took(mL(10)).alkalinity().value().inMilliequivalentsPerLitre(),
        1e-12);
    Beer beer = Beer.of(pH(4.4), TitratableAcidity.from(gPerL(2.0), Acid.LACTIC, pH(8.2)));
    assertThrows(IllegalArgumentException.class, () -> Dose.of(beer, Acid.NITRIC).to(pH(4.3)));
  }
}
