/**
 * Reference checks: what brewchem computes, held against numbers that were not made by brewchem.
 *
 * <p>A {@link org.brewchem.checks.ReferenceCheck} takes values from one source, computes each of
 * them from something else through the public API of the core, and says how close it has to come
 * and why. {@link org.brewchem.checks.ReferenceChecks} lists them all; the tests of this module
 * assert every row, and {@link org.brewchem.checks.ValidationPage} writes the outcome to {@code
 * docs/validation.md}. A constant that is compared with the row it was loaded from proves nothing;
 * such rows do not exist here.
 *
 * <p>Data lie as CSV files beside the classes, with their source and how it is known in each row.
 */
@NullMarked
package org.brewchem.checks;

import org.jspecify.annotations.NullMarked;
