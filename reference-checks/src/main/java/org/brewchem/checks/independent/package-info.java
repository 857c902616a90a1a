/** Checks against other programs and libraries that answer the same question. */
@NullMarked
package org.brewchem.checks.independent;

import org.jspecify.annotations.NullMarked;
