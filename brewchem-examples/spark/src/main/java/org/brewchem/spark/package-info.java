/** The figures of waters as a function on the columns of a dataset of Apache Spark. */
@NullMarked
package org.brewchem.spark;

import org.jspecify.annotations.NullMarked;
