package org.brewchem.figure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.internal.Checks;
import org.brewchem.internal.DataTable;
import org.brewchem.internal.Excerpt;
import org.brewchem.internal.NumberText;

/**
 * What a quantity usually is in its place, such as the concentration of a titrant or the calcium of
 * a water, and what it cannot be. A value outside the range gets a notice that names the typing
 * slip it may come from; a value that cannot be is refused. Immutable.
 *
 * <p>The ranges are wide, so that an unusual liquid gets no notice, but milligrams typed as grams
 * do. They are rows of data with their source, most of them a choice of this library.
 */
public final class UsualRange {

  /** Significant digits of what was perhaps meant, at most. */
  private static final int SHOWN_DIGITS = 4;

  /** A number of more digits was not typed: it was converted from another unit. */
  private static final int TYPED_DIGITS = 6;

  /** Of a converted number nobody knows how many digits were typed. */
  private static final int DIGITS_OF_CONVERTED = 2;

  private static final Map<String, UsualRange> LIBRARY = read();

  private final DataTable.Row row;
  private final OptionalDouble least;
  private final OptionalDouble lower;
  private final OptionalDouble upper;
  private final OptionalDouble greatest;
  private final List<Slip> slips;

  /** From what was typed to what was perhaps meant. */
  private record Slip(String of, double factor, double offset, String text) {

    double meant(double typed) {
      double x =
          switch (of) {
            case "x" -> typed;
            case "10^-x" -> Math.pow(10, -typed);
            case "-log10 x" -> -Math.log10(typed);
            default -> throw new IllegalStateException("typing-slips.csv: no function " + of);
          };
      return factor * x + offset;
    }
  }

  private UsualRange(DataTable.Row row, List<Slip> slips) {
    this.row = row;
    this.least = row.optionalNumber("least");
    this.lower = row.optionalNumber("lower");
    this.upper = row.optionalNumber("upper");
    this.greatest = row.optionalNumber("greatest");
    this.slips = List.copyOf(slips);
  }

  private static Map<String, UsualRange> read() {
    Map<String, List<Slip>> slips = new LinkedHashMap<>();
    for (DataTable.Row row : DataTable.read(UsualRange.class, "typing-slips.csv")) {
      slips
          .computeIfAbsent(row.text("quantity"), quantity -> new ArrayList<>())
          .add(
              new Slip(
                  row.text("of"), row.number("factor"), row.number("offset"), row.text("slip")));
    }
    Map<String, UsualRange> all = new LinkedHashMap<>();
    for (DataTable.Row row : DataTable.read(UsualRange.class, "usual-ranges.csv")) {
      String quantity = row.text("quantity");
      List<Slip> own = Optional.ofNullable(slips.remove(quantity)).orElse(List.of());
      if (all.put(quantity, new UsualRange(row, own)) != null) {
        throw new IllegalStateException(row.place() + ": " + quantity + " is there already");
      }
    }
    if (!slips.isEmpty()) {
      throw new IllegalStateException("typing-slips.csv: no range is there for " + slips.keySet());
    }
    return all;
  }

  /**
   * Returns the range of a quantity in its place.
   *
   * @param quantity the quantity, such as "concentration of a titrant"; {@link #all} lists them
   * @return the range
   * @throws IllegalArgumentException if there is none of that name
   */
  public static UsualRange named(String quantity) {
    return find(quantity)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "quantity: \""
                        + Excerpt.of(quantity)
                        + "\" has no usual range; all() lists those there"));
  }

  /**
   * Looks for the range of a quantity in its place.
   *
   * @param quantity the quantity, such as "manganese of a water"
   * @return the range; empty when there is none of that name
   * @throws IllegalArgumentException if the name is blank
   */
  public static Optional<UsualRange> find(String quantity) {
    return Optional.ofNullable(LIBRARY.get(Checks.notBlank("quantity", quantity)));
  }

  /**
   * Returns all ranges.
   *
   * @return an unmodifiable list, in the order of the data
   */
  public static List<UsualRange> all() {
    return List.copyOf(LIBRARY.values());
  }

  /**
   * Returns what it is the range of.
   *
   * @return the quantity in its place, such as "calcium of a water"
   */
  public String quantity() {
    return row.text("quantity");
  }

  /**
   * Returns the unit of all numbers of the range.
   *
   * @return the unit; empty when there is none
   */
  public String unit() {
    return row.text("unit");
  }

  /**
   * Returns where usual values begin.
   *
   * @return the bound in {@link #unit()}, itself usual; empty when there is none
   */
  public OptionalDouble lower() {
    return lower;
  }

  /**
   * Returns where usual values end.
   *
   * @return the bound in {@link #unit()}, itself usual; empty when there is none
   */
  public OptionalDouble upper() {
    return upper;
  }

  /**
   * Returns where the range comes from.
   *
   * @return the key of the source in docs/sources.md, "own-choice" for a choice of this library
   */
  public String sourceKey() {
    return row.text("source_key");
  }

  /**
   * Returns what the bounds rest on.
   *
   * @return a note; empty when there is none
   */
  public String note() {
    return row.text("note");
  }

  /**
   * Tells whether a value is usual.
   *
   * @param value the value, in {@link #unit()}
   * @return true within the usual range, its bounds included
   * @throws org.brewchem.OutOfRangeException if the value is not finite
   */
  public boolean holds(double value) {
    Checks.finite(quantity(), value, unit());
    return value >= lower.orElse(Double.NEGATIVE_INFINITY)
        && value <= upper.orElse(Double.POSITIVE_INFINITY);
  }

  /**
   * Tells whether a value can be.
   *
   * @param value the value, in {@link #unit()}
   * @return false outside the least and the greatest that are possible
   * @throws org.brewchem.OutOfRangeException if the value is not finite
   */
  public boolean isPossible(double value) {
    Checks.finite(quantity(), value, unit());
    return value >= least.orElse(-Double.MAX_VALUE) && value <= greatest.orElse(Double.MAX_VALUE);
  }

  /**
   * Refuses what cannot be.
   *
   * @param argument the name of the argument, for the message
   * @param value the value, in {@link #unit()}
   * @return the value, in {@link #unit()}
   * @throws org.brewchem.OutOfRangeException if the value is not finite or cannot be; the message
   *     names the slip that it may come from
   */
  public double possible(String argument, double value) {
    Objects.requireNonNull(argument, "argument");
    Checks.finite(argument, value, unit());
    if (!isPossible(value)) {
      throw Checks.outOfRange(
          argument,
          value,
          unit(),
          text(least, greatest) + slip(value).map(slip -> " (" + slip + ")").orElse(""));
    }
    return value + 0.0;
  }

  /**
   * Judges a value.
   *
   * @param subject what the value is, for the notice, such as "mass 2 of KHP"
   * @param value the value, in {@link #unit()}
   * @return a notice with the value, the usual range and the slip suspected; empty for a usual
   *     value
   * @throws IllegalArgumentException if the value is not finite
   */
  public Optional<Notice> judge(String subject, double value) {
    return holds(value)
        ? Optional.empty()
        : Optional.of(Notice.of(FigureCode.UNUSUAL_VALUE, subject, sentence(subject, value)));
  }

  /**
   * Judges a value of a row.
   *
   * @param subject what the value is, for the notice
   * @param row the row, counted from 1
   * @param value the value, in {@link #unit()}
   * @return a notice about the row; empty for a usual value
   * @throws IllegalArgumentException if the value is not finite
   */
  public Optional<Notice> judge(String subject, long row, double value) {
    return holds(value)
        ? Optional.empty()
        : Optional.of(
            Notice.ofRow(FigureCode.UNUSUAL_VALUE, subject, row, sentence(subject, value)));
  }

  private String sentence(String subject, double value) {
    return subject
        + ": "
        + withUnit(NumberText.plain(value))
        + " is unusual; usual is "
        + text()
        + slip(value).map(slip -> "; " + slip).orElse("");
  }

  /**
   * Names the typing slip that a value outside the range may come from.
   *
   * @param value the value, in {@link #unit()}
   * @return such as "perhaps mg typed as g: 0.4082 g", with about the digits that the value has,
   *     and two if it has more than six, for then it was converted; empty for a usual value, and
   *     where no slip that is known leads into the usual range
   * @throws IllegalArgumentException if the value is not finite
   */
  public Optional<String> slip(double value) {
    Checks.finite(quantity(), value, unit());
    if (holds(value)) {
      return Optional.empty();
    }
    for (Slip slip : slips) {
      double meant = slip.meant(value);
      if (Double.isFinite(meant) && holds(meant)) {
        return Optional.of(
            "perhaps " + slip.text + ": " + withUnit(NumberText.plain(rounded(slip, value))));
      }
    }
    return Optional.empty();
  }

  /** What was meant, to the decimal that changes with the last digit typed, or the next one. */
  private static double rounded(Slip slip, double typed) {
    BigDecimal decimal = NumberText.withoutLastBits(typed);
    double meant = slip.meant(typed);
    double change = slip.meant(typed + Math.pow(10, -Math.max(0, decimal.scale()))) - meant;
    if (decimal.precision() > TYPED_DIGITS || change == 0) {
      return new BigDecimal(meant).round(new MathContext(DIGITS_OF_CONVERTED)).doubleValue();
    }
    // The addend keeps the logarithm of an exact power of ten from falling below it.
    int decimals = -(int) Math.floor(Math.log10(Math.abs(change)) + 1e-6);
    return new BigDecimal(meant)
        .setScale(decimals, RoundingMode.HALF_UP)
        .round(new MathContext(SHOWN_DIGITS))
        .doubleValue();
  }

  /**
   * Returns the usual range as text.
   *
   * @return such as "0.005 to 2 mol/L"
   */
  public String text() {
    return text(lower, upper);
  }

  private String text(OptionalDouble from, OptionalDouble to) {
    if (to.isEmpty()) {
      return withUnit(NumberText.plain(from.getAsDouble())) + " or more";
    }
    if (from.isEmpty()) {
      return withUnit(NumberText.plain(to.getAsDouble())) + " or less";
    }
    String first = NumberText.plain(from.getAsDouble());
    return (unit().equals("pH") ? "pH " + first : first)
        + " to "
        + (unit().equals("pH")
            ? NumberText.plain(to.getAsDouble())
            : withUnit(NumberText.plain(to.getAsDouble())));
  }

  private String withUnit(String number) {
    if (unit().isEmpty()) {
      return number;
    }
    return unit().equals("pH") ? "pH " + number : number + " " + unit();
  }

  /** Prints the quantity and its usual range. */
  @Override
  public String toString() {
    return quantity() + ": " + text();
  }
}
