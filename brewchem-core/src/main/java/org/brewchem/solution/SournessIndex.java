package org.brewchem.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.substance.Component;
import org.brewchem.substance.Element;
import org.brewchem.uncertainty.Traced;

/**
 * The rule of the index that sourness follows: molecules of organic acids with at least one proton,
 * and free H+. Acids that nobody has named, such as those by which a measured buffer is explained,
 * cannot be counted, and a notice says so.
 */
record SournessIndex() implements Figure.Rule {

  private static final String TEXT =
      "free H+ + molecules of organic acids with at least one proton";
  private static final String SOURCE =
      "Da Conceicao Neta et al., J. Food Sci. 72(6) (2007) S352; an index, not a score";

  private static final double MILLI = 1000;

  /** Below this share of the index lumped acids are not worth a word. */
  private static final double SMALL = 0.01;

  /**
   * Amino acids, a buffer of the laboratory, and what is no organic acid though it holds carbon.
   */
  private static final Set<Component> NOT_COUNTED =
      Set.of(
          Component.ASPARTATE,
          Component.CARBONATE,
          Component.GLUTAMATE,
          Component.GLYCINATE,
          Component.HISTIDINATE,
          Component.PHTHALATE);

  private static final Set<Component> ORGANIC =
      Component.named().stream()
          .filter(component -> component.chargeWithoutProtons() < 0)
          .filter(component -> component.protons() > 0 && holdsCarbon(component))
          .filter(component -> !NOT_COUNTED.contains(component))
          .collect(Collectors.toUnmodifiableSet());

  private static boolean holdsCarbon(Component component) {
    return component.formula().filter(f -> f.count(Element.of("C")) > 0).isPresent();
  }

  @Override
  public Step find(Figure<?> figure, Answering from) {
    if (!(from instanceof Liquid liquid)) {
      return Step.of(figure.title(), figure.scale(), Step.Kind.ROOT)
          .text(TEXT, SOURCE)
          .unknown(List.of("does not apply to a " + from.kind()));
    }
    Contents contents = liquid.contents();
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.ROOT)
            .text(TEXT, SOURCE)
            .inputs(contents.basis());
    if (!contents.whyOpen().isEmpty()) {
      return builder.unknown(contents.whyOpen());
    }
    TracedBalance balance = contents.balance();
    double perLitre = MILLI * contents.kilogramsPerLitre();
    Traced found = balance.byDifferences(SournessIndex::index).times(perLitre);
    double value = found.value();
    return builder
        .notices(contents.notices())
        .notices(balance.notices())
        .notices(lumped(contents, value / perLitre).stream().toList())
        .detail(() -> shown(contents, value))
        .found(found);
  }

  /** Mol per kg of water. */
  private static double index(Equilibria equilibria) {
    equilibria.pH();
    double sum = 0;
    for (Species species : equilibria.species()) {
      if (counts(species)) {
        sum += species.molality().inMolesPerKilogram();
      }
    }
    return sum;
  }

  private static boolean counts(Species species) {
    return species.name().equals("H+")
        || (species.component().filter(ORGANIC::contains).isPresent() && protons(species) > 0);
  }

  private static int protons(Species species) {
    int own = species.component().orElseThrow().chargeWithoutProtons() * species.count();
    return species.charge() - own - species.metal().map(Component::chargeWithoutProtons).orElse(0);
  }

  private static Optional<Notice> lumped(Contents contents, double index) {
    double protonated = 0;
    Equilibria equilibria = contents.equilibria();
    equilibria.pH();
    for (Species species : equilibria.species()) {
      boolean lumpedAcid =
          species
              .component()
              .filter(c -> c.protons() > 0 && c.formula().isEmpty() && c.chargeWithoutProtons() < 0)
              .isPresent();
      if (lumpedAcid && protons(species) > 0) {
        protonated += species.molality().inMolesPerKilogram();
      }
    }
    return protonated <= SMALL * index
        ? Optional.empty()
        : Optional.of(
            Notice.of(
                SolutionCode.LUMPED_ACIDS_NOT_COUNTED,
                "sourness index",
                String.format(
                    Locale.ROOT,
                    "%.3g mmol/kg of protonated acid without a name, protein or the acids of a"
                        + " measured buffer, are not in the index",
                    MILLI * protonated)));
  }

  private static Step.Detail shown(Contents contents, double found) {
    Equilibria equilibria = contents.equilibria();
    equilibria.pH();
    List<String> lines = new ArrayList<>();
    double sum = 0;
    for (Species species : equilibria.species()) {
      double millimoles =
          MILLI * contents.kilogramsPerLitre() * species.molality().inMolesPerKilogram();
      if (counts(species) && millimoles > 0) {
        sum += millimoles;
        lines.add(
            String.format(
                Locale.ROOT,
                "%s: %.4g %s",
                species.name(),
                millimoles,
                Scales.MILLIMOLES_PER_LITRE.symbol()));
      }
    }
    return new Step.Detail(lines, sum - found, 1e-9 * Math.max(1, Math.abs(found)));
  }

  @Override
  public String text() {
    return TEXT;
  }
}
