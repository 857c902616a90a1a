package org.brewchem.examples.notebooks;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import jdk.jshell.ExpressionSnippet;
import jdk.jshell.JShell;
import jdk.jshell.JShellException;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;
import jdk.jshell.VarSnippet;
import org.brewchem.pictures.Picture;
import org.jspecify.annotations.Nullable;

/**
 * A session in Java: runs cells one after the other, as a notebook does. It runs them in this
 * process, so that a picture comes out as a picture. One session runs at a time, for it takes what
 * is printed.
 */
public final class Session implements AutoCloseable {

  private static final int WHOLE_STEPS_OF_A_TRACE = 3;

  /** What the last expression gave; set from within the session. */
  private static @Nullable Object given;

  private final JShell shell;

  /**
   * Starts a session.
   *
   * @param startUp the statements that run before the first cell
   * @throws IllegalArgumentException if one of them fails
   */
  public Session(String startUp) {
    shell = JShell.builder().executionEngine("local").build();
    shell.addToClasspath(System.getProperty("java.class.path"));
    List<Output> outputs = run(startUp);
    if (outputs.stream().anyMatch(output -> output.kind() == Output.Kind.FAILURE)) {
      shell.close();
      throw new IllegalArgumentException("start-up: " + outputs);
    }
  }

  /**
   * Takes the value of an expression; only a session calls it.
   *
   * @param value the value
   */
  public static void give(@Nullable Object value) {
    given = value;
  }

  /**
   * Runs a cell: all its statements, up to the first that fails.
   *
   * @param cell the statements
   * @return what was printed, then the value of the last statement if it is an expression without a
   *     semicolon, or why the cell failed
   */
  public List<Output> run(String cell) {
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    PrintStream before = System.out;
    List<Output> ends = new ArrayList<>();
    try (PrintStream out = new PrintStream(printed, true, StandardCharsets.UTF_8)) {
      System.setOut(out);
      String rest = cell;
      while (!rest.isBlank() && ends.isEmpty()) {
        CompletionInfo statement = shell.sourceCodeAnalysis().analyzeCompletion(rest);
        if (!statement.completeness().isComplete()) {
          // What follows the last statement may be a comment alone.
          if (statement.source() != null || !isComment(rest)) {
            ends.add(Output.of(Output.Kind.FAILURE, "not a complete statement: " + rest.strip()));
          }
          break;
        }
        rest = statement.remaining();
        boolean shown =
            (rest.isBlank() || isComment(rest)) && !statement.source().strip().endsWith(";");
        ends.addAll(evaluated(statement.source(), shown));
      }
    } finally {
      System.setOut(before);
    }
    List<Output> outputs = new ArrayList<>();
    if (printed.size() > 0) {
      outputs.add(Output.of(Output.Kind.PRINTED, printed.toString(StandardCharsets.UTF_8)));
    }
    outputs.addAll(ends);
    return List.copyOf(outputs);
  }

  private static boolean isComment(String rest) {
    return rest.lines().allMatch(line -> line.isBlank() || line.strip().startsWith("//"));
  }

  private List<Output> evaluated(String source, boolean shown) {
    List<Output> outputs = new ArrayList<>();
    for (SnippetEvent event : shell.eval(source)) {
      String failure = failureOf(event);
      if (!failure.isEmpty()) {
        outputs.add(Output.of(Output.Kind.FAILURE, failure));
      } else if (shown
          && event.value() != null
          && !event.value().isEmpty()
          && isExpression(event.snippet())) {
        outputs.add(valueOf(nameOf(event.snippet())));
      }
    }
    return outputs;
  }

  /** An expression, but no declaration and no assignment. */
  private static boolean isExpression(Snippet snippet) {
    return snippet.subKind() == Snippet.SubKind.TEMP_VAR_EXPRESSION_SUBKIND
        || snippet.subKind() == Snippet.SubKind.VAR_VALUE_SUBKIND;
  }

  private static String nameOf(Snippet snippet) {
    return snippet instanceof ExpressionSnippet expression
        ? expression.name()
        : ((VarSnippet) snippet).name();
  }

  private Output valueOf(String name) {
    shell.eval(Session.class.getName() + ".give(" + name + ");");
    Object value = given;
    given = null;
    return value instanceof Picture picture
        ? Output.of(picture)
        : Output.of(Output.Kind.VALUE, String.valueOf(value));
  }

  private String failureOf(SnippetEvent event) {
    if (event.status() == Snippet.Status.REJECTED
        || event.status() == Snippet.Status.RECOVERABLE_NOT_DEFINED) {
      return shell
          .diagnostics(event.snippet())
          .map(diagnostic -> diagnostic.getMessage(Locale.ROOT))
          .collect(
              Collectors.joining("\n", "does not compile: " + event.snippet().source() + "\n", ""));
    }
    JShellException thrown = event.exception();
    if (thrown == null) {
      return "";
    }
    StringBuilder trace = new StringBuilder(String.valueOf(thrown));
    for (int i = 0; i < Math.min(WHOLE_STEPS_OF_A_TRACE, thrown.getStackTrace().length); i++) {
      trace.append("\n  at ").append(thrown.getStackTrace()[i]);
    }
    return trace.toString();
  }

  /** Ends the session. */
  @Override
  public void close() {
    shell.close();
  }
}
