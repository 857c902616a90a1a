/**
 * Pictures of results in one style: a unit on each axis, each line and each run named where it is
 * drawn, shapes beside colours, bands and limits, an axis from zero where a length is read. Drawn
 * with XChart.
 */
@NullMarked
package org.brewchem.pictures;

import org.jspecify.annotations.NullMarked;
