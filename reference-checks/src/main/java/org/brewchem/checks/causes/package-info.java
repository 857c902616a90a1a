/**
 * The study of likely causes: simulated pairs of batches whose cause is known, and a reader who
 * knows how they are drawn. All parameters are invented.
 */
@NullMarked
package org.brewchem.checks.causes;

import org.jspecify.annotations.NullMarked;
