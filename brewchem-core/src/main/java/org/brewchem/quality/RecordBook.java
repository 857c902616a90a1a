package org.brewchem.quality;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.StructuredAnswer;
import org.brewchem.internal.Excerpt;
import org.jspecify.annotations.Nullable;

/**
 * A book of batches, titrants and targets that only grows: what was entered stays, and what was
 * wrong is corrected by another record with its reason. It takes a record whole or not at all, and
 * names everything that is wrong with it.
 *
 * <p>Every figure that the book knows has one unit in it. The caller decides where the records are
 * kept; the book holds their rules. Immutable.
 */
public final class RecordBook {

  private final List<Figure<?>> figures;
  private final List<BatchRecord> batches;
  private final List<TitrantRecord> titrants;
  private final List<TargetVersion> targets;

  private RecordBook(
      List<Figure<?>> figures,
      List<BatchRecord> batches,
      List<TitrantRecord> titrants,
      List<TargetVersion> targets) {
    this.figures = List.copyOf(figures);
    this.batches = List.copyOf(batches);
    this.titrants = List.copyOf(titrants);
    this.targets = List.copyOf(targets);
  }

  /**
   * Opens an empty book.
   *
   * @param figures the figures that it takes, each in the unit that it is shown in; one or more
   * @return the book
   * @throws IllegalArgumentException if there is no figure, or one comes twice
   */
  public static RecordBook of(Figure<?>... figures) {
    List<Figure<?>> list = Figure.list(figures);
    if (list.isEmpty()) {
      throw new IllegalArgumentException(
          "figures of the book: none is not possible; one or more are needed");
    }
    for (int i = 0; i < list.size(); i++) {
      if (list.subList(0, i).contains(list.get(i))) {
        throw new IllegalArgumentException(
            "figures of the book: " + list.get(i).title() + " comes twice; state it once");
      }
    }
    return new RecordBook(list, List.of(), List.of(), List.of());
  }

  /**
   * Enters batches, all of them or none.
   *
   * @param today the day of the entry, by the caller's calendar
   * @param records the records
   * @return the longer book
   * @throws RefusedRecordException if a batch stands in the book already and is not corrected, or
   *     is corrected and does not; a date is in the future or before the brew; a figure is unknown
   *     to the book or comes in another unit; or the titrant is not in the book
   */
  public RecordBook with(LocalDate today, BatchRecord... records) {
    Objects.requireNonNull(records, "records");
    Objects.requireNonNull(today, "today");
    List<String> faults = new ArrayList<>();
    List<BatchRecord> longer = new ArrayList<>(batches);
    // By label: looking through all of a book for each of many records would take its square.
    Map<String, BatchRecord> standing = standing();
    for (BatchRecord record : records) {
      check(record, today, standing.get(label(record.batch())), faults);
      standing.put(label(record.batch()), record);
      longer.add(record);
    }
    refuseIfAny(faults);
    return new RecordBook(figures, longer, titrants, targets);
  }

  private void check(
      BatchRecord record, LocalDate today, @Nullable BatchRecord earlier, List<String> faults) {
    String name = "batch " + Excerpt.of(record.batch());
    if (earlier != null && record.correction().isEmpty()) {
      faults.add(
          name
              + ": stands in the book already, entered by "
              + Excerpt.of(earlier.who())
              + " at "
              + earlier.entered()
              + "; a correction says why");
    } else if (earlier == null && !record.correction().isEmpty()) {
      faults.add(name + ": there is no such batch to correct");
    }
    notInTheFuture(name, "brewed", record.brewed(), today, faults);
    notInTheFuture(name, "entered", record.entered().toLocalDate(), today, faults);
    if (record.entered().toLocalDate().isBefore(record.brewed())) {
      faults.add(
          name
              + ": entered on "
              + record.entered().toLocalDate()
              + " is not possible; it was brewed on "
              + record.brewed());
    }
    for (StructuredAnswer answer : record.answers()) {
      Optional<Figure<?>> known =
          figures.stream().filter(figure -> RecordRules.isOf(figure, answer)).findFirst();
      if (known.isEmpty()) {
        faults.add(name + ": " + RecordRules.title(answer) + " is no figure of this book");
      } else if (!known.get().shown().symbol().equals(answer.unit())) {
        faults.add(otherUnit(name, known.get(), answer.unit()));
      }
    }
    if (!record.titrant().isEmpty()
        && titrants.stream().noneMatch(t -> t.titrant().equals(record.titrant()))) {
      faults.add(
          name
              + ": titrant "
              + Excerpt.of(record.titrant())
              + " is not in the book; enter it first");
    }
  }

  private static String otherUnit(String name, Figure<?> known, String unit) {
    return String.format(
        Locale.ROOT,
        "%s: %s in \"%s\" is not possible; the book has it in \"%s\"",
        name,
        known.title(),
        Excerpt.of(unit),
        known.shown().symbol());
  }

  /**
   * Enters what a titrant was found to be.
   *
   * @param today the day of the entry, by the caller's calendar
   * @param record the record
   * @return the longer book
   * @throws RefusedRecordException if the titrant has a record of that day, an earlier one in
   *     another unit, or a date in the future
   */
  public RecordBook with(LocalDate today, TitrantRecord record) {
    Objects.requireNonNull(today, "today");
    List<String> faults = new ArrayList<>();
    String name = "titrant " + Excerpt.of(record.titrant());
    notInTheFuture(name, "found", record.found(), today, faults);
    notInTheFuture(name, "entered", record.entered().toLocalDate(), today, faults);
    List<TitrantRecord> earlier =
        titrants.stream().filter(other -> other.titrant().equals(record.titrant())).toList();
    if (earlier.stream().anyMatch(other -> other.found().equals(record.found()))) {
      faults.add(name + ": a record of " + record.found() + " stands in the book already");
    }
    String unit = record.concentration().unit();
    if (!earlier.isEmpty() && !earlier.get(0).concentration().unit().equals(unit)) {
      faults.add(
          name
              + ": in \""
              + Excerpt.of(unit)
              + "\" is not possible; its record of "
              + earlier.get(0).found()
              + " is in \""
              + earlier.get(0).concentration().unit()
              + "\"");
    }
    refuseIfAny(faults);
    List<TitrantRecord> longer = new ArrayList<>(titrants);
    longer.add(record);
    return new RecordBook(figures, batches, longer, targets);
  }

  /**
   * Enters a version of a target.
   *
   * @param today the day of the entry, by the caller's calendar
   * @param version the version
   * @return the longer book
   * @throws RefusedRecordException if the version is not the next one, holds from a day before the
   *     last, was entered in the future, or bounds a figure that is unknown to the book or in
   *     another unit
   */
  public RecordBook with(LocalDate today, TargetVersion version) {
    Objects.requireNonNull(today, "today");
    List<String> faults = new ArrayList<>();
    String name = "target " + Excerpt.of(version.target().name());
    List<TargetVersion> earlier = targetVersions(version.target().name());
    int next = earlier.size() + 1;
    if (version.version() != next) {
      faults.add(
          name + ": version " + version.version() + " is not possible; " + next + " is the next");
    }
    if (!earlier.isEmpty()) {
      LocalDate last = earlier.get(earlier.size() - 1).validFrom();
      if (version.validFrom().isBefore(last)) {
        faults.add(
            name
                + ": valid from "
                + version.validFrom()
                + " is not possible; the last version is valid from "
                + last);
      }
    }
    notInTheFuture(name, "entered", version.entered().toLocalDate(), today, faults);
    for (Constraint constraint : version.target().constraints()) {
      Figure<?> figure = constraint.figure();
      int at = figures.indexOf(figure);
      if (at < 0) {
        faults.add(name + ": " + figure.title() + " is no figure of this book");
      } else if (!figures.get(at).shown().symbol().equals(figure.shown().symbol())) {
        faults.add(otherUnit(name, figures.get(at), figure.shown().symbol()));
      }
    }
    refuseIfAny(faults);
    List<TargetVersion> longer = new ArrayList<>(targets);
    longer.add(version);
    return new RecordBook(figures, batches, titrants, longer);
  }

  private static void notInTheFuture(
      String name, String what, LocalDate date, LocalDate today, List<String> faults) {
    if (date.isAfter(today)) {
      faults.add(name + ": " + what + " on " + date + " is not possible; today is " + today);
    }
  }

  private static void refuseIfAny(List<String> faults) {
    if (!faults.isEmpty()) {
      throw new RefusedRecordException(faults);
    }
  }

  /** Labels that a reader takes for one: capitals and blanks around do not make another batch. */
  private static String label(String batch) {
    return batch.strip().toLowerCase(Locale.ROOT);
  }

  private Map<String, BatchRecord> standing() {
    Map<String, BatchRecord> standing = new LinkedHashMap<>();
    batches.forEach(record -> standing.put(label(record.batch()), record));
    return standing;
  }

  /**
   * Returns the figures that the book takes.
   *
   * @return an unmodifiable list, each in its unit
   */
  public List<Figure<?>> figures() {
    return figures;
  }

  /**
   * Returns all that was ever entered of batches.
   *
   * @return an unmodifiable list in the order of entry, what was corrected later included
   */
  public List<BatchRecord> entries() {
    return batches;
  }

  /**
   * Returns the batches as they stand after all corrections.
   *
   * @return an unmodifiable list by the day of the brew, those of one day in the order of their
   *     first entry
   */
  public List<BatchRecord> batches() {
    return standing().values().stream().sorted(Comparator.comparing(BatchRecord::brewed)).toList();
  }

  /**
   * Returns all records of titrants.
   *
   * @return an unmodifiable list in the order of entry
   */
  public List<TitrantRecord> titrants() {
    return titrants;
  }

  /**
   * Returns the versions of a target.
   *
   * @param name the name of the target
   * @return an unmodifiable list from version 1 on; empty when the book has none
   */
  public List<TargetVersion> targetVersions(String name) {
    Objects.requireNonNull(name, "name");
    return targets.stream().filter(version -> version.target().name().equals(name)).toList();
  }

  /**
   * Returns the version of a target that holds on a day.
   *
   * @param name the name of the target
   * @param day the day, such as that of a brew
   * @return the last version that is valid from that day or an earlier one; empty when there is
   *     none
   */
  public Optional<TargetVersion> target(String name, LocalDate day) {
    Objects.requireNonNull(day, "day");
    List<TargetVersion> versions = targetVersions(name);
    return versions.stream()
        .filter(version -> !version.validFrom().isAfter(day))
        .reduce((earlier, later) -> later);
  }

  /**
   * Returns a figure of a beer, batch after batch as they stand, for a {@link ControlChart}.
   *
   * @param figure a figure of this book, shown in the book's unit
   * @param beer the beer
   * @return the series by the day of the brew; a batch whose record lacks the figure or does not
   *     know it keeps its place without a value
   * @throws IllegalArgumentException if the book does not take the figure or has it in another
   *     unit, or has no batch of the beer
   */
  public ControlSeries series(Figure<?> figure, String beer) {
    int at = figures.indexOf(Objects.requireNonNull(figure, "figure"));
    if (at < 0) {
      throw new IllegalArgumentException("figure: " + figure.title() + " is none of this book");
    }
    if (!figures.get(at).shown().symbol().equals(figure.shown().symbol())) {
      throw new IllegalArgumentException(
          otherUnit("figure", figures.get(at), figure.shown().symbol()));
    }
    List<BatchRecord> own =
        batches().stream().filter(record -> record.beer().equals(beer)).toList();
    if (own.isEmpty()) {
      throw new IllegalArgumentException(
          "beer: there is no batch of \"" + Excerpt.of(beer) + "\" in the book");
    }
    return ControlSeries.of(
        figure,
        own.stream()
            .map(
                record ->
                    new ControlSeries.Point(
                        record.batch(),
                        record
                            .answer(figure)
                            .map(StructuredAnswer::number)
                            .orElse(OptionalDouble.empty())))
            .toList());
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "batches: %d, records of titrants: %d, versions of targets: %d",
        standing().size(),
        titrants.size(),
        targets.size());
  }
}
