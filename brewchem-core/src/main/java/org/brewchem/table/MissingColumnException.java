package org.brewchem.table;

/** Says that a calculation needs a column that the table does not have. */
final class MissingColumnException extends IllegalStateException {

  private static final long serialVersionUID = 1;

  MissingColumnException(String name, Table table) {
    super("column \"" + name + "\" is needed and is not in the table: " + table.summary());
  }
}
