package org.brewchem.titration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.brewchem.figure.Notice;
import org.brewchem.uncertainty.Input;
import org.brewchem.uncertainty.RepeatabilityLimit;
import org.brewchem.uncertainty.Replicates;

/** How replicates, or else the known repeatability of a method, enter a budget. */
final class Repeatability {

  private static final String NAME = "repeatability";

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

  static List<Notice> notices(
      String subject, Apparatus apparatus, Optional<Replicates> replicates) {
    List<Notice> list = new ArrayList<>();
    boolean known = apparatus.relativeRepeatability().isPresent();
    if (replicates.isEmpty()) {
      if (!known) {
        list.add(
            Notice.of(
                TitrationCode.SINGLE_DETERMINATION,
                subject,
                subject
                    + ": a single determination, its repeatability is not known and not in the budget"));
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
    } else if (r.count() == 2) {
      RepeatabilityLimit limit =
          RepeatabilityLimit.fromStandardDeviation(
              apparatus.relativeRepeatability().getAsDouble() * Math.abs(r.mean()), r.unit());
      if (!limit.allows(r.values()[0], r.values()[1])) {
        list.add(
            Notice.of(
                TitrationCode.REPLICATES_DIFFER,
                subject,
                String.format(
                    Locale.ROOT,
                    "the two differ by %.3g %s, more than the repeatability limit: %s",
                    r.range(),
                    r.unit(),
                    limit)));
      }
    }
    return list;
  }
}
