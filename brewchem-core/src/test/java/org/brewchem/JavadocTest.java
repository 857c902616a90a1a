package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.source.doctree.DocCommentTree;
import com.sun.source.doctree.DocTree;
import com.sun.source.doctree.ParamTree;
import com.sun.source.doctree.ReturnTree;
import com.sun.source.doctree.ThrowsTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.LambdaExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.ModifiersTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ThrowTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.TryTree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.math.BigDecimal;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * The Javadoc of every public method, read from the sources: a first sentence; each parameter; what
 * is returned; the unit or the kind of number of each double; each exception that the method is
 * seen to throw. Methods that override another inherit its Javadoc and are passed over, and so is
 * {@code internal}. That null is refused is a promise of every method, and not said of each.
 *
 * <p>What is seen to be thrown: a {@code throw new} and a call of {@code Checks} in the method
 * itself, and in a method of the same class that it calls by name alone, there as far as it was
 * given something of the first one's parameters, or takes none. Lambdas, constructors and calls of
 * other objects are not followed. The tag may name a wider type.
 *
 * <p>Sources: a number of three digits or more in code is somebody's measurement or definition. The
 * Javadoc of its field or method, or of its class, names whose: a year, one of a few institutions
 * and standards, or the words that say that there is none. Tolerances of a search, powers of ten
 * and rounded numbers have fewer digits. Constants of the tables have their source in the row,
 * which {@code SourcesTest} checks.
 */
class JavadocTest {

  private static final Path SOURCES = Path.of("src", "main", "java", "org", "brewchem");

  /** A unit, or the word of a number that has none. */
  private static final Pattern UNIT =
      Pattern.compile(
          "[A-Za-zµ]/|°|\\bin [{A-Za-z]|\\bp[HK]|unit|fraction|ratio|factor|0 or more|above 0|"
              + "more than 0|\\b0 to|number|relative|probab|between|per |count|times|percent|%|"
              + "moles|[Cc]hance|[Ss]ignificance|[Dd]egrees ?[Oo]f ?[Ff]reedom|derivative|log10|1/K|over ");

  private static final Pattern SOURCE =
      Pattern.compile(
          "\\b(1[89]|20)\\d\\d\\b|\\bSI\\b|NIST|CODATA|ITS-90|IAPWS|ISO|DIN|AOAC|MEBAK|CIAAW|"
              + "definition|defined|exact|quantile|normal distribution|no source|from memory|assumption|"
              + "arithmetic");

  @Test
  void everyPublicMethodSaysWhatItTakesGivesAndThrows() throws IOException {
    Findings findings = scan();
    assertTrue(findings.methods > 1500, findings.methods + " methods were read");
    assertEquals("", String.join("\n", findings.undocumented));
  }

  @Test
  void everyMeasuredNumberInCodeNamesItsSource() throws IOException {
    Findings findings = scan();
    assertTrue(findings.numbers > 10, findings.numbers + " numbers were read");
    assertEquals("", String.join("\n", findings.withoutSource));
  }

  @Test
  void whatIsLeftOutIsFound() throws IOException {
    Findings findings = new Findings();
    read(
        List.of(
            source(
                """
                package org.brewchem.plan;
                import org.brewchem.internal.Checks;
                /** A class without a source. */
                public final class Sample {
                  public void silent() {}
                  /**
                   * Counts.
                   *
                   * @param mass the mass
                   * @return the outcome
                   * @throws IllegalArgumentException if the mass is 0
                   */
                  public <Q> double count(double mass, int times) {
                    if (times < 0) {
                      throw new IllegalStateException();
                    }
                    return Checks.positive("mass", mass, "g") * 1.234;
                  }
                  /**
                   * Counts by another.
                   *
                   * @param mass the mass in g
                   */
                  public void other(double mass) {
                    helper(mass, 3);
                  }
                  private void helper(double grams, double litres) {
                    Checks.finite("mass", grams, "g");
                    Checks.finite("volume", litres, "L");
                  }
                }
                """)),
        findings);
    assertEquals(
        """
        silent: no first sentence
        count: no unit of mass
        count: no @param times
        count: no @param <Q>
        count: no unit of what it returns
        count: no @throws IllegalStateException
        other: no @throws OutOfRangeException""",
        String.join("\n", findings.undocumented).replaceAll("Sample.java, line \\d+ ", ""));
    assertEquals(List.of("Sample.java, line 17 1.234"), findings.withoutSource);
  }

  private static JavaFileObject source(String text) {
    return new SimpleJavaFileObject(URI.create("text:///Sample.java"), JavaFileObject.Kind.SOURCE) {
      @Override
      public String getCharContent(boolean ignoreEncodingErrors) {
        return text;
      }
    };
  }

  private static Findings scan() throws IOException {
    List<JavaFileObject> files = new ArrayList<>();
    Findings findings = new Findings();
    try (Stream<Path> all = Files.walk(SOURCES);
        StandardJavaFileManager manager =
            ToolProvider.getSystemJavaCompiler().getStandardFileManager(null, null, null)) {
      manager
          .getJavaFileObjectsFromPaths(
              all.filter(file -> file.toString().endsWith(".java"))
                  .filter(file -> !file.startsWith(SOURCES.resolve("internal")))
                  .filter(file -> !file.endsWith("package-info.java"))
                  .sorted()
                  .toList())
          .forEach(files::add);
      read(files, findings);
    }
    return findings;
  }

  private static void read(List<JavaFileObject> files, Findings findings) throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    JavacTask task =
        (JavacTask) compiler.getTask(null, null, null, List.of("-proc:none"), null, files);
    DocTrees trees = DocTrees.instance(task);
    for (CompilationUnitTree unit : task.parse()) {
      new Reader(trees, unit, findings).scan(unit, null);
    }
  }

  private static final class Findings {
    private final List<String> undocumented = new ArrayList<>();
    private final List<String> withoutSource = new ArrayList<>();
    private int methods;
    private int numbers;
  }

  /** Reads one file. */
  private static final class Reader extends TreePathScanner<Void, Void> {

    private final DocTrees trees;
    private final CompilationUnitTree unit;
    private final Findings findings;

    Reader(DocTrees trees, CompilationUnitTree unit, Findings findings) {
      this.trees = trees;
      this.unit = unit;
      this.findings = findings;
    }

    @Override
    public Void visitMethod(MethodTree method, Void nothing) {
      String name = place(method) + " " + method.getName();
      if (isPublic() && !isOverride(method)) {
        findings.methods++;
        DocCommentTree comment = trees.getDocCommentTree(getCurrentPath());
        problems(method, comment)
            .forEach(problem -> findings.undocumented.add(name + ": " + problem));
      }
      return super.visitMethod(method, nothing);
    }

    @Override
    public Void visitLiteral(LiteralTree literal, Void nothing) {
      if (literal.getValue() instanceof Double number && digits(number) >= 3) {
        findings.numbers++;
        StringBuilder said = new StringBuilder();
        for (TreePath path = getCurrentPath(); path != null; path = path.getParentPath()) {
          said.append(Objects.toString(trees.getDocComment(path), ""));
        }
        if (!SOURCE.matcher(said).find()) {
          findings.withoutSource.add(place(literal) + " " + number);
        }
      }
      return super.visitLiteral(literal, nothing);
    }

    private static int digits(double number) {
      return new BigDecimal(Double.toString(number)).stripTrailingZeros().precision();
    }

    private boolean isPublic() {
      TreePath path = getCurrentPath();
      for (; !(path.getLeaf() instanceof CompilationUnitTree); path = path.getParentPath()) {
        ModifiersTree modifiers;
        if (path.getLeaf() instanceof MethodTree method) {
          modifiers = method.getModifiers();
        } else if (path.getLeaf() instanceof ClassTree type) {
          modifiers = type.getModifiers();
        } else {
          return false;
        }
        if (modifiers.getFlags().contains(Modifier.PRIVATE)) {
          return false;
        }
        boolean inInterface = path.getParentPath().getLeaf().getKind() == Tree.Kind.INTERFACE;
        if (!modifiers.getFlags().contains(Modifier.PUBLIC) && !inInterface) {
          return false;
        }
      }
      return true;
    }

    private static boolean isOverride(MethodTree method) {
      return method.getModifiers().getAnnotations().stream()
          .anyMatch(one -> one.getAnnotationType().toString().equals("Override"));
    }

    private String place(Tree tree) {
      long line =
          unit.getLineMap().getLineNumber(trees.getSourcePositions().getStartPosition(unit, tree));
      return Path.of(unit.getSourceFile().getName()).getFileName() + ", line " + line;
    }

    private List<String> problems(MethodTree method, @Nullable DocCommentTree comment) {
      if (comment == null || comment.getFirstSentence().isEmpty()) {
        return List.of("no first sentence");
      }
      List<String> problems = new ArrayList<>();
      Map<String, String> parameters = new HashMap<>();
      String returned =
          comment.getFullBody().stream()
              .filter(ReturnTree.class::isInstance)
              .map(Object::toString)
              .collect(Collectors.joining());
      Set<String> thrown = new HashSet<>();
      for (DocTree tag : comment.getBlockTags()) {
        if (tag instanceof ParamTree one) {
          parameters.put(one.getName().getName().toString(), one.getDescription().toString());
        } else if (tag instanceof ReturnTree one) {
          returned = one.getDescription().toString();
        } else if (tag instanceof ThrowsTree one) {
          thrown.add(one.getExceptionName().getSignature());
        }
      }
      for (VariableTree parameter : method.getParameters()) {
        String said = parameters.get(parameter.getName().toString());
        if (said == null) {
          problems.add("no @param " + parameter.getName());
        } else if (isNumber(parameter.getType())
            && !UNIT.matcher(parameter.getName() + " " + said).find()) {
          problems.add("no unit of " + parameter.getName());
        }
      }
      method.getTypeParameters().stream()
          .map(type -> type.getName().toString())
          .filter(type -> !parameters.containsKey(type))
          .forEach(type -> problems.add("no @param <" + type + ">"));
      Tree result = method.getReturnType();
      if (result != null && !result.toString().equals("void")) {
        if (returned.isEmpty()) {
          problems.add("no @return");
        } else if (isNumber(result)
            && !UNIT.matcher(comment.getFirstSentence() + returned).find()) {
          problems.add("no unit of what it returns");
        }
      }
      ClassTree owner = (ClassTree) getCurrentPath().getParentPath().getLeaf();
      Thrown.by(method, owner).stream()
          .filter(type -> thrown.stream().noneMatch(said -> covers(said, type)))
          .forEach(type -> problems.add("no @throws " + type));
      return problems;
    }

    private static boolean isNumber(Tree type) {
      return type.toString().matches("double(\\[\\]|[.]{3})?|OptionalDouble");
    }

    private boolean covers(String said, String thrown) {
      return type(said).isAssignableFrom(type(thrown));
    }

    private Class<?> type(String name) {
      Stream<String> imported =
          unit.getImports().stream()
              .map(one -> one.getQualifiedIdentifier().toString())
              .filter(one -> one.endsWith("." + name));
      Stream<String> near =
          Stream.of("", "java.lang.", unit.getPackageName() + ".", "org.brewchem.")
              .map(prefix -> prefix + name);
      return Stream.concat(imported, near)
          .flatMap(JavadocTest::loaded)
          .findFirst()
          .orElseThrow(() -> new AssertionError(name + " of " + place(unit) + " is not found"));
    }
  }

  private static Stream<Class<?>> loaded(String name) {
    try {
      return Stream.of(Class.forName(name, false, JavadocTest.class.getClassLoader()));
    } catch (ClassNotFoundException notOfThisName) {
      return Stream.empty();
    }
  }

  /**
   * What a method throws by its own lines and by those of its class that it calls by their name
   * alone. A check in such a method counts if it checks what the first one was given.
   */
  private static final class Thrown {
    private final ClassTree owner;
    private final Set<String> found = new TreeSet<>();
    private final Set<String> visited = new HashSet<>();

    private Thrown(ClassTree owner) {
      this.owner = owner;
    }

    static Set<String> by(MethodTree method, ClassTree owner) {
      Thrown thrown = new Thrown(owner);
      thrown.collect(method, Optional.empty());
      return thrown.found;
    }

    /** Collects of a method whose parameters of these names come from the caller; empty for all. */
    private void collect(MethodTree method, Optional<Set<String>> given) {
      if (method.getBody() == null
          || !visited.add(method.getName() + " " + method.getParameters() + " " + given)) {
        return;
      }
      Set<String> parameters =
          given.orElseGet(
              () ->
                  method.getParameters().stream()
                      .map(parameter -> parameter.getName().toString())
                      .collect(Collectors.toSet()));
      new TreeScanner<Void, Void>() {
        @Override
        public Void visitLambdaExpression(LambdaExpressionTree later, Void nothing) {
          return null;
        }

        @Override
        public Void visitClass(ClassTree inner, Void nothing) {
          return null;
        }

        @Override
        public Void visitTry(TryTree caught, Void nothing) {
          return scan(caught.getCatches(), nothing);
        }

        @Override
        public Void visitThrow(ThrowTree thrown, Void nothing) {
          // What it refuses without having been given anything lies in its own hands.
          boolean isOfItsOwn = parameters.isEmpty() && !method.getParameters().isEmpty();
          if (thrown.getExpression() instanceof NewClassTree made && !isOfItsOwn) {
            found.add(made.getIdentifier().toString());
          }
          return super.visitThrow(thrown, nothing);
        }

        @Override
        public Void visitMethodInvocation(MethodInvocationTree call, Void nothing) {
          String select = call.getMethodSelect().toString();
          List<? extends ExpressionTree> arguments = call.getArguments();
          if (select.startsWith("Checks.")
              && (given.isEmpty() || mentions(arguments.get(1), parameters))) {
            found.add(
                select.equals("Checks.notBlank")
                    ? "IllegalArgumentException"
                    : "OutOfRangeException");
          }
          if (call.getMethodSelect() instanceof IdentifierTree) {
            called(select, arguments.size())
                .ifPresent(
                    one -> {
                      Set<String> passed = new TreeSet<>();
                      for (int i = 0; i < arguments.size(); i++) {
                        if (mentions(arguments.get(i), parameters)) {
                          passed.add(one.getParameters().get(i).getName().toString());
                        }
                      }
                      collect(one, Optional.of(passed));
                    });
          }
          return super.visitMethodInvocation(call, nothing);
        }
      }.scan(method.getBody(), null);
    }

    private Optional<MethodTree> called(String name, int arguments) {
      List<MethodTree> named =
          owner.getMembers().stream()
              .filter(MethodTree.class::isInstance)
              .map(MethodTree.class::cast)
              .filter(one -> one.getName().contentEquals(name))
              .filter(one -> one.getParameters().size() == arguments)
              .toList();
      // With two of that many parameters only types would tell which is meant.
      return named.size() == 1 ? Optional.of(named.get(0)) : Optional.empty();
    }

    private static boolean mentions(Tree expression, Set<String> names) {
      boolean[] found = new boolean[1];
      new TreeScanner<Void, Void>() {
        @Override
        public Void visitIdentifier(IdentifierTree identifier, Void nothing) {
          found[0] |= names.contains(identifier.getName().toString());
          return null;
        }
      }.scan(expression, null);
      return found[0];
    }
  }
}
