package org.brewchem.checks.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.concurrent.ExecutionException;
import org.junit.jupiter.api.Test;

/** A part of the million calls; {@link ManyThreads} by hand makes them all. */
class ManyThreadsTest {

  @Test
  void sixteenThreadsGetTheBitsOfOne() throws InterruptedException, ExecutionException {
    assertEquals(0, new ManyThreads().differences(16, 50_000));
  }
}
