package org.brewchem.buffer;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about the buffer of a liquid say. */
public enum BufferCode implements Code {
  /** The result rests on a buffer that was measured by titration. */
  RESTS_ON_MEASURED_BUFFER(Severity.REMARK),
  /** The result rests on a stand-in: nobody has measured the buffer. */
  RESTS_ON_STAND_IN(Severity.REMARK),
  /** Calcium and magnesium were assumed. */
  METALS_ASSUMED(Severity.REMARK),
  /** A pH lies outside the readings of the measured buffer. */
  EXTRAPOLATED(Severity.WARNING),
  /** Most of the acidity is carried by the scaled groups of the stand-in. */
  STAND_IN_STRETCHED(Severity.WARNING);

  private final Severity severity;

  BufferCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
