package org.brewchem.readers;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Supplier;
import org.brewchem.table.Table;

/** Reads a source of records as tables: what files and sheets share. */
final class ReadingRun {

  /** How many records a trial reads, from which advice is drawn. */
  private static final long TRIED = 2000;

  /** Where records come from; can be asked again. */
  @FunctionalInterface
  interface Source {

    /** Hands all records on, under a format. */
    void feed(FileFormat.Settings format, Records into) throws IOException;
  }

  private ReadingRun() {}

  /** Reads all as one table, with advice if there are faults. */
  static TableReading whole(String file, FileFormat format, Source source) throws IOException {
    List<Table> all = new ArrayList<>();
    ReadingReport.Draft draft = new ReadingReport.Draft(file, Long.MAX_VALUE);
    ReadingReport report =
        pieces(
            draft,
            format.settings,
            source,
            Integer.MAX_VALUE,
            all::add,
            () ->
                draft.faulty()
                    ? Advice.of(format, draft, other -> trial(file, other, source))
                    : List.of());
    Table table = all.isEmpty() ? Table.withHeadings().build() : all.get(0);
    return new TableReading(table, report);
  }

  /** Reads the first records under another format. */
  private static ReadingReport.Draft trial(String file, FileFormat format, Source source) {
    ReadingReport.Draft draft = new ReadingReport.Draft(file, TRIED);
    try {
      pieces(draft, format.settings, source, Integer.MAX_VALUE, table -> {}, List::of);
    } catch (HeadedRecords.Enough e) {
      return draft;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return draft;
  }

  /** Reads tables of bounded size. */
  static ReadingReport pieces(
      ReadingReport.Draft draft,
      FileFormat.Settings format,
      Source source,
      int rows,
      TableConsumer use,
      Supplier<List<String>> advice)
      throws IOException {
    FileFormat.LongColumns columns = format.longColumns;
    TableFiller filler;
    List<String> used;
    try {
      if (columns == null) {
        filler = new TableFiller(format, draft, found(format, source, draft.file), rows, use);
        source.feed(format, filler);
        used = headed(filler, draft).used();
      } else {
        LongFiller values = new LongFiller(LongFiller.ofRecords(format, columns), columns, draft);
        source.feed(format, values);
        headed(values, draft);
        FileFormat.Settings ofRows = values.ofRows(format);
        TextFinder finder = new TextFinder(ofRows, new ReadingReport.Draft("", Long.MAX_VALUE));
        values.pour(finder);
        filler =
            new TableFiller(ofRows, draft, format.findTexts ? finder.found() : Set.of(), rows, use);
        values.pour(filler);
        used = values.used();
      }
      filler.finish();
    } catch (UncheckedIOException e) {
      throw Objects.requireNonNull(e.getCause());
    }
    return draft.finish(filler.done(), used, advice.get());
  }

  private static Set<Integer> found(FileFormat.Settings format, Source source, String file)
      throws IOException {
    if (!format.findTexts) {
      return Set.of();
    }
    TextFinder finder = new TextFinder(format, new ReadingReport.Draft(file, Long.MAX_VALUE));
    source.feed(format, finder);
    return finder.found();
  }

  private static Headings headed(HeadedRecords records, ReadingReport.Draft draft) {
    Headings headings = records.headings();
    if (headings != null) {
      return headings;
    }
    throw new FileFaultException(
        new Fault(
            draft.file,
            0,
            "",
            draft.headings().isEmpty()
                ? "is empty; a line of headings is needed"
                : "ends before the line of units"));
  }
}
