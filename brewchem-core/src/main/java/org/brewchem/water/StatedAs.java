package org.brewchem.water;

/** The bases on which a report states a carbonate alkalinity. */
enum StatedAs {
  BICARBONATE,
  ALKALINITY_AS_CACO3
}
