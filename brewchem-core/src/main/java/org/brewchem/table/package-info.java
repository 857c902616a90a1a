/**
 * Tables: the calculations of the other packages over many rows, at the speed of the proton balance
 * itself.
 *
 * <p>A {@link org.brewchem.table.Table} is a set of {@link org.brewchem.table.Column columns}. A
 * column has one heading, which carries its one unit ({@code calcium [mg/L]}), and a plain number
 * in each row; the heading is read once, not once a row. Where a row has no number, it has a {@link
 * org.brewchem.table.Failure} that says why, with the row of the file and the column at fault. A
 * missing cell stays missing through every calculation, and one bad row never stops the others.
 *
 * <p>{@link org.brewchem.table.Waters} answers any figure of a water over rows, {@link
 * org.brewchem.table.Acidities} the titratable acidity over a table of titrations. The rule of the
 * figure is applied to plain numbers, so that a row gives what a single water gives; uncertainty,
 * notices and the explanation of a row are there on request. What they find are columns again.
 *
 * <p>Rows are solved each from the same start, so that one thread and many give the same numbers to
 * the last bit. This package reads no files: a table is made from arrays or row by row.
 *
 * <p>Null is refused with a {@link NullPointerException} that names the argument.
 */
@NullMarked
package org.brewchem.table;

import org.jspecify.annotations.NullMarked;
