package org.brewchem.fuzzing;

import com.code_intelligence.jazzer.junit.DictionaryFile;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Figures;
import org.brewchem.table.Acidities;
import org.brewchem.table.Beers;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.brewchem.units.ColumnHeader;
import org.brewchem.units.UnitSet;

/**
 * Headings from any text, each line one: alone, and together as those of a table of one row, which
 * is then taken for waters, beers and titrations.
 */
class HeadingFuzzTest {

  @FuzzTest(maxDuration = "10m")
  @DictionaryFile(resourcePath = "headings.dict")
  void heading(byte[] input) {
    List<String> lines = Oracle.text(input).lines().limit(8).toList();
    for (String line : lines) {
      Oracle.read(line, () -> ColumnHeader.parse(line)).ifPresent(HeadingFuzzTest::judge);
    }
    Oracle.ask(() -> table(lines)).ifPresent(HeadingFuzzTest::judge);
  }

  private static void judge(ColumnHeader header) {
    String again = header.name() + header.unit().map(unit -> " [" + unit + "]").orElse("");
    Oracle.requireEqual(header.toString(), again);
    for (UnitSet<?> units : Readers.UNIT_SETS) {
      Oracle.ask(() -> header.unitOf(units))
          .ifPresent(unit -> Oracle.requireEqual(header.unit().orElseThrow(), unit.symbol()));
    }
    Oracle.ask(() -> header.unitOf(Readers.ALKALINITY));
    Oracle.ask(() -> header.unitOf(Readers.ACIDITY));
  }

  private static Table table(List<String> headings) {
    Table.Builder rows = Table.withHeadings(headings, List.of());
    rows.row();
    for (int i = 0; i < headings.size(); i++) {
      rows.set(i, 7);
    }
    return rows.build();
  }

  private static void judge(Table table) {
    for (Column column : table.columns()) {
      Oracle.requireEqual(column.heading(), table.column(column.name()).heading());
    }
    Oracle.ask(() -> Waters.from(table))
        .ifPresent(
            waters -> {
              Oracle.ask(waters::notices);
              Oracle.ask(waters::reportNotices);
              Oracle.ask(() -> waters.column(Figures.PH_VALUE)).ifPresent(ReportFuzzTest::judge);
              Oracle.ask(waters::alkalinity).ifPresent(ReportFuzzTest::judge);
            });
    Oracle.ask(() -> Beers.from(table)).ifPresent(beers -> Oracle.ask(beers::notices));
    Oracle.ask(() -> Acidities.from(table, PH.of(8.2)))
        .ifPresent(found -> Oracle.ask(found::acidity).ifPresent(ReportFuzzTest::judge));
  }
}
