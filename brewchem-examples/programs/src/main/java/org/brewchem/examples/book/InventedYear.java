package org.brewchem.examples.book;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.solution.Figures.CALCIUM;
import static org.brewchem.solution.Figures.PH_VALUE;
import static org.brewchem.solution.Figures.SULFATE_TO_CHLORIDE;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Comparison;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Target;
import org.brewchem.pictures.Picture;
import org.brewchem.quality.BatchRecord;
import org.brewchem.quality.ControlChart;
import org.brewchem.quality.ControlRule;
import org.brewchem.quality.ControlRules;
import org.brewchem.quality.ControlSeries;
import org.brewchem.quality.InControl;
import org.brewchem.quality.RecordBook;
import org.brewchem.quality.TargetVersion;
import org.brewchem.quality.TitrantRecord;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.VolumeRatio;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.titration.Titrant;
import org.brewchem.treatment.Treatments;

/**
 * Enters an invented year of forty batches into a book, watches the acidity, and draws what a
 * brewer would pin up: a chart with the day on which a bottle of lye began to lose strength, what a
 * dose would do to the last batch, and that batch against its target.
 */
public final class InventedYear {

  static final String BEER = "invented lager";
  static final PH END_POINT = pH(8.2);
  static final Figure<TitratableAcidity> ACIDITY = Figures.titratableAcidity(END_POINT);

  private static final LocalDate FIRST = LocalDate.of(2026, 1, 12);
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 26);
  private static final int BATCHES = 40;
  private static final int QUIET = 20;

  /** The batch at which a second bottle of lye is opened, which takes up carbon dioxide. */
  static final int SECOND_LYE = 26;

  private static final double LOSS_PER_BATCH = 0.006;
  private static final double MOST_DOSE = 24;
  private static final int PLOTTED = 25;
  private static final int SHOWN = 3;

  private static final Target TARGET =
      Target.named(BEER)
          .with(Constraint.between(PH_VALUE, pH(4.25), pH(4.45)))
          .with(
              Constraint.between(
                  ACIDITY,
                  acidity(gPerL(1.75), Acid.LACTIC, END_POINT),
                  acidity(gPerL(1.95), Acid.LACTIC, END_POINT)))
          .with(Constraint.between(SULFATE_TO_CHLORIDE, 0.8, 1.6))
          .with(Constraint.atLeast(CALCIUM, mgPerL(40)));

  private final Map<String, Picture> pictures = new LinkedHashMap<>();
  private final StringBuilder page = new StringBuilder();

  private InventedYear() {}

  /**
   * Makes the book and the pictures in a folder, {@code book.sqlite} among them, and prints what
   * the chart says.
   *
   * @param arguments the folder; a new one among the temporary files if there is none
   * @throws IOException if a file cannot be written, or the folder has a book already
   */
  public static void main(String[] arguments) throws IOException {
    System.setProperty("java.awt.headless", "true");
    Path folder =
        arguments.length > 0 ? Path.of(arguments[0]) : Files.createTempDirectory("invented-year");
    InventedYear year = in(folder);
    for (Map.Entry<String, Picture> picture : year.pictures.entrySet()) {
      picture.getValue().save(folder.resolve(picture.getKey() + ".png"));
    }
    System.out.print(year.page);
    System.out.println("The book, its CSV files and the pictures are in " + folder);
  }

  /** Makes the book in a folder and draws the pictures. */
  static InventedYear in(Path folder) throws IOException {
    InventedYear year = new InventedYear();
    Path path = folder.resolve("book.sqlite");
    if (Files.exists(path)) {
      throw new IOException(path + ": there is a book already");
    }
    Clock clock = Clock.fixed(TODAY.atTime(18, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
    try (SqlBook book =
        SqlBook.open(path, clock, PH_VALUE, ACIDITY, SULFATE_TO_CHLORIDE, CALCIUM)) {
      Beer last = year.fill(book);
      year.watch(book.book());
      year.pictures.put("ladder", ladder(last));
      year.pictures.put("target", against(TARGET.compare(last)));
      book.writeCsv(folder);
    }
    return year;
  }

  String page() {
    return page.toString();
  }

  Map<String, Picture> pictures() {
    return pictures;
  }

  /** The invented year: the beer stays as it is, the second bottle of lye loses strength. */
  private Beer fill(SqlBook book) throws IOException {
    Titrant lye = Titrant.sodiumHydroxide().of(molPerL(0.1), molPerL(0.0002));
    for (int bottle = 12; bottle <= 13; bottle++) {
      LocalDate found = bottle == 12 ? FIRST.minusDays(2) : day(SECOND_LYE).minusDays(1);
      book.enter(
          TitrantRecord.of(
              "lye " + bottle, lye.concentration(), found, "M. Adler", found.atTime(9, 0)));
    }
    book.enter(new TargetVersion(TARGET, 1, FIRST, "M. Adler", FIRST.atTime(8, 0)));
    Random random = new Random(7);
    Beer beer = null;
    for (int batch = 1; batch <= BATCHES; batch++) {
      double trueAcidity = 1.72 + 0.025 * random.nextGaussian();
      double loss = batch < SECOND_LYE ? 0 : LOSS_PER_BATCH * (batch - SECOND_LYE);
      double millilitres =
          50 * trueAcidity / Acid.LACTIC.molarMass().inGramsPerMole() / (0.1 * (1 - loss));
      var titrated =
          lye.titrate(mL(50)).to(END_POINT).took(mL(millilitres), mL(millilitres + 0.03));
      beer =
          Beer.of(pH(4.38 + 0.02 * random.nextGaussian()), titrated.acidity())
              .withStandardUncertaintyOfPH(0.02)
              .with(Ion.CALCIUM, mgPerL(52), mgPerL(2))
              .with(Ion.SULFATE, mgPerL(150), mgPerL(6))
              .with(Ion.CHLORIDE, mgPerL(130), mgPerL(5));
      book.enter(
          BatchRecord.of(
                  label(batch),
                  BEER,
                  day(batch),
                  "M. Adler",
                  day(batch).plusDays(6).atTime(15, 0),
                  beer.pH(),
                  beer.titratableAcidity(),
                  beer.sulfateToChloride(),
                  beer.calcium())
              .titratedWith(batch < SECOND_LYE ? "lye 12" : "lye 13"));
    }
    return Objects.requireNonNull(beer);
  }

  private static LocalDate day(int batch) {
    return FIRST.plusDays(7L * (batch - 1));
  }

  private static String label(int batch) {
    return String.format(Locale.ROOT, "L-%02d", batch);
  }

  private void watch(RecordBook book) {
    ControlSeries all = book.series(ACIDITY, BEER);
    ControlSeries quiet = all.before(label(QUIET + 1));
    InControl state = InControl.from(quiet);
    ControlRule beyond = ControlRules.beyond(3);
    ControlRule average = ControlRules.weightedAverage(0.2, 2.9);
    ControlChart chart = ControlChart.of(state, List.of(beyond, average));
    ControlChart.Watched watched = chart.watch(all);
    page.append("Invented brewery, invented data. ").append(book).append("\n\n");
    page.append("In control: ").append(state).append("\n");
    page.append(chart.falseAlarms(BATCHES)).append("\n\n");
    List<Notice> notices = watched.notices();
    notices.stream()
        .limit(SHOWN)
        .forEach(notice -> page.append("- ").append(notice.text()).append('\n'));
    page.append("- and ").append(Math.max(0, notices.size() - SHOWN)).append(" more\n");
    page.append('\n');
    pictures.put("acidity", chart(state, watched, beyond, average));
  }

  private static Picture chart(
      InControl state, ControlChart.Watched watched, ControlRule beyond, ControlRule average) {
    List<ControlChart.Drawn> points = watched.drawn(beyond);
    double[] batch = new double[points.size()];
    double[] value = new double[points.size()];
    double[] smooth = new double[points.size()];
    for (int i = 0; i < batch.length; i++) {
      batch[i] = i + 1;
      value[i] = points.get(i).above();
      smooth[i] = watched.drawn(average).get(i).above();
    }
    double[] signalled =
        watched.signals().stream()
            .filter(signal -> signal.rule().equals(beyond))
            .mapToDouble(ControlChart.Signal::row)
            .toArray();
    Picture picture =
        Picture.of(
                "Titratable acidity of forty invented batches", "batch", ACIDITY.shown().symbol())
            .across(0, BATCHES + 1)
            .points("batch", batch, value)
            .line("weighted average", batch, smooth)
            .limitAcross("mean", state.mean())
            .limitAcross("upper limit", points.get(0).upperLimit().orElseThrow())
            .limitAcross("lower limit", points.get(0).lowerLimit().orElseThrow())
            .limitUp("lye 13 opened", SECOND_LYE);
    return signalled.length == 0
        ? picture
        : picture.points(
            "signal", signalled, Arrays.stream(signalled).map(at -> value[(int) at - 1]).toArray());
  }

  /** What lactic acid would do to a beer's pH, with its interval and the limits. */
  private static Picture ladder(Beer beer) {
    Reagent lactic = Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(0.029);
    double[] dose = new double[PLOTTED];
    double[] value = new double[PLOTTED];
    double[] lower = new double[PLOTTED];
    double[] upper = new double[PLOTTED];
    for (int i = 0; i < PLOTTED; i++) {
      dose[i] = MOST_DOSE * i / (PLOTTED - 1);
      Answer<PH> found =
          i == 0
              ? beer.pH()
              : beer.after(Treatments.acid(lactic, VolumeRatio.ofMillilitresPerHectolitre(dose[i])))
                  .pH();
      value[i] = found.number();
      lower[i] = found.expanded().orElseThrow().lower();
      upper[i] = found.expanded().orElseThrow().upper();
    }
    Constraint limits = TARGET.constraints().get(0);
    return Picture.of("What a dose would do to the last batch", lactic + " [mL/hL]", "pH")
        .across(0, MOST_DOSE)
        .band("interval, k = 2", dose, lower, upper)
        .line("expected", dose, value)
        .limitAcross("upper limit", limits.upper().orElseThrow())
        .limitAcross("lower limit", limits.lower().orElseThrow());
  }

  /** Where each figure lies between its limits, with its interval. */
  private static Picture against(Comparison comparison) {
    Picture picture =
        Picture.of(
                "The last batch against its target, intervals at k = 2",
                "place between the limits: 0 at the lower, 1 at the upper",
                "row")
            .across(-1, 2)
            .up(0, comparison.judgements().size() + 1);
    int row = comparison.judgements().size();
    for (Comparison.Judgement judgement : comparison.judgements()) {
      Constraint limits = judgement.constraint();
      if (limits.lower().isPresent() && limits.upper().isPresent()) {
        double from = limits.lower().getAsDouble();
        double width = limits.upper().getAsDouble() - from;
        var interval = judgement.answer().expanded().orElseThrow();
        picture =
            picture.line(
                limits.figure().name(),
                new double[] {(interval.lower() - from) / width, (interval.upper() - from) / width},
                new double[] {row, row});
      }
      row--;
    }
    return picture.limitUp("lower limit", 0).limitUp("upper limit", 1);
  }
}
