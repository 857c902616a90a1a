package org.brewchem.checks.frozen;

import java.util.Arrays;
import org.brewchem.buffer.BufferCode;
import org.brewchem.buffer.MeasuredBuffer;
import org.brewchem.checks.CsvTable;
import org.brewchem.figure.Answer;
import org.brewchem.figure.Scales;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Solute;

/** Buffers measured by titration logs, and what they predict. */
final class FrozenBuffers {

  private static final double[] END_POINTS = {7, 8.2};
  private static final double[] CAPACITY_AT = {3.5, 4.5, 5.5, 7};

  private FrozenBuffers() {}

  static void compute(FrozenFigures figures) {
    for (CsvTable.Line line : buffers().lines()) {
      figures(figures.of(line.text("id")), buffer(line));
    }
  }

  private static CsvTable buffers() {
    return CsvTable.read("frozen/buffers.csv", 9);
  }

  /** Returns the measured buffer of an input, for the beers too. */
  static MeasuredBuffer buffer(String id) {
    return buffer(buffers().only("id", id));
  }

  private static MeasuredBuffer buffer(CsvTable.Line line) {
    MeasuredBuffer.Fit fit =
        MeasuredBuffer.fit().with(FrozenTitrations.log(line.text("alkali_log")).bufferReadings());
    if (!line.isEmpty("acid_log")) {
      fit = fit.with(FrozenTitrations.log(line.text("acid_log")).bufferReadings());
    }
    if (!line.isEmpty("calcium")) {
      fit =
          fit.metals(
              AmountConcentration.ofMillimolesPerLitre(line.number("calcium")),
              AmountConcentration.ofMillimolesPerLitre(line.number("magnesium")),
              0);
    }
    return fit.buffer();
  }

  private static void figures(FrozenFigures.Of of, MeasuredBuffer buffer) {
    of.uncertain("pH", "", buffer.pH().number(), buffer.pH().standardUncertainty());
    of.number("lowest reading", "", buffer.lowestReading().value());
    of.number("highest reading", "", buffer.highestReading().value());
    of.number("noise of the readings", "", buffer.readingNoise());
    of.number(
        "largest residual",
        "",
        Arrays.stream(buffer.residuals()).map(Math::abs).max().orElseThrow());
    dose(of, buffer, "lactic acid", 6);
    dose(of, buffer, "phosphoric acid", 3);
    dose(of, buffer, "hydrochloric acid", 2);
    dose(of, buffer, "citric acid", 1.5);
    dose(of, buffer, "sodium bicarbonate", 4);
    dose(of, buffer, "sodium hydroxide", 5);
    for (double endPoint : END_POINTS) {
      prediction(
          of,
          "acidity to pH " + endPoint,
          "mEq/L",
          buffer.acidityTo(PH.of(endPoint)).in(Scales.acidity(PH.of(endPoint))));
    }
    for (double at : CAPACITY_AT) {
      prediction(
          of, "buffer capacity at pH " + at, "mEq/L per pH", buffer.bufferCapacity(PH.of(at)));
    }
  }

  private static void dose(
      FrozenFigures.Of of, MeasuredBuffer buffer, String solute, double millimolesPerLitre) {
    Solute added = Named.solute(solute);
    AmountConcentration dose = AmountConcentration.ofMillimolesPerLitre(millimolesPerLitre);
    String by = millimolesPerLitre + " mmol/L of " + solute;
    prediction(of, "pH after " + by, "", buffer.pHAfter(added, dose));
    prediction(of, "change of pH by " + by, "", buffer.changeOfPHBy(added, dose));
  }

  private static void prediction(
      FrozenFigures.Of of, String figure, String unit, Answer<?> prediction) {
    of.uncertain(figure, unit, prediction.number(), prediction.standardUncertainty());
    of.text(
        figure + ": extrapolated",
        prediction.notices().stream().anyMatch(n -> n.code() == BufferCode.EXTRAPOLATED));
  }
}
