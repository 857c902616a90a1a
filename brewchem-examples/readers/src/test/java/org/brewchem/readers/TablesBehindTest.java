package org.brewchem.readers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TablesBehindTest {

  private static Table table(double pH) {
    return Table.of(Column.of("pH", pH));
  }

  @Test
  void usesEachTableInOrderInAnotherThread() throws IOException {
    List<Double> used = new ArrayList<>();
    List<Thread> threads = new ArrayList<>();
    try (TablesBehind behind =
        TablesBehind.of(
            table -> {
              used.add(table.column("pH").value(0));
              threads.add(Thread.currentThread());
            })) {
      for (int i = 0; i < 50; i++) {
        behind.accept(table(i));
      }
    }
    assertEquals(50, used.size());
    assertEquals(used.stream().sorted().toList(), used);
    assertNotEquals(Thread.currentThread(), threads.get(0));
    assertEquals(1, threads.stream().distinct().count());
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void throwsWhatWasThrownForATableBefore(boolean reading) {
    IOException full = new IOException("no room");
    IllegalStateException own = new IllegalStateException("own");
    List<Double> used = new ArrayList<>();
    Exception thrown =
        assertThrows(
            Exception.class,
            () -> {
              try (TablesBehind behind =
                  TablesBehind.of(
                      table -> {
                        if (reading) {
                          throw full;
                        }
                        throw own;
                      })) {
                behind.accept(table(1));
                behind.accept(table(2));
                used.add(2.0);
              }
            });
    assertSame(reading ? full : own, thrown);
    assertEquals(List.of(), used);
  }

  @Test
  void throwsWhatWasThrownForTheLastTable() {
    IOException full = new IOException("no room");
    TablesBehind behind =
        TablesBehind.of(
            table -> {
              throw full;
            });
    assertSame(
        full,
        assertThrows(
            IOException.class,
            () -> {
              behind.accept(table(1));
              behind.close();
            }));
  }
}
