package org.brewchem.checks.frozen;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The list of all rooms with frozen figures, and the program that writes their files. */
public final class FrozenDigits {

  private FrozenDigits() {}

  /** Returns all rooms. */
  public static List<FrozenRoom> rooms() {
    return List.of(
        new FrozenRoom("quantities", 303, FrozenQuantities::compute),
        new FrozenRoom("uncertainties", 366, FrozenUncertainties::compute),
        new FrozenRoom("substances", 1101, FrozenSubstances::compute),
        new FrozenRoom("solutions", 4857, FrozenSolutions::compute),
        new FrozenRoom("waters", 3595, FrozenWaters::compute),
        new FrozenRoom("titrations", 2112, FrozenTitrations::compute),
        new FrozenRoom("buffers", 369, FrozenBuffers::compute),
        new FrozenRoom("mashes", 649, FrozenMashes::compute),
        new FrozenRoom("plans", 468, FrozenPlans::compute),
        new FrozenRoom("beers", 3059, FrozenBeers::compute),
        new FrozenRoom("tables", 340, FrozenTables::compute));
  }

  /**
   * Writes the files with the digits of today, and says how many each holds: the numbers that stand
   * in {@link #rooms()}.
   *
   * @param args the folder of the files
   * @throws IOException if a file cannot be written
   */
  public static void main(String[] args) throws IOException {
    if (args.length != 1) {
      throw new IllegalArgumentException("one argument is needed: the folder of the files");
    }
    for (FrozenRoom room : rooms()) {
      List<FrozenFigure> figures = room.computed();
      Files.writeString(Path.of(args[0], room.fileName()), FrozenRoom.fileText(figures));
      System.out.println(room.name() + ": " + figures.size() + " figures");
    }
  }
}
