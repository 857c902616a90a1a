package org.brewchem.examples.book;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Figure;
import org.brewchem.quality.BatchRecord;
import org.brewchem.solution.Figures;
import org.brewchem.substance.Acid;

/** A program that enters batch after batch and prints the name of each that is on the disk. */
final class Writer {

  static final Figure<?>[] FIGURES = {Figures.PH_VALUE, Figures.titratableAcidity(pH(8.2))};

  private static final LocalDate BREWED = LocalDate.of(2026, 3, 9);

  private Writer() {}

  /** An invented batch, whose pH and acidity tell its number. */
  static BatchRecord batch(String name, int number) {
    double acidity = 1 + number % 1000 / 1000.0;
    Beer beer =
        Beer.of(pH(4 + number % 500 / 1000.0), acidity(gPerL(acidity), Acid.LACTIC, pH(8.2)))
            .withStandardUncertaintyOfPH(0.02);
    return BatchRecord.of(
        name,
        "invented lager",
        BREWED,
        "a program",
        BREWED.plusDays(20).atTime(14, 30),
        beer.pH(),
        beer.titratableAcidity());
  }

  /** Enters batches until it is killed or the time is over. */
  public static void main(String[] arguments) throws IOException {
    String prefix = arguments[1];
    try (SqlBook book = SqlBook.open(Path.of(arguments[0]), FIGURES)) {
      System.out.println("open");
      long end = System.nanoTime() + Long.parseLong(arguments[2]) * 1_000_000;
      for (int i = 1; System.nanoTime() < end; i++) {
        book.enter(batch(prefix + i, i));
        System.out.println(prefix + i);
      }
    }
  }
}
