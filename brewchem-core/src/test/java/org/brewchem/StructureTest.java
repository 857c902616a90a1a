package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Inside a room: no knots of files that know each other, and no file too long to read. */
class StructureTest {

  private static final int MOST_LINES = 600;

  /** Circles of two files that stay, each with its reason. */
  private static final Map<Set<String>, String> PAIRS =
      Map.of(
          Set.of("internal.ActivityCoefficients", "internal.EquilibriumSystem"),
          "a system tabulates where its solutions start, with its own activity coefficients",
          Set.of("figure.Answer", "figure.StructuredAnswer"),
          "an answer in its two forms",
          Set.of("figure.Answering", "figure.Figure"),
          "what is asked finds a figure, and a figure's rule asks it for its inputs",
          Set.of("quantity.AmountConcentration", "quantity.Molality"),
          "each is made from the other and the density of the water",
          Set.of("solution.DoseSearch", "solution.Equilibria"),
          "a work space finds its own dose, by the search that tries mixtures in it",
          Set.of("substance.Component", "substance.Solute"),
          "a solute brings components, and a component is a solute",
          Set.of("uncertainty.ExpandedUncertainty", "uncertainty.UncertainValue"),
          "the same uncertainty in its two forms, each made from the other",
          Set.of("uncertainty.GrubbsTest", "uncertainty.Replicates"),
          "replicates are asked for their outlier, which is told about them",
          Set.of("uncertainty.LinearityCheck", "uncertainty.MonteCarlo"),
          "draws are compared with a budget, and the comparison shows the draws",
          Set.of("units.EndPointUnits", "units.LabUnits"),
          "a unit with an end point is one of the laboratory's, and reads its pH with another");

  /** Files that may be longer, each with its reason. */
  private static final Map<String, String> LONG_FILES =
      Map.of(
          "internal/EquilibriumSolver.java",
          "one cohesive iteration, whose parts share their work space");

  @Test
  void filesOfARoomDoNotGoInCircles() {
    List<Set<String>> circles = circles(dependencies());
    List<Set<String>> unexpected =
        circles.stream().filter(circle -> !PAIRS.containsKey(circle)).toList();
    assertEquals(List.of(), unexpected, "circles of files within a room");
  }

  @Test
  void noCircleIsExcusedThatIsGone() {
    List<Set<String>> circles = circles(dependencies());
    for (Set<String> pair : PAIRS.keySet()) {
      assertEquals(2, pair.size(), "more than a pair: " + pair);
      assertTrue(circles.contains(pair), "no circle any more: " + pair);
    }
  }

  @Test
  void aCircleIsFoundThroughAnyNumberOfFiles() {
    Map<String, Set<String>> graph =
        Map.of(
            "a", Set.of("b"),
            "b", Set.of("c"),
            "c", Set.of("a", "d"),
            "d", Set.of("e"),
            "e", Set.of("d"),
            "f", Set.of("a"));
    assertEquals(List.of(Set.of("a", "b", "c"), Set.of("d", "e")), circles(graph));
  }

  @Test
  void noFileIsTooLongToRead() throws IOException {
    Path root = Path.of("src/main/java/org/brewchem");
    Set<String> found = new TreeSet<>();
    int files = 0;
    try (Stream<Path> paths = Files.walk(root)) {
      for (Path path :
          (Iterable<Path>) paths.filter(p -> p.toString().endsWith(".java"))::iterator) {
        files++;
        if (Files.readAllLines(path).size() > MOST_LINES) {
          found.add(root.relativize(path).toString().replace('\\', '/'));
        }
      }
    }
    assertTrue(files > 100, files + " files");
    assertEquals(new TreeSet<>(LONG_FILES.keySet()), found, "files of more than 600 lines");
  }

  /** For each file those of its room that it knows; nested classes count as their file. */
  private static Map<String, Set<String>> dependencies() {
    Map<String, Set<String>> graph = new TreeMap<>();
    for (JavaClass from :
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.brewchem")) {
      for (Dependency dependency : from.getDirectDependenciesFromSelf()) {
        JavaClass to = dependency.getTargetClass().getBaseComponentType();
        if (to.getPackageName().equals(from.getPackageName()) && !file(to).equals(file(from))) {
          graph.computeIfAbsent(file(from), key -> new TreeSet<>()).add(file(to));
        }
      }
    }
    return graph;
  }

  private static String file(JavaClass type) {
    String name = type.getName().substring("org.brewchem.".length());
    int nested = name.indexOf('$');
    return nested < 0 ? name : name.substring(0, nested);
  }

  /** The sets of nodes of which each reaches every other, by the first of their names. */
  private static List<Set<String>> circles(Map<String, Set<String>> graph) {
    Map<String, Set<String>> reachable = new TreeMap<>();
    graph.keySet().forEach(node -> reachable.put(node, reachable(graph, node)));
    List<Set<String>> circles = new ArrayList<>();
    reachable.forEach(
        (node, reached) -> {
          Set<String> circle = new TreeSet<>(reached);
          circle.removeIf(other -> !reachable.getOrDefault(other, Set.of()).contains(node));
          if (circle.contains(node) && !circles.contains(circle)) {
            circles.add(circle);
          }
        });
    return circles;
  }

  private static Set<String> reachable(Map<String, Set<String>> graph, String start) {
    Set<String> reached = new TreeSet<>();
    Deque<String> open = new ArrayDeque<>(graph.getOrDefault(start, Set.of()));
    while (!open.isEmpty()) {
      String node = open.pop();
      if (reached.add(node)) {
        open.addAll(graph.getOrDefault(node, Set.of()));
      }
    }
    return reached;
  }
}
