/**
 * The acidity of beer: its key figures, what they should be, and how to get there.
 *
 * <p>A {@link org.brewchem.beer.Beer} enters by its measured pH and titratable acidity. Its {@link
 * org.brewchem.beer.KeyFigures}, together with sulfate to chloride and calcium, are compared with a
 * {@link org.brewchem.beer.Target}: a {@link org.brewchem.beer.Comparison} says below, within,
 * above, undecided or missing, figure by figure. From there a brewer either doses an acid ({@link
 * org.brewchem.beer.BeerDose}) or blends with another beer ({@link org.brewchem.beer.Blend}).
 *
 * <p>The acidity that an acid brings is known from its constants; how far the pH moves depends on
 * what buffers in the beer. Until that has been measured, {@link org.brewchem.buffer.StandIn}
 * stands in for it, and every prediction made with it says so and carries its uncertainty.
 *
 * <p>What is computed here is a proposal. Try it on the bench, dose less than the whole, measure,
 * and leave the last word to local food law, the supplier's safety data sheet and a trained person.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.beer;

import org.jspecify.annotations.NullMarked;
