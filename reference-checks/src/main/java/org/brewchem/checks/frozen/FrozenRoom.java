package org.brewchem.checks.frozen;

import java.util.List;
import java.util.function.Consumer;
import org.brewchem.checks.CsvTable;

/**
 * The frozen figures of one room.
 *
 * @param name the name of the room, in the name of its file
 * @param expectedFigures the number of figures that its file must hold
 * @param adapter computes the figures
 */
public record FrozenRoom(String name, int expectedFigures, Consumer<FrozenFigures> adapter) {

  private static final String HEADER =
      """
      # Written by FrozenDigits: our own digits of today, no evidence of being right.
      # A digit that changes needs a line under Numbers in docs/changelog.md.
      input,figure,unit,value,u
      """;

  /** Computes the figures. */
  public List<FrozenFigure> computed() {
    FrozenFigures figures = new FrozenFigures();
    adapter.accept(figures);
    return figures.all();
  }

  /**
   * Reads the figures of the file.
   *
   * @throws IllegalStateException if the file does not hold the number of figures expected
   */
  public List<FrozenFigure> frozen() {
    return CsvTable.read("frozen/" + fileName(), expectedFigures).lines().stream()
        .map(
            line ->
                new FrozenFigure(
                    line.text("input"),
                    line.text("figure"),
                    line.text("unit"),
                    line.text("value"),
                    line.text("u")))
        .toList();
  }

  /** Returns the name of the file. */
  public String fileName() {
    return name + "-figures.csv";
  }

  /** Returns the text of the file for figures computed now. */
  public static String fileText(List<FrozenFigure> figures) {
    StringBuilder text = new StringBuilder(HEADER);
    for (FrozenFigure figure : figures) {
      text.append(
          String.join(
              ",",
              figure.input(),
              figure.figure(),
              figure.unit(),
              figure.value(),
              figure.standardUncertainty()));
      text.append('\n');
    }
    return text.toString();
  }
}
