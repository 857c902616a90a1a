package org.brewchem.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.brewchem.figure.Notice;
import org.brewchem.internal.Excerpt;
import org.brewchem.units.LabUnit;
import org.brewchem.units.LabUnits;

/**
 * The headings of a table before a reader that knows some names: which columns it reads, which hold
 * the standard uncertainty of one that it reads, and which it passes over. Immutable.
 *
 * <p>A name may be spelled "sulphate" and "sulphur". The uncertainty of {@code calcium} stands in a
 * column {@code u(calcium)}.
 */
final class Headings {

  private static final String UNCERTAINTY = "u(";

  /** What may follow a name in another name, such as "calcium of the well". */
  private static final Pattern WORDS = Pattern.compile("([ '-][\\p{L}\\p{N}]+)+");

  /** Units that are words, in lower case. */
  private static final Set<String> UNITS =
      Stream.concat(
              LabUnits.VOLUME.units().stream().map(LabUnit::symbol), Stream.of("mg", "g", "ppm"))
          .map(symbol -> symbol.toLowerCase(Locale.ROOT))
          .collect(Collectors.toUnmodifiableSet());

  private final Map<String, Column> columns = new LinkedHashMap<>();
  private final Map<String, Column> uncertainties = new LinkedHashMap<>();
  private final List<String> used = new ArrayList<>();
  private final List<String> ignored = new ArrayList<>();
  private final List<Notice> notices = new ArrayList<>();

  /**
   * Reads the headings.
   *
   * @throws IllegalArgumentException if two columns are the same name in two spellings
   */
  Headings(Table table, List<String> known) {
    for (Column column : table.columns()) {
      String name = spelled(column.name());
      if (known.contains(name)) {
        Column other = columns.put(name, column);
        if (other != null) {
          throw sameThing(other, column);
        }
      }
    }
    for (Column column : table.columns()) {
      String name = spelled(column.name());
      String of = uncertaintyOf(name);
      if (columns.containsKey(of)) {
        Column other = uncertainties.put(of, column);
        if (other != null) {
          throw sameThing(other, column);
        }
      }
      if (columns.containsKey(name) || columns.containsKey(of)) {
        used.add(column.name());
      } else {
        passOver(column.name(), column.unit().isEmpty(), known);
      }
    }
    table.textNames().forEach(name -> passOver(name, true, known));
  }

  static IllegalArgumentException sameThing(Column one, Column other) {
    return new IllegalArgumentException(
        "columns \""
            + one.name()
            + "\" and \""
            + other.name()
            + "\" state the same thing; leave one out with Table.without");
  }

  private static String spelled(String name) {
    return name.replace("sulph", "sulf");
  }

  /** The name that a heading such as "u(calcium)" is about; empty for others. */
  private static String uncertaintyOf(String name) {
    return name.startsWith(UNCERTAINTY) && name.endsWith(")")
        ? name.substring(UNCERTAINTY.length(), name.length() - 1)
        : "";
  }

  private void passOver(String heading, boolean withoutUnit, List<String> known) {
    ignored.add(heading);
    String name = spelled(heading).toLowerCase(Locale.ROOT);
    String of = uncertaintyOf(name);
    String plain = of.isEmpty() ? name : of;
    for (String other : known) {
      int most = Math.min(2, other.length() / 3);
      if (distance(plain, other.toLowerCase(Locale.ROOT)) <= most) {
        notices.add(
            Notice.of(
                TableCode.HEADING_NEARLY_KNOWN,
                heading,
                "column \""
                    + heading
                    + "\" is not read; "
                    + (of.isEmpty() || !other.equalsIgnoreCase(of)
                        ? "a name that is read is \"" + other + "\""
                        : "the table has no column \"" + other + "\" for it")));
        return;
      }
    }
    known.stream()
        .filter(
            other ->
                withoutUnit && isWithUnitWrittenOtherwise(name, other.toLowerCase(Locale.ROOT)))
        .max(Comparator.comparingInt(String::length))
        .ifPresent(
            other ->
                notices.add(
                    Notice.of(
                        TableCode.HEADING_NEARLY_KNOWN,
                        heading,
                        "column \""
                            + heading
                            + "\" is not read; \""
                            + other
                            + "\" is read with its unit, if it has one, after one space in square"
                            + " brackets, as in \"calcium [mg/L]\"")));
  }

  /** Whether a known name, or its u, is followed by what is no name: "calcium (mg/l)". */
  private static boolean isWithUnitWrittenOtherwise(String heading, String known) {
    String rest =
        heading.startsWith(known)
            ? heading.substring(known.length())
            : heading.startsWith(UNCERTAINTY + known + ")")
                ? heading.substring(UNCERTAINTY.length() + known.length() + 1)
                : "";
    boolean named =
        rest.isEmpty()
            || Character.isLetterOrDigit(rest.charAt(0))
            || WORDS.matcher(rest).matches();
    return !named || UNITS.contains(rest.strip());
  }

  /** How many letters have to be put in, left out, replaced or swapped with the next. */
  static int distance(String one, String other) {
    int[][] least = new int[one.length() + 1][other.length() + 1];
    for (int i = 0; i <= one.length(); i++) {
      for (int j = 0; j <= other.length(); j++) {
        if (i == 0 || j == 0) {
          least[i][j] = i + j;
          continue;
        }
        boolean same = one.charAt(i - 1) == other.charAt(j - 1);
        int edit = Math.min(least[i - 1][j], least[i][j - 1]) + 1;
        least[i][j] = Math.min(edit, least[i - 1][j - 1] + (same ? 0 : 1));
        if (i > 1
            && j > 1
            && one.charAt(i - 1) == other.charAt(j - 2)
            && one.charAt(i - 2) == other.charAt(j - 1)) {
          least[i][j] = Math.min(least[i][j], least[i - 2][j - 2] + 1);
        }
      }
    }
    return least[one.length()][other.length()];
  }

  /** The column of a known name. */
  Optional<Column> find(String name) {
    return Optional.ofNullable(columns.get(name));
  }

  /** Reads the column of a known name, with its standard uncertainties if they have one. */
  Optional<Input> input(String name, Function<Column, Input> read) {
    return find(name)
        .map(read)
        .map(
            input ->
                Optional.ofNullable(uncertainties.get(name))
                    .map(read)
                    .map(input::withUncertainties)
                    .orElse(input));
  }

  /** Changes one of the inputs, such as to state its uncertainty. */
  static UnaryOperator<Input> change(String name, List<Input> inputs, UnaryOperator<Input> change) {
    if (inputs.stream().noneMatch(input -> input.name().equals(name))) {
      throw new IllegalArgumentException(
          "column: \""
              + Excerpt.of(name)
              + "\" is not possible; those that are read are "
              + Excerpt.of(inputs.stream().map(Input::name).toList().toString(), 300));
    }
    return input -> input.name().equals(name) ? change.apply(input) : input;
  }

  /** The names of the columns that are read, as the table spells them. */
  List<String> used() {
    return List.copyOf(used);
  }

  /** The names of the columns of numbers and of text that are not read. */
  List<String> ignored() {
    return List.copyOf(ignored);
  }

  List<Notice> notices() {
    return List.copyOf(notices);
  }

  /** What is notable about the headings, and then about the numbers that are read. */
  List<Notice> notices(Stream<Input> inputs) {
    return Stream.concat(notices.stream(), inputs.map(Input::unusual).flatMap(Optional::stream))
        .toList();
  }
}
