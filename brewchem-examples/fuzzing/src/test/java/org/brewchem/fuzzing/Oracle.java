package org.brewchem.fuzzing;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Supplier;
import org.brewchem.OutOfRangeException;

/** What may become of a text: a value, or a refusal of this library that names it. */
final class Oracle {

  private static final int LONGEST_MESSAGE = 500;
  private static final int NAMED = 12;
  private static final long LONGEST_NANOSECONDS = 10_000_000_000L;

  /** By the time of the processor: on a busy machine the clock goes on without the thread. */
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  private Oracle() {}

  static String text(byte[] input) {
    return new String(input, StandardCharsets.UTF_8);
  }

  /** Reads a text; empty if it is refused with a message that quotes it or names a number. */
  static <T> Optional<T> read(String text, Supplier<T> reader) {
    try {
      return tried(reader);
    } catch (OutOfRangeException e) {
      return Optional.empty();
    } catch (RuntimeException e) {
      String beginning = text.substring(0, Math.min(NAMED, text.length()));
      if (!e.getMessage().contains(beginning)) {
        throw new AssertionError("the message does not name \"" + beginning + "\"", e);
      }
      return Optional.empty();
    }
  }

  /** Asks for something; empty if it is refused. */
  static <T> Optional<T> ask(Supplier<T> asked) {
    try {
      return tried(asked);
    } catch (RuntimeException e) {
      return Optional.empty();
    }
  }

  /** Throws what the library may throw, and an error for anything else. */
  private static <T> Optional<T> tried(Supplier<T> asked) {
    long start = THREADS.getCurrentThreadCpuTime();
    try {
      return Optional.of(asked.get());
    } catch (RuntimeException e) {
      requireTyped(e);
      throw e;
    } finally {
      if (THREADS.getCurrentThreadCpuTime() - start > LONGEST_NANOSECONDS) {
        throw new AssertionError("took more than ten seconds");
      }
    }
  }

  private static void requireTyped(RuntimeException e) {
    String message = String.valueOf(e.getMessage());
    boolean typed =
        e.getClass() == IllegalArgumentException.class
            || e.getClass() == IllegalStateException.class
            || e.getClass().getName().startsWith("org.brewchem.");
    if (!typed || message.isBlank() || e.getMessage() == null) {
      throw new AssertionError("no refusal of this library", e);
    }
    requireShort(message, e);
  }

  static void requireShort(String message, RuntimeException cause) {
    if (message.length() > LONGEST_MESSAGE) {
      throw new AssertionError("a message of " + message.length() + " characters", cause);
    }
  }

  static void requireShort(String message) {
    requireShort(message, new IllegalArgumentException(message));
  }

  static void requireFinite(double number, Object of) {
    if (!Double.isFinite(number)) {
      throw new AssertionError(number + " of " + of);
    }
  }

  static void requireEqual(Object expected, Object found) {
    if (!expected.equals(found) || expected.hashCode() != found.hashCode()) {
      throw new AssertionError(expected + " came back as " + found);
    }
  }
}
