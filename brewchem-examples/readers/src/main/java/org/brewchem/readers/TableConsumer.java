package org.brewchem.readers;

import java.io.IOException;
import org.brewchem.table.Table;

/** Takes one table of a file after the other. */
@FunctionalInterface
public interface TableConsumer {

  /**
   * Takes a table.
   *
   * @param table the next rows of the file
   * @throws IOException if it cannot be passed on
   */
  void accept(Table table) throws IOException;
}
