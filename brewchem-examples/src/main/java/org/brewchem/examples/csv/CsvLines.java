package org.brewchem.examples.csv;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;

/** The cells of a CSV file, line by line. Holds no more than one line at a time. */
final class CsvLines {

  private static final int END = -1;
  private static final int BYTE_ORDER_MARK = 0xFEFF;

  /** Longer than any cell; a quote that is never closed would otherwise swallow the file. */
  private static final int LONGEST_CELL = 100_000;

  private final String file;
  private final Reader reader;
  private final List<String> cells = new ArrayList<>();
  private final StringBuilder cell = new StringBuilder();
  private long line;
  private long nextLine = 1;
  private int next;

  CsvLines(String file, Reader reader) throws IOException {
    this.file = file;
    this.reader = reader;
    next = reader.read();
    if (next == BYTE_ORDER_MARK) {
      next = reader.read();
    }
  }

  /** Reads the next line that is not empty; false at the end of the file. */
  boolean read() throws IOException {
    while (next == '\n' || next == '\r') {
      endLine();
    }
    if (next == END) {
      return false;
    }
    line = nextLine;
    readLine();
    return true;
  }

  /** The cells of the line, overwritten by the next. */
  List<String> cells() {
    return cells;
  }

  /** The number of the line, from 1; of one with line ends in a quoted cell, where it starts. */
  long line() {
    return line;
  }

  private void readLine() throws IOException {
    cells.clear();
    while (true) {
      cells.add(next == '"' ? quoted() : plain());
      if (next != ',') {
        break;
      }
      advance();
    }
    endLine();
  }

  private void endLine() throws IOException {
    if (next == '\r') {
      advance();
    }
    if (next == '\n') {
      advance();
    }
    nextLine++;
  }

  private String plain() throws IOException {
    cell.setLength(0);
    while (next != ',' && next != '\n' && next != '\r' && next != END) {
      append();
    }
    return cell.toString();
  }

  private String quoted() throws IOException {
    cell.setLength(0);
    advance();
    while (true) {
      if (next == END) {
        throw CsvException.of(file, line, "a quoted cell does not end");
      }
      if (next == '"') {
        advance();
        if (next != '"') {
          break;
        }
      } else if (next == '\n') {
        nextLine++;
      }
      append();
    }
    if (next != ',' && next != '\n' && next != '\r' && next != END) {
      throw CsvException.of(file, line, "text after the end of a quoted cell");
    }
    return cell.toString();
  }

  private void append() throws IOException {
    if (cell.length() == LONGEST_CELL) {
      throw CsvException.of(
          file,
          line,
          "a cell is longer than " + LONGEST_CELL + " characters; is a quote not closed?");
    }
    cell.append((char) next);
    advance();
  }

  private void advance() throws IOException {
    next = reader.read();
  }
}
