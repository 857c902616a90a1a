package org.brewchem.figure;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * How a value was found: the tree of steps of its calculation, each with its formula, its inputs
 * with unit, and its source. It prints and computes nothing; what a step shows is evaluated from
 * the state that the step stored. Immutable.
 */
public final class Explanation {

  private final Step root;

  /**
   * Wraps the last step of a calculation.
   *
   * @param root the step
   */
  public Explanation(Step root) {
    this.root = Objects.requireNonNull(root, "root");
  }

  /**
   * Returns the last step.
   *
   * @return the step, whose inputs are the ones before it
   */
  public Step root() {
    return root;
  }

  /**
   * Returns all steps, each once, every step behind those it started from.
   *
   * @return an unmodifiable list whose last element is {@link #root()}
   */
  public List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    collect(root, new HashSet<>(), steps);
    return List.copyOf(steps);
  }

  private static void collect(Step step, Set<Step> seen, List<Step> steps) {
    if (seen.add(step)) {
      step.inputs().forEach(input -> collect(input, seen, steps));
      steps.add(step);
    }
  }

  /**
   * Tells whether what is shown holds: each formula computed once more from its inputs, each list
   * of charges summed, each fit's normal equations.
   *
   * @return true if every step that shows something holds
   */
  public boolean holds() {
    return steps().stream().allMatch(step -> step.detail().map(Step.Detail::holds).orElse(true));
  }

  /**
   * Returns the explanation line by line, inputs before what is computed from them.
   *
   * @return the lines
   */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    for (Step step : steps()) {
      lines.add(line(step));
      step.detail().ifPresent(detail -> detail.lines().forEach(line -> lines.add("    " + line)));
    }
    root.notices().forEach(notice -> lines.add("note: " + notice));
    return List.copyOf(lines);
  }

  private static String line(Step step) {
    StringBuilder text = new StringBuilder(step.quantity());
    if (!step.text().isEmpty()) {
      text.append(step.kind() == Step.Kind.FORMULA ? " = " : ", ").append(step.text());
    }
    text.append(
        step.found()
            .map(found -> " = " + step.scale().text(found))
            .orElseGet(() -> ": unknown, " + String.join("; ", step.whyUnknown())));
    if (!step.source().isEmpty()) {
      text.append("  [").append(step.source()).append(']');
    }
    return text.toString();
  }

  /**
   * Returns the explanation as Markdown: a numbered list, what a step shows as a block of fixed
   * width behind it, notices as quotes.
   *
   * @return the text, lines ending with a line feed
   */
  public String toMarkdown() {
    StringBuilder text = new StringBuilder();
    int number = 0;
    for (Step step : steps()) {
      String item = ++number + ". ";
      String indent = " ".repeat(item.length());
      text.append(item).append(line(step)).append('\n');
      List<String> shown = step.detail().map(Step.Detail::lines).orElse(List.of());
      if (!shown.isEmpty()) {
        text.append('\n').append(indent).append("```text\n");
        shown.forEach(line -> text.append(indent).append(line).append('\n'));
        text.append(indent).append("```\n\n");
      }
    }
    root.notices().forEach(notice -> text.append("\n> ").append(notice).append('\n'));
    return text.toString();
  }

  @Override
  public String toString() {
    return String.join("\n", lines());
  }
}
