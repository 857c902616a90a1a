package org.brewchem.water;

import java.util.ArrayList;
import java.util.List;
import org.brewchem.quantity.CarbonateAlkalinity;
import org.brewchem.substance.Element;
import org.brewchem.substance.Ion;
import org.brewchem.water.Suspicions.Alternative;

/** How the figures of a report might have to be read otherwise than they are stated. */
final class Alternatives {

  private static final double SULFATE_OVER_SULFUR = Ion.SULFATE.massPerMassOf(Element.of("S"));
  private static final double NITRATE_OVER_NITROGEN = Ion.NITRATE.massPerMassOf(Element.of("N"));

  /** Equivalents of a mass of carbonate over those of the same mass of bicarbonate. */
  private static final double CARBONATE_OVER_BICARBONATE =
      Ion.CARBONATE.milliequivalentsPerMilligram() / Ion.BICARBONATE.milliequivalentsPerMilligram();

  /** Equivalents of a mass of calcium carbonate over those of the same mass of bicarbonate. */
  private static final double CACO3_OVER_BICARBONATE =
      1 / CarbonateAlkalinity.ofMilligramsPerLitreAsBicarbonate(1).inMilligramsPerLitreAsCaCO3();

  private Alternatives() {}

  /** Another basis of one figure, or a factor of ten in one that the balance counts. */
  static List<Alternative> of(Readings readings, ReportedBalance balance) {
    List<Alternative> all = new ArrayList<>(bases(readings));
    for (Ion ion : balance.equivalents().keySet()) {
      if (ion.equals(Ion.BICARBONATE) || ReportedContents.IONS.containsKey(ion)) {
        String name = ReportedBalance.name(ion);
        all.add(
            new Alternative(WaterCode.TENFOLD_SLIP, ion, 10, "the " + name + " were ten times it"));
        all.add(
            new Alternative(
                WaterCode.TENFOLD_SLIP, ion, 0.1, "the " + name + " were a tenth of it"));
      }
    }
    return all;
  }

  /** Every figure that a laboratory may state on another basis. */
  static List<Alternative> bases(Readings readings) {
    List<Alternative> all = new ArrayList<>();
    readings.alkalinityBasis().ifPresent(basis -> alkalinity(basis, all));
    for (Constituent constituent : readings.constituents()) {
      switch (constituent) {
        case SULFATE ->
            all.add(
                new Alternative(
                    WaterCode.SULFATE_PERHAPS_SULFUR,
                    Ion.SULFATE,
                    SULFATE_OVER_SULFUR,
                    "the sulfate were stated as sulfur"));
        case SULFATE_AS_SULFUR ->
            all.add(
                new Alternative(
                    WaterCode.SULFUR_PERHAPS_SULFATE,
                    Ion.SULFATE,
                    1 / SULFATE_OVER_SULFUR,
                    "what is stated as sulfur were sulfate"));
        case NITRATE ->
            all.add(
                new Alternative(
                    WaterCode.NITRATE_PERHAPS_NITROGEN,
                    Ion.NITRATE,
                    NITRATE_OVER_NITROGEN,
                    "the nitrate were stated as nitrogen"));
        case NITRATE_AS_NITROGEN ->
            all.add(
                new Alternative(
                    WaterCode.NITROGEN_PERHAPS_NITRATE,
                    Ion.NITRATE,
                    1 / NITRATE_OVER_NITROGEN,
                    "what is stated as nitrogen were nitrate"));
        default -> {}
      }
    }
    return all;
  }

  private static void alkalinity(StatedAs basis, List<Alternative> all) {
    if (basis == StatedAs.BICARBONATE) {
      all.add(
          new Alternative(
              WaterCode.BICARBONATE_PERHAPS_CARBONATE,
              Ion.BICARBONATE,
              CARBONATE_OVER_BICARBONATE,
              "what is headed bicarbonate were carbonate"));
      all.add(
          new Alternative(
              WaterCode.ALKALINITY_BASIS_DOUBTFUL,
              Ion.BICARBONATE,
              CACO3_OVER_BICARBONATE,
              "what is stated as bicarbonate were stated as CaCO3"));
    } else {
      all.add(
          new Alternative(
              WaterCode.ALKALINITY_BASIS_DOUBTFUL,
              Ion.BICARBONATE,
              1 / CACO3_OVER_BICARBONATE,
              "what is stated as CaCO3 were bicarbonate"));
    }
  }
}
