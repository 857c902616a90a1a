package org.brewchem.examples.csv;

import org.brewchem.table.Failure;

/** The failure to read a CSV file: it names the file, the line and, where it can, the column. */
public final class CsvException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  private CsvException(String message) {
    super(message);
  }

  static CsvException of(String file, String problem) {
    return new CsvException(file + ": " + problem);
  }

  static CsvException of(String file, long line, String problem) {
    return new CsvException(file + ", line " + line + ": " + problem);
  }

  static CsvException of(String file, Failure failure) {
    return new CsvException(CsvFile.describe(file, failure));
  }
}
