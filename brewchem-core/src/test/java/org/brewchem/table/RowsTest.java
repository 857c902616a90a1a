package org.brewchem.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows are shared out in pieces of 1024. */
class RowsTest {

  private static final class Worked {
    final AtomicInteger workSpaces = new AtomicInteger();
    final Set<Thread> threads = ConcurrentHashMap.newKeySet();
    final AtomicIntegerArray times;
    final Failure[] failures;

    Worked(int size, int threadCount) {
      times = new AtomicIntegerArray(size);
      failures =
          Rows.run(
              size,
              threadCount,
              () -> {
                workSpaces.incrementAndGet();
                threads.add(Thread.currentThread());
                return index -> {
                  times.incrementAndGet(index);
                  return index % 1000 == 3 ? new Failure.Missing(index, "pH") : null;
                };
              });
    }
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "1, 4", "1023, 3", "1024, 3", "1025, 3", "5000, 1", "5000, 2", "5000, 7"})
  void everyRowIsWorkedOnceAndKeepsItsFailure(int size, int threads) {
    Worked worked = new Worked(size, threads);
    assertTrue(IntStream.range(0, size).allMatch(i -> worked.times.get(i) == 1));
    assertEquals(size, worked.failures.length);
    for (int i = 0; i < size; i++) {
      if (i % 1000 == 3) {
        assertEquals(new Failure.Missing(i, "pH"), worked.failures[i]);
      } else {
        assertNull(worked.failures[i]);
      }
    }
  }

  @Test
  void oneThreadAndFewRowsAreWorkedByTheCaller() {
    for (Worked worked : new Worked[] {new Worked(5000, 1), new Worked(1024, 3)}) {
      assertEquals(1, worked.workSpaces.get());
      assertEquals(Set.of(Thread.currentThread()), worked.threads);
    }
  }

  @Test
  void eachThreadHasAWorkSpaceAndEndsWithTheCalculation() throws InterruptedException {
    for (int size : new int[] {1025, 5000}) {
      Worked worked = new Worked(size, 3);
      assertEquals(3, worked.workSpaces.get());
      assertFalse(worked.threads.contains(Thread.currentThread()));
      for (Thread thread : worked.threads) {
        for (int i = 0; i < 20 && thread.isAlive(); i++) {
          thread.join(100);
        }
        assertFalse(thread.isAlive());
      }
    }
  }
}
