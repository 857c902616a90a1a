package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Step;
import org.brewchem.figure.UsualRange;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Solution;
import org.brewchem.uncertainty.Traced;

/**
 * A titrant as it is in the burette: a strong base or acid whose concentration has a known origin.
 * The concentration is one source of uncertainty in everything that is titrated with it. Immutable;
 * {@link Titrant} makes one.
 */
public class TitrantSolution implements Answering {

  private static final UsualRange USUAL = UsualRange.named("concentration of a titrant");

  private final TitrantSubstance substance;
  private final Step concentration;

  TitrantSolution(TitrantSubstance substance, Step concentration) {
    this.substance = Objects.requireNonNull(substance, "substance");
    this.concentration = concentration;
    possible("concentration of " + substance, concentration.found().orElseThrow().value());
  }

  /** Refuses a concentration that no titrant has. */
  static double possible(String argument, double molesPerLitre) {
    return USUAL.possible(argument, Checks.positive(argument, molesPerLitre, "mol/L"));
  }

  /** What is notable about the size of a concentration. */
  static Optional<Notice> unusual(TitrantSubstance substance, double molesPerLitre) {
    return USUAL.judge("concentration of " + substance, molesPerLitre);
  }

  /** The step of a concentration that a label states. */
  static Step stated(
      TitrantSubstance substance,
      AmountConcentration concentration,
      OptionalDouble molesPerLitre,
      boolean byEquivalents) {
    double value = possible("concentration of " + substance, concentration.inMolesPerLitre());
    molesPerLitre.ifPresent(
        u ->
            Checks.inRange(
                "standard uncertainty of the concentration of " + substance, u, "mol/L", 0, value));
    List<Notice> notices = new ArrayList<>();
    unusual(substance, value).ifPresent(notices::add);
    Step.Builder step =
        Step.of(
                TitrationFigures.concentrationOf(substance),
                TitrationFigures.TITRANT_CONCENTRATION.scale(),
                Step.Kind.STATED)
            .origin(Origin.REPORTED)
            .text("as stated", "");
    if (molesPerLitre.isEmpty()) {
      notices.add(
          Notice.of(
              TitrationCode.TITRANT_WITHOUT_UNCERTAINTY,
              "titrant",
              substance
                  + " "
                  + NumberText.plain(value)
                  + " mol/L states no uncertainty, so that no result of it has one;"
                  + " standardise it, or state its uncertainty"));
    }
    if (!byEquivalents && substance.equivalentsPerMole() != 1) {
      notices.add(
          Notice.of(
              TitrationCode.TITRANT_OF_MORE_EQUIVALENTS,
              "titrant",
              substance
                  + " "
                  + NumberText.plain(value)
                  + " mol/L counts as "
                  + NumberText.plain(value * substance.equivalentsPerMole())
                  + " Eq/L; a label in N or Eq/L goes in by equivalents"));
    }
    step.notices(notices);
    return step.found(
        Traced.stated(TitrationFigures.concentrationOf(substance), value, molesPerLitre, "mol/L"));
  }

  /**
   * Returns what the titrant is made of.
   *
   * @return the substance
   */
  public TitrantSubstance substance() {
    return substance;
  }

  /**
   * Returns the concentration of the named substance.
   *
   * @return the concentration in mol/L, with its uncertainty if that is known
   */
  public Answer<AmountConcentration> concentration() {
    return Answer.of(TitrationFigures.TITRANT_CONCENTRATION, concentration);
  }

  /**
   * Returns the concentration of equivalents, which is what counts in a titration; for sulfuric
   * acid it is twice that of the substance.
   *
   * @return Eq/L, with the source of the concentration
   */
  public Traced equivalentsPerLitre() {
    return concentration.found().orElseThrow().times(substance.equivalentsPerMole());
  }

  /**
   * Returns the titrant as a solution, to simulate a titration with it.
   *
   * @param temperature its temperature
   * @return the solution, free of carbonate
   */
  public Solution solution(Temperature temperature) {
    return Solution.at(temperature).with(substance.solute(), concentration().value());
  }

  @Override
  public Step step(Figure<?> figure) {
    return figure.equals(TitrationFigures.TITRANT_CONCENTRATION)
        ? concentration
        : figure.rule().find(figure, this);
  }

  @Override
  public String kind() {
    return "titrant";
  }

  /** Prints the substance and its concentration with U. */
  @Override
  public String toString() {
    Traced traced = concentration.found().orElseThrow();
    return substance
        + " "
        + (traced.knownPart() == 0
            ? NumberText.plain(traced.value()) + " mol/L"
            : concentration().toString());
  }
}
