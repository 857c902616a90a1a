/** Checks of what follows from definitions and conservation laws alone. */
@NullMarked
package org.brewchem.checks.identity;

import org.jspecify.annotations.NullMarked;
