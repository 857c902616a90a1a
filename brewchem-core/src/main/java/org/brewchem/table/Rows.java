package org.brewchem.table;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Runs a calculation over the rows of a table, in pieces that the threads take in turn. Each thread
 * has one work space, which starts afresh with each row, so that the results do not depend on them.
 */
final class Rows {

  private static final int PIECE = 1024;

  /** The calculation of one row, with a work space of its own. It stores what it finds itself. */
  interface Work {
    /** Returns null, or why the row has no result. */
    @Nullable Failure row(int index);
  }

  private Rows() {}

  /**
   * Runs all rows.
   *
   * @return for each row null or its failure
   */
  static @Nullable Failure[] run(int size, int threads, Supplier<Work> work) {
    @Nullable Failure[] failures = new @Nullable Failure[size];
    int pieces = (size + PIECE - 1) / PIECE;
    if (threads == 1 || pieces < 2) {
      Work all = work.get();
      for (int piece = 0; piece < pieces; piece++) {
        run(piece, size, all, failures);
      }
      return failures;
    }
    AtomicInteger next = new AtomicInteger();
    Runnable worker =
        () -> {
          Work own = work.get();
          for (int p = next.getAndIncrement(); p < pieces; p = next.getAndIncrement()) {
            run(p, size, own, failures);
          }
        };
    ForkJoinPool pool = new ForkJoinPool(threads);
    try {
      List<ForkJoinTask<?>> tasks = new ArrayList<>();
      for (int t = 0; t < threads; t++) {
        tasks.add(pool.submit(worker));
      }
      tasks.forEach(ForkJoinTask::join);
    } finally {
      pool.shutdown();
    }
    return failures;
  }

  private static void run(int piece, int size, Work work, @Nullable Failure[] failures) {
    int end = Math.min(size, (piece + 1) * PIECE);
    for (int i = piece * PIECE; i < end; i++) {
      failures[i] = work.row(i);
    }
  }
}
