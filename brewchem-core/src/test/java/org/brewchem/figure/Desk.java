package org.brewchem.figure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.brewchem.uncertainty.Traced;

/** Something that answers stated figures, for the tests of this package. */
final class Desk implements Answering {

  /** A code of notices. */
  enum TestCode implements Code {
    ODD;

    @Override
    public Severity severity() {
      return Severity.WARNING;
    }
  }

  static final Figure<Double> MASS = stated("mass", "g", 2);
  static final Figure<Double> VOLUME = stated("volume", "L", 3);
  static final Figure<Double> CONCENTRATION =
      ClosedForm.figure(
          "concentration",
          Scale.number("g/L", 2),
          "mass / volume",
          "definition",
          Figure.list(MASS, VOLUME),
          x -> x[1] == 0 ? Double.NaN : x[0] / x[1]);

  private final Map<Figure<?>, Traced> stated = new LinkedHashMap<>();

  static Figure<Double> stated(String name, String unit, int decimals) {
    return Figure.of(name, Map.of(), Scale.number(unit, decimals), new StatedRule());
  }

  Desk with(Figure<Double> figure, Traced value) {
    stated.put(figure, value);
    return this;
  }

  Desk with(Figure<Double> figure, double value, double u) {
    return with(
        figure, Traced.stated(figure.name(), value, OptionalDouble.of(u), figure.shown().symbol()));
  }

  @Override
  public Step step(Figure<?> figure) {
    return figure.rule().find(figure, this);
  }

  @Override
  public String kind() {
    return "desk";
  }

  private record StatedRule() implements Figure.Rule {
    @Override
    public Step find(Figure<?> figure, Answering from) {
      Step.Builder step =
          Step.of(figure.title(), figure.scale(), Step.Kind.STATED).origin(Origin.MEASURED);
      Traced value = ((Desk) from).stated.get(figure);
      return value == null
          ? step.unknown(List.of(figure.name() + " was not read"))
          : step.notices(
                  value.value() > 1000
                      ? List.of(Notice.of(TestCode.ODD, figure.name(), "large " + figure.name()))
                      : List.of())
              .found(value);
    }

    @Override
    public String text() {
      return "as read";
    }
  }
}
