/** Trials of the library itself: other machines, many threads. */
@NullMarked
package org.brewchem.checks.reliability;

import org.jspecify.annotations.NullMarked;
