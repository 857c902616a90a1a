package org.brewchem.titration;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about titrants, titrations, electrodes and fitted curves say. */
public enum TitrationCode implements Code {
  /** The titrant states no uncertainty, so that no result of it has one. */
  TITRANT_WITHOUT_UNCERTAINTY(Severity.REMARK),
  /** A titrant of two equivalents a mole is stated in moles: a label may mean equivalents. */
  TITRANT_OF_MORE_EQUIVALENTS(Severity.REMARK),
  /** The blank takes more titrant than the sample. */
  BLANK_ABOVE_TITRE(Severity.FAULT),
  /** The titrant moved since it was last standardised by more than the uncertainties explain. */
  TITRANT_DRIFT(Severity.WARNING),
  /** The slope of the electrode is outside what is common practice. */
  ELECTRODE_SLOPE(Severity.FAULT),
  /** The offset of the electrode is outside what is common practice. */
  ELECTRODE_OFFSET(Severity.FAULT),
  /** A buffer lies off the straight line through all of them. */
  CALIBRATION_NOT_LINEAR(Severity.WARNING),
  /** Two buffers leave nothing to check the line by. */
  CALIBRATION_UNCHECKED(Severity.REMARK),
  /** A single determination says nothing about its own repeatability. */
  SINGLE_DETERMINATION(Severity.REMARK),
  /** Two replicates hardly determine a standard deviation. */
  TWO_REPLICATES(Severity.REMARK),
  /** The slope at the end point is unknown, so the reading of pH is not in the budget. */
  END_POINT_READING_NOT_IN_BUDGET(Severity.REMARK),
  /** The curve bends so much at the end point that the linear budget may not hold. */
  BUDGET_NOT_LINEAR(Severity.WARNING),
  /** Replicates differ by more than the repeatability limit. */
  REPLICATES_DIFFER(Severity.WARNING),
  /** A value lies farther from the others than chance explains; it is flagged, not dropped. */
  OUTLIER(Severity.WARNING),
  /** The acidity is higher than usual in beer. */
  ACIDITY_UNUSUAL(Severity.WARNING),
  /** What carbon dioxide left in the sample adds to an acidity is not in its uncertainty. */
  GAS_NOT_IN_BUDGET(Severity.REMARK),
  /** The acidity is more than gas in an open sample explains: the sample was not degassed. */
  SAMPLE_CARBONATED(Severity.FAULT),
  /** The volume of a reading is smaller than one before it. */
  READING_OUT_OF_ORDER(Severity.WARNING),
  /** The pH of a reading goes against the direction of the titration. */
  STEP_NOT_MONOTONE(Severity.WARNING),
  /** The pH of a reading lies off the curve by more than its uncertainty allows. */
  BAD_POINT(Severity.WARNING),
  /** Readings taken again after a wait show that the electrode or the sample was still moving. */
  READINGS_STILL_MOVING(Severity.WARNING),
  /** The way up and the way back do not meet at the end point. */
  DIRECTIONS_DISAGREE(Severity.WARNING),
  /** Nothing in the log shows lag of the electrode, drift or uptake of carbon dioxide. */
  LAG_AND_DRIFT_UNCHECKED(Severity.REMARK),
  /** The readings scatter more than was stated of them. */
  NOISE_ABOVE_STATED(Severity.WARNING),
  /** The readings next to the end point are too far apart to interpolate well. */
  STEPS_TOO_COARSE(Severity.WARNING),
  /** The readings stop before the end point. */
  END_POINT_NOT_REACHED(Severity.FAULT);

  private final Severity severity;

  TitrationCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
