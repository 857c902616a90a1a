/**
 * What resists a change of pH in a liquid: a buffer measured by titration, and a stand-in for one
 * that nobody has measured.
 *
 * <p>A {@link org.brewchem.buffer.Buffer} closes what is known of a liquid to its pH. A {@link
 * org.brewchem.buffer.MeasuredBuffer} is fitted to {@link org.brewchem.buffer.BufferReadings},
 * plain arrays that know no apparatus; {@link org.brewchem.buffer.StandIn} needs a titrated
 * acidity. The contents that they give carry their uncertainty to the sources, so that a pH after a
 * dose, an acidity and a buffer capacity follow by the same propagation as everywhere, with a
 * notice of what they rest on.
 *
 * <p>Null is refused with a NullPointerException that names the argument.
 */
@NullMarked
package org.brewchem.buffer;

import org.jspecify.annotations.NullMarked;
