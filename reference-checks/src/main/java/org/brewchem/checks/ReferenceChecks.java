package org.brewchem.checks;

import java.util.List;
import java.util.stream.Stream;
import org.brewchem.checks.identity.MolarMasses;
import org.brewchem.checks.independent.ChemistryDevelopmentKit;
import org.brewchem.checks.independent.EngineCarbonDioxide;
import org.brewchem.checks.independent.EngineTables;
import org.brewchem.checks.independent.OracleMixtures;
import org.brewchem.checks.published.AcidityFactors;
import org.brewchem.checks.published.BrewingWaters;
import org.brewchem.checks.published.CertifiedBuffers;
import org.brewchem.checks.published.Dickson1981;
import org.brewchem.checks.published.PlummerBusenberg;
import org.brewchem.checks.published.QuamExamples;
import org.brewchem.checks.published.ReagentTables;
import org.brewchem.checks.published.TitrationExamples;
import org.brewchem.checks.published.WaterFactors;
import org.brewchem.checks.published.WaterProperties;
import org.brewchem.checks.roundtrip.MeasuredBuffers;

/** The list of all reference checks, in the order of the validation page. */
public final class ReferenceChecks {

  private ReferenceChecks() {}

  /** Returns all checks. */
  public static List<ReferenceCheck> all() {
    return Stream.of(
            MolarMasses.all(),
            AcidityFactors.all(),
            WaterFactors.all(),
            BrewingWaters.all(),
            ReagentTables.all(),
            TitrationExamples.all(),
            QuamExamples.all(),
            PlummerBusenberg.all(),
            WaterProperties.all(),
            Dickson1981.all(),
            CertifiedBuffers.all(),
            ChemistryDevelopmentKit.all(),
            OracleMixtures.all(),
            EngineTables.all(),
            EngineCarbonDioxide.all(),
            MeasuredBuffers.all())
        .flatMap(List::stream)
        .toList();
  }
}
