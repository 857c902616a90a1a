package org.brewchem.readers;

/** Is told how far a long run has come. */
@FunctionalInterface
public interface Progress {

  /**
   * Is called after each piece of the file.
   *
   * @param rows the rows done so far
   * @param shareOfFile how much of the file is read, from 0 to 1
   */
  void at(long rows, double shareOfFile);
}
