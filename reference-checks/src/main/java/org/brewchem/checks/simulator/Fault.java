package org.brewchem.checks.simulator;

/** A mistake that leaves a trace in the readings, so that it can be noticed. */
enum Fault {
  /** None. */
  NONE("none"),
  /** One reading, any but the first of a leg, 5 times the noise off. */
  STRAY_READING("a reading off by 5 times the noise"),
  /** The electrode stood 0.05 to 0.3 pH elsewhere on the leg with acid. */
  LEGS_APART("legs 0.05 to 0.3 pH apart"),
  /** The leg with acid was another beer of its kind. */
  OTHER_BEER("legs of two beers"),
  /** The titrant of one leg is 10 % stronger or weaker than told. */
  TITRANT("one leg's titrant told 10 % wrong"),
  /** Volumes and pH exchanged on both legs. */
  SWAPPED("volumes and pH exchanged"),
  /** Volumes of one leg in the opposite order. */
  REVERSED("volumes of one leg reversed"),
  /** Carbon dioxide left in the sample, far beyond a degassed one's. */
  CARBON_DIOXIDE("carbon dioxide, 0.2 to 1 g/L");

  private final String title;

  Fault(String title) {
    this.title = title;
  }

  String title() {
    return title;
  }
}
