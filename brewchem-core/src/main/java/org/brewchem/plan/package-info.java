/**
 * Doses that meet constraints: from waters, a shelf and constraints on the liquids made of the
 * water, a plan finds the treatments of each portion.
 *
 * <p>A {@link org.brewchem.plan.Plan} mixes waters and doses what is on a {@link
 * org.brewchem.plan.Shelf}. Shelf limits and hard constraints are never broken; among the plans
 * that remain, those that break the weighted constraints least are kept, and the cheapest of them
 * is taken, or where prices are missing the one that doses the least mass. Doses are rounded to
 * what can be weighed. All figures of a plan are those of the liquids after its treatments, by the
 * same kernel.
 *
 * <p>A plan is a proposal: local codes and a trained person decide. Null is refused with a {@link
 * NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.plan;

import org.jspecify.annotations.NullMarked;
