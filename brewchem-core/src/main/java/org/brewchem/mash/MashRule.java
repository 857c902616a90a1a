package org.brewchem.mash;

import java.util.List;
import java.util.Optional;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Step;
import org.brewchem.quantity.Temperature;

/**
 * The rule of a figure that a mash finds itself.
 *
 * @param quantity which of them
 * @param at the temperature of the mash, for a pH that is read in it
 * @param text the rule in words
 */
record MashRule(Quantity quantity, Optional<Temperature> at, String text) implements Figure.Rule {

  /** What a mash finds itself. */
  enum Quantity {
    COOLED,
    HOT,
    CARBON_DIOXIDE,
    KOLBACH,
    AMONG_SPECIES,
    BEYOND_SPECIES
  }

  @Override
  public Step find(Figure<?> figure, Answering from) {
    return Step.of(figure.title(), figure.scale(), Step.Kind.ROOT)
        .text(text, "")
        .unknown(List.of("does not apply to a " + from.kind()));
  }
}
