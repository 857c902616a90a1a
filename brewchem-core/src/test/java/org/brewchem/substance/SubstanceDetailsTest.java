package org.brewchem.substance;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.gPerML;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.brewchem.figure.FigureCode;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What substances say of themselves, and what they refuse, to the word. */
class SubstanceDetailsTest {

  private static String refused(Executable making) {
    return String.valueOf(assertThrows(IllegalArgumentException.class, making).getMessage());
  }

  private static Reagent lactic(double massPercent) {
    return Reagent.of(Acid.LACTIC, massPercent(massPercent));
  }

  /** Published for 88 to 92 % is 1.20 to 1.21 g/mL; its middle, 1.205, may be 5 % off. */
  @Test
  void aDensityOfAnotherBottleIsNoticed() {
    for (double off : new double[] {0.951, 1, 1.049}) {
      assertEquals(
          List.of(), lactic(88).withDensity(gPerML(1.205 * off), 0.01).notices(), "times " + off);
    }
    for (double off : new double[] {0.949, 1.051}) {
      List<Notice> notices = lactic(88).withDensity(gPerML(1.205 * off), 0.01).notices();
      assertEquals(1, notices.size());
      assertEquals(SubstanceCode.DENSITY_AND_ASSAY_DISAGREE, notices.get(0).code());
    }
    assertEquals(
        "density of lactic acid, 88 % by mass: 1.400 g/mL, where tables have 1.205 g/mL for this"
            + " strength; one of the two is perhaps that of another bottle",
        lactic(88).withDensity(gPerML(1.4), 0.01).notices().get(0).text());
    assertEquals(List.of(), lactic(20).withDensity(gPerML(1.4), 0.01).notices());
    assertEquals(List.of(), lactic(88).notices());
  }

  @Test
  void anUnusualDensityOrAssayIsNoticedOnce() {
    List<Notice> dense = lactic(88).withDensity(gPerML(2.5), 0.01).notices();
    assertEquals(List.of(FigureCode.UNUSUAL_VALUE), dense.stream().map(Notice::code).toList());
    assertEquals("density of lactic acid, 88 % by mass", dense.get(0).subject());
    List<Notice> weak = lactic(1).notices();
    assertEquals(List.of(FigureCode.UNUSUAL_VALUE), weak.stream().map(Notice::code).toList());
    assertEquals("assay of lactic acid", weak.get(0).subject());
    assertTrue(refused(() -> lactic(88).withDensity(gPerML(1180), 0)).startsWith("density of"));
    assertEquals(
        "relative standard uncertainty of the density: -0.1 is not possible; 0 or more is allowed",
        refused(() -> lactic(88).withDensity(gPerML(1.2), -0.1)));
    assertEquals(
        "assay of lactic acid: 0 % by mass is not possible; more than 0 is allowed",
        refused(() -> lactic(0)));
  }

  /** By hand: 1 L of 1.2 g/mL weighs 1200 g, of which 80 % are 960 g. */
  @Test
  void aVolumeIsWeighedByItsDensity() {
    Reagent reagent = lactic(80).withDensity(gPerML(1.2), 0.01);
    assertEquals(1200, reagent.massOf(litres(1)).inGrams(), 1e-9);
    assertEquals(0.5, reagent.volumeOf(Mass.ofGrams(600)).inLitres(), 1e-12);
    assertEquals(960 / 90.078, reagent.amountIn(litres(1)).inMoles(), 1e-9);
    assertEquals(OptionalDouble.of(0.01), reagent.densityRelativeStandardUncertainty());
    Reagent citric = Reagent.of(Acid.CITRIC, massPercent(50)).withDensity(gPerML(1.2), 0.01);
    assertEquals(OptionalDouble.of(0.01), citric.relativeStandardUncertaintyByVolume());
    assertEquals(
        OptionalDouble.empty(),
        Reagent.of(Acid.CITRIC, massPercent(50)).densityRelativeStandardUncertainty());
    assertEquals(Optional.empty(), citric.freeConcentration());
    assertEquals(List.of(Use.values()), citric.uses().stream().map(Permission::use).toList());
  }

  /** The tolerance of a label holds from 50 to 92 %, oligomers count from 30 to 92 %. */
  @Test
  void strongLacticAcidBeginsAndEndsWhereItsTableSays() {
    for (double percent : new double[] {50, 92}) {
      assertEquals(
          0.05 / Math.sqrt(3),
          lactic(percent).relativeStandardUncertaintyByMass().orElseThrow(),
          1e-15);
    }
    for (double percent : new double[] {49.9, 92.1}) {
      assertEquals(OptionalDouble.empty(), lactic(percent).relativeStandardUncertaintyByMass());
    }
    assertTrue(lactic(30).boundInEsters().isPresent() && lactic(92).boundInEsters().isPresent());
    assertTrue(lactic(29.9).boundInEsters().isEmpty() && lactic(92.1).boundInEsters().isEmpty());
    assertFalse(lactic(29.9).isBoundPartUnknown());
    assertTrue(lactic(92.1).isBoundPartUnknown());
    String text = StrongLacticAcid.ofTotalAcid(massPercent(80)).toString();
    assertTrue(text.startsWith("lactic acid, ") && text.endsWith(" bound in esters"), text);
  }

  @Test
  void anAssumedPurityNamesItsLimitsAndItsSource() {
    String text = Reagent.ofUsualPurity(Salt.SODIUM_CHLORIDE).notices().get(0).text();
    assertTrue(
        text.startsWith("assay of sodium chloride: assumed between 97 and 100 % by mass, as bags"),
        text);
    assertTrue(text.endsWith("; state the assay of the bag"), text);
    assertTrue(
        refused(() -> Reagent.ofUsualPurity(Salt.POTASSIUM_CHLORIDE)).contains("sodium chloride"));
  }

  @Test
  void aRangeIsToldInKelvinAndStaysThroughWhatIsMadeOfAConstant() {
    Provenance source = new Provenance("own-choice", "here", HowKnown.COMPUTED, "");
    EquilibriumConstant constant =
        EquilibriumConstant.ofLog10(-4.76)
            .withRangeCelsius(0, 90)
            .withUncertainty(0.02)
            .from(source);
    for (EquilibriumConstant each : List.of(constant, constant.negate())) {
      assertEquals(273.15, each.minimumKelvin().orElseThrow(), 1e-9);
      assertEquals(363.15, each.maximumKelvin().orElseThrow(), 1e-9);
      assertEquals(0.02, each.uncertainty().orElseThrow());
      assertEquals(Optional.of(source), each.provenance());
    }
    assertTrue(constant.covers(273.15) && constant.covers(363.15));
    assertTrue(constant.covers(273.15 - 1e-9) && constant.covers(363.15 + 1e-9));
    assertTrue(constant.isBeyondRange(273.15 - 1e-6) && constant.isBeyondRange(363.15 + 1e-6));
    EquilibriumConstant sum = constant.plus(constant);
    assertEquals(OptionalDouble.empty(), sum.uncertainty());
    assertEquals(Optional.empty(), sum.provenance());
    assertEquals(
        "least temperature: 50 °C is not possible; -273.15 to 20 °C is allowed",
        refused(() -> constant.withRangeCelsius(50, 20)));
    assertEquals(
        "uncertainty of log10 K: 0 is not possible; more than 0 is allowed",
        refused(() -> constant.withUncertainty(0)));
  }

  @Test
  void aPKaTypedAsKaIsRefusedWithTheOtherFactory() {
    String asKa = refused(() -> Acid.ofKa("my acid", 4.76));
    assertTrue(asKa.startsWith("Ka of my acid: 4.76 mol/L is not possible; "), asKa);
    assertTrue(asKa.contains("pKa typed as Ka"), asKa);
    assertTrue(
        asKa.endsWith("; an acid that has it all the same goes in by its pKa) is allowed"), asKa);
    String asPKa = refused(() -> Acid.ofPKa("my acid", 1.74e-5));
    assertTrue(asPKa.startsWith("pKa of my acid: "), asPKa);
    assertTrue(
        asPKa.endsWith("; an acid that has it all the same goes in by its Ka) is allowed"), asPKa);
  }

  /** The key of a group tells all that its constants are. */
  @Test
  void groupsOfOtherConstantsAreOtherComponents() {
    EquilibriumConstant plain = EquilibriumConstant.ofLog10(-4.5);
    assertEquals("site- {log10 K -4.5}", Component.group("site", -1, plain).key());
    assertEquals(
        "site- {log10 K -4.5, dH 2.0, dCp 0.0}",
        Component.group("site", -1, EquilibriumConstant.ofLog10(-4.5, 2, 0)).key());
    assertEquals(
        "site- {log10 K -4.5, dH 0.0, dCp 3.0}",
        Component.group("site", -1, EquilibriumConstant.ofLog10(-4.5, 0, 3)).key());
    assertEquals(
        "site2- {log10 K -4.5; log10 K 0.0, [-6.0, 0.0, 0.0, 0.0, 0.0]}",
        Component.group("site", -2, plain, EquilibriumConstant.analytic(-6, 0, 0, 0, 0)).key());
    assertEquals("H2(site)", Component.group("site", -2, 4, 6).form(2));
    assertEquals(2, Component.group("site", -2, 4, 6).protons());
  }

  @Test
  void constantsOfAGroupStandInTheOrderOfItsSteps() {
    assertEquals(
        "pKa 2 of site: 4 is not possible; the 6.0 of the step before or more is allowed",
        refused(() -> Component.group("site", -2, 6, 4)));
    assertEquals(2, Component.group("site", -2, 5, 5).protons());
    assertEquals(
        "site: at least one constant is needed",
        refused(() -> Component.group("site", -1, new double[0])));
  }

  @Test
  void aComponentSaysWhatItIsNot() {
    assertEquals(
        "strong ion: H2O has no charge", refused(() -> Component.strongIon("water", "H2O")));
    assertEquals(
        "strong ion: Na+ is already the component Na+",
        refused(() -> Component.strongIon("sodium", "Na+")));
    assertEquals(
        "protons of PO43-: 4 is not possible; 0 to 3 is allowed",
        refused(() -> Component.PHOSPHATE.form(4)));
    assertEquals(
        "protons of PO43-: -1 is not possible; 0 to 3 is allowed",
        refused(() -> Component.PHOSPHATE.form(-1)));
    assertTrue(refused(() -> Component.of("PO4")).startsWith("component: \"PO4\" is not one of ["));
    assertEquals(94.970, Component.PHOSPHATE.molarMass().orElseThrow().inGramsPerMole());
    assertEquals(Optional.empty(), Component.group("site", -1, 4.5).molarMass());
    assertEquals("PO43-", Component.PHOSPHATE.toString());
  }

  @Test
  void aSetOfConstantsSaysWhatItHoldsAndWhatItLacks() {
    ConstantSet empty = ConstantSet.empty("mine");
    assertEquals(
        "constant set mine: it has no complete dissociation constants of lactate-; complete it with"
            + " another set or type them",
        refused(() -> empty.of(Component.LACTATE)));
    assertTrue(empty.contains(Component.SODIUM));
    assertEquals(List.of(), empty.of(Component.SODIUM));
    assertFalse(empty.contains(Component.LACTATE));
    ConstantSet typed = empty.withPKa(Acid.LACTIC, 3.86);
    assertEquals("mine with other lactate", typed.name());
    assertEquals("Typed by the caller. Other constants for lactate.", typed.description());
    assertEquals(List.of(Component.LACTATE), typed.components());
    assertEquals(-3.86, typed.step(Component.LACTATE, 1).orElseThrow().log10(298.15));
    assertEquals(Optional.empty(), typed.step(Component.LACTATE, 2));
    assertEquals(
        "constants of PO43-: 1 is not possible; one for each of its protons, 3, is allowed",
        refused(() -> empty.with(Component.PHOSPHATE, EquilibriumConstant.ofLog10(-2))));
    assertTrue(refused(() -> empty.with(Component.SODIUM)).startsWith("constants of Na+: 0 is"));
    assertTrue(
        refused(() -> ConstantSet.named("mine"))
            .startsWith("constant set: \"mine\" is not one of ["));
    for (String name : ConstantSet.names()) {
      assertEquals(name, ConstantSet.named(name).name());
      assertEquals("Published under source " + name + ".", ConstantSet.named(name).description());
    }
  }

  /** What a set holds already stays as it is. */
  @Test
  void aSetIsCompletedWithWhatItLacks() {
    ConstantSet mine = ConstantSet.empty("mine").withPKa(Acid.LACTIC, 3.5);
    ConstantSet other =
        ConstantSet.empty("other").withPKa(Acid.LACTIC, 3.9).withPKa(Acid.ACETIC, 4.76);
    ConstantSet all = mine.completedWith(other);
    assertEquals(-3.5, all.of(Component.LACTATE).get(0).log10(298.15));
    assertEquals(-4.76, all.of(Component.ACETATE).get(0).log10(298.15));
    assertEquals(mine.name() + ", then " + other.name(), all.name());
    assertTrue(
        all.description().endsWith(" From " + other.name() + ": acetate."), all.description());
    assertEquals("words", all.renamed("new", "words").description());
  }

  @Test
  void aSetOfPairsSaysWhatItHoldsAndWhatItLacks() {
    PairSet none = PairSet.none();
    assertEquals(
        "pair set none: it does not hold CaSO4(aq)", refused(() -> none.without("CaSO4(aq)")));
    assertTrue(
        refused(() -> PairSet.named("mine")).startsWith("pair set: \"mine\" is not one of ["));
    IonPair pair =
        IonPair.of(
            "pair", Component.CALCIUM, Component.SULFATE, 1, 0, EquilibriumConstant.ofLog10(2));
    PairSet one = none.with(pair);
    assertEquals("none with pair", one.name());
    assertEquals(List.of(pair), one.pairs());
    assertEquals(Optional.of(pair), one.find("pair"));
    assertEquals(List.of(), one.without("pair").pairs());
    assertEquals("none with pair without pair", one.without("pair").name());
    assertEquals("none and none with pair", none.plus(one).name());
    assertEquals(List.of(pair), none.plus(one).pairs());
    assertEquals("none with pair", one.toString());
    for (String name : PairSet.names()) {
      assertEquals(name, PairSet.named(name).name());
    }
  }

  @Test
  void aSaltOfAComponentWithoutAFormulaCannotBeChecked() {
    Component site = Component.group("site", -1, 4.5);
    assertEquals(
        "mine: component site- {log10 K -4.5} has no formula to check against",
        refused(() -> Salt.of("mine", "NaCl", Map.of(Component.SODIUM, 1.0, site, 1.0))));
    assertEquals(
        "mine: formula Na2O4 and components [Na+, SO42-] do not hold the same amount of sulfur at"
            + " the same charge",
        refused(
            () ->
                Salt.of(
                    "mine",
                    "Na2O4",
                    Stoichiometry.ordered(Component.SODIUM, 2, Component.SULFATE, 1))));
    assertEquals(
        List.of(Component.SODIUM, Component.SULFATE),
        List.copyOf(Stoichiometry.ordered(Component.SODIUM, 2, Component.SULFATE, 1).keySet()));
    assertEquals(
        "mine: at least one component is needed", refused(() -> Salt.of("mine", "NaCl", Map.of())));
    assertEquals(
        "mine: a salt carries no charge, Na+ does",
        refused(() -> Salt.of("mine", "Na+", Map.of(Component.SODIUM, 1.0))));
    assertEquals(
        "mine, Na+: -1 mol/mol is not possible; more than 0 is allowed",
        refused(() -> Salt.of("mine", "NaCl", Map.of(Component.SODIUM, -1.0))));
  }

  @Test
  void aMineralOfOtherConstantsIsTheSameMineral() {
    Mineral own = Mineral.CALCITE.with(EquilibriumConstant.ofLog10(-8.4));
    assertEquals("calcite", own.name());
    assertEquals(-8.4, own.constant().log10(298.15));
    assertEquals(Mineral.CALCITE.components(), own.components());
    assertEquals(0, own.hydrogenIons());
    assertEquals(2, Mineral.GYPSUM.waters());
    assertEquals(-2, Mineral.BRUCITE.hydrogenIons());
    assertEquals(2, Mineral.BRUCITE.waters());
    assertEquals(
        "mineral: there is no \"calcite\" by source \"me\"",
        refused(() -> Mineral.of("calcite", "me")));
    assertTrue(Mineral.table().contains(Mineral.CALCITE));
    assertEquals(172.164, Mineral.GYPSUM.molarMass().inGramsPerMole());
  }

  @Test
  void everyRowOfAPrimaryBufferIsItsPH() {
    int compared = 0;
    for (ResourceTable.Row row : ResourceTable.read("primary-buffers.csv")) {
      if (row.text("buffer").equals("phosphate")) {
        assertEquals(
            row.number("pHS"),
            PrimaryBuffer.PHOSPHATE.pH(celsius(row.number("t_C"))).value(),
            1e-12);
        compared++;
      }
    }
    assertTrue(compared > 5);
    assertEquals((3.557 + 3.552) / 2, PrimaryBuffer.TARTRATE.pH(celsius(27.5)).value(), 1e-12);
    assertEquals(
        "temperature: 20 °C is not possible; potassium hydrogen tartrate is certified from 25 to"
            + " 50 °C",
        refused(() -> PrimaryBuffer.TARTRATE.pH(celsius(20))));
    assertTrue(refused(() -> PrimaryBuffer.TARTRATE.pH(celsius(50.1))).contains("25 to 50"));
    assertEquals("phosphate", PrimaryBuffer.PHOSPHATE.toString());
  }

  /** Printed are 0.165 g of Ca(OH)2 of 74.092 g/mol in 100 g of water, and 74.5 g of CaCl2. */
  @Test
  void aSolubilityCountsWhatItsRowCounts() {
    Solubility lime = Solubility.of(Base.CALCIUM_HYDROXIDE, celsius(20)).orElseThrow();
    assertEquals(1.65 / 74.092, lime.molesPerKilogram(), 1e-12);
    assertEquals(
        745 / 110.978,
        Solubility.of(Salt.CALCIUM_CHLORIDE_DIHYDRATE, celsius(20))
            .orElseThrow()
            .molesPerKilogram(),
        1e-12);
    assertEquals("solubility-table", lime.provenance().sourceKey());
  }

  @Test
  void anIonSizeIsReplacedInACopy() {
    IonSizeParameters standard = IonSizeParameters.standard();
    IonSizeParameters own = standard.with("Fe2+", 6, 0.1);
    assertEquals(new IonSizeParameters.Values(6, 0.1), own.of("Fe2+").orElseThrow());
    assertEquals(Optional.empty(), standard.of("no such species"));
    assertEquals(
        standard.all().size() + (standard.of("Fe2+").isPresent() ? 0 : 1), own.all().size());
    assertTrue(refused(() -> standard.with("Fe2+", -1, 0)).startsWith("ion size a: -1"));
  }

  @Test
  void setsThatArePublishedAreNamed() {
    assertTrue(ConstantSet.names().contains("goldberg-2002"), ConstantSet.names().toString());
    assertTrue(PairSet.names().contains("nist46"), PairSet.names().toString());
  }

  /** Oxalic acid has as many hydrogen atoms as protons. */
  @Test
  void anAcidOfTheUsersOwnMayHaveNoHydrogenButItsProtons() {
    Acid own = Acid.ofPKa("acid of our own", 2, 4).withFormula("H2C2O4");
    assertEquals(45.017, own.gramsPerEquivalent(), 1e-3);
    assertTrue(
        refused(() -> Acid.ofPKa("acid of our own", 2, 4).withFormula("HCl"))
            .endsWith("is not possible for a neutral acid of 2 protons"));
    assertEquals(Map.of(Component.LACTATE, 1.0), Acid.LACTIC.components());
    assertEquals("lactic acid", Acid.LACTIC.toString());
  }

  /** By hand at 310 K: van 't Hoff with a constant heat capacity, or the five terms. */
  @Test
  void everyRowOfATableGivesTheConstantThatItPrints() {
    double t = 310;
    double ratio = t / 298.15;
    int analytic = 0;
    int others = 0;
    for (ResourceTable.Row row : ResourceTable.read("dissociation-constants.csv")) {
      double expected;
      if (row.text("analytic").isEmpty()) {
        double enthalpy = 1000 * row.optionalNumber("dH_kJ_per_mol").orElse(0);
        double heat = row.optionalNumber("dCp_J_per_K_mol").orElse(0);
        double shift = -enthalpy * (1 / t - 1 / 298.15) + heat * (298.15 / t - 1 + Math.log(ratio));
        expected = -row.number("pKa") + shift / 8.314462618 / Math.log(10);
        others++;
      } else {
        String[] x = row.text("analytic").split(" ");
        expected =
            Double.parseDouble(x[0])
                + Double.parseDouble(x[1]) * t
                + Double.parseDouble(x[2]) / t
                + Double.parseDouble(x[3]) * Math.log10(t)
                + Double.parseDouble(x[4]) / (t * t);
        analytic++;
      }
      assertEquals(expected, row.constant("pKa", -1).log10(t), 1e-9, row.place());
      assertTrue(row.place().startsWith("dissociation-constants.csv"), row.place());
    }
    assertTrue(others > 50 && analytic > 2, others + " and " + analytic);
    ResourceTable.Row gas = ResourceTable.read("gases.csv").get(0);
    assertEquals(-1.468, gas.constant("log_K_25C", 1).log10(298.15), 1e-3);
  }

  /** Taking up a proton is the last dissociation the other way, two are the last two. */
  @Test
  void aFormationIsTheDissociationTheOtherWay() {
    List<EquilibriumConstant> phosphate = ConstantSet.named("phreeqc-dat").of(Component.PHOSPHATE);
    double last = phosphate.get(2).log10(298.15);
    assertEquals(-last, AssociationConstants.of("HPO42-").log10(298.15), 1e-12);
    assertEquals(
        -last - phosphate.get(1).log10(298.15),
        AssociationConstants.of("H2PO4-").log10(298.15),
        1e-12);
    assertEquals(
        -ConstantSet.named("phreeqc-dat").of(Component.CARBONATE).get(1).log10(298.15),
        AssociationConstants.of("HCO3-").log10(298.15),
        1e-12);
    int found = 0;
    for (ResourceTable.Row row : ResourceTable.read("ion-pairs.csv")) {
      if (row.text("product").equals("MgSO4(aq)") && row.text("set").equals("A")) {
        assertEquals(row.constant("log_K_25C", 1), AssociationConstants.of("MgSO4(aq)"));
        found++;
      }
    }
    assertEquals(1, found);
    assertEquals(
        "CaSO4(aq): its formation is not known",
        assertThrows(IllegalStateException.class, () -> AssociationConstants.of("CaSO4(aq)"))
            .getMessage());
  }

  @Test
  void elementsBasesAndIonsAreKnownByTheirNames() {
    assertEquals(Element.of("Ca"), Element.named("calcium"));
    assertNotEquals(Element.of("Ca"), Element.of("Mg"));
    assertNotEquals(Element.of("Ca"), "Ca");
    assertEquals("Ca", Element.of("Ca").toString());
    assertEquals("sodium hydroxide", Base.SODIUM_HYDROXIDE.toString());
    assertEquals("sodium chloride", Salt.SODIUM_CHLORIDE.toString());
    assertEquals("carbon dioxide", Gas.CARBON_DIOXIDE.toString());
    assertEquals(2, Ion.CALCIUM.equivalents(mgPerL(40.078)).inMilliequivalentsPerLitre(), 1e-12);
  }

  @Test
  void ionsCountMassAndCharge() {
    assertEquals(2 / 40.078, Ion.CALCIUM.milliequivalentsPerMilligram(), 1e-12);
    assertEquals(96.056 / 32.06, Ion.SULFATE.massPerMassOf(Element.of("S")), 1e-3);
    assertEquals(
        "nitrogen in sulfate: 0 g/mol is not possible; more than 0 is allowed",
        refused(() -> Ion.SULFATE.massPerMassOf(Element.of("N"))));
    assertSame(Ion.SULFATE, Ion.named("sulfate"));
  }
}
