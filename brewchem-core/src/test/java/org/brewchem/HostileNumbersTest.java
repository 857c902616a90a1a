package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Numbers that no caller means, into every number that any public method takes: a refusal of this
 * library that says what was wrong, or a result without NaN and infinities. Nothing raw, nothing
 * silent. The objects around the number are found by reflection, from constants and factories.
 */
class HostileNumbersTest {

  private static final double[] NOT_NUMBERS = {
    Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY
  };

  private static final double[] ABSURD = {
    -0.0, Double.MIN_VALUE, -Double.MIN_VALUE, 1e308, -1e308, 1e100, -1e100, -1, 1e30, -1e30, 0
  };

  private static final int[] WHOLE = {Integer.MIN_VALUE, -1, 0, Integer.MAX_VALUE};

  private static final int LONGEST_MESSAGE = 500;

  /** Fewer would mean that the walk finds its objects no more. */
  private static final int LEAST_CALLS = 4500;

  private final ApiWalk walk = new ApiWalk();
  private final List<String> faults = new ArrayList<>();
  private final Set<String> unreached = new TreeSet<>();
  private int calls;

  private static boolean isReal(Class<?> type) {
    return type == double.class;
  }

  private static boolean isWhole(Class<?> type) {
    return type == int.class || type == long.class;
  }

  @Test
  void everyNumberOfEveryPublicMethodIsGuarded() {
    for (Class<?> type : ApiWalk.publicClasses()) {
      for (Executable entry : ApiWalk.entries(type)) {
        Class<?>[] parameters = entry.getParameterTypes();
        for (int i = 0; i < parameters.length; i++) {
          if (parameters[i] == double[].class || isReal(parameters[i]) || isWhole(parameters[i])) {
            attack(type, entry, i);
          }
        }
      }
    }
    assertEquals("", String.join("\n", faults));
    assertTrue(calls >= LEAST_CALLS, calls + " calls");
    assertEquals(NOT_REACHED, unreached, unreached.size() + " methods were not reached");
  }

  private void attack(Class<?> type, Executable entry, int place) {
    boolean isStatic = entry instanceof Constructor || Modifier.isStatic(entry.getModifiers());
    Optional<Object> target = isStatic ? Optional.of(this) : walk.sample(type, 0);
    Optional<Object[]> arguments = target.flatMap(any -> walk.arguments(entry, 0));
    if (arguments.isEmpty()) {
      unreached.add(ApiWalk.name(entry));
      return;
    }
    Class<?> parameter = entry.getParameterTypes()[place];
    if (isWhole(parameter)) {
      for (int number : WHOLE) {
        Object boxed = parameter == int.class ? (Object) number : (Object) (long) number;
        call(entry, target.get(), arguments.get(), place, boxed, false);
      }
      return;
    }
    for (double number : NOT_NUMBERS) {
      call(entry, target.get(), arguments.get(), place, of(parameter, number), true);
    }
    for (double number : ABSURD) {
      call(entry, target.get(), arguments.get(), place, of(parameter, number), false);
    }
  }

  private static Object of(Class<?> parameter, double number) {
    return parameter == double[].class
        ? (Object) new double[] {number, number, number}
        : (Object) number;
  }

  private void call(
      Executable entry,
      Object target,
      Object[] arguments,
      int place,
      Object number,
      boolean refused) {
    calls++;
    Object[] all = arguments.clone();
    all[place] = number;
    String shown = number instanceof double[] array ? Arrays.toString(array) : number.toString();
    String what = ApiWalk.name(entry) + " with " + shown + " as argument " + place;
    try {
      Object result = ApiWalk.invoke(entry, target, all);
      String text = text(result);
      if (refused && !isAccepted(ApiWalk.name(entry), place, number)) {
        faults.add(what + " is accepted: " + text);
      } else if (text.contains("NaN") || text.contains("Infinity")) {
        faults.add(what + " gives " + text);
      }
    } catch (InvocationTargetException thrown) {
      judge(what, thrown.getCause());
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(what, e);
    }
  }

  /** What a result prints, or that it cannot. */
  private static String text(@Nullable Object result) {
    try {
      return String.valueOf(result);
    } catch (RuntimeException e) {
      return "NaN or Infinity: printing throws " + e;
    }
  }

  private void judge(String what, Throwable thrown) {
    boolean typed =
        thrown.getClass() == IllegalArgumentException.class
            || thrown.getClass() == IllegalStateException.class
            || thrown.getClass().getName().startsWith("org.brewchem");
    String message = String.valueOf(thrown.getMessage());
    if (!typed
        || message.isBlank()
        || message.length() > LONGEST_MESSAGE
        || message.equals("null")) {
      faults.add(what + " throws " + thrown.getClass().getName() + ": " + message);
    }
  }

  /** What takes such a number on purpose: infinite degrees of freedom, a filler for a gap. */
  private static boolean isAccepted(String name, int place, Object number) {
    return ACCEPTED_INFINITE.contains(name + " " + place) && number.equals(Double.POSITIVE_INFINITY)
        || name.equals("Column.valuesOr[double]")
        // An array that is filled, whatever it holds.
        || name.startsWith("Equilibria.") && name.contains("Slopes");
  }

  private static final Set<String> ACCEPTED_INFINITE =
      Set.of(
          "UncertainValue.withDegreesOfFreedom[double] 0",
          "Source.of[String, double, double, double, String] 3",
          "Source.ofOneScatter[String, int, double] 2");

  /**
   * Methods of objects, or with arguments, that the walk does not find; tests of their own have
   * them.
   */
  private static final Set<String> NOT_REACHED =
      new TreeSet<>(
          Set.of(
              "BalanceFigure.number[Equilibria, double]",
              "ClosedForm.apply[double[]]",
              "Column.of[String, double[], BitSet]",
              "Determination.linearityCheck[int, long]",
              "Equilibrium.species[Component, int]",
              "StrongLacticAcid.chainOf[int]"));
}
