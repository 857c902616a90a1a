package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Null for any argument of the API is refused, and the message names the argument. */
class NullPolicyTest {

  /** Fewer would mean that the walk finds its objects no more. */
  private static final int LEAST_CALLS = 1250;

  /** Methods of which no samples go together that the walk finds; may only become fewer. */
  private static final int MOST_UNREACHED = 115;

  private final ApiWalk walk = new ApiWalk();
  private final List<String> faults = new ArrayList<>();
  private final Set<String> unreached = new TreeSet<>();
  private int calls;

  @Test
  void nullIsRefusedByName() throws ReflectiveOperationException {
    for (Class<?> type : ApiWalk.publicClasses()) {
      for (Executable entry : ApiWalk.entries(type)) {
        Parameter[] parameters = entry.getParameters();
        for (int i = 0; i < parameters.length; i++) {
          if (!parameters[i].getType().isPrimitive() && !mayBeNull(entry, parameters[i])) {
            check(type, entry, i);
          }
        }
      }
    }
    assertEquals("", String.join("\n", faults));
    assertTrue(calls >= LEAST_CALLS, calls + " calls");
    assertTrue(
        unreached.size() <= MOST_UNREACHED,
        () -> unreached.size() + " methods were not reached: " + String.join("\n", unreached));
  }

  private static boolean mayBeNull(Executable entry, Parameter parameter) {
    return entry.getName().equals("equals")
        || parameter.getAnnotatedType().isAnnotationPresent(Nullable.class);
  }

  private void check(Class<?> type, Executable entry, int index)
      throws ReflectiveOperationException {
    Parameter parameter = entry.getParameters()[index];
    assertTrue(parameter.isNamePresent(), "compile with -parameters");
    boolean isStatic = entry instanceof Constructor || Modifier.isStatic(entry.getModifiers());
    Optional<Object> target = isStatic ? Optional.of(this) : walk.sample(type, 0);
    Optional<Object[]> arguments = target.flatMap(any -> walk.arguments(entry, 0));
    if (arguments.isEmpty()) {
      unreached.add(ApiWalk.name(entry));
      return;
    }
    calls++;
    Object[] all = arguments.get().clone();
    all[index] = null;
    String place = ApiWalk.name(entry) + ", " + parameter.getName() + ": ";
    try {
      if (entry instanceof Method method) {
        method.setAccessible(true); // compareTo is public in a class that is not
      }
      ApiWalk.invoke(entry, target.get(), all);
      faults.add(place + "accepted");
    } catch (InvocationTargetException e) {
      Throwable cause = e.getCause();
      boolean named =
          cause instanceof NullPointerException && names(cause.getMessage(), entry, parameter);
      if (named) {
        return;
      }
      if (refuses(entry, target.get(), arguments.get())) {
        // It has not come to the null: the samples do not go together.
        unreached.add(ApiWalk.name(entry));
      } else {
        faults.add(place + cause);
      }
    }
  }

  private static boolean refuses(Executable entry, Object target, Object[] arguments)
      throws ReflectiveOperationException {
    try {
      ApiWalk.invoke(entry, target, arguments);
      return false;
    } catch (InvocationTargetException e) {
      return true;
    }
  }

  /** By its name, or by its type if no other argument is of it, or in the machine's words. */
  private static boolean names(@Nullable String message, Executable entry, Parameter parameter) {
    Class<?> type = parameter.getType();
    boolean alone =
        Stream.of(entry.getParameterTypes()).filter(other -> other == type).count() == 1;
    if (message == null) {
      return false;
    }
    if (message.startsWith("Cannot ")) {
      return message.endsWith("because \"" + parameter.getName() + "\" is null");
    }
    return letters(message).contains(letters(parameter.getName()))
        || alone && letters(message).contains(letters(type.getSimpleName()));
  }

  /** "end point" is endPoint. */
  private static String letters(String text) {
    return text.replace(" ", "").toLowerCase(Locale.ROOT);
  }
}
