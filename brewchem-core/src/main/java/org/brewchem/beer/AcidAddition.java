package org.brewchem.beer;

import java.util.function.DoubleUnaryOperator;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.AmountConcentration;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Solution;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.jspecify.annotations.Nullable;

/** A beer with a variable amount of an acid reagent in it, and the search for the amount wanted. */
final class AcidAddition {

  /** Far more acid than anybody could mean, mol per litre of beer. */
  private static final double MOST = 5;

  private static final Volume LITRE = Volume.ofLitres(1);

  private final Beer beer;
  private final Reagent reagent;
  private final Acid acid;
  private final Volume volume;
  private final Solution before;
  private final double acidityBeyond;
  private final @Nullable Solution bottle;
  private final double molesPerLitreOfBottle;

  AcidAddition(Beer beer, Reagent reagent, Acid acid, Volume volume) {
    this.beer = beer;
    this.reagent = reagent;
    this.acid = acid;
    this.volume = volume;
    before = beer.solution();
    acidityBeyond = beer.acidityBeyond(before);
    if (reagent.density().isPresent()) {
      AmountConcentration concentration = reagent.concentration();
      bottle = Solution.at(beer.temperature()).under(beer.chemistry()).with(acid, concentration);
      molesPerLitreOfBottle = concentration.inMolesPerLitre();
    } else {
      bottle = null;
      molesPerLitreOfBottle = Double.POSITIVE_INFINITY;
    }
  }

  BeerDose to(PH target) {
    double change = target.minus(beer.pH());
    if (change == 0) {
      throw alreadyThere(target.toString());
    }
    if (change > 0) {
      throw new UnreachableTargetException(
          UnreachableTargetException.Reason.ACID_CANNOT_RAISE_PH,
          "target: "
              + target
              + " is not possible; the beer has "
              + beer.pH()
              + " and an acid cannot raise it. Blend with a beer of higher pH, or neutralise with a"
              + " carbonate");
    }
    return dose(
        search(
            moles -> -with(moles).charge(target).inEquivalentsPerLitre() * growth(moles),
            target.toString()));
  }

  BeerDose to(TitratableAcidity target) {
    double rise = target.minus(beer.acidity()).inMilliequivalentsPerLitre();
    if (rise == 0) {
      throw alreadyThere(Texts.acidity(target));
    }
    if (rise < 0) {
      throw new UnreachableTargetException(
          UnreachableTargetException.Reason.ACID_CANNOT_LOWER_ACIDITY,
          "target: "
              + Texts.acidity(target)
              + " is not possible; the beer has "
              + Texts.acidity(beer.acidity())
              + " and an acid cannot lower it. Blend with a beer of less acidity, or neutralise with"
              + " a carbonate");
    }
    return dose(
        search(
            moles ->
                acidity(with(moles)).minus(target).inMilliequivalentsPerLitre()
                    / 1000
                    * growth(moles),
            Texts.acidity(target)));
  }

  private static UnreachableTargetException alreadyThere(String target) {
    return new UnreachableTargetException(
        UnreachableTargetException.Reason.ALREADY_THERE,
        "target: " + target + " needs no acid; the beer has it already");
  }

  private BeerDose dose(double moles) {
    return new BeerDose(this, moles);
  }

  /** The moles per litre of beer at which what is missing, eq per litre of beer, rises to 0. */
  private double search(DoubleUnaryOperator surplus, String target) {
    double first = Math.max(-surplus.applyAsDouble(0), 1e-9);
    return Roots.rising(surplus, 0, first, MOST)
        .orElseThrow(
            end ->
                new UnreachableTargetException(
                    UnreachableTargetException.Reason.ACID_TOO_WEAK,
                    "target: "
                        + target
                        + " is not possible; not even 5 mol of "
                        + acid.name()
                        + " in a litre of beer reaches it"));
  }

  /** The beer with so many moles of the acid per litre of beer. */
  Solution with(double moles) {
    return bottle == null
        ? before.with(acid, AmountConcentration.ofMolesPerLitre(moles))
        : before.mixed(LITRE, bottle, Volume.ofLitres(litresOfBottle(moles)));
  }

  /** Litres of reagent per litre of beer; 0 for a solid, whose volume is neglected. */
  double litresOfBottle(double moles) {
    return moles / molesPerLitreOfBottle;
  }

  /** By what factor the volume increases. */
  double growth(double moles) {
    return 1 + litresOfBottle(moles);
  }

  /** The acidity of a mixture, what the buffering does not explain of the measured one included. */
  TitratableAcidity acidity(Solution mixture) {
    PH endPoint = beer.acidity().endPoint();
    return mixture
        .titratableAcidity(endPoint)
        .plus(TitratableAcidity.ofMilliequivalentsPerLitre(acidityBeyond, endPoint));
  }

  Beer beer() {
    return beer;
  }

  Reagent reagent() {
    return reagent;
  }

  Acid acid() {
    return acid;
  }

  Volume volume() {
    return volume;
  }

  Solution before() {
    return before;
  }
}
