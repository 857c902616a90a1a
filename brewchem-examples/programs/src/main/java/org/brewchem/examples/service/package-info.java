/**
 * A small web service on the server of the JDK, as an example: a water report or a beer in, figures
 * out as JSON, what is refused said of the field at fault.
 */
@NullMarked
package org.brewchem.examples.service;

import org.jspecify.annotations.NullMarked;
