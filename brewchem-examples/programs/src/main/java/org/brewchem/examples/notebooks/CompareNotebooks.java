package org.brewchem.examples.notebooks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Compares notebooks that something else has run with what is stored in the repository. */
public final class CompareNotebooks {

  private CompareNotebooks() {}

  /**
   * Compares them, from the folder of the clone; ends with 1 if any differ.
   *
   * @param arguments the folder of the notebooks that were run
   * @throws IOException if a file cannot be read
   */
  public static void main(String[] arguments) throws IOException {
    List<String> differences = differences(RunNotebooks.FOLDER, Path.of(arguments[0]));
    differences.forEach(System.err::println);
    if (!differences.isEmpty()) {
      System.exit(1);
    }
    System.out.println("the notebooks put out what is stored");
  }

  static List<String> differences(Path stored, Path run) throws IOException {
    List<String> differences = new ArrayList<>();
    for (Path path : Notebook.in(stored)) {
      Path other = run.resolve(path.getFileName());
      if (!Files.exists(other)) {
        differences.add(other + ": is missing");
      } else {
        List<List<Output>> outputs =
            Notebook.read(other).cells().stream().map(Notebook.Cell::outputs).toList();
        Notebook.read(path)
            .differences(outputs)
            .forEach(difference -> differences.add(path.getFileName() + ": " + difference));
      }
    }
    return differences;
  }
}
