package org.brewchem.treatment;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about treatments and doses say. */
public enum TreatmentCode implements Code {
  /** The dose goes to a limit without an aim: half of the outcomes lie beyond it. */
  AT_THE_LIMIT(Severity.WARNING),
  /** A part of the acid is bound in esters and acts only after hydrolysis. */
  BOUND_IN_ESTERS(Severity.WARNING),
  /** The dose sets carbon dioxide free. */
  SETS_GAS_FREE(Severity.WARNING),
  /** A reading between two stages of a dose lies far from where it was expected. */
  READING_UNEXPECTED(Severity.WARNING),
  /** The treatment ends at equilibrium here, and practice stops earlier. */
  STOPS_EARLIER(Severity.WARNING),
  /** No rule says where between the corners of a set of blends a figure is least or greatest. */
  NO_RULE_BETWEEN(Severity.WARNING),
  /** Food laws differ on the substance in this liquid, or nobody has stated its use. */
  PERMISSION(Severity.WARNING);

  private final Severity severity;

  TreatmentCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
