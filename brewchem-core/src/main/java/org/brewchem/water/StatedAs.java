package org.brewchem.water;

/** The columns of a report that may be headed wrongly. */
enum StatedAs {
  BICARBONATE,
  ALKALINITY_AS_CACO3,
  SULFATE,
  SULFATE_AS_SULFUR,
  NITRATE,
  NITRATE_AS_NITROGEN
}
