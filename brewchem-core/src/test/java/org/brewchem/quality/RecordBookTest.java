package org.brewchem.quality;

import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.StructuredAnswer;
import org.brewchem.figure.Target;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Figures;
import org.brewchem.titration.Titrant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** The rules of what goes into a book, on invented batches. */
class RecordBookTest {

  private static final LocalDate TODAY = LocalDate.of(2026, 3, 9);
  private static final LocalDateTime NOW = TODAY.atTime(14, 30);
  private static final Figure<TitratableAcidity> ACIDITY = Figures.titratableAcidity(pH(8.2));
  private static final RecordBook EMPTY = RecordBook.of(Figures.PH_VALUE, ACIDITY);

  private static Beer beer(double pH) {
    return Beer.of(pH(pH), TitratableAcidity.ofMilliequivalentsPerLitre(19, pH(8.2)))
        .withStandardUncertaintyOfPH(0.02);
  }

  private static BatchRecord batch(String label, LocalDate brewed, double pH) {
    return BatchRecord.of(
        label, "invented lager", brewed, "M. Adler", NOW, beer(pH).pH(), acidityOf(pH));
  }

  private static Answer<TitratableAcidity> acidityOf(double pH) {
    return Answer.of(ACIDITY, beer(pH));
  }

  private static StructuredAnswer plain(String figure, String unit, OptionalDouble number) {
    return new StructuredAnswer(
        figure,
        Map.of(),
        unit,
        number,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Origin.MEASURED,
        List.of(),
        number.isPresent() ? List.of() : List.of("not measured"),
        List.of());
  }

  private static BatchRecord withAnswers(String label, StructuredAnswer... answers) {
    return new BatchRecord(
        label, "invented lager", TODAY, List.of(answers), "", "M. Adler", NOW, "");
  }

  private static TitrantRecord lye(LocalDate found) {
    return TitrantRecord.of(
        "lye 12",
        Titrant.sodiumHydroxide().of(molPerL(0.1003), molPerL(0.0002)).concentration(),
        found,
        "M. Adler",
        NOW);
  }

  private static List<String> faults(RecordBook book, LocalDate today, BatchRecord... records) {
    return assertThrows(RefusedRecordException.class, () -> book.with(today, records)).faults();
  }

  @Test
  void aBatchTwiceIsNamedAndNothingIsStored() {
    RecordBook book = EMPTY.with(TODAY, batch("L-041", TODAY, 4.36));
    List<String> faults =
        faults(book, TODAY, batch("L-042", TODAY, 4.3), batch(" l-041", TODAY, 4));
    assertEquals(1, faults.size());
    assertEquals(
        "batch  l-041: stands in the book already, entered by M. Adler at 2026-03-09T14:30; a"
            + " correction says why",
        faults.get(0));
    assertEquals(1, book.entries().size());
    assertEquals(1, faults(EMPTY, TODAY, batch("A", TODAY, 4), batch("A", TODAY, 4)).size());
  }

  @Test
  void everyFaultOfEveryRecordIsNamedAtOnce() {
    BatchRecord bad =
        withAnswers(
                "B",
                plain("colour", "EBC", OptionalDouble.of(9)),
                plain("pH", "mV", OptionalDouble.of(150)))
            .titratedWith("lye 13");
    List<String> faults = faults(EMPTY, TODAY.minusDays(1), bad, batch("C", TODAY, 4.3));
    assertEquals(
        List.of(
            "batch B: brewed on 2026-03-09 is not possible; today is 2026-03-08",
            "batch B: entered on 2026-03-09 is not possible; today is 2026-03-08",
            "batch B: colour is no figure of this book",
            "batch B: pH in \"mV\" is not possible; the book has it in \"\"",
            "batch B: titrant lye 13 is not in the book; enter it first",
            "batch C: brewed on 2026-03-09 is not possible; today is 2026-03-08",
            "batch C: entered on 2026-03-09 is not possible; today is 2026-03-08"),
        faults);
  }

  @Test
  void aFigureOfOtherParametersIsAnotherFigure() {
    BatchRecord otherEndPoint =
        BatchRecord.of(
            "B",
            "invented lager",
            TODAY,
            "M. Adler",
            NOW,
            Answer.of(Figures.titratableAcidity(pH(7.0)), beer(4.3)));
    List<String> faults = faults(EMPTY, TODAY, otherEndPoint);
    assertEquals(1, faults.size());
    assertTrue(faults.get(0).endsWith("pH 7 is no figure of this book"), faults.get(0));
  }

  @Test
  void aBatchIsNotEnteredBeforeItIsBrewed() {
    List<String> faults = faults(EMPTY, TODAY.plusDays(9), batch("B", TODAY.plusDays(1), 4.3));
    assertEquals(
        List.of("batch B: entered on 2026-03-09 is not possible; it was brewed on 2026-03-10"),
        faults);
  }

  @Test
  void aCorrectionStandsAndWhatItReplacesStays() {
    RecordBook book =
        EMPTY.with(TODAY, batch("L-041", TODAY.minusDays(5), 4.36), batch("L-042", TODAY, 4.33));
    RecordBook mended =
        book.with(TODAY, batch("L-041", TODAY.minusDays(5), 4.39).correcting("wrong buffer"));
    assertEquals(3, mended.entries().size());
    assertEquals(
        List.of("L-041", "L-042"), mended.batches().stream().map(BatchRecord::batch).toList());
    assertEquals(
        List.of(OptionalDouble.of(4.39), OptionalDouble.of(4.33)),
        mended.series(Figures.PH_VALUE, "invented lager").points().stream()
            .map(ControlSeries.Point::value)
            .toList());
    assertEquals(2, book.entries().size());
    assertEquals(
        List.of("batch L-050: there is no such batch to correct"),
        faults(book, TODAY, batch("L-050", TODAY, 4.3).correcting("typing slip")));
  }

  @Test
  void aSeriesFollowsTheDaysOfTheBrewAndKeepsThePlaceOfWhatIsUnknown() {
    RecordBook book =
        EMPTY.with(
            TODAY,
            batch("third", TODAY, 4.33),
            batch("first", TODAY.minusDays(9), 4.35),
            new BatchRecord(
                "second",
                "invented lager",
                TODAY.minusDays(4),
                List.of(plain("pH", "", OptionalDouble.empty())),
                "",
                "M. Adler",
                NOW,
                ""));
    ControlSeries series = book.series(Figures.PH_VALUE, "invented lager");
    assertEquals(
        List.of(
            new ControlSeries.Point("first", OptionalDouble.of(4.35)),
            new ControlSeries.Point("second", OptionalDouble.empty()),
            new ControlSeries.Point("third", OptionalDouble.of(4.33))),
        series.points());
    assertEquals("pH", series.title());
    assertEquals(ControlSeries.of(ACIDITY).unit(), book.series(ACIDITY, "invented lager").unit());
    assertThrows(IllegalArgumentException.class, () -> book.series(ACIDITY, "wheat beer"));
    Figure<?> unknown = Figures.titratableAcidity(pH(7.0));
    assertThrows(IllegalArgumentException.class, () -> book.series(unknown, "invented lager"));
  }

  @Test
  void aRecordComesBackFromItsMapToTheLastBit() {
    BatchRecord record = batch("L-041", TODAY, 4.36 + 1e-13).titratedWith("lye 12");
    assertEquals(record, BatchRecord.from(record.toMap()));
    StructuredAnswer back = BatchRecord.from(record.toMap()).answer(Figures.PH_VALUE).orElseThrow();
    assertEquals(OptionalDouble.of(4.36 + 1e-13), back.number());
    assertEquals(0.02, back.standardUncertainty().orElseThrow(), 1e-15);
    BatchRecord unknown = withAnswers("B", plain("pH", "", OptionalDouble.empty()));
    assertEquals(unknown, BatchRecord.from(unknown.toMap()));
    TitrantRecord titrant = lye(TODAY);
    assertEquals(titrant, TitrantRecord.from(titrant.toMap()));
    assertEquals(0.0002, titrant.concentration().standardUncertainty().orElseThrow(), 1e-15);
    Target target =
        Target.named("lager")
            .with(Constraint.around(Figures.PH_VALUE, pH(4.3), 0.1).withWeight(2))
            .with(
                Constraint.between(
                    ACIDITY,
                    TitratableAcidity.ofMilliequivalentsPerLitre(18.1, pH(8.2)),
                    TitratableAcidity.ofMilliequivalentsPerLitre(20.3, pH(8.2))));
    TargetVersion version = new TargetVersion(target, 3, TODAY, "M. Adler", NOW);
    assertEquals(version, TargetVersion.from(version.toMap(), List.of(ACIDITY, Figures.PH_VALUE)));
  }

  @Test
  void aMapOfATargetThatIsNoneIsNamed() {
    Target target = Target.named("lager").with(Constraint.atMost(Figures.PH_VALUE, pH(4.5)));
    TargetVersion version = new TargetVersion(target, 1, TODAY, "M. Adler", NOW);
    Map<String, Object> map = new HashMap<>(version.toMap());
    map.put("version", 1.5);
    assertEquals(
        "version: 1.5 is not possible; a whole number is needed", refused(map, Figures.PH_VALUE));
    map.put("version", 1);
    assertEquals("figure: pH {} [] is not known here", refused(map, ACIDITY));
    map.put("limits", "none");
    assertEquals("limits: none is not possible; a list is needed", refused(map, Figures.PH_VALUE));
    map.remove("target");
    assertEquals(
        "target: nothing is not possible; a text is needed", refused(map, Figures.PH_VALUE));
  }

  private static String refused(Map<String, Object> map, Figure<?> known) {
    return String.valueOf(
        assertThrows(IllegalArgumentException.class, () -> TargetVersion.from(map, List.of(known)))
            .getMessage());
  }

  @Test
  void aMapWithoutAnEntryOrWithAWrongDateIsNamed() {
    Map<String, Object> map = new HashMap<>(batch("L-041", TODAY, 4.36).toMap());
    map.put("brewed", "9.3.2026");
    String message =
        assertThrows(IllegalArgumentException.class, () -> BatchRecord.from(map)).getMessage();
    assertEquals("brewed: 9.3.2026 is not possible; a date such as 2026-03-09 is needed", message);
    map.remove("who");
    map.put("brewed", "2026-03-09");
    message =
        assertThrows(IllegalArgumentException.class, () -> BatchRecord.from(map)).getMessage();
    assertEquals("who: nothing is not possible; a text is needed", message);
  }

  @Test
  void aRecordRefusesWhatIsNoMeasurement() {
    assertThrows(IllegalArgumentException.class, () -> withAnswers("B"));
    StructuredAnswer pH = plain("pH", "", OptionalDouble.of(4.3));
    assertThrows(IllegalArgumentException.class, () -> withAnswers("B", pH, pH));
    assertThrows(
        IllegalArgumentException.class,
        () -> withAnswers("B", plain("pH", "", OptionalDouble.of(Double.NaN))));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new TitrantRecord(
                "lye", plain("concentration", "mol/L", OptionalDouble.empty()), TODAY, "M", NOW));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new TitrantRecord(
                "lye", plain("concentration", "mol/L", OptionalDouble.of(0)), TODAY, "M", NOW));
  }

  @Test
  void aTitrantIsStandardisedAgainButNotTwiceADayOrInAnotherUnit() {
    RecordBook book = EMPTY.with(TODAY, lye(TODAY.minusDays(30))).with(TODAY, lye(TODAY));
    assertEquals(2, book.titrants().size());
    TitrantRecord percent =
        new TitrantRecord(
            "lye 12", plain("concentration", "g/L", OptionalDouble.of(4)), TODAY, "M. Adler", NOW);
    List<String> faults =
        assertThrows(RefusedRecordException.class, () -> book.with(TODAY, percent)).faults();
    assertEquals(2, faults.size());
    assertTrue(faults.get(1).contains("in \"g/L\" is not possible"), faults.get(1));
    assertEquals(
        "titrant lye 12: a record of 2026-03-09 stands in the book already", faults.get(0));
    assertThrows(RefusedRecordException.class, () -> EMPTY.with(TODAY.minusDays(1), lye(TODAY)));
    assertEquals(
        1, book.with(TODAY, batch("L", TODAY, 4.3).titratedWith("lye 12")).batches().size());
  }

  @Test
  void aTargetKeepsItsVersionsAndABatchIsJudgedByTheOneOfItsDay() {
    Target old = Target.named("lager").with(Constraint.between(Figures.PH_VALUE, pH(4.2), pH(4.5)));
    Target now = Target.named("lager").with(Constraint.between(Figures.PH_VALUE, pH(4.3), pH(4.4)));
    TargetVersion second = new TargetVersion(now, 2, TODAY.plusDays(30), "M. Adler", NOW);
    RecordBook book =
        EMPTY
            .with(TODAY, new TargetVersion(old, 1, TODAY.minusDays(9), "M. Adler", NOW))
            .with(TODAY, second);
    assertEquals(Optional.empty(), book.target("lager", TODAY.minusDays(10)));
    assertEquals(old, book.target("lager", TODAY.plusDays(29)).orElseThrow().target());
    assertEquals(now, book.target("lager", TODAY.plusDays(30)).orElseThrow().target());
    RefusedRecordException again =
        assertThrows(RefusedRecordException.class, () -> book.with(TODAY, second));
    assertEquals(List.of("target lager: version 2 is not possible; 3 is the next"), again.faults());
    TargetVersion earlier = new TargetVersion(now, 3, TODAY, "M. Adler", NOW);
    assertThrows(RefusedRecordException.class, () -> book.with(TODAY, earlier));
    assertEquals(2, book.targetVersions("lager").size());
  }

  @Test
  void aTargetWithoutLimitsOrOfAnUnknownFigureIsRefused() {
    Target none = Target.named("lager");
    assertThrows(
        IllegalArgumentException.class, () -> new TargetVersion(none, 1, TODAY, "M. Adler", NOW));
    Figure<Double> free = Figure.of("free", Map.of(), Scale.number("", 2), Figures.PH_VALUE.rule());
    TargetVersion other =
        new TargetVersion(
            none.with(Constraint.atMost(free, 2.0)), 1, TODAY.plusDays(1), "M. Adler", NOW);
    RefusedRecordException refusal =
        assertThrows(RefusedRecordException.class, () -> EMPTY.with(TODAY, other));
    assertEquals(List.of("target lager: free is no figure of this book"), refusal.faults());
    assertTrue(refusal.getMessage().endsWith("nothing was stored"));
  }

  @Test
  void aRefusalOfManyFaultsIsShortAndHoldsThemAll() {
    BatchRecord[] records = new BatchRecord[50];
    Arrays.setAll(records, i -> batch("B " + i, TODAY.plusDays(1), 4.3));
    RefusedRecordException refusal =
        assertThrows(RefusedRecordException.class, () -> EMPTY.with(TODAY, records));
    assertTrue(refusal.faults().size() >= 50, refusal.faults().size() + " faults");
    assertTrue(refusal.getMessage().length() <= 500, refusal.getMessage());
    assertTrue(refusal.getMessage().endsWith("…; nothing was stored"), refusal.getMessage());
  }

  @Test
  void aBookTakesAFigureOnce() {
    assertThrows(IllegalArgumentException.class, RecordBook::of);
    Figure<PH> pH = Figures.PH_VALUE;
    assertThrows(IllegalArgumentException.class, () -> RecordBook.of(pH, pH));
  }

  @Test
  void tenThousandBatchesEnterInOneGo() {
    List<BatchRecord> many = new ArrayList<>();
    StructuredAnswer reading = plain("pH", "", OptionalDouble.of(4.3));
    for (int i = 0; i < 10_000; i++) {
      many.add(withAnswers("B" + i, reading));
    }
    RecordBook book = EMPTY.with(TODAY, many.toArray(BatchRecord[]::new));
    assertEquals(10_000, book.series(Figures.PH_VALUE, "invented lager").points().size());
  }

  @Test
  void titrantsAndTargetsOfTheFutureAreRefused() {
    LocalDate before = TODAY.minusDays(1);
    assertEquals(
        List.of(
            "titrant lye 12: found on 2026-03-09 is not possible; today is 2026-03-08",
            "titrant lye 12: entered on 2026-03-09 is not possible; today is 2026-03-08"),
        assertThrows(RefusedRecordException.class, () -> EMPTY.with(before, lye(TODAY))).faults());
    TargetVersion version =
        new TargetVersion(
            Target.named("lager").with(Constraint.atMost(Figures.PH_VALUE, pH(4.5))),
            1,
            TODAY,
            "M. Adler",
            NOW);
    assertEquals(
        List.of("target lager: entered on 2026-03-09 is not possible; today is 2026-03-08"),
        assertThrows(RefusedRecordException.class, () -> EMPTY.with(before, version)).faults());
    assertEquals("lager, version 1, from 2026-03-09, by M. Adler", version.toString());
    RecordBook book = EMPTY.with(TODAY, version);
    assertEquals(List.of(), book.targetVersions("ale"));
    assertEquals(List.of(version), book.targetVersions("lager"));
    assertEquals(
        "batches: 1, records of titrants: 1, versions of targets: 1",
        book.with(TODAY, lye(TODAY)).with(TODAY, batch("A", TODAY, 4.3)).toString());
  }

  @Test
  void anotherTitrantIsNotTheOneThatABatchNames() {
    RecordBook book = EMPTY.with(TODAY, lye(TODAY));
    assertEquals(
        List.of("batch B: titrant lye 13 is not in the book; enter it first"),
        faults(book, TODAY, batch("B", TODAY, 4.3).titratedWith("lye 13")));
    TitrantRecord other =
        TitrantRecord.of(
            "lye 13",
            Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0002)).concentration(),
            TODAY,
            "M. Adler",
            NOW);
    assertEquals(2, book.with(TODAY, other).titrants().size());
  }

  @Test
  void aBookShowsItsFiguresAndASeriesItsUnit() {
    assertEquals(List.of(Figures.PH_VALUE, ACIDITY), EMPTY.figures());
    RecordBook book = EMPTY.with(TODAY, batch("A", TODAY, 4.3));
    assertEquals("pH, 1 batch", book.series(Figures.PH_VALUE, "invented lager").toString());
    assertEquals(
        "titratable acidity to pH 8.2, 1 batch, in g/L as lactic acid, to pH 8.2",
        book.series(ACIDITY, "invented lager").toString());
    assertThrows(
        IllegalArgumentException.class,
        () -> new ControlSeries.Point("A", OptionalDouble.of(Double.NaN)));
  }

  private static void assertRefusesUncertainty(String of, Executable made) {
    String said = String.valueOf(assertThrows(IllegalArgumentException.class, made).getMessage());
    assertTrue(said.startsWith("standard uncertainty of pH of " + of + ": "), said);
  }

  @Test
  void anAnswerIsFoundByItsFigureAndAnUncertaintyBelowZeroRefused() {
    BatchRecord record = batch("B", TODAY, 4.3);
    assertEquals(ACIDITY.name(), record.answer(ACIDITY).orElseThrow().figure());
    assertEquals("pH", record.answer(Figures.PH_VALUE).orElseThrow().figure());
    assertEquals(Optional.empty(), record.answer(Figures.CALCIUM));
    StructuredAnswer negative =
        new StructuredAnswer(
            "pH",
            Map.of(),
            "",
            OptionalDouble.of(4.3),
            OptionalDouble.of(-0.02),
            OptionalDouble.empty(),
            Origin.MEASURED,
            List.of(),
            List.of(),
            List.of());
    assertRefusesUncertainty("batch B", () -> withAnswers("B", negative));
    assertRefusesUncertainty(
        "titrant lye 12", () -> new TitrantRecord("lye 12", negative, TODAY, "M. Adler", NOW));
  }

  /** Made here and not in a constant, where a fault would be seen once only. */
  @Test
  void aBookTakesEachFigureOnce() {
    assertEquals(List.of(), RecordBook.of(Figures.PH_VALUE, ACIDITY).entries());
    assertEquals(
        "figures of the book: pH comes twice; state it once",
        assertThrows(
                IllegalArgumentException.class,
                () -> RecordBook.of(Figures.PH_VALUE, ACIDITY, Figures.PH_VALUE))
            .getMessage());
  }
}
