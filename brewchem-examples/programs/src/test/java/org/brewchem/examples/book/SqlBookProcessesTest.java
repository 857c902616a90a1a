package org.brewchem.examples.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import org.brewchem.quality.BatchRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Programs that are killed while they write, and two that write at once. The build does a tenth;
 * the whole is {@code -Dbook.kills=200 -Dbook.seconds=60}.
 */
class SqlBookProcessesTest {

  private static final int KILLS = Integer.getInteger("book.kills", 10);
  private static final int SECONDS = Integer.getInteger("book.seconds", 5);

  @TempDir private Path folder;

  private final Random random = new Random(20_261_126);

  private Process writer(Path book, String prefix, int milliseconds) throws IOException {
    // Else each kill leaves an unpacked library in the temporary folder of the machine.
    Path unpacked = Files.createDirectories(folder.resolve("unpacked"));
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-Dorg.sqlite.tmpdir=" + unpacked,
            "-cp",
            System.getProperty("java.class.path"),
            Writer.class.getName(),
            book.toString(),
            prefix,
            String.valueOf(milliseconds))
        .redirectError(ProcessBuilder.Redirect.appendTo(folder.resolve("errors").toFile()))
        .start();
  }

  private String errors() {
    try {
      return Files.readString(folder.resolve("errors"));
    } catch (IOException e) {
      return e.toString();
    }
  }

  private static BufferedReader output(Process process) {
    return new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  /** Every batch acknowledged is there, and each holds the numbers of its own name. */
  private static int check(Path path, List<String> acknowledged) throws IOException {
    try (SqlBook book = SqlBook.open(path, Writer.FIGURES)) {
      assertEquals(List.of(), book.problems());
      Map<String, BatchRecord> held = new HashMap<>();
      for (BatchRecord record : book.book().entries()) {
        int number = Integer.parseInt(record.batch().replaceAll("^.*-", ""));
        assertEquals(Writer.batch(record.batch(), number), record);
        held.put(record.batch(), record);
      }
      for (String name : acknowledged) {
        assertTrue(held.containsKey(name), name + " was acknowledged and is lost");
      }
      return held.size();
    }
  }

  @Test
  void nothingAcknowledgedIsLostWhenAProgramIsKilled() throws Exception {
    Path path = folder.resolve("killed.sqlite");
    SqlBook.open(path, Writer.FIGURES).close();
    List<String> acknowledged = new ArrayList<>();
    int whileWriting = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      Process process = writer(path, "K" + kill + "-", 60_000);
      try (BufferedReader lines = output(process)) {
        assertEquals("open", lines.readLine());
        CompletableFuture<Void> killed =
            CompletableFuture.runAsync(
                () -> {
                  try {
                    Thread.sleep(random.nextInt(500), random.nextInt(999_999));
                  } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                  }
                  // By its handle: the process itself would close the stream that is being read.
                  process.toHandle().destroyForcibly();
                });
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
          // The last line may be cut short.
          if (line.matches("K" + kill + "-[0-9]+")) {
            acknowledged.add(line);
          }
        }
        killed.get();
      }
      assertTrue(process.waitFor() != 0, "it ended by itself");
      // A number that was cut short names an earlier batch, which is there too.
      whileWriting += Files.exists(folder.resolve("killed.sqlite-journal")) ? 1 : 0;
      check(path, acknowledged);
    }
    System.out.printf(
        "%d kills, %d of them within a transaction, %d batches acknowledged, %d held%n",
        KILLS, whileWriting, acknowledged.size(), check(path, acknowledged));
    assertTrue(acknowledged.size() > 0);
  }

  @Test
  void twoProgramsWriteAtOnce() throws Exception {
    Path path = folder.resolve("shared.sqlite");
    SqlBook.open(path, Writer.FIGURES).close();
    Process one = writer(path, "one-", 1000 * SECONDS);
    Process other = writer(path, "other-", 1000 * SECONDS);
    CompletableFuture<List<String>> ofOther =
        CompletableFuture.supplyAsync(() -> output(other).lines().toList());
    List<String> acknowledged = new ArrayList<>(output(one).lines().toList());
    int ofOne = acknowledged.size() - 1;
    acknowledged.addAll(ofOther.get());
    acknowledged.removeIf("open"::equals);
    assertEquals(0, one.waitFor(), this::errors);
    assertEquals(0, other.waitFor(), this::errors);
    assertEquals(acknowledged.size(), check(path, acknowledged));
    assertTrue(ofOne > 0 && acknowledged.size() > ofOne, ofOne + " and " + acknowledged.size());
    System.out.printf(
        "%d s, %d batches by one program, %d by the other%n",
        SECONDS, ofOne, acknowledged.size() - ofOne);
  }
}
