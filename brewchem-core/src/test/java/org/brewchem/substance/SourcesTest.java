package org.brewchem.substance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.brewchem.internal.DataTable;
import org.junit.jupiter.api.Test;

/** Every source key of the tables resolves in docs/sources.md, and every entry there is used. */
class SourcesTest {

  private static final Path ROOT = Path.of("").toAbsolutePath().getParent();
  private static final Pattern ENTRY = Pattern.compile("^### `([a-z0-9-]+)`$", Pattern.MULTILINE);
  private static final List<String> TABLES =
      List.of(
          "dissociation-constants.csv",
          "elements.csv",
          "gases.csv",
          "ion-pairs.csv",
          "ion-size-parameters.csv",
          "lactic-acid.csv",
          "minerals.csv",
          "primary-buffers.csv",
          "reagent-densities.csv",
          "reagent-uses.csv",
          "solubilities.csv",
          "usual-purities.csv");

  @Test
  void everyKeyOfTheTablesResolves() throws IOException {
    TreeSet<String> entries = new TreeSet<>(entries());
    for (String table : TABLES) {
      for (ResourceTable.Row row : ResourceTable.read(table)) {
        Provenance provenance = row.provenance();
        assertTrue(entries.contains(provenance.sourceKey()), row.place() + ": " + provenance);
      }
    }
  }

  @Test
  void everyKeyOfTheOtherRoomsResolves() throws IOException {
    TreeSet<String> entries = new TreeSet<>(entries());
    Path resources = ROOT.resolve("brewchem-core/src/main/resources");
    int rows = 0;
    try (Stream<Path> files = Files.walk(resources)) {
      for (Path file :
          (Iterable<Path>) files.filter(path -> path.toString().endsWith(".csv"))::iterator) {
        String name = "/" + resources.relativize(file).toString().replace('\\', '/');
        for (DataTable.Row row : DataTable.read(SourcesTest.class, name)) {
          if (row.has("source_key")) {
            rows++;
            String key = row.text("source_key");
            assertTrue(key.isEmpty() || entries.contains(key), row.place() + ": " + key);
          }
        }
      }
    }
    assertTrue(rows > 400, rows + " rows with a source key");
  }

  @Test
  void everyTableOfThisPackageIsLookedAt() throws IOException {
    Path folder = ROOT.resolve("brewchem-core/src/main/resources/org/brewchem/substance");
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(TABLES, files.map(file -> file.getFileName().toString()).sorted().toList());
    }
  }

  @Test
  void everyEntryIsListedOnceAndUsed() throws IOException {
    List<String> entries = entries();
    assertEquals(entries.size(), new TreeSet<>(entries).size());
    String texts = texts();
    List<String> unused = new ArrayList<>();
    for (String entry : entries) {
      if (!Pattern.compile("(?<![a-z0-9-])" + entry + "(?![a-z0-9-])").matcher(texts).find()) {
        unused.add(entry);
      }
    }
    assertEquals(List.of(), unused);
  }

  private static List<String> entries() throws IOException {
    List<String> entries = new ArrayList<>();
    Matcher matcher = ENTRY.matcher(Files.readString(ROOT.resolve("docs/sources.md")));
    while (matcher.find()) {
      entries.add(matcher.group(1));
    }
    assertTrue(entries.size() >= 25, "docs/sources.md lists " + entries.size() + " sources");
    return entries;
  }

  /** The tables and sources of all modules, in which a source can be used. */
  private static String texts() throws IOException {
    StringBuilder texts = new StringBuilder();
    for (String module :
        List.of(
            "brewchem-core",
            "brewchem-examples/readers",
            "brewchem-examples/programs",
            "reference-checks")) {
      Path sources = ROOT.resolve(module).resolve("src");
      if (Files.isDirectory(sources)) {
        try (Stream<Path> files = Files.walk(sources)) {
          for (Path file : files.filter(SourcesTest::isText).toList()) {
            texts.append(Files.readString(file)).append('\n');
          }
        }
      }
    }
    return texts.toString();
  }

  private static boolean isText(Path file) {
    return file.toString().endsWith(".csv") || file.toString().endsWith(".java");
  }
}
