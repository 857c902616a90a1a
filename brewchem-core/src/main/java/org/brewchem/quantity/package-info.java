/**
 * The values of the laboratory and the brewery: one immutable class per meaning, with a number in
 * one stated unit inside.
 *
 * <p>A figure of 215 mg/L may be calcium, an alkalinity as CaCO3, a sulfate as S or an acidity as
 * lactic acid. Units cannot keep these apart, so classes do: a {@link
 * org.brewchem.quantity.MassConcentration} becomes an alkalinity, a hardness or an acidity only
 * through a factory that names the basis, and those classes do not convert into each other. An
 * acidity or an alkalinity found by titration carries the pH that the titration ends at, and
 * combines only with values to the same end point. Equivalents are their own dimension: an {@link
 * org.brewchem.quantity.AmountConcentration} becomes a {@link
 * org.brewchem.quantity.ChargeConcentration} with the charge number of its ion.
 *
 * <p>A value is made by {@code ofUnit(number)}, made from others by {@code from(...)}, and read by
 * {@code inUnit()}. It is finite, within the range of its class, and never -0.0; a factory throws
 * an {@link org.brewchem.OutOfRangeException} rather than clamp. Values of one class are equal when
 * their numbers are exactly equal. {@link org.brewchem.quantity.Quantities} has short names for
 * static import.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.quantity;

import org.jspecify.annotations.NullMarked;
