package org.brewchem.checks;

/** The kind of evidence that a reference check gives. */
public enum Suite {
  /** Values printed in a source outside the project, computed here from something else. */
  PUBLISHED("Published", "Values printed in a source outside the project, computed here."),
  /** Consequences of a definition or of a conservation law, exact up to rounding. */
  IDENTITY("Identity", "Consequences of definitions and conservation laws."),
  /** The same question answered by another program, library or algorithm. */
  INDEPENDENT(
      "Independent", "The same question answered by another program, library or algorithm."),
  /** A situation simulated with the library and then recovered by it. */
  ROUNDTRIP("Round trip", "Simulated, then recovered.");

  private final String title;
  private final String description;

  Suite(String title, String description) {
    this.title = title;
    this.description = description;
  }

  /** Returns the heading of this suite. */
  public String title() {
    return title;
  }

  /** Returns what this suite shows, in one sentence. */
  public String description() {
    return description;
  }
}
