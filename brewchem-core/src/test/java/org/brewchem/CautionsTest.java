package org.brewchem;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.g;
import static org.brewchem.quantity.Quantities.gPerHL;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Caution;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Hazard;
import org.brewchem.figure.Target;
import org.brewchem.plan.BlendPlan;
import org.brewchem.quantity.Pressure;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.solution.Figures;
import org.brewchem.solution.Liquid;
import org.brewchem.solution.OpenSolution;
import org.brewchem.solution.Solution;
import org.brewchem.solution.Treatment;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Compound;
import org.brewchem.substance.Handling;
import org.brewchem.substance.Ion;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.table.Column;
import org.brewchem.table.Table;
import org.brewchem.table.Waters;
import org.brewchem.treatment.BenchTrial;
import org.brewchem.treatment.Blend;
import org.brewchem.treatment.Blends;
import org.brewchem.treatment.Dose;
import org.brewchem.treatment.DoseBefore;
import org.brewchem.treatment.LimeSoftening;
import org.brewchem.treatment.Portion;
import org.brewchem.treatment.Tank;
import org.brewchem.treatment.TankDose;
import org.brewchem.treatment.Treatments;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.Test;

/** Whatever proposes that somebody handles a substance says what to mind. */
class CautionsTest {

  /**
   * Every public way to a proposal. A new one fails below until it is held against its cautions.
   */
  private static final Set<String> PROPOSALS =
      new TreeSet<>(
          List.of(
              "Blend.Request.to",
              "Blend.Request.volumes",
              "BlendPlan.blend",
              "Blends.shares",
              "Blends.volumes",
              "Dose.Request.to",
              "Dose.into",
              "Dose.treatment",
              "DoseBefore.Request.to",
              "DoseBefore.into",
              "DoseBefore.treatment",
              "GlassDose.into",
              "LimeSoftening.removingMagnesium",
              "LimeSoftening.toPracticalLimits",
              "LimeSoftening.withExcess",
              "LimeSoftening.withLime",
              "LimeSoftening.withMineralAcid",
              "LimeSoftening.withSoda",
              "OpenSolution.doseOf",
              "Solution.doseOf",
              "StagedDose.Remainder.portion",
              "StagedDose.first",
              "StagedDose.whole",
              "TankDose.Request.giving",
              "TankDose.Request.overshooting",
              "TankDose.Request.to",
              "TankDose.overshooting",
              "TankDose.portion",
              "TankDose.treatment",
              "Treatments.acid",
              "Treatments.aeration",
              "Treatments.base",
              "Treatments.blend",
              "Treatments.boiling",
              "Treatments.chalkClosed",
              "Treatments.chalkOpen",
              "Treatments.degassing",
              "Treatments.dilution",
              "Treatments.precipitation",
              "Treatments.reverseOsmosis",
              "Treatments.salt",
              "Treatments.solute",
              "Waters.doseOf"));

  private static final Map<Compound, Set<Hazard>> NEEDED = needed();

  private static Map<Compound, Set<Hazard>> needed() {
    Map<Compound, Set<Hazard>> needed = new LinkedHashMap<>();
    needed.put(Acid.LACTIC, EnumSet.of(Hazard.ACID, Hazard.CARBON_DIOXIDE));
    needed.put(
        Acid.HYDROCHLORIC, EnumSet.of(Hazard.ACID, Hazard.ACID_FUMES, Hazard.CARBON_DIOXIDE));
    needed.put(Acid.SULFURIC, EnumSet.of(Hazard.ACID, Hazard.ACID_HEAT, Hazard.CARBON_DIOXIDE));
    needed.put(Acid.PHOSPHORIC, EnumSet.of(Hazard.ACID, Hazard.CARBON_DIOXIDE));
    needed.put(Base.SODIUM_HYDROXIDE, EnumSet.of(Hazard.LYE));
    needed.put(Base.CALCIUM_HYDROXIDE, EnumSet.of(Hazard.LIME));
    for (Compound carbonate :
        List.of(Base.SODIUM_BICARBONATE, Base.POTASSIUM_BICARBONATE, Salt.CHALK)) {
      needed.put(carbonate, EnumSet.of(Hazard.DUST, Hazard.CARBON_DIOXIDE, Hazard.FOAMING));
    }
    needed.put(Salt.GYPSUM, EnumSet.of(Hazard.DUST));
    needed.put(Salt.CALCIUM_CHLORIDE_DIHYDRATE, EnumSet.of(Hazard.DUST, Hazard.SALT_HEAT));
    needed.put(Salt.POTASSIUM_METABISULFITE, EnumSet.of(Hazard.DUST, Hazard.SULFITE));
    needed.put(Salt.SODIUM_METABISULFITE, EnumSet.of(Hazard.DUST, Hazard.SULFITE));
    needed.forEach((compound, hazards) -> hazards.add(Hazard.DOSING_FOOD));
    return needed;
  }

  private static final Water WATER =
      WaterReport.reported()
          .calcium(mgPerL(92))
          .magnesium(mgPerL(11))
          .sodium(mgPerL(19))
          .sulfate(mgPerL(45))
          .chloride(mgPerL(31))
          .alkalinityAsCaCO3(mgPerL(215))
          .pH(pH(7.6))
          .build()
          .water();

  private static final Beer BEER =
      Beer.of(pH(4.38), TitratableAcidity.ofGramsPerLitreAs(1.7, Acid.LACTIC, pH(8.2)));

  private static Set<Hazard> hazards(List<Caution> cautions) {
    return cautions.stream().map(Caution::hazard).collect(Collectors.toSet());
  }

  private static void holds(String what, Function<Compound, List<Caution>> cautions) {
    NEEDED.forEach(
        (compound, needed) ->
            assertTrue(
                hazards(cautions.apply(compound)).containsAll(needed),
                () -> what + ", " + compound + ": " + cautions.apply(compound)));
  }

  private static boolean proposes(Method method) {
    Class<?> type = method.getReturnType();
    return method.getName().equals("doseOf")
        || Treatment.class.isAssignableFrom(type)
        || List.of(Dose.class, DoseBefore.class, TankDose.class, Blend.class, Portion.class)
            .contains(type);
  }

  @Test
  void everyPublicProposalIsListedAbove() {
    Set<String> found = new TreeSet<>();
    for (JavaClass imported :
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.brewchem")) {
      Class<?> type = imported.reflect();
      if (!Modifier.isPublic(type.getModifiers())
          || imported.getPackageName().equals("org.brewchem.internal")) {
        continue;
      }
      String name = type.getName().substring(type.getPackageName().length() + 1).replace('$', '.');
      for (Method method : type.getDeclaredMethods()) {
        if (Modifier.isPublic(method.getModifiers()) && !method.isBridge() && proposes(method)) {
          found.add(name + "." + method.getName());
        }
      }
    }
    Set<String> fresh = new TreeSet<>(found);
    fresh.removeAll(PROPOSALS);
    assertEquals(
        Set.of(), fresh, "new ways to a proposal: hold their cautions below, and list them above");
    assertEquals(PROPOSALS, found, "listed above, and there no more");
  }

  @Test
  void treatmentsAndTheLiquidsThatTheyLeaveSayWhatToMind() {
    Function<Compound, Treatment> treatment =
        compound ->
            compound instanceof Acid acid
                ? Treatments.acid(acid, gPerHL(10))
                : compound instanceof Base base
                    ? Treatments.base(base, gPerHL(10))
                    : Treatments.salt(compound, gPerHL(10));
    holds("treatment", compound -> treatment.apply(compound).cautions());
    List<Liquid> liquids = List.of(WATER, Solution.at(celsius(20)));
    for (Liquid liquid : liquids) {
      holds(liquid.kind(), compound -> liquid.after(treatment.apply(compound)).cautions());
    }
    holds("amount", compound -> Treatments.solute(compound, mmolPerL(1)).cautions());
    Water salted = WATER.after(treatment.apply(Acid.SULFURIC));
    for (Treatment mixing :
        List.of(
            Treatments.blend(salted, massPercent(10)), Treatments.blend(hL(1), salted, hL(1)))) {
      assertTrue(hazards(mixing.cautions()).contains(Hazard.ACID_HEAT));
    }
    for (Treatment gas :
        List.of(
            Treatments.degassing(mgPerL(1)),
            Treatments.aeration(),
            Treatments.boiling(),
            Treatments.chalkClosed(gPerL(1)),
            Treatments.chalkOpen(gPerL(1), Pressure.ofAtmospheres(1)))) {
      assertTrue(hazards(gas.cautions()).contains(Hazard.CARBON_DIOXIDE), gas::text);
    }
    assertTrue(
        hazards(Treatments.blend(hL(1), List.of(salted), List.of(hL(1))).cautions())
            .contains(Hazard.ACID_HEAT));
    Treatment lime = LimeSoftening.withLime().withSoda();
    assertTrue(
        hazards(lime.cautions()).containsAll(Set.of(Hazard.LIME, Hazard.DUST, Hazard.DOSING_FOOD)));
  }

  @Test
  void solutionsMadeOnPaperSayWhatToMindInMakingThem() {
    Solution water = Solution.at(celsius(20));
    holds("solution", compound -> water.with(compound, mmolPerL(1)).cautions());
    assertEquals(List.of(), water.with(Ion.CALCIUM, mmolPerL(1)).cautions());
    Solution hard = water.with(Ion.CALCIUM, mmolPerL(1)).with(Ion.BICARBONATE, mmolPerL(2));
    // A dose is an amount: what to mind in weighing it out is asked of what is weighed.
    hard.doseOf(Acid.HYDROCHLORIC, pH(6));
    OpenSolution.of(hard, Pressure.ofAtmospheres(4e-4)).doseOf(Acid.HYDROCHLORIC, pH(6));
    holds("handling", Handling::cautionsOf);
    holds("reagent", compound -> Handling.cautionsOf(Reagent.of(compound, massPercent(30))));
  }

  @Test
  void dosesAndBlendsSayWhatToMindAndBeersWhoMayTaste() {
    Dose<Water> acid = Dose.of(WATER, Acid.HYDROCHLORIC).to(pH(6));
    assertTrue(hazards(acid.cautions()).containsAll(NEEDED.get(Acid.HYDROCHLORIC)));
    assertTrue(hazards(acid.treatment().cautions()).contains(Hazard.ACID_FUMES));
    assertTrue(hazards(acid.after().cautions()).contains(Hazard.ACID_FUMES));
    assertEquals(acid.cautions(), acid.into(hL(1)).cautions());
    DoseBefore<Water> later =
        DoseBefore.of(WATER, Acid.HYDROCHLORIC, Treatments.aeration()).to(pH(7));
    assertTrue(hazards(later.cautions()).containsAll(NEEDED.get(Acid.HYDROCHLORIC)));
    assertTrue(hazards(later.treatment().cautions()).contains(Hazard.ACID_FUMES));
    assertTrue(hazards(later.into(hL(1)).cautions()).contains(Hazard.ACID_FUMES));
    Dose<Water> salt = Dose.of(WATER, Salt.GYPSUM).to(Figures.CALCIUM, mgPerL(120));
    assertTrue(hazards(salt.cautions()).containsAll(NEEDED.get(Salt.GYPSUM)));
    Dose<Water> lime = Dose.of(WATER, Base.CALCIUM_HYDROXIDE).to(pH(8));
    assertTrue(hazards(lime.cautions()).contains(Hazard.LIME));
    Dose<Beer> beer = Dose.of(BEER, Acid.LACTIC).to(pH(4.2));
    assertTrue(hazards(beer.cautions()).contains(Hazard.TASTING));
    TankDose.Request<Beer> chalk = TankDose.of(BEER, Salt.CHALK, Tank.holding(hL(10), hL(0.1)));
    for (TankDose<Beer> tank : List.of(chalk.to(pH(4.5)), chalk.giving(g(200)))) {
      assertTrue(hazards(tank.cautions()).containsAll(NEEDED.get(Salt.CHALK)));
      assertTrue(hazards(tank.cautions()).contains(Hazard.TASTING));
      assertEquals(tank.cautions(), tank.portion().cautions());
      assertTrue(hazards(tank.treatment().cautions()).containsAll(NEEDED.get(Salt.CHALK)));
      assertTrue(hazards(tank.after().cautions()).containsAll(NEEDED.get(Salt.CHALK)));
    }
    TankDose.Request<Water> fuming =
        TankDose.of(WATER, Acid.HYDROCHLORIC, Tank.holding(hL(10), hL(0)));
    assertTrue(hazards(fuming.to(pH(6)).cautions()).containsAll(NEEDED.get(Acid.HYDROCHLORIC)));
    BenchTrial<Beer> trial =
        BenchTrial.of(BEER, Reagent.of(Acid.LACTIC, massPercent(80))).upTo(gPerL(0.6));
    assertTrue(hazards(trial.cautions()).containsAll(NEEDED.get(Acid.LACTIC)));
    assertTrue(hazards(trial.cautions()).contains(Hazard.TASTING));
    assertTrue(
        hazards(trial.glass(2).into(Tank.holding(hL(10))).cautions())
            .containsAll(NEEDED.get(Acid.LACTIC)));
    Blend<Beer> blend = Blend.of(BEER, beer.after()).volumes(hL(1), hL(1));
    assertTrue(
        hazards(blend.cautions()).containsAll(Set.of(Hazard.TASTING, Hazard.REFERMENTATION)));
    assertTrue(
        hazards(Blend.of(BEER, beer.after()).to(pH(4.3)).cautions())
            .contains(Hazard.REFERMENTATION));
    Blends<Beer> blends = Blends.of(BEER, beer.after(), BEER);
    for (Blend<Beer> three :
        List.of(
            blends.shares(0.2, 0.5, 0.3),
            blends.volumes(hL(1), hL(2), hL(1)),
            BlendPlan.of(blends, hL(1))
                .meeting(Target.named("t").with(Constraint.exactly(Figures.PH_VALUE, pH(4.25))))
                .solve()
                .blend())) {
      assertTrue(
          hazards(three.cautions())
              .containsAll(Set.of(Hazard.TASTING, Hazard.REFERMENTATION, Hazard.ACID)));
    }
  }

  @Test
  void columnsOfDosesSayWhatToMind() {
    Waters waters =
        Waters.from(
            Table.of(
                Column.of("calcium [mg/L]", 92),
                Column.of("alkalinity [mg/L as CaCO3]", 215),
                Column.of("pH", 7.6)));
    for (Compound compound : List.of(Acid.LACTIC, Acid.HYDROCHLORIC, Acid.SULFURIC)) {
      assertTrue(
          hazards(waters.doseOf(compound, pH(6)).cautions()).containsAll(NEEDED.get(compound)));
    }
    assertEquals(List.of(), waters.column(Figures.PH_VALUE).cautions());
  }

  @Test
  void theTextsSayWhatTheyHaveTo() {
    Map<Hazard, List<String>> words =
        Map.ofEntries(
            Map.entry(Hazard.ACID, List.of("never water into acid", "eye wash", "rinse")),
            Map.entry(Hazard.ACID_FUMES, List.of("vapour of hydrochloric acid")),
            Map.entry(Hazard.ACID_HEAT, List.of("heats")),
            Map.entry(Hazard.LYE, List.of("heats up as it dissolves", "rinse", "eye wash")),
            Map.entry(Hazard.LIME, List.of("dust", "eye wash")),
            Map.entry(Hazard.CARBON_DIOXIDE, List.of("ventilate", "closed")),
            Map.entry(Hazard.FOAMING, List.of("foams over", "headspace", "small portion")),
            Map.entry(Hazard.DOSING_FOOD, List.of("a proposal", "local codes", "trained person")),
            Map.entry(
                Hazard.TASTING, List.of("separate portion", "clean, food-grade", "electrode")),
            Map.entry(Hazard.REFERMENTATION, List.of("packages can burst")),
            Map.entry(Hazard.SOURING, List.of("below about pH 4.5", "oxygen", "clean culture")),
            Map.entry(Hazard.LABORATORY, List.of("under pressure", "by mouth", "indicator")));
    words.forEach(
        (hazard, needed) -> {
          String text = Caution.of(List.of(hazard)).toString();
          needed.forEach(word -> assertTrue(text.contains(word), hazard + ": " + word));
        });
  }
}
