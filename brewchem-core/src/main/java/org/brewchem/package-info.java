/**
 * A library for brewing water, titratable acidity and doses of acid. The packages below this one
 * hold it, from the ground up: {@link org.brewchem.quantity values} and {@link org.brewchem.units
 * their text}, {@link org.brewchem.uncertainty uncertainty}, {@link org.brewchem.substance
 * substances}, {@link org.brewchem.solution the proton balance}, {@link org.brewchem.buffer what
 * buffers}, {@link org.brewchem.titration the laboratory}, {@link org.brewchem.treatment doses},
 * {@link org.brewchem.water water}, {@link org.brewchem.mash the mash}, {@link org.brewchem.beer
 * beer}, {@link org.brewchem.plan plans}, {@link org.brewchem.quality batches over time} and {@link
 * org.brewchem.table tables}.
 *
 * <p>This package holds the failures that all of them share, and uses none of them. A number that
 * is not possible is refused with an {@link org.brewchem.OutOfRangeException}, which says which
 * argument it was, its value and unit, and what is allowed; it is an {@link
 * IllegalArgumentException}. Its message stays below 500 characters, however long a text the caller
 * passed. An answer that needs something nobody stated is not a failure: it is unknown and says
 * why, and only {@link org.brewchem.figure.UnknownFigureException asking for its value} throws.
 *
 * <p>In every package, null is refused with a {@link NullPointerException} that names the argument,
 * unless the type says {@code @Nullable}.
 */
@NullMarked
package org.brewchem;

import org.jspecify.annotations.NullMarked;
