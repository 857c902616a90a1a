package org.brewchem.examples.notebooks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.brewchem.pictures.DrawnPicture;
import org.brewchem.pictures.Ground;
import org.brewchem.pictures.Picture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Runs all cells of all notebooks in order, and compares with what is stored. */
class NotebooksTest {

  private static final Path ROOT = Path.of("").toAbsolutePath().getParent().getParent();
  private static final Path FOLDER = ROOT.resolve(RunNotebooks.FOLDER);

  @TempDir private Path folder;

  static List<Path> notebooks() throws IOException {
    return Notebook.in(FOLDER);
  }

  private static String startUp() throws IOException {
    return Files.readString(ROOT.resolve(RunNotebooks.START_UP));
  }

  @ParameterizedTest
  @MethodSource("notebooks")
  void aNotebookPutsOutWhatIsStoredAndItsPicturesCanBeRead(Path path) throws IOException {
    Notebook notebook = Notebook.read(path);
    List<List<Output>> outputs = notebook.run(startUp());
    assertEquals(List.of(), notebook.differences(outputs));
    List<Picture> pictures =
        outputs.stream()
            .flatMap(List::stream)
            .flatMap(output -> output.picture().stream())
            .toList();
    assertFalse(pictures.isEmpty());
    for (Picture picture : pictures) {
      for (Ground ground : Ground.values()) {
        Path drawn = folder.resolve(ground + ".svg");
        picture.on(ground).save(drawn);
        assertEquals(List.of(), DrawnPicture.read(drawn).problems(), picture + ", " + ground);
      }
    }
  }

  /** The comparison above finds what it is there for. */
  @Test
  void anotherOutputIsFound() throws IOException {
    Notebook notebook = Notebook.read(notebooks().get(0));
    List<List<Output>> outputs = notebook.cells().stream().map(Notebook.Cell::outputs).toList();
    assertEquals(List.of(), notebook.differences(outputs));
    for (int i = 0; i < outputs.size(); i++) {
      if (notebook.cells().get(i).isCode()) {
        List<List<Output>> spoilt = new ArrayList<>(outputs);
        spoilt.set(i, List.of(Output.of(Output.Kind.VALUE, "something else")));
        assertEquals(1, notebook.differences(spoilt).size(), "cell " + (i + 1));
        spoilt.set(i, List.of(Output.of(Output.Kind.FAILURE, "thrown")));
        assertEquals(2, notebook.differences(spoilt).size(), "cell " + (i + 1));
      }
    }
    assertEquals(1, notebook.differences(outputs.subList(1, outputs.size())).size());
  }

  @Test
  void thereAreEightInTheOrderOfACourse() throws IOException {
    List<String> names =
        notebooks().stream().map(path -> path.getFileName().toString().substring(0, 2)).toList();
    assertEquals(List.of("1-", "2-", "3-", "4-", "5-", "6-", "7-", "8-"), names);
    String page = Files.readString(ROOT.resolve("docs/notebooks.md"));
    for (Path path : notebooks()) {
      assertTrue(page.contains("notebooks/" + path.getFileName()), path.toString());
    }
  }

  @ParameterizedTest
  @MethodSource("notebooks")
  void aNotebookAsksSaysWhatIsInventedDrawsAndSetsExercises(Path path) throws IOException {
    List<Notebook.Cell> cells = Notebook.read(path).cells();
    String first = cells.get(0).source();
    assertTrue(first.startsWith("# " + path.getFileName().toString().charAt(0) + ". "), first);
    assertTrue(first.contains("*Question: ") && first.contains("?"), first);
    assertTrue(first.toLowerCase(Locale.ROOT).contains("invented"), first);
    assertTrue(cells.stream().anyMatch(Notebook.Cell::isAnswer));
    List<byte[]> pictures =
        cells.stream()
            .flatMap(cell -> cell.outputs().stream())
            .flatMap(output -> output.png().stream())
            .toList();
    assertFalse(pictures.isEmpty());
    for (byte[] png : pictures) {
      BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
      assertEquals(1720, image.getWidth());
      long inked =
          IntStream.range(0, image.getWidth() * image.getHeight())
              .filter(i -> image.getRGB(i % 1720, i / 1720) != image.getRGB(0, 0))
              .count();
      assertTrue(inked > 5000, inked + " pixels are drawn");
    }
  }

  @ParameterizedTest
  @MethodSource("notebooks")
  void theAnswersOfAHandoutAreFoldedAway(Path path) throws IOException {
    Path file = Handouts.write(path, folder);
    String page = Files.readString(file);
    String open = page.replaceAll("(?s)<details>.*?</details>", "");
    assertFalse(open.contains("details>"));
    List<Notebook.Cell> cells = Notebook.read(path).cells();
    for (Notebook.Cell cell : cells) {
      String source = cell.source().strip();
      assertTrue(page.contains(source), source);
      assertEquals(!cell.isAnswer(), open.contains(source), source);
      for (Output output : cell.outputs()) {
        assertTrue(page.contains(output.text().stripTrailing()), output.text());
      }
    }
    assertFalse(page.contains("<details open"));
    try (Stream<Path> files = Files.list(folder)) {
      long pictures = files.filter(other -> other.toString().endsWith(".png")).count();
      assertEquals(page.split("!\\[", -1).length - 1, pictures);
      assertTrue(pictures > 0);
    }
  }

  @Test
  void storedOutputsAreReadBackAsTheyWere() throws IOException {
    Path path = notebooks().get(0);
    Notebook notebook = Notebook.read(path);
    List<List<Output>> outputs = notebook.cells().stream().map(Notebook.Cell::outputs).toList();
    Path copy = folder.resolve(path.getFileName());
    notebook.withOutputs(outputs).write(copy);
    assertEquals(Files.readString(path), Files.readString(copy));
    List<String> differences = CompareNotebooks.differences(FOLDER, folder);
    assertEquals(7, differences.size());
    assertTrue(differences.stream().allMatch(difference -> difference.endsWith("is missing")));
  }

  @Test
  void aSessionShowsWhatEndsWithoutASemicolonAndStopsWhereACellFails() throws IOException {
    try (Session session = new Session("int one = 1;")) {
      assertEquals(List.of(Output.of(Output.Kind.VALUE, "2")), session.run("one + 1 // said\n"));
      assertEquals(List.of(), session.run("int two = one + 1;\ntwo;"));
      assertEquals(
          List.of(Output.of(Output.Kind.PRINTED, "a\nb\n"), Output.of(Output.Kind.VALUE, "c\nd")),
          session.run("System.out.println(\"a\"); System.out.println(\"b\");\n\"c\\nd\""));
      List<Output> failed = session.run("System.out.print(1); int i = 1 / 0; System.out.print(2);");
      assertEquals(Output.of(Output.Kind.PRINTED, "1"), failed.get(0));
      assertEquals(Output.Kind.FAILURE, failed.get(1).kind());
      assertTrue(failed.get(1).text().contains("by zero"), failed.toString());
      assertEquals(Output.Kind.FAILURE, session.run("int i = ;").get(0).kind());
      assertEquals(Output.Kind.FAILURE, session.run("for (int i = 0;").get(0).kind());
      assertEquals(Output.Kind.FAILURE, session.run("nowhere()").get(0).kind());
      assertNotEquals(List.of(), session.run("two"));
    }
    assertThrows(IllegalArgumentException.class, () -> new Session("int i = nothing;"));
  }
}
