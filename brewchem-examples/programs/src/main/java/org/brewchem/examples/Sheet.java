package org.brewchem.examples;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.DoubleFunction;
import org.brewchem.readers.CsvFile;
import org.brewchem.readers.Fault;
import org.brewchem.readers.FileFaultException;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.units.LabUnit;
import org.brewchem.units.UnitSet;

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
    } catch (NoSuchFileException missing) {
      throw new FileFaultException(
          new Fault(name, 0, "", "there is no such file in " + folder), missing);
    } catch (IOException fault) {
      throw new FileFaultException(
          new Fault(name, 0, "", "cannot be read, " + fault.getMessage()), fault);
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

  List<String> texts(String column) {
    return table.texts(column);
  }

  /** A number without a unit, or NaN where the cell is empty. */
  double orNaN(String column, int row) {
    return column(column).get(row).orElse(Double.NaN);
  }

  /** A cell as the quantity that its heading's unit makes of it. */
  <Q> Q quantity(UnitSet<Q> units, String column, int row) {
    Column found = column(column);
    LabUnit<Q> unit;
    try {
      unit = units.named(found.unit().orElse(""));
    } catch (IllegalArgumentException wrong) {
      throw new FileFaultException(
          fault(HEADINGS, found.heading(), String.valueOf(wrong.getMessage())), wrong);
    }
    return value(column, row, unit::from);
  }

  /** A cell without a unit as what is made of its number. */
  <Q> Q value(String column, int row, DoubleFunction<Q> from) {
    Column found = column(column);
    if (!found.isPresent(row)) {
      throw new FileFaultException(fault(table.row(row), found.heading(), "the cell is empty"));
    }
    try {
      return from.apply(found.value(row));
    } catch (IllegalArgumentException wrong) {
      throw new FileFaultException(
          fault(table.row(row), found.heading(), String.valueOf(wrong.getMessage())), wrong);
    }
  }

  /** The complaint that the text of a cell is not known. */
  FileFaultException unknown(String column, int row, String what) {
    return new FileFaultException(
        fault(table.row(row), column, "\"" + text(column, row) + "\" is no " + what));
  }

  /** The complaint that a row is missing which the others need. */
  FileFaultException missing(String column, String problem) {
    return new FileFaultException(fault(0, column, problem));
  }

  private Column column(String name) {
    return table
        .find(name)
        .orElseThrow(() -> new FileFaultException(fault(HEADINGS, name, "the column is missing")));
  }

  private Fault fault(long line, String column, String problem) {
    return new Fault(file, line, column, problem);
  }
}
