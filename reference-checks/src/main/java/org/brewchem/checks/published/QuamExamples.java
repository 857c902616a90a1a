package org.brewchem.checks.published;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.brewchem.checks.CsvTable;
import org.brewchem.checks.ReferenceCheck;
import org.brewchem.checks.Row;
import org.brewchem.checks.Source;
import org.brewchem.checks.Suite;
import org.brewchem.checks.Tolerance;
import org.brewchem.quantity.Mass;
import org.brewchem.quantity.Volume;
import org.brewchem.titration.Titrant;
import org.brewchem.titration.Weighing;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.MeasurementModel;
import org.brewchem.uncertainty.UncertainValue;

/** Standardisation of alkali and of acid by the Eurachem guide, with its uncertainty budgets. */
public final class QuamExamples {

  private QuamExamples() {}

  /** Returns the checks. */
  public static List<ReferenceCheck> all() {
    return List.of(
        new ReferenceCheck(
            "quam-2012",
            Suite.PUBLISHED,
            "Standardisation and its uncertainty budget, examples A2 and A3",
            new Source(
                "quam-2012",
                "EURACHEM/CITAC Guide CG 4, Quantifying Uncertainty in Analytical Measurement, 3rd"
                    + " ed. (2012), examples A2 and A3"),
            "concentration of NaOH by the standardisation of a titrant, that of HCl and both standard"
                + " uncertainties by the linear budget of the guide's inputs",
            Tolerance.halfOfLastDigit("mol/L", "digits printed"),
            "",
            4,
            () ->
                List.of(
                    row("E-A2", standardised()),
                    row("E-A2-u", sodiumHydroxide().standardUncertainty()),
                    row("E-A3", hydrochloricAcid().value()),
                    row("E-A3-u", hydrochloricAcid().standardUncertainty()))),
        new ReferenceCheck(
            "quam-2000",
            Suite.PUBLISHED,
            "Uncertainty of example A3 as summarised earlier",
            new Source("quam-2000", "QUAM 2000, summary table"),
            "standard uncertainty of the concentration of HCl from the inputs of the guide; the"
                + " printed 0.00016 is not what its own components give",
            Tolerance.halfOfLastDigit("mol/L", "digits printed"),
            "",
            1,
            () -> List.of(row("E-A3-old", hydrochloricAcid().standardUncertainty()))));
  }

  private static double standardised() {
    return Titrant.sodiumHydroxide()
        .standardised(Weighing.khp(Mass.ofGrams(0.3888), Volume.ofMillilitres(18.64)))
        .concentration()
        .number();
  }

  private static UncertainValue sodiumHydroxide() {
    return result(
        "A2",
        x ->
            1000
                * x.applyAsDouble("mass of KHP")
                * x.applyAsDouble("purity of KHP")
                / (x.applyAsDouble("molar mass of KHP") * x.applyAsDouble("volume of NaOH"))
                * x.applyAsDouble("repeatability"));
  }

  private static UncertainValue hydrochloricAcid() {
    return result(
        "A3",
        x ->
            1000
                * x.applyAsDouble("mass of KHP")
                * x.applyAsDouble("purity of KHP")
                * x.applyAsDouble("volume of NaOH for HCl")
                / (x.applyAsDouble("molar mass of KHP")
                    * x.applyAsDouble("volume of NaOH for KHP")
                    * x.applyAsDouble("volume of HCl"))
                * x.applyAsDouble("repeatability"));
  }

  /** Each line of the budget is an input; the lines of one quantity add up to it. */
  private static UncertainValue result(
      String example, ToDoubleFunction<ToDoubleFunction<String>> formula) {
    List<String> quantities = new ArrayList<>();
    List<Input> inputs = new ArrayList<>();
    for (CsvTable.Line row : CsvTable.read("quam-a2-a3.csv", 16).where("example", example)) {
      String quantity = row.text("quantity");
      int times = row.text("component").endsWith("(enters twice)") ? 2 : 1;
      for (int i = 1; i <= times; i++) {
        double estimate = quantities.contains(quantity) ? 0 : row.number("value");
        quantities.add(quantity);
        inputs.add(input(row, quantity + ", " + row.text("component") + " " + i, estimate));
      }
    }
    return MeasurementModel.of(example, "mol/L")
        .with(inputs.toArray(Input[]::new))
        .calculatedBy(
            values ->
                formula.applyAsDouble(
                    quantity ->
                        IntStream.range(0, values.length)
                            .filter(i -> quantities.get(i).equals(quantity))
                            .mapToDouble(i -> values[i])
                            .sum()))
        .linear()
        .result();
  }

  private static Input input(CsvTable.Line row, String name, double estimate) {
    double width = row.number("half_width_or_u");
    String unit = row.text("unit");
    return switch (row.text("distribution")) {
      case "uniform" -> Input.uniform(name, estimate, width, unit);
      case "triangular" -> Input.triangular(name, estimate, width, unit);
      case "normal" -> Input.normal(name, estimate, width, unit);
      default -> throw new IllegalStateException("quam-a2-a3.csv: a distribution is not known");
    };
  }

  private static Row row(String id, double computed) {
    CsvTable.Line row = CsvTable.read("titration-examples.csv", 84).only("id", id);
    Row result =
        Row.ofPrinted(
                id + ", " + row.text("quantity"), row.text("expected"), computed, row.howKnown())
            .within(
                Tolerance.ofLastDigit(
                    row.number("tolerance_last_digits"), "mol/L", "digits printed"));
    return row.text("reproduce").equals("yes") ? result : result.asNotReproduced();
  }
}
