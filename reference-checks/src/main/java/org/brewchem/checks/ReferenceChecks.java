package org.brewchem.checks;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.brewchem.checks.identity.MolarMasses;
import org.brewchem.checks.identity.PlummerBusenberg;
import org.brewchem.checks.independent.ChemistryDevelopmentKit;
import org.brewchem.checks.independent.EngineCarbonDioxide;
import org.brewchem.checks.independent.EngineDefaults;
import org.brewchem.checks.independent.EngineTables;
import org.brewchem.checks.independent.LinearPlans;
import org.brewchem.checks.independent.OracleMixtures;
import org.brewchem.checks.published.AcidityFactors;
import org.brewchem.checks.published.AlkalinityTitrations;
import org.brewchem.checks.published.BrewingWaters;
import org.brewchem.checks.published.CertifiedBuffers;
import org.brewchem.checks.published.ConstantsAgainstTemperature;
import org.brewchem.checks.published.ControlCharts;
import org.brewchem.checks.published.Dickson1981;
import org.brewchem.checks.published.Exercises;
import org.brewchem.checks.published.QuamExamples;
import org.brewchem.checks.published.ReagentTables;
import org.brewchem.checks.published.SofteningExamples;
import org.brewchem.checks.published.TitrationExamples;
import org.brewchem.checks.published.TradePractice;
import org.brewchem.checks.published.WaterFactors;
import org.brewchem.checks.published.WaterProperties;
import org.brewchem.checks.roundtrip.MeasuredBuffers;
import org.brewchem.checks.simulator.BufferReport;
import org.brewchem.checks.simulator.StandInStudy;

/** The list of all reference checks, in the order of the validation page. */
public final class ReferenceChecks {

  private ReferenceChecks() {}

  /** Returns all checks. */
  public static List<ReferenceCheck> all() {
    return Stream.of(
            MolarMasses.all(),
            PlummerBusenberg.all(),
            AcidityFactors.all(),
            WaterFactors.all(),
            AlkalinityTitrations.all(),
            BrewingWaters.all(),
            TradePractice.all(),
            ReagentTables.all(),
            SofteningExamples.all(),
            ConstantsAgainstTemperature.all(),
            TitrationExamples.all(),
            Exercises.all(),
            QuamExamples.all(),
            WaterProperties.all(),
            Dickson1981.all(),
            CertifiedBuffers.all(),
            ChemistryDevelopmentKit.all(),
            OracleMixtures.all(),
            EngineTables.all(),
            EngineCarbonDioxide.all(),
            LinearPlans.all(),
            MeasuredBuffers.all(),
            ControlCharts.all())
        .flatMap(List::stream)
        .toList();
  }

  /** Returns the comparisons of the validation page. */
  public static List<Comparison> comparisons() {
    List<Comparison> comparisons = new ArrayList<>();
    comparisons.add(CertifiedBuffers.comparison());
    comparisons.add(EngineDefaults.comparison());
    comparisons.addAll(BufferReport.comparisons());
    comparisons.add(StandInStudy.comparison());
    return comparisons;
  }

  /** Returns what no check covers, in sentences. */
  public static List<String> notCovered() {
    return List.of(
        "Real beers, worts and mashes: no published analysis states enough of its composition to be"
            + " computed. What is said of them rests on pure solutions, on the engine's mixtures and"
            + " on simulated beers.",
        "Activity coefficients in ethanol and extract; the library takes both as water.",
        "Ionic strengths above 0.3 mol/kg, where only the arithmetic is checked, not the chemistry.",
        "The heat capacities of lactic and malic acid: at mash temperature they rest on one data set.",
        "Whether a mineral that is supersaturated forms, and how fast.",
        "Kolbach's divisors themselves: the checks reproduce the relation, not the mashes behind it.");
  }
}
