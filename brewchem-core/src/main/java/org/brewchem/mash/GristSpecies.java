package org.brewchem.mash;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.solution.Contents;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;

/**
 * The species that the malts of a grist give off, and what calcium and magnesium of the liquor set
 * free among them.
 *
 * <p>Two balances are held at one pH: with calcium and magnesium of the liquor, and with as many
 * equivalents of sodium in their place. They differ by the protons that the two take from the
 * ligands they pair with. What they set free in the liquor alone is not the malts' and is left out.
 *
 * @param grist the malts, all of them given as species
 * @param liquor as it is balanced
 * @param litres of liquor
 */
record GristSpecies(Grist grist, Contents liquor, Traced litres) {

  /** Names the malts that are not given as species. */
  static List<String> missing(Grist grist) {
    return grist.malts().stream()
        .filter(malt -> malt.species().isEmpty())
        .map(malt -> "species of " + malt.name() + " are not stated; see Malt.withSpecies")
        .toList();
  }

  /** Acid that calcium and magnesium set free among the species at a pH, mEq/L of liquor. */
  Traced setFree(Traced pH) {
    Contents softened = softened();
    Traced among = withMalts(softened).chargeAt(pH).minus(withMalts(liquor).chargeAt(pH));
    Traced inLiquor = softened.chargeAt(pH).minus(liquor.chargeAt(pH));
    return among.minus(inLiquor).times(1000 * liquor.kilogramsPerLitre());
  }

  private Contents softened() {
    Traced metals = liquor.least(Component.CALCIUM).plus(liquor.least(Component.MAGNESIUM));
    return liquor
        .withTotal(Component.CALCIUM, Traced.exact(0))
        .withTotal(Component.MAGNESIUM, Traced.exact(0))
        .plus(Map.of(Component.SODIUM, metals.times(2)));
  }

  private Contents withMalts(Contents water) {
    Contents sum = water;
    for (Grist.Part part : grist.parts()) {
      Malt malt = part.malt();
      Contents species = malt.species().orElseThrow();
      Traced diluted =
          Traced.exact(
                  part.kilograms()
                      * malt.litresPerKilogram()
                      * species.kilogramsPerLitre()
                      / water.kilogramsPerLitre())
              .dividedBy(litres);
      Map<Component, Traced> added = new LinkedHashMap<>();
      species.totals().forEach((component, total) -> added.put(component, total.times(diluted)));
      Traced inert = sum.inertCharge().orElseThrow();
      sum =
          sum.plus(added)
              .withInertCharge(inert.plus(species.inertCharge().orElseThrow().times(diluted)));
    }
    return sum;
  }
}
