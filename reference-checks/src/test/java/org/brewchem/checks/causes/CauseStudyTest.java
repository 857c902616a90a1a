package org.brewchem.checks.causes;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A tenth of the study of likely causes, and the whole as it is reported. */
class CauseStudyTest {

  /** Two standard deviations of the difference of two shares of 600 pairs. */
  private static final double SCATTER = 0.05;

  private static void holds(List<CauseCell> all, double scatter) {
    for (double size : CausePair.SIZES) {
      List<CauseCell> cells = all.stream().filter(cell -> cell.size() == size).toList();
      assertEquals(SimulatedCause.CAUSES.size(), cells.size());
      for (String place : new String[] {"first", "first_two"}) {
        double rules = CauseCell.share(cells, place);
        for (String reader : new String[] {"ideal_", "told_"}) {
          double ideal = CauseCell.share(cells, reader + place);
          assertTrue(
              rules >= ideal - CauseStudy.MOST_BELOW - scatter,
              size + " u, " + place + ": " + rules + " against " + reader + ideal);
        }
      }
      int likely = CauseCell.sum(cells, "likely");
      int right = CauseCell.sum(cells, "likely_right");
      assertTrue(
          right >= (CauseStudy.LEAST_RIGHT_OF_LIKELY - scatter) * likely,
          size + " u, likely: " + right + " of " + likely);
    }
    CauseCell quiet = all.get(all.size() - 1);
    assertEquals("none", quiet.cause());
    double silent = CauseCell.share(List.of(quiet), CauseCell.NOTHING);
    assertTrue(
        1 - silent <= CauseStudy.MOST_NAMED_WITHOUT_CAUSE + (scatter > 0 ? 0.015 : 0),
        "silent without a cause: " + silent);
  }

  @Test
  void aTenthHoldsWhatIsRequired() {
    holds(CauseStudy.run(CauseStudy.TENTH), SCATTER);
  }

  @Test
  void theWholeHoldsWhatIsRequired() {
    holds(CauseStudy.reported(), 0);
  }

  @Test
  void thePageHasTheTablesOfTheReport() throws IOException {
    Path page = Path.of("../docs/quality.md");
    String text = Files.readString(page, StandardCharsets.UTF_8);
    assertEquals(CauseTables.into(text, CauseStudy.reported()), text);
  }
}
