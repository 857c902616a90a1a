/**
 * Tables from and to CSV files: comma-separated, quoted after RFC 4180, UTF-8, a first line of
 * headings with units such as {@code calcium [mg/L]}, a point as decimal mark, an empty cell where
 * a value is missing. A file is streamed, so that its size does not matter.
 */
@NullMarked
package org.brewchem.examples.csv;

import org.jspecify.annotations.NullMarked;
