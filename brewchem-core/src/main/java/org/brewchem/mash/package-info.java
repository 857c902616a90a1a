/**
 * The mash: malts as measured data, grists, the mash pH with its uncertainty, and what a measured
 * mash pH teaches about the malts.
 *
 * <p>A {@link org.brewchem.mash.Malt} is its charge curve in distilled water: the pH of a cooled
 * sample against the strong acid it was given. It is measured ({@link
 * org.brewchem.mash.MaltTitration}) or, with a notice in every result, assumed by its kind. A
 * {@link org.brewchem.mash.Grist} is malts and their masses; a {@link org.brewchem.mash.Mash} is a
 * grist in a liquor. Its pH is the root of one balance: the charge of the liquor by the kernel,
 * that of the malts by their curves, and the acid that calcium and magnesium set free by Kolbach's
 * term.
 *
 * <p>A pH is never unlabelled: {@link org.brewchem.mash.MashFigures#MASH_PH} is that of a cooled
 * sample, {@link org.brewchem.mash.MashFigures#hotMashPH} what an electrode in the hot mash shows.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.mash;

import org.jspecify.annotations.NullMarked;
