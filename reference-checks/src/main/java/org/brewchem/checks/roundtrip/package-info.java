/**
 * Situations simulated with the library and then recovered by it from what a laboratory would see.
 */
@NullMarked
package org.brewchem.checks.roundtrip;

import org.jspecify.annotations.NullMarked;
