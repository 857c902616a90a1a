package org.brewchem.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.brewchem.figure.Notice;
import org.brewchem.figure.Scales;
import org.brewchem.figure.Step;
import org.brewchem.internal.NumberText;
import org.brewchem.quantity.PH;
import org.brewchem.substance.Component;
import org.brewchem.uncertainty.Traced;

/**
 * The closure of a water: finds the total carbon dioxide and the inert charge that give the ions of
 * a report its alkalinity and its pH.
 *
 * <p>What was read comes back as it went in. The slopes of total and charge over ions, alkalinity
 * and pH are those of the balance, so that a closed water has the pH and the alkalinity of the
 * report with their own uncertainty.
 */
public final class CarbonateClosure {

  /** The step of a slope, as a share of the larger alkalinity. */
  private static final double SLOPE_STEP = 1e-5;

  private final Contents ions;
  private final List<Step> reported;

  private CarbonateClosure(Contents ions, List<Step> reported) {
    this.ions = ions;
    this.reported = List.copyOf(reported);
  }

  /**
   * Starts from the ions of a report.
   *
   * @param ions the strong ions, without inert charge; carbonate in them does not count
   * @param reported the steps of what was reported, which explanations begin with
   * @return the closure
   */
  public static CarbonateClosure of(Contents ions, List<Step> reported) {
    Objects.requireNonNull(reported, "reported");
    return new CarbonateClosure(ions.withInertCharge(Traced.exact(0)), reported);
  }

  /**
   * Closes to a carbonate alkalinity and a measured pH.
   *
   * @param alkalinity carbonate alkalinity, eq per kg of water, 0 or more
   * @param pH the pH
   * @return the closed contents
   * @throws IllegalArgumentException if more than 10 mol/kg of carbon dioxide would be needed
   */
  public Contents byPH(Traced alkalinity, Traced pH) {
    Work work = new Work(0, pH.value());
    if (!work.carbonates.closeByPH(alkalinity.value(), pH.value())) {
      throw impossible(pH.value(), alkalinity.value());
    }
    work.opened();
    Slopes slopes = work.alkalinitySlopes();
    Traced carbonDioxide =
        slopes.solvedFor(work.total, alkalinity, slopes.overTotal, pH, slopes.overPH);
    return closed(carbonDioxide, pH, with -> carbonates(with, alkalinity));
  }

  /**
   * Closes to a carbonate alkalinity and a known total carbon dioxide.
   *
   * @param alkalinity carbonate alkalinity, eq per kg of water
   * @param total total carbon dioxide, mol per kg of water
   * @return the closed contents
   * @throws IllegalArgumentException if the total cannot carry the alkalinity
   */
  public Contents byTotal(Traced alkalinity, Traced total) {
    Work work = new Work(total.value(), 7);
    if (alkalinity.value() == 0 && total.value() == 0) {
      return neutralWithoutCarbonate();
    }
    if (!work.carbonates.closeByTotal(alkalinity.value(), total.value())) {
      throw new IllegalArgumentException(
          "alkalinity: "
              + milli(alkalinity.value())
              + " mEq/kg is not possible with "
              + milli(total.value())
              + " mmol/kg of carbon dioxide; more than 0 and less than twice as many mEq/kg are");
    }
    work.opened();
    Slopes slopes = work.alkalinitySlopes();
    Traced pH = slopes.solvedFor(work.pH, alkalinity, slopes.overPH, total, slopes.overTotal);
    return closed(total, pH, with -> carbonates(with, alkalinity));
  }

  /**
   * Closes to a carbonate alkalinity alone: without a pH the alkalinity is taken as bicarbonate
   * only, and a notice says so.
   *
   * @param alkalinity carbonate alkalinity, eq per kg of water
   * @return the closed contents
   * @throws IllegalArgumentException if no pH between 2 and 13.5 has the alkalinity
   */
  public Contents byAlkalinity(Traced alkalinity) {
    Objects.requireNonNull(alkalinity, "alkalinity");
    return byTotal(alkalinity, alkalinity)
        .withNotices(
            List.of(
                Notice.of(
                    SolutionCode.CARBON_DIOXIDE_ASSUMED,
                    "total carbon dioxide",
                    "without a pH the total carbon dioxide is not known; it was taken as equal to"
                        + " the alkalinity, as if all of it were bicarbonate")));
  }

  /**
   * Closes to an alkalinity that was titrated to an end point, and a measured pH.
   *
   * @param alkalinity titration alkalinity, eq per kg of water
   * @param endPoint its end point
   * @param pH the pH, above the end point
   * @return the closed contents
   * @throws IllegalArgumentException if the pH is not above the end point, or no total carbon
   *     dioxide has the alkalinity
   */
  public Contents byTitration(Traced alkalinity, PH endPoint, Traced pH) {
    if (pH.value() <= endPoint.value()) {
      throw new IllegalArgumentException(
          "pH: "
              + pH.value()
              + " is not possible; a water with an alkalinity to "
              + endPoint
              + " lies above that end point");
    }
    Work work = new Work(0, pH.value());
    double wanted = alkalinity.value();
    double without = work.carbonates.titrated(0, endPoint.value(), pH.value());
    if (wanted < without) {
      throw new IllegalArgumentException(
          "alkalinity: "
              + milli(wanted)
              + " mEq/kg is not possible at pH "
              + pH.value()
              + "; without any carbon dioxide the water takes up "
              + milli(without)
              + " mEq/kg");
    }
    if (!work.carbonates.closeByTitration(wanted, endPoint.value(), pH.value())) {
      throw impossible(pH.value(), wanted);
    }
    work.opened();
    Slopes slopes = work.titratedSlopes(endPoint.value());
    return closed(
        slopes.solvedFor(work.total, alkalinity, slopes.overTotal, pH, slopes.overPH),
        pH,
        with -> BalanceDetail.charges(with, endPoint.value(), wanted));
  }

  /**
   * Closes to two titrations of one water without a pH, such as its acid and its base capacity.
   *
   * @param alkalinity titration alkalinity, eq per kg of water
   * @param endPoint its end point, below the pH of the water
   * @param other titration alkalinity to the other end point, eq per kg of water; below 0 where a
   *     base was needed
   * @param otherEndPoint the other end point, above the first
   * @return the closed contents
   * @throws IllegalArgumentException if no pH has both
   */
  public Contents byTitrations(Traced alkalinity, PH endPoint, Traced other, PH otherEndPoint) {
    double[] read = {alkalinity.value(), other.value()};
    double found = pHOf(read, endPoint, otherEndPoint);
    List<Traced> inputs = new ArrayList<>(List.of(alkalinity, other));
    List<Double> slopes = new ArrayList<>();
    double step = SLOPE_STEP * Math.max(Math.abs(read[0]), Math.abs(read[1]));
    for (int i = 0; i < 2; i++) {
      double[] below = read.clone();
      double[] above = read.clone();
      below[i] -= step;
      above[i] += step;
      slopes.add(
          (pHOf(above, endPoint, otherEndPoint) - pHOf(below, endPoint, otherEndPoint))
              / (2 * step));
    }
    ions.totals()
        .forEach(
            (component, total) -> {
              if (!total.sources().isEmpty()) {
                Traced more = Traced.exact(total.value() + step);
                CarbonateClosure moved =
                    new CarbonateClosure(ions.withTotal(component, more), reported);
                inputs.add(total);
                slopes.add((moved.pHOf(read, endPoint, otherEndPoint) - found) / step);
              }
            });
    return byTitration(
        alkalinity,
        endPoint,
        Traced.linear(
            found,
            inputs.toArray(Traced[]::new),
            slopes.stream().mapToDouble(Double::doubleValue).toArray()));
  }

  private double pHOf(double[] alkalinities, PH endPoint, PH otherEndPoint) {
    Work work = new Work(0, endPoint.value());
    if (!work.carbonates.closeByTitrations(
        alkalinities[0], endPoint.value(), alkalinities[1], otherEndPoint.value())) {
      throw new IllegalArgumentException(
          "alkalinity: "
              + milli(alkalinities[0])
              + " mEq/kg to "
              + endPoint
              + " is not possible with "
              + milli(alkalinities[1])
              + " mEq/kg to "
              + otherEndPoint
              + "; no water has both");
    }
    return work.carbonates.pH();
  }

  private IllegalArgumentException impossible(double pH, double alkalinity) {
    return new IllegalArgumentException(
        "pH: "
            + NumberText.plain(pH)
            + " is not possible with an alkalinity of "
            + milli(alkalinity)
            + " mEq/kg; more than 10 mol/kg of carbon dioxide would be needed");
  }

  private static String milli(double perKilogram) {
    return NumberText.significant(perKilogram * 1000, 4);
  }

  private Contents neutralWithoutCarbonate() {
    Traced charge = Traced.exact(0);
    for (Map.Entry<Component, Traced> ion : ions.totals().entrySet()) {
      charge = charge.plus(ion.getValue().times(ion.getKey().chargeWithoutProtons()));
    }
    return ions.withTotal(Component.CARBONATE, Traced.exact(0))
        .withInertCharge(charge.times(-1))
        .withBasis(reported);
  }

  private static Step.Detail carbonates(Contents closed, Traced alkalinity) {
    return BalanceDetail.chargeOf(Component.CARBONATE, closed, -alkalinity.value());
  }

  private Contents closed(Traced total, Traced pH, Function<Contents, Step.Detail> shown) {
    Contents with = ions.withTotal(Component.CARBONATE, total).closedTo(pH);
    Step found =
        Step.of("total carbon dioxide", Scales.MILLIMOLES_PER_LITRE, Step.Kind.ROOT)
            .text("the total that gives the ions the alkalinity at the pH", "")
            .inputs(reported)
            .detail(() -> BalanceDetail.orFailure(() -> shown.apply(with)))
            .found(total.times(1000 * ions.kilogramsPerLitre()));
    return with.withBasis(List.of(found));
  }

  /** The ions with a carbonate total, at a pH, in a work space of their own. */
  private final class Work {
    final Equilibria equilibria;
    final CarbonateBalance carbonates;
    final int carbonate;
    double total;
    double pH;

    Work(double total, double pH) {
      equilibria = ions.withTotal(Component.CARBONATE, Traced.exact(total)).equilibria();
      carbonates = CarbonateBalance.of(equilibria);
      carbonate = equilibria.indexOf(Component.CARBONATE);
      this.total = total;
      this.pH = pH;
    }

    /** Takes over what was found, and opens the balance for the slopes. */
    void opened() {
      total = carbonates.total();
      pH = carbonates.pH();
      equilibria.setInertCharge(0);
    }

    double alkalinity() {
      equilibria.setTotal(carbonate, total);
      return carbonates.alkalinityAt(pH);
    }

    /** Slopes of the carbonate alkalinity at the pH. */
    Slopes alkalinitySlopes() {
      alkalinity();
      double[] over = perTotal();
      double overPH = equilibria.chargeSlopesOf(carbonate, over);
      for (int i = 0; i < over.length; i++) {
        over[i] = -over[i];
      }
      return slopes(over, -overPH);
    }

    /**
     * Slopes of the titrated alkalinity: the water that is neutral at its pH holds other inert ions
     * when a total moves.
     */
    Slopes titratedSlopes(double endPoint) {
      equilibria.setTotal(carbonate, total);
      equilibria.setInertCharge(0);
      double charge = equilibria.chargeAt(pH);
      double[] own = perTotal();
      double ownOverPH = equilibria.chargeSlopes(own);
      equilibria.setInertCharge(-charge);
      equilibria.chargeAt(endPoint);
      double[] over = perTotal();
      equilibria.chargeSlopes(over);
      equilibria.setInertCharge(0);
      double overInert = over[over.length - 1];
      for (int i = 0; i < over.length; i++) {
        over[i] -= overInert * own[i];
      }
      return slopes(over, -overInert * ownOverPH);
    }

    private double[] perTotal() {
      return new double[equilibria.components().size() + 1];
    }

    private Slopes slopes(double[] perTotal, double overPH) {
      List<Traced> inputs = new ArrayList<>();
      List<Double> over = new ArrayList<>();
      for (int i = 0; i < perTotal.length - 1; i++) {
        if (i != carbonate) {
          inputs.add(ions.least(equilibria.components().get(i)));
          over.add(perTotal[i]);
        }
      }
      return new Slopes(inputs, over, perTotal[carbonate], overPH);
    }
  }

  /** Partial derivatives of what was read over ions, total carbon dioxide and pH. */
  private record Slopes(List<Traced> ions, List<Double> overIons, double overTotal, double overPH) {

    /** The unknown that keeps what was read, by implicit differentiation. */
    Traced solvedFor(
        double value, Traced read, double overUnknown, Traced other, double overOther) {
      int n = ions.size();
      Traced[] inputs = ions.toArray(new Traced[n + 2]);
      double[] slopes = new double[n + 2];
      for (int i = 0; i < n; i++) {
        slopes[i] = -overIons.get(i) / overUnknown;
      }
      inputs[n] = read;
      slopes[n] = 1 / overUnknown;
      inputs[n + 1] = other;
      slopes[n + 1] = -overOther / overUnknown;
      return Traced.linear(value, inputs, slopes);
    }
  }
}
