package org.brewchem.solution;

import java.util.List;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;

/** A liquid that is nothing but contents, invented waters and beers among them. */
public record Held(Contents contents) implements Liquid {

  public static final Temperature AT = Temperature.ofCelsius(20);

  public static Traced read(String name, double value, double u) {
    return Traced.of(Source.of(name, value, u, ""));
  }

  /** A hard water, every figure with its u. */
  public static Held water() {
    Contents ions =
        Contents.pure(AT, Chemistry.standard())
            .withTotal(Component.CALCIUM, read("calcium", 2.3e-3, 0.05e-3))
            .withTotal(Component.MAGNESIUM, read("magnesium", 0.45e-3, 0.02e-3))
            .withTotal(Component.SULFATE, read("sulfate", 0.47e-3, 0.01e-3))
            .withTotal(Component.CHLORIDE, read("chloride", 0.87e-3, 0.02e-3));
    return new Held(
        CarbonateClosure.of(ions, List.of())
            .byPH(read("alkalinity", 4.3e-3, 0.1e-3), read("pH", 7.6, 0.05)));
  }

  /** A sour beer as its buffers, closed to a measured pH. */
  public static Held beer() {
    return new Held(
        Contents.pure(AT, Chemistry.standard())
            .withTotal(Component.PHOSPHATE, read("phosphate", 6e-3, 0.2e-3))
            .withTotal(Component.LACTATE, read("lactate", 3e-3, 0.1e-3))
            .withTotal(Component.ACETATE, read("acetate", 2e-3, 0.1e-3))
            .withTotal(Component.CITRATE, read("citrate", 1e-3, 0.05e-3))
            .withTotal(Component.MALATE, read("malate", 0.8e-3, 0.05e-3))
            .withTotal(Component.SUCCINATE, read("succinate", 0.7e-3, 0.05e-3))
            .withTotal(Component.CARBONATE, read("carbonate", 2e-3, 0.1e-3))
            .withTotal(Component.CALCIUM, read("calcium", 1.5e-3, 0.05e-3))
            .withTotal(Component.MAGNESIUM, read("magnesium", 3e-3, 0.1e-3))
            .withTotal(Component.POTASSIUM, read("potassium", 12e-3, 0.3e-3))
            .withTotal(Component.SODIUM, read("sodium", 1.5e-3, 0.05e-3))
            .withTotal(Component.CHLORIDE, read("chloride", 5e-3, 0.1e-3))
            .withTotal(Component.SULFATE, read("sulfate", 2e-3, 0.1e-3))
            .closedTo(read("pH", 4.38, 0.02)));
  }

  @Override
  public Held after(Treatment... steps) {
    Contents after = contents;
    for (Treatment step : steps) {
      after = step.on(after);
    }
    return new Held(after);
  }

  @Override
  public Step step(Figure<?> figure) {
    return figure.rule().find(figure, this);
  }

  @Override
  public String kind() {
    return "liquid";
  }

  @Override
  public List<Notice> notices() {
    return contents.notices();
  }

  @Override
  public List<Caution> cautions() {
    return List.of();
  }
}
