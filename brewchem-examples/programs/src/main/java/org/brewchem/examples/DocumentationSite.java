package org.brewchem.examples;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * Makes a static site of the documentation: each page of Markdown as one of HTML at the same place,
 * the files that they show or link to, and the Javadoc if it was built. It names the links whose
 * file or heading is missing.
 */
public final class DocumentationSite {

  private static final Path JAVADOC = Path.of("brewchem-core", "target", "reports", "apidocs");
  private static final Path API = Path.of("api");

  private static final List<Extension> EXTENSIONS =
      List.of(TablesExtension.create(), HeadingAnchorExtension.create());

  private static final Parser PARSER = Parser.builder().extensions(EXTENSIONS).build();
  private static final HtmlRenderer RENDERER =
      HtmlRenderer.builder().extensions(EXTENSIONS).build();

  private static final Pattern LINK = Pattern.compile("\\b(?:href|src|srcset)=\"([^\"]*)\"");
  private static final Pattern ELSEWHERE = Pattern.compile("[a-z]+:.*");
  private static final Pattern HEADING = Pattern.compile("<h1[^>]*>(.*?)</h1>");

  private static final String STYLE =
      """
      :root { color-scheme: light dark; }
      body { max-width: 52rem; margin: 0 auto; padding: 1rem; font: 1rem/1.5 sans-serif; }
      pre { overflow-x: auto; padding: .7rem; border: 1px solid #888; }
      table { display: block; overflow-x: auto; border-collapse: collapse; }
      th, td { border: 1px solid #888; padding: .2rem .5rem; text-align: left; vertical-align: top; }
      img { max-width: 100%; }
      """;

  private final Path root;
  private final Path site;

  /** The pages in HTML, by their place in the site. */
  private final Map<Path, String> pages = new LinkedHashMap<>();

  private DocumentationSite(Path root, Path site) {
    this.root = root;
    this.site = site;
  }

  /**
   * Writes the site of the repository in the working directory into its folder {@code target/site},
   * and ends with 1 if a link is broken.
   *
   * @param arguments none
   * @throws IOException if a file cannot be read or written
   */
  public static void main(String[] arguments) throws IOException {
    Path site = Path.of("target", "site");
    List<String> broken = write(Path.of(""), site);
    System.out.println(site.resolve("index.html"));
    broken.forEach(System.err::println);
    if (!broken.isEmpty()) {
      System.exit(1);
    }
  }

  /**
   * Writes the site of a folder.
   *
   * @param root the folder with README.md, DEVELOPERS.md and docs
   * @param site where the site goes; what is there is written over
   * @return the broken links, each with its page; empty if there are none
   * @throws IOException if a file cannot be read or written
   */
  static List<String> write(Path root, Path site) throws IOException {
    return new DocumentationSite(root, site).write();
  }

  private List<String> write() throws IOException {
    boolean hasJavadoc = Files.isDirectory(root.resolve(JAVADOC));
    for (Path page : sources()) {
      pages.put(placeOf(page), html(page, hasJavadoc));
    }
    List<String> broken = new ArrayList<>();
    for (Map.Entry<Path, String> page : pages.entrySet()) {
      for (MatchResult link : LINK.matcher(page.getValue()).results().toList()) {
        if (!ELSEWHERE.matcher(link.group(1)).matches()
            && !resolves(page.getKey(), link.group(1))) {
          broken.add(page.getKey() + ": " + link.group(1));
        }
      }
      Path file = folderOf(site.resolve(page.getKey()));
      Files.writeString(file, page.getValue());
    }
    if (hasJavadoc) {
      copyAll(root.resolve(JAVADOC), site.resolve(API));
    }
    return broken;
  }

  private List<Path> sources() throws IOException {
    try (Stream<Path> docs = Files.walk(root.resolve("docs"))) {
      return Stream.concat(
              Stream.of(root.resolve("README.md"), root.resolve("DEVELOPERS.md")), docs.sorted())
          .filter(file -> file.toString().endsWith(".md") && Files.exists(file))
          .map(root::relativize)
          .toList();
    }
  }

  private static Path placeOf(Path page) {
    return Path.of(inHtml(page.toString()));
  }

  private static String inHtml(String markdown) {
    return markdown
        .replaceFirst("(^|/)README[.]md$", "$1index.html")
        .replaceFirst("[.]md$", ".html");
  }

  private String html(Path page, boolean hasJavadoc) throws IOException {
    Node document = PARSER.parse(Files.readString(root.resolve(page)));
    document.accept(
        new AbstractVisitor() {
          @Override
          public void visit(Link link) {
            String[] parts = link.getDestination().split("#", 2);
            if (!ELSEWHERE.matcher(parts[0]).matches()) {
              link.setDestination(inHtml(parts[0]) + (parts.length > 1 ? "#" + parts[1] : ""));
            }
            visitChildren(link);
          }
        });
    String body = RENDERER.render(document);
    Matcher heading = HEADING.matcher(body);
    String title = heading.find() ? heading.group(1).replaceAll("<[^>]*>", "") : page.toString();
    String up = "../".repeat(page.getNameCount() - 1);
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        + "<meta name=\"viewport\" content=\"width=device-width\">\n<title>"
        + title
        + "</title>\n<style>\n"
        + STYLE
        + "</style>\n</head>\n<body>\n<nav>"
        + navigation(up, "index.html", "brewchem")
        + " · "
        + navigation(up, "docs/index.html", "documentation")
        + (hasJavadoc ? " · " + navigation(up, "api/index.html", "Javadoc") : "")
        + "</nav>\n<main>\n"
        + body
        + "</main>\n</body>\n</html>\n";
  }

  private static String navigation(String up, String place, String text) {
    return "<a href=\"" + up + place + "\">" + text + "</a>";
  }

  /** Says whether a link leads somewhere in the site, and copies the file that it shows. */
  private boolean resolves(Path page, String link) throws IOException {
    URI target = URI.create("/" + page.toString().replace('\\', '/')).resolve(link);
    Path place = Path.of(target.getPath().substring(1));
    String shown = pages.get(place);
    if (shown != null) {
      return target.getFragment() == null || shown.contains("id=\"" + target.getFragment() + "\"");
    }
    if (place.startsWith(API)) {
      return Files.exists(root.resolve(JAVADOC).resolve(API.relativize(place)));
    }
    Path source = root.resolve(place);
    if (!Files.isRegularFile(source)) {
      return false;
    }
    Files.copy(source, folderOf(site.resolve(place)), StandardCopyOption.REPLACE_EXISTING);
    return true;
  }

  private static void copyAll(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.copy(
            file,
            folderOf(to.resolve(from.relativize(file).toString())),
            StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }

  /** The file, once its folder is there. */
  private static Path folderOf(Path file) throws IOException {
    Files.createDirectories(Objects.requireNonNull(file.getParent()));
    return file;
  }
}
