/**
 * Lessons: programs that work a question of the trade through from the proton balance and print the
 * numbers that a page of the documentation shows. All data in them are invented unless a source is
 * named.
 */
@NullMarked
package org.brewchem.examples.lessons;

import org.jspecify.annotations.NullMarked;
