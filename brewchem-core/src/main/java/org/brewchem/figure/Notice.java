package org.brewchem.figure;

import java.util.Objects;
import java.util.OptionalLong;
import org.brewchem.internal.Checks;

/**
 * Something notable about a result: what kind of thing, how much it matters, what it is about, and
 * a sentence for a reader.
 *
 * @param code what kind of thing it is
 * @param severity how much it matters
 * @param subject what it is about, such as "potassium" or "titre"
 * @param row the row of a log or table, counted from 1; empty when it is about no row
 * @param text the sentence
 */
public record Notice(Code code, Severity severity, String subject, OptionalLong row, String text) {

  /**
   * Makes a notice.
   *
   * @param code what kind of thing it is
   * @param severity how much it matters
   * @param subject what it is about, such as "potassium" or "titre"
   * @param row the row of a log or table, counted from 1; empty when it is about no row
   * @param text the sentence
   * @throws IllegalArgumentException if subject or text is blank or the row is below 1
   */
  public Notice {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(severity, "severity");
    Checks.notBlank("subject", subject);
    Checks.notBlank("text", text);
    if (row.isPresent() && row.getAsLong() < 1) {
      throw new IllegalArgumentException(
          "row: " + row.getAsLong() + " is not possible; rows count from 1");
    }
  }

  /**
   * Returns a notice of its code's severity that is about no row.
   *
   * @param code what kind of thing it is
   * @param subject what it is about
   * @param text a sentence for a reader
   * @return the notice
   */
  public static Notice of(Code code, String subject, String text) {
    return new Notice(code, code.severity(), subject, OptionalLong.empty(), text);
  }

  /**
   * Returns a notice of its code's severity about one row.
   *
   * @param code what kind of thing it is
   * @param subject what it is about
   * @param row the row, counted from 1
   * @param text a sentence for a reader
   * @return the notice
   */
  public static Notice ofRow(Code code, String subject, long row, String text) {
    return new Notice(code, code.severity(), subject, OptionalLong.of(row), text);
  }

  @Override
  public String toString() {
    return row.isPresent() ? "row " + row.getAsLong() + ": " + text : text;
  }
}
