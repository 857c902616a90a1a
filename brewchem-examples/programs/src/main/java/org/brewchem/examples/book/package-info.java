/** A book of batches, titrants and targets in a file of an embedded SQL database, as an example. */
@NullMarked
package org.brewchem.examples.book;

import org.jspecify.annotations.NullMarked;
