package org.brewchem.units;

/** The strict reader of one number that stands at a place in a text. */
final class NumberReader {

  private static final String A_NUMBER =
      "a number such as 5, -0.25 or 1.5E-7 is allowed here, with a point as decimal mark";

  private final String text;
  private final int end;
  private int position;

  private NumberReader(String text, int start, int end) {
    this.text = text;
    this.position = start;
    this.end = end;
  }

  /** A number as read, and the place after its last digit. */
  record Read(double value, int end) {}

  /** Reads the number that starts at a place and goes up to a space or to another place. */
  static Read between(String text, int start, int end) {
    return new NumberReader(text, start, end).read();
  }

  /** Reads a text that is a number from its first to its last character. */
  static double whole(String text) {
    Read read = between(text, 0, text.length());
    if (read.end() < text.length()) {
      throw new UnitTextException(
          text, read.end(), "text after the number", "only the number is allowed here");
    }
    return read.value();
  }

  private Read read() {
    int start = position;
    skip('-');
    digits();
    if (skip('.')) {
      digits();
    }
    int mantissaEnd = position;
    if (skip('e') || skip('E')) {
      if (!skip('-')) {
        skip('+');
      }
      digits();
    }
    if (position < end && text.charAt(position) != ' ') {
      throw unexpected();
    }
    return new Read(value(start, mantissaEnd), position);
  }

  private double value(int start, int mantissaEnd) {
    double value = Double.parseDouble(text.substring(start, position));
    if (Double.isInfinite(value)) {
      throw new UnitTextException(
          text, start, "the number is too large", "at most 1.7976931348623157E308 is allowed");
    }
    if (value == 0 && holdsMoreThanZeros(start, mantissaEnd)) {
      throw new UnitTextException(
          text, start, "the number is too small to tell from 0", "0 or 4.9E-324 is allowed");
    }
    return value;
  }

  private boolean holdsMoreThanZeros(int start, int end) {
    return text.substring(start, end).chars().anyMatch(c -> c >= '1' && c <= '9');
  }

  private boolean skip(char expected) {
    if (position < end && text.charAt(position) == expected) {
      position++;
      return true;
    }
    return false;
  }

  private void digits() {
    int first = position;
    while (position < end && text.charAt(position) >= '0' && text.charAt(position) <= '9') {
      position++;
    }
    if (position == first) {
      throw unexpected();
    }
  }

  private UnitTextException unexpected() {
    if (position == end) {
      return new UnitTextException(text, position, "the text ends early", A_NUMBER);
    }
    char found = text.charAt(position);
    if (found == ',') {
      return new UnitTextException(
          text, position, "a comma is not read", "use a point, and no thousands separator");
    }
    return new UnitTextException(
        text, position, "'" + found + "' does not belong to a number", A_NUMBER);
  }
}
