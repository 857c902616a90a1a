package org.brewchem.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is drawn once, independently of the others, and moves one input or more: the error of an
 * input, or, where inputs share what moves them, the error of each of their sources.
 */
final class DrawnError {

  private final String name;
  private final Distribution distribution;
  private final double standardUncertainty;
  private final double degreesOfFreedom;
  private final Object scatter;
  private int[] inputs = {};
  private double[] slopes = {};

  private DrawnError(
      String name,
      Distribution distribution,
      double standardUncertainty,
      double degreesOfFreedom,
      Object scatter) {
    this.name = name;
    this.distribution = distribution;
    this.standardUncertainty = standardUncertainty;
    this.degreesOfFreedom = degreesOfFreedom;
    this.scatter = scatter;
  }

  /** The errors of the inputs of a model, in the order of the inputs that they move first. */
  static List<DrawnError> of(List<Input> inputs) {
    Set<Object> shared = shared(inputs);
    Map<Source, Distribution> shapes = new HashMap<>();
    for (Input input : inputs) {
      if (input.distribution() == Distribution.UNIFORM
          || input.distribution() == Distribution.TRIANGULAR) {
        shapes.put(input.traced().sources().get(0), input.distribution());
      }
    }
    Map<Source, DrawnError> ofSources = new HashMap<>();
    List<DrawnError> errors = new ArrayList<>();
    for (int i = 0; i < inputs.size(); i++) {
      Input input = inputs.get(i);
      Traced traced = input.traced();
      if (input.standardUncertainty() == 0) {
        continue;
      }
      if (moving(traced).stream().noneMatch(source -> shared.contains(source.scatter()))) {
        DrawnError error =
            new DrawnError(
                input.name(),
                input.distribution(),
                input.standardUncertainty(),
                input.degreesOfFreedom(),
                input);
        error.move(i, 1);
        errors.add(error);
        continue;
      }
      for (Source source : moving(traced)) {
        DrawnError error = ofSources.get(source);
        if (error == null) {
          error = ofSource(source, shapes);
          ofSources.put(source, error);
          errors.add(error);
        }
        error.move(i, traced.sensitivity(source));
      }
    }
    return List.copyOf(errors);
  }

  private static DrawnError ofSource(Source source, Map<Source, Distribution> shapes) {
    Distribution usual =
        Double.isInfinite(source.degreesOfFreedom()) ? Distribution.NORMAL : Distribution.STUDENT;
    return new DrawnError(
        source.name(),
        shapes.getOrDefault(source, usual),
        source.standardUncertainty().orElseThrow(),
        source.degreesOfFreedom(),
        source.scatter());
  }

  /** What the sources of two inputs or more were found from. */
  private static Set<Object> shared(List<Input> inputs) {
    Map<Object, Integer> counts = new LinkedHashMap<>();
    for (Input input : inputs) {
      Set<Object> once = new HashSet<>();
      moving(input.traced()).forEach(source -> once.add(source.scatter()));
      once.forEach(scatter -> counts.merge(scatter, 1, Integer::sum));
    }
    counts.values().removeIf(count -> count < 2);
    return counts.keySet();
  }

  private static List<Source> moving(Traced traced) {
    return traced.parts().entrySet().stream()
        .filter(part -> part.getValue() != 0)
        .map(Map.Entry::getKey)
        .toList();
  }

  private void move(int input, double slope) {
    inputs = Arrays.copyOf(inputs, inputs.length + 1);
    slopes = Arrays.copyOf(slopes, slopes.length + 1);
    inputs[inputs.length - 1] = input;
    slopes[slopes.length - 1] = slope;
  }

  String name() {
    return name;
  }

  Distribution distribution() {
    return distribution;
  }

  double standardUncertainty() {
    return standardUncertainty;
  }

  double degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /** What the standard uncertainty was found from; errors that share it are wide together. */
  Object scatter() {
    return scatter;
  }

  /** Adds this error to what it moves. */
  void addTo(double[] values, double error) {
    for (int k = 0; k < inputs.length; k++) {
      values[inputs[k]] += slopes[k] * error;
    }
  }

  /** How much a result moves with this error that moves with the inputs. */
  double sensitivity(double[] ofInputs) {
    double sum = 0;
    for (int k = 0; k < inputs.length; k++) {
      sum += ofInputs[inputs[k]] * slopes[k];
    }
    return sum;
  }

  /** Whether the distribution has a moment of that order: Student's t only below its dof. */
  boolean hasMoment(int order) {
    return distribution != Distribution.STUDENT || degreesOfFreedom > order;
  }

  /** The standard deviation of the distribution that is drawn from, above u for Student's t. */
  double distributionStandardDeviation() {
    return distribution == Distribution.STUDENT
        ? standardUncertainty * Math.sqrt(degreesOfFreedom / (degreesOfFreedom - 2.0))
        : standardUncertainty;
  }
}
