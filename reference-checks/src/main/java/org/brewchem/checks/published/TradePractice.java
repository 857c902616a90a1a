package org.brewchem.checks.published;

import java.util.List;
import org.brewchem.beer.Beer;
import org.brewchem.beer.BeerFinding;
import org.brewchem.checks.HowKnown;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.MassFraction;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.TypicalBeer;

/** Facts of the trade that everybody uses and nobody cites: they count as no published value. */
public final class TradePractice {

  private static final PH END_POINT = PH.of(8.2);
  private static final Temperature ROOM = Temperature.ofCelsius(20);
  private static final PH PALE_LAGER = PH.of(4.2);

  private TradePractice() {}

  /** Returns the check. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "trade-practice",
            Suite.IDENTITY,
            "Facts of the trade",
            new Source("trade-practice", "common practice, no source"),
            "end point of an alkali titration when none is stated; which acidities are flagged (1) or"
                + " not (0); pH of an invented lager of pH 4.2 and 2.0 g/L when lactic acid takes it"
                + " to 7.7 g/L; that a soft drink on 5.5 mmol/L of phosphoric acid has a lower pH"
                + " than a lager of typical composition, and less acid",
            Tolerance.absolute(1e-9, "", "nothing to round"),
            "beer as lactic, wine as tartaric acid; a kettle sour at pH 3.3 to 3.6: nothing is"
                + " computed in them",
            10,
            TradePractice::rows));
  }

  private static List<Row> rows() {
    Solution softDrink =
        Solution.at(ROOM).with(Acid.PHOSPHORIC, AmountConcentration.ofMillimolesPerLitre(5.5));
    Solution lager =
        TypicalBeer.namedAcids(ROOM).plus(TypicalBeer.lumpedGroups(ROOM, 1)).closedTo(PALE_LAGER);
    return List.of(
        exact("end point of beer titrated with alkali, pH", 8.2, endPoint()),
        flag("4 g/L at pH 3.6 is unusual", 0, 3.6, 4, BeerFinding.Kind.ACIDITY_UNUSUAL),
        flag("7 g/L at pH 3.4 is unusual", 0, 3.4, 7, BeerFinding.Kind.ACIDITY_UNUSUAL),
        flag("7.7 g/L at pH 3.4 is unusual", 0, 3.4, 7.7, BeerFinding.Kind.ACIDITY_UNUSUAL),
        flag("10.1 g/L at pH 3.3 is unusual", 1, 3.3, 10.1, BeerFinding.Kind.ACIDITY_UNUSUAL),
        flag(
            "21.9 g/L is beyond what fermentation makes",
            0,
            3.2,
            21.9,
            BeerFinding.Kind.ACIDITY_BEYOND_FERMENTATION),
        flag(
            "22 g/L is beyond what fermentation makes",
            1,
            3.2,
            22,
            BeerFinding.Kind.ACIDITY_BEYOND_FERMENTATION),
        strongSourBeer(),
        exact("pH of the soft drink against the lager", -1, softDrink.pH().compareTo(lager.pH())),
        exact(
            "acidity of the soft drink against the lager",
            -1,
            softDrink.titratableAcidity(END_POINT).compareTo(lager.titratableAcidity(END_POINT))));
  }

  private static double endPoint() {
    return Titrant.sodiumHydroxide()
        .of(AmountConcentration.ofMolesPerLitre(0.1))
        .titrate(Volume.ofMillilitres(50))
        .endPoint()
        .value();
  }

  private static Row flag(
      String label, double expected, double pH, double gramsPerLitre, BeerFinding.Kind kind) {
    Beer beer = Beer.of(PH.of(pH), asLactic(gramsPerLitre));
    boolean found = beer.findings().stream().anyMatch(finding -> finding.kind() == kind);
    return exact(label, expected, found ? 1 : 0);
  }

  private static Row strongSourBeer() {
    var after =
        Beer.of(PALE_LAGER, asLactic(2.0))
            .dose(Reagent.of(Acid.LACTIC, MassFraction.ofMassPercent(88)))
            .into(Volume.ofHectolitres(1))
            .to(asLactic(7.7))
            .after()
            .pH()
            .orElseThrow();
    return Row.of(
            "pH of a beer soured to 7.7 g/L", 3.4, after.value().value(), HowKnown.COMMON_PRACTICE)
        .scaledBy(after.standardUncertainty().orElseThrow())
        .within(
            Tolerance.times(
                2,
                "the standard uncertainty that the library states",
                "pH",
                "the pH rests on a stand-in for a measured buffer"));
  }

  private static Row exact(String label, double expected, double computed) {
    return Row.of(label, expected, computed, HowKnown.COMMON_PRACTICE);
  }

  private static TitratableAcidity asLactic(double gramsPerLitre) {
    return TitratableAcidity.ofGramsPerLitreAs(gramsPerLitre, Acid.LACTIC, END_POINT);
  }
}
