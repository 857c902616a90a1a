package org.brewchem.checks.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.brewchem.checks.CsvTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A tenth of the study of measured buffers, held against what is required and what is reported. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BufferStudyTest {

  /** Cells of the report that miss what is required, named so that none joins them in silence. */
  private static final List<String> MISSED = List.of();

  /** Faults of which the report notices too little. */
  private static final List<String> MISSED_FAULTS =
      List.of(
          "STRAY_READING,stated", "STRAY_READING,unstated", "TITRANT,stated", "TITRANT,unstated");

  /** How far a share may have moved since the report was written: 4 of 400. */
  private static final double UNMOVED = 0.01;

  /** Standard deviations that a share of a tenth may lie below its bound by chance. */
  private static final double BY_CHANCE = 2.6;

  private final Map<BufferStudy.Cell, BufferTally> tenths = new ConcurrentHashMap<>();

  static List<BufferStudy.Cell> stated() {
    return BufferStudy.cells().stream().filter(BufferStudy.Cell::told).toList();
  }

  private BufferTally tenth(BufferStudy.Cell cell) {
    return tenths.computeIfAbsent(
        cell, key -> BufferTally.of(key.kind(), key.disturbance(), key.told(), BufferStudy.TENTH));
  }

  @ParameterizedTest
  @MethodSource("stated")
  void aTenthCoversWhatIsRequiredOrWhatIsReportedToBeMissed(BufferStudy.Cell cell) {
    CsvTable.Line line = BufferReport.line(cell);
    double reported = line.number("coverage");
    double lowest = Math.min(BufferReport.lowest(cell), reported);
    double highest = Math.max(BufferReport.highest(cell), reported);
    double coverage = tenth(cell).coverage();
    assertTrue(coverage >= lowest - byChance(lowest), cell + ": changes of pH " + coverage);
    assertTrue(coverage <= highest + byChance(highest), cell + ": changes of pH " + coverage);
    double acidity = Math.min(BufferReport.LOWEST_OF_ACIDITY, line.number("coverage_acidity"));
    double covered = tenth(cell).coverageOfAcidity();
    assertTrue(covered >= acidity - byChance(acidity), cell + ": acidity " + covered);
  }

  private static double byChance(double share) {
    return BY_CHANCE * Math.sqrt(share * (1 - share) / BufferStudy.TENTH);
  }

  @ParameterizedTest
  @MethodSource("stated")
  void theReportIsOfThisLibrary(BufferStudy.Cell cell) {
    CsvTable.Line line = BufferReport.line(cell);
    String again = cell + ": run the study again, see DEVELOPERS.md";
    assertEquals(line.number("tenth"), tenth(cell).coverage(), UNMOVED, again);
    assertEquals(line.number("tenth_acidity"), tenth(cell).coverageOfAcidity(), UNMOVED, again);
  }

  @Test
  void whatIsMissedIsNamed() {
    List<String> missed =
        stated().stream()
            .filter(cell -> !BufferReport.missed(cell).isEmpty())
            .map(cell -> cell.key() + ": " + BufferReport.missed(cell))
            .sorted()
            .toList();
    assertEquals(MISSED, missed);
    List<String> faults = new ArrayList<>();
    for (Fault fault : Fault.values()) {
      for (boolean told : new boolean[] {true, false}) {
        if (BufferReport.missed(fault, told)) {
          faults.add(fault + (told ? ",stated" : ",unstated"));
        }
      }
    }
    assertEquals(MISSED_FAULTS, faults.stream().sorted().toList());
  }

  @ParameterizedTest
  @EnumSource(Fault.class)
  void aTenthNoticesAsMuchAsIsReported(Fault fault) {
    CsvTable.Line line = BufferReport.line(fault, true);
    BufferTally tenth = BufferTally.of(fault, true, BufferStudy.TENTH);
    double reported = line.number("noticed");
    double byChance = BY_CHANCE * Math.sqrt(Math.max(reported * (1 - reported), 0.01) / 200);
    assertEquals(reported, tenth.noticed(), byChance, fault + ": of all beers");
    if (fault == Fault.NONE) {
      assertTrue(
          tenth.noticed() <= Math.max(BufferReport.HIGHEST_NOTICED, reported) + byChance,
          fault::toString);
    } else {
      double share = line.number("beyond_U_and_noticed") / line.number("beyond_U");
      double lowest = Math.min(BufferReport.LOWEST_NOTICED, share);
      double few =
          BY_CHANCE
              * Math.sqrt(Math.max(lowest * (1 - lowest), 0.01) / Math.max(1, tenth.beyond()));
      assertTrue(
          tenth.beyondAndNoticed() >= (lowest - Math.max(0.1, few)) * tenth.beyond(),
          fault + ": " + tenth.beyondAndNoticed() + " of " + tenth.beyond());
    }
  }

  @Test
  void anIdealReaderCannotDoWhatIsRequiredOfStrayReadingsAndTitrants() {
    double[] tenth = BufferTally.ideal(BufferStudy.IDEAL_TENTH);
    for (int i = 0; i < tenth.length; i++) {
      CsvTable.Line line =
          BufferReport.ideal(i == 0 ? Fault.STRAY_READING : Fault.TITRANT).orElseThrow();
      assertEquals(line.number("tenth"), tenth[i], 0.001);
      assertTrue(line.number("noticed") < BufferReport.LOWEST_NOTICED);
    }
  }
}
