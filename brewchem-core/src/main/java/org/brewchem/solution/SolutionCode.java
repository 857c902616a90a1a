package org.brewchem.solution;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about a liquid's contents and its proton balance say. */
public enum SolutionCode implements Code {
  /** A constituent that is not known was counted as absent from the balance. */
  COUNTED_AS_ABSENT(Severity.REMARK),
  /** The total carbon dioxide was not stated and was taken as equal to the alkalinity. */
  CARBON_DIOXIDE_ASSUMED(Severity.REMARK),
  /** Hydroxide or free acid is not counted in the carbonate alkalinity. */
  BESIDES_CARBONATE(Severity.WARNING),
  /** The ionic strength is beyond the range of the activity rule. */
  BEYOND_ACTIVITY_RANGE(Severity.WARNING),
  /** A constant was used outside the temperatures its source covers. */
  CONSTANT_BEYOND_RANGE(Severity.WARNING),
  /** Constants were used without their sources stating for which temperatures they hold. */
  CONSTANT_RANGE_UNSTATED(Severity.REMARK),
  /** Acids without a name, such as those of a measured buffer, are not in the index. */
  LUMPED_ACIDS_NOT_COUNTED(Severity.WARNING),
  /** The liquid is supersaturated with a mineral. */
  SUPERSATURATED(Severity.WARNING);

  private final Severity severity;

  SolutionCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
