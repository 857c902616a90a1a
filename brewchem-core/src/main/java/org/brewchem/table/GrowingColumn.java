package org.brewchem.table;

import java.util.Arrays;
import java.util.BitSet;
import org.brewchem.units.ColumnHeader;
import org.jspecify.annotations.Nullable;

/** A column of numbers that grows by one cell after the other. Mutable, for one thread. */
final class GrowingColumn {

  /** For so many rows there is room at first. */
  static final int FIRST_CAPACITY = 64;

  final ColumnHeader header;
  private double[] values = new double[FIRST_CAPACITY];
  private final BitSet filled = new BitSet();
  private @Nullable Failure @Nullable [] failures;

  GrowingColumn(ColumnHeader header) {
    this.header = header;
  }

  void grow(int capacity) {
    values = Arrays.copyOf(values, capacity);
    if (failures != null) {
      failures = Arrays.copyOf(failures, capacity);
    }
  }

  void set(int index, long row, double value) {
    values[index] = Column.finite(header.toString(), row, value);
    filled.set(index);
    if (failures != null) {
      failures[index] = null;
    }
  }

  void fail(int index, Failure failure) {
    if (failures == null) {
      failures = new @Nullable Failure[values.length];
    }
    failures[index] = failure;
    filled.set(index);
  }

  Column build(long[] rows) {
    BitSet missing = new BitSet(rows.length);
    missing.set(0, rows.length);
    missing.andNot(filled);
    return new Column(
        header,
        rows,
        Arrays.copyOf(values, rows.length),
        missing,
        failures == null ? null : Arrays.copyOf(failures, rows.length));
  }
}
