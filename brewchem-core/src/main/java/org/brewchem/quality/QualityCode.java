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
  BAND_NARROWER_THAN_METHOD(Severity.WARNING);

  private final Severity severity;

  QualityCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
