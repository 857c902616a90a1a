/**
 * The edge where values meet text and the units library: reading, printing and conversion of what
 * {@link org.brewchem.quantity} holds.
 *
 * <p>{@link org.brewchem.units.LabUnits} lists every unit that is read and printed, by meaning.
 * {@link org.brewchem.units.Text} reads a value such as {@code 5.3 mg/L}, {@code pH 8.2} or {@code
 * 2.80 g/L as lactic acid, to pH 8.2}, and a {@link org.brewchem.units.LabUnit} prints one. {@link
 * org.brewchem.units.ColumnHeader} reads the unit out of a heading such as {@code calcium [mg/L]}.
 * What the values print as {@code toString()} is rounded for a reader, a pH to four decimals and
 * anything else to six significant digits, and reads back to the digits printed; what {@code
 * Text.exact} prints reads back to an equal value.
 *
 * <p>Reading is strict, because a guess here is a wrong dose later:
 *
 * <ul>
 *   <li>A number is digits, with a minus sign before, a point and more digits, and a power of ten
 *       such as {@code E-7} where needed. A comma, a plus sign, a thousands separator, an
 *       underscore, hexadecimal digits, {@code NaN} and {@code Infinity} are errors. So is a number
 *       too large or too small for a double.
 *   <li>One space stands between number and unit, and no other space before, between or after.
 *   <li>Each unit has one spelling, in upper and lower case as listed: {@code mg/L} is read and
 *       {@code mg/l} is not. What is read is therefore what is printed. Of a micro sign and a Greek
 *       mu, which look alike, either is read and the first is printed.
 *   <li>A pH is read with its name or as the number alone; as an end point it has its name.
 *   <li>A basis and an end point belong to the text of a value that has them.
 * </ul>
 *
 * <p>Text that does not follow these rules is refused with a {@link
 * org.brewchem.units.UnitTextException}; a number that the value does not allow, such as a negative
 * volume, with an {@link org.brewchem.OutOfRangeException}.
 *
 * <p>{@link org.brewchem.units.JavaMeasure} converts the physical values to and from JSR-385,
 * {@link org.brewchem.units.JavaLabMeasure} those with units of their own. They are the only
 * classes that need the units library; nothing else here or in the values loads it.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.units;

import org.jspecify.annotations.NullMarked;
