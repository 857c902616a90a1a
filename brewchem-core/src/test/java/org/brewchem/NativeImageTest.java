package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The metadata for native images lists every table among the resources, and nothing else. No image
 * is built here: this holds the list against the files and the reading code, not an image.
 */
class NativeImageTest {

  private static final Path RESOURCES = Path.of("src", "main", "resources");

  private static final Path LIST =
      RESOURCES.resolve("META-INF/native-image/org.brewchem/brewchem-core/resource-config.json");

  private static final Pattern LISTED =
      Pattern.compile("\\{\"pattern\": \"\\\\\\\\Q(.+?)\\\\\\\\E\"\\}");

  private static final Pattern READ = Pattern.compile("\"([a-z-]+[.][a-z]+)\"");

  /** What an image does not know without more metadata than a list of resources. */
  private static final Pattern NEEDS_MORE =
      Pattern.compile("java[.]lang[.]reflect|ServiceLoader|Class[.]forName|ResourceBundle");

  @Test
  void everyResourceIsListed() throws IOException {
    List<String> listed = listed();
    assertTrue(listed.size() > 30, listed.size() + " are listed");
    assertEquals(resources(), listed);
  }

  @Test
  void everyResourceThatTheCodeNamesIsListed() throws IOException {
    List<String> listed = listed();
    List<String> named =
        sources().flatMap(file -> READ.matcher(text(file)).results()).map(m -> m.group(1)).toList();
    List<String> tables = named.stream().filter(name -> name.endsWith(".csv")).toList();
    assertTrue(tables.size() > 30, tables.size() + " are named");
    for (String table : tables) {
      assertTrue(listed.stream().anyMatch(path -> path.endsWith("/" + table)), table);
    }
  }

  @Test
  void nothingElseNeedsToBeDeclared() {
    assertEquals(
        List.of(), sources().filter(file -> NEEDS_MORE.matcher(text(file)).find()).toList());
  }

  private static List<String> listed() {
    return LISTED.matcher(text(LIST)).results().map(match -> match.group(1)).sorted().toList();
  }

  private static List<String> resources() throws IOException {
    try (Stream<Path> files = Files.walk(RESOURCES.resolve("org"))) {
      return files
          .filter(Files::isRegularFile)
          .map(file -> RESOURCES.relativize(file).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }

  private static Stream<Path> sources() {
    try (Stream<Path> files = Files.walk(Path.of("src", "main", "java"))) {
      return files.filter(file -> file.toString().endsWith(".java")).toList().stream();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
