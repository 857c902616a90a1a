package org.brewchem.checks.frozen;

import org.brewchem.checks.CsvTable;
import org.brewchem.quantity.AmountOfSubstance;
import org.brewchem.quantity.Density;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Component;
import org.brewchem.substance.ConstantSet;
import org.brewchem.substance.EquilibriumConstant;
import org.brewchem.substance.Gas;
import org.brewchem.substance.IonPair;
import org.brewchem.substance.PairSet;
import org.brewchem.substance.Reagent;

/** Molar masses, constants over temperature, reagents and what acids deliver. */
final class FrozenSubstances {

  private static final double[] CELSIUS = {5, 20, 25, 65};
  private static final double[] BATH_CELSIUS = {5, 12.5, 20, 25, 30};
  private static final double[] END_POINTS = {4.3, 5.4, 7, 8.2};

  private FrozenSubstances() {}

  static void compute(FrozenFigures figures) {
    Named.ACIDS.forEach((name, acid) -> acid(figures.of(name), acid));
    Named.BASES.forEach(
        (name, base) -> {
          figures.of(name).number("molar mass", "g/mol", base.molarMass().inGramsPerMole());
          figures.of(name).number("equivalent", "g", base.gramsPerEquivalent());
        });
    Named.SALTS.forEach(
        (name, salt) ->
            figures
                .of("salt " + name)
                .number("molar mass", "g/mol", salt.molarMass().inGramsPerMole()));
    Named.IONS.forEach(
        (name, ion) -> {
          figures.of("ion " + name).number("molar mass", "g/mol", ion.molarMass().inGramsPerMole());
          figures.of("ion " + name).number("charge", "", ion.charge());
        });
    Named.MINERALS.forEach(
        (name, mineral) -> {
          FrozenFigures.Of of = figures.of("mineral " + name);
          of.number("molar mass", "g/mol", mineral.molarMass().inGramsPerMole());
          overTemperature(of, "log10 of the solubility constant", mineral.constant());
        });
    Named.PRIMARY_BUFFERS.forEach(
        (name, buffer) -> {
          FrozenFigures.Of of = figures.of("primary buffer " + name);
          for (double celsius : BATH_CELSIUS) {
            of.attempt(
                "at " + celsius + " °C",
                () -> buffer.pH(Temperature.ofCelsius(celsius)),
                pH -> of.number("pH at " + celsius + " °C", "", pH.value()));
          }
        });
    constants(figures);
    for (CsvTable.Line line : CsvTable.read("frozen/reagents.csv", 26).lines()) {
      reagent(figures.of(line.text("id")), reagent(line));
    }
  }

  private static void acid(FrozenFigures.Of of, Acid acid) {
    of.number("molar mass", "g/mol", acid.molarMass().inGramsPerMole());
    of.number("protons by definition", "", acid.protonsByDefinition());
    of.number("equivalent", "g", acid.gramsPerEquivalent());
    EffectiveEquivalents standard = EffectiveEquivalents.of(acid);
    EffectiveEquivalents cold =
        EffectiveEquivalents.of(acid, Temperature.ofCelsius(10), Chemistry.standard());
    for (double endPoint : END_POINTS) {
      of.number("equivalents delivered to pH " + endPoint, "", standard.at(PH.of(endPoint)));
      of.number("equivalents at 10 °C to pH " + endPoint, "", cold.at(PH.of(endPoint)));
    }
    of.number("equivalents between pH 4.4 and 8.2", "", standard.between(PH.of(4.4), PH.of(8.2)));
  }

  private static void constants(FrozenFigures figures) {
    ConstantSet constants = ConstantSet.standard();
    for (Component component : constants.components()) {
      int step = 0;
      for (EquilibriumConstant constant : constants.of(component)) {
        step++;
        overTemperature(
            figures.of("component " + component.key()), "log10 of step " + step, constant);
      }
    }
    for (IonPair pair : PairSet.withAlkaliPairs().pairs()) {
      overTemperature(
          figures.of("pair " + pair.product()), "log10 of the constant", pair.constant());
    }
    FrozenFigures.Of water = figures.of("water");
    for (double celsius : CELSIUS) {
      water.number(
          "log10 of the ion product at " + celsius + " °C",
          "",
          Chemistry.standard().log10IonProduct(Temperature.ofCelsius(celsius).inKelvin()));
    }
    overTemperature(
        figures.of("gas carbon dioxide"),
        "log10 of the solubility",
        Gas.CARBON_DIOXIDE.solubility());
  }

  private static void overTemperature(
      FrozenFigures.Of of, String name, EquilibriumConstant constant) {
    for (double celsius : CELSIUS) {
      of.number(
          name + " at " + celsius + " °C",
          "",
          constant.log10(Temperature.ofCelsius(celsius).inKelvin()));
    }
    of.number("u of " + name, "", constant.uncertainty());
  }

  /** Returns the reagent of an input, for the doses of other rooms too. */
  static Reagent reagent(String id) {
    return reagent(CsvTable.read("frozen/reagents.csv", 26).only("id", id));
  }

  private static Reagent reagent(CsvTable.Line line) {
    Reagent reagent =
        Reagent.of(
            Named.reagentCompound(line.text("compound")),
            MassFraction.ofMassPercent(line.number("assay")));
    if (!line.isEmpty("u_assay")) {
      reagent = reagent.withAssayUncertainty(line.number("u_assay") / line.number("assay"));
    }
    if (!line.isEmpty("density")) {
      reagent =
          reagent.withDensity(
              Density.ofGramsPerMillilitre(line.number("density")), line.number("u_density"));
    }
    if (!line.isEmpty("bound")) {
      reagent = reagent.withBoundInEsters(MassFraction.ofMassPercent(line.number("bound")));
    }
    return reagent;
  }

  private static void reagent(FrozenFigures.Of of, Reagent reagent) {
    AmountOfSubstance amount = AmountOfSubstance.ofMoles(2.5);
    of.number("mass that holds 2.5 mol", "g", reagent.massOf(amount).inGrams());
    of.number("amount in 1.7 kg", "mol", reagent.amountIn(Mass.ofKilograms(1.7)).inMoles());
    of.number("relative u by mass", "", reagent.relativeStandardUncertaintyByMass());
    of.number("relative u by volume", "", reagent.relativeStandardUncertaintyByVolume());
    of.number("density", "g/mL", reagent.density(), Density::inGramsPerMillilitre);
    of.attempt(
        "by volume",
        () -> reagent.volumeOf(amount),
        volume -> {
          of.number("volume that holds 2.5 mol", "mL", volume.inMillilitres());
          of.number("amount in 1.3 L", "mol", reagent.amountIn(Volume.ofLitres(1.3)).inMoles());
          of.number("mass of 1.3 L", "g", reagent.massOf(Volume.ofLitres(1.3)).inGrams());
          of.number(
              "volume of 1.7 kg", "mL", reagent.volumeOf(Mass.ofKilograms(1.7)).inMillilitres());
          of.number("concentration", "mol/L", reagent.concentration().inMolesPerLitre());
          of.number(
              "concentration of free acid",
              "mol/L",
              reagent.freeConcentration(),
              free -> free.inMolesPerLitre());
        });
  }
}
