package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Rules that span the modules, and so are read from their sources rather than their classes. */
class RepositoryTest {

  private static final Path ROOT = Path.of("").toAbsolutePath().getParent();

  private static final Pattern TEST_METHOD =
      Pattern.compile(
          "^\\s*@(Test|Property|Example|ParameterizedTest|RepeatedTest|TestFactory)\\b",
          Pattern.MULTILINE);

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

  private static String ownFile() {
    return "brewchem-core/src/test/java/"
        + RepositoryTest.class.getName().replace('.', '/')
        + ".java";
  }

  private static Stream<Path> sources(String folder) {
    return Stream.of("brewchem-core", "brewchem-examples", "reference-checks")
        .map(module -> ROOT.resolve(module).resolve(folder))
        .filter(Files::isDirectory)
        .flatMap(RepositoryTest::javaFiles);
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
