package org.brewchem.beer;

import org.brewchem.internal.Checks;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Use;

/** The question for a dose, which still wants the volume of the beer. Immutable. */
public final class DoseRequest {

  private final Beer beer;
  private final Reagent reagent;
  private final Acid acid;

  private DoseRequest(Beer beer, Reagent reagent, Acid acid) {
    this.beer = beer;
    this.reagent = reagent;
    this.acid = acid;
  }

  static DoseRequest of(Beer beer, Reagent reagent) {
    if (!(reagent.compound() instanceof Acid acid)) {
      throw new IllegalArgumentException(
          "reagent: " + reagent + " is not possible; an acid is needed");
    }
    reagent.permissionIn(Use.BEER).orThrow();
    return new DoseRequest(beer, reagent, acid);
  }

  /**
   * States the volume of the beer.
   *
   * @param volume the volume, above 0
   * @return a request that wants a target
   * @throws IllegalArgumentException if the volume is 0
   */
  public InVolume into(Volume volume) {
    Checks.positive("volume of the beer", volume.inLitres(), "L");
    return new InVolume(this, volume);
  }

  /** The question for a dose, which still wants its target. Immutable. */
  public static final class InVolume {

    private final DoseRequest request;
    private final Volume volume;

    private InVolume(DoseRequest request, Volume volume) {
      this.request = request;
      this.volume = volume;
    }

    /**
     * Finds the dose to a pH.
     *
     * @param target the pH, below that of the beer
     * @return the dose
     * @throws UnreachableTargetException if the acid cannot bring the beer there
     * @throws org.brewchem.buffer.AcidityBelowStandInException if the stand-in cannot represent the
     *     beer
     */
    public BeerDose to(PH target) {
      return addition().to(target);
    }

    /**
     * Finds the dose to a titratable acidity.
     *
     * @param target the acidity, above that of the beer, to the same end point
     * @return the dose
     * @throws UnreachableTargetException if the acid cannot bring the beer there
     * @throws IllegalArgumentException if the end point is another than the beer's
     * @throws org.brewchem.buffer.AcidityBelowStandInException if the stand-in cannot represent the
     *     beer
     */
    public BeerDose to(TitratableAcidity target) {
      return addition().to(target);
    }

    private AcidAddition addition() {
      return new AcidAddition(request.beer, request.reagent, request.acid, volume);
    }
  }
}
