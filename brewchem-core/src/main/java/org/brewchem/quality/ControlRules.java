package org.brewchem.quality;

import java.util.List;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.internal.NormalProbability;
import org.brewchem.internal.NumberText;

/**
 * The rules of control charts: single points, moving ranges, runs, exponentially weighted averages
 * and cumulative sums.
 *
 * <p>The four of {@link #westernElectric()} are those of the Western Electric Statistical Quality
 * Control Handbook of 1956, from memory. Each further rule finds more shifts but also raises more
 * false alarms: {@link FalseAlarms} says how many.
 */
public final class ControlRules {

  private ControlRules() {}

  /**
   * Returns the rule of the individuals chart: a point beyond a number of standard deviations.
   *
   * @param standardDeviations above 0, usually 3
   * @return the rule
   * @throws IllegalArgumentException if the number is not above 0
   */
  public static ControlRule beyond(double standardDeviations) {
    return new SinglePoint(
        Checks.positive("limit of the individuals chart", standardDeviations, ""));
  }

  /**
   * Returns the rule of the moving-range chart: two neighbours that differ by more than D4 average
   * ranges.
   *
   * @return the rule, with D4 = 3.267 and d2 = 1.128 as they are printed
   */
  public static ControlRule movingRange() {
    return new MovingRange(ChartConstants.D4 * ChartConstants.D2);
  }

  /**
   * Returns the rule of a run: at least a number of neighbouring points, out of a larger number,
   * beyond a distance on the same side of the mean.
   *
   * @param count how many points, 1 or more
   * @param window of how many in a row, at least {@code count} and at most 64
   * @param standardDeviations how far out they lie, 0 or more; 0 for "on one side"
   * @return the rule, which needs the last point to be one of them
   * @throws IllegalArgumentException if a number is out of range
   */
  public static ControlRule run(int count, int window, double standardDeviations) {
    Checks.inRange("points in a row", window, "", 1, 64);
    Checks.inRange("points of the run", count, "", 1, window);
    Checks.nonNegative("distance of the run", standardDeviations, "");
    return new Run(count, window, standardDeviations);
  }

  /**
   * Returns the four rules of Western Electric: a point beyond 3 standard deviations; 2 of 3 beyond
   * 2; 4 of 5 beyond 1; 8 in a row on one side.
   *
   * @return the rules, in this order
   */
  public static List<ControlRule> westernElectric() {
    return List.of(beyond(3), run(2, 3, 2), run(4, 5, 1), run(8, 8, 0));
  }

  /**
   * Returns the rule of the exponentially weighted moving average. Its limits are those of the long
   * run from the first point on.
   *
   * @param weight lambda, the weight of the newest point, above 0 and at most 1; 0.1 to 0.3 is
   *     usual
   * @param width L, how many standard deviations of the average the limits lie out, above 0
   * @return the rule
   * @throws IllegalArgumentException if a number is out of range
   */
  public static ControlRule weightedAverage(double weight, double width) {
    Checks.positive("weight of the newest point", weight, "");
    Checks.inRange("weight of the newest point", weight, "", 0, 1);
    return new WeightedAverage(weight, Checks.positive("width of the limits", width, ""));
  }

  /**
   * Returns the rule of the two cumulative sums: what exceeds the allowance on either side is added
   * up, and a sum beyond the decision interval signals.
   *
   * @param allowance k, in standard deviations, 0 or more; half of the shift to be found
   * @param interval h, the decision interval in standard deviations, above 0; 4 to 5 is usual
   * @return the rule
   * @throws IllegalArgumentException if a number is out of range
   */
  public static ControlRule cumulativeSum(double allowance, double interval) {
    return new CumulativeSum(
        Checks.nonNegative("allowance", allowance, ""),
        Checks.positive("decision interval", interval, ""));
  }

  private record SinglePoint(double limitOfPoint) implements ControlRule {

    @Override
    public String name() {
      return "beyond " + text(limitOfPoint) + " standard deviations";
    }

    @Override
    public boolean isAboutTheMean() {
      return true;
    }

    @Override
    public OptionalDouble limit() {
      return OptionalDouble.of(limitOfPoint);
    }

    @Override
    public OptionalDouble averageRunLength(double shift) {
      Checks.finite("shift", shift, "standard deviations");
      return OptionalDouble.of(
          1
              / (NormalProbability.below(-limitOfPoint + shift)
                  + NormalProbability.below(-limitOfPoint - shift)));
    }

    @Override
    public Watch start() {
      return new Watch() {
        private double last;

        @Override
        public boolean signals(double z) {
          last = z;
          return Math.abs(z) > limitOfPoint;
        }

        @Override
        public ControlRule.Side side() {
          return sideOf(last > limitOfPoint, last < -limitOfPoint);
        }

        @Override
        public Followed followed() {
          return new Followed(last, last);
        }
      };
    }
  }

  private record MovingRange(double limitOfRange) implements ControlRule {

    @Override
    public String name() {
      return "moving range";
    }

    @Override
    public boolean isAboutTheMean() {
      return false;
    }

    @Override
    public OptionalDouble limit() {
      return OptionalDouble.of(limitOfRange);
    }

    @Override
    public OptionalDouble averageRunLength(double shift) {
      Checks.finite("shift", shift, "standard deviations");
      return OptionalDouble.empty();
    }

    @Override
    public Watch start() {
      return new Watch() {
        private double last = Double.NaN;
        private double range;

        @Override
        public boolean signals(double z) {
          range = Double.isNaN(last) ? 0 : Math.abs(z - last);
          last = z;
          return range > limitOfRange;
        }

        @Override
        public Followed followed() {
          return new Followed(range, range);
        }
      };
    }
  }

  private record Run(int count, int window, double distance) implements ControlRule {

    @Override
    public String name() {
      String points = count == window ? count + " in a row" : count + " of " + window;
      return points
          + (distance == 0
              ? " on one side of the mean"
              : " beyond " + text(distance) + " on one side");
    }

    @Override
    public boolean isAboutTheMean() {
      return true;
    }

    @Override
    public OptionalDouble limit() {
      return OptionalDouble.empty();
    }

    @Override
    public OptionalDouble averageRunLength(double shift) {
      Checks.finite("shift", shift, "standard deviations");
      return OptionalDouble.empty();
    }

    @Override
    public Watch start() {
      return new Watch() {
        private final long recent = window == 64 ? -1L : (1L << window) - 1;
        private long above;
        private long below;
        private double last;

        @Override
        public boolean signals(double z) {
          last = z;
          boolean isAbove = z > distance;
          boolean isBelow = z < -distance;
          above = ((above << 1) | (isAbove ? 1 : 0)) & recent;
          below = ((below << 1) | (isBelow ? 1 : 0)) & recent;
          return (isAbove && runs(above)) || (isBelow && runs(below));
        }

        private boolean runs(long points) {
          return Long.bitCount(points) >= count;
        }

        @Override
        public ControlRule.Side side() {
          return sideOf(last > distance && runs(above), last < -distance && runs(below));
        }

        @Override
        public Followed followed() {
          return new Followed(last, last);
        }
      };
    }
  }

  private record WeightedAverage(double weight, double width) implements ControlRule {

    @Override
    public String name() {
      return "weighted average, lambda " + text(weight) + ", L " + text(width);
    }

    @Override
    public boolean isAboutTheMean() {
      return true;
    }

    @Override
    public OptionalDouble limit() {
      return OptionalDouble.of(width * Math.sqrt(weight / (2 - weight)));
    }

    @Override
    public OptionalDouble averageRunLength(double shift) {
      Checks.finite("shift", shift, "standard deviations");
      return OptionalDouble.of(RunLengths.ofWeightedAverage(weight, limit().getAsDouble(), shift));
    }

    @Override
    public Watch start() {
      double limit = limit().getAsDouble();
      return new Watch() {
        private double average;

        @Override
        public boolean signals(double z) {
          average = weight * z + (1 - weight) * average;
          return Math.abs(average) > limit;
        }

        @Override
        public ControlRule.Side side() {
          return sideOf(average > limit, average < -limit);
        }

        @Override
        public Followed followed() {
          return new Followed(average, average);
        }
      };
    }
  }

  private record CumulativeSum(double allowance, double interval) implements ControlRule {

    @Override
    public String name() {
      return "cumulative sums, k " + text(allowance) + ", h " + text(interval);
    }

    @Override
    public boolean isAboutTheMean() {
      return false;
    }

    @Override
    public OptionalDouble limit() {
      return OptionalDouble.of(interval);
    }

    /** When one sum signals the other rests at zero, so that their rates add. */
    @Override
    public OptionalDouble averageRunLength(double shift) {
      Checks.finite("shift", shift, "standard deviations");
      return OptionalDouble.of(
          1
              / (1 / RunLengths.ofCumulativeSum(allowance, interval, shift)
                  + 1 / RunLengths.ofCumulativeSum(allowance, interval, -shift)));
    }

    @Override
    public Watch start() {
      return new Watch() {
        private double above;
        private double below;

        @Override
        public boolean signals(double z) {
          above = Math.max(0, above + z - allowance);
          below = Math.min(0, below + z + allowance);
          return above > interval || below < -interval;
        }

        @Override
        public ControlRule.Side side() {
          return sideOf(above > interval, below < -interval);
        }

        @Override
        public Followed followed() {
          return new Followed(above, below);
        }
      };
    }
  }

  private static ControlRule.Side sideOf(boolean isAbove, boolean isBelow) {
    if (isAbove == isBelow) {
      return ControlRule.Side.NONE;
    }
    return isAbove ? ControlRule.Side.ABOVE : ControlRule.Side.BELOW;
  }

  private static String text(double number) {
    return NumberText.plain(number);
  }
}
