package org.brewchem.solution;

import static org.brewchem.solution.Figures.CARBONATE_ALKALINITY;
import static org.brewchem.solution.Figures.CHLORIDE;
import static org.brewchem.solution.Figures.IONIC_STRENGTH;
import static org.brewchem.solution.Figures.PH;
import static org.brewchem.solution.Figures.POTASSIUM;
import static org.brewchem.solution.Figures.titratableAcidity;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Step;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.quantity.Temperature;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Source;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

class ContentsTest {

  private static final Temperature AT = Temperature.ofCelsius(25);
  private static final Traced ALKALINITY = read("alkalinity", 4.3e-3, 0.1e-3);
  private static final Traced MEASURED = read("pH", 7.6, 0.05);

  private static Traced read(String name, double value, double u) {
    return Traced.of(Source.of(name, value, u, ""));
  }

  private static Contents ions() {
    return Contents.pure(AT, Chemistry.standard())
        .withTotal(Component.CALCIUM, read("calcium", 2.3e-3, 0.05e-3))
        .withTotal(Component.MAGNESIUM, read("magnesium", 0.45e-3, 0.02e-3))
        .withTotal(Component.SULFATE, read("sulfate", 0.47e-3, 0.01e-3))
        .withTotal(Component.CHLORIDE, read("chloride", 0.87e-3, 0.02e-3))
        .withUnknown(Component.POTASSIUM);
  }

  private static Contents water() {
    return CarbonateClosure.of(ions(), List.of()).byPH(ALKALINITY, MEASURED);
  }

  /** A liquid that is nothing but contents. */
  private record Held(Contents contents) implements Liquid {
    @Override
    public Liquid after(Treatment... steps) {
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

  @Test
  void whatWasReadComesBackWithItsOwnUncertainty() {
    Held water = new Held(water());
    Answer<?> pH = water.answer(PH);
    assertEquals(7.6, pH.number(), 1e-9);
    assertEquals(0.05, pH.standardUncertainty().orElseThrow(), 0.0005);
    Answer<?> alkalinity = water.answer(CARBONATE_ALKALINITY);
    double perEquivalent = 50043.6 * water.contents().kilogramsPerLitre();
    assertEquals(4.3e-3 * perEquivalent, alkalinity.number(), 1e-2);
    assertEquals(
        0.1e-3 * perEquivalent, alkalinity.standardUncertainty().orElseThrow(), 0.01 * 5.0);
  }

  @Test
  void titratedAlkalinityComesBackToo() {
    org.brewchem.quantity.PH end = org.brewchem.quantity.PH.of(4.5);
    Contents closed = CarbonateClosure.of(ions(), List.of()).byTitration(ALKALINITY, end, MEASURED);
    Answer<?> back = new Held(closed).answer(Figures.titrationAlkalinity(end));
    assertEquals(4.3 * closed.kilogramsPerLitre(), back.number(), 1e-9);
    assertEquals(0.1, back.standardUncertainty().orElseThrow(), 0.001);
  }

  @Test
  void saltLeavesTheUncertaintyOfAlkalinityAsItWas() {
    Map<Component, Traced> gypsum =
        Map.of(Component.CALCIUM, Traced.exact(1e-3), Component.SULFATE, Traced.exact(1e-3));
    double before =
        new Held(water()).answer(CARBONATE_ALKALINITY).standardUncertainty().orElseThrow();
    double after =
        new Held(water().plus(gypsum))
            .answer(CARBONATE_ALKALINITY)
            .standardUncertainty()
            .orElseThrow();
    assertEquals(before, after, 0.01 * before);
  }

  @Test
  void mixedWithItselfKeepsItsUncertainty() {
    Contents water = water();
    Contents twice = water.mixed(water, Traced.exact(0.3));
    assertEquals(
        new Held(water).answer(CHLORIDE).standardUncertainty().orElseThrow(),
        new Held(twice).answer(CHLORIDE).standardUncertainty().orElseThrow(),
        1e-12);
    assertEquals(0.05, new Held(twice).answer(PH).standardUncertainty().orElseThrow(), 0.0005);
  }

  @Test
  void unknownConstituentIsNamedAndItsFigureUnknown() {
    Held water = new Held(water());
    Answer<?> potassium = water.answer(POTASSIUM);
    assertFalse(potassium.isStated());
    assertEquals("unknown: potassium is not reported", potassium.toString());
    assertThrows(UnknownFigureException.class, potassium::value);
    assertTrue(
        water.answer(PH).notices().stream()
            .anyMatch(n -> n.toString().equals("counted as absent: potassium")));
  }

  @Test
  void openBalanceSaysWhatIsMissing() {
    Held open = new Held(ions().open(List.of("alkalinity is not reported")));
    assertEquals("unknown: alkalinity is not reported", open.answer(PH).toString());
    assertTrue(open.answer(CHLORIDE).isStated());
  }

  @Test
  void explanationsHold() {
    Held water = new Held(water());
    for (var figure :
        Figure.list(
            PH,
            CARBONATE_ALKALINITY,
            IONIC_STRENGTH,
            CHLORIDE,
            Figures.BUFFER_CAPACITY,
            Figures.CARBON_DIOXIDE_PRESSURE,
            Figures.SULFATE_TO_CHLORIDE,
            titratableAcidity(org.brewchem.quantity.PH.of(8.2)))) {
      Answer<?> answer = water.answer(figure);
      assertTrue(answer.explain().holds(), () -> figure + "\n" + answer.explain());
      assertTrue(answer.explain().lines().size() > 1);
    }
  }
}
