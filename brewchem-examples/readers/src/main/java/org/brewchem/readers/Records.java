package org.brewchem.readers;

import java.time.LocalDate;

/**
 * Takes the cells of a file, record by record; a table is made of them. Mutable, for one thread.
 */
interface Records {

  /** A record starts in a line. */
  void begin(long line);

  /** The next cell of the record; quoted, if it stands between quotes. */
  void cell(int index, char[] buffer, int offset, int length, boolean quoted);

  /** The next cell of the record, which a sheet holds as a number. */
  void number(int index, double value);

  /** The next cell of the record, which a sheet holds as a date. */
  void date(int index, LocalDate date);

  /** The record ends. */
  void end();

  /** A line is a comment. */
  void comment(long line);
}
