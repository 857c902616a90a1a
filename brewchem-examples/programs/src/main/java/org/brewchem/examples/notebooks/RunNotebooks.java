package org.brewchem.examples.notebooks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Runs the notebooks and stores what they put out in their files. */
public final class RunNotebooks {

  static final Path FOLDER = Path.of("brewchem-examples", "notebooks");
  static final Path START_UP = Path.of("brewchem-examples", "jshell", "brewchem.jsh");

  private RunNotebooks() {}

  /**
   * Runs them, from the folder of the clone.
   *
   * @param arguments the names of those to run, such as {@code 4-alkalinity.ipynb}; none for all
   * @throws IOException if a file cannot be read or written
   */
  public static void main(String[] arguments) throws IOException {
    System.setProperty("java.awt.headless", "true");
    String startUp = Files.readString(START_UP);
    boolean failed = false;
    for (Path path : Notebook.in(FOLDER)) {
      if (arguments.length == 0
          || List.of(arguments).contains(String.valueOf(path.getFileName()))) {
        Notebook notebook = Notebook.read(path);
        List<List<Output>> outputs = notebook.run(startUp);
        for (List<Output> cell : outputs) {
          for (Output output : cell) {
            if (output.kind() == Output.Kind.FAILURE) {
              System.err.println(path + ": " + output.text());
              failed = true;
            }
          }
        }
        notebook.withOutputs(outputs).write(path);
        System.out.println(path);
      }
    }
    if (failed) {
      System.exit(1);
    }
  }
}
