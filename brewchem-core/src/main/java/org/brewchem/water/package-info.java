/**
 * Brewing water: an analysis as the laboratory reports it, whether it can be right, and what
 * follows from it for the brewer.
 *
 * <p>The story starts with a {@link org.brewchem.water.WaterAnalysis}: what a report states, on the
 * basis on which it states it; what it leaves out stays missing. Its figures are the closed forms
 * of the trade: hardness, {@link org.brewchem.water.KolbachResidualAlkalinity residual alkalinity},
 * the {@link org.brewchem.water.SulfateToChloride ratio of sulfate to chloride}, the {@link
 * org.brewchem.water.IonBalance ion balance}; {@link org.brewchem.water.WaterFinding findings} say
 * what is odd about the report. Analyses blend, dilute and take up salts.
 *
 * <p>Whatever has to do with pH goes through the proton balance of {@code org.brewchem.solution}:
 * {@link org.brewchem.solution.CarbonateSystem} ties total carbon dioxide, pH and the two
 * alkalinities together, {@link
 * org.brewchem.water.WaterAnalysis#toSolution(org.brewchem.quantity.Temperature)} hands the water
 * over, and an {@link org.brewchem.water.Acidification} says how much acid takes it where.
 *
 * <p>An analysis holds one alkalinity, and counts it as carbonate alkalinity: the charge of
 * bicarbonate and carbonate, which is what a titration to its equivalence point finds, what a
 * report writes as bicarbonate, and what mixes exactly. A titration that stopped at a stated pH
 * finds something else and has a type of its own, {@link
 * org.brewchem.quantity.TitrationAlkalinity}.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.water;

import org.jspecify.annotations.NullMarked;
