package org.brewchem.quality;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about batches and their targets say. */
public enum QualityCode implements Code {
  /** A rule of a control chart signals. */
  SIGNAL(Severity.WARNING),
  /** A batch has no value of the figure, so that the chart passes over it. */
  POINT_MISSING(Severity.REMARK),
  /** A band is narrower than the method can tell. */
  BAND_NARROWER_THAN_METHOD(Severity.WARNING),
  /** A band comes from fewer batches than five, which hardly fix a spread. */
  FEW_BATCHES(Severity.REMARK),
  /** The batches of a band are equal, so that their spread is hidden in the rounding. */
  BATCHES_EQUAL(Severity.WARNING),
  /** A band reaches what is not possible, or below zero where no batch lies. */
  BAND_REACHES_TOO_FAR(Severity.WARNING),
  /** The batches that limits were made from follow the ones before them. */
  PAST_NOT_INDEPENDENT(Severity.WARNING),
  /** One of the batches that limits were made from lies apart. */
  PAST_HOLDS_OUTLIER(Severity.WARNING);

  private final Severity severity;

  QualityCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
