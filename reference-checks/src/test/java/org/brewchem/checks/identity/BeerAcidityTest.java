package org.brewchem.checks.identity;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.litres;
import static org.brewchem.quantity.Quantities.mmolPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.brewchem.substance.Acid.LACTIC;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import org.brewchem.beer.Beer;
import org.brewchem.buffer.Buffer;
import org.brewchem.figure.Notice;
import org.brewchem.quantity.PH;
import org.brewchem.solution.Chemistry;
import org.brewchem.solution.Contents;
import org.brewchem.solution.Level;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Base;
import org.brewchem.substance.Component;
import org.brewchem.treatment.Blend;
import org.brewchem.uncertainty.Traced;
import org.junit.jupiter.api.Test;

/** What the definitions of pH and titratable acidity ask of every beer. */
class BeerAcidityTest {

  private static final PH END_POINT = pH(8.2);

  /** The amounts of {@link #AMOUNTS}, mmol/L, as the buffering of an invented beer. */
  private record Composition(List<Double> millimoles) implements Buffer {

    @Override
    public Contents contents(Contents known, Traced pH) {
      Map<Component, Traced> amounts = new LinkedHashMap<>();
      for (int i = 0; i < millimoles.size(); i++) {
        amounts.put(
            AMOUNTS.get(i), Traced.exact(millimoles.get(i) / 1000 / known.kilogramsPerLitre()));
      }
      return known.plus(amounts).closedTo(pH);
    }

    @Override
    public Optional<Notice> extrapolatedAt(PH pH) {
      return Optional.empty();
    }
  }

  private static final List<Component> AMOUNTS =
      List.of(
          Component.PHOSPHATE,
          Component.LACTATE,
          Component.ACETATE,
          Component.CITRATE,
          Component.MALATE,
          Component.SUCCINATE,
          Component.PYRUVATE,
          Component.group("carboxyl groups", -1, 4.3),
          Component.group("imidazole groups", 0, 6.1),
          Component.group("amino groups", 0, 7.5),
          Component.CALCIUM,
          Component.MAGNESIUM);

  /** Invented beers of pH 3.3 to 4.7, their amounts in the ranges of mmol/L that beers have. */
  @Provide
  Arbitrary<Beer> beers() {
    List<Arbitrary<Double>> amounts =
        List.of(
            between(3, 9),
            between(0.5, 10),
            between(0.5, 4),
            between(0.3, 1.5),
            between(0.2, 1.5),
            between(0.2, 1.5),
            between(0.2, 1),
            between(2, 12),
            between(0.5, 3),
            between(1, 6),
            between(0.5, 3),
            between(2, 5));
    return Combinators.combine(between(3.3, 4.7), Combinators.combine(amounts).as(List::copyOf))
        .as((pH, millimoles) -> beer(pH(pH), new Composition(millimoles)));
  }

  private static Beer beer(PH pH, Buffer buffering) {
    Solution solution =
        Solution.of(
            buffering.contents(Solution.at(celsius(20)).contents(), Traced.exact(pH.value())));
    return Beer.of(pH, solution.titratableAcidity(END_POINT)).buffered(buffering);
  }

  private static Arbitrary<Double> between(double low, double high) {
    return Arbitraries.doubles()
        .between(low, high)
        .ofScale(9)
        .withDistribution(RandomDistribution.uniform());
  }

  /** Strong acids, and weak ones whose first pKa lies at least 1 below the end point. */
  @Provide
  Arbitrary<Acid> acids() {
    return Arbitraries.oneOf(
        Arbitraries.of(
            Acid.HYDROCHLORIC,
            Acid.SULFURIC,
            Acid.LACTIC,
            Acid.PHOSPHORIC,
            Acid.CITRIC,
            Acid.MALIC,
            Acid.TARTARIC,
            Acid.ACETIC,
            Acid.SUCCINIC,
            Acid.PYRUVIC,
            Acid.CARBONIC,
            Acid.SULFUROUS,
            Acid.OXALIC),
        between(0.5, 7.2).map(pKa -> Acid.ofPKa("invented acid", pKa)));
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void anAcidLowersThePhAndRaisesTheAcidity(
      @ForAll("beers") Beer beer,
      @ForAll("acids") Acid acid,
      @ForAll("logarithmsOfDoses") double logarithmOfDose,
      @ForAll Level level) {
    Solution before = beer.under(Chemistry.of(level)).solution();
    Solution after = before.with(acid, molPerL(Math.pow(10, logarithmOfDose)));
    assertTrue(after.pH().compareTo(before.pH()) < 0, () -> before.pH() + " " + after.pH());
    assertTrue(
        after.titratableAcidity(END_POINT).compareTo(before.titratableAcidity(END_POINT)) > 0,
        () -> before.titratableAcidity(END_POINT) + " " + after.titratableAcidity(END_POINT));
  }

  @Provide
  Arbitrary<Double> logarithmsOfDoses() {
    return between(-6, -1);
  }

  @Provide
  Arbitrary<Double> shares() {
    return between(0.02, 0.98);
  }

  private static Blend<Beer> blend(Beer one, Beer other, double share, Level level) {
    Chemistry chemistry = Chemistry.of(level);
    return Blend.of(one.under(chemistry), other.under(chemistry))
        .volumes(litres(100 * share), litres(100 * (1 - share)));
  }

  /** The acidity of the undiluted solutions, each at that level, by volume. */
  private static void assertAcidityMixes(
      Beer one, Beer other, double share, Level level, double relative) {
    double byVolume = share * own(one, level) + (1 - share) * own(other, level);
    double mixed =
        blend(one, other, share, level)
            .after()
            .solution()
            .titratableAcidity(END_POINT)
            .inMilliequivalentsPerLitre();
    assertEquals(byVolume, mixed, relative * byVolume);
  }

  private static double own(Beer beer, Level level) {
    return beer.under(Chemistry.of(level))
        .solution()
        .titratableAcidity(END_POINT)
        .inMilliequivalentsPerLitre();
  }

  @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
  void acidityMixesExactlyAtLevelIdeal(
      @ForAll("beers") Beer one, @ForAll("beers") Beer other, @ForAll("shares") double share) {
    assertAcidityMixes(one, other, share, Level.IDEAL, 1e-12);
  }

  @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
  void acidityMixesToTwoTenthsOfAPerCentAtLevelActivity(
      @ForAll("beers") Beer one, @ForAll("beers") Beer other, @ForAll("shares") double share) {
    assertAcidityMixes(one, other, share, Level.ACTIVITY, 0.002);
  }

  @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
  @StatisticsReport(StatisticsReport.StatisticsReportMode.OFF)
  void thePhDoesNotMix(
      @ForAll("beers") Beer one, @ForAll("beers") Beer other, @ForAll("shares") double share) {
    double byVolume = share * one.pH().number() + (1 - share) * other.pH().number();
    double mixed = blend(one, other, share, Level.ACTIVITY).after().pH().number();
    Statistics.label("by volume to 0.005")
        .collect(Math.abs(mixed - byVolume) <= 0.005)
        .coverage(coverage -> coverage.check(false).percentage(percent -> percent > 50));
  }

  /**
   * Lower pH is not more acid: 4 mmol/L of lactic acid beside 50 mmol/L of it with 30 mmol/L of lye
   * (invented). To pH 8.2 all lactic acid is titrated, which leaves 4 and 20 mEq/L.
   */
  @Test
  void aLittleAcidAloneHasALowerPhThanFiveTimesAsMuchBesideItsSalt() {
    Solution alone = Solution.at(celsius(20)).with(LACTIC, mmolPerL(4));
    Solution buffered =
        Solution.at(celsius(20))
            .with(LACTIC, mmolPerL(50))
            .with(Base.SODIUM_HYDROXIDE, mmolPerL(30));
    assertTrue(alone.pH().value() < buffered.pH().value() - 0.5, alone.pH().toString());
    assertEquals(4, alone.titratableAcidity(END_POINT).inMilliequivalentsPerLitre(), 0.01);
    assertEquals(20, buffered.titratableAcidity(END_POINT).inMilliequivalentsPerLitre(), 0.01);
  }
}
