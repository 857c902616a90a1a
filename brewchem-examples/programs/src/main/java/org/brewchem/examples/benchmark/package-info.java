/** Benchmarks, run by the Java microbenchmark harness. All data in them are invented. */
@NullMarked
package org.brewchem.examples.benchmark;

import org.jspecify.annotations.NullMarked;
