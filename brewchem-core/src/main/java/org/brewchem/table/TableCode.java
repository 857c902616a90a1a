package org.brewchem.table;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about a table say. */
public enum TableCode implements Code {
  /**
   * A column is not read, and its name is nearly one that would be, or one with its unit written
   * otherwise.
   */
  HEADING_NEARLY_KNOWN(Severity.WARNING),
  /** A column has a name that is read, but others of the table leave nothing for it to decide. */
  COLUMN_WITHOUT_EFFECT(Severity.REMARK),
  /** A cell holds what cannot be used, so that its figure is missing. */
  CELL_NOT_USED(Severity.FAULT);

  private final Severity severity;

  TableCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
