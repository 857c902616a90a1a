/**
 * The kernel that runs the notebooks in Jupyter: the protocol by jjava-jupyter, the cells by the
 * session that the tests of the notebooks use.
 */
@NullMarked
package org.brewchem.kernel;

import org.jspecify.annotations.NullMarked;
