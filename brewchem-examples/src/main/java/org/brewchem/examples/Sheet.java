package org.brewchem.examples;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.function.DoubleFunction;
import org.brewchem.examples.csv.CsvException;
import org.brewchem.examples.csv.CsvFile;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.units.LabUnit;
import org.brewchem.units.UnitSet;
import org.jspecify.annotations.Nullable;

/** A CSV file read whole, of which a faulty cell is named by file, line and column. Immutable. */
final class Sheet {

  /** The line of the headings, where a column or its unit is missing. */
  private static final long HEADINGS = 1;

  private final String file;
  private final Table table;

  private Sheet(String file, Table table) {
    this.file = file;
    this.table = table;
  }

  /** Reads a file; the texts are the headings of its columns of text. */
  static Sheet read(Path folder, String name, String... texts) {
    try {
      return new Sheet(name, CsvFile.of(folder.resolve(name)).withTexts(texts).read());
    } catch (CsvException fault) {
      throw new FileFaultException(String.valueOf(fault.getMessage()), fault);
    } catch (NoSuchFileException missing) {
      throw new FileFaultException(name + ": there is no such file in " + folder, missing);
    } catch (IOException fault) {
      throw new FileFaultException(name + ": cannot be read, " + fault.getMessage(), fault);
    }
  }

  int size() {
    return table.size();
  }

  boolean has(String column) {
    return table.find(column).isPresent();
  }

  String text(String column, int row) {
    return table.texts(column).get(row);
  }

  /** A cell as the quantity that its heading's unit makes of it. */
  <Q> Q quantity(UnitSet<Q> units, String column, int row) {
    Column found = column(column);
    LabUnit<Q> unit;
    try {
      unit = units.named(found.unit().orElse(""));
    } catch (IllegalArgumentException wrong) {
      throw fault(HEADINGS, found.heading(), String.valueOf(wrong.getMessage()), wrong);
    }
    return value(column, row, unit::from);
  }

  /** A cell without a unit as what is made of its number. */
  <Q> Q value(String column, int row, DoubleFunction<Q> from) {
    Column found = column(column);
    if (!found.isPresent(row)) {
      throw fault(table.row(row), found.heading(), "the cell is empty", null);
    }
    try {
      return from.apply(found.value(row));
    } catch (IllegalArgumentException wrong) {
      throw fault(table.row(row), found.heading(), String.valueOf(wrong.getMessage()), wrong);
    }
  }

  /** The complaint that the text of a cell is not known. */
  FileFaultException unknown(String column, int row, String what) {
    return fault(table.row(row), column, "\"" + text(column, row) + "\" is no " + what, null);
  }

  private Column column(String name) {
    return table.find(name).orElseThrow(() -> fault(HEADINGS, name, "the column is missing", null));
  }

  private FileFaultException fault(
      long line, String column, String problem, @Nullable Throwable cause) {
    return new FileFaultException(
        file + ", line " + line + ", column \"" + column + "\": " + problem, cause);
  }
}
