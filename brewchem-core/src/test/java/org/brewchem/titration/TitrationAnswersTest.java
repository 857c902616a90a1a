package org.brewchem.titration;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mV;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.titration.Reading.reading;
import static org.brewchem.titration.Weighing.khp;
import static org.brewchem.titration.Weighing.sodiumCarbonate;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Step;
import org.brewchem.figure.StructuredAnswer;
import org.brewchem.quantity.TitrationAlkalinity;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Figures;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.substance.PrimaryBuffer;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** Every answer of the room is walked: it has an explanation, and what it shows holds. */
class TitrationAnswersTest {

  private static final Titrant LYE =
      Titrant.sodiumHydroxide().standardised(khp(g(0.4082), mL(19.94)), khp(g(0.4107), mL(20.07)));

  private static final Titrant ACID =
      Titrant.hydrochloricAcid()
          .standardised(
              sodiumCarbonate(g(0.0212), mL(19.98)), sodiumCarbonate(g(0.0208), mL(19.6)));

  private static final SampleTitration BEER = LYE.titrate(mL(25)).prediluted(2).blank(mL(0.05));

  private static TitrationLog acetic() {
    Solution sample = Solution.at(celsius(20)).with(Acid.ACETIC, mmolPerL(50));
    double[] volumes = volumes(34, 0.5);
    double[] read =
        shown(SimulatedTitration.of(sample, LYE.solution(celsius(20)), mL(25)).pHAfter(volumes));
    return LYE.titrate(mL(25)).log(volumes, read);
  }

  private static TitrationLog water() {
    Solution sample =
        Solution.at(celsius(20))
            .with(Base.SODIUM_BICARBONATE, mmolPerL(2))
            .with(Base.SODIUM_CARBONATE, mmolPerL(0.5));
    double[] volumes = volumes(300, 0.1);
    double[] read =
        shown(SimulatedTitration.of(sample, ACID.solution(celsius(20)), mL(100)).pHAfter(volumes));
    return ACID.titrate(mL(100)).log(volumes, read);
  }

  /** What a meter shows: readings without any scatter leave a fit nothing to judge itself by. */
  private static double[] shown(double[] pH) {
    return Arrays.stream(pH).map(read -> Math.round(1000 * read) / 1000.0).toArray();
  }

  private static double[] volumes(int count, double step) {
    double[] volumes = new double[count];
    for (int i = 0; i < count; i++) {
      volumes[i] = i * step;
    }
    return volumes;
  }

  /**
   * What {@link SampleTitration} finds from volumes, by whichever of these titrations a method
   * accepts, so that a new method is walked without an entry.
   */
  private static List<Determination<?>> ofVolumes() throws ReflectiveOperationException {
    List<Determination<?>> all = new ArrayList<>();
    for (Method method : SampleTitration.class.getMethods()) {
      if (method.getParameterCount() == 0
          && Determination.class.isAssignableFrom(method.getReturnType())) {
        int before = all.size();
        for (SampleTitration titration :
            List.of(
                BEER.took(mL(8.05), mL(8.07)),
                LYE.titrate(mL(100)).to(pH(8.3)).took(mL(1.5)),
                ACID.titrate(mL(100)).took(mL(21.5)))) {
          try {
            all.add((Determination<?>) method.invoke(titration));
          } catch (InvocationTargetException refused) {
            assertInstanceOf(IllegalStateException.class, refused.getCause(), method.getName());
          }
        }
        assertTrue(before < all.size(), method.getName() + ": add a titration that it accepts");
      }
    }
    return all;
  }

  /** What the room answers with, from every kind of measurement. */
  private static List<Object> answering() throws ReflectiveOperationException {
    List<Object> all = new ArrayList<>(ofVolumes());
    all.add(LYE);
    all.add(ACID.standardisation().orElseThrow());
    all.add(Titrant.sulfuricAcid().of(molPerL(0.05)));
    all.add(LYE.titrateToPhenolphthalein(mL(25)).took(mL(7.55)).acidity());
    all.add(acetic().acidity());
    TitrationLog water = water();
    AlkalinityCurve curve = water.alkalinityCurve();
    all.add(curve.to(pH(4.5)));
    all.add(curve.toFittingEndPoint());
    all.add(curve.toInflection());
    all.add(curve.byGran());
    all.add(curve.split());
    all.add(water.to(pH(4.5)).alkalinity());
    all.add(
        ACID.titrate(mL(200)).lowAlkalinity(reading(mL(3.2), pH(4.5)), reading(mL(3.6), pH(4.2))));
    all.add(
        AlkalinitySplit.of(
            TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(0, pH(8.3)),
            TitrationAlkalinity.ofMilligramsPerLitreAsCaCO3(500, pH(4.5))));
    all.add(
        ElectrodeCalibration.of(
            celsius(20),
            CalibrationReading.of(PrimaryBuffer.PHTHALATE, mV(168.9)),
            CalibrationReading.of(PrimaryBuffer.PHOSPHATE, mV(4.1)),
            CalibrationReading.of(PrimaryBuffer.CARBONATE, mV(-176.9))));
    WeakAcidCurve weak = WeakAcidCurve.of(acetic(), Chemistry.standard());
    all.add(weak);
    all.add(
        CurveFit.of(Solution.at(celsius(20)), ACID.solution(celsius(20)))
            .unknownInertCharge()
            .unknownTotal(Component.CARBONATE)
            .to(water));
    return all;
  }

  private static Map<String, Answer<?>> answers() throws ReflectiveOperationException {
    Map<String, Answer<?>> answers = new LinkedHashMap<>();
    int number = 0;
    for (Object from : answering()) {
      number++;
      for (Method method : from.getClass().getMethods()) {
        String name = number + " " + from.getClass().getSimpleName() + "." + method.getName();
        if (method.getReturnType() != Answer.class) {
          continue;
        }
        if (method.getParameterCount() == 0) {
          answers.put(name, (Answer<?>) method.invoke(from));
        } else if (method.getName().equals("as")) {
          answers.put(name, (Answer<?>) method.invoke(from, Acid.LACTIC));
        } else if (from instanceof CurveFit && method.getName().equals("total")) {
          answers.put(name, (Answer<?>) method.invoke(from, Component.CARBONATE));
        }
      }
    }
    return answers;
  }

  @Test
  void everyAnswerHasAnExplanationThatHolds() throws ReflectiveOperationException {
    Map<String, Answer<?>> answers = answers();
    for (Map.Entry<String, Answer<?>> entry : answers.entrySet()) {
      Answer<?> answer = entry.getValue();
      String text = entry.getKey() + ": " + answer.explain();
      assertTrue(answer.isStated(), text);
      Step last = answer.explain().root();
      boolean statedByALabel = last.kind() == Step.Kind.STATED && last.inputs().isEmpty();
      assertTrue(statedByALabel || last.detail().isPresent(), text);
      assertTrue(answer.explain().holds(), text);
      assertEquals(answer.structured(), StructuredAnswer.from(answer.structured().toMap()), text);
    }
    assertTrue(answers.size() > 30, answers.keySet().toString());
  }

  /** The walk above meets every public method of the room that returns an answer. */
  @Test
  void noAnswerOfTheRoomIsLeftOut() throws Exception {
    Set<String> walked = new TreeSet<>();
    answering().forEach(from -> methods(from.getClass()).forEach(walked::add));
    Set<String> declared = new TreeSet<>();
    try (Stream<Path> files = Files.list(Path.of("src/main/java/org/brewchem/titration"))) {
      for (Path file : (Iterable<Path>) files::iterator) {
        String name = file.getFileName().toString().replace(".java", "");
        if (!name.equals("package-info")) {
          Class<?> type = Class.forName("org.brewchem.titration." + name);
          methods(type).forEach(declared::add);
        }
      }
    }
    assertEquals(declared, walked);
  }

  private static List<String> methods(Class<?> type) {
    return Stream.of(type.getMethods())
        .filter(m -> m.getReturnType() == Answer.class && Modifier.isPublic(m.getModifiers()))
        .map(m -> m.getDeclaringClass().getSimpleName() + "." + m.getName())
        .toList();
  }

  @Test
  void aFigureThatDoesNotApplyIsUnknown() {
    AcidityResult acidity = BEER.took(mL(8.05)).acidity();
    assertEquals(
        List.of("does not apply to a titration"),
        Answer.of(TitrationFigures.ELECTRODE_SLOPE, acidity).whyUnknown());
    assertFalse(Answer.of(Figures.titratableAcidity(pH(7)), acidity).isStated());
    assertTrue(Answer.of(Figures.titratableAcidity(pH(8.2)), acidity).isStated());
    assertEquals(
        LYE.concentration().traced(),
        Answer.of(TitrationFigures.TITRANT_CONCENTRATION, acidity).traced());
  }

  /** P and M share titrant and sample: what is left of 2 P - M counts them once. */
  @Test
  void theSplitCountsWhatPAndMShareOnce() {
    AlkalinityCurve curve = water().alkalinityCurve();
    Traced p = curve.to(pH(8.3)).answer().traced();
    Traced m = curve.to(pH(4.5)).answer().traced();
    Traced bicarbonate = curve.split().bicarbonate().traced();
    Traced titrant = ACID.concentration().traced();
    assertEquals(
        m.minus(p.times(2)).sensitivity(titrant.sources().get(0)),
        bicarbonate.sensitivity(titrant.sources().get(0)),
        1e-9);
    assertEquals(
        bicarbonate.value() / titrant.value(),
        bicarbonate.sensitivity(titrant.sources().get(0)),
        1e-6 * bicarbonate.value() / titrant.value());
  }

  /**
   * Parameters of one fit correlate: a sum of them has the u that a refit of the sum would have.
   */
  @Test
  void fittedNumbersCorrelate() {
    CurveFit fit =
        CurveFit.of(Solution.at(celsius(20)), ACID.solution(celsius(20)))
            .unknownInertCharge()
            .unknownTotal(Component.CARBONATE)
            .to(water());
    Traced charge = fit.inertCharge().traced();
    Traced carbonate = fit.total(Component.CARBONATE).traced();
    assertTrue(charge.covariance(carbonate) > 0);
    assertEquals(298, charge.degreesOfFreedom(), 1e-9);
    assertEquals(298, carbonate.degreesOfFreedom(), 1e-9);
    assertEquals(298, charge.minus(carbonate).degreesOfFreedom(), 1e-9);
  }
}
