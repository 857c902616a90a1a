package org.brewchem.buffer;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about the buffer of a liquid say. */
public enum BufferCode implements Code {
  /** The result rests on a buffer that was measured by titration. */
  RESTS_ON_MEASURED_BUFFER(Severity.REMARK),
  /** The result rests on a stand-in: nobody has measured the buffer. */
  RESTS_ON_STAND_IN(Severity.REMARK),
  /** The stand-in is that of a soured beer: lactic acid was assumed. */
  STAND_IN_SOURED(Severity.WARNING),
  /** Calcium and magnesium were assumed. */
  METALS_ASSUMED(Severity.REMARK),
  /** The zero and the slope of the electrode were assumed. */
  ELECTRODE_ASSUMED(Severity.REMARK),
  /** The concentration of a titrant or the volume of a sample was assumed to be as stated. */
  TITRANT_ASSUMED(Severity.REMARK),
  /** The background salt was assumed. */
  SALT_ASSUMED(Severity.REMARK),
  /** The carbon dioxide left in the sample was assumed. */
  CARBON_DIOXIDE_ASSUMED(Severity.REMARK),
  /** Readings scatter around the fitted curve by more than was stated. */
  TOO_MUCH_NOISE(Severity.WARNING),
  /** Readings that follow each other lie off the fitted curve to the same side. */
  RESIDUALS_WITH_PATTERN(Severity.WARNING),
  /** The fitted curve rejects a reading. */
  READING_REJECTED(Severity.WARNING),
  /** Two portions of one liquid do not begin at the same pH, or are not of one liquid. */
  LEGS_DO_NOT_MEET(Severity.WARNING),
  /** One portion asks for another concentration of its titrant than was stated. */
  TITRANT_DOUBTFUL(Severity.WARNING),
  /** The pH runs against the titrant: it is another one, or a column is reversed. */
  RUNS_AGAINST_TITRANT(Severity.FAULT),
  /** A pH that no titration of a beer comes to: are the columns exchanged? */
  READING_IMPLAUSIBLE(Severity.FAULT),
  /** More is bound between pH 6 and 7 than beers hold: was the sample degassed? */
  CARBON_DIOXIDE_LIKELY(Severity.WARNING),
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
