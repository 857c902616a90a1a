package org.brewchem.readers;

import java.io.Closeable;
import java.io.IOException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.brewchem.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * Uses tables in a thread of its own, one after the other, while the next one is read. Mutable, for
 * one thread; what it throws was thrown for a table before.
 */
public final class TablesBehind implements TableConsumer, Closeable {

  private final TableConsumer use;
  private final ExecutorService thread = Executors.newSingleThreadExecutor();
  private @Nullable Future<?> last;

  private TablesBehind(TableConsumer use) {
    this.use = use;
  }

  /**
   * Starts a thread.
   *
   * @param use what is done with each table, in that thread
   * @return a consumer to be closed
   */
  public static TablesBehind of(TableConsumer use) {
    return new TablesBehind(use);
  }

  /**
   * Waits for the table before, and hands this one on.
   *
   * @param table the next rows of the file
   * @throws IOException if a table before could not be passed on
   */
  @Override
  public void accept(Table table) throws IOException {
    await();
    last =
        thread.submit(
            () -> {
              use.accept(table);
              return null;
            });
  }

  /**
   * Waits for the last table and ends the thread.
   *
   * @throws IOException if a table could not be passed on
   */
  @Override
  public void close() throws IOException {
    try {
      await();
    } finally {
      thread.shutdown();
    }
  }

  private void await() throws IOException {
    Future<?> waited = last;
    last = null;
    if (waited == null) {
      return;
    }
    try {
      waited.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException reading) {
        throw reading;
      }
      if (e.getCause() instanceof RuntimeException own) {
        throw own;
      }
      throw new IOException("a table could not be used", e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while a table was used", e);
    }
  }
}
