package org.brewchem.readers;

import java.io.IOException;
import java.io.Reader;
import java.util.Arrays;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The text of a file, in which a line with a quoted cell that does not end is replaced by a mark,
 * so that the lines after it can still be read. Mutable, for one thread.
 *
 * <p>A quoted cell may hold line ends. It counts as one that does not end if the file or a hundred
 * thousand characters end first, or if text follows where it is closed.
 */
final class CheckedLines extends Reader {

  /** Stands for a line with a quoted cell that does not end. */
  static final String NOT_CLOSED = "\uFFFF\uFFFF1";

  /** Stands for a line in which text follows where a quoted cell is closed. */
  static final String TEXT_AFTER = "\uFFFF\uFFFF2";

  private static final Map<String, String> PROBLEMS =
      Map.of(
          NOT_CLOSED,
          "a quoted cell does not end",
          TEXT_AFTER,
          "text after the end of a quoted cell; is a quote not closed, or not doubled?");

  private static final int LONGEST = 100_000;
  private static final int BLOCK = 1 << 16;

  private final Reader in;
  private final char separator;
  private final char comment;
  private char[] text = new char[2 * BLOCK];
  private int start;
  private int end;
  private boolean ended;

  /** How far the text may be given out. */
  private int checked;

  private String instead = "";

  CheckedLines(Reader in, char separator, char comment) {
    this.in = in;
    this.separator = separator;
    this.comment = comment;
  }

  /** What is wrong with a line, of which this is the first cell; null if nothing is. */
  static @Nullable String problem(String cell) {
    return PROBLEMS.get(cell);
  }

  @Override
  public int read(char[] buffer, int offset, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    while (instead.isEmpty() && start == checked) {
      if (!check()) {
        return -1;
      }
    }
    int given;
    if (!instead.isEmpty()) {
      given = Math.min(length, instead.length());
      instead.getChars(0, given, buffer, offset);
      instead = instead.substring(given);
    } else {
      given = Math.min(length, checked - start);
      System.arraycopy(text, start, buffer, offset, given);
      start += given;
    }
    return given;
  }

  /** Checks the next lines; false at the end of the file. At the start of a line. */
  private boolean check() throws IOException {
    if (start == end && !fill()) {
      return false;
    }
    int quote = find('"', start, end);
    int whole = lastLineEnd(start, quote) + 1;
    if (whole > start) {
      checked = whole;
      return true;
    }
    if (quote == end) {
      if (ended || end - start > LONGEST) {
        checked = end;
        return true;
      }
      fill();
      return true;
    }
    checkLine();
    return true;
  }

  /** Checks the line that starts here and may go on in lines below. */
  private void checkLine() throws IOException {
    int at = 0;
    boolean cellStart = true;
    boolean isComment = comment != 0 && text[start] == comment;
    while (has(at) && !isLineEnd(text[start + at])) {
      char c = text[start + at];
      if (c == '"' && cellStart && !isComment) {
        int after = quoted(at + 1);
        if (after < 0) {
          replaceLine(NOT_CLOSED);
          return;
        }
        if (has(after) && text[start + after] != separator && !isLineEnd(text[start + after])) {
          replaceLine(TEXT_AFTER);
          return;
        }
        at = after;
        cellStart = false;
      } else {
        cellStart = c == separator;
        at++;
      }
    }
    int length = at + lineEndLength(at);
    checked = start + length;
  }

  /** The place after the quote that closes a cell, from the place after the one that opens it. */
  private int quoted(int from) throws IOException {
    int at = from;
    while (at - from <= LONGEST && has(at)) {
      if (text[start + at] == '"') {
        if (has(at + 1) && text[start + at + 1] == '"') {
          at++;
        } else {
          return at + 1;
        }
      }
      at++;
    }
    return -1;
  }

  private void replaceLine(String mark) throws IOException {
    int at = 0;
    while (has(at) && !isLineEnd(text[start + at])) {
      at++;
    }
    instead = mark;
    int lineEnd = lineEndLength(at);
    start += at;
    checked = start + lineEnd;
  }

  private int lineEndLength(int at) throws IOException {
    if (!has(at)) {
      return 0;
    }
    return text[start + at] == '\r' && has(at + 1) && text[start + at + 1] == '\n' ? 2 : 1;
  }

  private static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }

  private boolean has(int at) throws IOException {
    while (start + at >= end) {
      if (!fill()) {
        return false;
      }
    }
    return true;
  }

  private boolean fill() throws IOException {
    if (ended) {
      return false;
    }
    System.arraycopy(text, start, text, 0, end - start);
    end -= start;
    checked = 0;
    start = 0;
    if (text.length - end < BLOCK) {
      text = Arrays.copyOf(text, 2 * text.length);
    }
    int read = in.read(text, end, BLOCK);
    ended = read < 0;
    end += Math.max(read, 0);
    return !ended;
  }

  private int find(char c, int from, int to) {
    for (int i = from; i < to; i++) {
      if (text[i] == c) {
        return i;
      }
    }
    return to;
  }

  /** The place of the last line feed before a place, or the one before the first. */
  private int lastLineEnd(int from, int to) {
    for (int i = to - 1; i >= from; i--) {
      if (text[i] == '\n') {
        return i;
      }
    }
    return from - 1;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
