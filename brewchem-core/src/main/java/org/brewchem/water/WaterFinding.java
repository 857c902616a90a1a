package org.brewchem.water;

/**
 * Something that a water analysis tells about itself.
 *
 * @param kind what kind of finding it is
 * @param message what was found, in a sentence with its numbers
 */
public record WaterFinding(Kind kind, String message) {

  /** The kinds of findings. */
  public enum Kind {
    /** The ion balance is within its limit. */
    ION_BALANCE_ACCEPTABLE(false),
    /**
     * The ion balance is beyond its limit: some figure of the report is wrong, or an ion is
     * missing.
     */
    ION_BALANCE_OFF(true),
    /** The ion balance cannot be judged. */
    ION_BALANCE_NOT_JUDGED(true),
    /** The ion balance would be right if what is headed bicarbonate were carbonate. */
    BICARBONATE_PERHAPS_CARBONATE(true),
    /** The ion balance would be right if the alkalinity were stated on the other basis. */
    ALKALINITY_BASIS_DOUBTFUL(true),
    /** The ion balance would be right if the sulfate were sulfur. */
    SULFATE_PERHAPS_SULFUR(true),
    /** The ion balance would be right if the sulfur were sulfate. */
    SULFUR_PERHAPS_SULFATE(true),
    /** The ion balance would be right if the nitrate were nitrogen. */
    NITRATE_PERHAPS_NITROGEN(true),
    /** The ion balance would be right if the nitrogen were nitrate. */
    NITROGEN_PERHAPS_NITRATE(true),
    /** The pH and the alkalinity cannot both be right. */
    PH_CONTRADICTS_ALKALINITY(true),
    /** The pH is so high that part of what is stated as bicarbonate is carbonate. */
    CARBONATE_PRESENT(false),
    /** Ions are missing. */
    IONS_MISSING(false),
    /** No pH is reported, so that the carbon dioxide is not known. */
    PH_MISSING(false);

    private final boolean warning;

    Kind(boolean warning) {
      this.warning = warning;
    }

    /**
     * Tells whether the report needs a second look.
     *
     * @return false for what is merely said
     */
    public boolean isWarning() {
      return warning;
    }
  }

  /** Returns the message. */
  @Override
  public String toString() {
    return message;
  }
}
