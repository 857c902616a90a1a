package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.brewchem.internal.Checks;
import org.brewchem.internal.Excerpt;

/**
 * The shares that the parts of a blend may have: each within its limits, all of them together 1.
 * They form a polytope, whose corners have every share but one at a limit. Immutable.
 */
final class ShareLimits {

  /** How far a share may lie beyond a limit, and all of them from 1, and count as on it. */
  static final double ON = 1e-9;

  private final List<String> names;
  private final double[] least;
  private final double[] most;

  private ShareLimits(List<String> names, double[] least, double[] most) {
    this.names = names;
    this.least = least;
    this.most = most;
  }

  /** Limits that allow everything. */
  static ShareLimits none(List<String> names) {
    double[] ones = new double[names.size()];
    Arrays.fill(ones, 1);
    return new ShareLimits(List.copyOf(names), new double[names.size()], ones);
  }

  ShareLimits called(List<String> others) {
    if (others.size() != names.size() || others.stream().distinct().count() < names.size()) {
      throw new IllegalArgumentException(
          "names: "
              + Excerpt.of(others.toString())
              + " are not possible; one to each of "
              + names.size()
              + " liquids, and each once, is needed");
    }
    others.forEach(name -> Checks.notBlank("name", name));
    return new ShareLimits(List.copyOf(others), least, most);
  }

  ShareLimits atLeast(int part, double share) {
    double[] changed = least.clone();
    changed[part] =
        Checks.inRange("least share of " + Excerpt.of(names.get(part)), share, "", 0, most[part]);
    double sum = Arrays.stream(changed).sum();
    if (sum > 1 + ON) {
      throw Checks.outOfRange("least shares together", rounded(sum), "", "at most 1");
    }
    return new ShareLimits(names, changed, most);
  }

  ShareLimits atMost(int part, double share) {
    double[] changed = most.clone();
    changed[part] =
        Checks.inRange("most share of " + Excerpt.of(names.get(part)), share, "", least[part], 1);
    double sum = Arrays.stream(changed).sum();
    if (sum < 1 - ON) {
      throw Checks.outOfRange("most shares together", rounded(sum), "", "at least 1");
    }
    return new ShareLimits(names, least, changed);
  }

  List<String> names() {
    return names;
  }

  int count() {
    return names.size();
  }

  double least(int part) {
    return least[part];
  }

  double most(int part) {
    return most[part];
  }

  int part(String name) {
    int part = names.indexOf(Checks.notBlank("name", name));
    if (part < 0) {
      throw new IllegalArgumentException(
          "name: "
              + Excerpt.of(name)
              + " is not possible; the parts are "
              + Excerpt.of(names.toString(), 250));
    }
    return part;
  }

  /** Returns shares that keep the limits, what lies beyond them by rounding put on them. */
  double[] checked(double... shares) {
    if (shares.length != count()) {
      throw Checks.outOfRange(
          "number of shares", shares.length, "", "one to each part, " + count());
    }
    double[] kept = new double[shares.length];
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      String share = "share of " + Excerpt.of(names.get(i));
      Checks.finite(share, shares[i], "");
      if (shares[i] < least[i] - ON || shares[i] > most[i] + ON) {
        Checks.inRange(share, shares[i], "", least[i], most[i]);
      }
      kept[i] = Math.min(Math.max(shares[i], least[i]), most[i]);
      sum += shares[i];
    }
    if (Math.abs(sum - 1) > ON) {
      throw Checks.outOfRange("shares together", rounded(sum), "", "1");
    }
    return kept;
  }

  /** To nine decimals, as a message shows it. */
  private static double rounded(double sum) {
    return Math.rint(sum * 1e9) / 1e9;
  }

  /** The corners, those with most of the first part first. */
  List<double[]> corners() {
    List<double[]> corners = new ArrayList<>();
    for (int free = 0; free < count(); free++) {
      for (int choice = 0; choice < (1 << count()); choice++) {
        add(corners, free, choice);
      }
    }
    corners.sort((one, other) -> Arrays.compare(other, one));
    return corners;
  }

  /** Adds the corner of a choice of limits, unless its free share is out of them or it is known. */
  private void add(List<double[]> corners, int free, int choice) {
    double[] shares = new double[count()];
    double others = 0;
    for (int i = 0; i < shares.length; i++) {
      if (i != free) {
        shares[i] = (choice & (1 << i)) == 0 ? least[i] : most[i];
        others += shares[i];
      }
    }
    double rest = 1 - others;
    if (rest < least[free] - ON || rest > most[free] + ON) {
      return;
    }
    shares[free] = Math.min(Math.max(rest, least[free]), most[free]);
    if (corners.stream().noneMatch(known -> differing(known, shares) == 0)) {
      corners.add(shares);
    }
  }

  /** Pairs of corners that differ in two shares: the sides of the polytope are among them. */
  static List<int[]> sides(List<double[]> corners) {
    List<int[]> sides = new ArrayList<>();
    for (int i = 0; i < corners.size(); i++) {
      for (int j = i + 1; j < corners.size(); j++) {
        if (differing(corners.get(i), corners.get(j)) == 2) {
          sides.add(new int[] {i, j});
        }
      }
    }
    return sides;
  }

  private static int differing(double[] one, double[] other) {
    int count = 0;
    for (int i = 0; i < one.length; i++) {
      count += Math.abs(one[i] - other[i]) > ON ? 1 : 0;
    }
    return count;
  }
}
