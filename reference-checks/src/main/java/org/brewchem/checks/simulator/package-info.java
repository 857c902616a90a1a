/**
 * A simulator of beers and of their titration that shares nothing with the library's kernel, and
 * the studies that hold the library against it.
 */
@NullMarked
package org.brewchem.checks.simulator;

import org.jspecify.annotations.NullMarked;
