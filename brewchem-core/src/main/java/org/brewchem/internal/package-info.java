/**
 * Numeric kernels on doubles and the argument checks that every room shares. Not part of the API:
 * nothing outside the core module may use it, and it changes without notice. What it throws is API
 * and lives one package below, in {@code org.brewchem}.
 */
@NullMarked
package org.brewchem.internal;

import org.jspecify.annotations.NullMarked;
