package org.brewchem.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every link of the documentation leads to a file, and to a heading where it names one. */
class DocumentationSiteTest {

  private static final Path ROOT = Path.of("").toAbsolutePath().getParent().getParent();

  @TempDir private Path folder;

  @Test
  void everyLinkOfTheDocumentationResolves() throws IOException {
    assertEquals(List.of(), DocumentationSite.write(ROOT, folder));
    String front = Files.readString(folder.resolve("index.html"));
    assertTrue(front.contains("<title>brewchem</title>"), front);
    assertTrue(front.contains("<a href=\"docs/index.html\">documentation</a>"), front);
    assertTrue(Files.exists(folder.resolve("docs/pictures/titration-light.svg")));
    assertTrue(Files.readString(folder.resolve("docs/index.html")).contains("<table>"));
    try (Stream<Path> files = Files.walk(folder.resolve("docs"))) {
      long pages = files.filter(file -> file.toString().endsWith(".html")).count();
      assertTrue(pages > 50, pages + " pages");
    }
  }

  @Test
  void aBrokenLinkIsNamed() throws IOException {
    Files.createDirectories(folder.resolve("docs/decisions"));
    Files.writeString(
        folder.resolve("README.md"),
        """
        # A page
        ## Its second heading, with `code`
        [right](docs/other.md#a-heading) [right](#its-second-heading-with-code) [no page](docs/none.md)
        [no heading](docs/other.md#another) ![no picture](docs/none.svg)
        [elsewhere](https://example.org/none.md)
        """);
    Files.writeString(folder.resolve("docs/README.md"), "# Pages\n[up](../README.md)\n");
    Files.writeString(
        folder.resolve("docs/other.md"),
        "# A heading\n[up](../README.md#none) [down](decisions/1.md)\n");
    Files.writeString(
        folder.resolve("docs/decisions/1.md"),
        "[up](../../README.md) [up](../README.md) [folder](..)\n");
    assertEquals(
        List.of(
            "index.html: docs/none.html",
            "index.html: docs/other.html#another",
            "index.html: docs/none.svg",
            "docs/decisions/1.html: ..",
            "docs/other.html: ../index.html#none"),
        DocumentationSite.write(folder, folder.resolve("site")));
  }
}
