package org.brewchem.beer;

import org.brewchem.titration.AcidityResult;

/**
 * Something that a brewer should know about a beer's figures or about a prediction, and that is no
 * error.
 *
 * @param kind what it is about
 * @param text a sentence for people
 */
public record BeerFinding(Kind kind, String text) {

  /** What a finding is about. */
  public enum Kind {
    /**
     * More than 10 g/L as lactic acid, which is unusual for a beer (common practice, no source).
     */
    ACIDITY_UNUSUAL,
    /** More than gas in an open sample explains ({@link AcidityResult#greatestOfOpenSample}). */
    ACIDITY_OF_CARBONATED_SAMPLE,
    /** The prediction rests on {@link org.brewchem.buffer.StandIn}. */
    RESTS_ON_STAND_IN,
    /** Most of the acidity is carried by the scaled groups of the stand-in. */
    STAND_IN_STRETCHED,
    /** The acidity is below what the stand-in can represent. */
    ACIDITY_BELOW_STAND_IN,
    /** The buffering and the measured acidity do not agree. */
    BUFFERING_DISAGREES,
    /** The predicted pH lies outside what the measured buffer saw. */
    EXTRAPOLATED,
    /** An uncertainty was not stated and is not in the prediction. */
    UNCERTAINTY_NOT_STATED,
    /** Ions are known from the water only and are not in the solution. */
    KNOWN_FROM_WATER_ONLY,
    /** A part of the acid is bound in esters and acts late. */
    BOUND_IN_ESTERS,
    /** Food laws differ on the reagent in beer, or its use was not stated. */
    PERMISSION,
    /** The ionic strength is beyond the range of the activity rule. */
    BEYOND_ACTIVITY_RANGE
  }

  /** Returns the sentence. */
  @Override
  public String toString() {
    return text;
  }
}
