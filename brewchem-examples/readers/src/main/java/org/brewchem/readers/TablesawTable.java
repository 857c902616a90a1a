package org.brewchem.readers;

import java.util.List;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.StringColumn;

/**
 * Tables from and to Tablesaw, whose numbers of rows, reasons and uncertainties have no place
 * there.
 */
public final class TablesawTable {

  private TablesawTable() {}

  /**
   * Copies a table to Tablesaw.
   *
   * @param table the table
   * @return a new table with the same headings, texts first; a value that is missing or failed is
   *     missing there
   */
  public static tech.tablesaw.api.Table of(Table table) {
    tech.tablesaw.api.Table copy = tech.tablesaw.api.Table.create();
    table.textNames().forEach(n -> copy.addColumns(StringColumn.create(n, table.texts(n))));
    for (Column column : table.columns()) {
      copy.addColumns(DoubleColumn.create(column.heading(), column.valuesOr(Double.NaN)));
    }
    return copy;
  }

  /**
   * Copies a table from Tablesaw. Columns of numbers stay such, all others become texts.
   *
   * @param source the table, whose columns are named as headings
   * @return the table, its rows numbered from 1; what is missing there is missing here
   * @throws IllegalArgumentException if there is no column of numbers, a name is no heading, or a
   *     number is infinite
   */
  public static Table from(tech.tablesaw.api.Table source) {
    List<NumericColumn<?>> numbers = source.numericColumns();
    var texts = source.columns().stream().filter(c -> !(c instanceof NumericColumn<?>)).toList();
    Table.Builder table =
        Table.withHeadings(
            numbers.stream().map(column -> column.name()).toList(),
            texts.stream().map(column -> column.name()).toList());
    for (int row = 0; row < source.rowCount(); row++) {
      table.row();
      for (int i = 0; i < numbers.size(); i++) {
        if (!numbers.get(i).isMissing(row)) {
          table.set(i, numbers.get(i).getDouble(row));
        }
      }
      for (int i = 0; i < texts.size(); i++) {
        table.text(i, texts.get(i).getString(row));
      }
    }
    return table.build();
  }
}
