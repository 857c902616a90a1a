package org.brewchem.readers;

import java.util.Set;
import java.util.regex.Pattern;
import org.brewchem.units.Text;
import org.brewchem.units.UnitTextException;

/** Reads one cell after the other as a number, as its format says. Mutable, for one thread. */
final class CellReader {

  /** What a cell is. */
  enum Kind {
    NUMBER,
    EMPTY,
    MISSING_WORD,
    LIMIT,
    FAULT
  }

  private static final int EXACT_DIGITS = 15;
  private static final int SHOWN = 40;
  private static final double[] POWERS = new double[EXACT_DIGITS + 8];

  static {
    double power = 1;
    for (int i = 0; i < POWERS.length; i++) {
      POWERS[i] = power;
      power *= 10;
    }
  }

  private final char decimalMark;
  private final char thousands;
  private final boolean trimmed;
  private final boolean limits;
  private final Set<String> missing;
  private final Pattern grouped;
  private double number;
  private String text = "";
  private String reason = "";
  private boolean blanks;

  CellReader(FileFormat.Settings format) {
    decimalMark = format.decimalMark;
    thousands = format.thousands;
    trimmed = format.trimmed;
    limits = format.limits;
    missing = format.missing;
    grouped =
        Pattern.compile(
            "-?[0-9]{1,3}("
                + Pattern.quote(String.valueOf(thousands))
                + "[0-9]{3})+("
                + Pattern.quote(String.valueOf(decimalMark))
                + "[0-9]+)?");
  }

  /** The number of the cell, or the limit that it is below. */
  double number() {
    return number;
  }

  /** What stood there, if it was no plain number. */
  String text() {
    return text;
  }

  /** What is wrong with it, if it is a fault. */
  String reason() {
    return reason;
  }

  /** Whether blanks around the cell were left out. */
  boolean blanks() {
    return blanks;
  }

  Kind read(char[] buffer, int offset, int length) {
    int from = offset;
    int to = offset + length;
    if (trimmed) {
      while (from < to && isBlank(buffer[from])) {
        from++;
      }
      while (to > from && isBlank(buffer[to - 1])) {
        to--;
      }
    }
    blanks = to - from < length;
    if (from == to) {
      return Kind.EMPTY;
    }
    return plain(buffer, from, to) ? Kind.NUMBER : other(new String(buffer, from, to - from));
  }

  Kind read(String cell) {
    return read(cell.toCharArray(), 0, cell.length());
  }

  static boolean isBlank(char c) {
    return c == ' ' || c == '\t' || c == '\u00a0' || c == '\u202f';
  }

  /**
   * Reads digits with at most one decimal mark: up to fifteen of them over a power of ten that is
   * exact, so that one division rounds as reading digit by digit does.
   */
  private boolean plain(char[] buffer, int from, int to) {
    int at = from;
    boolean negative = buffer[at] == '-';
    at += negative ? 1 : 0;
    long digits = 0;
    int count = 0;
    int decimals = -1;
    for (; at < to; at++) {
      char c = buffer[at];
      if (c >= '0' && c <= '9') {
        digits = 10 * digits + (c - '0');
        count++;
        decimals += decimals < 0 ? 0 : 1;
        if (count > EXACT_DIGITS) {
          return false;
        }
      } else if (c == decimalMark && decimals < 0 && count > 0) {
        decimals = 0;
      } else {
        return false;
      }
    }
    if (count == 0 || decimals == 0) {
      return false;
    }
    double value = decimals < 0 ? digits : digits / POWERS[decimals];
    number = negative ? -value : value;
    return true;
  }

  private Kind other(String cell) {
    text = cell;
    if (missing.contains(cell)) {
      return Kind.MISSING_WORD;
    }
    boolean below = limits && cell.startsWith("<");
    String digits = below ? stripped(cell.substring(1)) : cell;
    return number(digits) ? below ? Kind.LIMIT : Kind.NUMBER : Kind.FAULT;
  }

  private String stripped(String cell) {
    return trimmed ? cell.replaceAll("^[ \\t\u00a0\u202f]+", "") : cell;
  }

  private boolean number(String digits) {
    String plain = digits;
    if (thousands != 0 && digits.indexOf(thousands) >= 0) {
      if (!grouped.matcher(digits).matches()) {
        reason = noNumber("the digits are not grouped by three with '" + thousands + "'");
        return false;
      }
      plain = digits.replace(String.valueOf(thousands), "");
    }
    if (decimalMark == ',') {
      if (plain.indexOf('.') >= 0) {
        reason = noNumber("the decimal mark is declared to be a comma");
        return false;
      }
      plain = plain.replace(',', '.');
    }
    try {
      number = Text.parseNumber(plain);
      return true;
    } catch (UnitTextException e) {
      reason =
          noNumber(
              decimalMark == '.' && plain.indexOf(',') >= 0
                  ? "use a point"
                  : decimalMark == ','
                      ? "a number such as 5, -0,25 or 1,5E-7 is allowed here"
                      : e.allowed());
      return false;
    }
  }

  private String noNumber(String why) {
    String shown =
        text.length() > SHOWN
            ? text.substring(0, SHOWN) + "... (" + text.length() + " characters)"
            : text;
    return "\"" + shown + "\" is not a number (" + why + ")";
  }
}
