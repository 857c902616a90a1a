/**
 * What is done to a liquid: salts, acids and bases added, another liquid blended in, gas let out, a
 * mineral precipitated, and the search for the dose that brings a figure where it is wanted.
 *
 * <p>A {@link org.brewchem.solution.Treatment} knows contents only, so every step fits every
 * liquid: {@code water.after(Treatments.salt(...), Treatments.acid(...))} is a water again. Each
 * step adds a line to the explanation of whatever is computed afterwards, carries the usual
 * cautions for its substance, and counts per volume of the liquid at that step. What a label states
 * (assay, density) is a source of uncertainty of everything after the dose; where the label is
 * silent about its uncertainty, so is every result, and it names what is missing.
 *
 * <p>A {@link org.brewchem.treatment.Dose} is found by one search, whatever the liquid, the reagent
 * and the figure: the figure is evaluated on one work space while the dose varies, and the liquid
 * after the dose is made once. What cannot be reached ends in one exception, {@link
 * org.brewchem.treatment.UnreachableException}, with the target, the nearest value and the reason.
 *
 * <p>What a mole of acid really delivers is always a {@link org.brewchem.treatment.Delivery}: the
 * charge of the liquid at a pH before the dose less that after it.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.treatment;

import org.jspecify.annotations.NullMarked;
