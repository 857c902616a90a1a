package org.brewchem.examples.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.brewchem.pictures.DrawnPicture;
import org.brewchem.pictures.Ground;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Runs each lesson. The answer of its exercise is compared with the arithmetic that a reader does
 * by hand, from nothing but the constants that the exercise states.
 */
class LessonsTest {

  private static final Path ROOT = Path.of("").toAbsolutePath().getParent().getParent();

  @TempDir private Path folder;

  static List<Arguments> lessons() {
    double h = Math.pow(10, -5.4);
    double first = Math.pow(10, -6.35);
    double bicarbonate = 1 / (1 + h / first + Math.pow(10, -10.33) / h);
    double root = Math.sqrt(0.1);
    double davies = 0.509 * (root / (1 + root) - 0.3 * 0.1);
    return List.of(
        Arguments.of(TitrationCurvesLesson.lesson(), 5 * (1 + 10.0 / 11), 0.005),
        Arguments.of(DistributionDiagramLesson.lesson(), 100 * bicarbonate, 1e-6),
        Arguments.of(
            BufferCapacityLesson.lesson(),
            Math.log(10) * (20.0 / 4 + 1000 * Math.pow(10, -4.76)),
            1e-5),
        Arguments.of(AlkalinityUsedUpLesson.lesson(), 4 * (1 - bicarbonate) + 1000 * h, 0.001),
        Arguments.of(ThreeLevelsLesson.lesson(), 7.20 + davies - 4 * davies, 0.005),
        Arguments.of(
            EffectiveEquivalentsLesson.lesson(),
            0.300 * 97.99 / phosphoricAt(5.4, 2.15, 7.20),
            0.005),
        Arguments.of(LimeSofteningLesson.lesson(), (1.1 + 5.0 / 2) * 74.09 / 10, 0.01),
        Arguments.of(
            UncertaintyBudgetLesson.lesson(),
            2
                * (100.2 * 10 / 50)
                * Math.sqrt(
                    Math.pow(0.2 / 100.2, 2) + Math.pow(0.03 / 10, 2) + Math.pow(0.05 / 50, 2)),
            1e-6));
  }

  /** Protons that a mole has given, the third left out. */
  private static double phosphoricAt(double pH, double first, double second) {
    double one = Math.pow(10, pH - first);
    double two = one * Math.pow(10, pH - second);
    return (one + 2 * two) / (1 + one + two);
  }

  @ParameterizedTest
  @MethodSource("lessons")
  void theExerciseComesOutByHand(Lesson lesson, double byHand, double tolerance) {
    Lesson.Exercise exercise = lesson.exercise();
    assertEquals(byHand, exercise.answer(), tolerance, lesson.title());
    String shown = exercise.shown();
    assertTrue(lesson.answered("answer").startsWith(shown + "\n"));
    assertTrue(exercise.arithmetic().length() > 20);
    String typed = shown.substring(0, (shown + " ").indexOf(' '));
    assertTrue(lesson.answered(typed).startsWith("right: " + shown), lesson.answered(typed));
    String wrong = String.valueOf(exercise.answer() + 1.5 * exercise.tolerance());
    assertTrue(lesson.answered(wrong).startsWith(wrong + " is not it"), lesson.answered(wrong));
    assertTrue(lesson.answered("3,6").contains("\"3,6\" is not a number"));
  }

  @ParameterizedTest
  @MethodSource("lessons")
  void aLessonAsksFirstAndItsPictureCanBeReadOnEachGround(Lesson lesson) throws IOException {
    String text = lesson.presented(folder);
    List<Integer> places =
        Stream.of("\nQuestion\n", "\nCalculation\n", "\nPicture\n", "\nExercise\n")
            .map(text::indexOf)
            .toList();
    assertEquals(places.stream().sorted().toList(), places);
    assertTrue(places.get(0) > 0);
    assertEquals(!lesson.hazards().isEmpty(), text.contains("\nCautions\n"));
    assertTrue(lesson.question().contains("?"));
    Path png = folder.resolve(lesson.name() + ".png");
    assertTrue(Files.size(png) > 10_000);
    for (Ground ground : Ground.values()) {
      Path path = folder.resolve(ground + ".svg");
      lesson.picture().on(ground).save(path);
      assertEquals(List.of(), DrawnPicture.read(path).problems(), lesson.name());
    }
  }

  @Test
  void thePageListsEachLesson() throws IOException {
    String page = Files.readString(ROOT.resolve("docs/lessons.md"));
    List<String> unlisted;
    try (Stream<Path> files =
        Files.list(
            ROOT.resolve(
                "brewchem-examples/programs/src/main/java/org/brewchem/examples/lessons"))) {
      unlisted =
          files
              .map(file -> file.getFileName().toString().replace(".java", ""))
              .filter(name -> name.endsWith("Lesson") && !name.equals("Lesson"))
              .filter(name -> !page.contains("`" + name + "`"))
              .collect(Collectors.toList());
    }
    assertEquals(List.of(), unlisted);
    lessons()
        .forEach(
            arguments -> {
              String title = ((Lesson) arguments.get()[0]).title();
              assertTrue(page.contains(title), title);
            });
  }
}
