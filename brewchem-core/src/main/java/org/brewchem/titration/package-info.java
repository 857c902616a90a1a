/**
 * The titration laboratory: from a bottle of lye and a reading of a burette to a number with its
 * uncertainty.
 *
 * <p>A {@link org.brewchem.titration.Titrant} gets its concentration from a label or from weighings
 * of a primary standard ({@link org.brewchem.titration.Standardisation}). It titrates a sample
 * ({@link org.brewchem.titration.SampleTitration}) to an end point, either as volumes read there or
 * as a {@link org.brewchem.titration.TitrationLog} of volumes and pH. What it finds ({@link
 * org.brewchem.titration.Determination}) is an answer: it carries its end point, its uncertainty
 * traced back to titrant and apparatus, what is notable about it, and the steps of its arithmetic.
 *
 * <p>The same log yields more than one number: a {@link org.brewchem.buffer.MeasuredBuffer} is
 * fitted to one or both of its legs and predicts the pH after any dose.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.titration;

import org.jspecify.annotations.NullMarked;
