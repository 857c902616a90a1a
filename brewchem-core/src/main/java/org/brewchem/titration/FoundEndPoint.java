package org.brewchem.titration;

import java.util.Objects;
import org.brewchem.figure.Step;
import org.brewchem.quantity.PH;

/**
 * An end point that was found in a titration by something else than a stated pH: an inflection, a
 * line through readings beyond it, two volumes. Anybody can make one, from readings and the step
 * that found the volume.
 *
 * @param titre the step that found the volume of titrant, in mL, with the sources of how well the
 *     place is known besides the burette; {@link Step#found} must hold a value
 * @param endPoint the pH of the sample there, which names the end point of the result
 */
public record FoundEndPoint(Step titre, PH endPoint) {

  /**
   * Makes an end point.
   *
   * @param titre the step that found the volume of titrant, in mL, with the sources of how well the
   *     place is known besides the burette; {@link Step#found} must hold a value
   * @param endPoint the pH of the sample there, which names the end point of the result
   * @throws IllegalArgumentException if the step found no volume
   */
  public FoundEndPoint {
    Objects.requireNonNull(titre, "titre");
    Objects.requireNonNull(endPoint, "end point");
    if (titre.found().isEmpty()) {
      throw new IllegalArgumentException(
          "titre: unknown is not possible (" + String.join("; ", titre.whyUnknown()) + ")");
    }
  }

  /** The volume found, mL. */
  double millilitres() {
    return titre.found().orElseThrow().value();
  }

  /** Whether nothing but the readings of pH and burette says how well it is known. */
  boolean isRead() {
    return titre.found().orElseThrow().sources().isEmpty();
  }
}
