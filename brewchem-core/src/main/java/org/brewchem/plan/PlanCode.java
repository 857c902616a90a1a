package org.brewchem.plan;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about plans say. */
public enum PlanCode implements Code {
  /** Nothing says how finely an item is measured out: its doses are not rounded. */
  NOT_ROUNDED(Severity.REMARK),
  /** There is a plan, and none that can be weighed: the doses are those before rounding. */
  NOT_TO_BE_WEIGHED(Severity.FAULT),
  /** A hard constraint is kept by the value, and the interval of the value reaches beyond it. */
  AT_THE_LIMIT(Severity.WARNING),
  /** Mashes take more water together than their portion has: it is planned for each by itself. */
  LIQUOR_SHARED(Severity.REMARK);

  private final Severity severity;

  PlanCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
