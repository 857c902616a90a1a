package org.brewchem.beer;

import java.util.function.DoubleUnaryOperator;
import org.brewchem.internal.Roots;
import org.brewchem.quantity.PH;
import org.brewchem.quantity.TitratableAcidity;
import org.brewchem.quantity.Volume;
import org.brewchem.solution.Solution;

/** Two beers in a variable share, and the search for the share wanted. */
final class BlendSearch {

  private final Beer first;
  private final Beer second;
  private final Volume volume;
  private final Solution ofFirst;
  private final Solution ofSecond;

  BlendSearch(Beer first, Beer second, Volume volume) {
    this.first = first;
    this.second = second;
    this.volume = volume;
    ofFirst = first.solution();
    ofSecond = second.solution();
  }

  Blend to(PH target) {
    return at(
        search(
            share -> mixture(share).charge(target).inEquivalentsPerLitre(),
            target.toString(),
            first.pH() + " and " + second.pH()));
  }

  Blend to(TitratableAcidity target) {
    return at(
        search(
            share ->
                acidity(share, mixture(share)).minus(target).inMilliequivalentsPerLitre() / 1000,
            Texts.acidity(target),
            Texts.acidity(first.acidity()) + " and " + Texts.acidity(second.acidity())));
  }

  Blend at(double share) {
    Solution mixture = mixture(share);
    return new Blend(first, second, volume, share, mixture, acidity(share, mixture));
  }

  private static double search(DoubleUnaryOperator surplus, String target, String beers) {
    if (surplus.applyAsDouble(0) * surplus.applyAsDouble(1) >= 0) {
      throw notBetween(target, beers);
    }
    return Roots.between(surplus, 0, 1).orElseThrow(end -> notBetween(target, beers));
  }

  private static UnreachableTargetException notBetween(String target, String beers) {
    return new UnreachableTargetException(
        UnreachableTargetException.Reason.NOT_BETWEEN_THE_BEERS,
        "target: "
            + target
            + " is not possible; the two beers have "
            + beers
            + ", and a blend lies between them");
  }

  /** Volumes of a litre in all. */
  private Solution mixture(double share) {
    return ofFirst.mixed(Volume.ofLitres(share), ofSecond, Volume.ofLitres(1 - share));
  }

  private TitratableAcidity acidity(double share, Solution mixture) {
    PH endPoint = first.acidity().endPoint();
    double beyond =
        share * first.acidityBeyond(ofFirst) + (1 - share) * second.acidityBeyond(ofSecond);
    return mixture
        .titratableAcidity(endPoint)
        .plus(TitratableAcidity.ofMilliequivalentsPerLitre(beyond, endPoint));
  }
}
