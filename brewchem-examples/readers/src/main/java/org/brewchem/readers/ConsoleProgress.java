package org.brewchem.readers;

import java.io.Console;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import org.jspecify.annotations.Nullable;

/**
 * A bar on the terminal that shows how far a long run has come; nothing at all where there is no
 * terminal, such as in a pipe. Needs {@code me.tongfei:progressbar}. Mutable, for one thread.
 */
public final class ConsoleProgress implements Progress, AutoCloseable {

  private static final long WHOLE = 1000;

  private final @Nullable ProgressBar bar;

  private ConsoleProgress(@Nullable ProgressBar bar) {
    this.bar = bar;
  }

  /**
   * Starts a bar.
   *
   * @param task what is done, such as {@code waters.csv}
   * @return the progress, to be closed
   */
  public static ConsoleProgress of(String task) {
    return new ConsoleProgress(
        isTerminal()
            ? new ProgressBarBuilder().setTaskName(task).setInitialMax(WHOLE).build()
            : null);
  }

  /** The library draws into pipes too; from Java 22 a console may be none of a terminal. */
  private static boolean isTerminal() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException e) {
      return true;
    }
  }

  /**
   * Tells whether a bar is drawn.
   *
   * @return false without a terminal
   */
  public boolean isShown() {
    return bar != null;
  }

  @Override
  public void at(long rows, double shareOfFile) {
    if (bar != null) {
      bar.stepTo(Math.round(WHOLE * shareOfFile));
      bar.setExtraMessage(" " + rows + " rows");
    }
  }

  @Override
  public void close() {
    if (bar != null) {
      bar.close();
    }
  }
}
