/** Ten million waters from Parquet to Parquet through an embedded analytic database. */
@NullMarked
package org.brewchem.scale;

import org.jspecify.annotations.NullMarked;
