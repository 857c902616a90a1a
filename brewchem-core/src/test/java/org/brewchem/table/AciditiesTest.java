package org.brewchem.table;

import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalLong;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Handling;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.TitrationCode;
import org.junit.jupiter.api.Test;

class AciditiesTest {

  private static final Titrant LYE = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001));

  /** 1 mL of 0.1 mol/L alkali for 100 mL of sample is 1 mEq/L, by definition. */
  @Test
  void acidityIsTitrantTimesVolumeOverSample() {
    Table table =
        Table.of(
            Column.of("volume [mL]", 14.62, 15.62),
            Column.of("sample [mL]", 50, 50),
            Column.of("titrant [mol/L]", 0.1, 0.1),
            Column.of("blank [mL]", 0, 1));
    Column acidity = Acidities.from(table, pH(8.2)).acidity();
    assertEquals("titratable acidity [mEq/L, to pH 8.2]", acidity.heading());
    assertEquals(29.24, acidity.value(0), 1e-12);
    assertEquals(29.24, acidity.value(1), 1e-12);
  }

  @Property
  void aRowIsTheSingleTitration(
      @ForAll @Size(min = 1, max = 5)
          List<@Scale(4) @DoubleRange(min = 0.1, max = 50) Double> volumes,
      @ForAll @Scale(3) @DoubleRange(min = 5, max = 100) double sample) {
    double[] millilitres = volumes.stream().mapToDouble(Double::doubleValue).toArray();
    Column acidity =
        Acidities.from(Table.of(Column.of("volume [mL]", millilitres)), pH(8.2))
            .withSample(mL(sample))
            .withTitrant(LYE)
            .acidityAs(Acid.LACTIC);
    for (int i = 0; i < millilitres.length; i++) {
      double single =
          LYE.titrate(mL(sample))
              .to(pH(8.2))
              .took(mL(millilitres[i]))
              .acidity()
              .value()
              .inGramsPerLitreAs(Acid.LACTIC);
      assertEquals(single, acidity.value(i), 1e-13 * single);
    }
  }

  @Test
  void badRowsFailEachForItsReason() {
    Table.Builder rows = Table.withHeadings("volume [mL]", "sample [mL]");
    rows.row(2).set(0, 14.62).set(1, 50);
    rows.row(3).set(0, -1).set(1, 50);
    rows.row(4).set(0, 14.62).set(1, 0);
    rows.row(5).set(1, 50);
    rows.row(6).unreadable(0, "14,62", "\"14,62\" is not a number (use a point)").set(1, 50);
    Column acidity = Acidities.from(rows.build(), pH(8.2)).withTitrant(LYE).acidity();
    assertEquals(29.24, acidity.value(0), 1e-12);
    assertEquals(
        List.of(
            new Failure.NotPossible(
                3, "volume [mL]", "volume: -1 mL is not possible; 0 or more is allowed"),
            new Failure.NotPossible(
                4, "sample [mL]", "sample: 0 mL is not possible; more than 0 is allowed"),
            new Failure.Missing(5, "volume [mL]"),
            new Failure.Unreadable(
                6, "volume [mL]", "14,62", "\"14,62\" is not a number (use a point)")),
        acidity.failures());
  }

  @Test
  void anEstimatedDoseIsWhatIsMissingOverWhatAMoleDelivers() {
    Table table = Table.of(Column.of("volume [mL]", 14.62, 20));
    Acidities acidities = Acidities.from(table, pH(8.2)).withSample(mL(50)).withTitrant(LYE);
    TitratableAcidity target = TitratableAcidity.from(gPerL(2.8), Acid.LACTIC, pH(8.2));
    Column dose = acidities.doseByEffectiveEquivalents(Acid.PHOSPHORIC, target);
    assertEquals(
        (target.inMilliequivalentsPerLitre() - 29.24)
            / EffectiveEquivalents.of(Acid.PHOSPHORIC).at(pH(8.2)),
        dose.value(0),
        1e-12);
    assertTrue(dose.failure(1).orElseThrow() instanceof Failure.NoSolution);
    assertThrows(
        IllegalArgumentException.class,
        () ->
            acidities.doseByEffectiveEquivalents(
                Acid.LACTIC, TitratableAcidity.from(gPerL(2.8), Acid.LACTIC, pH(7.0))));
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> acidities.doseByEffectiveEquivalents(Acid.OXALIC, target));
    assertTrue(
        refused.getMessage().startsWith("oxalic acid: a dose into beer is not possible; "),
        refused.getMessage());
  }

  @Test
  void whatIsNeededIsStatedOnce() {
    Table table = Table.of(Column.of("volume [mL]", 14.62), Column.of("sample [mL]", 50));
    Acidities acidities = Acidities.from(table, pH(8.2));
    assertThrows(IllegalStateException.class, () -> acidities.withSample(mL(50)));
    assertThrows(IllegalStateException.class, () -> acidities.acidity());
    assertThrows(
        IllegalStateException.class,
        () ->
            Acidities.from(table.with(Column.of("titrant [mol/L]", 0.1)), pH(8.2))
                .withTitrant(LYE));
    assertThrows(
        IllegalArgumentException.class,
        () -> acidities.withTitrant(Titrant.hydrochloricAcid().of(molPerL(0.1))));
    assertThrows(
        IllegalStateException.class,
        () -> Acidities.from(table.without("sample"), pH(8.2)).withTitrant(LYE).acidity());
    assertThrows(
        IllegalArgumentException.class, () -> Acidities.from(table.without("volume"), pH(8.2)));
    assertThrows(
        IllegalArgumentException.class,
        () -> Acidities.from(Table.of(Column.of("volume [mg]", 1)), pH(8.2)));
  }

  /**
   * The law of propagation by hand: relative parts add as squares, those of the titre net of blank.
   */
  @Test
  void theUncertaintyIsThatOfTheFormula() {
    Table table =
        Table.of(
            Column.of("volume [mL]", 14.62, 20),
            Column.of("u(volume) [mL]", 0.03, 0.03),
            Column.of("blank [mL]", 0.12, 0.12),
            Column.of("u(blank) [L]", 2e-5, 2e-5));
    Acidities acidities =
        Acidities.from(table, pH(8.2)).withSample(mL(50), mL(0.05)).withTitrant(LYE);
    Column column = acidities.columnWithUncertainty(Figures.titratableAcidity(pH(8.2)));
    double titrant =
        LYE.equivalentsPerLitre().standardUncertainty().orElseThrow()
            / LYE.equivalentsPerLitre().value();
    for (int i = 0; i < 2; i++) {
      double net = table.column("volume").value(i) - 0.12;
      double titre = Math.hypot(0.03, 0.02) / net;
      double u = column.value(i) * Math.sqrt(titre * titre + 0.001 * 0.001 + titrant * titrant);
      assertEquals(u, column.standardUncertainty().orElseThrow().value(i), 1e-6 * u);
    }
    assertEquals(
        "u(titratable acidity) [g/L as lactic acid, to pH 8.2]",
        column.standardUncertainty().orElseThrow().heading());
    Column without =
        Acidities.from(table, pH(8.2))
            .withSample(mL(50))
            .withTitrant(LYE)
            .columnWithUncertainty(Figures.titratableAcidity(pH(8.2)));
    assertEquals(
        "no uncertainty is stated of sample",
        without.standardUncertainty().orElseThrow().failure(0).orElseThrow().reason());
    Column titrantWithout =
        Acidities.from(table, pH(8.2))
            .withSample(mL(50), mL(0.05))
            .withTitrant(Titrant.sodiumHydroxide().of(molPerL(0.1)))
            .columnWithUncertainty(Figures.titratableAcidity(pH(8.2)));
    assertEquals(
        "no uncertainty is stated of concentration of NaOH",
        titrantWithout.standardUncertainty().orElseThrow().failure(0).orElseThrow().reason());
  }

  @Test
  void aRowIsAnsweredAndExplainedByItsReadings() {
    Table table =
        Table.of(
            Column.of("volume [mL]", 14.62, -1),
            Column.of("sample [mL]", 50, 50),
            Column.of("temperature [°C]", 20, 20),
            Column.of("blnk [mL]", 0.1, 0.1));
    Acidities acidities =
        Acidities.from(table, pH(8.2)).withTitrant(LYE).withRelativeUncertainty("volume", 0.002);
    Answer<TitratableAcidity> answer = acidities.answer(Figures.titratableAcidity(pH(8.2)), 0);
    assertEquals(29.24, answer.value().inMilliequivalentsPerLitre(), 1e-12);
    assertTrue(acidities.explain(Figures.titratableAcidity(pH(8.2)), 0).holds());
    assertTrue(
        acidities
            .explain(Figures.titratableAcidity(pH(8.2)), 0)
            .toString()
            .contains("row 1, column \"volume [mL]\": 14.62"));
    assertEquals(
        List.of(
            "row 2, column \"volume [mL]\": volume: -1 mL is not possible; 0 or more is allowed"),
        acidities.answer(Figures.titratableAcidity(pH(8.2)), 1).whyUnknown());
    assertTrue(
        acidities.column(Figures.titratableAcidity(pH(7))).failure(0).orElseThrow()
            instanceof Failure.NoSolution);
    assertEquals(List.of("volume", "sample"), acidities.used());
    assertEquals(List.of("temperature", "blnk"), acidities.ignored());
    assertEquals(
        List.of("column \"blnk\" is not read; a name that is read is \"blank\""),
        acidities.notices().stream().map(Notice::text).toList());
    assertEquals(
        "2 titrations to pH 8.2, from volume, sample; ignored: temperature, blnk",
        acidities.toString());
  }

  /** Usual are samples of 0.5 to 1000 mL and titrants of 0.005 to 2 mol/L. */
  @Test
  void whatHoldsForAllRowsIsJudgedToo() {
    Acidities acidities = Acidities.from(Table.of(Column.of("volume [mL]", 14.62, 15)), pH(8.2));
    List<Notice> notices =
        acidities
            .withSample(mL(2000))
            .withTitrant(Titrant.sodiumHydroxide().of(molPerL(3)))
            .notices();
    assertEquals(List.of("sample", "titrant"), notices.stream().map(Notice::subject).toList());
    assertTrue(notices.get(0).text().startsWith("sample: 2000 mL is unusual"), notices.toString());
    assertTrue(notices.get(1).text().startsWith("titrant: 3 mol/L is unusual"), notices.toString());
    assertEquals(List.of(), acidities.withSample(mL(50)).withTitrant(LYE).notices());
  }

  private static List<Notice> ofBlanks(double[] volumes, double[] blanks) {
    Table table = Table.of(Column.of("volume [mL]", volumes), Column.of("blank [mL]", blanks));
    return Acidities.from(table, pH(8.2)).withSample(mL(50)).withTitrant(LYE).notices().stream()
        .filter(notice -> notice.code() == TitrationCode.BLANK_ABOVE_TITRE)
        .toList();
  }

  @Test
  void blanksAboveTheirTitreAreCountedAndTheFirstIsNamed() {
    double[] volumes = {4, 4, 4, -1, 4};
    assertEquals(List.of(), ofBlanks(volumes, new double[] {0.1, 4, 0.1, 0.1, 0}));
    List<Notice> one = ofBlanks(volumes, new double[] {0.1, 4, 4.1, 0.1, 0.1});
    assertEquals(1, one.size());
    assertEquals(OptionalLong.of(3), one.get(0).row());
    assertEquals("the blank takes more than the sample: the result is below 0", one.get(0).text());
    List<Notice> more = ofBlanks(volumes, new double[] {0.1, 4.2, 4.1, 0.1, 4.3});
    assertEquals(1, more.size());
    assertEquals(OptionalLong.of(2), more.get(0).row());
    assertTrue(more.get(0).text().endsWith("below 0; rows in all: 3"), more.toString());
  }

  @Test
  void aSampleAtTheTargetNeedsNoAcid() {
    Acidities acidities =
        Acidities.from(Table.of(Column.of("volume [mL]", 14.62)), pH(8.2))
            .withSample(mL(50))
            .withTitrant(LYE);
    TitratableAcidity own =
        TitratableAcidity.ofMilliequivalentsPerLitre(acidities.acidity().value(0), pH(8.2));
    assertEquals(0, acidities.doseByEffectiveEquivalents(Acid.LACTIC, own).value(0));
  }

  /**
   * By hand: 0.1 mol/L and 50 mL make 2 mEq/L, 0.18 g/L of lactic acid, of a millilitre: 60 mL make
   * 10.8 g/L, above the 10 that are unusual, and 100 mL 18, above the 17 of an open sample.
   */
  @Test
  void theGreatestAcidityAsksForTheGasAndCountsTheOthers() {
    Acidities unusual = ofVolumes(14, 60, 20);
    Notice one = unusual.notices().get(0);
    assertEquals(TitrationCode.ACIDITY_UNUSUAL, one.code());
    assertEquals(OptionalLong.of(2), one.row());
    assertTrue(one.text().startsWith("10.8 g/L as lactic acid is unusual"), one.text());
    assertTrue(one.text().endsWith("above 10.0 g/L"), one.text());
    Notice more = ofVolumes(60, 14, 100, 61).notices().get(0);
    assertEquals(TitrationCode.SAMPLE_CARBONATED, more.code());
    assertEquals(OptionalLong.of(3), more.row());
    assertTrue(more.text().endsWith("; rows in all: 3"), more.text());
    assertEquals(List.of(), ofVolumes(14, -1, 55).notices());
  }

  private static Acidities ofVolumes(double... volumes) {
    return Acidities.from(Table.of(Column.of("volume [mL]", volumes)), pH(8.2))
        .withSample(mL(50))
        .withTitrant(Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0001)));
  }

  @Test
  void dosesComeWithTheCautionsOfTheirAcid() {
    Column doses =
        ofVolumes(14)
            .doseByEffectiveEquivalents(
                Acid.LACTIC, TitratableAcidity.ofMilliequivalentsPerLitre(40, pH(8.2)));
    assertEquals(Handling.cautionsOf(Acid.LACTIC), doses.cautions());
    assertFalse(doses.cautions().isEmpty());
  }
}
