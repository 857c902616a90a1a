package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.internal.NumberText;
import org.brewchem.uncertainty.GrubbsTest;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.Replicates;

/** How replicates, or else the known repeatability of a method, enter a budget. */
final class Repeatability {

  private static final String NAME = "repeatability";
  private static final double SIGNIFICANCE = 0.05;

  /** Graduations count in decimals, doubles do not. */
  private static final double ROUNDING = 1e-9;

  /**
   * The range that 2 to 10 results keep within in 95 % of cases, in standard deviations
   * (studentised range; ISO 5725-6 rounds to one decimal; both from memory). That of two is rounded
   * to the 2.8 of the repeatability limit.
   */
  private static final double[] CRITICAL_RANGES = {
    2.8, 3.31, 3.63, 3.86, 4.03, 4.17, 4.29, 4.39, 4.47
  };

  private Repeatability() {}

  /** A factor around 1 with the relative standard uncertainty of the mean of {@code count}. */
  static Input input(Apparatus apparatus, Optional<Replicates> replicates, int count) {
    if (apparatus.relativeRepeatability().isPresent()) {
      double relative = apparatus.relativeRepeatability().getAsDouble();
      return Input.normal(NAME, 1, relative / Math.sqrt(count), "");
    }
    if (replicates.isEmpty() || replicates.get().mean() == 0) {
      return Input.normal(NAME, 1, 0, "");
    }
    Replicates r = replicates.get();
    return Input.student(
        NAME, 1, r.relativeStandardDeviation() / Math.sqrt(r.count()), r.degreesOfFreedom(), "");
  }

  /**
   * Judges replicates: their range against what repeatability explains, and from three on by
   * Grubbs' test. Without a repeatability of one's own the range is judged by the usual one of
   * {@code usual-repeatability.csv}, which counts in no uncertainty. What Grubbs' test finds is an
   * outlier only if the range is too large as well or the burette does not explain it ({@link
   * #isReading}).
   *
   * @param method the method, as that table names it
   * @param meanTitreMillilitres the mean titre, of which the reading of the burette is a share
   */
  static List<Notice> notices(
      String subject,
      String method,
      Apparatus apparatus,
      Optional<Replicates> replicates,
      double meanTitreMillilitres) {
    List<Notice> list = new ArrayList<>();
    boolean known = apparatus.relativeRepeatability().isPresent();
    UsualRepeatability usual = UsualRepeatability.of(method);
    if (replicates.isEmpty()) {
      if (!known) {
        list.add(
            Notice.of(
                TitrationCode.SINGLE_DETERMINATION,
                subject,
                subject
                    + ": a single determination, its repeatability is not known and not in the"
                    + " budget; "
                    + usual.published()));
      }
      return list;
    }
    Replicates r = replicates.get();
    if (!known) {
      r.caution()
          .ifPresent(
              text ->
                  list.add(
                      Notice.of(TitrationCode.TWO_REPLICATES, subject, subject + ": " + text)));
    }
    double relative = apparatus.relativeRepeatability().orElse(usual.relative());
    double read =
        known || meanTitreMillilitres <= 0
            ? 0
            : apparatus.buretteTolerance().inMillilitres() / Math.sqrt(6) / meanTitreMillilitres;
    boolean judged = r.count() < CRITICAL_RANGES.length + 2;
    double limit =
        judged
            ? CRITICAL_RANGES[r.count() - 2] * Math.hypot(relative, read) * Math.abs(r.mean())
            : 0;
    boolean differ = judged && r.range() > limit;
    if (r.count() > 2) {
      GrubbsTest test = r.grubbs(SIGNIFICANCE);
      if (test.isOutlier()
          && (differ || !isReading(r, test.suspectIndex(), apparatus, meanTitreMillilitres))) {
        list.add(
            Notice.ofRow(
                TitrationCode.OUTLIER,
                subject,
                test.suspectIndex() + 1L,
                String.format(
                    Locale.ROOT,
                    "%s %s lies farther from the others than chance explains (%s); look"
                        + " for a cause, it is not dropped",
                    NumberText.significant(test.suspectValue(), 5),
                    r.unit(),
                    test)));
      }
    }
    if (differ) {
      list.add(
          Notice.of(
              TitrationCode.REPLICATES_DIFFER,
              subject,
              String.format(
                  Locale.ROOT,
                  "%s: the %d differ by %.3g %s, more than the %.2g %s that %s explains",
                  subject,
                  r.count(),
                  r.range(),
                  r.unit(),
                  limit,
                  r.unit(),
                  known
                      ? "the stated repeatability"
                      : String.format(
                          Locale.ROOT,
                          "a usual repeatability of %.2g %% (our choice; %s)",
                          100 * relative,
                          usual.published()))));
    }
    return list;
  }

  /**
   * Tells whether the reading of the burette may be all that sets a value apart. Titres are read to
   * a graduation and tie. Where all the others are equal their scatter is hidden in it and Grubbs'
   * test has nothing to go by: of three values of which two are equal it makes an outlier of the
   * third however near that lies (G is always 1.1547, above the critical 1.1543). Else a value is
   * set apart by less than the reading when one volume can be read as both it and its nearest
   * neighbour: no farther from each other than twice the limit of error.
   */
  private static boolean isReading(
      Replicates r, int suspect, Apparatus apparatus, double meanTitreMillilitres) {
    double[] values = r.values();
    double nearest = Double.POSITIVE_INFINITY;
    double least = Double.POSITIVE_INFINITY;
    double greatest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < values.length; i++) {
      if (i != suspect) {
        nearest = Math.min(nearest, Math.abs(values[i] - values[suspect]));
        least = Math.min(least, values[i]);
        greatest = Math.max(greatest, values[i]);
      }
    }
    double twice = 2 * apparatus.buretteTolerance().inMillilitres();
    // A mean titre of 0 or less, as after a blank, has no share that is the burette's.
    double explained =
        meanTitreMillilitres > 0 ? twice / meanTitreMillilitres * Math.abs(r.mean()) : 0;
    return least == greatest || nearest <= explained * (1 + ROUNDING);
  }
}
