package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Explanation;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.solution.Figures;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/**
 * Walks every public method of the core that returns an answer, asks it of a sample, and holds its
 * explanation against what it explains.
 */
class EveryAnswerIsExplainedTest {

  /** Methods that hand on an answer, or ask a row by the single route, which is walked here. */
  private static final List<String> HANDED_ON =
      List.of(
          "Answer.of",
          "Answer.in",
          "Liquid.answer",
          "Judgement.answer",
          "Waters.answer",
          "Acidities.answer",
          "Beers.answer");

  /** The room whose own test walks its answers, and fails when it leaves one out. */
  private static final String WALKED_ELSEWHERE = "org.brewchem.titration";

  @Test
  void everyPublicAnswerHasAnExplanationThatHolds() throws ReflectiveOperationException {
    Map<String, Object> samples = AnswerSamples.all();
    List<String> faults = new ArrayList<>();
    int asked = 0;
    for (Method method : methodsThatAnswer()) {
      String name = method.getDeclaringClass().getSimpleName() + "." + method.getName();
      if (HANDED_ON.contains(name)) {
        continue;
      }
      Object sample = samples.get(method.getDeclaringClass().getName());
      if (sample == null) {
        faults.add(name + ": there is no sample of " + method.getDeclaringClass().getName());
        continue;
      }
      List<Object> arguments = new ArrayList<>();
      for (Class<?> type : method.getParameterTypes()) {
        Object argument = AnswerSamples.ARGUMENTS.get(type);
        if (argument == null) {
          faults.add(name + ": there is no sample argument of " + type.getName());
        }
        arguments.add(argument);
      }
      Answer<?> answer;
      try {
        answer = (Answer<?>) method.invoke(sample, arguments.toArray());
      } catch (InvocationTargetException | IllegalArgumentException e) {
        faults.add(name + ": " + (e.getCause() == null ? e : e.getCause()));
        continue;
      }
      asked++;
      check(name, answer).ifPresent(faults::add);
    }
    assertEquals(List.of(), faults);
    assertTrue(asked >= 35, "only " + asked + " answers were asked");
  }

  private static Optional<String> check(String name, Answer<?> answer) {
    if (!answer.isStated()) {
      return Optional.of(name + ": the sample should answer, but is " + answer);
    }
    Explanation explanation = answer.explain();
    if (explanation.lines().isEmpty()) {
      return Optional.of(name + ": no explanation");
    }
    Step last = explanation.root();
    boolean computed = last.kind() != Step.Kind.STATED;
    if (computed && last.text().isEmpty()) {
      return Optional.of(name + ": the last step does not say how");
    }
    if (computed && last.detail().isEmpty()) {
      return Optional.of(name + ": the last line shows nothing that could hold");
    }
    return explanation.holds()
        ? Optional.empty()
        : Optional.of(name + ": does not hold\n" + explanation);
  }

  @Test
  void anExplanationThatDoesNotHoldIsFound() {
    Answer<?> wrong =
        Answer.of(
            Figures.PH_VALUE,
            Step.of("pH", Scales.PH_SCALE, Step.Kind.ROOT)
                .text("root of the charge balance", "")
                .detail(() -> new Step.Detail(List.of("sum of charges"), 1e-9, 1e-10))
                .found(Traced.exact(7)));
    assertTrue(check("wrong", wrong).isPresent());
    assertFalse(wrong.explain().holds());
  }

  private static List<Method> methodsThatAnswer() {
    Map<String, Method> methods = new LinkedHashMap<>();
    for (JavaClass imported :
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.brewchem")) {
      if (imported.getPackageName().equals("org.brewchem.internal")
          || imported.getPackageName().equals(WALKED_ELSEWHERE)) {
        continue;
      }
      Class<?> type = imported.reflect();
      if (!Modifier.isPublic(type.getModifiers())) {
        continue;
      }
      for (Method method : type.getDeclaredMethods()) {
        if (Modifier.isPublic(method.getModifiers())
            && !method.isBridge()
            && Answer.class.equals(method.getReturnType())
            && !Figure.class.equals(type)) {
          methods.put(method.toGenericString(), method);
        }
      }
    }
    return List.copyOf(methods.values());
  }
}
