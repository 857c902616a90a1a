/**
 * The proton balance: solutions as lists of components, and every acid-base question put to them.
 *
 * <p>A {@link org.brewchem.solution.Solution} is a list of components with total concentrations at
 * a temperature. At any pH its components carry a net charge, which falls as pH rises. Where that
 * charge is zero lies the solution's own pH; the difference of the charge between two pH values is
 * the acid or base that takes it from one to the other, whether it is called titratable acidity,
 * alkalinity or a dose; its slope is the buffer capacity. {@link org.brewchem.solution.Chemistry}
 * says how much chemistry counts: ideal, with activity coefficients, or with ion pairs too.
 *
 * <p>Gas and minerals join in where they are asked for: an {@link
 * org.brewchem.solution.OpenSolution} under a pressure of carbon dioxide, a {@link
 * org.brewchem.solution.Headspace} over a sealed one, a {@link
 * org.brewchem.solution.MineralEquilibrium} until its saturation index is zero. What is left is a
 * solution again.
 *
 * <p>{@link org.brewchem.solution.Equilibria} is the same for callers with arrays and many rows: a
 * work space that is filled with totals and solved again and again without allocating.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.solution;

import org.jspecify.annotations.NullMarked;
