/** Programs that use the public API of brewchem, one main each. All data in them are invented. */
@NullMarked
package org.brewchem.examples;

import org.jspecify.annotations.NullMarked;
