package org.brewchem.readers;

/**
 * A place of a file that cannot be read as it stands.
 *
 * @param file the name of the file
 * @param line the line, from 1; 0 if the fault is that of the whole file
 * @param column the heading of the column; empty if the fault is that of the whole line
 * @param reason what is wrong, without its full stop
 */
public record Fault(String file, long line, String column, String reason) {

  /**
   * Names file, line, column and reason.
   *
   * @return such as {@code titrations.csv, line 7, column "volume [mL]": "14,62" is not a number
   *     (use a point)}
   */
  @Override
  public String toString() {
    return file
        + (line == 0 ? "" : ", line " + line)
        + (column.isEmpty() ? "" : ", column \"" + column + "\"")
        + ": "
        + reason;
  }
}
