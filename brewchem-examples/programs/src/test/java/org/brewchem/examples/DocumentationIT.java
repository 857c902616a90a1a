package org.brewchem.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;
import org.junit.jupiter.api.Test;

/**
 * Runs the Java of README.md, DEVELOPERS.md and docs in JShell, with the jar that holds the library
 * and all it needs. The blocks of one page share one session. A comment behind a statement that has
 * a value is what JShell prints for it, where an ellipsis stands for anything.
 */
class DocumentationIT {

  /** The folder that newcomers are told to stand in; the build runs this test there. */
  private static final Path ROOT = Path.of("").toAbsolutePath();

  private static final Pattern JAVA_BLOCK =
      Pattern.compile("^```java\\R(.*?)^```", Pattern.MULTILINE | Pattern.DOTALL);

  /** Names a file that a page starts with, as the JShell command of that page does. */
  private static final Pattern START_UP =
      Pattern.compile("^<!-- start-up: (\\S+) -->$", Pattern.MULTILINE);

  private static final Pattern IMPORT =
      Pattern.compile("^import (static )?(org[.]brewchem[.][A-Za-z.]+)[.][*];$", Pattern.MULTILINE);

  /** What JShell imports before anything else. */
  private static final String DEFAULT_IMPORTS =
      Stream.of(
              "java.io",
              "java.math",
              "java.net",
              "java.nio.file",
              "java.util",
              "java.util.concurrent",
              "java.util.function",
              "java.util.prefs",
              "java.util.regex",
              "java.util.stream")
          .map(name -> "import " + name + ".*;\n")
          .collect(Collectors.joining());

  private static final Pattern COMMENT_FIRST = Pattern.compile("\\A[ \\t]*//(.*)");

  /**
   * JShell leaves the comment behind a statement to the rest, unless no other statement follows.
   */
  private static final Pattern COMMENT_LAST =
      Pattern.compile(";[ \\t]*//(.*)(\\R[ \\t]*(//.*)?)*\\z");

  @Test
  void theFrontPageShowsCode() throws IOException {
    assertFalse(javaBlocks(ROOT.resolve("README.md")).isEmpty());
  }

  @Test
  void javaOnEveryPageRunsAndPrintsWhatItsCommentsSay() throws IOException {
    List<String> problems = new ArrayList<>();
    for (Path page : pages()) {
      List<String> blocks = javaBlocks(page);
      if (!blocks.isEmpty()) {
        problemsOf(blocks).forEach(problem -> problems.add(ROOT.relativize(page) + ": " + problem));
      }
    }
    assertEquals("", String.join("\n\n", problems));
  }

  /** Every type and every constant that the start-up of JShell imports is one, not two. */
  @Test
  void noNamesClashAtThePrompt() throws IOException {
    String startUp = Files.readString(ROOT.resolve("brewchem-examples/jshell/brewchem.jsh"));
    List<String> names = new ArrayList<>();
    try (JarFile jar = new JarFile(Objects.requireNonNull(System.getProperty("all.jar")))) {
      IMPORT
          .matcher(startUp)
          .results()
          .forEach(
              match ->
                  names.addAll(
                      match.group(1) == null
                          ? types(jar, match.group(2))
                          : constants(match.group(2))));
    }
    assertTrue(names.size() > 200, names.size() + " names are imported");
    String all = String.join(", ", names);
    String imports =
        DEFAULT_IMPORTS
            + startUp
                .lines()
                .filter(line -> !DEFAULT_IMPORTS.contains(line + "\n"))
                .collect(Collectors.joining("\n", "", "\n"));
    assertEquals(
        "", String.join("\n", problemsOf(List.of(imports, "Object[] all = {" + all + "};\n"))));
    assertFalse(
        problemsOf(
                List.of(
                    imports
                        + "import static org.brewchem.substance.Ion.*;\n"
                        + "Object clash = CALCIUM;\n"))
            .isEmpty(),
        "a clash is not found");
  }

  /** The public types of a package, as class literals. */
  private static List<String> types(JarFile jar, String imported) {
    String folder = imported.replace('.', '/') + "/";
    return jar.stream()
        .map(JarEntry::getName)
        .filter(name -> name.startsWith(folder) && name.endsWith(".class"))
        .map(name -> name.substring(folder.length(), name.length() - ".class".length()))
        .filter(name -> name.matches("[A-Z][A-Za-z]*"))
        .filter(name -> Modifier.isPublic(classOf(imported + "." + name).getModifiers()))
        .map(name -> name + ".class")
        .toList();
  }

  private static List<String> constants(String imported) {
    return Arrays.stream(classOf(imported).getFields())
        .filter(field -> Modifier.isStatic(field.getModifiers()))
        .map(Field::getName)
        .toList();
  }

  private static Class<?> classOf(String name) {
    try {
      return Class.forName(name, false, DocumentationIT.class.getClassLoader());
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<Path> pages() throws IOException {
    try (Stream<Path> files = Files.walk(ROOT.resolve("docs"))) {
      return Stream.concat(
              Stream.of(ROOT.resolve("README.md"), ROOT.resolve("DEVELOPERS.md")),
              files.filter(file -> file.toString().endsWith(".md")).sorted())
          .toList();
    }
  }

  private static List<String> javaBlocks(Path page) throws IOException {
    String text = Files.readString(page);
    List<String> blocks = new ArrayList<>();
    Matcher startUp = START_UP.matcher(text);
    if (startUp.find()) {
      blocks.add(Files.readString(ROOT.resolve(startUp.group(1))));
    }
    JAVA_BLOCK.matcher(text).results().forEach(block -> blocks.add(block.group(1)));
    return blocks;
  }

  private static List<String> problemsOf(List<String> blocks) {
    List<String> problems = new ArrayList<>();
    try (JShell shell = JShell.create()) {
      shell.addToClasspath(Objects.requireNonNull(System.getProperty("all.jar"), "all.jar"));
      for (String block : blocks) {
        String rest = block;
        while (!rest.isBlank()) {
          CompletionInfo statement = shell.sourceCodeAnalysis().analyzeCompletion(rest);
          if (!statement.completeness().isComplete()) {
            problems.add("not a complete statement:\n" + rest);
            break;
          }
          rest = statement.remaining();
          Matcher comment =
              rest.isEmpty()
                  ? COMMENT_LAST.matcher(statement.source())
                  : COMMENT_FIRST.matcher(rest);
          String expected = comment.find() ? comment.group(1).strip() : "…";
          for (SnippetEvent event : shell.eval(statement.source())) {
            String problem = problemOf(shell, event, expected);
            if (!problem.isEmpty()) {
              problems.add(statement.source().strip() + "\n" + problem);
            }
          }
        }
      }
    }
    return problems;
  }

  /** Empty when there is none. */
  private static String problemOf(JShell shell, SnippetEvent event, String expected) {
    if (event.status() != Snippet.Status.VALID) {
      return shell
          .diagnostics(event.snippet())
          .map(diagnostic -> diagnostic.getMessage(Locale.ROOT))
          .collect(Collectors.joining("\n", "does not compile: ", ""));
    }
    if (event.exception() != null) {
      return "throws " + event.exception().getMessage();
    }
    String value = event.value();
    boolean asSaid = value == null || pattern(expected).matcher(value).matches();
    return asSaid ? "" : "prints " + value;
  }

  private static Pattern pattern(String expected) {
    return Pattern.compile(
        Arrays.stream(expected.split("…", -1))
            .map(Pattern::quote)
            .collect(Collectors.joining(".*")),
        Pattern.DOTALL);
  }
}
