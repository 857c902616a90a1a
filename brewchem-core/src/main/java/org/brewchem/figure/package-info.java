/**
 * The common ground of all results: what a figure is, its answer with uncertainty, notices,
 * cautions and explanation, and what it is compared with.
 *
 * <p>A {@link org.brewchem.figure.Figure} is a named quantity and the rule that finds it. Anything
 * that can be asked for figures, such as a liquid or a titration, is {@link
 * org.brewchem.figure.Answering}. The {@link org.brewchem.figure.Answer} is stated, with its
 * uncertainty traced back to its sources, or unknown, with why. Rule, explanation and uncertainty
 * come from one calculation: the tree of {@link org.brewchem.figure.Step}s that found the value is
 * what {@code explain()} prints.
 *
 * <p>Null is refused with a NullPointerException that names the argument.
 */
@NullMarked
package org.brewchem.figure;

import org.jspecify.annotations.NullMarked;
