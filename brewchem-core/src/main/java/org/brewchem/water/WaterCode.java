package org.brewchem.water;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about the report of a water say. */
public enum WaterCode implements Code {
  /** The ion balance is within its limit. */
  ION_BALANCE_ACCEPTABLE(Severity.REMARK),
  /**
   * The ion balance is beyond its limit: some figure of the report is wrong, or an ion is missing.
   */
  ION_BALANCE_OFF(Severity.WARNING),
  /** The ion balance cannot be judged. */
  ION_BALANCE_NOT_JUDGED(Severity.WARNING),
  /** The ion balance is off, and an ion that is not reported would put it right. */
  ION_PERHAPS_MISSING(Severity.WARNING),
  /** The ion balance would be right if one figure were ten times as large or as small. */
  TENFOLD_SLIP(Severity.WARNING),
  /** The ion balance would be right if what is headed bicarbonate were carbonate. */
  BICARBONATE_PERHAPS_CARBONATE(Severity.WARNING),
  /** The ion balance would be right if the alkalinity were stated on the other basis. */
  ALKALINITY_BASIS_DOUBTFUL(Severity.WARNING),
  /** The ion balance would be right if the sulfate were sulfur. */
  SULFATE_PERHAPS_SULFUR(Severity.WARNING),
  /** The ion balance would be right if the sulfur were sulfate. */
  SULFUR_PERHAPS_SULFATE(Severity.WARNING),
  /** The ion balance would be right if the nitrate were nitrogen. */
  NITRATE_PERHAPS_NITROGEN(Severity.WARNING),
  /** The ion balance would be right if the nitrogen were nitrate. */
  NITROGEN_PERHAPS_NITRATE(Severity.WARNING),
  /** The pH and the alkalinity cannot both be right. */
  PH_CONTRADICTS_ALKALINITY(Severity.WARNING),
  /** The pH and the alkalinity mean more carbon dioxide than a still water usually holds. */
  CARBON_DIOXIDE_HIGH(Severity.WARNING),
  /** The pH is one that hardly any water of a tap or well has. */
  PH_UNUSUAL(Severity.WARNING),
  /** A treatment made an ion or a pH that hardly any brewing water has. */
  TREATED_WATER_UNUSUAL(Severity.WARNING),
  /** A treated water holds carbon dioxide that leaves where it stands open, and its pH rises. */
  CARBON_DIOXIDE_LEAVES(Severity.REMARK),
  /** The conductivity goes with the ions. */
  CONDUCTIVITY_AGREES(Severity.REMARK),
  /** The conductivity does not go with the ions: one is wrong, or an ion is missing. */
  CONDUCTIVITY_OFF(Severity.WARNING),
  /** The dry residue goes with what is dissolved. */
  DRY_RESIDUE_AGREES(Severity.REMARK),
  /** The dry residue does not go with what is dissolved. */
  DRY_RESIDUE_OFF(Severity.WARNING),
  /** The total hardness goes with calcium and magnesium. */
  HARDNESS_AGREES(Severity.REMARK),
  /** The total hardness does not go with calcium and magnesium. */
  HARDNESS_OFF(Severity.WARNING),
  /** The base capacity goes with pH and alkalinity. */
  BASE_CAPACITY_AGREES(Severity.REMARK),
  /** The base capacity does not go with pH and alkalinity: carbon dioxide got lost, or more. */
  BASE_CAPACITY_OFF(Severity.WARNING),
  /** Standard uncertainties that the report does not state were assumed, as was asked for. */
  UNCERTAINTIES_ASSUMED(Severity.REMARK),
  /** The pH is so high that part of what is stated as bicarbonate is carbonate. */
  CARBONATE_PRESENT(Severity.REMARK),
  /** Ions are missing. */
  IONS_MISSING(Severity.REMARK),
  /** No pH is reported, so that the carbon dioxide is not known. */
  PH_MISSING(Severity.REMARK);

  private final Severity severity;

  WaterCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
