package org.brewchem.examples;

import static org.brewchem.mash.MashFigures.MASH_PH;
import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mEqPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.SODIUM;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;
import static org.brewchem.water.WaterFigures.RESIDUAL_ALKALINITY;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Target;
import org.brewchem.mash.Grist;
import org.brewchem.mash.Malt;
import org.brewchem.mash.MaltKind;
import org.brewchem.mash.MaltTitration;
import org.brewchem.mash.Mash;
import org.brewchem.mash.MashAddition;
import org.brewchem.pictures.Picture;
import org.brewchem.plan.Conflict;
import org.brewchem.plan.Downstream;
import org.brewchem.plan.Plan;
import org.brewchem.plan.PlannedAmount;
import org.brewchem.plan.Reached;
import org.brewchem.plan.Shelf;
import org.brewchem.plan.ShelfItem;
import org.brewchem.plan.WaterPortion;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.quantity.MassConcentration;
import org.brewchem.quantity.Volume;
import org.brewchem.readers.FileFaultException;
import org.brewchem.solution.SolutionCode;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.uncertainty.Interval;
import org.brewchem.units.LabUnits;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/**
 * Reads the files of an invented brew day, two waters, a shelf, malts, a grist and a target, and
 * writes what to weigh into which water, the mash pH to expect with its interval, and two pictures.
 */
public final class BrewDay {

  private static final Path FOLDER = Path.of("brewchem-examples", "brewday");
  private static final String STRIKE = "strike";

  /** The noise of the reading of a jar, an assumption of this example. */
  private static final double JAR_UNCERTAINTY = 0.01;

  private static final double JAR_TITRANT = 100;
  private static final int PLOTTED = 41;

  /** How a line of the target becomes a constraint: from its figure and its limits. */
  private record Limited<Q>(Figure<Q> figure, Scale<Q> scale) {
    Constraint around(double aim, double tolerance) {
      return Constraint.around(figure, scale.of(aim), tolerance);
    }

    Constraint between(double least, double most) {
      return Double.isNaN(least)
          ? Constraint.atMost(figure, scale.of(most))
          : Double.isNaN(most)
              ? Constraint.atLeast(figure, scale.of(least))
              : Constraint.between(figure, scale.of(least), scale.of(most));
    }
  }

  private static final Map<String, Limited<?>> FIGURES =
      Map.of(
          "calcium [mg/L]", new Limited<>(CALCIUM, Scales.MILLIGRAMS_PER_LITRE),
          "sodium [mg/L]", new Limited<>(SODIUM, Scales.MILLIGRAMS_PER_LITRE),
          "sulfate to chloride", new Limited<>(SULFATE_TO_CHLORIDE, SULFATE_TO_CHLORIDE.scale()),
          "residual alkalinity [°dH]",
              new Limited<>(RESIDUAL_ALKALINITY, Scales.RESIDUAL_ALKALINITY_IN_GERMAN_DEGREES),
          "pH of the cooled mash", new Limited<>(MASH_PH, MASH_PH.scale()));

  private final Path folder;
  private final StringBuilder page = new StringBuilder();
  private final Map<String, Water> waters = new LinkedHashMap<>();
  private final Map<String, Volume> portions = new LinkedHashMap<>();
  private final Map<String, Picture> pictures = new LinkedHashMap<>();
  private Optional<Strike> strike = Optional.empty();

  private BrewDay(Path folder) {
    this.folder = folder;
  }

  /**
   * Prints the day and writes it and the pictures into the folder of the files.
   *
   * @param arguments the folder; the invented brew day of this module if there is none
   */
  public static void main(String[] arguments) {
    System.setProperty("java.awt.headless", "true");
    Path folder = arguments.length > 0 ? Path.of(arguments[0]) : FOLDER;
    try {
      BrewDay day = of(folder);
      Files.writeString(folder.resolve("day.md"), day.page);
      for (Map.Entry<String, Picture> picture : day.pictures.entrySet()) {
        picture.getValue().save(folder.resolve(picture.getKey() + ".png"));
      }
      System.out.print(day.page);
    } catch (FileFaultException | IOException fault) {
      System.err.println(fault.getMessage());
      System.exit(1);
    }
  }

  /** Plans the day of the folder's files. */
  static BrewDay of(Path folder) {
    BrewDay day = new BrewDay(folder);
    day.run();
    return day;
  }

  /** What was found, as Markdown. */
  String page() {
    return page.toString();
  }

  /** What was drawn, by the names of the files; nothing where there is no plan. */
  Map<String, Picture> pictures() {
    return pictures;
  }

  /** The mash against the acid; empty where there is no plan, or no acid to pour. */
  Optional<Strike> strike() {
    return strike;
  }

  private void run() {
    page.append("# Brew day\n\nInvented brewery, invented data. Computed by brewchem.\n");
    waters();
    Grist grist = grist();
    Shelf shelf = shelf();
    Plan plan = plan(grist, shelf);
    if (plan.outcome() == Plan.Outcome.FOUND) {
      brew(plan, grist, shelf);
    } else {
      refused(plan);
    }
  }

  private void waters() {
    Sheet table = Sheet.read(folder, "waters.csv", "water");
    heading("Waters");
    headings(table.texts("water"));
    for (int i = 0; i < table.size(); i++) {
      WaterReport report =
          WaterReport.reported()
              .calcium(concentration(table, "calcium", i))
              .magnesium(concentration(table, "magnesium", i))
              .sodium(concentration(table, "sodium", i))
              .potassium(concentration(table, "potassium", i))
              .alkalinityAsCaCO3(alkalinityAsCaCO3(table, i))
              .sulfate(concentration(table, "sulfate", i))
              .chloride(concentration(table, "chloride", i))
              .nitrate(concentration(table, "nitrate", i))
              .pH(table.value("pH", i, number -> pH(number)))
              .build()
              .withAssumedUncertainties();
      waters.put(table.text("water", i), report.water());
    }
    waterRows(waters);
    page.append(
        "\nThe reports state no uncertainties; those usual for such figures are assumed.\n");
  }

  private void waterRows(Map<String, Water> held) {
    row("calcium", each(held, Water::calcium));
    row("alkalinity", each(held, Water::alkalinity));
    row(
        "residual alkalinity",
        each(
            held,
            water ->
                water
                    .answer(RESIDUAL_ALKALINITY)
                    .in(Scales.RESIDUAL_ALKALINITY_IN_GERMAN_DEGREES)));
    row("sulfate", each(held, Water::sulfate));
    row("chloride", each(held, Water::chloride));
    row("sulfate to chloride", each(held, Water::sulfateToChloride));
  }

  private static Object[] each(Map<String, Water> waters, Function<Water, Answer<?>> figure) {
    return waters.values().stream().map(figure).toArray();
  }

  private Grist grist() {
    Sheet table = Sheet.read(folder, "grist.csv", "malt");
    Map<String, MaltTitration> jars = jars();
    Grist grist = null;
    heading("Grist");
    for (int i = 0; i < table.size(); i++) {
      String name = table.text("malt", i);
      MaltTitration titrated = jars.get(name);
      Malt malt = titrated == null ? assumed(table, i) : titrated.malt();
      var mass = table.quantity(LabUnits.MASS, "mass", i);
      grist = grist == null ? Grist.of(mass, malt) : grist.and(mass, malt);
      item(mass + " of " + malt);
    }
    return Optional.ofNullable(grist).orElseThrow(() -> table.missing("malt", "there is no malt"));
  }

  private static Malt assumed(Sheet table, int row) {
    return Malt.assumed(
        Stream.of(MaltKind.values())
            .filter(kind -> kind.name().equalsIgnoreCase(table.text("malt", row)))
            .findFirst()
            .orElseThrow(
                () -> table.unknown("malt", row, "malt of malts.csv, nor a kind of malt")));
  }

  private Map<String, MaltTitration> jars() {
    Sheet table = Sheet.read(folder, "malts.csv", "malt");
    Map<String, MaltTitration> jars = new LinkedHashMap<>();
    for (int i = 0; i < table.size(); i++) {
      String name = table.text("malt", i);
      MaltTitration so =
          jars.getOrDefault(name, MaltTitration.of(name, "malts.csv", JAR_UNCERTAINTY));
      var read = table.value("pH", i, number -> pH(number));
      double acid = table.quantity(LabUnits.VOLUME, "acid", i).inMillilitres();
      double base = table.quantity(LabUnits.VOLUME, "base", i).inMillilitres();
      jars.put(
          name,
          acid > 0
              ? so.acid(mL(acid), mEqPerL(JAR_TITRANT), read)
              : base > 0 ? so.base(mL(base), mEqPerL(JAR_TITRANT), read) : so.none(read));
    }
    return jars;
  }

  private Plan plan(Grist grist, Shelf shelf) {
    Sheet volumes = Sheet.read(folder, "portions.csv", "portion");
    for (int i = 0; i < volumes.size(); i++) {
      portions.put(volumes.text("portion", i), volumes.quantity(LabUnits.VOLUME, "volume", i));
    }
    Volume strike =
        Optional.ofNullable(portions.get(STRIKE))
            .orElseThrow(() -> volumes.missing("portion", "there is no portion \"strike\""));
    Plan.Request request =
        Plan.from(waters.values().toArray(new Water[0]))
            .called(waters.keySet().toArray(new String[0]))
            .using(shelf)
            .forPortions(
                portions.entrySet().stream()
                    .map(entry -> WaterPortion.portion(entry.getKey(), entry.getValue()))
                    .toArray(WaterPortion[]::new));
    for (Map.Entry<String, Target> target : targets().entrySet()) {
      Target wanted = target.getValue();
      request =
          portions.containsKey(target.getKey())
              ? request.meeting(target.getKey(), wanted)
              : request.and(
                  Downstream.mash(target.getKey(), grist, strike).madeOf(STRIKE),
                  wanted.constraints().toArray(new Constraint[0]));
    }
    return request.solve();
  }

  /**
   * What is wanted of each liquid; a name that is no portion's stands for the mash of its water.
   */
  private Map<String, Target> targets() {
    Sheet table = Sheet.read(folder, "target.csv", "liquid", "figure");
    Map<String, Target> targets = new LinkedHashMap<>();
    for (int i = 0; i < table.size(); i++) {
      Limited<?> limited = FIGURES.get(table.text("figure", i));
      if (limited == null) {
        throw table.unknown("figure", i, "figure known here");
      }
      double aim = table.orNaN("aim", i);
      Constraint limits =
          Double.isNaN(aim)
              ? limited.between(table.orNaN("at least", i), table.orNaN("at most", i))
              : limited.around(aim, table.orNaN("tolerance", i));
      double weight = table.orNaN("weight", i);
      String liquid = table.text("liquid", i);
      targets.put(
          liquid,
          targets
              .getOrDefault(liquid, Target.named(liquid))
              .with(Double.isNaN(weight) ? limits : limits.withWeight(weight)));
    }
    return targets;
  }

  private Shelf shelf() {
    Sheet table = Sheet.read(folder, "shelf.csv", "item");
    List<ShelfItem> items = new ArrayList<>();
    for (int i = 0; i < table.size(); i++) {
      int row = i;
      Reagent reagent =
          table.<Reagent>value(
              "mass percent",
              row,
              number -> {
                String name = table.text("item", row);
                return Salt.named().stream().anyMatch(salt -> salt.name().contains(name))
                    ? Reagent.of(Salt.named(name), massPercent(number))
                    : Reagent.of(Acid.named(name), massPercent(number));
              });
      Reagent known =
          table.value("relative u of the strength", row, u -> reagent.withAssayUncertainty(u));
      ShelfItem item = ShelfItem.of(known);
      items.add(
          Double.isNaN(table.orNaN("most by mass", row))
              ? item.atMost(table.quantity(LabUnits.VOLUME, "most by volume", row))
              : item.atMost(table.quantity(LabUnits.MASS, "most by mass", row)));
    }
    return Shelf.of(items.toArray(new ShelfItem[0]))
        .weighingTo(g(1))
        .pipettingTo(mL(5))
        .meteringWaterTo(litres(10));
  }

  private void brew(Plan plan, Grist grist, Shelf shelf) {
    heading("What to do");
    Stream.concat(plan.waters().stream(), plan.doses().stream())
        .map(PlannedAmount::toString)
        .forEach(this::item);
    heading("What it makes");
    Map<String, Water> made = new LinkedHashMap<>();
    portions.keySet().forEach(name -> made.put(name, plan.water(name)));
    headings(made.keySet());
    waterRows(made);
    page.append('\n');
    plan.reached().stream().map(Reached::toString).forEach(this::item);
    Volume mashed = Objects.requireNonNull(portions.get(STRIKE));
    Mash mash = Mash.of(grist, plan.water(STRIKE), mashed);
    Interval interval = mash.interval();
    heading("Mash");
    item(mash.pH().toString());
    item("95 % interval, capacities and Kolbach's factor drawn: " + interval);
    item(mash.hotPH(celsius(65)) + ", as an electrode would show");
    heading("Notices");
    Stream.of(plan.notices(), mash.notices(), mash.pH().notices())
        .flatMap(List::stream)
        .filter(notice -> notice.code() != SolutionCode.CONSTANT_RANGE_UNSTATED)
        .map(Notice::toString)
        .distinct()
        .forEach(this::item);
    heading("Cautions");
    plan.cautions().forEach(caution -> item(caution.text()));
    pictures.put("water", waterPicture(made));
    strike = pouredAcid(shelf).map(acid -> Strike.of(plan, grist, mashed, acid));
    strike.ifPresent(curve -> pictures.put("mash", mashPicture(plan, curve)));
  }

  private void refused(Plan plan) {
    heading("No plan");
    page.append(plan).append('\n');
    for (Conflict conflict : plan.conflicts()) {
      item(conflict.toString());
    }
    plan.nearest().ifPresent(nearest -> item("nearest: " + nearest));
  }

  /** Waters before and after, and what the target asks, in the plane of two figures. */
  private Picture waterPicture(Map<String, Water> made) {
    Picture picture =
        Picture.of(
                "Waters of an invented brew day, before and after",
                "calcium [mg/L]",
                "residual alkalinity [°dH]")
            .across(0, 140)
            .up(-6, 14);
    for (Map.Entry<String, Water> water : waters.entrySet()) {
      picture =
          picture.points(
              water.getKey() + ", as reported", at(water.getValue()), up(water.getValue()));
    }
    for (Map.Entry<String, Water> water : made.entrySet()) {
      picture =
          picture.points(water.getKey() + ", made", at(water.getValue()), up(water.getValue()));
    }
    for (Map.Entry<String, Target> target : targets().entrySet()) {
      for (Constraint limits : target.getValue().constraints()) {
        String name = target.getKey();
        if (limits.figure().equals(CALCIUM) && limits.lower().isPresent()) {
          picture = picture.limitUp(name + " at least", limits.lower().getAsDouble());
        } else if (limits.figure().equals(RESIDUAL_ALKALINITY) && limits.upper().isPresent()) {
          picture =
              picture.limitAcross(
                  name + " at most",
                  Scales.RESIDUAL_ALKALINITY_IN_GERMAN_DEGREES.in(
                      RESIDUAL_ALKALINITY.shown().of(limits.upper().getAsDouble())));
        }
      }
    }
    return picture;
  }

  /**
   * The mash, without the acid that the shelf has for pouring.
   *
   * @param without the mash of all that the plan does but for this acid
   * @param acid the acid
   * @param planned how much of it the plan pours, mL
   */
  record Strike(Mash without, Reagent acid, double planned) {

    static Strike of(Plan plan, Grist grist, Volume mashed, ShelfItem acid) {
      List<PlannedAmount> doses =
          plan.doses().stream().filter(dose -> dose.portion().equals(STRIKE)).toList();
      List<Treatment> steps = plan.steps(STRIKE);
      int blends = steps.size() - doses.size();
      Water liquor = plan.start(STRIKE);
      double planned = 0;
      for (int i = 0; i < steps.size(); i++) {
        if (i >= blends && doses.get(i - blends).item().equals(acid.name())) {
          planned = doses.get(i - blends).volume().orElseThrow().inMillilitres();
        } else {
          liquor = liquor.after(steps.get(i));
        }
      }
      return new Strike(Mash.of(grist, liquor, mashed), acid.reagent().orElseThrow(), planned);
    }

    Mash with(double millilitres) {
      return without.after(MashAddition.acid(acid, mL(millilitres)));
    }
  }

  private static Optional<ShelfItem> pouredAcid(Shelf shelf) {
    return shelf.items().stream()
        .filter(item -> item.reagent().filter(BrewDay::isPouredAcid).isPresent())
        .findFirst();
  }

  private static boolean isPouredAcid(Reagent reagent) {
    return reagent.compound() instanceof Acid && reagent.density().isPresent();
  }

  /** The mash pH against the acid that is poured, with its interval and what is wanted. */
  private static Picture mashPicture(Plan plan, Strike strike) {
    double most = Math.max(200, 1.6 * strike.planned());
    double[] millilitres = new double[PLOTTED];
    double[] value = new double[PLOTTED];
    double[] lower = new double[PLOTTED];
    double[] upper = new double[PLOTTED];
    for (int i = 0; i < PLOTTED; i++) {
      millilitres[i] = most * i / (PLOTTED - 1);
      Answer<?> pH = strike.with(millilitres[i]).pH();
      value[i] = pH.number();
      lower[i] = pH.expanded().orElseThrow().lower();
      upper[i] = pH.expanded().orElseThrow().upper();
    }
    Picture picture =
        Picture.of(
                "Mash pH of an invented grist against acid",
                strike.acid() + " [mL]",
                "pH of the cooled mash")
            .across(0, most)
            .band("interval, k = 2", millilitres, lower, upper);
    for (Reached reached : plan.reached()) {
      Constraint wanted = reached.constraint();
      if (wanted.figure().equals(MASH_PH)
          && wanted.lower().isPresent()
          && wanted.upper().isPresent()) {
        picture =
            picture
                .limitAcross("wanted at most", wanted.upper().getAsDouble())
                .limitAcross("wanted at least", wanted.lower().getAsDouble());
      }
    }
    return picture.line("expected", millilitres, value).limitUp("planned", strike.planned());
  }

  private static double[] at(Water water) {
    return new double[] {water.calcium().number()};
  }

  private static double[] up(Water water) {
    return new double[] {
      water.answer(RESIDUAL_ALKALINITY).in(Scales.RESIDUAL_ALKALINITY_IN_GERMAN_DEGREES).number()
    };
  }

  private static MassConcentration concentration(Sheet table, String column, int row) {
    return table.quantity(LabUnits.MASS_CONCENTRATION, column, row);
  }

  private static MassConcentration alkalinityAsCaCO3(Sheet table, int row) {
    CarbonateAlkalinity stated = table.quantity(LabUnits.CARBONATE_ALKALINITY, "alkalinity", row);
    return mgPerL(stated.inMilligramsPerLitreAsCaCO3());
  }

  private void heading(String text) {
    page.append("\n## ").append(text).append("\n\n");
  }

  private void headings(Collection<String> names) {
    row("figure", names.toArray());
    row("---", names.stream().map(name -> "---").toArray());
  }

  private void row(String first, Object... cells) {
    page.append("| ").append(first).append(" |");
    for (Object cell : cells) {
      page.append(' ').append(cell).append(" |");
    }
    page.append('\n');
  }

  private void item(String text) {
    page.append("- ").append(text).append('\n');
  }
}
