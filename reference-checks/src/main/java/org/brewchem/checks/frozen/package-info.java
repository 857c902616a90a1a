/**
 * Frozen digits: today's results of the library over several hundred invented inputs, so that no
 * number moves unnoticed. They say nothing of whether a number is right.
 *
 * <p>What is frozen stands in CSV files: the inputs, and for each room the figures with their
 * digits. One adapter for each room computes the figures through the public API. When the API
 * changes, the adapter follows and the files stay as they are.
 */
@NullMarked
package org.brewchem.checks.frozen;

import org.jspecify.annotations.NullMarked;
