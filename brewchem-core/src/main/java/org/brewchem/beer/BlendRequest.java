package org.brewchem.beer;

import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;

/** The question for a blend of two beers, which still wants its volumes. Immutable. */
public final class BlendRequest {

  private final Beer first;
  private final Beer second;

  private BlendRequest(Beer first, Beer second) {
    this.first = first;
    this.second = second;
  }

  static BlendRequest of(Beer first, Beer second) {
    // throws when the end points differ
    first.acidity().compareTo(second.acidity());
    if (!first.temperature().equals(second.temperature())) {
      throw new IllegalArgumentException(
          "temperature of the other beer: "
              + second.temperature()
              + " is not possible; "
              + first.temperature()
              + " is needed");
    }
    return new BlendRequest(first, second);
  }

  /**
   * Blends given volumes.
   *
   * @param ofFirst the volume of the first beer, above 0
   * @param ofSecond the volume of the second beer, above 0
   * @return the blend
   * @throws IllegalArgumentException if a volume is 0
   */
  public Blend volumes(Volume ofFirst, Volume ofSecond) {
    Checks.positive("volume of the first beer", ofFirst.inLitres(), "L");
    Checks.positive("volume of the second beer", ofSecond.inLitres(), "L");
    double share = ofFirst.inLitres() / ofFirst.plus(ofSecond).inLitres();
    return new BlendSearch(first, second, ofFirst.plus(ofSecond)).at(share);
  }

  /**
   * States the volume that the blend shall have.
   *
   * @param volume the volume, above 0
   * @return a request that wants a target
   * @throws IllegalArgumentException if the volume is 0
   */
  public OfTotal total(Volume volume) {
    Checks.positive("volume of the blend", volume.inLitres(), "L");
    return new OfTotal(this, volume);
  }

  /** The question for a blend of a given volume, which still wants its target. Immutable. */
  public static final class OfTotal {

    private final BlendRequest request;
    private final Volume volume;

    private OfTotal(BlendRequest request, Volume volume) {
      this.request = request;
      this.volume = volume;
    }

    /**
     * Finds the blend of a pH.
     *
     * @param target the pH, between those of the two beers
     * @return the blend
     * @throws UnreachableTargetException if the target does not lie between the two
     */
    public Blend to(PH target) {
      return new BlendSearch(request.first, request.second, volume).to(target);
    }

    /**
     * Finds the blend of a titratable acidity.
     *
     * @param target the acidity, between those of the two beers and to the same end point
     * @return the blend
     * @throws UnreachableTargetException if the target does not lie between the two
     * @throws IllegalArgumentException if the end point is another
     */
    public Blend to(TitratableAcidity target) {
      return new BlendSearch(request.first, request.second, volume).to(target);
    }
  }
}
