/**
 * Doses that meet constraints: from waters, a shelf and what the liquids downstream are to be, the
 * treatments of each portion of water.
 *
 * <p>A {@link org.brewchem.plan.Plan} mixes waters and doses what stands on a {@link
 * org.brewchem.plan.Shelf}. Shelf limits and hard constraints are never broken; among what is left
 * the weighted constraints are broken least, and then the cheapest plan is taken. Doses are rounded
 * to what can be weighed. Everything that a plan says is asked of the liquids after its treatments,
 * by the one kernel.
 *
 * <p>A plan is a proposal: local codes and a trained person decide. Null is refused with a {@link
 * NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.plan;

import org.jspecify.annotations.NullMarked;
