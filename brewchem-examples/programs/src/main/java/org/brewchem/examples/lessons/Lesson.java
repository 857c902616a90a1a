package org.brewchem.examples.lessons;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Hazard;
import org.brewchem.pictures.Picture;

/**
 * What a lesson shows, in one order: a question, the calculation, a picture, an exercise, and what
 * to mind where the work can hurt. Immutable; each method returns a lesson with one thing more.
 *
 * @param name the name of the picture's file, without its ending
 * @param title what it is about
 * @param question what the reader thinks about first
 * @param lines the calculation, a line each
 * @param picture what is projected
 * @param exercise what the reader solves
 * @param hazards what can hurt in the work that is described
 */
record Lesson(
    String name,
    String title,
    String question,
    List<String> lines,
    Picture picture,
    Exercise exercise,
    List<Hazard> hazards) {

  private static final Path FOLDER = Path.of("target", "lessons");
  private static final String SHOW = "answer";

  /**
   * An exercise whose answer is one number.
   *
   * @param question what is asked, with all that is needed to solve it by hand
   * @param answer the answer as the library finds it
   * @param tolerance how far a right answer may be from it, for the rounding on the way
   * @param unit the unit of both
   * @param digits how many decimals are shown
   * @param arithmetic how it is found by hand
   */
  record Exercise(
      String question,
      double answer,
      double tolerance,
      String unit,
      int digits,
      String arithmetic) {

    /** Returns the answer with its unit. */
    String shown() {
      return number(digits, answer) + (unit.isEmpty() ? "" : " " + unit);
    }

    /** Says whether a typed number is the answer. */
    String judged(String typed) {
      double number;
      try {
        number = Double.parseDouble(typed);
      } catch (NumberFormatException e) {
        return "\"" + typed + "\" is not a number; write it as in " + number(digits, 1.5);
      }
      return Math.abs(number - answer) <= tolerance
          ? "right: " + shown() + "\n" + arithmetic
          : typed + " is not it; think again, or call the program with \"" + SHOW + "\"";
    }
  }

  Lesson {
    lines = List.copyOf(lines);
    hazards = List.copyOf(hazards);
  }

  /** Starts a lesson with its question. */
  static Draft asking(String name, String title, String question) {
    return new Draft(name, title, question);
  }

  /** A lesson being written. Mutable. */
  static final class Draft {

    private final String name;
    private final String title;
    private final String question;
    private final List<String> lines = new ArrayList<>();

    private Draft(String name, String title, String question) {
      this.name = name;
      this.title = title;
      this.question = question;
    }

    /** Adds a line of the calculation; numbers are written with a point. */
    Draft line(String format, Object... values) {
      lines.add(String.format(Locale.ROOT, format, values));
      return this;
    }

    /** Ends the lesson. */
    Lesson with(Picture picture, Exercise exercise, Hazard... hazards) {
      return new Lesson(name, title, question, lines, picture, exercise, List.of(hazards));
    }
  }

  private static String number(int digits, double value) {
    return String.format(Locale.ROOT, "%." + digits + "f", value);
  }

  /** Returns the places of a line, evenly spaced, both ends among them. */
  static double[] even(double from, double to, int count) {
    double[] places = new double[count];
    for (int i = 0; i < count; i++) {
      places[i] = from + (to - from) * i / (count - 1);
    }
    return places;
  }

  /**
   * Does what the main of each lesson is called for: without an argument it prints the lesson and
   * draws its picture, with a number it judges the answer, with "answer" it shows it.
   */
  void run(String... arguments) {
    System.setProperty("java.awt.headless", "true");
    if (arguments.length > 0) {
      System.out.println(answered(arguments[0]));
      return;
    }
    try {
      System.out.println(presented(FOLDER));
    } catch (IOException e) {
      System.err.println(e.getMessage());
      System.exit(1);
    }
  }

  /** Judges the answer, or shows it. */
  String answered(String argument) {
    return argument.equals(SHOW)
        ? exercise.shown() + "\n" + exercise.arithmetic()
        : exercise.judged(argument);
  }

  /** Returns the lesson as a text, and writes its picture as SVG and PNG. */
  String presented(Path folder) throws IOException {
    Files.createDirectories(folder);
    picture.save(folder.resolve(name + ".png"));
    StringBuilder text = new StringBuilder(title).append("\n\n");
    text.append("Question\n").append(question).append("\n\nCalculation\n");
    lines.forEach(line -> text.append(line).append('\n'));
    text.append("\nPicture\n").append(picture.save(folder.resolve(name + ".svg")));
    text.append("\n\nExercise\n").append(exercise.question());
    text.append("\nCall the program with your number to have it judged, or with \"")
        .append(SHOW)
        .append("\".\n");
    if (!hazards.isEmpty()) {
      text.append("\nCautions\n");
      Caution.of(hazards).forEach(caution -> text.append("- ").append(caution).append('\n'));
      text.append(
          "Local rules, the supplier's safety data sheet and trained people have the last word.\n");
    }
    return text.toString();
  }
}
