package org.brewchem.figure;

/** How much a notice matters. */
public enum Severity {
  /** Worth knowing; the value stands. */
  REMARK,
  /** The value may be worse than its uncertainty says. */
  WARNING,
  /** The value is not to be used until the cause is corrected. */
  FAULT
}
