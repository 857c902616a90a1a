/**
 * Numbers that know how well they are known. The package tells one story in three steps.
 *
 * <p><b>Repeating.</b> {@link org.brewchem.uncertainty.Replicates} holds repeated determinations:
 * mean, standard deviation, and how badly a standard deviation from two of them is known. {@link
 * org.brewchem.uncertainty.GrubbsTest} judges a suspect value, {@link
 * org.brewchem.uncertainty.RepeatabilityLimit} two results of the same method.
 *
 * <p><b>Combining.</b> A {@link org.brewchem.uncertainty.MeasurementModel} is a list of named
 * {@link org.brewchem.uncertainty.Input inputs}, each with its estimate and standard uncertainty,
 * and the formula that makes a result of them. {@link
 * org.brewchem.uncertainty.MeasurementModel#linear()} gives the {@link
 * org.brewchem.uncertainty.Budget}: which input contributes what. {@link
 * org.brewchem.uncertainty.MeasurementModel#monteCarlo(int, long)} draws the inputs instead and
 * needs no linear formula; {@link org.brewchem.uncertainty.LinearityCheck} says whether the two
 * agree.
 *
 * <p><b>Stating.</b> An {@link org.brewchem.uncertainty.UncertainValue} prints its standard
 * uncertainty as {@code u}; an {@link org.brewchem.uncertainty.ExpandedUncertainty} prints {@code
 * U} with its coverage factor. A bare plus-minus never appears, and the digits follow the
 * uncertainty.
 *
 * <p>Inputs are independent of each other. Where two quantities share a cause, as two volumes read
 * on one burette share its calibration, the cause is one input and the formula uses it twice.
 *
 * <p>Units here are texts that are carried along and printed; converting is the business of the
 * typed quantities. A quantity without a unit has the empty text.
 *
 * <p>Sources, from memory: JCGM 100:2008 (GUM) for the law of propagation, effective degrees of
 * freedom and coverage factors; JCGM 101:2008 for Monte Carlo; EURACHEM/CITAC Guide CG 4 for its
 * use in a titration; ISO 5725-6 for the repeatability limit; NIST/SEMATECH e-Handbook of
 * Statistical Methods for Grubbs' test.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.uncertainty;

import org.jspecify.annotations.NullMarked;
