package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Rules that span the modules, and so are read from their sources rather than their classes. */
class RepositoryTest {

  private static final Path ROOT = Path.of("").toAbsolutePath().getParent();

  private static final Pattern TEST_METHOD =
      Pattern.compile(
          "^\\s*@(Test|Property|Example|ParameterizedTest|RepeatedTest|TestFactory|FuzzTest)\\b",
          Pattern.MULTILINE);

  /**
   * Cases, figures and sentences that are not ours to use, each as a pattern that does not find
   * itself.
   */
  private static final List<Pattern> NOT_OURS =
      patterns(
          "soft[ -]?[d]rink",
          "[c]ola-like",
          "[l]ager-like",
          "sour[ -]beer[ -][l]ike",
          "kettle[ -][s]our\\b",
          "\\b7[.]7 g/L",
          "\\b22 [g]/L",
          "pH alone [m]isleads",
          "hydrogen ions are [f]ree",
          "mineral [c]haracter");

  /** Words that are archaic or not English, and second forms of a unit. */
  private static final List<Pattern> NOT_PLAIN =
      patterns(
          "[f]oretell",
          "[f]oretold",
          "[f]oresee",
          "\\b[n]il\\b",
          "\\b[a]new\\b",
          "an ion [l]acks",
          "what [l]acks",
          "who counts [w]ith that",
          "beer grows [b]y",
          "certificate of [a]nalysis",
          "(?-i)\\b[m]eq\\b",
          "(?-i)(?<![A-Za-z])[e]q/(mol|kg|L)\\b");

  @Test
  void theRunnerPicksUpEveryClassThatHoldsATest() {
    List<Path> tests =
        sources("src/test/java").filter(file -> TEST_METHOD.matcher(text(file)).find()).toList();
    assertTrue(tests.contains(ROOT.resolve(ownFile())), "the scan does not see its own file");
    assertEquals(
        List.of(),
        tests.stream().filter(file -> !file.toString().matches(".*(Test|IT)\\.java")).toList());
  }

  @Test
  void propertiesAreRunByTheUnitTestRunner() {
    assertEquals(
        List.of(),
        sources("src/test/java")
            .filter(file -> text(file).contains("@Property"))
            .filter(file -> !file.toString().endsWith("Test.java"))
            .toList());
  }

  @Test
  void internalIsClosedToTheOtherModules() {
    assertEquals(
        List.of(),
        sources("src")
            .filter(file -> !file.startsWith(ROOT.resolve("brewchem-core")))
            .filter(file -> text(file).contains("org.brewchem.internal"))
            .toList());
  }

  @Test
  void everyPackageOfMainCodeTellsItsStoryAndIsNullMarked() {
    assertEquals(
        List.of(),
        sources("src/main/java")
            .map(Path::getParent)
            .distinct()
            .map(folder -> folder.resolve("package-info.java"))
            .filter(page -> !Files.exists(page) || !text(page).contains("@NullMarked"))
            .toList());
  }

  @Test
  void noTextUsesWhatIsNotOurs() {
    assertEquals(
        List.of(),
        texts("java", "md", "csv", "jsh", "cpp", "xml")
            .flatMap(file -> found(file, NOT_OURS))
            .toList());
  }

  @Test
  void codeAndPagesAreInPlainEnglish() {
    assertEquals(
        List.of(),
        texts("java", "md", "jsh", "cpp", "xml").flatMap(file -> found(file, NOT_PLAIN)).toList());
  }

  private static List<Pattern> patterns(String... expressions) {
    return Stream.of(expressions)
        .map(expression -> Pattern.compile(expression, Pattern.CASE_INSENSITIVE))
        .toList();
  }

  private static Stream<String> found(Path file, List<Pattern> patterns) {
    String text = text(file).replaceAll("\\s+(\\*|//)?\\s*", " ");
    return patterns.stream()
        .filter(pattern -> pattern.matcher(text).find())
        .map(pattern -> ROOT.relativize(file) + ": " + pattern);
  }

  /** The files of one of the extensions or names, but for what a build or a program writes. */
  private static Stream<Path> texts(String... extensions) {
    List<Path> files = new ArrayList<>();
    try {
      Files.walkFileTree(
          ROOT,
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
              String name = folder.getFileName().toString();
              boolean written = name.equals("target") || name.equals(".git");
              return written ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
              String named = file.getFileName().toString();
              if (Stream.of(extensions).anyMatch(end -> ("." + named).endsWith("." + end))) {
                files.add(file);
              }
              return FileVisitResult.CONTINUE;
            }
          });
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    assertTrue(
        !List.of(extensions).contains("java") || files.contains(ROOT.resolve(ownFile())),
        "the scan does not see its own file");
    return files.stream();
  }

  private static String ownFile() {
    return "brewchem-core/src/test/java/"
        + RepositoryTest.class.getName().replace('.', '/')
        + ".java";
  }

  private static Stream<Path> sources(String folder) {
    return modules()
        .map(module -> module.resolve(folder))
        .filter(Files::isDirectory)
        .flatMap(RepositoryTest::javaFiles);
  }

  /** The folders of the modules, nested ones included, but for what a build writes. */
  private static Stream<Path> modules() {
    List<Path> modules =
        texts("pom.xml").map(Path::getParent).filter(folder -> !folder.equals(ROOT)).toList();
    assertTrue(modules.contains(ROOT.resolve("brewchem-examples/programs")), modules.toString());
    return modules.stream();
  }

  private static Stream<Path> javaFiles(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(file -> file.toString().endsWith(".java")).toList().stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
