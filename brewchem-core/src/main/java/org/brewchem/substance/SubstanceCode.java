package org.brewchem.substance;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about substances and reagents as bought say. */
public enum SubstanceCode implements Code {
  /** The assay of a salt or a lime is assumed from what specifications allow. */
  ASSUMED_PURITY(Severity.REMARK),
  /** The density of a bottle is not that of its strength. */
  DENSITY_AND_ASSAY_DISAGREE(Severity.WARNING);

  private final Severity severity;

  SubstanceCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
