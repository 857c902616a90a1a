package org.brewchem.treatment;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.brewchem.figure.UnknownFigureException;
import org.brewchem.solution.Contents;
import org.brewchem.substance.Component;

/** What a treatment needs to know of contents before it can be computed. */
final class Balance {

  private Balance() {}

  /**
   * Checks that the balance is closed and the components are known.
   *
   * @throws UnknownFigureException if something is missing
   */
  static void required(String what, Contents contents, Collection<Component> components) {
    List<String> missing = new ArrayList<>(contents.whyOpen());
    for (Component component : components) {
      if (contents.unknown().contains(component)) {
        missing.add(component.name() + " is not reported");
      }
    }
    if (!missing.isEmpty()) {
      throw new UnknownFigureException(what, missing);
    }
  }
}
