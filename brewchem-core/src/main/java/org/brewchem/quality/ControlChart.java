package org.brewchem.quality;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;

/**
 * A control chart: what a process does in control, from which batch on, and the rules that say when
 * a series leaves it. Limits and false alarms are those of batches that are independent of each
 * other. Immutable.
 */
public final class ControlChart {

  private final InControl first;
  private final Map<String, InControl> phases;
  private final List<ControlRule> rules;

  private ControlChart(InControl first, Map<String, InControl> phases, List<ControlRule> rules) {
    this.first = Objects.requireNonNull(first, "in control");
    this.phases = phases;
    this.rules = List.copyOf(rules);
    if (rules.isEmpty()) {
      throw new IllegalArgumentException("rules: none is not possible; a chart needs one");
    }
  }

  /**
   * Makes a chart.
   *
   * @param inControl what the process does in control
   * @param rules one or more; {@link ControlRules#westernElectric()} is a named set
   * @return the chart
   * @throws IllegalArgumentException if there is no rule
   */
  public static ControlChart of(InControl inControl, List<ControlRule> rules) {
    return new ControlChart(inControl, Map.of(), rules);
  }

  /**
   * Starts a phase: from a batch on, the process in control is a different one, as after a change
   * of malt or method. The rules start again there.
   *
   * @param label the first batch of the phase
   * @param inControl what the process does in control from there on
   * @return the chart with it
   * @throws IllegalArgumentException if the unit or the figure is another or a phase starts there
   *     already
   */
  public ControlChart fromBatch(String label, InControl inControl) {
    Checks.notBlank("label of the batch", label);
    sameUnit("phase from batch " + label, inControl.unit());
    inControl.title().ifPresent(title -> sameFigure("phase from batch " + label, title));
    Map<String, InControl> more = new LinkedHashMap<>(phases);
    if (more.putIfAbsent(label, inControl) != null) {
      throw new IllegalArgumentException(
          "batch: a phase starts at \"" + label + "\" already; state it once");
    }
    return new ControlChart(first, more, rules);
  }

  private void sameUnit(String what, String unit) {
    if (!unit.equals(first.unit())) {
      throw new IllegalArgumentException(
          what
              + ": \""
              + unit
              + "\" is not possible; the chart counts in \""
              + first.unit()
              + "\"");
    }
  }

  /** Refuses what is of another figure than the states that say of which they are. */
  private void sameFigure(String what, String title) {
    Stream.concat(Stream.of(first), phases.values().stream())
        .flatMap(state -> state.title().stream())
        .filter(own -> !own.equals(title))
        .findFirst()
        .ifPresent(
            own -> {
              throw new IllegalArgumentException(
                  what
                      + ": \""
                      + Excerpt.of(title)
                      + "\" is not possible; the chart is of \""
                      + Excerpt.of(own)
                      + "\", and the series it watches needs that title");
            });
  }

  /**
   * Returns the rules.
   *
   * @return an unmodifiable list
   */
  public List<ControlRule> rules() {
    return rules;
  }

  /**
   * Returns what the process does in control before the first further phase.
   *
   * @return mean and standard deviation
   */
  public InControl inControl() {
    return first;
  }

  /**
   * Says how often this chart alarms although nothing has changed.
   *
   * @param points how many batches are watched, 1 to 1000
   * @return the false alarms of its rules together, of the first phase
   * @throws IllegalArgumentException if the number of batches is out of range
   */
  public FalseAlarms falseAlarms(int points) {
    return FalseAlarms.of(rules, first.points(), points);
  }

  /**
   * Watches a series.
   *
   * @param series the batches in their order
   * @return what the rules followed and where they signalled
   * @throws IllegalArgumentException if the series counts in another unit or is of another figure
   *     ({@link InControl#title()}), or a phase starts at a batch that it does not hold
   */
  public Watched watch(ControlSeries series) {
    sameUnit("series of " + series.title(), series.unit());
    sameFigure("series", series.title());
    for (String label : phases.keySet()) {
      if (series.points().stream().noneMatch(point -> point.label().equals(label))) {
        throw new IllegalArgumentException(
            "batch: a phase starts at \"" + label + "\", which the series does not hold");
      }
    }
    List<Signal> signals = new ArrayList<>();
    List<Notice> notices = new ArrayList<>();
    List<List<Drawn>> drawn = new ArrayList<>();
    rules.forEach(rule -> drawn.add(new ArrayList<>()));
    InControl state = first;
    List<ControlRule.Watch> watches = started();
    int row = 0;
    for (ControlSeries.Point point : series.points()) {
      row++;
      if (phases.containsKey(point.label())) {
        state = phases.get(point.label());
        watches = started();
      }
      if (point.value().isEmpty()) {
        notices.add(
            Notice.ofRow(
                QualityCode.POINT_MISSING,
                series.title(),
                row,
                "batch " + point.label() + " has no " + series.title() + "; passed over"));
        continue;
      }
      double value = point.value().getAsDouble();
      for (int i = 0; i < rules.size(); i++) {
        ControlRule rule = rules.get(i);
        boolean alarmed = watches.get(i).signals(state.standardised(value));
        drawn.get(i).add(Drawn.of(point.label(), rule, watches.get(i).followed(), state));
        if (alarmed) {
          Signal signal = new Signal(point.label(), row, rule, value, watches.get(i).side());
          signals.add(signal);
          notices.add(
              Notice.ofRow(QualityCode.SIGNAL, series.title(), row, signal.words(series, state)));
        }
      }
    }
    return new Watched(rules, signals, notices, drawn);
  }

  private List<ControlRule.Watch> started() {
    return rules.stream().map(ControlRule::start).toList();
  }

  /**
   * A signal of a rule.
   *
   * @param label the batch
   * @param row its place in the series, counted from 1
   * @param rule the rule
   * @param value the value of the batch, in the unit of the series
   * @param side the side on which the rule signals; of an average or a sum not always that of the
   *     value
   */
  public record Signal(
      String label, int row, ControlRule rule, double value, ControlRule.Side side) {
    /**
     * Makes a signal.
     *
     * @param label the batch
     * @param row its place in the series, counted from 1
     * @param rule the rule
     * @param value the value of the batch, in the unit of the series
     * @param side the side on which the rule signals
     * @throws IllegalArgumentException if the row is below 1 or the value is not finite
     */
    public Signal {
      Checks.inRange("row", row, "", 1, Integer.MAX_VALUE);
      Checks.finite("value", value, "");
      Objects.requireNonNull(label, "label");
      Objects.requireNonNull(rule, "rule");
      Objects.requireNonNull(side, "side");
    }

    /**
     * Makes a signal of no one side.
     *
     * @param label the batch
     * @param row its place in the series, counted from 1
     * @param rule the rule
     * @param value the value of the batch, in the unit of the series
     * @throws IllegalArgumentException if the row is below 1 or the value is not finite
     */
    public Signal(String label, int row, ControlRule rule, double value) {
      this(label, row, rule, value, ControlRule.Side.NONE);
    }

    String words(ControlSeries series, InControl state) {
      String unit = series.unit().isEmpty() ? "" : " " + series.unit();
      String number = NumberText.significant(value, 4);
      String mean = NumberText.significant(state.mean(), 4);
      ControlRule.Side lies =
          number.equals(mean)
              ? ControlRule.Side.NONE
              : value > state.mean() ? ControlRule.Side.ABOVE : ControlRule.Side.BELOW;
      return String.join(
          "",
          "batch " + label + ", " + series.title() + " ",
          number + unit,
          lies == ControlRule.Side.NONE
              ? ", at"
              : lies == ControlRule.Side.ABOVE ? ", above" : ", below",
          " the mean " + mean + unit,
          ": " + rule.name(),
          side == ControlRule.Side.NONE || side == lies
              ? ""
              : side == ControlRule.Side.ABOVE ? ", on the upper side" : ", on the lower side");
    }
  }

  /**
   * What a rule followed at a batch, in the unit of the series, for a picture.
   *
   * @param label the batch
   * @param above the side that looks for a rise
   * @param below the side that looks for a fall; the same where a rule follows one number
   * @param lowerLimit the lower limit; empty for a rule that counts points
   * @param upperLimit the upper limit; empty for a rule that counts points
   */
  public record Drawn(
      String label,
      double above,
      double below,
      OptionalDouble lowerLimit,
      OptionalDouble upperLimit) {

    /**
     * Makes what a rule followed.
     *
     * @param label the batch
     * @param above the side that looks for a rise, in the unit of the series
     * @param below the side that looks for a fall, in the unit of the series
     * @param lowerLimit the lower limit; empty for a rule that counts points
     * @param upperLimit the upper limit; empty for a rule that counts points
     * @throws IllegalArgumentException if a side is not finite
     */
    public Drawn {
      Objects.requireNonNull(label, "label");
      Objects.requireNonNull(lowerLimit, "lower limit");
      Objects.requireNonNull(upperLimit, "upper limit");

      Checks.finite("above", above, "");
      Checks.finite("below", below, "");
    }

    static Drawn of(
        String label, ControlRule rule, ControlRule.Followed followed, InControl state) {
      double centre = rule.isAboutTheMean() ? state.mean() : 0;
      double unit = state.standardDeviation();
      OptionalDouble limit = rule.limit();
      return new Drawn(
          label,
          centre + unit * followed.above(),
          centre + unit * followed.below(),
          limit.isEmpty() ? limit : OptionalDouble.of(centre - unit * limit.getAsDouble()),
          limit.isEmpty() ? limit : OptionalDouble.of(centre + unit * limit.getAsDouble()));
    }
  }

  /** A series as a chart watched it. Immutable. */
  public static final class Watched {

    private final List<Signal> signals;
    private final List<Notice> notices;
    private final List<ControlRule> rules;
    private final List<List<Drawn>> drawn;

    private Watched(
        List<ControlRule> rules,
        List<Signal> signals,
        List<Notice> notices,
        List<List<Drawn>> drawn) {
      this.rules = rules;
      this.signals = List.copyOf(signals);
      this.notices = List.copyOf(notices);
      this.drawn = drawn.stream().map(List::copyOf).toList();
    }

    /**
     * Returns the signals.
     *
     * @return an unmodifiable list in the order of the batches; empty when nothing is to be seen
     */
    public List<Signal> signals() {
      return signals;
    }

    /**
     * Returns the signals in words, and the batches without a value.
     *
     * @return an unmodifiable list in the order of the batches
     */
    public List<Notice> notices() {
      return notices;
    }

    /**
     * Returns what a rule followed.
     *
     * @param rule one of the chart's rules
     * @return an unmodifiable list, one for each batch with a value
     * @throws IllegalArgumentException if the chart does not have the rule
     */
    public List<Drawn> drawn(ControlRule rule) {
      int index = rules.indexOf(Objects.requireNonNull(rule, "rule"));
      if (index < 0) {
        throw new IllegalArgumentException("rule: the chart has no \"" + rule.name() + "\"");
      }
      return drawn.get(index);
    }
  }
}
