package org.brewchem.beer;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about a beer say. */
public enum BeerCode implements Code {
  /** An ion is known from the brewing water only, which malt and brewhouse change. */
  KNOWN_FROM_WATER_ONLY(Severity.REMARK),
  /** The titrated acidity is less than the stand-in has at the beer's pH. */
  ACIDITY_BELOW_STAND_IN(Severity.FAULT),
  /** The titrated acidity differs from that of the measured buffer. */
  BUFFER_DISAGREES(Severity.WARNING);

  private final Severity severity;

  BeerCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
