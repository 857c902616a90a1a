package org.brewchem.checks;

import java.util.List;
import java.util.stream.Stream;
import org.brewchem.checks.identity.MolarMasses;
import org.brewchem.checks.independent.ChemistryDevelopmentKit;
import org.brewchem.checks.published.AcidityFactors;
import org.brewchem.checks.published.PlummerBusenberg;
import org.brewchem.checks.published.WaterFactors;

/** The list of all reference checks, in the order of the validation page. */
public final class ReferenceChecks {

  private ReferenceChecks() {}

  /** Returns all checks. */
  public static List<ReferenceCheck> all() {
    return Stream.of(
            MolarMasses.all(),
            AcidityFactors.all(),
            WaterFactors.all(),
            PlummerBusenberg.all(),
            ChemistryDevelopmentKit.all())
        .flatMap(List::stream)
        .toList();
  }
}
