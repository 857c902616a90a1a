package org.brewchem.treatment;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.brewchem.quantity.Temperature;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Held;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.junit.jupiter.api.Test;

class AdditionTest {

  private static final Contents WATER = Held.water().contents();

  private static String notices(Temperature at, Treatment treatment) {
    return treatment.on(Contents.pure(at, Chemistry.standard())).notices().toString();
  }

  /** By hand: a litre has 0.9982 kg, as at 20 °C. */
  @Test
  void whatDoesNotDissolveIsCountedToTheKilogramOfWaterThatThereIs() {
    String salt = notices(celsius(60), Treatments.base(Base.SODIUM_BICARBONATE, gPerL(400)));
    assertTrue(salt.contains("401 g of sodium bicarbonate in a kg of water do not"), salt);
    Reagent solution = Reagent.of(Base.SODIUM_CARBONATE, massPercent(50));
    String dissolved =
        notices(
            celsius(20), Treatments.base(solution.withDensity(gPerML(1.5), 0.001), gPerL(1000)));
    // 500 g in 5/3 litres: 300 g to the litre.
    assertTrue(dissolved.contains("301 g of sodium carbonate in a kg of water"), dissolved);
  }

  /** What a search has at hand is for the liquid that it searched in, and for no other. */
  @Test
  void anAdditionPreparedForOneLiquidDoesToAnotherWhatItDoes() {
    Supply lactic = Supply.pure(Acid.LACTIC);
    Contents beer = Held.beer().contents();
    Addition addition = Addition.of(lactic, 0.001);
    Addition prepared = addition.preparedFor(beer, Mixture.prepared(beer, lactic));
    assertEquals(addition.on(WATER).pH().value(), prepared.on(WATER).pH().value(), 1e-12);
    assertEquals(addition.on(beer).pH().value(), prepared.on(beer).pH().value(), 1e-12);
  }

  @Test
  void whatIsNotSaidOfAMineralChangesNothingElse() {
    Addition lime = Addition.of(Supply.pure(Base.CALCIUM_HYDROXIDE), 0.002);
    Treatment quiet = lime.withoutSaturation();
    assertEquals(lime.text(), quiet.text());
    assertEquals(lime.cautions(), quiet.cautions());
    assertEquals(lime.on(WATER).pH().value(), quiet.on(WATER).pH().value(), 1e-12);
    assertTrue(lime.on(WATER).notices().toString().contains("supersaturated with calcite"));
    assertTrue(quiet.on(WATER).notices().isEmpty());
  }

  /** The calcium of chalk stays where its carbon dioxide leaves, and may form gypsum. */
  @Test
  void aCarbonateKeepsItsNameWhenItsGasIsGone() {
    Contents sulfate =
        Solution.at(Held.AT)
            .with(Ion.SULFATE, mmolPerL(50))
            .with(Ion.SODIUM, mmolPerL(60))
            .contents();
    Addition chalk = Addition.of(Supply.pure(Salt.CHALK), 0.02).withoutCarbonDioxide();
    String said = chalk.on(sulfate).notices().toString();
    assertTrue(
        said.contains("after calcium carbonate (chalk) the liquid is supersaturated with gypsum"),
        said);
    assertTrue(chalk.text().endsWith("of calcium carbonate (chalk), its carbon dioxide gone"));
  }
}
