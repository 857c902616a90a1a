/**
 * Brewing water: the report as the laboratory prints it, whether it can be right, the water that it
 * describes, and what follows from it for the brewer.
 *
 * <p>The story starts with a {@link org.brewchem.water.WaterReport}: what a report states, on the
 * basis on which it states it, each figure with its standard uncertainty if there is one; what it
 * leaves out stays missing. Its notices say what is odd about it.
 *
 * <p>{@link org.brewchem.water.WaterReport#water()} is a liquid, a {@link
 * org.brewchem.water.Water}. A figure that the report states is answered as reported; everything
 * else comes from contents that {@link org.brewchem.solution.CarbonateClosure} closes, so that pH
 * and alkalinity come back as they were read. Treatments return waters, and every figure of a
 * treated water comes from its contents. {@link org.brewchem.water.WaterFigures} holds the closed
 * forms of the trade: hardness, residual alkalinity, ion balance.
 *
 * <p>A report's alkalinity counts as carbonate alkalinity: the charge of bicarbonate and carbonate,
 * which is what a titration to its equivalence point finds and what a report writes as bicarbonate.
 * A titration that stopped at a stated pH finds something else and has a type of its own, {@link
 * org.brewchem.quantity.TitrationAlkalinity}.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.water;

import org.jspecify.annotations.NullMarked;
