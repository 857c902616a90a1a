package org.brewchem.mash;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.brewchem.figure.Notice;

/** Tells whether the grists of the measured brews differed enough to tell their malts apart. */
final class UndecidedMalts {

  /** Shares that differ less than about this are one grist; our choice. */
  private static final double VARIED = 0.05;

  private UndecidedMalts() {}

  /** A notice where the malts of a grist were learned in brews that never varied their shares. */
  static Optional<Notice> in(Grist grist) {
    Set<Map<String, Double>> brews = new LinkedHashSet<>();
    List<String> names = new ArrayList<>();
    for (Malt malt : grist.malts()) {
      if (malt.isLearned()) {
        names.add(malt.name());
        brews.addAll(malt.brews());
      }
    }
    if (names.size() < 2 || rank(List.copyOf(brews), names) >= names.size()) {
      return Optional.empty();
    }
    return Optional.of(
        Notice.of(
            MashCode.MALTS_UNDECIDED,
            "grist",
            "the measured brews hardly varied the shares of "
                + String.join(", ", names)
                + ": what each of them brings is undecided, and only grists like those brewed are"
                + " known better"));
  }

  private static int rank(List<Map<String, Double>> brews, List<String> names) {
    double[][] shares = new double[brews.size()][names.size()];
    for (int i = 0; i < shares.length; i++) {
      for (int k = 0; k < names.size(); k++) {
        shares[i][k] = brews.get(i).getOrDefault(names.get(k), 0.0);
      }
    }
    double[] values =
        new SingularValueDecomposition(MatrixUtils.createRealMatrix(shares)).getSingularValues();
    int rank = 0;
    for (double value : values) {
      if (value > VARIED) {
        rank++;
      }
    }
    return rank;
  }
}
