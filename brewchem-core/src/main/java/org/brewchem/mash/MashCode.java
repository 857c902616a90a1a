package org.brewchem.mash;

import org.brewchem.figure.Code;
import org.brewchem.figure.Severity;

/** What notices about malts and mashes say. */
public enum MashCode implements Code {
  /** Nobody measured the lot of this malt: its curve is the assumed one of its kind. */
  ASSUMED_MALT(Severity.WARNING),
  /** The mash takes a malt beyond the acid and base that its curve was measured with. */
  BEYOND_MALT_DATA(Severity.WARNING),
  /** Nobody measured the buffer of this wort: it is assumed per degree of extract. */
  ASSUMED_WORT_BUFFER(Severity.WARNING),
  /** The assumed buffer of the wort is a mean of another stretch of pH. */
  BEYOND_WORT_BUFFER(Severity.WARNING),
  /** The ratio of liquor to grist is far from that at which a malt was read. */
  RATIO_FAR_FROM_READING(Severity.REMARK),
  /** The shares of the grist were never varied: the malts one by one stay undecided. */
  MALTS_UNDECIDED(Severity.WARNING),
  /** Among the malts' species the kernel finds more acid set free than Kolbach's term says. */
  SPECIES_BEYOND_KOLBACH(Severity.REMARK),
  /** The measured pH lies further from the expected one than chance explains. */
  SURPRISING_READING(Severity.WARNING);

  private final Severity severity;

  MashCode(Severity severity) {
    this.severity = severity;
  }

  @Override
  public Severity severity() {
    return severity;
  }
}
