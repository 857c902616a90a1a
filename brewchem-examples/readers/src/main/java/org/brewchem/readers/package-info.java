/**
 * Tables from and to files and databases.
 *
 * <p>The standard CSV file is comma-separated, quoted after RFC 4180, UTF-8, with a first line of
 * headings with units such as {@code calcium [mg/L]}, a point as decimal mark, an empty cell where
 * a value is missing. A file is streamed, so that its size does not matter.
 */
@NullMarked
package org.brewchem.readers;

import org.jspecify.annotations.NullMarked;
