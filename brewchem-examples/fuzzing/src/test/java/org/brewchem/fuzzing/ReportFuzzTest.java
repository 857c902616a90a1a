package org.brewchem.fuzzing;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.solution.Figures;
import org.brewchem.table.Column;
import org.brewchem.table.Waters;
import org.brewchem.water.WaterFigures;
import org.brewchem.water.WaterReport;

/**
 * Water reports as laboratories print them, from the bytes of a file: decimal commas, limits, units
 * under the headings, headings of other languages, a value a line. Each row becomes a report and a
 * water with finite answers.
 */
class ReportFuzzTest {

  private static final Path FOLDER = CsvFuzzTest.folder();
  private static final int MOST_ROWS = 3;

  @FuzzTest(maxDuration = "10m")
  @DictionaryFile(resourcePath = "headings.dict")
  void report(byte[] input) {
    WrittenFile file = WrittenFile.of(input, FOLDER);
    Oracle.ask(WrittenFile.unchecked(() -> file.file().reading()))
        .map(reading -> reading.table().head(MOST_ROWS))
        .flatMap(table -> Oracle.ask(() -> Waters.from(table)))
        .ifPresent(ReportFuzzTest::judge);
  }

  private static void judge(Waters waters) {
    waters.notices().forEach(ReportFuzzTest::judge);
    Oracle.ask(waters::reportNotices).ifPresent(all -> all.forEach(ReportFuzzTest::judge));
    for (Figure<?> figure :
        new Figure<?>[] {
          Figures.PH_VALUE, Figures.CARBONATE_ALKALINITY, WaterFigures.RESIDUAL_ALKALINITY
        }) {
      Oracle.ask(() -> waters.column(figure))
          .ifPresent(
              column -> {
                judge(column);
                for (int i = 0; i < column.size(); i++) {
                  int row = i;
                  Oracle.ask(() -> waters.answer(figure, row)).ifPresent(ReportFuzzTest::judge);
                  Oracle.ask(() -> waters.report(row)).ifPresent(ReportFuzzTest::judge);
                }
              });
    }
  }

  private static void judge(WaterReport report) {
    Oracle.ask(report::notices).ifPresent(all -> all.forEach(ReportFuzzTest::judge));
    Oracle.ask(report::basisReadings);
    Oracle.ask(report::missing);
    Oracle.ask(report::withAssumedUncertainties)
        .flatMap(assumed -> Oracle.ask(() -> assumed.water().answer(Figures.PH_VALUE)))
        .ifPresent(ReportFuzzTest::judge);
    String shown = report.toString();
    if (shown.contains("NaN") || shown.contains("Infinity")) {
      throw new AssertionError(shown);
    }
  }

  private static void judge(Notice notice) {
    Oracle.requireShort(notice.text());
  }

  private static void judge(Answer<?> answer) {
    answer.structured().number().ifPresent(n -> Oracle.requireFinite(n, answer));
    answer.structured().standardUncertainty().ifPresent(u -> Oracle.requireFinite(u, answer));
  }

  static void judge(Column column) {
    for (int i = 0; i < column.size(); i++) {
      if (column.isPresent(i)) {
        Oracle.requireFinite(column.value(i), column.heading());
      } else {
        Oracle.requireShort(column.failure(i).orElseThrow().reason());
      }
    }
  }
}
