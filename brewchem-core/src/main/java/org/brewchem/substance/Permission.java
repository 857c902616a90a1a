package org.brewchem.substance;

import java.util.Objects;
import java.util.Optional;

/**
 * Whether a substance may be dosed into a liquid, with the reason and its source.
 *
 * <p>Made by {@link Permissions}. It is no legal advice, it knows no amounts, and it does not check
 * that a reagent is of food grade. Local law has the last word.
 *
 * @param subject the substance or reagent, such as "oxalic acid"
 * @param use the liquid
 * @param standing what is known, as a code
 * @param reason why, as part of a sentence
 * @param provenance where the reason comes from; empty when the library has no row
 */
public record Permission(
    String subject, Use use, Standing standing, String reason, Optional<Provenance> provenance) {

  /**
   * Makes a permission.
   *
   * @param subject the substance or reagent
   * @param use the liquid
   * @param standing what is known
   * @param reason why
   * @param provenance where the reason comes from
   */
  public Permission {
    Objects.requireNonNull(subject, "subject");
    Objects.requireNonNull(use, "use");
    Objects.requireNonNull(standing, "standing");
    Objects.requireNonNull(reason, "reason");
    Objects.requireNonNull(provenance, "provenance");
  }

  /** What is known about a substance in a liquid. */
  public enum Standing {
    /** Food law lists it, or it is common practice. */
    PERMITTED,
    /** A food additive, but food laws differ on this liquid: find out what yours says. */
    LAWS_DIFFER,
    /** The caller said that it is permitted, and by what authority. */
    STATED_BY_CALLER,
    /** The library does not know the substance, and the caller said nothing. */
    NOT_STATED,
    /** Not for this liquid: a dose is refused. */
    REFUSED
  }

  private static final String LAST_WORD = "local law has the last word";

  /**
   * Returns whether a dose is refused.
   *
   * @return true for a substance that is not for this liquid
   */
  public boolean isRefused() {
    return standing == Standing.REFUSED;
  }

  /**
   * Returns whether the standing deserves a notice: always, except where the substance is permitted
   * or the caller has stated its use.
   *
   * @return whether {@link #text()} belongs among the notices of a result
   */
  public boolean isNotable() {
    return standing != Standing.PERMITTED && standing != Standing.STATED_BY_CALLER;
  }

  /**
   * Returns whether a trial with the substance may be tasted: it is a known food additive, or the
   * caller has stated its use.
   *
   * @return false for what is refused or not stated
   */
  public boolean mayBeTasted() {
    return standing != Standing.REFUSED && standing != Standing.NOT_STATED;
  }

  /**
   * Returns this permission, or refuses the dose.
   *
   * @return this permission
   * @throws IllegalArgumentException if it is a refusal; the message names the substance, the
   *     liquid and the reason
   */
  public Permission orThrow() {
    if (isRefused()) {
      throw new IllegalArgumentException(text());
    }
    return this;
  }

  /**
   * Returns the permission in a sentence.
   *
   * @return such as "oxalic acid: a dose into beer is not possible; oxalic acid is poisonous and no
   *     food additive (eu-1333-2008, Annex II, part B, from memory); local law has the last word"
   */
  public String text() {
    String verdict =
        switch (standing) {
          case PERMITTED -> "is permitted";
          case LAWS_DIFFER -> "is permitted here and not there";
          case STATED_BY_CALLER -> "is possible";
          case NOT_STATED -> "may or may not be permitted";
          case REFUSED -> "is not possible";
        };
    String source =
        provenance
            .map(p -> " (" + p.sourceKey() + ", " + p.locator() + ", " + p.howKnown() + ")")
            .orElse("");
    return subject
        + ": a dose into "
        + use
        + " "
        + verdict
        + "; "
        + reason
        + source
        + "; "
        + LAST_WORD;
  }

  /** Returns {@link #text()}. */
  @Override
  public String toString() {
    return text();
  }
}
