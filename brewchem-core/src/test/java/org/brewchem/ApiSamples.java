package org.brewchem;

import static org.brewchem.quantity.Quantities.celsius;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.mL;
import static org.brewchem.quantity.Quantities.mV;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.molPerL;
import static org.brewchem.quantity.Quantities.pH;

import java.time.Duration;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import javax.measure.Quantity;
import org.brewchem.beer.Beer;
import org.brewchem.beer.Souring;
import org.brewchem.beer.SouringEstimate;
import org.brewchem.buffer.Buffer;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Answering;
import org.brewchem.figure.Constraint;
import org.brewchem.figure.Figure;
import org.brewchem.figure.Origin;
import org.brewchem.figure.Scale;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.figure.Target;
import org.brewchem.mash.Mash;
import org.brewchem.mash.WortBuffer;
import org.brewchem.plan.BlendPlan;
import org.brewchem.plan.Downstream;
import org.brewchem.plan.Plan;
import org.brewchem.plan.Shelf;
import org.brewchem.plan.ShelfItem;
import org.brewchem.plan.WaterPortion;
import org.brewchem.quality.BatchRecord;
import org.brewchem.quality.ControlChart;
import org.brewchem.quality.ControlRule;
import org.brewchem.quality.ControlRules;
import org.brewchem.quality.ControlSeries;
import org.brewchem.quality.InControl;
import org.brewchem.quality.RecordBook;
import org.brewchem.quantity.Density;
import org.brewchem.solution.Figures;
import org.brewchem.solution.MineralAssemblage;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Mineral;
import org.brewchem.substance.Reagent;
import org.brewchem.substance.Salt;
import org.brewchem.table.Answers;
import org.brewchem.table.Beers;
import org.brewchem.table.Column;
import org.brewchem.table.ColumnStatistics;
import org.brewchem.table.Table;
import org.brewchem.titration.AcidityResult;
import org.brewchem.titration.CalibrationReading;
import org.brewchem.titration.ElectrodeCalibration;
import org.brewchem.titration.Titrant;
import org.brewchem.treatment.Blends;
import org.brewchem.treatment.ReachableBlends;
import org.brewchem.treatment.Tank;
import org.brewchem.treatment.TankDose;
import org.brewchem.uncertainty.MethodPrecision;
import org.brewchem.uncertainty.Traced;
import org.brewchem.units.LabUnits;
import org.brewchem.units.UnitSet;
import org.brewchem.water.Water;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/** Invented objects that no walk over constants and factories finds, by their type. */
final class ApiSamples {

  private ApiSamples() {}

  static Map<Class<?>, Object> all() {
    Map<Class<?>, Object> all = new LinkedHashMap<>();
    Map<String, Object> answering = AnswerSamples.all();
    answering.values().forEach(sample -> all.put(sample.getClass(), sample));
    Beer beer = get(answering, Beer.class);
    Water water = get(answering, Water.class);
    MeasuredBuffer buffer = get(answering, MeasuredBuffer.class);
    Solution solution = get(answering, Solution.class);
    all.put(Answering.class, beer);
    all.put(Buffer.class, buffer);
    all.put(Answer.class, beer.pH());
    all.put(Step.class, solution.step(Figures.PH_VALUE));
    all.put(Traced.class, Traced.exact(1));
    all.put(Scale.class, Scales.MILLIGRAMS_PER_LITRE);
    all.put(Figure.Rule.class, Figures.PH_VALUE.rule());
    all.put(
        AcidityResult.class,
        Titrant.sodiumHydroxide()
            .of(molPerL(0.1))
            .titrate(mL(50))
            .to(pH(8.2))
            .took(mL(9.5), mL(9.6))
            .acidity());
    all.put(Duration.class, Duration.ofSeconds(10));
    all.put(Supplier.class, (Supplier<Object>) () -> new Step.Detail(List.of(), 0, 0));
    all.put(Function.class, Function.identity());
    all.put(UnaryOperator.class, UnaryOperator.identity());
    all.put(DoubleUnaryOperator.class, DoubleUnaryOperator.identity());
    all.put(Object.class, pH(4.2));
    all.put(Quantity.class, Quantities.getQuantity(2, Units.LITRE));
    all.put(UnitSet.class, LabUnits.VOLUME);
    all.put(MethodPrecision.class, MethodPrecision.stated("pH", 0.02, ""));
    all.put(Tank.class, Tank.holding(hL(20), hL(0.3)));
    all.put(
        TankDose.class,
        TankDose.of(
                beer,
                Reagent.of(Acid.LACTIC, massPercent(80)).withDensity(density(), 0.01),
                Tank.holding(hL(20), hL(0.3)))
            .to(Constraint.around(Figures.PH_VALUE, pH(4.2), 0.05)));
    all.put(
        Beers.class,
        Beers.from(
            Table.of(
                Column.of("pH", 4.4, 4.3),
                Column.of("titratable acidity [g/L as lactic acid, to pH 8.2]", 1.8, 2.0))));
    all.put(ColumnStatistics.class, Table.of(Column.of("pH", 4.4, 4.3)).statistics("pH"));
    all.put(Answers.class, Answers.of(List.of(beer)));
    all.put(Predicate.class, (Predicate<Object>) any -> true);
    all.put(DoublePredicate.class, (DoublePredicate) any -> true);
    all.put(WortBuffer.class, WortBuffer.assumedAtKnockOut());
    Blends<Beer> blends = Blends.of(beer, beer.after()).called("H2O", "beer");
    all.put(Blends.class, blends);
    all.put(ReachableBlends.class, blends.reachable(Figures.PH_VALUE, Figures.PH_VALUE));
    all.put(Souring.class, Souring.of(solution));
    all.put(
        SouringEstimate.class,
        SouringEstimate.of(WortBuffer.assumedForSouring(), massPercent(12), pH(9))
            .withLactateBefore(mgPerL(200)));
    all.put(ControlRule.class, ControlRules.beyond(3));
    ControlSeries series = ControlSeries.of("acidity", "g/L", 1, 2, 1, 2, 1, 2, 1, 2);
    all.put(ControlSeries.class, series);
    all.put(InControl.class, InControl.from(series));
    ControlChart chart = ControlChart.of(InControl.from(series), List.of(ControlRules.beyond(3)));
    all.put(ControlChart.class, chart);
    all.put(ControlChart.Watched.class, chart.watch(series));
    LocalDate day = LocalDate.of(2026, 3, 9);
    BatchRecord batch =
        BatchRecord.of("7", "invented lager", day, "M. Adler", day.atTime(14, 0), beer.pH());
    all.put(BatchRecord.class, batch);
    all.put(RecordBook.class, RecordBook.of(Figures.PH_VALUE).with(day, batch));
    all.put(
        ElectrodeCalibration.class,
        ElectrodeCalibration.of(
            celsius(25),
            CalibrationReading.of(pH(4.01), mV(177)),
            CalibrationReading.of(pH(7.00), mV(0.5))));
    all.put(
        MineralAssemblage.class,
        MineralAssemblage.precipitating(water.solution(), Mineral.CALCITE));
    Shelf shelf = Shelf.of(ShelfItem.of(Reagent.of(Salt.GYPSUM, massPercent(99))));
    all.put(Shelf.class, shelf);
    Plan.Request request =
        Plan.from(water)
            .using(shelf)
            .forPortions(WaterPortion.portion("H2O", hL(1)))
            .meeting(Target.named("sample").with(Constraint.atLeast(Figures.CALCIUM, mgPerL(99))));
    all.put(Plan.Request.class, request);
    all.put(Plan.class, request.solve());
    BlendPlan.Request<?> blending =
        BlendPlan.of(blends, hL(1))
            .meeting(Target.named("sample").with(Constraint.atLeast(Figures.CALCIUM, mgPerL(9))));
    all.put(BlendPlan.Request.class, blending);
    all.put(BlendPlan.class, blending.solve());
    all.put(Downstream.class, Downstream.of("same", any -> any));
    all.put(Mash.class, get(answering, Mash.class));
    all.put(Origin.class, Origin.COMPUTED);
    all.put(OptionalDouble.class, OptionalDouble.empty());
    return all;
  }

  private static Density density() {
    return Density.ofGramsPerMillilitre(1.19);
  }

  private static <T> T get(Map<String, Object> samples, Class<T> type) {
    return type.cast(samples.get(type.getName()));
  }
}
