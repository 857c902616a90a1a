package org.brewchem.mash;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Step;
import org.brewchem.internal.ClosedForms;
import org.brewchem.internal.DataTable;
import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Contents;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/**
 * A grist in a liquor, ready to be balanced, and the steps that find its figures.
 *
 * @param grist the grist
 * @param liquor what the liquor holds at the temperature of reading, treatments included
 * @param litres of liquor, treatments included
 * @param brew what this brew scatters by, added to its pH; empty where no brew was measured yet
 */
record MashState(Grist grist, Contents liquor, Traced litres, Optional<Traced> brew) {

  private static final Scale<Double> LITRES_PER_KILOGRAM = Scale.number("L/kg", 2);
  private static final Scale<Double> DIFFERENCE = Scale.number("in pH", 3);
  private static final Scale<Double> FACTOR = Scale.number("", 2);

  /** How far from its own pH one capacity may stand for a malt's curve; our choice. */
  private static final double FAR_FROM_OWN_PH = 1.5;

  private static final double TOLERANCE = 1e-10;

  /** What to do where an uncertainty is missing. */
  static final String STATE_IT =
      "state it, or make the water of the report withAssumedUncertainties()";

  /** What the liquor holds, its carbonate gone if it leaves. */
  Contents balanced(boolean carbonDioxideLeaves) {
    return carbonDioxideLeaves && liquor.totals().containsKey(Component.CARBONATE)
        ? liquor.withTotal(Component.CARBONATE, Traced.exact(0))
        : liquor;
  }

  MashBalance balance(boolean carbonDioxideLeaves) {
    return MashBalance.of(
        balanced(carbonDioxideLeaves),
        grist,
        litres.value(),
        carbonDioxideLeaves,
        brew.map(Traced::value).orElse(0.0));
  }

  /** What is missing for a mash pH; empty when nothing is. */
  List<String> missing() {
    List<String> why = new ArrayList<>(liquor.whyOpen());
    for (Component metal : List.of(Component.CALCIUM, Component.MAGNESIUM)) {
      if (liquor.unknown().contains(metal)) {
        why.add(metal.name() + " of the liquor is not known, which Kolbach's term needs");
      }
    }
    return List.copyOf(why);
  }

  Step cooled(Figure<?> figure, boolean carbonDioxideLeaves) {
    Step root = root(figure, carbonDioxideLeaves);
    if (brew.isEmpty() || root.found().isEmpty()) {
      return root;
    }
    Traced scatter = brew.get();
    Traced sum = root.found().get().plus(scatter);
    Step own =
        Step.of("brew to brew", DIFFERENCE, Step.Kind.STATED)
            .origin(Origin.ASSUMED)
            .text(
                "what this brew differs by from others of its grist",
                MashValues.source(MashValues.row("brew to brew")))
            .found(scatter);
    double balanced = root.found().get().value();
    return Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
        .text("root of the balance + what this brew differs by", "")
        .inputs(List.of(root, own))
        .detail(
            () -> new Step.Detail(List.of(), balanced + scatter.value() - sum.value(), TOLERANCE))
        .found(sum);
  }

  private Step root(Figure<?> figure, boolean carbonDioxideLeaves) {
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.ROOT)
            .text(
                figure.rule().text()
                    + (carbonDioxideLeaves
                        ? ", all carbon dioxide gone"
                        : ", carbon dioxide staying"),
                "");
    List<String> missing = missing();
    if (!missing.isEmpty()) {
      return builder.inputs(liquor.basis()).unknown(missing);
    }
    Contents contents = balanced(carbonDioxideLeaves);
    MashBalance balance = balance(carbonDioxideLeaves);
    double root = balance.root();
    Step kolbach = kolbach();
    Terms terms = terms(contents, balance, root, kolbach.found().orElseThrow());
    return builder
        .inputs(steps(kolbach))
        .notices(contents.notices())
        .notices(balance.liquor().notices())
        .notices(notices(root))
        .detail(() -> detail(carbonDioxideLeaves, root))
        .found(terms.drawn().linear(root).plus(terms.others().linear(0)));
  }

  /**
   * What a root moves with besides the capacities, pH and factor that are drawn, to first order.
   */
  Traced notDrawn(boolean carbonDioxideLeaves) {
    MashBalance balance = balance(carbonDioxideLeaves);
    double root = balance.root();
    Traced acid = kolbach().found().orElseThrow();
    Traced others = terms(balanced(carbonDioxideLeaves), balance, root, acid).others().linear(0);
    return brew.map(others::plus).orElse(others);
  }

  /** Numbers and how strongly the root moves with each. */
  private static final class Sum {
    private final List<Traced> inputs = new ArrayList<>();
    private final List<Double> slopes = new ArrayList<>();

    void add(Traced input, double slope) {
      inputs.add(input);
      slopes.add(slope);
    }

    Traced linear(double value) {
      return Traced.linear(
          value,
          inputs.toArray(Traced[]::new),
          slopes.stream().mapToDouble(Double::doubleValue).toArray());
    }
  }

  /** The terms of the balance: those whose distributions are drawn for an interval, and others. */
  private record Terms(Sum drawn, Sum others) {}

  private Terms terms(Contents contents, MashBalance balance, double root, Traced kolbach) {
    double steepness = balance.slope(root);
    Sum drawn = new Sum();
    Sum others = new Sum();
    others.add(
        contents.chargeAt(Traced.exact(root)).times(1000 * contents.kilogramsPerLitre()),
        -1 / steepness);
    Traced factor = grist.kolbachFactor();
    drawn.add(factor, balance.kolbach() / steepness);
    others.add(kolbach, 1 / steepness);
    others.add(factor, -balance.kolbach() / steepness);
    double malts = 0;
    for (int i = 0; i < grist.parts().size(); i++) {
      Grist.Part part = grist.parts().get(i);
      MaltCurve curve = part.malt().curve();
      double acid = curve.acidAt(root);
      Traced[] parameters = curve.parameters();
      double[] own = curve.slopes(acid);
      for (int k = 0; k < own.length; k++) {
        (k < 2 ? drawn : others)
            .add(
                parameters[k],
                part.kilograms() / litres.value() * own[k] / curve.slopeAt(acid) / steepness);
      }
      malts += balance.ofMalt(i, root);
    }
    // A litre holds less of the malts when the liquor grows.
    others.add(litres, malts / litres.value() / steepness);
    return new Terms(drawn, others);
  }

  private List<Step> steps(Step kolbach) {
    List<Step> steps = new ArrayList<>(liquor.basis());
    for (Malt malt : grist.malts()) {
      steps.add(malt.pHStep());
      steps.add(malt.capacityStep());
    }
    double ratio = litres.value() / grist.kilograms();
    steps.add(
        Step.of("ratio of liquor to grist", LITRES_PER_KILOGRAM, Step.Kind.STATED)
            .text("as weighed and measured", "")
            .found(Traced.exact(ratio)));
    steps.add(kolbach);
    return steps;
  }

  /** The acid that calcium and magnesium set free. */
  Step kolbach() {
    Step.Builder builder =
        Step.of(
                MashFigures.KOLBACH_ACID.title(),
                MashFigures.KOLBACH_ACID.scale(),
                Step.Kind.FORMULA)
            .text(MashFigures.KOLBACH_ACID.rule().text(), "kolbach-1953, MEBAK W-030.01.900");
    List<String> missing =
        missing().stream().filter(why -> !liquor.whyOpen().contains(why)).toList();
    if (!missing.isEmpty()) {
      return builder.unknown(missing);
    }
    Traced calcium = hardness(Component.CALCIUM);
    Traced magnesium = hardness(Component.MAGNESIUM);
    Traced term =
        Traced.linear(
            kolbach(calcium.value(), magnesium.value()),
            new Traced[] {calcium, magnesium},
            new double[] {kolbach(1, 0), kolbach(0, 1)});
    Traced factor = grist.kolbachFactor();
    Traced acid = term.times(factor);
    Step ofFactor =
        Step.of("factor on Kolbach's term", FACTOR, Step.Kind.STATED)
            .origin(Origin.ASSUMED)
            .text("assumed, stated or learned", MashValues.source(MashValues.row("Kolbach factor")))
            .found(factor);
    return builder
        .inputs(List.of(ofFactor))
        .detail(
            () ->
                new Step.Detail(
                    List.of(
                        String.format(
                            Locale.ROOT,
                            "%.4g x (%.4g / 3.5 + %.4g / 7) mEq/L",
                            factor.value(),
                            calcium.value(),
                            magnesium.value())),
                    factor.value() * kolbach(calcium.value(), magnesium.value()) - acid.value(),
                    TOLERANCE))
        .found(acid);
  }

  /** The part of that acid which the kernel finds among the species of the malts. */
  Step amongSpecies(boolean carbonDioxideLeaves) {
    Figure<Double> figure = MashFigures.KOLBACH_ACID_AMONG_SPECIES;
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA).text(figure.rule().text(), "");
    List<String> missing = new ArrayList<>(missing());
    missing.addAll(GristSpecies.missing(grist));
    if (!missing.isEmpty()) {
      return builder.unknown(missing);
    }
    Step root = root(MashFigures.MASH_PH, carbonDioxideLeaves);
    GristSpecies species = new GristSpecies(grist, balanced(carbonDioxideLeaves), litres);
    Traced pH = root.found().orElseThrow();
    Traced free = species.setFree(pH);
    return builder
        .inputs(List.of(root))
        .detail(
            () ->
                new Step.Detail(
                    List.of(),
                    species.setFree(Traced.exact(pH.value())).value() - free.value(),
                    TOLERANCE))
        .found(free);
  }

  /** What Kolbach's term says beyond that part. */
  Step beyondSpecies(boolean carbonDioxideLeaves) {
    Figure<Double> figure = MashFigures.KOLBACH_ACID_BEYOND_SPECIES;
    Step all = kolbach();
    Step among = amongSpecies(carbonDioxideLeaves);
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
            .text(figure.rule().text(), "")
            .inputs(List.of(all, among));
    if (among.found().isEmpty()) {
      return builder.unknown(among.whyUnknown());
    }
    Traced term = all.found().orElseThrow();
    Traced part = among.found().get();
    Traced rest = term.minus(part);
    if (rest.value() < 0) {
      builder.notices(
          List.of(
              Notice.of(
                  MashCode.SPECIES_BEYOND_KOLBACH,
                  "mash",
                  String.format(
                      Locale.ROOT,
                      "the species of the malts alone set free %.3g mEq/L and Kolbach's term says"
                          + " %.3g; the mash pH counts the term",
                      part.value(),
                      term.value()))));
    }
    return builder
        .detail(
            () -> new Step.Detail(List.of(), term.value() - part.value() - rest.value(), TOLERANCE))
        .found(rest);
  }

  private static double kolbach(double calcium, double magnesium) {
    return -ClosedForms.residualAlkalinity(0, calcium, magnesium);
  }

  private Traced hardness(Component metal) {
    return liquor.least(metal).times(2000 * liquor.kilogramsPerLitre());
  }

  private List<Notice> notices(double pH) {
    Set<Notice> all = new LinkedHashSet<>();
    double ratio = litres.value() / grist.kilograms();
    for (Grist.Part part : grist.parts()) {
      Malt malt = part.malt();
      all.addAll(malt.notices());
      double acid = malt.curve().acidAt(pH);
      if (!malt.curve().covers(acid)) {
        all.add(
            Notice.of(
                MashCode.BEYOND_MALT_DATA,
                malt.name(),
                String.format(
                    Locale.ROOT,
                    "the mash takes %s to %.1f mEq/kg of acid; its curve was measured from %.1f to"
                        + " %.1f",
                    malt.name(),
                    acid,
                    malt.curve().lowest(),
                    malt.curve().highest())));
      }
      double away = Math.abs(pH - malt.curve().pH().value());
      if (malt.curve().isOneCapacity() && away > FAR_FROM_OWN_PH) {
        all.add(
            Notice.of(
                MashCode.BEYOND_MALT_DATA,
                malt.name(),
                String.format(
                    Locale.ROOT,
                    "the mash is at pH %.2f, %.1f from that of %s in distilled water; its curve is a"
                        + " straight line by one capacity, which was not read so far out",
                    pH,
                    away,
                    malt.name())));
      }
      if (ratio > 2 * malt.litresPerKilogram() || ratio < malt.litresPerKilogram() / 2) {
        all.add(
            Notice.of(
                MashCode.RATIO_FAR_FROM_READING,
                malt.name(),
                String.format(
                    Locale.ROOT,
                    "%.2f L/kg is far from %.2f L/kg, at which %s was read",
                    ratio,
                    malt.litresPerKilogram(),
                    malt.name())));
      }
    }
    UndecidedMalts.in(grist).ifPresent(all::add);
    return List.copyOf(all);
  }

  private Step.Detail detail(boolean carbonDioxideLeaves, double pH) {
    MashBalance balance = balance(carbonDioxideLeaves);
    List<String> lines = new ArrayList<>();
    lines.add(String.format(Locale.ROOT, "charges at pH %.4f, mEq per litre of liquor", pH));
    double sum = balance.ofLiquor(pH);
    lines.add(line("liquor", sum));
    for (int i = 0; i < grist.parts().size(); i++) {
      double own = balance.ofMalt(i, pH);
      sum += own;
      lines.add(line(grist.parts().get(i).malt().name(), own));
    }
    double free = grist.kolbachFactor().value() * balance.kolbach();
    sum -= free;
    lines.add(line("acid set free", -free));
    if (GristSpecies.missing(grist).isEmpty()) {
      GristSpecies species = new GristSpecies(grist, balanced(carbonDioxideLeaves), litres);
      double among = species.setFree(Traced.exact(pH)).value();
      lines.add(line("  among malts' species", -among));
      lines.add(line("  beyond them", among - free));
    }
    lines.add(line("sum of the charges", Math.abs(sum) < TOLERANCE ? 0 : sum));
    return new Step.Detail(lines, sum, TOLERANCE);
  }

  private static String line(String what, double charge) {
    return String.format(Locale.ROOT, "  %-24s%+12.5f", what, charge + 0.0);
  }

  /** The pH in the hot mash, from the step of the cooled sample. */
  static Step hot(Figure<?> figure, Step cooled, Temperature at) {
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA).text(figure.rule().text(), "");
    if (cooled.found().isEmpty()) {
      return builder.inputs(List.of(cooled)).unknown(cooled.whyUnknown());
    }
    Step difference = difference(at.inCelsius());
    Traced sum = cooled.found().get().plus(difference.found().orElseThrow());
    double parts = cooled.found().get().value() + difference.found().orElseThrow().value();
    return builder
        .inputs(List.of(cooled, difference))
        .detail(() -> new Step.Detail(List.of(), parts - sum.value(), 0))
        .found(sum);
  }

  private static Step difference(double celsius) {
    DataTable.Row mash = MashValues.row("hot mash at 65 °C");
    DataTable.Row hottest = MashValues.row("hot mash at 78 °C");
    // From none in the cooled sample; the printed range goes along.
    double share =
        celsius <= 65
            ? (celsius - MashFigures.COOLED) / (65 - MashFigures.COOLED)
            : (celsius - 65) / (MashFigures.HOTTEST - 65);
    double value =
        celsius <= 65
            ? share * mash.number("value")
            : mash.number("value") + share * (hottest.number("value") - mash.number("value"));
    double width =
        celsius <= 65 ? share * width(mash) : width(mash) + share * (width(hottest) - width(mash));
    // Anywhere within the printed range.
    Source source = Source.of("difference of the hot mash", value, width / Math.sqrt(12), "");
    return Step.of("difference of the hot mash", DIFFERENCE, Step.Kind.STATED)
        .origin(Origin.ASSUMED)
        .text(
            String.format(
                Locale.ROOT,
                "interpolated to %.0f °C; %.2f to %.2f at 65 °C in print",
                celsius,
                mash.number("lower"),
                mash.number("upper")),
            MashValues.source(mash))
        .found(Traced.of(source));
  }

  private static double width(DataTable.Row row) {
    return row.number("upper") - row.number("lower");
  }

  /** The rise of pH as the carbon dioxide leaves. */
  Step riseOfPHByDegassing(Figure<?> figure) {
    Step leaving = root(MashFigures.MASH_PH, true);
    Step staying = root(MashFigures.MASH_PH, false);
    Step.Builder builder =
        Step.of(figure.title(), figure.scale(), Step.Kind.FORMULA)
            .text(figure.rule().text(), "")
            .inputs(List.of(leaving, staying));
    if (leaving.found().isEmpty()) {
      return builder.unknown(leaving.whyUnknown());
    }
    Traced gone = leaving.found().get();
    Traced held = staying.found().orElseThrow();
    Traced rise = gone.minus(held);
    return builder
        .detail(() -> new Step.Detail(List.of(), gone.value() - held.value() - rise.value(), 0))
        .found(rise);
  }
}
