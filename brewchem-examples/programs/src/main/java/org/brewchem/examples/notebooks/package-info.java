/**
 * Notebooks in Java: what is in a file of Jupyter's format, a session that runs its cells in JShell
 * after the start-up of the prompt, and the programs that run notebooks, compare them and make
 * handouts of them.
 */
@NullMarked
package org.brewchem.examples.notebooks;

import org.jspecify.annotations.NullMarked;
