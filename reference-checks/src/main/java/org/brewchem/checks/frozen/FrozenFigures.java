package org.brewchem.checks.frozen;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.brewchem.uncertainty.UncertainValue;

/** The figures that the adapter of a room computes, in the order in which it states them. */
final class FrozenFigures {

  private final List<FrozenFigure> all = new ArrayList<>();
  private final Set<String> keys = new HashSet<>();

  /** Returns all figures stated so far. */
  List<FrozenFigure> all() {
    return List.copyOf(all);
  }

  /** Begins, or goes on with, an input. */
  Of of(String input) {
    return new Of(input);
  }

  /** The figures of one input. */
  final class Of {
    private final String input;

    private Of(String input) {
      this.input = input;
    }

    private void add(String figure, String unit, String value, String standardUncertainty) {
      FrozenFigure added = new FrozenFigure(input, figure, unit, value, standardUncertainty);
      if (!keys.add(added.key())) {
        throw new IllegalStateException(added.key() + " is stated twice");
      }
      all.add(added);
    }

    /** States a number; the unit is empty if it has none. */
    void number(String figure, String unit, double value) {
      add(figure, unit, FrozenFigure.digits(value), "");
    }

    /** States a number that may be missing. */
    void number(String figure, String unit, OptionalDouble value) {
      if (value.isPresent()) {
        number(figure, unit, value.getAsDouble());
      } else {
        text(figure, "missing");
      }
    }

    /** States a number of something that may be missing. */
    <T> void number(String figure, String unit, Optional<T> of, ToDoubleFunction<T> value) {
      number(figure, unit, of.stream().mapToDouble(value).findFirst());
    }

    /** States a number with its standard uncertainty. */
    void uncertain(String figure, String unit, double value, double standardUncertainty) {
      add(figure, unit, FrozenFigure.digits(value), FrozenFigure.digits(standardUncertainty));
    }

    /** States a number with its standard uncertainty, in the unit that the library gives it in. */
    void uncertain(String figure, String unit, UncertainValue value) {
      uncertain(figure, unit, value.value(), value.standardUncertainty());
    }

    /** States a number whose standard uncertainty may be missing. */
    void uncertain(String figure, String unit, double value, OptionalDouble standardUncertainty) {
      if (standardUncertainty.isPresent()) {
        uncertain(figure, unit, value, standardUncertainty.getAsDouble());
      } else {
        number(figure, unit, value);
      }
    }

    /** States words. */
    void text(String figure, String words) {
      add(figure, "", words, "");
    }

    /** States a verdict or a kind. */
    void text(String figure, Enum<?> constant) {
      text(figure, words(constant));
    }

    /** States verdicts or kinds, or that there are none. */
    void text(String figure, Collection<? extends Enum<?>> constants) {
      text(
          figure,
          constants.isEmpty()
              ? "none"
              : constants.stream().map(FrozenFigures::words).collect(Collectors.joining("; ")));
    }

    /** States whether something is so. */
    void text(String figure, boolean is) {
      text(figure, is ? "yes" : "no");
    }

    /**
     * States whether something can be computed, and if so its figures. That the library refuses an
     * input is a result too.
     */
    <T> void attempt(String what, Supplier<T> computation, Consumer<T> figures) {
      Optional<T> result;
      try {
        result = Optional.of(computation.get());
      } catch (IllegalArgumentException | IllegalStateException | ArithmeticException e) {
        result = Optional.empty();
      }
      text(what + ": possible", result.isPresent());
      result.ifPresent(figures);
    }
  }

  private static String words(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
