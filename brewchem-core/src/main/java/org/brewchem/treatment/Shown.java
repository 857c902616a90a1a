package org.brewchem.treatment;

import org.brewchem.figure.Figure;
import org.brewchem.uncertainty.Traced;

/** Numbers of a figure between the scale it is shown in and its own. */
final class Shown {

  private Shown() {}

  static <Q> double inOwnScale(Figure<Q> figure, double shown) {
    return figure.shown().convert(Traced.exact(shown), figure.scale()).value();
  }

  static double shown(Figure<?> figure, double inOwnScale) {
    return figure.inShown(Traced.exact(inOwnScale)).value();
  }

  static String text(Figure<?> figure, double inOwnScale) {
    return figure.shown().text(shown(figure, inOwnScale));
  }
}
