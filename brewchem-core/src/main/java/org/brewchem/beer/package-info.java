/**
 * Beer: what was measured of it, what buffers it, and what follows for its acidity.
 *
 * <p>A {@link org.brewchem.beer.Beer} is made from its measured pH and titratable acidity. It is a
 * {@link org.brewchem.solution.Liquid}: it answers figures, is compared with a {@link
 * org.brewchem.figure.Target}, dosed by a {@link org.brewchem.treatment.Dose} and blended by a
 * {@link org.brewchem.treatment.Blend}, and is a beer afterwards.
 *
 * <p>The acidity that an acid brings is known from its constants; how far the pH moves depends on
 * the buffer of the beer. Until that has been measured, {@link org.brewchem.buffer.StandIn} stands
 * in for it, and every prediction made with it says so and carries its uncertainty.
 *
 * <p>What is computed here is a proposal. Try it on the bench, dose less than the whole, measure,
 * and leave the last word to local food law, the supplier's safety data sheet and a trained person.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.beer;

import org.jspecify.annotations.NullMarked;
