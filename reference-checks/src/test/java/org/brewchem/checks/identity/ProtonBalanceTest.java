package org.brewchem.checks.identity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.brewchem.quantity.ChargeConcentration;
import org.brewchem.quantity.Molality;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.Temperature;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.EffectiveEquivalents;
import org.brewchem.solution.Equilibrium;
import org.brewchem.solution.Level;
import org.brewchem.solution.SimulatedTitration;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Species;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;

/** What the charge balance must obey whatever the mixture: definitions and conservation laws. */
class ProtonBalanceTest {

  private static final List<Component> COMPONENTS =
      List.of(
          Component.SODIUM,
          Component.POTASSIUM,
          Component.CALCIUM,
          Component.MAGNESIUM,
          Component.CHLORIDE,
          Component.SULFATE,
          Component.CARBONATE,
          Component.PHOSPHATE,
          Component.LACTATE,
          Component.ACETATE,
          Component.CITRATE,
          Component.SUCCINATE,
          Component.AMMONIA);

  private static final List<Acid> ACIDS =
      List.of(
          Acid.LACTIC,
          Acid.PHOSPHORIC,
          Acid.CITRIC,
          Acid.MALIC,
          Acid.TARTARIC,
          Acid.ACETIC,
          Acid.SUCCINIC,
          Acid.CARBONIC,
          Acid.SULFURIC,
          Acid.HYDROCHLORIC,
          Acid.OXALIC,
          Acid.BORIC,
          Acid.AMMONIUM);

  /** Half of the components, 1e-5 to 0.05 mol/kg each, with unnamed strong ions besides. */
  private static Solution mixture(long seed, int level) {
    Random random = new Random(seed);
    Solution solution =
        Solution.at(Temperature.ofCelsius(100 * random.nextDouble())).under(Level.values()[level]);
    for (Component component : COMPONENTS) {
      if (random.nextBoolean()) {
        double amount = 1e-5 * Math.pow(5000, random.nextDouble());
        solution = solution.with(component, Molality.ofMolesPerKilogram(amount));
      }
    }
    return solution.withInertCharge(
        ChargeConcentration.ofEquivalentsPerLitre(0.02 * random.nextGaussian()));
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void chargeFallsStrictlyAsPhRises(
      @ForAll long seed,
      @ForAll @IntRange(max = 2) int level,
      @ForAll @Scale(9) @DoubleRange(min = 1, max = 12.5) double pH,
      @ForAll @Scale(9) @DoubleRange(min = 0.001, max = 1) double step) {
    Solution solution = mixture(seed, level);
    assertTrue(
        solution.charge(PH.of(pH)).compareTo(solution.charge(PH.of(pH + step))) > 0,
        () -> solution + " at pH " + pH);
    assertTrue(
        solution.bufferCapacity(PH.of(pH)).inMilliequivalentsPerLitrePerPH() > 0,
        () -> solution + " at pH " + pH);
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void chargeAndMassAreConservedToRounding(
      @ForAll long seed, @ForAll @IntRange(max = 2) int level) {
    Solution solution = mixture(seed, level);
    Equilibrium state = solution.equilibrium();
    double charge = solution.inertCharge().inEquivalentsPerLitre() / solution.kilogramsPerLitre();
    double charges = Math.abs(charge);
    for (Species species : state.species()) {
      double c = species.molality().inMolesPerKilogram();
      charge += species.charge() * c;
      charges += Math.abs(species.charge()) * c;
    }
    assertEquals(0, charge, 1e-12 * charges, solution::toString);
    solution
        .totals()
        .forEach(
            (component, total) ->
                assertEquals(
                    1,
                    solution.equilibriumAt(state.pH()).fractions(component).values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum(),
                    1e-12,
                    () -> component.key() + " of " + solution));
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void totalsAndStrongIonDifferenceMixExactly(
      @ForAll long first,
      @ForAll long second,
      @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 0.99) double share) {
    Solution one = mixture(first, 2);
    Solution other = mixture(second, 2).heldAt(one.temperature());
    Solution mixed = one.mixed(Volume.ofLitres(share), other, Volume.ofLitres(1 - share));
    for (Component component : COMPONENTS) {
      double expected = share * moles(one, component) + (1 - share) * moles(other, component);
      assertEquals(expected, moles(mixed, component), 1e-14 * expected + 1e-300);
    }
    assertEquals(
        share * one.inertCharge().inEquivalentsPerLitre()
            + (1 - share) * other.inertCharge().inEquivalentsPerLitre(),
        mixed.inertCharge().inEquivalentsPerLitre(),
        1e-15);
  }

  private static double moles(Solution solution, Component component) {
    Molality total = solution.totals().get(component);
    return total == null ? 0 : total.inMolesPerKilogram();
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void effectiveEquivalentsLieBetweenNoneAndAllProtonsAndRiseWithTheEndPoint(
      @ForAll @IntRange(max = 12) int acid,
      @ForAll @Scale(9) @DoubleRange(min = 0, max = 12.5) double endPoint,
      @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 1) double step) {
    Acid chosen = ACIDS.get(acid);
    EffectiveEquivalents equivalents = EffectiveEquivalents.of(chosen);
    double at = equivalents.at(PH.of(endPoint));
    assertTrue(at > -1e-12 && at < chosen.protonsByDefinition() + 1e-12, chosen + ": " + at);
    assertTrue(equivalents.at(PH.of(endPoint + step)) >= at - 1e-12, chosen::name);
  }

  @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
  void aTitrationBackFromItsEndPointReturns(
      @ForAll long seed, @ForAll @IntRange(max = 2) int level) {
    Solution solution = mixture(seed, level);
    Solution lye =
        Solution.at(solution.temperature())
            .with(Base.SODIUM_HYDROXIDE, Molality.ofMolesPerKilogram(1));
    PH end = PH.of(solution.pH().value() + 0.5);
    Volume sample = Volume.ofMillilitres(50);
    Volume taken = SimulatedTitration.of(solution, lye, sample).volumeTo(end);
    assertEquals(
        end.value(), solution.mixed(sample, lye, taken).pH().value(), 1e-8, solution::toString);
  }
}
