/**
 * The titration laboratory: from a bottle of lye and a reading of a burette to a number with its
 * uncertainty.
 *
 * <p>A {@link org.brewchem.titration.Titrant} gets its concentration from a label or from weighings
 * of a primary standard ({@link org.brewchem.titration.Standardisation}). It titrates a sample
 * ({@link org.brewchem.titration.SampleTitration}) to an end point, either as volumes read there or
 * as a {@link org.brewchem.titration.TitrationLog} of volumes and pH. The result ({@link
 * org.brewchem.titration.AcidityResult}) carries its end point, its uncertainty budget, what is
 * noteworthy about it ({@link org.brewchem.titration.Finding}), and can explain its arithmetic line
 * by line.
 *
 * <p>The same log yields more than one number: a {@link org.brewchem.titration.MeasuredBuffer} is
 * fitted to one or both of its legs and predicts the pH after any dose.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.titration;

import org.jspecify.annotations.NullMarked;
