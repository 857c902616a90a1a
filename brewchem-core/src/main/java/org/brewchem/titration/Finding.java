package org.brewchem.titration;

import java.util.Objects;
import java.util.OptionalInt;
import org.brewchem.internal.Checks;
import org.jspecify.annotations.Nullable;

/**
 * Something noteworthy about a measurement, with its kind for a program and a text for a reader.
 * Immutable.
 */
public final class Finding {

  /** How much a finding matters. */
  public enum Severity {
    /** Good to know; the value stands. */
    REMARK,
    /** Somebody should look before the value is used. */
    CAUTION,
    /** The value should not be used as it is. */
    FAULT
  }

  /** What a finding is about. */
  public enum Kind {
    /** The concentration of the titrant came without an uncertainty. */
    TITRANT_WITHOUT_UNCERTAINTY(Severity.REMARK),
    /** The titrant moved since it was last standardised by more than the uncertainties explain. */
    TITRANT_DRIFT(Severity.CAUTION),
    /** The slope of the electrode is outside what is common practice. */
    ELECTRODE_SLOPE(Severity.FAULT),
    /** The offset of the electrode is outside what is common practice. */
    ELECTRODE_OFFSET(Severity.FAULT),
    /** A buffer lies off the straight line through all of them. */
    CALIBRATION_NOT_LINEAR(Severity.CAUTION),
    /** Two buffers leave nothing to check the line by. */
    CALIBRATION_UNCHECKED(Severity.REMARK),
    /** A single determination says nothing about its own repeatability. */
    SINGLE_DETERMINATION(Severity.REMARK),
    /** Two replicates hardly determine a standard deviation. */
    TWO_REPLICATES(Severity.REMARK),
    /** The slope at the end point is unknown, so the reading of pH is not in the budget. */
    END_POINT_READING_NOT_IN_BUDGET(Severity.REMARK),
    /** The curve bends so much at the end point that the linear budget may not hold. */
    BUDGET_NOT_LINEAR(Severity.CAUTION),
    /** Replicates differ by more than the repeatability limit. */
    REPLICATES_DIFFER(Severity.CAUTION),
    /** A value lies farther from the others than chance explains; it is flagged, not dropped. */
    OUTLIER(Severity.CAUTION),
    /** The acidity is higher than usual in beer. */
    ACIDITY_UNUSUAL(Severity.CAUTION),
    /** The acidity is more than gas in an open sample explains: the sample was not degassed. */
    SAMPLE_CARBONATED(Severity.FAULT),
    /** The volume of a reading is smaller than one before it. */
    READING_OUT_OF_ORDER(Severity.CAUTION),
    /** The pH of a reading goes against the direction of the titration. */
    STEP_NOT_MONOTONE(Severity.CAUTION),
    /** The pH of a reading lies off the curve by more than its uncertainty allows. */
    BAD_POINT(Severity.CAUTION),
    /** The readings next to the end point are too far apart to interpolate well. */
    STEPS_TOO_COARSE(Severity.CAUTION),
    /** The readings stop before the end point. */
    END_POINT_NOT_REACHED(Severity.FAULT);

    private final Severity severity;

    Kind(Severity severity) {
      this.severity = severity;
    }

    /**
     * Returns how much findings of this kind matter.
     *
     * @return the severity
     */
    public Severity severity() {
      return severity;
    }
  }

  private static final int NO_ROW = 0;

  private final Kind kind;
  private final int row;
  private final String message;

  private Finding(Kind kind, int row, String message) {
    this.kind = kind;
    this.row = row;
    this.message = Checks.notBlank("message", message);
  }

  /**
   * Makes a finding about a whole measurement.
   *
   * @param kind what it is about
   * @param message the text for a reader
   * @return the finding
   * @throws IllegalArgumentException if the text is blank
   */
  public static Finding of(Kind kind, String message) {
    return new Finding(kind, NO_ROW, message);
  }

  /**
   * Makes a finding about one row of a log or one of several replicates.
   *
   * @param kind what it is about
   * @param row the row, counted from 1
   * @param message the text for a reader
   * @return the finding
   * @throws IllegalArgumentException if the text is blank or the row is below 1
   */
  public static Finding ofRow(Kind kind, int row, String message) {
    if (row < 1) {
      throw Checks.outOfRange("row", row, "", "1 or more");
    }
    return new Finding(kind, row, message);
  }

  /**
   * Returns what the finding is about.
   *
   * @return the kind
   */
  public Kind kind() {
    return kind;
  }

  /**
   * Returns how much the finding matters.
   *
   * @return the severity of its kind
   */
  public Severity severity() {
    return kind.severity();
  }

  /**
   * Returns the row that the finding is about.
   *
   * @return the row, counted from 1; empty when the finding is about the whole
   */
  public OptionalInt row() {
    return row == NO_ROW ? OptionalInt.empty() : OptionalInt.of(row);
  }

  /**
   * Returns the text for a reader.
   *
   * @return the text, without the row
   */
  public String message() {
    return message;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Finding that
        && kind == that.kind
        && row == that.row
        && message.equals(that.message);
  }

  @Override
  public int hashCode() {
    return Objects.hash(kind, row, message);
  }

  /** Prints the row, if there is one, and the text. */
  @Override
  public String toString() {
    return row == NO_ROW ? message : "row " + row + ": " + message;
  }
}
