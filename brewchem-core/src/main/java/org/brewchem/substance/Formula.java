package org.brewchem.substance;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;
import org.brewchem.quantity.MolarMass;
import org.jspecify.annotations.Nullable;

/**
 * A chemical formula, read strictly from text: elements with counts, round or square brackets,
 * water of hydration after a point ({@code CaSO4.2H2O} or {@code CaSO4·2H2O}), and a charge at the
 * end ({@code Na+}, {@code SO4^2-}, {@code SO4-2}, {@code SO4^-2}).
 *
 * <p>{@link #text()} is in IUPAC's notation, {@code Ca2+} or {@code SO42-}, as species are named
 * everywhere in the library. On paper a raised charge shows what belongs to it; in plain text the
 * digit does not: {@code Ca2+} is one calcium with two charges or two with one, {@code SO42-} four
 * oxygens or forty-two. A formula, from which a molar mass is computed, must not be guessed.
 * Therefore a bare sign is refused behind an element with a count alone and behind a count of two
 * digits: write {@code Ca^2+} or {@code Ca2^+}. A bare sign behind a count of one digit in a longer
 * formula is a single charge: {@code HCO3-}.
 *
 * <p>The molar mass of an ion is that of its atoms; the electrons are neglected.
 *
 * <p>Two formulas are equal when they hold the same atoms and the same charge, however written.
 */
public final class Formula {

  private final String text;
  private final Map<Element, Integer> counts;
  private final int charge;

  private Formula(String text, Map<Element, Integer> counts, int charge) {
    this.text = text;
    // In the order of the formula: Map.copyOf has another in each run, and sums would follow it.
    this.counts = Collections.unmodifiableMap(new LinkedHashMap<>(counts));
    this.charge = charge;
  }

  /**
   * Reads a formula.
   *
   * @param text the formula, such as "CaSO4.2H2O", "Ca(OH)2" or "HPO4^2-"
   * @return the formula
   * @throws IllegalArgumentException if the text is not a formula, naming the position (from 1) and
   *     what was expected there; or if an element is not in the table of atomic weights
   * @throws org.brewchem.OutOfRangeException if brackets are nested more than 20 deep, or an
   *     element has more than a million atoms
   */
  public static Formula parse(String text) {
    Objects.requireNonNull(text, "text");
    return new Reader(text).read();
  }

  /**
   * Returns the formula as it was written, except for the charge, which is in IUPAC's notation.
   *
   * @return the text, such as "CaSO4.2H2O" or "SO42-"
   */
  public String text() {
    return text;
  }

  /**
   * Returns the charge number.
   *
   * @return the charge: 0 for a neutral substance, -2 for sulfate
   */
  public int charge() {
    return charge;
  }

  /**
   * Returns how many atoms of an element the formula holds, water of hydration included.
   *
   * @param element the element
   * @return the count, 0 when the element does not occur
   */
  public int count(Element element) {
    Objects.requireNonNull(element, "element");
    return counts.getOrDefault(element, 0);
  }

  /**
   * Returns the atoms of the formula, water of hydration included.
   *
   * @return an unmodifiable map from element to count
   */
  public Map<Element, Integer> counts() {
    return counts;
  }

  /**
   * Returns the molar mass: the exact sum of the abridged atomic weights of 2021.
   *
   * @return the molar mass
   */
  public MolarMass molarMass() {
    BigDecimal sum = BigDecimal.ZERO;
    for (Map.Entry<Element, Integer> entry : counts.entrySet()) {
      sum = sum.add(entry.getKey().weight().multiply(BigDecimal.valueOf(entry.getValue())));
    }
    return MolarMass.ofGramsPerMole(sum.doubleValue());
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Formula other && charge == other.charge && counts.equals(other.counts);
  }

  @Override
  public int hashCode() {
    return 31 * counts.hashCode() + charge;
  }

  /** Returns {@link #text()}. */
  @Override
  public String toString() {
    return text;
  }

  /** A reader that walks once over the text. */
  private static final class Reader {

    private static final int LARGEST_COUNT = 999;
    private static final int LARGEST_CHARGE = 9;
    private static final int DEEPEST_NESTING = 20;
    private static final int MOST_ATOMS = 1_000_000;

    private final String text;
    private int position;
    private int nesting;

    Reader(String text) {
      this.text = text;
    }

    Formula read() {
      Map<Element, Integer> counts = new LinkedHashMap<>(readGroup('\0', 1));
      while (!atEnd() && (peek() == '.' || peek() == '·')) {
        position++;
        int start = position;
        int multiplier = readCount();
        if (!atEnd() && peek() == '.' && position > start) {
          throw error("a whole number of parts; write the formula with whole numbers");
        }
        readGroup('\0', multiplier).forEach((element, count) -> add(counts, element, count));
      }
      String uncharged = text.substring(0, position);
      int charge = readCharge();
      if (!atEnd()) {
        throw error("an element, a bracket, a charge or the end");
      }
      return new Formula(uncharged + SpeciesName.charge(charge), counts, charge);
    }

    private Map<Element, Integer> readGroup(char closing, int multiplier) {
      Map<Element, Integer> counts = new LinkedHashMap<>();
      int start = position;
      while (!atEnd()) {
        char next = peek();
        Map<Element, Integer> part;
        if (next == '(' || next == '[') {
          Checks.inRange("nested brackets of a formula", ++nesting, "", 0, DEEPEST_NESTING);
          position++;
          part = readGroup(next == '(' ? ')' : ']', 1);
          position++;
          nesting--;
        } else if (next >= 'A' && next <= 'Z') {
          part = Map.of(readElement(), 1);
        } else {
          break;
        }
        int count = readCount();
        part.forEach((element, n) -> add(counts, element, (long) n * count));
      }
      if (position == start) {
        throw error("an element or a bracket");
      }
      if (closing != '\0' && (atEnd() || peek() != closing)) {
        throw error("\"" + closing + "\"");
      }
      counts.replaceAll((element, count) -> atoms(element, (long) count * multiplier));
      return counts;
    }

    private static void add(Map<Element, Integer> counts, Element element, long more) {
      counts.merge(element, atoms(element, more), (n, m) -> atoms(element, (long) n + m));
    }

    private static int atoms(Element element, long count) {
      return (int) Checks.inRange("atoms of " + element.name(), (double) count, "", 1, MOST_ATOMS);
    }

    private Element readElement() {
      int start = position;
      position++;
      if (!atEnd() && peek() >= 'a' && peek() <= 'z') {
        position++;
      }
      String symbol = text.substring(start, position);
      return Element.find(symbol)
          .orElseThrow(
              () -> {
                position = start;
                return error("an element of the table of atomic weights, not \"" + symbol + "\"");
              });
    }

    private int readCount() {
      int start = position;
      int count = readDigits(LARGEST_COUNT);
      if (position > start && (count == 0 || text.charAt(start) == '0')) {
        position = start;
        throw error("a count without a leading zero");
      }
      return position == start ? 1 : count;
    }

    private int readDigits(int largest) {
      int start = position;
      int number = 0;
      while (!atEnd() && peek() >= '0' && peek() <= '9') {
        number = 10 * number + (peek() - '0');
        if (number > largest) {
          position = start;
          throw error("a number up to " + largest);
        }
        position++;
      }
      return number;
    }

    private int readCharge() {
      if (atEnd()) {
        return 0;
      }
      boolean raised = peek() == '^';
      if (raised) {
        position++;
        int start = position;
        int size = readDigits(LARGEST_CHARGE);
        if (position > start) {
          return size * readSign();
        }
      } else if (isSign(peek()) && couldBeCountOrCharge()) {
        throw error(
            "a charge that cannot be taken for a count; write "
                + Excerpt.of(text.substring(0, position - 1) + "^" + text.substring(position - 1))
                + " or "
                + Excerpt.of(text.substring(0, position) + "^" + peek()));
      }
      int sign = readSign();
      int start = position;
      int size = readDigits(LARGEST_CHARGE);
      return position == start ? sign : sign * size;
    }

    private boolean couldBeCountOrCharge() {
      return position == text.length() - 1
          && text.substring(0, position).matches("[A-Z][a-z]?[0-9]|.*[0-9][2-9]");
    }

    private int readSign() {
      if (atEnd() || !isSign(peek())) {
        throw error("a charge, such as + or -2");
      }
      return text.charAt(position++) == '+' ? 1 : -1;
    }

    private static boolean isSign(char character) {
      return character == '+' || character == '-';
    }

    private boolean atEnd() {
      return position >= text.length();
    }

    private char peek() {
      return text.charAt(position);
    }

    private IllegalArgumentException error(String expected) {
      String found = atEnd() ? "the end" : "\"" + peek() + "\"";
      return new IllegalArgumentException(
          "formula \""
              + Excerpt.of(text)
              + "\", position "
              + (position + 1)
              + ": "
              + found
              + " is not possible; expected "
              + expected);
    }
  }
}
