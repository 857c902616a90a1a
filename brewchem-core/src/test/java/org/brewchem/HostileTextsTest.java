package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Modifier;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Texts, lists, maps and arrays that no caller means, into every public method that takes one: a
 * refusal of this library in at most 500 characters, or a result without NaN and infinities, within
 * ten seconds.
 */
class HostileTextsTest {

  private static final int LONGEST_MESSAGE = 500;
  private static final long LONGEST_NANOSECONDS = 10_000_000_000L;

  /** Fewer would mean that the walk finds its objects no more. */
  private static final int LEAST_CALLS = 4500;

  private static final List<String> TEXTS =
      List.of(
          "",
          " ",
          "\t\n",
          "NaN",
          "Infinity",
          "1e999",
          "1e999 mg/L",
          "\u22125",
          "5,3 mg/l",
          "--5",
          "0x1p3",
          "\u0000",
          "a\ud800b",
          "\u202e8.2 Hp",
          "[mg/L",
          "calcium [mg/L] [mg/L]",
          "H2O".repeat(2000),
          "(".repeat(20_000),
          "(".repeat(10_000) + "H" + ")2".repeat(10_000),
          "x".repeat(5_000_000));

  private final ApiWalk walk = new ApiWalk();
  private final List<String> faults = new ArrayList<>();
  private int calls;

  @Test
  void everyTextAndCollectionIsGuarded() {
    for (Class<?> type : ApiWalk.publicClasses()) {
      for (Executable entry : ApiWalk.entries(type)) {
        Class<?>[] parameters = entry.getParameterTypes();
        for (int i = 0; i < parameters.length; i++) {
          if (ApiWalk.name(entry).startsWith("Water.reported[")) {
            continue; // Its function, of contents to contents, is found by its raw type alone.
          }
          for (Object hostile : hostile(parameters[i], entry.getGenericParameterTypes()[i])) {
            call(type, entry, i, hostile);
          }
        }
      }
    }
    assertEquals("", String.join("\n", faults));
    assertTrue(calls >= LEAST_CALLS, calls + " calls");
  }

  private List<?> hostile(Class<?> parameter, Type generic) {
    if (parameter == String.class || parameter == CharSequence.class) {
      return TEXTS;
    }
    if (parameter == List.class || parameter == Collection.class) {
      return List.of(List.of(), Collections.singletonList(null), Collections.nCopies(1000, null));
    }
    if (parameter == Map.class) {
      Map<Object, Object> nulls = new LinkedHashMap<>();
      nulls.put(null, null);
      Map<Object, Object> strange = new LinkedHashMap<>();
      strange.put("x".repeat(100_000), List.of());
      boolean ofAnything = generic.getTypeName().equals("java.util.Map<java.lang.String, ?>");
      return ofAnything ? List.of(Map.of(), nulls, strange) : List.of(Map.of(), nulls);
    }
    if (parameter == double[].class) {
      return List.of(new double[0], new double[1], new double[100_000]);
    }
    if (parameter.isArray() && !parameter.getComponentType().isPrimitive()) {
      return walk.sample(parameter.getComponentType(), 1)
          .map(element -> List.of(filled(parameter, 0, null), filled(parameter, 2, null)))
          .orElse(List.of());
    }
    return List.of();
  }

  private static Object filled(Class<?> array, int length, @Nullable Object element) {
    Object[] made = (Object[]) Array.newInstance(array.getComponentType(), length);
    Arrays.fill(made, element);
    return made;
  }

  private void call(Class<?> type, Executable entry, int place, Object hostile) {
    boolean isStatic = entry instanceof Constructor || Modifier.isStatic(entry.getModifiers());
    Optional<Object> target = isStatic ? Optional.of(this) : walk.sample(type, 0);
    Optional<Object[]> arguments = target.flatMap(any -> walk.arguments(entry, 0));
    if (arguments.isEmpty()) {
      return;
    }
    calls++;
    Object[] all = arguments.get().clone();
    all[place] = hostile;
    String what = ApiWalk.name(entry) + " with " + shown(hostile) + " as argument " + place;
    long start = System.nanoTime();
    try {
      String text = String.valueOf(ApiWalk.invoke(entry, target.get(), all));
      if (!(hostile instanceof String given && given.matches("NaN|Infinity"))
          && (text.contains("NaN") || text.contains("Infinity"))) {
        faults.add(what + " gives " + text.substring(0, Math.min(200, text.length())));
      }
    } catch (InvocationTargetException e) {
      judge(what, e.getCause());
    } catch (ReflectiveOperationException | RuntimeException e) {
      faults.add(what + ": " + e);
    }
    if (System.nanoTime() - start > LONGEST_NANOSECONDS) {
      faults.add(what + " takes more than ten seconds");
    }
  }

  private void judge(String what, Throwable thrown) {
    String message = String.valueOf(thrown.getMessage());
    boolean typed =
        thrown.getClass() == IllegalArgumentException.class
            || thrown.getClass() == IllegalStateException.class
            || thrown.getClass() == NullPointerException.class
            || thrown.getClass().getName().startsWith("org.brewchem");
    if (!typed || message.isBlank() || message.length() > LONGEST_MESSAGE) {
      String cut = message.substring(0, Math.min(200, message.length()));
      faults.add(
          what + " throws " + thrown.getClass().getName() + " of " + message.length() + ": " + cut);
    }
  }

  private static String shown(Object hostile) {
    String text =
        hostile instanceof double[] numbers
            ? numbers.length + " zeros"
            : hostile instanceof Object[] objects
                ? objects.length + " objects"
                : hostile.toString();
    return text.length() > 40 ? text.substring(0, 20) + " ... of " + text.length() : text;
  }
}
