package org.brewchem.examples.notebooks;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/** A notebook in a file of Jupyter's format, version 4. Immutable. */
final class Notebook {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String ANSWER = "answer";
  private static final DefaultIndenter INDENT = new DefaultIndenter(" ", "\n");

  /** A cell; {@code isAnswer} if it is tagged as the answer of an exercise. */
  record Cell(boolean isCode, boolean isAnswer, String source, List<Output> outputs) {}

  private final ObjectNode root;

  private Notebook(ObjectNode root) {
    this.root = root;
  }

  static Notebook read(Path path) throws IOException {
    JsonNode root = JSON.readTree(Files.readString(path));
    if (root.path("nbformat").asInt() != 4 || !root.path("cells").isArray()) {
      throw new IOException(path + ": is no notebook of version 4");
    }
    return new Notebook((ObjectNode) root);
  }

  /** The notebooks of a folder, in the order of their names. */
  static List<Path> in(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".ipynb")).sorted().toList();
    }
  }

  void write(Path path) throws IOException {
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter(
                Separators.createDefaultInstance()
                    .withObjectFieldValueSpacing(Separators.Spacing.AFTER))
            .withArrayIndenter(INDENT)
            .withObjectIndenter(INDENT);
    Files.writeString(path, JSON.writer(printer).writeValueAsString(root) + "\n");
  }

  List<Cell> cells() {
    List<Cell> cells = new ArrayList<>();
    for (JsonNode cell : root.path("cells")) {
      List<Output> outputs = new ArrayList<>();
      cell.path("outputs").forEach(output -> add(outputs, output(output)));
      cells.add(
          new Cell(
              cell.path("cell_type").asText().equals("code"),
              isAnswer(cell),
              text(cell.path("source")),
              List.copyOf(outputs)));
    }
    return List.copyOf(cells);
  }

  private static boolean isAnswer(JsonNode cell) {
    return StreamSupport.stream(cell.path("metadata").path("tags").spliterator(), false)
        .anyMatch(tag -> tag.asText().equals(ANSWER));
  }

  /** Printed text may come in several pieces. */
  private static void add(List<Output> outputs, Output next) {
    int last = outputs.size() - 1;
    if (last >= 0
        && next.kind() == Output.Kind.PRINTED
        && outputs.get(last).kind() == Output.Kind.PRINTED) {
      outputs.set(last, Output.of(Output.Kind.PRINTED, outputs.get(last).text() + next.text()));
    } else {
      outputs.add(next);
    }
  }

  private static Output output(JsonNode output) {
    JsonNode data = output.path("data");
    return switch (output.path("output_type").asText()) {
      case "stream" -> Output.of(Output.Kind.PRINTED, text(output.path("text")));
      case "execute_result", "display_data" ->
          data.has("image/png")
              ? Output.picture(
                  text(data.path("text/plain")),
                  Base64.getMimeDecoder().decode(text(data.path("image/png"))))
              : Output.of(Output.Kind.VALUE, text(data.path("text/plain")));
      default -> Output.of(Output.Kind.FAILURE, text(output.path("evalue")));
    };
  }

  /** A text is one string or a list of its lines. */
  private static String text(JsonNode node) {
    return node.isArray()
        ? StreamSupport.stream(node.spliterator(), false)
            .map(JsonNode::asText)
            .collect(Collectors.joining())
        : node.asText();
  }

  /** Returns the notebook with other outputs, a list for each cell, empty for a text. */
  Notebook withOutputs(List<List<Output>> outputs) {
    ObjectNode copy = root.deepCopy();
    int count = 0;
    for (int i = 0; i < outputs.size(); i++) {
      ObjectNode cell = (ObjectNode) copy.path("cells").get(i);
      if (cell.path("cell_type").asText().equals("code")) {
        count++;
        cell.put("execution_count", count);
        ArrayNode stored = cell.putArray("outputs");
        for (Output output : outputs.get(i)) {
          store(output, stored.addObject(), count);
        }
      }
    }
    return new Notebook(copy);
  }

  private static void store(Output output, ObjectNode stored, int count) {
    switch (output.kind()) {
      case PRINTED -> {
        stored.put("name", "stdout").put("output_type", "stream");
        lines(stored.putArray("text"), output.text());
      }
      case VALUE -> {
        ObjectNode data = stored.putObject("data");
        output
            .png()
            .ifPresent(png -> data.put("image/png", Base64.getEncoder().encodeToString(png)));
        lines(data.putArray("text/plain"), output.text());
        stored.put("execution_count", count);
        stored.putObject("metadata");
        stored.put("output_type", "execute_result");
      }
      case FAILURE -> {
        stored.put("ename", "failure").put("evalue", output.text()).put("output_type", "error");
        stored.putArray("traceback");
      }
    }
  }

  private static void lines(ArrayNode stored, String text) {
    for (String line : text.split("(?<=\n)")) {
      stored.add(line);
    }
  }

  /**
   * Runs all cells in a session of their own.
   *
   * @param startUp the statements before the first
   * @return the outputs of each cell
   */
  List<List<Output>> run(String startUp) {
    List<List<Output>> outputs = new ArrayList<>();
    try (Session session = new Session(startUp)) {
      for (Cell cell : cells()) {
        outputs.add(cell.isCode() ? session.run(cell.source()) : List.of());
      }
    }
    return outputs;
  }

  /**
   * Compares outputs with those that are stored, and finds cells that failed.
   *
   * @param outputs those of each cell
   * @return what differs, a line each, empty if nothing does
   */
  List<String> differences(List<List<Output>> outputs) {
    List<Cell> cells = cells();
    List<String> differences = new ArrayList<>();
    if (outputs.size() != cells.size()) {
      differences.add(outputs.size() + " cells instead of " + cells.size());
      return differences;
    }
    for (int i = 0; i < cells.size(); i++) {
      List<Output> stored = cells.get(i).outputs();
      List<Output> fresh = outputs.get(i);
      boolean same = stored.size() == fresh.size();
      for (int j = 0; same && j < stored.size(); j++) {
        same = stored.get(j).saysTheSame(fresh.get(j));
      }
      if (!same) {
        differences.add("cell " + (i + 1) + ": stored is " + stored + ", found is " + fresh);
      }
      if (fresh.stream().anyMatch(output -> output.kind() == Output.Kind.FAILURE)) {
        differences.add("cell " + (i + 1) + " fails: " + fresh);
      }
    }
    return differences;
  }
}
