package org.brewchem.readers;

import java.util.List;
import org.brewchem.table.Table;

/**
 * What was read from a file or a sheet: its table, and a report.
 *
 * @param table the rows; a cell that cannot be read is a failure of its row
 * @param report what was used, ignored, odd and faulty
 */
public record TableReading(Table table, ReadingReport report) {

  /**
   * Returns the table of a file without a fault.
   *
   * @return the table
   * @throws FileFaultException if there is a fault; it lists all of them
   */
  public Table orThrow() {
    List<Fault> faults = report.faults();
    if (!faults.isEmpty()) {
      throw new FileFaultException(faults, report.advice());
    }
    return table;
  }

  /**
   * Returns the report and the first rows.
   *
   * @return lines of text
   */
  @Override
  public String toString() {
    return report + "\n" + table;
  }
}
