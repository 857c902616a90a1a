package org.brewchem.examples.notebooks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Makes a handout in Markdown of each notebook: texts, code, what it puts out, pictures as files
 * beside it, and the answers of the exercises folded away.
 */
public final class Handouts {

  private static final Path FOLDER = Path.of("target", "handouts");

  private final String name;
  private final Path folder;
  private final StringBuilder page = new StringBuilder();
  private int pictures;

  private Handouts(String name, Path folder) {
    this.name = name;
    this.folder = folder;
  }

  /**
   * Makes them, from the folder of the clone.
   *
   * @param arguments where they go; {@code target/handouts} if there is none
   * @throws IOException if a file cannot be read or written
   */
  public static void main(String[] arguments) throws IOException {
    Path folder = arguments.length > 0 ? Path.of(arguments[0]) : FOLDER;
    Files.createDirectories(folder);
    for (Path path : Notebook.in(RunNotebooks.FOLDER)) {
      System.out.println(write(path, folder));
    }
  }

  /** Writes the handout of a notebook and returns its file. */
  static Path write(Path path, Path folder) throws IOException {
    String name = String.valueOf(path.getFileName()).replace(".ipynb", "");
    Path file = folder.resolve(name + ".md");
    Files.writeString(file, new Handouts(name, folder).page(Notebook.read(path).cells()));
    return file;
  }

  private String page(List<Notebook.Cell> cells) throws IOException {
    boolean folded = false;
    for (Notebook.Cell cell : cells) {
      if (cell.isAnswer() != folded) {
        page.append(folded ? "</details>\n\n" : "<details>\n<summary>Answer</summary>\n\n");
        folded = cell.isAnswer();
      }
      if (cell.isCode()) {
        fenced("java", cell.source());
      } else {
        page.append(cell.source().strip()).append("\n\n");
      }
      for (Output output : cell.outputs()) {
        put(output);
      }
    }
    return page.append(folded ? "</details>\n" : "").toString();
  }

  private void put(Output output) throws IOException {
    if (output.png().isEmpty()) {
      fenced("", output.text());
      return;
    }
    pictures++;
    String file = name + "-" + pictures + ".png";
    Files.write(folder.resolve(file), output.png().get());
    page.append("![").append(output.text()).append("](").append(file).append(")\n\n");
  }

  private void fenced(String language, String text) {
    page.append("```").append(language).append('\n').append(text.stripTrailing());
    page.append("\n```\n\n");
  }
}
