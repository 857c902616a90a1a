package org.brewchem.readers;

import java.util.LinkedHashSet;
import java.util.Set;

/** Finds the columns in which something stands but no number. Mutable, for one thread. */
final class TextFinder extends HeadedRecords {

  private final CellReader reader;
  private final Set<Integer> numbers = new LinkedHashSet<>();
  private final Set<Integer> others = new LinkedHashSet<>();

  TextFinder(FileFormat.Settings format, ReadingReport.Draft draft) {
    super(format, draft);
    reader = new CellReader(format);
  }

  /** The indices of the columns of text. */
  Set<Integer> found() {
    Set<Integer> found = new LinkedHashSet<>(others);
    found.removeAll(numbers);
    return found;
  }

  @Override
  Set<Integer> foundTexts() {
    return Set.of();
  }

  @Override
  void headed(Headings known) {}

  @Override
  void dataBegin(long at) {}

  @Override
  void dataCell(int index, char[] buffer, int offset, int length, boolean quoted) {
    switch (reader.read(buffer, offset, length)) {
      case NUMBER, LIMIT -> numbers.add(index);
      case FAULT -> others.add(index);
      default -> {}
    }
  }

  @Override
  void dataNumber(int index, double value) {
    numbers.add(index);
  }

  @Override
  void dataEnd() {}
}
